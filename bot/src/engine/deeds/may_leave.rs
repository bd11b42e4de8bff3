//! Whether a text may leave at this very moment: asked again of each, since much may have changed
//! after it was made.

use budwood_scheduler::{
    Group, PersonId,
    jobs::nudge::{self, Withheld},
};
use chrono::{DateTime, NaiveTime, TimeDelta, Utc};

use crate::{
    engine::{
        budget::Class,
        local_time::{instant, zone},
        step::Step,
    },
    words::message::{Outbound, Purpose, SendState},
};

/// Whether a text may go.
pub(super) enum Verdict {
    Go,
    Wait(DateTime<Utc>),
    Drop(SendState),
}

impl Step<'_> {
    pub(super) fn verdict(&self, outbound: &Outbound) -> Verdict {
        if outbound.expires_at <= self.now {
            return Verdict::Drop(SendState::Expired);
        }
        match outbound.purpose {
            Purpose::Answer { .. } | Purpose::Notice { .. } | Purpose::Service { .. } => {
                Verdict::Go
            }
            Purpose::Nudge { block, task, due } => {
                let verdict = self.nudge_verdict(&outbound.to, block, task, due);
                let verdict = verdict.unwrap_or(Verdict::Drop(SendState::Cancelled));
                self.if_paid_for(Class::reminder(task), verdict)
            }
            Purpose::Welcome { person } => {
                let verdict = self.welcome_verdict(&outbound.to, person);
                let verdict = verdict.unwrap_or(Verdict::Drop(SendState::Cancelled));
                self.if_paid_for(Class::Nudge, verdict)
            }
            Purpose::Announcement { person, .. } => {
                let verdict = self.announcement_verdict(&outbound.to, person);
                let verdict = verdict.unwrap_or(Verdict::Drop(SendState::Cancelled));
                self.if_paid_for(Class::Nudge, verdict)
            }
        }
    }

    /// What nobody asked for waits for tomorrow where day or month have no money left for it.
    fn if_paid_for(&self, class: Class, verdict: Verdict) -> Verdict {
        if matches!(verdict, Verdict::Go) && !self.view().has_money_for(class) {
            Verdict::Wait(self.tomorrow())
        } else {
            verdict
        }
    }

    /// When the next day of the budget begins.
    fn tomorrow(&self) -> DateTime<Utc> {
        let day = self.now.date_naive() + TimeDelta::days(1);
        day.and_time(NaiveTime::MIN).and_utc()
    }

    /// None when nobody is to be told any more.
    fn nudge_verdict(
        &self,
        to: &str,
        block: budwood_scheduler::BlockId,
        task: budwood_scheduler::TaskKind,
        due: chrono::NaiveDate,
    ) -> Option<Verdict> {
        let (owner, group) = self.view().told_about(block)?;
        // The phone may have been given to somebody else meanwhile.
        let is_theirs = self
            .world
            .directory
            .numbers_that_reach(owner.id)
            .any(|number| number == to);
        if !is_theirs {
            return None;
        }
        let zone = zone(group, self.setup);
        let local = self.now.with_timezone(&zone).naive_local();
        let verdict = nudge::may_go(
            &self.setup.rules,
            (task, due),
            &self.view().tasks_of(block, local.date()),
            local,
            &group.quiet_days,
        );
        match verdict {
            Ok(()) => Some(Verdict::Go),
            Err(Withheld::NotDue | Withheld::NoConsent | Withheld::Held(_)) => None,
            Err(Withheld::Quiet) => Some(self.wait_for_day(group)),
        }
    }

    /// The same for a welcome.
    fn welcome_verdict(&self, to: &str, person: PersonId) -> Option<Verdict> {
        let owner = self.view().person(person)?;
        let group = self.view().group_of(owner)?;
        let mut numbers = self.world.directory.numbers_that_reach(person);
        let local = self.now.with_timezone(&zone(group, self.setup));
        if nudge::withheld(owner, local.date_naive()).is_some() || numbers.all(|own| own != to) {
            return None;
        }
        let may = nudge::may_send(&self.setup.rules, local.naive_local(), &group.quiet_days);
        Some(if may {
            Verdict::Go
        } else {
            self.wait_for_day(group)
        })
    }

    /// The same for an adviser's own words. They wait for the morning only: what they speak of may
    /// be on that day.
    fn announcement_verdict(&self, to: &str, person: PersonId) -> Option<Verdict> {
        let view = self.view();
        let reader = view.person(person)?;
        let group = view.group_of(reader)?;
        view.announced_on(reader).filter(|number| *number == to)?;
        let zone = zone(group, self.setup);
        let local = self.now.with_timezone(&zone).naive_local();
        if nudge::may_send(&self.setup.rules, local, &group.quiet_days) {
            return Some(Verdict::Go);
        }
        let first = nudge::first_by_day(&self.setup.rules, local, &group.quiet_days);
        // A moment later at least, or it would be asked for again at once.
        let later = self.now + TimeDelta::seconds(1);
        Some(Verdict::Wait(instant(first, zone).max(later)))
    }

    /// At night and on quiet days routine texts wait.
    fn wait_for_day(&self, group: &Group) -> Verdict {
        let zone = zone(group, self.setup);
        let local = self.now.with_timezone(&zone).naive_local();
        let slot = nudge::slot(&self.setup.rules, local, &group.quiet_days, None);
        // A moment later at least, or the text would be asked for again at once.
        let later = self.now + TimeDelta::seconds(1);
        Verdict::Wait(instant(slot, zone).max(later))
    }
}
