//! `budwood check`: everything that is wrong with a configuration, at once; with `--try` also what it
//! names on this computer.

use std::{
    io::{ErrorKind, Write},
    net::TcpListener,
    path::Path,
    time::Duration,
};

use anyhow::bail;

use super::page::Page;
use crate::{
    backup,
    service::{
        self,
        clock::Clock,
        config::Config,
        control::Control,
        server::disk::free_bytes,
        setup::{self, config},
    },
    store::{SledStore, Store},
};

/// Writes to the disk of which the middle one is told.
const SYNCS: usize = 21;

/// A disk that takes longer for one write is told of: texts would wait for it.
const SLOW: Duration = Duration::from_millis(100);

const MIB: u64 = 1024 * 1024;

pub(super) fn check(path: &Path, with_records: bool, with_try: bool) -> anyhow::Result<()> {
    let config = config(path)?;
    let mut faults = setup::faults(&config);
    let mut out = Page::open();
    if faults.is_empty() {
        let setup = setup::from_config(&config)?;
        let calendars: Vec<&str> = setup.calendars.keys().map(String::as_str).collect();
        writeln!(out, "configuration: good")?;
        let languages: Vec<&str> = setup.reader.languages().collect();
        writeln!(out, "languages read: {}", languages.join(", "))?;
        for doubt in setup::pack_doubts(&config)? {
            writeln!(out, "doubtful: {doubt}")?;
        }
        writeln!(out, "calendars: {}", calendars.join(", "))?;
    }
    if with_try {
        faults.extend(try_here(&config, &mut out)?);
    }
    if with_records {
        match backup::check_records(&config) {
            Ok(records) => writeln!(out, "records: {records}, all of them can be read")?,
            Err(error) => faults.push(format!("{error:#}")),
        }
    }
    if !faults.is_empty() {
        bail!("{}", faults.join("\n"));
    }
    Ok(())
}

/// Tries each thing by itself, so that all that is wrong is told. Gives what is wrong.
fn try_here(config: &Config, out: &mut impl Write) -> anyhow::Result<Vec<String>> {
    let mut faults = Vec::new();
    let mut tell = |what: &str, found: Result<String, String>| match found {
        Ok(good) => writeln!(out, "{what}: {good}"),
        Err(bad) => {
            faults.push(format!("{what}: {bad}"));
            Ok(())
        }
    };
    let is_running = Control::connect(&config.store.folder).is_ok_and(|found| found.is_some());
    tell("port", port(config, is_running))?;
    for missing in config.missing_secrets(&service::secret, &Clock::System) {
        tell("secrets", Err(missing))?;
    }
    for gateway in config.gateways.iter().filter(|_| !is_running) {
        if let Some(found) = gateway.plan.on_this_computer() {
            tell(&format!("gateway {}", gateway.name), found)?;
        }
    }
    tell("store", store(config, is_running))?;
    tell("disk", disk(config))?;
    Ok(faults)
}

fn port(config: &Config, is_running: bool) -> Result<String, String> {
    let listen = config.web.listen;
    match TcpListener::bind(listen) {
        Ok(_) => Ok(format!("{listen} is free")),
        Err(error) if error.kind() == ErrorKind::AddrInUse && is_running => {
            Ok(format!("{listen} is used by the service that runs"))
        }
        Err(error) => Err(format!("cannot listen on {listen}: {error}")),
    }
}

fn store(config: &Config, is_running: bool) -> Result<String, String> {
    let folder = &config.store.folder;
    if is_running {
        return Ok("the service has it open".to_owned());
    }
    if !SledStore::exists(folder) {
        return Ok(format!("{} is made at the first start", folder.display()));
    }
    let cache = u64::from(config.store.cache_mb) * MIB;
    let opened = SledStore::open(folder, cache).and_then(|store| store.load(0));
    match opened {
        Ok(_) => Ok("it opens".to_owned()),
        Err(error) => Err(format!("{error}")),
    }
}

/// Room, whether it can be written, and how long a write takes until it is on the disk.
fn disk(config: &Config) -> Result<String, String> {
    let folder = &config.store.folder;
    let there = folder.ancestors().find(|part| part.is_dir());
    let place = there.unwrap_or(Path::new("."));
    let shown = place.display();
    let free = free_bytes(place).map_err(|error| format!("{shown}: {error}"))? / MIB;
    let reserve = u64::from(config.store.reserve_mb);
    if free < reserve {
        return Err(format!("{free} MB are free, the reserve is {reserve} MB"));
    }
    let took = sync_time(place).map_err(|error| format!("cannot write in {shown}: {error}"))?;
    let micros = took.as_micros();
    if took > SLOW {
        return Err(format!(
            "a write takes {micros} µs until it is on the disk; texts would wait for it"
        ));
    }
    Ok(format!(
        "{free} MB are free, a write takes {micros} µs until it is on the disk"
    ))
}

/// The middle of several, for one may be late by chance.
fn sync_time(folder: &Path) -> std::io::Result<Duration> {
    let mut file = tempfile::tempfile_in(folder)?;
    let mut took = Vec::with_capacity(SYNCS);
    for _ in 0..SYNCS {
        let begin = Clock::System.steady();
        file.write_all(&[0; 4096])?;
        file.sync_data()?;
        took.push(Clock::System.steady().saturating_sub(begin));
    }
    took.sort_unstable();
    Ok(took.get(SYNCS / 2).copied().unwrap_or_default())
}
