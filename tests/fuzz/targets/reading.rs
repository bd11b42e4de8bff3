//! Any bytes as a text: a reading, the same each time, with every place inside the text, and a
//! decision in any scene.
//!
//! The first byte chooses the scene, the rest is the text. Deliberately absent: what a text
//! means; the tests of the parser say that.
#![no_main]

use std::sync::LazyLock;

use budwood_parser::{Known, Pack, Problem, Reader, Reading, Sender, Span, languages};
use budwood_scheduler::{
    BlockState,
    decide::{Decision, Last, Missing, Pending, Plot, Scene, decide},
};
use chrono::NaiveDate;
use libfuzzer_sys::fuzz_target;

static READER: LazyLock<Reader> = LazyLock::new(|| {
    let packs = languages::ALL.iter().map(|text| Pack::parse(text));
    let packs = packs.collect::<Result<_, _>>().expect("packs that ship");
    Reader::new(packs).expect("they go together")
});

const BLOCKS: [&str; 3] = ["A", "B2", "Hill"];
const SENDERS: [Sender; 3] = [Sender::Farmer, Sender::Adviser, Sender::Unknown];
/// Texts that make facts, so that there is something to confirm, complete and amend.
const BEFORE: [&str; 3] = ["dead 8 A", "girth A 41 43 39", "planted 120 Hill"];

fuzz_target!(|bytes: &[u8]| {
    let Some((choice, bytes)) = bytes.split_first() else {
        return;
    };
    let text = String::from_utf8_lossy(bytes);
    let choice = usize::from(*choice);
    let sender = SENDERS[choice % 3];
    let known = Known {
        languages: &[],
        blocks: &BLOCKS,
        groups: &["KOLO"],
        members: &["Tamo Rill", "Tamo"],
        rolls: &[],
        sender,
    };
    let reading = READER.read(&text, &known);
    assert_eq!(reading, READER.read(&text, &known));
    check_places(&reading, &text);
    check_decision(&reading, &known, choice / 3);
});

fn check_places(reading: &Reading, text: &str) {
    let inside = |span: &Span| assert!(text.get(span.start..span.end).is_some(), "{span:?}");
    let mut end = 0;
    for word in &reading.words {
        inside(&word.span);
        assert!(end <= word.span.start, "words stand one after the other");
        end = word.span.end;
    }
    reading
        .reports
        .iter()
        .for_each(|report| inside(&report.span));
    for problem in &reading.problems {
        match problem {
            Problem::LooseEnd(span)
            | Problem::NumberTooLarge(span)
            | Problem::NoSuchDay(span)
            | Problem::TwoKinds(span, ..)
            | Problem::Cut(span) => inside(span),
        }
    }
}

fn check_decision(reading: &Reading, known: &Known<'_>, choice: usize) {
    let plots = BLOCKS.map(|name| Plot {
        name: name.to_owned(),
        points: Some(120),
        state: BlockState::default(),
    });
    let bare = Scene {
        sender: known.sender,
        today: NaiveDate::from_ymd_opt(2028, 2, 29).expect("a leap day"),
        plots: &plots,
        last: &[],
        pending: None,
        nudged: None,
    };
    let before = READER.read(BEFORE[choice % 3], known);
    let (Decision::Record(facts) | Decision::Confirm { facts, .. }) = decide(&before, &bare) else {
        return;
    };
    let last: Vec<Last> = facts.iter().cloned().map(|draft| Last { draft }).collect();
    let missing = [
        Missing::Block { unknown: None },
        Missing::Count {
            range: Some((2, 9)),
        },
        Missing::Values,
        Missing::Date,
    ];
    let pending = match choice / 3 % 8 {
        0 => None,
        1 => Some(Pending::Confirm(facts)),
        2 => Some(Pending::Choose { options: 2 }),
        3 => Some(Pending::Nudge {
            on: bare.today,
            is_last: choice % 2 == 0,
        }),
        other => missing
            .get(other % 4)
            .cloned()
            .map(|missing| Pending::Ask { facts, missing }),
    };
    let scene = Scene {
        last: &last,
        pending: pending.as_ref(),
        ..bare
    };
    assert_eq!(decide(reading, &scene), decide(reading, &scene));
}
