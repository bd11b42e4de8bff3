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
    pub(super) fn from_service(&mut self, outcome: Outcome) -> Done {
        self.world.held_back.services += 1;
        outcome.silently()
    }

    /// A text of ours that came back.
    pub(super) fn echo(&mut self) -> Done {
        self.world.held_back.echoes += 1;
        Outcome::Echo.silently()
    }

    /// Of a text that a machine sends nothing is read or said.
    pub(super) fn from_machine(&mut self, number: &str, text: &str) -> Option<Done> {
        let sum = said::sum_of(text)?;
        let now = self.now;
        let talk = self.view().talk(number)?;
        let is_echo = talk.said.contains(&sum);
        if !is_echo && !is_at_once(talk, now) {
            if talk.machine.is_some() {
                self.talk(number).machine = None;
            }
            return None;
        }
        let text = if is_echo { ANY_ECHO } else { sum };
        let before = talk.machine.filter(|machine| machine.text == text);
        let times = before.map_or(0, |machine| machine.times).saturating_add(1);
        self.talk(number).machine = Some(Machine { text, times });
        if times >= limits::MACHINE_TIMES {
            self.warn_of_machine(number);
        }
        if is_echo {
            return Some(self.echo());
        }
        if times < limits::MACHINE_TIMES {
            return None;
        }
        self.world.held_back.machines += 1;
        Some(Outcome::FromMachine.silently())
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
