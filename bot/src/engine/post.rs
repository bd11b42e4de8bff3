//! What is said becomes a text: worded in the reader's language, fitted to one SMS, put into the
//! outbox. The only place that does.

use chrono::TimeDelta;

use super::{said::Said, step::Step, view::View};
use crate::words::{
    limits,
    message::{Outbound, Purpose},
    sms,
};

/// Hours in a day.
const DAY_HOURS: i64 = 24;

impl View<'_> {
    /// What the reader will see.
    pub(crate) fn worded(self, said: &Said) -> String {
        let texts = &self.setup.texts;
        let language = said.to.language.as_deref();
        texts.tongue(language.as_slice()).word(&said.phrase)
    }
}

impl Step<'_> {
    /// Words what is said and sends it, unless two machines seem to be talking. Gives back what was
    /// said too often.
    pub(crate) fn post(&mut self, said: Said) -> Option<Said> {
        let text = self.view().worded(&said);
        let hours = match said.purpose {
            Purpose::Answer { .. } => match self.may_answer(&said.to.number, &text) {
                Guard::Free => limits::ANSWER_HOURS,
                Guard::SaidTwice => return Some(said),
                Guard::TooFast => return None,
            },
            Purpose::Notice { .. } => limits::NOTICE_HOURS,
            Purpose::Nudge { .. } | Purpose::Welcome { .. } => {
                i64::from(self.setup.rules.expires_after_days) * DAY_HOURS
            }
        };
        let outbound = Outbound::new(
            self.world.message_id(),
            self.now,
            &said.to.number,
            // Names and values bring along what no keyboard of a phone has.
            sms::plain(&text).into_owned(),
            said.purpose,
            self.now + TimeDelta::hours(hours),
        );
        self.put_outbound(outbound);
        None
    }

    /// Whether a phone was not answered too often lately; this answer counts from now on.
    fn may_answer(&mut self, number: &str, text: &str) -> Guard {
        // Whoever was erased gets a last word, and nothing is kept of it.
        if self.view().talk(number).is_none() {
            return Guard::Free;
        }
        let now = self.now;
        let talk = self.talk(number);
        let lately = now - TimeDelta::minutes(limits::SAME_ANSWER_MINUTES);
        talk.answered_at.retain(|at| *at > lately);
        let same = match &talk.last_answer {
            Some((last, times)) if *last == text && !talk.answered_at.is_empty() => *times,
            _ => 0,
        };
        let recently = now - TimeDelta::minutes(limits::LOOP_MINUTES);
        let fast = talk.answered_at.iter().filter(|at| **at > recently).count();
        if fast >= limits::LOOP_ANSWERS {
            return Guard::TooFast;
        }
        if same >= limits::SAME_ANSWER_TIMES {
            return Guard::SaidTwice;
        }
        talk.answered_at.push(now);
        talk.last_answer = Some((text.to_owned(), same + 1));
        Guard::Free
    }
}

/// Whether an answer may go.
enum Guard {
    Free,
    /// The same was answered twice within the hour.
    SaidTwice,
    /// Two machines seem to be talking.
    TooFast,
}
