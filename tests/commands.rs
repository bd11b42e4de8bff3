//! Commands as a shell runs them: what they print, and into what.

use std::{
    io::{BufRead, BufReader, Read},
    process::{Command, Stdio},
};

use budwood::roll::Column;

fn budwood(args: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_budwood"));
    command
        .current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
        .args(args)
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped());
    command
}

/// `budwood … | head -1` with nobody left to read the rest: no word of it, and no failure.
#[test]
fn a_reader_that_goes_away_is_no_error() {
    for args in [
        &["demo", "--all"][..],
        &["roll", "columns"],
        &["roll", "check", "demo-data/roll.csv"],
        &["check", "calendar", "scheduler/calendars/fao.toml"],
        &["read", "planted 120 block B"],
        &[
            "rehearse",
            "demo-data/roll.csv",
            "--years",
            "1",
            "--rains-late",
            "0",
        ],
        &[
            "due",
            "--plan",
            "--planting",
            "2027-06-01",
            "--area",
            "1 ha",
        ],
    ] {
        // Gone before the first line, so that no pipe is large enough to hold what is written.
        let (reader, writer) = std::io::pipe().unwrap();
        drop(reader);
        let output = budwood(args).stdout(writer).output().unwrap();
        let told = String::from_utf8_lossy(&output.stderr);
        assert!(output.status.success(), "{args:?}: {told}");
        assert_eq!(told, "", "{args:?}");
    }
}

/// Whoever starts the program, and with whatever mask.
#[test]
fn only_the_owner_can_read_what_is_stored() {
    use std::{fs, os::unix::fs::PermissionsExt};
    let folder = tempfile::tempdir().unwrap();
    let store = folder.path().join("store");
    // Made by hand, open to all.
    fs::create_dir(&store).unwrap();
    fs::set_permissions(&store, fs::Permissions::from_mode(0o777)).unwrap();
    let output = std::process::Command::new("sh")
        .args([
            "-c",
            "umask 000; exec \"$0\" talk --store \"$1\" </dev/null",
        ])
        .args([env!("CARGO_BIN_EXE_budwood").as_ref(), store.as_os_str()])
        .output()
        .unwrap();
    assert!(output.status.success(), "{output:?}");
    let mut seen = 0;
    let mut left = vec![store];
    while let Some(path) = left.pop() {
        let about = fs::metadata(&path).unwrap();
        let mode = about.permissions().mode() & 0o777;
        assert_eq!(mode & 0o077, 0, "{} is {mode:o}", path.display());
        seen += 1;
        if about.is_dir() {
            left.extend(
                fs::read_dir(path)
                    .unwrap()
                    .map(|entry| entry.unwrap().path()),
            );
        }
    }
    assert!(seen > 3, "{seen} files and folders");
}

#[test]
fn a_page_is_read_up_to_its_first_line() {
    let mut child = budwood(&["demo", "--all"]).spawn().unwrap();
    let mut first = String::new();
    let mut lines = BufReader::new(child.stdout.take().unwrap());
    lines.read_line(&mut first).unwrap();
    assert!(!first.is_empty());
    drop(lines);
    let mut told = String::new();
    child
        .stderr
        .take()
        .unwrap()
        .read_to_string(&mut told)
        .unwrap();
    assert!(child.wait().unwrap().success(), "{told}");
    assert_eq!(told, "");
}

/// A file that is written to is full, or cannot be: that stays an error.
#[test]
fn a_page_that_cannot_be_written_is_an_error() {
    let full = std::fs::OpenOptions::new().write(true).open("/dev/full");
    let output = budwood(&["roll", "columns"])
        .stdout(full.unwrap())
        .output()
        .unwrap();
    assert!(!output.status.success());
    assert!(!output.stderr.is_empty());
}

/// Bars are for terminals: what a file or a log gets is the page alone.
#[test]
fn no_progress_is_drawn_into_a_file() {
    let args = ["rehearse", "demo-data/roll.csv", "--years", "1"];
    let output = budwood(&args).output().unwrap();
    assert!(output.status.success());
    assert_eq!(String::from_utf8_lossy(&output.stderr), "");
    let page = String::from_utf8(output.stdout).unwrap();
    assert!(
        page.contains("With the usual rains") && !page.contains('#'),
        "{page}"
    );
}

#[test]
fn every_column_of_a_list_is_printed() {
    let output = budwood(&["roll", "columns"]).output().unwrap();
    let page = String::from_utf8(output.stdout).unwrap();
    for column in Column::ALL {
        let mut lines = page.lines();
        let line = lines.find(|line| line.split(' ').next() == Some(column.name()));
        assert!(
            line.is_some_and(|line| line.ends_with(&column.what())),
            "{column}: {page}"
        );
    }
    let wide = page.lines().find(|line| line.chars().count() > 120);
    assert_eq!(wide, None);
}
