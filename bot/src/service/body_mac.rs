//! A code over the body of a request, as many providers make it: HMAC-SHA-256 (RFC 2104) of the
//! body, alone or with the time before it, in a header of their own choice.

use base64::{Engine, engine::general_purpose::STANDARD};
use chrono::{DateTime, Utc};
use data_encoding::HEXLOWER_PERMISSIVE;
use subtle::ConstantTimeEq;

use crate::words::{limits, secret::Secret};

/// How the code is made and where it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BodyMac {
    /// The header, in small letters.
    pub header: String,
    /// How the code is written.
    pub encoding: MacEncoding,
    /// What stands before it, such as `sha256=`.
    pub prefix: String,
    /// The header with the time in seconds since 1970, which is signed before a full stop and the
    /// body. Without it an old request can be sent again by whoever saw it.
    pub timestamp: Option<String>,
}

/// How a code is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MacEncoding {
    /// In hexadecimal digits.
    Hex,
    /// In Base64.
    Base64,
}

impl BodyMac {
    /// Whether a request has the right code, and the right time if it has one. `header` gives a
    /// header by its name in small letters.
    #[must_use]
    pub fn verify<'h>(
        &self,
        key: &Secret,
        header: impl Fn(&str) -> Option<&'h str>,
        body: &[u8],
        now: DateTime<Utc>,
    ) -> bool {
        let mut mac = hmac_sha256::HMAC::new(key.reveal().as_bytes());
        if let Some(name) = &self.timestamp {
            let Some(said) = header(name) else {
                return false;
            };
            let is_recent = said.parse::<i64>().is_ok_and(|then| {
                now.timestamp().abs_diff(then) <= limits::SIGNATURE_TOLERANCE_SECS
            });
            if !is_recent {
                return false;
            }
            mac.update(said.as_bytes());
            mac.update(b".");
        }
        mac.update(body);
        let expected = mac.finalize();
        let found = header(&self.header).and_then(|found| {
            let found = found.trim().strip_prefix(self.prefix.as_str())?;
            match self.encoding {
                MacEncoding::Hex => HEXLOWER_PERMISSIVE.decode(found.as_bytes()).ok(),
                MacEncoding::Base64 => STANDARD.decode(found).ok(),
            }
        });
        found.is_some_and(|found| found.ct_eq(&expected).into())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // RFC 4231, test case 2.
    const KEY: &str = "Jefe";
    const BODY: &[u8] = b"what do ya want for nothing?";
    const HEX: &str = "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843";

    fn mac(encoding: MacEncoding) -> BodyMac {
        BodyMac {
            header: "x-code".into(),
            encoding,
            prefix: "sha256=".into(),
            timestamp: None,
        }
    }

    #[track_caller]
    fn check(set: &BodyMac, headers: &[(&str, &str)], body: &[u8], expected: bool) {
        let header = |name: &str| {
            let found = headers.iter().find(|(known, _)| *known == name);
            found.map(|(_, value)| *value)
        };
        let now = DateTime::from_timestamp(1_700_000_000, 0).unwrap();
        assert_eq!(set.verify(&Secret::new(KEY), header, body, now), expected);
    }

    #[test]
    fn the_published_code_is_right_and_any_other_wrong() {
        let hex = mac(MacEncoding::Hex);
        let said = format!("sha256={HEX}");
        check(&hex, &[("x-code", &said)], BODY, true);
        check(&hex, &[("x-code", &said.to_ascii_uppercase())], BODY, false);
        let upper = format!("sha256={}", HEX.to_ascii_uppercase());
        check(&hex, &[("x-code", &upper)], BODY, true);
        check(&hex, &[("x-code", HEX)], BODY, false);
        check(&hex, &[("x-code", "sha256=")], BODY, false);
        check(&hex, &[("x-code", "sha256=5")], BODY, false);
        check(&hex, &[("x-other", &said)], BODY, false);
        check(&hex, &[("x-code", &said)], b"", false);
        let base64 = "sha256=W9zBRr9gdU5qBCQmCJV1x1oAPwidJzmDnexYuWTsOEM=";
        check(&mac(MacEncoding::Base64), &[("x-code", base64)], BODY, true);
    }

    #[test]
    fn a_time_is_signed_with_the_body_and_must_be_about_now() {
        let set = BodyMac {
            timestamp: Some("x-time".into()),
            ..mac(MacEncoding::Hex)
        };
        for (time, signed, expected) in [
            ("1700000000", "1700000000", true),
            ("1700000300", "1700000300", true),
            ("1700000301", "1700000301", false),
            ("1700000001", "1700000000", false),
            ("soon", "soon", false),
        ] {
            let mut mac = hmac_sha256::HMAC::new(KEY);
            mac.update(format!("{signed}.").as_bytes());
            mac.update(BODY);
            let code: String = mac
                .finalize()
                .iter()
                .map(|byte| format!("{byte:02x}"))
                .collect();
            let code = format!("sha256={code}");
            check(&set, &[("x-code", &code), ("x-time", time)], BODY, expected);
            check(&set, &[("x-code", &code)], BODY, false);
        }
    }
}
