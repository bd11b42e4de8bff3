//! What the farmers of a group tell of the rain: for the adviser, who alone opens the window.

use budwood_scheduler::{
    Group, GroupId, PersonId,
    outlook::rain::{Advice, Turn as RainTurn, rain_map, turns},
    words::rainfall::Rain,
};
use chrono::NaiveDate;

use super::tasks::season_of;
use crate::{
    args,
    engine::{said::Said, turn::Turn, view::View},
    wording::{Key, Phrase, Value},
};

impl<'a> View<'a> {
    /// What farmers told lately, and what it looks like; nothing when none did.
    pub(crate) fn rain_told(self, group: GroupId, today: NaiveDate) -> Option<Phrase> {
        let map = rain_map(&self.rains_of(group), today);
        let key = match map.advice {
            _ if map.reporters == 0 => return None,
            Advice::LooksOpen => Key::RainOpen,
            Advice::Hold => Key::RainHold,
            Advice::TooFew => Key::RainFew,
        };
        let args = args! { "soaked" => map.soaked, "reporters" => map.reporters };
        Some(Phrase::new(key, args))
    }

    /// How the rains have turned where the one lives whom a text is about.
    pub(crate) fn rain_turns(self, turn: &Turn) -> Vec<RainTurn> {
        let Some(group) = self.group_about(turn) else {
            return Vec::new();
        };
        let today = self.today_of(turn.target);
        match season_of(group).watch(today) {
            Some(watch) => turns(&self.rains_of(group.id), watch.from, today),
            None => Vec::new(),
        }
    }

    /// What the adviser is told once, when a text turned the rains; `before` is how they had
    /// turned without it.
    pub(crate) fn rain_notice(self, turn: &Turn, before: &[RainTurn]) -> Option<Said> {
        let after = self.rain_turns(turn);
        let news = after.last().filter(|_| after.len() > before.len())?;
        let group = self.group_about(turn)?;
        let today = self.today_of(turn.target);
        let watch = season_of(group).watch(today);
        let (is_early, is_open) = watch.map_or((false, false), |watch| {
            (today <= watch.until, watch.opened_on.is_some())
        });
        let (key, since) = match news {
            RainTurn::Begun(day) if is_early && !is_open => (Key::RainBegunNotice, *day),
            RainTurn::Begun(_) => return None,
            RainTurn::Stopped(day) if is_open => (Key::RainStoppedNoticeOpen, *day),
            RainTurn::Stopped(day) => (Key::RainStoppedNotice, *day),
        };
        let map = rain_map(&self.rains_of(group.id), today);
        let args = args! {
            "group" => Value::name(&group.name),
            "soaked" => map.soaked,
            "reporters" => map.reporters,
            "day" => since,
        };
        self.notice(turn, Phrase::new(key, args))
    }

    fn group_about(self, turn: &Turn) -> Option<&'a Group> {
        self.group_of(self.person(turn.target)?)
    }

    /// Reports of rain in a group, by who told them; who shares a phone speaks with one voice.
    pub(crate) fn rains_of(self, group: GroupId) -> Vec<(PersonId, Rain)> {
        let mut reports = Vec::new();
        for person in self.world.directory.members(group) {
            let voice = self.voice(person.id);
            for block in self.world.directory.blocks_of(person.id) {
                let state = self.state(block.id);
                let rains = state.map_or(&[][..], |state| &state.rains);
                reports.extend(rains.iter().map(|rain| (voice, *rain)));
            }
        }
        reports
    }
}
