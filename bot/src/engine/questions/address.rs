//! To whom something is said: the answer to a text, and the notice to an adviser. And what every
//! answer is made of: who is spoken to, who signs, an example with a block of theirs.

use budwood_scheduler::{Consent, MessageId, Person, PersonId};

use crate::{
    args,
    engine::{
        said::{Said, To},
        turn::Turn,
        view::View,
    },
    wording::{Args, Key, Phrase, Value},
    words::message::Purpose,
};

impl View<'_> {
    /// The answer to a text.
    pub(crate) fn reply(self, turn: &Turn, phrase: impl Into<Phrase>) -> Said {
        Said {
            to: To {
                number: turn.number.clone(),
                language: self.language_of(turn.speaker),
            },
            phrase: phrase.into(),
            purpose: Purpose::Answer { to: turn.message },
            asks: false,
        }
    }

    /// What the adviser of the person is told whom a text is about. None when there is nobody to
    /// tell it.
    pub(crate) fn notice(self, turn: &Turn, phrase: Phrase) -> Option<Said> {
        let adviser = self.adviser_of(self.person(turn.target)?)?;
        self.notice_to(adviser, turn.message, phrase)
    }

    /// A notice to this person about a text of another; none when they are not to be texted.
    pub(crate) fn notice_to(
        self,
        reader: &Person,
        about: MessageId,
        phrase: Phrase,
    ) -> Option<Said> {
        if matches!(reader.consent, Consent::Withdrawn { .. }) {
            return None;
        }
        let mut numbers = self.world.directory.numbers_that_reach(reader.id);
        let number = numbers.next()?;
        Some(Said {
            to: To {
                number: number.to_owned(),
                language: self.language_of(reader.id),
            },
            phrase,
            purpose: Purpose::Notice { about },
            asks: false,
        })
    }

    /// A text that names the one it speaks to and is signed by their adviser.
    pub(crate) fn signed(self, speaker: &Person, key: Key) -> Phrase {
        Phrase::new(key, self.names_in(speaker))
    }

    /// Who is spoken to, and who signs.
    pub(crate) fn names_in(self, speaker: &Person) -> Args {
        args! {
            "name" => Value::name(speaker.called()),
            "adviser" => Value::name(self.adviser_name(speaker)),
        }
    }

    /// The same with more in it.
    pub(crate) fn signed_with(self, speaker: &Person, key: Key, more: Args) -> Phrase {
        let mut args = self.names_in(speaker);
        args.extend(more);
        Phrase::new(key, args)
    }

    /// A text that ends in an example with the farmer's own block.
    pub(crate) fn with_example(self, turn: &Turn, key: Key) -> Said {
        let example = self.example(turn.target);
        self.reply(turn, Phrase::new(key, args! { "example" => example }))
    }

    /// A report as a person could text it.
    pub(crate) fn example(self, person: PersonId) -> Phrase {
        let block = self.world.directory.blocks_of(person).next();
        let name = block.map_or("A", |block| &block.name);
        Phrase::new(Key::Example, args! { "block" => name })
    }

    /// A block's name; with its owner's when the phone is not theirs alone.
    pub(crate) fn label(self, turn: &Turn, owner: PersonId, block: &str) -> String {
        let on_phone = self.everyone_on(&turn.number);
        let shared = on_phone.iter().any(|person| *person != owner);
        match self.person(owner).filter(|_| shared) {
            Some(owner) => format!("{} {block}", owner.called()),
            None => block.to_owned(),
        }
    }
}

/// The last four digits say which phone to someone who knows it, and nothing to others.
pub(crate) fn last_digits(number: &str) -> String {
    let digits: Vec<char> = number.chars().rev().take(4).collect();
    digits.into_iter().rev().collect()
}
