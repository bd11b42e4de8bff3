//! What may be handed to the gateway: once, in time, and a nudge only to those who agreed, by day,
//! rested, for work that is open.

use budwood::{
    engine::Engine,
    words::{
        message::{Outbound, Purpose, SendState},
        traffic::Outgoing,
    },
};
use budwood_scheduler::{BlockId, Group, MessageId, TaskKind, jobs::nudge};
use chrono::{DateTime, NaiveDate, Utc};

use super::{Laws, Moment, local};
use crate::fixture::LINE;

/// Days between two routine texts to a phone.
pub(super) const REST_DAYS: i64 = 7;
/// Days after which a nudge that could not be sent is dropped.
const STALE_DAYS: i64 = 3;

impl Laws {
    /// A text is handed to the gateway.
    pub(in super::super) fn handed(&mut self, text: &Outgoing, engine: &Engine, moment: Moment) {
        assert!(!moment.held, "a text leaves while sending is held");
        if let Some((before, again)) = self.handed.get(&text.id) {
            assert_eq!(before, text, "an id stands for two texts");
            assert!(again, "handed over twice");
        }
        let again = engine.setup().ways.is_idempotent(LINE);
        self.handed.insert(text.id, (text.clone(), again));
        self.figures.handed += 1;
        let outbound = self
            .outbound
            .get(&text.id)
            .expect("a text that was written")
            .clone();
        assert!(moment.now < outbound.expires_at, "too old to be sent");
        if let Purpose::Nudge { block, task, due } = outbound.purpose {
            self.figures.nudges += 1;
            assert!(self.met.contains(&text.to), "a nudge before the welcome");
            self.nudge(&outbound, (block, task, due), engine, moment);
        }
    }

    /// A phone is met by its welcome once that may have left.
    pub(super) fn meet(&mut self, written: &Outbound) {
        let is_welcome = matches!(written.purpose, Purpose::Welcome { .. });
        let may_have_left = !matches!(
            written.state,
            SendState::Ready | SendState::Expired | SendState::Cancelled
        );
        if is_welcome && may_have_left {
            self.met.insert(written.to.clone());
        }
    }

    /// The gateway surely did not take it, so it may be tried again.
    pub(in super::super) fn was_not_taken(&mut self, id: MessageId) {
        if let Some((_, again)) = self.handed.get_mut(&id) {
            *again = true;
        }
    }

    fn nudge(
        &mut self,
        text: &Outbound,
        (block, task, due): (BlockId, TaskKind, NaiveDate),
        engine: &Engine,
        moment: Moment,
    ) {
        assert!(!moment.wrong, "a nudge by a clock that is wrong");
        let directory = engine.directory();
        let record = directory.block(block).expect("a block");
        let owner = directory.person(record.owner).expect("an owner");
        let group = directory.group_of_block(record).expect("a group");
        let local = local(group, moment.now);
        assert!(self.agreed.contains(&owner.id), "a nudge without consent");
        assert!(!self.held.contains(&owner.id), "a nudge to who mourns");
        assert!(!owner.erased, "a nudge to someone who is erased");
        let is_shown = task != TaskKind::InduceBranching || self.shown.contains(&owner.id);
        assert!(is_shown, "a nudge for work that nobody showed them");
        let own = directory
            .numbers_of(owner.id)
            .any(|number| number == text.to);
        assert!(own, "a nudge to a phone that is not the owner's");
        let rules = nudge::Rules::standard();
        let night = local.time() >= rules.quiet_from || local.time() < rules.quiet_until;
        assert!(!night, "a nudge in quiet hours: {local}");
        assert!(!group.quiet_days.contains(&local.date()), "on a quiet day");
        assert!(due <= local.date(), "a nudge before its day");
        let waited = (moment.now - text.at).num_days();
        assert!(waited <= STALE_DAYS, "a nudge of {waited} days ago");
        let open = engine.tasks(block, local.date());
        assert!(
            open.iter().any(|open| open.kind == task && open.due == due),
            "a nudge to {} of {due} for a job that is not open on {local}: {open:?}",
            task.name()
        );
        assert!(
            !self.facts.is_reported(block, task, due),
            "a nudge to {} of {due} for work done",
            task.name()
        );
        self.rest(text, moment.now, group);
    }

    fn rest(&mut self, text: &Outbound, now: DateTime<Utc>, group: &Group) {
        if let Some((before, at)) = self.nudged.get(&text.to)
            && *before != text.id
        {
            let days = (local(group, now).date() - local(group, *at).date()).num_days();
            assert!(days >= REST_DAYS, "two nudges to a phone in {days} days");
        }
        self.nudged.insert(text.to.clone(), (text.id, now));
    }
}
