//! Questions of the adviser about one kind of work at a group: feeding, and girths.

use budwood_parser::{Kind, Query, Topic};
use budwood_scheduler::{
    BlockId, Group, Person, TaskKind,
    jobs::feed::{BAG_KG, bags},
};

use crate::{
    args,
    engine::view::View,
    wording::{Key, MemberGirth, Phrase, Value, member_girth},
    words::limits,
};

impl View<'_> {
    /// The answer about one kind of work; none when another answer fits better.
    pub(crate) fn about_work(self, speaker: &Person, query: &Query) -> Option<Phrase> {
        let is_asked = |topics: &[Topic]| topics.contains(&query.topic);
        let kind = query.kind?;
        if kind == Kind::Fertilised && is_asked(&[Topic::HowMuch, Topic::Status]) {
            return self.feed_of_group(self.group_asked(speaker, query)?);
        }
        let girths = matches!(kind, Kind::Girth | Kind::TappingOpened);
        if !girths || !is_asked(&[Topic::Status, Topic::When, Topic::Member]) {
            return None;
        }
        match (self.group_asked(speaker, query), &query.group) {
            (Some(group), _) => Some(self.girths_of_group(group)),
            // "girth Pira" is about a person.
            (None, Some(name)) => Some(self.one_called(speaker, name, None)),
            (None, None) => None,
        }
    }

    /// The feed that is due at a group: kilograms, and bags together and alone.
    fn feed_of_group(self, group: &Group) -> Option<Phrase> {
        let today = self.today_in(group);
        let mut needs_kg: Vec<f64> = Vec::new();
        let mut trees = 0_u32;
        for person in self.world.directory.members(group.id) {
            let blocks = self.world.directory.blocks_of(person.id);
            let due: Vec<_> = blocks
                .flat_map(|block| self.tasks_of(block.id, today))
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
        let name = group.name.as_str();
        if needs_kg.is_empty() {
            return Some(Phrase::new(Key::FeedNone, args! { "group" => name }));
        }
        let bags = bags(needs_kg.iter().copied(), BAG_KG)?;
        let args = args! {
            "group" => name,
            "trees" => trees,
            "kilograms" => needs_kg.iter().sum::<f64>().round(),
            "pooled" => bags.pooled,
            "alone" => bags.alone,
            "farmers" => needs_kg.len(),
        };
        Some(Phrase::new(Key::FeedGroup, args))
    }

    /// The last girths of each farmer, those furthest behind first.
    fn girths_of_group(self, group: &Group) -> Phrase {
        let today = self.today_in(group);
        let neighbours = self.neighbours(group);
        let directory = &self.world.directory;
        let blocks = directory.members(group.id).flat_map(|person| {
            let blocks = directory.blocks_of(person.id);
            blocks.map(move |block| (person, block.id))
        });
        let mut girths: Vec<(&Person, BlockId, MemberGirth)> = blocks
            .filter_map(|(person, block)| {
                let girth = self.member_girth(neighbours.as_ref()?, block)?;
                Some((person, block, girth))
            })
            .collect();
        girths.sort_by_key(|(_, _, girth)| girth.months_ahead);
        if girths.is_empty() {
            let args = args! { "group" => group.name.as_str() };
            return Phrase::new(Key::GirthNone, args);
        }
        for (_, block, girth) in girths.iter_mut().take(limits::LIST_ITEMS_MAX) {
            girth.ready = neighbours
                .as_ref()
                .and_then(|neighbours| self.ready_between(neighbours, *block, today));
        }
        let people = girths.iter().map(|(person, _, girth)| {
            let called = Value::name(person.called());
            Value::Joined(vec![called, member_girth(girth).into()])
        });
        let args = args! {
            "group" => Value::brief(&group.name),
            "people" => Value::List(people.collect()),
        };
        Phrase::new(Key::GirthList, args)
    }
}
