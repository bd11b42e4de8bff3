//! Backups, restores, exported logs: whole or refused, and nothing is sent twice after them.
//!
//! Sums are SHA-256 (FIPS 180-4); the sum of the empty message is the published one.

mod faults;
mod running;

use std::{fs, os::unix::fs::PermissionsExt, path::PathBuf, sync::Arc};

use budwood::{
    backup,
    commands::due,
    engine::{Copied, CopyStep, Engine, Input, Outcome, Setup},
    play::virtual_clock,
    service::{
        clock::{Clock, FixedClock},
        config::Config,
        setup,
    },
    store::{Change, Hold, SledStore, Store},
    words::{traffic::Inbound, ways::Ways},
};
use chrono::{DateTime, NaiveDate, TimeDelta, Utc};
use tempfile::TempDir;

use crate::{
    fixture::{
        self, DEMO_ROLL, LINE,
        desk::{Desk, HANA, JARO, at, inbound},
    },
    store::rich_change,
};

const NOON: &str = "2026-12-14T05:00:00Z";

/// A folder with a store in use by nobody, and room for what is made of it.
struct Place {
    folder: TempDir,
    clock: FixedClock,
}

impl Place {
    /// An empty one: no store was made yet.
    fn empty() -> Self {
        Self {
            folder: tempfile::tempdir().unwrap(),
            clock: FixedClock::at(at(NOON)),
        }
    }

    /// With the demo's list, a report, and two answers that wait.
    fn filled() -> Self {
        let place = Self::empty();
        let mut engine = place.engine();
        let plan = virtual_clock::plan_roll(&engine, DEMO_ROLL, at(NOON));
        let inputs = vec![
            Input::Roll(Box::new(virtual_clock::entries(&plan))),
            Input::Text(inbound(JARO, "planted 120")),
            Input::Text(inbound(HANA, "help")),
        ];
        engine.handle(inputs, at(NOON)).unwrap();
        assert_eq!(engine.waiting(), 2);
        place
    }

    fn config(&self) -> Config {
        fixture::config(&self.path("store"))
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn clock(&self) -> Clock {
        Clock::Fixed(self.clock.clone())
    }

    fn engine(&self) -> Engine {
        let setup = Setup {
            ways: Ways::one(LINE, true),
            ..setup::from_config(&self.config()).unwrap()
        };
        let store = SledStore::open(&self.path("store"), 16 * 1024 * 1024).unwrap();
        Engine::open(Arc::new(setup), Box::new(store), self.clock.now()).unwrap()
    }

    fn export(&self, name: &str) -> anyhow::Result<String> {
        backup::export(&self.config(), &self.path(name))?;
        Ok(fs::read_to_string(self.path(name))?)
    }

    /// The names of all files and folders, and what the files hold, to see what was changed.
    fn beside_store(&self) -> Vec<(String, Vec<u8>)> {
        let mut found = Vec::new();
        let mut folders = vec![self.folder.path().to_owned()];
        while let Some(folder) = folders.pop() {
            for entry in fs::read_dir(folder).unwrap() {
                let path = entry.unwrap().path();
                if path == self.path("store") {
                    continue;
                }
                found.push((
                    path.display().to_string(),
                    fs::read(&path).unwrap_or_default(),
                ));
                if path.is_dir() {
                    folders.push(path);
                }
            }
        }
        found.sort();
        found
    }
}

#[test]
fn a_log_that_is_put_in_and_written_again_is_the_same_byte_for_byte() {
    let first = Place::filled();
    let log = first.export("log.jsonl").unwrap();
    assert!(log.lines().count() > 50);
    let second = Place::empty();
    let file = first.path("log.jsonl");
    let records = backup::import(&second.config(), &file, &second.clock()).unwrap();
    assert_eq!(records + 1, log.lines().count() as u64);
    assert_eq!(second.export("again.jsonl").unwrap(), log);
    // And the first one was not changed by being read.
    assert_eq!(first.export("once-more.jsonl").unwrap(), log);
}

/// With a record of every kind and shape in it.
#[test]
fn every_shape_of_record_comes_back() {
    let first = Place::empty();
    let store = SledStore::open(&first.path("store"), 16 * 1024 * 1024).unwrap();
    store.commit(&rich_change()).unwrap();
    drop(store);
    let log = first.export("log.jsonl").unwrap();
    let second = Place::empty();
    backup::import(&second.config(), &first.path("log.jsonl"), &second.clock()).unwrap();
    assert_eq!(second.export("again.jsonl").unwrap(), log);
    let open = |place: &Place| SledStore::open(&place.path("store"), 16 * 1024 * 1024).unwrap();
    let (mut one, mut other) = (
        open(&first).load(usize::MAX).unwrap(),
        open(&second).load(usize::MAX).unwrap(),
    );
    // Each store's own word is its own.
    assert_ne!(one.hold, other.hold);
    (one.hold, other.hold) = (Hold::Free, Hold::Free);
    assert_eq!(one, other);
}

/// The page of the format names the kinds in the order in which a log has them.
#[test]
fn the_kinds_of_record_are_those_on_their_page() {
    let first = Place::empty();
    let store = SledStore::open(&first.path("store"), 16 * 1024 * 1024).unwrap();
    store.commit(&rich_change()).unwrap();
    drop(store);
    let log = first.export("log.jsonl").unwrap();
    let kind = |line: &str| line.split('"').nth(5).map(str::to_owned);
    let mut kinds: Vec<String> = log.lines().filter_map(kind).collect();
    kinds.dedup();
    let page = include_str!("../bot/src/store/README.md");
    let row = |line: &str| Some(line.strip_prefix("| `")?.split_once('`')?.0.to_owned());
    let mut shown: Vec<String> = page.lines().filter_map(row).collect();
    shown.push("end".to_owned());
    assert_eq!(kinds, shown);
}

#[test]
fn the_log_of_an_empty_store_ends_at_once() {
    let place = Place::empty();
    drop(place.engine());
    assert_eq!(
        place.export("log.jsonl").unwrap(),
        "{\"v\":1,\"kind\":\"end\",\"body\":{\"records\":0,\"sha256\":\
         \"e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855\"}}\n"
    );
}

#[test]
fn a_restored_store_is_the_one_that_was_backed_up() {
    let first = Place::filled();
    let backup = first.path("backup");
    let records = backup::backup(&first.config(), &backup, &first.clock()).unwrap();
    let second = Place::empty();
    let put_in = backup::restore(&second.config(), &backup, &second.clock()).unwrap();
    assert_eq!(put_in, records);
    assert_eq!(
        second.export("log.jsonl").unwrap(),
        first.export("log.jsonl").unwrap()
    );
    // The folder of a backup holds an exported log and says when it was made.
    let manifest = fs::read_to_string(backup.join("manifest.json")).unwrap();
    for (name, mode) in [
        ("", 0o700),
        ("manifest.json", 0o600),
        ("records.jsonl", 0o600),
    ] {
        let metadata = fs::metadata(backup.join(name)).unwrap();
        assert_eq!(metadata.permissions().mode() & 0o777, mode, "{name}");
    }
    assert!(manifest.contains(NOON), "{manifest}");
    assert_eq!(
        fs::read_to_string(backup.join("records.jsonl")).unwrap(),
        first.export("again.jsonl").unwrap()
    );
}

/// What waits in a backup may have been sent since it was taken.
#[test]
fn only_the_newest_copies_are_kept_and_nothing_of_others_is_removed() {
    let place = Place::filled();
    let folder = place.path("copies");
    fs::create_dir(&folder).unwrap();
    let others = ["budwood-2020-01-01T000000Z", "budwood-notes", "by-hand"];
    for other in others {
        // None of them is a backup, whatever it is called.
        fs::create_dir(folder.join(other)).unwrap();
    }
    let mut made = Vec::new();
    for _ in 0..4 {
        let kept = backup::backup_and_keep(&place.config(), &folder, 2, &place.clock()).unwrap();
        made.push(kept.0);
        place.clock.advance(TimeDelta::days(1));
    }
    let are_there: Vec<bool> = made.iter().map(|copy| copy.exists()).collect();
    assert_eq!(are_there, [false, false, true, true]);
    assert!(others.iter().all(|other| folder.join(other).exists()));
    assert!(backup::try_restore(&made[3]).unwrap() > 0);
    let records = made[3].join("records.jsonl");
    let cut = fs::read(&records).unwrap();
    fs::write(&records, &cut[..cut.len() - 1]).unwrap();
    let why = backup::try_restore(&made[3]).unwrap_err();
    assert!(format!("{why:#}").contains("cut off"), "{why:#}");
}

#[test]
fn nothing_is_sent_after_a_restore_until_a_person_says_so() {
    let first = Place::filled();
    let backup = first.path("backup");
    backup::backup(&first.config(), &backup, &first.clock()).unwrap();
    let place = Place::empty();
    place.clock.advance(TimeDelta::hours(20));
    backup::restore(&place.config(), &backup, &place.clock()).unwrap();

    let mut engine = place.engine();
    assert_eq!(engine.held_since(), Some(place.clock.now()));
    assert_eq!((engine.next_try(), engine.next_wake()), (None, None));
    let text = Input::Text(inbound(JARO, "2 dead"));
    let told = handle(&mut engine, place.clock.now(), text);
    assert_eq!(told.outcome, Some(Outcome::Recorded));
    assert_eq!(claim(&mut engine, place.clock.now()), None);
    drop(engine);

    // The two that waited in the backup are too old five hours later; the new one is not.
    place.clock.advance(TimeDelta::hours(5));
    backup::release(&place.config(), &place.clock()).unwrap();
    let mut engine = place.engine();
    assert_eq!(engine.held_since(), None);
    let sent: Vec<String> = std::iter::from_fn(|| claim(&mut engine, place.clock.now())).collect();
    assert_eq!(sent, [JARO]);
    assert!(engine.next_wake().is_some());
}

/// A receipt for a text that was sent after the backup must not settle another text.
#[test]
fn ids_given_after_the_backup_are_not_given_again() {
    let first = Place::filled();
    let backup = first.path("backup");
    backup::backup(&first.config(), &backup, &first.clock()).unwrap();
    let mut engine = first.engine();
    handle(
        &mut engine,
        at(NOON),
        Input::Text(inbound(HANA, "who are you")),
    );
    let after_backup = last_message(&engine);

    let second = Place::empty();
    backup::restore(&second.config(), &backup, &second.clock()).unwrap();
    let mut engine = second.engine();
    handle(
        &mut engine,
        at(NOON),
        Input::Text(inbound(HANA, "who are you")),
    );
    assert!(last_message(&engine) > after_backup + 1_000);
}

/// The same where nothing was said before the release, and where one backup is restored twice.
#[test]
fn ids_are_new_after_a_release_and_after_a_second_restore() {
    let first = Place::filled();
    let backup = first.path("backup");
    backup::backup(&first.config(), &backup, &first.clock()).unwrap();
    let restored_at = |minutes| {
        let place = Place::empty();
        place.clock.advance(TimeDelta::minutes(minutes));
        backup::restore(&place.config(), &backup, &place.clock()).unwrap();
        backup::release(&place.config(), &place.clock()).unwrap();
        let mut engine = place.engine();
        let text = Input::Text(inbound(HANA, "who are you"));
        handle(&mut engine, place.clock.now(), text);
        last_message(&engine)
    };
    let (once, again) = (restored_at(1), restored_at(2));
    assert!(once > last_message(&first.engine()) + 1_000);
    assert!(again > once + 1_000);
}

fn last_message(engine: &Engine) -> u64 {
    engine.store().load(1).unwrap().last_message.unwrap().0
}

fn handle(engine: &mut Engine, now: DateTime<Utc>, input: Input) -> budwood::engine::Told {
    engine.handle(vec![input], now).unwrap().remove(0)
}

fn claim(engine: &mut Engine, now: DateTime<Utc>) -> Option<String> {
    let text = handle(engine, now, fixture::claim()).send?;
    handle(
        engine,
        now,
        Input::Tried {
            id: text.id,
            outcome: budwood::words::traffic::SendOutcome::Accepted { ids: Vec::new() },
        },
    );
    Some(text.to)
}

/// Records change, come and go while the copy is taken; it is as the store was when it began.
#[test]
fn a_copy_is_of_one_moment() {
    let mut desk = Desk::open(NOON);
    for number in 0..2_500 {
        desk.inbound(Inbound {
            gateway_id: Some(format!("m-{number}")),
            ..inbound("SHOP", "win a prize")
        });
    }
    let before = desk.lines();
    desk.input(Input::Copy(CopyStep::Begin));
    let mut copied = Vec::new();
    let mut parts = 0;
    loop {
        match desk.input(Input::Copy(CopyStep::Next)).copied.unwrap() {
            Copied::Lines(lines) => copied.extend(lines),
            Copied::End => break,
            other @ (Copied::Begun | Copied::Broken(_)) => panic!("{other:?}"),
        }
        parts += 1;
        // A new fact, a changed state and talk; then a person and phone that go.
        match parts {
            1 => assert_eq!(desk.text(JARO, "planted 120"), "recorded"),
            2 => erase(&mut desk),
            _ => assert_eq!(desk.text(HANA, "planted 90"), "recorded"),
        }
    }
    assert!(parts >= 3);
    let copied: Vec<String> = copied
        .into_iter()
        .map(|line| String::from_utf8(line).unwrap())
        .collect();
    assert!(copied == before, "{} and {}", copied.len(), before.len());
    assert!(desk.lines() != before);
}

fn erase(desk: &mut Desk) {
    assert_eq!(desk.text(JARO, "ERASE"), "asked for a code");
    let sent = desk.send_all();
    let ask = &sent.last().unwrap().text;
    let code: Vec<&str> = ask
        .split(|c: char| !c.is_ascii_digit())
        .filter(|digits| digits.len() == 6)
        .collect();
    assert_eq!(desk.text(JARO, code[0]), "done with a code");
}

#[test]
fn due_lists_jobs_by_block_and_changes_nothing() {
    let place = Place::filled();
    let log = place.export("before.jsonl").unwrap();
    let mut out = Vec::new();
    let day = NaiveDate::from_ymd_opt(2026, 12, 14).unwrap();
    due::print(&place.config(), day, place.clock().now(), &mut out).unwrap();
    let page = String::from_utf8(out).unwrap();
    let tamo: Vec<&str> = page
        .lines()
        .filter(|line| line.starts_with("KOLO, Tamo Rill, A: "))
        .collect();
    assert!(!tamo.is_empty(), "{page}");
    assert!(
        tamo.iter().all(|line| line.contains(", due from 2026-")),
        "{page}"
    );
    assert!(page.ends_with("jobs due on 2026-12-14\n"), "{page}");
    assert_eq!(place.export("after.jsonl").unwrap(), log);
    // Long before anything was planned nothing is due.
    let mut out = Vec::new();
    let day = NaiveDate::from_ymd_opt(2020, 1, 1).unwrap();
    due::print(&place.config(), day, place.clock().now(), &mut out).unwrap();
    assert_eq!(
        String::from_utf8(out).unwrap(),
        "0 jobs due on 2020-01-01\n"
    );
}

/// A store in which a restore broke off looks like a whole one but for its own word.
#[test]
fn a_half_filled_store_is_refused_by_everything() {
    let place = Place::filled();
    let store = SledStore::open(&place.path("store"), 16 * 1024 * 1024).unwrap();
    store
        .commit(&Change {
            hold: Some(Hold::Filling),
            ..Change::default()
        })
        .unwrap();
    drop(store);
    let config = place.config();
    let refusals = [
        setup::open_engine(&config, at(NOON)).map(|_| ()),
        backup::backup(&config, &place.path("backup"), &place.clock()).map(|_| ()),
        backup::export(&config, &place.path("log.jsonl")).map(|_| ()),
    ];
    for refusal in refusals {
        let said = format!("{:#}", refusal.unwrap_err());
        assert!(said.contains("the store is half filled"), "{said}");
    }
    assert_eq!(place.beside_store(), []);
}
