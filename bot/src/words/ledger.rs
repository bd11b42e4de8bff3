//! What left in a month and by which gateway, what that is of the budget, and what the operator was
//! told of it.

use std::collections::BTreeMap;

use chrono::{DateTime, Datelike, NaiveDate, Utc};

/// Shares of the month's budget of which the operator is told when they are gone, in per cent.
pub const WARNED_AT_PCT: [u32; 3] = [50, 80, 100];

/// A month (UTC).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ledger {
    /// Its first day.
    pub month: NaiveDate,
    /// What left in it, by gateway.
    pub sent: BTreeMap<String, Sent>,
    /// The largest share of the budget, as it is, of which the operator was told, in per cent.
    pub warned_pct: u32,
    /// The day of the operator's last morning line, in the operator's zone.
    pub told_on: Option<NaiveDate>,
}

/// What left.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Sent {
    /// Parts, as providers count them.
    pub parts: u64,
    /// What they cost, in millionths of the money that gateways are paid in; nothing where no price
    /// is known.
    pub micro: u64,
}

/// What may leave in a month.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct MonthBudget {
    /// Parts; none for no bound.
    pub parts: Option<u64>,
    /// Money in millionths; none for no bound.
    pub micro: Option<u64>,
}

impl Ledger {
    /// A month in which nothing left yet.
    #[must_use]
    pub fn of(now: DateTime<Utc>) -> Self {
        let today = now.date_naive();
        Self {
            month: today.with_day(1).unwrap_or(today),
            sent: BTreeMap::new(),
            warned_pct: 0,
            told_on: None,
        }
    }

    /// The month of this moment: this one, or a new one that knows what was told.
    #[must_use]
    pub fn at(self, now: DateTime<Utc>) -> Self {
        let new = Self::of(now);
        // Time does not go back, whatever a clock said once.
        if new.month <= self.month {
            return self;
        }
        Self {
            told_on: self.told_on,
            ..new
        }
    }

    /// A person says that this is the time: what a clock ahead of it wrote is of now.
    pub fn not_ahead(&mut self, now: DateTime<Utc>) {
        self.month = self.month.min(Self::of(now).month);
        let tomorrow = now.date_naive().succ_opt();
        self.told_on = self.told_on.filter(|told| Some(*told) <= tomorrow);
    }

    /// So many parts left by this gateway.
    pub fn add(&mut self, gateway: &str, parts: u32, micro: Option<u64>) {
        let sent = self.sent.entry(gateway.to_owned()).or_default();
        sent.parts = sent.parts.saturating_add(parts.into());
        sent.micro = sent.micro.saturating_add(micro.unwrap_or_default());
    }

    /// What left by all of them.
    #[must_use]
    pub fn total(&self) -> Sent {
        let add = |all: Sent, one: &Sent| Sent {
            parts: all.parts.saturating_add(one.parts),
            micro: all.micro.saturating_add(one.micro),
        };
        self.sent.values().fold(Sent::default(), add)
    }
}

impl MonthBudget {
    /// How much of it is gone, in whole per cent, by whichever bound is nearer. None without one.
    #[must_use]
    pub fn gone_pct(self, ledger: &Ledger) -> Option<u32> {
        let total = ledger.total();
        let pct = |gone: u64, of: u64| gone.saturating_mul(100) / of.max(1);
        let parts = self.parts.map(|of| pct(total.parts, of));
        let money = self.micro.map(|of| pct(total.micro, of));
        let gone = parts.max(money)?;
        Some(u32::try_from(gone).unwrap_or(u32::MAX))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(text: &str) -> DateTime<Utc> {
        text.parse().unwrap()
    }

    #[test]
    fn the_nearer_bound_counts_in_whole_per_cent() {
        let mut ledger = Ledger::of(at("2026-11-30T23:00:00Z"));
        let budget = |parts, micro| MonthBudget { parts, micro };
        assert_eq!(budget(None, None).gone_pct(&ledger), None);
        ledger.add("sim", 30, Some(600_000));
        ledger.add("free", 10, None);
        ledger.add("sim", 9, Some(180_000));
        assert_eq!(
            ledger.total(),
            Sent {
                parts: 49,
                micro: 780_000
            }
        );
        assert_eq!(budget(Some(100), None).gone_pct(&ledger), Some(49));
        assert_eq!(
            budget(Some(100), Some(1_000_000)).gone_pct(&ledger),
            Some(78)
        );
        assert_eq!(budget(Some(0), None).gone_pct(&ledger), Some(4_900));
    }

    #[test]
    fn a_new_month_begins_with_nothing_but_what_was_told() {
        let mut ledger = Ledger::of(at("2026-11-30T23:59:59Z"));
        ledger.add("sim", 3, None);
        ledger.warned_pct = 80;
        ledger.told_on = NaiveDate::from_ymd_opt(2026, 11, 30);
        let same = ledger.clone().at(at("2026-11-30T23:59:59Z"));
        assert_eq!(same, ledger);
        assert_eq!(ledger.clone().at(at("2026-10-31T00:00:00Z")), ledger);
        let next = ledger.clone().at(at("2026-12-01T00:00:00Z"));
        assert_eq!(next.month, NaiveDate::from_ymd_opt(2026, 12, 1).unwrap());
        assert_eq!((next.total(), next.warned_pct), (Sent::default(), 0));
        assert_eq!(next.told_on, ledger.told_on);
    }

    #[test]
    fn what_a_wrong_clock_wrote_ahead_does_not_silence_the_months_to_come() {
        let mut ledger = Ledger::of(at("2031-05-02T00:00:00Z"));
        ledger.add("sim", 3, None);
        ledger.told_on = NaiveDate::from_ymd_opt(2031, 5, 2);
        let now = at("2026-12-10T08:00:00Z");
        ledger.not_ahead(now);
        assert_eq!(
            (ledger.month, ledger.told_on),
            (Ledger::of(now).month, None)
        );
        assert_eq!(ledger.total().parts, 3);
        ledger.told_on = Some(now.date_naive());
        ledger.not_ahead(now);
        assert_eq!(ledger.told_on, Some(now.date_naive()));
    }
}
