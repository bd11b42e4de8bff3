//! Large deeds that need a code first: what is asked, and what is said once they are done.
//!
//! Sender numbers can be forged. Whoever forges one does not see the code, because it is texted
//! to the registered number.

use std::hash::{DefaultHasher, Hash, Hasher};

use budwood_scheduler::{Group, GroupId, Person};
use chrono::NaiveDate;

use crate::{
    args,
    engine::{said::Said, turn::Turn, view::View},
    wording::{Key, Phrase, Value},
    words::message::Deed,
};

/// Codes have four digits: short enough to type, and one guess only.
const CODES: u64 = 9_000;
const FIRST_CODE: u64 = 1_000;

/// A large deed, and the question that waits for its code.
pub(crate) struct Large {
    pub(crate) deed: Deed,
    pub(crate) phrase: Phrase,
}

impl View<'_> {
    /// The code for what this text asks for.
    pub(crate) fn code(self, turn: &Turn) -> String {
        let mut hasher = DefaultHasher::new();
        (self.setup.secret, turn.message, &turn.number, self.now).hash(&mut hasher);
        (FIRST_CODE + hasher.finish() % CODES).to_string()
    }

    /// Opening the planting window of a group.
    pub(crate) fn opening_window(self, group: &Group) -> Large {
        let on = self.today_in(group);
        let args = args! {
            "group" => group.name.as_str(),
            "day" => on,
            "rain" => self.rain_told(group.id, on),
            "farmers" => self.table(group).told_to_plant().value,
        };
        let group = group.id;
        Large {
            deed: Deed::OpenWindow { group, on },
            phrase: Phrase::new(Key::WindowAsk, args),
        }
    }

    /// Holding planting in a group again; what is said instead when it is not open.
    pub(crate) fn holding_planting(self, group: &Group) -> Result<Large, Phrase> {
        let mut args = args! { "group" => group.name.as_str() };
        if group.window_opened.is_none() {
            return Err(Phrase::new(Key::HoldNone, args));
        }
        args.extend(args! { "farmers" => self.table(group).told_to_plant().value });
        let on = self.today_in(group);
        let group = group.id;
        Ok(Large {
            deed: Deed::HoldPlanting { group, on },
            phrase: Phrase::new(Key::HoldAsk, args),
        })
    }

    /// Warning the neighbours of the largest cluster of a group; what is said instead when there
    /// is none.
    pub(crate) fn warning(self, adviser: &Person, group: GroupId) -> Result<Large, Phrase> {
        let name = self.group_name(Some(group));
        let clusters = self.clusters_of(group, self.today_of(adviser.id));
        let cluster = clusters.into_iter().next();
        let near = cluster.map(|cluster| (self.near(adviser, &cluster), cluster));
        let Some((near, cluster)) = near.filter(|(near, _)| !near.is_empty()) else {
            return Err(Phrase::new(Key::WarnNone, args! { "group" => name }));
        };
        let ailment = cluster.ailment;
        let args = args! {
            "group" => Value::name(name),
            "ailment" => ailment,
            "count" => cluster.reports,
            "blocks" => near.len(),
        };
        Ok(Large {
            deed: Deed::Warn { group, ailment },
            phrase: Phrase::new(Key::WarnAsk, args),
        })
    }

    /// The window of a group was opened, or planting is held.
    pub(crate) fn window_told(self, turn: &Turn, key: Key, group: GroupId, on: NaiveDate) -> Said {
        let record = self.world.directory.group(group);
        let farmers = record.map_or(0, |group| self.table(group).told_to_plant().value);
        let args = args! {
            "group" => self.group_name(Some(group)),
            "day" => on,
            "farmers" => farmers,
        };
        self.reply(turn, Phrase::new(key, args))
    }
}
