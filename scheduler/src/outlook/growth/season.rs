//! Growth hangs on the rains: time counted in years of growth.

use chrono::{Datelike, NaiveDate};

use crate::{sums::days::in_year, words::season::Season};

/// A day of rain counts so much more than a dry one. In north-east Thailand 63 % of a year's growth
/// falls in the five months from May to September (Nhean, abstract): 12.6 % a month against 5.3 %.
const RAIN_AGAINST_DRY: f64 = 2.4;
const DAYS_A_YEAR: f64 = 365.0;

/// When in the year stands grow.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct GrowingYear {
    /// First and last day of the rains, as days of a year of 365, from 0; and those of the second.
    rains: [Option<(f64, f64)>; 2],
}

impl GrowingYear {
    /// By the usual rains; without them each day counts the same.
    pub(crate) fn new(season: &Season) -> Self {
        let first = season.rains_start.zip(season.rains_end);
        let span = |(start, end)| Some((day_of_year(start)?, day_of_year(end)?));
        Self {
            rains: [first.and_then(span), season.second_rains.and_then(span)],
        }
    }

    /// Years of growth from one day to another.
    pub(crate) fn between(self, from: NaiveDate, to: NaiveDate) -> f64 {
        self.lived(to) - self.lived(from)
    }

    /// Years of growth since the year 0.
    fn lived(self, day: NaiveDate) -> f64 {
        let day_of_year = f64::from(day.ordinal0()).min(DAYS_A_YEAR);
        f64::from(day.year()) + self.counted(day_of_year) / self.counted(DAYS_A_YEAR)
    }

    /// Days of a year before this one, each as it counts.
    fn counted(self, day: f64) -> f64 {
        let before = |until: f64| (day.min(until + 1.0)).max(0.0);
        let rainy = |(start, end): (f64, f64)| {
            let within = before(end) - before(start - 1.0);
            // Rains over the turn of the year.
            if start <= end { within } else { day + within }
        };
        let rainy: f64 = self.rains.into_iter().flatten().map(rainy).sum();
        day + (RAIN_AGAINST_DRY - 1.0) * rainy.min(day)
    }
}

fn day_of_year(month_and_day: (u32, u32)) -> Option<f64> {
    /// Any year without a leap day.
    const YEAR: i32 = 2_001;
    in_year(YEAR, month_and_day).map(|day| f64::from(day.ordinal0()))
}

#[cfg(test)]
mod tests {
    use super::GrowingYear;
    use crate::words::season::Season;

    fn between(season: &Season, from: &str, to: &str) -> f64 {
        GrowingYear::new(season).between(from.parse().unwrap(), to.parse().unwrap())
    }

    /// Nhean (abstract): 63 % of the year's growth from May to September.
    #[test]
    fn the_share_of_the_rains_is_as_published() {
        let season = Season {
            rains_start: Some((5, 1)),
            rains_end: Some((9, 30)),
            ..Season::default()
        };
        let rains = between(&season, "2027-05-01", "2027-10-01");
        assert!((rains - 0.63).abs() < 0.01, "{rains}");
        let year = between(&season, "2027-03-07", "2028-03-07");
        assert!(
            (year - 1.0).abs() < 0.003,
            "29 February is a day too: {year}"
        );
    }

    /// The same rains told over the turn of the year, and as two, count the same.
    #[test]
    fn rains_over_the_turn_of_the_year_and_two_rains() {
        let over = Season {
            rains_start: Some((11, 1)),
            rains_end: Some((2, 28)),
            ..Season::default()
        };
        let dry = between(&over, "2027-03-01", "2027-11-01");
        let wet = between(&over, "2026-11-01", "2027-03-01");
        assert!((dry + wet - 1.0).abs() < 1e-9, "{dry} {wet}");
        // 120 days of rain and 245 dry ones: 288 of 533.
        assert!((wet - 288.0 / 533.0).abs() < 1e-9, "{wet}");
        let two = Season {
            rains_start: Some((1, 1)),
            rains_end: Some((2, 28)),
            second_rains: Some(((11, 1), (12, 31))),
            ..Season::default()
        };
        let same = between(&two, "2026-11-01", "2027-03-01");
        assert!((same - wet).abs() < 1e-9, "{same}");
    }

    #[test]
    fn without_rains_each_day_counts_the_same() {
        let half = between(&Season::default(), "2027-01-01", "2027-07-02");
        assert!((half - 182.0 / 365.0).abs() < 1e-9, "{half}");
    }
}
