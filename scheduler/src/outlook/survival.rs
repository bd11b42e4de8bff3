//! Which trees live, by planting; which gaps are left, what to order for them, and until when.
//!
//! Survival is that of the trees planted at first: what fills a gap later says nothing of it, and
//! counted with them it could pass 100 %.

use chrono::NaiveDate;

use crate::{
    handbook::calendar::Calendar,
    land::block::{BlockState, Cohort},
    outlook::filling::{Filling, filling},
    sums::rounding,
    words::season::Season,
};

/// How the trees of one planting came through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Survival {
    /// When they were planted.
    pub planted_on: NaiveDate,
    /// How many.
    pub planted: u32,
    /// How many live.
    pub alive: u32,
    /// Planted into the gaps of older ones.
    pub backfill: bool,
}

impl Survival {
    fn of(cohort: &Cohort) -> Self {
        Self {
            planted_on: cohort.planted_on,
            planted: cohort.planted,
            alive: cohort.alive(),
            backfill: cohort.backfill,
        }
    }

    /// Living trees in per cent of those planted; none when none were.
    #[must_use]
    pub fn pct(&self) -> Option<f64> {
        (self.planted > 0).then(|| f64::from(self.alive) * 100.0 / f64::from(self.planted))
    }
}

/// Each planting of a block, oldest first.
#[must_use]
pub fn by_planting(state: &BlockState) -> alloc::vec::Vec<Survival> {
    state.cohorts.iter().map(Survival::of).collect()
}

/// The first plantings of a block together, backfills left out.
#[must_use]
pub fn of_first(state: &BlockState) -> Option<Survival> {
    let living = state.living();
    state.planted_on().map(|planted_on| Survival {
        planted_on,
        planted: living.planted,
        alive: living.first,
        backfill: false,
    })
}

/// All living trees in per cent of the places for trees.
#[must_use]
pub fn stand_pct(state: &BlockState, points: u32) -> Option<f64> {
    (points > 0).then(|| f64::from(state.alive()) * 100.0 / f64::from(points))
}

/// Plants to order for gaps, so that all are filled when some are lost on the way and some in the
/// field. Shares in per cent; none when all would be lost.
#[must_use]
pub fn refill_order(gaps: u32, field_loss_pct: f64, transit_loss_pct: f64) -> Option<u32> {
    let arriving = (1.0 - field_loss_pct / 100.0) * (1.0 - transit_loss_pct / 100.0);
    let is_share = |pct: f64| (0.0..100.0).contains(&pct);
    if !(is_share(field_loss_pct) && is_share(transit_loss_pct)) {
        return None;
    }
    rounding::ceil(f64::from(gaps) / arriving)
}

/// Whether gaps may be filled on a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Infill {
    /// Yes, up to this day.
    Until(NaiveDate),
    /// Not now: too little rain is left, or none falls. From this day on again.
    NotBefore(NaiveDate),
    /// No more: the stand is too old, and new plants would stay behind. The handbook's limit.
    TooOld {
        /// Months after planting.
        until_months: u32,
    },
    /// Nothing is planted.
    NotPlanted,
    /// No gap is known.
    NoGaps,
}

/// Answers whether the gaps of a block may be filled on a day, with the reason when not.
#[must_use]
pub fn infill(
    state: &BlockState,
    season: &Season,
    calendar: &Calendar,
    today: NaiveDate,
) -> Infill {
    let rule = &calendar.backfill;
    let Some(planted_on) = state.planted_on() else {
        return Infill::NotPlanted;
    };
    if state.gaps() == 0 {
        return Infill::NoGaps;
    }
    match filling(planted_on, today, season, rule) {
        Some(Filling { from, .. }) if from > today => Infill::NotBefore(from),
        Some(Filling { last, .. }) => Infill::Until(last),
        None => Infill::TooOld {
            until_months: rule.until_months,
        },
    }
}

/// Gaps for which plants may still be ordered: none where the stand is too old to be filled.
#[must_use]
pub fn gaps_to_fill(
    state: &BlockState,
    season: &Season,
    calendar: &Calendar,
    today: NaiveDate,
) -> u32 {
    match infill(state, season, calendar, today) {
        Infill::Until(_) | Infill::NotBefore(_) => state.gaps(),
        Infill::TooOld { .. } | Infill::NotPlanted | Infill::NoGaps => 0,
    }
}

#[cfg(test)]
mod tests {
    use std::vec::Vec;

    use chrono::NaiveDate;

    use super::{Infill, by_planting, gaps_to_fill, infill, of_first, refill_order, stand_pct};
    use crate::{
        handbook::calendar::{Calendar, profiles},
        land::block::{BlockState, Cohort},
        words::season::Season,
    };

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn cohort(planted_on: &str, planted: u32, dead: u32, backfill: bool) -> Cohort {
        Cohort {
            planted_on: day(planted_on),
            clone_name: None,
            planted,
            dead,
            backfill,
        }
    }

    fn state(cohorts: &[Cohort]) -> BlockState {
        BlockState {
            cohorts: cohorts.to_vec(),
            ..BlockState::default()
        }
    }

    /// 444 planted, 24 dead (94.6 %), 40 filled in: counted together they would be 103.6 %.
    #[test]
    fn backfills_never_raise_survival() {
        let state = state(&[
            cohort("2027-06-01", 444, 24, false),
            cohort("2027-09-01", 40, 0, true),
        ]);
        let first = of_first(&state).unwrap();
        assert_eq!((first.planted, first.alive), (444, 420));
        assert!((first.pct().unwrap() - 94.6).abs() < 0.05);
        let each: Vec<Option<f64>> = by_planting(&state)
            .iter()
            .map(super::Survival::pct)
            .collect();
        assert_eq!(each.len(), 2);
        assert_eq!(each[1], Some(100.0));
        assert!((stand_pct(&state, 476).unwrap() - 96.6).abs() < 0.05);
        assert_eq!(stand_pct(&state, 0), None);
        assert_eq!(of_first(&BlockState::default()), None);
    }

    /// A worked example: 806 gaps, 5 % lost in the field and 3 % on the way: 875 plants.
    #[test]
    fn plants_for_gaps() {
        assert_eq!(refill_order(806, 5.0, 3.0), Some(875));
        assert_eq!(refill_order(0, 5.0, 3.0), Some(0));
        assert_eq!(refill_order(31, 0.0, 0.0), Some(31));
        for pct in [100.0, 120.0, -5.0, f64::NAN] {
            assert_eq!(refill_order(806, pct, 3.0), None);
            assert_eq!(refill_order(806, 5.0, pct), None);
        }
    }

    /// The end of filling differs: FAO and Vietnam's guide for the North-West the first year,
    /// Indonesian estate text years 1 and 2. Asked in month 20 and in month 30.
    #[test]
    fn filling_is_refused_with_the_reason() {
        let state = state(&[cohort("2027-06-01", 600, 60, false)]);
        let ask = |profile, today| {
            let calendar = Calendar::parse(profile).unwrap();
            infill(&state, &Season::default(), &calendar, day(today))
        };
        let (month_6, month_20, month_30) = ("2027-12-01", "2029-02-01", "2029-12-01");
        for (profile, months) in [
            (profiles::FAO, 12),
            (profiles::VIETNAM, 12),
            (profiles::INDONESIA, 24),
        ] {
            assert!(matches!(ask(profile, month_6), Infill::Until(_)));
            let refused = Infill::TooOld {
                until_months: months,
            };
            if months == 12 {
                assert_eq!(ask(profile, month_20), refused);
            } else {
                assert_eq!(ask(profile, month_20), Infill::Until(day("2029-05-31")));
            }
            assert_eq!(ask(profile, month_30), refused);
        }
        // Nobody orders plants for gaps that are filled no more.
        let fao = Calendar::parse(profiles::FAO).unwrap();
        let gaps = |today| gaps_to_fill(&state, &Season::default(), &fao, day(today));
        assert_eq!((gaps(month_6), gaps(month_20)), (60, 0));
    }

    /// Common practice: not in the last six weeks of the rains, nor in the dry season.
    #[test]
    fn filling_waits_for_the_rains() {
        let stand = state(&[cohort("2027-06-01", 600, 60, false)]);
        let fao = Calendar::parse(profiles::FAO).unwrap();
        let season = Season {
            rains_start: Some((5, 20)),
            rains_end: Some((10, 31)),
            ..Season::default()
        };
        let ask = |state: &BlockState, today| infill(state, &season, &fao, day(today));
        assert_eq!(ask(&stand, "2027-08-01"), Infill::Until(day("2027-09-19")));
        assert_eq!(
            ask(&stand, "2027-10-01"),
            Infill::NotBefore(day("2028-05-20"))
        );
        assert_eq!(
            ask(&stand, "2028-02-01"),
            Infill::NotBefore(day("2028-05-20"))
        );
        let full = state(&[cohort("2027-06-01", 600, 0, false)]);
        assert_eq!(ask(&full, "2027-08-01"), Infill::NoGaps);
        let in_the_dry = gaps_to_fill(&stand, &season, &fao, day("2028-02-01"));
        assert_eq!(in_the_dry, 60, "they can be filled in the next rains");
        assert_eq!(
            ask(&BlockState::default(), "2027-08-01"),
            Infill::NotPlanted
        );
    }
}
