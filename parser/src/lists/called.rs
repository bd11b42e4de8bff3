//! The names of this conversation: how a text spells them, gone through one by one.
//!
//! Deliberately absent: what they name, and where single letters are names (`letters`).

use alloc::string::ToString;

use crate::{
    glyphs::fold::{bare, fold},
    reading::Known,
};

/// Whether these letters are one of the names, or its first word.
pub(crate) fn is_name(text: &str, known: &Known<'_>) -> bool {
    let starts = |name: &&str| {
        if is_plain(name) {
            // No white space but the space, so that letters alone are compared.
            let first = name.split(' ').find(|word| !word.is_empty());
            return first.unwrap_or("").eq_ignore_ascii_case(text);
        }
        let first = name.split_whitespace().next().unwrap_or("");
        name_len(text, first) == Some(text.len())
    };
    known.blocks.iter().any(starts)
        || known.groups.iter().any(starts)
        || known.members.iter().any(starts)
        || known.rolls.iter().any(|names| names.has_word(text))
}

/// Whether a run such as "b2" reads as a block name rather than block B and the number 2.
pub(crate) fn is_block_like(run: &str, known: &Known<'_>) -> bool {
    let named = |run: &str| {
        known
            .blocks
            .iter()
            .any(|block| name_len(run, block) == Some(run.len()))
    };
    if named(run) {
        return true;
    }
    let mut letters = run.chars();
    let letter = letters.next().filter(char::is_ascii_alphabetic);
    let digits = letters.as_str();
    let is_code = matches!(digits.len(), 1 | 2) && digits.bytes().all(|byte| byte.is_ascii_digit());
    match letter {
        // "l2" may be a mistyped 12.
        Some('l' | 'o' | 'i') | None => false,
        Some(letter) => is_code && !named(letter.to_string().as_str()),
    }
}

/// The length of the name at the start of the text, if it ends at the end of a word.
pub(crate) fn name_len_within(text: &str, name: &str) -> Option<usize> {
    let len = name_len(text, name)?;
    (len > 0).then_some(len)
}

/// Compares a name with the start of a folded text, capitals, width of spaces and accents that are
/// left out aside.
fn name_len(text: &str, name: &str) -> Option<usize> {
    if name.is_ascii() && !name.contains('\'') {
        return folded_len(text, name);
    }
    let name = fold(name);
    folded_len(text, &name).or_else(|| folded_len(text, &bare(&name)))
}

/// A name of nothing but plain letters, digits and spaces, which folding only makes small.
fn is_plain(name: &str) -> bool {
    name.bytes()
        .all(|byte| byte.is_ascii_alphanumeric() || byte == b' ')
}

fn folded_len(text: &str, name: &str) -> Option<usize> {
    let mut rest = text;
    let mut after_space = false;
    for letter in name.chars().flat_map(char::to_lowercase) {
        if letter.is_whitespace() || (letter == '-' && !rest.starts_with('-')) {
            if !after_space && !rest.starts_with(char::is_whitespace) {
                return None;
            }
            rest = rest.trim_start();
            after_space = true;
            continue;
        }
        rest = rest.strip_prefix(letter)?;
        after_space = false;
    }
    Some(text.len() - rest.len())
}

/// The letter that a word names, and whether it does so without a word for a block: names that are
/// also words of every day need one.
pub(crate) fn letter_named(name: &str) -> Option<(&'static str, bool)> {
    let (letter, alone) = match name {
        "เอ" => ("A", false),
        "บี" => ("B", false),
        "ซี" => ("C", false),
        "ดี" => ("D", false),
        "bê" => ("B", false),
        "xê" => ("C", false),
        "đê" => ("D", false),
        "ஏ" => ("A", false),
        "பி" => ("B", true),
        "சி" => ("C", true),
        "டி" => ("D", true),
        "എ" => ("A", true),
        "ബി" => ("B", true),
        "സി" => ("C", true),
        "ഡി" => ("D", true),
        "ඒ" => ("A", false),
        "බී" => ("B", true),
        "සී" => ("C", true),
        "ඩී" => ("D", true),
        _ => return None,
    };
    Some((letter, alone))
}
