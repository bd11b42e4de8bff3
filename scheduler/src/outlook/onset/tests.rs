//! The rule of onset with the definitions that others published.

use std::vec::Vec;

use chrono::{Datelike, NaiveDate, TimeDelta};

use super::{
    DRY_DAY_MM, DailyRain, Dated, Definition, DrySpell, Onset, Reach, STERN, Since, after, onset,
    run_from,
};

/// IDEMS Climatic Guide, chapter 7, event 2: more than 20 mm in 3 days.
const GUIDE_EVENT_2: Definition = Definition {
    amount_mm: 20.0,
    reach: Reach::MoreThan,
    within_days: 3,
    rainy_days_min: 1,
    dated: Dated::Last,
    dry_spell: None,
    dry_day_mm: DRY_DAY_MM,
};

/// The same guide, event 3, for India: more than 25 mm in 5 days, of which 3 or more rainy.
const GUIDE_EVENT_3: Definition = Definition {
    amount_mm: 25.0,
    within_days: 5,
    rainy_days_min: 3,
    ..GUIDE_EVENT_2
};

/// The same guide, event 4: event 2 and no dry spell longer than 9 days in the next 21.
const GUIDE_EVENT_4: Definition = Definition {
    dry_spell: Some(DrySpell {
        days: 10,
        look_ahead_days: 21,
    }),
    ..GUIDE_EVENT_2
};

/// ICPAC, East Africa: 20 mm in 3 days, and no dry spell of 7 days in the next 21.
const ICPAC: Definition = Definition {
    reach: Reach::AtLeast,
    dry_spell: Some(DrySpell {
        days: 7,
        look_ahead_days: 21,
    }),
    ..GUIDE_EVENT_2
};

/// The starts from a day on that a dry spell made false.
fn false_starts(rain: &DailyRain, from: NaiveDate, definition: &Definition) -> Vec<NaiveDate> {
    let Some(spell) = definition.dry_spell else {
        return Vec::new();
    };
    let begun = match onset(rain, from, definition) {
        Onset::On(day) | Onset::NotKnownYet(day) => Some(day),
        Onset::None => None,
    };
    let mut starts: Vec<NaiveDate> = rain
        .range(from..)
        .filter_map(|(day, _)| run_from(rain, *day, definition))
        .filter(|run| after(rain, run.last, spell, definition) == Since::Dry)
        .map(|run| match definition.dated {
            Dated::First => run.first,
            Dated::Last => run.last,
        })
        .filter(|day| begun.is_none_or(|begun| *day < begun))
        .collect();
    starts.dedup();
    starts
}

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

/// Every day of a span is measured; those not listed are 0 mm.
fn rain(from: &str, to: &str, wet: &[(&str, f64)]) -> DailyRain {
    let days = (day(to) - day(from)).num_days();
    let mut all: DailyRain = (0..=days)
        .map(|later| (day(from) + TimeDelta::days(later), 0.0))
        .collect();
    all.extend(wet.iter().map(|(on, mm)| (day(on), *mm)));
    all
}

const SPRING: [(&str, f64); 10] = [
    ("2027-04-10", 12.0),
    ("2027-04-11", 9.0),
    ("2027-04-24", 2.0),
    ("2027-05-02", 22.0),
    ("2027-05-07", 6.0),
    ("2027-05-12", 8.0),
    ("2027-05-17", 5.0),
    ("2027-05-22", 11.0),
    ("2027-05-27", 7.0),
    ("2027-06-01", 6.0),
];

/// A made-up spring, worked by hand: 21 mm on 10 and 11 April, then 12 dry days, a false
/// start; 22 mm on 2 May, then never more than 4 dry days in 30.
#[test]
fn a_false_start_and_a_true_one() {
    let spring = rain("2027-04-01", "2027-06-10", &SPRING);
    let from = day("2027-04-01");
    assert_eq!(onset(&spring, from, &STERN), Onset::On(day("2027-05-02")));
    assert_eq!(false_starts(&spring, from, &STERN), [day("2027-04-10")]);
    let dated_last = Definition {
        dated: Dated::Last,
        ..STERN
    };
    assert_eq!(
        false_starts(&spring, from, &dated_last),
        [day("2027-04-11")]
    );
    assert_eq!(
        onset(&spring, from, &GUIDE_EVENT_2),
        Onset::On(day("2027-04-11")),
        "without a look ahead the false start counts"
    );
}

#[test]
fn days_that_are_still_to_come_leave_it_open() {
    let known = rain("2027-04-01", "2027-05-31", &SPRING[..9]);
    let from = day("2027-04-01");
    assert_eq!(
        onset(&known, from, &STERN),
        Onset::NotKnownYet(day("2027-05-02"))
    );
    let none = rain("2027-04-01", "2027-05-01", &SPRING[..3]);
    assert_eq!(onset(&none, from, &STERN), Onset::None);
    assert_eq!(onset(&DailyRain::new(), from, &STERN), Onset::None);
}

#[test]
fn the_edges_of_the_rule() {
    let begins = |wet: &[(&str, f64)], definition: &Definition| {
        let rain = rain("2027-04-01", "2027-06-30", wet);
        onset(&rain, day("2027-04-01"), definition) != Onset::None
    };
    let exactly = [("2027-05-02", 20.0)];
    assert!(begins(
        &exactly,
        &Definition {
            dry_spell: None,
            ..STERN
        }
    ));
    assert!(!begins(&exactly, &GUIDE_EVENT_2), "only more than 20 mm");
    // Ten dry days in a row, and no longer spell in the 30 days.
    let ten_dry = [
        ("2027-05-02", 25.0),
        ("2027-05-13", 5.0),
        ("2027-05-20", 5.0),
        ("2027-05-27", 5.0),
        ("2027-06-01", 5.0),
    ];
    assert!(!begins(&ten_dry, &STERN), "10 days are a spell");
    let more_than_ten = Definition {
        dry_spell: Some(DrySpell {
            days: 11,
            look_ahead_days: 30,
        }),
        ..STERN
    };
    assert!(begins(&ten_dry, &more_than_ten));
    // A day of 0.8 mm is dry by 0.85 mm, wet by 0.5 mm.
    let mut drizzle = ten_dry.to_vec();
    drizzle.push(("2027-05-07", 0.8));
    assert!(!begins(&drizzle, &STERN));
    assert!(begins(
        &drizzle,
        &Definition {
            dry_day_mm: 0.5,
            ..STERN
        }
    ));
}

#[test]
fn a_day_that_was_not_measured_is_not_a_dry_day() {
    let mut gappy = rain("2027-04-01", "2027-06-10", &SPRING);
    for missing in 15..=20 {
        gappy.remove(&NaiveDate::from_ymd_opt(2027, 4, missing).unwrap());
    }
    let from = day("2027-04-01");
    assert_eq!(
        onset(&gappy, from, &STERN),
        Onset::NotKnownYet(day("2027-04-10"))
    );
}

/// IDEMS Climatic Guide, chapter 7, Moorings in Zambia: day 119 counted from 1 August is 27
/// November; event 2 looks from 1 November, event 1 from the 15th. The daily figures were not
/// published with it: these are made to have what the guide tells of the season of 1965, a
/// chance on 13 November that fails on its dry spell, and success on 20 December.
#[test]
fn the_season_of_1965_at_moorings() {
    let from = day("1922-08-01");
    assert_eq!(from + TimeDelta::days(119 - 1), day("1922-11-27"));
    let mut wet: Vec<(&str, f64)> = Vec::from([
        ("1965-11-12", 9.0),
        ("1965-11-13", 14.0),
        ("1965-12-19", 11.0),
        ("1965-12-20", 16.0),
    ]);
    for later in ["1965-12-26", "1966-01-02", "1966-01-09", "1966-01-15"] {
        wet.push((later, 12.0));
    }
    let moorings = rain("1965-08-01", "1966-03-31", &wet);
    let from = day("1965-11-01");
    assert_eq!(
        onset(&moorings, from, &GUIDE_EVENT_2),
        Onset::On(day("1965-11-13"))
    );
    assert_eq!(
        onset(&moorings, from, &GUIDE_EVENT_4),
        Onset::On(day("1965-12-20"))
    );
    assert_eq!(
        false_starts(&moorings, from, &GUIDE_EVENT_4),
        [day("1965-11-13")]
    );
    let dry_after = rain("1972-08-01", "1973-03-31", &[("1972-11-20", 30.0)]);
    let none = onset(&dry_after, day("1972-11-01"), &GUIDE_EVENT_4);
    assert_eq!(none, Onset::None, "as in 1972");
}

/// Definitions disagree on the same days: 24 mm in three days with 8 dry days after them.
#[test]
fn definitions_differ() {
    let wet = [
        ("2027-06-03", 9.0),
        ("2027-06-04", 8.0),
        ("2027-06-05", 7.0),
        ("2027-06-14", 9.0),
        ("2027-06-20", 9.0),
        ("2027-06-26", 9.0),
        ("2027-07-02", 9.0),
    ];
    let june = rain("2027-06-01", "2027-07-31", &wet);
    let begins = |definition: &Definition| match onset(&june, day("2027-06-01"), definition) {
        Onset::On(day) => Some((day.month(), day.day())),
        Onset::NotKnownYet(_) | Onset::None => None,
    };
    assert_eq!(begins(&GUIDE_EVENT_2), Some((6, 5)));
    assert_eq!(begins(&GUIDE_EVENT_4), Some((6, 5)), "8 days are no spell");
    assert_eq!(begins(&ICPAC), None, "7 days are one");
    assert_eq!(begins(&GUIDE_EVENT_3), None, "24 mm are not over 25");
    assert_eq!(begins(&STERN), None, "17 mm in two days");
    let lower = Definition {
        amount_mm: 17.0,
        reach: Reach::AtLeast,
        ..STERN
    };
    assert_eq!(begins(&lower), Some((6, 3)));
}
