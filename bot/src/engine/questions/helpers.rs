//! Who does the work for somebody on a phone of their own: which phones these are, and what they say
//! of themselves.

use budwood_parser::{Act, Known, Sender};
use budwood_scheduler::{MessageId, PersonId};

use crate::{
    engine::{
        said::{Said, To},
        view::View,
    },
    wording::Phrase,
    words::message::Purpose,
};

/// What a helper's text says to us.
pub(crate) enum Says {
    /// They agree.
    Yes,
    /// They do not, or do no more.
    No,
    /// Something else.
    Other,
}

impl View<'_> {
    /// Something that is said on another phone than the one that texted.
    pub(crate) fn to_number(
        self,
        about: MessageId,
        (number, person): (&str, PersonId),
        phrase: Phrase,
    ) -> Said {
        Said {
            to: To {
                number: number.to_owned(),
                language: self.language_of(person),
            },
            phrase,
            purpose: Purpose::Notice { about },
            asks: false,
        }
    }

    /// Whether somebody else than the owner of the records uses this phone.
    pub(crate) fn is_helpers(self, number: &str) -> bool {
        let phone = self.world.directory.phone(number);
        phone.is_some_and(|phone| phone.helper().is_some())
    }

    /// What a text says to the question whether they agree.
    pub(crate) fn helper_says(self, person: PersonId, text: &str) -> Says {
        let language = self.person(person).map(|owner| owner.language.as_str());
        let languages: Vec<&str> = language.into_iter().collect();
        match self.acts_of(text, &languages).as_slice() {
            [Act::Yes | Act::Start] => Says::Yes,
            [Act::No | Act::Stop] => Says::No,
            _ => Says::Other,
        }
    }

    /// Whether a text ends what comes to its phone, in any language.
    pub(crate) fn is_stop(self, text: &str) -> bool {
        self.acts_of(text, &[]) == [Act::Stop]
    }

    /// What a text does by itself, whoever sends it.
    fn acts_of(self, text: &str, languages: &[&str]) -> Vec<Act> {
        let known = Known {
            languages,
            blocks: &[],
            groups: &[],
            members: &[],
            rolls: &[],
            sender: Sender::Farmer,
        };
        self.setup.reader.read(text, &known).acts
    }
}
