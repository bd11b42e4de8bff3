//! People who are left in peace: no nudge goes to them until a day, or until the adviser says go.
//!
//! Deliberately absent: who may hold, and in what words it is told.

use alloc::string::String;

use chrono::NaiveDate;

/// That somebody is left in peace.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Hold {
    /// From this day.
    pub since: NaiveDate,
    /// The last day of it; none until the adviser says go.
    pub until: Option<NaiveDate>,
    /// Why.
    pub reason: Reason,
}

/// Why somebody is left in peace.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reason {
    /// Somebody in the family has died.
    Grief,
    /// In the adviser's own words.
    Told(String),
}

impl Hold {
    /// Whether it holds on this day.
    #[must_use]
    pub fn is_on(&self, today: NaiveDate) -> bool {
        self.since <= today && self.until.is_none_or(|until| today <= until)
    }
}

#[cfg(test)]
mod tests {
    use chrono::NaiveDate;

    use super::{Hold, Reason};

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    #[test]
    fn a_hold_lasts_until_its_last_day_or_until_a_person_lifts_it() {
        let hold = |until: Option<&str>| Hold {
            since: day("2027-06-10"),
            until: until.map(day),
            reason: Reason::Grief,
        };
        let short = hold(Some("2027-07-10"));
        let days = ["2027-06-09", "2027-06-10", "2027-07-10", "2027-07-11"];
        assert_eq!(
            days.map(|on| short.is_on(day(on))),
            [false, true, true, false]
        );
        assert!(hold(None).is_on(day("2037-06-10")));
    }
}
