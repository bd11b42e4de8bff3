//! Questions of the adviser: one SMS each.

use budwood_parser::{Query, Topic};
use budwood_scheduler::{
    Group, GroupId, Person, group::health::Family, jobs::orders::plants_to_order,
};

use super::{
    girth::member_girth,
    summary::{SickPerson, Summary, last_heard, summary},
};
use crate::{
    args,
    engine::{
        deeds::due_index::{calendar_of, tasks_of},
        step::{Step, civil_day, zone},
    },
    wording::{LateItem, MemberBlock, short},
    words::{limits, sms},
};

impl Step<'_> {
    /// The answer to an adviser's question; none when it is not one of theirs.
    pub(crate) fn adviser_answer(&self, speaker: &Person, query: &Query) -> Option<String> {
        if let Some(member) = &query.member {
            return Some(self.member(speaker, member));
        }
        if let Some(text) = self.about_work(speaker, query) {
            return Some(text);
        }
        let text = match query.topic {
            Topic::Quiet => self.quiet(speaker, self.group_asked(speaker, query)),
            Topic::Visit => self.visit_list(speaker, self.group_asked(speaker, query)),
            Topic::Status | Topic::Late | Topic::Gaps | Topic::Sick => {
                match self.group_asked(speaker, query) {
                    Some(group) => self.about_group(speaker, group, query.topic),
                    None => self.not_yours(speaker),
                }
            }
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
        };
        Some(text)
    }

    /// The group asked about, if it is the adviser's; without a name the only one there is.
    pub(crate) fn group_asked(&self, speaker: &Person, query: &Query) -> Option<&Group> {
        let mut own = self.world.directory.groups_of(speaker.id);
        match &query.group {
            Some(name) => own.find(|group| group.name.eq_ignore_ascii_case(name)),
            None => {
                let first = own.next()?;
                own.next().is_none().then_some(first)
            }
        }
    }

    fn about_group(&self, speaker: &Person, group: &Group, topic: Topic) -> String {
        let sum = summary(self.world, self.setup, group.id, self.now);
        match topic {
            Topic::Late => self.late(speaker, group, &sum),
            Topic::Gaps => self.gaps(speaker, group, &sum),
            Topic::Sick => self.sick(speaker, group, &sum),
            Topic::Status
            | Topic::Quiet
            | Topic::Visit
            | Topic::Member
            | Topic::Next
            | Topic::When
            | Topic::HowMuch
            | Topic::MayI
            | Topic::Window
            | Topic::Warn
            | Topic::Hold
            | Topic::MyData
            | Topic::Erase
            | Topic::CallMe
            | Topic::Who
            | Topic::Language
            | Topic::Other => self.status(speaker, group, &sum),
        }
    }

    /// Jobs are left out, rarest first, before the text grows to a second part.
    fn status(&self, speaker: &Person, group: &Group, sum: &Summary) -> String {
        let tongue = self.tongue(speaker);
        let today = civil_day(self.now, zone(group, self.setup));
        let alive = match (sum.alive_pct, self.visited_pct(group)) {
            (None, _) => tongue.say("alive-unknown", args! {}),
            (Some(pct), None | Some(0)) => tongue.say("alive-pct", args! { "pct" => pct }),
            (Some(pct), Some(visited)) => {
                let args = args! { "pct" => pct, "visited" => visited };
                tongue.say("alive-pct-visited", args)
            }
        };
        let jobs = |counts: &std::collections::BTreeMap<_, u32>, key: &str, shown: usize| {
            if counts.is_empty() {
                return tongue.say(&format!("{key}-none"), args! {});
            }
            tongue.say(key, args! { "tasks" => tongue.task_counts(counts, shown) })
        };
        let check = match self.stands_to_check(group) {
            0 => String::new(),
            count => tongue.say("status-check", args! { "count" => count }),
        };
        let text = |shown: usize, check: &str, is_long: bool| {
            tongue.fit(|length| {
                let args = args! {
                    "group" => short(&group.name, length),
                    "day" => tongue.day(today),
                    "farmers" => sum.farmers,
                    "planted" => sum.planted,
                    "alive" => alive.as_str(),
                    "due" => jobs(&sum.due, "status-due", shown),
                    "late" => jobs(&sum.late, "status-late", shown),
                    "check" => check,
                    "quiet" => sum.quiet.len(),
                    "sick" => sum.sick.len(),
                };
                if is_long {
                    tongue.say_long("status", args)
                } else {
                    tongue.say("status", args)
                }
            })
        };
        let most = sum.due.len().max(sum.late.len()).max(1);
        (1..=most)
            .rev()
            .map(|shown| text(shown, &check, true))
            .chain([text(1, "", true)])
            .find(|text| whole_sentence(text, sum))
            .unwrap_or_else(|| text(1, "", false))
    }

    fn late(&self, speaker: &Person, group: &Group, sum: &Summary) -> String {
        let tongue = self.tongue(speaker);
        if sum.late_items.is_empty() {
            return tongue.whole("late-none", args! { "group" => group.name.as_str() });
        }
        tongue.people(
            &sum.late_items,
            |item: &LateItem, length| tongue.late_item(item, length),
            |people| {
                let args = args! {
                    "group" => short(&group.name, limits::SHORT_NAME),
                    "people" => people,
                };
                tongue.say("late-list", args)
            },
        )
    }

    fn quiet(&self, speaker: &Person, only: Option<&Group>) -> String {
        let groups: Vec<GroupId> = match only {
            Some(group) => vec![group.id],
            None => self
                .world
                .directory
                .groups_of(speaker.id)
                .map(|group| group.id)
                .collect(),
        };
        let mut people: Vec<(String, Option<i64>)> = groups
            .into_iter()
            .flat_map(|group| summary(self.world, self.setup, group, self.now).quiet)
            .collect();
        people.sort_by_key(|(_, days)| std::cmp::Reverse(days.unwrap_or(i64::MAX)));
        let tongue = self.tongue(speaker);
        if people.is_empty() {
            return tongue.whole("quiet-none", args! { "limit" => limits::QUIET_DAYS });
        }
        tongue.people(
            &people,
            |(name, days), length| match days {
                Some(days) => {
                    let args = args! { "name" => short(name, length), "days" => *days };
                    tongue.say("quiet-person", args)
                }
                None => tongue.say(
                    "quiet-person-never",
                    args! { "name" => short(name, length) },
                ),
            },
            |people| {
                let args = args! { "limit" => limits::QUIET_DAYS, "people" => people };
                tongue.say("quiet-list", args)
            },
        )
    }

    fn gaps(&self, speaker: &Person, group: &Group, sum: &Summary) -> String {
        let tongue = self.tongue(speaker);
        let total = sum
            .gaps
            .iter()
            .map(|(_, gaps)| *gaps)
            .fold(0, u32::saturating_add);
        if total == 0 {
            let args = args! { "group" => group.name.as_str(), "uncounted" => sum.uncounted };
            return tongue.whole("gaps-none", args);
        }
        // Plants for gaps need no spares, only what is lost on the way.
        let order = calendar_of(self.setup, group)
            .and_then(|calendar| {
                let order = &calendar.order;
                plants_to_order(total, 0.0, order.transit_loss_pct)
            })
            .unwrap_or(total);
        tongue.people(
            &sum.gaps,
            |(name, gaps), length| {
                tongue.say(
                    "gaps-person",
                    args! { "name" => short(name, length), "gaps" => *gaps },
                )
            },
            |people| {
                tongue.say(
                    "gaps-list",
                    args! {
                        "group" => short(&group.name, limits::SHORT_NAME),
                        "gaps" => total,
                        "farmers" => sum.gaps.len(),
                        "order" => order,
                        "people" => people,
                    },
                )
            },
        )
    }

    /// The largest cluster is named first, and who is in it.
    fn sick(&self, speaker: &Person, group: &Group, sum: &Summary) -> String {
        let tongue = self.tongue(speaker);
        let today = civil_day(self.now, zone(group, self.setup));
        let cluster = self.clusters_of(group.id, today).into_iter().next();
        let Some(cluster) = cluster else {
            if sum.sick.is_empty() {
                let args = args! { "group" => group.name.as_str(), "limit" => limits::SICK_DAYS };
                return tongue.whole("sick-none", args);
            }
            return tongue.people(
                &sum.sick,
                |(name, ailment, trees), length| tongue.sick_person(name, *ailment, *trees, length),
                |people| {
                    let group = short(&group.name, limits::SHORT_NAME);
                    tongue.say("sick-list", args! { "group" => group, "people" => people })
                },
            );
        };
        let mut people = self.people_in(group, &cluster);
        let others = sum.sick.iter().filter(|(name, ailment, _)| {
            let same = Family::of(*ailment) == Some(cluster.family);
            !(same && people.iter().any(|(known, _, _)| known == name))
        });
        let others: Vec<SickPerson> = others.cloned().collect();
        people.extend(others);
        tongue.people(
            &people,
            |(name, ailment, trees), length| tongue.sick_person(name, *ailment, *trees, length),
            |people| {
                let args = args! {
                    "group" => short(&group.name, limits::SHORT_NAME),
                    "ailment" => tongue.ailment(cluster.ailment),
                    "count" => cluster.reports,
                    "day" => tongue.day(cluster.since),
                    "people" => people,
                };
                tongue.say("sick-list-cluster", args)
            },
        )
    }

    pub(crate) fn member(&self, speaker: &Person, name: &str) -> String {
        let found = self
            .world
            .directory
            .groups_of(speaker.id)
            .find_map(|group| {
                let person = self
                    .world
                    .directory
                    .members(group.id)
                    .find(|person| person.is_named(name))?;
                Some((group, person))
            });
        let Some((group, person)) = found else {
            return self.not_yours(speaker);
        };
        let tongue = self.tongue(speaker);
        let heard = last_heard(self.world, self.setup, person.id);
        let today = self.today_of(person.id);
        let sentence = |blocks: String| {
            let key = if heard.is_some() {
                "member"
            } else {
                "member-never"
            };
            tongue.say(
                key,
                args! {
                    "name" => short(&person.name, limits::SHORT_NAME),
                    "group" => short(&group.name, limits::SHORT_NAME),
                    "blocks" => blocks,
                    "day" => heard.map(|day| tongue.day_past(day, today)).unwrap_or_default(),
                },
            )
        };
        let mut blocks = self.member_blocks(person);
        if blocks.is_empty() {
            return tongue.fit(|_| sentence(tongue.say("member-no-blocks", args! {})));
        }
        let all: Vec<String> = blocks
            .iter()
            .map(|block| tongue.member_block(block, limits::SHORT_NAME))
            .collect();
        // Girths are told where all blocks fit with them, rather than leave a block out.
        let whole = sentence(all.join(", "));
        if sms::measure(&whole).parts <= 1 {
            return whole;
        }
        for block in &mut blocks {
            block.girth = None;
        }
        tongue.people(
            &blocks,
            |block, length| tongue.member_block(block, length),
            sentence,
        )
    }

    fn member_blocks(&self, person: &Person) -> Vec<MemberBlock> {
        let today = self.today_of(person.id);
        let directory = &self.world.directory;
        directory
            .blocks_of(person.id)
            .map(|block| {
                let state = self.world.states.get(&block.id);
                let jobs = tasks_of(self.world, self.setup, block.id, today);
                let due = jobs
                    .iter()
                    .filter(|task| task.due <= today)
                    .min_by_key(|task| (task.urgency(), task.due))
                    .or_else(|| jobs.iter().min_by_key(|task| task.due));
                MemberBlock {
                    name: block.name.clone(),
                    planted_on: state.and_then(|state| state.planted_on()),
                    planted: state.map_or(0, |state| state.planted()),
                    alive: state.map_or(0, |state| state.alive()),
                    hectares: block.hectares(),
                    due: due.map(|task| (task.kind, task.due)),
                    girth: member_girth(self.world, self.setup, block.id, today),
                }
            })
            .collect()
    }

    fn not_yours(&self, speaker: &Person) -> String {
        let tongue = self.tongue(speaker);
        let groups: Vec<&Group> = self.world.directory.groups_of(speaker.id).collect();
        tongue.people(
            &groups,
            |group, length| short(&group.name, length),
            |groups| tongue.say("not-your-group", args! { "groups" => groups }),
        )
    }
}

/// Whether a status text still ends in its last figure, that is, was not cut off.
fn whole_sentence(text: &str, sum: &Summary) -> bool {
    sms::measure(text).parts <= 1 && text.ends_with(&sum.sick.len().to_string())
}
