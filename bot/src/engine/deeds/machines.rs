//! What machines text is not answered: names and short codes, our own texts that come back, and what
//! comes right after each of our texts and always says the same.
//!
//! Two machines with more to say end at the bounds of the budget, which shrink with each day on which
//! they are reached. Everything is kept as it came, and counted.

use chrono::{DateTime, TimeDelta, Utc};

use crate::{
    engine::{
        outcome::Outcome,
        said::{self, Done},
        step::Step,
    },
    words::{
        limits,
        message::{Machine, Talk},
    },
};

/// Whatever of ours comes back counts as one text.
const ANY_ECHO: u32 = 0;

impl Step<'_> {
    /// A text of a name or a short code.
    pub(super) fn heard_service(&mut self, outcome: Outcome) -> Done {
        self.world.held_back.services += 1;
        outcome.silently()
    }

    /// A text of ours that came back.
    pub(super) fn echo(&mut self) -> Done {
        self.world.held_back.echoes += 1;
        Outcome::Echo.silently()
    }

    /// Notes whether a machine may have sent a text. What comes back is nothing else; what is always
    /// the same is heard like any text, for somebody may be in danger, and only gets no answers.
    pub(super) fn watch_for_machines(&mut self, number: &str, text: &str) -> Option<Done> {
        let now = self.now;
        let talk = self.view().talk(number)?;
        let sum = said::sum_of(text);
        let is_echo = sum.is_some_and(|sum| talk.said.contains(&sum));
        let Some(sum) = sum.filter(|_| is_echo || is_at_once(talk, now)) else {
            if talk.machine.is_some() {
                self.talk(number).machine = None;
            }
            return None;
        };
        let text = if is_echo { ANY_ECHO } else { sum };
        let before = talk.machine.filter(|machine| machine.text == text);
        let times = before.map_or(0, |machine| machine.times).saturating_add(1);
        self.talk(number).machine = Some(Machine { text, times });
        if times >= limits::MACHINE_TIMES {
            self.warn_of_machine(number);
        }
        is_echo.then(|| self.echo())
    }
}

/// Whether we spoke to the phone just now.
fn is_at_once(talk: &Talk, now: DateTime<Utc>) -> bool {
    let answered = talk.answered_at.last();
    let noticed = talk.noticed_at.last();
    let said = [
        answered,
        noticed,
        talk.routine_at.as_ref(),
        talk.welcomed_at.as_ref(),
    ];
    let last = said.into_iter().flatten().max();
    last.is_some_and(|last| now - *last <= TimeDelta::seconds(limits::MACHINE_SECS))
}
