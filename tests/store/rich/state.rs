//! A state of a block with every field filled.

use std::collections::BTreeMap;

use budwood_parser::{Ailment, Cause, Kind, Wetness};
use budwood_scheduler::{
    BlockState, Census, Cohort, EventId, NudgeTrack, Source, TaskKind, land::block::Count,
    words::rainfall::Rain,
};

use super::day;

pub(super) fn state() -> BlockState {
    let count = |trees| Count {
        on: day(1, 9),
        trees,
    };
    let census = |reached, source| Census {
        on: day(1, 9),
        values_cm: vec![41.0, 43.5],
        reached,
        source,
    };
    let rain = |wetness, mm| Rain {
        on: day(1, 8),
        wetness,
        mm,
    };
    BlockState {
        cohorts: vec![Cohort {
            planted_on: day(1, 2),
            clone_name: Some("PB260".to_owned()),
            planted: 120,
            dead: 8,
            backfill: false,
        }],
        last: BTreeMap::from([
            (Kind::Planted, count(Some(120))),
            (Kind::Weeded, count(None)),
        ]),
        rounds: BTreeMap::from([(Kind::Weeded, 3)]),
        fed: vec![day(1, 5)],
        pegs: 131,
        holes: 130,
        plants_received: 125,
        tall: Some(count(Some(12))),
        branched: Some(count(Some(90))),
        induced: Some(count(Some(12))),
        girths: vec![
            census(None, Source::OwnText),
            census(Some((12, 30)), Source::Visit),
        ],
        heights: vec![census(None, Source::Leader)],
        sick: BTreeMap::from([(Ailment::Pink, count(Some(2)))]),
        harmed: BTreeMap::from([(Cause::Wind, count(None))]),
        warned: BTreeMap::from([(Ailment::LeafSpot, day(4, 9))]),
        rains: vec![rain(Some(Wetness::Soaked), None), rain(None, Some(12.5))],
        opened: 40,
        done: BTreeMap::from([(TaskKind::OrderPlants, day(1, 1))]),
        postponed: BTreeMap::from([(TaskKind::Weed, day(2, 1))]),
        nudges: BTreeMap::from([(
            TaskKind::Weed,
            NudgeTrack {
                due: day(1, 3),
                tries: 2,
                first_on: day(1, 3),
                last_on: day(1, 10),
            },
        )]),
        heard_on: Some(day(1, 9)),
        known_on: Some(day(1, 2)),
        listed_on: Some(day(1, 3)),
        facts: vec![EventId(1), EventId(2)],
    }
}
