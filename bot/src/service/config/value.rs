//! Values of keys, each checked while the file is read, so that an error knows its line.

use std::net::SocketAddr;

use chrono::NaiveTime;
use chrono_tz::Tz;
use serde::Deserialize;
use url::{Host, Url};

use crate::{
    service::telemetry,
    words::{limits, phone_number},
};

/// A whole number between two.
#[derive(Clone, Copy, Deserialize)]
#[serde(try_from = "i64")]
pub(super) struct Whole<const MIN: u32, const MAX: u32>(pub(super) u32);

/// Address and port to listen on.
#[derive(Deserialize)]
#[serde(try_from = "String")]
pub(super) struct Listen(pub(super) SocketAddr);

/// The address of something on the web: `https`, or `http` on this computer.
#[derive(Deserialize)]
#[serde(try_from = "String")]
pub(super) struct Address(pub(super) Url);

/// The number or name that texts come from.
#[derive(Deserialize)]
#[serde(try_from = "String")]
pub(super) struct Sender(pub(super) String);

/// The user of a password (RFC 7617: without a colon).
#[derive(Deserialize)]
#[serde(try_from = "String")]
pub(super) struct User(pub(super) String);

/// A name to call something by.
#[derive(Deserialize)]
#[serde(try_from = "String")]
pub(super) struct Name(pub(super) String);

/// A number as in E.164, or a short code.
#[derive(Deserialize)]
#[serde(try_from = "String")]
pub(super) struct OwnNumber(pub(super) String);

/// A country as in ISO 3166-1, two letters.
#[derive(Deserialize)]
#[serde(try_from = "String")]
pub(super) struct Country(pub(super) String);

/// A time zone of the IANA data base.
#[derive(Deserialize)]
#[serde(try_from = "String")]
pub(super) struct Zone(pub(super) Tz);

/// Hours and minutes.
#[derive(Deserialize)]
#[serde(try_from = "String")]
pub(super) struct TimeOfDay(pub(super) NaiveTime);

/// What is logged.
#[derive(Deserialize)]
#[serde(try_from = "String")]
pub(super) struct Filter(pub(super) String);

impl Address {
    pub(super) fn is_on_this_computer(&self) -> bool {
        match self.0.host() {
            Some(Host::Domain(name)) => name == "localhost",
            Some(Host::Ipv4(address)) => address.is_loopback(),
            Some(Host::Ipv6(address)) => address.is_loopback(),
            None => false,
        }
    }
}

impl<const MIN: u32, const MAX: u32> TryFrom<i64> for Whole<MIN, MAX> {
    type Error = String;

    fn try_from(found: i64) -> Result<Self, String> {
        u32::try_from(found)
            .ok()
            .filter(|whole| (MIN..=MAX).contains(whole))
            .map(Self)
            .ok_or_else(|| format!("expected a number from {MIN} to {MAX}, found {found}"))
    }
}

impl TryFrom<String> for Listen {
    type Error = String;

    fn try_from(found: String) -> Result<Self, String> {
        found
            .parse()
            .ok()
            .filter(|address: &SocketAddr| address.port() != 0)
            .map(Self)
            .ok_or_else(|| expected("an address and a port such as \"127.0.0.1:8080\"", &found))
    }
}

impl TryFrom<String> for Address {
    type Error = String;

    fn try_from(found: String) -> Result<Self, String> {
        // What was found is not repeated: it may hold a password by mistake.
        let url = Url::parse(&found)
            .map_err(|error| format!("expected an address such as \"https://…\": {error}"))?;
        let address = Self(url);
        if !address.0.username().is_empty() || address.0.password().is_some() {
            return Err("expected an address without user and password".into());
        }
        if address.0.query().is_some() || address.0.fragment().is_some() {
            return Err(
                "expected an address that ends with its path, without query and fragment".into(),
            );
        }
        match address.0.scheme() {
            "https" => Ok(address),
            "http" if address.is_on_this_computer() => Ok(address),
            _ => Err("expected https; http would show numbers and passwords on the way".into()),
        }
    }
}

impl TryFrom<String> for Sender {
    type Error = String;

    fn try_from(found: String) -> Result<Self, String> {
        let is_right = is_short(&found, limits::ADDRESS_CHARS_MAX) && !found.contains(' ');
        wrap(is_right, "a number or name without spaces", found, Self)
    }
}

impl TryFrom<String> for User {
    type Error = String;

    fn try_from(found: String) -> Result<Self, String> {
        let is_right = is_short(&found, limits::ADDRESS_CHARS_MAX) && !found.contains(':');
        wrap(is_right, "a name without a colon", found, Self)
    }
}

impl TryFrom<String> for Name {
    type Error = String;

    fn try_from(found: String) -> Result<Self, String> {
        let is_right = is_short(&found, limits::ADDRESS_CHARS_MAX);
        wrap(is_right, "a short name", found, Self)
    }
}

impl TryFrom<String> for OwnNumber {
    type Error = String;

    fn try_from(found: String) -> Result<Self, String> {
        let digits = found.strip_prefix('+').unwrap_or(&found);
        // E.164: 15 digits at most. Short codes have three to eight (common practice).
        let lengths = if digits.len() == found.len() {
            3..=8
        } else {
            7..=15
        };
        let is_right =
            lengths.contains(&digits.len()) && digits.bytes().all(|byte| byte.is_ascii_digit());
        wrap(
            is_right,
            "a number such as \"+447700900000\", or a short code",
            found,
            Self,
        )
    }
}

impl TryFrom<String> for Country {
    type Error = String;

    fn try_from(found: String) -> Result<Self, String> {
        wrap(
            phone_number::is_country(&found),
            "two letters of a country such as \"ID\"",
            found,
            |found| Self(found.to_ascii_uppercase()),
        )
    }
}

impl TryFrom<String> for Zone {
    type Error = String;

    fn try_from(found: String) -> Result<Self, String> {
        found
            .parse()
            .map(Self)
            .map_err(|_| expected("a zone such as \"Asia/Jakarta\"", &found))
    }
}

impl TryFrom<String> for TimeOfDay {
    type Error = String;

    fn try_from(found: String) -> Result<Self, String> {
        NaiveTime::parse_from_str(&found, "%H:%M")
            .map(Self)
            .map_err(|_| expected("hours and minutes such as \"15:30\"", &found))
    }
}

impl TryFrom<String> for Filter {
    type Error = String;

    fn try_from(found: String) -> Result<Self, String> {
        match telemetry::read_filter(&found) {
            Ok(_) => Ok(Self(found)),
            Err(error) => Err(error.to_string()),
        }
    }
}

fn is_short(text: &str, max: usize) -> bool {
    !text.trim().is_empty() && text.chars().count() <= max && !text.chars().any(char::is_control)
}

fn wrap<T>(
    is_right: bool,
    what: &str,
    found: String,
    wrapper: impl Fn(String) -> T,
) -> Result<T, String> {
    if is_right {
        Ok(wrapper(found))
    } else {
        Err(expected(what, &found))
    }
}

fn expected(what: &str, found: &str) -> String {
    format!("expected {what}, found {found:?}")
}
