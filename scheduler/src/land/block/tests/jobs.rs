//! Jobs said to be done, put off, nudged for.

use std::vec::Vec;

use budwood_parser::{Details, Kind};

use super::{B, bodies, day, task, told};
use crate::{
    land::block::NudgeTrack,
    words::{event::Body, job::TaskKind},
};

fn later(task: TaskKind, until: &str) -> Body {
    Body::Postponed {
        block: B,
        task,
        until: day(until),
    }
}

fn nudged(task: TaskKind, on: &str, due: &str) -> Body {
    Body::Nudged {
        block: B,
        task,
        on: day(on),
        due: day(due),
    }
}

#[test]
fn a_job_said_to_be_done_keeps_its_last_day() {
    let state = bodies(&[
        ("2028-06-05", task(TaskKind::Mulch, "2028-06-05")),
        ("2028-06-09", task(TaskKind::Mulch, "2028-06-01")),
        ("2028-06-10", task(TaskKind::Firebreak, "2028-06-02")),
    ]);
    assert_eq!(state.done.len(), 2);
    assert_eq!(state.done[&TaskKind::Mulch], day("2028-06-05"));
    assert_eq!(state.done[&TaskKind::Firebreak], day("2028-06-02"));
    assert_eq!(state.heard_on, Some(day("2028-06-05")));
    assert_eq!(state.known_on, Some(day("2028-06-05")));
    assert_eq!(state.listed_on, None, "a farmer's word moves no days");
}

#[test]
fn a_job_put_off_and_then_done_is_put_off_no_more() {
    let off = [
        ("2028-06-01", later(TaskKind::Weed, "2028-06-20")),
        ("2028-06-02", later(TaskKind::Weed, "2028-06-15")),
        ("2028-06-03", later(TaskKind::Mulch, "2028-07-01")),
    ];
    let state = bodies(&off);
    assert_eq!(state.postponed[&TaskKind::Weed], day("2028-06-15"));
    assert_eq!(state.postponed[&TaskKind::Mulch], day("2028-07-01"));
    assert_eq!(
        state.heard_on,
        Some(day("2028-06-03")),
        "the day of the text"
    );
    let after = |body: Body| {
        let mut facts = off.to_vec();
        facts.push(("2028-06-04", body));
        let state = bodies(&facts);
        state.postponed.keys().copied().collect::<Vec<_>>()
    };
    let weeded = told(Kind::Weeded, "2028-06-04", Details::default());
    assert_eq!(after(weeded), [TaskKind::Mulch]);
    assert_eq!(after(task(TaskKind::Weed, "2028-06-04")), [TaskKind::Mulch]);
    assert_eq!(after(task(TaskKind::Mulch, "2028-06-04")), [TaskKind::Weed]);
    let pruned = told(Kind::Pruned, "2028-06-04", Details::default());
    assert_eq!(after(pruned), [TaskKind::Weed, TaskKind::Mulch]);
}

#[test]
fn nudges_are_counted_for_each_round() {
    let state = bodies(&[
        (
            "2028-06-01",
            nudged(TaskKind::Weed, "2028-06-01", "2028-06-01"),
        ),
        (
            "2028-06-08",
            nudged(TaskKind::Weed, "2028-06-08", "2028-06-01"),
        ),
        (
            "2028-06-08",
            nudged(TaskKind::Feed, "2028-06-08", "2028-06-07"),
        ),
        (
            "2028-06-02",
            nudged(TaskKind::Weed, "2028-06-02", "2028-06-01"),
        ),
    ]);
    let weed = NudgeTrack {
        due: day("2028-06-01"),
        tries: 3,
        first_on: day("2028-06-01"),
        last_on: day("2028-06-08"),
    };
    assert_eq!(state.nudges[&TaskKind::Weed], weed);
    assert_eq!(state.nudges[&TaskKind::Feed].tries, 1);
    assert_eq!(state.heard_on, None, "nobody was heard");
    let anew = bodies(&[
        (
            "2028-06-01",
            nudged(TaskKind::Weed, "2028-06-01", "2028-06-01"),
        ),
        (
            "2028-07-08",
            nudged(TaskKind::Weed, "2028-07-08", "2028-07-07"),
        ),
    ]);
    let weed = NudgeTrack {
        due: day("2028-07-07"),
        tries: 1,
        first_on: day("2028-07-08"),
        last_on: day("2028-07-08"),
    };
    assert_eq!(anew.nudges[&TaskKind::Weed], weed);
}
