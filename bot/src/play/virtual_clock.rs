//! Drives the engine on a virtual clock: for the demo, the terminal and tests.
//!
//! The same engine, store, reader and wording as in service; only the clock stands still until
//! it is moved, and texts are handed over in memory.

use std::sync::Arc;

use anyhow::bail;
use chrono::{DateTime, Utc};

use crate::{
    engine::{Engine, Entries, Input, Setup, Told},
    roll,
    store::Store,
    words::{
        traffic::{Inbound, Outgoing, SendOutcome},
        ways::HANDSET,
    },
};

/// The demo's list, so that a first try needs no file.
pub const DEMO_ROLL: &[u8] = include_bytes!("../../../demo-data/roll.csv");

/// The number that people text to.
const OUR_NUMBER: &str = "12345";

/// A text that arrived on a phone, and when.
#[derive(Clone, Debug)]
pub struct Arrived {
    /// When.
    pub at: DateTime<Utc>,
    /// The text.
    pub text: Outgoing,
}

/// An engine on a virtual clock.
pub struct Rig {
    engine: Engine,
    now: DateTime<Utc>,
}

impl Rig {
    /// Opens an engine at this time.
    ///
    /// # Errors
    ///
    /// When the store cannot be read.
    pub fn open(
        setup: Arc<Setup>,
        store: Box<dyn Store>,
        now: DateTime<Utc>,
    ) -> anyhow::Result<Self> {
        Ok(Self {
            engine: Engine::open(setup, store, now)?,
            now,
        })
    }

    /// The time.
    #[must_use]
    pub const fn now(&self) -> DateTime<Utc> {
        self.now
    }

    /// The engine, to look at.
    #[must_use]
    pub const fn engine(&self) -> &Engine {
        &self.engine
    }

    /// Takes a list of people and blocks in.
    ///
    /// # Errors
    ///
    /// When the list has refused rows, or the store fails.
    pub fn load_roll(&mut self, csv: &[u8]) -> anyhow::Result<roll::Plan> {
        let plan = plan_roll(&self.engine, csv, self.now);
        if !plan.may_be_stored() {
            bail!("the list cannot be taken in:\n{plan}");
        }
        self.engine
            .handle(vec![Input::Roll(Box::new(entries(&plan)))], self.now)?;
        Ok(plan)
    }

    /// A text comes in now; gives what arrives on phones at once.
    ///
    /// # Errors
    ///
    /// When the store fails.
    pub fn text(&mut self, from: &str, text: &str) -> anyhow::Result<Vec<Arrived>> {
        let inbound = Inbound {
            gateway: HANDSET.to_owned(),
            gateway_id: None,
            from: from.to_owned(),
            to: OUR_NUMBER.to_owned(),
            text: text.to_owned(),
            sent_at: None,
        };
        self.inbound(inbound).map(|(_, arrived)| arrived)
    }

    /// A text comes in now, with all that a gateway tells.
    ///
    /// # Errors
    ///
    /// When the store fails.
    pub fn inbound(&mut self, inbound: Inbound) -> anyhow::Result<(Told, Vec<Arrived>)> {
        let told = self.one(Input::Text(inbound))?;
        Ok((told, self.send_all()?))
    }

    /// Lets time pass until this moment; gives what arrives on phones meanwhile.
    ///
    /// # Errors
    ///
    /// When the store fails.
    pub fn run_until(&mut self, end: DateTime<Utc>) -> anyhow::Result<Vec<Arrived>> {
        let mut arrived = Vec::new();
        loop {
            let wake = self.engine.next_wake();
            let next = wake.into_iter().chain(self.engine.next_try()).min();
            let Some(next) = next.filter(|next| *next <= end) else {
                break;
            };
            self.now = self.now.max(next);
            if wake.is_some_and(|wake| wake <= self.now) {
                self.one(Input::Wake)?;
            }
            arrived.extend(self.send_all()?);
        }
        self.now = self.now.max(end);
        Ok(arrived)
    }

    /// Hands everything that may go to the handset.
    fn send_all(&mut self) -> anyhow::Result<Vec<Arrived>> {
        let mut arrived = Vec::new();
        let claim = || Input::ClaimNext {
            gateway: HANDSET.to_owned(),
        };
        while let Some(text) = self.one(claim())?.send {
            let outcome = SendOutcome::Accepted { ids: Vec::new() };
            self.one(Input::Tried {
                id: text.id,
                outcome,
            })?;
            arrived.push(Arrived { at: self.now, text });
        }
        Ok(arrived)
    }

    fn one(&mut self, input: Input) -> anyhow::Result<Told> {
        Ok(self
            .engine
            .handle(vec![input], self.now)?
            .pop()
            .unwrap_or_default())
    }
}

/// Works out what loading a list would do to this engine.
#[must_use]
pub fn plan_roll(engine: &Engine, csv: &[u8], now: DateTime<Utc>) -> roll::Plan {
    engine.plan_roll(csv, now)
}

/// What the engine takes in of a plan.
#[must_use]
pub fn entries(plan: &roll::Plan) -> Entries {
    plan.clone().into()
}
