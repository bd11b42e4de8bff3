//! Figures of made-up farmers.

use std::{collections::BTreeMap, string::ToString, vec, vec::Vec};

use budwood_parser::{Ailment, Cause, Details, Kind};
use chrono::{NaiveDate, TimeZone, Utc};
use proptest::prelude::*;

use super::{Farmer, Known, Name, Scope, Stand, Table, Why, days_late, is_sick, lost_pct};
use crate::{
    handbook::calendar::{Calendar, profiles},
    jobs::{nudge::Rules, task::tasks},
    land::{
        block::{BlockState, Cohort, Count, Living},
        directory::{Block, Consent, Person, Role},
    },
    words::{
        event::{Body, Event, Happened, Source},
        hold::{Hold, Reason},
        id::{BlockId, EventId, GroupId, PersonId},
        job::TaskKind,
        season::Season,
    },
};

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

fn person(id: u32, consent: Consent) -> Person {
    Person {
        id: PersonId(id),
        name: "Tamo Oss".to_string(),
        role: Role::Farmer,
        language: "en".to_string(),
        group: Some(GroupId(1)),
        consent,
        sharing: Consent::Unknown,
        erased: false,
        hold: None,
    }
}

fn agreed() -> Consent {
    Consent::Given {
        on: day("2026-01-01"),
        how: "signed".to_string(),
    }
}

fn block(id: u32) -> Block {
    Block {
        id: BlockId(id),
        owner: PersonId(1),
        name: "A".to_string(),
        area: None,
        area_source: "told".to_string(),
        slope_pct: None,
        spacing_m: None,
        point: None,
        planned_on: Some(day("2026-11-01")),
        clone_name: None,
    }
}

fn stand(planted: u32, dead: u32, filled: u32) -> BlockState {
    let cohort = |planted, dead, backfill| Cohort {
        planted_on: day("2025-11-01"),
        clone_name: None,
        planted,
        dead,
        backfill,
    };
    BlockState {
        cohorts: vec![cohort(planted, dead, false), cohort(filled, 0, true)],
        ..BlockState::default()
    }
}

struct Place {
    blocks: Vec<Block>,
    states: Vec<BlockState>,
    person: Person,
    calendar: Calendar,
    rules: Rules,
}

impl Place {
    fn of(states: Vec<BlockState>) -> Self {
        let number = u32::try_from(states.len()).unwrap();
        Self {
            blocks: (1..=number).map(block).collect(),
            states,
            person: person(1, agreed()),
            calendar: Calendar::parse(profiles::FAO).unwrap(),
            rules: Rules::standard(),
        }
    }

    fn table(&self, today: &str) -> Table<'_> {
        let stands = self.blocks.iter().zip(&self.states);
        Table {
            scope: Scope::Group(GroupId(1)),
            rules: &self.rules,
            farmers: vec![Farmer {
                person: &self.person,
                today: day(today),
                season: Season {
                    rains_start: Some((11, 1)),
                    rains_end: Some((4, 30)),
                    ..Season::default()
                },
                calendar: Some(&self.calendar),
                texted_on: None,
                has_phone: true,
                fails_since: None,
                stands: stands
                    .map(|(block, state)| Stand::new(block, state))
                    .collect(),
            }],
        }
    }
}

#[test]
fn what_was_filled_in_hides_no_loss() {
    let place = Place::of(vec![stand(480, 23, 23), stand(100, 0, 0)]);
    let table = place.table("2026-03-01");
    let living = table.living();
    assert_eq!((living.name, living.scope), (Name::Living, table.scope));
    assert_eq!(living.window.days, None);
    let sum = Living {
        first: 557,
        filled: 23,
        planted: 580,
        gaps: 0,
    };
    assert_eq!(living.value, sum);
    assert_eq!(sum.survival_pct(), Some(96), "557 of 580");
    assert_eq!(Living::default().survival_pct(), None);
}

#[test]
fn the_word_to_plant_reaches_who_agreed_and_has_land_to_plant() {
    let told = |place: &Place| place.table("2026-11-10").told_to_plant().value;
    let empty = || Place::of(vec![BlockState::default()]);
    assert_eq!(told(&empty()), 1);
    assert_eq!(told(&Place::of(vec![stand(480, 0, 0)])), 0, "planted");
    let mut asked = empty();
    asked.person.consent = Consent::Unknown;
    assert_eq!(told(&asked), 0, "not agreed");
    let unreached = empty();
    let mut table = unreached.table("2026-11-10");
    table.farmers[0].has_phone = false;
    assert_eq!(table.told_to_plant().value, 0, "no phone");
}

#[test]
fn a_block_that_is_clear_again_is_not_sick() {
    let today = day("2026-03-20");
    let count = |on: &str, trees| Count { on: day(on), trees };
    let mut state = stand(100, 0, 0);
    let spot = Ailment::LeafSpot;
    let sick = |state: &BlockState, told| is_sick(state, spot, told, today, 21);
    assert!(sick(&state, count("2026-03-10", Some(12))));
    assert!(sick(&state, count("2026-03-10", None)), "not counted");
    assert!(!sick(&state, count("2026-03-10", Some(0))), "none told");
    assert!(!sick(&state, count("2026-02-10", Some(12))), "long ago");
    state.done.insert(TaskKind::LeafCheck, day("2026-03-15"));
    assert!(
        !sick(&state, count("2026-03-10", Some(12))),
        "looked, all well"
    );
    assert!(sick(&state, count("2026-03-16", Some(12))), "told after it");
    let roots = Ailment::WhiteRoot;
    let told = count("2026-03-10", Some(3));
    assert!(
        is_sick(&state, roots, told, today, 21),
        "leaves are no roots"
    );
    let dead = stand(100, 100, 0);
    assert!(
        !sick(&dead, count("2026-03-19", Some(12))),
        "no tree is left"
    );
}

/// "No sick trees", whatever the sickness was called before.
#[test]
fn no_sick_trees_clears_the_block() {
    let event = |id, on: &str, ailment, count| Event {
        id: EventId(id),
        at: Utc.from_utc_datetime(&day(on).and_hms_opt(8, 0, 0).unwrap()),
        by: None,
        source: Source::OwnText,
        message: None,
        supersedes: None,
        body: Body::Reported {
            block: BlockId(1),
            kind: Kind::Disease,
            on: Happened::on(day(on)),
            details: Details {
                ailment,
                count: Some(count),
                ..Details::default()
            },
        },
    };
    let spot = Some(Ailment::LeafSpot);
    let mut place = Place::of(vec![stand(100, 0, 0)]);
    place.states[0].apply(&event(1, "2026-03-10", spot, 12));
    assert_eq!(place.table("2026-03-20").sick().value.len(), 1);
    place.states[0].apply(&event(2, "2026-03-12", Some(Ailment::Pink), 0));
    let sick = place.table("2026-03-20").sick().value;
    assert_eq!(sick.len(), 1, "none has another sickness");
    place.states[0].apply(&event(3, "2026-03-14", None, 0));
    assert_eq!(place.table("2026-03-20").sick().value, []);
}

/// The rounds of months 3 and 9 end when a month of rain is left: on 31 March, and in the next rains,
/// where the round of month 15 takes its place, on 31 January.
#[test]
fn a_round_of_feeding_that_was_lost_is_told_for_half_a_year() {
    let place = Place::of(vec![stand(480, 0, 0), stand(100, 0, 0)]);
    let lost = |today| place.table(today).feed_lost().value;
    assert_eq!(lost("2026-03-31"), []);
    assert_eq!(lost("2026-04-01"), [(PersonId(1), 2)], "one of each block");
    assert_eq!(lost("2026-09-30"), [(PersonId(1), 2)]);
    assert_eq!(lost("2026-10-01"), []);
    assert_eq!(lost("2027-02-01"), [(PersonId(1), 2)]);
    let mut fed = Place::of(vec![stand(480, 0, 0)]);
    fed.states[0].fed.push(day("2026-02-10"));
    assert_eq!(fed.table("2026-04-01").feed_lost().value, []);
}

#[test]
fn a_stand_of_a_list_is_late_only_after_two_weeks_on_it() {
    let place = Place::of(vec![stand(480, 0, 0)]);
    let mut state = place.states[0].clone();
    let season = Season::default();
    let today = day("2026-03-01");
    let jobs = tasks(&place.blocks[0], &state, &season, &place.calendar, today);
    let task = jobs.iter().find(|task| task.late_after < day("2026-02-01"));
    let task = task.unwrap();
    let late = |state: &BlockState| days_late(&place.person, state, task, today);
    let since = (today - task.late_after).num_days();
    assert_eq!(
        late(&state),
        since.min((today - day("2026-01-15")).num_days())
    );
    state.known_on = Some(day("2026-02-20"));
    assert_eq!(late(&state), 0);
    state.known_on = Some(day("2026-02-10"));
    assert_eq!(late(&state), 5, "two weeks after 10 February is the 24th");
}

#[test]
fn the_share_of_visits_is_that_of_the_last_fact_under_the_figure() {
    let place = Place::of(vec![stand(300, 0, 0), stand(100, 0, 0)]);
    let table = place.table("2026-03-01");
    let fact = |kind, source, on: &str| Known {
        kind,
        source,
        on: day(on),
        count: None,
        cause: None,
    };
    let seen = BTreeMap::from([
        (
            BlockId(1),
            vec![
                fact(Kind::Planted, Source::OwnText, "2025-11-01"),
                fact(Kind::Dead, Source::Visit, "2026-02-01"),
                fact(Kind::Weeded, Source::OwnText, "2026-02-20"),
            ],
        ),
        (
            BlockId(2),
            vec![fact(Kind::Planted, Source::OwnText, "2025-11-01")],
        ),
    ]);
    let pct = |name| table.visited_pct(name, |block| seen[&block.id].clone());
    assert_eq!(pct(Name::Living), Some(75));
    assert_eq!(pct(Name::Sick), None, "nobody told of sickness");
    assert_eq!(pct(Name::Jobs), Some(0));
}

proptest! {
    /// The figure of a group is the sum of those of its people.
    #[test]
    fn gaps_of_all_are_those_of_each(stands in prop::collection::vec((0..900_u32, 0..900_u32, 0..50_u32), 0..9)) {
        let states = stands.iter().map(|(planted, dead, filled)| {
            let dead = *dead.min(planted);
            stand(*planted, dead, *filled.min(&dead))
        });
        let place = Place::of(states.collect());
        let table = place.table("2026-03-01");
        let of_each: u32 = table.gaps().value.iter().map(|(_, gaps)| gaps).sum();
        prop_assert_eq!(of_each, table.living().value.gaps);
        prop_assert!(table.gaps_to_fill().value <= of_each);
    }
}

/// Who mourns is asked for nothing, missed by nobody, and counted as left in peace.
#[test]
fn who_is_left_in_peace_is_neither_due_nor_late_nor_quiet() {
    let mut place = Place::of(vec![stand(480, 23, 0)]);
    let figures = |place: &Place| {
        let table = place.table("2026-12-20");
        let jobs = table.jobs().value;
        let asked = jobs.due.len() + jobs.late.len() + jobs.list.len();
        let told = table.told_to_plant().value;
        (
            asked > 0,
            table.quiet().value.len(),
            told,
            table.in_peace().value,
        )
    };
    assert_eq!(figures(&place), (true, 1, 0, 0));
    let hold = |until: &str| Hold {
        since: day("2026-12-01"),
        until: Some(day(until)),
        reason: Reason::Grief,
    };
    place.person.hold = Some(hold("2026-12-20"));
    assert_eq!(figures(&place), (false, 0, 0, 1));
    place.person.hold = Some(hold("2026-12-19"));
    assert_eq!(figures(&place), (true, 1, 0, 0));
}

/// Each cause of a silence stands for itself: at rest, nothing due, a phone that fails, nobody knows.
#[test]
fn a_silence_is_told_by_its_cause() {
    let mut place = Place::of(vec![stand(480, 23, 0)]);
    let today = "2026-12-20";
    let why = |place: &Place, fails: bool| {
        let mut table = place.table(today);
        table.farmers[0].fails_since = fails.then(|| day("2026-12-01"));
        let silent = table.silent().value;
        let quiet = table.quiet().value.len();
        (silent.iter().map(|one| one.why).collect::<Vec<_>>(), quiet)
    };
    assert_eq!(why(&place, false), (vec![Why::Unknown], 1));
    assert_eq!(why(&place, true), (vec![Why::PhoneFails], 1));
    let person = place.person.clone();
    place.person.consent = Consent::Unknown;
    assert_eq!(why(&place, true), (vec![Why::AtRest], 0));
    place.person.hold = Some(Hold {
        since: day("2026-12-01"),
        until: None,
        reason: Reason::Grief,
    });
    assert_eq!(why(&place, false), (vec![Why::AtRest], 0));
    place.person = person;
    place.states = vec![BlockState::default()];
    place.blocks[0].planned_on = None;
    assert_eq!(why(&place, false), (vec![Why::NothingDue], 0));
}

/// 43 of 480 and 20 of 520: 437 live of 480, which is 91 whole per cent, so 9 died; what was told of
/// drought is no more than what died.
#[test]
fn losses_are_what_the_living_leave_of_a_hundred() {
    let place = Place::of(vec![stand(480, 43, 0), stand(520, 20, 5)]);
    let table = place.table("2026-03-01");
    let told = |block: &Block| {
        let fact = Known {
            kind: Kind::Dead,
            source: Source::OwnText,
            on: day("2026-02-01"),
            count: Some(30 * block.id.0),
            cause: Some(Cause::Drought),
        };
        vec![fact]
    };
    let losses = table.losses(told).value;
    assert_eq!(losses.len(), 1);
    assert_eq!(losses[0].living, table.living().value);
    assert_eq!(losses[0].source, Some(Source::OwnText));
    assert_eq!(lost_pct(losses[0].living), Some(7), "937 of 1000 live");
    let of_each = table.losses_by_cause(told).value;
    assert_eq!(of_each, [(Some(Cause::Drought), 50), (None, 13)]);
    let clones = table.clones().value;
    let dead: u32 = clones.iter().map(|(_, trees)| trees.dead).sum();
    assert_eq!(dead, 63);
}
