//! Whether the gaps of a block may be filled on a day, and why not.

use chrono::NaiveDate;

use crate::{
    handbook::calendar::Calendar,
    land::block::BlockState,
    outlook::filling::{Filling, filling},
    words::season::Season,
};

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
    use chrono::NaiveDate;

    use super::{Infill, gaps_to_fill, infill};
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
