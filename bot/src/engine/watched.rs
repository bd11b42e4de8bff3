//! How the engine is, for whoever watches it.

use chrono::{DateTime, Utc};

use super::{Engine, HeldBack, memory::world::World};
use crate::words::{ledger::Ledger, traffic::GatewayHealth};

impl Engine {
    /// How many texts wait to be sent or are on their way to the gateway.
    #[must_use]
    pub fn waiting(&self) -> usize {
        self.world.outbox.unsent()
    }

    /// How many texts wait for a person to read them.
    #[must_use]
    pub fn unclear(&self) -> usize {
        self.world.matters.all().count()
    }

    /// What was not said, since the start.
    #[must_use]
    pub const fn held_back(&self) -> HeldBack {
        self.world.held_back
    }

    /// How many deeds three wrong codes locked, since the start.
    #[must_use]
    pub const fn locked(&self) -> u64 {
        self.world.locked
    }

    /// Since when nothing is sent, because the store was filled from a backup or a log and nobody
    /// said [`super::Input::Release`] yet.
    #[must_use]
    pub const fn held_since(&self) -> Option<DateTime<Utc>> {
        self.world.held_since
    }

    /// How each gateway is doing.
    #[must_use]
    pub fn gateways(&self, now: DateTime<Utc>) -> Vec<GatewayHealth> {
        let World { outbox, links, .. } = &self.world;
        links.health(
            self.setup.ways.names(),
            |gateway| outbox.oldest(gateway),
            now,
        )
    }

    /// What left in this month, and what that is of its budget in per cent.
    #[must_use]
    pub fn month(&self, now: DateTime<Utc>) -> (Ledger, Option<u32>) {
        let ledger = self.world.ledger.clone().at(now);
        let gone_pct = self.setup.month.gone_pct(&ledger);
        (ledger, gone_pct)
    }
}
