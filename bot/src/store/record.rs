//! The only place where a storage format lives: JSON in a versioned envelope.
//!
//! `{"v":1,"kind":"event","body":{…}}`. Each record has a type of its own here, apart from the
//! domain type, so that a change of the domain cannot change the format unseen. A version or kind
//! that is not known is an error, never skipped. Old versions stay readable for good; each kind has
//! its own count of versions.

mod book;
mod details;
mod directory;
mod erasure;
mod event;
mod given;
mod hold;
mod instant;
mod ledger;
mod load;
mod matter;
mod message;
mod passing;
mod promise;
mod question;
mod sheet;
mod state;
mod talk;

use budwood_scheduler::{Block, BlockId, BlockState, Event, Group, Person, Phone};
use serde::{Deserialize, Serialize, de::DeserializeOwned};
use serde_json::value::RawValue;

use super::{Change, Hold, StoreError};
use crate::words::{
    erasure::Erasure,
    given::Given,
    ledger::Ledger,
    load::Load,
    matter::Matter,
    message::{Outbound, Received, ReceivedPart, Talk},
    outline::TakenOutline,
    printed::Printed,
    promise::Promise,
};

/// The newest version of any kind.
pub(super) const NEWEST: u32 = 2;

/// The version of a kind that is written.
fn version_of(kind: &str) -> u32 {
    match kind {
        // The second knows gateways: which one has a text, what it calls it, how it came back.
        "received" | "outbound" | "talk" => NEWEST,
        _ => 1,
    }
}

#[derive(Serialize)]
struct Out<'a, T> {
    v: u32,
    kind: &'a str,
    body: &'a T,
}

#[derive(Deserialize)]
struct In<'a> {
    v: u32,
    kind: String,
    #[serde(borrow)]
    body: &'a RawValue,
}

/// Why a stored value is not one of ours.
type Fault = String;

fn write<T: Serialize>(kind: &str, body: &T) -> Result<Vec<u8>, StoreError> {
    serde_json::to_vec(&Out {
        v: version_of(kind),
        kind,
        body,
    })
    .map_err(|error| StoreError::Record {
        key: kind.to_owned(),
        what: error.to_string(),
    })
}

fn read<R: DeserializeOwned, T>(
    kind: &str,
    (key, value): (&[u8], &[u8]),
    convert: impl FnOnce(R) -> Result<T, Fault>,
) -> Result<T, StoreError> {
    let (_, body) = open(kind, key, value)?;
    convert_body(kind, key, body, convert)
}

/// The version and the body of a record of this kind, whatever known version it has.
fn open<'a>(kind: &str, key: &[u8], value: &'a [u8]) -> Result<(u32, &'a str), StoreError> {
    let fault = |what: String| StoreError::Record {
        key: readable(key),
        what,
    };
    let envelope: In<'_> =
        serde_json::from_slice(value).map_err(|error| fault(format!("not a record: {error}")))?;
    let newest = version_of(kind);
    if !(1..=newest).contains(&envelope.v) || envelope.kind != kind {
        let known = match newest {
            1 => "1".to_owned(),
            newest => format!("1 to {newest}"),
        };
        return Err(fault(format!(
            "expected {kind} of version {known}, found {} of version {}",
            envelope.kind, envelope.v
        )));
    }
    Ok((envelope.v, envelope.body.get()))
}

fn convert_body<R: DeserializeOwned, T>(
    kind: &str,
    key: &[u8],
    body: &str,
    convert: impl FnOnce(R) -> Result<T, Fault>,
) -> Result<T, StoreError> {
    let fault = |what: String| StoreError::Record {
        key: readable(key),
        what,
    };
    let body: R =
        serde_json::from_str(body).map_err(|error| fault(format!("not a {kind}: {error}")))?;
    convert(body).map_err(fault)
}

fn readable(key: &[u8]) -> String {
    key.escape_ascii().to_string()
}

fn name_fault(what: &str, name: &str) -> Fault {
    format!("{what} {name:?} is not known")
}

macro_rules! record {
    ($kind:literal, $write:ident, $read:ident, $domain:ty, $stored:ty) => {
        pub(super) fn $write(value: &$domain) -> Result<Vec<u8>, StoreError> {
            write($kind, &<$stored>::from(value))
        }

        pub(super) fn $read(key: &[u8], value: &[u8]) -> Result<$domain, StoreError> {
            read($kind, (key, value), |stored: $stored| stored.try_into())
        }
    };
}

record!("event", event, read_event, Event, event::StoredEvent);
record!(
    "person",
    person,
    read_person,
    Person,
    directory::StoredPerson
);
record!("phone", phone, read_phone, Phone, directory::StoredPhone);
record!("hold", hold, read_hold, Hold, hold::StoredHold);
record!("group", group, read_group, Group, directory::StoredGroup);
record!("block", block, read_block, Block, directory::StoredBlock);
record!(
    "received",
    received,
    read_received,
    Received,
    message::StoredReceived
);

record!("part", part, read_part, ReceivedPart, message::StoredPart);
record!("ledger", ledger, read_ledger, Ledger, ledger::StoredLedger);
record!("matter", matter, read_matter, Matter, matter::StoredMatter);
record!(
    "promise",
    promise,
    read_promise,
    Promise,
    promise::StoredPromise
);
record!("given", given, read_given, Given, given::StoredGiven);
record!(
    "outline",
    outline,
    read_outline,
    TakenOutline,
    given::StoredOutline
);
record!("load", load, read_load, Load, load::StoredLoad);
record!("sheet", sheet, read_sheet, Printed, sheet::StoredSheet);
record!(
    "erasure",
    erasure,
    read_erasure,
    Erasure,
    erasure::StoredErasure
);

pub(super) fn outbound(value: &Outbound) -> Result<Vec<u8>, StoreError> {
    write("outbound", &message::StoredOutbound::from(value))
}

pub(super) fn read_outbound(key: &[u8], value: &[u8]) -> Result<Outbound, StoreError> {
    match open("outbound", key, value)? {
        (1, body) => convert_body("outbound", key, body, message::v1::StoredOutbound::open),
        (_, body) => convert_body("outbound", key, body, message::StoredOutbound::open),
    }
}

pub(super) fn state(block: BlockId, value: &BlockState) -> Result<Vec<u8>, StoreError> {
    write("state", &state::StoredState::new(block, value))
}

pub(super) fn read_state(key: &[u8], value: &[u8]) -> Result<(BlockId, BlockState), StoreError> {
    read("state", (key, value), state::StoredState::open)
}

pub(super) fn talk(number: &str, value: &Talk) -> Result<Vec<u8>, StoreError> {
    write("talk", &talk::StoredTalk::new(number, value))
}

pub(super) fn read_talk(key: &[u8], value: &[u8]) -> Result<(String, Talk), StoreError> {
    read("talk", (key, value), talk::StoredTalk::open)
}

/// Reads a record of any kind into a change.
pub(super) fn read_into(value: &[u8], into: &mut Change) -> Result<(), StoreError> {
    let key = b"in the file";
    let envelope: In<'_> = serde_json::from_slice(value).map_err(|error| StoreError::Record {
        key: readable(key),
        what: format!("not a record: {error}"),
    })?;
    match envelope.kind.as_str() {
        "event" => into.events.push(read_event(key, value)?),
        "person" => into.persons.push(read_person(key, value)?),
        "phone" => into.phones.push(read_phone(key, value)?),
        "group" => into.groups.push(read_group(key, value)?),
        "block" => into.blocks.push(read_block(key, value)?),
        "part" => into.parts.push(read_part(key, value)?),
        "received" => into.received.push(read_received(key, value)?),
        "outbound" => into.outbound.push(read_outbound(key, value)?),
        "state" => into.states.push(read_state(key, value)?),
        "talk" => into.talks.push(read_talk(key, value)?),
        "erasure" => into.erasures.push(read_erasure(key, value)?),
        "ledger" => into.ledgers.push(read_ledger(key, value)?),
        "matter" => into.matters.push(read_matter(key, value)?),
        "promise" => into.promises.push(read_promise(key, value)?),
        "given" => into.givens.push(read_given(key, value)?),
        "outline" => into.outlines.push(read_outline(key, value)?),
        "load" => into.loads.push(read_load(key, value)?),
        "sheet" => into.sheets.push(read_sheet(key, value)?),
        other => {
            return Err(StoreError::Record {
                key: readable(key),
                what: name_fault("kind", other),
            });
        }
    }
    Ok(())
}
