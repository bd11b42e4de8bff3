//! The time has come: which nudge goes to which phone.
//!
//! One job, one text, on all blocks where it is due; the looks and rounds of a month are one field
//! round. When several jobs of one phone are due, the most urgent wins, and the phone's rest moves
//! the others. Where very many are due at once, a step takes some of them
//! and the next wake the others, so that nobody who texts meanwhile waits for all of them.

use std::collections::BTreeMap;

use budwood_scheduler::{Body, PersonId, jobs::nudge::TextedWeeks};
use chrono::TimeDelta;

use crate::{
    engine::{questions::tasks::Ready, said::Said, step::Step, turn::Telling},
    words::{limits, message::OpenNudge},
};

impl Step<'_> {
    /// Nudges for what is due now.
    pub(crate) fn wake(&mut self) -> Vec<Said> {
        let mut said = Vec::new();
        if self.world.held_since.is_some() || self.world.nudges_wait {
            return said;
        }
        said.extend(self.tell_of_age());
        let morning = self.morning_line();
        // The morning tells of it too.
        let silence = self.silence_told();
        said.extend(morning.or(silence));
        let mut by_phone: BTreeMap<String, Vec<Ready>> = BTreeMap::new();
        for block in self.view().due_now() {
            if let Some((number, owner)) = self.view().to_welcome(block) {
                said.extend(self.welcome(&number, owner));
            }
            match self.view().ready(block) {
                Some((number, ready)) => by_phone.entry(number).or_default().push(ready),
                None => self.plan(block),
            }
        }
        for (number, mut ready) in by_phone {
            let rules = &self.setup.rules;
            ready.sort_by_key(|ready| (ready.candidate.rank(rules), ready.block));
            if let Some(first) = ready.first() {
                said.extend(self.nudge(&number, first));
            }
            for ready in &ready {
                self.plan(ready.block);
            }
        }
        said
    }

    pub(super) fn welcome(&mut self, number: &str, owner: PersonId) -> Option<Said> {
        let said = self.view().welcome(number, owner)?;
        let now = self.now;
        self.talk(number).welcomed_at = Some(now);
        self.world.keep_welcome(now);
        Some(said)
    }

    fn nudge(&mut self, number: &str, ready: &Ready) -> Option<Said> {
        let (said, parts) = self.view().nudge(number, ready)?;
        let task = &ready.candidate.task;
        let told: Vec<Body> = parts
            .iter()
            .map(|part| Body::Nudged {
                block: part.block.id,
                task: part.task.kind,
                on: ready.today,
                due: part.task.due,
            })
            .collect();
        for body in told {
            self.record(Telling::BOT, None, body);
        }
        let now = self.now;
        let talk = self.talk(number);
        talk.routine_at = Some(now);
        talk.texted = Some(TextedWeeks::with(talk.texted, ready.today));
        talk.nudge = Some(OpenNudge {
            at: now,
            block: ready.block,
            task: task.kind,
            due: task.due,
        });
        let lapsed = now - TimeDelta::hours(limits::QUESTION_HOURS);
        if talk.open.as_ref().is_some_and(|open| open.at < lapsed) {
            talk.open = None;
        }
        Some(said)
    }
}
