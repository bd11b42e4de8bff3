//! The demo plays, the same every time, and says in time what is wrong with a script.

use budwood::{commands::demo, store::MemoryStore, words::sms};

/// Columns before a text, where its further lines stand.
const INDENT: usize = 22;

#[test]
fn is_the_same_every_time_and_in_every_store() {
    let on_disk = played(false);
    assert_eq!(on_disk, played(false));
    let mut in_memory = Vec::new();
    let store = Box::new(MemoryStore::new());
    demo::play_script(demo::SCRIPT, store, false, &mut in_memory).unwrap();
    assert_eq!(on_disk, String::from_utf8(in_memory).unwrap());
}

/// The whole of what a newcomer reads; `INSTA_UPDATE=always` takes a change over, to be read
/// before it is kept.
#[test]
fn shows_the_scenes() {
    insta::assert_snapshot!(played(false));
}

#[test]
fn fits_on_a_page_that_is_read_in_two_minutes() {
    let shown = played(false);
    assert!(shown.lines().count() <= 110, "{}", shown.lines().count());
    let wide = shown.lines().find(|line| line.chars().count() > 100);
    assert_eq!(wide, None);
}

/// A single message holds 160 septets (3GPP TS 23.040, 9.2.3.24; alphabet of TS 23.038, 6.2.1).
#[test]
fn sends_nothing_that_takes_two_messages() {
    let sent = sent(&played(true));
    assert!(sent.len() > 1_000, "{}", sent.len());
    for (to, text) in sent {
        assert_eq!(sms::measure(&text).parts, 1, "to {to}: {text}");
    }
}

#[test]
fn reminds_nobody_who_did_not_agree_or_said_stop() {
    let shown = played(true);
    let reminders = |texts: &[(String, String)], name: &str| {
        let to_them = texts.iter().filter(|(to, _)| to == name);
        to_them.filter(|(_, text)| text.contains("Reply")).count()
    };
    assert_eq!(reminders(&sent(&shown), "Osa"), 0);
    let (before, after) = shown.split_once("Lumo    STOP").unwrap();
    assert!(reminders(&sent(before), "Lumo") > 5);
    assert_eq!(reminders(&sent(after), "Lumo"), 0);
    let (before, after) = shown.split_once("my father passed away").unwrap();
    assert!(reminders(&sent(before), "Deni") > 3);
    let mourning = after.split("GO Deni").next().unwrap();
    assert_eq!(reminders(&sent(mourning), "Deni"), 0);
}

/// A heading says what is then seen: every scene has a line that breaks the play off otherwise.
#[test]
fn holds_every_heading_to_its_word() {
    for scene in demo::SCRIPT.split("\n== ").skip(1) {
        assert!(scene.contains("\n=> "), "{scene}");
    }
    let script = "2026-09-14 06:00 Osa: planted 600 A\n=> 600 planted\n=> 500 planted";
    let error = demo::play_script(script, Box::new(MemoryStore::new()), false, &mut Vec::new());
    let error = format!("{:#}", error.unwrap_err());
    assert!(
        error.starts_with("line 3 of the script: shown should be \"500 planted\""),
        "{error}"
    );
}

/// "964/970" where 61 died, and "40 of 30", are what nobody may read.
#[test]
fn counts_no_more_than_there_are() {
    let mut counts = 0;
    for (to, text) in sent(&played(true)) {
        for (part, whole) in shares(&text) {
            counts += 1;
            assert!(part <= whole, "to {to}: {text}");
        }
    }
    assert!(counts > 20, "{counts}");
}

/// What stands as "4 of 7" or "4/7" in a text.
fn shares(text: &str) -> Vec<(u32, u32)> {
    let text = text.replace('/', " of ");
    let words: Vec<&str> = text.split([' ', ',', '.', ':']).collect();
    let number = |word: &str| word.parse::<u32>().ok();
    words
        .windows(3)
        .filter(|three| three[1] == "of")
        .filter_map(|three| Some((number(three[0])?, number(three[2])?)))
        .collect()
}

#[test]
fn says_what_is_wrong_with_a_script() {
    #[track_caller]
    fn check(script: &str, expected: &str) {
        let error = demo::play_script(script, Box::new(MemoryStore::new()), false, &mut Vec::new())
            .unwrap_err();
        assert_eq!(format!("{error:#}"), expected);
    }
    check("", "nobody does anything in the script");
    check(
        "# a remark\n\nTamo: planted 420",
        "line 3 of the script: expected a moment like 2026-12-12 17:05, ==, --, => or #, but found \
         \"Tamo: planted 420\"",
    );
    check(
        "2026-02-30 17:05 Tamo: planted 420",
        "line 1 of the script: expected a moment like 2026-12-12 17:05, ==, --, => or #, but found \
         \"2026-02-30 17:05 Tamo: planted 420\"",
    );
    check(
        "2026-12-12 17:05 Tamo: dug 20 pits A\n2026-12-12 17:04 Tamo: no",
        "line 2 of the script: 2026-12-12 17:04 is before 2026-12-12 17:05",
    );
    check(
        "2026-12-12 17:05 Tamo waits",
        "line 1 of the script: expected \"Name: text\", \"Name reads\" or \"Name is manner\", but \
         found \"Tamo waits\"",
    );
    check(
        "2026-12-12 17:05 Tamo is lazy",
        "line 1 of the script: no manner is called \"lazy\"; there are diligent, late, \
         misspelling, quiet, scripted",
    );
    check(
        "2026-12-12 17:05 Tamo: hello\n2026-12-13 17:05 Nobody: hello",
        "line 2 of the script: nobody on the list is called \"Nobody\"",
    );
    check(
        "2026-09-14 06:00 Tamo reads",
        "line 1 of the script: Tamo has got no text yet",
    );
}

fn played(all: bool) -> String {
    let mut out = Vec::new();
    demo::play(all, &mut out).unwrap();
    String::from_utf8(out).unwrap()
}

/// What the bot sent, each with the name behind `>` (empty where the answer stands under its
/// question), its lines put together again.
fn sent(shown: &str) -> Vec<(String, String)> {
    let mut sent: Vec<(String, String)> = Vec::new();
    let mut is_open = false;
    for line in shown.lines() {
        let (head, text) = line.split_at_checked(INDENT).unwrap_or((line, ""));
        if line.is_empty() {
            is_open = false;
        } else if head.trim().is_empty() && is_open {
            if let Some((_, known)) = sent.last_mut() {
                known.push(' ');
                known.push_str(text);
            }
        } else if let Some((_, rest)) = line.split_once("> ") {
            let (to, text) = rest.split_once(' ').unwrap_or((rest, ""));
            sent.push((to.to_owned(), text.trim_start().to_owned()));
            is_open = true;
        } else {
            is_open = false;
        }
    }
    sent
}

/// The conversation in README.md, line by line, is one that the demo has.
#[test]
fn plays_what_the_readme_shows() {
    let readme = include_str!("../README.md");
    let (_, rest) = readme.split_once("## A conversation").expect("a heading");
    let (_, rest) = rest.split_once("```text\n").expect("a block");
    let (shown, _) = rest.split_once("```").expect("its end");
    let squeezed = |line: &str| line.split_whitespace().collect::<Vec<_>>().join(" ");
    let played: Vec<String> = played(false).lines().map(squeezed).collect();
    assert!(shown.lines().count() > 10);
    for line in shown.lines().map(squeezed).filter(|line| !line.is_empty()) {
        assert!(
            played.contains(&line),
            "README.md shows {line:?}; the demo does not"
        );
    }
}
