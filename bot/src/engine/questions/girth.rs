//! What girths tell: when a stand will be ready, whether it is behind, who should look.
//!
//! Never a date without a range, and never "ready" from a small count by the farmer: then it is
//! close, and all trees are measured first.

use budwood_parser::{Kind, Query};
use budwood_scheduler::{
    Block, BlockId, Group, Person, TaskKind,
    decide::Draft,
    outlook::{
        forecast::{self, Forecast},
        growth::Seen,
        readiness::{Verdict, readiness},
    },
};
use chrono::NaiveDate;

use crate::{
    args,
    engine::{
        Setup,
        deeds::due_index::calendar_of,
        memory::world::World,
        step::{Step, civil_day, zone},
        turn::Turn,
    },
    wording::{Key, MemberGirth, Ready, short},
    words::limits,
};

/// What is known of the opening of a block.
pub(crate) struct Outlook {
    /// Now, close, or when.
    pub(crate) ready: Ready,
    pub(crate) forecast: Option<Forecast>,
}

/// Looks ahead on a day. None without girths that tell.
pub(crate) fn outlook(
    world: &World,
    setup: &Setup,
    block: BlockId,
    today: NaiveDate,
) -> Option<Outlook> {
    let record = world.directory.block(block)?;
    let group = world.directory.group_of_block(record)?;
    let calendar = calendar_of(setup, group)?;
    let state = world.states.get(&block)?;
    let peers = peers(world, setup, group, block);
    let forecast = forecast::opening(state, calendar, &peers);
    let ready = match (
        readiness(state, calendar).map(|ready| ready.verdict),
        &forecast,
    ) {
        (Some(Verdict::Ready), _) => Ready::MeetsRule,
        (Some(Verdict::MeasureAll), _) => Ready::Close,
        (Some(Verdict::NotYet) | None, Some(seen)) if seen.block.likely <= today => Ready::Close,
        (Some(Verdict::NotYet) | None, Some(seen)) => {
            Ready::Between(seen.block.earliest, seen.block.latest)
        }
        (Some(Verdict::NotYet) | None, None) => return None,
    };
    Some(Outlook { ready, forecast })
}

/// Girths of the other stands of a group: what is usual there.
fn peers(world: &World, setup: &Setup, group: &Group, except: BlockId) -> Vec<Seen> {
    let Some(calendar) = calendar_of(setup, group) else {
        return Vec::new();
    };
    world
        .directory
        .members(group.id)
        .flat_map(|person| world.directory.blocks_of(person.id))
        .filter(|block| block.id != except)
        .filter_map(|block| forecast::seen(world.states.get(&block.id)?, calendar))
        .take(limits::PEERS_MAX)
        .collect()
}

/// How many whole months a block is ahead of what is usual; negative when behind.
fn months_ahead(world: &World, setup: &Setup, block: BlockId) -> Option<i32> {
    let record = world.directory.block(block)?;
    let group = world.directory.group_of_block(record)?;
    let calendar = calendar_of(setup, group)?;
    let state = world.states.get(&block)?;
    let peers = peers(world, setup, group, block);
    let months = forecast::months_ahead(state, calendar, &peers)?;
    Some(whole_months(months))
}

/// The last census of a block, for the adviser.
pub(crate) fn member_girth(
    world: &World,
    setup: &Setup,
    block: BlockId,
    today: NaiveDate,
) -> Option<MemberGirth> {
    let months_ahead = months_ahead(world, setup, block)?;
    let state = world.states.get(&block)?;
    let census = state.girths.iter().max_by_key(|census| census.on)?;
    let ready = match outlook(world, setup, block, today).map(|outlook| outlook.ready) {
        Some(Ready::Between(earliest, latest)) => Some((earliest, latest)),
        Some(Ready::MeetsRule | Ready::Close) | None => None,
    };
    Some(MemberGirth {
        mean_cm: census.mean_cm()?,
        of: census.values_cm.len().try_into().ok()?,
        months_ahead,
        ready,
    })
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "clamped to what a stand can be ahead or behind"
)]
fn whole_months(months: f64) -> i32 {
    months.clamp(-240.0, 240.0).round() as i32
}

impl Step<'_> {
    /// The block asked about: the one that is named, or the first.
    pub(crate) fn block_asked(&self, speaker: &Person, query: &Query) -> Option<&Block> {
        let named = |block: &&Block| {
            query
                .block
                .as_deref()
                .is_none_or(|name| block.name.eq_ignore_ascii_case(name))
        };
        self.world.directory.blocks_of(speaker.id).find(named)
    }

    /// Never a date without a range.
    pub(crate) fn when_tap(&self, speaker: &Person, query: &Query) -> String {
        let Some(block) = self.block_asked(speaker, query) else {
            return self.plain(speaker, Key::NoBlocks);
        };
        let today = self.today_of(speaker.id);
        let outlook = outlook(self.world, self.setup, block.id, today);
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        tongue.fit(|length| {
            let mut args = args! {
                "name" => short(speaker.called(), length),
                "block" => short(&block.name, length),
                "adviser" => short(&adviser, length),
            };
            let Some(Outlook { ready, forecast }) = &outlook else {
                return tongue.say(Key::WhenTapUnknown, args);
            };
            let (Ready::Between(..), Some(seen)) = (ready, forecast) else {
                return tongue.say(Key::MayTapCheck, args);
            };
            args.extend(args! {
                "likely" => tongue.month_year(seen.block.likely),
                "earliest" => tongue.month_year(seen.block.earliest),
                "latest" => tongue.month_year(seen.block.latest),
                "trees" => seen.of,
            });
            tongue.say(Key::WhenTap, args)
        })
    }

    pub(crate) fn may_tap(&self, speaker: &Person, group: &Group, query: &Query) -> Option<String> {
        let calendar = calendar_of(self.setup, group)?;
        let block = self.block_asked(speaker, query)?;
        let is_close = self
            .world
            .states
            .get(&block.id)
            .and_then(|state| readiness(state, calendar))
            .is_some_and(|readiness| readiness.verdict != Verdict::NotYet);
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        let rule = &calendar.opening;
        let is_rule = calendar.is_published(TaskKind::Open.rests_on());
        Some(tongue.fit(|length| {
            tongue.say(
                match (is_close, is_rule) {
                    (true, _) => Key::MayTapCheck,
                    (false, true) => Key::MayTapNo,
                    (false, false) => Key::MayTapNoUsual,
                },
                args! {
                    "name" => short(speaker.called(), length),
                    "block" => short(&block.name, length),
                    "girth" => tongue.number(rule.girth_cm),
                    "share" => tongue.number(rule.share_pct),
                    "adviser" => short(&adviser, length),
                },
            )
        }))
    }

    /// The adviser hears of a stand that a census shows far behind what is usual.
    pub(crate) fn tell_of_girth(&mut self, turn: &Turn, block: BlockId, drafts: &[&Draft]) {
        if !drafts.iter().any(|fact| fact.kind == Kind::Girth) {
            return;
        }
        let behind = months_ahead(self.world, self.setup, block)
            .map(|months| -months)
            .filter(|months| *months > limits::BEHIND_MONTHS);
        let (Some(months), Some(target), Some(record)) = (
            behind,
            self.world.directory.person(turn.target),
            self.world.directory.block(block),
        ) else {
            return;
        };
        let (name, block_name) = (target.name.clone(), record.name.clone());
        let group = self.group_name(target);
        self.notify(turn, |tongue| {
            tongue.fit(|length| {
                tongue.say(
                    Key::GirthNotice,
                    args! {
                        "name" => short(&name, length),
                        "block" => short(&block_name, length),
                        "group" => short(&group, length),
                        "months" => months,
                    },
                )
            })
        });
    }

    /// How many stands of a group someone should look at before they are opened.
    pub(crate) fn stands_to_check(&self, group: &Group) -> usize {
        let today = civil_day(self.now, zone(group, self.setup));
        self.world
            .directory
            .members(group.id)
            .flat_map(|person| self.world.directory.blocks_of(person.id))
            .filter(|block| {
                let is_tapped = self
                    .world
                    .states
                    .get(&block.id)
                    .is_some_and(|state| state.opened > 0);
                let is_close = || {
                    outlook(self.world, self.setup, block.id, today)
                        .is_some_and(|outlook| !matches!(outlook.ready, Ready::Between(..)))
                };
                !is_tapped && is_close()
            })
            .count()
    }
}
