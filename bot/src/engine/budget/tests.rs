//! How many answers, notices and parts go, hour by hour and day by day.

use budwood_parser::Kind;
use budwood_scheduler::{BlockId, MessageId, TaskKind};

use super::*;

fn at(text: &str) -> DateTime<Utc> {
    text.parse().unwrap()
}

fn noon() -> DateTime<Utc> {
    at("2026-12-20T12:00:00Z")
}

const ANSWER: Purpose = Purpose::Answer { to: MessageId(1) };
const NOTICE: Purpose = Purpose::Notice {
    about: MessageId(1),
};

#[test]
fn an_adviser_is_answered_sixty_times_an_hour_and_a_farmer_ten() {
    for (role, expected) in [
        (Role::Adviser, 60),
        (Role::Clerk, 30),
        (Role::Leader, 20),
        (Role::Farmer, 10),
        (Role::Nursery, 10),
        (Role::Viewer, 10),
    ] {
        let mut talk = Talk::default();
        let mut verdicts = Vec::new();
        for second in 0..=expected + 1 {
            let now = noon() + TimeDelta::seconds(second);
            verdicts.push(may_answer(&mut talk, answers(role), now));
        }
        let last = verdicts.split_off(usize::try_from(expected).unwrap());
        assert!(verdicts.iter().all(|verdict| *verdict == Verdict::Go));
        assert_eq!(last, [Verdict::SayOnce, Verdict::Hold], "{role:?}");
        // An hour after the first there is one again, and an hour after it was said, so is that.
        let hour_later = noon() + TimeDelta::hours(1);
        assert_eq!(
            may_answer(&mut talk, answers(role), hour_later),
            Verdict::Go
        );
        assert_eq!(
            may_answer(&mut talk, answers(role), hour_later),
            Verdict::Hold
        );
    }
}

#[test]
fn a_day_has_its_bound_too_and_the_next_begins_anew() {
    let mut talk = Talk::default();
    let allowance = Allowance {
        an_hour: 1,
        a_day: 3,
    };
    let mut at_hour = |hour: i64| {
        let now = at("2026-12-20T00:00:00Z") + TimeDelta::hours(hour);
        may_answer(&mut talk, allowance, now)
    };
    assert_eq!([0, 1, 2].map(&mut at_hour), [Verdict::Go; 3]);
    assert_eq!(at_hour(3), Verdict::SayOnce);
    assert_eq!(at_hour(4), Verdict::SayOnce, "once an hour");
    assert_eq!(at_hour(24), Verdict::Go);
    assert_eq!(
        talk.answered_on,
        Some((at("2026-12-21T00:00:00Z").date_naive(), 1))
    );
}

/// Whoever owns the phone sees a code and STOP even where somebody else has used up its answers: 20
/// more an hour and 60 more a day, and those end too.
#[test]
fn what_must_be_seen_goes_beyond_the_bound_but_not_without_end() {
    let goes = |talk: &mut Talk, allowance: Allowance| {
        let verdicts = (0..200).map(|_| may_answer(talk, allowance, noon()));
        verdicts.filter(|verdict| *verdict == Verdict::Go).count()
    };
    let farmer = answers(Role::Farmer);
    let mut talk = Talk::default();
    assert_eq!(goes(&mut talk, farmer), 10);
    assert_eq!(goes(&mut talk, farmer.with_urgent()), 20);
    let of_a_day = Allowance {
        an_hour: 1_000,
        ..farmer
    };
    let mut talk = Talk::default();
    assert_eq!(goes(&mut talk, of_a_day), 40);
    assert_eq!(goes(&mut talk, of_a_day.with_urgent()), 60);
}

#[test]
fn nobody_waits_for_a_reminder_and_for_nothing_else() {
    for class in [Class::Nudge, Class::Round] {
        assert!(class.is_reminder(), "{class:?}");
    }
    for class in [
        Class::Security,
        Class::Alarm,
        Class::Notice,
        Class::Answer,
        Class::Stranger,
        Class::Service,
    ] {
        assert!(!class.is_reminder(), "{class:?}");
    }
}

#[test]
fn the_fifth_notice_of_an_hour_waits_until_the_hour_ends() {
    let mut talk = Talk::default();
    let mut at_minute = |minute: i64| {
        may_notify(
            &mut talk,
            Class::Notice,
            noon() + TimeDelta::minutes(minute),
        )
    };
    assert_eq!([0, 10, 20, 30].map(&mut at_minute), [Ok(()); 4]);
    assert_eq!(at_minute(40), Err(noon() + TimeDelta::hours(1)));
    assert_eq!(at_minute(59), Err(noon() + TimeDelta::hours(1)));
    assert_eq!(at_minute(60), Ok(()));
    let next = noon() + TimeDelta::minutes(70);
    assert_eq!(at_minute(61), Err(next));
}

#[test]
fn alarms_have_more_room_than_notices() {
    let mut talk = Talk::default();
    for _ in 0..20 {
        assert_eq!(may_notify(&mut talk, Class::Alarm, noon()), Ok(()));
    }
    let hour_ends = noon() + TimeDelta::hours(1);
    assert_eq!(may_notify(&mut talk, Class::Alarm, noon()), Err(hour_ends));
}

#[test]
fn what_a_text_is() {
    let nudge = Purpose::Nudge {
        block: BlockId(1),
        task: TaskKind::Weed,
        due: noon().date_naive(),
    };
    let decisive = Purpose::Nudge {
        block: BlockId(1),
        task: TaskKind::OrderPlants,
        due: noon().date_naive(),
    };
    let service = Purpose::Service {
        on: noon().date_naive(),
    };
    for (key, purpose, is_known, expected) in [
        (Key::VisitAsk, &ANSWER, true, Class::Security),
        (Key::OfficeCode, &ANSWER, true, Class::Security),
        (Key::CodeWrong, &ANSWER, true, Class::Security),
        (Key::CodeLocked, &ANSWER, true, Class::Security),
        (Key::StopAsk, &ANSWER, true, Class::Security),
        (Key::Stopped, &ANSWER, true, Class::Security),
        (Key::WindowOpened, &ANSWER, true, Class::Security),
        // Whoever was erased is not on the list any more.
        (Key::Erased, &ANSWER, false, Class::Security),
        (Key::Who, &ANSWER, true, Class::Answer),
        (Key::Stranger, &ANSWER, false, Class::Stranger),
        (Key::SickNotice, &NOTICE, true, Class::Notice),
        (Key::AlarmNotice, &NOTICE, true, Class::Alarm),
        (Key::Bare(Kind::Dead), &nudge, true, Class::Round),
        (Key::Bare(Kind::Dead), &decisive, true, Class::Nudge),
        (Key::OperatorWell, &service, false, Class::Service),
    ] {
        assert_eq!(Class::of(key, purpose, is_known), expected, "{key:?}");
    }
}

/// Of 100 parts a day: strangers until 50 are gone, reminders until 80, answers until 100.
#[test]
fn strangers_are_first_to_go_without_and_safety_never_does() {
    const EVERY: [Class; 6] = [
        Class::Security,
        Class::Alarm,
        Class::Notice,
        Class::Answer,
        Class::Nudge,
        Class::Stranger,
    ];
    let left_at = |parts: u32, now: DateTime<Utc>| {
        let mut spent = Spent::default();
        spent.add(parts, noon());
        EVERY.map(|class| spent.has_left(class, Some(100), now))
    };
    assert_eq!(left_at(49, noon()), [true; 6]);
    assert_eq!(left_at(50, noon()), [true, true, true, true, true, false]);
    assert_eq!(left_at(79, noon()), [true, true, true, true, true, false]);
    assert_eq!(left_at(80, noon()), [true, true, true, true, false, false]);
    assert_eq!(left_at(99, noon()), [true, true, true, true, false, false]);
    assert_eq!(
        left_at(100, noon()),
        [true, true, true, false, false, false]
    );
    assert_eq!(left_at(100, noon() + TimeDelta::hours(12)), [true; 6]);
    let mut spent = Spent::default();
    spent.add(u32::MAX, noon());
    assert!(spent.has_left(Class::Stranger, None, noon()));
}

#[test]
fn what_left_yesterday_does_not_count_today() {
    let mut spent = Spent::default();
    spent.add(60, noon());
    spent.add(30, noon());
    assert!(!spent.has_left(Class::Nudge, Some(100), noon()));
    let tomorrow = noon() + TimeDelta::days(1);
    spent.add(49, tomorrow);
    assert!(spent.has_left(Class::Stranger, Some(100), tomorrow));
}

#[test]
fn a_stranger_is_answered_once_a_day_and_only_so_many_are() {
    let mut strangers = Strangers::default();
    assert!(strangers.may_answer("+447700900001", noon()));
    assert!(!strangers.may_answer("+447700900001", noon()));
    for number in 1..limits::STRANGERS_ANSWERED_A_DAY {
        assert!(strangers.may_answer(&format!("{number}"), noon()));
    }
    assert!(!strangers.may_answer("one more", noon()));
    assert_eq!(strangers.answered.len(), limits::STRANGERS_ANSWERED_A_DAY);
    let tomorrow = noon() + TimeDelta::days(1);
    assert!(strangers.may_answer("+447700900001", tomorrow));
    assert_eq!(strangers.answered.len(), 1);
}

#[test]
fn a_stranger_who_was_heard_before_a_start_is_not_answered_again_that_day() {
    let mut strangers = Strangers::default();
    let day_before = noon() - TimeDelta::days(1);
    strangers.recall("+447700900001", noon());
    strangers.recall("+447700900002", day_before);
    assert!(!strangers.may_answer("+447700900001", noon()));
    assert!(strangers.may_answer("+447700900002", noon()));
    for number in 0..=limits::STRANGERS_ANSWERED_A_DAY {
        strangers.recall(&format!("{number}"), noon());
    }
    assert_eq!(strangers.answered.len(), limits::STRANGERS_ANSWERED_A_DAY);
}

/// After a start texts come by their ids: one that left yesterday does not give today's money back.
#[test]
fn yesterday_gives_nothing_back() {
    let mut spent = Spent::default();
    spent.add(100, noon());
    spent.add(1, noon() - TimeDelta::days(1));
    assert!(!spent.has_left(Class::Answer, Some(100), noon()));
}

/// Of a month's money strangers have until 80 % are gone, looks and rounds until 90, other reminders
/// until 95, answers until all is; codes, danger and notices have no end.
#[test]
fn who_stops_first_in_a_month() {
    const ORDER: [Class; 8] = [
        Class::Stranger,
        Class::Round,
        Class::Nudge,
        Class::Answer,
        Class::Notice,
        Class::Alarm,
        Class::Security,
        Class::Service,
    ];
    let stopped = |gone: Option<u32>| {
        ORDER
            .iter()
            .take_while(|one| !one.is_in_month(gone))
            .count()
    };
    for (gone, expected) in [
        (None, 0),
        (Some(79), 0),
        (Some(80), 1),
        (Some(89), 1),
        (Some(90), 2),
        (Some(94), 2),
        (Some(95), 3),
        (Some(99), 3),
        (Some(100), 4),
        (Some(u32::MAX), 4),
    ] {
        assert_eq!(stopped(gone), expected, "{gone:?}");
        let goes_on = ORDER.iter().skip(expected);
        assert!(goes_on.into_iter().all(|one| one.is_in_month(gone)));
    }
}
