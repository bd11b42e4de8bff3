//! Answers to a nudge: done, later.

use budwood_parser::{Details, Wetness};
use budwood_scheduler::{
    Block, BlockId, Body, Happened, TaskKind,
    decide::{Draft, Missing},
};
use chrono::{NaiveDate, TimeDelta};

use crate::{
    args,
    engine::{
        local_time::civil_day, outcome::Outcome, questions::round::blocks_in, said::Done,
        step::Step, turn::Turn,
    },
    wording::{Key, Value},
};

/// "Later" without a time means a week.
const LATER_DAYS: u16 = 7;
/// A job cannot be put off for longer than this.
const LATER_DAYS_MAX: u16 = 60;

/// What "done" says beside that a job is.
fn by_done(task: TaskKind) -> Details {
    Details {
        wetness: (task == TaskKind::RainWatch).then_some(Wetness::Soaked),
        ..Details::default()
    }
}

impl Step<'_> {
    /// The nudged job is done.
    pub(crate) fn nudge_done(&mut self, turn: &Turn) -> Done {
        let view = self.view();
        let Some((nudge, block)) = view.open_nudge(turn) else {
            return self.nothing_open(turn);
        };
        let today = civil_day(turn.sent_at, view.zone_of(block.owner));
        let told = view.parts_told(&nudge);
        if told.len() > 1 {
            let jobs = told
                .iter()
                .map(|part| (part.block.id, part.task.kind))
                .collect();
            let blocks = blocks_in(&told).into_iter().map(|(_, name)| name).collect();
            return self.all_done(turn, &block, nudge.task, today, (jobs, blocks));
        }
        let Some(kind) = nudge.task.proven_by() else {
            return self.task_done(turn, &block, nudge.task, today);
        };
        let draft = Draft {
            kind,
            block: Some(block.name.clone()),
            said: None,
            on: Happened::on(today),
            details: Details {
                ailment: view.looked_for(block.id, nudge.task),
                ..by_done(nudge.task)
            },
        };
        let turn = Turn {
            target: block.owner,
            ..turn.clone()
        };
        if kind.needs_values() {
            return self.ask_slot(&turn, vec![draft], Missing::Values);
        }
        if kind.is_counted() {
            return self.ask_slot(&turn, vec![draft], Missing::Count { range: None });
        }
        self.store_facts(&turn, &[draft])
    }

    /// Every job that the nudge was about is done: a field round, or one job on several blocks. "Done"
    /// after a round says that the looks found nothing.
    fn all_done(
        &mut self,
        turn: &Turn,
        lead: &Block,
        task: TaskKind,
        today: NaiveDate,
        (jobs, blocks): (Vec<(BlockId, TaskKind)>, Vec<String>),
    ) -> Done {
        let telling = self.view().telling(turn, lead.owner);
        let mut events = Vec::new();
        for (block, task) in &jobs {
            let proof = task.proven_by().filter(|kind| !kind.is_counted());
            let body = match proof {
                Some(kind) => Body::Reported {
                    block: *block,
                    kind,
                    on: Happened::on(today),
                    details: by_done(*task),
                },
                None => Body::TaskDone {
                    block: *block,
                    task: *task,
                    on: today,
                },
            };
            events.push(self.record(telling, None, body));
        }
        let now = self.now;
        let talk = self.talk(&turn.number);
        talk.last = events;
        talk.last_at = Some(now);
        self.close_nudge(&turn.number);
        let view = self.view();
        let Some(speaker) = view.person(turn.speaker) else {
            return Outcome::FromStranger.silently();
        };
        let is_round = jobs.iter().any(|(_, other)| *other != task);
        let key = if is_round { Key::RoundDone } else { Key::Done };
        let args =
            args! { "task" => task, "block" => Value::name(&blocks.join(", ")), "day" => today };
        let phrase = view.signed_with(speaker, key, args);
        Outcome::Recorded.saying([view.reply(turn, phrase)])
    }

    fn task_done(&mut self, turn: &Turn, block: &Block, task: TaskKind, today: NaiveDate) -> Done {
        let telling = self.view().telling(turn, block.owner);
        let body = Body::TaskDone {
            block: block.id,
            task,
            on: today,
        };
        let event = self.record(telling, None, body);
        let now = self.now;
        let talk = self.talk(&turn.number);
        talk.last = vec![event];
        talk.last_at = Some(now);
        self.close_nudge(&turn.number);
        let view = self.view();
        let Some(speaker) = view.person(turn.speaker) else {
            return Outcome::FromStranger.silently();
        };
        let args = args! { "task" => task, "block" => block.name.as_str(), "day" => today };
        let phrase = view.signed_with(speaker, Key::Done, args);
        Outcome::Recorded.saying([view.reply(turn, phrase)])
    }

    /// The nudged job is put off.
    pub(crate) fn nudge_later(&mut self, turn: &Turn, days: Option<u16>) -> Done {
        let view = self.view();
        let Some((nudge, block)) = view.open_nudge(turn) else {
            return self.nothing_open(turn);
        };
        let days = days.unwrap_or(LATER_DAYS).clamp(1, LATER_DAYS_MAX);
        let until = view.today_of(block.owner) + TimeDelta::days(i64::from(days));
        let telling = view.telling(turn, block.owner);
        let body = Body::Postponed {
            block: block.id,
            task: nudge.task,
            until,
        };
        self.record(telling, None, body);
        self.talk(&turn.number).nudge = None;
        let view = self.view();
        let Some(speaker) = view.person(turn.speaker) else {
            return Outcome::FromStranger.silently();
        };
        let args = args! {
            "task" => nudge.task,
            "block" => Value::name(&block.name),
            "day" => until,
        };
        let phrase = view.signed_with(speaker, Key::Later, args);
        Outcome::PutOff.saying([view.reply(turn, phrase)])
    }

    pub(crate) fn nothing_open(&self, turn: &Turn) -> Done {
        let said = self.view().reply(turn, Key::NothingOpen);
        Outcome::NothingWasAsked.saying([said])
    }
}
