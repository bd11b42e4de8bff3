//! How much is said to whom, and how much of it is paid for: one table.
//!
//! Who asks much is answered so often an hour and a day. An adviser gets so many notices an hour,
//! and the rest as one digest. Of what the service may send in a day, strangers get the least, and
//! reminders wait before answers do; of a month's budget the looks and rounds stop before the jobs.
//! Codes, STOP and safety go beyond the hour's bound, so that whoever
//! owns the phone sees them, but not without end. What is held back is counted; a phone that texts too
//! much is told so once an hour.

use std::collections::HashSet;

use budwood_scheduler::{Role, TaskKind, TextClass};
use chrono::{DateTime, NaiveDate, TimeDelta, Utc};

use crate::{
    wording::Key,
    words::{
        limits,
        message::{Purpose, Talk},
    },
};

/// What a text is, for the budget.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Class {
    /// Codes and what became of them, STOP, first help: whoever owns the phone must see it.
    Security,
    /// Somebody may be in danger.
    Alarm,
    /// Something that the adviser is told.
    Notice,
    /// The answer to a text.
    Answer,
    /// A reminder of a job.
    Nudge,
    /// A reminder of the month's looks and rounds.
    Round,
    /// The answer to a number that is not on the list.
    Stranger,
    /// How the service is, for its operator.
    Service,
}

/// So many answers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Allowance {
    pub(crate) an_hour: usize,
    pub(crate) a_day: u32,
}

/// Whether an answer goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Verdict {
    /// It does.
    Go,
    /// It does not, and the phone is told so.
    SayOnce,
    /// It does not.
    Hold,
}

/// What was not said, since the start.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct HeldBack {
    /// Answers to phones that texted too much.
    pub answers: u64,
    /// Notices that became part of a digest.
    pub notices: u64,
    /// Answers to strangers.
    pub strangers: u64,
    /// Texts for which the day had no money left.
    pub unpaid: u64,
    /// Answers to names and short codes.
    pub services: u64,
    /// Answers to texts of ours that came back.
    pub echoes: u64,
    /// Answers to machines that say the same whenever we speak.
    pub machines: u64,
    /// Texts to numbers where one may cost any sum.
    pub costly: u64,
}

/// Parts that left on a day.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Spent {
    day: NaiveDate,
    parts: u64,
}

impl Class {
    /// What a text is that says this for this reason, to a phone that is on the list or not.
    pub(crate) const fn of(key: Key, purpose: &Purpose, is_known: bool) -> Self {
        match (key, purpose) {
            (
                Key::CodeWrong
                | Key::CodeLocked
                | Key::EraseAsk
                | Key::Erased
                | Key::AnnounceAsk
                | Key::Announced
                | Key::HandAsk
                | Key::Handed
                | Key::FirstDanger
                | Key::FirstFire
                | Key::FirstIllness
                | Key::FirstSnake
                | Key::HoldAsk
                | Key::NumberAsk
                | Key::NumberCode
                | Key::NumberCodeSent
                | Key::OwnerAsk
                | Key::OwnerChanged
                | Key::PartAsk
                | Key::PartMade
                | Key::JoinAsk
                | Key::JoinAskKnown
                | Key::Joined
                | Key::LeaveAsk
                | Key::Left
                | Key::HelperAsk
                | Key::HelperAsked
                | Key::HelperInvite
                | Key::HelperEnded
                | Key::NumberMoved
                | Key::OfficeCode
                | Key::PhoneFound
                | Key::PhoneFoundAsk
                | Key::PhoneLost
                | Key::PhoneLostAdviser
                | Key::PhoneLostAsk
                | Key::PlantingHeld
                | Key::StopAsk
                | Key::Stopped
                | Key::StoppedShared
                | Key::VisitAsk
                | Key::WarnAsk
                | Key::WarnDone
                | Key::WindowAsk
                | Key::WindowOpened,
                _,
            ) => Self::Security,
            (Key::AlarmNotice, _) => Self::Alarm,
            (_, Purpose::Notice { .. }) => Self::Notice,
            (_, Purpose::Nudge { task, .. }) => Self::reminder(*task),
            (_, Purpose::Welcome { .. } | Purpose::Announcement { .. }) => Self::Nudge,
            (_, Purpose::Service { .. }) => Self::Service,
            (_, Purpose::Answer { .. }) if is_known => Self::Answer,
            (_, Purpose::Answer { .. }) => Self::Stranger,
        }
    }

    /// What a reminder of this job is.
    pub(crate) const fn reminder(task: TaskKind) -> Self {
        match task.class() {
            TextClass::Round => Self::Round,
            TextClass::Urgent | TextClass::Decisive => Self::Nudge,
        }
    }

    /// How much of what the service may send in a day may be gone for it still to go, in per cent;
    /// none when it goes in any case.
    const fn share_pct(self) -> Option<u64> {
        match self {
            Self::Security | Self::Alarm | Self::Notice | Self::Service => None,
            Self::Answer => Some(100),
            Self::Nudge | Self::Round => Some(80),
            Self::Stranger => Some(50),
        }
    }

    /// The same of a month: what stops first, so that the rest lasts until its end. A month's
    /// looks are done without a text too, a job of its own day less so, and who asks wants to know.
    const fn month_share_pct(self) -> Option<u32> {
        match self {
            Self::Security | Self::Alarm | Self::Notice | Self::Service => None,
            Self::Answer => Some(100),
            Self::Nudge => Some(95),
            Self::Round => Some(90),
            Self::Stranger => Some(80),
        }
    }

    /// Whether a month of whose budget so much is gone has money left for it.
    pub(crate) fn is_in_month(self, gone_pct: Option<u32>) -> bool {
        match (self.month_share_pct(), gone_pct) {
            (Some(share), Some(gone)) => gone < share,
            (None, _) | (_, None) => true,
        }
    }

    /// Whether nobody waits for it.
    pub(crate) const fn is_reminder(self) -> bool {
        matches!(self, Self::Nudge | Self::Round)
    }
}

/// How often a phone is answered, by what its people do.
pub(crate) const fn answers(role: Role) -> Allowance {
    let (an_hour, a_day) = match role {
        Role::Adviser => (60, 400),
        Role::Clerk => (30, 200),
        Role::Leader => (20, 80),
        Role::Farmer | Role::Nursery | Role::Viewer => (10, 40),
    };
    Allowance { an_hour, a_day }
}

impl Allowance {
    /// What is left of it after so many days in a row on which all of it was used: half as much with
    /// each. Two machines that answer each other so come down to one answer a day.
    pub(crate) const fn after_full_days(self, days: u32) -> Self {
        let halvings = if days > 6 { 6 } else { days };
        let an_hour = self.an_hour >> halvings;
        let a_day = self.a_day >> halvings;
        Self {
            an_hour: if an_hour == 0 { 1 } else { an_hour },
            a_day: if a_day == 0 { 1 } else { a_day },
        }
    }

    /// With what must be seen even where somebody else has used it up.
    pub(crate) const fn with_urgent(self) -> Self {
        Self {
            an_hour: self.an_hour + limits::URGENT_AN_HOUR,
            a_day: self.a_day + limits::URGENT_A_DAY,
        }
    }
}

/// Notices to one phone in an hour that go at once.
pub(crate) const fn notices_an_hour(class: Class) -> usize {
    match class {
        Class::Alarm => 20,
        Class::Security
        | Class::Notice
        | Class::Answer
        | Class::Nudge
        | Class::Round
        | Class::Stranger
        | Class::Service => 4,
    }
}

/// On how many days in a row before this one a phone was answered as often as a phone is; each day
/// since on which it was not counts back.
pub(crate) fn full_days(talk: &Talk, today: NaiveDate) -> u32 {
    let Some(last) = talk.held_at.map(|at| at.date_naive()) else {
        return 0;
    };
    match u32::try_from((today - last).num_days()) {
        Ok(since @ 1..) => talk.full_days.saturating_sub(since - 1),
        Ok(0) | Err(_) => talk.full_days.saturating_sub(1),
    }
}

/// Whether a phone is answered now; if so, it counts.
pub(crate) fn may_answer(talk: &mut Talk, allowance: Allowance, now: DateTime<Utc>) -> Verdict {
    let hour_ago = now - TimeDelta::hours(1);
    talk.answered_at.retain(|at| *at > hour_ago);
    let today = now.date_naive();
    let (day, told) = talk.answered_on.unwrap_or((today, 0));
    let told = if day == today { told } else { 0 };
    if talk.answered_at.len() >= allowance.an_hour || told >= allowance.a_day {
        let is_said = talk.held_at.is_some_and(|at| at > hour_ago);
        if is_said {
            return Verdict::Hold;
        }
        talk.full_days = full_days(talk, today) + 1;
        talk.held_at = Some(now);
        return Verdict::SayOnce;
    }
    talk.answered_at.push(now);
    talk.answered_on = Some((today, told + 1));
    Verdict::Go
}

/// Whether a phone gets another notice now; if so, it counts. If not, it tells when the hour ends.
pub(crate) fn may_notify(
    talk: &mut Talk,
    class: Class,
    now: DateTime<Utc>,
) -> Result<(), DateTime<Utc>> {
    let hour = TimeDelta::hours(1);
    talk.noticed_at.retain(|at| *at > now - hour);
    match talk.noticed_at.first() {
        Some(first) if talk.noticed_at.len() >= notices_an_hour(class) => Err(*first + hour),
        Some(_) | None => {
            talk.noticed_at.push(now);
            Ok(())
        }
    }
}

impl Spent {
    /// So many parts left.
    pub(crate) fn add(&mut self, parts: u32, now: DateTime<Utc>) {
        let today = now.date_naive();
        // At a start they come by their ids, not by their days.
        if self.day < today {
            *self = Self {
                day: today,
                parts: 0,
            };
        }
        if self.day == today {
            self.parts += u64::from(parts);
        }
    }

    /// Whether the day has money left for a text of this class.
    pub(crate) fn has_left(self, class: Class, a_day: Option<u32>, now: DateTime<Utc>) -> bool {
        let (Some(a_day), Some(pct)) = (a_day, class.share_pct()) else {
            return true;
        };
        let parts = if self.day == now.date_naive() {
            self.parts
        } else {
            0
        };
        parts * 100 < u64::from(a_day) * pct
    }
}

/// Numbers that are not on the list and were answered on this day.
#[derive(Default)]
pub(crate) struct Strangers {
    day: NaiveDate,
    answered: HashSet<String>,
}

impl Strangers {
    /// This one was heard, and perhaps answered, before a start. To be called with the newest first.
    pub(crate) fn recall(&mut self, number: &str, at: DateTime<Utc>) {
        let day = at.date_naive();
        self.day = self.day.max(day);
        if day == self.day && self.answered.len() < limits::STRANGERS_ANSWERED_A_DAY {
            self.answered.insert(number.to_owned());
        }
    }

    /// Whether this one may be answered now; if so, that was the once.
    pub(crate) fn may_answer(&mut self, number: &str, now: DateTime<Utc>) -> bool {
        let today = now.date_naive();
        if self.day != today {
            *self = Self {
                day: today,
                ..Self::default()
            };
        }
        self.answered.len() < limits::STRANGERS_ANSWERED_A_DAY
            && self.answered.insert(number.to_owned())
    }
}

#[cfg(test)]
mod tests;
