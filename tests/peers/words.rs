//! Number words against PyPI num2words2, in every language that it and we have.
//!
//! The rule: a number in words is read right, or not as a number at all. Never as another one
//! without a doubt, for a wrong count would be stored.

use budwood_parser::{Bare, Doubt, Known, Pack, Reader, Sender, languages};
use serde_json::{Value, json};

use crate::peer::ask;

/// No block has more trees than a farmer would count in words.
const LAST: u32 = 2_000;

/// Our packs, and what the peer calls their languages.
const LANGUAGES: [(&str, &str); 11] = [
    ("en", "en"),
    ("fr", "fr"),
    ("id", "id"),
    ("ms", "ms"),
    ("vi", "vi"),
    ("th", "th"),
    ("pt", "pt"),
    ("pt", "pt_BR"),
    ("ta", "ta"),
    ("ml", "ml"),
    ("si", "si"),
];

/// The share that must be read; the rest is asked for.
const READ_PERCENT_MIN: usize = 99;

fn reader() -> Reader {
    let packs: Result<Vec<Pack>, _> = languages::ALL
        .iter()
        .map(|toml| Pack::parse(toml))
        .collect();
    Reader::new(packs.expect("the packs that ship can be read")).expect("they agree")
}

/// The ways in which people write what the peer writes.
fn spellings(words: &str) -> [String; 4] {
    let plain = words.replace(',', "");
    [
        plain.clone(),
        plain.replace('-', " "),
        plain.replace(" and ", " "),
        plain.replace(" and ", " ").replace('-', " ").to_uppercase(),
    ]
}

#[test]
fn numbers_in_words_are_read_right_or_not_at_all() {
    let reader = reader();
    let loaded: Vec<&str> = reader.languages().collect();
    assert!(loaded.contains(&"en"));
    for (code, theirs) in LANGUAGES {
        if loaded.contains(&code) {
            check(&reader, code, theirs);
        }
    }
}

#[track_caller]
fn check(reader: &Reader, code: &str, theirs: &str) {
    let known = Known {
        languages: &[code],
        blocks: &["A", "B"],
        groups: &[],
        members: &[],
        sender: Sender::Farmer,
    };
    let answers = ask("words.py", &[json!({"lang": theirs, "last": LAST})]);
    let (mut right, mut all) = (0, 0);
    for answer in &answers {
        let number = answer
            .get("number")
            .and_then(Value::as_u64)
            .unwrap_or(u64::MAX);
        let words = answer
            .get("words")
            .and_then(Value::as_str)
            .unwrap_or_default();
        for text in spellings(words) {
            all += 1;
            let reading = reader.read(&text, &known);
            let doubts = reading.reports.iter().flat_map(|report| &report.doubts);
            let is_loose = doubts
                .into_iter()
                .any(|doubt| matches!(doubt, Doubt::LooseNumber(_)));
            if let Some(Bare::Number(found)) = reading.bare
                && !is_loose
            {
                #[expect(clippy::cast_precision_loss, reason = "numbers of trees are small")]
                let expected = number as f64;
                assert_eq!(
                    found.to_bits(),
                    expected.to_bits(),
                    "{code}: {text:?} is {number}"
                );
                right += 1;
            }
        }
    }
    assert!(all > 8_000, "{all} texts are too few");
    assert!(
        right * 100 >= all * READ_PERCENT_MIN,
        "{code}: {right} of {all} were read; the rest would be asked for"
    );
}
