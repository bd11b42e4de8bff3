//! When gaps may be filled with new trees: while it still makes sense, and rain is left.

use chrono::NaiveDate;

use crate::{
    handbook::calendar::Backfill,
    sums::days,
    words::season::{Rains, Season},
};

/// Days on which gaps may be filled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Filling {
    /// The first.
    pub from: NaiveDate,
    /// The last.
    pub last: NaiveDate,
}

/// The days of filling that this day lies in, or the next ones after it.
///
/// They reach to the handbook's limit in months after planting and, when the rains are known, only
/// while enough of these is left. None when it is too late for ever.
#[must_use]
pub fn filling(
    planted_on: NaiveDate,
    day: NaiveDate,
    season: &Season,
    rule: &Backfill,
) -> Option<Filling> {
    let limit = days::before(days::months_after(planted_on, rule.until_months)?, 1)?;
    if day > limit {
        return None;
    }
    let Some(rains) = season.rains(day) else {
        return Some(Filling {
            from: planted_on,
            last: limit,
        });
    };
    let in_rains = |rains: Rains| {
        let last = Season::last_planting(rains, rule.rain_left_days)?.min(limit);
        let from = rains.start.max(planted_on);
        (day <= last && from <= last).then_some(Filling { from, last })
    };
    in_rains(rains).or_else(|| in_rains(season.next(rains)?))
}
