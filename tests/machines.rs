//! Machines at the other end: what always answers, what sends back our own texts, and a second
//! service like this one. None of them is answered without end, and the operator hears of it once.

use budwood::engine::Operator;
use chrono::{NaiveTime, TimeDelta};

use crate::fixture::desk::{Desk, HANA, JARO};

/// Who runs the service; nobody on the list.
const OPERATOR: &str = "+447700900990";

const NOON: &str = "2026-12-20T05:00:00Z";

/// With somebody to tell, and no morning line in these hours.
fn desk() -> Desk {
    Desk::open_with(NOON, |setup| {
        setup.operator = Some(Operator {
            number: OPERATOR.to_owned(),
            language: None,
            at: NaiveTime::from_hms_opt(7, 0, 0).unwrap(),
            zone: chrono_tz::Asia::Jakarta,
        });
    })
}

/// Sends what waits: what Jaro's phone gets, and how often the operator was told of it.
fn send(desk: &mut Desk, warned: &mut usize) -> Vec<String> {
    let mut got = Vec::new();
    for text in desk.send_all() {
        if text.to == JARO {
            got.push(text.text);
        } else if text.to == OPERATOR && text.text.contains("0006") {
            assert!(text.text.contains("like a machine"), "{}", text.text);
            *warned += 1;
        }
    }
    got
}

/// Begins with a text from Jaro's phone, which then answers each of ours by `answer`; gives how many
/// texts the phone got and how often the operator was told.
fn talk(desk: &mut Desk, first: &str, answer: impl Fn(&str, usize) -> String) -> (usize, usize) {
    let (mut got, mut warned) = (0, 0);
    desk.text(JARO, first);
    for turn in 0..500 {
        let texts = send(desk, &mut warned);
        if texts.is_empty() {
            return (got, warned);
        }
        got += texts.len();
        for text in texts {
            desk.wait(TimeDelta::seconds(12));
            desk.text(JARO, &answer(&text, turn));
        }
    }
    panic!("it goes on without end");
}

/// What phones answer by themselves while somebody drives, and what is answered each time.
const DRIVING: &str = "I am driving and read this when I am back";
const ASKING: &str = "what now, what must I do on my land";

#[test]
fn what_always_answers_the_same_is_answered_twice_at_most() {
    let mut desk = desk();
    let (got, _) = talk(&mut desk, "help", |_, _| DRIVING.to_owned());
    assert!(got <= 3, "{got} texts");
    desk.wait(TimeDelta::hours(2));
    let (got, warned) = talk(&mut desk, "status", |_, _| ASKING.to_owned());
    assert!(got <= 3 && warned == 1, "{got} texts, {warned} times told");
    assert!(desk.engine.held_back().machines > 0);
    // A danger is heard whatever came before, and what somebody types is answered again at once.
    for _ in 0..5 {
        desk.wait(TimeDelta::seconds(5));
        desk.text(JARO, "there is a fire in the farm now");
        let help = send(&mut desk, &mut 0);
        assert_eq!(help.len(), 1, "{help:?}");
    }
    desk.wait(TimeDelta::minutes(1));
    assert_eq!(desk.text(JARO, "planted 50 A"), "recorded");
}

#[test]
fn our_own_texts_that_come_back_are_no_reports_and_get_no_answer() {
    let mut desk = desk();
    desk.text(JARO, "planted 50 A");
    let mut warned = 0;
    let read_back = send(&mut desk, &mut warned).remove(0);
    let reports = desk.reports().len();
    for _ in 0..5 {
        desk.wait(TimeDelta::hours(3));
        assert_eq!(desk.text(JARO, &read_back.to_uppercase()), "echo");
        assert!(send(&mut desk, &mut warned).is_empty());
    }
    assert_eq!(desk.reports().len(), reports);
    assert_eq!(desk.engine.held_back().echoes, 5);
    assert_eq!(warned, 1);
    // The same on the next start: what was said is known, and the operator is not told again.
    let mut desk = desk.restart(true);
    assert_eq!(desk.text(JARO, &read_back), "echo");
    assert!(send(&mut desk, &mut warned).is_empty());
    assert_eq!(warned, 1);
}

/// Rows of a sheet, sent one after the other as soon as there is a network, are no machine's.
#[test]
fn a_row_of_reports_that_differ_in_their_numbers_is_heard() {
    let mut desk = desk();
    for count in 1..=6 {
        desk.wait(TimeDelta::seconds(5));
        let outcome = desk.text(JARO, &format!("there were {count} more trees planted in A"));
        assert_ne!(outcome, "echo", "{count}");
        send(&mut desk, &mut 0);
    }
    assert_eq!(desk.engine.held_back().machines, 0);
}

const QUESTIONS: [&str; 3] = [
    "what must I do now",
    "how many trees are alive",
    "how is my block",
];

/// A machine that always has something else to say, and begins anew each day.
#[test]
fn a_machine_with_more_to_say_gets_less_each_day_and_the_operator_is_told_once() {
    let mut desk = desk();
    let mut days = Vec::new();
    let mut told = 0;
    for day in 0..10 {
        let mut got = 0;
        for hour in 0..8 {
            let (of_hour, warned) = talk(&mut desk, "status", |_, turn| {
                format!("{} {day} {hour} {turn}", QUESTIONS[turn % 3])
            });
            got += of_hour;
            told += warned;
            desk.wait(TimeDelta::hours(1));
        }
        days.push(got);
        desk.wait(TimeDelta::hours(16));
    }
    assert!(days[0] > 20, "{days:?}");
    assert!(days.windows(2).all(|two| two[1] <= two[0]), "{days:?}");
    assert!(days[9] <= 10, "{days:?}");
    assert_eq!(told, 1);
    // Left in peace for as long, the phone has what every phone has.
    desk.wait(TimeDelta::days(10));
    let (got, _) = talk(&mut desk, "status", |_, turn| {
        format!("{} {turn}", QUESTIONS[turn % 3])
    });
    assert!(got >= 10, "{got}");
}

/// What one service sends to a phone comes to the other from a phone; gives how much that was.
fn carry(from: &mut Desk, to: &mut Desk, phones: (&str, &str)) -> usize {
    let mut carried = 0;
    for text in from.send_all() {
        if text.to == phones.0 {
            to.text(phones.1, &text.text);
            carried += 1;
        }
    }
    from.wait(TimeDelta::seconds(12));
    to.wait(TimeDelta::seconds(12));
    carried
}

/// Two services, each of which has the other on its list as a farmer.
#[test]
fn two_services_that_have_each_other_on_the_list_fall_silent() {
    let (mut ours, mut theirs) = (desk(), desk());
    let mut days = Vec::new();
    for _ in 0..8 {
        ours.text(JARO, "what must I do now");
        let (mut carried, mut turns) = (0, 0);
        loop {
            let there = carry(&mut ours, &mut theirs, (JARO, HANA));
            let back = carry(&mut theirs, &mut ours, (HANA, JARO));
            if there + back == 0 {
                break;
            }
            carried += there + back;
            turns += 1;
            assert!(turns < 200, "it goes on without end");
        }
        days.push(carried);
        ours.wait(TimeDelta::days(1));
        theirs.wait(TimeDelta::days(1));
    }
    assert!(
        days[0] > 0 && days.iter().all(|carried| *carried <= 22),
        "{days:?}"
    );
    assert!(ours.reports().is_empty() && theirs.reports().is_empty());
}
