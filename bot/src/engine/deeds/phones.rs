//! A phone is lost: whoever holds it is told nothing, changes nothing, and what it texts waits for
//! a person. It is found again, or its owner has another number, which takes its place for good.

use budwood_parser::Alarm;
use budwood_scheduler::{
    Body, MessageId, Person, PersonId, PersonLink, Phone, Role, decide::Concern,
};
use chrono::{DateTime, Utc};

use crate::{
    args,
    engine::{
        outcome::Outcome,
        questions::phones::number_taken,
        said::{Done, Said},
        step::Step,
        turn::Turn,
    },
    wording::{Key, Phrase, Value},
    words::message::{Deed, Talk},
};

impl Step<'_> {
    /// The phones of a person are lost, or found again.
    pub(crate) fn lost_or_found(&mut self, turn: &Turn, person: PersonId, is_lost: bool) -> Said {
        let deed = if is_lost {
            Deed::Lost { person }
        } else {
            Deed::Found { person }
        };
        let view = self.view();
        let numbers = view.phones_meant(turn, &deed);
        let mut args = view.phones_told(&numbers);
        let owner = view.person(person);
        let called = owner.map_or("", Person::called);
        let is_adviser = owner.is_some_and(|owner| owner.role == Role::Adviser);
        args.extend(args! { "name" => Value::name(called) });
        let today = view.today_of(person);
        let numbers: Vec<String> = numbers.into_iter().map(str::to_owned).collect();
        for number in numbers {
            self.end_talk(&number);
            self.cancel_waiting(&number);
            if let Some(phone) = self.world.directory.phone(&number).cloned() {
                self.put_phone(Phone {
                    lost_on: is_lost.then_some(today),
                    ..phone
                });
            }
        }
        let telling = self.view().telling(turn, turn.speaker);
        let (body, key) = if !is_lost {
            (Body::PhoneFound { person }, Key::PhoneFound)
        } else if is_adviser {
            (Body::PhoneLost { person }, Key::PhoneLostAdviser)
        } else {
            (Body::PhoneLost { person }, Key::PhoneLost)
        };
        self.record(telling, None, body);
        self.view().reply(turn, Phrase::new(key, args))
    }

    /// A person has this number and no other from now on.
    pub(crate) fn move_number(&mut self, turn: &Turn, person: PersonId, number: &str) -> Said {
        let view = self.view();
        // Since it was asked about somebody else may have come by it.
        if view.is_taken(number, person) {
            return view.reply(turn, number_taken(number));
        }
        let today = view.today_of(person);
        let left = view.numbers_left(person, number).into_iter();
        let left: Vec<String> = left.map(str::to_owned).collect();
        let mut spoken = Talk::default();
        for old in &left {
            if let Some(talk) = self.view().talk(old) {
                spoken.language.clone_from(&talk.language);
                spoken.spoken.clone_from(&talk.spoken);
            }
            self.leave_number(person, old);
        }
        let phone = self.world.directory.phone(number).cloned();
        let mut phone = phone.unwrap_or_else(|| Phone {
            number: number.to_owned(),
            links: Vec::new(),
            lost_on: None,
        });
        if phone.people().next().is_none() {
            // What was said to who had it before is nobody's any more.
            *self.talk(number) = spoken;
        }
        if !phone.people().any(|user| user == person) {
            phone.links.push(PersonLink {
                person,
                since: today,
                until: None,
                helper: None,
            });
        }
        phone.lost_on = None;
        self.put_phone(phone);
        let telling = self.view().telling(turn, turn.speaker);
        self.record(telling, None, Body::NumberMoved { person });
        let view = self.view();
        let mut args = view.phones_told(&[number]);
        let name = view.person(person).map_or("", |person| &person.name);
        args.extend(args! { "name" => Value::name(name) });
        view.reply(turn, Phrase::new(Key::NumberMoved, args))
    }

    /// The adviser reads of a number that its owner moved.
    pub(crate) fn number_notice(&self, turn: &Turn, owner: &Person, moved: &Said) -> Option<Said> {
        let view = self.view();
        let adviser = view
            .adviser_of(owner)
            .filter(|_| owner.id == turn.speaker)?;
        view.notice_to(adviser, turn.message, moved.phrase.clone())
    }

    /// A person uses a number no more; others may.
    fn leave_number(&mut self, person: PersonId, number: &str) {
        let Some(mut phone) = self.world.directory.phone(number).cloned() else {
            return;
        };
        let today = self.view().today_of(person);
        for link in &mut phone.links {
            if link.person == person && link.until.is_none() {
                link.until = Some(today);
            }
        }
        self.end_talk(number);
        if phone.people().next().is_none() {
            self.cancel_waiting(number);
            // Whoever gets the number next has lost nothing.
            phone.lost_on = None;
        }
        self.put_phone(phone);
    }

    /// Nothing that was asked on a phone is open any more, and no visit.
    fn end_talk(&mut self, number: &str) {
        let talk = self.talk(number);
        talk.open = None;
        talk.nudge = None;
        talk.last = Vec::new();
        talk.last_at = None;
        talk.last_text = None;
        talk.last_answer = None;
        talk.digest = None;
        talk.visit_until = None;
    }

    /// A text from a lost phone: kept for a person, and answered without a name or a figure. First
    /// help is for everybody.
    pub(crate) fn heard_from_lost(
        &mut self,
        number: &str,
        message: MessageId,
        (text, sent_at): (String, DateTime<Utc>),
        person: PersonId,
    ) -> Done {
        let turn = Turn {
            number: number.to_owned(),
            message,
            speaker: person,
            target: person,
            text,
            sent_at,
        };
        let view = self.view();
        let role = view.person(person).map(|person| person.role);
        let alarm = role.and_then(|role| view.read(&turn, role).alarm);
        let danger = alarm.map(Concern::Alarm);
        let danger = danger.filter(|concern| concern.is_danger());
        let concern = danger.unwrap_or(Concern::Alarm(Alarm::Number));
        let notice = view.matter_notice(&turn, concern);
        let phrase = view.first_help(concern).unwrap_or(Key::PhoneIsLost);
        let phrase = Phrase::new(phrase, args! { "told" => Value::nothing() });
        let said = view.reply(&turn, phrase);
        let is_news = !self.is_told_lately(&turn, concern);
        let has_place = self.let_wait(&turn, concern);
        let notice = notice.filter(|_| is_news && has_place);
        Outcome::ForPerson.saying([Some(said), notice].into_iter().flatten())
    }
}
