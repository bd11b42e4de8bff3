//! The field guide: what it says to text is read as what it says, and its command lines run.

use std::{fs, process::Command};

use budwood_parser::{Known, Sender};

use super::{blocks, read, top};
use crate::fixture;

/// Spans that are no text of an adviser: an answer, a name, what has a code behind it.
const NO_TEXTS: [&str; 6] = ["1", "Tamo", "FIX", "LOST", "STOP", "MY DATA"];

#[test]
fn every_word_of_the_adviser_is_read() {
    let setup = fixture::setup();
    for code in ["en", "fr", "id", "pt", "th", "vi"] {
        let page = read(&format!("deploy/field-guide/adviser.{code}.md"));
        let spans = page.split('`').skip(1).step_by(2);
        let texts = spans.filter(|span| {
            let is_command = span.starts_with("budwood ") || span.starts_with("from ");
            !is_command && !NO_TEXTS.contains(span)
        });
        let mut count = 0;
        for text in texts {
            count += 1;
            let known = Known {
                languages: &[code],
                blocks: &["A"],
                groups: &["KOLO"],
                members: &["Tamo"],
                rolls: &[],
                sender: Sender::Adviser,
            };
            let is_sheet = setup
                .reader
                .sheet(text)
                .is_some_and(|sheet| !sheet.rows.is_empty());
            let reading = setup.reader.read(text, &known);
            assert!(
                is_sheet || !reading.acts.is_empty(),
                "{code}: {text}: {reading:?}"
            );
        }
        assert!(count > 10, "{code}: {count}");
    }
}

/// In the order of the page, in a place of its own, with the messy list of demo-data.
#[test]
fn every_command_line_of_the_clerk_runs() {
    let place = tempfile::tempdir().unwrap();
    let list = top().join("demo-data/messy/list.csv");
    fs::copy(list, place.path().join("list.csv")).unwrap();
    let config = place.path().join("budwood.toml");
    let text = fs::read_to_string(top().join("deploy/budwood.toml")).unwrap();
    let store = place.path().join("store");
    let text = text.replace("/var/lib/budwood/store", store.to_str().unwrap());
    fs::write(&config, text).unwrap();
    let lines = blocks("deploy/field-guide/clerk.md", "sh");
    let lines: Vec<&str> = lines.iter().flat_map(|block| block.lines()).collect();
    assert_eq!(lines.len(), 5, "{lines:?}");
    for line in &lines {
        let line = line.replace("CONFIG", config.to_str().unwrap());
        let words = line.split(' ').skip(1);
        let output = Command::new(env!("CARGO_BIN_EXE_budwood"))
            .args(words)
            .current_dir(place.path())
            .env_remove("RUST_LOG")
            .output()
            .unwrap();
        let said = [output.stdout.as_slice(), &output.stderr].concat();
        let said = String::from_utf8_lossy(&said);
        assert!(output.status.success(), "{line}: {said}");
    }
    let written = |name: &str| fs::read(place.path().join(name)).unwrap();
    assert!(written("list.csv.findings.csv").len() > 1_000);
    assert!(written("meeting.pdf").starts_with(b"%PDF-"));
    assert!(written("shares.xlsx").starts_with(b"PK"));
}
