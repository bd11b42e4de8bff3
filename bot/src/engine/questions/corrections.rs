//! Which facts a correction can reach, and what is said when they are taken back.

use budwood_parser::Correction;
use budwood_scheduler::{BlockId, Body, Event, EventId, PersonId, Role, decide::Draft};
use chrono::TimeDelta;

use super::read_back::draft_of;
use crate::{
    args,
    engine::{said::Said, turn::Turn, view::View},
    wording::{Facts, Key, Phrase, Value, taken_back},
    words::limits,
};

impl View<'_> {
    /// The facts of the phone's last recorded text, if a correction may still reach them.
    pub(crate) fn in_reach(self, number: &str) -> impl Iterator<Item = Event> {
        let reach = self.now - TimeDelta::hours(limits::CORRECTION_HOURS);
        self.talk(number)
            .filter(|talk| talk.last_at.is_some_and(|at| at >= reach))
            .into_iter()
            .flat_map(|talk| &talk.last)
            .filter_map(move |id| self.event(*id))
    }

    /// The last fact of a person's blocks that a correction speaks of: of its kind and block, if it
    /// names them.
    pub(crate) fn last_fact_of(self, person: PersonId, correction: &Correction) -> Option<EventId> {
        let named = correction.block.as_deref();
        let blocks = self.world.directory.blocks_of(person);
        let blocks =
            blocks.filter(|block| named.is_none_or(|name| block.name.eq_ignore_ascii_case(name)));
        let facts = blocks.filter_map(|block| self.state(block.id));
        let facts = facts.flat_map(|state| {
            let last = state.facts.iter().rev();
            last.take(limits::FACTS_OF_BLOCK)
        });
        let is_meant = |event: &Event| {
            let Body::Reported { kind, .. } = &event.body else {
                return false;
            };
            correction.kind.is_none_or(|meant| meant == *kind)
        };
        let events = facts.filter_map(|fact| self.event(*fact));
        events.filter(is_meant).map(|event| event.id).max()
    }

    /// Whoever's record was put right is told so, once; what a leader did can be contested.
    pub(crate) fn fixed_notice(self, turn: &Turn, block: BlockId, now: &Draft) -> Option<Said> {
        let owner = self
            .person(turn.target)
            .filter(|_| turn.target != turn.speaker)?;
        let adviser = self.person(turn.speaker)?;
        let name = &self.world.directory.block(block)?.name;
        let facts = Facts {
            block: name,
            facts: &[now],
            today: self.today_of(owner.id),
        };
        let args = args! {
            "adviser" => Value::name(adviser.called()),
            "block" => Value::name(name),
            "facts" => facts.clauses(),
        };
        let key = if adviser.role == Role::Leader {
            Key::FixedNoticeLeader
        } else {
            Key::FixedNotice
        };
        self.notice_to(owner, turn.message, Phrase::new(key, args))
    }

    /// The last text's facts that still count. "Undo" twice means the last two texts.
    pub(crate) fn undoable(self, number: &str) -> Vec<Event> {
        self.in_reach(number)
            .filter(|event| self.counts(event))
            .collect()
    }

    /// Whether a fact has not been superseded.
    pub(crate) fn counts(self, event: &Event) -> bool {
        let state = event.body.block().and_then(|block| self.state(block));
        state.is_some_and(|state| state.facts.contains(&event.id))
    }

    /// The facts of the same phone's text before these, so that "undo" can go on.
    pub(crate) fn earlier_facts(self, turn: &Turn, events: &[Event]) -> Vec<EventId> {
        let Some(first) = events.iter().map(|event| event.id).min() else {
            return Vec::new();
        };
        let reach = self.now - TimeDelta::hours(limits::CORRECTION_HOURS);
        let mut found: Option<Event> = None;
        let mut same_text: Vec<EventId> = Vec::new();
        let blocks = self.world.directory.blocks_of(turn.target);
        let blocks: Vec<BlockId> = blocks.map(|block| block.id).collect();
        let mut facts: Vec<EventId> = blocks
            .iter()
            .filter_map(|block| self.state(*block))
            .flat_map(|state| state.facts.iter().copied())
            .filter(|fact| *fact < first)
            .collect();
        facts.sort_unstable();
        for fact in facts.into_iter().rev().take(limits::UNDO_LOOK_BACK) {
            let Some(event) = self.event(fact) else {
                continue;
            };
            if event.by != Some(turn.speaker) || event.at < reach {
                continue;
            }
            match &found {
                None => {
                    same_text.push(fact);
                    found = Some(event);
                }
                Some(last) if last.message == event.message => same_text.push(fact),
                Some(_) => break,
            }
        }
        same_text.reverse();
        same_text
    }

    /// What was taken back, and how the block stands without it.
    pub(crate) fn taken_back(self, turn: &Turn, events: &[Event], key: Key) -> Phrase {
        // The same work on several blocks is told once.
        let mut drafts: Vec<Draft> = Vec::new();
        let all = events.iter();
        for draft in all.filter_map(|event| draft_of(&self.world.directory, event)) {
            let same = |other: &Draft| (other.kind, &other.details) == (draft.kind, &draft.details);
            if !drafts.iter().any(same) {
                drafts.push(draft);
            }
        }
        let drafts: Vec<&Draft> = drafts.iter().collect();
        let mut blocks: Vec<BlockId> = events
            .iter()
            .filter_map(|event| event.body.block())
            .collect();
        blocks.sort_unstable();
        blocks.dedup();
        let names: Vec<String> = blocks
            .iter()
            .filter_map(|block| self.world.directory.block(*block))
            .map(|block| self.label(turn, block.owner, &block.name))
            .collect();
        let name = names.join(", ");
        let only = match blocks.as_slice() {
            [only] => Some(*only),
            _ => None,
        };
        let state = only.and_then(|block| self.state(block)).cloned();
        let facts = Facts {
            block: &name,
            facts: &drafts,
            today: self.day_of(turn),
        };
        let example = self.example(turn.target);
        taken_back(key, facts, &state.unwrap_or_default(), example)
    }
}
