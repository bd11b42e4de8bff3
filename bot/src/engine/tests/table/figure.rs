//! The figures of the table by name, each called as answers call it and written as they write it.

use budwood_parser::{Alarm, Cause, Kind};
use budwood_scheduler::{
    Census, Group, PersonId, TaskKind,
    decide::Concern,
    figures::{Round, Scope, Standing, Table, Why, lost_pct},
    land::block::Living,
    outlook::{rain::rain_map, readiness::readiness},
};
use chrono::{Datelike, TimeDelta};

use crate::{
    engine::{questions::waiting::kinds_of, view::View},
    wording::Ready,
    words::limits,
};

/// Of whom a figure is: a group, everybody, or one farmer.
struct Whom<'a> {
    table: Table<'a>,
    group: Option<&'a Group>,
    person: Option<PersonId>,
}

fn whom<'a>(view: View<'a>, name: &str) -> Whom<'a> {
    let directory = &view.world.directory;
    let mara = directory.persons().find(|one| one.is_named("Mara"));
    let mara = mara.unwrap();
    if name == "all" {
        return Whom {
            table: view.table_of(mara),
            group: None,
            person: None,
        };
    }
    if let Some(group) = directory.group_named(name) {
        return Whom {
            table: view.table(group),
            group: Some(group),
            person: None,
        };
    }
    let person = directory.persons().find(|one| one.is_named(name)).unwrap();
    Whom {
        table: Table {
            scope: Scope::Adviser(mara.id),
            rules: &view.setup.rules,
            farmers: vec![view.farmer(person)],
        },
        group: view.group_of(person),
        person: Some(person.id),
    }
}

/// The value of a figure, as an answer writes it.
pub(super) fn value(view: View<'_>, name: &str, of: &str) -> String {
    let whom = whom(view, of);
    let about_work = name
        .split_once('-')
        .and_then(|(how, task)| work(&whom.table, how, task));
    let found = about_work
        .or_else(|| trees(view, &whom.table, name))
        .or_else(|| people(&whom.table, name))
        .or_else(|| bought(view, &whom, name))
        .or_else(|| girths(&whom.table, name))
        .or_else(|| part_payment(view, &whom, name))
        .or_else(|| outlook(view, &whom, name))
        .or_else(|| of_the_week(view, &whom, name));
    found.unwrap_or_else(|| "not there".to_owned())
}

/// "due-weed", "late-weed", "done-weed".
fn work(table: &Table<'_>, how: &str, task: &str) -> Option<String> {
    let task = match task {
        "feed" => TaskKind::Feed,
        "prune" => TaskKind::Prune,
        "weed" => TaskKind::Weed,
        "roots" => TaskKind::RootCheck,
        "firebreak" => TaskKind::Firebreak,
        _ => return None,
    };
    let Round { done, due, late } = table.round(task).value;
    let jobs = table.jobs().value;
    let counted = |counts: &std::collections::BTreeMap<TaskKind, u32>| {
        counts.get(&task).copied().unwrap_or_default()
    };
    let (round, count) = match how {
        "done" => return Some(done.len().to_string()),
        "due" => (due.len(), counted(&jobs.due)),
        "late" => (late.len(), counted(&jobs.late)),
        _ => return None,
    };
    assert_eq!(round.to_string(), count.to_string(), "two figures of {how}");
    Some(count.to_string())
}

fn trees(view: View<'_>, table: &Table<'_>, name: &str) -> Option<String> {
    let living: Living = table.living().value;
    let dead = living.planted - living.first;
    let known = |block: &_| view.known_of(block, limits::FACTS_OF_BLOCK);
    let of_cause = |cause: Option<Cause>| {
        let causes = table.losses_by_cause(known).value;
        let found = causes.iter().find(|(one, _)| *one == cause);
        found.map_or(0, |(_, dead)| *dead)
    };
    let clone_pct = || {
        let clones = table.clones().value;
        let first = clones.first().unwrap().1.planted;
        (f64::from(first) * 100.0 / f64::from(living.planted)).round()
    };
    Some(match name {
        "alive" => living.survival_pct()?.to_string(),
        "living" => living.alive().to_string(),
        "first-trees" => living.planted.to_string(),
        "dead" => {
            let losses = table.losses(known).value;
            let of_each = losses.iter().map(|loss| loss.living);
            let of_each: u32 = of_each.map(|one| one.planted - one.first).sum();
            assert_eq!(of_each, dead, "the sum of all");
            dead.to_string()
        }
        "dead-pct" => lost_pct(living)?.to_string(),
        "gaps" => {
            let of_each: u32 = table.gaps().value.iter().map(|(_, gaps)| gaps).sum();
            assert_eq!(of_each, living.gaps, "the sum of all");
            living.gaps.to_string()
        }
        "cause-untold" => of_cause(None).to_string(),
        "cause-drought" => of_cause(Some(Cause::Drought)).to_string(),
        "clone-pct" => clone_pct().to_string(),
        "wind-trees" => {
            let harm = table.harm(Cause::Wind).value;
            harm.iter().map(|(_, trees)| trees).sum::<u32>().to_string()
        }
        "sick-roots" => table.sick_roots().value.first()?.trees?.to_string(),
        _ => return None,
    })
}

fn people(table: &Table<'_>, name: &str) -> Option<String> {
    let silent = |why: Why| {
        let silent = table.silent().value;
        silent.iter().filter(|one| one.why == why).count()
    };
    let count = match name {
        "farmers" => table.farmers().value,
        "planted" => table.planted().value,
        "quiet" => table.quiet().value.len(),
        "sick" => table.sick().value.len(),
        "in-peace" => table.in_peace().value,
        "at-rest" => silent(Why::AtRest),
        "nothing-due" => silent(Why::NothingDue),
        "blocks" => table.mapped().value.blocks,
        "no-point" => table.mapped().value.no_point,
        "late-days" => return Some(table.jobs().value.list.first()?.days.to_string()),
        _ => return None,
    };
    Some(count.to_string())
}

fn bought(view: View<'_>, whom: &Whom<'_>, name: &str) -> Option<String> {
    let feed = whom.table.feed_due().value;
    let plants = |only_firm: bool| {
        let wanted = whom.table.wanted(None).value;
        let counted = wanted.iter().filter(|one| one.is_firm || !only_firm);
        counted.map(|one| one.plants).sum::<u32>().to_string()
    };
    let money = |cents: u64| format!("{}.{:02}", cents / 100, cents % 100);
    let of_group = || {
        let group = whom.group.unwrap();
        view.table(group).money(&group.book).value
    };
    Some(match name {
        "wanted" => plants(false),
        "firm" => plants(true),
        "fed-trees" => feed.trees.to_string(),
        "feed-kg" => {
            let of_each: f64 = feed.products.iter().map(|(_, kilograms)| kilograms).sum();
            assert!((of_each - feed.kilograms()).abs() < 1e-6, "the sum of all");
            format!("{:.1}", feed.kilograms())
        }
        _ if name.starts_with("feed-kg-") => {
            let product = name.strip_prefix("feed-kg-")?;
            let mut all = feed.products.iter();
            let (_, kilograms) = all.find(|(known, _)| known == product)?;
            format!("{kilograms:.1}")
        }
        "bags-together" => feed.bags?.pooled.to_string(),
        "bags-alone" => feed.bags?.alone.to_string(),
        "money-held" => money(of_group().held),
        "money-total" => money(of_group().total?),
        "money-share" => {
            let shares = of_group().shares.into_iter();
            let mut own = shares.filter(|share| Some(share.person) == whom.person);
            money(own.next()?.cents?)
        }
        "wind-asked" | "wind-answered" => {
            let book = &whom.group.unwrap().book;
            let survey = whom.table.survey(book, Cause::Wind).value?;
            let silent = if name == "wind-asked" {
                0
            } else {
                survey.silent.len()
            };
            (survey.asked - silent).to_string()
        }
        "shown-branch" => {
            let book = &whom.group.unwrap().book;
            let taught = whom.table.taught(book, Some(Kind::BranchInduction));
            taught.value.first()?.came.to_string()
        }
        _ => return None,
    })
}

/// "passes-2", "unseen-2", "short-1", "trees-short-1": of the part with this number.
fn part_payment(view: View<'_>, whom: &Whom<'_>, name: &str) -> Option<String> {
    let (what, number) = name.rsplit_once('-')?;
    let calendar = view.calendar_of(whom.group?)?;
    let mut parts = calendar.part_payments.iter();
    let part = parts.find(|part| part.part.to_string() == number)?;
    let known = |block: &_| view.known_of(block, limits::FACTS_OF_BLOCK);
    let all = whom.table.part_payment(part, known).value;
    let count = |is: fn(&Standing) -> bool| all.iter().filter(|(_, one)| is(one)).count();
    Some(match (what, all.first()) {
        ("passes", _) => count(|one| *one == Standing::Passes).to_string(),
        ("unseen", _) => count(|one| *one == Standing::Unseen).to_string(),
        ("short", _) => count(|one| matches!(one, Standing::Short(_))).to_string(),
        ("trees-short", Some((_, Standing::Short(trees)))) => trees.to_string(),
        _ => return None,
    })
}

/// The last census of a farmer.
fn girths(table: &Table<'_>, name: &str) -> Option<String> {
    let stands = table.farmers.iter().flat_map(|farmer| &farmer.stands);
    let all = stands.flat_map(|stand| &stand.state.girths);
    let census: &Census = all.max_by_key(|census| census.on)?;
    Some(match name {
        "girth-trees" => census.values_cm.len().to_string(),
        "girth-mean" => census.mean_cm()?.to_string(),
        "girth-spread" => (census.spread()? * 100.0).round().to_string(),
        "girth-smallest" => {
            let smallest = census.values_cm.iter().copied().reduce(f64::min)?;
            smallest.to_string()
        }
        _ => return None,
    })
}

/// When stands are ready: of a group by year, of a farmer's first block the range and the share.
fn outlook(view: View<'_>, whom: &Whom<'_>, name: &str) -> Option<String> {
    let group = whom.group?;
    let years = || view.years_of(group);
    let count = match name {
        "ready-now" => years().now,
        "ready-early" => years().early,
        "ready-unknown" => years().unknown,
        _ => match name.strip_prefix("ready-in-") {
            Some(year) => years().by_year.get(&year.parse().ok()?)?.0,
            None => return share_or_range(view, whom, group, name),
        },
    };
    Some(count.to_string())
}

fn share_or_range(view: View<'_>, whom: &Whom<'_>, group: &Group, name: &str) -> Option<String> {
    let stand = whom.table.farmers.first()?.stands.first()?;
    let share = || readiness(stand.state, view.calendar_of(group)?);
    let forecast = || {
        let neighbours = view.neighbours(group)?;
        view.outlook_among(&neighbours, stand.block.id, view.today_in(group))
    };
    let range = || match forecast()?.ready {
        Ready::Between(first, last) => Some((first.year(), last.year())),
        Ready::MeetsRule | Ready::Close | Ready::TooEarly => None,
    };
    Some(match name {
        "thick-pct" => share()?.share_pct.round().to_string(),
        "thick-low" => share()?.interval_pct.0.round().to_string(),
        "thick-high" => share()?.interval_pct.1.round().to_string(),
        "ready-first-year" => range()?.0.to_string(),
        "ready-last-year" => range()?.1.to_string(),
        _ => return None,
    })
}

/// Rain, texts that wait, visits, phones that fail, the next job.
fn of_the_week(view: View<'_>, whom: &Whom<'_>, name: &str) -> Option<String> {
    let people = view.world.directory.persons();
    let mara = people.into_iter().find(|one| one.is_named("Mara"))?;
    let rain = || {
        let group = whom.group?;
        Some(rain_map(&view.rains_of(group.id), view.today_in(group)))
    };
    let waiting = |wanted: Concern| {
        let all = view.waiting_for(mara);
        let kinds = kinds_of(&all).into_iter();
        let mut found = kinds.filter(|(first, _)| first.concern == wanted);
        found.next().map(|(_, count)| count)
    };
    let week_ago = view.today_of(mara.id) - TimeDelta::days(7);
    let count = match name {
        "rain-soaked" => rain()?.soaked,
        "rain-told" => rain()?.reporters,
        "waiting" => view.waiting_for(mara).len(),
        "waiting-complaints" => waiting(Concern::Alarm(Alarm::Complaint))?,
        "waiting-calls" => waiting(Concern::CallMe)?,
        "phones-fail" => view.failing_phones(),
        "visits-made" => view.visits_made(mara, week_ago),
        "to-visit" => view.to_visit(mara),
        "next-job-day" => {
            let jobs = whom.table.labour(30).value;
            return Some(jobs.first()?.on.day().to_string());
        }
        _ => return None,
    };
    Some(count.to_string())
}
