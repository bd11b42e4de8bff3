//! An engine with the demo's people and an empty outbox, driven by hand, one input at a time.

use std::sync::Arc;

use budwood::{
    engine::{Engine, Input, Told},
    play::virtual_clock,
    store::{Change, MemoryStore, Store, read_line},
    words::{
        traffic::{About, Delivery, Inbound, Outgoing, Receipt, SendOutcome},
        ways::Ways,
    },
};
use budwood_scheduler::MessageId;
use chrono::{DateTime, TimeDelta, Utc};
use serde_json::Value;

use crate::sim::{self, DEMO_ROLL, LINE};

/// Jaro Pell: one block, A, of 0.4 hectares.
pub(crate) const JARO: &str = "+447700900006";

/// Hana Mirk: one block, A.
pub(crate) const HANA: &str = "+447700900011";

/// Mara Tindel, the adviser.
pub(crate) const ADVISER: &str = "+447700900100";

/// Tells the instant of a text like `2026-11-02T03:00:00Z`. The demo's group lives 7 hours ahead.
pub(crate) fn at(text: &str) -> DateTime<Utc> {
    text.parse().unwrap()
}

/// The engine and the time.
pub(crate) struct Desk {
    pub(crate) engine: Engine,
    pub(crate) now: DateTime<Utc>,
}

impl Desk {
    /// With the demo's list, behind a gateway that knows a second try of the same text.
    pub(crate) fn open(now: &str) -> Self {
        let mut desk = Self::over(MemoryStore::new(), at(now), true);
        let plan = virtual_clock::plan_roll(&desk.engine, DEMO_ROLL, desk.now);
        assert!(plan.may_be_stored(), "{plan}");
        desk.input(Input::Roll(Box::new(virtual_clock::entries(&plan))));
        desk
    }

    /// Over a store, behind a gateway that does or does not know a second try.
    pub(crate) fn over(store: MemoryStore, now: DateTime<Utc>, idempotent: bool) -> Self {
        Self::behind(Ways::one(LINE, idempotent), store, now)
    }

    /// Over a store, behind several gateways.
    pub(crate) fn behind(ways: Ways, store: MemoryStore, now: DateTime<Utc>) -> Self {
        let mut setup = sim::own_setup();
        setup.ways = ways;
        Self {
            engine: Engine::open(Arc::new(setup), Box::new(store), now).unwrap(),
            now,
        }
    }

    /// As after `kill -9`: only what the store has is left.
    pub(crate) fn restart(&self, idempotent: bool) -> Self {
        self.restart_behind(Ways::one(LINE, idempotent))
    }

    /// The same, behind these gateways.
    pub(crate) fn restart_behind(&self, ways: Ways) -> Self {
        let mut all = Change::default();
        for line in self.lines() {
            read_line(line.as_bytes(), &mut all).unwrap();
        }
        let store = MemoryStore::new();
        store.commit(&all).unwrap();
        Self::behind(ways, store, self.now)
    }

    pub(crate) fn input(&mut self, input: Input) -> Told {
        let told = self.engine.handle(vec![input], self.now).unwrap();
        told.into_iter().next().unwrap()
    }

    pub(crate) fn wait(&mut self, time: TimeDelta) {
        self.now += time;
    }

    /// A text comes in; gives what became of it.
    pub(crate) fn text(&mut self, from: &str, text: &str) -> &'static str {
        self.inbound(inbound(from, text))
    }

    pub(crate) fn inbound(&mut self, inbound: Inbound) -> &'static str {
        self.input(Input::Text(inbound)).outcome.unwrap().name()
    }

    /// The next text that may go.
    pub(crate) fn claim(&mut self) -> Option<Outgoing> {
        self.claim_by(LINE)
    }

    pub(crate) fn claim_by(&mut self, gateway: &str) -> Option<Outgoing> {
        let gateway = gateway.to_owned();
        self.input(Input::ClaimNext { gateway }).send
    }

    /// Hands everything that may go now to a gateway that takes it.
    pub(crate) fn send_all(&mut self) -> Vec<Outgoing> {
        let mut sent = Vec::new();
        while let Some(text) = self.claim() {
            self.accepted(text.id, None);
            sent.push(text);
        }
        sent
    }

    pub(crate) fn accepted(&mut self, id: MessageId, gateway_id: Option<&str>) {
        let ids = gateway_id.into_iter().map(str::to_owned).collect();
        self.tried(id, SendOutcome::Accepted { ids });
    }

    pub(crate) fn tried(&mut self, id: MessageId, outcome: SendOutcome) {
        self.input(Input::Tried { id, outcome });
    }

    pub(crate) fn receipt(&mut self, id: MessageId, delivery: Delivery) {
        self.told_by(LINE, About::Ours(id), delivery);
    }

    /// A gateway tells what became of a text.
    pub(crate) fn told_by(&mut self, gateway: &str, about: About, delivery: Delivery) {
        self.input(Input::Receipt(Receipt {
            gateway: gateway.to_owned(),
            about,
            delivery,
            code: None,
        }));
    }

    /// Lets time pass until the next nudge is made, and makes it.
    pub(crate) fn wake(&mut self) {
        self.now = self.engine.next_wake().expect("something is due");
        self.input(Input::Wake);
    }

    /// Every record, as a line.
    pub(crate) fn lines(&self) -> Vec<String> {
        let records = self.engine.store().records(None, usize::MAX).unwrap();
        records
            .into_iter()
            .map(|record| String::from_utf8(record.line).unwrap())
            .collect()
    }

    /// The bodies of the records of a kind.
    pub(crate) fn stored(&self, kind: &str) -> Vec<Value> {
        self.lines()
            .iter()
            .map(|line| serde_json::from_str::<Value>(line).unwrap())
            .filter(|record| record["kind"] == kind)
            .map(|record| record["body"].clone())
            .collect()
    }

    /// How far a text of ours is, as stored.
    pub(crate) fn state(&self, id: MessageId) -> String {
        let texts = self.stored("outbound");
        let text = texts.iter().find(|text| text["id"] == id.0).unwrap();
        text["state"].as_str().unwrap().to_owned()
    }

    /// Reports of work, as stored.
    pub(crate) fn reports(&self) -> Vec<Value> {
        let mut events = self.stored("event");
        events.retain(|event| !event["message"].is_null());
        events
    }
}

/// A text as a gateway brings it that tells as little as possible.
pub(crate) fn inbound(from: &str, text: &str) -> Inbound {
    Inbound {
        gateway: LINE.to_owned(),
        gateway_id: None,
        from: from.to_owned(),
        to: "12345".to_owned(),
        text: text.to_owned(),
        sent_at: None,
    }
}
