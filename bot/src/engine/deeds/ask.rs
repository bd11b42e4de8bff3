//! What is missing or doubtful is asked for; what is not understood gets an example.

use budwood_scheduler::{
    PersonId,
    decide::{Draft, Missing, Why},
};
use chrono::TimeDelta;

use crate::{
    engine::{
        outcome::Outcome,
        said::{Done, Said},
        step::Step,
        turn::Turn,
    },
    wording::{Facts, Key, Phrase, ask, confirm},
    words::{
        limits,
        message::{Open, Question},
    },
};

impl Step<'_> {
    /// Asks whether doubtful facts are right.
    pub(crate) fn ask_confirm(&mut self, turn: &Turn, facts: Vec<Draft>, why: &[Why]) -> Done {
        let view = self.view();
        let target = turn.target;
        let other = view.person(target).filter(|_| target != turn.speaker);
        let other = other.map(|person| person.name.as_str());
        let named = facts.first().and_then(|fact| fact.block.as_deref());
        let block = named.map(|block| match other {
            // The question names them already.
            Some(_) => block.to_owned(),
            None => view.label(turn, target, block),
        });
        let drafts: Vec<&Draft> = facts.iter().collect();
        let told = Facts {
            block: &block.unwrap_or_default(),
            facts: &drafts,
            today: view.day_of(turn),
        };
        let phrase = confirm(other, told, why.first());
        let said = self.ask(turn, target, Question::Confirm(facts), phrase);
        Outcome::AskedToConfirm.saying([said])
    }

    /// Asks for one slot.
    pub(crate) fn ask_slot(&mut self, turn: &Turn, facts: Vec<Draft>, missing: Missing) -> Done {
        let target = turn.target;
        let blocks = self.world.directory.blocks_of(target);
        let blocks: Vec<String> = blocks.map(|block| block.name.clone()).collect();
        if blocks.is_empty() {
            return self.no_blocks(turn);
        }
        let Some(first) = facts.first() else {
            return Outcome::Chat.silently();
        };
        let phrase = ask(first, &missing, &blocks);
        let said = self.ask(turn, target, Question::Ask { facts, missing }, phrase);
        Outcome::AskedForSlot.saying([said])
    }

    /// Waits for the answer to a question.
    pub(crate) fn ask(
        &mut self,
        turn: &Turn,
        person: PersonId,
        question: Question,
        phrase: Phrase,
    ) -> Said {
        self.talk(&turn.number).open = Some(Open {
            at: self.now,
            message: turn.message,
            person: Some(person),
            question,
        });
        self.view().reply(turn, phrase)
    }

    /// What was asked is answered, or no longer matters. A code is waited for all the same.
    pub(crate) fn close_question(&mut self, number: &str) {
        let talk = self.talk(number);
        talk.open = talk
            .open
            .take()
            .filter(|open| matches!(open.question, Question::Code { .. }));
    }

    pub(crate) fn no_blocks(&self, turn: &Turn) -> Done {
        let view = self.view();
        let Some(speaker) = view.person(turn.speaker) else {
            return Outcome::FromStranger.silently();
        };
        let phrase = view.signed(speaker, Key::NoBlocks);
        Outcome::HasNoBlock.saying([view.reply(turn, phrase)])
    }

    /// "2, no" to a question of ours.
    pub(crate) fn drop_question(&mut self, turn: &Turn) -> Done {
        self.talk(&turn.number).open = None;
        Outcome::Dropped.saying([self.view().with_example(turn, Key::Dropped)])
    }

    /// Whether an example may be sent to this phone now: one a day.
    pub(crate) fn may_help(&mut self, number: &str) -> bool {
        let now = self.now;
        let talk = self.talk(number);
        let lately = now - TimeDelta::hours(limits::EXAMPLE_HOURS);
        if talk.helped_at.is_some_and(|at| at > lately) {
            return false;
        }
        talk.helped_at = Some(now);
        true
    }

    /// Not understood: one example; after two in a row a person is told.
    pub(crate) fn give_example(&mut self, turn: &Turn) -> Done {
        let talk = self.talk(&turn.number);
        talk.unclear = talk.unclear.saturating_add(1);
        let again = talk.unclear == 2;
        let notice = if again {
            self.view().see_to(turn, Key::UnclearNotice, None)
        } else {
            None
        };
        let may_help = self.may_help(&turn.number);
        let example = may_help.then(|| self.view().with_example(turn, Key::Unclear));
        Outcome::NotUnderstood.saying([notice, example].into_iter().flatten())
    }
}
