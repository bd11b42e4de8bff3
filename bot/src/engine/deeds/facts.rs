//! Reports become facts, and their consequence is read back.

use budwood_parser::Kind;
use budwood_scheduler::{
    BlockId, Body, Directory, Event, EventId, PersonId, Role, Source, TaskKind, decide::Draft,
};
use chrono::NaiveDate;

use super::due_index::{points_of, tasks_of};
use crate::{
    engine::{
        questions::girth::outlook,
        step::{Step, Telling, civil_day},
        turn::Turn,
    },
    wording::{After, Said},
    words::{limits, message::OpenNudge},
};

/// The draft of a stored report, for corrections.
pub(crate) fn draft_of(directory: &Directory, event: &Event) -> Option<Draft> {
    let Body::Reported {
        block,
        kind,
        on,
        details,
    } = &event.body
    else {
        return None;
    };
    Some(Draft {
        kind: *kind,
        block: directory.block(*block).map(|block| block.name.clone()),
        said: None,
        on: *on,
        details: details.clone(),
    })
}

impl Step<'_> {
    /// Stores facts and reads their consequence back.
    pub(crate) fn store_facts(&mut self, turn: &Turn, facts: Vec<Draft>) -> &'static str {
        let target = turn.target;
        let telling = self.telling(turn, target);
        let tells_of_rain = facts.iter().any(|fact| fact.kind == Kind::Rain);
        let rains = tells_of_rain.then(|| self.rain_turns(turn));
        let mut stored: Vec<EventId> = Vec::new();
        let mut touched: Vec<(BlockId, Vec<&Draft>)> = Vec::new();
        for fact in &facts {
            let Some(block) = self.block_named(target, fact.block.as_deref()) else {
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
        for (block, drafts) in touched.iter().take(limits::READ_BACKS_MAX) {
            let text = self.read_back(turn, *block, drafts);
            self.answer(&turn.number, turn.message, text);
            self.tell_of_sickness(turn, *block, drafts);
            self.tell_of_girth(turn, *block, drafts);
        }
        if facts.iter().any(|fact| fact.kind == Kind::Disease) {
            self.tell_of_cluster(turn);
        }
        if let Some(before) = rains {
            self.tell_of_rain(turn, &before);
        }
        "recorded"
    }

    pub(crate) fn telling(&self, turn: &Turn, target: PersonId) -> Telling {
        let role = self
            .world
            .directory
            .person(turn.speaker)
            .map(|person| person.role);
        let source = match role {
            Some(Role::Adviser) => Source::Visit,
            Some(Role::Leader) if target != turn.speaker => Source::Leader,
            _ => Source::OwnText,
        };
        Telling {
            by: Some(turn.speaker),
            source,
            message: Some(turn.message),
        }
    }

    pub(crate) fn block_named(&self, owner: PersonId, name: Option<&str>) -> Option<BlockId> {
        let name = name?;
        self.world
            .directory
            .blocks_of(owner)
            .find(|block| block.name.eq_ignore_ascii_case(name))
            .map(|block| block.id)
    }

    pub(crate) fn read_back(&self, turn: &Turn, block: BlockId, drafts: &[&Draft]) -> String {
        self.with_stand(turn, block, drafts, |tongue, said, after| {
            tongue.read_back(said, after)
        })
    }

    /// Words facts together with how their block stands now.
    pub(crate) fn with_stand(
        &self,
        turn: &Turn,
        block: BlockId,
        drafts: &[&Draft],
        word: impl Fn(crate::wording::Tongue<'_>, Said<'_>, After<'_>) -> String,
    ) -> String {
        let (Some(record), Some(speaker)) = (
            self.world.directory.block(block),
            self.world.directory.person(turn.speaker),
        ) else {
            return String::new();
        };
        let state = self.world.states.get(&block).cloned().unwrap_or_default();
        let owner = self.world.directory.person(record.owner);
        let adviser = self.adviser_name(owner.unwrap_or(speaker));
        let after = After {
            state: &state,
            points: points_of(self.world, self.setup, record),
            next: drafts
                .last()
                .and_then(|fact| self.next_round(block, fact.kind)),
            ready: drafts
                .iter()
                .any(|fact| fact.kind == Kind::Girth)
                .then(|| outlook(self.world, self.setup, block, self.today_of(turn.target)))
                .flatten()
                .map(|outlook| outlook.ready),
            adviser: &adviser,
        };
        let today = civil_day(turn.sent_at, self.zone_of(turn.target));
        let label = self.label(turn, record.owner, &record.name);
        let said = Said {
            block: &label,
            facts: drafts,
            today,
        };
        word(self.tongue(speaker), said, after)
    }

    /// A block's name; with its owner's when the phone is not theirs alone.
    pub(crate) fn label(&self, turn: &Turn, owner: PersonId, block: &str) -> String {
        let directory = &self.world.directory;
        let shared = directory
            .phone(&turn.number)
            .is_some_and(|phone| phone.people().any(|person| person != owner));
        match directory.person(owner).filter(|_| shared) {
            Some(owner) => format!("{} {block}", owner.called()),
            None => block.to_owned(),
        }
    }

    /// When the job that this kind of report proves comes again.
    fn next_round(&self, block: BlockId, kind: Kind) -> Option<NaiveDate> {
        let owner = self.world.directory.block(block)?.owner;
        let today = self.today_of(owner);
        let wanted = if kind == Kind::BranchInduction {
            TaskKind::LookAtInduced
        } else {
            TaskKind::ALL
                .into_iter()
                .find(|task| task.proven_by() == Some(kind))?
        };
        tasks_of(self.world, self.setup, block, today)
            .into_iter()
            .find(|task| task.kind == wanted && task.due > today)
            .map(|task| task.due)
    }

    /// A report that proves the nudged job answers the nudge.
    pub(crate) fn close_nudge(&mut self, number: &str) {
        let Some(OpenNudge {
            block, task, due, ..
        }) = self.world.talks.get(number).and_then(|talk| talk.nudge)
        else {
            return;
        };
        let Some(owner) = self.world.directory.block(block).map(|block| block.owner) else {
            return;
        };
        let today = self.today_of(owner);
        let open = tasks_of(self.world, self.setup, block, today)
            .iter()
            .any(|open| open.kind == task && open.due == due);
        if !open {
            self.talk(number).nudge = None;
        }
    }
}
