//! The block of a modem in the configuration.

use std::{path::PathBuf, sync::Arc};

use budwood_parser::table::TableError;

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

impl Plan for ModemPlan {
    fn abilities(&self) -> Abilities {
        self.abilities
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
