//! A question that was answered in part is asked again, for what follows.

use budwood_parser::{Act, Query, Topic};
use budwood_scheduler::Person;

use crate::{
    engine::{turn::Turn, view::View},
    wording::{Key, Phrase},
};

impl View<'_> {
    /// What a question of an adviser would be answered now.
    pub(crate) fn asked_again(self, turn: &Turn, speaker: &Person) -> Option<Phrase> {
        let reading = self.read(turn, speaker.role);
        if reading.acts.contains(&Act::Help) {
            return Some(Key::HelpAdviserMore.into());
        }
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
