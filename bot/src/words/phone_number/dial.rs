//! From a number as written to its country's calling code and the digits that follow it abroad.
//!
//! It is read as the common numbering library reads it, which `tests/peers/numbers.rs` checks:
//! first what surrounds the number goes, then an extension, then what is dialled before it.
//! Letters are refused before this, so neither keypad words nor "ext." are known here.

use std::sync::LazyLock;

use regex_lite::Regex;

use super::{
    NumberFault,
    plan::{self, Fit, Plan},
};

/// The zero of each script's decimal digits (Unicode, general category Nd).
const ZEROS: [u32; 73] = [
    0x0660, 0x06f0, 0x07c0, 0x0966, 0x09e6, 0x0a66, 0x0ae6, 0x0b66, 0x0be6, 0x0c66, 0x0ce6, 0x0d66,
    0x0de6, 0x0e50, 0x0ed0, 0x0f20, 0x1040, 0x1090, 0x17e0, 0x1810, 0x1946, 0x19d0, 0x1a80, 0x1a90,
    0x1b50, 0x1bb0, 0x1c40, 0x1c50, 0xa620, 0xa8d0, 0xa900, 0xa9d0, 0xa9f0, 0xaa50, 0xabf0, 0xff10,
    0x104a0, 0x10d30, 0x10d40, 0x11066, 0x110f0, 0x11136, 0x111d0, 0x112f0, 0x11450, 0x114d0,
    0x11650, 0x116c0, 0x116d0, 0x116da, 0x11730, 0x118e0, 0x11950, 0x11bf0, 0x11c50, 0x11d50,
    0x11da0, 0x11f50, 0x16a60, 0x16ac0, 0x16b50, 0x1ccf0, 0x1d7ce, 0x1d7d8, 0x1d7e2, 0x1d7ec,
    0x1d7f6, 0x1e140, 0x1e2f0, 0x1e4f0, 0x1e5f1, 0x1e950, 0x1fbf0,
];

/// The number of a desk behind a switchboard: after `#` or `~`, before `#`, after `;` or commas.
static EXTENSION: LazyLock<Option<Regex>> = LazyLock::new(|| {
    let gap = "[:.\u{ff0e}]?[ \u{a0}\t,-]*";
    Regex::new(&format!(
        "^(?:[ \u{a0}\t,]*[#\u{ff03}~\u{ff5e}]{gap}\\d{{1,9}}#?\
         |[- ]+\\d{{1,6}}#\
         |[ \u{a0}\t]*(?:,,|;){gap}\\d{{1,15}}#?\
         |[ \u{a0}\t]*,+{gap}\\d{{1,9}}#?)$"
    ))
    .ok()
});

/// Digits after the calling code. E.164 allows 15 with the code; the reference library reads up to 17
/// after it, and which lengths a country uses is asked later.
const NATIONAL_DIGITS_MIN: usize = 2;
const NATIONAL_DIGITS_MAX: usize = 17;

/// A number taken apart.
#[derive(Debug)]
pub(super) struct Dialled {
    /// The plan that speaks for its calling code.
    pub(super) plan: &'static Plan,
    /// The digits after the calling code.
    pub(super) national: String,
}

impl Dialled {
    /// Reads a number; `home` is the country of those without a plus.
    pub(super) fn read(text: &str, home: Option<&'static Plan>) -> Result<Self, NumberFault> {
        let written: String = text.chars().map(plain).collect();
        let written = inner(&written);
        if !is_number(written) {
            return Err(NumberFault::NotANumber);
        }
        if home.is_none() && !written.starts_with('+') {
            return Err(NumberFault::NoCountry);
        }
        let (plan, national) = split(without_extension(written), home)?;
        if national.len() < NATIONAL_DIGITS_MIN {
            return Err(NumberFault::TooShort);
        }
        let bare = plan.without_trunk(&national);
        let national = match plan.fit(&bare) {
            Fit::Right | Fit::Long => bare,
            Fit::Nearby | Fit::Short | Fit::Between => national,
        };
        match national.len() {
            ..NATIONAL_DIGITS_MIN => Err(NumberFault::TooShort),
            NATIONAL_DIGITS_MIN..=NATIONAL_DIGITS_MAX => Ok(Self {
                plan: plan::of_code(plan.code).unwrap_or(plan),
                national,
            }),
            _ => Err(NumberFault::TooLong),
        }
    }

    /// The one spelling.
    pub(super) fn e164(&self) -> String {
        format!("+{}{}", self.plan.code, self.national)
    }
}

/// The plan of a number, and its digits after the calling code.
fn split(
    written: &str,
    home: Option<&'static Plan>,
) -> Result<(&'static Plan, String), NumberFault> {
    let digits = digits_of(written);
    if written.starts_with('+') {
        match after_code(&digits) {
            // Some write a plus before whatever they would dial.
            Err(NumberFault::NoCountry) => {}
            found => return found,
        }
        let dialled = home.map_or(Ok(None), |home| from_home(&digits, home))?;
        return dialled.ok_or(NumberFault::NoCountry);
    }
    let Some(home) = home else {
        return Err(NumberFault::NoCountry);
    };
    Ok(from_home(&digits, home)?.unwrap_or((home, digits)))
}

/// Digits as dialled from a country, if they hold a calling code.
fn from_home(
    digits: &str,
    home: &'static Plan,
) -> Result<Option<(&'static Plan, String)>, NumberFault> {
    if let Some(abroad) = home.after_abroad(digits) {
        return after_code(abroad).map(Some);
    }
    // The country's own code without a plus: believed when the number is none as it stands.
    let Some(rest) = digits.strip_prefix(home.code) else {
        return Ok(None);
    };
    let bare = home.without_trunk(rest);
    let is_better = !home.fits(digits) && home.fits(&bare);
    if !is_better && home.fit(digits) != Fit::Long {
        return Ok(None);
    }
    Ok(plan::of_code(home.code).map(|plan| (plan, bare)))
}

fn after_code(digits: &str) -> Result<(&'static Plan, String), NumberFault> {
    if digits.len() <= NATIONAL_DIGITS_MIN {
        return Err(NumberFault::TooShort);
    }
    let (plan, national) = plan::of_digits(digits).ok_or(NumberFault::NoCountry)?;
    Ok((plan, national.to_owned()))
}

/// From the first plus or digit to the last digit or `#`.
fn inner(written: &str) -> &str {
    let start = written.find(|c: char| c == '+' || c.is_ascii_digit());
    let rest = start.and_then(|start| written.get(start..)).unwrap_or("");
    rest.trim_end_matches(|c: char| !c.is_alphanumeric() && c != '#')
}

/// Two digits, or three and more with marks between; an extension may follow.
fn is_number(written: &str) -> bool {
    is_plain_number(written)
        || extensions(written).any(|start| written.get(..start).is_some_and(is_plain_number))
}

fn is_plain_number(written: &str) -> bool {
    let rest = written.trim_start_matches('+');
    let digits = rest.bytes().filter(u8::is_ascii_digit).count();
    let is_two = digits == 2 && written.len() == 2;
    is_two || digits > 2 && rest.chars().all(|c| c.is_ascii_digit() || is_mark(c))
}

/// What may stand between the digits: dashes, blanks, brackets, points, strokes and a star.
const fn is_mark(c: char) -> bool {
    matches!(
        c,
        '-' | ' ' | '(' | ')' | '[' | ']' | '.' | '/' | '~' | '*'
            | '\u{a0}' | '\u{ad}' | '\u{200b}' | '\u{2060}' | '\u{3000}'
            | '\u{2010}'..='\u{2015}' | '\u{2053}' | '\u{2212}' | '\u{223c}'
            | '\u{ff08}' | '\u{ff09}' | '\u{ff0d}'..='\u{ff0f}' | '\u{ff3b}' | '\u{ff3d}' | '\u{ff5e}'
    )
}

/// Without the longest ending that is an extension, if a number is before it.
fn without_extension(written: &str) -> &str {
    let longest = extensions(written).next();
    let before = longest.and_then(|start| written.get(..start));
    before.filter(|before| is_number(before)).unwrap_or(written)
}

/// Where an extension begins that goes on to the end, the longest first.
fn extensions(written: &str) -> impl Iterator<Item = usize> {
    let has_sign = written.contains(['#', '\u{ff03}', '~', '\u{ff5e}', ',', ';']);
    let pattern = EXTENSION.as_ref().filter(|_| has_sign);
    pattern.into_iter().flat_map(move |pattern| {
        let starts = written.char_indices().map(|(start, _)| start);
        starts.filter(move |start| {
            written
                .get(*start..)
                .is_some_and(|end| pattern.is_match(end))
        })
    })
}

fn digits_of(written: &str) -> String {
    written.chars().filter(char::is_ascii_digit).collect()
}

/// A digit of any script as the ASCII one, and the wide plus as a plus.
fn plain(c: char) -> char {
    if c.is_ascii() {
        return c;
    }
    if c == '\u{ff0b}' {
        return '+';
    }
    let digit = ZEROS
        .iter()
        .find_map(|zero| u32::from(c).checked_sub(*zero).filter(|digit| *digit < 10));
    digit
        .and_then(|digit| char::from_digit(digit, 10))
        .unwrap_or(c)
}
