//! The disk says no: a write or a sync fails, or the disk is full in the middle of a commit.
//!
//! strace makes the calls on the store's file fail, from the n-th of each thread on. Nothing may
//! be acknowledged after it, and the service ends with a failure, so that whoever watches it
//! starts it again.

use super::{
    place::Place,
    series::{CONNECTIONS, Series},
    service::{Between, Service},
};

/// Many, because the writes are spread over a handful of threads, each with a count of its own.
const TEXTS: u64 = 400;

/// Runs into the error under load; gives how many texts were acknowledged before it.
#[track_caller]
fn run_into(call: &str, error: &str, from: usize) -> usize {
    let case = format!("{call} {error} from {from}");
    let mut series = Series::new(from as u64, Place::settled());
    let strace = [
        "-P".to_owned(),
        series.place.store().join("db").display().to_string(),
        "-e".to_owned(),
        format!("trace={call}"),
        "-e".to_owned(),
        format!("inject={call}:error={error}:when={from}+"),
    ];
    series.ledger.write(TEXTS, &mut series.chance);
    let ended = match Service::start(&series.place, &Between::Strace(strace.to_vec())) {
        Err(ended) => ended,
        Ok(service) => {
            series.deliver(&service);
            let waiting = series.ledger.waiting();
            assert!(!waiting.is_empty(), "{case}: nothing failed");
            service.ended()
        }
    };
    let acknowledged = series.ledger.acknowledged();
    assert_eq!(ended.status.code(), Some(1), "{case}: {ended:?}");
    series
        .judge()
        .unwrap_or_else(|problem| panic!("{case}: {problem}"));

    let again = Service::run(&series.place);
    series.deliver(&again);
    assert!(series.ledger.waiting().is_empty(), "{case}");
    again.kill();
    series
        .judge()
        .unwrap_or_else(|problem| panic!("{case}, started again: {problem}"));
    acknowledged
}

#[test]
fn nothing_is_acknowledged_after_a_failed_sync() {
    // The first sync is that of the start. Each commit has one, and at most as many texts as
    // there are connections.
    for from in [1, 2, 5] {
        let acknowledged = run_into("fdatasync", "EIO", from);
        assert!(
            acknowledged <= (from - 1) * CONNECTIONS,
            "{acknowledged} texts with {} good syncs",
            from - 1
        );
    }
}

#[test]
fn a_failed_flush_ends_the_service() {
    for from in [1, 3, 6] {
        run_into("sync_file_range", "EIO", from);
    }
}

/// Also where the store's library forgets to wake the thread that waits for the write.
#[test]
fn a_failed_write_ends_the_service() {
    for (error, from) in [("EIO", 1), ("EIO", 4), ("ENOSPC", 3), ("ENOSPC", 7)] {
        run_into("pwrite64", error, from);
    }
}
