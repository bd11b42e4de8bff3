//! The account of facts: in order, each with its text, and what they come to for each block.

use std::collections::BTreeMap;

use budwood::store::Change;
use budwood_parser::{Ailment, Details, Kind};
use budwood_scheduler::{BlockId, BlockState, Body, Event, EventId, TaskKind};
use chrono::NaiveDate;

/// Every fact, and by block those that were not superseded.
#[derive(Clone, Default)]
pub(super) struct Facts {
    all: BTreeMap<EventId, Event>,
    by_block: BTreeMap<BlockId, Vec<EventId>>,
}

impl Facts {
    pub(super) fn take(&mut self, event: &Event, change: &Change) {
        // A fact belongs to the text that told it, in the same write: so it is stored once, and
        // its text with it.
        if let Some(message) = event.message {
            let known = change.received.iter().any(|text| text.id == message);
            assert!(known, "a fact without its text");
        }
        let last = self.all.last_key_value().map(|(id, _)| *id);
        assert!(Some(event.id) > last, "facts out of order");
        if let Some(old) = event.supersedes {
            let block = self.all.get(&old).and_then(|event| event.body.block());
            let counted = block.and_then(|block| self.by_block.get_mut(&block));
            counted
                .expect("only a fact of a block is superseded")
                .retain(|id| *id != old);
        }
        if let Some(block) = event.body.block() {
            self.by_block.entry(block).or_default().push(event.id);
        }
        self.all.insert(event.id, event.clone());
    }

    pub(super) fn all(&self) -> impl Iterator<Item = &Event> {
        self.all.values()
    }

    /// The facts of a block that were not superseded, oldest first.
    pub(super) fn of(&self, block: BlockId) -> impl DoubleEndedIterator<Item = &Event> {
        self.by_block
            .get(&block)
            .into_iter()
            .flatten()
            .filter_map(|id| self.all.get(id))
    }

    /// A state is what the facts come to, and its trees add up.
    pub(super) fn agree_with(&self, block: BlockId, state: &BlockState) {
        let replayed = BlockState::replay(self.of(block));
        assert_eq!(&replayed, state, "the log of block {block} says otherwise");
        let trees = state.planted().saturating_add(state.replaced());
        assert!(state.alive() <= trees, "more trees alive than planted");
        assert!(state.dead() <= trees, "more trees dead than planted");
    }

    /// Whether work that one report proves was reported for this round.
    pub(super) fn is_reported(&self, block: BlockId, task: TaskKind, due: NaiveDate) -> bool {
        // To look for termites that are near, a report of white root says nothing.
        let is_warned = self.of(block).any(|event| {
            matches!(event.body, Body::Warned { ailment, on, .. }
                if ailment != Ailment::WhiteRoot && on == due)
        });
        !is_warned
            && self.of(block).any(|event| {
                matches!(&event.body, Body::Reported { kind, on, details, .. }
                    if proves(task, *kind, details) && on.day() >= due)
            })
    }

    /// Until when the farmer put a job off, if no word of it came after that.
    pub(super) fn put_off(&self, block: BlockId, job: TaskKind) -> Option<NaiveDate> {
        self.of(block).rev().find_map(|event| match &event.body {
            Body::Postponed { task, until, .. } if *task == job => Some(Some(*until)),
            Body::TaskDone { task, .. } if *task == job => Some(None),
            Body::Reported { kind, .. } if job.proven_by() == Some(*kind) => Some(None),
            Body::Postponed { .. }
            | Body::TaskDone { .. }
            | Body::Reported { .. }
            | Body::Nudged { .. }
            | Body::TakenBack { .. }
            | Body::Warned { .. }
            | Body::WindowOpened { .. }
            | Body::PlantingHeld { .. }
            | Body::ConsentGiven { .. }
            | Body::ConsentWithdrawn { .. }
            | Body::LeftAlone { .. }
            | Body::GoneOn { .. }
            | Body::PhoneLost { .. }
            | Body::PhoneFound { .. }
            | Body::NumberMoved { .. }
            | Body::Entered { .. }
            | Body::HandedOver { .. }
            | Body::Passed(_)
            | Body::Erased { .. } => None,
        })?
    }

    /// The days of the nudges for the present round of a job, oldest first.
    pub(super) fn tries(&self, block: BlockId, job: TaskKind, round: NaiveDate) -> Vec<NaiveDate> {
        let nudges = self.of(block).rev().filter_map(|event| {
            let Body::Nudged { task, on, due, .. } = event.body else {
                return None;
            };
            (task == job).then_some((on, due))
        });
        let mut days: Vec<NaiveDate> = nudges
            .take_while(|(_, due)| *due == round)
            .map(|(on, _)| on)
            .collect();
        days.reverse();
        days
    }

    /// The day on which the first fact of a block became known.
    pub(super) fn known_on(&self, block: BlockId) -> Option<NaiveDate> {
        self.of(block)
            .find(|event| !matches!(event.body, Body::TakenBack { .. }))
            .map(|event| event.at.date_naive())
    }
}

/// Whether a report proves a job done by itself.
fn proves(task: TaskKind, kind: Kind, details: &Details) -> bool {
    match task {
        TaskKind::Weed => kind == Kind::Weeded,
        TaskKind::Feed => kind == Kind::Fertilised,
        TaskKind::SowCover => kind == Kind::CoverSown,
        TaskKind::RainWatch => kind == Kind::Rain,
        TaskKind::Prune => kind == Kind::Pruned,
        TaskKind::GirthCensus => kind == Kind::Girth,
        TaskKind::RootCheck => kind == Kind::Disease && details.ailment == Some(Ailment::WhiteRoot),
        // Several reports may go into one of these, so one of them proves nothing.
        TaskKind::OrderPlants
        | TaskKind::Clear
        | TaskKind::Line
        | TaskKind::Mulch
        | TaskKind::Firebreak
        | TaskKind::CountTall
        | TaskKind::GetReady
        | TaskKind::DigPits
        | TaskKind::FillPits
        | TaskKind::LeafCheck
        | TaskKind::Intercrop
        | TaskKind::OpenRest
        | TaskKind::HandOver
        | TaskKind::Plant
        | TaskKind::SurvivalCheck
        | TaskKind::Backfill
        | TaskKind::InduceBranching
        | TaskKind::LookAtInduced
        | TaskKind::Open => false,
    }
}
