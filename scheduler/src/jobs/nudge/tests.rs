//! Hours, quiet days, tries.

use std::{vec, vec::Vec};

use chrono::{Days, NaiveDate, NaiveDateTime, TimeDelta, Weekday};
use proptest::{collection::vec as many, prelude::*};

use super::{
    NextTry, Rules, Turn, Withheld, first_by_day, has_lapsed, is_late, is_window, may_go, may_send,
    next_try, rank, rested_on, round_rested_on, slot, withheld,
};
use crate::{
    jobs::task::{Figures, Task},
    land::{
        block::NudgeTrack,
        directory::{Consent, Person, Role},
    },
    words::{
        hold::{Hold, Reason},
        id::{BlockId, PersonId},
        job::{Clock, TaskKind},
    },
};

fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

/// "2027-06-01 15:30"
fn time(text: &str) -> NaiveDateTime {
    NaiveDateTime::parse_from_str(text, "%Y-%m-%d %H:%M").unwrap()
}

#[track_caller]
fn goes(not_before: &str, quiet_days: &[&str], market_day: Option<Weekday>, expected: &str) {
    let quiet_days: Vec<_> = quiet_days.iter().map(|text| day(text)).collect();
    let found = slot(
        &Rules::standard(),
        time(not_before),
        &quiet_days,
        market_day,
    );
    assert_eq!(found, time(expected));
}

// 1 June 2027 is a Tuesday.

#[test]
fn a_text_goes_in_the_afternoon() {
    goes("2027-06-01 05:00", &[], None, "2027-06-01 15:30");
    goes("2027-06-01 15:30", &[], None, "2027-06-01 15:30");
    goes("2027-06-01 17:12", &[], None, "2027-06-01 17:12");
    goes("2027-06-01 18:30", &[], None, "2027-06-02 15:30");
    goes("2027-06-01 23:59", &[], None, "2027-06-02 15:30");
}

/// What cannot wait for the afternoon goes by day, and on no quiet day.
#[test]
fn what_is_urgent_goes_by_day() {
    let quiet: Vec<_> = ["2027-06-02", "2027-06-03"].map(day).into();
    for (not_before, expected) in [
        ("2027-06-01 05:59", "2027-06-01 06:00"),
        ("2027-06-01 06:00", "2027-06-01 06:00"),
        ("2027-06-01 18:59", "2027-06-01 18:59"),
        ("2027-06-01 19:00", "2027-06-04 06:00"),
        ("2027-06-02 10:00", "2027-06-04 06:00"),
        ("2027-06-03 23:00", "2027-06-04 06:00"),
    ] {
        let found = first_by_day(&Rules::standard(), time(not_before), &quiet);
        assert_eq!(found, time(expected), "{not_before}");
    }
}

#[test]
fn a_text_skips_quiet_days() {
    let quiet = ["2027-06-01", "2027-06-02", "2027-06-04", "2027-06-01"];
    goes("2027-06-01 09:00", &quiet, None, "2027-06-03 15:30");
    goes("2027-06-01 19:00", &quiet, None, "2027-06-03 15:30");
    goes("2027-06-03 19:00", &quiet, None, "2027-06-05 15:30");
}

#[test]
fn a_text_waits_a_little_for_the_eve_of_market_day() {
    let thursday = Some(Weekday::Thu);
    goes("2027-06-01 16:00", &[], thursday, "2027-06-02 15:30");
    goes("2027-06-02 16:00", &[], thursday, "2027-06-02 16:00");
    goes("2027-06-03 16:00", &[], thursday, "2027-06-03 16:00");
    goes(
        "2027-06-01 16:00",
        &["2027-06-02"],
        thursday,
        "2027-06-01 16:00",
    );
    goes("2027-05-30 16:00", &[], thursday, "2027-05-30 16:00");
    goes("2027-05-31 16:00", &[], thursday, "2027-06-02 15:30");
}

#[test]
fn nothing_is_sent_at_night_or_on_a_quiet_day() {
    let may = |at: &str| may_send(&Rules::standard(), time(at), &[day("2027-06-03")]);
    assert!(!may("2027-06-01 05:59"));
    assert!(may("2027-06-01 06:00"));
    assert!(may("2027-06-01 18:59"));
    assert!(!may("2027-06-01 19:00"));
    assert!(!may("2027-06-03 12:00"));
}

/// A moment that has passed while nothing could be put out is no reason to text at breakfast.
#[test]
fn a_routine_text_is_put_out_in_the_window_only() {
    let rules = Rules::standard();
    let quiet = [day("2026-11-03")];
    for (at, expected) in [
        ("2026-11-02 15:29", false),
        ("2026-11-02 15:30", true),
        ("2026-11-02 18:29", true),
        ("2026-11-02 18:30", false),
        ("2026-11-02 09:00", false),
        ("2026-11-03 16:00", false),
    ] {
        assert_eq!(is_window(&rules, time(at), &quiet), expected, "{at}");
    }
}

#[test]
fn a_phone_rests() {
    let rules = Rules::standard();
    assert_eq!(rested_on(&rules, day("2027-06-01")), day("2027-06-08"));
    assert_eq!(rested_on(&rules, NaiveDate::MAX), NaiveDate::MAX);
}

fn job(kind: TaskKind, late_after: &str) -> Task {
    Task {
        kind,
        late_after: day(late_after),
        ..feeding(None)
    }
}

/// Planting and what has a week only; then what is late first; then the round; then repeats, of which
/// only planting is as good as new.
#[test]
fn what_nobody_was_told_of_goes_first() {
    let rules = Rules::standard();
    let order = [
        (job(TaskKind::Plant, "2027-07-20"), false),
        (job(TaskKind::LookAtInduced, "2027-06-29"), false),
        (job(TaskKind::Feed, "2027-07-06"), false),
        (job(TaskKind::Firebreak, "2027-07-07"), false),
        (job(TaskKind::Plant, "2027-07-20"), true),
        (job(TaskKind::RootCheck, "2027-06-23"), false),
        (job(TaskKind::OrderPlants, "2027-07-06"), true),
        (job(TaskKind::Feed, "2027-06-23"), true),
    ];
    for pair in order.windows(2) {
        let [(one, one_again), (other, other_again)] = pair else {
            continue;
        };
        assert!(
            rank(&rules, one, *one_again) < rank(&rules, other, *other_again),
            "{one:?} before {other:?}"
        );
    }
}

/// 40 texts a year: repeats stop at 24, rounds at 32.
#[test]
fn a_year_keeps_texts_for_what_nobody_was_told_of() {
    let rules = Rules::standard();
    let most = |turn: Turn| (0..60).find(|texts| !turn.may_be_said(&rules, *texts));
    assert_eq!(most(Turn::Again), Some(24));
    assert_eq!(most(Turn::Round), Some(32));
    assert_eq!(most(Turn::First), Some(40));
    assert_eq!(most(Turn::Urgent), Some(40));
}

fn feeding(ends: Option<&str>) -> Task {
    Task {
        kind: TaskKind::Feed,
        block: BlockId(1),
        due: day("2027-06-22"),
        late_after: day("2027-07-06"),
        ends: ends.map(day),
        clock: Clock::Planting,
        figures: Figures::default(),
    }
}

fn track(due: &str, tries: u8) -> NudgeTrack {
    NudgeTrack {
        due: day(due),
        tries,
        first_on: day("2027-06-23"),
        last_on: day(if tries == 1 {
            "2027-06-23"
        } else {
            "2027-06-30"
        }),
    }
}

#[track_caller]
fn tries(task: &Task, track: Option<NudgeTrack>, today: &str, expected: NextTry) {
    let found = next_try(&Rules::standard(), task, track.as_ref(), day(today));
    assert_eq!(found, expected);
}

fn on(text: &str) -> NextTry {
    NextTry::On(day(text))
}

#[test]
fn three_tries_and_then_a_person() {
    let task = feeding(None);
    tries(&task, None, "2027-06-01", on("2027-06-22"));
    tries(&task, None, "2027-06-25", on("2027-06-25"));
    tries(
        &task,
        Some(track("2027-06-22", 1)),
        "2027-06-24",
        on("2027-06-30"),
    );
    tries(
        &task,
        Some(track("2027-06-22", 2)),
        "2027-07-01",
        on("2027-07-14"),
    );
    tries(
        &task,
        Some(track("2027-06-22", 2)),
        "2027-08-01",
        on("2027-08-01"),
    );
    // The second went out late, so the third waits a week.
    let late = NudgeTrack {
        last_on: day("2027-07-12"),
        ..track("2027-06-22", 2)
    };
    tries(&task, Some(late), "2027-07-13", on("2027-07-19"));
    for used_up in [3, 4, u8::MAX] {
        let track = track("2027-06-22", used_up);
        tries(&task, Some(track), "2027-07-15", NextTry::AdviserList);
    }
}

/// A clock that was years ahead stored a try of 2031.
#[test]
fn a_try_that_is_still_to_come_silences_nobody() {
    let ahead = NudgeTrack {
        first_on: day("2031-01-01"),
        last_on: day("2031-01-01"),
        ..track("2027-06-22", 1)
    };
    tries(&feeding(None), Some(ahead), "2027-06-24", on("2027-06-24"));
}

#[test]
fn a_new_round_starts_the_tries_anew() {
    let before = track("2027-06-01", 3);
    tries(&feeding(None), Some(before), "2027-06-20", on("2027-06-22"));
}

#[test]
fn no_nudge_after_the_end() {
    let task = feeding(Some("2027-06-28"));
    tries(&task, None, "2027-06-28", on("2027-06-28"));
    tries(&task, None, "2027-06-29", NextTry::Over);
    // The second try would come too late: a person must call while there is time.
    let once = track("2027-06-22", 1);
    tries(&task, Some(once), "2027-06-24", NextTry::AdviserList);
}

#[test]
fn late_is_after_the_last_day() {
    let task = feeding(None);
    assert!(!is_late(&task, day("2027-07-06")));
    assert!(is_late(&task, day("2027-07-07")));
}

#[test]
fn the_question_of_a_nudge_is_open_for_two_weeks() {
    assert!(!has_lapsed(day("2027-06-01"), day("2027-06-15")));
    assert!(has_lapsed(day("2027-06-01"), day("2027-06-16")));
    assert!(!has_lapsed(NaiveDate::MAX, NaiveDate::MAX));
}

/// The state of the work is asked again at the moment of sending.
#[test]
fn whether_this_nudge_may_go_now() {
    let nudge = (TaskKind::Feed, day("2027-06-22"));
    let rules = Rules::standard();
    let go = |open: &[Task], at: &str| may_go(&rules, nudge, open, time(at), &[]);
    let open = [feeding(None)];
    let noon = "2027-06-23 12:00";
    assert_eq!(go(&open, noon), Ok(()));
    assert_eq!(go(&[], noon), Err(Withheld::NotDue));
    let ended = [feeding(Some("2027-06-22"))];
    assert_eq!(go(&ended, noon), Err(Withheld::NotDue));
    let last_day = [feeding(Some("2027-06-23"))];
    assert_eq!(go(&last_day, noon), Ok(()));
    let mut other = [feeding(None)];
    other[0].due = day("2027-06-21");
    assert_eq!(go(&other, noon), Err(Withheld::NotDue));
    let early = "2027-06-21 12:00";
    assert_eq!(go(&open, early), Err(Withheld::NotDue));
    let night = "2027-06-23 19:00";
    assert_eq!(go(&open, night), Err(Withheld::Quiet));
}

fn any_time() -> impl Strategy<Value = NaiveDateTime> {
    (0_u64..300 * 365, 0_i64..24 * 60).prop_map(|(days, minutes)| {
        let start = day("1900-01-01").checked_add_days(Days::new(days)).unwrap();
        start.and_time(chrono::NaiveTime::MIN) + TimeDelta::minutes(minutes)
    })
}

proptest! {
    #[test]
    fn a_slot_is_never_early_nor_quiet_and_never_far(
        not_before in any_time(),
        quiet in many(0_u64..12, 0..8),
        market_day in proptest::option::of(0_u8..7),
    ) {
        let rules = Rules::standard();
        let quiet: Vec<NaiveDate> = quiet
            .iter()
            .filter_map(|days| not_before.date().checked_add_days(Days::new(*days)))
            .collect();
        let market_day = market_day.and_then(|number| Weekday::try_from(number).ok());
        let found = slot(&rules, not_before, &quiet, market_day);
        prop_assert!(found >= not_before);
        prop_assert!(may_send(&rules, found, &quiet));
        prop_assert!(rules.window_from <= found.time() && found.time() < rules.window_until);
        prop_assert!((found - not_before).num_days() <= 3 + quiet.len() as i64);
    }

    #[test]
    fn at_most_three_nudges_for_a_round(
        gaps in many(0_u64..40, 1..12),
    ) {
        let rules = Rules::standard();
        let task = feeding(None);
        let mut known: Option<NudgeTrack> = None;
        let mut today = task.due;
        let mut sent = vec![];
        for gap in gaps {
            today = today.checked_add_days(Days::new(gap)).unwrap();
            if next_try(&rules, &task, known.as_ref(), today) == NextTry::On(today) {
                sent.push(today);
                known = Some(NudgeTrack {
                    due: task.due,
                    tries: known.map_or(1, |track| track.tries + 1),
                    first_on: known.map_or(today, |track| track.first_on),
                    last_on: today,
                });
            }
        }
        prop_assert!(sent.len() <= 3);
        prop_assert_eq!(sent.first().copied(), known.map(|track| track.first_on));
        for (first, next) in sent.iter().zip(sent.iter().skip(1)) {
            // A late second try must not be followed at once by the third.
            prop_assert!((*next - *first).num_days() >= 7, "{sent:?}");
        }
    }
}

/// A part of the field round is told again in the next round, two times at most.
#[test]
fn a_round_is_told_again_in_the_next_round() {
    let weed = Task {
        kind: TaskKind::Weed,
        block: BlockId(1),
        due: day("2027-06-01"),
        late_after: day("2027-06-15"),
        ends: None,
        clock: Clock::Planting,
        figures: Figures::default(),
    };
    let track = |tries, last_on| NudgeTrack {
        due: weed.due,
        tries,
        first_on: day("2027-06-01"),
        last_on: day(last_on),
    };
    let rules = Rules::standard();
    let next = |tries, last_on| {
        let track = track(tries, last_on);
        next_try(&rules, &weed, Some(&track), track.last_on)
    };
    assert_eq!(next(1, "2027-06-01"), NextTry::On(day("2027-07-02")));
    assert_eq!(next(2, "2027-07-02"), NextTry::On(day("2027-08-02")));
    assert_eq!(next(3, "2027-08-02"), NextTry::AdviserList);
    let rested = |is_young| round_rested_on(&rules, day("2027-06-01"), is_young);
    assert_eq!(rested(true), day("2027-07-02"));
    assert_eq!(rested(false), day("2027-07-16"));
}

fn farmer(consent: Consent, hold: Option<Hold>) -> Person {
    Person {
        id: PersonId(1),
        name: "Tamo Oss".into(),
        role: Role::Farmer,
        language: "en".into(),
        group: None,
        consent,
        sharing: Consent::Unknown,
        erased: false,
        hold,
    }
}

/// Without consent nothing is told, whatever else is so; after STOP as before a yes.
#[test]
fn who_did_not_agree_is_told_nothing() {
    let (on, how) = (day("2027-01-01"), "text STOP".into());
    for consent in [Consent::Unknown, Consent::Withdrawn { on, how }] {
        let person = farmer(consent, None);
        assert_eq!(
            withheld(&person, day("2027-06-01")),
            Some(Withheld::NoConsent)
        );
    }
}

/// A hold is on from its first day to its last; without a last day until a person ends it. Consent is
/// asked first: who said STOP is not told that they are left in peace.
#[test]
fn who_is_left_in_peace_is_told_nothing() {
    let agreed = || Consent::Given {
        on: day("2027-01-01"),
        how: "signed sheet".into(),
    };
    let held = |until| {
        let (since, reason) = (day("2027-05-10"), Reason::Grief);
        Some(Hold {
            since,
            until,
            reason,
        })
    };
    let last = Some(day("2027-06-08"));
    for (hold, today, expected) in [
        (None, "2027-05-10", None),
        (held(last), "2027-05-09", None),
        (held(last), "2027-05-10", Some(Withheld::Held(last))),
        (held(last), "2027-06-08", Some(Withheld::Held(last))),
        (held(last), "2027-06-09", None),
        (held(None), "2031-01-01", Some(Withheld::Held(None))),
    ] {
        let person = farmer(agreed(), hold.clone());
        assert_eq!(withheld(&person, day(today)), expected, "{hold:?} {today}");
    }
    let both = farmer(Consent::Unknown, held(None));
    assert_eq!(
        withheld(&both, day("2027-05-10")),
        Some(Withheld::NoConsent)
    );
}
