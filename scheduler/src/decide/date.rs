//! From a day as said to a date. The only place where one becomes the other.

use budwood_parser::{Day, When};
use chrono::{Datelike, Days, NaiveDate, Weekday};

use crate::words::event::Happened;

/// A report reaches back this many days at most.
const DAYS_BACK_MAX: u64 = 400;
const DAYS_A_WEEK: u64 = 7;

/// The date that was meant, seen from the day of sending; none when it lies in the future, too
/// far back, or does not exist.
#[must_use]
pub fn resolve(when: When, sent: NaiveDate) -> Option<Happened> {
    match when {
        When::DaysAgo(days) => {
            let day = sent.checked_sub_days(Days::new(u64::from(days)))?;
            in_reach(day, sent).then_some(Happened::on(day))
        }
        When::Weekday(day) => {
            let back = days_back_to(day, sent.weekday());
            sent.checked_sub_days(Days::new(back)).map(Happened::on)
        }
        When::MonthDay(day) => month_day(day, sent).map(Happened::on),
        When::LastWeek => span(sent, 13, 7),
        When::LastMonth => span(sent, 60, 30),
        When::Calendar {
            day,
            month,
            year,
            named,
        } => calendar(day, month, year, named, sent).map(Happened::on),
    }
}

/// The first date from today on that a day ahead can mean ("until Friday", "until 15 Jan"); none
/// for what only lies behind. "Friday" said on a Friday is the one in a week.
#[must_use]
pub fn ahead(when: When, today: NaiveDate) -> Option<NaiveDate> {
    match when {
        When::Weekday(day) => {
            let back = days_back_to(day, today.weekday());
            today.checked_add_days(Days::new(DAYS_A_WEEK - back % DAYS_A_WEEK))
        }
        When::Calendar {
            day,
            month,
            year: Some(year),
            ..
        } => NaiveDate::from_ymd_opt(year.into(), month.into(), day.into())
            .filter(|day| *day >= today),
        When::Calendar { day, month, .. } => (today.year()..=today.year() + 1)
            .filter_map(|year| NaiveDate::from_ymd_opt(year, month.into(), day.into()))
            .find(|day| *day >= today),
        When::MonthDay(day) => today
            .iter_days()
            .take(DAYS_AHEAD_MAX)
            .find(|date| date.day() == u32::from(day)),
        When::DaysAgo(_) | When::LastWeek | When::LastMonth => None,
    }
}

/// Of two months in a row one has any day that there is.
const DAYS_AHEAD_MAX: usize = 62;

fn in_reach(day: NaiveDate, sent: NaiveDate) -> bool {
    day <= sent
        && sent
            .checked_sub_days(Days::new(DAYS_BACK_MAX))
            .is_some_and(|first| day >= first)
}

fn span(sent: NaiveDate, from: u64, to: u64) -> Option<Happened> {
    Some(Happened {
        from: sent.checked_sub_days(Days::new(from))?,
        to: sent.checked_sub_days(Days::new(to))?,
    })
}

/// "Monday" said on a Monday is the one a week ago: for today people say "today".
fn days_back_to(day: Day, today: Weekday) -> u64 {
    let wanted = match day {
        Day::Monday => Weekday::Mon,
        Day::Tuesday => Weekday::Tue,
        Day::Wednesday => Weekday::Wed,
        Day::Thursday => Weekday::Thu,
        Day::Friday => Weekday::Fri,
        Day::Saturday => Weekday::Sat,
        Day::Sunday => Weekday::Sun,
    };
    match today.days_since(wanted) {
        0 => 7,
        days => u64::from(days),
    }
}

/// This month's day of that number, or the last month's that had one.
fn month_day(day: u8, sent: NaiveDate) -> Option<NaiveDate> {
    let mut first = sent.with_day(1)?;
    for _ in 0..MONTHS_BACK_MAX {
        if let Some(date) = first.with_day(u32::from(day)).filter(|date| *date <= sent) {
            return Some(date);
        }
        first = first.pred_opt()?.with_day(1)?;
    }
    None
}

/// Of three months in a row one has any day that there is.
const MONTHS_BACK_MAX: usize = 3;

/// Day first; if that is no past day of this year, month first; if still not, day first last year.
fn calendar(
    day: u8,
    month: u8,
    year: Option<u16>,
    named: bool,
    sent: NaiveDate,
) -> Option<NaiveDate> {
    let date = |year: i32, month: u8, day: u8| {
        NaiveDate::from_ymd_opt(year, u32::from(month), u32::from(day))
            .filter(|date| in_reach(*date, sent))
    };
    let this_year = year.map_or(sent.year(), i32::from);
    let swapped = || {
        if named {
            None
        } else {
            date(this_year, day, month)
        }
    };
    let before = |year: i32| date(year - 1, month, day);
    date(this_year, month, day).or_else(swapped).or_else(|| {
        if year.is_none() {
            before(this_year)
        } else {
            None
        }
    })
}
