//! States of blocks as stored. They are derived, and can be rebuilt from the facts.

use std::collections::BTreeMap;

use budwood_parser::{Ailment, Cause, Kind, Wetness};
use budwood_scheduler::{
    BlockId, BlockState, Census, Cohort, EventId, NudgeTrack, Source, TaskKind, land::block::Count,
    words::rainfall::Rain,
};
use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::{
    Fault,
    details::kind,
    event::{ailment, source, source_name, task},
    name_fault,
};

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredState {
    block: u32,
    cohorts: Vec<StoredCohort>,
    last: BTreeMap<String, StoredCount>,
    rounds: BTreeMap<String, u32>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    fed: Vec<NaiveDate>,
    #[serde(default, skip_serializing_if = "is_none")]
    pegs: u32,
    holes: u32,
    plants_received: u32,
    tall: Option<StoredCount>,
    branched: Option<StoredCount>,
    induced: Option<StoredCount>,
    girths: Vec<StoredCensus>,
    heights: Vec<StoredCensus>,
    sick: BTreeMap<String, StoredCount>,
    harmed: BTreeMap<String, StoredCount>,
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    warned: BTreeMap<String, NaiveDate>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    rains: Vec<StoredRain>,
    opened: u32,
    done: BTreeMap<String, NaiveDate>,
    postponed: BTreeMap<String, NaiveDate>,
    nudges: BTreeMap<String, StoredTrack>,
    heard_on: Option<NaiveDate>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    known_on: Option<NaiveDate>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    listed_on: Option<NaiveDate>,
    facts: Vec<u64>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredCohort {
    planted_on: NaiveDate,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    clone: Option<String>,
    planted: u32,
    dead: u32,
    backfill: bool,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredCount {
    on: NaiveDate,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    trees: Option<u32>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredCensus {
    on: NaiveDate,
    values_cm: Vec<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    reached: Option<(u32, u32)>,
    /// None for the farmer's own text.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    source: Option<String>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredRain {
    on: NaiveDate,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    wetness: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    mm: Option<f64>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredTrack {
    due: NaiveDate,
    tries: u8,
    first_on: NaiveDate,
    last_on: NaiveDate,
}

impl From<Count> for StoredCount {
    fn from(count: Count) -> Self {
        Self {
            on: count.on,
            trees: count.trees,
        }
    }
}

impl From<StoredCount> for Count {
    fn from(count: StoredCount) -> Self {
        Self {
            on: count.on,
            trees: count.trees,
        }
    }
}

#[expect(
    clippy::trivially_copy_pass_by_ref,
    reason = "serde hands fields over by reference"
)]
const fn is_none(count: &u32) -> bool {
    *count == 0
}

/// Keys become names.
fn names<K: Copy, V: Clone, S>(
    map: &BTreeMap<K, V>,
    name: impl Fn(K) -> &'static str,
    value: impl Fn(V) -> S,
) -> BTreeMap<String, S> {
    map.iter()
        .map(|(key, item)| (name(*key).to_owned(), value(item.clone())))
        .collect()
}

/// Names become keys.
fn keys<K: Ord, V, S>(
    map: BTreeMap<String, S>,
    key: impl Fn(&str) -> Result<K, Fault>,
    value: impl Fn(S) -> V,
) -> Result<BTreeMap<K, V>, Fault> {
    map.into_iter()
        .map(|(name, item)| Ok((key(&name)?, value(item))))
        .collect()
}

fn censuses(list: &[Census]) -> Vec<StoredCensus> {
    list.iter()
        .map(|census| StoredCensus {
            on: census.on,
            values_cm: census.values_cm.clone(),
            reached: census.reached,
            source: (census.source != Source::OwnText)
                .then(|| source_name(census.source).to_owned()),
        })
        .collect()
}

fn open_censuses(list: Vec<StoredCensus>) -> Result<Vec<Census>, Fault> {
    list.into_iter()
        .map(|census| {
            let known = census.source.as_deref().map(source).transpose()?;
            Ok(Census {
                on: census.on,
                values_cm: census.values_cm,
                reached: census.reached,
                source: known.unwrap_or(Source::OwnText),
            })
        })
        .collect()
}

fn rains(list: &[Rain]) -> Vec<StoredRain> {
    list.iter()
        .map(|rain| StoredRain {
            on: rain.on,
            wetness: rain.wetness.map(|wetness| wetness.name().to_owned()),
            mm: rain.mm,
        })
        .collect()
}

fn open_rains(list: Vec<StoredRain>) -> Result<Vec<Rain>, Fault> {
    let wetness = |name: &str| Wetness::from_name(name).ok_or_else(|| name_fault("wetness", name));
    list.into_iter()
        .map(|rain| {
            Ok(Rain {
                on: rain.on,
                wetness: rain.wetness.as_deref().map(wetness).transpose()?,
                mm: rain.mm,
            })
        })
        .collect()
}

impl StoredState {
    pub(super) fn new(block: BlockId, state: &BlockState) -> Self {
        let cohorts = state.cohorts.iter().map(|cohort| StoredCohort {
            planted_on: cohort.planted_on,
            clone: cohort.clone_name.clone(),
            planted: cohort.planted,
            dead: cohort.dead,
            backfill: cohort.backfill,
        });
        let track = |track: NudgeTrack| StoredTrack {
            due: track.due,
            tries: track.tries,
            first_on: track.first_on,
            last_on: track.last_on,
        };
        Self {
            block: block.0,
            cohorts: cohorts.collect(),
            last: names(&state.last, Kind::name, Into::into),
            rounds: names(&state.rounds, Kind::name, |rounds| rounds),
            fed: state.fed.clone(),
            pegs: state.pegs,
            holes: state.holes,
            plants_received: state.plants_received,
            tall: state.tall.map(Into::into),
            branched: state.branched.map(Into::into),
            induced: state.induced.map(Into::into),
            girths: censuses(&state.girths),
            heights: censuses(&state.heights),
            sick: names(&state.sick, Ailment::name, Into::into),
            harmed: names(&state.harmed, Cause::name, Into::into),
            warned: names(&state.warned, Ailment::name, |day| day),
            rains: rains(&state.rains),
            opened: state.opened,
            done: names(&state.done, TaskKind::name, |day| day),
            postponed: names(&state.postponed, TaskKind::name, |day| day),
            nudges: names(&state.nudges, TaskKind::name, track),
            heard_on: state.heard_on,
            known_on: state.known_on,
            listed_on: state.listed_on,
            facts: state.facts.iter().map(|fact| fact.0).collect(),
        }
    }

    pub(super) fn open(self) -> Result<(BlockId, BlockState), Fault> {
        let cause = |name: &str| Cause::from_name(name).ok_or_else(|| name_fault("cause", name));
        let cohorts = self.cohorts.into_iter().map(|cohort| Cohort {
            planted_on: cohort.planted_on,
            clone_name: cohort.clone,
            planted: cohort.planted,
            dead: cohort.dead,
            backfill: cohort.backfill,
        });
        let track = |track: StoredTrack| NudgeTrack {
            due: track.due,
            tries: track.tries,
            first_on: track.first_on,
            last_on: track.last_on,
        };
        // A state from before each round was kept has the last one only.
        let last_fed = self.last.get(Kind::Fertilised.name()).map(|count| count.on);
        let fed = if self.fed.is_empty() {
            last_fed.into_iter().collect()
        } else {
            self.fed
        };
        let state = BlockState {
            cohorts: cohorts.collect(),
            last: keys(self.last, kind, Into::into)?,
            rounds: keys(self.rounds, kind, |rounds| rounds)?,
            fed,
            pegs: self.pegs,
            holes: self.holes,
            plants_received: self.plants_received,
            tall: self.tall.map(Into::into),
            branched: self.branched.map(Into::into),
            induced: self.induced.map(Into::into),
            girths: open_censuses(self.girths)?,
            heights: open_censuses(self.heights)?,
            sick: keys(self.sick, ailment, Into::into)?,
            harmed: keys(self.harmed, cause, Into::into)?,
            warned: keys(self.warned, ailment, |day| day)?,
            rains: open_rains(self.rains)?,
            opened: self.opened,
            done: keys(self.done, task, |day| day)?,
            postponed: keys(self.postponed, task, |day| day)?,
            nudges: keys(self.nudges, task, track)?,
            heard_on: self.heard_on,
            known_on: self.known_on,
            listed_on: self.listed_on,
            facts: self.facts.into_iter().map(EventId).collect(),
        };
        Ok((BlockId(self.block), state))
    }
}
