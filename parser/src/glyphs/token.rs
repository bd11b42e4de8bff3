//! Cuts a folded text into words, numbers and marks.
//!
//! Letters and digits come apart ("dead8b"), and scripts with and without spaces between words,
//! except where the whole run is listed or is one of the farmer's own block names. Deliberately
//! absent: any meaning.

use crate::glyphs::{
    figure::{Figure, Number, figure, letters_for_digits, ordinal},
    script::{is_word_letter, writing},
};

/// A number of more digits counts nothing.
const PLAIN_DIGITS_MAX: usize = 6;
/// The longest run of letters and digits that is kept together.
const RUN_LEN_MAX: usize = 24;

/// A word, a number or a mark, with its place in the folded text.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Token {
    pub(crate) start: usize,
    pub(crate) end: usize,
    pub(crate) shape: Shape,
    /// No space stands before it.
    pub(crate) glued: bool,
}

/// What a token looks like.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Shape {
    Word,
    Figure(Figure),
    Mark(char),
}

/// Cuts a folded text. `is_whole` says which runs of letters and digits stay together.
pub(crate) fn tokens(
    text: &str,
    is_whole: impl Fn(&str) -> bool + Clone,
) -> impl Iterator<Item = Token> + Clone {
    let mut at = 0;
    let mut glued = false;
    core::iter::from_fn(move || {
        loop {
            let rest = text.get(at..)?;
            let first = rest.chars().next()?;
            if first != '\n' && first.is_whitespace() {
                at += first.len_utf8();
                glued = false;
                continue;
            }
            let (shape, len) = next_token(rest, first, &is_whole);
            let token = Token {
                start: at,
                end: at + len,
                shape,
                glued,
            };
            glued = true;
            at += len;
            return Some(token);
        }
    })
}

/// The commonest tokens: a word of plain letters, a number of plain digits, each with a space, a
/// mark or the end behind it.
fn plain_token(rest: &str) -> Option<(Shape, usize)> {
    let bytes = rest.as_bytes();
    let ends = |at: usize, is_part: fn(&u8) -> bool| {
        let rest = bytes.get(at..).unwrap_or_default();
        at + rest
            .iter()
            .position(|byte| !is_part(byte))
            .unwrap_or(rest.len())
    };
    let letters = ends(0, u8::is_ascii_alphabetic);
    if letters > 0 {
        let next = bytes.get(letters);
        let is_whole = next.is_none_or(|next| next.is_ascii() && !next.is_ascii_digit());
        return is_whole.then_some((Shape::Word, letters));
    }
    let digits = ends(0, u8::is_ascii_digit);
    let is_end = match bytes.get(digits) {
        None => true,
        // "2 pm" is a time.
        Some(b' ') => !matches!(bytes.get(digits + 1), Some(b'a' | b'p')),
        // "120," and "120."; "1,200" is looked at more closely.
        Some(mark) if mark.is_ascii_punctuation() => {
            !bytes.get(digits + 1).is_some_and(u8::is_ascii_digit)
        }
        Some(_) => false,
    };
    if !is_end || !(1..=PLAIN_DIGITS_MAX).contains(&digits) {
        return None;
    }
    let value = bytes
        .iter()
        .take(digits)
        .fold(0, |value, digit| value * 10 + u32::from(digit - b'0'));
    let number = Number::new(f64::from(value));
    Some((Shape::Figure(Figure::Number(number)), digits))
}

fn next_token(rest: &str, first: char, is_whole: &impl Fn(&str) -> bool) -> (Shape, usize) {
    if let Some(plain) = plain_token(rest) {
        return plain;
    }
    if !is_word_letter(first) {
        return (Shape::Mark(first), first.len_utf8());
    }
    let run = prefix(head(rest), is_word_letter);
    // Longer runs are no name and no listed word; looked at anew after each part of them they
    // would cost the square of their length.
    let run = if run.len() <= RUN_LEN_MAX { run } else { "" };
    let digits = run.bytes().filter(u8::is_ascii_digit).count();
    if 0 < digits && digits < run.len() {
        if is_whole(run) {
            return (Shape::Word, run.len());
        }
        if let Some(number) = letters_for_digits(run) {
            return (Shape::Figure(Figure::Number(number)), run.len());
        }
    }
    let figure = || counted(rest).or_else(|| figure(rest).ok());
    if first.is_ascii_digit()
        && let Some((mut after, mut figure)) = figure()
    {
        if let Ok((past, _)) = ordinal(after) {
            after = past;
            if let Figure::Number(number) = &mut figure {
                number.ordinal = true;
            }
        }
        return (Shape::Figure(figure), rest.len() - after.len());
    }
    let word = prefix(rest, |letter| {
        is_word_letter(letter) && !letter.is_ascii_digit() && writing(letter) == writing(first)
    });
    // Never empty, so that every step goes forward.
    let len = word.len().max(first.len_utf8());
    (Shape::Word, len)
}

/// Digits and a letter that makes no time, length or spacing of them ("50g"), and what follows.
fn counted(rest: &str) -> Option<(&str, Figure)> {
    let after = rest.trim_start_matches(|letter: char| letter.is_ascii_digit());
    let digits = rest.get(..rest.len() - after.len())?;
    let letter = after.bytes().next()?;
    let is_other =
        letter.is_ascii_lowercase() && !matches!(letter, b'a' | b'h' | b'm' | b'p' | b'x');
    if !is_other || digits.len() > PLAIN_DIGITS_MAX {
        return None;
    }
    let value: u32 = digits.parse().ok()?;
    Some((after, Figure::Number(Number::new(f64::from(value)))))
}

/// No more of a text than decides whether a run is too long.
fn head(text: &str) -> &str {
    let end = text
        .char_indices()
        .map(|(at, letter)| at + letter.len_utf8())
        .find(|end| *end > RUN_LEN_MAX)
        .unwrap_or(text.len());
    text.get(..end).unwrap_or(text)
}

/// The letters at the start that belong together.
fn prefix(text: &str, belongs: impl Fn(char) -> bool) -> &str {
    let end = text
        .char_indices()
        .find(|(_, letter)| !belongs(*letter))
        .map_or(text.len(), |(at, _)| at);
    text.get(..end).unwrap_or(text)
}
