//! What can be asked by whom, and a question that was answered in part, asked again for what follows.

use budwood_parser::{Act, Query, Topic};
use budwood_scheduler::{Person, Role};

use crate::{
    args,
    engine::{turn::Turn, view::View},
    wording::{Key, Phrase, Value},
};

impl View<'_> {
    /// What somebody of this role can text, and ask, a text each.
    pub(crate) fn help_for(self, speaker: &Person) -> Vec<Phrase> {
        let group = || args! { "group" => Value::name(self.group_name(speaker.group)) };
        let signed = |key: Key| {
            let args = args! { "example" => self.example(speaker.id) };
            vec![self.signed_with(speaker, key, args)]
        };
        match speaker.role {
            Role::Adviser => {
                let pages = [
                    Key::HelpAdviser,
                    Key::HelpAdviserMore,
                    Key::HelpAdviserPeople,
                    Key::HelpAdviserDeeds,
                ];
                pages.into_iter().map(Phrase::from).collect()
            }
            Role::Clerk => vec![
                Phrase::new(Key::HelpClerk, group()),
                Key::HelpLookMore.into(),
            ],
            Role::Viewer => vec![
                Phrase::new(Key::HelpViewer, group()),
                Key::HelpLookMore.into(),
            ],
            Role::Farmer => signed(Key::Help),
            Role::Leader => signed(Key::HelpLeader),
            Role::Nursery => signed(Key::HelpNursery),
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
