//! What a text that waits may have told: the readings from which a person chooses by a number.
//!
//! A block that was not named, or a number between two, makes a reading of each.

use budwood_parser::{Known, Reading, Report, Sender};
use budwood_scheduler::{
    BlockState, PersonId,
    decide::{Concern, Decision, Draft, Missing},
};

use crate::{
    args,
    engine::{turn::Turn, view::View},
    wording::{Facts, Key, Phrase, Value},
    words::{limits, matter::Matter},
};

impl View<'_> {
    /// What a text that waits would store, the likeliest first.
    pub(crate) fn readings_of(self, matter: &Matter) -> Vec<Vec<Draft>> {
        let Some(sender) = self.person(matter.person) else {
            return Vec::new();
        };
        let turn = Turn {
            number: matter.number.clone(),
            message: matter.message,
            speaker: sender.id,
            target: sender.id,
            text: matter.text.clone(),
            sent_at: matter.at,
        };
        let reading = self.read(&turn, sender.role);
        // It tells of somebody else, or may: a person sorts it out.
        if reading.member.is_some() || self.everyone_on(&matter.number).len() > 1 {
            return Vec::new();
        }
        let own = std::iter::once(reading);
        // Where somebody is in need, what was not sure is no help.
        if matches!(matter.concern, Concern::Alarm(_) | Concern::CallMe) {
            let mut decisions = own.map(|reading| self.decide(&turn, &reading, sender.role));
            return decisions.next().map_or_else(Vec::new, as_it_is);
        }
        let guessed = self.guesses(&turn).into_iter().map(|reports| Reading {
            reports,
            ..Reading::default()
        });
        let mut readings: Vec<Vec<Draft>> = Vec::new();
        for reading in own.chain(guessed) {
            let decision = self.decide(&turn, &reading, sender.role);
            for facts in self.storable(sender.id, decision) {
                // What has no figure in it is too easily found in a text about something else.
                if facts.iter().any(has_figure) && !readings.contains(&facts) {
                    readings.push(facts);
                }
            }
        }
        readings.truncate(limits::READINGS_MAX);
        readings
    }

    fn guesses(self, turn: &Turn) -> Vec<Vec<Report>> {
        let languages = self.languages_of(&turn.number, &[turn.speaker]);
        let languages: Vec<&str> = languages.iter().map(String::as_str).collect();
        let blocks = self.world.directory.blocks_of(turn.speaker);
        let blocks: Vec<&str> = blocks.map(|block| block.name.as_str()).collect();
        let known = Known {
            languages: &languages,
            blocks: &blocks,
            groups: &[],
            members: &[],
            rolls: &[],
            sender: Sender::Farmer,
        };
        self.setup.reader.guesses(&turn.text, &known)
    }

    /// The facts that a decision would store by a person's word; of what is missing, each that it
    /// may be.
    fn storable(self, person: PersonId, decision: Decision) -> Vec<Vec<Draft>> {
        if let Decision::Both(first, _) = decision {
            return self.storable(person, *first);
        }
        let Decision::Ask { facts, missing } = decision else {
            return as_it_is(decision);
        };
        match missing {
            Missing::Block { unknown: None } => self.on_each_block(person, &facts),
            Missing::Count {
                range: Some((low, high)),
            } => [low, high].map(|count| counted(&facts, count)).into(),
            Missing::Block { .. } | Missing::Count { .. } | Missing::Values | Missing::Date => {
                Vec::new()
            }
        }
    }

    /// On each block of theirs where the work can be; planted ones first, as most is told of these.
    fn on_each_block(self, person: PersonId, facts: &[Draft]) -> Vec<Vec<Draft>> {
        let mut blocks: Vec<_> = self.world.directory.blocks_of(person).collect();
        let is_bare = |block| self.state(block).map_or(0, BlockState::planted) == 0;
        blocks.sort_by_key(|block| is_bare(block.id));
        let on = |name: &String| {
            let facts = facts.iter().map(|fact| Draft {
                block: fact.block.clone().or_else(|| Some(name.clone())),
                ..fact.clone()
            });
            facts.collect()
        };
        blocks.iter().map(|block| on(&block.name)).collect()
    }

    /// The readings of a text as they are shown, with their numbers.
    pub(crate) fn readings_shown(self, matter: &Matter, readings: &[Vec<Draft>]) -> Vec<Phrase> {
        let today = self.today_of(matter.person);
        let shown = (1_u32..).zip(readings).map(|(number, facts)| {
            let mut blocks: Vec<&str> = facts
                .iter()
                .filter_map(|fact| fact.block.as_deref())
                .collect();
            blocks.dedup();
            let block = blocks.join(", ");
            let drafts: Vec<&Draft> = facts.iter().collect();
            let told = Facts {
                block: &block,
                facts: &drafts,
                today,
            };
            let args = args! {
                "number" => number,
                "block" => Value::name(&block),
                "facts" => told.clauses(),
            };
            Phrase::new(Key::WaitingReading, args)
        });
        shown.collect()
    }
}

/// The facts of a decision from which nothing is missing.
fn as_it_is(decision: Decision) -> Vec<Vec<Draft>> {
    match decision {
        Decision::Record(facts) | Decision::Confirm { facts, .. } => vec![facts],
        Decision::Ask { .. }
        | Decision::Amend(_)
        | Decision::Answer(_)
        | Decision::Reply(_)
        | Decision::Help(_)
        | Decision::Silent(_)
        | Decision::Person(_)
        | Decision::Both(..) => Vec::new(),
    }
}

fn has_figure(fact: &Draft) -> bool {
    let details = &fact.details;
    details.count.is_some() || details.area.is_some() || !details.values_cm.is_empty()
}

/// The same with this number where one is missing.
fn counted(facts: &[Draft], count: u32) -> Vec<Draft> {
    let mut facts = facts.to_vec();
    let open = facts.iter_mut().find(|fact| fact.details.count.is_none());
    if let Some(fact) = open {
        fact.details.count = Some(count);
    }
    facts
}
