//! What an operator sets: one TOML file.
//!
//! Everything in it is checked once, here, at the start; past this file nothing is checked again.
//! The file never holds a secret, so it can be shown and kept with others; secrets are read when
//! gateways are opened, which only the service does. Every key is explained in
//! `deploy/budwood.toml`, and a test holds the two together. Deliberately absent: bounds that are
//! not for an operator (`limits`), and a `Default`: a bot without a file has no right values.

mod file;

use std::{
    fmt,
    fs::File,
    io::{self, Read},
    net::SocketAddr,
    path::{Path, PathBuf},
    sync::Arc,
};

use budwood_parser::table::{Fault, faults, read_file};
use chrono::NaiveTime;
use chrono_tz::Tz;
use url::Url;

use crate::{
    engine::Operator,
    service::{
        certificate::Certificate,
        clock::Clock,
        port::{Environment, OpenError, Opened, Plan, Secrets},
        telemetry::LogFormat,
    },
    words::{
        ledger::MonthBudget,
        limits,
        ways::{Ration, Route, Way, Ways},
    },
};

/// What an operator sets.
#[derive(Clone, Debug)]
pub struct Config {
    /// Where records are kept.
    pub store: StoreConfig,
    /// The HTTP side.
    pub web: WebConfig,
    /// Pages for people, if there are any.
    pub office: Option<OfficeConfig>,
    /// What carries texts.
    pub gateways: Vec<GatewayConfig>,
    /// Which numbers leave by which of them.
    pub routes: Vec<Route>,
    /// The number that people text to.
    pub line: LineConfig,
    /// Who is told how the service is.
    pub operator: Option<OperatorConfig>,
    /// When nudges may go, where it differs from the usual.
    pub nudges: NudgesConfig,
    /// Language packs besides those built in.
    pub language_files: Vec<PathBuf>,
    /// Calendars besides those built in.
    pub calendar_files: Vec<PathBuf>,
    /// The log.
    pub log: LogConfig,
}

/// The log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LogConfig {
    /// What is logged, such as "info".
    pub filter: String,
    /// How a line is written.
    pub format: LogFormat,
}

/// Where records are kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoreConfig {
    /// The folder; made at the first start.
    pub folder: PathBuf,
    /// Memory for records that were read lately.
    pub cache_mb: u32,
    /// Free space on the disk below which no new work is taken.
    pub reserve_mb: u32,
}

/// The HTTP side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WebConfig {
    /// Address and port.
    pub listen: SocketAddr,
    /// Worker threads.
    pub workers: usize,
}

/// Pages for people.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OfficeConfig {
    /// Address and port.
    pub listen: SocketAddr,
    /// What people type, where it is another address.
    pub address: Option<Url>,
    /// For a line that is encrypted by the program itself.
    pub certificate: Option<Certificate>,
}

/// A gateway.
#[derive(Clone, Debug)]
pub struct GatewayConfig {
    /// Its name.
    pub name: String,
    /// Texts on their way at once.
    pub parallel: usize,
    /// The number that people text to through it, where it is another than the line's.
    pub own_number: Option<String>,
    /// What a part costs, in millionths.
    pub price_micro: Option<u64>,
    /// How many parts may leave by it.
    pub ration: Ration,
    /// What its kind makes of the rest.
    pub plan: Arc<dyn Plan>,
}

/// The number that people text to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LineConfig {
    /// What it is called, in the log and in records.
    pub name: String,
    /// Our own number or short code; never answered.
    pub own_number: String,
    /// Where a number without country code is at home: two letters as in ISO 3166-1.
    pub country: String,
    /// The zone of a person without a group.
    pub fallback_zone: Tz,
    /// Parts that may leave in a day.
    pub parts_a_day: u32,
    /// What may leave in a month.
    pub month: MonthBudget,
}

/// Who is told how the service is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OperatorConfig {
    /// The phone.
    pub phone: String,
    /// The language of the texts to it.
    pub language: Option<String>,
    /// When the morning line goes, local time.
    pub morning: NaiveTime,
}

/// When nudges may go. What is not set stays as usual.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct NudgesConfig {
    /// From here no nudge goes, local time.
    pub quiet_from: Option<NaiveTime>,
    /// From here nudges may go again.
    pub quiet_until: Option<NaiveTime>,
    /// The best time begins.
    pub window_from: Option<NaiveTime>,
    /// The best time ends.
    pub window_until: Option<NaiveTime>,
    /// New phones that are welcomed in one day.
    pub welcomes_a_day: Option<u32>,
}

/// Why the configuration cannot be used.
#[derive(Debug, thiserror::Error)]
pub enum ConfigError {
    /// The file cannot be read.
    #[error("cannot read {}", path.display())]
    Read {
        /// The file.
        path: PathBuf,
        /// Why.
        #[source]
        source: io::Error,
    },
    /// The file is not a configuration.
    #[error("cannot read {}: it has more than {} bytes", path.display(), limits::CONFIG_BYTES_MAX)]
    TooLong {
        /// The file.
        path: PathBuf,
    },
    /// Something in it is wrong.
    #[error("{0}")]
    Wrong(Faults),
}

/// Everything that is wrong in the file, in its order, a line each.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Faults(pub Vec<Fault>);

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let lines: Vec<String> = self.0.iter().map(ToString::to_string).collect();
        f.write_str(&lines.join("\n"))
    }
}

impl Config {
    /// Reads and checks a file. Paths in it start at its own folder.
    ///
    /// # Errors
    ///
    /// When it cannot be read, or something in it is missing or wrong.
    pub fn load(path: &Path) -> Result<Self, ConfigError> {
        Self::parse(&read(path)?, path.parent().unwrap_or(Path::new("")))
    }

    /// Checks the text of a file. Paths in it start at `folder`.
    ///
    /// # Errors
    ///
    /// When something in it is missing or wrong.
    pub fn parse(text: &str, folder: &Path) -> Result<Self, ConfigError> {
        let read = read_file(text, |table| Ok(file::read(table, folder)));
        read.unwrap_or_else(|error| Err(vec![error]))
            .map_err(|errors| ConfigError::Wrong(Faults(faults(text, errors))))
    }

    /// The gateways by which texts leave, for the engine.
    #[must_use]
    pub fn ways(&self) -> Ways {
        let sending = self
            .gateways
            .iter()
            .filter(|one| one.plan.abilities().sends);
        Ways {
            gateways: sending
                .map(|one| Way {
                    name: one.name.clone(),
                    idempotent: one.plan.abilities().idempotent,
                    price_micro: one.price_micro,
                    ration: one.ration,
                })
                .collect(),
            receiving: (self.gateways.iter())
                .filter(|one| !one.plan.abilities().sends)
                .map(|one| one.name.clone())
                .collect(),
            routes: self.routes.clone(),
        }
    }

    /// Who is told how the service is, in the zone of the line.
    #[must_use]
    pub fn operator(&self) -> Option<Operator> {
        let operator = self.operator.as_ref()?;
        Some(Operator {
            number: operator.phone.clone(),
            language: operator.language.clone(),
            at: operator.morning,
            zone: self.line.fallback_zone,
        })
    }

    /// Every number of ours: a text from one of them is an echo, and none is sent to.
    #[must_use]
    pub fn own_numbers(&self) -> Vec<String> {
        let of_gateways = self
            .gateways
            .iter()
            .filter_map(|one| one.own_number.clone());
        [self.line.own_number.clone()]
            .into_iter()
            .chain(of_gateways)
            .collect()
    }

    /// What keeps gateways from being opened here, such as a secret that is not there.
    #[must_use]
    pub fn missing_secrets(&self, environment: Environment<'_>, clock: &Clock) -> Vec<String> {
        let fault = |one: &GatewayConfig| {
            let secrets = Secrets {
                gateway: &one.name,
                environment,
            };
            let fault = one.plan.open(&secrets, clock).err()?;
            Some(format!("gateway {}: {fault}", one.name))
        };
        self.gateways.iter().filter_map(fault).collect()
    }

    /// Makes the gateways, with their secrets from the environment.
    ///
    /// # Errors
    ///
    /// When a secret is missing or wrong, or a gateway cannot be set up.
    pub fn open_gateways(
        &self,
        environment: Environment<'_>,
        clock: &Clock,
    ) -> Result<Vec<Opened>, OpenError> {
        let open = |one: &GatewayConfig| {
            let secrets = Secrets {
                gateway: &one.name,
                environment,
            };
            one.plan.open(&secrets, clock)
        };
        self.gateways.iter().map(open).collect()
    }
}

fn read(path: &Path) -> Result<String, ConfigError> {
    let unreadable = |source| ConfigError::Read {
        path: path.to_owned(),
        source,
    };
    let mut text = String::new();
    File::open(path)
        .and_then(|file| {
            file.take(limits::CONFIG_BYTES_MAX + 1)
                .read_to_string(&mut text)
        })
        .map_err(unreadable)?;
    if text.len() as u64 > limits::CONFIG_BYTES_MAX {
        return Err(ConfigError::TooLong {
            path: path.to_owned(),
        });
    }
    Ok(text)
}

#[cfg(test)]
mod tests;
