//! Questions of the adviser: one SMS each.
//!
//! Without a group the answer is about all of the adviser's groups: a line each, or one list of people.

use std::collections::BTreeMap;

use budwood_parser::{Cause, Query, Topic};
use budwood_scheduler::{
    Group, Person, TaskKind,
    figures::{FEED_LOST_DAYS, LateJob, Name, QUIET_DAYS, SICK_DAYS, Sick, Table, Why},
    group::health::{Cluster, Family},
    jobs::orders::plants_to_order,
};

use super::{
    asked::{Asked, line},
    figures::Names,
};
use crate::{
    args,
    engine::view::View,
    wording::{Key, LateItem, Phrase, Value, late_item, sick_person, task_counts},
};

impl<'a> View<'a> {
    /// The answer to an adviser's question; none when it is not one of theirs. The text itself says
    /// how digits were written.
    #[expect(clippy::too_many_lines, reason = "one list: each topic and its answer")]
    pub(crate) fn adviser_answer(
        self,
        speaker: &Person,
        query: &Query,
        text: &str,
    ) -> Option<Phrase> {
        if let Some(name) = query.member.as_deref() {
            return Some(self.one_called(speaker, name, query));
        }
        if let Some(answer) = self.about_work(speaker, query) {
            return Some(answer);
        }
        let of = |all, whole, line| Some(self.of_groups((speaker, query), all, whole, line));
        match query.topic {
            Topic::Status => of(Key::StatusAll, Self::status, Self::status_line),
            Topic::Late => of(Key::LateAll, Self::late, Self::late_line),
            Topic::Gaps => of(Key::GapsAll, Self::gaps, Self::gaps_line),
            Topic::Sick => of(Key::SickAll, Self::sick, Self::sick_line),
            Topic::Dead => of(Key::DeadAll, Self::dead, Self::dead_line),
            Topic::Cause => of(Key::DeadAll, Self::dead_by_cause, Self::dead_line),
            Topic::Clone => of(Key::CloneAll, Self::clones, Self::clones_line),
            Topic::Bags => of(Key::FeedAll, Self::bags, Self::bags_line),
            Topic::Root => of(Key::RootAll, Self::roots, Self::roots_line),
            Topic::Fire => of(Key::FireAll, Self::fires, Self::fires_line),
            Topic::Wind | Topic::Harm => match self.cause_named(text) {
                Some(Cause::Flood) => of(Key::HarmAll, Self::flood, Self::flood_line),
                Some(Cause::Drought) => of(Key::HarmAll, Self::drought, Self::drought_line),
                Some(_) | None => of(Key::WindAll, Self::wind, Self::wind_line),
            },
            Topic::Map => of(Key::MapAll, Self::map, Self::map_line),
            Topic::Girth => of(Key::GirthAll, Self::girths, Self::girths_line),
            Topic::Quiet => Some(self.quiet(speaker, self.group_asked(speaker, query))),
            Topic::Visit => Some(self.visit_list(speaker, self.group_asked(speaker, query))),
            Topic::Order => Some(self.orders(speaker, query)),
            Topic::Ready => Some(match self.group_asked(speaker, query) {
                Some(group) if query.group.is_some() => self.ready_in(group),
                _ if query.group.is_some() => self.not_yours(speaker),
                _ => self.ready_now(speaker),
            }),
            Topic::Job | Topic::Count => self.job(speaker, query),
            Topic::Rain => Some(self.rain_list(speaker, query)),
            Topic::Best => Some(self.best(speaker)),
            Topic::Cost => Some(self.cost()),
            Topic::Week => Some(self.own_week(speaker, query)),
            Topic::Whose => Some(self.whose(speaker, last_word(text))),
            Topic::Waiting => Some(self.waiting_list(speaker)),
            Topic::Grant => Some(self.part_payments(speaker, query)),
            Topic::Paid
            | Topic::Train
            | Topic::List
            | Topic::Trained
            | Topic::Stock
            | Topic::Sent
            | Topic::Allot
            | Topic::PickUp
            | Topic::Buying => self.about_books(speaker, query),
            // These are asked of somebody, and deeds are done to somebody.
            Topic::Member
            | Topic::Last
            | Topic::Labour
            | Topic::Window
            | Topic::Hold
            | Topic::Warn
            | Topic::LeaveAlone
            | Topic::GoOn
            | Topic::Lost
            | Topic::Found
            | Topic::Moved => Some(self.not_yours(speaker)),
            Topic::More
            | Topic::Tell
            | Topic::Ask
            | Topic::AskHarm
            | Topic::Pass
            | Topic::Promise
            | Topic::Kept
            | Topic::Owner
            | Topic::Divide
            | Topic::Join
            | Topic::Leave
            | Topic::Contact
            | Topic::HandOver => Some(Key::HelpAdviser.into()),
            Topic::Next
            | Topic::When
            | Topic::HowMuch
            | Topic::MayI
            | Topic::MyData
            | Topic::Share
            | Topic::Erase
            | Topic::CallMe
            | Topic::Who
            | Topic::Language
            | Topic::Price
            | Topic::Meeting
            | Topic::Open
            | Topic::Fix
            | Topic::HowTo
            | Topic::Advice
            | Topic::Other => None,
        }
    }

    fn alive(self, asked: &Asked<'a, '_>) -> Phrase {
        let living = asked.table.living().value;
        let visited = self.visited_pct(&asked.table, Name::Living);
        match (living.survival_pct(), visited) {
            (None, _) => Key::AliveUnknown.into(),
            (Some(pct), None | Some(0)) => Phrase::new(Key::AlivePct, args! { "pct" => pct }),
            (Some(pct), Some(visited)) => {
                let args = args! { "pct" => pct, "visited" => visited };
                Phrase::new(Key::AlivePctVisited, args)
            }
        }
    }

    /// Jobs are left out, rarest first, before the text grows to a second part.
    pub(super) fn status(self, asked: &Asked<'a, '_>) -> Phrase {
        let Asked { group, table, .. } = asked;
        let jobs = table.jobs().value;
        let told = |counts: &BTreeMap<TaskKind, u32>, none: Key, some: Key| {
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
            "farmers" => table.farmers().value,
            "planted" => table.planted().value,
            "alive" => self.alive(asked),
            "due" => told(&jobs.due, Key::StatusDueNone, Key::StatusDue),
            "late" => told(&jobs.late, Key::StatusLateNone, Key::StatusLate),
            "check" => Value::Spare(vec![check, None]),
            "quiet" => table.quiet().value.len(),
            "sick" => self.sick_people(asked).0.len(),
            "peace" => left_in_peace(table),
        };
        Phrase::new(Key::Status, args)
    }

    fn status_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let table = &asked.table;
        let args = args! {
            "group" => Value::name(&asked.group.name),
            "alive" => self.alive(asked),
            "late" => table.jobs().value.list.len(),
            "quiet" => table.quiet().value.len(),
            "sick" => self.sick_people(asked).0.len(),
        };
        Phrase::new(Key::StatusLine, args)
    }

    fn late(self, asked: &Asked<'a, '_>) -> Phrase {
        let list = asked.table.jobs().value.list;
        if list.is_empty() {
            let args = args! {
                "group" => asked.group.name.as_str(),
                "peace" => left_in_peace(&asked.table),
                "lost" => feed_lost(asked),
            };
            return Phrase::new(Key::LateNone, args);
        }
        let people = list.iter().map(|job| late_job(asked.names, job).into());
        let args = args! {
            "group" => Value::brief(&asked.group.name),
            "people" => Value::List(people.collect()),
            "peace" => left_in_peace(&asked.table),
            "lost" => feed_lost(asked),
        };
        Phrase::new(Key::LateList, args)
    }

    fn late_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let list = asked.table.jobs().value.list;
        let first = list.first().map(|job| late_job(asked.names, job));
        line(asked.group, list.len(), first)
    }

    /// Each with why: nobody knows, or their phone fails; who is at rest and of whom nothing is asked
    /// is only counted.
    fn quiet(self, speaker: &Person, only: Option<&'a Group>) -> Phrase {
        let (table, names) = match only {
            Some(group) => (self.table(group), Names::of(self, [group])),
            None => (self.table_of(speaker), Names::of_all(self, speaker)),
        };
        let silent = table.silent().value;
        let counted = |why: Why, key: Key| {
            let count = silent.iter().filter(|one| one.why == why).count();
            (count > 0).then(|| Phrase::new(key, args! { "count" => count }))
        };
        let why = [
            counted(Why::AtRest, Key::QuietResting),
            counted(Why::NothingDue, Key::QuietIdle),
        ];
        let why = why.into_iter().flatten().map(Value::from).collect();
        let args = args! { "limit" => QUIET_DAYS, "why" => Value::Joined(why) };
        let people = silent.iter().filter_map(|one| {
            let name = Value::name(&names.shown(one.person));
            let since = match one.days {
                Some(days) => {
                    Phrase::new(Key::QuietPerson, args! { "name" => name, "days" => days })
                }
                None => Phrase::new(Key::QuietPersonNever, args! { "name" => name }),
            };
            match one.why {
                Why::Unknown => Some(since.into()),
                Why::PhoneFails => {
                    Some(Phrase::new(Key::QuietFailing, args! { "person" => since }).into())
                }
                Why::AtRest | Why::NothingDue => None,
            }
        });
        let people: Vec<Value> = people.collect();
        if people.is_empty() {
            return Phrase::new(Key::QuietNone, args);
        }
        let mut args = args;
        args.extend(args! { "people" => Value::List(people) });
        Phrase::new(Key::QuietList, args)
    }

    /// Plants for gaps need no spares, only what is lost on the way; none is ordered for a stand
    /// that is filled no more.
    fn order(self, asked: &Asked<'a, '_>) -> u32 {
        let to_fill = asked.table.gaps_to_fill().value;
        let calendar = self.calendar_of(asked.group);
        let order = calendar
            .and_then(|calendar| plants_to_order(to_fill, 0.0, calendar.order.transit_loss_pct));
        order.unwrap_or(to_fill)
    }

    fn gaps(self, asked: &Asked<'a, '_>) -> Phrase {
        let Asked {
            group,
            table,
            names,
        } = asked;
        let total = table.living().value.gaps;
        if total == 0 {
            let uncounted = table.uncounted().value;
            let args = args! { "group" => group.name.as_str(), "uncounted" => uncounted };
            return Phrase::new(Key::GapsNone, args);
        }
        let list = table.gaps().value;
        let people = list.iter().map(|(person, gaps)| {
            let args = args! { "name" => Value::name(&names.shown(*person)), "gaps" => *gaps };
            Phrase::new(Key::GapsPerson, args).into()
        });
        let args = args! {
            "group" => Value::brief(&group.name),
            "gaps" => total,
            "farmers" => list.len(),
            "order" => self.order(asked),
            "people" => Value::List(people.collect()),
        };
        Phrase::new(Key::GapsList, args)
    }

    fn gaps_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let gaps = asked.table.living().value.gaps;
        let order = (gaps > 0).then(|| {
            let args = args! { "order" => self.order(asked) };
            Phrase::new(Key::GapsOrder, args)
        });
        line(asked.group, gaps, order)
    }

    /// Those of the largest cluster first, then who else told of sickness; and that cluster.
    pub(super) fn sick_people(self, asked: &Asked<'a, '_>) -> (Vec<Sick>, Option<Cluster>) {
        let told = asked.table.sick().value;
        let today = self.today_in(asked.group);
        let Some(cluster) = self.clusters_of(asked.group.id, today).into_iter().next() else {
            return (told, None);
        };
        let mut people = self.people_in(&cluster, today);
        let is_known = |one: &Sick, people: &[Sick]| {
            let same = Family::of(one.ailment) == Some(cluster.family);
            same && people.iter().any(|known| known.person == one.person)
        };
        let others: Vec<Sick> = told
            .into_iter()
            .filter(|one| !is_known(one, &people))
            .collect();
        people.extend(others);
        (people, Some(cluster))
    }

    /// The largest cluster is named first, and who is in it.
    fn sick(self, asked: &Asked<'a, '_>) -> Phrase {
        let group = asked.group;
        let (people, cluster) = self.sick_people(asked);
        let people: Vec<Value> = people
            .iter()
            .map(|sick| sick_one(asked.names, sick).into())
            .collect();
        if people.is_empty() {
            let args = args! { "group" => group.name.as_str(), "limit" => SICK_DAYS };
            return Phrase::new(Key::SickNone, args);
        }
        let mut args = args! {
            "group" => Value::brief(&group.name),
            "people" => Value::List(people),
        };
        let Some(cluster) = cluster else {
            return Phrase::new(Key::SickList, args);
        };
        args.extend(args! {
            "ailment" => cluster.ailment,
            "count" => cluster.reports,
            "day" => cluster.since,
        });
        Phrase::new(Key::SickListCluster, args)
    }

    fn sick_line(self, asked: &Asked<'a, '_>) -> Phrase {
        let (people, _) = self.sick_people(asked);
        let first = people.first().map(|sick| sick_one(asked.names, sick));
        line(asked.group, people.len(), first)
    }
}

/// The last word of a text, which in "who 0003" are the digits as they were written.
fn last_word(text: &str) -> &str {
    text.split_whitespace().next_back().unwrap_or_default()
}

/// How many are left in peace, and so in no list: nothing where there is none.
pub(super) fn left_in_peace(table: &Table<'_>) -> Value {
    let told = match table.in_peace().value {
        0 => None,
        count => Some(Phrase::new(Key::LeftInPeace, args! { "count" => count })),
    };
    Value::Spare(vec![told, None])
}

fn late_job(names: &Names<'_>, job: &LateJob) -> Phrase {
    late_item(&LateItem {
        name: names.shown(job.person),
        task: job.task,
        days: job.days,
        told: job.in_vain,
    })
}

fn sick_one(names: &Names<'_>, sick: &Sick) -> Phrase {
    sick_person(&names.shown(sick.person), sick.ailment, sick.trees)
}

/// Rounds of feeding that are asked for no more: nothing where there is none.
fn feed_lost(asked: &Asked<'_, '_>) -> Value {
    let lost = asked.table.feed_lost().value;
    let told = lost.first().map(|(most, _)| {
        let args = args! {
            "days" => FEED_LOST_DAYS,
            "count" => lost.iter().map(|(_, rounds)| rounds).sum::<usize>(),
            "name" => Value::name(&asked.names.shown(*most)),
        };
        Phrase::new(Key::FeedLost, args)
    });
    Value::Spare(vec![told, None])
}
