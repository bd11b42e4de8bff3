//! A report as a clerk would enter it, to be held against what a clerk entered.

use chrono::{Datelike, NaiveDate, TimeDelta};
use serde_json::{Value, json};

use crate::{Ailment, Day, Kind, Report, Supply, Wetness, When};

/// A report as a clerk would enter it; the slots that nobody compares are left out.
pub(super) fn entry(report: &Report) -> Value {
    let details = &report.details;
    let measure = details.area.or(details.amount);
    let what = match report.kind {
        Kind::Rain => details.wetness.map(Wetness::name),
        Kind::Received => details.supply.map(Supply::name),
        _ => details.ailment.map(Ailment::name),
    };
    json!({
        "kind": report.kind.name(),
        "block": report.block,
        "count": details.count,
        "of": details.of,
        "weak": details.weak,
        "area": details.area.map(|it| it.value),
        "amount": details.amount.map(|it| it.value),
        "unit": measure.map(|it| it.unit.name()),
        "values_cm": (!details.values_cm.is_empty()).then_some(&details.values_cm),
        "what": what,
        "task": details.not_done.map(Kind::name),
        "mm": details.mm,
        "date_rel": report.when.map(day),
    })
}

/// The day on which all texts are received.
fn received() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 3, 18).unwrap()
}

/// A day as said, as a clerk enters it: days from the one on which the text was received.
fn day(when: When) -> Value {
    let received = received();
    let back = |is_it: &dyn Fn(NaiveDate) -> bool| {
        (0..=400_i64).find(|days| is_it(received - TimeDelta::days(*days)))
    };
    let days = match when {
        When::DaysAgo(days) => Some(i64::from(days)),
        When::Weekday(name) => (1..=7).find(|days| {
            let date = received - TimeDelta::days(*days);
            Day::ALL.get(date.weekday().num_days_from_monday() as usize) == Some(&name)
        }),
        When::MonthDay(day) => back(&|date| date.day() == u32::from(day)),
        When::Calendar {
            day,
            month,
            year,
            named,
        } => {
            let is = |day: u8, month: u8| {
                back(&|date| {
                    (date.day(), date.month()) == (u32::from(day), u32::from(month))
                        && year.is_none_or(|year| date.year() == i32::from(year))
                })
            };
            let this_year = |days: &i64| *days < i64::from(received.ordinal());
            let swapped =
                || is(month, day).filter(|days| !named && (year.is_some() || this_year(days)));
            is(day, month)
                .filter(this_year)
                .or_else(swapped)
                .or_else(|| is(day, month))
        }
        When::LastWeek => return "last_week".into(),
        When::LastMonth => return "last_month".into(),
    };
    days.map_or("none".into(), |days| (-days).into())
}

#[test]
fn a_day_as_said_is_the_one_that_the_clerk_enters() {
    let date = |day, month, named| When::Calendar {
        day,
        month,
        year: None,
        named,
    };
    for (said, entered) in [
        (When::DaysAgo(3), -3),
        (When::Weekday(Day::Monday), -2),
        (When::Weekday(Day::Wednesday), -7),
        (When::MonthDay(9), -9),
        (When::MonthDay(27), -19),
        (When::MonthDay(31), -46),
        (date(12, 3, false), -6),
        (date(3, 12, false), -6),
        (date(3, 12, true), -105),
        (date(2, 28, false), -18),
        (date(1, 4, false), -73),
        (date(1, 4, true), -351),
    ] {
        assert_eq!(day(said), entered, "{said:?}");
    }
    assert_eq!(day(date(31, 2, true)), "none");
}
