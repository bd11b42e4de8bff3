//! Numbers in digits and in words.
//!
//! Number words are held against the tables of a reference library: each must come back as the
//! same number, or as none, and never as another.

use std::{
    format,
    string::{String, ToString},
    vec::Vec,
};

use super::{FARMER, check, check_as, read, reader};
use crate::{Bare, Known};

/// Reference: `num2words2` 1.0.20; how it was made stands at its top.
const ENGLISH: &str = include_str!("number_words_en.txt");
/// Reference: `num2words2` 1.0.20, for nine more languages.
const OTHERS: &str = include_str!("number_words_other.txt");

/// "And a half" belongs to the number, before its unit and behind it.
#[test]
fn and_a_half() {
    let bags = |amount: &str| format!("fertilised @B product=urea amount={amount}bag");
    check("put 2 and a half bags urea on B", &bags("2.5"));
    check("put two and a half bags urea on B", &bags("2.5"));
    check("put 2 bags and a half urea on B", &bags("2.5"));
    check("planted 3 and a half acres B", "planted @B area=3.5acre");
    check("girth A 41 and a half, 43 cm", "girth @A cm=41.5,43");
    check(
        "height A 120 and half of B weeded",
        "height @A cm=120 + weeded @B extent=half",
    );
    check_as(
        "fr",
        "circonférence A 41 et demi, 43 cm",
        "girth @A cm=41.5,43",
    );
    check_as("id", "tinggi A 2 meter setengah", "height @A cm=250");
    check_as(
        "id",
        "pupuk A sekilo setengah",
        "fertilised @A amount=1.5kg",
    );
}

/// From memory, as people of these places count.
#[test]
fn number_words_of_dialects_and_with_endings() {
    check_as("th", "ปลูกแล้วแปลง B ร้อยซาวต้น", "planted @B 120");
    check_as(
        "ta",
        "B la nooththi irupathu kannu nattom",
        "planted @B 120",
    );
    check_as(
        "si",
        "B එකට පොහොර කිලෝ දෙකක් දැම්මා",
        "fertilised @B amount=2kg",
    );
}

/// Money, workers and hours are kept for nothing.
#[test]
fn what_is_paid_counts_nothing() {
    check(
        "weeded A, paid 3 boys 5000",
        "weeded @A | %loose_end | %loose_end",
    );
}

fn number_of(languages: &[&str], text: &str) -> Option<f64> {
    let known = Known {
        languages,
        ..FARMER
    };
    match reader().read(text, &known).bare {
        Some(Bare::Number(value)) => Some(value),
        _ => None,
    }
}

fn lines(table: &str) -> impl Iterator<Item = &str> {
    table.lines().filter(|line| !line.starts_with('#'))
}

#[test]
fn english_number_words_are_read_right() {
    let mut wrong: Vec<String> = Vec::new();
    let mut count = 0;
    for line in lines(ENGLISH) {
        let (value, words) = line.split_once(' ').unwrap();
        let value: f64 = value.parse().unwrap();
        let bare = words.replace(',', "");
        for form in [
            bare.clone(),
            bare.replace('-', " "),
            bare.replace(" and ", " "),
            bare.replace(" and ", " ").replace('-', " "),
            bare.replace('-', ""),
            bare.to_uppercase(),
            format!("{bare} trees"),
        ] {
            count += 1;
            let found = number_of(&["en"], &form);
            if found != Some(value) {
                wrong.push(format!("{form}: {found:?}"));
            }
        }
    }
    assert_eq!(count, 7 * 2001);
    assert!(
        wrong.is_empty(),
        "{} wrong: {:?}",
        wrong.len(),
        &wrong[..wrong.len().min(20)]
    );
}

#[test]
fn english_number_words_run_together_are_right_or_refused() {
    for line in lines(ENGLISH) {
        let (value, words) = line.split_once(' ').unwrap();
        let value: f64 = value.parse().unwrap();
        let glued: String = words.chars().filter(char::is_ascii_alphabetic).collect();
        let found = number_of(&["en"], &glued);
        assert!(
            found.is_none_or(|found| found == value),
            "{glued}: {found:?}"
        );
    }
}

/// The packs that ship, each on a phone of its language: right or not at all, and nearly all right.
#[test]
fn number_words_of_other_languages_are_read_right_or_not_at_all() {
    for code in ["fr", "id", "ms", "vi", "th", "pt", "ta", "ml", "si"] {
        let (mut lines_of, mut right) = (0, 0);
        for line in lines(OTHERS) {
            let Some(rest) = line.strip_prefix(code) else {
                continue;
            };
            let (value, words) = rest.trim_start().split_once(' ').unwrap();
            let value: Option<f64> = value.parse().ok();
            let words = words.replace(',', "");
            lines_of += 1;
            right += u32::from(number_of(&[code], &words) == value);
            for form in other_forms(&words).into_iter().chain([words]) {
                let found = number_of(&[code], &form);
                assert!(
                    found.is_none() || found == value,
                    "{code} {form}: {found:?}"
                );
            }
        }
        assert!(lines_of > 100, "{code}: only {lines_of} lines");
        assert!(
            right * 100 >= lines_of * 99,
            "{code}: {right} of {lines_of}"
        );
    }
}

/// Without accents, without hyphens, without spaces.
fn other_forms(words: &str) -> [String; 4] {
    let bare = crate::glyphs::fold::bare(&words.to_lowercase());
    [
        bare.replace('-', " "),
        bare.replace(['-', ' '], ""),
        words.replace(['-', ' '], ""),
        words.replace('-', " ").to_uppercase(),
    ]
}

#[test]
fn number_words_that_make_no_number_are_refused() {
    for text in [
        "twenty thirteen",
        "two three",
        "ten seven",
        "hundred hundred",
        "five fifty five two",
    ] {
        assert_eq!(number_of(&["en"], text), None, "{text}");
    }
}

#[test]
fn loose_numbers_are_asked_about() {
    check("planted one twenty B", "planted @B 120 ?loose(120)");
    check("planted two fifty B", "planted @B 250 ?loose(250)");
    check("a dozen dead in A", "dead @A 12 ?loose(12)");
    check("two dozen dead in A", "dead @A 24 ?loose(24)");
    check("planted 1 200 B", "planted @B 1200 ?loose(1200)");
    check("planted 12O B", "planted @B 120 ?letter(12O)");
    check("planted l20 trees B", "planted @B 120 ?letter(l20)");
    check("dead 10-12 B", "dead @B ?range(10-12)");
    check("dead 10 to 12 in B", "dead @B ?range(10-12)");
}

#[test]
fn numbers_in_digits() {
    check("planted 1,200 trees A", "planted @A 1200");
    check("planted 1.200 trees A", "planted @A 1200");
    check("planted 1 200 trees A", "planted @A 1200");
    check("planted 2 hundred B", "planted @B 200");
    check("planted a hundred and twenty B", "planted @B 120");
    check("planted one hundred and twenty B", "planted @B 120");
    check("girth B 43,5 44.5", "girth @B cm=43.5,44.5");
    check("girth 41,43,39 B", "girth @B cm=41,43,39");
    check("girth 41, 43,5, 39 B", "girth @B cm=41,43.5,39 ?commas");
    check("cleared 1.125 ha A", "cleared @A area=1.13ha");
    check("planted 60.5 B", "planted @B ?loose_end(60.5) | %loose_end");
    check("dead 00 B", "dead @B 0");
    check("planted 8 kg B", "planted @B ?loose_end(8) | %loose_end");
    check("planted 120 B 7m x 3m", "planted @B 120");
}

#[test]
fn huge_numbers_are_no_numbers() {
    check("dead 1000000 B", "dead @B | %too_large");
    check("dead 447700900123 B", "dead @B | %too_large");
    let digits = "7".repeat(1_000_000);
    let reading = read(&digits);
    assert_eq!(reading.problems.len(), 2, "too large, and cut");
    assert_eq!(reading.bare, None);
}

#[test]
fn numbers_keep_their_value_in_every_script() {
    let plain = super::render::reading(&read("dead 18 B"));
    // Zero of each script (Unicode, general category Nd).
    for zero in ['٠', '०', '௦', '൦', '෦', '๐', '０'] {
        let digit = |value: u32| char::from_u32(u32::from(zero) + value).unwrap();
        let text = format!("dead {}{} B", digit(1), digit(8));
        assert_eq!(super::render::reading(&read(&text)), plain, "{text}");
    }
    assert_eq!(plain, "dead @B 18".to_string());
}
