//! What is refused, in which words, and that everything is left as it was.

use std::fs;

use budwood::{backup, commands::due};

use super::Place;

/// A backup, changed by `spoil`, is not restored, and no store is made of it.
#[track_caller]
fn check_spoilt(spoil: impl FnOnce(&std::path::Path), expected: &str) {
    let place = Place::filled();
    let backup = place.path("backup");
    backup::backup(&place.config(), &backup, &place.clock()).unwrap();
    spoil(&backup);
    let empty = Place::empty();
    let refused = backup::restore(&empty.config(), &backup, &empty.clock()).unwrap_err();
    let said = format!("{refused:#}").replace(&place.folder.path().display().to_string(), "…");
    assert!(said.contains(expected), "{said}");
    assert!(!empty.path("store").exists());
}

/// Changes the text of a file of a backup.
fn edit(name: &'static str, change: impl Fn(&str) -> String) -> impl FnOnce(&std::path::Path) {
    move |backup| {
        let file = backup.join(name);
        let text = fs::read_to_string(&file).unwrap();
        let changed = change(&text);
        assert_ne!(changed, text);
        fs::write(file, changed).unwrap();
    }
}

#[test]
fn a_backup_that_was_changed_is_not_restored() {
    check_spoilt(
        edit("records.jsonl", |text| {
            text.replacen("planted 120", "planted 210", 1)
        }),
        "was changed after it was written; use another copy",
    );
    check_spoilt(
        edit("records.jsonl", |text| {
            text.replacen("planted 120", "planted 12", 1)
        }),
        "it was cut off or changed, use another backup",
    );
    check_spoilt(
        edit("records.jsonl", |text| text[..text.len() / 2].to_owned()),
        "it was cut off or changed, use another backup",
    );
    check_spoilt(
        edit("manifest.json", |text| {
            text.replacen("\"sha256\": \"", "\"sha256\": \"0", 1)
        }),
        "is not what its manifest says (SHA-256 or number of records)",
    );
    check_spoilt(
        edit("manifest.json", |text| text[..text.len() / 2].to_owned()),
        "manifest.json is damaged; use another backup",
    );
    check_spoilt(
        edit("manifest.json", |text| {
            text.replacen("records.jsonl", "../else.jsonl", 1)
        }),
        "manifest.json does not name records.jsonl alone",
    );
}

#[test]
fn a_backup_of_a_newer_program_is_not_restored() {
    check_spoilt(
        edit("manifest.json", |text| {
            text.replacen("\"v\": 1", "\"v\": 2", 1)
        }),
        "version 2; this program knows \"backup\", version 1: use a newer program",
    );
}

#[test]
fn what_is_no_backup_is_not_restored() {
    check_spoilt(
        |backup| fs::remove_file(backup.join("manifest.json")).unwrap(),
        "is this the folder of a backup?",
    );
    check_spoilt(
        |backup| fs::remove_file(backup.join("records.jsonl")).unwrap(),
        "cannot read …/backup/records.jsonl",
    );
}

/// A log, changed by `spoil`, is not put in, and no store is made of it.
#[track_caller]
fn check_spoilt_log(spoil: impl FnOnce(&str) -> String, expected: &str) {
    let place = Place::filled();
    let log = place.export("log.jsonl").unwrap();
    let spoilt = place.path("spoilt.jsonl");
    fs::write(&spoilt, spoil(&log)).unwrap();
    let empty = Place::empty();
    let refused = backup::import(&empty.config(), &spoilt, &empty.clock()).unwrap_err();
    let said = format!("{refused:#}");
    assert!(said.contains(expected), "{said}");
    assert!(!empty.path("store").exists());
}

#[test]
fn a_log_that_is_not_whole_is_not_put_in() {
    let without_last = |log: &str| {
        let lines: Vec<&str> = log.split_inclusive('\n').collect();
        lines[..lines.len() - 1].concat()
    };
    check_spoilt_log(without_last, "the file is cut off here; use another copy");
    check_spoilt_log(|log| log[..log.len() / 3].to_owned(), "use another copy");
    check_spoilt_log(|_| String::new(), "line 1: the file is cut off here");
    check_spoilt_log(
        |log| log.replacen("planted 120", "planted 210", 1),
        "was changed after it was written; use another copy",
    );
    check_spoilt_log(
        |log| format!("{log}{log}"),
        "there is more after the last line",
    );
    check_spoilt_log(
        |log| log.replacen("{\"v\":1", "{\"v\":1,", 1),
        "line 1: not JSON",
    );
    check_spoilt_log(
        |log| {
            let lines: Vec<&str> = log.split_inclusive('\n').collect();
            [&lines[..1], &lines[..]].concat().concat()
        },
        "line 2: the record is there twice or not in its place",
    );
}

#[test]
fn a_record_of_a_newer_program_is_not_put_in() {
    check_spoilt_log(
        |log| {
            log.replacen(
                "{\"v\":1,\"kind\":\"block\"",
                "{\"v\":2,\"kind\":\"block\"",
                1,
            )
        },
        "expected block of version 1, found block of version 2; it was probably written by a \
         newer version of this program",
    );
    check_spoilt_log(
        |log| log.replacen("\"kind\":\"block\"", "\"kind\":\"dream\"", 1),
        "kind \"dream\" is not known",
    );
}

/// A start reads the last fact and every state, not every fact: that takes too long.
#[test]
fn an_old_record_that_cannot_be_read_is_found_when_asked() {
    let place = Place::filled();
    let config = place.config();
    let good = backup::check_records(&config).unwrap();
    let lines = place.export("log.jsonl").unwrap().lines().count() as u64;
    assert_eq!(good, lines - 1);
    {
        let files = sled::open(place.path("store")).unwrap();
        let (key, fact) = files.scan_prefix("e/").next().unwrap().unwrap();
        let newer = String::from_utf8(fact.to_vec())
            .unwrap()
            .replacen("\"v\":1", "\"v\":2", 1);
        files.insert(key, newer.as_bytes()).unwrap();
        files.flush().unwrap();
    }
    drop(place.engine());
    let said = format!("{:#}", backup::check_records(&config).unwrap_err());
    assert!(
        said.contains("expected event of version 1, found event of version 2"),
        "{said}"
    );
}

#[test]
fn nothing_is_put_over_something() {
    let place = Place::filled();
    let config = place.config();
    let (backup, log) = (place.path("backup"), place.path("log.jsonl"));
    backup::backup(&config, &backup, &place.clock()).unwrap();
    backup::export(&config, &log).unwrap();
    let before = place.beside_store();
    for (refused, expected) in [
        (
            backup::backup(&config, &backup, &place.clock()),
            "name a new folder for each backup",
        ),
        (
            backup::backup(&config, &log, &place.clock()),
            "is there already",
        ),
        (backup::export(&config, &log), "choose another name"),
        (backup::export(&config, &backup), "choose another name"),
        (
            backup::restore(&config, &backup, &place.clock()),
            "is not empty, and is left as it is",
        ),
        (
            backup::import(&config, &log, &place.clock()),
            "is not empty, and is left as it is",
        ),
    ] {
        let said = format!("{:#}", refused.unwrap_err());
        assert!(said.contains(expected), "{said}");
    }
    assert_eq!(place.beside_store(), before);
    assert_eq!(place.engine().held_since(), None);
}

#[test]
fn an_empty_folder_is_as_good_as_none() {
    let place = Place::filled();
    fs::create_dir(place.path("backup")).unwrap();
    backup::backup(&place.config(), &place.path("backup"), &place.clock()).unwrap();
    assert!(place.path("backup/manifest.json").is_file());
}

#[test]
fn where_nothing_can_be_written_nothing_is_left_behind() {
    let place = Place::filled();
    fs::write(place.path("file"), "a file, no folder").unwrap();
    let before = place.beside_store();
    for folder in ["file/backup", "no-such-folder/backup"] {
        let folder = place.path(folder);
        let refused = backup::backup(&place.config(), &folder, &place.clock()).unwrap_err();
        let said = format!("{refused:#}");
        assert!(
            said.contains("is there room, and may you write there?"),
            "{said}"
        );
        let refused = backup::export(&place.config(), &folder).unwrap_err();
        let said = format!("{refused:#}");
        assert!(
            said.contains("is there room, and may you write there?"),
            "{said}"
        );
    }
    assert_eq!(place.beside_store(), before);
}

#[test]
fn a_store_that_cannot_be_made_is_named() {
    let place = Place::filled();
    let backup = place.path("backup");
    backup::backup(&place.config(), &backup, &place.clock()).unwrap();
    let blocked = Place::empty();
    fs::write(blocked.path("store"), "a file, no folder").unwrap();
    let refused = backup::restore(&blocked.config(), &backup, &blocked.clock()).unwrap_err();
    let said = format!("{refused:#}");
    assert!(
        said.contains("store: the store's files cannot be read or written"),
        "{said}"
    );
    let kept = fs::read_to_string(blocked.path("store")).unwrap();
    assert_eq!(kept, "a file, no folder");
}

#[test]
fn a_backup_that_broke_off_is_not_in_the_way() {
    let place = Place::filled();
    fs::create_dir(place.path("backup.part")).unwrap();
    fs::write(place.path("backup.part/records.jsonl"), "{\"v\":1,").unwrap();
    backup::backup(&place.config(), &place.path("backup"), &place.clock()).unwrap();
    assert!(!place.path("backup.part").exists());
}

#[test]
fn a_wrong_path_makes_no_store() {
    let place = Place::empty();
    let config = place.config();
    let mut out = Vec::new();
    let day = place.clock.now().date_naive();
    for refused in [
        backup::backup(&config, &place.path("backup"), &place.clock()).map(|_| ()),
        backup::export(&config, &place.path("log.jsonl")).map(|_| ()),
        backup::check_records(&config).map(|_| ()),
        backup::release(&config, &place.clock()),
        due::print(&config, day, place.clock().now(), &mut out),
    ] {
        let said = format!("{:#}", refused.unwrap_err());
        assert!(said.contains("there is no store in"), "{said}");
    }
    assert!(!place.path("store").exists());
    assert_eq!(place.beside_store(), []);
}

#[test]
fn a_store_in_use_without_a_service_is_left_alone() {
    let place = Place::filled();
    let engine = place.engine();
    let config = place.config();
    let backup = place.path("backup");
    for refused in [
        backup::backup(&config, &backup, &place.clock()).map(|_| ()),
        backup::release(&config, &place.clock()),
    ] {
        let said = format!("{:#}", refused.unwrap_err());
        assert!(said.contains("in use by another process"), "{said}");
    }
    assert!(!backup.exists());
    drop(engine);
}
