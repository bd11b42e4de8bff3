//! Laws that hold for every text.

use std::{
    format,
    string::{String, ToString},
    vec,
    vec::Vec,
};

use proptest::prelude::*;

use super::{ADVISER, FARMER, read, reader, render};
use crate::{Kind, Reading, Stance, fold::fold};

fn facts(reading: &Reading) -> Vec<String> {
    reading.reports.iter().map(render::report).collect()
}

/// Words that a text of a farmer may hold.
fn word() -> impl Strategy<Value = String> {
    prop_oneof![
        Just("planted"),
        Just("dead"),
        Just("girth"),
        Just("no"),
        Just("not yet"),
        Just("A"),
        Just("block"),
        Just("120"),
        Just("1,200"),
        Just("12/5"),
        Just("npk"),
        Just("kg"),
        Just("yesterday"),
        Just("hundred"),
        Just("and"),
        Just("twenty"),
        Just("of"),
        Just("wind"),
        Just("?"),
        Just(","),
        Just("."),
        Just("-"),
        Just("sorry"),
        Just("Tamo"),
        Just("15-15-15"),
    ]
    .prop_map(ToString::to_string)
}

/// One plain report: kind, number, block.
fn plain_report() -> impl Strategy<Value = (&'static str, u32, &'static str)> {
    let kind = prop_oneof![
        Just("planted"),
        Just("dead"),
        Just("replaced"),
        Just("branched"),
        Just("pruned"),
    ];
    (
        kind,
        2_u32..700,
        prop_oneof![Just("A"), Just("B"), Just("C")],
    )
}

/// Letters, marks, digits and joiners of the scripts that people text in.
fn typed() -> impl Strategy<Value = String> {
    let latin = "[ -~\u{a0}-\u{17f}\u{1e00}-\u{1eff}\u{300}-\u{323}]";
    let indic = "[\u{b80}-\u{bff}\u{d00}-\u{d7f}\u{d80}-\u{dff}\u{e00}-\u{e5b}]";
    let other = "[\u{200b}-\u{200f}\u{2010}-\u{2019}\u{ff01}-\u{ff5e}]";
    prop::collection::vec(prop_oneof![latin, indic, other], 0..40).prop_map(|all| all.concat())
}

proptest! {
    /// Words of a pack and names are folded once, texts too: they only meet if once is enough.
    #[test]
    fn folding_twice_is_folding_once(text in typed()) {
        let once = fold(&text);
        prop_assert_eq!(fold(&once), once);
    }

    #[test]
    fn reading_never_panics_and_every_word_has_its_place(text in "\\PC{0,80}") {
        places_are_right(&text);
    }

    #[test]
    fn words_of_work_in_any_order_never_panic(words in prop::collection::vec(word(), 0..25)) {
        places_are_right(&words.join(" "));
        places_are_right(&words.concat());
    }

    #[test]
    fn manner_does_not_change_what_is_said((kind, count, block) in plain_report()) {
        let plain = read(&format!("{kind} {count} {block}"));
        prop_assert!(plain.stances.is_empty());
        for text in [
            format!("hello sir, {kind} {count} {block}"),
            format!("{kind} {count} {block} thanks"),
            format!("{kind}  {count}   {block}"),
            format!("{kind} {count} {block}."),
            format!("{kind} {count} {block}").to_uppercase(),
            format!("{kind} {count} trees in block {block}"),
            format!("{block} {kind} {count}"),
            format!("{count} {kind} {block}"),
            format!("{kind} {block} {count}"),
            format!("{block} {count} {kind}"),
        ] {
            let other = read(&text);
            prop_assert_eq!(facts(&plain), facts(&other), "{}", text);
            prop_assert!(other.stances.is_empty(), "{}: {:?}", text, other.stances);
        }
    }

    #[test]
    fn denial_future_and_question_take_the_fact_away((kind, count, block) in plain_report()) {
        for text in [
            format!("{kind} {count} {block} not yet"),
            format!("{kind} {count} {block} tomorrow"),
            format!("{kind} {count} {block}?"),
            format!("will {kind} {count} {block}"),
            format!("if {kind} {count} {block}"),
        ] {
            let reading = read(&text);
            let none = reading.reports.iter().all(|report| report.kind == Kind::NotDone);
            prop_assert!(none || !reading.stances.is_empty(), "{}", text);
        }
    }

    #[test]
    fn another_number_changes_one_value((kind, count, block) in plain_report(), other in 2_u32..700) {
        let mut one = read(&format!("{kind} {count} {block}")).reports;
        let two = read(&format!("{kind} {other} {block}")).reports;
        prop_assert_eq!(one[0].details.count, Some(count));
        one[0].details.count = Some(other);
        one[0].span = two[0].span;
        prop_assert_eq!(one, two);
    }
}

fn places_are_right(text: &str) {
    for known in [&FARMER, &ADVISER] {
        let reading = reader().read(text, known);
        let mut last = 0;
        for word in &reading.words {
            assert!(last <= word.span.start && word.span.start <= word.span.end);
            assert!(
                text.get(word.span.start..word.span.end).is_some(),
                "{text:?}"
            );
            last = word.span.end;
        }
        for report in &reading.reports {
            assert!(report.span.end <= text.len());
        }
    }
}

#[test]
fn every_word_of_the_text_is_in_the_words() {
    let text = "Hello planted 120 zzyx in B, not A?";
    let covered: String = read(text)
        .words
        .iter()
        .map(|word| text.get(word.span.start..word.span.end).unwrap())
        .collect();
    let marks = |letter: &char| letter.is_alphanumeric() || *letter == '?';
    let all: String = text.chars().filter(marks).collect();
    let covered: String = covered.chars().filter(marks).collect();
    assert_eq!(covered, all);
}

#[test]
fn a_long_story_is_cut_and_is_no_report() {
    let text = "planted 120 B and then we went on ".repeat(100);
    let reading = read(&text);
    assert!(
        matches!(reading.problems.last(), Some(crate::Problem::Cut(span)) if span.end == text.len())
    );
    let text = format!(
        "{} weeded A",
        "we walked by the river for a time and ".repeat(6)
    );
    assert!(read(&text).stances.contains(&Stance::Chat));
}

/// Time grows no faster than the text, also for text made to be slow.
#[test]
fn hostile_texts_are_read() {
    for unit in [
        "a1",
        "1a",
        "120 ",
        "planted 1 ",
        "A B ",
        "one hundred and ",
        "1,",
        "1/",
        "1-",
        "plan",
        "\u{301}",
        "กขค",
        "\u{200b}",
    ] {
        let reading = read(&unit.repeat(3_000));
        assert!(reading.words.len() <= 1_600, "{unit:?}");
    }
}

#[test]
fn a_reader_can_be_shared() {
    fn shared<T: Send + Sync>(_: &T) {}
    shared(reader());
}
