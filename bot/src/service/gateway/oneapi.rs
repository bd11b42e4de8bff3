//! A provider that speaks the open HTTP interface for text messages.
//!
//! That is the GSMA OneAPI, also published as the OMA RESTful Network API for Short Messaging:
//! one POST for each text, JSON both ways. What comes in by the same interface is read in the
//! `web` module. Deliberately absent: trying again, counting, and waiting for receipts, which are
//! the outbox's; and every log line, because what this file handles are numbers and texts.

mod plan;
pub(crate) mod wire;

use std::time::Duration;

use reqwest::{Client, Method, RequestBuilder, Response, header::LOCATION};
use url::Url;

pub(crate) use self::plan::read;
use crate::{
    service::{
        clock::Clock,
        gateway::http,
        port::{Abilities, Gateway, SendFuture},
    },
    words::{
        secret::Secret,
        traffic::{Outgoing, SendOutcome},
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

impl OneApi {
    /// Sets up the gateway. Nothing is sent yet.
    ///
    /// # Errors
    ///
    /// When the address cannot be extended or the system's certificates cannot be read.
    pub fn new(settings: OneApiSettings, clock: Clock) -> Result<Self, OneApiError> {
        Ok(Self {
            client: http::sender(settings.timeout).map_err(OneApiError::Client)?,
            requests_url: wire::requests_url(&settings).ok_or(OneApiError::BaseUrl)?,
            settings,
            clock,
        })
    }

    async fn send_once(&self, text: &Outgoing) -> SendOutcome {
        match self.request(text).send().await {
            Ok(response) => self.outcome_of(response).await,
            Err(error) => http::outcome_of_error(&error),
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
        match http::outcome_of_status(&response, &self.clock) {
            Some(outcome) => outcome,
            None => refused(response).await,
        }
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

async fn refused(response: Response) -> SendOutcome {
    let why = format!("the provider answered {}", response.status());
    let body = http::limited_body(response).await;
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
    let body = http::limited_body(response).await;
    location.or_else(|| {
        let address = wire::resource_url(&body?)?;
        wire::last_segment(&address)
    })
}
