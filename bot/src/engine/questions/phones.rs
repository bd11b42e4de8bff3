//! A phone is lost or found again, or a number is another one: who may say so of whom, which
//! numbers it is about, and what is asked before it is done.
//!
//! Advisers say it of the people of their groups. Of an adviser's own phone those who report for
//! the group and its office may say that it is lost, and the adviser from another one; a new number
//! comes with the office's list, so that nobody becomes the adviser by a text.

use budwood_parser::{Act, Known, Names, Reading, Sender, Topic};
use budwood_scheduler::{Person, PersonId, Role};

use super::{address::last_digits, codes::Large};
use crate::{
    args,
    engine::{
        memory::names::names,
        roles::{self, Reach, Verb},
        turn::Turn,
        view::View,
    },
    wording::{Args, Key, Phrase, Value},
    words::{message::Deed, phone_number},
};

impl<'a> View<'a> {
    /// What the text says of the phone of the adviser: of the speaker's own other one, or told by
    /// who reports for the group or types its lists. Their names stand in no list of the group.
    pub(crate) fn of_advisers_phone(
        self,
        turn: &Turn,
        role: Role,
        languages: &[&str],
    ) -> Option<Reading> {
        let speaker = self.person(turn.speaker)?;
        let adviser = match roles::reach(role, Verb::ReportAdvisersPhone) {
            Reach::Advised => speaker,
            Reach::OwnGroup => self.adviser_of(speaker)?,
            Reach::Nobody => return None,
        };
        let called = adviser.called().to_lowercase();
        if !turn.text.to_lowercase().contains(&called) {
            return None;
        }
        let members = names(adviser);
        let none: &[&Names] = &[];
        let known = Known {
            languages,
            blocks: &[],
            groups: &[],
            members: &members,
            rolls: none,
            sender: Sender::Adviser,
        };
        let reading = self.setup.reader.read(&turn.text, &known);
        let is_it = |act: &Act| {
            let Act::Query(query) = act else {
                return false;
            };
            let is_lost = query.topic == Topic::Lost;
            let is_own = matches!(query.topic, Topic::Found | Topic::Moved);
            is_lost || (is_own && roles::may(role, Verb::MovePhones))
        };
        reading.acts.iter().any(is_it).then_some(reading)
    }

    /// What is to be done about whose phone, and what is asked first; or what is said instead.
    pub(crate) fn about_phone(
        self,
        turn: &Turn,
        speaker: &Person,
        topic: Topic,
        name: &str,
    ) -> Result<Large, Phrase> {
        let person = self.whose_phone(turn, speaker, name)?;
        let id = person.id;
        if topic != Topic::Moved {
            let (deed, key) = if topic == Topic::Lost {
                (Deed::Lost { person: id }, Key::PhoneLostAsk)
            } else {
                (Deed::Found { person: id }, Key::PhoneFoundAsk)
            };
            let numbers = self.phones_meant(turn, &deed);
            if numbers.is_empty() {
                let args = args! { "name" => Value::name(&person.name) };
                return Err(Phrase::new(Key::PhoneNone, args));
            }
            let args = self.phones_told(&numbers);
            let phrase = Phrase::new(key, args);
            return Ok(Large { deed, phrase });
        }
        if person.id == speaker.id {
            return Err(Key::NumberOwn.into());
        }
        let number = self.number_for(person, &turn.text)?;
        let args = args! {
            "name" => Value::name(&person.name),
            "number" => number.as_str(),
            "digits" => endings(&self.numbers_left(id, &number)),
        };
        let phrase = Phrase::new(Key::NumberAsk, args);
        let deed = Deed::Moved { person: id, number };
        Ok(Large { deed, phrase })
    }

    fn whose_phone(self, turn: &Turn, speaker: &Person, name: &str) -> Result<&'a Person, Phrase> {
        if roles::may(speaker.role, Verb::MovePhones) {
            match self.members_named(turn, speaker, name)[..] {
                [] => {}
                [only] => return self.person(only).ok_or_else(|| self.not_yours(speaker)),
                ref several => return Err(self.which(speaker, several)),
            }
        }
        let adviser = match speaker.role {
            Role::Adviser => self.person(speaker.id),
            Role::Farmer | Role::Leader | Role::Clerk | Role::Nursery | Role::Viewer => {
                self.adviser_of(speaker)
            }
        };
        let adviser = adviser.filter(|adviser| adviser.is_named(name));
        adviser.ok_or_else(|| self.not_yours(speaker))
    }

    /// The phones that are lost or found by this; never the one that says so.
    pub(crate) fn phones_meant(self, turn: &Turn, deed: &Deed) -> Vec<&'a str> {
        let directory = &self.world.directory;
        let (person, is_lost) = match deed {
            Deed::Lost { person } => (*person, false),
            Deed::Found { person } => (*person, true),
            Deed::OpenWindow { .. }
            | Deed::Warn { .. }
            | Deed::HoldPlanting { .. }
            | Deed::Erase { .. }
            | Deed::Stop
            | Deed::Moved { .. }
            | Deed::Announce { .. }
            | Deed::HandOver { .. }
            | Deed::AskHarm { .. }
            | Deed::AskLeaders
            | Deed::Pass { .. }
            | Deed::Visit { .. } => return Vec::new(),
        };
        let numbers = directory.numbers_of(person);
        let others = numbers.filter(|number| *number != turn.number);
        others
            .filter(|number| directory.is_lost(number) == is_lost)
            .collect()
    }

    /// The new number of a person, as a text tells it: a mobile of the country, and nobody else's.
    fn number_for(self, person: &Person, text: &str) -> Result<String, Phrase> {
        let country = &self.setup.country;
        let number = phone_number::parse(&digits_in(text), country).ok();
        let number = number.filter(|number| phone_number::is_at_home(number, country));
        let Some(number) = number else {
            let args = args! { "name" => Value::name(person.called()) };
            return Err(Phrase::new(Key::NumberUnread, args));
        };
        if self.is_taken(&number, person.id) {
            return Err(number_taken(&number));
        }
        Ok(number)
    }

    /// Whether a number belongs to somebody else, or to us.
    pub(crate) fn is_taken(self, number: &str, person: PersonId) -> bool {
        let users = self.everyone_on(number);
        let is_others = !users.is_empty() && !users.contains(&person);
        is_others || self.setup.own_numbers.iter().any(|own| own == number)
    }

    /// The numbers that a person gives up for this one.
    pub(crate) fn numbers_left(self, person: PersonId, new: &str) -> Vec<&'a str> {
        let numbers = self.world.directory.numbers_of(person);
        numbers.filter(|number| *number != new).collect()
    }

    /// Who is on these phones, and how their numbers end.
    pub(crate) fn phones_told(self, numbers: &[&str]) -> Args {
        let mut people: Vec<PersonId> = Vec::new();
        for person in numbers.iter().flat_map(|number| self.everyone_on(number)) {
            if !people.contains(&person) {
                people.push(person);
            }
        }
        let people = people.into_iter().filter_map(|person| self.person(person));
        let people = people.map(|person| Value::name(&person.name));
        args! {
            "people" => Value::List(people.collect()),
            "digits" => endings(numbers),
        }
    }
}

/// That a number is somebody else's; not whose.
pub(crate) fn number_taken(number: &str) -> Phrase {
    Phrase::new(Key::NumberTaken, args! { "digits" => last_digits(number) })
}

/// The last digits of each number; a dash where there is none.
fn endings(numbers: &[&str]) -> String {
    let endings: Vec<String> = numbers.iter().map(|number| last_digits(number)).collect();
    if endings.is_empty() {
        "-".to_owned()
    } else {
        endings.join(", ")
    }
}

/// The part of a text that could be a phone number: of those between its words the one with most
/// digits.
pub(super) fn digits_in(text: &str) -> String {
    let is_of_number = |c: char| c.is_numeric() || " +-./()".contains(c);
    let parts = text.split(|c: char| !is_of_number(c));
    let digits = |part: &&str| part.chars().filter(|c| c.is_numeric()).count();
    let part = parts.max_by_key(digits).unwrap_or_default();
    part.trim_matches(|c: char| !c.is_numeric() && c != '+' && c != '(')
        .to_owned()
}

#[cfg(test)]
mod tests {
    use super::digits_in;

    #[test]
    fn a_number_is_found_between_the_words() {
        for (text, digits) in [
            ("moved Keti 07700 900555", "07700 900555"),
            ("MOVED Keti KOLO: +44 (0)7700-900555.", "+44 (0)7700-900555"),
            ("moved 07700900555 Keti, block 2", "07700900555"),
            ("moved Keti", ""),
        ] {
            assert_eq!(digits_in(text), digits, "{text}");
        }
    }
}
