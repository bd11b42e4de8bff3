//! What all kinds share that send over HTTP: the client, and what it means when a try fails.
//!
//! Deliberately absent: what a request holds and what an answer says, which differ by kind.

use std::time::Duration;

use reqwest::{Client, ClientBuilder, Response, StatusCode, header::RETRY_AFTER, redirect};

use crate::{
    service::clock::Clock,
    words::{
        limits,
        traffic::{SendOutcome, Whose},
    },
};

/// How long a connection waits for the next text. One that the provider has closed meanwhile makes
/// a text that is written to it unknown, so this is shorter than any server waits, and long enough
/// for texts that go one after the other.
const IDLE: Duration = Duration::from_secs(2);

/// An HTTP client to be set up further; every one of ours begins here.
///
/// The environment's proxies are left out: the file alone says where texts go.
pub fn client() -> ClientBuilder {
    // `reqwest` brings no ciphers of its own here. Those of `ring` are named once for the process;
    // an error says that they were named before.
    let _ = rustls::crypto::ring::default_provider().install_default();
    Client::builder().no_proxy()
}

/// The client of a gateway, whose tries take so long at most.
///
/// # Errors
///
/// When the system's certificates cannot be read.
pub(super) fn sender(timeout: Duration) -> Result<Client, reqwest::Error> {
    // A redirect would carry numbers and the password to an address that nobody chose.
    client()
        .redirect(redirect::Policy::none())
        .connect_timeout(limits::CONNECT_TIMEOUT.min(timeout))
        .timeout(timeout)
        .pool_idle_timeout(IDLE)
        .build()
}

/// What a status means of which nothing else is known; none when it is a refusal.
pub(super) fn outcome_of_status(response: &Response, clock: &Clock) -> Option<SendOutcome> {
    let status = response.status();
    let why = format!("the provider answered {status}");
    Some(match status {
        StatusCode::TOO_MANY_REQUESTS | StatusCode::SERVICE_UNAVAILABLE => {
            wait(Whose::Gateway, retry_after(response, clock), why)
        }
        StatusCode::REQUEST_TIMEOUT | StatusCode::TOO_EARLY => {
            wait(Whose::Text, retry_after(response, clock), why)
        }
        // The address and the password are the same for every text, so the fault is in our
        // set-up; refusing would throw away texts that are good.
        StatusCode::UNAUTHORIZED
        | StatusCode::PAYMENT_REQUIRED
        | StatusCode::FORBIDDEN
        | StatusCode::NOT_FOUND
        | StatusCode::METHOD_NOT_ALLOWED
        | StatusCode::PROXY_AUTHENTICATION_REQUIRED => wait(
            Whose::SetUp,
            Some(limits::SETUP_RETRY_AFTER),
            format!("{why}; check the address, the sender, the password and the account"),
        ),
        _ if status.is_redirection() => wait(
            Whose::SetUp,
            Some(limits::SETUP_RETRY_AFTER),
            format!("{why}; redirects are not followed, set the new address"),
        ),
        _ if status.is_client_error() => return None,
        // A server that failed may have taken the text before.
        _ => SendOutcome::Unknown { why },
    })
}

/// How long the provider asks us to wait. RFC 9110, 10.2.3: seconds, or a date.
pub(super) fn retry_after(response: &Response, clock: &Clock) -> Option<Duration> {
    let value = response.headers().get(RETRY_AFTER)?.to_str().ok()?.trim();
    let wait = if let Ok(seconds) = value.parse() {
        Duration::from_secs(seconds)
    } else {
        let date = chrono::DateTime::parse_from_rfc2822(value).ok()?;
        (date.to_utc() - clock.now()).to_std().unwrap_or_default()
    };
    Some(wait.min(limits::RETRY_AFTER_MAX))
}

/// What it means that there was no answer.
pub(super) fn outcome_of_error(error: &reqwest::Error) -> SendOutcome {
    // The errors' own texts name the address, so they are not repeated.
    if error.is_builder() {
        SendOutcome::Refused {
            code: None,
            why: "the request could not be written".into(),
        }
    } else if error.is_connect() {
        wait(Whose::Gateway, None, "no connection to the provider".into())
    } else if error.is_timeout() {
        SendOutcome::Unknown {
            why: "no answer from the provider in time".into(),
        }
    } else {
        SendOutcome::Unknown {
            why: "the connection broke before the provider answered".into(),
        }
    }
}

pub(super) const fn wait(whose: Whose, after: Option<Duration>, why: String) -> SendOutcome {
    SendOutcome::Wait { whose, after, why }
}

/// The body of an answer, if it is no longer than one may be. It is read in any case, so that the
/// connection can be used again.
pub(super) async fn limited_body(mut response: Response) -> Option<Vec<u8>> {
    let mut body = Vec::new();
    while let Some(chunk) = response.chunk().await.ok()? {
        body.extend_from_slice(&chunk);
        if body.len() > limits::ANSWER_BYTES_MAX {
            return None;
        }
    }
    Some(body)
}
