//! Values of keys in the configuration, each checked where it is read, so that an error knows its
//! key.

use std::{net::SocketAddr, ops::RangeInclusive};

use budwood_parser::table::{Table, TableError};
use chrono::NaiveTime;
use chrono_tz::Tz;
use url::{Host, Url};

use crate::{
    service::telemetry::{self, LogFormat},
    words::{limits, phone_number},
};

/// What is wrong with a value; names no key.
type Wrong = String;

/// Reads a text as something, if the key is there.
pub(crate) fn maybe<T>(
    table: &Table<'_>,
    key: &str,
    read: impl Fn(&str) -> Result<T, Wrong>,
) -> Result<Option<T>, TableError> {
    let found = table.text(key)?;
    found
        .map(|found| read(found).map_err(|wrong| table.error(key, wrong)))
        .transpose()
}

/// Reads a text as something; the key must be there.
pub(crate) fn need<T>(
    table: &Table<'_>,
    key: &str,
    read: impl Fn(&str) -> Result<T, Wrong>,
) -> Result<T, TableError> {
    read(table.need_text(key)?).map_err(|wrong| table.error(key, wrong))
}

/// A whole number between two, if the key is there.
pub(crate) fn whole(
    table: &Table<'_>,
    key: &str,
    between: RangeInclusive<u32>,
) -> Result<Option<u32>, TableError> {
    let found = table.whole(key)?;
    if let Some(found) = found
        && !between.contains(&found)
    {
        let (least, most) = (between.start(), between.end());
        let what = format!("expected a number from {least} to {most}, found {found}");
        return Err(table.error(key, what));
    }
    Ok(found)
}

/// Address and port to listen on.
pub(crate) fn listen(found: &str) -> Result<SocketAddr, Wrong> {
    found
        .parse()
        .ok()
        .filter(|address: &SocketAddr| address.port() != 0)
        .ok_or_else(|| expected("an address and a port such as \"127.0.0.1:8080\"", found))
}

/// The address of something on the web: `https`, or `http` on this computer.
pub(crate) fn address(found: &str) -> Result<Url, Wrong> {
    // What was found is not repeated: it may hold a password by mistake.
    let url = Url::parse(found)
        .map_err(|error| format!("expected an address such as \"https://…\": {error}"))?;
    if !url.username().is_empty() || url.password().is_some() {
        return Err("expected an address without user and password".into());
    }
    if url.query().is_some() || url.fragment().is_some() {
        return Err(
            "expected an address that ends with its path, without query and fragment".into(),
        );
    }
    match url.scheme() {
        "https" => Ok(url),
        "http" if is_on_this_computer(&url) => Ok(url),
        _ => Err("expected https; http would show numbers and passwords on the way".into()),
    }
}

/// Whether nothing that is sent there leaves this computer.
pub(crate) fn is_on_this_computer(url: &Url) -> bool {
    match url.host() {
        Some(Host::Domain(name)) => name == "localhost",
        Some(Host::Ipv4(address)) => address.is_loopback(),
        Some(Host::Ipv6(address)) => address.is_loopback(),
        None => false,
    }
}

/// The number or name that texts come from.
pub(crate) fn sender(found: &str) -> Result<String, Wrong> {
    let is_right = is_short(found, limits::ADDRESS_CHARS_MAX) && !found.contains(' ');
    text(is_right, "a number or name without spaces", found)
}

/// The user of a password (RFC 7617: without a colon).
pub(crate) fn user(found: &str) -> Result<String, Wrong> {
    let is_right = is_short(found, limits::ADDRESS_CHARS_MAX) && !found.contains(':');
    text(is_right, "a name without a colon", found)
}

/// A name to call something by.
pub(crate) fn name(found: &str) -> Result<String, Wrong> {
    text(
        is_short(found, limits::ADDRESS_CHARS_MAX),
        "a short name",
        found,
    )
}

/// The name of a gateway, which is part of a path and of the names of variables.
pub(crate) fn gateway_name(found: &str) -> Result<String, Wrong> {
    let mut bytes = found.bytes();
    let is_right = found.len() <= limits::GATEWAY_NAME_BYTES_MAX
        && bytes.next().is_some_and(|first| first.is_ascii_lowercase())
        && bytes.all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit());
    text(is_right, "a few small letters and digits", found)
}

/// A number as in E.164, or a short code.
pub(crate) fn own_number(found: &str) -> Result<String, Wrong> {
    let digits = found.strip_prefix('+').unwrap_or(found);
    // E.164: 15 digits at most. Short codes have three to eight (common practice).
    let lengths = if digits.len() == found.len() {
        3..=8
    } else {
        7..=15
    };
    let is_right =
        lengths.contains(&digits.len()) && digits.bytes().all(|byte| byte.is_ascii_digit());
    text(
        is_right,
        "a number such as \"+447700900000\", or a short code",
        found,
    )
}

/// The number of a phone as in E.164, with the plus.
pub(crate) fn phone(found: &str) -> Result<String, Wrong> {
    let is_right = found.starts_with('+') && own_number(found).is_ok();
    text(is_right, "a number such as \"+447700900000\"", found)
}

/// Money in millionths of its unit, if the key is there.
pub(crate) fn money(table: &Table<'_>, key: &str) -> Result<Option<u64>, TableError> {
    const MOST: f64 = 1e9;
    let Some(found) = table.number(key)? else {
        return Ok(None);
    };
    if !(0.0..=MOST).contains(&found) {
        let what = format!("expected an amount of money from 0 to {MOST}, found {found}");
        return Err(table.error(key, what));
    }
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "not below zero, and at most a thousand million millionths of a million"
    )]
    let micro = (found * 1e6).round() as u64;
    Ok(Some(micro))
}

/// How numbers begin, with the plus.
pub(crate) fn prefix(found: &str) -> Result<String, Wrong> {
    let digits = found.strip_prefix('+').unwrap_or_default();
    let is_right =
        (1..=15).contains(&digits.len()) && digits.bytes().all(|byte| byte.is_ascii_digit());
    text(
        is_right,
        "the beginning of a number such as \"+4477\"",
        found,
    )
}

/// A country as in ISO 3166-1, two letters.
pub(crate) fn country(found: &str) -> Result<String, Wrong> {
    text(
        phone_number::is_country(found),
        "two letters of a country such as \"ID\"",
        found,
    )
    .map(|country| country.to_ascii_uppercase())
}

/// A time zone of the IANA data base.
pub(crate) fn zone(found: &str) -> Result<Tz, Wrong> {
    found
        .parse()
        .map_err(|_| expected("a zone such as \"Asia/Jakarta\"", found))
}

/// Hours and minutes.
pub(crate) fn time_of_day(found: &str) -> Result<NaiveTime, Wrong> {
    NaiveTime::parse_from_str(found, "%H:%M")
        .map_err(|_| expected("hours and minutes such as \"15:30\"", found))
}

/// What is logged.
pub(crate) fn filter(found: &str) -> Result<String, Wrong> {
    telemetry::read_filter(found)
        .map(|_| found.to_owned())
        .map_err(|error| error.to_string())
}

/// How a line of the log is written.
pub(crate) fn log_format(found: &str) -> Result<LogFormat, Wrong> {
    let mut known = LogFormat::ALL.into_iter();
    known
        .find_map(|(name, format)| (name == found).then_some(format))
        .ok_or_else(|| expected("\"text\", \"json\" or \"journal\"", found))
}

fn is_short(text: &str, max: usize) -> bool {
    !text.trim().is_empty() && text.chars().count() <= max && !text.chars().any(char::is_control)
}

fn text(is_right: bool, what: &str, found: &str) -> Result<String, Wrong> {
    if is_right {
        Ok(found.to_owned())
    } else {
        Err(expected(what, found))
    }
}

fn expected(what: &str, found: &str) -> Wrong {
    format!("expected {what}, found {found:?}")
}
