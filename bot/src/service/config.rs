//! What an operator sets: one TOML file, and secrets from the environment.
//!
//! Everything is checked once, here, at the start; past this file nothing is checked again. The
//! file never holds a secret, so it can be shown and kept with others. Every key is explained in
//! `deploy/budwood.toml`, and a test holds the two together. Deliberately absent: bounds that are
//! not for an operator (`limits`), and a `Default`: a bot without a file has no right values.

mod file;
mod value;

use std::{
    fs::File,
    io::{self, Read},
    net::SocketAddr,
    path::{Path, PathBuf},
};

use chrono::NaiveTime;
use chrono_tz::Tz;

pub use crate::words::secret::Secret;
use crate::{
    service::{
        gateway::http::HttpSettings,
        web::{Auth, KeyError},
    },
    words::limits,
};

/// The variable with the password, token or signing keys that a gateway proves itself with.
pub const INBOUND_SECRET: &str = "BUDWOOD_INBOUND_SECRET";

/// The variable with the password or token that we prove ourselves with.
pub const OUTBOUND_SECRET: &str = "BUDWOOD_OUTBOUND_SECRET";

/// What an operator sets.
#[derive(Clone, Debug)]
pub struct Config {
    /// Where records are kept.
    pub store: StoreConfig,
    /// The HTTP side.
    pub web: WebConfig,
    /// How a gateway proves that it is ours.
    pub inbound: Auth,
    /// How texts are sent; none on a computer that only takes in.
    pub outbound: Option<OutboundConfig>,
    /// The number that people text to.
    pub line: LineConfig,
    /// When nudges may go, where it differs from the usual.
    pub nudges: NudgesConfig,
    /// Language packs besides those built in.
    pub language_files: Vec<PathBuf>,
    /// Calendars besides those built in.
    pub calendar_files: Vec<PathBuf>,
    /// What is logged, such as "info".
    pub log_filter: String,
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

/// How texts are sent.
#[derive(Clone, Debug)]
pub struct OutboundConfig {
    /// The provider.
    pub http: HttpSettings,
    /// Texts on their way at once.
    pub parallel: usize,
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
}

/// When nudges may go. What is not set stays as usual.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NudgesConfig {
    /// From here no nudge goes, local time.
    pub quiet_from: Option<NaiveTime>,
    /// From here nudges may go again.
    pub quiet_until: Option<NaiveTime>,
    /// The best time begins.
    pub window_from: Option<NaiveTime>,
    /// The best time ends.
    pub window_until: Option<NaiveTime>,
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
    /// Something in the file is wrong.
    #[error("line {line}, {key}: {what}")]
    Key {
        /// Its line, from 1.
        line: usize,
        /// The path of the key, such as `store.folder`; "file" when the whole cannot be read.
        key: String,
        /// What was expected and what was found.
        what: String,
    },
    /// Two keys do not go together, or one needs another.
    #[error("{key}: {what}")]
    Together {
        /// The path of the key.
        key: &'static str,
        /// What is missing or wrong.
        what: &'static str,
    },
    /// A secret is missing.
    #[error("environment variable {variable} is missing or empty")]
    NoSecret {
        /// Its name.
        variable: &'static str,
    },
    /// The signing keys cannot be read.
    #[error("environment variable {INBOUND_SECRET}")]
    SigningKeys(#[source] KeyError),
}

/// Looks up an environment variable. An argument, so that a test needs no environment.
pub type Environment<'a> = &'a dyn Fn(&str) -> Option<String>;

impl Config {
    /// Reads and checks a file. Paths in it start at its own folder.
    ///
    /// # Errors
    ///
    /// When it cannot be read, or something in it is missing or wrong.
    pub fn load(path: &Path, environment: Environment<'_>) -> Result<Self, ConfigError> {
        let text = read(path)?;
        Self::parse(&text, path.parent().unwrap_or(Path::new("")), environment)
    }

    /// Checks the text of a file. Paths in it start at `folder`.
    ///
    /// # Errors
    ///
    /// When something in it is missing or wrong.
    pub fn parse(
        text: &str,
        folder: &Path,
        environment: Environment<'_>,
    ) -> Result<Self, ConfigError> {
        let file = toml::from_str::<file::Config>(text).map_err(|error| key_error(text, &error))?;
        file.check(folder, environment)
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

/// The error with its line and key. The library's own text would show the line itself, which may
/// hold a secret that somebody put there by mistake.
fn key_error(text: &str, error: &toml::de::Error) -> ConfigError {
    let start = error.span().map_or(0, |span| span.start);
    let before = text.get(..start).unwrap_or_default();
    // Without the input at hand the error ends in the path of the key.
    let mut bare = error.clone();
    bare.set_input(None);
    let bare = bare.to_string();
    let key = bare
        .trim_end()
        .rsplit_once("\nin `")
        .and_then(|(_, path)| path.strip_suffix('`'))
        .unwrap_or("file");
    ConfigError::Key {
        line: before.matches('\n').count() + 1,
        key: key.to_owned(),
        what: error.message().trim_end().replace('\n', ", "),
    }
}

#[cfg(test)]
mod tests;
