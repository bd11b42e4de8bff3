//! Numbers as people type them: one rule, one function.
//!
//! ```text
//! figure   = iso / triple / fraction / clock / metres / spacing / range / list / grouped / decimal / whole
//! iso      = 4DIGIT "-" 1*2DIGIT "-" 1*2DIGIT
//! triple   = 1*4DIGIT sep 1*2DIGIT sep 1*4DIGIT         ; the same sep: "/" "-" "." ":"
//! fraction = 1*2DIGIT "/" 1*2DIGIT                      ; 12/5 is a day, 1/2 a half
//! clock    = 1*2DIGIT (":" 2DIGIT / "h" [2DIGIT]) [half] / 1*2DIGIT half      ; 14:30, 14h, 2pm
//! half     = [" "] ("am" / "pm")
//! metres   = DIGIT "m" 1*2DIGIT                         ; 1m8
//! spacing  = side 1*2("x" side)                         ; 6x3, 60x60x60 cm
//! range    = number "-" number
//! list     = number 1*("," number)                      ; 41,43,39
//! grouped  = 1*3DIGIT ("," / ".") 3DIGIT                ; 1,200
//! decimal  = 1*DIGIT ("," / ".") 1*2DIGIT               ; 43,5
//! ```
//!
//! Deliberately absent: what a number counts. That depends on its neighbours (`roles`).

use nom::{
    IResult, Parser,
    branch::alt,
    bytes::complete::{tag, take_while_m_n},
    character::complete::{char, digit1, one_of},
    combinator::{map, map_opt, not, opt, peek, recognize, verify},
    multi::many1_count,
    sequence::terminated,
};

/// Larger numbers are nothing that a smallholder counts (a phone number, a code).
pub(crate) const NUMBER_MAX: u32 = 999_999;

/// A number in digits, by its form.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Figure {
    /// One number.
    Number(Number),
    /// Numbers with commas between ([`Values`]); `sure` when they cannot be one decimal.
    List { sure: bool },
    /// From, to.
    Range(u32, u32),
    /// Three numbers: a date or a grade.
    Triple([u16; 3]),
    /// Year, month, day.
    Iso([u16; 3]),
    /// A day and a month, or a half.
    Fraction(u8, u8),
    /// A length in metres.
    Metres(f64),
    /// A time of day.
    Clock,
    /// "6x3": from row to row and from tree to tree, or the sides of a hole.
    Spacing,
    /// More than [`NUMBER_MAX`].
    TooLarge,
}

/// One number and how sure its reading is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Number {
    pub(crate) value: f64,
    /// The reading of "1.200" as a decimal, for land and weights.
    pub(crate) decimal: Option<f64>,
    /// Letters stood for digits.
    pub(crate) letters: bool,
    /// Said in loose words ("one twenty", "a dozen").
    pub(crate) loose: bool,
    /// Written as an ordinal ("15th").
    pub(crate) ordinal: bool,
}

impl Number {
    /// A plain number.
    pub(crate) const fn new(value: f64) -> Self {
        Self {
            value,
            decimal: None,
            letters: false,
            loose: false,
            ordinal: false,
        }
    }

    /// The number as a count, if it is whole.
    pub(crate) fn whole(self) -> Option<u32> {
        whole(self.value)
    }
}

/// The numbers of a list, read from the text each time they are wanted.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Values<'t>(&'t str);

impl<'t> Values<'t> {
    /// The list as written; the ending of an ordinal may stand behind it.
    pub(crate) fn new(written: &'t str) -> Self {
        Self(written.trim_end_matches(|letter: char| !letter.is_ascii_digit()))
    }

    /// Each number that is not too large.
    pub(crate) fn iter(self) -> impl Iterator<Item = f64> + 't {
        let values = self.0.split(',').filter_map(|part| part.parse().ok());
        values.filter(|value| *value <= f64::from(NUMBER_MAX))
    }
}

/// A value as a count, if it is a whole number in range.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the value is checked to be in range; a fraction shows when it is cast back"
)]
pub(crate) fn whole(value: f64) -> Option<u32> {
    let in_range = (0.0..=f64::from(NUMBER_MAX)).contains(&value);
    let cut = if in_range { value as u32 } else { 0 };
    (in_range && f64::from(cut).to_bits() == (value + 0.0).to_bits()).then_some(cut)
}

/// Reads the number at the start of a text.
pub(crate) fn figure(input: &str) -> IResult<&str, Figure> {
    alt((
        iso, triple, fraction, clock, metres, spacing, range, list, grouped, decimal, plain,
    ))
    .parse(input)
}

/// Reads "1OO", "l2", "12o": digits with letters that look like digits.
pub(crate) fn letters_for_digits(run: &str) -> Option<Number> {
    const RUN_LEN_MAX: usize = 6;
    let digits = run.bytes().filter(u8::is_ascii_digit).count();
    // "20l" are litres, and Sinhala ends numbers in "i".
    let ended = run
        .strip_suffix(['l', 'i'])
        .is_some_and(|rest| rest.len() == digits);
    if digits == 0 || digits == run.len() || run.len() > RUN_LEN_MAX || ended {
        return None;
    }
    let value = run.bytes().try_fold(0_u32, |value, byte| {
        let digit = match byte {
            b'0'..=b'9' => u32::from(byte - b'0'),
            b'o' => 0,
            b'l' | b'i' => 1,
            _ => return None,
        };
        Some(value * 10 + digit)
    })?;
    Some(Number {
        letters: true,
        ..Number::new(f64::from(value))
    })
}

fn iso(input: &str) -> IResult<&str, Figure> {
    map(
        end((small(4, 4), char('-'), small(1, 2), char('-'), small(1, 2))),
        |(year, _, month, _, day)| Figure::Iso([year, month, day]),
    )
    .parse(input)
}

fn triple(input: &str) -> IResult<&str, Figure> {
    let (rest, first) = small(1, 4).parse(input)?;
    let (rest, separator) = one_of("/-.:").parse(rest)?;
    let (rest, second) = small(1, 2).parse(rest)?;
    let (rest, _) = char(separator).parse(rest)?;
    let (rest, third) = end(small(1, 4)).parse(rest)?;
    Ok((rest, Figure::Triple([first, second, third])))
}

fn fraction(input: &str) -> IResult<&str, Figure> {
    map_opt(
        end((small(1, 2), one_of("/\u{2044}"), small(1, 2))),
        |(above, _, below)| {
            Some(Figure::Fraction(
                u8::try_from(above).ok()?,
                u8::try_from(below).ok()?,
            ))
        },
    )
    .parse(input)
}

fn clock(input: &str) -> IResult<&str, Figure> {
    let mut minutes = (char(':'), end(small(2, 2)));
    let mut hours = (char('h'), end(take_digits(0, 2)), word_end);
    let (rest, hour) = small(1, 2).parse(input)?;
    let (rest, half) = if let Ok((rest, _)) = minutes.parse(rest) {
        (opt(half_day).parse(rest)?.0, true)
    } else if let Ok((rest, _)) = hours.parse(rest) {
        (rest, true)
    } else {
        (half_day(rest)?.0, (1..=12).contains(&hour))
    };
    if half && hour <= 24 {
        Ok((rest, Figure::Clock))
    } else {
        Err(refuse(input))
    }
}

/// "pm" after an hour, with or without a space.
fn half_day(input: &str) -> IResult<&str, &str> {
    let half = (opt(char(' ')), alt((tag("am"), tag("pm"))), word_end);
    recognize(half).parse(input)
}

/// No letter or digit follows.
fn word_end(input: &str) -> IResult<&str, ()> {
    not(nom::character::complete::satisfy(char::is_alphanumeric)).parse(input)
}

fn metres(input: &str) -> IResult<&str, Figure> {
    map_opt(
        end(recognize((small(1, 1), char('m'), small(1, 2)))),
        |text: &str| {
            let (whole, part) = text.split_once('m')?;
            let scale = if part.len() == 1 { 10.0 } else { 100.0 };
            let part: f64 = part.parse().ok()?;
            Some(Figure::Metres(whole.parse::<f64>().ok()? + part / scale))
        },
    )
    .parse(input)
}

/// "6x3", "6.7x3.4m", "60x60x60".
fn spacing(input: &str) -> IResult<&str, Figure> {
    let side = || (small(1, 3), opt((one_of(".,"), small(1, 2))));
    let unit = || opt(alt((tag("cm"), tag("m"), tag("ft"))));
    let another = |input| (one_of("x\u{d7}*"), side(), unit()).parse(input);
    let sides = (side(), unit(), another, opt(another));
    map(end((sides, word_end)), |_| Figure::Spacing).parse(input)
}

fn range(input: &str) -> IResult<&str, Figure> {
    map_opt(end((number, char('-'), number)), |(from, _, to)| {
        (from < to).then_some(Figure::Range(whole(from)?, whole(to)?))
    })
    .parse(input)
}

/// "41,43,39" is a list. "43,5" and "1,200" are not: their second part has not two digits.
fn list(input: &str) -> IResult<&str, Figure> {
    let (rest, text) = end(recognize((digit1, many1_count((char(','), digit1))))).parse(input)?;
    let parts = text.split(',').count();
    let widths = || text.split(',').map(str::len);
    let sure = parts > 2 && widths().all(|width| width == 2 || width == 3);
    let one_number = match parts {
        2 => widths().next_back() != Some(2) && !(widths().all(|width| width == 3)),
        _ => Values::new(text).iter().count() != parts,
    };
    if one_number {
        return Err(refuse(input));
    }
    Ok((rest, Figure::List { sure }))
}

fn grouped(input: &str) -> IResult<&str, Figure> {
    map(
        end((
            verify(take_digits(1, 3), |first: &str| !first.starts_with('0')),
            one_of(",."),
            take_digits(3, 3),
        )),
        |(first, separator, second)| {
            let first: f64 = first.parse().unwrap_or(0.0);
            let second: f64 = second.parse().unwrap_or(0.0);
            Figure::Number(Number {
                decimal: (separator == '.').then_some(first + second / 1000.0),
                ..Number::new(first * 1000.0 + second)
            })
        },
    )
    .parse(input)
}

fn decimal(input: &str) -> IResult<&str, Figure> {
    map(
        terminated(decimal_value, peek(not((one_of(",."), digit1)))),
        |value| Figure::Number(Number::new(value)),
    )
    .parse(input)
}

fn plain(input: &str) -> IResult<&str, Figure> {
    map(digit1, |digits: &str| {
        let digits = digits.trim_start_matches('0');
        match digits.len() {
            0 => Figure::Number(Number::new(0.0)),
            1..=6 => Figure::Number(Number::new(digits.parse().unwrap_or(0.0))),
            _ => Figure::TooLarge,
        }
    })
    .parse(input)
}

fn number(input: &str) -> IResult<&str, f64> {
    alt((
        decimal_value,
        map_opt(take_digits(1, 6), |digits: &str| digits.parse().ok()),
    ))
    .parse(input)
}

fn decimal_value(input: &str) -> IResult<&str, f64> {
    map_opt(
        (take_digits(1, 6), one_of(",."), end(take_digits(1, 2))),
        |(above, _, below): (&str, char, &str)| {
            let scale = if below.len() == 1 { 10.0 } else { 100.0 };
            Some(above.parse::<f64>().ok()? + below.parse::<f64>().ok()? / scale)
        },
    )
    .parse(input)
}

fn take_digits<'t>(
    least: usize,
    most: usize,
) -> impl Parser<&'t str, Output = &'t str, Error = nom::error::Error<&'t str>> {
    take_while_m_n(least, most, |letter: char| letter.is_ascii_digit())
}

fn small<'t>(
    least: usize,
    most: usize,
) -> impl Parser<&'t str, Output = u16, Error = nom::error::Error<&'t str>> {
    map_opt(take_digits(least, most), |digits: &str| digits.parse().ok())
}

/// What stands here must not go on with a digit.
fn end<'t, O>(
    inner: impl Parser<&'t str, Output = O, Error = nom::error::Error<&'t str>>,
) -> impl Parser<&'t str, Output = O, Error = nom::error::Error<&'t str>> {
    terminated(inner, peek(not(digit1)))
}

fn refuse(input: &str) -> nom::Err<nom::error::Error<&str>> {
    nom::Err::Error(nom::error::Error::new(input, nom::error::ErrorKind::Verify))
}

/// Reads the ending of an ordinal, "th" of "12th".
pub(crate) fn ordinal(input: &str) -> IResult<&str, &str> {
    terminated(alt((tag("st"), tag("nd"), tag("rd"), tag("th"))), word_end).parse(input)
}
