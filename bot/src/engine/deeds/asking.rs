//! A group is asked what a storm did, and leaders about who is silent, in the queue and at the hours
//! of reminders.

use budwood_parser::Cause;
use budwood_scheduler::{Body, Entered, GroupId, Person, PersonId};

use crate::{
    args,
    engine::{
        said::{Said, To},
        step::Step,
        turn::Turn,
    },
    wording::{Key, Phrase, Value},
    words::message::Purpose,
};

impl Step<'_> {
    /// Each phone of who has trees is asked, and that it was is entered in the book of the group.
    pub(crate) fn ask_harm(&mut self, turn: &Turn, group: GroupId, cause: Cause) -> Vec<Said> {
        let view = self.view();
        let reached = view.asked_about_harm(group);
        let people = view.people_asked(&reached, group);
        let name = view.group_name(Some(group)).to_owned();
        let phones: Vec<(String, PersonId)> = reached
            .phones
            .iter()
            .map(|(number, person)| ((*number).to_owned(), *person))
            .collect();
        let on = view.day_of(turn);
        let args = args! {
            "phones" => phones.len(),
            "group" => Value::name(&name),
            "cause" => cause,
        };
        let mut said = vec![view.reply(turn, Phrase::new(Key::HarmSent, args))];
        let telling = view.telling(turn, turn.speaker);
        let entered = Entered::Asked { cause, on, people };
        self.record(telling, None, Body::Entered { group, entered });
        for (number, person) in phones {
            let Some(asked) = self.view().person(person).cloned() else {
                continue;
            };
            let args = args! {
                "name" => Value::name(asked.called()),
                "group" => Value::name(&name),
                "cause" => cause,
            };
            let phrase = self.view().signed_with(&asked, Key::HarmQuestion, args);
            said.extend(self.asked_of(turn, number, &asked, phrase));
        }
        said
    }

    /// Leaders are asked about the silent of their own groups.
    pub(crate) fn ask_leaders(&mut self, turn: &Turn, adviser: &Person) -> Vec<Said> {
        let leaders = self.view().leaders_to_ask(adviser);
        let args = args! { "leaders" => leaders.len() };
        let phrase = Phrase::new(Key::LeadersAsked, args);
        let mut said = vec![self.view().reply(turn, phrase)];
        for one in leaders {
            let view = self.view();
            let Some(leader) = view.person(one.leader).cloned() else {
                continue;
            };
            let number = view.announced_on(&leader).map(str::to_owned);
            let phrase = view.leader_asked(&leader, &one.silent);
            if let Some(number) = number {
                said.extend(self.asked_of(turn, number, &leader, phrase));
            }
        }
        said
    }

    /// Nobody knows us on a new phone: who we are comes first.
    fn asked_of(&mut self, turn: &Turn, number: String, to: &Person, phrase: Phrase) -> Vec<Said> {
        let mut said = Vec::new();
        if self.view().is_new(&number) {
            said.extend(self.welcome(&number, to.id));
        }
        said.push(Said {
            to: To {
                language: self.view().language_of(to.id),
                number,
            },
            phrase,
            purpose: Purpose::Announcement {
                person: to.id,
                by: turn.message,
            },
            asks: false,
        });
        said
    }
}
