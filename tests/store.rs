//! The contract of a store, run on each of them: what was committed is there, in its order, after
//! reopening; what is not ours is refused, never skipped.

mod rich;

pub(crate) use self::rich::change as rich_change;

use std::path::Path;

use budwood::{
    store::{Change, Loaded, SledStore, Store, StoreError},
    words::message::Talk,
};
use budwood_scheduler::{Event, EventId, MessageId, Phone};

use crate::fixture::{self, LastingStore};

/// The smallest cache that the configuration allows.
const CACHE_BYTES: u64 = 16 * 1024 * 1024;
/// More messages than any test has.
const MANY: usize = 1_000;

fn open_sled(folder: &Path) -> Result<SledStore, StoreError> {
    SledStore::open(folder, CACHE_BYTES)
}

/// Runs a check on every store; `open` opens the same one again and again.
fn on_every_store(check: impl Fn(&dyn Fn() -> Box<dyn Store>)) {
    let lasting = LastingStore::default();
    check(&|| Box::new(lasting.clone()));
    let folder = tempfile::tempdir().expect("a folder");
    check(&|| Box::new(open_sled(folder.path()).expect("a store")));
}

/// What the engine must find after this change in an empty store.
fn expected(change: &Change) -> Loaded {
    let mut received = change.received.clone();
    received.sort_by_key(|message| std::cmp::Reverse(message.id));
    let mut outbound = change.outbound.clone();
    outbound.sort_by_key(|message| std::cmp::Reverse(message.id));
    let last_message = received
        .iter()
        .map(|message| message.id)
        .chain(outbound.iter().map(|message| message.id))
        .max();
    let latest = change
        .events
        .last()
        .map(|event| event.at)
        .max(received.first().map(|message| message.at))
        .max(outbound.first().map(|message| message.at));
    Loaded {
        persons: change.persons.clone(),
        phones: change.phones.clone(),
        groups: change.groups.clone(),
        blocks: change.blocks.clone(),
        states: change.states.clone(),
        talks: change.talks.clone(),
        parts: change.parts.clone(),
        matters: change.matters.clone(),
        promises: change.promises.clone(),
        loads: change.loads.clone(),
        givens: change.givens.clone(),
        outlines: change.outlines.clone(),
        sheets: change.sheets.clone(),
        erasures: change.erasures.clone(),
        ledgers: change.ledgers.clone(),
        outbound,
        last_event: change.events.iter().map(|event| event.id).max(),
        last_message,
        latest,
        hold: change.hold.unwrap_or_default(),
    }
}

#[test]
fn what_was_committed_is_there_after_reopening() {
    on_every_store(|open| {
        let change = rich::change();
        let mut store = open();
        assert_eq!(store.load(MANY).unwrap(), Loaded::default());
        store.commit(&change).unwrap();
        for _ in 0..2 {
            assert_eq!(store.load(MANY).unwrap(), expected(&change));
            assert_eq!(fixture::events(store.as_ref()), change.events);
            assert_eq!(fixture::received(store.as_ref()), change.received);
            for event in &change.events {
                assert_eq!(store.event(event.id).unwrap().as_ref(), Some(event));
            }
            assert_eq!(store.event(EventId(9_999)).unwrap(), None);
            drop(store);
            store = open();
        }
    });
}

#[test]
fn a_later_record_takes_the_place_of_an_earlier_one() {
    on_every_store(|open| {
        let first = rich::change();
        let store = open();
        store.commit(&first).unwrap();
        let mut person = first.persons.first().unwrap().clone();
        person.name = "P1".to_owned();
        let gone = first.phones.first().unwrap().number.clone();
        let (quiet, _) = first.talks.first().unwrap().clone();
        let second = Change {
            persons: vec![person.clone()],
            gone_phones: vec![gone.clone()],
            talks: vec![(quiet.clone(), Talk::default())],
            ..Change::default()
        };
        store.commit(&second).unwrap();
        drop(store);
        let loaded = open().load(MANY).unwrap();
        assert_eq!(loaded.persons.first(), Some(&person));
        assert_eq!(loaded.persons.len(), first.persons.len());
        assert!(loaded.phones.iter().all(|phone| phone.number != gone));
        assert_eq!(loaded.phones.len(), first.phones.len() - 1);
        assert_eq!(loaded.talks.first(), Some(&(quiet, Talk::default())));
        assert_eq!(loaded.last_event, expected(&first).last_event);
    });
}

/// Numbers as text would put 10 before 9.
#[test]
fn facts_and_messages_lie_in_the_order_in_which_they_came() {
    on_every_store(|open| {
        let rich = rich::change();
        let event = rich.events.first().unwrap();
        let received = rich.received.first().unwrap();
        let ids: Vec<u64> = [1, 2, 9, 10, 99, 100, 255, 256, 257, 65_535, 65_536, 1 << 40].into();
        let store = open();
        for id in ids.iter().rev() {
            let change = Change {
                events: vec![Event {
                    id: EventId(*id),
                    ..event.clone()
                }],
                received: vec![budwood::words::message::Received {
                    id: MessageId(*id),
                    ..received.clone()
                }],
                ..Change::default()
            };
            store.commit(&change).unwrap();
        }
        let found: Vec<u64> = fixture::events(store.as_ref())
            .iter()
            .map(|e| e.id.0)
            .collect();
        assert_eq!(found, ids);
        let mut newest: Vec<u64> = Vec::new();
        let since = received.at;
        let mut visit = |text: budwood::words::message::Received| newest.push(text.id.0);
        store.received_since(since, &mut visit).unwrap();
        newest.reverse();
        assert_eq!(newest, ids);
        let loaded = store.load(3).unwrap();
        assert_eq!(loaded.last_event, Some(EventId(1 << 40)));
        assert_eq!(loaded.last_message, Some(MessageId(1 << 40)));
    });
}

/// Steps are committed in groups. The group must leave what its steps one by one leave, whatever
/// they put in and take out.
#[test]
fn a_group_of_changes_leaves_what_they_leave_one_by_one() {
    let number = "+447700900001".to_owned();
    let rich = rich::change();
    let phone = rich.phones.first().unwrap();
    let put = Change {
        phones: vec![phone.clone()],
        talks: vec![(number.clone(), Talk::default())],
        ..Change::default()
    };
    let gone = Change {
        gone_phones: vec![number.clone()],
        ..Change::default()
    };
    let heard = Change {
        talks: vec![(number.clone(), Talk::default())],
        ..Change::default()
    };
    let again = Change {
        phones: vec![Phone {
            links: Vec::new(),
            ..phone.clone()
        }],
        ..Change::default()
    };
    let steps = [put, gone, heard, again];
    for order in orders(steps.len()) {
        let one_by_one = LastingStore::default();
        let mut group = Change::default();
        for step in order.iter().map(|index| &steps[*index]) {
            one_by_one.commit(step).unwrap();
            group.append(step.clone());
        }
        let at_once = LastingStore::default();
        at_once.commit(&group).unwrap();
        let (left, found) = (one_by_one.load(MANY).unwrap(), at_once.load(MANY).unwrap());
        assert_eq!(found, left, "in the order {order:?}");
    }
}

/// Every order of so many things.
fn orders(number: usize) -> Vec<Vec<usize>> {
    if number == 0 {
        return vec![Vec::new()];
    }
    orders(number - 1)
        .into_iter()
        .flat_map(|order| {
            (0..number).map(move |place| {
                let mut longer = order.clone();
                longer.insert(place, number - 1);
                longer
            })
        })
        .collect()
}

#[test]
fn a_second_opener_is_refused_until_the_first_is_gone() {
    let folder = tempfile::tempdir().expect("a folder");
    let first = open_sled(folder.path()).unwrap();
    let refused = open_sled(folder.path()).unwrap_err();
    assert!(matches!(refused, StoreError::InUse(_)), "{refused:?}");
    let shown = refused.to_string();
    assert!(shown.contains("in use by another process"), "{shown}");
    drop(first);
    open_sled(folder.path()).unwrap();
}

/// What lies in the store under this key is the given record and nothing else.
fn load_with(key: &[u8], record: &str) -> StoreError {
    let folder = tempfile::tempdir().expect("a folder");
    {
        let files = sled::open(folder.path()).unwrap();
        files.insert(key, record).unwrap();
        files.flush().unwrap();
    }
    open_sled(folder.path()).unwrap().load(MANY).unwrap_err()
}

#[test]
fn what_a_newer_program_wrote_is_refused() {
    let key = [b"p/".as_slice(), &1_u32.to_be_bytes()].concat();
    let cases = [
        (
            r#"{"v":2,"kind":"person","body":{}}"#,
            "expected person of version 1, found person of version 2",
        ),
        (
            r#"{"v":1,"kind":"saint","body":{}}"#,
            "expected person of version 1, found saint of version 1",
        ),
        (
            r#"{"v":1,"kind":"person","body":{"id":1,"name":"A","role":"wizard","language":"en","group":null,"consent":"unknown","erased":false}}"#,
            "role \"wizard\" is not known",
        ),
        (
            r#"{"v":1,"kind":"person","body":{"id":1,"aura":"green"}}"#,
            "unknown field `aura`",
        ),
        ("not a record", "not a record"),
    ];
    for (record, what) in cases {
        let shown = load_with(&key, record).to_string();
        assert!(shown.contains(what), "{shown}");
        assert!(shown.contains("record p/"), "{shown}");
        assert!(
            shown.contains("probably written by a newer version"),
            "{shown}"
        );
    }
}
