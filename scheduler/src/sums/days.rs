//! Civil days: adding days and months without ever running off the calendar.
//!
//! A day that cannot be reckoned (beyond what the calendar type holds) gives none, and the job
//! that hangs on it does not arise.

use chrono::{Datelike, Days, Months, NaiveDate};

/// So many days later.
pub(crate) fn after(day: NaiveDate, days: u32) -> Option<NaiveDate> {
    day.checked_add_days(Days::new(u64::from(days)))
}

/// So many days earlier.
pub(crate) fn before(day: NaiveDate, days: u32) -> Option<NaiveDate> {
    day.checked_sub_days(Days::new(u64::from(days)))
}

/// So many months later, on the same day of the month or that month's last.
pub(crate) fn months_after(day: NaiveDate, months: u32) -> Option<NaiveDate> {
    day.checked_add_months(Months::new(months))
}

/// So many months earlier, on the same day of the month or that month's last.
pub(crate) fn months_before(day: NaiveDate, months: u32) -> Option<NaiveDate> {
    day.checked_sub_months(Months::new(months))
}

/// Whole months from one day to another; 0 when the other is not later.
pub(crate) fn months_between(from: NaiveDate, to: NaiveDate) -> u32 {
    let months = (i64::from(to.year()) - i64::from(from.year())) * 12 + i64::from(to.month())
        - i64::from(from.month());
    // A month is whole on its day, or on the last day of a month that lacks that day.
    let whole = u32::try_from(months).unwrap_or(0);
    match months_after(from, whole) {
        Some(day) if day <= to => whole,
        _ => whole.saturating_sub(1),
    }
}

/// The day of this year that is called by month and day; 29 February is the 28th in other years.
pub(crate) fn in_year(year: i32, (month, day): (u32, u32)) -> Option<NaiveDate> {
    NaiveDate::from_ymd_opt(year, month, day)
        .or_else(|| NaiveDate::from_ymd_opt(year, month, day.checked_sub(1)?))
}

#[cfg(test)]
mod tests {
    use chrono::NaiveDate;

    use super::{after, before, in_year, months_after, months_between};

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    #[test]
    fn months_count_from_day_to_day() {
        assert_eq!(months_between(day("2027-06-15"), day("2027-07-14")), 0);
        assert_eq!(months_between(day("2027-06-15"), day("2027-07-15")), 1);
        assert_eq!(months_between(day("2027-08-31"), day("2028-02-28")), 5);
        assert_eq!(months_between(day("2027-08-31"), day("2028-02-29")), 6);
        assert_eq!(months_between(day("2027-06-15"), day("2020-01-01")), 0);
    }

    #[test]
    fn leap_day_is_the_28th_in_other_years() {
        assert_eq!(in_year(2028, (2, 29)), Some(day("2028-02-29")));
        assert_eq!(in_year(2027, (2, 29)), Some(day("2027-02-28")));
        assert_eq!(in_year(2027, (13, 1)), None);
        assert_eq!(in_year(2027, (5, 0)), None);
    }

    #[test]
    fn the_ends_of_the_calendar_give_none() {
        assert_eq!(after(NaiveDate::MAX, 1), None);
        assert_eq!(before(NaiveDate::MIN, 1), None);
        assert_eq!(months_after(NaiveDate::MAX, u32::MAX), None);
        assert_eq!(months_between(NaiveDate::MAX, NaiveDate::MIN), 0);
    }
}
