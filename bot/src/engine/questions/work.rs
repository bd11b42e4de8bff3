//! Questions of the adviser about one kind of work at a group: feeding, and girths.

use budwood_parser::{Kind, Query, Topic};
use budwood_scheduler::{
    Group, Person, TaskKind,
    jobs::feed::{BAG_KG, bags},
};

use super::girth::member_girth;
use crate::{
    args,
    engine::{
        deeds::due_index::tasks_of,
        step::{Step, civil_day, zone},
    },
    wording::{MemberGirth, short},
    words::limits,
};

impl Step<'_> {
    /// The answer about one kind of work; none when another answer fits better.
    pub(crate) fn about_work(&self, speaker: &Person, query: &Query) -> Option<String> {
        let is_asked = |topics: &[Topic]| topics.contains(&query.topic);
        let kind = query.kind?;
        if kind == Kind::Fertilised && is_asked(&[Topic::HowMuch, Topic::Status]) {
            return self.feed_of_group(speaker, self.group_asked(speaker, query)?);
        }
        let girths = matches!(kind, Kind::Girth | Kind::TappingOpened);
        if !girths || !is_asked(&[Topic::Status, Topic::When, Topic::Member]) {
            return None;
        }
        match (self.group_asked(speaker, query), &query.group) {
            (Some(group), _) => Some(self.girths_of_group(speaker, group)),
            // "girth Pira" is about a person.
            (None, Some(name)) => Some(self.member(speaker, name)),
            (None, None) => None,
        }
    }

    /// The feed that is due at a group: kilograms, and bags together and alone.
    fn feed_of_group(&self, speaker: &Person, group: &Group) -> Option<String> {
        let today = civil_day(self.now, zone(group, self.setup));
        let mut needs_kg: Vec<f64> = Vec::new();
        let mut trees = 0_u32;
        for person in self.world.directory.members(group.id) {
            let due: Vec<_> = self
                .world
                .directory
                .blocks_of(person.id)
                .flat_map(|block| tasks_of(self.world, self.setup, block.id, today))
                .filter(|task| task.kind == TaskKind::Feed && task.due <= today)
                .collect();
            let need_kg: f64 = due.iter().map(|task| task.figures.kilograms_in_all()).sum();
            if need_kg > 0.0 {
                needs_kg.push(need_kg);
                trees = due
                    .iter()
                    .map(|task| task.figures.trees_fed())
                    .fold(trees, u32::saturating_add);
            }
        }
        let tongue = self.tongue(speaker);
        if needs_kg.is_empty() {
            return Some(tongue.whole("feed-none", args! { "group" => group.name.as_str() }));
        }
        let bags = bags(needs_kg.iter().copied(), BAG_KG)?;
        let args = args! {
            "group" => group.name.as_str(),
            "trees" => trees,
            "kilograms" => tongue.number(needs_kg.iter().sum::<f64>().round()),
            "pooled" => bags.pooled,
            "alone" => bags.alone,
            "farmers" => needs_kg.len(),
        };
        Some(tongue.whole("feed-group", args))
    }

    /// The last girths of each farmer, those furthest behind first.
    fn girths_of_group(&self, speaker: &Person, group: &Group) -> String {
        let today = civil_day(self.now, zone(group, self.setup));
        let mut girths: Vec<(&Person, MemberGirth)> = Vec::new();
        for person in self.world.directory.members(group.id) {
            let blocks = self.world.directory.blocks_of(person.id);
            let measured =
                blocks.filter_map(|block| member_girth(self.world, self.setup, block.id, today));
            girths.extend(measured.map(|girth| (person, girth)));
        }
        girths.sort_by_key(|(_, girth)| girth.months_ahead);
        let tongue = self.tongue(speaker);
        if girths.is_empty() {
            return tongue.whole("girth-none", args! { "group" => group.name.as_str() });
        }
        tongue.people(
            &girths,
            |(person, girth), length| {
                format!(
                    "{}{}",
                    short(person.called(), length),
                    tongue.member_girth(girth)
                )
            },
            |people| {
                let args = args! {
                    "group" => short(&group.name, limits::SHORT_NAME),
                    "people" => people,
                };
                tongue.say("girth-list", args)
            },
        )
    }
}
