//! Glued words, misspellings, and words that must not be repaired.

use std::format;

use super::{check, read};
use crate::{Doubt, Report, Taken};

#[test]
fn glued_text() {
    check("dead8B", "dead @B 8");
    check("DEAD8B", "dead @B 8");
    check("120trees planted B", "planted @B 120");
    check("planted120blockB", "planted @B 120");
    check("weeded.A", "weeded @A");
    check("B:dead8", "dead @B 8");
    check("planted onehundredtwenty B", "planted @B 120");
    check("deadtrees 8 B", "dead @B 8");
    check("8deadB", "dead @B 8");
    check("weededA", "weeded @A");
    check("weededa", "weeded @A");
}

#[test]
fn listed_misspellings() {
    check("plntd 120 B", "planted @B 120");
    check("weded A", "weeded @A");
    check("gerth B 41", "girth @B cm=41");
}

/// A keyboard for wide letters has an apostrophe of its own (U+FF07).
#[test]
fn a_wide_apostrophe_is_an_apostrophe() {
    for apostrophe in ["'", "\u{2019}", "\u{ff07}"] {
        let text = format!("didn{apostrophe}t weed A");
        check(&text, "not_done @A not=weeded");
    }
}

#[test]
fn one_slip_is_repaired() {
    check("plabted 120 B", "planted @B 120");
    check("plantted 120 B", "planted @B 120");
    check("weeeded A", "weeded @A");
    check("fertilsed A", "fertilised @A");
    check("replased 6 B", "replaced @B 6");
    check("planted 120 B yesterdey", "planted @B 120 on=1d");
    let reading = read("plabted 120 B");
    assert_eq!(reading.words[0].repaired.as_deref(), Some("planted"));
}

#[test]
fn two_slips_only_in_long_words() {
    check("fertlisd A", "fertilised @A");
    let reading = read("plabtud 120 B");
    assert_eq!(reading.words[0].repaired, None);
    let is_asked = |report: &Report| report.doubts.contains(&Doubt::Likeness);
    assert!(
        reading.about_work,
        "an example is sent, or it is asked about"
    );
    assert!(reading.reports.iter().all(is_asked), "{reading:?}");
}

#[test]
fn common_words_are_never_repaired() {
    for word in [
        "plane", "planet", "seeds", "death", "girls", "brushes", "mature",
    ] {
        let reading = read(word);
        assert!(reading.reports.is_empty(), "{word}: {:?}", reading.reports);
        assert_eq!(reading.words[0].repaired, None, "{word}");
    }
}

#[test]
fn short_words_are_only_guessed_at() {
    for word in ["dea", "deqr", "roob"] {
        let reading = read(word);
        assert_eq!(reading.words[0].taken, Taken::Unknown, "{word}");
    }
    check("daed 8 B", "dead @B 8 ?daed>died");
    check("weeded B belowq 3 days", "weeded @B ?strange(3)");
}

#[test]
fn a_vowel_left_out_is_no_guess() {
    check("grth 41 42 B", "girth @B cm=41,42");
}

#[test]
fn predictive_twins_are_always_asked_about() {
    check("deaf 8 B", "dead @B 8 ?deaf>dead");
    check("wedding B", "weeded @B ?wedding>weeding");
    check("wedding A yesterday", "weeded @A on=1d ?wedding>weeding");
    check(
        "wedding is on saturday",
        "weeded on=saturday ?wedding>weeding | ~saying | ~chat",
    );
    check("planned 120 B", "planted @B 120 ?planned>planted");
}
