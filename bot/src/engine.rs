//! Read this first: one loop, a closed set of inputs, one atomic change for each.
//!
//! The contract: [`Engine::handle`] takes inputs and the time, steps each in order, commits all
//! changes in one write, and only then returns what is to be told. [`Engine::next_wake`] says when
//! it wants to be called again. The server steps the next texts while the last ones are written:
//! [`Engine::step`], and a commit of its own. No clock is read, nothing is awaited.
//!
//! 1. A text comes in: who is it, what do they say, what is to be done (`inbound`).
//! 2. It becomes facts, which change the state of blocks (`facts`, `amend`).
//! 3. The state says what is due, and when to speak (`tasks`, `tick`).
//! 4. What is to be said is worded in one place (`post`), and waits for a gateway (`outbox`).
//!
//! Reading and doing are two types: questions take a `View` and cannot change anything; deeds take
//! a `Step`, change memory, and give back what is said as values.

mod budget;
pub(crate) mod deeds;
mod local_time;
pub mod looks;
pub(crate) mod memory;
mod outcome;
mod post;
pub(crate) mod questions;
pub(crate) mod roles;
mod said;
mod setup;
mod step;
#[cfg(test)]
mod tests;
mod turn;
mod view;
mod watched;

use std::{fmt, sync::Arc};

use budwood_scheduler::MessageId;
use chrono::{DateTime, Utc};

pub use self::{
    budget::HeldBack,
    deeds::{
        desk::{DeskDeed, WithText},
        door::Knock,
        parcels::{Giving, OutlineOrder},
        roll::{Entries, List, ListAnswer, ListDeed, ListFate, ListFinding},
        unload::BackDeed,
    },
    memory::snapshot::{Copied, CopyStep},
    outcome::Outcome,
    questions::{parcels::Parcel, sheets::SheetOrder},
    setup::{Operator, Setup},
};
use self::{
    looks::{Look, Seen, Unseen, Viewer},
    memory::world::World,
    said::Said,
    step::Step,
    view::View,
};
use crate::{
    sheet::Sheet,
    store::{Change, Hold, Store, StoreError},
    words::{
        given::ParcelKind,
        limits,
        traffic::{Inbound, InboundPart, Link, Outgoing, Receipt, SendOutcome, Signs},
    },
};

/// Everything that can happen to the engine.
#[derive(Clone, Debug)]
pub enum Input {
    /// A text came in.
    Text(Inbound),
    /// A part of a text came in.
    Part(InboundPart),
    /// Somebody called and was not answered.
    MissedCall {
        /// Through which gateway.
        gateway: String,
        /// From which number.
        from: String,
        /// When.
        at: DateTime<Utc>,
    },
    /// A gateway tells how far a text of ours came.
    Receipt(Receipt),
    /// The time for which [`Engine::next_wake`] asked has come.
    Wake,
    /// A gateway wants the next text that may go by it now.
    ClaimNext {
        /// Which gateway.
        gateway: String,
    },
    /// A gateway tells how its line is, when that changes and now and then while it is down.
    Link {
        /// Which gateway.
        gateway: String,
        /// How its line is.
        link: Link,
    },
    /// A gateway says something new of itself.
    Signs {
        /// Which gateway.
        gateway: String,
        /// What.
        signs: Signs,
    },
    /// What became of a try to send.
    Tried {
        /// Which text.
        id: MessageId,
        /// What became of it.
        outcome: SendOutcome,
    },
    /// A list of people and blocks is taken in.
    Roll(Box<Entries>),
    /// The same as an office keeps it: compared with what is known at this moment.
    List(List),
    /// The last list is taken back, or looked at for that.
    Unload(BackDeed),
    /// Something is given to a partner: it is written down first.
    Give(Giving),
    /// An outline of a block is taken in.
    Outline(OutlineOrder),
    /// A sheet is to be printed.
    Print(SheetOrder),
    /// A person says that texts may leave again after the store was filled.
    Release,
    /// Somebody takes a copy of the store.
    Copy(CopyStep),
    /// A changed configuration is taken over.
    Setup(NewSetup),
    /// Somebody wants to see a page of the office.
    Look {
        /// Who.
        viewer: Viewer,
        /// What.
        look: Look,
    },
    /// Somebody at the office's door asks for a code.
    Door(Knock),
    /// Somebody at a desk of the office does something.
    Desk {
        /// Who.
        viewer: Viewer,
        /// What.
        deed: DeskDeed,
    },
}

/// A setup to go on with.
#[derive(Clone)]
pub struct NewSetup(pub Arc<Setup>);

impl fmt::Debug for NewSetup {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("NewSetup")
    }
}

/// What a step tells its caller, after the commit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Told {
    /// The text to hand to the gateway now, after [`Input::ClaimNext`].
    pub send: Option<Outgoing>,
    /// What became of a text that came in.
    pub outcome: Option<Outcome>,
    /// A part of a copy, after [`Input::Copy`].
    pub copied: Option<Copied>,
    /// What became of a list, after [`Input::List`].
    pub list: Option<ListAnswer>,
    /// The sheet after [`Input::Print`], or why there is none.
    pub sheet: Option<Result<Sheet, String>>,
    /// What is told of it, after [`Input::Give`] and [`Input::Outline`], or why it was not done.
    pub page: Option<Result<String, String>>,
    /// Why [`Input::Setup`] changed nothing, if so.
    pub refused: Option<String>,
    /// The page, after [`Input::Look`].
    pub seen: Option<Result<Box<Seen>, Unseen>>,
    /// What became of it, after [`Input::Desk`].
    pub done: Option<Result<Outcome, Unseen>>,
    /// Who showed that they may come in, after [`Input::Door`].
    pub entered: Option<Viewer>,
    /// The code that is given at the computer itself, after [`Input::Door`].
    pub code: Option<String>,
}

/// The engine: state in memory, and the store behind it.
pub struct Engine {
    world: World,
    setup: Arc<Setup>,
    store: Arc<dyn Store>,
}

/// What a step made: to be committed first, and told after that.
#[derive(Debug, Default)]
pub struct Stepped {
    /// What must be written.
    pub change: Change,
    /// What is told to each who handed an input in, in order.
    pub told: Vec<Told>,
}

impl Engine {
    /// Takes the store's content into memory.
    ///
    /// # Errors
    ///
    /// When the store cannot be read, or was only half filled.
    pub fn open(
        setup: Arc<Setup>,
        store: Box<dyn Store>,
        now: DateTime<Utc>,
    ) -> Result<Self, StoreError> {
        let loaded = store.load(limits::RECENT_MESSAGES)?;
        if loaded.hold == Hold::Filling {
            return Err(StoreError::HalfFilled);
        }
        let mut world = World::new(loaded);
        world.recall(store.as_ref())?;
        let now = now.max(world.latest);
        world.links.begin(now);
        let mut step = Step::new(&mut world, &setup, store.as_ref(), now);
        step.settle_open_sends();
        step.plan_all();
        let (change, _) = step.finish();
        world.unread.take().map_or(Ok(()), Err)?;
        if !change.is_empty() {
            store.commit(&change)?;
        }
        Ok(Self {
            world,
            setup,
            store: store.into(),
        })
    }

    /// Steps each input in order and commits what they change in one write. A time before the
    /// last fact or message counts as the time of that one, so that facts stay in order.
    ///
    /// # Errors
    ///
    /// When the write failed, or a fact could not be read. The engine must not be used after that:
    /// nothing may be acknowledged that is not on the disk.
    pub fn handle(
        &mut self,
        inputs: Vec<Input>,
        now: DateTime<Utc>,
    ) -> Result<Vec<Told>, StoreError> {
        let Stepped { change, told } = self.step(inputs, now)?;
        if !change.is_empty() {
            self.store.commit(&change)?;
        }
        while self.is_erasing() {
            let change = self.erase_some(now)?;
            if !change.is_empty() {
                self.store.commit(&change)?;
            }
        }
        Ok(told)
    }

    /// Whether records must still be looked through for what tells of somebody who is erased.
    #[must_use]
    pub fn is_erasing(&self) -> bool {
        self.world.erasures.are_busy()
    }

    /// Looks through some more records for it. All changes must have been committed before, and what
    /// this one changes must be before the next step.
    ///
    /// # Errors
    ///
    /// When a record could not be read.
    pub fn erase_some(&mut self, now: DateTime<Utc>) -> Result<Change, StoreError> {
        let now = now.max(self.world.latest);
        let mut step = Step::new(&mut self.world, &self.setup, self.store.as_ref(), now);
        step.erase_some()?;
        let (change, _) = step.finish();
        self.keep_for_copy(&change);
        Ok(change)
    }

    /// What a copy that is being taken must still have as it was.
    fn keep_for_copy(&mut self, change: &Change) {
        if let Some(copying) = &mut self.world.copying
            && !change.is_empty()
        {
            copying.keep(self.store.as_ref(), change);
        }
    }

    /// Steps each input in order. What is told must not be told before the change is on the disk,
    /// and changes are committed in the order of the steps. If that fails the engine must not be
    /// used any more.
    ///
    /// A step may look into the store, and finds what is not there yet in the engine's memory:
    /// that holds [`limits::RECENT_EVENTS`] facts. A copy is taken of what is in the store, so
    /// while [`Engine::looks_at_store`] all changes must be committed before the next step.
    ///
    /// # Errors
    ///
    /// When a fact could not be read. The engine must not be used after that.
    pub fn step(&mut self, inputs: Vec<Input>, now: DateTime<Utc>) -> Result<Stepped, StoreError> {
        let now = now.max(self.world.latest);
        self.world.outbox.forget_before(now);
        let mut all = Change::default();
        let mut told = Vec::with_capacity(inputs.len());
        self.end_waiting_for_parts(now, &mut all);
        for input in inputs {
            if let Input::Setup(new) = &input {
                if let Some(why) = self.refuses(&new.0) {
                    told.push(Told {
                        refused: Some(why),
                        ..Told::default()
                    });
                    continue;
                }
                self.setup = new.0.clone();
            }
            let mut step = Step::new(&mut self.world, &self.setup, self.store.as_ref(), now);
            let said = take_in(&mut step, input);
            step.say(said);
            let warning = step.budget_warning();
            step.say(warning);
            let (change, tells) = step.finish();
            all.append(change);
            told.push(tells);
        }
        if !all.is_empty() {
            self.keep_for_copy(&all);
            self.world.latest = now;
        }
        let stepped = Stepped { change: all, told };
        self.world.unread.take().map_or(Ok(stepped), Err)
    }

    /// Texts of which parts did not come in time are taken as far as they came.
    fn end_waiting_for_parts(&mut self, now: DateTime<Utc>, all: &mut Change) {
        while self.world.parts.has_late(now) {
            let mut step = Step::new(&mut self.world, &self.setup, self.store.as_ref(), now);
            let said = step.late_parts();
            step.say(said);
            let (change, _) = step.finish();
            all.append(change);
        }
    }

    /// Why a setup cannot be gone on with: a group would have no calendar.
    fn refuses(&self, new: &Setup) -> Option<String> {
        let mut groups = self.world.directory.groups();
        let without = groups.find(|group| !new.calendars.contains_key(&group.calendar))?;
        Some(format!(
            "group {} uses the calendar {:?}, which would be gone",
            without.name, without.calendar
        ))
    }

    /// Whether the next step over these inputs needs all changes before it in the store.
    #[must_use]
    pub fn looks_at_store(&self, inputs: &[Input]) -> bool {
        let copies = |input: &Input| matches!(input, Input::Copy(_));
        self.world.copying.is_some() || inputs.iter().any(copies)
    }

    /// When the engine wants [`Input::Wake`].
    #[must_use]
    pub fn next_wake(&self) -> Option<DateTime<Utc>> {
        if self.world.held_since.is_some() || self.world.nudges_wait {
            return None;
        }
        let block = self.world.due.first().map(|(at, _)| *at);
        let matter = self.world.matters.next_due();
        let operator = self.view(self.world.latest).next_for_operator();
        block.into_iter().chain(matter).chain(operator).min()
    }

    /// When the next text that waits can be claimed.
    #[must_use]
    pub fn next_try(&self) -> Option<DateTime<Utc>> {
        if self.world.held_since.is_some() {
            return None;
        }
        let World { outbox, links, .. } = &self.world;
        outbox.next_try(links, !self.world.nudges_wait)
    }

    /// How many jobs the last nudge to a phone was about that are still open: a field round has
    /// several, and one word answers for all.
    #[must_use]
    pub fn jobs_told(&self, number: &str) -> usize {
        let view = self.view(self.world.latest);
        let nudge = view.talk(number).and_then(|talk| talk.nudge);
        nudge.map_or(0, |nudge| view.parts_told(&nudge).len())
    }

    /// The jobs of a block on this day: due, late and to come.
    #[must_use]
    pub fn tasks(
        &self,
        block: budwood_scheduler::BlockId,
        today: chrono::NaiveDate,
    ) -> Vec<budwood_scheduler::Task> {
        self.view(self.world.latest).tasks_of(block, today)
    }

    /// The store, to commit to on another thread.
    #[must_use]
    pub fn shared_store(&self) -> Arc<dyn Store> {
        self.store.clone()
    }

    /// What a partner gets.
    ///
    /// # Errors
    ///
    /// When the store cannot be read.
    pub fn parcel(&self, kind: ParcelKind, now: DateTime<Utc>) -> Result<Parcel, StoreError> {
        self.view(now).parcel(kind)
    }

    /// What loading a list would do.
    #[must_use]
    pub fn plan_roll(&self, csv: &[u8], now: DateTime<Utc>) -> crate::roll::Plan {
        self.view(now).plan_roll(csv)
    }

    fn view(&self, now: DateTime<Utc>) -> View<'_> {
        View {
            world: &self.world,
            setup: &self.setup,
            store: self.store.as_ref(),
            now,
        }
    }

    /// The store, to read from.
    #[must_use]
    pub fn store(&self) -> &dyn Store {
        self.store.as_ref()
    }

    /// What the engine works with.
    #[must_use]
    pub fn setup(&self) -> &Setup {
        &self.setup
    }
}

/// Takes one input in, and gives what is said of it. Everything that can happen is a line here.
fn take_in(step: &mut Step<'_>, input: Input) -> Vec<Said> {
    match input {
        Input::Text(inbound) => return step.text(inbound),
        Input::Part(part) => return step.part(part),
        Input::MissedCall { gateway, from, at } => return step.missed_call(&gateway, &from, at),
        Input::Wake => return step.wake(),
        Input::Receipt(receipt) => step.receipt(receipt),
        Input::ClaimNext { gateway } => step.claim_next(&gateway),
        Input::Link { gateway, link } => step.link(&gateway, &link),
        Input::Signs { gateway, signs } => step.world.links.says(&gateway, signs),
        Input::Tried { id, outcome } => step.tried(id, outcome),
        Input::Roll(entries) => {
            step.roll(*entries);
        }
        Input::Give(giving) => step.give(giving),
        Input::Outline(order) => step.outline(&order),
        Input::Unload(deed) => step.unload(deed),
        Input::List(list) => step.list(&list),
        Input::Print(order) => step.print(&order),
        Input::Release => step.release(),
        Input::Copy(part) => step.copy(part),
        // New hours and calendars move the next look at each block.
        Input::Setup(_) => step.plan_all(),
        Input::Look { viewer, look } => step.told.seen = Some(step.view().looked(&viewer, &look)),
        Input::Door(knock) => return step.door(knock),
        Input::Desk { viewer, deed } => return step.desk(&viewer, deed),
    }
    Vec::new()
}
