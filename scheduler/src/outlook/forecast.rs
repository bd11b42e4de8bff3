//! When a stand will likely be ready for opening: always a range, never one date alone.
//!
//! Growth is followed on the scale of [`crate::outlook::growth`] on which it runs evenly. Three things are
//! not known for sure, and all of them are in the range: the girth of the whole stand, of which
//! only a sample was measured; the rate of growth, first as the handbook has it, then as the
//! stand's own censuses tell, and never quite the same from year to year; and how single trees
//! spread about the mean. The range is meant to hold four times out of five.
//!
//! Deliberately absent: droughts, wind and neglect to come; whether a stand may be opened now
//! ([`crate::outlook::readiness::readiness`]).

mod aim;
#[cfg(test)]
mod backtest;
mod bank;
mod path;
mod planned;
mod sample;
#[cfg(test)]
mod tests;

use alloc::vec::Vec;

use chrono::NaiveDate;

use crate::{
    handbook::calendar::Calendar,
    land::block::{BlockState, Cohort},
    outlook::{
        growth::{GrowingYear, LIMITS_CM, Seen, standard},
        readiness::in_season,
    },
    sums::{chance, days, rounding},
    words::season::Season,
};
use aim::{Aim, Part, Wanted};
pub use bank::{Beside, Laws, Stands};
use bank::{Member, bank};

pub use planned::of_planting;
pub use sample::{Sample, sample};

const DAYS_A_YEAR: f64 = 365.25;
/// Nobody looks ahead further than this, after the last census.
const HORIZON_MONTHS: u32 = 240;
const HORIZON_DAYS: u32 = 7_305;
/// A range that is wider than so many months is not told: tappers, tools and buyers are planned for
/// a year and the next. An assumption.
const TOLD_MONTHS: u32 = 24;
/// What the range leaves out on each side.
const TAIL: f64 = 0.1;
/// A span of days that holds the right one four times out of five.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    /// Not likely before this day.
    pub earliest: NaiveDate,
    /// As likely before as after this day.
    pub likely: NaiveDate,
    /// Not likely after this day.
    pub latest: NaiveDate,
}

impl Range {
    /// Whether one can plan by it. Before that it is too early to say.
    #[must_use]
    pub fn is_narrow(&self) -> bool {
        days::months_after(self.earliest, TOLD_MONTHS).is_some_and(|last| self.latest <= last)
    }
}

/// When a stand will likely be ready.
#[derive(Clone, Debug, PartialEq)]
pub struct Forecast {
    /// All its trees together.
    pub block: Range,
    /// The trees of each planting for themselves, oldest first.
    pub cohorts: Vec<CohortRange>,
    /// The census that it rests on most.
    pub census_on: NaiveDate,
    /// Trees measured in it.
    pub of: u32,
}

/// When the trees of one planting will likely be ready.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CohortRange {
    /// When they were planted.
    pub planted_on: NaiveDate,
    /// How many live.
    pub trees: u32,
    /// When; none when it is too far ahead.
    pub range: Option<Range>,
}

/// Looks ahead to the day on which the handbook's share of the trees reaches the girth, moved
/// into its months of opening.
///
/// The usual rains say when in the year stands grow. None before the second year, and without a census that tells how thick the trees are.
#[must_use]
pub fn opening(
    state: &BlockState,
    calendar: &Calendar,
    season: &Season,
    beside: Beside<'_>,
) -> Option<Forecast> {
    let outlook = Outlook::new(state, calendar, season, beside)?;
    let cohorts = outlook.cohorts.iter().map(|cohort| CohortRange {
        planted_on: cohort.planted_on,
        trees: cohort.alive(),
        range: outlook.range(calendar, cohort.planted_on, &[outlook.part(cohort)]),
    });
    Some(Forecast {
        block: outlook.range(calendar, state.planted_on()?, &outlook.parts())?,
        cohorts: cohorts.collect(),
        census_on: outlook.last.on,
        of: outlook.last.of,
    })
}

/// Whether this day, or one before it, is the likely one of [`opening`]. Of most stands one look at
/// the chance of that day tells that it is not, so that very many can be asked.
#[must_use]
pub fn is_likely_by(
    state: &BlockState,
    calendar: &Calendar,
    season: &Season,
    beside: Beside<'_>,
    day: NaiveDate,
) -> bool {
    let by = || {
        let planted_on = state.planted_on()?;
        let old_enough = days::months_after(planted_on, calendar.opening.minimum_months)?;
        if day < old_enough {
            return None;
        }
        let outlook = Outlook::new(state, calendar, season, beside)?;
        let aims = outlook.aims(calendar, &outlook.parts());
        let lived = outlook.year.between(outlook.last.on, day);
        if outlook.chance(&aims, lived) < 0.5 {
            return None;
        }
        let likely = outlook.day(calendar, planted_on, &aims, 0.5)?;
        Some(likely <= day)
    };
    by().unwrap_or(false)
}

/// The likely day of [`opening`] alone, and the day of the census behind it. For reckoning with,
/// never to be told: that needs the range.
#[must_use]
pub fn likely(
    state: &BlockState,
    calendar: &Calendar,
    season: &Season,
) -> Option<(NaiveDate, NaiveDate)> {
    let outlook = Outlook::new(state, calendar, season, Beside::default())?;
    let aims = outlook.aims(calendar, &outlook.parts());
    let day = outlook.day(calendar, state.planted_on()?, &aims, 0.5)?;
    Some((day, outlook.last.on))
}

/// The mean girths of a stand and their ages, oldest first, for the standard of its place. Ages are
/// years of growth of the middle tree, as the stand's own outlook counts them.
#[must_use]
pub fn seen(state: &BlockState, calendar: &Calendar, season: &Season) -> Vec<Seen> {
    let cohorts = living(state);
    let Some(planted_on) = middle_planting(&cohorts) else {
        return Vec::new();
    };
    let samples = sample::all(state, &calendar.opening, planted_on);
    let ages = ages(planted_on, &samples, GrowingYear::new(season));
    let seen = |(age_years, sample): (f64, Sample)| Seen {
        age_years,
        girth_cm: sample.mean_cm,
    };
    ages.into_iter().map(seen).collect()
}

/// How many months the stand was ahead of what was to be expected of it (negative: behind) at its
/// last census.
#[must_use]
pub fn months_ahead(
    state: &BlockState,
    calendar: &Calendar,
    season: &Season,
    beside: Beside<'_>,
) -> Option<f64> {
    let Seen {
        age_years,
        girth_cm,
    } = seen(state, calendar, season).pop()?;
    let clone_name = state
        .cohorts
        .iter()
        .find_map(|one| one.clone_name.as_deref());
    let curve = standard(calendar, clone_name, beside.among(), LIMITS_CM.likely)?;
    curve.months_ahead(girth_cm, age_years)
}

/// All that is known of a stand, ready to be looked ahead with.
struct Outlook<'a> {
    /// Those with living trees.
    cohorts: Vec<&'a Cohort>,
    /// The day of planting of the middle tree.
    planted_on: NaiveDate,
    /// Where the stand is on its way along each shape of growth that its girths allow.
    bank: Vec<Member>,
    last: Sample,
    year: GrowingYear,
}

impl<'a> Outlook<'a> {
    fn new(
        state: &'a BlockState,
        calendar: &Calendar,
        season: &Season,
        beside: Beside<'_>,
    ) -> Option<Self> {
        let cohorts = living(state);
        let planted_on = middle_planting(&cohorts)?;
        let year = GrowingYear::new(season);
        let samples = sample::all(state, &calendar.opening, planted_on);
        let last = samples.last().copied()?;
        let clone_name = cohorts.iter().find_map(|one| one.clone_name.as_deref());
        let bank = bank(
            calendar,
            clone_name,
            beside,
            &ages(planted_on, &samples, year),
        );
        (!bank.is_empty()).then_some(Self {
            cohorts,
            planted_on,
            bank,
            last,
            year,
        })
    }

    fn part(&self, cohort: &Cohort) -> Part {
        Part {
            trees: f64::from(cohort.alive()),
            older_years: self.year.between(cohort.planted_on, self.planted_on),
        }
    }

    fn parts(&self) -> Vec<Part> {
        self.cohorts.iter().map(|one| self.part(one)).collect()
    }

    /// What these trees must reach on each path; none where they never do.
    fn aims(&self, calendar: &Calendar, parts: &[Part]) -> Vec<Option<Aim>> {
        let wanted = Wanted::new(parts, &calendar.opening, &self.last);
        let aim = |member: &Member| wanted.as_ref()?.on(member.path.way());
        self.bank.iter().map(aim).collect()
    }

    /// How likely these aims are reached so many years after the last census.
    fn chance(&self, aims: &[Option<Aim>], years: f64) -> f64 {
        let mut weights = 0.0;
        let mut sum = 0.0;
        for (member, aim) in self.bank.iter().zip(aims) {
            weights += member.weight;
            if let Some(aim) = aim {
                sum += member.weight * member.path.chance(aim, years);
            }
        }
        sum / weights
    }

    fn range(&self, calendar: &Calendar, planted_on: NaiveDate, parts: &[Part]) -> Option<Range> {
        let aims = self.aims(calendar, parts);
        let day = |share| self.day(calendar, planted_on, &aims, share);
        let horizon = || days::months_after(self.last.on, HORIZON_MONTHS);
        Some(Range {
            earliest: day(TAIL)?,
            likely: day(0.5)?,
            latest: day(1.0 - TAIL).or_else(horizon)?,
        })
    }

    /// The day by which the stand is ready with this chance, as the handbook lets stands be opened.
    fn day(
        &self,
        calendar: &Calendar,
        planted_on: NaiveDate,
        aims: &[Option<Aim>],
        share: f64,
    ) -> Option<NaiveDate> {
        let rule = &calendar.opening;
        let not_before = days::months_after(planted_on, rule.minimum_months)?.max(self.last.on);
        let days = self.days_until(aims, share)?;
        in_season(
            days::after(self.last.on, days)?.max(not_before),
            &rule.months,
        )
    }

    /// Days after the last census on which the chance has grown to this share. None when it does
    /// not within the horizon.
    fn days_until(&self, aims: &[Option<Aim>], share: f64) -> Option<u32> {
        let enough = |days| {
            let day = days::after(self.last.on, days)?;
            Some(self.chance(aims, self.year.between(self.last.on, day)) >= share)
        };
        let (mut low, mut high) = (0, HORIZON_DAYS);
        if !enough(high)? {
            return None;
        }
        while high > low {
            let middle = u32::midpoint(low, high);
            if enough(middle)? {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        Some(high)
    }
}

fn living(state: &BlockState) -> Vec<&Cohort> {
    state.cohorts.iter().filter(|one| one.alive() > 0).collect()
}

/// The day of planting of all living trees together, weighted by their number.
fn middle_planting(cohorts: &[&Cohort]) -> Option<NaiveDate> {
    let first = cohorts.iter().map(|cohort| cohort.planted_on).min()?;
    let (mut trees, mut days) = (0.0, 0.0);
    for cohort in cohorts {
        let alive = f64::from(cohort.alive());
        trees += alive;
        days += alive * years(first, cohort.planted_on)? * DAYS_A_YEAR;
    }
    days::after(first, rounding::floor(days / trees)?)
}

/// Mean girths with their standard errors, at years of growth.
fn ages(planted_on: NaiveDate, samples: &[Sample], year: GrowingYear) -> Vec<(f64, Sample)> {
    let age = |sample: &Sample| (year.between(planted_on, sample.on), *sample);
    samples.iter().map(age).collect()
}

fn years(from: NaiveDate, to: NaiveDate) -> Option<f64> {
    let days = i32::try_from(to.signed_duration_since(from).num_days()).ok()?;
    Some(f64::from(days) / DAYS_A_YEAR)
}
