//! What may be put into the outbox: nudges in their window and with patience, answers that do not
//! keep two machines talking, and no second effect of what was said twice.

use std::collections::BTreeMap;

use budwood::{
    engine::Engine,
    store::Change,
    words::message::{Outbound, Received},
};
use budwood_scheduler::{Body, Event, jobs::nudge};
use chrono::{DateTime, TimeDelta, Utc};

use super::{Laws, Moment, local};
use crate::simulation::people::ADVISERS;

/// At most so many answers to a farmer's phone in an hour, and one that says so.
const ANSWERS_MAX: usize = 11;
/// The same of an adviser.
const ADVISERS_ANSWERS_MAX: usize = 61;
/// The same answer to a farmer's phone at most so often in a row within an hour of the last.
const SAME_MAX: u32 = 2;
/// The same report again within this time is no second report.
const SAME_TEXT_HOURS: i64 = 24;
/// Days after the first nudge of a round before which the second and the third must not go.
const AGAIN_AFTER_DAYS: [i64; 2] = [7, 21];

/// What was said to each phone and by each phone lately.
#[derive(Clone, Default)]
pub(super) struct Said {
    answers: BTreeMap<String, Answers>,
    /// The last text of each phone, and whether it became a report.
    last: BTreeMap<String, (Received, bool)>,
}

#[derive(Clone, Default)]
struct Answers {
    at: Vec<DateTime<Utc>>,
    last: String,
    same: u32,
}

/// How the texts begin that whoever owns the phone must see.
const OF_SAFETY: [&str; 8] = [
    "That code is not right.",
    "Three wrong codes.",
    "Done. Your name, number and texts are out.",
    "Done. No more reminders to this number.",
    "Get everybody away from fire",
    "Keep still and get to a clinic",
    "Go to a safe place first",
    "If it is bad, go to a clinic now.",
];

/// Whether a text asks for a code or is one of those.
fn is_of_safety(text: &str) -> bool {
    let code = text.split("eply YES ").nth(1);
    let asks = code.is_some_and(|code| code.starts_with(|digit: char| digit.is_ascii_digit()));
    asks || OF_SAFETY.iter().any(|begin| text.starts_with(begin))
}

impl Said {
    /// An answer was put into the outbox.
    pub(super) fn answer(&mut self, new: &Outbound) {
        // Whoever owns the phone sees what concerns its safety, however often they were answered.
        if is_of_safety(&new.text) {
            return;
        }
        let said = self.answers.entry(new.to.clone()).or_default();
        let an_hour_ago = new.at - TimeDelta::hours(1);
        said.at.retain(|at| *at > an_hour_ago);
        let again = said.last == new.text && !said.at.is_empty();
        said.same = if again { said.same + 1 } else { 1 };
        said.last.clone_from(&new.text);
        said.at.push(new.at);
        let recent = said.at.len();
        // Advisers have nobody above, and ask again to see what is new.
        if ADVISERS.iter().any(|(_, number)| new.to == *number) {
            assert!(
                recent <= ADVISERS_ANSWERS_MAX,
                "{recent} answers in an hour"
            );
            return;
        }
        assert!(recent <= ANSWERS_MAX, "{recent} answers in an hour");
        let (same, text) = (said.same, &new.text);
        assert!(same <= SAME_MAX, "{text:?} {same} times in a row");
    }

    /// A text came in: the same report twice in a row has the effect of once.
    pub(super) fn text(&mut self, received: &Received, reported: bool) {
        if let Some((before, was_reported)) = self.last.get_mut(&received.from) {
            let soon = received.at - before.at < TimeDelta::hours(SAME_TEXT_HOURS);
            let same = before
                .text
                .trim()
                .eq_ignore_ascii_case(received.text.trim());
            if soon && same {
                let twice = *was_reported && reported;
                assert!(!twice, "{:?} twice, and recorded twice", received.text);
                *was_reported |= reported;
                return;
            }
        }
        self.last
            .insert(received.from.clone(), (received.clone(), reported));
    }
}

impl Laws {
    /// What the texts of a change became.
    pub(super) fn answers(&mut self, change: &Change, engine: &Engine, moment: Moment) {
        for received in &change.received {
            if self.gone.is_wiped(received) {
                continue;
            }
            // A correction said twice puts the same in place of the same.
            let reported = change.events.iter().any(|event| {
                event.message == Some(received.id)
                    && event.supersedes.is_none()
                    && matches!(event.body, Body::Reported { .. })
            });
            // An answer to a question, such as "1" or a block's name, may well come twice.
            let asked = !received.text.trim().contains(' ');
            self.said.text(received, reported && !asked);
            if received.text.starts_with("LATE ") {
                self.late_list(received, change, engine, moment);
            }
        }
    }

    /// A nudge is put into the outbox.
    pub(super) fn nudge_made(&mut self, event: &Event, engine: &Engine, moment: Moment) {
        let Body::Nudged {
            block,
            task,
            on,
            due,
        } = event.body
        else {
            return;
        };
        assert!(!moment.held, "a nudge is made while sending is held");
        assert!(!moment.wrong, "a nudge is made by a clock that is wrong");
        let directory = engine.directory();
        let record = directory.block(block).expect("a block");
        let group = directory.group_of_block(record).expect("a group");
        let local = local(group, event.at);
        let rules = nudge::Rules::standard();
        let in_window = rules.window_from <= local.time() && local.time() < rules.window_until;
        assert!(in_window, "a nudge outside its window: {local}");
        assert_eq!(on, local.date(), "a nudge of another day");
        let put_off = self.facts.put_off(block, task);
        let ends = engine
            .tasks(block, on)
            .into_iter()
            .find(|open| open.kind == task)
            .and_then(|open| open.ends);
        assert!(
            put_off.is_none_or(|until| on >= until || ends.is_some_and(|ends| ends < until)),
            "a nudge to {} on {on}, put off until {put_off:?}",
            task.name()
        );
        let tries = self.facts.tries(block, task, due);
        let [first, again @ ..] = tries.as_slice() else {
            return;
        };
        for (try_on, wait) in again.iter().zip(AGAIN_AFTER_DAYS) {
            let days = (*try_on - *first).num_days();
            assert!(days >= wait, "{} again after {days} days", task.name());
        }
        assert!(
            again.len() <= AGAIN_AFTER_DAYS.len(),
            "a fourth nudge for {}",
            task.name()
        );
        for number in directory.numbers_of(record.owner) {
            self.owed.nudged(number, on);
        }
    }
}
