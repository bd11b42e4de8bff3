//! A store as a program with records of version 1 left it: it opens, says the same, and is written
//! on.
//!
//! Its keys and its own two marks have never changed; its records are those of
//! `tests/format/v1.jsonl`, laid down byte for byte.

use std::{collections::BTreeMap, fs};

use super::{MADE, MARK, SledStore, VERSION};
use crate::store::{Change, MemoryStore, RECORD_VERSION, Store, read_line};

const V1: &str = include_str!("../../../../tests/format/v1.jsonl");

#[test]
fn a_store_of_the_first_version_opens_says_the_same_and_is_written_on() {
    let folder = tempfile::tempdir().unwrap();
    let mut rows = BTreeMap::new();
    for line in V1.lines() {
        let key = read_line(line.as_bytes(), &mut Change::default()).unwrap();
        rows.insert(key, line);
    }
    assert!(rows.len() > 30 && RECORD_VERSION > 1);
    {
        let tree = sled::open(folder.path()).unwrap();
        for (key, line) in &rows {
            tree.insert(key, line.as_bytes()).unwrap();
        }
        tree.insert(MARK, VERSION).unwrap();
        tree.flush().unwrap();
        fs::write(folder.path().join(MADE), VERSION).unwrap();
    }
    let mut all = Change::default();
    for line in rows.values() {
        read_line(line.as_bytes(), &mut all).unwrap();
    }
    let expected = MemoryStore::default();
    expected.commit(&all).unwrap();
    let texts = |store: &dyn Store| {
        let mut texts = Vec::new();
        store.each_received(&mut |text| texts.push(text)).unwrap();
        texts
    };
    let events = |store: &dyn Store| {
        let mut events = Vec::new();
        store.each_event(&mut |event| events.push(event)).unwrap();
        events
    };
    for written in 0..2 {
        let store = SledStore::open(folder.path(), 16 * 1024 * 1024).unwrap();
        assert_eq!(store.load(1_000).unwrap(), expected.load(1_000).unwrap());
        assert_eq!(texts(&store), texts(&expected));
        assert_eq!(events(&store), events(&expected));
        // What moves on is written in the version of today, beside what is not touched.
        let mut moved = store.load(1_000).unwrap().outbound;
        moved.truncate(1);
        assert_eq!(moved.len(), 1);
        moved[0].tries += 1 + written;
        let change = Change {
            outbound: moved,
            ..Change::default()
        };
        store.commit(&change).unwrap();
        expected.commit(&change).unwrap();
    }
}
