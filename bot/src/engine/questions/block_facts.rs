//! What the facts of blocks tell beyond their state: who told what, from whose phone, and when.
//!
//! The facts lie in the store, so an answer reads a bounded number of them. Deliberately absent:
//! what follows from them; that is the scheduler's.

use budwood_parser::{Ailment, Kind};
use budwood_scheduler::{
    Block, BlockId, Body, Event, MessageId, PersonId, Source,
    figures::{Name, Table},
    group::{
        health::{Place, Sighting},
        trust::Evidence,
    },
};
use chrono::NaiveDate;

use crate::{
    engine::{local_time::civil_day, view::View},
    words::limits,
};

/// What the facts of one block tell.
#[derive(Clone, Debug, Default)]
pub(crate) struct Look {
    /// Days on which the farmer, or a leader for them, told something.
    pub(crate) heard: Vec<NaiveDate>,
    /// Sick trees, each with the text that told of them.
    pub(crate) sightings: Vec<(Option<MessageId>, Sighting)>,
    /// The last word on how many trees live.
    pub(crate) counted: Option<Evidence>,
}

/// Facts to look at of each of so many blocks.
fn facts_each(blocks: usize) -> usize {
    let each = limits::FACTS_LOOKED_AT / blocks.max(1);
    each.clamp(1, limits::FACTS_OF_BLOCK)
}

impl View<'_> {
    /// The names of the blocks where work of this kind can have been done; all of them when it can
    /// be nowhere.
    pub(crate) fn blocks_for(self, owner: PersonId, kind: Kind) -> Vec<String> {
        let names = |is_bare_left_out: bool| -> Vec<String> {
            let is_planted = |block: BlockId| {
                let state = self.state(block);
                state.is_some_and(|state| state.planted() > 0)
            };
            let blocks = self.world.directory.blocks_of(owner);
            blocks
                .filter(|block| !is_bare_left_out || is_planted(block.id))
                .map(|block| block.name.clone())
                .collect()
        };
        let planted = names(kind.needs_trees());
        if planted.is_empty() {
            names(false)
        } else {
            planted
        }
    }

    /// Looks at the last facts of blocks; each gets an equal part of what one answer may read.
    pub(crate) fn look<'b>(self, blocks: &[&'b Block]) -> Vec<(&'b Block, Look)> {
        let each = facts_each(blocks.len());
        blocks
            .iter()
            .map(|block| (*block, self.look_at(block, each)))
            .collect()
    }

    /// Of how many trees in per cent the last fact under a figure was seen on a visit.
    pub(crate) fn visited_pct(self, table: &Table<'_>, name: Name) -> Option<u32> {
        let blocks = table.farmers.iter().map(|farmer| farmer.stands.len());
        let most = facts_each(blocks.sum());
        table.visited_pct(name, |block| self.known_of(block, most))
    }

    fn look_at(self, block: &Block, most: usize) -> Look {
        let mut look = Look::default();
        let facts = self.state(block.id).map(|state| &state.facts);
        let last = facts.into_iter().flat_map(|facts| facts.iter().rev());
        for event in last.take(most).filter_map(|fact| self.event(*fact)) {
            self.take_in(block, &event, &mut look);
        }
        look
    }

    fn take_in(self, block: &Block, event: &Event, look: &mut Look) {
        if let Some(by) = event.by
            && event.source != Source::Visit
        {
            look.heard.push(civil_day(event.at, self.zone_of(by)));
        }
        let Body::Reported {
            kind, on, details, ..
        } = &event.body
        else {
            return;
        };
        if kind.counts_stand() && look.counted.is_none_or(|known| known.on < on.day()) {
            look.counted = Some(Evidence {
                source: event.source,
                on: on.day(),
                figure: details.count.unwrap_or(0),
                sample: None,
            });
        }
        if *kind == Kind::Disease {
            let sighting = Sighting {
                place: self.place(block),
                teller: self.voice(event.by.unwrap_or(block.owner)),
                source: event.source,
                ailment: details.ailment.unwrap_or(Ailment::Other),
                on: on.day(),
                trees: details.count,
            };
            look.sightings.push((event.message, sighting));
        }
    }

    /// Where a block lies, on the map or at least by its group.
    pub(crate) fn place(self, block: &Block) -> Place {
        let owner = self.world.directory.person(block.owner);
        Place {
            block: block.id,
            group: owner.and_then(|owner| owner.group),
            point: block.point,
        }
    }

    /// People who share a phone speak with one voice.
    pub(crate) fn voice(self, person: PersonId) -> PersonId {
        let directory = &self.world.directory;
        directory
            .numbers_of(person)
            .filter_map(|number| directory.phone(number))
            .flat_map(budwood_scheduler::Phone::people)
            .min()
            .unwrap_or(person)
    }
}
