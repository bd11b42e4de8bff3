//! SIGKILL: before every call that changes the store, and at random moments under load.

use std::{fs, sync::mpsc::RecvTimeoutError, time::Duration};

use super::{
    library::CUT,
    place::Place,
    provider::News,
    series::{Series, copy_folder, rounds, run},
    service::{Between, Service},
};

/// More calls than a start, three texts and a stop can take.
const CALLS_MAX: usize = 500;

/// Kills before the first, second, third … call, until a run comes to its end.
fn kill_at_every_call(made: impl Fn() -> Series, least: usize) {
    for call in 1..CALLS_MAX {
        let mut series = made();
        series.ledger.write(3, &mut series.chance);
        let library = Between::Library(vec![
            ("POWERLOSS_MODE", "kill".to_owned()),
            ("POWERLOSS_AFTER", call.to_string()),
        ]);
        let ended = match Service::start(&series.place, &library) {
            Err(ended) => ended,
            Ok(service) => {
                series.deliver(&service);
                service.stop()
            }
        };
        let by_itself = ended.status.success();
        assert!(
            by_itself || ended.status.code() == Some(CUT),
            "call {call}: {ended:?}"
        );
        series
            .judge()
            .unwrap_or_else(|problem| panic!("killed before call {call}: {problem}"));
        let again = Service::run(&series.place);
        series.deliver(&again);
        assert!(series.ledger.waiting().is_empty(), "call {call}");
        again.kill();
        series
            .judge()
            .unwrap_or_else(|problem| panic!("again after call {call}: {problem}"));
        if by_itself {
            assert!(call > least, "only {call} calls were seen");
            eprintln!("killed before each of {} calls", call - 1);
            return;
        }
    }
    panic!("a run takes more than {CALLS_MAX} calls");
}

#[test]
fn a_kill_at_any_call_of_a_first_start_loses_nothing() {
    kill_at_every_call(|| Series::new(1, Place::new()), 20);
}

#[test]
fn a_kill_at_any_call_of_a_later_start_loses_nothing() {
    let old = Place::settled();
    let mut begun = Series::new(1, Place::new());
    begun.ledger.write(40, &mut begun.chance);
    copy_folder(old.store(), begun.place.store());
    let service = Service::run(&begun.place);
    begun.deliver(&service);
    service.kill();
    kill_at_every_call(
        || {
            let mut series = Series::new(2, Place::new());
            series.ledger = begun.ledger.clone();
            copy_folder(begun.place.store(), series.place.store());
            series
        },
        10,
    );
}

/// No call goes past the library: the kernel, by strace, counts as many on the store's files.
#[test]
fn every_call_is_seen() {
    const CALLS: &str = "trace=write,pwrite64,writev,pwritev,pwritev2,fsync,fdatasync,\
        sync_file_range,ftruncate,fallocate,rename,renameat,renameat2,unlink,unlinkat,mkdir,\
        mkdirat,open,openat,creat";
    let mut series = Series::new(3, Place::new());
    let count = series.place.beside("count.txt");
    let both = Between::Both(
        vec![("POWERLOSS_COUNT", count.display().to_string())],
        vec!["-y".to_owned(), "-e".to_owned(), CALLS.to_owned()],
    );
    series.ledger.write(3, &mut series.chance);
    let service = Service::start(&series.place, &both).unwrap();
    series.deliver(&service);
    let ended = service.stop();
    assert!(ended.status.success(), "{ended:?}");
    let seen: usize = fs::read_to_string(count).unwrap().trim().parse().unwrap();
    let trace = fs::read_to_string(series.place.beside("strace.txt")).unwrap();
    let store = series.place.store().display().to_string();
    let changes = trace.lines().filter(|line| {
        let opens = line.contains(" open");
        line.contains(&store)
            && !line.contains("<... ")
            && (!opens || line.contains("O_CREAT") || line.contains("O_TRUNC"))
    });
    assert_eq!(changes.count(), seen);
}

fn kill_round(series: &mut Series) -> Result<(), String> {
    series.ledger.write(40, &mut series.chance);
    let service = Service::start(&series.place, &Between::Nothing)
        .map_err(|ended| format!("it does not start: {ended:?}"))?;
    let delivery = series.begin(&service);
    let acknowledged = series.chance.below(60);
    let mut news: Vec<News> = Vec::new();
    while (news.len() as u64) < acknowledged {
        match delivery.news.recv() {
            Ok(one) => news.push(one),
            Err(_) => break,
        }
    }
    // Not always just after an answer: a moment more, in which anything may be under way.
    let moment = Duration::from_micros(series.chance.below(4_000));
    match delivery.news.recv_timeout(moment) {
        Ok(one) => news.push(one),
        Err(RecvTimeoutError::Timeout | RecvTimeoutError::Disconnected) => {}
    }
    service.kill();
    news.extend(delivery.finish());
    series.note(news);
    Ok(())
}

#[test]
fn kills_at_random_moments_lose_nothing() {
    let test = "kills_at_random_moments_lose_nothing";
    run(test, rounds(200), |_| Place::settled(), kill_round);
}
