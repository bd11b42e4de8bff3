//! Reading takes memory a few times for a text, not for its words.

use std::{format, string::String};

use super::{FARMER, reader, reader_of};
use crate::{Known, Reader, languages};

/// How often memory is taken to read a text, once everything is warm.
fn taken(reader: &Reader, text: &str, languages: &[&str]) -> u64 {
    let known = Known {
        languages,
        ..FARMER
    };
    drop(reader.read(text, &known));
    allocation_counter::measure(|| drop(reader.read(text, &known))).count_total
}

/// So much more often at most: far less than once for each of 45 words more.
const READ_OTHERWISE: u64 = 4;

/// Checks that ten times as many words of a sort take memory no more often, with English alone and
/// with all packs, and what is read of them. A text full of words may be read as something else
/// than a few of them, which takes a row or two.
#[track_caller]
fn check(start: &str, five_words: &str) {
    let many: String = five_words.repeat(10);
    let (few, many) = (format!("{start}{five_words}"), format!("{start}{many}"));
    let english = reader_of(&[languages::ENGLISH]);
    let phones = [
        (&english, &["en"][..]),
        (reader(), &["en"]),
        (reader(), &[]),
    ];
    for (reader, languages) in phones {
        let (few, often) = (
            taken(reader, &few, languages),
            taken(reader, &many, languages),
        );
        assert!(
            often <= few + READ_OTHERWISE,
            "{often} after {few} for {many:?} in {languages:?}"
        );
    }
}

#[test]
fn chat() {
    check("", "good morning sir how are ");
    check("", "the market was big and ");
}

#[test]
fn words_of_the_trade() {
    check("", "the trees in the block ");
    check(
        "my neighbour weeded A and pruned B ",
        "yesterday i was at the ",
    );
}

#[test]
fn words_of_no_list() {
    check("", "blarg mimsy wabe toves brillig ");
}

#[test]
fn words_with_accents() {
    check("", "été là forêt à côté ");
}

#[test]
fn words_without_spaces() {
    check("", "บ้าน ตลาด ใหญ่ ดี ยาง ");
}

#[test]
fn numbers() {
    check("", "41,43,39 12 43,5 1.200 14:30 ");
}
