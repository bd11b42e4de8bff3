//! A provider that speaks the open HTTP interface for text messages.
//!
//! That is the GSMA OneAPI, also published as the OMA RESTful Network API for Short Messaging:
//! one POST for each text, JSON both ways. What comes in by the same interface is read in the
//! `web` module. Deliberately absent: trying again, counting, and waiting for receipts, which are
//! the outbox's; and every log line, because what this file handles are numbers and texts.

mod plan;
pub(crate) mod wire;

use std::time::Duration;

use reqwest::{
    Client, ClientBuilder, Method, RequestBuilder, Response, StatusCode,
    header::{LOCATION, RETRY_AFTER},
    redirect,
};
use url::Url;

pub(crate) use self::plan::read;
use crate::{
    service::{
        clock::Clock,
        port::{Abilities, Gateway, SendFuture},
    },
    words::{
        limits,
        secret::Secret,
        traffic::{Outgoing, SendOutcome, Whose},
    },
};

/// Where and how to send.
#[derive(Clone, Debug)]
pub struct OneApiSettings {
    /// The gateway's name.
    pub name: String,
    /// The address of the provider's interface; `outbound/…/requests` comes after it.
    pub base_url: Url,
    /// The number or name that texts come from.
    pub sender: String,
    /// Where the provider sends receipts, if we want them.
    pub notify_url: Option<Url>,
    /// How we prove who we are.
    pub credentials: Credentials,
    /// How long one try may take.
    pub timeout: Duration,
    /// What it can do; a provider may or may not look at the correlator.
    pub abilities: Abilities,
}

/// How we prove who we are.
#[derive(Clone, Debug)]
pub enum Credentials {
    /// A user and a password (RFC 7617).
    Basic {
        /// The user.
        user: String,
        /// The password.
        password: Secret,
    },
    /// A token (RFC 6750).
    Bearer {
        /// The token.
        token: Secret,
    },
}

/// A provider.
#[derive(Debug)]
pub struct OneApi {
    client: Client,
    requests_url: Url,
    settings: OneApiSettings,
    clock: Clock,
}

/// The gateway could not be set up.
#[derive(Debug, thiserror::Error)]
pub enum OneApiError {
    /// The address cannot have anything after it, such as `mailto:x`.
    #[error("base_url cannot be the start of an address")]
    BaseUrl,
    /// The HTTP client could not be made.
    #[error("cannot make an HTTP client")]
    Client(#[source] reqwest::Error),
}

/// An HTTP client to be set up further; every one of ours begins here.
///
/// The environment's proxies are left out: the file alone says where texts go.
pub fn client() -> ClientBuilder {
    // `reqwest` brings no ciphers of its own here. Those of `ring` are named once for the process;
    // an error says that they were named before.
    let _ = rustls::crypto::ring::default_provider().install_default();
    Client::builder().no_proxy()
}

impl OneApi {
    /// Sets up the gateway. Nothing is sent yet.
    ///
    /// # Errors
    ///
    /// When the address cannot be extended or the system's certificates cannot be read.
    pub fn new(settings: OneApiSettings, clock: Clock) -> Result<Self, OneApiError> {
        // A redirect would carry numbers and the password to an address that nobody chose.
        let client = client()
            .redirect(redirect::Policy::none())
            .connect_timeout(limits::CONNECT_TIMEOUT.min(settings.timeout))
            .timeout(settings.timeout)
            .build()
            .map_err(OneApiError::Client)?;
        Ok(Self {
            client,
            requests_url: wire::requests_url(&settings).ok_or(OneApiError::BaseUrl)?,
            settings,
            clock,
        })
    }

    async fn send_once(&self, text: &Outgoing) -> SendOutcome {
        match self.request(text).send().await {
            Ok(response) => self.outcome_of(response).await,
            Err(error) => outcome_of_error(&error),
        }
    }

    fn request(&self, text: &Outgoing) -> RequestBuilder {
        let request = self
            .client
            .request(Method::POST, self.requests_url.clone())
            .json(&wire::body_of(text, &self.settings));
        match &self.settings.credentials {
            Credentials::Basic { user, password } => {
                request.basic_auth(user, Some(password.reveal()))
            }
            Credentials::Bearer { token } => request.bearer_auth(token.reveal()),
        }
    }

    async fn outcome_of(&self, response: Response) -> SendOutcome {
        let status = response.status();
        if status.is_success() {
            return SendOutcome::Accepted {
                ids: gateway_id(response).await.into_iter().collect(),
            };
        }
        let why = format!("the provider answered {status}");
        match status {
            StatusCode::TOO_MANY_REQUESTS | StatusCode::SERVICE_UNAVAILABLE => {
                wait(Whose::Gateway, self.retry_after(&response), why)
            }
            StatusCode::REQUEST_TIMEOUT | StatusCode::TOO_EARLY => {
                wait(Whose::Text, self.retry_after(&response), why)
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
                format!("{why}; check base_url, sender, the password and the account"),
            ),
            _ if status.is_redirection() => wait(
                Whose::SetUp,
                Some(limits::SETUP_RETRY_AFTER),
                format!("{why}; redirects are not followed, put the new address in base_url"),
            ),
            _ if status.is_client_error() => refused_with_code(why, response).await,
            // A server that failed may have taken the text before.
            _ => SendOutcome::Unknown { why },
        }
    }

    /// RFC 9110, 10.2.3: seconds, or a date.
    fn retry_after(&self, response: &Response) -> Option<Duration> {
        let value = response.headers().get(RETRY_AFTER)?.to_str().ok()?.trim();
        let wait = if let Ok(seconds) = value.parse() {
            Duration::from_secs(seconds)
        } else {
            let date = chrono::DateTime::parse_from_rfc2822(value).ok()?;
            (date.to_utc() - self.clock.now())
                .to_std()
                .unwrap_or_default()
        };
        Some(wait.min(limits::RETRY_AFTER_MAX))
    }
}

impl Gateway for OneApi {
    fn name(&self) -> &str {
        &self.settings.name
    }

    fn abilities(&self) -> Abilities {
        self.settings.abilities
    }

    fn send<'a>(&'a self, text: &'a Outgoing) -> SendFuture<'a> {
        Box::pin(self.send_once(text))
    }
}

fn outcome_of_error(error: &reqwest::Error) -> SendOutcome {
    // The errors' own texts name the address, so they are not repeated.
    if error.is_builder() {
        refused("the request could not be written")
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

const fn wait(whose: Whose, after: Option<Duration>, why: String) -> SendOutcome {
    SendOutcome::Wait { whose, after, why }
}

fn refused(why: &str) -> SendOutcome {
    SendOutcome::Refused {
        code: None,
        why: why.into(),
    }
}

async fn refused_with_code(why: String, response: Response) -> SendOutcome {
    let body = limited_body(response).await;
    let code = body.as_deref().and_then(wire::refusal_code);
    let why = match &code {
        Some(code) => format!("{why} ({code})"),
        None => why,
    };
    SendOutcome::Refused { code, why }
}

/// The provider's id: the end of the address of the new resource, from the header or the body.
async fn gateway_id(response: Response) -> Option<String> {
    let location = response
        .headers()
        .get(LOCATION)
        .and_then(|value| value.to_str().ok())
        .and_then(wire::last_segment);
    // The body is read in any case, so that the connection can be used again.
    let body = limited_body(response).await;
    location.or_else(|| {
        let address = wire::resource_url(&body?)?;
        wire::last_segment(&address)
    })
}

async fn limited_body(mut response: Response) -> Option<Vec<u8>> {
    let mut body = Vec::new();
    while let Some(chunk) = response.chunk().await.ok()? {
        body.extend_from_slice(&chunk);
        if body.len() > limits::ANSWER_BYTES_MAX {
            return None;
        }
    }
    Some(body)
}
