//! Questions of the adviser about the land, the rain, and groups beside each other.

use std::cmp::Reverse;

use budwood_parser::Query;
use budwood_scheduler::{
    Person,
    figures::OUTLINE_HECTARES,
    outlook::rain::{Advice, rain_map},
};

use super::asked::{Asked, line};
use crate::{
    args,
    engine::view::View,
    wording::{Key, Phrase, Value},
};

impl<'a> View<'a> {
    /// MAP: what is known of the land.
    pub(super) fn map(self, asked: &Asked<'a, '_>) -> Phrase {
        let mapped = asked.table.mapped().value;
        let args = args! {
            "group" => Value::name(&asked.group.name),
            "blocks" => mapped.blocks,
            "point" => mapped.no_point,
            "area" => mapped.no_area,
            "limit" => Value::Land(OUTLINE_HECTARES),
            "large" => mapped.large,
            "shared" => mapped.shared,
            "kept" => mapped.kept,
        };
        Phrase::new(Key::MapList, args)
    }

    pub(super) fn map_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let mapped = asked.table.mapped().value;
        let args = args! { "count" => mapped.no_point };
        let first = (mapped.no_point > 0).then(|| Phrase::new(Key::MapPoint, args));
        line(asked.group, mapped.blocks, first)
    }

    /// RAIN: where the ground was soaked in the last days, and what it looks like.
    pub(super) fn rain_list(self, speaker: &Person, query: &Query) -> Phrase {
        let groups = self.groups_asked(speaker, query);
        if groups.is_empty() {
            return self.not_yours(speaker);
        }
        let groups = groups.into_iter().map(|group| {
            let map = rain_map(&self.rains_of(group.id), self.today_in(group));
            let key = match map.advice {
                Advice::LooksOpen => Key::RainLineOpen,
                Advice::Hold => Key::RainLineHold,
                Advice::TooFew => Key::RainLineFew,
            };
            let args = args! {
                "group" => Value::name(&group.name),
                "soaked" => map.soaked,
                "reporters" => map.reporters,
            };
            Phrase::new(key, args).into()
        });
        let args = args! { "groups" => Value::List(groups.collect()) };
        Phrase::new(Key::RainAll, args)
    }

    /// BEST: the groups by living trees; then where most gaps are, and where it is most quiet.
    pub(super) fn best(self, speaker: &Person) -> Phrase {
        let groups = self.groups_of(speaker);
        let mut tables: Vec<_> = groups.map(|group| (group, self.table(group))).collect();
        if tables.is_empty() {
            return self.not_yours(speaker);
        }
        tables.sort_by_key(|(_, table)| Reverse(table.living().value.survival_pct()));
        let alive = tables.iter().map(|(group, table)| {
            let pct = table.living().value.survival_pct();
            let alive = match pct {
                Some(pct) => Phrase::new(Key::AlivePct, args! { "pct" => pct }),
                None => Key::AliveUnknown.into(),
            };
            let args = args! { "group" => Value::name(&group.name), "count" => alive };
            Phrase::new(Key::GroupCount, args).into()
        });
        let gaps = tables.iter();
        let gaps = gaps.map(|(group, table)| (table.living().value.gaps, *group));
        let quiet = tables.iter();
        let quiet = quiet.map(|(group, table)| (table.quiet().value.len(), *group));
        let most_gaps = gaps.max_by_key(|(gaps, _)| *gaps);
        let most_quiet = quiet.max_by_key(|(quiet, _)| *quiet);
        let args = args! {
            "alive" => Value::List(alive.collect()),
            "gaps" => most_gaps.map(|(gaps, group)| line(group, gaps, None)),
            "quiet" => most_quiet.map(|(quiet, group)| line(group, quiet, None)),
        };
        Phrase::new(Key::Best, args)
    }
}
