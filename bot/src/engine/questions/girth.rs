//! What girths tell: when a stand will be ready, whether it is behind, who should look.
//!
//! Never a date without a range, and never "ready" from a small count by the farmer: then it is
//! close, and all trees are measured first.

use budwood_parser::Query;
use budwood_scheduler::{
    Block, BlockId, Group, Person, TaskKind,
    outlook::{
        forecast::{self, Forecast},
        growth::Seen,
        readiness::{Verdict, readiness},
    },
};
use chrono::NaiveDate;

use crate::{
    args,
    engine::view::View,
    wording::{Key, MemberGirth, Phrase, Ready, Value},
    words::limits,
};

/// What is known of the opening of a block.
pub(crate) struct Outlook {
    /// Now, close, or when.
    pub(crate) ready: Ready,
    pub(crate) forecast: Option<Forecast>,
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "clamped to what a stand can be ahead or behind"
)]
fn whole_months(months: f64) -> i32 {
    months.clamp(-240.0, 240.0).round() as i32
}

impl<'a> View<'a> {
    /// Looks ahead on a day. None without girths that tell.
    pub(crate) fn outlook(self, block: BlockId, today: NaiveDate) -> Option<Outlook> {
        let record = self.world.directory.block(block)?;
        let group = self.world.directory.group_of_block(record)?;
        let calendar = self.calendar_of(group)?;
        let state = self.state(block)?;
        let forecast = forecast::opening(state, calendar, &self.peers(group, block));
        let verdict = readiness(state, calendar).map(|ready| ready.verdict);
        let ready = match (verdict, &forecast) {
            (Some(Verdict::Ready), _) => Ready::MeetsRule,
            (Some(Verdict::MeasureAll), _) => Ready::Close,
            (Some(Verdict::NotYet) | None, Some(seen)) if seen.block.likely <= today => {
                Ready::Close
            }
            (Some(Verdict::NotYet) | None, Some(seen)) => {
                Ready::Between(seen.block.earliest, seen.block.latest)
            }
            (Some(Verdict::NotYet) | None, None) => return None,
        };
        Some(Outlook { ready, forecast })
    }

    /// Girths of the other stands of a group: what is usual there.
    fn peers(self, group: &Group, except: BlockId) -> Vec<Seen> {
        let Some(calendar) = self.calendar_of(group) else {
            return Vec::new();
        };
        let directory = &self.world.directory;
        directory
            .members(group.id)
            .flat_map(|person| directory.blocks_of(person.id))
            .filter(|block| block.id != except)
            .filter_map(|block| forecast::seen(self.state(block.id)?, calendar))
            .take(limits::PEERS_MAX)
            .collect()
    }

    /// How many whole months a block is ahead of what is usual; negative when behind.
    pub(crate) fn months_ahead(self, block: BlockId) -> Option<i32> {
        let record = self.world.directory.block(block)?;
        let group = self.world.directory.group_of_block(record)?;
        let calendar = self.calendar_of(group)?;
        let state = self.state(block)?;
        let months = forecast::months_ahead(state, calendar, &self.peers(group, block))?;
        Some(whole_months(months))
    }

    /// The last census of a block, for the adviser.
    pub(crate) fn member_girth(self, block: BlockId, today: NaiveDate) -> Option<MemberGirth> {
        let months_ahead = self.months_ahead(block)?;
        let state = self.state(block)?;
        let census = state.girths.iter().max_by_key(|census| census.on)?;
        let ready = match self.outlook(block, today).map(|outlook| outlook.ready) {
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

    /// The block asked about: the one that is named, or the first.
    pub(crate) fn block_asked(self, speaker: &Person, query: &Query) -> Option<&'a Block> {
        let named = |block: &&Block| {
            query
                .block
                .as_deref()
                .is_none_or(|name| block.name.eq_ignore_ascii_case(name))
        };
        self.world.directory.blocks_of(speaker.id).find(named)
    }

    /// Never a date without a range.
    pub(crate) fn when_tap(self, speaker: &Person, query: &Query) -> Phrase {
        let Some(block) = self.block_asked(speaker, query) else {
            return self.signed(speaker, Key::NoBlocks);
        };
        let name = args! { "block" => Value::name(&block.name) };
        let outlook = self.outlook(block.id, self.today_of(speaker.id));
        let Some(Outlook { ready, forecast }) = outlook else {
            return self.signed_with(speaker, Key::WhenTapUnknown, name);
        };
        let (Ready::Between(..), Some(seen)) = (ready, forecast) else {
            return self.signed_with(speaker, Key::MayTapCheck, name);
        };
        let args = args! {
            "block" => Value::name(&block.name),
            "likely" => Value::Month(seen.block.likely),
            "earliest" => Value::Month(seen.block.earliest),
            "latest" => Value::Month(seen.block.latest),
            "trees" => seen.of,
        };
        self.signed_with(speaker, Key::WhenTap, args)
    }

    pub(crate) fn may_tap(self, speaker: &Person, group: &Group, query: &Query) -> Option<Phrase> {
        let calendar = self.calendar_of(group)?;
        let block = self.block_asked(speaker, query)?;
        let is_close = self
            .state(block.id)
            .and_then(|state| readiness(state, calendar))
            .is_some_and(|readiness| readiness.verdict != Verdict::NotYet);
        let rule = &calendar.opening;
        let is_rule = calendar.is_published(TaskKind::Open.rests_on());
        let key = match (is_close, is_rule) {
            (true, _) => Key::MayTapCheck,
            (false, true) => Key::MayTapNo,
            (false, false) => Key::MayTapNoUsual,
        };
        let args = args! {
            "block" => Value::name(&block.name),
            "girth" => rule.girth_cm,
            "share" => rule.share_pct,
        };
        Some(self.signed_with(speaker, key, args))
    }

    /// How many stands of a group someone should look at before they are opened.
    pub(crate) fn stands_to_check(self, group: &Group) -> usize {
        let today = self.today_in(group);
        let directory = &self.world.directory;
        directory
            .members(group.id)
            .flat_map(|person| directory.blocks_of(person.id))
            .filter(|block| {
                let state = self.state(block.id);
                let is_tapped = state.is_some_and(|state| state.opened > 0);
                let is_close = || {
                    let outlook = self.outlook(block.id, today);
                    outlook.is_some_and(|one| !matches!(one.ready, Ready::Between(..)))
                };
                !is_tapped && is_close()
            })
            .count()
    }
}
