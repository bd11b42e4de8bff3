//! The block of an account in the configuration.

use std::{path::PathBuf, sync::Arc, time::Duration};

use budwood_parser::table::{Table, TableError};

use super::{
    Settings, Smpp,
    pdu::Address,
    receipt::ReceiptIds,
    text::{DefaultAlphabet, LongTexts},
    tls::Tls,
};
use crate::service::{
    clock::Clock,
    gateway::Block,
    port::{Abilities, OpenError, Opened, Plan, Secrets},
    value,
};

/// Texts that wait for the centre's answer at once.
const WINDOW: u32 = 10;
/// Seconds of silence after which the line is tested.
const ENQUIRE_SECS: u32 = 20;
/// Seconds that an answer may take.
const TIMEOUT_SECS: u32 = 30;

/// An account as it stands in the configuration.
#[derive(Clone, Debug)]
struct SmppPlan {
    name: String,
    abilities: Abilities,
    address: String,
    /// The name that the certificate must have, and whose it is if it is not the system's.
    tls: Option<(String, Option<PathBuf>)>,
    system_id: String,
    system_type: String,
    is_pair: bool,
    source: Address,
    alphabet: DefaultAlphabet,
    long: LongTexts,
    receipt_ids: ReceiptIds,
    wants_receipts: bool,
    window: u32,
    enquire_secs: u32,
    timeout_secs: u32,
}

/// Reads the block.
pub(crate) fn read(block: &Block<'_>) -> Result<Arc<dyn Plan>, TableError> {
    let table = block.table;
    let (address, host) = value::need(table, "address", address)?;
    let is_here = host == "localhost"
        || host
            .parse()
            .is_ok_and(|ip: std::net::IpAddr| ip.is_loopback());
    let demo_numbers = table.flag("allow_demo_numbers")?.unwrap_or(false);
    if demo_numbers && !is_here {
        return Err(table.error(
            "allow_demo_numbers",
            "is only for a stand-in on this computer; address is elsewhere",
        ));
    }
    let authority = table.text("authority")?.map(|file| block.folder.join(file));
    let tls = match table.flag("tls")?.unwrap_or(false) {
        true => Some((host, authority)),
        false if authority.is_some() => {
            return Err(table.error("authority", "is only for tls = true"));
        }
        false => None,
    };
    let choice = |key, choices| choice(table, key, choices);
    Ok(Arc::new(SmppPlan {
        name: block.name.to_owned(),
        abilities: Abilities {
            sends: true,
            // A second submission is a second text for every centre.
            idempotent: false,
            demo_numbers,
        },
        address,
        tls,
        system_id: value::need(table, "system_id", |found| short(found, 15))?,
        system_type: value::maybe(table, "system_type", |found| short(found, 12))?
            .unwrap_or_default(),
        is_pair: choice("bind", &["transceiver", "transmitter and receiver"])? == 1,
        source: table.need_table("source", source)?,
        alphabet: match choice("default_alphabet", &["gsm7", "latin1", "ascii"])? {
            0 => DefaultAlphabet::Gsm7,
            1 => DefaultAlphabet::Latin1,
            _ => DefaultAlphabet::Ascii,
        },
        long: match choice("long_texts", &["udh", "sar", "payload"])? {
            0 => LongTexts::Header,
            1 => LongTexts::Sar,
            _ => LongTexts::Payload,
        },
        receipt_ids: match choice("receipt_ids", &["same", "decimal", "hex"])? {
            0 => ReceiptIds::Same,
            1 => ReceiptIds::Decimal,
            _ => ReceiptIds::Hex,
        },
        wants_receipts: table.flag("receipts")?.unwrap_or(true),
        window: value::whole(table, "window", 1..=100)?.unwrap_or(WINDOW),
        enquire_secs: value::whole(table, "enquire_secs", 1..=3600)?.unwrap_or(ENQUIRE_SECS),
        timeout_secs: value::whole(table, "timeout_secs", 1..=300)?.unwrap_or(TIMEOUT_SECS),
    }))
}

/// Which of these words stands there; the first where none does.
fn choice(table: &Table<'_>, key: &str, choices: &[&str]) -> Result<usize, TableError> {
    let Some(found) = table.text(key)? else {
        return Ok(0);
    };
    choices
        .iter()
        .position(|choice| *choice == found)
        .ok_or_else(|| {
            let what = format!("expected one of: {}; found {found:?}", choices.join(", "));
            table.error(key, what)
        })
}

fn source(table: &Table<'_>) -> Result<Address, TableError> {
    let octet = |key| -> Result<u8, TableError> {
        let found = value::whole(table, key, 0..=18)?.unwrap_or(0);
        Ok(u8::try_from(found).unwrap_or_default())
    };
    Ok(Address {
        digits: value::need(table, "address", |found| short(found, 20))?,
        ton: octet("ton")?,
        npi: octet("npi")?,
    })
}

fn short(found: &str, most: usize) -> Result<String, String> {
    let is_right =
        (1..=most).contains(&found.len()) && found.bytes().all(|octet| octet.is_ascii_graphic());
    if is_right {
        Ok(found.to_owned())
    } else {
        Err(format!(
            "expected 1 to {most} letters and digits without spaces, found {found:?}"
        ))
    }
}

/// Host and port, and the host alone.
fn address(found: &str) -> Result<(String, String), String> {
    let wrong =
        || format!("expected a name and a port such as \"smsc.example:2775\", found {found:?}");
    let (host, port) = found.rsplit_once(':').ok_or_else(wrong)?;
    let is_port = port.parse::<u16>().is_ok_and(|port| port != 0);
    let bare = host.trim_start_matches('[').trim_end_matches(']');
    if !is_port || bare.is_empty() || bare.contains(char::is_whitespace) {
        return Err(wrong());
    }
    Ok((found.to_owned(), bare.to_owned()))
}

impl Plan for SmppPlan {
    fn abilities(&self) -> Abilities {
        self.abilities
    }

    fn open(&self, secrets: &Secrets<'_>, clock: &Clock) -> Result<Opened, OpenError> {
        let no_tls = |error| OpenError::SetUp {
            gateway: self.name.clone(),
            source: Box::new(error),
        };
        let tls = match &self.tls {
            Some((host, authority)) => Some(Tls::new(host, authority.as_deref()).map_err(no_tls)?),
            None => None,
        };
        let settings = Settings {
            name: self.name.clone(),
            abilities: self.abilities,
            address: self.address.clone(),
            tls,
            system_id: self.system_id.clone(),
            password: secrets.outward()?,
            system_type: self.system_type.clone(),
            is_pair: self.is_pair,
            source: self.source.clone(),
            alphabet: self.alphabet,
            long: self.long,
            receipt_ids: self.receipt_ids,
            wants_receipts: self.wants_receipts,
            window: self.window as usize,
            enquire_secs: self.enquire_secs,
            timeout: Duration::from_secs(self.timeout_secs.into()),
        };
        let gateway = Arc::new(Smpp::new(settings, clock.clone()));
        Ok(Opened {
            gateway,
            door: None,
        })
    }
}
