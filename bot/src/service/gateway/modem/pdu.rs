//! Texts as a modem takes and gives them in PDU mode: the transfer layer of 3GPP TS 23.040, and the
//! coding of 3GPP TS 23.038.
//!
//! What comes is read as far as it goes, and nothing in it can break the line. Deliberately absent:
//! the shift tables of national languages.

use chrono::{DateTime, NaiveDate, TimeDelta, Utc};
use data_encoding::{HEXLOWER_PERMISSIVE, HEXUPPER};

use crate::{
    service::gateway::{
        data_coding,
        octets::Octets,
        text_header::{Header, of_part},
    },
    words::sms::{self, Alphabet, septets},
};

/// A message for the modem.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Submit {
    /// What it wants to be told before: the octets without the centre's address.
    pub(super) length: usize,
    /// All octets in hexadecimal digits.
    pub(super) hex: String,
}

/// What a modem gives.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Incoming {
    /// A text, or a part of one: reference, number of parts, which.
    Text {
        from: String,
        sent_at: Option<DateTime<Utc>>,
        text: String,
        part: Option<(u16, u8, u8)>,
    },
    /// What became of a part of ours.
    Report {
        reference: u8,
        to: String,
        status: u8,
    },
    /// Nothing for people: a notice of a mailbox, data for a port.
    Data,
}

/// First octet (9.2.3.1 and after): a submission with a relative time to live, a report wanted, a
/// header before the text.
const SUBMIT: u8 = 0x01;
const RELATIVE_VALIDITY: u8 = 0x10;
const WANTS_REPORT: u8 = 0x20;
const HAS_HEADER: u8 = 0x40;

/// A text to a number, as many messages as it takes.
pub(super) fn submits(
    to: &str,
    text: &str,
    reference: u8,
    valid: TimeDelta,
    wants_report: bool,
) -> Vec<Submit> {
    let size = sms::measure(text);
    let parts = sms::split(text);
    let of = u8::try_from(parts.len()).unwrap_or(u8::MAX);
    let one = |(number, part): (u8, &String)| {
        let header = of_part(reference, of, number);
        let header: &[u8] = if of > 1 { &header } else { &[] };
        let first = SUBMIT
            | RELATIVE_VALIDITY
            | if wants_report { WANTS_REPORT } else { 0 }
            | if of > 1 { HAS_HEADER } else { 0 };
        let digits = to.trim_start_matches('+');
        let mut tpdu = vec![
            first,
            0,
            u8::try_from(digits.len()).unwrap_or(u8::MAX),
            0x91,
        ];
        tpdu.extend(semi_octets(digits));
        let coding = match size.alphabet {
            Alphabet::Gsm7 => 0x00,
            Alphabet::Ucs2 => 0x08,
        };
        tpdu.extend([0, coding, validity(valid)]);
        let (length, octets) = user_data(header, part, size.alphabet);
        tpdu.push(length);
        tpdu.extend(octets);
        Submit {
            length: tpdu.len(),
            // The centre's address is that of the SIM.
            hex: format!("00{}", HEXUPPER.encode(&tpdu)),
        }
    };
    (1..=of).zip(&parts).map(one).collect()
}

/// Header and text, and their length as the standard counts it: septets in the GSM alphabet, octets
/// else (9.2.3.16).
fn user_data(header: &[u8], part: &str, alphabet: Alphabet) -> (u8, Vec<u8>) {
    let mut octets = header.to_vec();
    let length = match (alphabet, septets::codes(part)) {
        (Alphabet::Gsm7, Some(codes)) => {
            let fill = septets::fill_after(header.len());
            octets.extend(septets::packed(&codes, fill));
            (header.len() * 8).div_ceil(7) + codes.len()
        }
        (Alphabet::Gsm7, None) | (Alphabet::Ucs2, _) => {
            octets.extend(septets::utf16(part));
            octets.len()
        }
    };
    (u8::try_from(length).unwrap_or(u8::MAX), octets)
}

/// 9.2.3.12.1: steps of five minutes up to twelve hours, of half an hour up to a day, then days and
/// weeks. Rounded down, so that no text arrives later than it may.
fn validity(span: TimeDelta) -> u8 {
    let minutes = span.num_minutes();
    let value = match minutes {
        ..720 => minutes / 5 - 1,
        720..1_440 => 143 + (minutes - 720) / 30,
        1_440..43_200 => 166 + minutes / 1_440,
        _ => 192 + minutes / 10_080,
    };
    u8::try_from(value.clamp(0, 255)).unwrap_or_default()
}

fn semi_octets(digits: &str) -> Vec<u8> {
    let digits: Vec<u8> = digits
        .bytes()
        .map(|digit| digit.wrapping_sub(b'0') & 0x0f)
        .collect();
    let pair = |pair: &[u8]| match pair {
        [first, second] => second << 4 | first,
        [last] => 0xf0 | last,
        _ => 0xff,
    };
    digits.chunks(2).map(pair).collect()
}

/// What a line of hexadecimal digits is. None where it ends too early, or is no such line.
pub(super) fn incoming(hex: &str) -> Option<Incoming> {
    let octets = HEXLOWER_PERMISSIVE.decode(hex.trim().as_bytes()).ok()?;
    let centre = usize::from(*octets.first()?);
    let mut reader = Octets(octets.get(1 + centre..)?);
    let first = reader.octet()?;
    match first & 0x03 {
        0 => deliver(first, reader),
        2 => {
            let reference = reader.octet()?;
            let to = reader.number()?;
            let _times = (reader.take(7)?, reader.take(7)?);
            let status = reader.octet()?;
            Some(Incoming::Report {
                reference,
                to,
                status,
            })
        }
        _ => Some(Incoming::Data),
    }
}

fn deliver(first: u8, mut reader: Octets<'_>) -> Option<Incoming> {
    let from = reader.number()?;
    let protocol = reader.octet()?;
    let coding = reader.octet()?;
    let sent_at = instant(reader.take(7)?);
    let length = usize::from(reader.octet()?);
    let data = reader.0;
    let (header, header_octets) = if first & HAS_HEADER == 0 {
        (Header::default(), 0)
    } else {
        let inside = usize::from(*data.first()?);
        (Header::read(data.get(1..=inside)?), inside + 1)
    };
    // 9.2.3.9: 40 is a message that nobody is to see.
    let is_silent = protocol == 0x40;
    let Some(alphabet) = data_coding::alphabet(coding).filter(|_| !is_silent && !header.has_port)
    else {
        return Some(Incoming::Data);
    };
    let text = match alphabet {
        Alphabet::Gsm7 => {
            let skipped = (header_octets * 8).div_ceil(7);
            let fill = septets::fill_after(header_octets);
            let octets = data.get(header_octets..)?;
            let codes = septets::unpacked(octets, length.saturating_sub(skipped), fill);
            septets::text(&codes)
        }
        Alphabet::Ucs2 => {
            let end = length.min(data.len());
            septets::of_utf16(data.get(header_octets..end)?)
        }
    };
    Some(Incoming::Text {
        from,
        sent_at,
        text,
        part: header.part,
    })
}

/// 9.2.3.11: semi-octets of year to second, then quarters of an hour from UTC with a sign.
fn instant(octets: &[u8]) -> Option<DateTime<Utc>> {
    let [year, month, day, hour, minute, second, zone] = <[u8; 7]>::try_from(octets).ok()?;
    let number = |octet: u8| {
        let (tens, ones) = (octet & 0x0f, octet >> 4);
        (tens < 10 && ones < 10).then(|| u32::from(tens * 10 + ones))
    };
    let quarters = i64::from(number(zone & !0x08)?);
    let quarters = if zone & 0x08 == 0 {
        quarters
    } else {
        -quarters
    };
    let year = 2000 + i32::try_from(number(year)?).ok()?;
    let day = NaiveDate::from_ymd_opt(year, number(month)?, number(day)?)?;
    let local = day.and_hms_opt(number(hour)?, number(minute)?, number(second)?)?;
    Some(local.and_utc() - TimeDelta::minutes(quarters * 15))
}

impl Octets<'_> {
    /// 9.1.2.5: digits in semi-octets with their number, or letters in septets.
    fn number(&mut self) -> Option<String> {
        /// The whole field has at most twelve octets, of which two come before the digits.
        const DIGITS_MAX: usize = 20;
        let digits = usize::from(self.octet()?);
        if digits > DIGITS_MAX {
            return None;
        }
        let kind = self.octet()? & 0x70;
        let octets = self.take(digits.div_ceil(2))?;
        if kind == 0x50 {
            let codes = septets::unpacked(octets, digits * 4 / 7, 0);
            return Some(septets::text(&codes).trim_end().to_owned());
        }
        let plus = if kind == 0x10 { "+" } else { "" };
        let both = octets.iter().flat_map(|octet| [octet & 0x0f, octet >> 4]);
        // 9.1.2.3: A to E are signs of the keypad; F fills.
        let sign = |digit: u8| "0123456789*#abc".chars().nth(digit.into());
        let number: String = both.take(digits).filter_map(sign).collect();
        Some(format!("{plus}{number}"))
    }
}

#[cfg(test)]
mod tests;
