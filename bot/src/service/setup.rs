//! Puts together what the engine works with: language packs, texts, calendars, rules.
//!
//! Everything that ships is built in, so that one program file is enough; an operator's own
//! files come on top. Each is checked here, and a refusal names the file and the key.

use std::{
    collections::BTreeMap,
    fs,
    hash::{BuildHasher, RandomState},
    path::{Path, PathBuf},
    sync::Arc,
};

use anyhow::{Context, bail};
use budwood_parser::{Pack, Reader, languages};
use budwood_scheduler::{Calendar, handbook::calendar::profiles, jobs::nudge::Rules};
use chrono::{DateTime, Utc};

use crate::{
    engine::{Engine, Setup},
    service::config::{Config, NudgesConfig},
    store::SledStore,
    wording::Texts,
    words::{
        ledger::MonthBudget,
        limits,
        ways::{HANDSET, Ways},
    },
};

/// A setup with only what ships, for the demo, the terminal and tests. `secret` makes codes; the
/// same secret gives the same codes.
///
/// # Errors
///
/// When a file that ships is broken, which tests rule out.
pub fn built_in(secret: u64) -> anyhow::Result<Setup> {
    Ok(Setup {
        reader: reader(&[])?,
        texts: Texts::built_in()?,
        calendars: calendars(&[])?,
        rules: Rules::standard(),
        own_numbers: Vec::new(),
        country: String::new(),
        zone: chrono_tz::UTC,
        secret,
        ways: Ways::one(HANDSET, true),
        parts_a_day: None,
        month: MonthBudget::default(),
        operator: None,
    })
}

/// Everything that is wrong with the files that a configuration names, and the languages.
#[must_use]
pub fn faults(config: &Config) -> Vec<String> {
    let mut faults = Vec::new();
    let mut note = |fault: Option<anyhow::Error>| {
        faults.extend(fault.map(|fault| format!("{fault:#}")));
    };
    for file in &config.language_files {
        note(reader(std::slice::from_ref(file)).err());
    }
    for file in &config.calendar_files {
        note(calendars(std::slice::from_ref(file)).err());
    }
    if faults.is_empty() {
        // What only goes wrong together.
        faults.extend(from_config(config).err().map(|fault| format!("{fault:#}")));
    }
    faults
}

/// The setup of a service.
///
/// # Errors
///
/// When a language pack or calendar of the operator cannot be used.
pub fn from_config(config: &Config) -> anyhow::Result<Setup> {
    let texts = Texts::built_in()?;
    let operator = config.operator();
    if let Some(language) = operator.as_ref().and_then(|one| one.language.as_deref())
        && !texts.languages().any(|known| known == language)
    {
        let known: Vec<&str> = texts.languages().collect();
        bail!(
            "operator.language: expected one of: {}; found {language:?}",
            known.join(", ")
        );
    }
    Ok(Setup {
        reader: reader(&config.language_files)?,
        texts,
        calendars: calendars(&config.calendar_files)?,
        rules: rules(&config.nudges),
        own_numbers: config.own_numbers(),
        country: config.line.country.clone(),
        zone: config.line.fallback_zone,
        // Random for each start: a code asked for before a restart is simply asked for again.
        secret: RandomState::new().hash_one(limits::CODE_SALT),
        ways: config.ways(),
        parts_a_day: Some(config.line.parts_a_day),
        month: config.line.month,
        operator,
    })
}

/// Reads and checks a configuration.
///
/// # Errors
///
/// When the file cannot be read or something in it is wrong.
pub fn config(path: &Path) -> anyhow::Result<Config> {
    Config::load(path).with_context(|| format!("configuration {}", path.display()))
}

/// Opens the store of a configuration.
///
/// # Errors
///
/// When it is in use or cannot be read.
pub fn open_engine(config: &Config, now: DateTime<Utc>) -> anyhow::Result<Engine> {
    let cache = u64::from(config.store.cache_mb) * 1024 * 1024;
    let store = SledStore::open(&config.store.folder, cache)
        .with_context(|| format!("store {}", config.store.folder.display()))?;
    let setup = Arc::new(from_config(config)?);
    Ok(Engine::open(setup, Box::new(store), now)?)
}

fn reader(files: &[PathBuf]) -> anyhow::Result<Reader> {
    let mut packs = Vec::new();
    for text in languages::ALL {
        packs.push(Pack::parse(text).context("a built-in language pack")?);
    }
    let own = files
        .iter()
        .map(|file| pack(file))
        .collect::<anyhow::Result<Vec<_>>>()?;
    // Who mends a pack that ships gives it under the same code.
    packs.retain(|shipped: &Pack| own.iter().all(|pack| pack.code() != shipped.code()));
    packs.extend(own);
    match Reader::new(packs) {
        Ok(reader) => Ok(reader),
        Err(faults) => {
            let faults: Vec<String> = faults.iter().map(ToString::to_string).collect();
            bail!(
                "the language packs do not go together:\n{}",
                faults.join("\n")
            )
        }
    }
}

fn pack(file: &Path) -> anyhow::Result<Pack> {
    Pack::parse(&read_text(file)?).with_context(|| format!("language pack {}", file.display()))
}

/// What the writer of a language pack of the operator should look at, a line each. None of it
/// keeps the service from starting.
///
/// # Errors
///
/// When a pack cannot be used.
pub fn pack_doubts(config: &Config) -> anyhow::Result<Vec<String>> {
    let mut doubts = Vec::new();
    for file in &config.language_files {
        let found = pack(file)?.doubts();
        let told = found
            .iter()
            .map(|doubt| format!("{}: {doubt}", file.display()));
        doubts.extend(told);
    }
    Ok(doubts)
}

fn calendars(files: &[PathBuf]) -> anyhow::Result<BTreeMap<String, Calendar>> {
    let mut calendars = BTreeMap::new();
    for (name, text) in profiles::ALL {
        let calendar = Calendar::parse(text).with_context(|| format!("calendar {name}"))?;
        calendars.insert((*name).to_owned(), calendar);
    }
    for file in files {
        let calendar = Calendar::parse(&read_text(file)?)
            .with_context(|| format!("calendar {}", file.display()))?;
        calendars.insert(calendar.name.clone(), calendar);
    }
    Ok(calendars)
}

fn rules(set: &NudgesConfig) -> Rules {
    let standard = Rules::standard();
    Rules {
        quiet_from: set.quiet_from.unwrap_or(standard.quiet_from),
        quiet_until: set.quiet_until.unwrap_or(standard.quiet_until),
        window_from: set.window_from.unwrap_or(standard.window_from),
        window_until: set.window_until.unwrap_or(standard.window_until),
        welcomes_a_day: set.welcomes_a_day.unwrap_or(standard.welcomes_a_day),
        ..standard
    }
}

/// Reads a text that people write, if it is UTF-8 and not absurdly large.
///
/// # Errors
///
/// When it cannot be read, is too large, or is not UTF-8.
pub fn read_text(file: &Path) -> anyhow::Result<String> {
    let bytes = read_bytes(file)?;
    String::from_utf8(bytes).with_context(|| format!("{} is not UTF-8", file.display()))
}

/// Reads a file that people write, if it is not absurdly large.
///
/// # Errors
///
/// When it cannot be read or is too large.
pub fn read_bytes(file: &Path) -> anyhow::Result<Vec<u8>> {
    let shown = file.display();
    let size = fs::metadata(file)
        .with_context(|| format!("cannot read {shown}"))?
        .len();
    if size > limits::FILE_BYTES_MAX {
        bail!(
            "{shown} has {size} bytes; at most {} are read",
            limits::FILE_BYTES_MAX
        );
    }
    fs::read(file).with_context(|| format!("cannot read {shown}"))
}
