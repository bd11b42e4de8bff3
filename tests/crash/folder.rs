//! Folders that cannot be used: one clear line that says what to do, exit code 1, nothing changed.

use std::{
    collections::BTreeMap,
    fs,
    ops::Range,
    path::{Path, PathBuf},
};

use budwood::store::{SledStore, Store};

use super::{
    chance::Chance,
    full::Disk,
    place::Place,
    series::{Series, copy_folder},
    service::{Between, Ended, Service},
    verdict::judge,
};

/// Starts where it cannot work; gives the one line.
#[track_caller]
fn refused(place: &Place) -> String {
    match Service::start(place, &Between::Nothing) {
        Ok(_) => panic!("it starts"),
        Err(ended) => {
            assert_eq!(ended.status.code(), Some(1), "{ended:?}");
            the_line(&ended)
        }
    }
}

/// What the program says at its end. The store's library may have logged something before.
#[track_caller]
fn the_line(ended: &Ended) -> String {
    let ours = |line: &&String| line.starts_with("budwood: ");
    let lines: Vec<&String> = ended.log.iter().filter(ours).collect();
    assert_eq!(lines.len(), 1, "{ended:?}");
    lines[0].clone()
}

/// All files of a folder with their content.
fn content(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut found = BTreeMap::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            found.extend(content(&path));
        } else {
            found.insert(path.clone(), fs::read(&path).unwrap());
        }
    }
    found
}

#[test]
fn a_store_in_use_is_named() {
    let place = Place::settled();
    let service = Service::run(&place);
    let line = refused(&place);
    assert!(
        line.contains("in use by another process: stop that one first"),
        "{line}"
    );
    let mut series = Series::new(1, place);
    series.ledger.write(5, &mut series.chance);
    assert_eq!(series.deliver(&service), 0, "the first goes on");
    service.kill();
    series.judge().unwrap();
}

#[test]
fn a_folder_that_cannot_be_written_is_named() {
    let disk = Disk::new();
    let store = disk.path().join("store");
    let place = Place::with_store(store.clone());
    place.load_roll();
    let before = content(&store);
    disk.make_read_only();
    let line = refused(&place);
    assert!(line.contains(&store.display().to_string()), "{line}");
    assert!(line.contains("mounted for writing"), "{line}");
    assert_eq!(content(&store), before);
}

/// Rubbish at many places of the store's log: it opens with all that was acknowledged, or says
/// what to do and leaves the log as it was. Where it goes on with less, reading it through tells.
#[test]
fn a_damaged_store_is_named() {
    let mut whole = Series::new(9, Place::settled());
    whole.ledger.write(100, &mut whole.chance);
    let service = Service::run(&whole.place);
    assert_eq!(whole.deliver(&service), 0);
    service.kill();
    let mut named = 0;
    for _ in 0..40 {
        let place = Place::new();
        copy_folder(whole.place.store(), place.store());
        let log = place.store().join("db");
        let rubbish = put_rubbish(&log, &mut whole.chance);
        let before = fs::read(&log).unwrap();
        match Service::start(&place, &Between::Nothing) {
            Ok(service) => {
                service.kill();
                if let Err(problem) = judge(place.store(), &whole.ledger) {
                    let store = SledStore::open(place.store(), 16 * 1024 * 1024).unwrap();
                    let seen = store.verify().is_err();
                    assert!(seen, "rubbish at {rubbish:?} is not seen: {problem}");
                }
            }
            Err(ended) => {
                assert_eq!(ended.status.code(), Some(1), "{rubbish:?}: {ended:?}");
                let line = the_line(&ended);
                assert!(
                    line.contains("restore the last backup"),
                    "{rubbish:?}: {line}"
                );
                assert!(fs::read(&log).unwrap() == before, "{rubbish:?}: changed");
                named += 1;
            }
        }
    }
    assert!(named > 0, "nothing was damaged");
}

fn put_rubbish(file: &Path, chance: &mut Chance) -> Range<usize> {
    let mut bytes = fs::read(file).unwrap();
    let at = chance.place(bytes.len());
    let end = (at + 1 + chance.place(4096)).min(bytes.len());
    bytes[at..end].fill(0x5a);
    fs::write(file, bytes).unwrap();
    at..end
}
