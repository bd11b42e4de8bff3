//! Answers to a nudge: done, later.

use budwood_parser::{Ailment, Details, Wetness};
use budwood_scheduler::{
    Block, BlockId, Body, Happened, TaskKind,
    decide::{Draft, Missing},
    jobs::task::warning,
};
use chrono::{NaiveDate, TimeDelta};

use crate::{
    args,
    engine::{
        step::{Step, civil_day},
        turn::Turn,
    },
    wording::{Key, short},
};

/// "Later" without a time means a week.
const LATER_DAYS: u16 = 7;
/// A job cannot be put off for longer than this.
const LATER_DAYS_MAX: u16 = 60;

impl Step<'_> {
    /// The nudged job is done.
    pub(crate) fn nudge_done(&mut self, turn: &Turn) -> &'static str {
        let Some(nudge) = self
            .world
            .talks
            .get(&turn.number)
            .and_then(|talk| talk.nudge)
        else {
            return self.nothing_open(turn);
        };
        let Some(block) = self.world.directory.block(nudge.block).cloned() else {
            return self.nothing_open(turn);
        };
        let today = civil_day(turn.sent_at, self.zone_of(block.owner));
        let Some(kind) = nudge.task.proven_by() else {
            return self.task_done(turn, &block, nudge.task, today);
        };
        let draft = Draft {
            kind,
            block: Some(block.name.clone()),
            said: None,
            on: Happened::on(today),
            details: Details {
                ailment: self.looked_for(block.id, nudge.task),
                wetness: (nudge.task == TaskKind::RainWatch).then_some(Wetness::Soaked),
                ..Details::default()
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
        self.store_facts(&turn, vec![draft])
    }

    /// For which sickness this job looks: what was seen nearby, or the white root, as only a look
    /// at the roots closes the check of roots.
    pub(crate) fn looked_for(&self, block: BlockId, task: TaskKind) -> Option<Ailment> {
        let state = self.world.states.get(&block);
        let near = state.and_then(|state| warning(state, task));
        let usual = (task == TaskKind::RootCheck).then_some(Ailment::WhiteRoot);
        near.map(|(ailment, _)| ailment).or(usual)
    }

    fn task_done(
        &mut self,
        turn: &Turn,
        block: &Block,
        task: TaskKind,
        today: NaiveDate,
    ) -> &'static str {
        let telling = self.telling(turn, block.owner);
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
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return "from a stranger";
        };
        let tongue = self.tongue(speaker);
        let text = tongue.fit(|length| {
            tongue.say(
                Key::Done,
                args! {
                    "name" => short(speaker.called(), length),
                    "task" => tongue.job(task),
                    "block" => block.name.as_str(),
                    "day" => tongue.day(today),
                },
            )
        });
        self.answer(&turn.number, turn.message, text);
        "recorded"
    }

    /// The nudged job is put off.
    pub(crate) fn nudge_later(&mut self, turn: &Turn, days: Option<u16>) -> &'static str {
        let nudge = self
            .world
            .talks
            .get(&turn.number)
            .and_then(|talk| talk.nudge);
        let block = nudge.and_then(|nudge| self.world.directory.block(nudge.block).cloned());
        let (Some(nudge), Some(block)) = (nudge, block) else {
            return self.nothing_open(turn);
        };
        let days = days.unwrap_or(LATER_DAYS).clamp(1, LATER_DAYS_MAX);
        let until = self.today_of(block.owner) + TimeDelta::days(i64::from(days));
        let telling = self.telling(turn, block.owner);
        let body = Body::Postponed {
            block: block.id,
            task: nudge.task,
            until,
        };
        self.record(telling, None, body);
        self.talk(&turn.number).nudge = None;
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return "from a stranger";
        };
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        let text = tongue.fit(|length| {
            let cut = |name: &str| short(name, length);
            tongue.say(
                Key::Later,
                args! {
                    "name" => cut(speaker.called()),
                    "task" => tongue.job(nudge.task),
                    "block" => cut(&block.name),
                    "day" => tongue.day(until),
                    "adviser" => cut(&adviser),
                },
            )
        });
        self.answer(&turn.number, turn.message, text);
        "put off"
    }

    fn nothing_open(&mut self, turn: &Turn) -> &'static str {
        let text = self
            .tongue_of(turn.speaker)
            .whole(Key::NothingOpen, args! {});
        self.answer(&turn.number, turn.message, text);
        "nothing was asked"
    }
}
