//! The door of the office's pages: a name, then a code by text to the phone on record.
//!
//! Whoever knocks is told the same whether there is such a name or not. Deliberately absent: what they
//! may see once they are in (`looked`), and for how long, which is whoever serves the pages.

use budwood_scheduler::{Consent, Person};

use crate::{
    args,
    engine::{
        looks::Viewer,
        questions::looks::may_look,
        said::{Said, To},
        step::Step,
    },
    wording::{Key, Phrase},
    words::{limits, message::Purpose},
};

/// What happens at the door.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Knock {
    /// A name: a code goes to its phone.
    Name(String),
    /// A name and the code.
    Code {
        /// The name.
        name: String,
        /// The code.
        code: String,
    },
    /// Somebody at the computer itself wants a code for this name.
    Within(String),
}

impl Step<'_> {
    /// Somebody is at the door.
    pub(crate) fn door(&mut self, knock: Knock) -> Vec<Said> {
        match knock {
            Knock::Name(name) => self.knocks(&name).into_iter().collect(),
            Knock::Code { name, code } => {
                self.told.entered = self.comes_in(&name, &code);
                Vec::new()
            }
            Knock::Within(name) => {
                self.told.code = self.code_within(&name);
                Vec::new()
            }
        }
    }

    /// Who may look at pages and is called so; nobody where several are.
    fn caller(&self, name: &str) -> Option<Person> {
        let name = name.trim().to_lowercase();
        let people = self.world.directory.persons();
        let mut found = people.filter(|person| {
            let is_gone = person.erased || matches!(person.consent, Consent::Withdrawn { .. });
            !is_gone && may_look(person.role) && person.name.to_lowercase() == name
        });
        found.next().filter(|_| found.next().is_none()).cloned()
    }

    fn knocks(&mut self, name: &str) -> Option<Said> {
        let person = self.caller(name)?;
        let mut numbers = self.world.directory.numbers_that_reach(person.id);
        let number = numbers.next()?.to_owned();
        if !self.world.callers.may_ask(person.id, self.now) {
            return None;
        }
        let code = self.view().door_code(person.id, self.world.callers.given());
        let (callers, now) = (&mut self.world.callers, self.now);
        callers.texted(person.id, code.clone(), &number, now);
        let args = args! { "code" => code, "minutes" => limits::DOOR_CODE_MINUTES };
        let view = self.view();
        Some(Said {
            to: To {
                number,
                language: view.language_of(person.id),
            },
            phrase: Phrase::new(Key::OfficeCode, args),
            purpose: Purpose::Service {
                on: view.today_of(person.id),
            },
            asks: false,
        })
    }

    fn comes_in(&mut self, name: &str, code: &str) -> Option<Viewer> {
        let person = self.caller(name)?.id;
        let number = self.world.callers.comes_in(person, code.trim(), self.now)?;
        Some(Viewer { person, number })
    }

    fn code_within(&mut self, name: &str) -> Option<String> {
        let person = self.caller(name)?.id;
        let mut numbers = self.world.directory.numbers_that_reach(person);
        let number = numbers.next()?.to_owned();
        let code = self.view().door_code(person, self.world.callers.given());
        let (callers, now) = (&mut self.world.callers, self.now);
        callers.handed(person, code.clone(), &number, now);
        Some(code)
    }
}
