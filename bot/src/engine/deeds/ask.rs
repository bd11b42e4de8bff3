//! What is missing or doubtful is asked for; what is not understood gets an example.

use budwood_scheduler::{
    PersonId,
    decide::{Concern, Draft, Missing, Why},
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
        let other = other.map(|person| view.told_apart(turn.speaker, person));
        let other = other.as_deref();
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
        let Some(first) = facts.first() else {
            return Outcome::Chat.silently();
        };
        let blocks = self.view().blocks_for(target, first.kind);
        if blocks.is_empty() {
            return self.no_blocks(turn);
        }
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
            rest: None,
            question,
        });
        Said {
            asks: true,
            ..self.view().reply(turn, phrase)
        }
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

    /// "2, no" to a question of ours. Where only the number can be wrong, the right one is asked for.
    pub(crate) fn drop_question(&mut self, turn: &Turn) -> Done {
        let open = self.talk(&turn.number).open.take();
        if let Some(Question::Confirm(facts)) = open.map(|open| open.question)
            && let [fact] = facts.as_slice()
            && fact.kind.is_counted()
            && fact.details.count.is_some()
            && fact.details.of.is_none()
        {
            let mut fact = fact.clone();
            fact.details.count = None;
            return self.ask_slot(turn, vec![fact], Missing::Count { range: None });
        }
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

    /// Not understood: one example; a person is told when that did not help, or was given lately.
    pub(crate) fn give_example(&mut self, turn: &Turn) -> Done {
        let talk = self.talk(&turn.number);
        talk.unclear = talk.unclear.saturating_add(1);
        if talk.unclear > 1 || !self.may_help(&turn.number) {
            return self.tell(turn, Concern::Unclear);
        }
        let example = self.view().with_example(turn, Key::Unclear);
        Outcome::NotUnderstood.saying([example])
    }
}
