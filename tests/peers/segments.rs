//! Cutting texts into messages against npm split-sms.
//!
//! Texts are built around every border: lengths on both sides of it, and on it a character that
//! must stay whole (an escape pair of the GSM alphabet, a surrogate pair of UTF-16).

use budwood::words::sms::{Alphabet, measure, split};
use serde_json::{Value, json};

use crate::peer::ask;

/// Lengths around one message and two and three parts, in septets and in UTF-16 units.
const AROUND: [std::ops::RangeInclusive<usize>; 6] =
    [0..=3, 64..=72, 131..=136, 150..=162, 199..=203, 303..=310];

/// What texts are filled with, and what is put into them.
const FILL: [&str; 4] = ["a", "é", "я", "ท"];
const PUT_IN: [&str; 8] = ["", "€", "[", "^", "😀", "🌱", "e\u{301}", "ệ"];

fn texts() -> Vec<String> {
    let mut texts = vec![String::new()];
    for length in AROUND.into_iter().flatten() {
        for fill in FILL {
            for put_in in PUT_IN {
                // At the start, at the end, and where a part may end.
                for at in [0, 66, 152, length] {
                    if at <= length {
                        let (before, after) = (fill.repeat(at), fill.repeat(length - at));
                        texts.push(format!("{before}{put_in}{after}"));
                    }
                }
            }
        }
    }
    texts.sort();
    texts.dedup();
    texts
}

#[test]
fn texts_are_cut_where_the_peer_cuts_them() {
    let texts = texts();
    assert!(texts.len() > 2_000, "{} texts are too few", texts.len());
    let questions: Vec<Value> = texts.iter().map(|text| json!({"text": text})).collect();
    let answers = ask("segments.js", &questions);
    assert_eq!(answers.len(), texts.len());
    for (text, answer) in texts.iter().zip(&answers) {
        let size = measure(text);
        let parts = split(text);
        let set = match size.alphabet {
            Alphabet::Gsm7 => "GSM",
            Alphabet::Ucs2 => "Unicode",
        };
        assert_eq!(size.parts, parts.len(), "{text:?}");
        assert_eq!(*answer, json!({"set": set, "parts": parts}), "{text:?}");
    }
}
