//! How the engine is and what it knows, for whoever watches it, and what they tell it of the computer
//! that it runs on.

use budwood_scheduler::{BlockId, BlockState, Directory, MessageId};
use chrono::{DateTime, Utc};

use super::{Engine, HeldBack, memory::world::World};
use crate::words::{given::Given, ledger::Ledger, message::Outbound, traffic::GatewayHealth};

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

    /// Whether the disk of the store has little room left.
    pub const fn see_disk(&mut self, is_low: bool) {
        self.world.is_disk_low = is_low;
    }

    /// Makes nudges wait, or not any more: while the clock is wrong, nothing may go that hangs on
    /// the time. Answers go.
    pub const fn let_nudges_wait(&mut self, wait: bool) {
        self.world.nudges_wait = wait;
    }

    /// When the last fact or message came; 1970 in an empty store.
    #[must_use]
    pub const fn latest(&self) -> DateTime<Utc> {
        self.world.latest
    }

    /// A person says that this is the time, even if facts were stored with a later one.
    pub fn believe(&mut self, now: DateTime<Utc>) {
        self.world.latest = now;
        self.world.ledger.not_ahead(now);
    }

    /// A text that is not settled yet.
    #[must_use]
    pub fn outbound(&self, id: MessageId) -> Option<&Outbound> {
        self.world.outbox.get(id)
    }

    /// Who there is.
    #[must_use]
    pub fn directory(&self) -> &Directory {
        &self.world.directory
    }

    /// How a block stands.
    #[must_use]
    pub fn state(&self, block: BlockId) -> Option<&BlockState> {
        self.world.states.get(&block)
    }

    /// What was given to partners so far.
    pub fn givens(&self) -> impl Iterator<Item = &Given> {
        self.world.givens.values()
    }
}
