//! What girths tell: when a stand will be ready, whether it is behind, who should look.
//!
//! Never a date without a range, nor a range so wide that nobody can plan by it, and never "ready" from a small count by the farmer: then it is
//! close, and all trees are measured first.

use std::collections::BTreeMap;

use budwood_parser::Query;
use budwood_scheduler::{
    Block, BlockId, Calendar, Group, Person, Season, TaskKind,
    outlook::{
        forecast::{self, Beside, Forecast, Laws, Stands},
        growth::Seen,
        readiness::{Verdict, readiness},
    },
};
use chrono::NaiveDate;

use crate::{
    args,
    engine::{questions::tasks::season_of, view::View},
    wording::{Key, MemberGirth, Phrase, Ready, Value},
    words::limits,
};

/// What is known of the opening of a block.
pub(crate) struct Outlook {
    /// Now, close, or when.
    pub(crate) ready: Ready,
    pub(crate) forecast: Option<Forecast>,
}

/// The stands of a group, with what is usual there: made once for a question, however many stands
/// it looks at.
pub(crate) struct Neighbours<'a> {
    calendar: &'a Calendar,
    season: Season,
    stands: Stands,
    /// The girths of each.
    seen: BTreeMap<BlockId, Vec<Seen>>,
    /// What the stands of other groups tell.
    laws: Option<Laws>,
}

impl Neighbours<'_> {
    /// A stand beside the others.
    fn beside(&self, block: BlockId) -> Beside<'_> {
        Beside {
            stands: Some(&self.stands),
            own: self.seen.get(&block).map_or(&[], Vec::as_slice),
            laws: self.laws.as_ref(),
        }
    }
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
        self.outlook_among(&self.neighbours_of(block)?, block, today)
    }

    pub(crate) fn outlook_among(
        self,
        neighbours: &Neighbours<'_>,
        block: BlockId,
        today: NaiveDate,
    ) -> Option<Outlook> {
        let calendar = neighbours.calendar;
        let state = self.state(block)?;
        let forecast = forecast::opening(
            state,
            calendar,
            &neighbours.season,
            neighbours.beside(block),
        );
        let verdict = readiness(state, calendar).map(|ready| ready.verdict);
        let ready = match (verdict, &forecast) {
            (Some(Verdict::Ready), _) => Ready::MeetsRule,
            (Some(Verdict::MeasureAll), _) => Ready::Close,
            (Some(Verdict::NotYet) | None, Some(seen)) if seen.block.likely <= today => {
                Ready::Close
            }
            (Some(Verdict::NotYet) | None, Some(seen)) if !seen.block.is_narrow() => {
                Ready::TooEarly
            }
            (Some(Verdict::NotYet) | None, Some(seen)) => {
                Ready::Between(seen.block.earliest, seen.block.latest)
            }
            (Some(Verdict::NotYet) | None, None) => return None,
        };
        Some(Outlook { ready, forecast })
    }

    /// Girths of the stands of a group: what is usual there.
    pub(crate) fn neighbours(self, group: &Group) -> Option<Neighbours<'a>> {
        let calendar = self.calendar_of(group)?;
        let seen = self.seen_in(group, calendar, limits::PEERS_MAX);
        let stands = Stands::of(calendar, seen.values().cloned().collect());
        Some(Neighbours {
            calendar,
            season: season_of(group),
            stands,
            seen,
            laws: self.laws_beside(group, calendar),
        })
    }

    /// The girths of so many stands of a group.
    fn seen_in(
        self,
        group: &Group,
        calendar: &Calendar,
        most: usize,
    ) -> BTreeMap<BlockId, Vec<Seen>> {
        let season = season_of(group);
        let seen = self.blocks_of_group(group).filter_map(|block| {
            let seen = forecast::seen(self.state(block.id)?, calendar, &season);
            (!seen.is_empty()).then_some((block.id, seen))
        });
        seen.take(most).collect()
    }

    /// What the stands of other groups under the same calendar tell of the law by which stands grow.
    fn laws_beside(self, group: &Group, calendar: &Calendar) -> Option<Laws> {
        let groups = self.world.directory.groups();
        let places: Vec<Stands> = groups
            .filter(|other| other.id != group.id && other.calendar == group.calendar)
            .take(limits::PLACES_MAX)
            .map(|other| self.seen_in(other, calendar, limits::STANDS_A_PLACE_MAX))
            .filter(|seen| !seen.is_empty())
            .map(|seen| Stands::of(calendar, seen.into_values().collect()))
            .collect();
        Laws::of(calendar, &places)
    }

    fn neighbours_of(self, block: BlockId) -> Option<Neighbours<'a>> {
        let record = self.world.directory.block(block)?;
        self.neighbours(self.world.directory.group_of_block(record)?)
    }

    /// How many whole months a block is ahead of what is usual; negative when behind.
    pub(crate) fn months_ahead(self, block: BlockId) -> Option<i32> {
        self.months_ahead_among(&self.neighbours_of(block)?, block)
    }

    fn months_ahead_among(self, neighbours: &Neighbours<'_>, block: BlockId) -> Option<i32> {
        let state = self.state(block)?;
        let beside = neighbours.beside(block);
        let (calendar, season) = (neighbours.calendar, &neighbours.season);
        let months = forecast::months_ahead(state, calendar, season, beside)?;
        Some(whole_months(months))
    }

    /// The last census of a block, for the adviser.
    pub(crate) fn member_girth(
        self,
        neighbours: &Neighbours<'_>,
        block: BlockId,
    ) -> Option<MemberGirth> {
        let months_ahead = self.months_ahead_among(neighbours, block)?;
        let state = self.state(block)?;
        let census = state.girths.iter().max_by_key(|census| census.on)?;
        Some(MemberGirth {
            mean_cm: census.mean_cm()?,
            of: census.values_cm.len().try_into().ok()?,
            months_ahead,
            ready: None,
        })
    }

    /// When it will be ready, for what is said of the census. To look ahead takes longest, so it is
    /// asked only of what will be read.
    pub(crate) fn ready_between(
        self,
        neighbours: &Neighbours<'_>,
        block: BlockId,
        today: NaiveDate,
    ) -> Option<(NaiveDate, NaiveDate)> {
        match self.outlook_among(neighbours, block, today)?.ready {
            Ready::Between(earliest, latest) => Some((earliest, latest)),
            Ready::MeetsRule | Ready::Close | Ready::TooEarly => None,
        }
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
        let (key, seen) = match (ready, forecast) {
            (Ready::Between(..), Some(seen)) => (Key::WhenTap, seen),
            (Ready::TooEarly, Some(seen)) => (Key::WhenTapEarly, seen),
            _ => return self.signed_with(speaker, Key::MayTapCheck, name),
        };
        let args = args! {
            "block" => Value::name(&block.name),
            "likely" => Value::Month(seen.block.likely),
            "earliest" => Value::Month(seen.block.earliest),
            "latest" => Value::Month(seen.block.latest),
            "trees" => seen.of,
        };
        self.signed_with(speaker, key, args)
    }

    pub(crate) fn may_tap(self, speaker: &Person, group: &Group, query: &Query) -> Option<Phrase> {
        let calendar = self.calendar_of(group)?;
        let block = self.block_asked(speaker, query)?;
        let is_close = self
            .state(block.id)
            .and_then(|state| readiness(state, calendar))
            .is_some_and(|readiness| readiness.verdict != Verdict::NotYet);
        let rule = &calendar.opening;
        let is_rule = calendar.is_published(TaskKind::Open);
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
        let Some(neighbours) = self.neighbours(group) else {
            return 0;
        };
        let today = self.today_in(group);
        self.blocks_of_group(group)
            .filter(|block| self.is_close(&neighbours, block.id, today))
            .count()
    }

    /// Whether someone should look at a stand before it is opened: what [`View::outlook`] calls
    /// close or ready, asked more quickly.
    pub(super) fn is_close(
        self,
        neighbours: &Neighbours<'_>,
        block: BlockId,
        today: NaiveDate,
    ) -> bool {
        let calendar = neighbours.calendar;
        let Some(state) = self.state(block).filter(|state| state.opened == 0) else {
            return false;
        };
        let verdict = readiness(state, calendar).map(|ready| ready.verdict);
        matches!(verdict, Some(Verdict::Ready | Verdict::MeasureAll))
            || forecast::is_likely_by(
                state,
                calendar,
                &neighbours.season,
                neighbours.beside(block),
                today,
            )
    }
}
