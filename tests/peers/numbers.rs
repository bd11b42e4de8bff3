//! Phone numbers against PyPI phonenumbers, the Python edition of the reference library, which
//! carries the numbering plans of the ITU and of national regulators.
//!
//! Three differences are ours on purpose. A text with a letter in it is refused, where the library
//! dials it on a keypad or drops the letter. A number that can only be dialled from nearby is
//! refused, since a text needs the whole number; the library calls it possible "locally". A
//! number whose E.164 spelling reads as another number is refused, since it could not be found
//! again, and so is one of nothing but zeros. The script leaves the first kind out, and applies the other two rules.

use budwood::words::phone_number::{Line, SenderKind, kind, line, parse};
use serde_json::{Value, json};

use crate::peer::ask;

fn answers() -> Vec<Value> {
    ask("numbers.py", &[json!({"seed": 20_261_125, "changes": 8})])
}

fn text<'a>(answer: &'a Value, key: &str) -> &'a str {
    answer.get(key).and_then(Value::as_str).unwrap_or_default()
}

#[test]
fn numbers_are_read_as_the_reference_library_reads_them() {
    let answers = answers();
    let mut differing = Vec::new();
    let mut possible = 0;
    for answer in &answers {
        let (written, country) = (text(answer, "text"), text(answer, "country"));
        let theirs = answer.get("e164").and_then(Value::as_str);
        let ours = parse(written, country);
        possible += usize::from(theirs.is_some());
        if ours.as_deref().ok() != theirs {
            differing.push(format!(
                "{written:?} in {country:?}: {ours:?}, not {theirs:?}"
            ));
        }
    }
    assert!(
        answers.len() > 20_000,
        "{} inputs are too few",
        answers.len()
    );
    assert!(possible > 3_000, "{possible} possible numbers are too few");
    assert!(answers.len() - possible > 500, "too few refusals");
    assert!(
        differing.is_empty(),
        "{} of {} differ:\n{}",
        differing.len(),
        answers.len(),
        differing.join("\n")
    );
}

#[test]
fn lines_are_told_apart_as_the_reference_library_does() {
    for answer in &answers() {
        let Some(e164) = answer.get("e164").and_then(Value::as_str) else {
            continue;
        };
        let expected = match text(answer, "kind") {
            "MOBILE" | "FIXED_LINE_OR_MOBILE" | "PAGER" => Line::Mobile,
            "FIXED_LINE" => Line::Landline,
            "UNKNOWN" => Line::Unassigned,
            _ => Line::Service,
        };
        assert_eq!(line(e164), expected, "{e164}");
    }
}

/// Whatever way a gateway writes a number, the sender is the same person.
#[test]
fn an_inbound_number_is_the_same_in_every_spelling_of_a_gateway() {
    let mut looked_at = 0;
    for answer in &answers() {
        let Some(e164) = answer.get("e164").and_then(Value::as_str) else {
            continue;
        };
        // A number without a plus can be read two ways; only those in use are sure.
        if line(e164) != Line::Mobile {
            continue;
        }
        looked_at += 1;
        let bare = e164.trim_start_matches('+');
        for sender in [
            e164.to_string(),
            format!("tel:{e164}"),
            format!("00{bare}"),
            bare.to_string(),
        ] {
            assert_eq!(
                kind(&sender, text(answer, "country")),
                SenderKind::Number(e164.to_string()),
                "{sender}"
            );
        }
    }
    assert!(looked_at > 1_000, "{looked_at} mobiles are too few");
}
