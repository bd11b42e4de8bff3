//! Rows of a printed sheet, texted back: "SHEET 12: 3 dead 20, 5 weeded".
//!
//! A text begins with the word for a sheet and its number. A row is a number with words behind it,
//! at the begin or after a comma, a semicolon, a full stop or a new line; where rows have a word of
//! their own ("row 3 dead 20"), that word alone begins one. Deliberately absent: what the rows tell,
//! which is read like any text, and what stands in them.

use alloc::{string::String, vec::Vec};

use crate::{
    glyphs::fold::{Folded, bare},
    pack::Pack,
    span::Span,
};

/// More digits than that are no number of a sheet or a row.
const DIGITS_MAX: usize = 6;

/// A text about a printed sheet.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetText {
    /// The number on the paper.
    pub number: u32,
    /// The number of each row, and where in the text it is told what is in it.
    pub rows: Vec<(u32, Span)>,
}

/// The words of all packs, the longest first, with and without their marks.
#[derive(Clone, Debug, Default)]
pub(crate) struct Words {
    /// For a sheet.
    sheet: Vec<String>,
    /// For a row.
    row: Vec<String>,
}

impl Words {
    pub(crate) fn of(packs: &[Pack]) -> Self {
        let all = |of: fn(&Pack) -> &Vec<String>| {
            let words = packs.iter().flat_map(of);
            let mut words: Vec<String> =
                words.flat_map(|word| [word.clone(), bare(word)]).collect();
            words.sort_by_key(|word| core::cmp::Reverse(word.len()));
            words.dedup();
            words
        };
        Self {
            sheet: all(|pack| &pack.sheet),
            row: all(|pack| &pack.row),
        }
    }
}

/// What a text tells of a printed sheet.
pub(crate) fn read(text: &str, words: &Words) -> Option<SheetText> {
    let folded = Folded::new(text);
    let text = folded.text.as_str();
    let start = text.len() - text.trim_start().len();
    let at = word_at(text, start, &words.sheet)?;
    let (number, at) = number_at(text, passed(text, at, " .:#\u{a0}"))?;
    let body = passed(text, at, " .,:;-\n\r\u{a0}");
    // "sheet 12a" is not a sheet.
    if body == at && at < text.len() {
        return None;
    }
    let starts = starts(text, body, words);
    let ends = starts.iter().skip(1).map(|(_, begin, _)| *begin);
    let ends = ends.chain([text.len()]);
    let rows = starts.iter().zip(ends).map(|((row, _, told), end)| {
        let told_text = text.get(*told..end).unwrap_or_default();
        let told_text = told_text.trim_end_matches([' ', ',', ';', '.', '\n', '\r']);
        (*row, folded.span(*told, told + told_text.len()))
    });
    Some(SheetText {
        number,
        rows: rows.collect(),
    })
}

/// Each row: its number, where it begins, and where what it tells begins.
fn starts(text: &str, body: usize, words: &Words) -> Vec<(u32, usize, usize)> {
    let named = |at| {
        let at = word_at(text, at, &words.row)?;
        number_at(text, passed(text, at, " .:#"))
    };
    let plain = |at| {
        let (row, end) = number_at(text, at)?;
        let told = passed(text, end, " :.)-");
        let next = text.get(told..)?.chars().next()?;
        next.is_alphabetic().then_some((row, told))
    };
    let are_named = named(body).is_some();
    let mut starts = Vec::new();
    let mut may_begin = true;
    for (at, letter) in text.char_indices().skip_while(|(at, _)| *at < body) {
        let found = if are_named {
            named(at).filter(|_| may_begin)
        } else {
            plain(at).filter(|_| may_begin)
        };
        if let Some((row, told)) = found {
            starts.push((row, at, passed(text, told, " :.)-")));
        }
        let is_blank = letter.is_whitespace();
        may_begin = if are_named {
            !letter.is_alphanumeric()
        } else {
            is_separator(text, at, letter) || (may_begin && is_blank)
        };
    }
    starts
}

/// A comma or a full stop within a number separates nothing.
fn is_separator(text: &str, at: usize, letter: char) -> bool {
    let before = text.get(..at).and_then(|text| text.chars().next_back());
    let after = text.get(at + letter.len_utf8()..);
    let after = after.and_then(|text| text.chars().next());
    let is_digit = |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit());
    match letter {
        ',' | '.' => !(is_digit(before) && is_digit(after)),
        ';' | '\n' | '\r' => true,
        _ => false,
    }
}

/// Behind one of these words, if the text has it here.
fn word_at(text: &str, at: usize, words: &[String]) -> Option<usize> {
    let rest = text.get(at..)?;
    let word = words.iter().find(|word| {
        let behind = rest.strip_prefix(word.as_str());
        let next = behind.map(|behind| behind.chars().next());
        next.is_some_and(|next| next.is_none_or(|next| !next.is_alphabetic()))
    })?;
    Some(at + word.len())
}

/// A number here, and where it ends.
fn number_at(text: &str, at: usize) -> Option<(u32, usize)> {
    let digits = text.get(at..)?.bytes().take_while(u8::is_ascii_digit);
    let end = at + digits.count();
    let number = text
        .get(at..end)
        .filter(|digits| digits.len() <= DIGITS_MAX)?;
    Some((number.parse().ok()?, end))
}

/// Behind any of these letters.
fn passed(text: &str, at: usize, letters: &str) -> usize {
    let rest = text.get(at..).unwrap_or_default();
    let left = rest.trim_start_matches(|letter| letters.contains(letter));
    at + rest.len() - left.len()
}

#[cfg(test)]
mod tests {
    use alloc::{string::ToString, vec::Vec};
    use std::string::String;

    use super::{Words, read};
    use crate::{Pack, languages};

    #[track_caller]
    fn check(text: &str, number: u32, rows: &[(u32, &str)]) {
        let packs: Vec<Pack> = languages::ALL
            .iter()
            .map(|pack| Pack::parse(pack).unwrap())
            .collect();
        let found = read(text, &Words::of(&packs)).expect("a sheet");
        let told: Vec<(u32, String)> = found
            .rows
            .iter()
            .map(|(row, span)| (*row, text[span.start..span.end].to_string()))
            .collect();
        let told: Vec<(u32, &str)> = told.iter().map(|(row, text)| (*row, &**text)).collect();
        assert_eq!((found.number, &*told), (number, rows), "{text}");
    }

    #[test]
    fn rows_begin_with_their_numbers() {
        check(
            "SHEET 12: 3 dead 20, 5 weeded",
            12,
            &[(3, "dead 20"), (5, "weeded")],
        );
        check("sheet 12 row 5 DEAD 20", 12, &[(5, "DEAD 20")]);
        check("Sheet12, 3 dead 20", 12, &[(3, "dead 20")]);
        check(
            "sheet 7\n3 girth 41, 43,5, 39\n14: fed",
            7,
            &[(3, "girth 41, 43,5, 39"), (14, "fed")],
        );
        check(
            "sheet 7 row 3 dead 20, 2 filled; row 4 weeded",
            7,
            &[(3, "dead 20, 2 filled"), (4, "weeded")],
        );
        check(
            "sheet 7: 3 fed 1,5 kg. 4 weeded.",
            7,
            &[(3, "fed 1,5 kg"), (4, "weeded")],
        );
        check("sheet 12", 12, &[]);
    }

    #[test]
    fn every_language_has_its_words() {
        check(
            "FEUILLE 12: 3 morts 20, ligne",
            12,
            &[(3, "morts 20, ligne")],
        );
        check("feuille 12 ligne 3 morts 20", 12, &[(3, "morts 20")]);
        check(
            "LEMBAR 12: 3 mati 20, 5 sudah menyiang",
            12,
            &[(3, "mati 20"), (5, "sudah menyiang")],
        );
        check("folha 12 linha 3 mortas 20", 12, &[(3, "mortas 20")]);
        check(
            "ใบที่ ๑๒: 3 ตาย 20, 5 ตัดหญ้าแล้ว",
            12,
            &[(3, "ตาย 20"), (5, "ตัดหญ้าแล้ว")],
        );
        check("PHIẾU 12: 3 chết 20", 12, &[(3, "chết 20")]);
        check("phieu 12 hang 3 chet 20", 12, &[(3, "chet 20")]);
    }

    #[test]
    fn other_texts_are_none() {
        let packs: Vec<Pack> = languages::ALL
            .iter()
            .map(|pack| Pack::parse(pack).unwrap())
            .collect();
        let words = Words::of(&packs);
        for text in [
            "sheets 12",
            "dead 12 sheet 3",
            "sheet",
            "sheet twelve",
            "sheet 12a",
            "",
            "sheet 9999999: 1 dead 2",
        ] {
            assert_eq!(read(text, &words), None, "{text}");
        }
    }
}
