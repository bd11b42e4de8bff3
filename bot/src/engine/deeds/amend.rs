//! Corrections: an earlier fact was wrong. Nothing is deleted; a new fact supersedes it.

use budwood_parser::{Act, Field, Reading};
use budwood_scheduler::{
    Body, Event, Person,
    decide::{Amend, Change, Missing},
};

use chrono::TimeDelta;

use crate::{
    engine::{
        outcome::Outcome,
        questions::read_back::draft_of,
        roles::{self, Verb},
        said::Done,
        step::Step,
        turn::Turn,
    },
    wording::{Key, changed, fixed},
    words::{limits, message::Question},
};

impl Step<'_> {
    /// Does what a correction asks for.
    pub(crate) fn amend(&mut self, turn: &Turn, amend: Amend) -> Done {
        match amend {
            Amend::Undo => self.undo(turn),
            Amend::Wrong => self.wrong(turn),
            Amend::Change(change) => self.change_fact(turn, *change),
            Amend::Unsure(_) => {
                let said = self.view().with_example(turn, Key::UnsureChange);
                Outcome::AskedWhatIsWrong.saying([said])
            }
        }
    }

    /// FIX: what an adviser puts right of somebody else is the last fact of that kind there, whoever
    /// told it. It needs the code of a visit, as all that is of others.
    pub(crate) fn reach_theirs(&mut self, turn: &Turn, speaker: &Person, reading: &Reading) {
        if turn.target == turn.speaker || !roles::may(speaker.role, Verb::Fix) {
            return;
        }
        let [Act::Correct(correction)] = reading.acts.as_slice() else {
            return;
        };
        let last = self.view().last_fact_of(turn.target, correction);
        let now = self.now;
        let talk = self.talk(&turn.number);
        talk.last = last.into_iter().collect();
        talk.last_at = Some(now);
    }

    /// "NO" of a member to what the leader told of them, as long as they may contest it: that is
    /// what it is about, and not the last text of their own.
    pub(crate) fn reach_contested(&mut self, turn: &Turn, reading: &Reading) {
        let [Act::No | Act::Undo | Act::Correct(_)] = reading.acts.as_slice() else {
            return;
        };
        let told = self.view().contestable(turn);
        if told.is_empty() {
            return;
        }
        let now = self.now;
        let talk = self.talk(&turn.number);
        talk.last = told;
        talk.last_at = Some(now);
    }

    fn take_back(&mut self, turn: &Turn, events: &[Event]) {
        for event in events {
            if let Some(block) = event.body.block() {
                let owner = self.view().owner_of(event).unwrap_or(turn.target);
                let telling = self.view().telling(turn, owner);
                self.record(telling, Some(event.id), Body::TakenBack { block });
            }
        }
        let earlier = self.view().earlier_facts(turn, events);
        self.close_question(&turn.number);
        self.talk(&turn.number).last = earlier;
    }

    fn undo(&mut self, turn: &Turn) -> Done {
        let events = self.view().undoable(&turn.number);
        if events.is_empty() {
            let said = self.view().with_example(turn, Key::NothingToUndo);
            return Outcome::NothingToUndo.saying([said]);
        }
        self.take_back(turn, &events);
        let view = self.view();
        let phrase = view.taken_back(turn, &events, Key::TakenBack);
        let mut said = vec![view.reply(turn, phrase)];
        said.extend(view.told_of_taking_back(turn, &events));
        Outcome::TakenBack.saying(said)
    }

    /// "NO" to a read-back: take it back and ask what is right.
    fn wrong(&mut self, turn: &Turn) -> Done {
        let lately = self.now - TimeDelta::hours(limits::BARE_NO_HOURS);
        let told = self.view().talk(&turn.number).and_then(|talk| talk.last_at);
        if told.is_none_or(|at| at < lately) {
            return Outcome::NothingWasAsked.silently();
        }
        let events = self.view().undoable(&turn.number);
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
            let view = self.view();
            let phrase = view.taken_back(turn, &events, Key::TakenBackAsk);
            let mut said = vec![view.reply(turn, phrase)];
            said.extend(view.told_of_taking_back(turn, &events));
            return Outcome::TakenBack.saying(said);
        };
        let phrase = self.view().taken_back(turn, &events, Key::TakenBackCount);
        let owner = self.view().owner_of(first).unwrap_or(turn.target);
        draft.details.count = None;
        let question = Question::Ask {
            facts: vec![draft],
            missing: Missing::Count { range: None },
        };
        let mut said = vec![self.ask(turn, owner, question, phrase)];
        said.extend(self.view().told_of_taking_back(turn, &events));
        Outcome::TakenBack.saying(said)
    }

    fn change_fact(&mut self, turn: &Turn, change: Change) -> Done {
        let view = self.view();
        let last = view.talk(&turn.number).map(|talk| talk.last.as_slice());
        let old = last
            .unwrap_or_default()
            .iter()
            .filter_map(|id| view.event(*id))
            .filter(|event| matches!(event.body, Body::Reported { .. }))
            .nth(change.index)
            .filter(|event| view.counts(event));
        let Some(old) = old else {
            return self.undo(turn);
        };
        // What was told of somebody else stays theirs.
        let turn = &Turn {
            target: view.owner_of(&old).unwrap_or(turn.target),
            ..turn.clone()
        };
        let Some(block) = view.block_named(turn.target, change.now.block.as_deref()) else {
            return self.amend(turn, Amend::Unsure(change.said));
        };
        let body = Body::Reported {
            block,
            kind: change.now.kind,
            on: change.now.on,
            details: change.now.details.clone(),
        };
        let telling = self.view().telling(turn, turn.target);
        let new = self.record(telling, Some(old.id), body);
        let now = self.now;
        self.close_question(&turn.number);
        let talk = self.talk(&turn.number);
        for id in talk.last.iter_mut().filter(|id| **id == old.id) {
            *id = new;
        }
        talk.last_at = Some(now);
        let view = self.view();
        let from = (change.field == Field::Block)
            .then(|| old.body.block())
            .flatten()
            .and_then(|block| view.world.directory.block(block))
            .map(|block| block.name.as_str());
        let is_theirs = turn.target != turn.speaker;
        let said = view.with_stand(turn, block, &[&change.now], |facts, after| {
            if is_theirs {
                fixed(new.0, from, facts, after)
            } else {
                changed(from, facts, after)
            }
        });
        let told = view.fixed_notice(turn, block, &change.now);
        let contested = view.contested(turn, &[old]);
        Outcome::Changed.saying(said.into_iter().chain(told).chain(contested))
    }
}
