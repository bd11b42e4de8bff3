//! What is missing or doubtful is asked for; what is not understood gets an example.

use budwood_scheduler::{
    Block, PersonId,
    decide::{Draft, Missing, Why},
};
use chrono::TimeDelta;

use crate::{
    args,
    engine::{
        step::{Step, civil_day},
        turn::Turn,
    },
    wording::{Key, Said},
    words::{
        limits,
        message::{Open, Question},
    },
};

impl Step<'_> {
    /// Asks whether doubtful facts are right.
    pub(crate) fn ask_confirm(
        &mut self,
        turn: &Turn,
        facts: Vec<Draft>,
        why: &[Why],
    ) -> &'static str {
        let target = turn.target;
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return "from a stranger";
        };
        let other = (target != turn.speaker)
            .then(|| {
                self.world
                    .directory
                    .person(target)
                    .map(|person| person.name.clone())
            })
            .flatten();
        let today = civil_day(turn.sent_at, self.zone_of(target));
        let block = facts
            .first()
            .and_then(|fact| fact.block.as_deref())
            .map(|block| match other {
                // The question names them already.
                Some(_) => block.to_owned(),
                None => self.label(turn, target, block),
            })
            .unwrap_or_default();
        let drafts: Vec<&Draft> = facts.iter().collect();
        let said = Said {
            block: &block,
            facts: &drafts,
            today,
        };
        let text = self
            .tongue(speaker)
            .confirm(other.as_deref(), said, why.first());
        self.ask(turn, target, Question::Confirm(facts), text);
        "asked to confirm"
    }

    /// Asks for one slot.
    pub(crate) fn ask_slot(
        &mut self,
        turn: &Turn,
        facts: Vec<Draft>,
        missing: Missing,
    ) -> &'static str {
        let target = turn.target;
        let blocks: Vec<String> = self
            .world
            .directory
            .blocks_of(target)
            .map(|block| block.name.clone())
            .collect();
        if blocks.is_empty() {
            return self.no_blocks(turn);
        }
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return "from a stranger";
        };
        let Some(first) = facts.first() else {
            return "chat";
        };
        let text = self.tongue(speaker).ask(first, &missing, &blocks);
        self.ask(turn, target, Question::Ask { facts, missing }, text);
        "asked for a slot"
    }

    pub(crate) fn ask(&mut self, turn: &Turn, person: PersonId, question: Question, text: String) {
        let now = self.now;
        let message = turn.message;
        self.talk(&turn.number).open = Some(Open {
            at: now,
            message,
            person: Some(person),
            question,
        });
        self.answer(&turn.number, turn.message, text);
    }

    /// What was asked is answered, or no longer matters. A code is waited for all the same.
    pub(crate) fn close_question(&mut self, number: &str) {
        let talk = self.talk(number);
        talk.open = talk
            .open
            .take()
            .filter(|open| matches!(open.question, Question::Code { .. }));
    }

    pub(crate) fn no_blocks(&mut self, turn: &Turn) -> &'static str {
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return "from a stranger";
        };
        let text = self.plain(speaker, Key::NoBlocks);
        self.answer(&turn.number, turn.message, text);
        "has no block"
    }

    /// "2, no" to a question of ours.
    pub(crate) fn drop_question(&mut self, turn: &Turn) -> &'static str {
        self.talk(&turn.number).open = None;
        let text = self.say_with_example(turn, Key::Dropped);
        self.answer(&turn.number, turn.message, text);
        "dropped"
    }

    /// A text of ours that ends in an example with the farmer's own block.
    pub(crate) fn say_with_example(&self, turn: &Turn, key: Key) -> String {
        let tongue = self.tongue_of(turn.speaker);
        let example = self.example(turn.target);
        tongue.fit(|_| tongue.say(key, args! { "example" => example.as_str() }))
    }

    pub(crate) fn example(&self, person: PersonId) -> String {
        let block = self
            .world
            .directory
            .blocks_of(person)
            .next()
            .map_or_else(|| "A".to_owned(), |block: &Block| block.name.clone());
        self.tongue_of(person)
            .say(Key::Example, args! { "block" => block })
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
    pub(crate) fn give_example(&mut self, turn: &Turn) -> &'static str {
        let talk = self.talk(&turn.number);
        talk.unclear = talk.unclear.saturating_add(1);
        let again = talk.unclear == 2;
        if again {
            self.notify_about(turn, Key::UnclearNotice, None);
        }
        if self.may_help(&turn.number) {
            let text = self.say_with_example(turn, Key::Unclear);
            self.answer(&turn.number, turn.message, text);
        }
        "not understood"
    }
}
