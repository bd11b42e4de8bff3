//! The block of a modem in the configuration.

use std::{
    fs::{OpenOptions, read_dir},
    io::IsTerminal,
    os::unix::fs::OpenOptionsExt,
    path::{Path, PathBuf},
    sync::Arc,
};

use budwood_parser::table::TableError;
use rustix::fs::OFlags;

use super::{Modem, Settings, signs};
use crate::service::{
    clock::Clock,
    gateway::Block,
    port::{Abilities, OpenError, Opened, Plan, Secrets},
    value,
};

/// The speed of most modems; one on USB has none of its own.
const SPEED: u32 = 115_200;

/// A modem as it stands in the configuration.
#[derive(Clone, Debug)]
struct ModemPlan {
    name: String,
    abilities: Abilities,
    device: PathBuf,
    speed: u32,
    wants_receipts: bool,
    calls_count: bool,
    balance_code: Option<String>,
}

/// Reads the block.
pub(crate) fn read(block: &Block<'_>) -> Result<Arc<dyn Plan>, TableError> {
    let table = block.table;
    let calls_count = value::maybe(table, "missed_call", |found| match found {
        "call_me" => Ok(true),
        "ignore" => Ok(false),
        _ => Err(format!(
            "expected \"call_me\" or \"ignore\", found {found:?}"
        )),
    })?;
    let balance_code = value::maybe(table, "balance", |found| {
        let is_code = signs::is_code(found);
        let what = || format!("expected a code such as \"*100#\", found {found:?}");
        is_code.then(|| found.to_owned()).ok_or_else(what)
    })?;
    Ok(Arc::new(ModemPlan {
        name: block.name.to_owned(),
        abilities: Abilities {
            sends: true,
            // A second submission is a second text.
            idempotent: false,
            demo_numbers: table.flag("allow_demo_numbers")?.unwrap_or(false),
        },
        device: block.folder.join(table.need_text("device")?),
        speed: value::whole(table, "speed", 1_200..=4_000_000)?.unwrap_or(SPEED),
        wants_receipts: table.flag("receipts")?.unwrap_or(true),
        calls_count: calls_count.unwrap_or(true),
        balance_code,
    }))
}

/// Where the system names lines by what is plugged in.
const PLUGGED_IN: &str = "/dev/serial/by-id";

/// Opens the line as the service would, and says nothing on it.
fn opens(device: &Path) -> Result<(), String> {
    let flags = OFlags::NOCTTY | OFlags::NONBLOCK;
    let opened = OpenOptions::new()
        .read(true)
        .write(true)
        .custom_flags(i32::try_from(flags.bits()).unwrap_or_default())
        .open(device);
    let line = opened.map_err(|error| format!("cannot be opened: {}", error.kind()))?;
    let is_line = line.is_terminal();
    is_line
        .then_some(())
        .ok_or_else(|| "is no serial line".to_owned())
}

/// What is plugged in, by the names that stay the same.
pub(crate) fn plugged_in() -> Vec<String> {
    let entries = read_dir(PLUGGED_IN).into_iter().flatten();
    let paths = entries.filter_map(|entry| entry.ok()?.path().to_str().map(str::to_owned));
    let mut names: Vec<String> = paths.collect();
    names.sort();
    names
}

/// What could be meant.
fn candidates() -> String {
    let names = plugged_in();
    if names.is_empty() {
        return format!("nothing is plugged in at {PLUGGED_IN}");
    }
    format!("plugged in are {}", names.join(", "))
}

impl Plan for ModemPlan {
    fn abilities(&self) -> Abilities {
        self.abilities
    }

    fn on_this_computer(&self) -> Option<Result<String, String>> {
        let device = self.device.display();
        Some(match opens(&self.device) {
            Ok(()) => Ok(format!("{device} opens")),
            Err(why) => Err(format!("{device} {why}; {}", candidates())),
        })
    }

    fn open(&self, secrets: &Secrets<'_>, clock: &Clock) -> Result<Opened, OpenError> {
        let mut abilities = self.abilities;
        // Only a line that some program holds the other end of is surely no modem.
        let device = std::fs::canonicalize(&self.device);
        abilities.demo_numbers &= device.is_ok_and(|device| device.starts_with("/dev/pts"));
        let settings = Settings::new(
            self.name.clone(),
            self.device.clone(),
            self.speed,
            // A SIM without a PIN needs none.
            secrets.outward().ok(),
        );
        let settings = Settings {
            wants_receipts: self.wants_receipts,
            calls_count: self.calls_count,
            balance_code: self.balance_code.clone(),
            ..settings
        };
        let gateway = Arc::new(Modem::new(settings, abilities, clock.clone()));
        Ok(Opened {
            gateway,
            door: None,
        })
    }
}
