//! An adviser's own words go to each phone, in the queue and at the hours of reminders.

use crate::{
    args,
    engine::{
        said::{Said, To},
        step::Step,
        turn::Turn,
    },
    wording::{Key, Phrase, Value},
    words::message::{Audience, Purpose},
};

impl Step<'_> {
    /// What the code stood for: the words go out, to whoever may be texted by now.
    pub(crate) fn announce(&mut self, turn: &Turn, to: Audience, words: &str) -> Vec<Said> {
        let view = self.view();
        let Some(adviser) = view.person(turn.speaker).cloned() else {
            return Vec::new();
        };
        let reached = view.reached(to);
        let args = view.announced_to(&reached, to, &adviser);
        let mut said = vec![view.reply(turn, Phrase::new(Key::Announced, args))];
        let phones = reached.phones.into_iter();
        let phones: Vec<_> = phones
            .map(|(number, person)| (number.to_owned(), person))
            .collect();
        for (number, person) in phones {
            // Nobody knows us there yet: who we are comes first.
            if self.view().is_new(&number) {
                said.extend(self.welcome(&number, person));
            }
            let args = args! { "text" => words, "adviser" => Value::name(adviser.called()) };
            said.push(Said {
                to: To {
                    language: self.view().language_of(person),
                    number,
                },
                phrase: Phrase::new(Key::Announcement, args),
                purpose: Purpose::Announcement {
                    person,
                    by: turn.message,
                },
                asks: false,
            });
        }
        said
    }
}
