//! What the adviser is told at once: sickness, clusters, stands behind, and whom to see to.

use budwood_parser::{Alarm, Care, Kind};
use budwood_scheduler::{
    BlockId, Person,
    decide::{Concern, Draft},
    outlook::readiness::{Verdict, readiness},
};

use super::{address::last_digits, waiting::concern};

use crate::{
    args,
    engine::{local_time::civil_day, said::Said, turn::Turn, view::View},
    wording::{Facts, Key, Phrase, Value},
    words::limits,
};

impl View<'_> {
    /// News of sickness or harm on a block.
    pub(crate) fn sickness_notice(
        self,
        turn: &Turn,
        block: BlockId,
        drafts: &[&Draft],
    ) -> Option<Said> {
        let news: Vec<&Draft> = drafts
            .iter()
            .filter(|fact| matches!(fact.kind.care(), Some(Care::Sick | Care::Harmed)))
            .filter(|fact| fact.details.count != Some(0))
            .copied()
            .collect();
        let target = self.person(turn.target)?;
        // Who saw it on a visit knows.
        let adviser = self.adviser_of(target).map(|adviser| adviser.id);
        if news.is_empty() || adviser == Some(turn.speaker) {
            return None;
        }
        let block = &self.world.directory.block(block)?.name;
        let facts = Facts {
            block,
            facts: &news,
            today: self.today_of(turn.target),
        };
        let args = args! {
            "name" => Value::name(&target.name),
            "block" => Value::name(block),
            "group" => self.group_name(target.group),
            "facts" => facts.clauses(),
        };
        self.notice(turn, Phrase::new(Key::SickNotice, args))
    }

    /// Told once, when a report makes a cluster of what was none before it.
    pub(crate) fn cluster_notice(self, turn: &Turn) -> Option<Said> {
        let group = self.person(turn.target)?.group?;
        let today = self.today_of(turn.target);
        let cluster = self.cluster_begun(group, turn.message, today)?;
        let args = args! {
            "group" => Value::name(self.group_name(Some(group))),
            "ailment" => cluster.ailment,
            "count" => cluster.reports,
            "day" => cluster.since,
        };
        self.notice(turn, Phrase::new(Key::ClusterNotice, args))
    }

    /// Of a stand that a census shows far behind what is usual.
    pub(crate) fn girth_notice(
        self,
        turn: &Turn,
        block: BlockId,
        drafts: &[&Draft],
    ) -> Option<Said> {
        if !drafts.iter().any(|fact| fact.kind == Kind::Girth) {
            return None;
        }
        let months = -self.months_ahead(block)?;
        if months <= limits::BEHIND_MONTHS {
            return None;
        }
        let target = self.person(turn.target)?;
        let args = args! {
            "name" => Value::name(&target.name),
            "block" => Value::name(&self.world.directory.block(block)?.name),
            "group" => Value::name(self.group_name(target.group)),
            "months" => months,
        };
        self.notice(turn, Phrase::new(Key::GirthNotice, args))
    }

    /// Of a stand that this census finds ready: the adviser looks and gives the word with a count.
    /// Told once, as a stand that was found ready stays so.
    pub(crate) fn open_notice(
        self,
        turn: &Turn,
        block: BlockId,
        drafts: &[&Draft],
    ) -> Option<Said> {
        let mut measured = drafts.iter().filter(|fact| fact.kind == Kind::Girth);
        let record = self.world.directory.block(block)?;
        let group = self.world.directory.group_of_block(record)?;
        let ready = readiness(self.state(block)?, self.calendar_of(group)?)?;
        let is_found = ready.verdict == Verdict::Ready;
        let target = self.person(turn.target)?;
        // Who measured on a visit knows.
        let is_seen = group.adviser == Some(turn.speaker);
        if !is_found || is_seen || !measured.any(|fact| fact.on.day() == ready.on) {
            return None;
        }
        let args = args! {
            "name" => Value::name(&target.name),
            "block" => Value::name(&record.name),
            "group" => Value::name(&group.name),
            "trees" => ready.of,
            "share" => Value::Figure(ready.share_pct.round()),
        };
        self.notice(turn, Phrase::new(Key::OpenNotice, args))
    }

    /// The adviser is to see to the person who texted. Why, in a word; the text itself is shown to
    /// who asks for it.
    pub(crate) fn matter_notice(self, turn: &Turn, why: Concern) -> Option<Said> {
        let speaker = self.person(turn.speaker)?;
        let adviser = self.adviser_of(speaker)?;
        let key = match why {
            Concern::Alarm(
                Alarm::Grief | Alarm::Fire | Alarm::Snake | Alarm::Danger | Alarm::Illness,
            ) => Key::AlarmNotice,
            Concern::CallMe => Key::CallMeNotice,
            Concern::Alarm(Alarm::Complaint | Alarm::Number | Alarm::Money)
            | Concern::Question
            | Concern::Unclear => Key::MatterNotice,
        };
        let args = args! {
            "name" => Value::name(&speaker.name),
            "group" => Value::name(self.group_name(speaker.group)),
            "digits" => last_digits(&turn.number),
            "day" => civil_day(turn.sent_at, self.zone_of(turn.speaker)),
            "alarm" => concern(why),
        };
        self.notice_to(adviser, turn.message, Phrase::new(key, args))
    }

    /// What helps at once where a life may hang on it.
    pub(crate) const fn first_help(self, why: Concern) -> Option<Key> {
        match why {
            Concern::Alarm(Alarm::Fire) => Some(Key::FirstFire),
            Concern::Alarm(Alarm::Snake) => Some(Key::FirstSnake),
            Concern::Alarm(Alarm::Danger) => Some(Key::FirstDanger),
            Concern::Alarm(Alarm::Illness) => Some(Key::FirstIllness),
            Concern::Alarm(Alarm::Grief | Alarm::Complaint | Alarm::Number | Alarm::Money)
            | Concern::CallMe
            | Concern::Question
            | Concern::Unclear => None,
        }
    }

    /// What the sender of a text that waits for the adviser reads; `is_told` says whether somebody
    /// really is told.
    pub(crate) fn told(self, speaker: &Person, why: Concern, is_told: bool) -> Phrase {
        if why == Concern::CallMe {
            let key = if is_told {
                Key::CallMe
            } else {
                Key::CallMeUntold
            };
            return self.signed(speaker, key);
        }
        let grief = (why == Concern::Alarm(Alarm::Grief)).then_some(Key::Grief);
        let Some(first) = self.first_help(why).or(grief) else {
            let key = if is_told { Key::Told } else { Key::NotTold };
            return self.signed(speaker, key);
        };
        let told = if is_told {
            Key::ToldAdviser
        } else {
            Key::ToldNobody
        };
        let adviser = self.adviser_name(speaker);
        let told = Phrase::new(told, args! { "adviser" => Value::name(adviser) });
        self.signed_with(speaker, first, args! { "told" => told })
    }
}
