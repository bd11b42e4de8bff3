//! The block of a provider in the configuration, laid over a preset if one is named.

use std::{sync::Arc, time::Duration};

use budwood_parser::table::{Table, TableError};

use super::{OutAuth, Outward, Template, answer::Meanings, inward::Inward, request::Request};
use crate::{
    service::{
        body_mac::{BodyMac, MacEncoding},
        clock::Clock,
        door::{Auth, Door, Takes},
        gateway::Block,
        network::Network,
        port::{Abilities, OpenError, Opened, Plan, Secrets},
        signature::SignatureKeys,
        value,
    },
    words::secret::Secret,
};

/// Presets by name. Each is named after open software or a standard, and is data only.
const PRESETS: [(&str, &str); 2] = [
    ("kannel", include_str!("../../../../gateways/kannel.toml")),
    ("oneapi", include_str!("../../../../gateways/oneapi.toml")),
];

/// Seconds of one try to send.
const TIMEOUT_SECS: u32 = 30;

/// A provider as it stands in the configuration.
#[derive(Clone, Debug)]
struct TemplatePlan {
    name: String,
    abilities: Abilities,
    door: Option<DoorPlan>,
    out: Option<OutPlan>,
}

/// How the provider calls.
#[derive(Clone, Debug)]
struct DoorPlan {
    proof: Proof,
    networks: Vec<Network>,
    inward: Arc<Inward>,
}

/// How the provider proves that it is ours.
#[derive(Clone, Debug)]
enum Proof {
    /// By where it calls from, and nothing else.
    Network,
    Basic {
        user: String,
    },
    Bearer,
    Signature,
    Header(String),
    Query(String),
    Hmac(BodyMac),
}

/// How texts are sent.
#[derive(Clone, Debug)]
struct OutPlan {
    method: Method,
    auth: AuthPlan,
    request: Request,
    meanings: Meanings,
    timeout: Duration,
}

/// How a request is sent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Method {
    Get,
    Post,
    Put,
}

/// How we prove who we are, without the secret.
#[derive(Clone, Debug)]
enum AuthPlan {
    None,
    Basic,
    Bearer,
    Header(String),
    Query(String),
    Form(String),
}

/// Reads the block.
pub(crate) fn read(block: &Block<'_>) -> Result<Arc<dyn Plan>, TableError> {
    let preset = value::maybe(block.table, "preset", |found| {
        let preset = PRESETS.iter().find(|(name, _)| *name == found);
        preset.map(|(_, preset)| *preset).ok_or_else(|| {
            let known: Vec<&str> = PRESETS.iter().map(|(name, _)| *name).collect();
            format!("expected one of: {}; found {found:?}", known.join(", "))
        })
    })?;
    let name = block.name;
    let plan = block
        .table
        .over(preset.unwrap_or_default(), |table| plan(table, name))?;
    Ok(Arc::new(plan))
}

fn plan(table: &Table<'_>, name: &str) -> Result<TemplatePlan, TableError> {
    let idempotent = table.flag("idempotent")?.unwrap_or(false);
    let demo_numbers = table.flag("allow_demo_numbers")?.unwrap_or(false);
    let out = table.table("out", OutPlan::read)?;
    let door = door(table, name)?;
    if out.is_none() && door.is_none() {
        return Err(table.error("out", "is missing, and [gateway.in] too: give one or both"));
    }
    let is_here = |out: &OutPlan| {
        let address = out.request.address();
        address.is_some_and(|url| value::is_on_this_computer(&url))
    };
    if demo_numbers && !out.as_ref().is_some_and(is_here) {
        return Err(table.error(
            "allow_demo_numbers",
            "is only for a stand-in on this computer; out.url is elsewhere",
        ));
    }
    Ok(TemplatePlan {
        name: name.to_owned(),
        abilities: Abilities {
            sends: out.is_some(),
            idempotent,
            demo_numbers,
        },
        door,
        out,
    })
}

/// One proof holds for texts and receipts: it is told where texts are, else where receipts are.
fn door(table: &Table<'_>, name: &str) -> Result<Option<DoorPlan>, TableError> {
    let texts = table.table("in", |texts| {
        let inward = Inward::read(name, Some(texts), None)?;
        Ok((proof(texts)?, inward))
    })?;
    let is_proved = texts.is_some();
    let receipts = table.table("receipts", |receipts| {
        let inward = Inward::read(name, None, Some(receipts))?;
        let proof = if is_proved {
            None
        } else {
            Some(proof(receipts)?)
        };
        Ok((proof, inward))
    })?;
    let (proof, inward) = match (texts, receipts) {
        (Some((proof, texts)), receipts) => {
            (proof, texts.with(receipts.map(|(_, receipts)| receipts)))
        }
        (None, Some((Some(proof), receipts))) => (proof, receipts),
        (None, Some((None, _)) | None) => return Ok(None),
    };
    let (proof, networks) = proof;
    if let (Some(verify), [key, ..]) = (proof.of_body(), inward.outside_body().as_slice()) {
        let what = format!(
            "\"{verify}\" proves the body alone, and {key} is not taken from it, so anybody could \
             change it; take every value from the body, or verify otherwise"
        );
        let place = if is_proved {
            "in.verify"
        } else {
            "receipts.verify"
        };
        return Err(table.error(place, what));
    }
    Ok(Some(DoorPlan {
        proof,
        networks,
        inward: Arc::new(inward),
    }))
}

fn proof(table: &Table<'_>) -> Result<(Proof, Vec<Network>), TableError> {
    let networks = table.texts("networks")?;
    let networks: Result<Vec<Network>, _> = networks.into_iter().map(str::parse).collect();
    let networks = networks.map_err(|wrong| table.error("networks", wrong.to_string()))?;
    let user = value::maybe(table, "user", value::user)?;
    let mac = table.table("hmac", mac)?;
    let found = table.need_text("verify")?;
    let proof = match (found.split_once(':'), found) {
        (Some(("header", name)), _) if is_name(name) => Proof::Header(name.to_ascii_lowercase()),
        (Some(("query", name)), _) if is_name(name) => Proof::Query(name.to_owned()),
        (None, "basic") => Proof::Basic {
            user: need(table, user, "user", "is needed when verify is \"basic\"")?,
        },
        (None, "bearer") => Proof::Bearer,
        (None, "signature") => Proof::Signature,
        (None, "hmac") => Proof::Hmac(need(
            table,
            mac,
            "hmac",
            "is needed when verify is \"hmac\"",
        )?),
        (None, "networks") if !networks.is_empty() => Proof::Network,
        (None, "networks") => {
            return Err(table.error("networks", "is needed when verify is \"networks\""));
        }
        _ => {
            let what = format!(
                "expected \"basic\", \"bearer\", \"signature\", \"hmac\", \"header:Name\", \
                 \"query:name\" or \"networks\", found {found:?}"
            );
            return Err(table.error("verify", what));
        }
    };
    Ok((proof, networks))
}

fn mac(table: &Table<'_>) -> Result<BodyMac, TableError> {
    let encoding = value::maybe(table, "encoding", |found| match found {
        "hex" => Ok(MacEncoding::Hex),
        "base64" => Ok(MacEncoding::Base64),
        _ => Err(format!("expected \"hex\" or \"base64\", found {found:?}")),
    })?;
    let lower = |found: &str| found.to_ascii_lowercase();
    Ok(BodyMac {
        header: lower(table.need_text("header")?),
        encoding: encoding.unwrap_or(MacEncoding::Hex),
        prefix: table.text("prefix")?.unwrap_or_default().to_owned(),
        timestamp: table.text("timestamp")?.map(lower),
    })
}

fn is_name(name: &str) -> bool {
    let is_sign = |byte: u8| byte.is_ascii_alphanumeric() || byte == b'-' || byte == b'_';
    !name.is_empty() && name.bytes().all(is_sign)
}

fn need<T>(table: &Table<'_>, found: Option<T>, key: &str, why: &str) -> Result<T, TableError> {
    found.ok_or_else(|| table.error(key, why))
}

impl OutPlan {
    fn read(table: &Table<'_>) -> Result<Self, TableError> {
        let method = value::maybe(table, "method", |found| match found {
            "GET" => Ok(Method::Get),
            "POST" => Ok(Method::Post),
            "PUT" => Ok(Method::Put),
            _ => Err(format!(
                "expected \"GET\", \"POST\" or \"PUT\", found {found:?}"
            )),
        })?;
        let auth = value::need(table, "auth", |found| {
            match (found.split_once(':'), found) {
                (None, "none") => Ok(AuthPlan::None),
                (None, "basic") => Ok(AuthPlan::Basic),
                (None, "bearer") => Ok(AuthPlan::Bearer),
                (Some(("header", name)), _) if is_name(name) => {
                    Ok(AuthPlan::Header(name.to_owned()))
                }
                (Some(("query", name)), _) if is_name(name) => Ok(AuthPlan::Query(name.to_owned())),
                (Some(("form", name)), _) if is_name(name) => Ok(AuthPlan::Form(name.to_owned())),
                _ => Err(format!(
                    "expected \"basic\", \"bearer\", \"header:Name\", \"query:name\", \"form:name\" or \
                 \"none\", found {found:?}"
                )),
            }
        })?;
        let seconds = value::whole(table, "timeout_secs", 1..=300)?.unwrap_or(TIMEOUT_SECS);
        let request = Request::read(table)?;
        if matches!(auth, AuthPlan::Basic) && request.user().is_empty() {
            return Err(table.error("user", "is needed when auth is \"basic\""));
        }
        if matches!(auth, AuthPlan::Form(_)) && !request.has_form() {
            return Err(table.error("auth", "puts the secret into a form, and there is no form"));
        }
        Ok(Self {
            method: method.unwrap_or(Method::Post),
            auth,
            request,
            meanings: Meanings::read(table)?,
            timeout: Duration::from_secs(seconds.into()),
        })
    }

    fn open(&self, secrets: &Secrets<'_>) -> Result<Outward, OpenError> {
        let name = |name: &String| Ok((name.clone(), secrets.outward()?));
        let auth = match &self.auth {
            AuthPlan::None => OutAuth::None,
            AuthPlan::Basic => OutAuth::Basic(self.request.user().to_owned(), secrets.outward()?),
            AuthPlan::Bearer => OutAuth::Bearer(secrets.outward()?),
            AuthPlan::Header(header) => OutAuth::Header(name(header)?),
            AuthPlan::Query(field) => OutAuth::Query(name(field)?),
            AuthPlan::Form(field) => OutAuth::Form(name(field)?),
        };
        Ok(Outward {
            method: self.method,
            auth,
            request: self.request.clone(),
            meanings: self.meanings.clone(),
            timeout: self.timeout,
        })
    }
}

impl Proof {
    /// Its name, where it is made over the body and over nothing else of a request.
    const fn of_body(&self) -> Option<&'static str> {
        match self {
            Self::Signature => Some("signature"),
            Self::Hmac(_) => Some("hmac"),
            Self::Network
            | Self::Basic { .. }
            | Self::Bearer
            | Self::Header(_)
            | Self::Query(_) => None,
        }
    }

    fn open(&self, secrets: &Secrets<'_>) -> Result<Auth, OpenError> {
        let secret = || -> Result<Secret, OpenError> { Ok(secrets.inward()?.0) };
        Ok(match self {
            Self::Network => Auth::Network,
            Self::Basic { user } => Auth::Basic {
                user: user.clone(),
                password: secret()?,
            },
            Self::Bearer => Auth::Bearer { token: secret()? },
            Self::Header(name) => Auth::Header {
                name: name.clone(),
                secret: secret()?,
            },
            Self::Query(name) => Auth::Query {
                name: name.clone(),
                secret: secret()?,
            },
            Self::Hmac(mac) => Auth::Hmac {
                mac: mac.clone(),
                key: secret()?,
            },
            Self::Signature => {
                let (keys, variable) = secrets.inward()?;
                Auth::Signature {
                    keys: SignatureKeys::parse(keys.reveal())
                        .map_err(|source| OpenError::SigningKeys { variable, source })?,
                }
            }
        })
    }
}

impl Plan for TemplatePlan {
    fn abilities(&self) -> Abilities {
        self.abilities
    }

    fn takes(&self) -> Option<Takes> {
        let door = self.door.as_ref()?;
        Some(Takes::Template(door.inward.clone()))
    }

    fn open(&self, secrets: &Secrets<'_>, clock: &Clock) -> Result<Opened, OpenError> {
        let door = match &self.door {
            Some(door) => Some(Door {
                gateway: self.name.clone(),
                auth: door.proof.open(secrets)?,
                networks: door.networks.clone(),
                takes: Takes::Template(door.inward.clone()),
            }),
            None => None,
        };
        let out = self.out.as_ref().map(|out| out.open(secrets)).transpose()?;
        let template = Template::new(&self.name, self.abilities, out, clock.clone());
        let template = template.map_err(|error| OpenError::SetUp {
            gateway: self.name.clone(),
            source: error.into(),
        })?;
        let gateway = Arc::new(template);
        Ok(Opened { gateway, door })
    }
}
