//! When a text was sent, and whether it came before.

use chrono::{DateTime, TimeDelta, Utc};

use crate::{
    engine::{memory::duplicates::Delivery, step::Step},
    words::traffic::Inbound,
};

/// A sending time further back than this is not believed.
const LATE_DAYS_MAX: i64 = 30;

impl Step<'_> {
    /// Whether the network or a second gateway brings a text that was taken in before.
    pub(crate) fn came_twice(&mut self, number: &str, inbound: &Inbound) -> bool {
        let delivery = Delivery {
            gateway: inbound.gateway.clone(),
            sent_at: inbound.sent_at.filter(|at| self.is_believable(*at)),
            at: self.now,
        };
        self.world.heard.came_twice(number, &inbound.text, delivery)
    }

    /// The time of sending counts for "yesterday", unless it lies in the future or far back.
    pub(crate) fn believable(&self, sent_at: Option<DateTime<Utc>>) -> DateTime<Utc> {
        sent_at
            .filter(|at| self.is_believable(*at))
            .unwrap_or(self.now)
    }

    fn is_believable(&self, sent_at: DateTime<Utc>) -> bool {
        sent_at <= self.now && sent_at > self.now - TimeDelta::days(LATE_DAYS_MAX)
    }
}
