//! Phone numbers: from what people and gateways write to one spelling, E.164.
//!
//! A number is taken when it is *possible*, that is, when its length fits its country. It need
//! not be *valid*: numbering plans change faster than any table, and the numbers reserved for
//! fiction are never valid. [`line()`] tells what the table knows, as a warning.
//!
//! Deliberately absent: who a number belongs to (the directory knows) and whether it may be
//! texted (consent decides).

mod dial;
mod plan;

use self::{
    dial::Dialled,
    plan::{Fit, Plan},
};

/// E.164 allows 15 digits; with brackets, blanks and a prefix nobody needs more than this.
const NUMBER_CHARS_MAX: usize = 64;

/// Short codes have three to six digits (common practice; some networks use more). The shortest
/// international numbers have seven, the country's code included.
const SHORT_CODE_DIGITS_MAX: usize = 6;

/// Why a text is not a phone number that can be texted.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NumberFault {
    /// Nothing there.
    #[error("is empty")]
    Empty,
    /// Far more characters than a number has.
    #[error("has more than {NUMBER_CHARS_MAX} characters; write one number")]
    Long,
    /// A spreadsheet rounded it.
    #[error(
        "was rounded by a spreadsheet and its last digits are lost; set the cells to text and \
         type the number again"
    )]
    Rounded,
    /// A letter among the digits. It could stand for any digit, so none is guessed.
    #[error("has the letter {0:?}; write digits only")]
    Letter(char),
    /// Not a number at all.
    #[error("is not a phone number; write it like +44 7700 900123")]
    NotANumber,
    /// The country's code is unknown, or there is neither code nor home country.
    #[error("has no known country code; write it with a plus and the code, like +44 7700 900123")]
    NoCountry,
    /// The home country given to [`parse`] is not one.
    #[error("cannot be read: {0:?} is not a country code such as GB")]
    UnknownCountry(String),
    /// Three to six digits: a service, not a person.
    #[error("is a short code; a person's number is longer")]
    ShortCode,
    /// Too few digits for its country, or only enough to dial it from nearby.
    #[error("has too few digits; write the whole number with its area code")]
    TooShort,
    /// Too many digits for its country.
    #[error("has too many digits for its country; if these are two numbers, put ; between them")]
    TooLong,
    /// A number of digits that its country does not use.
    #[error("has a number of digits that its country does not use; compare it with the phone")]
    WrongLength,
    /// Zeros of dialling are left in it.
    #[error("has too many zeros at its beginning; write it with a plus and the country code")]
    DialledZeros,
}

/// What an inbound sender is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SenderKind {
    /// A phone number in E.164: can be answered.
    Number(String),
    /// Digits that are no number: a service. Never answered.
    ShortCode,
    /// A name, or nothing. Cannot be answered.
    Name,
}

/// What the numbering tables know of a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// A mobile, or a country that keeps no difference.
    Mobile,
    /// A landline: texts will probably not arrive.
    Landline,
    /// A service: free, premium, shared cost and the like.
    Service,
    /// No operator is known to use it.
    Unassigned,
}

/// Reads a number as a person writes it. `country` is the two-letter code that numbers without
/// a plus belong to ("ID"), or empty when there is none.
///
/// # Errors
///
/// When it is not a possible number, and why.
///
/// # Examples
///
/// ```
/// use budwood::words::phone_number::parse;
/// assert_eq!(parse("07700 900123", "GB").as_deref(), Ok("+447700900123"));
/// assert_eq!(parse("+44 (0)7700-900123", "ID").as_deref(), Ok("+447700900123"));
/// ```
pub fn parse(text: &str, country: &str) -> Result<String, NumberFault> {
    let text = bare(text);
    if text.is_empty() {
        return Err(NumberFault::Empty);
    }
    if text.chars().count() > NUMBER_CHARS_MAX {
        return Err(NumberFault::Long);
    }
    if is_rounded(&text) {
        return Err(NumberFault::Rounded);
    }
    if let Some(letter) = text.chars().find(|c| c.is_alphabetic()) {
        return Err(NumberFault::Letter(letter));
    }
    let number = Dialled::read(&text, home(country)?)?;
    match number.plan.fit(&number.national) {
        Fit::Right => same_when_read_again(&number),
        _ if digits(&text) <= SHORT_CODE_DIGITS_MAX => Err(NumberFault::ShortCode),
        Fit::Nearby | Fit::Short => Err(NumberFault::TooShort),
        Fit::Long => Err(NumberFault::TooLong),
        Fit::Between => Err(NumberFault::WrongLength),
    }
}

/// Tells what the sender of an inbound text is. Gateways write numbers with a plus, with `00`,
/// bare, or as dialled at home, with or without `tel:`; `country` is as for [`parse`].
#[must_use]
pub fn kind(sender: &str, country: &str) -> SenderKind {
    let sender = bare(sender);
    let digits = digits(&sender);
    if digits == 0 || sender.chars().any(char::is_alphabetic) {
        return SenderKind::Name;
    }
    if digits <= SHORT_CODE_DIGITS_MAX {
        return SenderKind::ShortCode;
    }
    let number = if let Some(rest) = sender.strip_prefix("00") {
        parse(&format!("+{rest}"), "").ok()
    } else if sender.starts_with(['+', '0']) {
        parse(&sender, country).ok()
    } else {
        without_plus(&sender, country)
    };
    number.map_or(SenderKind::ShortCode, SenderKind::Number)
}

/// Tells what the numbering tables know of an E.164 number.
#[must_use]
pub fn line(e164: &str) -> Line {
    Dialled::read(e164, None).map_or(Line::Unassigned, |number| {
        plan::line(number.plan.code, &number.national)
    })
}

/// Whether a number belongs to a person in this country, as far as the tables know: not abroad, by
/// satellite or on ships, and no service. Without a country, whether it belongs to any.
#[must_use]
pub fn is_at_home(e164: &str, country: &str) -> bool {
    let Ok(number) = Dialled::read(e164, None) else {
        return false;
    };
    let is_home = match home(country) {
        Ok(Some(home)) => home.code == number.plan.code,
        Ok(None) => number.plan.is_of_country(),
        Err(_) => false,
    };
    is_home && matches!(line(e164), Line::Mobile | Line::Unassigned)
}

/// Whether a text to a number may cost any sum, or never arrives: a service (free, premium, shared
/// cost and the like), a satellite, a ship, a network of no country.
#[must_use]
pub fn is_costly(e164: &str) -> bool {
    let is_of_country = |number: Dialled| number.plan.is_of_country();
    Dialled::read(e164, None).is_ok_and(|number| !is_of_country(number))
        || line(e164) == Line::Service
}

/// Whether a number is kept for fiction, and so must never reach a real gateway.
///
/// These are +44 7700 900000 to 900999, which the United Kingdom's regulator Ofcom sets aside for
/// drama use. Takes any spelling, so that none slips through.
#[must_use]
pub fn is_for_fiction(number: &str) -> bool {
    let digits: String = number.chars().filter(char::is_ascii_digit).collect();
    let digits = digits.trim_start_matches('0');
    digits.len() == 12 && digits.starts_with("447700900")
}

/// Whether this is the two-letter code of a country that has phone numbers.
#[must_use]
pub fn is_country(code: &str) -> bool {
    code.len() == 2 && matches!(home(code), Ok(Some(_)))
}

/// A number is known by its spelling in E.164, so that spelling must lead back to it. It does not
/// when a prefix of dialling was taken for a part of the number ("00" where abroad is "009"), and
/// a row of zeros is nobody's.
fn same_when_read_again(number: &Dialled) -> Result<String, NumberFault> {
    if number.national.bytes().all(|digit| digit == b'0') {
        return Err(NumberFault::DialledZeros);
    }
    let e164 = number.e164();
    match Dialled::read(&e164, None) {
        Ok(again) if again.e164() == e164 => Ok(e164),
        Ok(_) | Err(_) => Err(NumberFault::DialledZeros),
    }
}

/// Bare digits are nearly always an international number that lost its plus on the way. It is
/// read as a number of the home country only when that is a number in use and the other is not.
fn without_plus(digits: &str, country: &str) -> Option<String> {
    let abroad = parse(&format!("+{digits}"), "").ok();
    let home = parse(digits, country).ok();
    let in_use = |number: &String| is_for_fiction(number) || line(number) != Line::Unassigned;
    match (abroad, home) {
        (Some(abroad), Some(home)) if in_use(&home) && !in_use(&abroad) => Some(home),
        (Some(abroad), _) => Some(abroad),
        (None, home) => home,
    }
}

/// Without blanks at the ends, `tel:` and the marks for the direction of writing that come along
/// when a number is copied from a contact card.
fn bare(text: &str) -> String {
    let visible: String = text.chars().filter(|c| !is_invisible(*c)).collect();
    let trimmed = visible.trim();
    let tel = trimmed
        .get(..4)
        .is_some_and(|start| start.eq_ignore_ascii_case("tel:"));
    let rest = if tel { trimmed.get(4..) } else { None };
    rest.unwrap_or(trimmed).trim().to_string()
}

const fn is_invisible(c: char) -> bool {
    matches!(c, '\u{200B}'..='\u{200F}' | '\u{202A}'..='\u{202E}' | '\u{2060}'..='\u{2069}' | '\u{FEFF}')
        || (c.is_ascii_control() && !c.is_ascii_whitespace())
}

/// "2.31777E+11": what a spreadsheet makes of a long number.
fn is_rounded(text: &str) -> bool {
    let Some((mantissa, exponent)) = text.split_once(['E', 'e']) else {
        return false;
    };
    let exponent = exponent.trim_start_matches('+');
    let all = |part: &str, allowed: fn(char) -> bool| !part.is_empty() && part.chars().all(allowed);
    all(mantissa, |c| c.is_ascii_digit() || matches!(c, '.' | ','))
        && all(exponent, |c| c.is_ascii_digit())
}

/// The plan of a country; none when no country is given.
fn home(country: &str) -> Result<Option<&'static Plan>, NumberFault> {
    if country.is_empty() {
        return Ok(None);
    }
    plan::of_country(&country.to_ascii_uppercase())
        .map(Some)
        .ok_or_else(|| NumberFault::UnknownCountry(country.to_string()))
}

fn digits(text: &str) -> usize {
    text.chars().filter(|c| c.is_numeric()).count()
}

#[cfg(test)]
mod tests;
