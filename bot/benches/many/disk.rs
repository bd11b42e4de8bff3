//! How the store's folder grows in a year of texts, whose states and conversations overwrite
//! the old ones.

use budwood::{
    engine::{Engine, Input},
    store::{SledStore, Store},
    words::traffic::Inbound,
};
use chrono::{Days, TimeDelta};

use super::{
    people::{noon, number, settle, setup},
    start::bytes,
    tick::folder,
};

const FARMERS: u32 = 1_000;
/// Texts that share a commit, as on a quiet and on a busy server.
const GROUPS: [usize; 2] = [1, 32];
const TEXTS: [&str; 4] = [
    "weeded A",
    "planted 3 in A yesterday",
    "dead 1 A, cows",
    "A 2 bags npk, sides cut",
];

pub(crate) fn run() {
    println!(
        "{:>16} {:>8} {:>10} {:>12} {:>14} {:>12} {:>12}",
        "texts a commit", "weeks", "texts", "disk MB", "disk/text B", "records B", "disk/records"
    );
    for group in GROUPS {
        year(group);
    }
}

fn year(group: usize) {
    let folder = folder();
    let store = SledStore::open(folder.path(), 16 * 1024 * 1024).unwrap();
    settle(&store, FARMERS, 0);
    let mut engine = Engine::open(setup(), Box::new(store), noon()).unwrap();
    let mut texts = 0_u64;
    for (week, said) in (0..52_u64).zip(TEXTS.iter().cycle()) {
        let now = noon() + Days::new(7 * week);
        let farmers: Vec<u32> = (0..FARMERS).collect();
        for (turn, some) in farmers.chunks(group).enumerate() {
            let inputs = some
                .iter()
                .map(|farmer| text(*farmer, week, said))
                .collect();
            let at = now + TimeDelta::seconds(i64::try_from(turn).unwrap());
            engine.handle(inputs, at).unwrap();
            texts += some.len() as u64;
        }
        if (week + 1) % 13 == 0 {
            let disk = bytes(folder.path());
            let records = records(engine.store());
            println!(
                "{group:>16} {:>8} {texts:>10} {:>12.1} {:>14} {:>12} {:>12.2}",
                week + 1,
                disk as f64 / 1e6,
                disk / texts,
                records / texts,
                disk as f64 / records as f64,
            );
        }
    }
}

fn text(farmer: u32, week: u64, said: &str) -> Input {
    Input::Text(Inbound {
        gateway: "bench".to_owned(),
        gateway_id: Some(format!("{farmer}-{week}")),
        from: number(farmer),
        to: "12345".to_owned(),
        text: said.to_owned(),
        sent_at: None,
    })
}

/// Bytes of all keys and records.
fn records(store: &dyn Store) -> u64 {
    let mut sum = 0;
    let mut after: Option<Vec<u8>> = None;
    loop {
        let some = store.records(after.as_deref(), 1_000).unwrap();
        let Some(last) = some.last() else { return sum };
        after = Some(last.key.clone());
        sum += some
            .iter()
            .map(|record| (record.key.len() + record.line.len()) as u64)
            .sum::<u64>();
    }
}
