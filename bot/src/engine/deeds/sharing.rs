//! A phone that several people share: for whom is a text?
//!
//! Asked before anything is recorded, unless the text, its block or our last nudge says it. What
//! the text says is worked out afterwards, as for a phone of one person.

use budwood_parser::{Known, Reading, Sender};
use budwood_scheduler::{MessageId, PersonId};
use chrono::{DateTime, Utc};

use super::inbound::names;
use crate::{
    args,
    engine::step::Step,
    wording::Key,
    words::message::{Open, Question},
};

impl Step<'_> {
    /// The person that a number answers "for whom?" with, and the text that waits for it.
    pub(crate) fn chosen(
        &mut self,
        number: &str,
        text: &str,
    ) -> Option<(PersonId, String, DateTime<Utc>)> {
        let open = self.open_question(number)?;
        let Question::ForWhom {
            people,
            text: waiting,
            sent_at,
        } = open.question
        else {
            return None;
        };
        let choice: usize = text.trim().trim_end_matches('.').parse().ok()?;
        let person = *people.get(choice.checked_sub(1)?)?;
        self.talk(number).open = None;
        Some((person, waiting, sent_at))
    }

    /// Who of those who share a phone is meant: the one named, the one whose block is named, or
    /// the one whom we asked.
    pub(crate) fn who_of(&self, number: &str, people: &[PersonId], text: &str) -> Option<PersonId> {
        let names: Vec<&str> = people
            .iter()
            .filter_map(|person| self.world.directory.person(*person))
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
            sender: Sender::Farmer,
        };
        let reading = self.setup.reader.read(text, &known);
        if let Some(member) = &reading.member {
            return people.iter().copied().find(|person| {
                let person = self.world.directory.person(*person);
                person.is_some_and(|person| person.is_named(member))
            });
        }
        if reading.acts.contains(&budwood_parser::Act::Stop) || reading.reports.is_empty() {
            let open = self
                .world
                .talks
                .get(number)
                .and_then(|talk| talk.open.as_ref());
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
    fn answers_nudge(&self, number: &str, reading: &Reading) -> Option<PersonId> {
        let nudge = self.world.talks.get(number)?.nudge?;
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

    fn name_of(&self, person: PersonId) -> Option<&str> {
        self.world
            .directory
            .person(person)
            .map(|person| person.name.as_str())
    }

    pub(crate) fn ask_for_whom(
        &mut self,
        number: &str,
        message: MessageId,
        people: Vec<PersonId>,
        text: String,
        sent_at: DateTime<Utc>,
    ) -> &'static str {
        let named: Vec<(usize, String)> = people
            .iter()
            .filter_map(|person| self.name_of(*person))
            .enumerate()
            .map(|(index, name)| (index + 1, name.to_owned()))
            .collect();
        let tongue = match people.first() {
            Some(person) => self.tongue_of(*person),
            None => self.setup.texts.tongue(&[]),
        };
        let question = tongue.people(
            &named,
            |(index, name), length| {
                let name: String = name.chars().take(length).collect();
                format!("{index} {name}")
            },
            |people| tongue.say(Key::AskForWhom, args! { "people" => people }),
        );
        let now = self.now;
        self.talk(number).open = Some(Open {
            at: now,
            message,
            person: None,
            question: Question::ForWhom {
                people,
                text,
                sent_at,
            },
        });
        self.answer(number, message, question);
        "asked for whom"
    }
}
