//! An instant becomes a local time here, and a local time an instant.

use budwood_scheduler::Group;
use chrono::{DateTime, NaiveDate, NaiveDateTime, TimeDelta, TimeZone, Utc};
use chrono_tz::Tz;

use super::Setup;

/// A group's zone; the roll lets only known names in.
pub(super) fn zone(group: &Group, setup: &Setup) -> Tz {
    group.zone.parse().unwrap_or(setup.zone)
}

/// The civil day of an instant in a zone.
pub(super) fn civil_day(at: DateTime<Utc>, zone: Tz) -> NaiveDate {
    at.with_timezone(&zone).date_naive()
}

/// The instant of a local time. A time that the clock skips is moved on to where it goes on; of
/// a time that comes twice the first is meant.
pub(super) fn instant(local: NaiveDateTime, zone: Tz) -> DateTime<Utc> {
    /// No clock is put forward by more than this.
    const GAP_HOURS_MAX: i64 = 3;
    (0..=GAP_HOURS_MAX * 4)
        .find_map(|quarter| {
            let moved = local + TimeDelta::minutes(quarter * 15);
            zone.from_local_datetime(&moved).earliest()
        })
        .map_or_else(
            || Utc.from_utc_datetime(&local),
            |at| at.with_timezone(&Utc),
        )
}
