//! What can be asked by whom, and a question that was answered in part, asked again for what follows.

use budwood_parser::{Act, Query, Topic};
use budwood_scheduler::{Person, Role};

use crate::{
    args,
    engine::{turn::Turn, view::View},
    wording::{Key, Phrase, Value},
};

impl View<'_> {
    /// What somebody of this role can text, and ask.
    pub(crate) fn help_for(self, speaker: &Person) -> Phrase {
        let args = args! { "group" => Value::name(self.group_name(speaker.group)) };
        match speaker.role {
            Role::Adviser => Key::HelpAdviser.into(),
            Role::Clerk => Phrase::new(Key::HelpClerk, args),
            Role::Viewer => Phrase::new(Key::HelpViewer, args),
            Role::Farmer | Role::Leader | Role::Nursery => {
                let args = args! { "example" => self.example(speaker.id) };
                self.signed_with(speaker, Key::Help, args)
            }
        }
    }

    /// Whether a text asks for help.
    pub(crate) fn asks_for_help(self, turn: &Turn, speaker: &Person) -> bool {
        self.read(turn, speaker.role).acts.contains(&Act::Help)
    }

    /// What a question of an adviser would be answered now.
    pub(crate) fn asked_again(self, turn: &Turn, speaker: &Person) -> Option<Phrase> {
        let reading = self.read(turn, speaker.role);
        let query = reading.acts.into_iter().find_map(|act| {
            if let Act::Query(query) = act {
                Some(query)
            } else {
                None
            }
        });
        let query = query.filter(|query: &Query| query.topic != Topic::More)?;
        self.adviser_answer(speaker, &query, &turn.text)
    }
}
