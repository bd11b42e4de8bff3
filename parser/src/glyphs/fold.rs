//! Brings a text into one form for matching, and remembers where each letter came from.
//!
//! Compatibility forms, capitals, digits of other scripts, apostrophes and invisible joiners are
//! folded away. Deliberately absent: stripping of accents, which is a second key (`bare`).

use alloc::{string::String, vec::Vec};
use core::iter;

use smallvec::SmallVec;
use unicode_normalization::UnicodeNormalization;

use crate::{
    glyphs::script::{VIRAMA, chillu, is_mark, look_alike},
    span::Span,
};

/// Texts longer than this are cut: ten parts of a concatenated message, with room.
pub(crate) const TEXT_CHARS_MAX: usize = 1_600;

/// A text in matching form.
pub(crate) struct Folded<'t> {
    /// As received, cut to what is read.
    pub(crate) source: &'t str,
    /// Lower case, one form.
    pub(crate) text: String,
    /// Source byte of each byte of `text`; empty when they are the same.
    origin: Vec<u32>,
    /// What was not read.
    pub(crate) cut: Option<Span>,
}

impl<'t> Folded<'t> {
    /// Folds a text.
    pub(crate) fn new(whole: &'t str) -> Self {
        let end = if whole.len() <= TEXT_CHARS_MAX {
            whole.len()
        } else {
            let mut letters = whole.char_indices();
            letters
                .nth(TEXT_CHARS_MAX)
                .map_or(whole.len(), |(at, _)| at)
        };
        let source = whole.get(..end).unwrap_or(whole);
        let cut = (end < whole.len()).then_some(Span {
            start: end,
            end: whole.len(),
        });
        let (text, origin) = if source.is_ascii() && !source.contains('\'') {
            (source.to_ascii_lowercase(), Vec::new())
        } else {
            fold_slowly(source)
        };
        Self {
            source,
            text,
            origin,
            cut,
        }
    }

    /// The place in the source of a piece of the folded text.
    pub(crate) fn span(&self, start: usize, end: usize) -> Span {
        if self.origin.is_empty() {
            return Span { start, end };
        }
        Span {
            start: self.source_at(start),
            end: self.source_at(end),
        }
    }

    fn source_at(&self, at: usize) -> usize {
        self.origin
            .get(at)
            .map_or(self.source.len(), |byte| *byte as usize)
    }

    /// What was written at a place of the folded text.
    pub(crate) fn written(&self, start: usize, end: usize) -> &'t str {
        let span = self.span(start, end);
        self.source.get(span.start..span.end).unwrap_or("")
    }
}

/// Folds a word or phrase of a pack, or a name, the way texts are folded.
pub(crate) fn fold(text: &str) -> String {
    Folded::new(text).text
}

/// The same without accents: "bón phân" becomes "bon phan". Only Latin letters lose theirs: in
/// other scripts marks are vowels, and words would fall together.
pub(crate) fn bare(text: &str) -> String {
    bare_letters(text).collect()
}

/// Letter by letter.
pub(crate) fn bare_letters(text: &str) -> impl Iterator<Item = char> {
    let mut after_latin = false;
    text.nfd()
        .filter_map(move |letter| {
            if is_mark(letter) {
                return (!after_latin).then_some(letter);
            }
            let plain = if letter == 'đ' { 'd' } else { letter };
            after_latin = plain.is_ascii_alphabetic();
            Some(plain)
        })
        .nfc()
}

/// A word of a text without its accents, which takes no memory unless it is very long.
pub(crate) struct BareWord(SmallVec<[u8; BARE_WORD_LEN]>);

/// More letters take memory.
const BARE_WORD_LEN: usize = 64;

impl BareWord {
    pub(crate) fn new(word: &str) -> Self {
        let mut bytes = SmallVec::new();
        for letter in bare_letters(word) {
            bytes.extend_from_slice(letter.encode_utf8(&mut [0; 4]).as_bytes());
        }
        Self(bytes)
    }

    pub(crate) fn as_str(&self) -> &str {
        core::str::from_utf8(&self.0).unwrap_or("")
    }
}

/// Whether a word may have accents to lose.
pub(crate) fn has_accents(word: &str) -> bool {
    // Latin letters with accents lie below Greek, and in one block further on.
    word.chars()
        .any(|letter| matches!(letter, '\u{c0}'..='\u{24f}' | '\u{1e00}'..='\u{1eff}'))
}

fn fold_slowly(source: &str) -> (String, Vec<u32>) {
    let mut text = String::with_capacity(source.len());
    let mut origin = Vec::with_capacity(source.len());
    let mut letters = source.char_indices().peekable();
    while let Some((start, first)) = letters.next() {
        if is_dropped(first) {
            continue;
        }
        let mut end = start + first.len_utf8();
        while let Some((at, mark)) = letters.next_if(|(_, next)| belongs(*next)) {
            end = at + mark.len_utf8();
        }
        let cluster = source.get(start..end).unwrap_or("");
        if cluster.is_ascii() {
            text.push(first.to_ascii_lowercase());
        } else if is_settled(first) && cluster.len() == first.len_utf8() {
            text.push(first);
        } else {
            fold_cluster(cluster, &mut text);
        }
        origin.resize(text.len(), u32::try_from(start).unwrap_or(u32::MAX));
    }
    (text, origin)
}

/// Letters that texts are full of and that stay as they are, unless a mark follows.
const fn is_settled(letter: char) -> bool {
    matches!(letter,
        'à'..='ö' | 'ø'..='ÿ' | 'ă' | 'đ' | 'ĩ' | 'ũ' | 'ơ' | 'ư'
        // Thai.
        | '\u{e01}'..='\u{e32}' | '\u{e34}'..='\u{e37}' | '\u{e40}'..='\u{e46}'
        // Tamil, Malayalam, Sinhala: the consonants.
        | '\u{b95}' | '\u{b99}' | '\u{b9a}' | '\u{b9f}' | '\u{ba3}' | '\u{ba4}'
        | '\u{ba8}'..='\u{baa}' | '\u{bae}'..='\u{bb9}'
        | '\u{d15}'..='\u{d39}' | '\u{d9a}'..='\u{db1}' | '\u{db3}'..='\u{dbb}'
    ) || (matches!(letter, 'ạ'..='ỹ') && letter as u32 % 2 == 1)
}

/// Signs come apart, lose their size and all that is dropped, and are put together again: some
/// come apart into capitals, into an apostrophe ("＇", "ŉ"), or into a letter that looks like a
/// Latin one, in some cases only as a capital.
fn one_form(cluster: &str) -> impl Iterator<Item = char> {
    let latin = |letter| look_alike(letter).unwrap_or(letter);
    cluster
        .chars()
        .filter(|letter| !is_dropped(*letter))
        .nfkd()
        .map(latin)
        .flat_map(char::to_lowercase)
        .map(latin)
        .filter(|letter| !is_dropped(*letter))
        .nfc()
}

fn fold_cluster(cluster: &str, text: &mut String) {
    for letter in one_form(cluster) {
        if let Some(consonant) = chillu(letter) {
            text.push(consonant);
            text.push(VIRAMA);
        } else {
            text.push(plain_letter(letter));
        }
    }
}

/// Whether it belongs to the letter before it: a mark, or what stands between a letter and one.
fn belongs(letter: char) -> bool {
    if letter.is_ascii() {
        return is_dropped(letter);
    }
    if is_settled(letter) {
        return false;
    }
    let is_either = |letter| is_mark(letter) || is_dropped(letter);
    let mut apart = iter::once(letter).nfkd();
    is_either(letter) || apart.next().is_some_and(is_either)
}

/// Joiners that nobody sees, and apostrophes ("didn't" is listed as "didnt").
fn is_dropped(letter: char) -> bool {
    matches!(
        letter,
        '\u{200b}'
            ..='\u{200f}'
                | '\u{202a}'..='\u{202e}'
                | '\u{2060}'..='\u{2069}'
                | '\u{61c}'
                | '\u{feff}'
                | '\u{ad}'
                | '\u{fe0f}'
                | '\''
                | '\u{2018}'
                | '\u{2019}'
                | '\u{2bc}'
                | '\u{60}'
                | '\u{b4}'
    )
}

/// Digits of other scripts to 0-9, odd dashes to "-".
fn plain_letter(letter: char) -> char {
    /// The zero of each script's decimal digits (Unicode, general category Nd).
    const ZEROS: [u32; 16] = [
        0x0660, 0x06f0, 0x0966, 0x09e6, 0x0a66, 0x0ae6, 0x0b66, 0x0be6, 0x0c66, 0x0ce6, 0x0d66,
        0x0de6, 0x0e50, 0x0ed0, 0x1040, 0x17e0,
    ];
    let code = u32::from(letter);
    if code < 0x0660 {
        return letter;
    }
    if matches!(letter, '\u{2010}'..='\u{2015}' | '\u{2212}') {
        return '-';
    }
    ZEROS
        .iter()
        .find_map(|zero| char::from_digit(code.checked_sub(*zero)?, 10))
        .unwrap_or(letter)
}

#[cfg(test)]
mod tests {
    use alloc::string::{String, ToString};

    use unicode_normalization::UnicodeNormalization;

    use super::{fold_cluster, is_dropped, is_mark, is_settled};

    #[test]
    fn settled_letters_are_folded_into_themselves() {
        for letter in ('\0'..=char::MAX).filter(|letter| is_settled(*letter)) {
            let mut folded = String::new();
            fold_cluster(&letter.to_string(), &mut folded);
            assert_eq!(folded, letter.to_string());
            // And none belongs to the letter before it.
            let first = core::iter::once(letter).nfkd().next().unwrap();
            assert!(!is_mark(first) && !is_dropped(first));
        }
    }
}
