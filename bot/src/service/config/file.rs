//! The file as it is written: tables and keys, and how they become a [`super::Config`].
//!
//! Each table is read by itself, so that the faults of several are told at once.

use std::path::{Path, PathBuf};

use budwood_parser::table::{Table, TableError};
use chrono::NaiveTime;

use super::{
    Config, GatewayConfig, LineConfig, LogConfig, NudgesConfig, OfficeConfig, OperatorConfig,
    StoreConfig, WebConfig,
};
use crate::{
    service::{
        certificate::Certificate,
        gateway::{self, Block},
        telemetry::LogFormat,
        value,
    },
    words::{
        ledger::MonthBudget,
        limits,
        ways::{Ration, Route},
    },
};

/// Megabytes of the store's cache: enough for the hot records of 100,000 blocks.
const CACHE_MB: u32 = 32;
/// Megabytes kept free on the disk: the store writes a second copy of its index now and then.
const RESERVE_MB: u32 = 256;
/// Worker threads of the HTTP side; they only read requests and wait.
const WORKERS: u32 = 2;
/// Texts on their way at once; small providers take no more.
const PARALLEL: u32 = 4;
/// Parts in a day: what 5,000 farmers and their advisers need on a busy one.
const PARTS_A_DAY: u32 = 20_000;
/// When the operator is told how the service is: before the day's work.
const MORNING: NaiveTime = match NaiveTime::from_hms_opt(7, 0, 0) {
    Some(time) => time,
    None => NaiveTime::MIN,
};
const LOG_FILTER: &str = "info";

/// Faults found so far.
#[derive(Default)]
struct Faults(Vec<TableError>);

impl Faults {
    /// What was read; a fault is kept.
    fn of<T>(&mut self, read: Result<T, TableError>) -> Option<T> {
        read.map_err(|fault| self.0.push(fault)).ok()
    }
}

/// Reads the file; paths in it start at `folder`.
pub(super) fn read(file: &Table<'_>, folder: &Path) -> Result<Config, Vec<TableError>> {
    let mut faults = Faults::default();
    let old = refuse_old_tables(file, &mut faults);
    let store = faults.of(file.need_table("store", |table| store(table, folder)));
    let web = faults.of(file.need_table("web", web));
    let office = faults.of(file.table("office", |table| office(table, folder)));
    let gateways = faults.of(file.tables("gateway", |table| gateway(table, folder)));
    let routes = faults.of(file.tables("route", route));
    let line = faults.of(file.need_table("line", line));
    let operator = faults.of(file.table("operator", operator));
    let nudges = faults.of(file.table("nudges", nudges));
    let languages = faults.of(file.table("languages", |table| files(table, folder)));
    let calendars = faults.of(file.table("calendars", |table| files(table, folder)));
    let log = faults.of(file.table("log", log));
    if let (Some(gateways), Some(routes)) = (&gateways, &routes) {
        faults.0.extend(together(file, gateways, routes));
        let of_line = line.as_ref().map(|line| priced(file, gateways, line));
        faults.0.extend(of_line.into_iter().flatten());
    }
    let unknown = file.take_unknown().into_iter();
    faults
        .0
        .extend(unknown.filter(|fault| !old.contains(&fault.path.as_str())));
    let read = move || {
        Some(Config {
            store: store?,
            web: web?,
            office: office?,
            gateways: gateways?,
            routes: routes?,
            line: line?,
            operator: operator?.flatten(),
            nudges: nudges?.unwrap_or_default(),
            language_files: languages?.unwrap_or_default(),
            calendar_files: calendars?.unwrap_or_default(),
            log: log?.unwrap_or_else(|| LogConfig {
                filter: LOG_FILTER.to_owned(),
                format: LogFormat::default(),
            }),
        })
    };
    match read() {
        Some(config) if faults.0.is_empty() => Ok(config),
        Some(_) | None => Err(faults.0),
    }
}

/// The tables of the time when there was one gateway.
fn refuse_old_tables(file: &Table<'_>, faults: &mut Faults) -> Vec<&'static str> {
    let mut found = Vec::new();
    for (old, now) in [("inbound", "in"), ("outbound", "out")] {
        if file.keys().contains(&old) {
            found.push(old);
            let what = format!(
                "is written so now: a block [[gateway]] with name and kind = \"oneapi\", and below \
                 it [gateway.{now}] with the keys that stood here; see deploy/budwood.toml"
            );
            faults.0.push(file.error(old, what));
        }
    }
    found
}

fn store(table: &Table<'_>, folder: &Path) -> Result<StoreConfig, TableError> {
    let store = table.need_text("folder")?;
    if store.is_empty() {
        return Err(table.error("folder", "expected a folder, found nothing"));
    }
    Ok(StoreConfig {
        folder: folder.join(store),
        cache_mb: value::whole(table, "cache_mb", 16..=4096)?.unwrap_or(CACHE_MB),
        reserve_mb: value::whole(table, "reserve_mb", 16..=1_048_576)?.unwrap_or(RESERVE_MB),
    })
}

fn web(table: &Table<'_>) -> Result<WebConfig, TableError> {
    let workers = value::whole(table, "workers", 1..=64)?.unwrap_or(WORKERS);
    Ok(WebConfig {
        listen: value::need(table, "listen", value::listen)?,
        workers: workers as usize,
    })
}

/// What is not on this computer alone must be encrypted, and people must know its address.
fn office(table: &Table<'_>, folder: &Path) -> Result<OfficeConfig, TableError> {
    let listen = value::need(table, "listen", value::listen)?;
    let address = value::maybe(table, "address", value::address)?;
    let certificate = match (table.text("certificate")?, table.text("key")?) {
        (Some(certificate), Some(key)) => Some(Certificate {
            certificate: folder.join(certificate),
            key: folder.join(key),
        }),
        (None, None) => None,
        (Some(_), None) => return Err(table.error("key", "is needed beside office.certificate")),
        (None, Some(_)) => return Err(table.error("certificate", "is needed beside office.key")),
    };
    if !listen.ip().is_loopback() && certificate.is_none() {
        let what = "expected an address of this computer such as \"127.0.0.1:8471\": codes and \
                    names would go over an open line; with office.certificate any address may stand here";
        return Err(table.error("listen", what));
    }
    if listen.ip().is_unspecified() && address.is_none() {
        let what = "is needed where office.listen is every address of this computer";
        return Err(table.error("address", what));
    }
    Ok(OfficeConfig {
        listen,
        address,
        certificate,
    })
}

fn gateway(table: &Table<'_>, folder: &Path) -> Result<GatewayConfig, TableError> {
    let name = value::need(table, "name", value::gateway_name)?;
    let kind = table.need_text("kind")?;
    let Some(read) = gateway::kind(kind) else {
        let known: Vec<&str> = gateway::KINDS.iter().map(|(name, _)| *name).collect();
        let what = format!("expected one of: {}; found {kind:?}", known.join(", "));
        return Err(table.error("kind", what));
    };
    let parallel = value::whole(table, "parallel", 1..=64)?.unwrap_or(PARALLEL);
    let own_number = value::maybe(table, "own_number", value::own_number)?;
    let price_micro = value::money(table, "price_part")?;
    let ration = Ration {
        a_minute: value::whole(table, "parts_a_minute", 1..=60_000)?,
        a_day: value::whole(table, "parts_a_day", 10..=10_000_000)?,
    };
    let plan = read(&Block {
        table,
        name: &name,
        folder,
    })?;
    Ok(GatewayConfig {
        name,
        parallel: parallel as usize,
        own_number,
        price_micro,
        ration,
        plan,
    })
}

fn route(table: &Table<'_>) -> Result<Route, TableError> {
    let texts = |key: &str| -> Result<Vec<String>, TableError> {
        Ok(table.texts(key)?.into_iter().map(str::to_owned).collect())
    };
    let prefixes = texts("prefixes")?;
    for prefix in &prefixes {
        value::prefix(prefix).map_err(|wrong| table.error("prefixes", wrong))?;
    }
    let gateways = texts("use")?;
    if gateways.is_empty() {
        return Err(table.error("use", "expected the names of gateways, found none"));
    }
    Ok(Route { prefixes, gateways })
}

/// What does not go together.
fn together(file: &Table<'_>, gateways: &[GatewayConfig], routes: &[Route]) -> Vec<TableError> {
    let mut faults = Vec::new();
    if gateways.len() > limits::GATEWAYS_MAX {
        let what = format!("expected at most {}", limits::GATEWAYS_MAX);
        faults.push(file.error("gateway", what));
    }
    for (index, gateway) in gateways.iter().enumerate() {
        let before = gateways.iter().take(index);
        if before.clone().any(|before| before.name == gateway.name) {
            let key = format!("gateway[{index}].name");
            faults.push(file.error(&key, "is the name of another gateway too"));
        }
    }
    for (index, route) in routes.iter().enumerate() {
        for name in &route.gateways {
            let mut of_name = gateways.iter().filter(|gateway| gateway.name == *name);
            if !of_name.any(|gateway| gateway.plan.abilities().sends) {
                let what = format!("there is no gateway {name:?} that sends");
                faults.push(file.error(&format!("route[{index}].use"), what));
            }
        }
    }
    faults
}

/// A month's money can be counted only where every part has a price.
fn priced(file: &Table<'_>, gateways: &[GatewayConfig], line: &LineConfig) -> Vec<TableError> {
    let sending = gateways.iter().zip(0_usize..);
    let unpriced = sending.filter(|(gateway, _)| {
        let sends = gateway.plan.abilities().sends;
        line.month.micro.is_some() && sends && gateway.price_micro.is_none()
    });
    let fault = |(_, index)| {
        let key = format!("gateway[{index}].price_part");
        file.error(&key, "is needed where line.money_a_month is set")
    };
    unpriced.map(fault).collect()
}

fn line(table: &Table<'_>) -> Result<LineConfig, TableError> {
    Ok(LineConfig {
        name: value::need(table, "name", value::name)?,
        own_number: value::need(table, "own_number", value::own_number)?,
        country: value::need(table, "country", value::country)?,
        fallback_zone: value::need(table, "fallback_zone", value::zone)?,
        parts_a_day: value::whole(table, "parts_a_day", 10..=10_000_000)?.unwrap_or(PARTS_A_DAY),
        month: MonthBudget {
            parts: value::whole(table, "parts_a_month", 10..=100_000_000)?.map(u64::from),
            micro: value::money(table, "money_a_month")?,
        },
    })
}

/// Without a phone nobody is told.
fn operator(table: &Table<'_>) -> Result<Option<OperatorConfig>, TableError> {
    let phone = value::maybe(table, "phone", value::phone)?;
    let language = table.text("language")?.map(str::to_owned);
    let morning = value::maybe(table, "morning", value::time_of_day)?;
    Ok(phone.map(|phone| OperatorConfig {
        phone,
        language,
        morning: morning.unwrap_or(MORNING),
    }))
}

fn nudges(table: &Table<'_>) -> Result<NudgesConfig, TableError> {
    let time = |key: &str| value::maybe(table, key, value::time_of_day);
    let nudges = NudgesConfig {
        quiet_from: time("quiet_from")?,
        quiet_until: time("quiet_until")?,
        window_from: time("window_from")?,
        window_until: time("window_until")?,
        welcomes_a_day: value::whole(table, "welcomes_a_day", 0..=100_000)?,
    };
    if let (Some(from), Some(until)) = (nudges.window_from, nudges.window_until)
        && from >= until
    {
        return Err(table.error("window_until", "expected a time after nudges.window_from"));
    }
    Ok(nudges)
}

fn log(table: &Table<'_>) -> Result<LogConfig, TableError> {
    let filter = value::maybe(table, "filter", value::filter)?;
    let format = value::maybe(table, "format", value::log_format)?;
    Ok(LogConfig {
        filter: filter.unwrap_or_else(|| LOG_FILTER.to_owned()),
        format: format.unwrap_or_default(),
    })
}

fn files(table: &Table<'_>, folder: &Path) -> Result<Vec<PathBuf>, TableError> {
    let files = table.texts("files")?;
    Ok(files.into_iter().map(|file| folder.join(file)).collect())
}
