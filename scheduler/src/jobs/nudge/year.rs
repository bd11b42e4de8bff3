//! How many routine texts a phone got in a year, and what may still be said to it.

use chrono::{NaiveDate, Weekday};

/// The days of a year touch so many weeks.
const WEEKS: u32 = 53;

/// The weeks of the last year in which a routine text went to a phone: one a week at most, so that these are
/// as many texts as weeks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TextedWeeks {
    /// The Monday of the newest week.
    pub newest: NaiveDate,
    /// A bit for each week with a text: the lowest is the newest week, the next the one before it.
    pub weeks: u64,
}

impl TextedWeeks {
    /// The weeks after a text on this day.
    #[must_use]
    pub fn with(before: Option<Self>, on: NaiveDate) -> Self {
        let newest = on.week(Weekday::Mon).first_day();
        match before {
            // A week that is still to come was written by a clock that was ahead.
            Some(before) if before.newest <= newest => Self {
                newest,
                weeks: before.seen_from(newest) | 1,
            },
            Some(before) => Self {
                newest,
                weeks: before.weeks | 1,
            },
            None => Self { newest, weeks: 1 },
        }
    }

    /// Texts in the year up to this day: those of each week that it touches.
    #[must_use]
    pub fn count(self, today: NaiveDate) -> u32 {
        let year = (1_u64 << WEEKS) - 1;
        (self.seen_from(today) & year).count_ones()
    }

    fn seen_from(self, day: NaiveDate) -> u64 {
        let weeks = (day - self.newest).num_days().max(0) / 7;
        let weeks = u32::try_from(weeks).unwrap_or(u32::MAX);
        self.weeks.checked_shl(weeks).unwrap_or(0)
    }
}

#[cfg(test)]
mod tests {
    use chrono::{Days, NaiveDate};

    use super::TextedWeeks;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    /// A text every week for two years: the last year touches 53 of their weeks.
    #[test]
    fn counts_the_texts_of_a_year() {
        let mut weeks = None;
        for week in 0..104 {
            let on = day("2027-01-06") + Days::new(week * 7);
            let now = TextedWeeks::with(weeks, on);
            assert_eq!(u64::from(now.count(on)), (week + 1).min(53));
            weeks = Some(now);
        }
        let weeks = weeks.unwrap();
        let last = day("2027-01-06") + Days::new(103 * 7);
        for (days, count) in [(4, 53), (5, 52), (12, 51), (5 + 52 * 7, 0), (5_000, 0)] {
            assert_eq!(weeks.count(last + Days::new(days)), count, "{days} later");
        }
    }

    #[test]
    fn two_texts_in_a_week_are_one() {
        let one = TextedWeeks::with(None, day("2027-03-01"));
        let two = TextedWeeks::with(Some(one), day("2027-03-07"));
        assert_eq!(two, one, "Monday to Sunday");
        let next = TextedWeeks::with(Some(two), day("2027-03-08"));
        assert_eq!(next.count(day("2027-03-08")), 2);
    }

    /// A clock that was ahead loses no text that went before.
    #[test]
    fn a_clock_that_was_ahead_loses_nothing() {
        let before = TextedWeeks::with(None, day("2027-03-01"));
        let ahead = TextedWeeks::with(Some(before), day("2028-01-03"));
        let after = TextedWeeks::with(Some(ahead), day("2027-03-08"));
        assert_eq!(after.newest, day("2027-03-08"));
        assert_eq!(after.count(day("2027-03-08")), 2);
    }
}
