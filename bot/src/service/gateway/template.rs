//! A provider with an HTTP interface of its own, told by the configuration and by nothing else.
//!
//! How a text is sent, what an answer means, and where a request of the provider has its values
//! are patterns and names of fields. Deliberately absent: any word of any provider; what ships are
//! presets for open software and standards, as data in `bot/gateways`.

mod answer;
pub mod inward;
mod pattern;
mod plan;
mod request;

use std::time::Duration;

use reqwest::{Client, Method as HttpMethod, RequestBuilder, Response, header::CONTENT_TYPE};

pub(crate) use self::plan::read;
use self::{
    answer::{Answer, Meaning, Meanings},
    plan::Method,
    request::Request,
};
use crate::{
    service::{
        clock::Clock,
        gateway::http,
        port::{Abilities, Gateway, SendFuture},
    },
    words::{
        secret::Secret,
        traffic::{Outgoing, SendOutcome, Whose},
    },
};

/// A provider.
struct Template {
    name: String,
    abilities: Abilities,
    clock: Clock,
    out: Option<(Outward, Client)>,
}

/// How texts are sent.
struct Outward {
    method: Method,
    auth: OutAuth,
    request: Request,
    meanings: Meanings,
    timeout: Duration,
}

/// How we prove who we are.
enum OutAuth {
    None,
    Basic(String, Secret),
    Bearer(Secret),
    Header((String, Secret)),
    Query((String, Secret)),
    Form((String, Secret)),
}

impl Template {
    fn new(
        name: &str,
        abilities: Abilities,
        out: Option<Outward>,
        clock: Clock,
    ) -> Result<Self, reqwest::Error> {
        let out = match out {
            Some(out) => {
                let client = http::sender(out.timeout)?;
                Some((out, client))
            }
            None => None,
        };
        Ok(Self {
            name: name.to_owned(),
            abilities,
            clock,
            out,
        })
    }

    async fn send_once(&self, text: &Outgoing) -> SendOutcome {
        let Some((out, client)) = &self.out else {
            return http::wait(
                Whose::Gateway,
                None,
                "nothing is sent by this gateway".into(),
            );
        };
        let Some(request) = out.request(text, client, &self.clock) else {
            return SendOutcome::Refused {
                code: None,
                why: "the request could not be written".into(),
            };
        };
        match request.send().await {
            Ok(response) => out.outcome_of(response, &self.clock).await,
            Err(error) => http::outcome_of_error(&error),
        }
    }
}

impl Outward {
    fn request(&self, text: &Outgoing, client: &Client, clock: &Clock) -> Option<RequestBuilder> {
        let mut filled = self.request.filled(text, clock)?;
        if let OutAuth::Query((name, secret)) = &self.auth {
            filled
                .url
                .query_pairs_mut()
                .append_pair(name, secret.reveal());
        }
        let method = match self.method {
            Method::Get => HttpMethod::GET,
            Method::Post => HttpMethod::POST,
            Method::Put => HttpMethod::PUT,
        };
        let mut request = client.request(method, filled.url);
        for (name, value) in &filled.headers {
            request = request.header(name, value);
        }
        if let Some((media, mut body)) = filled.body {
            if let OutAuth::Form((name, secret)) = &self.auth {
                let mut form = url::form_urlencoded::Serializer::for_suffix(String::new(), 0);
                form.append_pair(name, secret.reveal());
                body = format!("{body}&{}", form.finish());
            }
            request = request.header(CONTENT_TYPE, media).body(body);
        }
        Some(match &self.auth {
            OutAuth::None | OutAuth::Query(_) | OutAuth::Form(_) => request,
            OutAuth::Basic(user, password) => request.basic_auth(user, Some(password.reveal())),
            OutAuth::Bearer(token) => request.bearer_auth(token.reveal()),
            OutAuth::Header((name, secret)) => request.header(name, secret.reveal()),
        })
    }

    async fn outcome_of(&self, response: Response, clock: &Clock) -> SendOutcome {
        let status = response.status();
        let usual = http::outcome_of_status(&response, clock);
        let after = http::retry_after(&response, clock);
        let headers = response.headers().iter();
        let headers = headers.filter_map(|(name, value)| {
            Some((name.as_str().to_owned(), value.to_str().ok()?.to_owned()))
        });
        let headers = headers.collect();
        let answer = Answer {
            status: status.as_u16(),
            headers,
            body: http::limited_body(response).await.unwrap_or_default(),
        };
        let why = format!("the provider answered {status}");
        let refused = |why: String| SendOutcome::Refused {
            code: self.meanings.code(&answer),
            why,
        };
        match self.meanings.of(&answer) {
            Meaning::Accepted => SendOutcome::Accepted {
                ids: self.meanings.id(&answer).into_iter().collect(),
            },
            Meaning::Wait => http::wait(Whose::Gateway, after, why),
            Meaning::Refused => refused(why),
            Meaning::Unclear => SendOutcome::Unknown {
                why: format!("{why}, with a body that is not as it was set"),
            },
            Meaning::Unlisted => usual.unwrap_or_else(|| refused(why)),
        }
    }
}

impl Gateway for Template {
    fn name(&self) -> &str {
        &self.name
    }

    fn abilities(&self) -> Abilities {
        self.abilities
    }

    fn send<'a>(&'a self, text: &'a Outgoing) -> SendFuture<'a> {
        Box::pin(self.send_once(text))
    }
}
