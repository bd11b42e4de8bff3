//! Whether a stand may be opened for tapping, as far as its last census tells.
//!
//! A share in a few trees is no share of a stand: below the handbook's sample the answer is
//! "measure all", never "ready".

use alloc::vec::Vec;

use chrono::{Datelike, NaiveDate};

use crate::{
    handbook::calendar::{Calendar, Opening},
    land::{
        block::{BlockState, Census},
        directory::Block,
        stand,
    },
    sums::{days, rounding, wilson},
    words::event::Source,
};

/// A sample that no adviser took opens a stand only from this size on: with 30 trees the share can
/// be 17 points off, with 100 still 9, and who counts for themselves picks thick ones.
const SELF_COUNT_TREES: u32 = 100;

/// What the last census says of opening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Readiness {
    /// When it was taken.
    pub on: NaiveDate,
    /// Trees that reach the girth.
    pub reached: u32,
    /// Trees measured.
    pub of: u32,
    /// Share that reaches the girth, in per cent of the trees measured.
    pub share_pct: f64,
    /// Where the share of the stand lies with 95 % confidence, in per cent, lowest and highest.
    pub interval_pct: (f64, f64),
    /// The answer.
    pub verdict: Verdict,
}

/// Whether girths allow opening. The age is asked apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Too few trees reach the girth.
    NotYet,
    /// Enough of the sample does, but the stand may not: measure all.
    MeasureAll,
    /// Enough trees do, in a sample that is sure or in the whole stand.
    Ready,
}

/// Reads the last census against the handbook. None without a census that says how many trees
/// were measured.
///
/// A stand that was found ready stays so: another sample by those who live there takes nothing back,
/// only an adviser who was there and measured does.
#[must_use]
pub fn readiness(state: &BlockState, calendar: &Calendar) -> Option<Readiness> {
    let mut censuses: Vec<&Census> = state.girths.iter().collect();
    censuses.sort_by_key(|census| census.on);
    censuses.into_iter().fold(None, |found, census| {
        let is_ready = found.is_some_and(|found: Readiness| found.verdict == Verdict::Ready);
        if is_ready && census.source != Source::Visit {
            found
        } else {
            judged(census, state, &calendar.opening)
        }
    })
}

pub(crate) fn judged(census: &Census, state: &BlockState, rule: &Opening) -> Option<Readiness> {
    let (reached, of) = tally(census, rule)?;
    let (low, high) = wilson::interval(reached, of)?;
    let share_pct = f64::from(reached) / f64::from(of) * 100.0;
    // A share of a sample that could be a lower one in the stand does not open a block: only a
    // sample that is sure, or every tree measured.
    let whole_stand = state.alive() > 0 && of >= state.alive();
    let least = match census.source {
        Source::Visit => rule.sample_trees,
        Source::Bot | Source::OwnText | Source::Leader | Source::Sheet => {
            rule.sample_trees.max(SELF_COUNT_TREES)
        }
    };
    let sure = of >= least && low * 100.0 >= rule.share_pct;
    let verdict = match (share_pct >= rule.share_pct, sure || whole_stand) {
        (false, _) => Verdict::NotYet,
        (true, false) => Verdict::MeasureAll,
        (true, true) => Verdict::Ready,
    };
    Some(Readiness {
        on: census.on,
        reached,
        of,
        share_pct,
        interval_pct: (low * 100.0, high * 100.0),
        verdict,
    })
}

/// A tree is a runt below this share of the mean girth (common practice).
const RUNT_SHARE: f64 = 0.7;

/// What the last census says of the trees of a stand that may soon be opened.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tappable {
    /// Living trees that are thick enough, by the share of those measured.
    pub trees: u32,
    /// The same on a hectare; none without an area.
    pub a_hectare: Option<f64>,
    /// Their share of the living trees, in per cent.
    pub living_pct: f64,
    /// Their share of the places for trees, in per cent: what died counts too. None where the places
    /// are not known.
    pub places_pct: Option<f64>,
    /// How single trees spread and how many are runts, both in per cent; none where girths were counted
    /// by a string.
    pub uneven: Option<Uneven>,
}

/// How unlike the trees of a stand are.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Uneven {
    /// Standard deviation of the girths over their mean.
    pub spread_pct: f64,
    /// Trees far thinner than the mean.
    pub runts_pct: f64,
}

/// None without a census that says how many trees were measured.
#[must_use]
pub fn tappable(block: &Block, state: &BlockState, calendar: &Calendar) -> Option<Tappable> {
    let ready = readiness(state, calendar)?;
    let share = f64::from(ready.reached) / f64::from(ready.of);
    let thick = f64::from(state.alive()) * share;
    let places = stand::places(stand::points(block, calendar), state);
    let census = state.girths.iter().find(|census| census.on == ready.on)?;
    Some(Tappable {
        trees: rounding::floor(thick)?,
        a_hectare: block.hectares().map(|hectares| thick / hectares),
        living_pct: ready.share_pct,
        places_pct: places
            .filter(|places| *places > 0)
            .map(|places| thick / f64::from(places) * 100.0),
        uneven: uneven(census),
    })
}

fn uneven(census: &Census) -> Option<Uneven> {
    let (spread, mean_cm) = census.spread().zip(census.mean_cm())?;
    let girths = census.values_cm.iter();
    let runts = girths.filter(|girth_cm| **girth_cm < RUNT_SHARE * mean_cm);
    Some(Uneven {
        spread_pct: spread * 100.0,
        runts_pct: runts.count() as f64 / census.values_cm.len() as f64 * 100.0,
    })
}

/// How many trees of a census reach the girth, of how many.
pub(crate) fn tally(census: &Census, rule: &Opening) -> Option<(u32, u32)> {
    if census.reached.is_some() {
        return census.reached;
    }
    let of = u32::try_from(census.values_cm.len()).ok()?;
    let reached = census
        .values_cm
        .iter()
        .filter(|girth_cm| **girth_cm >= rule.girth_cm)
        .count();
    Some((u32::try_from(reached).ok()?, of))
}

/// This day, or the first of the next month in which stands are opened.
pub(crate) fn in_season(day: NaiveDate, months: &[u32]) -> Option<NaiveDate> {
    if months.is_empty() || months.contains(&day.month()) {
        return Some(day);
    }
    (1..12)
        .filter_map(|later| days::months_after(day.with_day(1)?, later))
        .find(|first| months.contains(&first.month()))
}

#[cfg(test)]
mod tests {
    use std::{string::ToString, vec::Vec};

    use budwood_parser::{Measure, Unit};

    use super::tappable;
    use crate::{
        handbook::calendar::{Calendar, profiles},
        land::{
            block::{BlockState, Census, Cohort},
            directory::Block,
        },
        words::{
            event::Source,
            id::{BlockId, PersonId},
        },
    };

    fn hectare() -> Block {
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
            spacing_m: Some((7.0, 3.0)),
            point: None,
            planned_on: None,
            clone_name: None,
        }
    }

    fn measured(values_cm: Vec<f64>, reached: Option<(u32, u32)>) -> BlockState {
        BlockState {
            cohorts: Vec::from([Cohort {
                planted_on: "2020-06-01".parse().unwrap(),
                clone_name: None,
                planted: 476,
                dead: 51,
                backfill: false,
            }]),
            girths: Vec::from([Census {
                on: "2026-06-01".parse().unwrap(),
                values_cm,
                reached,
                source: Source::Visit,
            }]),
            ..BlockState::default()
        }
    }

    /// A worked example: of 476 points 425 stand and 300 are thick enough, which is 70.6 % of those that
    /// stand and 63.0 % of the points.
    #[test]
    fn of_the_living_and_of_the_places() {
        let vietnam = Calendar::parse(profiles::VIETNAM).unwrap();
        let state = measured(Vec::new(), Some((300, 425)));
        let found = tappable(&hectare(), &state, &vietnam).unwrap();
        assert_eq!(found.trees, 300);
        assert!((found.living_pct - 70.6).abs() < 0.05, "{found:?}");
        assert!((found.places_pct.unwrap() - 63.0).abs() < 0.05, "{found:?}");
        assert!((found.a_hectare.unwrap() - 300.0).abs() < 1e-9, "{found:?}");
        assert_eq!(found.uneven, None);
    }

    /// Worked by hand: 30, 50, 50 and 70 cm have a mean of 50 and a standard deviation of
    /// sqrt(800 / 3) cm; one of the four is under 35 cm.
    #[test]
    fn spread_and_runts() {
        let vietnam = Calendar::parse(profiles::VIETNAM).unwrap();
        let state = measured(Vec::from([30.0, 50.0, 50.0, 70.0]), None);
        let found = tappable(&hectare(), &state, &vietnam).unwrap();
        let uneven = found.uneven.unwrap();
        assert!((uneven.spread_pct - 32.66).abs() < 0.005, "{uneven:?}");
        assert!((uneven.runts_pct - 25.0).abs() < 1e-9, "{uneven:?}");
        assert_eq!(found.trees, 318, "three of four of 425");
    }
}
