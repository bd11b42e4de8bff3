//! A day as it was said, before anyone knows what today is.

use crate::details::named;

/// When something happened, as said. It becomes a date only in the scheduler crate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum When {
    /// So many days before the text was sent; 0 is today.
    DaysAgo(u16),
    /// The last day of that name before (or on) the day of sending.
    Weekday(Day),
    /// A calendar day. Two numbers may be meant either way round; day first is tried first.
    Calendar {
        /// The first number, or the day.
        day: u8,
        /// The second number, or the month.
        month: u8,
        /// The year, four digits, of the common era.
        year: Option<u16>,
        /// Whether the month was a name, so that the order is sure.
        named: bool,
    },
    /// The last such day of a month ("on the 9th").
    MonthDay(u8),
    /// Some day of last week.
    LastWeek,
    /// Some day of last month.
    LastMonth,
}

named! {
    /// A day of the week.
    Day {
        /// Monday.
        Monday = "monday",
        /// Tuesday.
        Tuesday = "tuesday",
        /// Wednesday.
        Wednesday = "wednesday",
        /// Thursday.
        Thursday = "thursday",
        /// Friday.
        Friday = "friday",
        /// Saturday.
        Saturday = "saturday",
        /// Sunday.
        Sunday = "sunday",
    }
}
