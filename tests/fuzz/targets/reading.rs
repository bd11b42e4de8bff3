//! Any bytes as a text: a reading, and a decision, without a panic; every word in its place.
#![no_main]

use std::sync::LazyLock;

use budwood_parser::{Known, Pack, Reader, Sender, languages};
use budwood_scheduler::{
    BlockState,
    decide::{Plot, Scene, decide},
};
use libfuzzer_sys::fuzz_target;

static READER: LazyLock<Reader> = LazyLock::new(|| {
    let packs = languages::ALL.iter().map(|text| Pack::parse(text).unwrap()).collect();
    Reader::new(packs).unwrap()
});

fuzz_target!(|bytes: &[u8]| {
    let text = String::from_utf8_lossy(bytes);
    for sender in [Sender::Farmer, Sender::Adviser, Sender::Unknown] {
        let known = Known {
            languages: &[],
            blocks: &["A", "B2", "Hill"],
            groups: &["KOLO"],
            members: &["Tamo Rill", "Tamo"],
            sender,
        };
        let reading = READER.read(&text, &known);
        let mut end = 0;
        for word in &reading.words {
            assert!(end <= word.span.start && word.span.start <= word.span.end);
            assert!(text.get(word.span.start..word.span.end).is_some());
            end = word.span.end;
        }
        let plots = ["A", "B2", "Hill"].map(|name| Plot {
            name: name.to_owned(),
            points: Some(120),
            state: BlockState::default(),
        });
        let scene = Scene {
            sender,
            today: chrono::NaiveDate::from_ymd_opt(2027, 2, 28).unwrap(),
            plots: &plots,
            last: &[],
            pending: None,
            nudged: None,
        };
        let _ = decide(&reading, &scene);
    }
});
