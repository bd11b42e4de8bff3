//! The disk says no: a write or a sync fails, or the disk is full in the middle of a commit.
//!
//! strace makes the calls fail, from the n-th on. Nothing may be acknowledged after it, and the
//! service ends with a failure, so that whoever watches it starts it again.

use super::{
    place::Place,
    series::Series,
    service::{Between, Service},
};

/// Runs into the error under load; gives what the service wrote.
fn run_into(call: &str, error: &str, from: usize) -> Vec<String> {
    let mut series = Series::new(from as u64, Place::settled());
    let fault = format!("inject={call}:error={error}:when={from}+");
    let trace = format!("trace={call}");
    let arguments = ["-e", &trace, "-e", &fault].map(str::to_owned);
    let mut file = arguments.to_vec();
    file.extend([
        "-P".to_owned(),
        series.place.store().join("db").display().to_string(),
    ]);
    series.ledger.write(80, &mut series.chance);
    let ended = match Service::start(&series.place, &Between::Strace(file)) {
        Err(ended) => ended,
        Ok(service) => {
            series.deliver(&service);
            assert!(
                !series.ledger.waiting().is_empty(),
                "{call} {error} from {from}: everything was acknowledged"
            );
            service.ended()
        }
    };
    assert_eq!(
        ended.status.code(),
        Some(1),
        "{call} {error} from {from}: {ended:?}"
    );
    series
        .judge()
        .unwrap_or_else(|problem| panic!("{call} {error} from {from}: {problem}"));
    let again = Service::run(&series.place);
    series.deliver(&again);
    assert!(series.ledger.waiting().is_empty());
    again.kill();
    series.judge().unwrap();
    ended.log
}

#[test]
fn a_failed_sync_ends_the_service() {
    for from in [1, 2, 5] {
        let log = run_into("fdatasync", "EIO", from);
        assert!(
            log.iter().any(|line| line.contains("the store failed")) || from == 1,
            "{log:?}"
        );
    }
    for from in [1, 3, 6] {
        run_into("sync_file_range", "EIO", from);
    }
}

#[test]
fn a_failed_write_ends_the_service() {
    for (error, from) in [("EIO", 1), ("EIO", 4), ("ENOSPC", 3), ("ENOSPC", 7)] {
        run_into("pwrite64", error, from);
    }
}
