//! From a day as said to a date. The rules are the project's own reading rules; weekdays and leap
//! years are those of the Gregorian calendar (ISO 8601).

use budwood_parser::{Day, When};
use chrono::{Datelike, Weekday};

use super::given::{day, given, today};
use crate::{
    decide::{date_ahead, resolve_date},
    words::event::Happened,
};

const fn calendar(day: u8, month: u8, year: Option<u16>, named: bool) -> When {
    When::Calendar {
        day,
        month,
        year,
        named,
    }
}

/// Resolves "12/5" and the like; `then` is a date, or "none".
#[track_caller]
fn check(when: When, sent: &str, then: &str) {
    let expected = (then != "none").then(|| Happened::on(day(then)));
    assert_eq!(
        resolve_date(when, day(sent)),
        expected,
        "{when:?} sent {sent}"
    );
}

#[test]
fn two_numbers_are_day_and_month_then_swapped_then_last_year() {
    let both = calendar(12, 5, None, false);
    check(both, "2027-06-01", "2027-05-12");
    check(both, "2027-05-12", "2027-05-12");
    // 12 May is still to come and so is 5 December: it was last year's May.
    check(both, "2027-03-17", "2026-05-12");
    // 3 December is still to come, 12 March is past.
    check(calendar(3, 12, None, false), "2027-03-17", "2027-03-12");
    // 25 cannot be a month.
    check(calendar(25, 12, None, false), "2027-03-17", "2026-12-25");
    check(calendar(2, 25, None, false), "2027-03-17", "2027-02-25");
}

#[test]
fn a_named_month_is_never_swapped() {
    check(calendar(5, 12, None, true), "2027-12-04", "2026-12-05");
    check(calendar(12, 5, None, true), "2027-03-17", "2026-05-12");
    check(calendar(17, 3, None, true), "2027-03-17", "2027-03-17");
    check(calendar(18, 3, None, true), "2027-03-17", "2026-03-18");
}

#[test]
fn a_year_that_was_said_is_kept() {
    check(
        calendar(12, 5, Some(2026), true),
        "2027-03-17",
        "2026-05-12",
    );
    check(calendar(12, 5, Some(2027), true), "2027-03-17", "none");
    check(
        calendar(3, 12, Some(2027), false),
        "2027-03-17",
        "2027-03-12",
    );
    check(calendar(1, 1, Some(9_999), true), "2027-03-17", "none");
}

#[test]
fn days_that_do_not_exist_are_none() {
    check(calendar(31, 2, None, false), "2027-03-17", "none");
    check(calendar(31, 4, None, true), "2027-06-17", "none");
    check(calendar(0, 5, None, false), "2027-06-17", "none");
    check(calendar(5, 0, None, false), "2027-06-17", "none");
    check(calendar(99, 99, None, false), "2027-06-17", "none");
}

#[test]
fn the_29th_of_february_is_there_in_leap_years_only() {
    let leap_day = calendar(29, 2, None, true);
    check(leap_day, "2028-03-01", "2028-02-29");
    check(leap_day, "2028-02-28", "none");
    check(leap_day, "2029-02-01", "2028-02-29");
    check(leap_day, "2027-03-01", "none");
    // 2100 is none, 2000 was one.
    check(leap_day, "2100-03-01", "none");
    check(leap_day, "2000-03-01", "2000-02-29");
}

#[test]
fn a_report_reaches_back_400_days() {
    check(When::DaysAgo(0), "2027-03-17", "2027-03-17");
    check(When::DaysAgo(1), "2027-03-01", "2027-02-28");
    check(When::DaysAgo(1), "2028-03-01", "2028-02-29");
    check(When::DaysAgo(400), "2027-03-17", "2026-02-10");
    check(When::DaysAgo(401), "2027-03-17", "none");
    check(When::DaysAgo(u16::MAX), "2027-03-17", "none");
    check(
        calendar(10, 2, Some(2026), true),
        "2027-03-17",
        "2026-02-10",
    );
    check(calendar(9, 2, Some(2026), true), "2027-03-17", "none");
}

/// "Monday" said on a Monday is a week ago, for today people say "today".
#[test]
fn a_weekday_is_the_last_one_and_never_today() {
    assert_eq!(today().weekday(), Weekday::Wed);
    let expected = [
        (Day::Wednesday, "2027-03-10"),
        (Day::Thursday, "2027-03-11"),
        (Day::Friday, "2027-03-12"),
        (Day::Saturday, "2027-03-13"),
        (Day::Sunday, "2027-03-14"),
        (Day::Monday, "2027-03-15"),
        (Day::Tuesday, "2027-03-16"),
    ];
    for (named, then) in expected {
        check(When::Weekday(named), "2027-03-17", then);
    }
}

/// "The 5th" is this month's, or the last month's that had one.
#[test]
fn a_day_of_the_month_is_the_last_one() {
    check(When::MonthDay(5), "2027-03-17", "2027-03-05");
    check(When::MonthDay(17), "2027-03-17", "2027-03-17");
    check(When::MonthDay(18), "2027-03-17", "2027-02-18");
    check(When::MonthDay(31), "2027-03-17", "2027-01-31");
    check(When::MonthDay(30), "2028-01-05", "2027-12-30");
    check(When::MonthDay(32), "2027-03-17", "none");
    check(When::MonthDay(0), "2027-03-17", "none");
}

/// "Until Friday", "until 15 Jan": the next such day, never one that is past; a date may be today,
/// a weekday is not: for today people say "today".
#[test]
fn a_day_ahead_is_today_or_the_next_one() {
    let ahead = |when: When, today: &str, then: &str| {
        let expected = (then != "none").then(|| day(then));
        assert_eq!(
            date_ahead(when, day(today)),
            expected,
            "{when:?} said {today}"
        );
    };
    // 17 March 2027 is a Wednesday.
    for (named, then) in [
        (Day::Wednesday, "2027-03-24"),
        (Day::Thursday, "2027-03-18"),
        (Day::Sunday, "2027-03-21"),
        (Day::Monday, "2027-03-22"),
        (Day::Tuesday, "2027-03-23"),
    ] {
        ahead(When::Weekday(named), "2027-03-17", then);
    }
    ahead(calendar(17, 3, None, true), "2027-03-17", "2027-03-17");
    ahead(calendar(16, 3, None, true), "2027-03-17", "2028-03-16");
    ahead(calendar(15, 1, None, true), "2027-12-20", "2028-01-15");
    ahead(
        calendar(17, 3, Some(2027), true),
        "2027-03-17",
        "2027-03-17",
    );
    ahead(calendar(16, 3, Some(2027), true), "2027-03-17", "none");
    ahead(calendar(5, 1, Some(2029), true), "2027-03-17", "2029-01-05");
    ahead(calendar(31, 2, None, true), "2027-03-17", "none");
    ahead(When::MonthDay(17), "2027-03-17", "2027-03-17");
    ahead(When::MonthDay(16), "2027-03-17", "2027-04-16");
    // April has no 31st.
    ahead(When::MonthDay(31), "2027-04-01", "2027-05-31");
    ahead(When::MonthDay(30), "2027-01-31", "2027-03-30");
    ahead(When::MonthDay(32), "2027-03-17", "none");
    for behind in [When::DaysAgo(0), When::LastWeek, When::LastMonth] {
        ahead(behind, "2027-03-17", "none");
    }
}

#[test]
fn last_week_and_last_month_are_spans() {
    let span = |from, to| {
        Some(Happened {
            from: day(from),
            to: day(to),
        })
    };
    assert_eq!(
        resolve_date(When::LastWeek, today()),
        span("2027-03-04", "2027-03-10")
    );
    assert_eq!(
        resolve_date(When::LastMonth, today()),
        span("2027-01-16", "2027-02-15")
    );
}

#[test]
fn the_first_days_of_the_calendar_do_no_harm() {
    for when in [
        When::DaysAgo(1),
        When::Weekday(Day::Monday),
        When::LastWeek,
        When::LastMonth,
        calendar(1, 1, None, false),
    ] {
        assert_eq!(resolve_date(when, chrono::NaiveDate::MIN), None, "{when:?}");
    }
}

#[test]
fn dates_as_people_write_them() {
    let farmer = given();
    farmer.check("weeded A yesterday", "record weeded A on 2027-03-16");
    farmer.check("weeded A 3 days ago", "record weeded A on 2027-03-14");
    farmer.check("weeded A on monday", "record weeded A on 2027-03-15");
    farmer.check("weeded A 12 feb", "record weeded A on 2027-02-12");
    farmer.check("weeded A 12/2", "record weeded A on 2027-02-12");
    farmer.check(
        "dead 3 A last week",
        "record dead 3 A on 2027-03-04 to 2027-03-10",
    );
    farmer.check("weeded A on 12 may 2028", "ask date of weeded A");
}
