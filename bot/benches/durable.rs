//! How fast texts are taken in durably over HTTP, beside what the same server and disk can do.
//!
//! One client in this process, 1, 64 and 256 connections, five servers one after the other:
//!
//! - `hello`: the web side answers a small GET.
//! - `answered`: texts are read and answered without being stored.
//! - `file`: texts go to a plain file, appended in groups with one `fdatasync` each.
//! - `bare`: the store's library alone takes as many records for each text as the service writes.
//! - `whole`: the service as it is: reading, dedupe, event, state, answer, store.
//!
//! And one raw `fdatasync` after an append. Machines differ, and so do minutes: compare only
//! within one run. Deliberately absent: other stores, and texts on the way out.
//!
//! Three runs on 2 virtual AMD EPYC cores with ext4, with nothing else running (2026-11): with 256
//! connections the whole service took in 16,200 to 21,800 texts a second, 0.13 to 0.16 of hello,
//! 0.18 to 0.23 of the file; its p99 was 4 to 6 times that of the file. A single text on an idle
//! server took 0.37 to 0.39 ms, 3 to 4 times one `fdatasync`. The limit is the store: `bare` takes
//! 39,500 a second, 0.31 of hello and 0.44 of the file, and the whole is 0.41 of that. A profile
//! says the same: five records for each text, each about 3 us of processor time in sled, and the
//! client shares the two cores.
//!
//! `cargo bench -p budwood --bench durable`; for a profile, `-- 256` measures only the whole service
//! with so many connections.
#![expect(
    clippy::disallowed_methods,
    clippy::unwrap_used,
    reason = "a bench reads the clock and breaks off where something is not there"
)]

mod durable {
    pub(crate) mod client;
    pub(crate) mod servers;
}

use std::{
    env,
    fs::File,
    io::{self, Write},
    time::{Duration, Instant},
};

use self::durable::{
    client::{self, Measured, Request},
    servers::{self, Kind, Server},
};

/// Each is measured so often; the median counts.
const ROUNDS: usize = 3;

/// Connections at once.
const CONNECTIONS: [usize; 3] = [1, 64, 256];

/// How long each is measured.
const LENGTH: Duration = Duration::from_millis(1_500);

fn main() {
    let mut out = io::stdout().lock();
    let (quick, sync) = raw_sync();
    writeln!(
        out,
        "one append and fdatasync: p10 {:.0} us, p50 {:.0} us",
        micros(quick),
        micros(sync)
    )
    .unwrap();
    writeln!(
        out,
        "{:>11} {:>9} {:>9} {:>9} {:>9} {:>10} {:>10}",
        "connections", "server", "texts/s", "p50 us", "p99 us", "of hello", "of file"
    )
    .unwrap();
    if let Some(connections) = env::args().find_map(|arg| arg.parse().ok()) {
        let whole = median(Kind::Whole, connections);
        writeln!(
            out,
            "{connections:>11} {:>9} {:>9.0}",
            "whole", whole.per_second
        )
        .unwrap();
        return;
    }
    for connections in CONNECTIONS {
        let measured = Kind::ALL.map(|kind| median(kind, connections));
        let [hello, _, file, bare, whole] = &measured;
        for (kind, one) in Kind::ALL.iter().zip(&measured) {
            writeln!(
                out,
                "{connections:>11} {:>9} {:>9.0} {:>9.0} {:>9.0} {:>10.2} {:>10.2}",
                kind.name(),
                one.per_second,
                micros(one.p50),
                micros(one.p99),
                one.per_second / hello.per_second,
                one.per_second / file.per_second,
            )
            .unwrap();
        }
        writeln!(
            out,
            "{connections:>11} whole / bare: {:.2}; p99 of whole / p99 of file: {:.2}, of bare: {:.2}; \
             p50 of whole / one fdatasync (p10): {:.1}",
            whole.per_second / bare.per_second,
            whole.p99.as_secs_f64() / file.p99.as_secs_f64(),
            whole.p99.as_secs_f64() / bare.p99.as_secs_f64(),
            whole.p50.as_secs_f64() / quick.as_secs_f64(),
        )
        .unwrap();
    }
}

fn micros(time: Duration) -> f64 {
    time.as_secs_f64() * 1e6
}

/// The middle one of several rounds, by speed.
fn median(kind: Kind, connections: usize) -> Measured {
    let mut rounds: Vec<Measured> = (0..ROUNDS)
        .map(|_| {
            let server = Server::start(kind);
            let request = match kind {
                Kind::Hello => Request::Hello,
                Kind::Answered | Kind::File | Kind::Bare | Kind::Whole => Request::Text,
            };
            client::measure(&server, request, connections, LENGTH)
        })
        .collect();
    rounds.sort_by(|a, b| a.per_second.total_cmp(&b.per_second));
    rounds.swap_remove(ROUNDS / 2)
}

/// What an append of a text with one `fdatasync` takes: a tenth and a half take no longer.
fn raw_sync() -> (Duration, Duration) {
    const APPENDS: usize = 500;
    let folder = servers::folder();
    let mut file = File::create(folder.path().join("raw")).unwrap();
    let mut times: Vec<Duration> = (0..APPENDS)
        .map(|_| {
            let begin = Instant::now();
            file.write_all(&[b'x'; 200]).unwrap();
            file.sync_data().unwrap();
            begin.elapsed()
        })
        .collect();
    times.sort_unstable();
    let half = times.swap_remove(APPENDS / 2);
    (times.swap_remove(APPENDS / 10), half)
}
