//! Whether a stand may be opened for tapping, as far as its last census tells.
//!
//! A share in a few trees is no share of a stand: below the handbook's sample the answer is
//! "measure all", never "ready".

use alloc::vec::Vec;

use chrono::{Datelike, NaiveDate};

use crate::{
    handbook::calendar::{Calendar, Opening},
    land::block::{BlockState, Census},
    sums::{days, wilson},
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
