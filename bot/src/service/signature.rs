//! Signed requests, after the Standard Webhooks specification, version 1.
//!
//! The signature is an HMAC-SHA-256 over the id, the time and the raw body. The time now is an
//! argument, so that published examples can be checked. Keys of the asymmetric kind (`v1a`) are
//! left out.

use std::fmt;

use base64::{Engine, engine::general_purpose::STANDARD};
use chrono::{DateTime, Utc};
use subtle::ConstantTimeEq;

use crate::words::limits;

/// The keys that a request may be signed with; two while one takes the place of the other.
#[derive(Clone)]
pub struct SignatureKeys(Vec<Vec<u8>>);

/// A key cannot be read. The key itself is never shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum KeyError {
    /// Nothing there.
    #[error("expected at least one key such as \"whsec_\" and base64, found none")]
    Missing,
    /// Not base64.
    #[error("expected \"whsec_\" and base64, found something else")]
    NotBase64,
    /// Too short or too long.
    #[error("expected a key of 24 to 64 bytes, found one of {bytes}")]
    Size {
        /// How long it is.
        bytes: usize,
    },
}

impl SignatureKeys {
    /// Reads keys, with white space between them. The prefix `whsec_` may be left out.
    ///
    /// # Errors
    ///
    /// When there is none, or one is not base64 or not of the length that the standard asks for.
    pub fn parse(keys: &str) -> Result<Self, KeyError> {
        let keys: Vec<_> = keys
            .split_whitespace()
            .map(parse_key)
            .collect::<Result<_, _>>()?;
        if keys.is_empty() {
            return Err(KeyError::Missing);
        }
        Ok(Self(keys))
    }

    /// Whether this request was signed with one of the keys, about now.
    #[must_use]
    pub fn verify(&self, signed: &Signed<'_>, now: DateTime<Utc>) -> bool {
        let is_recent = signed
            .timestamp
            .parse::<i64>()
            .is_ok_and(|then| now.timestamp().abs_diff(then) <= limits::SIGNATURE_TOLERANCE_SECS);
        is_recent && self.0.iter().any(|key| signed.has(&signed.mac(key)))
    }
}

/// The parts of a signed request.
#[derive(Clone, Copy)]
pub struct Signed<'a> {
    /// Header `webhook-id`.
    pub id: &'a str,
    /// Header `webhook-timestamp`: seconds since 1970.
    pub timestamp: &'a str,
    /// Header `webhook-signature`: signatures with their versions, with spaces between them.
    pub signatures: &'a str,
    /// The body as it came.
    pub body: &'a [u8],
}

impl Signed<'_> {
    /// The time goes in as the text that it is, so `+1` and `1` are not the same.
    fn mac(&self, key: &[u8]) -> [u8; 32] {
        let mut mac = hmac_sha256::HMAC::new(key);
        for part in [
            self.id.as_bytes(),
            b".",
            self.timestamp.as_bytes(),
            b".",
            self.body,
        ] {
            mac.update(part);
        }
        mac.finalize()
    }

    fn has(&self, mac: &[u8]) -> bool {
        self.signatures
            .split(' ')
            .take(limits::SIGNATURES_MAX)
            .filter_map(|signature| signature.strip_prefix("v1,"))
            .filter_map(|signature| STANDARD.decode(signature).ok())
            .any(|signature| signature.ct_eq(mac).into())
    }
}

impl fmt::Debug for SignatureKeys {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "SignatureKeys({} hidden)", self.0.len())
    }
}

fn parse_key(key: &str) -> Result<Vec<u8>, KeyError> {
    let key = key.strip_prefix("whsec_").unwrap_or(key);
    let key = STANDARD.decode(key).map_err(|_| KeyError::NotBase64)?;
    // Standard Webhooks, "Secrets": between 24 and 64 bytes.
    if (24..=64).contains(&key.len()) {
        Ok(key)
    } else {
        Err(KeyError::Size { bytes: key.len() })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // The example of the Standard Webhooks reference libraries.
    const SECRET: &str = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw";
    const EXAMPLE: Signed<'_> = Signed {
        id: "msg_p5jXN8AQM9LWM0D4loKWxJek",
        timestamp: "1614265330",
        signatures: "v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=",
        body: br#"{"test": 2432232314}"#,
    };

    #[track_caller]
    fn check(signed: Signed<'_>, now: i64, expected: bool) {
        let keys = SignatureKeys::parse(SECRET).unwrap();
        let now = DateTime::from_timestamp(now, 0).unwrap();
        assert_eq!(keys.verify(&signed, now), expected);
    }

    #[test]
    fn the_published_example_is_right() {
        check(EXAMPLE, 1_614_265_330, true);
    }

    #[test]
    fn a_change_anywhere_is_wrong() {
        let changed = [
            Signed {
                id: "msg_other",
                ..EXAMPLE
            },
            Signed {
                timestamp: "1614265331",
                ..EXAMPLE
            },
            Signed {
                timestamp: "+1614265330",
                ..EXAMPLE
            },
            Signed {
                timestamp: "soon",
                ..EXAMPLE
            },
            Signed {
                body: br#"{"test": 2432232315}"#,
                ..EXAMPLE
            },
            Signed {
                signatures: "v1,AAAA",
                ..EXAMPLE
            },
            Signed {
                signatures: "v2,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=",
                ..EXAMPLE
            },
            Signed {
                signatures: "g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=",
                ..EXAMPLE
            },
            Signed {
                signatures: "",
                ..EXAMPLE
            },
        ];
        for signed in changed {
            check(signed, 1_614_265_330, false);
        }
    }

    // Standard Webhooks asks for a tolerance; its reference libraries take five minutes.
    #[test]
    fn the_time_may_differ_by_five_minutes() {
        for (seconds, expected) in [(-301, false), (-300, true), (300, true), (301, false)] {
            check(EXAMPLE, 1_614_265_330 + seconds, expected);
        }
        let edge = Signed {
            timestamp: "-9223372036854775808",
            ..EXAMPLE
        };
        check(edge, 1_614_265_330, false);
    }

    #[test]
    fn one_right_signature_of_several_is_enough() {
        let several = "v1,AAAA v1a,BBBB x v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=";
        check(
            Signed {
                signatures: several,
                ..EXAMPLE
            },
            1_614_265_330,
            true,
        );
        let buried = format!(
            "{}{}",
            "v1,AAAA ".repeat(limits::SIGNATURES_MAX),
            EXAMPLE.signatures
        );
        check(
            Signed {
                signatures: &buried,
                ..EXAMPLE
            },
            1_614_265_330,
            false,
        );
    }

    // RFC 4231, test case 2, is a shorter key than the standard allows, so it goes in by hand.
    #[test]
    fn the_mac_is_that_of_rfc_4231() {
        let mac = hmac_sha256::HMAC::mac(b"what do ya want for nothing?", b"Jefe");
        let hex: String = mac.iter().map(|byte| format!("{byte:02x}")).collect();
        assert_eq!(
            hex,
            "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843"
        );
    }

    #[test]
    fn the_reference_library_makes_signatures_that_are_right() {
        let library = standardwebhooks::Webhook::new(SECRET).unwrap();
        for body in ["", "{}", "{\"text\":\"trồng 120\"}"] {
            let signatures = library.sign("m-1", 1_700_000_000, body.as_bytes()).unwrap();
            let signed = Signed {
                id: "m-1",
                timestamp: "1700000000",
                signatures: &signatures,
                body: body.as_bytes(),
            };
            check(signed, 1_700_000_000, true);
        }
    }

    #[test]
    fn keys_are_read_and_never_shown() {
        let two = format!("{SECRET} {}", STANDARD.encode([7; 64]));
        let keys = SignatureKeys::parse(&two).unwrap();
        assert_eq!(format!("{keys:?}"), "SignatureKeys(2 hidden)");
        for (text, error) in [
            (" ", KeyError::Missing),
            ("whsec_not base64", KeyError::NotBase64),
            ("whsec_AAAA", KeyError::Size { bytes: 3 }),
        ] {
            assert_eq!(SignatureKeys::parse(text).unwrap_err(), error, "{text:?}");
        }
    }
}
