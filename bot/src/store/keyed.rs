//! Which record lies under which key, for every store that keeps keys in order.
//!
//! One prefix a kind of record, numbers big-endian, so that the log and the messages lie in the
//! order in which they came.

use budwood_scheduler::{Event, EventId, MessageId};
use chrono::{DateTime, TimeDelta, Utc};

use super::{Change, Hold, Loaded, Record, StoreError, record};
use crate::words::{
    limits,
    message::{Outbound, Received},
};

/// Facts.
pub(super) const EVENTS: &[u8] = b"e/";
/// Texts in.
pub(super) const RECEIVED: &[u8] = b"i/";
/// Parts of texts in.
const PARTS: &[u8] = b"a/";
/// Texts out.
pub(super) const OUTBOUND: &[u8] = b"o/";
const PERSONS: &[u8] = b"p/";
const PHONES: &[u8] = b"n/";
const GROUPS: &[u8] = b"g/";
const BLOCKS: &[u8] = b"b/";
const STATES: &[u8] = b"s/";
const TALKS: &[u8] = b"t/";
const MATTERS: &[u8] = b"w/";
const PROMISES: &[u8] = b"q/";
/// Sheets that were printed.
const SHEETS: &[u8] = b"r/";
/// The last list that was taken in.
const LOADS: &[u8] = b"k/";
/// What was given to partners.
const GIVENS: &[u8] = b"v/";
/// Outlines of blocks.
const OUTLINES: &[u8] = b"u/";
const ERASURES: &[u8] = b"x/";
const LEDGERS: &[u8] = b"l/";
/// What a store keeps about itself; in no copy of its records.
pub(super) const OWN: &[u8] = b"m/";
const HOLD: &[u8] = b"m/hold";

/// What [`load`] reads whole.
pub(super) const KEPT_IN_MEMORY: [&[u8]; 15] = [
    PERSONS, PHONES, GROUPS, BLOCKS, STATES, TALKS, MATTERS, PROMISES, SHEETS, LOADS, GIVENS,
    OUTLINES, ERASURES, LEDGERS, HOLD,
];

/// A key with its new record, or with none to take it out.
pub(super) type Write = (Vec<u8>, Option<Vec<u8>>);

/// A key and its record, or why it could not be read.
pub(super) type Row = Result<(Vec<u8>, Vec<u8>), StoreError>;

type Rows<'a> = Box<dyn DoubleEndedIterator<Item = Row> + 'a>;

/// The rows of a change; a row without a value takes its key out. Later rows win.
pub(super) fn rows(change: &Change) -> Result<Vec<Write>, StoreError> {
    let mut rows = taken_out(change);
    let mut put = |key: Vec<u8>, value: Vec<u8>| rows.push((key, Some(value)));
    for event in &change.events {
        put(event_key(event.id), record::event(event)?);
    }
    for received in &change.received {
        put(
            long_key(RECEIVED, received.id.0),
            record::received(received)?,
        );
    }
    for part in &change.parts {
        put(long_key(PARTS, part.id.0), record::part(part)?);
    }
    for outbound in &change.outbound {
        put(
            long_key(OUTBOUND, outbound.id.0),
            record::outbound(outbound)?,
        );
    }
    for person in &change.persons {
        put(short_key(PERSONS, person.id.0), record::person(person)?);
    }
    for phone in &change.phones {
        put(text_key(PHONES, &phone.number), record::phone(phone)?);
    }
    for group in &change.groups {
        put(short_key(GROUPS, group.id.0), record::group(group)?);
    }
    for block in &change.blocks {
        put(short_key(BLOCKS, block.id.0), record::block(block)?);
    }
    for (block, state) in &change.states {
        put(short_key(STATES, block.0), record::state(*block, state)?);
    }
    kept(change, &mut put)?;
    match change.hold {
        None => {}
        Some(Hold::Free) => rows.push((HOLD.to_vec(), None)),
        Some(hold) => rows.push((HOLD.to_vec(), Some(record::hold(&hold)?))),
    }
    Ok(rows)
}

/// What is kept beside facts, texts and lists, each under a number or a name of its own.
fn kept(change: &Change, put: &mut impl FnMut(Vec<u8>, Vec<u8>)) -> Result<(), StoreError> {
    for (number, talk) in &change.talks {
        put(text_key(TALKS, number), record::talk(number, talk)?);
    }
    for matter in &change.matters {
        put(long_key(MATTERS, matter.message.0), record::matter(matter)?);
    }
    for promise in &change.promises {
        put(
            long_key(PROMISES, promise.message.0),
            record::promise(promise)?,
        );
    }
    for sheet in &change.sheets {
        put(short_key(SHEETS, sheet.number), record::sheet(sheet)?);
    }
    for load in &change.loads {
        put(text_key(LOADS, "last"), record::load(load)?);
    }
    for given in &change.givens {
        put(short_key(GIVENS, given.number), record::given(given)?);
    }
    for outline in &change.outlines {
        put(
            short_key(OUTLINES, outline.block.0),
            record::outline(outline)?,
        );
    }
    for erasure in &change.erasures {
        put(
            short_key(ERASURES, erasure.person.0),
            record::erasure(erasure)?,
        );
    }
    for ledger in &change.ledgers {
        let month = ledger.month.format("%Y-%m").to_string();
        put(text_key(LEDGERS, &month), record::ledger(ledger)?);
    }
    Ok(())
}

/// The keys that a change takes out.
fn taken_out(change: &Change) -> Vec<Write> {
    let mut rows: Vec<Write> = change
        .gone_phones
        .iter()
        .flat_map(|number| {
            [
                (text_key(PHONES, number), None),
                (text_key(TALKS, number), None),
            ]
        })
        .collect();
    let gone_parts = change.gone_parts.iter();
    rows.extend(gone_parts.map(|id| (long_key(PARTS, id.0), None)));
    let closed = change.closed.iter();
    rows.extend(closed.map(|message| (long_key(MATTERS, message.0), None)));
    let kept = change.kept.iter();
    rows.extend(kept.map(|message| (long_key(PROMISES, message.0), None)));
    let erased = change.erased.iter();
    rows.extend(erased.map(|person| (short_key(ERASURES, person.0), None)));
    rows
}

/// Reads what the engine keeps in memory, given a way to read the rows under a prefix.
pub(super) fn load<'a>(
    under: impl Fn(&'static [u8]) -> Rows<'a>,
    messages: usize,
) -> Result<Loaded, StoreError> {
    let received = newest_received(under(RECEIVED))?;
    let outbound = recent_outbound(under(OUTBOUND), messages)?;
    let parts = all(under(PARTS), record::read_part)?;
    let last_event = under(EVENTS)
        .next_back()
        .transpose()?
        .map(|(key, value)| event(&key, &value))
        .transpose()?;
    let hold = under(HOLD)
        .next()
        .transpose()?
        .map(|(key, value)| record::read_hold(&key, &value))
        .transpose()?
        .unwrap_or_default();
    let latest = last_event
        .as_ref()
        .map(|event| event.at)
        .max(received.as_ref().map(|message| message.at))
        .max(outbound.first().map(|message| message.at))
        .max(parts.last().map(|part| part.at));
    let last_message = received
        .as_ref()
        .map(|message| message.id)
        .max(outbound.first().map(|message| message.id))
        .max(parts.last().map(|part| part.id));
    Ok(Loaded {
        persons: all(under(PERSONS), record::read_person)?,
        phones: all(under(PHONES), record::read_phone)?,
        groups: all(under(GROUPS), record::read_group)?,
        blocks: all(under(BLOCKS), record::read_block)?,
        states: all(under(STATES), record::read_state)?,
        talks: all(under(TALKS), record::read_talk)?,
        matters: all(under(MATTERS), record::read_matter)?,
        promises: all(under(PROMISES), record::read_promise)?,
        sheets: all(under(SHEETS), record::read_sheet)?,
        loads: all(under(LOADS), record::read_load)?,
        givens: all(under(GIVENS), record::read_given)?,
        outlines: all(under(OUTLINES), record::read_outline)?,
        erasures: all(under(ERASURES), record::read_erasure)?,
        ledgers: all(under(LEDGERS), record::read_ledger)?,
        parts,
        outbound,
        last_event: last_event.map(|event| event.id),
        last_message,
        latest,
        hold,
    })
}

/// Under which key a text in lies.
pub(super) fn received_key(id: MessageId) -> Vec<u8> {
    long_key(RECEIVED, id.0)
}

/// One text in from its record.
pub(super) fn received(key: &[u8], value: &[u8]) -> Result<Received, StoreError> {
    record::read_received(key, value)
}

/// The last text in these rows.
pub(super) fn newest_received(
    mut rows: impl DoubleEndedIterator<Item = Row>,
) -> Result<Option<Received>, StoreError> {
    let row = rows.next_back().transpose()?;
    row.map(|(key, value)| record::read_received(&key, &value))
        .transpose()
}

/// One fact from its record.
pub(super) fn event(key: &[u8], value: &[u8]) -> Result<Event, StoreError> {
    record::read_event(key, value)
}

/// Visits every fact in these rows.
pub(super) fn each_event(
    rows: impl Iterator<Item = Row>,
    visit: &mut dyn FnMut(Event),
) -> Result<(), StoreError> {
    for row in rows {
        let (key, value) = row?;
        visit(event(&key, &value)?);
    }
    Ok(())
}

/// Visits every text in these rows.
pub(super) fn each_received(
    rows: impl Iterator<Item = Row>,
    visit: &mut dyn FnMut(Received),
) -> Result<(), StoreError> {
    for row in rows {
        let (key, value) = row?;
        visit(record::read_received(&key, &value)?);
    }
    Ok(())
}

/// Visits every text in these rows that came since then, newest first, and some before it.
pub(super) fn received_since(
    rows: impl DoubleEndedIterator<Item = Row>,
    since: DateTime<Utc>,
    visit: &mut dyn FnMut(Received),
) -> Result<(), StoreError> {
    for (row, visited) in rows.rev().zip(0_usize..) {
        let (key, value) = row?;
        let received = record::read_received(&key, &value)?;
        if received.at < since && visited >= limits::RECENT_MESSAGES {
            break;
        }
        visit(received);
    }
    Ok(())
}

/// The records among these rows, at most so many.
pub(super) fn records(
    rows: impl Iterator<Item = Row>,
    at_most: usize,
) -> Result<Vec<Record>, StoreError> {
    let is_own = |row: &Row| matches!(row, Ok((key, _)) if key.starts_with(OWN));
    rows.filter(|row| !is_own(row))
        .take(at_most)
        .map(|row| row.map(|(key, line)| Record { key, line }))
        .collect()
}

/// The key and the record that a change of one record writes.
pub(super) fn only_row(change: &Change) -> Result<(Vec<u8>, Vec<u8>), StoreError> {
    let (key, value) = rows(change)?.pop().unwrap_or_default();
    Ok((key, value.unwrap_or_default()))
}

/// The number that a key ends with; none counts as zero.
pub(super) fn number(key: &[u8]) -> u64 {
    key.last_chunk().copied().map_or(0, u64::from_be_bytes)
}

/// The key of a fact.
pub(super) fn event_key(id: EventId) -> Vec<u8> {
    long_key(EVENTS, id.0)
}

/// The first key that does not begin with this prefix. All prefixes end in "/".
pub(super) fn after(prefix: &[u8]) -> Vec<u8> {
    let mut end = prefix.to_vec();
    if let Some(last) = end.last_mut() {
        *last = last.saturating_add(1);
    }
    end
}

fn all<T>(
    rows: Rows<'_>,
    read: impl Fn(&[u8], &[u8]) -> Result<T, StoreError>,
) -> Result<Vec<T>, StoreError> {
    rows.map(|row| row.and_then(|(key, value)| read(&key, &value)))
        .collect()
}

/// The newest texts out, and however many there are all that may still wait or get a receipt.
pub(super) fn recent_outbound(
    rows: impl DoubleEndedIterator<Item = Row>,
    number: usize,
) -> Result<Vec<Outbound>, StoreError> {
    let mut recent: Vec<Outbound> = Vec::new();
    for row in rows.rev() {
        let (key, value) = row?;
        let outbound = record::read_outbound(&key, &value)?;
        let newest = recent.first().map_or(outbound.at, |newest| newest.at);
        let is_old = outbound.at < newest - TimeDelta::hours(limits::RECEIPT_HOURS);
        if recent.len() >= number && is_old {
            break;
        }
        recent.push(outbound);
    }
    Ok(recent)
}

fn long_key(prefix: &[u8], id: u64) -> Vec<u8> {
    [prefix, &id.to_be_bytes()].concat()
}

fn short_key(prefix: &[u8], id: u32) -> Vec<u8> {
    [prefix, &id.to_be_bytes()].concat()
}

fn text_key(prefix: &[u8], text: &str) -> Vec<u8> {
    [prefix, text.as_bytes()].concat()
}
