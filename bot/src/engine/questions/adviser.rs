//! Questions of the adviser: one SMS each.

use std::collections::BTreeMap;

use budwood_parser::{Query, Topic};
use budwood_scheduler::{
    Group, Person, TaskKind, group::health::Family, jobs::orders::plants_to_order,
};

use super::summary::{SickPerson, Summary, summary};
use crate::{
    args,
    engine::view::View,
    wording::{Key, Phrase, Value, late_item, sick_person, task_counts},
    words::limits,
};

impl<'a> View<'a> {
    /// The answer to an adviser's question; none when it is not one of theirs.
    pub(crate) fn adviser_answer(self, speaker: &Person, query: &Query) -> Option<Phrase> {
        if let Some(member) = &query.member {
            return Some(self.member(speaker, member));
        }
        if let Some(answer) = self.about_work(speaker, query) {
            return Some(answer);
        }
        let group = self.group_asked(speaker, query);
        let of_group = |answer: fn(Self, &Group, &Summary) -> Phrase| match group {
            Some(group) => answer(self, group, &summary(self, group)),
            None => self.not_yours(speaker),
        };
        Some(match query.topic {
            Topic::Quiet => self.quiet(speaker, group),
            Topic::Visit => self.visit_list(speaker, group),
            Topic::Status => of_group(Self::status),
            Topic::Late => of_group(Self::late),
            Topic::Gaps => of_group(Self::gaps),
            Topic::Sick => of_group(Self::sick),
            Topic::Member | Topic::Window | Topic::Hold | Topic::Warn => self.not_yours(speaker),
            Topic::Next
            | Topic::When
            | Topic::HowMuch
            | Topic::MayI
            | Topic::MyData
            | Topic::Erase
            | Topic::CallMe
            | Topic::Who
            | Topic::Language
            | Topic::Other => return None,
        })
    }

    /// Jobs are left out, rarest first, before the text grows to a second part.
    fn status(self, group: &Group, sum: &Summary) -> Phrase {
        let alive = match (sum.alive_pct, self.visited_pct(group)) {
            (None, _) => Key::AliveUnknown.into(),
            (Some(pct), None | Some(0)) => Phrase::new(Key::AlivePct, args! { "pct" => pct }),
            (Some(pct), Some(visited)) => {
                let args = args! { "pct" => pct, "visited" => visited };
                Phrase::new(Key::AlivePctVisited, args)
            }
        };
        let jobs = |counts: &BTreeMap<TaskKind, u32>, none: Key, some: Key| {
            if counts.is_empty() {
                return Phrase::from(none);
            }
            Phrase::new(some, args! { "tasks" => task_counts(counts) })
        };
        let check = match self.stands_to_check(group) {
            0 => None,
            count => Some(Phrase::new(Key::StatusCheck, args! { "count" => count })),
        };
        let args = args! {
            "group" => Value::name(&group.name),
            "day" => self.today_in(group),
            "farmers" => sum.farmers,
            "planted" => sum.planted,
            "alive" => alive,
            "due" => jobs(&sum.due, Key::StatusDueNone, Key::StatusDue),
            "late" => jobs(&sum.late, Key::StatusLateNone, Key::StatusLate),
            "check" => Value::Spare(vec![check, None]),
            "quiet" => sum.quiet.len(),
            "sick" => sum.sick.len(),
        };
        Phrase::new(Key::Status, args)
    }

    fn late(self, group: &Group, sum: &Summary) -> Phrase {
        if sum.late_items.is_empty() {
            return Phrase::new(Key::LateNone, args! { "group" => group.name.as_str() });
        }
        let people = sum.late_items.iter().map(|item| late_item(item).into());
        let args = args! {
            "group" => Value::brief(&group.name),
            "people" => Value::List(people.collect()),
        };
        Phrase::new(Key::LateList, args)
    }

    fn quiet(self, speaker: &Person, only: Option<&'a Group>) -> Phrase {
        let groups: Vec<&Group> = match only {
            Some(group) => vec![group],
            None => self.world.directory.groups_of(speaker.id).collect(),
        };
        let mut people: Vec<(String, Option<i64>)> = groups
            .into_iter()
            .flat_map(|group| summary(self, group).quiet)
            .collect();
        people.sort_by_key(|(_, days)| std::cmp::Reverse(days.unwrap_or(i64::MAX)));
        let limit = args! { "limit" => limits::QUIET_DAYS };
        if people.is_empty() {
            return Phrase::new(Key::QuietNone, limit);
        }
        let people = people.iter().map(|(name, days)| {
            let name = Value::name(name);
            let phrase = match days {
                Some(days) => {
                    let args = args! { "name" => name, "days" => *days };
                    Phrase::new(Key::QuietPerson, args)
                }
                None => Phrase::new(Key::QuietPersonNever, args! { "name" => name }),
            };
            phrase.into()
        });
        let mut args = limit;
        args.extend(args! { "people" => Value::List(people.collect()) });
        Phrase::new(Key::QuietList, args)
    }

    fn gaps(self, group: &Group, sum: &Summary) -> Phrase {
        let gaps = sum.gaps.iter().map(|(_, gaps)| *gaps);
        let total = gaps.fold(0, u32::saturating_add);
        if total == 0 {
            let args = args! { "group" => group.name.as_str(), "uncounted" => sum.uncounted };
            return Phrase::new(Key::GapsNone, args);
        }
        // Plants for gaps need no spares, only what is lost on the way; none is ordered for a stand
        // that is filled no more.
        let order = self
            .calendar_of(group)
            .and_then(|calendar| {
                plants_to_order(sum.gaps_to_fill, 0.0, calendar.order.transit_loss_pct)
            })
            .unwrap_or(sum.gaps_to_fill);
        let people = sum.gaps.iter().map(|(name, gaps)| {
            let args = args! { "name" => Value::name(name), "gaps" => *gaps };
            Phrase::new(Key::GapsPerson, args).into()
        });
        let args = args! {
            "group" => Value::brief(&group.name),
            "gaps" => total,
            "farmers" => sum.gaps.len(),
            "order" => order,
            "people" => Value::List(people.collect()),
        };
        Phrase::new(Key::GapsList, args)
    }

    /// The largest cluster is named first, and who is in it.
    fn sick(self, group: &Group, sum: &Summary) -> Phrase {
        let listed = |people: &[SickPerson]| {
            let people = people
                .iter()
                .map(|(name, ailment, trees)| sick_person(name, *ailment, *trees).into());
            Value::List(people.collect())
        };
        let today = self.today_in(group);
        let Some(cluster) = self.clusters_of(group.id, today).into_iter().next() else {
            if sum.sick.is_empty() {
                let args = args! { "group" => group.name.as_str(), "limit" => limits::SICK_DAYS };
                return Phrase::new(Key::SickNone, args);
            }
            let args = args! {
                "group" => Value::brief(&group.name),
                "people" => listed(&sum.sick),
            };
            return Phrase::new(Key::SickList, args);
        };
        let mut people = self.people_in(group, &cluster);
        let others = sum.sick.iter().filter(|(name, ailment, _)| {
            let same = Family::of(*ailment) == Some(cluster.family);
            !(same && people.iter().any(|(known, _, _)| known == name))
        });
        let others: Vec<SickPerson> = others.cloned().collect();
        people.extend(others);
        let args = args! {
            "group" => Value::brief(&group.name),
            "ailment" => cluster.ailment,
            "count" => cluster.reports,
            "day" => cluster.since,
            "people" => listed(&people),
        };
        Phrase::new(Key::SickListCluster, args)
    }
}
