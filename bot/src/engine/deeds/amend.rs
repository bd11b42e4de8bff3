//! Corrections: an earlier fact was wrong. Nothing is deleted; a new fact supersedes it.

use budwood_parser::Field;
use budwood_scheduler::{
    BlockId, Body, Event, EventId,
    decide::{Amend, Change, Draft, Missing},
};
use chrono::TimeDelta;

use super::facts::draft_of;
use crate::{
    engine::{
        step::{Step, civil_day},
        turn::Turn,
    },
    wording::{Key, Said},
    words::{limits, message::Question},
};

impl Step<'_> {
    /// Does what a correction asks for.
    pub(crate) fn amend(&mut self, turn: &Turn, amend: Amend) -> &'static str {
        match amend {
            Amend::Undo => self.undo(turn),
            Amend::Wrong => self.wrong(turn),
            Amend::Change(change) => self.change_fact(turn, *change),
            Amend::Unsure(_) => {
                let text = self.say_with_example(turn, Key::UnsureChange);
                self.answer(&turn.number, turn.message, text);
                "asked what is wrong"
            }
        }
    }

    /// The facts of the phone's last recorded text, if a correction may still reach them.
    pub(crate) fn in_reach(&self, number: &str) -> impl Iterator<Item = Event> {
        let reach = self.now - TimeDelta::hours(limits::CORRECTION_HOURS);
        self.world
            .talks
            .get(number)
            .filter(|talk| talk.last_at.is_some_and(|at| at >= reach))
            .into_iter()
            .flat_map(|talk| &talk.last)
            .filter_map(|id| self.event(*id))
    }

    /// The last text's facts that still count. "Undo" twice means the last two texts.
    fn undoable(&self, number: &str) -> Vec<Event> {
        self.in_reach(number)
            .filter(|event| self.counts(event))
            .collect()
    }

    /// Whether a fact has not been superseded.
    fn counts(&self, event: &Event) -> bool {
        event
            .body
            .block()
            .and_then(|block| self.world.states.get(&block))
            .is_some_and(|state| state.facts.contains(&event.id))
    }

    fn take_back(&mut self, turn: &Turn, events: &[Event]) {
        let telling = self.telling(turn, turn.target);
        for event in events {
            if let Some(block) = event.body.block() {
                self.record(telling, Some(event.id), Body::TakenBack { block });
            }
        }
        let earlier = self.earlier_facts(turn, events);
        self.close_question(&turn.number);
        self.talk(&turn.number).last = earlier;
    }

    /// The facts of the same phone's text before these, so that "undo" can go on.
    fn earlier_facts(&self, turn: &Turn, events: &[Event]) -> Vec<EventId> {
        let Some(first) = events.iter().map(|event| event.id).min() else {
            return Vec::new();
        };
        let reach = self.now - TimeDelta::hours(limits::CORRECTION_HOURS);
        let mut found: Option<Event> = None;
        let mut same_text: Vec<EventId> = Vec::new();
        let blocks: Vec<BlockId> = self
            .world
            .directory
            .blocks_of(turn.target)
            .map(|block| block.id)
            .collect();
        let mut facts: Vec<EventId> = blocks
            .iter()
            .filter_map(|block| self.world.states.get(block))
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

    fn undo(&mut self, turn: &Turn) -> &'static str {
        let events = self.undoable(&turn.number);
        if events.is_empty() {
            let text = self.say_with_example(turn, Key::NothingToUndo);
            self.answer(&turn.number, turn.message, text);
            return "nothing to undo";
        }
        self.take_back(turn, &events);
        let text = self.word_taken_back(turn, &events, Key::TakenBack);
        self.answer(&turn.number, turn.message, text);
        "taken back"
    }

    /// "NO" to a read-back: take it back and ask what is right.
    fn wrong(&mut self, turn: &Turn) -> &'static str {
        let events = self.undoable(&turn.number);
        let Some(first) = events.first() else {
            return self.undo(turn);
        };
        self.take_back(turn, &events);
        let draft = draft_of(&self.world.directory, first);
        let lone_count = match (&draft, events.as_slice()) {
            (Some(draft), [_]) => draft.details.count.is_some() && draft.details.of.is_none(),
            _ => false,
        };
        let Some(mut draft) = draft.filter(|_| lone_count) else {
            let text = self.word_taken_back(turn, &events, Key::TakenBackAsk);
            self.answer(&turn.number, turn.message, text);
            return "taken back";
        };
        let text = self.word_taken_back(turn, &events, Key::TakenBackCount);
        draft.details.count = None;
        let question = Question::Ask {
            facts: vec![draft],
            missing: Missing::Count { range: None },
        };
        self.ask(turn, turn.target, question, text);
        "taken back"
    }

    fn word_taken_back(&self, turn: &Turn, events: &[Event], key: Key) -> String {
        let drafts: Vec<Draft> = events
            .iter()
            .filter_map(|event| draft_of(&self.world.directory, event))
            .collect();
        let drafts: Vec<&Draft> = drafts.iter().collect();
        let block = events.first().and_then(|event| event.body.block());
        let name = block
            .and_then(|block| self.world.directory.block(block))
            .map(|block| self.label(turn, block.owner, &block.name))
            .unwrap_or_default();
        let today = civil_day(turn.sent_at, self.zone_of(turn.target));
        let state = block
            .and_then(|block| self.world.states.get(&block))
            .cloned();
        let said = Said {
            block: &name,
            facts: &drafts,
            today,
        };
        let example = self.example(turn.target);
        self.tongue_of(turn.speaker)
            .taken_back(key, said, &state.unwrap_or_default(), &example)
    }

    fn change_fact(&mut self, turn: &Turn, change: Change) -> &'static str {
        let last = self
            .world
            .talks
            .get(&turn.number)
            .map(|talk| talk.last.clone());
        let old = last
            .unwrap_or_default()
            .iter()
            .filter_map(|id| self.event(*id))
            .filter(|event| matches!(event.body, Body::Reported { .. }))
            .nth(change.index)
            .filter(|event| self.counts(event));
        let Some(old) = old else {
            return self.undo(turn);
        };
        let Some(block) = self.block_named(turn.target, change.now.block.as_deref()) else {
            return self.amend(turn, Amend::Unsure(change.said));
        };
        let body = Body::Reported {
            block,
            kind: change.now.kind,
            on: change.now.on,
            details: change.now.details.clone(),
        };
        let telling = self.telling(turn, turn.target);
        let new = self.record(telling, Some(old.id), body);
        let now = self.now;
        self.close_question(&turn.number);
        let talk = self.talk(&turn.number);
        for id in talk.last.iter_mut().filter(|id| **id == old.id) {
            *id = new;
        }
        talk.last_at = Some(now);
        let from = (change.field == Field::Block)
            .then(|| old.body.block())
            .flatten()
            .and_then(|block| self.world.directory.block(block))
            .map(|block| block.name.clone());
        let text = self.with_stand(turn, block, &[&change.now], |tongue, said, after| {
            tongue.changed(from.as_deref(), said, after)
        });
        self.answer(&turn.number, turn.message, text);
        "changed"
    }
}
