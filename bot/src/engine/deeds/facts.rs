//! Reports become facts, and their consequence is read back.

use budwood_parser::Kind;
use budwood_scheduler::{BlockId, Body, EventId, decide::Draft};

use crate::{
    engine::{
        outcome::Outcome,
        said::{Done, Said},
        step::Step,
        turn::{Telling, Turn},
    },
    words::{limits, message::OpenNudge},
};

impl Step<'_> {
    /// Stores facts and reads their consequence back.
    pub(crate) fn store_facts(&mut self, turn: &Turn, facts: &[Draft]) -> Done {
        let telling = self.view().telling(turn, turn.target);
        self.store_told(turn, telling, facts)
    }

    /// The same, told so.
    pub(crate) fn store_told(&mut self, turn: &Turn, telling: Telling, facts: &[Draft]) -> Done {
        let tells_of_rain = facts.iter().any(|fact| fact.kind == Kind::Rain);
        let rains = tells_of_rain.then(|| self.view().rain_turns(turn));
        let mut stored: Vec<EventId> = Vec::new();
        let mut touched: Vec<(BlockId, Vec<&Draft>)> = Vec::new();
        for fact in facts {
            let named = fact.block.as_deref();
            let Some(block) = self.view().block_named(turn.target, named) else {
                continue;
            };
            let body = Body::Reported {
                block,
                kind: fact.kind,
                on: fact.on,
                details: fact.details.clone(),
            };
            stored.push(self.record(telling, None, body));
            match touched.iter_mut().find(|(known, _)| *known == block) {
                Some((_, drafts)) => drafts.push(fact),
                None => touched.push((block, vec![fact])),
            }
        }
        if stored.is_empty() {
            return self.no_blocks(turn);
        }
        let now = self.now;
        self.close_question(&turn.number);
        let talk = self.talk(&turn.number);
        talk.last = stored;
        talk.last_at = Some(now);
        self.close_nudge(&turn.number);
        let view = self.view();
        let mut said: Vec<Option<Said>> = Vec::new();
        for (block, drafts) in touched.iter().take(limits::READ_BACKS_MAX) {
            said.push(view.read_back(turn, *block, drafts));
            said.push(view.sickness_notice(turn, *block, drafts));
            said.push(view.girth_notice(turn, *block, drafts));
            said.push(view.open_notice(turn, *block, drafts));
        }
        if facts.iter().any(|fact| fact.kind == Kind::Disease) {
            said.push(view.cluster_notice(turn));
        }
        said.push(rains.and_then(|before| view.rain_notice(turn, &before)));
        said.push(view.told_for(turn, telling, &touched));
        Outcome::Recorded.saying(said.into_iter().flatten())
    }

    /// A report that proves the nudged job answers the nudge.
    pub(crate) fn close_nudge(&mut self, number: &str) {
        let view = self.view();
        let nudge = view.talk(number).and_then(|talk| talk.nudge);
        let Some(OpenNudge {
            block, task, due, ..
        }) = nudge
        else {
            return;
        };
        let Some(record) = view.world.directory.block(block) else {
            return;
        };
        let open = view
            .tasks_of(block, view.today_of(record.owner))
            .iter()
            .any(|open| open.kind == task && open.due == due);
        if !open {
            self.talk(number).nudge = None;
        }
    }
}
