//! One step: changes memory, and collects what must be written for it.

use std::collections::BTreeSet;

use budwood_scheduler::{BlockId, BlockState, Group, MessageId, Person, PersonId, Phone};
use chrono::{DateTime, Utc};

use super::{Setup, Told, memory::world::World, view::View};
use crate::{
    store::{Change, Store},
    words::{
        ledger::Ledger,
        load::Load,
        matter::Matter,
        message::{Outbound, Purpose, SendState, Talk},
        promise::Promise,
    },
};

/// One step over one input.
pub(super) struct Step<'a> {
    pub(super) world: &'a mut World,
    pub(super) setup: &'a Setup,
    pub(super) store: &'a dyn Store,
    pub(super) now: DateTime<Utc>,
    pub(super) change: Change,
    pub(super) told: Told,
    blocks: BTreeSet<BlockId>,
    talks: BTreeSet<String>,
    is_ledger_changed: bool,
}

impl<'a> Step<'a> {
    pub(super) fn new(
        world: &'a mut World,
        setup: &'a Setup,
        store: &'a dyn Store,
        now: DateTime<Utc>,
    ) -> Self {
        Self {
            world,
            setup,
            store,
            now,
            change: Change::default(),
            told: Told::default(),
            blocks: BTreeSet::new(),
            talks: BTreeSet::new(),
            is_ledger_changed: false,
        }
    }

    /// What can be seen from here.
    pub(super) fn view(&self) -> View<'_> {
        View {
            world: self.world,
            setup: self.setup,
            store: self.store,
            now: self.now,
        }
    }

    /// What the step changes and tells.
    pub(super) fn finish(mut self) -> (Change, Told) {
        for block in self.blocks {
            if let Some(state) = self.world.states.get(&block) {
                self.change.states.push((block, state.clone()));
            }
        }
        for number in self.talks {
            if let Some(talk) = self.world.talks.get(&number) {
                self.change.talks.push((number, talk.clone()));
            }
        }
        if self.is_ledger_changed {
            self.change.ledgers.push(self.world.ledger.clone());
        }
        (self.change, self.told)
    }

    /// What left in this month, to be changed.
    pub(super) fn ledger(&mut self) -> &mut Ledger {
        self.is_ledger_changed = true;
        let now = self.now;
        let known = std::mem::replace(&mut self.world.ledger, Ledger::of(now));
        self.world.ledger = known.at(now);
        &mut self.world.ledger
    }

    /// The conversation with a phone, to be changed.
    pub(super) fn talk(&mut self, number: &str) -> &mut Talk {
        self.talks.insert(number.to_owned());
        self.world.talks.entry(number.to_owned()).or_default()
    }

    /// Puts a person in, new or changed, and looks at their blocks again.
    pub(super) fn put_person(&mut self, person: Person) {
        let id = person.id;
        self.change.persons.push(person.clone());
        self.world.put_person(person);
        let blocks: Vec<BlockId> = self
            .world
            .directory
            .blocks_of(id)
            .map(|block| block.id)
            .collect();
        for block in blocks {
            self.plan(block);
        }
    }

    /// Puts a phone in, new or changed, and looks at the blocks of its people again.
    pub(super) fn put_phone(&mut self, phone: Phone) {
        let before = self.view().everyone_on(&phone.number);
        let people: BTreeSet<PersonId> = before.into_iter().chain(phone.people()).collect();
        self.change.phones.push(phone.clone());
        self.world.directory.put_phone(phone);
        let blocks: Vec<BlockId> = people
            .into_iter()
            .flat_map(|person| self.world.directory.blocks_of(person))
            .map(|block| block.id)
            .collect();
        for block in blocks {
            self.plan(block);
        }
    }

    /// Puts a group in, new or changed, and looks at its blocks again.
    pub(super) fn put_group(&mut self, group: Group) {
        let id = group.id;
        self.change.groups.push(group.clone());
        self.world.directory.put_group(group);
        let blocks: Vec<BlockId> = self
            .world
            .directory
            .members(id)
            .flat_map(|person| self.world.directory.blocks_of(person.id))
            .map(|block| block.id)
            .collect();
        for block in blocks {
            self.plan(block);
        }
    }

    /// Finds out when to look at a block next.
    pub(super) fn plan(&mut self, block: BlockId) {
        let at = self.view().next_look(block);
        self.world.look_at(block, at);
    }

    /// Looks at every block: at the start, or when the rules changed.
    pub(super) fn plan_all(&mut self) {
        let blocks = self.world.directory.blocks();
        let blocks: Vec<BlockId> = blocks.map(|block| block.id).collect();
        for block in blocks {
            self.plan(block);
        }
    }

    /// How a block stands, to be changed.
    pub(super) fn state(&mut self, block: BlockId) -> &mut BlockState {
        self.blocks.insert(block);
        self.world.states.entry(block).or_default()
    }

    /// Nobody uses this phone any more: nothing is kept of what was talked about.
    pub(super) fn drop_phone(&mut self, number: &str) {
        self.world.directory.remove_phone(number);
        self.world.talks.remove(number);
        self.talks.remove(number);
        self.change.gone_phones.push(number.to_owned());
    }

    /// The gateway that a text waits for; no name when there is none.
    pub(super) fn lane(&self, outbound: &Outbound) -> String {
        if let (Some(gateway), Some(_)) = (&outbound.gateway, outbound.sent_at) {
            return gateway.clone();
        }
        let talk = self.world.talks.get(&outbound.to);
        let heard_by = talk.and_then(|talk| talk.heard_by.as_deref());
        // Who looks after the lines is not told by the one that is wrong.
        let is_service = matches!(outbound.purpose, Purpose::Service { .. });
        let is_out = |gateway: &str| {
            let links = &self.world.links;
            links.is_out(gateway, self.now) || (is_service && links.is_silent(gateway, self.now))
        };
        let chosen = self.setup.ways.choose(&outbound.to, heard_by, is_out);
        chosen.unwrap_or_default().to_owned()
    }

    /// Lets a text wait for a person, or changes what is known of one that waits.
    pub(super) fn put_matter(&mut self, matter: Matter) {
        self.change.matters.push(matter.clone());
        self.world.matters.put(matter);
    }

    /// A text waits no more.
    pub(super) fn close_matter(&mut self, message: MessageId) {
        if self.world.matters.close(message).is_some() {
            let is_it = |matter: &Matter| matter.message == message;
            self.change.matters.retain(|matter| !is_it(matter));
            self.change.closed.push(message);
        }
    }

    /// Keeps what the last list wrote.
    pub(super) fn put_load(&mut self, load: Load) {
        self.change.loads = vec![load.clone()];
        self.world.load = Some(load);
    }

    /// Somebody is owed something.
    pub(super) fn put_promise(&mut self, promise: Promise) {
        self.change.promises.push(promise.clone());
        self.world.promises.insert(promise.message, promise);
    }

    /// And is no more.
    pub(super) fn drop_promise(&mut self, message: MessageId) {
        if self.world.promises.remove(&message).is_some() {
            let is_it = |promise: &Promise| promise.message == message;
            self.change.promises.retain(|promise| !is_it(promise));
            self.change.kept.push(message);
        }
    }

    /// Keeps a text out, new or moved on.
    pub(super) fn put_outbound(&mut self, outbound: Outbound) {
        let mut outbound = self.world.erasures.wiped(outbound);
        if outbound.state.is_final() {
            outbound.settled_at.get_or_insert(self.now);
        }
        let lane = if outbound.state == SendState::Ready {
            self.lane(&outbound)
        } else {
            String::new()
        };
        self.change.outbound.push(outbound.clone());
        self.world.outbox.put(outbound, &lane);
        self.close_erasures();
    }

    /// Who is wholly taken out of the records need not be remembered.
    pub(super) fn close_erasures(&mut self) {
        let done = self.world.erasures.take_done();
        self.change.erased.extend(done);
    }
}
