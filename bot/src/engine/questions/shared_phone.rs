//! A phone that several people share: for whom is a text?
//!
//! Asked before anything is recorded, unless the text, its block or our last nudge says it. What
//! the text says is worked out afterwards, as for a phone of one person.

use budwood_parser::{Act, Known, Reading, Sender};
use budwood_scheduler::{MessageId, PersonId};

use super::scene::erases;
use crate::{
    args,
    engine::{
        memory::names::names,
        said::{Said, To},
        view::View,
    },
    wording::{Key, Phrase, Value},
    words::message::Purpose,
};

impl View<'_> {
    /// Who of those who share a phone is meant: the one named, the one whose block is named, or
    /// the one whom we asked.
    pub(crate) fn who_of(self, number: &str, people: &[PersonId], text: &str) -> Option<PersonId> {
        let names: Vec<&str> = people
            .iter()
            .filter_map(|person| self.person(*person))
            .flat_map(names)
            .collect();
        let blocks: Vec<(&str, PersonId)> = people
            .iter()
            .flat_map(|person| {
                self.world
                    .directory
                    .blocks_of(*person)
                    .map(|block| (block.name.as_str(), *person))
            })
            .collect();
        let block_names: Vec<&str> = blocks.iter().map(|(name, _)| *name).collect();
        let languages = self.languages_of(number, people);
        let languages: Vec<&str> = languages.iter().map(String::as_str).collect();
        let known = Known {
            languages: &languages,
            blocks: &block_names,
            groups: &[],
            members: &names,
            rolls: &[],
            sender: Sender::Farmer,
        };
        let reading = self.setup.reader.read(text, &known);
        if let Some(member) = &reading.member {
            return people.iter().copied().find(|person| {
                let person = self.person(*person);
                person.is_some_and(|person| person.is_named(member))
            });
        }
        // Nobody is taken out of the records for the first of the list.
        if erases(&reading) {
            return None;
        }
        if reading.acts.contains(&Act::Stop) || reading.reports.is_empty() {
            let open = self.talk(number).and_then(|talk| talk.open.as_ref());
            return open
                .and_then(|open| open.person)
                .or_else(|| people.first().copied());
        }
        if let Some(owner) = self.answers_nudge(number, &reading) {
            return Some(owner);
        }
        let mut owners: Vec<PersonId> = reading
            .reports
            .iter()
            .filter_map(|report| report.block.as_deref())
            .flat_map(|named| {
                blocks
                    .iter()
                    .filter(move |(name, _)| name.eq_ignore_ascii_case(named))
                    .map(|(_, owner)| *owner)
            })
            .collect();
        owners.sort_unstable();
        owners.dedup();
        match owners.as_slice() {
            [only] => Some(*only),
            _ => None,
        }
    }

    /// Whose block the last nudge to this phone was about, if the text reports just that job.
    fn answers_nudge(self, number: &str, reading: &Reading) -> Option<PersonId> {
        let nudge = self.talk(number)?.nudge?;
        let block = self.world.directory.block(nudge.block)?;
        let kind = nudge.task.proven_by()?;
        let is_it = |named: &Option<String>| {
            named
                .as_deref()
                .is_none_or(|named| named.eq_ignore_ascii_case(&block.name))
        };
        reading
            .reports
            .iter()
            .all(|report| report.kind == kind && is_it(&report.block))
            .then_some(block.owner)
    }

    /// The question for whom a text is, in the language of the first on the list.
    pub(crate) fn for_whom(self, number: &str, message: MessageId, people: &[PersonId]) -> Said {
        let known = people.iter().filter_map(|person| self.person(*person));
        let named = known.zip(1_usize..).map(|(person, number)| {
            let number = Value::Text(format!("{number} "));
            Value::Joined(vec![number, Value::name(&person.name)])
        });
        let people_named = Value::List(named.collect());
        Said {
            to: To {
                number: number.to_owned(),
                language: people.first().and_then(|first| self.language_of(*first)),
            },
            phrase: Phrase::new(Key::AskForWhom, args! { "people" => people_named }),
            purpose: Purpose::Answer { to: message },
            asks: true,
        }
    }
}
