//! What crashes leave behind, made by hand, one case each.

use std::{
    ffi::OsString,
    fs,
    panic::{AssertUnwindSafe, catch_unwind},
    path::{Path, PathBuf},
};

use budwood_scheduler::{Body, Event, EventId, PersonId, Purpose, Source};
use chrono::DateTime;
use tempfile::TempDir;

use crate::{
    store::{Change, SledStore, Store, StoreError, sled::patiently},
    words::message::Talk,
};

const CACHE: u64 = 16 * 1024 * 1024;
const EVENTS: u64 = 300;

fn event(id: u64) -> Event {
    Event {
        id: EventId(id),
        at: DateTime::from_timestamp(1_790_000_000, 0).unwrap(),
        by: Some(PersonId(1)),
        source: Source::Sheet,
        message: None,
        supersedes: None,
        body: Body::ConsentGiven {
            person: PersonId(1),
            purpose: Purpose::Reminders,
            how: "signed sheet".to_owned(),
        },
    }
}

/// A store with facts in it, closed; sled leaves a snapshot behind after enough openings.
fn filled() -> TempDir {
    let folder = tempfile::tempdir().unwrap();
    let store = SledStore::open(folder.path(), CACHE).unwrap();
    for id in 1..=EVENTS {
        store
            .commit(&Change {
                events: vec![event(id)],
                ..Change::default()
            })
            .unwrap();
    }
    drop(store);
    drop(SledStore::open(folder.path(), CACHE).unwrap());
    folder
}

fn count(folder: &Path) -> u64 {
    let store = SledStore::open(folder, CACHE).unwrap();
    let mut number = 0;
    store.each_event(&mut |_| number += 1).unwrap();
    number
}

fn snapshot(folder: &Path) -> std::path::PathBuf {
    fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .find(|path| {
            path.file_name()
                .unwrap()
                .to_str()
                .unwrap()
                .starts_with("snap.")
        })
        .expect("sled leaves a snapshot")
}

#[test]
fn a_snapshot_that_was_being_written_is_removed() {
    let folder = filled();
    let whole = snapshot(folder.path());
    let half = folder.path().join("snap.FFFFFFFFFFFFFFFF.generating");
    let bytes = fs::read(&whole).unwrap();
    fs::write(&half, &bytes[..bytes.len() / 2]).unwrap();
    assert_eq!(count(folder.path()), EVENTS);
    assert!(!half.exists());
}

#[test]
fn a_broken_snapshot_is_set_aside() {
    let folder = filled();
    let broken = snapshot(folder.path());
    let bytes = fs::read(&broken).unwrap();
    fs::write(&broken, &bytes[..bytes.len() / 2]).unwrap();
    assert_eq!(count(folder.path()), EVENTS);
    let aside = fs::read_dir(folder.path().join("set-aside"))
        .unwrap()
        .filter(|entry| entry.as_ref().unwrap().path().is_file())
        .count();
    assert_eq!(aside, 1, "what was set aside is kept");
}

#[test]
fn a_torn_conf_is_set_aside() {
    let folder = filled();
    let conf = folder.path().join("conf");
    let bytes = fs::read(&conf).unwrap();
    for cut in [0, 1, bytes.len() / 2, bytes.len() - 1] {
        fs::write(&conf, &bytes[..cut]).unwrap();
        assert_eq!(count(folder.path()), EVENTS, "cut at {cut}");
    }
}

fn damaged(folder: &Path) -> bool {
    matches!(SledStore::open(folder, CACHE), Err(StoreError::Damaged(place))
        if place == folder.display().to_string())
}

#[test]
fn a_store_that_cannot_be_mended_is_left_as_it_was_and_named() {
    let folder = filled();
    let snapshot = snapshot(folder.path());
    let conf = folder.path().join("conf");
    let rubbish = vec![0x5A; 4 * 1024 * 1024];
    fs::write(folder.path().join("db"), &rubbish).unwrap();
    fs::write(&snapshot, b"not a snapshot").unwrap();
    fs::write(&conf, b"not a conf").unwrap();
    assert!(damaged(folder.path()));
    assert_eq!(fs::read(&snapshot).unwrap(), b"not a snapshot");
    assert_eq!(fs::read(&conf).unwrap(), b"not a conf");
    assert!(fs::read(folder.path().join("db")).unwrap() == rubbish);
}

#[test]
fn a_log_that_was_emptied_is_not_taken_for_a_new_store() {
    let folder = filled();
    fs::remove_file(snapshot(folder.path())).unwrap();
    fs::write(folder.path().join("db"), b"").unwrap();
    assert!(damaged(folder.path()));
}

/// A damaged log is cut off by sled without a word; the mark tells that something is missing.
#[test]
fn a_log_that_was_cut_off_is_noticed() {
    let folder = tempfile::tempdir().unwrap();
    let store = SledStore::open(folder.path(), CACHE).unwrap();
    for id in 1..=EVENTS {
        let events = vec![event(id)];
        let change = Change {
            events,
            ..Change::default()
        };
        store.commit(&change).unwrap();
    }
    drop(store);
    let db = folder.path().join("db");
    let whole = fs::read(&db).unwrap();
    let at = whole.len() / 2;
    let mut rotten = whole.clone();
    rotten[at..at + 512].fill(0x5A);
    fs::write(&db, &rotten).unwrap();
    for _ in 0..2 {
        assert!(damaged(folder.path()));
        assert!(fs::read(&db).unwrap() == rotten, "it is left as it was");
    }
    fs::write(&db, &whole).unwrap();
    assert_eq!(count(folder.path()), EVENTS);
    let copies = fs::read_dir(folder.path().join("set-aside/before"));
    assert_eq!(copies.unwrap().count(), 0);
}

/// Facts of some size, told while the store was opened twice: the newest snapshot stands in the
/// middle of a log of many segments.
fn long() -> TempDir {
    let folder = tempfile::tempdir().unwrap();
    for half in [1..=EVENTS / 2, EVENTS / 2 + 1..=EVENTS] {
        let store = SledStore::open(folder.path(), CACHE).unwrap();
        for id in half {
            let mut event = event(id);
            event.body = Body::ConsentGiven {
                person: PersonId(1),
                purpose: Purpose::Reminders,
                how: "signed sheet ".repeat(1_000),
            };
            let events = vec![event];
            store
                .commit(&Change {
                    events,
                    ..Change::default()
                })
                .unwrap();
        }
    }
    folder
}

fn is_whole(folder: &Path) -> bool {
    SledStore::open(folder, CACHE).unwrap().verify().is_ok()
}

/// Damage all along a log: no loss goes unseen, and where the store is refused, whatever sled would
/// have cut off is there again once the damage is taken away.
#[test]
fn damage_anywhere_in_a_log_is_seen_and_made_no_worse() {
    let (whole, files) = read(&long());
    assert!(whole.len() > 12 * 512 * 1024, "{}", whole.len());
    let (mut refused, mut gaps) = (0, 0);
    for at in (0..whole.len() - 512).step_by(whole.len() / 45) {
        // Now in a header, now behind one, now anywhere.
        let at = [at, at / 524_288 * 524_288, at / 524_288 * 524_288 + 20][at % 3];
        let mut rotten = whole.clone();
        rotten[at..at + 512].fill(0x5A);
        let (folder, db) = write(&rotten, &files);
        if is_refused_as_a_long_one(folder.path()) {
            refused += 1;
            assert_eq!(helpers(folder.path()), files, "at {at}");
            let mut left = fs::read(&db).unwrap();
            left[at..at + 512].copy_from_slice(&whole[at..at + 512]);
            fs::write(&db, &left).unwrap();
            assert_eq!(count(folder.path()), EVENTS, "at {at}");
        } else if !is_whole(folder.path()) {
            gaps += 1;
        } else {
            assert_eq!(count(folder.path()), EVENTS, "at {at}");
        }
    }
    assert!(refused >= 10 && gaps >= 3, "{refused} {gaps}");
}

/// Of a log that is too long to be copied whole.
fn is_refused_as_a_long_one(folder: &Path) -> bool {
    let opened = patiently(|| super::open_keeping(folder, 0, || SledStore::attempt(folder, CACHE)));
    matches!(opened, Err(StoreError::Damaged(_)))
}

/// Conversations of some size: what the engine reads at its start lies all along the log.
fn talkative() -> TempDir {
    let folder = tempfile::tempdir().unwrap();
    let store = SledStore::open(folder.path(), CACHE).unwrap();
    for number in 0..EVENTS {
        let at = DateTime::from_timestamp(1_790_000_000, 0).unwrap();
        let talk = Talk {
            last_text: Some(("weeded A and B ".repeat(500), at)),
            ..Talk::default()
        };
        let talks = vec![(format!("+447700900{number:03}"), talk)];
        store
            .commit(&Change {
                talks,
                ..Change::default()
            })
            .unwrap();
    }
    drop(store);
    drop(SledStore::open(folder.path(), CACHE).unwrap());
    folder
}

/// No load fails after the store was opened: by then nothing can be put back.
#[test]
fn what_a_start_reads_is_read_while_it_can_be_put_back() {
    let (whole, files) = read(&talkative());
    let mut refused = 0;
    for at in (0..whole.len() - 4096).step_by(whole.len() / 60) {
        let mut rotten = whole.clone();
        rotten[at..at + 4096].fill(0x5A);
        let (folder, db) = write(&rotten, &files);
        match SledStore::open(folder.path(), CACHE) {
            Ok(store) => {
                let loaded = catch_unwind(AssertUnwindSafe(|| store.load(10).map(drop)));
                assert!(matches!(loaded, Ok(Ok(()))), "at {at}: {loaded:?}");
            }
            Err(_) => {
                refused += 1;
                assert!(fs::read(&db).unwrap() == rotten, "at {at}");
            }
        }
    }
    assert!(refused >= 10, "{refused}");
}

/// Names and bytes.
type Files = Vec<(OsString, Vec<u8>)>;

/// All files but the log.
fn helpers(folder: &Path) -> Files {
    let paths = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path());
    let mut files: Files = paths
        .filter(|path| path.is_file() && !path.ends_with("db"))
        .map(|path| {
            let name = path.file_name().unwrap().to_owned();
            (name, fs::read(path).unwrap())
        })
        .collect();
    files.sort();
    files
}

/// The log and the other files of a store.
fn read(folder: &TempDir) -> (Vec<u8>, Files) {
    let log = fs::read(folder.path().join("db")).unwrap();
    (log, helpers(folder.path()))
}

/// A folder of its own for each damage: sled may write to one for a moment after it was closed.
fn write(log: &[u8], files: &Files) -> (TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let db = folder.path().join("db");
    fs::write(&db, log).unwrap();
    for (name, bytes) in files {
        fs::write(folder.path().join(name), bytes).unwrap();
    }
    (folder, db)
}

#[test]
fn a_first_start_that_was_cut_off_is_finished_by_the_next() {
    let folder = filled();
    fs::remove_file(folder.path().join("budwood")).unwrap();
    assert_eq!(count(folder.path()), EVENTS);
    fs::write(folder.path().join("budwood"), b"").unwrap();
    assert_eq!(count(folder.path()), EVENTS);
}

#[test]
fn a_newer_layout_is_refused() {
    let folder = filled();
    fs::write(folder.path().join("budwood"), b"2\n").unwrap();
    let refused = SledStore::open(folder.path(), CACHE).unwrap_err();
    assert!(refused.to_string().contains("layout 2"), "{refused}");
}

#[test]
fn a_store_in_use_keeps_its_unfinished_snapshot() {
    let folder = filled();
    let running = SledStore::open(folder.path(), CACHE).unwrap();
    let half = folder.path().join("snap.FFFFFFFFFFFFFFFF.generating");
    fs::write(&half, b"being written").unwrap();
    let second = SledStore::open(folder.path(), CACHE);
    assert!(matches!(second, Err(StoreError::InUse(_))));
    assert!(half.exists());
    drop(running);
}
