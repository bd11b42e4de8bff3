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
