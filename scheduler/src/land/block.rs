//! How a block stands: a fold over its facts.
//!
//! [`BlockState::replay`] over the log gives what [`BlockState::apply`] kept up to date; a test
//! says so. Stands are of mixed age, so trees are counted by cohort.

mod nudged;
mod passing;
#[cfg(test)]
mod tests;

use alloc::{collections::BTreeMap, string::String, vec::Vec};

use budwood_parser::{Ailment, Cause, Details, Effect, Kind, Supply};
use chrono::NaiveDate;

use crate::words::{
    event::{Body, Event, Happened, Source},
    id::EventId,
    job::TaskKind,
    rainfall::Rain,
    season::is_one_season,
};

/// So many reports of rain are kept: those of a planting season, in which rain is asked for.
const RAINS_KEPT: usize = 16;

/// What is known of one block.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BlockState {
    /// Trees by planting season, oldest first.
    pub cohorts: Vec<Cohort>,
    /// The last report of each kind.
    pub last: BTreeMap<Kind, Count>,
    /// How many reports of each kind there were since the first planting.
    pub rounds: BTreeMap<Kind, u32>,
    /// The days on which the trees were fed, as they were told: each counts for a round of its own.
    pub fed: Vec<NaiveDate>,
    /// Pegs set.
    pub pegs: u32,
    /// Planting holes dug.
    pub holes: u32,
    /// Plants received.
    pub plants_received: u32,
    /// Tall trees without branches, as last counted.
    pub tall: Option<Count>,
    /// Trees with branches, as last counted.
    pub branched: Option<Count>,
    /// Trees on which branching was last induced.
    pub induced: Option<Count>,
    /// Girth measurements, oldest first.
    pub girths: Vec<Census>,
    /// Height measurements, oldest first.
    pub heights: Vec<Census>,
    /// Sick trees by sickness, as last counted.
    pub sick: BTreeMap<Ailment, Count>,
    /// Harm by cause, as last counted.
    pub harmed: BTreeMap<Cause, Count>,
    /// Sickness seen nearby, of which the adviser warned, by the last day.
    pub warned: BTreeMap<Ailment, NaiveDate>,
    /// What was told of the rain here lately, oldest first.
    pub rains: Vec<Rain>,
    /// Trees opened for tapping.
    pub opened: u32,
    /// Jobs said to be done that no report proves, by their last day.
    pub done: BTreeMap<TaskKind, NaiveDate>,
    /// Jobs put off, by the day until which.
    pub postponed: BTreeMap<TaskKind, NaiveDate>,
    /// Nudges given for the present round of each job.
    pub nudges: BTreeMap<TaskKind, NudgeTrack>,
    /// The last day on which a person told something about this block.
    pub heard_on: Option<NaiveDate>,
    /// The day on which the first fact became known: nothing is told to be late from before it.
    pub known_on: Option<NaiveDate>,
    /// The day on which a list brought the block's first fact: what lies before it is not known.
    pub listed_on: Option<NaiveDate>,
    /// The facts that count, so that a correction can fold them anew.
    pub facts: Vec<EventId>,
}

/// A number of trees on a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Count {
    /// When.
    pub on: NaiveDate,
    /// How many; none when the report gave no number.
    pub trees: Option<u32>,
}

/// Trees of one planting season and clone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Cohort {
    /// First day of planting.
    pub planted_on: NaiveDate,
    /// Clone, if told.
    pub clone_name: Option<String>,
    /// Trees planted.
    pub planted: u32,
    /// Of these, dead.
    pub dead: u32,
    /// Planted into the gaps of an older cohort.
    pub backfill: bool,
}

impl Cohort {
    /// Living trees.
    #[must_use]
    pub const fn alive(&self) -> u32 {
        self.planted.saturating_sub(self.dead)
    }
}

/// The living trees of a block, as they are told everywhere: "457 + 23 of 480".
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Living {
    /// Of the trees planted at first, so many live.
    pub first: u32,
    /// Of those filled in, so many live.
    pub filled: u32,
    /// Trees planted at first.
    pub planted: u32,
    /// Places where a tree stood and none stands.
    pub gaps: u32,
}

impl Living {
    /// Those of two stands.
    #[must_use]
    pub const fn with(self, other: Self) -> Self {
        Self {
            first: self.first.saturating_add(other.first),
            filled: self.filled.saturating_add(other.filled),
            planted: self.planted.saturating_add(other.planted),
            gaps: self.gaps.saturating_add(other.gaps),
        }
    }

    /// First trees alive in per cent of those planted; those filled in are left out, so that they
    /// cannot hide losses. None where nothing was planted.
    #[must_use]
    pub fn survival_pct(self) -> Option<u32> {
        let first = u64::from(self.first).saturating_mul(100);
        let pct = first.checked_div(u64::from(self.planted))?;
        u32::try_from(pct).ok()
    }

    /// All of them.
    #[must_use]
    pub const fn alive(self) -> u32 {
        self.first.saturating_add(self.filled)
    }
}

/// One round of measuring.
#[derive(Clone, Debug, PartialEq)]
pub struct Census {
    /// When.
    pub on: NaiveDate,
    /// Measured values in centimetres.
    pub values_cm: Vec<f64>,
    /// "12 of 30 reach the string": how many reached it, of how many.
    pub reached: Option<(u32, u32)>,
    /// How it is known: an adviser's visit weighs more than a count by the farmer.
    pub source: Source,
}

impl Census {
    /// Mean of the values, if there are any.
    #[must_use]
    pub fn mean_cm(&self) -> Option<f64> {
        let mut number = 0.0;
        let mut sum = 0.0;
        for value in &self.values_cm {
            number += 1.0;
            sum += value;
        }
        (number > 0.0).then(|| sum / number)
    }

    /// Standard deviation of single values over their mean (with one value less than there are,
    /// as for a sample). None for fewer than two.
    #[must_use]
    pub fn spread(&self) -> Option<f64> {
        let mean_cm = self.mean_cm().filter(|mean| *mean > 0.0)?;
        let mut number = -1.0;
        let mut squares = 0.0;
        for value in &self.values_cm {
            number += 1.0;
            squares += (value - mean_cm) * (value - mean_cm);
        }
        (number > 0.0).then(|| libm::sqrt(squares / number) / mean_cm)
    }
}

/// The nudges given for one round of a job.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NudgeTrack {
    /// Due day of the round.
    pub due: NaiveDate,
    /// How many were given.
    pub tries: u8,
    /// The day of the first.
    pub first_on: NaiveDate,
    /// The day of the last.
    pub last_on: NaiveDate,
}

impl BlockState {
    /// Folds facts in the order in which they became known. Superseded facts must have been
    /// left out by the caller.
    #[must_use]
    pub fn replay<'a>(events: impl IntoIterator<Item = &'a Event>) -> Self {
        let mut state = Self::default();
        for event in events {
            state.apply(event);
        }
        state
    }

    /// Takes one more fact in. A fact that supersedes another needs [`Self::replay`] instead.
    pub fn apply(&mut self, event: &Event) {
        match &event.body {
            Body::Reported {
                kind, on, details, ..
            } => {
                self.report(*kind, *on, details, event.source);
                self.heard_on = self.heard_on.max(Some(on.to));
            }
            Body::TaskDone { task, on, .. } => {
                raise(&mut self.done, *task, *on);
                if task.proven_by().map(Kind::effect) == Some(Effect::Fed) {
                    self.fed.push(*on);
                }
                self.postponed.remove(task);
                self.heard_on = self.heard_on.max(Some(*on));
            }
            Body::Postponed { task, until, .. } => {
                self.postponed.insert(*task, *until);
                self.heard_on = self.heard_on.max(Some(event.at.date_naive()));
            }
            Body::Nudged { task, on, due, .. } => self.nudged(*task, *on, *due),
            Body::Warned { ailment, on, .. } => raise(&mut self.warned, *ailment, *on),
            Body::Passed(passed) if passed.block().is_some() => self.pass(passed),
            Body::TakenBack { .. }
            | Body::WindowOpened { .. }
            | Body::PlantingHeld { .. }
            | Body::ConsentGiven { .. }
            | Body::ConsentWithdrawn { .. }
            | Body::LeftAlone { .. }
            | Body::GoneOn { .. }
            | Body::PhoneLost { .. }
            | Body::PhoneFound { .. }
            | Body::NumberMoved { .. }
            | Body::Entered { .. }
            | Body::HandedOver { .. }
            | Body::Passed(_)
            | Body::Erased { .. } => return,
        }
        let known_on = event.at.date_naive();
        let sooner = |day: Option<NaiveDate>| day.map_or(known_on, |day| day.min(known_on));
        self.known_on = Some(sooner(self.known_on));
        // Only what a list brings is from before; a word of the farmer or of the bot must not move
        // days that were told already.
        if event.source == Source::Sheet {
            self.listed_on = Some(sooner(self.listed_on));
        }
        self.facts.push(event.id);
    }

    fn report(&mut self, kind: Kind, on: Happened, details: &Details, source: Source) {
        // Half a round is none: the job stays open.
        if details.is_part_of(kind) {
            return;
        }
        let day = on.day();
        let count = details.count;
        let seen = Count {
            on: day,
            trees: count,
        };
        // "Not done" and rain say nothing about work on the block.
        let effect = kind.effect();
        if !matches!(effect, Effect::Nothing | Effect::Rain) {
            let last = self.last.entry(kind).or_insert(seen);
            if last.on <= day {
                *last = seen;
            }
            *self.rounds.entry(kind).or_default() += 1;
        }
        // A job put off and then done is put off no more.
        self.postponed
            .retain(|task, _| task.proven_by() != Some(kind));
        match effect {
            Effect::Planted => self.plant(day, count.unwrap_or(0), details, false),
            Effect::Replaced => self.replace(day, count.unwrap_or(0), details),
            Effect::Dead => self.lose(count.unwrap_or(0)),
            Effect::Fed => self.fed.push(day),
            Effect::Pegs => self.pegs = self.pegs.saturating_add(count.unwrap_or(0)),
            Effect::Holes => self.holes = self.holes.saturating_add(count.unwrap_or(0)),
            Effect::Arrival if details.supply == Some(Supply::Plants) => {
                self.plants_received = self.plants_received.saturating_add(count.unwrap_or(0));
            }
            Effect::Tall => later(&mut self.tall, seen),
            Effect::Branched => later(&mut self.branched, seen),
            Effect::Induced => later(&mut self.induced, seen),
            Effect::Girth => self.girths.push(census(day, details, source)),
            Effect::Height => self.heights.push(census(day, details, source)),
            Effect::Sick => {
                let ailment = details.ailment.unwrap_or(Ailment::Other);
                keep_later(&mut self.sick, ailment, seen);
                // "No sick trees" is said of every sickness that was told before.
                if details.ailment.is_none() && seen.trees == Some(0) {
                    for known in self.sick.values_mut().filter(|known| known.on <= day) {
                        *known = seen;
                    }
                }
            }
            Effect::Harmed => {
                let cause = details.cause.unwrap_or(Cause::Other);
                keep_later(&mut self.harmed, cause, seen);
            }
            Effect::Opened => self.opened = self.opened.saturating_add(count.unwrap_or(0)),
            Effect::Rain => self.rain(day, details),
            Effect::Arrival | Effect::Round | Effect::Nothing => {}
        }
    }

    fn rain(&mut self, on: NaiveDate, details: &Details) {
        self.rains.push(Rain {
            on,
            wetness: details.wetness,
            mm: details.mm,
        });
        self.rains.sort_by_key(|rain| rain.on);
        let over = self.rains.len().saturating_sub(RAINS_KEPT);
        self.rains.drain(..over);
    }

    fn plant(&mut self, day: NaiveDate, trees: u32, details: &Details, backfill: bool) {
        let same_season = |cohort: &&mut Cohort| {
            cohort.backfill == backfill && is_one_season(day, cohort.planted_on)
        };
        if let Some(cohort) = self.cohorts.iter_mut().find(same_season) {
            cohort.planted = cohort.planted.saturating_add(trees);
            cohort.planted_on = cohort.planted_on.min(day);
            if cohort.clone_name.is_none() {
                cohort.clone_name.clone_from(&details.clone_name);
            }
        } else {
            self.cohorts.push(Cohort {
                planted_on: day,
                clone_name: details.clone_name.clone(),
                planted: trees,
                dead: 0,
                backfill,
            });
        }
        self.cohorts.sort_by_key(|cohort| cohort.planted_on);
    }

    /// Trees are replaced where others died: what was replaced beyond the known gaps died untold.
    fn replace(&mut self, day: NaiveDate, trees: u32, details: &Details) {
        self.lose(trees.saturating_sub(self.gaps()));
        self.plant(day, trees, details, true);
    }

    /// A death that names no cohort counts against the oldest trees, so that survival of the
    /// first planting is never shown too high.
    fn lose(&mut self, mut trees: u32) {
        for cohort in &mut self.cohorts {
            let here = trees.min(cohort.alive());
            cohort.dead += here;
            trees -= here;
        }
    }

    /// First day of planting, if anything was planted.
    #[must_use]
    pub fn planted_on(&self) -> Option<NaiveDate> {
        self.cohorts
            .iter()
            .filter(|cohort| !cohort.backfill)
            .map(|cohort| cohort.planted_on)
            .min()
    }

    /// Trees planted at first, backfills not counted.
    #[must_use]
    pub fn planted(&self) -> u32 {
        self.sum(|cohort| if cohort.backfill { 0 } else { cohort.planted })
    }

    /// Trees planted into gaps.
    #[must_use]
    pub fn replaced(&self) -> u32 {
        self.sum(|cohort| if cohort.backfill { cohort.planted } else { 0 })
    }

    /// Trees found dead.
    #[must_use]
    pub fn dead(&self) -> u32 {
        self.sum(|cohort| cohort.dead)
    }

    /// Living trees: first ones, filled in, gaps.
    #[must_use]
    pub fn living(&self) -> Living {
        let (first, filled) = (self.alive_of(false), self.alive_of(true));
        let planted = self.planted();
        Living {
            first,
            filled,
            planted,
            gaps: planted.saturating_sub(first.saturating_add(filled)),
        }
    }

    /// All living trees.
    #[must_use]
    pub fn alive(&self) -> u32 {
        self.living().alive()
    }

    /// Places where a tree stood and none stands.
    #[must_use]
    pub fn gaps(&self) -> u32 {
        self.living().gaps
    }

    fn alive_of(&self, backfill: bool) -> u32 {
        self.sum(|cohort| {
            if cohort.backfill == backfill {
                cohort.alive()
            } else {
                0
            }
        })
    }

    /// From this day on nothing was heard of the block. Before it was on the record nobody was quiet.
    #[must_use]
    pub fn quiet_since(&self) -> Option<NaiveDate> {
        self.heard_on.max(self.listed_on)
    }

    /// The last report of this kind.
    #[must_use]
    pub fn last_of(&self, kind: Kind) -> Option<NaiveDate> {
        self.last.get(&kind).map(|count| count.on)
    }

    fn sum(&self, part: impl Fn(&Cohort) -> u32) -> u32 {
        self.cohorts.iter().map(part).fold(0, u32::saturating_add)
    }
}

fn raise<K: Ord>(days: &mut BTreeMap<K, NaiveDate>, key: K, day: NaiveDate) {
    let last = days.entry(key).or_insert(day);
    *last = (*last).max(day);
}

fn later(slot: &mut Option<Count>, seen: Count) {
    if slot.is_none_or(|known| known.on <= seen.on) {
        *slot = Some(seen);
    }
}

/// A report that arrives late must not hide a newer one.
fn keep_later<K: Ord>(counts: &mut BTreeMap<K, Count>, key: K, seen: Count) {
    let known = counts.entry(key).or_insert(seen);
    if known.on <= seen.on {
        *known = seen;
    }
}

fn census(on: NaiveDate, details: &Details, source: Source) -> Census {
    Census {
        on,
        values_cm: details.values_cm.clone(),
        reached: details.count.zip(details.of),
        source,
    }
}
