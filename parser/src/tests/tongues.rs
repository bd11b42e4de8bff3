//! One spelling in several languages: the phone's own language comes first; without one a word
//! that two languages read differently is asked about.

use super::{FARMER, reader_of, render};
use crate::{Doubt, Known, Reader, Reading, Report, languages};

const VIETNAMESE: &str = r#"
code = "vi"
name = "Vietnamese"
weak = ["an"]
[kinds]
planted = ["trồng"]
dead = ["chết"]
intercrop_sown = ["an"]
pruned = ["poda"]
[words]
block = ["lô"]
trees = ["cây"]
no = ["k", "khong"]
negation = ["khong"]
[numbers]
values.2 = ["hai"]
values.4 = ["bốn"]
[fertilisers]
any = ["bón"]
"#;

const TYPED_THAI: &str = r#"
code = "th-Latn"
name = "Typed Thai"
[kinds]
planted = ["pluk"]
dead = ["tai"]
weeded = ["poda"]
[words]
trees = ["ton"]
[numbers]
unit_after = [20]
values.7 = ["chet"]
values.20 = ["yisip"]
"#;

const INDONESIAN: &str = r#"
code = "id"
name = "Indonesian"
weak = ["sulam"]
[kinds]
planted = ["tanam"]
dead = ["mati"]
replaced = ["sulam"]
[words]
block = ["blok"]
trees = ["batang"]
stop = ["berhenti", "ho"]
"#;

fn reader() -> &'static Reader {
    static READER: std::sync::OnceLock<Reader> = std::sync::OnceLock::new();
    READER.get_or_init(|| reader_of(&[languages::ENGLISH, VIETNAMESE, TYPED_THAI, INDONESIAN]))
}

fn read(codes: &[&str], text: &str) -> Reading {
    let known = Known {
        languages: codes,
        ..FARMER
    };
    reader().read(text, &known)
}

#[track_caller]
fn check(codes: &[&str], text: &str, expected: &str) {
    assert_eq!(
        render::reading(&read(codes, text)),
        expected,
        "for {text:?} on a phone of {codes:?}"
    );
}

#[test]
fn a_phone_understands_every_language_and_its_own_first() {
    check(&["en"], "mati 8 blok B", "dead @B 8");
    check(&["id"], "planted 120 B", "planted @B 120");
    check(&["id"], "tanam 120 trees B", "planted @B 120");
    check(&["vi"], "chet 8 B", "dead @B 8");
    check(&["vi"], "planted 2 B", "planted @B 2");
}

/// STOP works in every language that is loaded, on every phone.
#[test]
fn stop_is_understood_everywhere() {
    for code in ["en", "id", "vi", "th"] {
        check(&[code], "berhenti", "!stop");
        check(&[code], "ho", "!stop");
    }
}

/// On a phone of one language the weak words of another are not listed; that many texts by other people
/// say so may be worth a question, and no more.
#[test]
fn everyday_words_of_other_languages_do_not_count() {
    let english = read(&["en"], "sulam 8 B");
    assert!(
        english
            .reports
            .iter()
            .all(|report| !report.doubts.is_empty())
    );
    check(&["id"], "sulam 8 B", "replaced @B 8");
    check(&[], "sulam 8 B", "replaced @B 8");
    check(&[], "an 8 trees dead B", "dead @B 8");
}

#[test]
fn yes_of_one_language_is_no_of_another() {
    check(&["en"], "k", "!yes");
    check(&["vi"], "k", "!no");
    check(&["id"], "k", "");
    check(&[], "k", "");
    check(&[], "ok", "!yes");
}

#[test]
fn a_word_with_two_readings_is_asked_about() {
    check(&["th"], "tai yisip chet ton B", "dead @B 27");
    check(&["vi"], "chet 7 cay lo B", "dead @B 7");
    check(&[], "chet 7 B", "dead @B 7 ?two_languages(chet)");
    // The other words settle it.
    check(&[], "chet 7 cay lo B", "dead @B 7");
    check(&[], "tai chet ton B", "dead @B 7");
}

#[test]
fn two_kinds_of_work_are_never_guessed() {
    check(&[], "poda 8 B", "%two(pruned,weeded)");
    check(&["vi"], "poda 8 B", "pruned @B 8");
    check(&["vi"], "poda B", "pruned @B");
    check(&["th"], "poda B", "weeded @B");
    check(&["en"], "poda B", "%two(pruned,weeded)");
}

#[test]
fn variants_of_a_language_are_one_phone() {
    check(&["vi-bare"], "chet 7 B", "dead @B 7");
    check(&["th"], "tai 7 ton B", "dead @B 7");
    check(&["th-Latn"], "tai chet ton B", "dead @B 7");
}

#[test]
fn a_slip_is_mended_in_the_phones_language() {
    check(&["id"], "tanem 120 blok B", "planted @B 120");
    check(&["en"], "plabted 120 B", "planted @B 120");
    // Not into a word of a language that the phone does not use: at most it is asked about.
    let reading = read(&["en"], "tanem 120 B");
    assert_eq!(reading.words[0].repaired, None);
    let is_asked = |report: &Report| report.doubts.contains(&Doubt::Likeness);
    assert!(reading.reports.iter().all(is_asked), "{reading:?}");
}
