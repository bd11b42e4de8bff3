//! Who is to be welcomed: the first text to a phone says who we are, and how to end it.
//!
//! So many a day, since each may call the adviser to ask what this is. A phone that texted first
//! knows us already, and on a shared phone one welcome is for all.

use budwood_scheduler::{BlockId, PersonId, jobs::nudge};

use crate::{
    engine::{
        local_time::zone,
        said::{Said, To},
        view::View,
    },
    wording::Key,
    words::message::Purpose,
};

impl View<'_> {
    /// The owner of a block, if their phone is new and a welcome may go to it right now.
    pub(crate) fn to_welcome(self, block: BlockId) -> Option<(String, PersonId)> {
        let (group, number) = self.nudged_about(block)?;
        let local = self.now.with_timezone(&zone(group, self.setup));
        let may = self.is_new(number)
            && self.has_welcomes()
            && nudge::is_window(&self.setup.rules, local.naive_local(), &group.quiet_days);
        let owner = self.world.directory.block(block)?.owner;
        may.then(|| (number.to_owned(), owner))
    }

    /// What the welcome says.
    pub(crate) fn welcome(self, number: &str, person: PersonId) -> Option<Said> {
        Some(Said {
            to: To {
                number: number.to_owned(),
                language: self.language_of(person),
            },
            phrase: self.signed(self.person(person)?, Key::Welcome),
            purpose: Purpose::Welcome { person },
            asks: false,
        })
    }
}
