//! Many lives under every calendar: farmers who do each job some days or weeks late.
//!
//! Calendars, rains and days of planting are gone through in order, so that each meets each; only how
//! late a job is done is drawn. What must hold is written down here on its own, not asked of the
//! rules. A few hundred lives are played each time, ten thousand by
//! `BUDWOOD_LIVES=10000 cargo test -p budwood-scheduler lives_of`.

use std::{
    collections::{BTreeMap, BTreeSet},
    env,
    string::{String, ToString},
    vec::Vec,
};

use budwood_parser::{Kind, Measure, Unit};
use chrono::{Days, NaiveDate};

use super::Life;
use crate::{
    handbook::calendar::{Calendar, Dose, profiles},
    jobs::task::{Task, tasks},
    land::{
        block::{BlockState, Cohort, Count},
        directory::Block,
    },
    sums::{days, draws::Draws},
    words::{
        id::{BlockId, PersonId},
        job::TaskKind,
        season::Season,
    },
};

/// A job is done so many days late at most.
const DELAY_DAYS: u64 = 45;
/// In the last month of the rains nothing is fed: "at least one month before the rains end" (a Vietnamese
/// upkeep procedure in English, 2018, read in a copy).
const LAST_RAIN_DAYS: u64 = 30;
/// What should be done before the dry season may be asked for so long after the rains.
const ASKED_AFTER_RAIN_DAYS: u64 = 60;
const YEARS: u32 = 8;

fn once() -> Season {
    Season {
        rains_start: Some((5, 20)),
        rains_end: Some((10, 31)),
        ..Season::default()
    }
}

fn twice() -> Season {
    Season {
        rains_start: Some((4, 1)),
        rains_end: Some((7, 15)),
        second_rains: Some(((9, 1), (11, 30))),
        ..Season::default()
    }
}

fn block(planned_on: NaiveDate) -> Block {
    Block {
        id: BlockId(1),
        owner: PersonId(1),
        name: "B".to_string(),
        area: Some(Measure {
            value: 1.0,
            unit: Unit::Hectare,
        }),
        area_source: "gps".to_string(),
        slope_pct: None,
        spacing_m: None,
        point: None,
        planned_on: Some(planned_on),
        clone_name: None,
    }
}

/// What must be so before a job is asked for.
fn may_be_asked(
    task: &Task,
    (state, season): (&BlockState, &Season),
    calendar: &Calendar,
    today: NaiveDate,
) -> bool {
    let planted_on = state.planted_on();
    let months = planted_on.map(|day| days::months_between(day, today));
    let is_bare = state.cohorts.is_empty();
    match task.kind {
        TaskKind::OrderPlants => is_bare && state.plants_received == 0,
        TaskKind::Clear | TaskKind::Line => is_bare && state.pegs == 0 && state.holes == 0,
        TaskKind::DigPits => is_bare,
        TaskKind::RainWatch => is_bare && state.holes > 0,
        TaskKind::Plant => {
            let opened = season.window_opened.is_some_and(|day| day <= today);
            opened && (is_bare || state.gaps() > 0)
        }
        TaskKind::SowCover => calendar.cover.is_asked && state.last_of(Kind::CoverSown).is_none(),
        TaskKind::FillPits => is_bare && state.holes > 0,
        TaskKind::SurvivalCheck => planted_on
            .is_some_and(|day| day + Days::new(u64::from(calendar.survival.first_days)) <= today),
        TaskKind::Weed
        | TaskKind::Feed
        | TaskKind::Prune
        | TaskKind::Mulch
        | TaskKind::Firebreak
        | TaskKind::RootCheck
        | TaskKind::LeafCheck
        | TaskKind::Intercrop
        | TaskKind::GetReady => planted_on.is_some_and(|day| day <= today),
        TaskKind::CountTall => months >= Some(calendar.induction.from_month),
        TaskKind::GirthCensus => {
            months >= calendar.census.rounds.first().map(|round| round.from_month)
        }
        TaskKind::Backfill => state.gaps() > 0,
        TaskKind::InduceBranching => {
            months >= Some(calendar.induction.from_month)
                && state.tall.is_some_and(|tall| tall.trees != Some(0))
        }
        TaskKind::LookAtInduced => state.induced.is_some_and(|induced| {
            let waited = today.signed_duration_since(induced.on).num_days();
            waited >= i64::from(calendar.induction.look_from_days)
        }),
        TaskKind::Open => {
            months >= Some(calendar.opening.minimum_months) && !state.girths.is_empty()
        }
        TaskKind::OpenRest | TaskKind::HandOver => state.opened > 0,
    }
}

/// Whether a job of the seasons is asked for in its own: mulch and firebreak about the end of the
/// rains, leaves while it rains.
fn is_in_season(task: &Task, season: &Season, calendar: &Calendar, today: NaiveDate) -> bool {
    let rains = season.rains(today).unwrap();
    if matches!(task.kind, TaskKind::Mulch | TaskKind::Firebreak) {
        let before = u64::from(calendar.dry_season.days_before);
        let ended = season
            .rains(today - Days::new(ASKED_AFTER_RAIN_DAYS))
            .unwrap();
        return today + Days::new(before) >= rains.end
            || today <= ended.end + Days::new(ASKED_AFTER_RAIN_DAYS);
    }
    let rains_then = season.rains(task.due);
    task.kind != TaskKind::LeafCheck || rains_then.is_some_and(|rains| rains.start <= task.due)
}

/// What the handbook's table gives the trees that stand, in kilograms of each product: trees times
/// grams. Trees of the first planting get the doses of this round, others those of their own age.
fn kilograms(state: &BlockState, calendar: &Calendar, task: &Task) -> BTreeMap<String, f64> {
    let mut kilograms = BTreeMap::new();
    let round = task.figures.round.unwrap() as usize;
    let table = &calendar.feeding.rounds;
    let first = state.planted_on();
    for cohort in &state.cohorts {
        let alive = f64::from(cohort.planted - cohort.dead);
        let doses: &[Dose] = if !cohort.backfill && Some(cohort.planted_on) == first {
            &table[round - 1].doses
        } else {
            let age = days::months_between(cohort.planted_on, task.due);
            let of_age = table.iter().rfind(|round| round.month <= age);
            of_age.map_or(&[], |round| &round.doses)
        };
        for dose in doses.iter().filter(|_| alive > 0.0) {
            *kilograms.entry(dose.product.clone()).or_default() += alive * dose.grams / 1_000.0;
        }
    }
    kilograms
}

/// What one feeding text may say: not in the last month of the rains, every earlier round given or told
/// as lost, and trees times grams for kilograms.
fn check_feeding(life: &Life<'_>, task: &Task, today: NaiveDate, given: &BTreeSet<u32>) {
    let name = &life.calendar.name;
    let rains = life.season.rains(today).unwrap();
    assert!(
        rains.start <= today && today + Days::new(LAST_RAIN_DAYS) <= rains.end,
        "{name}: feeding is asked for on {today}"
    );
    let round = task.figures.round.unwrap();
    let lost: BTreeSet<u32> = task.figures.lost.iter().map(|lost| lost.round).collect();
    for earlier in 1..round {
        assert!(
            given.contains(&earlier) != lost.contains(&earlier),
            "{name}: round {round} on {today}; round {earlier} of {given:?} given, {lost:?} lost"
        );
    }
    assert!(!given.contains(&round), "{name}: round {round} twice");
    let expected = kilograms(&life.state, life.calendar, task);
    let mut told: BTreeMap<String, f64> = BTreeMap::new();
    for portion in task.figures.rations.iter().flat_map(|one| &one.products) {
        *told.entry(portion.product.clone()).or_default() += portion.kilograms;
    }
    assert!(
        expected.keys().eq(told.keys())
            && expected
                .iter()
                .all(|(product, kg)| (told[product] - kg).abs() < 1e-6),
        "{name}: round {round} on {today} takes {expected:?}, not {told:?}"
    );
}

fn check(life: &Life<'_>, open: &[Task], today: NaiveDate, given: &BTreeSet<u32>) {
    let name = &life.calendar.name;
    for task in open.iter().filter(|task| task.due <= today) {
        assert!(
            may_be_asked(task, (&life.state, &life.season), life.calendar, today)
                && is_in_season(task, &life.season, life.calendar, today),
            "{name}: {} on {today} before its condition: {:?}",
            task.kind.name(),
            life.state
        );
        if task.kind == TaskKind::Feed {
            check_feeding(life, task, today, given);
        }
    }
}

/// Plays a life with late jobs; how many were done.
fn live(calendar: &Calendar, season: Season, planned_on: NaiveDate, draws: &mut Draws) -> usize {
    let block = block(planned_on);
    let mut life = Life {
        block: &block,
        calendar,
        season,
        events: Vec::new(),
        state: BlockState::default(),
    };
    let mut today = planned_on - Days::new(700);
    let end = days::months_after(planned_on, YEARS * 12).unwrap();
    let mut meant: BTreeMap<TaskKind, NaiveDate> = BTreeMap::new();
    let mut given = BTreeSet::new();
    while today < end {
        if today >= planned_on && life.season.window_opened.is_none() {
            life.season.window_opened = Some(today);
        }
        let open = tasks(&block, &life.state, &life.season, calendar, today);
        check(&life, &open, today, &given);
        let is_due = |kind: &TaskKind| open.iter().any(|one| one.kind == *kind && one.due <= today);
        meant.retain(|kind, _| is_due(kind));
        for task in open.iter().filter(|task| task.due <= today) {
            meant
                .entry(task.kind)
                .or_insert_with(|| today + Days::new(draws.below(DELAY_DAYS + 1)));
        }
        let now = open
            .iter()
            .find(|task| meant.get(&task.kind).is_some_and(|on| *on <= today));
        if let Some(task) = now {
            if task.kind == TaskKind::Feed {
                given.extend(task.figures.round);
            }
            life.work(task, today);
            meant.remove(&task.kind);
            continue;
        }
        let to_come = open.iter().map(|task| task.due);
        let next = to_come.chain(meant.values().copied());
        let next = next.filter(|day| *day > today).min();
        let soon = today + Days::new(21);
        let opens = if today < planned_on { planned_on } else { soon };
        today = next.unwrap_or(soon).min(soon).min(opens);
    }
    life.events.len()
}

/// Plays so many lives: each calendar under each rains, on days of planting spread over a year.
fn play(lives: u64) {
    let texts = profiles::ALL.iter();
    let calendars: Vec<Calendar> = texts
        .map(|(_, text)| Calendar::parse(text).unwrap())
        .collect();
    let first: NaiveDate = "2027-01-01".parse().unwrap();
    let days_of_planting = lives.div_ceil(2 * calendars.len() as u64);
    let mut draws = Draws(17);
    let (mut played, mut done) = (0, 0);
    for number in 0..days_of_planting {
        let planted_on = first + Days::new(number * 365 / days_of_planting);
        for calendar in &calendars {
            for season in [once(), twice()] {
                done += live(calendar, season, planted_on, &mut draws);
                played += 1;
            }
        }
    }
    let each = done / played;
    assert!(each > 60, "only {each} jobs a life");
}

/// No feed in the last month of rain, no round lost silently, no job before its condition, and trees
/// times grams are kilograms.
#[test]
fn lives_of_farmers_who_are_late() {
    let lives = env::var("BUDWOOD_LIVES")
        .ok()
        .and_then(|lives| lives.parse().ok());
    play(lives.unwrap_or(224));
}

/// The lives would see a job of each sort that is asked for too soon.
#[test]
fn a_job_before_its_condition_is_seen() {
    let calendar = Calendar::parse(profiles::FAO).unwrap();
    let day: NaiveDate = "2027-09-01".parse().unwrap();
    let bare = BlockState::default();
    let mut young = BlockState::default();
    young.cohorts.push(Cohort {
        planted_on: "2027-06-01".parse().unwrap(),
        clone_name: None,
        planted: 500,
        dead: 0,
        backfill: false,
    });
    let block = block("2027-06-01".parse().unwrap());
    let open = tasks(&block, &young, &once(), &calendar, day);
    let any = open.first().unwrap();
    let may = |kind: TaskKind, state: &BlockState, season: &Season| {
        let task = Task {
            kind,
            ..any.clone()
        };
        may_be_asked(&task, (state, season), &calendar, day)
    };
    for kind in [TaskKind::Weed, TaskKind::Feed, TaskKind::RootCheck] {
        assert!(may(kind, &young, &once()) && !may(kind, &bare, &once()));
    }
    let before = [
        TaskKind::OrderPlants,
        TaskKind::Clear,
        TaskKind::Line,
        TaskKind::DigPits,
    ];
    for kind in before {
        assert!(may(kind, &bare, &once()) && !may(kind, &young, &once()));
    }
    let (mut dug, mut opened) = (bare.clone(), once());
    dug.holes = 500;
    opened.window_opened = Some(day);
    assert!(may(TaskKind::RainWatch, &dug, &once()) && may(TaskKind::FillPits, &dug, &once()));
    assert!(!may(TaskKind::RainWatch, &bare, &once()), "no pits");
    assert!(!may(TaskKind::Line, &dug, &once()), "dug before pegged");
    assert!(may(TaskKind::Plant, &dug, &opened));
    assert!(!may(TaskKind::Plant, &dug, &once()), "no window");
    assert!(!may(TaskKind::Plant, &young, &opened), "no places");
    assert!(!may(TaskKind::Backfill, &young, &once()), "no gaps");
    let mut sown = young.clone();
    sown.last.insert(
        Kind::CoverSown,
        Count {
            on: day,
            trees: None,
        },
    );
    assert!(may(TaskKind::SowCover, &young, &once()) == calendar.cover.is_asked);
    assert!(!may(TaskKind::SowCover, &sown, &once()), "sown");
}
