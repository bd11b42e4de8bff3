//! What goes into one text: the field round with all its looks and blocks, and one job on several
//! blocks.
//!
//! What a text was about is not stored with it: the facts say on which day each job was nudged for,
//! and a phone gets one such text a week at most.

use budwood_scheduler::{
    Block, BlockId, Figures, PersonId, Task, TaskKind, TextClass,
    jobs::{
        feed::Ration,
        nudge::{self, Rules},
    },
};
use chrono::{NaiveDate, TimeDelta};

use crate::{
    engine::{
        local_time::civil_day,
        questions::tasks::{Candidate, Ready},
        view::View,
    },
    words::message::OpenNudge,
};

/// A stand is young for so many days.
const YOUNG_DAYS: i64 = 365;

/// A job on a block that a text is about.
pub(crate) struct Part<'a> {
    pub(crate) block: &'a Block,
    pub(crate) task: Task,
}

impl<'a> View<'a> {
    /// What a text is about that this job leads: itself first.
    pub(crate) fn parts(self, lead: &Ready) -> Vec<Part<'a>> {
        let directory = &self.world.directory;
        let Some(block) = directory.block(lead.block) else {
            return Vec::new();
        };
        let (task, rules) = (&lead.candidate.task, &self.setup.rules);
        let is_part = |one: &Candidate, block: &Block| {
            if (block.id, one.task.kind) == (lead.block, task.kind) {
                false
            } else if task.class() == TextClass::Round {
                let ahead = i64::from(self.setup.rules.round_ahead_days);
                one.task.class() == TextClass::Round
                    && one.on <= lead.today + TimeDelta::days(ahead)
            } else {
                one.on <= lead.today + self.ahead(one, lead.today)
                    && goes_with(rules, task, &one.task)
            }
        };
        let mut parts = vec![Part {
            block,
            task: task.clone(),
        }];
        for block in directory.blocks_of(block.owner) {
            let more = self.candidates(block.id, lead.today).into_iter();
            parts.extend(more.filter(|one| is_part(one, block)).map(|one| Part {
                block,
                task: one.task,
            }));
        }
        parts
    }

    /// What falls due while the phone rests goes into the text before, unless it waits for rain or was put
    /// off.
    fn ahead(self, one: &Candidate, today: NaiveDate) -> TimeDelta {
        let kind = one.task.kind;
        let put_off = self.state(one.task.block);
        let put_off = put_off.and_then(|state| state.postponed.get(&kind));
        let is_put_off = put_off.is_some_and(|until| today < *until);
        let is_now = one.is_again || is_put_off || kind.is_bound_to_rains();
        let rest = i64::from(self.setup.rules.rest_days);
        TimeDelta::days(if is_now { 0 } else { rest })
    }

    /// The jobs that the open nudge of a phone was about and that are still open.
    pub(crate) fn parts_told(self, nudge: &OpenNudge) -> Vec<Part<'a>> {
        let directory = &self.world.directory;
        let Some(lead) = directory.block(nudge.block) else {
            return Vec::new();
        };
        let went_on = civil_day(nudge.at, self.zone_of(lead.owner));
        let today = self.today_of(lead.owner);
        let of_block = |block: &'a Block| {
            let was_told = move |task: &Task| {
                let track = self.state(block.id)?.nudges.get(&task.kind)?;
                let same = nudge.task.class() == TextClass::Round && is_walked(task)
                    || nudge.task == task.kind;
                (same && track.last_on == went_on && track.due == task.due).then_some(())
            };
            let tasks = self.tasks_of(block.id, today).into_iter();
            tasks
                .filter(move |task| was_told(task).is_some())
                .map(move |task| Part { block, task })
        };
        directory.blocks_of(lead.owner).flat_map(of_block).collect()
    }

    /// The first day on which a person may be texted of a field round again.
    pub(crate) fn round_rested_on(self, person: PersonId, today: NaiveDate) -> Option<NaiveDate> {
        let states = || {
            let blocks = self.world.directory.blocks_of(person);
            blocks.filter_map(|block| self.state(block.id))
        };
        let tracks = states().flat_map(|state| &state.nudges);
        let last_on = tracks
            .filter(|(kind, _)| kind.class() == TextClass::Round)
            .map(|(_, track)| track.last_on)
            .max()?;
        let is_young = states()
            .filter_map(|state| state.planted_on())
            .any(|day| today.signed_duration_since(day).num_days() <= YOUNG_DAYS);
        Some(nudge::round_rested_on(&self.setup.rules, last_on, is_young))
    }
}

/// Whether it is a part of the field round.
pub(crate) fn is_walked(task: &Task) -> bool {
    task.class() == TextClass::Round
}

/// Whether one text can ask for both: the same job with the same figures, and nothing to count of
/// which the block would have to be told, unless a text of its own would come too late.
fn goes_with(rules: &Rules, lead: &Task, other: &Task) -> bool {
    let counts = |kind: TaskKind| {
        let proof = kind.proven_by();
        proof.is_some_and(|kind| kind.is_counted() || kind.needs_values())
    };
    let alike = |task: &Task| Figures {
        trees: None,
        kilograms: None,
        rations: Vec::new(),
        round: None,
        since: None,
        lost: Vec::new(),
        living: None,
        ..task.figures.clone()
    };
    lead.kind == other.kind
        && lead.class() == TextClass::Decisive
        && (nudge::is_short(rules, lead) || !counts(lead.kind))
        && alike(lead) == alike(other)
        && is_one_ration(&lead.figures.rations, &other.figures.rations)
}

/// Whether the trees of both get the same of each product.
fn is_one_ration(lead: &[Ration], other: &[Ration]) -> bool {
    let doses = |ration: &Ration| -> Vec<(String, f64)> {
        let products = ration.products.iter();
        products
            .map(|one| (one.product.clone(), one.grams_per_tree))
            .collect()
    };
    match (lead, other) {
        ([], []) => true,
        ([lead], [other]) => doses(lead) == doses(other),
        _ => false,
    }
}

/// The figures of one job on several blocks together.
pub(crate) fn together(parts: &[Part<'_>]) -> Option<Task> {
    let (first, others) = parts.split_first()?;
    let mut task = first.task.clone();
    for part in others {
        let figures = &part.task.figures;
        task.figures.trees = task
            .figures
            .trees
            .zip(figures.trees)
            .map(|(a, b)| a.saturating_add(b));
        task.figures.kilograms = task
            .figures
            .kilograms
            .zip(figures.kilograms)
            .map(|(a, b)| a + b);
        for (ration, more) in task.figures.rations.iter_mut().zip(&figures.rations) {
            ration.trees = ration.trees.saturating_add(more.trees);
            for (portion, more) in ration.products.iter_mut().zip(&more.products) {
                portion.kilograms += more.kilograms;
            }
        }
        task.late_after = task.late_after.min(part.task.late_after);
    }
    Some(task)
}

/// The blocks of a text, each once.
pub(crate) fn blocks_in(parts: &[Part<'_>]) -> Vec<(BlockId, String)> {
    let mut blocks: Vec<(BlockId, String)> = Vec::new();
    for part in parts {
        if !blocks.iter().any(|(known, _)| *known == part.block.id) {
            blocks.push((part.block.id, part.block.name.clone()));
        }
    }
    blocks
}
