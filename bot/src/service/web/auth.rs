//! Who may bring us texts and receipts.
//!
//! A password or token is looked at before the body is read; a signature covers the body, so it
//! is looked at after. Comparing takes the same time wherever the first difference is.

use actix_web::{
    HttpRequest,
    http::header::{AUTHORIZATION, HeaderMap},
};
use base64::{Engine, engine::general_purpose::STANDARD};
use chrono::{DateTime, Utc};
use subtle::ConstantTimeEq;

use super::problem::Problem;
use crate::service::{
    call::pairs,
    door::{Auth, Door},
    signature::Signed,
};

/// Checks where a request comes from, and what else can be checked without its body.
pub(super) fn check_head(door: &Door, request: &HttpRequest) -> Result<(), Problem> {
    let from = request.peer_addr().map(|address| address.ip());
    let is_near = |from| door.networks.iter().any(|network| network.has(from));
    if !door.networks.is_empty() && !from.is_some_and(is_near) {
        return Err(Problem::WrongNetwork);
    }
    door.auth.check_head(request)
}

impl Auth {
    /// Checks what can be checked without the body.
    fn check_head(&self, request: &HttpRequest) -> Result<(), Problem> {
        let headers = request.headers();
        let is_right = match self {
            Self::Basic { user, password } => credentials(headers, "basic")
                .and_then(|credentials| STANDARD.decode(credentials).ok())
                .is_some_and(|found| {
                    is_same(&found, format!("{user}:{}", password.reveal()).as_bytes())
                }),
            Self::Bearer { token } => credentials(headers, "bearer")
                .is_some_and(|found| is_same(found.as_bytes(), token.reveal().as_bytes())),
            Self::Header { name, secret } => text_of(headers, name)
                .is_some_and(|found| is_same(found.as_bytes(), secret.reveal().as_bytes())),
            Self::Query { name, secret } => pairs(request.query_string().as_bytes())
                .iter()
                .filter(|(known, _)| known == name)
                .any(|(_, found)| is_same(found.as_bytes(), secret.reveal().as_bytes())),
            Self::Signature { .. } | Self::Hmac { .. } | Self::Network => true,
        };
        if is_right {
            Ok(())
        } else {
            Err(self.problem())
        }
    }

    /// Checks what covers the body.
    pub(super) fn check_body(
        &self,
        headers: &HeaderMap,
        body: &[u8],
        now: DateTime<Utc>,
    ) -> Result<(), Problem> {
        let is_right = match self {
            Self::Basic { .. }
            | Self::Bearer { .. }
            | Self::Header { .. }
            | Self::Query { .. }
            | Self::Network => true,
            Self::Hmac { mac, key } => mac.verify(key, |name| text_of(headers, name), body, now),
            Self::Signature { keys } => {
                signed(headers, body).is_some_and(|signed| keys.verify(&signed, now))
            }
        };
        if is_right {
            Ok(())
        } else {
            Err(self.problem())
        }
    }

    /// The id of the request, if what we know of it is signed.
    pub(super) fn request_id<'a>(&self, headers: &'a HeaderMap) -> Option<&'a str> {
        match self {
            Self::Basic { .. }
            | Self::Bearer { .. }
            | Self::Header { .. }
            | Self::Query { .. }
            | Self::Hmac { .. }
            | Self::Network => None,
            Self::Signature { .. } => text_of(headers, "webhook-id"),
        }
    }

    const fn problem(&self) -> Problem {
        match self {
            Self::Basic { .. } => Problem::Unauthorized {
                challenge: r#"Basic realm="budwood", charset="UTF-8""#,
                why: "send the user and the password that the bot was set up with",
            },
            Self::Bearer { .. } => Problem::Unauthorized {
                challenge: r#"Bearer realm="budwood""#,
                why: "send the token that the bot was set up with",
            },
            Self::Header { .. } | Self::Query { .. } => Problem::Unauthorized {
                challenge: r#"Secret realm="budwood""#,
                why: "send the secret that the bot was set up with, where it was set to be",
            },
            Self::Hmac { .. } => Problem::Unauthorized {
                challenge: r#"HMAC realm="budwood""#,
                why: "send the code over the body, made with the key that the bot was set up with",
            },
            Self::Network => Problem::WrongNetwork,
            Self::Signature { .. } => Problem::Unauthorized {
                challenge: r#"StandardWebhooks realm="budwood""#,
                why: "sign the request with the key that the bot was set up with, and with the \
                      time now (headers webhook-id, webhook-timestamp and webhook-signature)",
            },
        }
    }
}

/// What comes after the scheme, whose case does not matter (RFC 9110, 11.1).
fn credentials<'a>(headers: &'a HeaderMap, scheme: &str) -> Option<&'a str> {
    let (found, credentials) = headers.get(AUTHORIZATION)?.to_str().ok()?.split_once(' ')?;
    found
        .eq_ignore_ascii_case(scheme)
        .then(|| credentials.trim())
}

fn is_same(found: &[u8], expected: &[u8]) -> bool {
    found.ct_eq(expected).into()
}

fn signed<'a>(headers: &'a HeaderMap, body: &'a [u8]) -> Option<Signed<'a>> {
    Some(Signed {
        id: text_of(headers, "webhook-id")?,
        timestamp: text_of(headers, "webhook-timestamp")?,
        signatures: text_of(headers, "webhook-signature")?,
        body,
    })
}

fn text_of<'a>(headers: &'a HeaderMap, name: &str) -> Option<&'a str> {
    headers.get(name)?.to_str().ok()
}
