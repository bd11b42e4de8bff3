//! The pages that people read say what is so: blocks of output are what the program prints, bytes
//! of examples are those that are spoken, files that are named are there.
//!
//! The conversation of README.md is pinned in `demo.rs`, the examples of OneAPI in
//! `http/examples.rs`, the ten texts of parser/README.md in `reading.rs`, the kinds of record in
//! `keep.rs`, and the files that pages name in `tidy/paths.rs`.

mod guide;
mod manual;
mod operator;

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    io::Write,
    path::{Path, PathBuf},
    process::{Command, Stdio},
};

use budwood::service::config::Config;
use budwood_scheduler::{
    Calendar,
    handbook::calendar::{Confidence, profiles},
};

/// Every page for people.
const PAGES: [&str; 12] = [
    "README.md",
    "deploy/field-guide/adviser.en.md",
    "deploy/field-guide/clerk.md",
    "deploy/operator.md",
    "deploy/provider.md",
    "deploy/upgrade.md",
    "DEVELOPERS.md",
    "bot/README.md",
    "bot/src/store/README.md",
    "parser/README.md",
    "scheduler/README.md",
    "scheduler/calendars/README.md",
];

fn top() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn read(page: &str) -> String {
    fs::read_to_string(top().join(page)).unwrap()
}

/// The blocks of a page with this mark behind their fence.
fn blocks(page: &str, mark: &str) -> Vec<String> {
    let text = read(page);
    let parts = text.split("```").skip(1).step_by(2);
    let of_mark = parts.filter_map(|part| part.strip_prefix(mark)?.strip_prefix('\n'));
    of_mark.map(str::to_owned).collect()
}

/// What the command prints that a page names between backticks.
fn printed(page: &str, start: &str) -> String {
    let text = read(page);
    let (_, rest) = text.split_once(&format!("`budwood {start}")).unwrap();
    let (rest, _) = rest.split_once('`').unwrap();
    let line = format!("{start}{rest}").replace(" ROLL ", " demo-data/roll.csv ");
    // Only areas have quotes, and one space in them.
    let line = line.replace("\"1.2 ha\"", "1.2\u{a0}ha");
    let args = line.split(' ').map(|arg| arg.replace('\u{a0}', " "));
    let output = Command::new(env!("CARGO_BIN_EXE_budwood"))
        .current_dir(top())
        .args(args)
        .output()
        .unwrap();
    assert!(output.status.success(), "{line}: {output:?}");
    String::from_utf8(output.stdout).unwrap()
}

/// Each part of the block, up to where it leaves something out, is in the output as it stands; only
/// line breaks may lie elsewhere.
#[track_caller]
fn check(block: &str, output: &str) {
    let squeezed = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let mut rest = squeezed(output);
    for part in block.split("\u{2026}") {
        let part = squeezed(part);
        let found = rest.find(&part);
        let found = found.unwrap_or_else(|| panic!("not printed any more: {part}\n\n{output}"));
        rest = rest.split_off(found + part.len());
    }
}

/// A first page is read in one go.
#[test]
fn the_first_page_is_short() {
    let bytes = read("README.md").len();
    assert!(bytes <= 12_000, "README.md has {bytes} bytes");
}

/// The lines of the first page can be used as they stand.
#[test]
fn the_gateways_of_the_first_page_are_read() {
    let gateways = blocks("README.md", "toml");
    assert_eq!(gateways.len(), 3);
    for gateway in gateways {
        assert!(
            gateway.lines().count() <= 6,
            "a head and five lines: {gateway}"
        );
        let text = format!(
            "[store]\nfolder = \"s\"\n[web]\nlisten = \"127.0.0.1:1\"\n{gateway}[line]\n\
             name = \"x\"\nown_number = \"12345\"\ncountry = \"GB\"\nfallback_zone = \"UTC\"\n"
        );
        Config::parse(&text, Path::new(".")).unwrap();
    }
}

/// What an adviser is told to text is answered.
#[test]
fn an_adviser_can_text_what_the_page_lists() {
    let page = read("bot/README.md");
    let rows = page.lines().filter(|line| line.starts_with("| `"));
    let cells = rows.filter_map(|row| row.split('|').nth(1));
    let texts: Vec<&str> = cells
        .flat_map(|cell| cell.split('`').skip(1).step_by(2))
        .collect();
    assert!(texts.len() > 20, "{texts:?}");
    let line = |text: &&str| {
        let line = serde_json::json!({"id": text, "lang": "en", "role": "adviser", "text": text, "ctx": {"groups": ["KOLO"], "members": ["Tamo", "Keti", "Pira"]}});
        format!("{line}\n")
    };
    let mut read = Command::new(env!("CARGO_BIN_EXE_budwood"))
        .args(["read", "--lines"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let asked: String = texts.iter().map(line).collect();
    let mut stdin = read.stdin.take().unwrap();
    stdin.write_all(asked.as_bytes()).unwrap();
    drop(stdin);
    let answers = read.wait_with_output().unwrap().stdout;
    let answers = String::from_utf8(answers).unwrap();
    assert_eq!(answers.lines().count(), texts.len());
    for answer in answers.lines() {
        let acts = ["answer", "confirm", "reply"];
        let is_heard = |act: &&str| answer.contains(&format!("\"act\":\"{act}\""));
        assert!(acts.iter().any(is_heard), "{answer}");
    }
}

#[test]
fn planners_see_what_is_printed() {
    let shown = blocks("scheduler/README.md", "text");
    let [plan, rehearsal] = &shown[..] else {
        panic!("{shown:?}");
    };
    check(plan, &printed("scheduler/README.md", "due --plan"));
    check(rehearsal, &printed("scheduler/README.md", "rehearse ROLL"));
}

/// The example of a calendar is a good one, once it has its source.
#[test]
fn the_example_of_a_calendar_is_good() {
    let shown = blocks("scheduler/calendars/README.md", "toml");
    let [calendar] = &shown[..] else {
        panic!("{shown:?}");
    };
    let calendar = budwood_scheduler::Calendar::parse(calendar).unwrap();
    assert_eq!(calendar.opening.girth_cm, 48.0);
    let text = read("scheduler/calendars/README.md");
    for (name, _) in budwood_scheduler::handbook::calendar::profiles::ALL {
        assert!(text.contains(&format!("`{name}`")), "{name}");
    }
}

/// Commands that a page names are there; `budwood help` has their names behind two spaces.
#[test]
fn the_commands_that_pages_name_are_there() {
    let output = Command::new(env!("CARGO_BIN_EXE_budwood"))
        .arg("help")
        .output();
    let help = String::from_utf8(output.unwrap().stdout).unwrap();
    let mut named = 0;
    for page in PAGES {
        let text = read(page);
        for rest in text.split("`budwood ").skip(1) {
            let name: String = rest.chars().take_while(char::is_ascii_lowercase).collect();
            assert!(
                help.contains(&format!("\n  {name} ")),
                "{page} names {name:?}"
            );
            named += 1;
        }
    }
    assert!(named > 20, "{named}");
}

/// Every value that some calendar has from memory, with the calendars that have it.
#[test]
fn what_rests_on_memory_is_listed() {
    let mut found: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for (name, text) in profiles::ALL {
        let citations = Calendar::parse(text).unwrap().citations;
        let memory = citations
            .iter()
            .filter(|cited| cited.confidence == Confidence::Memory);
        for cited in memory {
            let row = cited.path.split('[').next().unwrap();
            let calendars = found.entry(row.to_owned()).or_default();
            calendars.insert((*name).to_owned());
        }
    }
    let text = read("scheduler/README.md");
    let (_, list) = text.split_once("## What rests on memory").unwrap();
    let (list, _) = list.split_once("\n## ").unwrap();
    let rows = list.lines().filter_map(|line| line.strip_prefix("| `"));
    let listed: BTreeMap<String, BTreeSet<String>> = rows
        .map(|row| {
            let (path, calendars) = row.split_once("` | ").unwrap();
            let calendars = calendars.trim_end_matches(" |");
            let names: BTreeSet<String> = if calendars == "all" {
                profiles::ALL
                    .iter()
                    .map(|(name, _)| (*name).to_owned())
                    .collect()
            } else {
                calendars.split(", ").map(str::to_owned).collect()
            };
            (path.to_owned(), names)
        })
        .collect();
    assert_eq!(listed, found);
}
