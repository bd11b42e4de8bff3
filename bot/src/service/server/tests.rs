//! The engine's thread when its disk fails or is short of room. The disk is a stand-in.

use std::{
    path::PathBuf,
    sync::{
        Arc,
        atomic::{AtomicU32, Ordering},
    },
};

use budwood_scheduler::{Event, EventId};
use chrono::{DateTime, Utc};

use super::{Handle, Room, Running, Shared, start, step_each, store_check};
use crate::{
    engine::{Engine, Input, Told},
    service::{
        clock::{Clock, FixedClock},
        config::StoreConfig,
        port::{Arrival, Intake, Refused},
        setup,
    },
    store::{Change, Loaded, MemoryStore, Record, Store, StoreError},
    words::{
        message::Received,
        traffic::{About, Delivery, Inbound, Receipt, SendOutcome},
    },
};

/// What the disk does at the second commit and at all later ones.
#[derive(Clone, Copy)]
enum Then {
    Fails,
    Panics,
    /// Nothing: it has lost something before.
    IsDamaged,
}

/// A store on a disk that breaks after the first commit.
struct Breaking {
    inner: MemoryStore,
    commits: AtomicU32,
    then: Then,
}

impl Store for Breaking {
    fn commit(&self, change: &Change) -> Result<(), StoreError> {
        let before = self.commits.fetch_add(1, Ordering::Relaxed);
        match self.then {
            _ if before == 0 => self.inner.commit(change),
            Then::Fails => Err(std::io::Error::from_raw_os_error(5).into()),
            Then::Panics => panic!("as a library does that does not expect this"),
            Then::IsDamaged => self.inner.commit(change),
        }
    }
    fn load(&self, messages: usize) -> Result<Loaded, StoreError> {
        self.inner.load(messages)
    }
    fn event(&self, id: EventId) -> Result<Option<Event>, StoreError> {
        self.inner.event(id)
    }
    fn each_event(&self, visit: &mut dyn FnMut(Event)) -> Result<(), StoreError> {
        self.inner.each_event(visit)
    }
    fn each_received(&self, visit: &mut dyn FnMut(Received)) -> Result<(), StoreError> {
        self.inner.each_received(visit)
    }

    fn received_since(
        &self,
        since: DateTime<Utc>,
        visit: &mut dyn FnMut(Received),
    ) -> Result<(), StoreError> {
        self.inner.received_since(since, visit)
    }
    fn records(&self, after: Option<&[u8]>, at_most: usize) -> Result<Vec<Record>, StoreError> {
        self.inner.records(after, at_most)
    }
    fn record(&self, key: &[u8]) -> Result<Option<Record>, StoreError> {
        self.inner.record(key)
    }
    fn verify(&self) -> Result<(), StoreError> {
        match self.then {
            Then::IsDamaged => Err(StoreError::Damaged("a folder".to_owned())),
            Then::Fails | Then::Panics => Ok(()),
        }
    }
}

fn running(store: Box<dyn Store>, reserve_mb: u32) -> Running {
    let clock = FixedClock::at(DateTime::from_timestamp(1_790_000_000, 0).unwrap());
    let setup = setup::built_in(0).unwrap().into();
    let engine = Engine::open(setup, store, clock.now()).unwrap();
    let room = Room::new(&StoreConfig {
        folder: PathBuf::from(env!("CARGO_MANIFEST_DIR")),
        cache_mb: 16,
        reserve_mb,
    });
    start(engine, Clock::Fixed(clock), room).unwrap()
}

async fn text(handle: &Handle, id: &str) -> Result<Told, Refused> {
    let inbound = Inbound {
        gateway: "http".into(),
        gateway_id: Some(id.into()),
        from: "+447700900123".into(),
        to: "12345".into(),
        text: "planted 120".into(),
        sent_at: None,
    };
    handle.submit(Input::Text(inbound)).await
}

#[tokio::test]
async fn after_a_failed_commit_nothing_is_acknowledged_and_health_says_why() {
    for then in [Then::Fails, Then::Panics] {
        let store = Breaking {
            inner: MemoryStore::new(),
            commits: AtomicU32::new(0),
            then,
        };
        let running = running(Box::new(store), 0);
        assert!(text(&running.handle, "1").await.is_ok());
        assert_eq!(running.handle.health().trouble, None);
        for id in ["2", "1", "3"] {
            assert_eq!(text(&running.handle, id).await, Err(Refused::Unhealthy));
        }
        running.watch().end().await;
        let trouble = running.handle.health().trouble.unwrap();
        assert!(trouble.contains("the store failed"), "{trouble}");
        assert!(running.finish().is_err(), "the process ends with a failure");
    }
}

#[tokio::test]
async fn short_of_room_only_what_has_begun_is_ended() {
    let running = running(Box::new(MemoryStore::new()), u32::MAX);
    let handle = &running.handle;
    assert_eq!(text(handle, "1").await, Err(Refused::Unhealthy));
    let receipt = Receipt {
        gateway: "http".into(),
        about: About::Theirs("x".into()),
        delivery: Delivery::Delivered,
        code: None,
    };
    let claim = Input::ClaimNext {
        gateway: "http".into(),
    };
    assert_eq!(
        handle.take(Arrival::Receipt(receipt)).await,
        Err(Refused::Unhealthy)
    );
    assert!(handle.submit(claim).await.is_err());
    let tried = Input::Tried {
        id: budwood_scheduler::MessageId(1),
        outcome: SendOutcome::Accepted { ids: Vec::new() },
    };
    assert!(handle.submit(tried).await.is_ok());
    let trouble = handle.health().trouble.unwrap();
    assert!(trouble.contains("make room"), "{trouble}");
    assert!(running.finish().is_ok(), "this is no failure");
}

#[test]
fn a_store_with_a_gap_is_told_by_health() {
    for (then, expected) in [(Then::Fails, false), (Then::IsDamaged, true)] {
        let shared = Arc::new(Shared::default());
        let store = Breaking {
            inner: MemoryStore::new(),
            commits: AtomicU32::new(0),
            then,
        };
        let looks = store_check::look(Arc::new(store), shared.clone()).unwrap();
        looks.join().unwrap();
        let why = shared.gap.why();
        assert_eq!(
            why.is_some_and(|why| why.contains("restore the last backup")),
            expected
        );
    }
}

/// A hundred texts of one notification may take a minute together, which is no stall.
#[test]
fn the_watch_looks_at_one_input_and_not_at_a_batch() {
    let store = Box::new(MemoryStore::new());
    let now = DateTime::from_timestamp(1_790_000_000, 0).unwrap();
    let setup = setup::built_in(0).unwrap().into();
    let mut engine = Engine::open(setup, store, now).unwrap();
    let claim = || Input::ClaimNext {
        gateway: "http".into(),
    };
    let (shared, clock) = (Shared::default(), Clock::System);
    let inputs = vec![claim(), claim(), claim()];
    let stepped = step_each(&mut engine, inputs, now, (&shared, &clock)).unwrap();
    assert_eq!(stepped.told.len(), 3, "each who asked is told");
    assert_eq!(shared.steps.seen(), 6, "each began and ended");
    let counts = shared.step_pace.spans().counts;
    assert_eq!(counts.iter().sum::<u64>(), 3, "each was counted");
}
