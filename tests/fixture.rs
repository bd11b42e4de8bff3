//! What the tests share: the program's own setup, and a store that outlives its engine.
//!
//! Nothing of ours is imitated here: the engine, reader, texts, calendars and records are those
//! of the service. Only the clock is virtual and the disk is memory.

pub(crate) mod desk;

use std::{
    path::Path,
    sync::{Arc, Mutex, OnceLock, PoisonError},
};

use budwood::{
    engine::{Input, Setup},
    service::{config::Config, setup},
    store::{Change, Loaded, MemoryStore, Record, Store, StoreError},
    words::traffic::Outgoing,
    words::{
        message::Received,
        sms::{self, Size},
        ways::HANDSET,
    },
};
use budwood_scheduler::{Event, EventId};
use chrono::{DateTime, Utc};

/// The invented valley of the demo.
pub(crate) const DEMO_ROLL: &[u8] = include_bytes!("../demo-data/roll.csv");

/// The gateway in tests.
pub(crate) const LINE: &str = HANDSET;

/// Our own number in tests: a text from it is an echo.
pub(crate) const OWN_NUMBER: &str = "+447700900999";

/// The setup of the service, with codes that do not change from run to run.
pub(crate) fn setup() -> Arc<Setup> {
    static SETUP: OnceLock<Arc<Setup>> = OnceLock::new();
    SETUP.get_or_init(|| Arc::new(own_setup())).clone()
}

/// The same, to be changed by one test.
pub(crate) fn own_setup() -> Setup {
    let mut setup = setup::built_in(0).expect("what ships is sound");
    setup.own_numbers = vec![OWN_NUMBER.to_owned()];
    setup.country = "GB".to_owned();
    // The people of tests were welcomed before; `welcome` looks at those who were not.
    setup.rules.welcomes_a_day = 0;
    setup
}

/// The gateway wants its next text.
pub(crate) fn claim() -> Input {
    Input::ClaimNext {
        gateway: LINE.to_owned(),
    }
}

/// A configuration of the service with its store here, and nothing sent.
pub(crate) fn config(store: &Path) -> Config {
    let text = format!(
        r#"
        [store]
        folder = {store:?}
        [web]
        listen = "127.0.0.1:8470"
        workers = 1
        [[gateway]]
        name = "line"
        kind = "oneapi"
        [gateway.in]
        auth = "bearer"
        [line]
        name = "valley"
        own_number = "12345"
        country = "GB"
        fallback_zone = "Asia/Jakarta"
        "#
    );
    Config::parse(&text, Path::new("")).expect("a sound configuration")
}

/// A store in memory that is still there when its engine is gone, as a disk is.
#[derive(Clone, Default)]
pub(crate) struct LastingStore(Arc<Mutex<MemoryStore>>);

impl LastingStore {
    fn with<T>(&self, work: impl FnOnce(&mut MemoryStore) -> T) -> T {
        work(&mut self.0.lock().unwrap_or_else(PoisonError::into_inner))
    }
}

impl Store for LastingStore {
    fn commit(&self, change: &Change) -> Result<(), StoreError> {
        self.with(|store| store.commit(change))
    }

    fn load(&self, messages: usize) -> Result<Loaded, StoreError> {
        self.with(|store| store.load(messages))
    }

    fn event(&self, id: EventId) -> Result<Option<Event>, StoreError> {
        self.with(|store| store.event(id))
    }

    fn each_event(&self, visit: &mut dyn FnMut(Event)) -> Result<(), StoreError> {
        self.with(|store| store.each_event(visit))
    }

    fn each_received(&self, visit: &mut dyn FnMut(Received)) -> Result<(), StoreError> {
        self.with(|store| store.each_received(visit))
    }

    fn received_since(
        &self,
        since: DateTime<Utc>,
        visit: &mut dyn FnMut(Received),
    ) -> Result<(), StoreError> {
        self.with(|store| store.received_since(since, visit))
    }

    fn records(&self, after: Option<&[u8]>, at_most: usize) -> Result<Vec<Record>, StoreError> {
        self.with(|store| store.records(after, at_most))
    }

    fn record(&self, key: &[u8]) -> Result<Option<Record>, StoreError> {
        self.with(|store| store.record(key))
    }
}

/// Every fact in a store, oldest first.
pub(crate) fn events(store: &dyn Store) -> Vec<Event> {
    let mut events = Vec::new();
    store
        .each_event(&mut |event| events.push(event))
        .expect("facts can be read");
    events
}

/// Every text in a store, oldest first.
pub(crate) fn received(store: &dyn Store) -> Vec<Received> {
    let mut texts = Vec::new();
    store
        .each_received(&mut |text| texts.push(text))
        .expect("texts can be read");
    texts
}

/// Fails unless a text is one SMS: 160 septets of the GSM alphabet (3GPP TS 23.038), or 70
/// UTF-16 units.
#[track_caller]
pub(crate) fn assert_one_sms(text: &str) -> Size {
    let size = sms::measure(text);
    assert_eq!(size.parts, 1, "{} units: {text}", size.units);
    assert!(!text.trim().is_empty(), "an empty text");
    size
}

/// The code in what was sent.
#[track_caller]
pub(crate) fn code(sent: &[Outgoing]) -> String {
    let text = &sent.last().expect("a text").text;
    let (_, rest) = text.split_once("YES ").expect("a code");
    let code: String = rest.chars().take_while(char::is_ascii_digit).collect();
    assert_eq!(code.len(), 6, "{text}");
    code
}
