//! Land and people that pass from one to another by an adviser's word: what is asked before it is
//! done. Everybody in it is of the adviser's own groups, or new.

use budwood_parser::{Query, Topic};
use budwood_scheduler::{Block, Person, PersonId};

use super::{address::last_digits, codes::Large, phones::number_taken};
use crate::{
    args,
    engine::{turn::Turn, view::View},
    wording::{Key, Phrase, Value},
    words::{limits, message::Deed, passing::Passing, phone_number},
};

impl<'a> View<'a> {
    /// What is to pass, and what is asked first; or what is said instead.
    pub(crate) fn passing(
        self,
        turn: &Turn,
        speaker: &Person,
        query: &Query,
    ) -> Result<Large, Phrase> {
        let people = self.people_named(turn, speaker, query)?;
        let (passing, phrase) = if query.topic == Topic::Owner {
            self.owner_asked(&people, query)
        } else if query.topic == Topic::Divide {
            self.part_asked(&people, query)
        } else if query.topic == Topic::Join {
            self.join_asked(speaker, &people, query)
        } else if query.topic == Topic::Leave {
            self.leave_asked(&people)
        } else {
            self.helper_asked(&people, query)
        }?;
        let deed = Deed::Pass { passing };
        Ok(Large { deed, phrase })
    }

    /// Those of the adviser's whom the text names, in its order; nobody is guessed.
    fn people_named(
        self,
        turn: &Turn,
        speaker: &Person,
        query: &Query,
    ) -> Result<Vec<&'a Person>, Phrase> {
        // Who is new may be called like somebody who is not.
        let is_new = query.topic == Topic::Join && self.mobile_in(&query.entry.words).is_some();
        let named = query.entry.lines.iter().filter(|_| !is_new);
        let people = named.map(
            |(name, _)| match self.members_named(turn, speaker, name)[..] {
                [only] => self.person(only).ok_or_else(|| self.not_yours(speaker)),
                [] => Err(self.not_yours(speaker)),
                ref several => Err(self.which(speaker, several)),
            },
        );
        people.collect()
    }

    /// A block of theirs: the one that is named, or the only one.
    fn block_meant(self, owner: &Person, query: &Query) -> Option<&'a Block> {
        let directory = &self.world.directory;
        if query.block.is_some() {
            let block = self.block_named(owner.id, query.block.as_deref())?;
            return directory.block(block);
        }
        let mut blocks = directory.blocks_of(owner.id);
        blocks.next().filter(|_| blocks.next().is_none())
    }

    fn owner_asked(self, people: &[&Person], query: &Query) -> Result<(Passing, Phrase), Phrase> {
        let [from, to] = people else {
            return Err(Key::OwnerWhich.into());
        };
        let block = self.block_meant(from, query);
        let Some(block) = block.filter(|_| from.id != to.id) else {
            return Err(Key::OwnerWhich.into());
        };
        let args = args! {
            "block" => Value::name(&block.name),
            "old" => Value::name(&from.name),
            "name" => Value::name(&to.name),
            "trees" => self.state(block.id).map_or(0, |state| state.alive()),
        };
        let (block, to) = (block.id, to.id);
        let passing = Passing::Owner { block, to };
        Ok((passing, Phrase::new(Key::OwnerAsk, args)))
    }

    /// "SPLIT Keti A Pira 240"; without a second name both parts stay with the first.
    fn part_asked(self, people: &[&Person], query: &Query) -> Result<(Passing, Phrase), Phrase> {
        let (from, to) = match people {
            [one] => (one, one),
            [from, to] => (from, to),
            _ => return Err(Key::PartWhich.into()),
        };
        let told = query.entry.lines.iter().rev().find_map(|(_, told)| *told);
        let trees = told.or(query.entry.amount).and_then(whole);
        let block = self.block_meant(from, query);
        let state = block.and_then(|block| self.state(block.id));
        let part = state.zip(trees);
        let goes = part.and_then(|(state, trees)| state.trees_that_go(trees));
        let (Some(block), Some((state, trees)), true) = (block, part, goes.is_some()) else {
            return Err(Key::PartWhich.into());
        };
        let args = args! {
            "trees" => trees,
            "alive" => state.alive(),
            "block" => Value::name(&block.name),
            "old" => Value::name(&from.name),
            "name" => Value::name(&to.name),
        };
        let (block, to) = (block.id, to.id);
        let passing = Passing::Part { block, to, trees };
        Ok((passing, Phrase::new(Key::PartAsk, args)))
    }

    fn join_asked(
        self,
        speaker: &Person,
        people: &[&Person],
        query: &Query,
    ) -> Result<(Passing, Phrase), Phrase> {
        let Some(group) = self.group_asked(speaker, query) else {
            return Err(Key::JoinWhich.into());
        };
        let known = |person: &Person| {
            let args = args! {
                "name" => Value::name(&person.name),
                "group" => Value::brief(&group.name),
            };
            let (person, group) = (person.id, group.id);
            let passing = Passing::Join { person, group };
            (passing, Phrase::new(Key::JoinAskKnown, args))
        };
        if let [person] = people {
            let is_there = person.group == Some(group.id);
            let which = || Phrase::from(Key::JoinWhich);
            return (!is_there).then(|| known(person)).ok_or_else(which);
        }
        let words = &query.entry.words;
        let number = self.mobile_in(words);
        let name = name_in(words, &[&group.name]);
        let (Some(number), Some(name)) = (number, name) else {
            return Err(Key::JoinWhich.into());
        };
        // Who has left comes back with what was told.
        if let [only] = self.everyone_on(&number)[..]
            && let Some(person) = self.person(only).filter(|one| one.group.is_none())
            && person.is_named(&name)
        {
            return Ok(known(person));
        }
        if self.is_anybodys(&number) {
            return Err(number_taken(&number));
        }
        let args = args! {
            "name" => Value::name(&name),
            "group" => Value::brief(&group.name),
            "number" => number.as_str(),
        };
        let group = group.id;
        let passing = Passing::New {
            name,
            number,
            group,
        };
        Ok((passing, Phrase::new(Key::JoinAsk, args)))
    }

    fn leave_asked(self, people: &[&Person]) -> Result<(Passing, Phrase), Phrase> {
        let [person] = people else {
            return Err(Key::LeaveWhich.into());
        };
        let args = args! {
            "name" => Value::name(&person.name),
            "group" => Value::brief(self.group_name(person.group)),
        };
        let person = person.id;
        Ok((Passing::Leave { person }, Phrase::new(Key::LeaveAsk, args)))
    }

    fn helper_asked(self, people: &[&Person], query: &Query) -> Result<(Passing, Phrase), Phrase> {
        let Some(person) = people.first() else {
            return Err(Key::HelperWhich.into());
        };
        let words = &query.entry.words;
        let name = name_in(words, &[&person.name, person.called()]);
        let (Some(number), Some(name)) = (self.mobile_in(words), name) else {
            return Err(Key::HelperWhich.into());
        };
        if self.is_anybodys(&number) {
            return Err(number_taken(&number));
        }
        let args = args! {
            "name" => Value::name(&person.name),
            "text" => Value::name(&name),
            "number" => number.as_str(),
        };
        let passing = Passing::Helper {
            person: person.id,
            name,
            number,
        };
        Ok((passing, Phrase::new(Key::HelperAsk, args)))
    }

    /// Whether a number is somebody's, or ours.
    pub(crate) fn is_anybodys(self, number: &str) -> bool {
        let is_ours = self.setup.own_numbers.iter().any(|own| own == number);
        is_ours || !self.everyone_on(number).is_empty()
    }

    /// The name that a block gets with its new owner: the own one, or that with a number behind it
    /// where they have such a block already.
    pub(crate) fn name_with(self, owner: PersonId, name: &str) -> String {
        let is_free = |name: &str| self.block_named(owner, Some(name)).is_none();
        if is_free(name) {
            return name.to_owned();
        }
        let room = limits::SHORT_NAME.saturating_sub(2);
        let short: String = name.chars().take(room).collect();
        let mut named = (2_u8..=99).map(|number| format!("{short}{number}"));
        named.find(|name| is_free(name)).unwrap_or(short)
    }

    /// The mobile number of this country that a text holds.
    pub(crate) fn mobile_in(self, text: &str) -> Option<String> {
        let country = &self.setup.country;
        let number = phone_number::parse(&super::phones::digits_in(text), country).ok()?;
        phone_number::is_at_home(&number, country).then_some(number)
    }

    /// What is asked on a phone of somebody who is to do the work for another.
    pub(crate) fn helper_invited(self, person: PersonId, name: &str) -> Phrase {
        let owner = self.person(person);
        let args = args! {
            "text" => Value::name(name),
            "name" => Value::name(owner.map_or("", |owner| &owner.name)),
            "adviser" => Value::name(owner.map_or("", |owner| self.adviser_name(owner))),
        };
        Phrase::new(Key::HelperInvite, args)
    }
}

/// The name that is left of the words of a text without its numbers and these names.
fn name_in(words: &str, known: &[&str]) -> Option<String> {
    let is_known = |word: &str| {
        let mut parts = known.iter().flat_map(|name| name.split_whitespace());
        parts.any(|part| part.eq_ignore_ascii_case(word))
    };
    let words = words
        .split(|c: char| c.is_whitespace() || c == ',' || c == ':' || c == ';')
        .filter(|word| word.chars().any(char::is_alphabetic))
        .filter(|word| !word.chars().any(char::is_numeric) && !is_known(word));
    let name = words.collect::<Vec<_>>().join(" ");
    let length = name.chars().count();
    (1..=limits::PERSON_NAME).contains(&length).then_some(name)
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the range is checked in the line above"
)]
fn whole(count: f64) -> Option<u32> {
    let is_whole = (1.0..=limits::PLANTS_MAX).contains(&count) && count.fract() == 0.0;
    is_whole.then_some(count as u32)
}

/// How a number ends, as it is told.
pub(crate) fn ending(number: &str) -> Value {
    last_digits(number).into()
}

#[cfg(test)]
mod tests {
    use super::name_in;

    #[test]
    fn a_new_name_is_what_is_left() {
        for (words, name) in [
            ("KOLO Mina Weil 07700 900555", Some("Mina Weil")),
            ("Mina, +44 7700 900555, kolo", Some("Mina")),
            ("KOLO 07700900555", None),
            ("Nguyễn Văn An KOLO 07700900555", Some("Nguyễn Văn An")),
            ("one two three four five six seven", None),
        ] {
            assert_eq!(name_in(words, &["KOLO"]).as_deref(), name, "{words}");
        }
    }
}
