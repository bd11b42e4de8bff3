//! The block of a provider in the configuration.

use std::{sync::Arc, time::Duration};

use budwood_parser::table::{Table, TableError};
use url::Url;

use super::{Credentials, OneApi, OneApiSettings};
use crate::{
    service::{
        clock::Clock,
        door::{Auth, Door, Takes},
        gateway::Block,
        port::{Abilities, Gateway, OpenError, Opened, Plan, Secrets, SendFuture},
        signature::SignatureKeys,
        value,
    },
    words::traffic::{Outgoing, SendOutcome, Whose},
};

/// Seconds of one try to send.
const TIMEOUT_SECS: u32 = 30;

/// A provider as it stands in the configuration.
#[derive(Clone, Debug)]
struct OneApiPlan {
    name: String,
    abilities: Abilities,
    inward: Option<Inward>,
    outward: Option<Outward>,
}

/// How the provider proves that a text comes from it.
#[derive(Clone, Debug)]
enum Inward {
    Basic { user: String },
    Bearer,
    Signature,
}

/// How texts are sent.
#[derive(Clone, Debug)]
struct Outward {
    base_url: Url,
    sender: String,
    notify_url: Option<Url>,
    /// The user; with a token there is none.
    user: Option<String>,
    timeout: Duration,
}

/// Reads the block.
pub(crate) fn read(block: &Block<'_>) -> Result<Arc<dyn Plan>, TableError> {
    let table = block.table;
    let idempotent = table.flag("idempotent")?.unwrap_or(false);
    let demo_numbers = table.flag("allow_demo_numbers")?.unwrap_or(false);
    let inward = table.table("in", inward)?;
    let outward = table.table("out", outward)?;
    if inward.is_none() && outward.is_none() {
        return Err(table.error("out", "is missing, and [gateway.in] too: give one or both"));
    }
    let is_here = |out: &Outward| value::is_on_this_computer(&out.base_url);
    if demo_numbers && !outward.as_ref().is_some_and(is_here) {
        return Err(table.error(
            "allow_demo_numbers",
            "is only for a stand-in on this computer; out.base_url is elsewhere",
        ));
    }
    Ok(Arc::new(OneApiPlan {
        name: block.name.to_owned(),
        abilities: Abilities {
            sends: outward.is_some(),
            idempotent,
            demo_numbers,
        },
        inward,
        outward,
    }))
}

fn inward(table: &Table<'_>) -> Result<Inward, TableError> {
    let user = value::maybe(table, "user", value::user)?;
    match table.need_text("auth")? {
        "basic" => Ok(Inward::Basic {
            user: need_user(table, user)?,
        }),
        "bearer" => Ok(Inward::Bearer),
        "signature" => Ok(Inward::Signature),
        found => Err(table.error(
            "auth",
            format!("expected \"basic\", \"bearer\" or \"signature\", found {found:?}"),
        )),
    }
}

fn outward(table: &Table<'_>) -> Result<Outward, TableError> {
    let user = value::maybe(table, "user", value::user)?;
    let user = match table.need_text("auth")? {
        "basic" => Some(need_user(table, user)?),
        "bearer" => None,
        found => {
            let what = format!("expected \"basic\" or \"bearer\", found {found:?}");
            return Err(table.error("auth", what));
        }
    };
    let seconds = value::whole(table, "timeout_secs", 1..=300)?.unwrap_or(TIMEOUT_SECS);
    Ok(Outward {
        base_url: value::need(table, "base_url", value::address)?,
        sender: value::need(table, "sender", value::sender)?,
        notify_url: value::maybe(table, "notify_url", value::address)?,
        user,
        timeout: Duration::from_secs(seconds.into()),
    })
}

fn need_user(table: &Table<'_>, user: Option<String>) -> Result<String, TableError> {
    user.ok_or_else(|| table.error("user", "is needed when auth is \"basic\""))
}

impl Plan for OneApiPlan {
    fn abilities(&self) -> Abilities {
        self.abilities
    }

    fn takes(&self) -> Option<Takes> {
        self.inward.as_ref().map(|_| Takes::OneApi)
    }

    fn open(&self, secrets: &Secrets<'_>, clock: &Clock) -> Result<Opened, OpenError> {
        let door = match &self.inward {
            Some(inward) => Some(Door {
                gateway: self.name.clone(),
                auth: inward.open(secrets)?,
                networks: Vec::new(),
                takes: Takes::OneApi,
            }),
            None => None,
        };
        let gateway: Arc<dyn Gateway> = match &self.outward {
            Some(outward) => Arc::new(self.sending(outward, secrets, clock)?),
            None => Arc::new(InwardOnly(self.clone())),
        };
        Ok(Opened { gateway, door })
    }
}

impl Inward {
    fn open(&self, secrets: &Secrets<'_>) -> Result<Auth, OpenError> {
        let (secret, variable) = secrets.inward()?;
        Ok(match self {
            Self::Basic { user } => Auth::Basic {
                user: user.clone(),
                password: secret,
            },
            Self::Bearer => Auth::Bearer { token: secret },
            Self::Signature => Auth::Signature {
                keys: SignatureKeys::parse(secret.reveal())
                    .map_err(|source| OpenError::SigningKeys { variable, source })?,
            },
        })
    }
}

impl OneApiPlan {
    fn sending(
        &self,
        outward: &Outward,
        secrets: &Secrets<'_>,
        clock: &Clock,
    ) -> Result<OneApi, OpenError> {
        let secret = secrets.outward()?;
        let credentials = match &outward.user {
            Some(user) => Credentials::Basic {
                user: user.clone(),
                password: secret,
            },
            None => Credentials::Bearer { token: secret },
        };
        let settings = OneApiSettings {
            name: self.name.clone(),
            base_url: outward.base_url.clone(),
            sender: outward.sender.clone(),
            notify_url: outward.notify_url.clone(),
            credentials,
            timeout: outward.timeout,
            abilities: self.abilities,
        };
        OneApi::new(settings, clock.clone()).map_err(|error| OpenError::SetUp {
            gateway: self.name.clone(),
            source: error.into(),
        })
    }
}

/// A provider that only brings texts: nothing leaves by it, and the outbox asks for nothing.
struct InwardOnly(OneApiPlan);

impl Gateway for InwardOnly {
    fn name(&self) -> &str {
        &self.0.name
    }

    fn abilities(&self) -> Abilities {
        self.0.abilities
    }

    fn send<'a>(&'a self, _: &'a Outgoing) -> SendFuture<'a> {
        let wait = SendOutcome::Wait {
            whose: Whose::Gateway,
            after: None,
            why: "nothing is sent by this gateway".into(),
        };
        Box::pin(async move { wait })
    }
}
