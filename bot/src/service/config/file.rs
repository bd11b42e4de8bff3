//! The file as it is written: tables and keys, and how they become a [`super::Config`].

use std::{path::Path, path::PathBuf, time::Duration};

use serde::Deserialize;

use super::{
    ConfigError, Environment, INBOUND_SECRET, LineConfig, NudgesConfig, OUTBOUND_SECRET,
    OutboundConfig, StoreConfig, WebConfig,
    value::{
        Address, Country, Filter, Listen, Name, OwnNumber, Sender, TimeOfDay, User, Whole, Zone,
    },
};
use crate::{
    service::{
        gateway::http::{Credentials, HttpSettings},
        web::{Auth, SignatureKeys},
    },
    words::secret::Secret,
};

/// Megabytes of the store's cache: enough for the hot records of 100,000 blocks.
const CACHE_MB: u32 = 32;
/// Megabytes kept free on the disk: the store writes a second copy of its index now and then.
const RESERVE_MB: u32 = 256;
/// Worker threads of the HTTP side; they only read requests and wait.
const WORKERS: u32 = 2;
/// Texts on their way at once; small providers take no more.
const PARALLEL: u32 = 4;
/// Seconds of one try to send.
const TIMEOUT_SECS: u32 = 30;
const LOG_FILTER: &str = "info";

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Config {
    store: Store,
    web: Web,
    inbound: Inbound,
    outbound: Outbound,
    line: Line,
    #[serde(default)]
    nudges: Nudges,
    #[serde(default)]
    languages: Files,
    #[serde(default)]
    calendars: Files,
    #[serde(default)]
    log: Log,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Store {
    folder: PathBuf,
    cache_mb: Option<Whole<16, 4096>>,
    reserve_mb: Option<Whole<16, 1_048_576>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Web {
    listen: Listen,
    workers: Option<Whole<1, 64>>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Inbound {
    auth: InboundAuth,
    user: Option<User>,
}

#[derive(Deserialize)]
#[serde(rename_all = "lowercase")]
enum InboundAuth {
    Basic,
    Bearer,
    Signature,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Outbound {
    kind: OutboundKind,
    base_url: Option<Address>,
    sender: Option<Sender>,
    notify_url: Option<Address>,
    auth: Option<OutboundAuth>,
    user: Option<User>,
    parallel: Option<Whole<1, 64>>,
    timeout_secs: Option<Whole<1, 300>>,
    #[serde(default)]
    allow_demo_numbers: bool,
}

#[derive(Deserialize)]
#[serde(rename_all = "lowercase")]
enum OutboundKind {
    Http,
    None,
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "lowercase")]
enum OutboundAuth {
    Basic,
    Bearer,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Line {
    name: Name,
    own_number: OwnNumber,
    country: Country,
    fallback_zone: Zone,
}

#[derive(Deserialize, Default)]
#[serde(deny_unknown_fields)]
struct Nudges {
    quiet_from: Option<TimeOfDay>,
    quiet_until: Option<TimeOfDay>,
    window_from: Option<TimeOfDay>,
    window_until: Option<TimeOfDay>,
}

#[derive(Deserialize, Default)]
#[serde(deny_unknown_fields)]
struct Files {
    #[serde(default)]
    files: Vec<PathBuf>,
}

#[derive(Deserialize, Default)]
#[serde(deny_unknown_fields)]
struct Log {
    filter: Option<Filter>,
}

impl Config {
    pub(super) fn check(
        self,
        folder: &Path,
        environment: Environment<'_>,
    ) -> Result<super::Config, ConfigError> {
        Ok(super::Config {
            store: self.store.check(folder)?,
            web: WebConfig {
                listen: self.web.listen.0,
                workers: or_default(self.web.workers, WORKERS) as usize,
            },
            inbound: self.inbound.check(environment)?,
            outbound: self.outbound.check(environment)?,
            line: LineConfig {
                name: self.line.name.0,
                own_number: self.line.own_number.0,
                country: self.line.country.0,
                fallback_zone: self.line.fallback_zone.0,
            },
            nudges: self.nudges.check()?,
            language_files: self.languages.at(folder),
            calendar_files: self.calendars.at(folder),
            log_filter: self
                .log
                .filter
                .map_or_else(|| LOG_FILTER.to_owned(), |filter| filter.0),
        })
    }
}

impl Store {
    fn check(self, folder: &Path) -> Result<StoreConfig, ConfigError> {
        if self.folder.as_os_str().is_empty() {
            return Err(together("store.folder", "expected a folder, found nothing"));
        }
        Ok(StoreConfig {
            folder: folder.join(self.folder),
            cache_mb: or_default(self.cache_mb, CACHE_MB),
            reserve_mb: or_default(self.reserve_mb, RESERVE_MB),
        })
    }
}

impl Inbound {
    fn check(self, environment: Environment<'_>) -> Result<Auth, ConfigError> {
        let secret = secret(INBOUND_SECRET, environment)?;
        Ok(match self.auth {
            InboundAuth::Basic => Auth::Basic {
                user: need(
                    self.user,
                    "inbound.user",
                    "is needed when inbound.auth is \"basic\"",
                )?
                .0,
                password: secret,
            },
            InboundAuth::Bearer => Auth::Bearer { token: secret },
            InboundAuth::Signature => Auth::Signature {
                keys: SignatureKeys::parse(secret.reveal()).map_err(ConfigError::SigningKeys)?,
            },
        })
    }
}

impl Outbound {
    fn check(self, environment: Environment<'_>) -> Result<Option<OutboundConfig>, ConfigError> {
        match self.kind {
            OutboundKind::None => Ok(None),
            OutboundKind::Http => self.http(environment).map(Some),
        }
    }

    fn http(self, environment: Environment<'_>) -> Result<OutboundConfig, ConfigError> {
        const WHY: &str = "is needed when outbound.kind is \"http\"";
        let auth = need(self.auth, "outbound.auth", WHY)?;
        let base_url = need(self.base_url, "outbound.base_url", WHY)?;
        if self.allow_demo_numbers && !base_url.is_on_this_computer() {
            return Err(together(
                "outbound.allow_demo_numbers",
                "is only for a stand-in on this computer; outbound.base_url is elsewhere",
            ));
        }
        Ok(OutboundConfig {
            http: HttpSettings {
                base_url: base_url.0,
                sender: need(self.sender, "outbound.sender", WHY)?.0,
                notify_url: self.notify_url.map(|url| url.0),
                credentials: credentials(auth, self.user, environment)?,
                timeout: Duration::from_secs(or_default(self.timeout_secs, TIMEOUT_SECS).into()),
                allow_demo_numbers: self.allow_demo_numbers,
            },
            parallel: or_default(self.parallel, PARALLEL) as usize,
        })
    }
}

impl Nudges {
    fn check(self) -> Result<NudgesConfig, ConfigError> {
        let nudges = NudgesConfig {
            quiet_from: self.quiet_from.map(|time| time.0),
            quiet_until: self.quiet_until.map(|time| time.0),
            window_from: self.window_from.map(|time| time.0),
            window_until: self.window_until.map(|time| time.0),
        };
        if let (Some(from), Some(until)) = (nudges.window_from, nudges.window_until)
            && from >= until
        {
            return Err(together(
                "nudges.window_until",
                "expected a time after nudges.window_from",
            ));
        }
        Ok(nudges)
    }
}

impl Files {
    fn at(self, folder: &Path) -> Vec<PathBuf> {
        self.files.iter().map(|file| folder.join(file)).collect()
    }
}

fn credentials(
    auth: OutboundAuth,
    user: Option<User>,
    environment: Environment<'_>,
) -> Result<Credentials, ConfigError> {
    let secret = secret(OUTBOUND_SECRET, environment)?;
    Ok(match auth {
        OutboundAuth::Basic => Credentials::Basic {
            user: need(
                user,
                "outbound.user",
                "is needed when outbound.auth is \"basic\"",
            )?
            .0,
            password: secret,
        },
        OutboundAuth::Bearer => Credentials::Bearer { token: secret },
    })
}

fn secret(variable: &'static str, environment: Environment<'_>) -> Result<Secret, ConfigError> {
    environment(variable)
        .filter(|secret| !secret.trim().is_empty())
        .map(Secret::new)
        .ok_or(ConfigError::NoSecret { variable })
}

fn need<T>(value: Option<T>, key: &'static str, why: &'static str) -> Result<T, ConfigError> {
    value.ok_or(together(key, why))
}

const fn together(key: &'static str, what: &'static str) -> ConfigError {
    ConfigError::Together { key, what }
}

fn or_default<const MIN: u32, const MAX: u32>(value: Option<Whole<MIN, MAX>>, default: u32) -> u32 {
    value.map_or(default, |whole| whole.0)
}
