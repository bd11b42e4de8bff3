//! What loading a list of people and blocks would do.

use std::collections::BTreeSet;

use crate::{
    engine::{Setup, view::View},
    roll,
};

impl View<'_> {
    /// Compares a list with what is known at this moment.
    pub(crate) fn plan_roll(self, csv: &[u8]) -> roll::Plan {
        let setup = self.setup;
        let calendars: Vec<&str> = setup.calendars.keys().map(String::as_str).collect();
        let languages = languages(setup);
        let languages: Vec<&str> = languages.iter().map(String::as_str).collect();
        let planted = |block| {
            let planted = self.state(block)?.planted();
            (planted > 0).then_some(planted)
        };
        roll::plan(
            csv,
            &roll::Known {
                directory: &self.world.directory,
                planted: &planted,
                calendars: &calendars,
                languages: &languages,
                // Of whom nothing is said, the group's language is theirs.
                language: "",
                country: &setup.country,
                today: self.now.with_timezone(&setup.zone).date_naive(),
            },
        )
    }
}

/// The languages that a list may name. One without texts of its own is read all the same.
fn languages(setup: &Setup) -> BTreeSet<String> {
    let texts = || setup.texts.languages();
    let bare = texts().filter_map(|code| setup.texts.bare_form(code));
    let named = setup.reader.languages().chain(texts());
    named.map(str::to_owned).chain(bare).collect()
}
