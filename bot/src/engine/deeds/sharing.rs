//! A phone that several people share: whoever texts is asked for whom, and answers with a number.

use budwood_scheduler::{MessageId, PersonId};
use chrono::{DateTime, Utc};

use crate::{
    engine::{outcome::Outcome, said::Done, step::Step},
    words::message::{Open, Question},
};

impl Step<'_> {
    /// The person that a number answers "for whom?" with, and the text that waits for it.
    pub(crate) fn chosen(
        &mut self,
        number: &str,
        text: &str,
    ) -> Option<(PersonId, String, DateTime<Utc>)> {
        let open = self.view().open_question(number)?;
        let Question::ForWhom {
            people,
            text: waiting,
            sent_at,
        } = open.question
        else {
            return None;
        };
        let choice = text.trim().trim_end_matches(['.', '!']);
        let named = || {
            let mut people = people.iter().copied();
            people.find(|id| {
                let person = self.view().person(*id);
                person.is_some_and(|person| person.is_named(choice))
            })
        };
        let numbered = || {
            let number: usize = choice.parse().ok()?;
            people.get(number.checked_sub(1)?).copied()
        };
        let person = numbered().or_else(named)?;
        self.talk(number).open = None;
        Some((person, waiting, sent_at))
    }

    /// Asks for whom a text is; it waits for the answer.
    pub(crate) fn ask_for_whom(
        &mut self,
        number: &str,
        message: MessageId,
        people: Vec<PersonId>,
        text: String,
        sent_at: DateTime<Utc>,
    ) -> Done {
        let said = self.view().for_whom(number, message, &people);
        self.talk(number).open = Some(Open {
            at: self.now,
            message,
            person: None,
            rest: None,
            question: Question::ForWhom {
                people,
                text,
                sent_at,
            },
        });
        Outcome::AskedForWhom.saying([said])
    }
}
