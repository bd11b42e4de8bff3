//! What the farmers of a group tell of the rain: for the adviser, who alone opens the window.

use budwood_scheduler::{
    Group, GroupId, PersonId,
    outlook::rain::{Advice, Turn, rain_map, turns},
    words::rainfall::Rain,
};
use chrono::NaiveDate;

use super::due_index::season_of;
use crate::{
    args,
    engine::{step::Step, turn},
    wording::{Key, Tongue, short},
};

impl Step<'_> {
    /// What farmers told lately, and what it looks like.
    pub(crate) fn rain_told(&self, tongue: Tongue<'_>, group: GroupId, today: NaiveDate) -> String {
        let map = rain_map(&self.rains_of(group), today);
        if map.reporters == 0 {
            return String::new();
        }
        let key = match map.advice {
            Advice::LooksOpen => Key::RainOpen,
            Advice::Hold => Key::RainHold,
            Advice::TooFew => Key::RainFew,
        };
        tongue.say(
            key,
            args! { "soaked" => map.soaked, "reporters" => map.reporters },
        )
    }

    /// How the rains have turned where the one lives whom a text is about.
    pub(crate) fn rain_turns(&self, turn: &turn::Turn) -> Vec<Turn> {
        let Some(group) = self.group_of(turn) else {
            return Vec::new();
        };
        let today = self.today_of(turn.target);
        match season_of(group).watch(today) {
            Some(watch) => turns(&self.rains_of(group.id), watch.from, today),
            None => Vec::new(),
        }
    }

    /// Tells the adviser once, when a text turns the rains.
    pub(crate) fn tell_of_rain(&mut self, turn: &turn::Turn, before: &[Turn]) {
        let after = self.rain_turns(turn);
        let news = after.last().filter(|_| after.len() > before.len());
        let Some((news, group)) = news.zip(self.group_of(turn)) else {
            return;
        };
        let today = self.today_of(turn.target);
        let watch = season_of(group).watch(today);
        let (is_early, is_open) = watch.map_or((false, false), |watch| {
            (today <= watch.until, watch.opened_on.is_some())
        });
        let (key, since) = match news {
            Turn::Begun(day) if is_early && !is_open => (Key::RainBegunNotice, *day),
            Turn::Begun(_) => return,
            Turn::Stopped(day) if is_open => (Key::RainStoppedNoticeOpen, *day),
            Turn::Stopped(day) => (Key::RainStoppedNotice, *day),
        };
        let (name, map) = (
            group.name.clone(),
            rain_map(&self.rains_of(group.id), today),
        );
        self.notify(turn, |tongue| {
            tongue.fit(|length| {
                tongue.say(
                    key,
                    args! {
                        "group" => short(&name, length),
                        "soaked" => map.soaked,
                        "reporters" => map.reporters,
                        "day" => tongue.day(since),
                    },
                )
            })
        });
    }

    fn group_of(&self, turn: &turn::Turn) -> Option<&Group> {
        let directory = &self.world.directory;
        directory.group(directory.person(turn.target)?.group?)
    }

    /// Reports of rain in a group, by who told them; who shares a phone speaks with one voice.
    fn rains_of(&self, group: GroupId) -> Vec<(PersonId, Rain)> {
        let mut reports = Vec::new();
        for person in self.world.directory.members(group) {
            let voice = self.voice(person.id);
            for block in self.world.directory.blocks_of(person.id) {
                let state = self.world.states.get(&block.id);
                let rains = state.map_or(&[][..], |state| &state.rains);
                reports.extend(rains.iter().map(|rain| (voice, *rain)));
            }
        }
        reports
    }
}
