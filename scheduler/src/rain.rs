//! What the farmers of a place tell of the rain, put together.
//!
//! One keen reporter must not open the season for all, so people are counted, not texts; and a
//! day without a report is not a dry day. The answer is advice: only the adviser opens the
//! planting window. Deliberately absent: measured rain ([`crate::onset`]).

use alloc::{
    collections::{BTreeMap, BTreeSet},
    vec::Vec,
};

use budwood_parser::Wetness;
use chrono::NaiveDate;

use crate::{days, id::PersonId};

/// Rain of so many days counts.
const LOOK_BACK_DAYS: u32 = 10;
/// On so many of these days it must have soaked. With the dry spell of 7 days below: Marteau et
/// al. 2009, as cited in EGU22-2866, define the onset in West Africa by 1 or 2 wet days and no
/// such spell in the next 30.
const SOAKED_DAYS_MIN: usize = 2;
const DRY_SPELL_DAYS: i64 = 7;
/// Fewer people say nothing of a place (an assumption).
const REPORTERS_MIN: usize = 3;
/// So many of a hundred must have had soaking rain (an assumption; the worked example opens at 6 of
/// 8 and holds at 2 of 7).
const SOAKED_PCT_MIN: usize = 60;
/// A day with so much rain soaks (Stern, Dennett and Garbutt 1981; the usual figure, from memory).
const SOAKING_MM: f64 = 20.0;

/// What one person told of one day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rain {
    /// The day.
    pub on: NaiveDate,
    /// Soaked or none; none when only millimetres were told.
    pub wetness: Option<Wetness>,
    /// Millimetres, if measured.
    pub mm: Option<f64>,
}

impl Rain {
    /// Whether it soaked the ground.
    #[must_use]
    pub fn is_soaking(&self) -> bool {
        match (self.mm, self.wetness) {
            (Some(mm), _) => mm >= SOAKING_MM,
            (None, wetness) => wetness == Some(Wetness::Soaked),
        }
    }

    /// Whether it was told to be dry.
    #[must_use]
    pub fn is_dry(&self) -> bool {
        self.wetness == Some(Wetness::None) || self.mm == Some(0.0)
    }
}

/// How the rain stands at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RainMap {
    /// People who told of soaking rain in the last ten days.
    pub soaked: usize,
    /// People who told of rain, or of none.
    pub reporters: usize,
    /// What follows.
    pub advice: Advice,
}

/// What reports say of opening the planting window.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Advice {
    /// It looks open.
    LooksOpen,
    /// Not enough rain yet, or it stopped.
    Hold,
    /// Too few people told.
    TooFew,
}

/// Puts the reports of a place together, as they stand on a day.
#[must_use]
pub fn rain_map(reports: &[(PersonId, Rain)], today: NaiveDate) -> RainMap {
    let since = days::before(today, LOOK_BACK_DAYS - 1).unwrap_or(today);
    let lately: Vec<&(PersonId, Rain)> = reports
        .iter()
        .filter(|(_, rain)| (since..=today).contains(&rain.on))
        .collect();
    let mut people: BTreeMap<PersonId, bool> = BTreeMap::new();
    for (person, rain) in &lately {
        *people.entry(*person).or_default() |= rain.is_soaking();
    }
    let soaked_on: BTreeSet<NaiveDate> = lately
        .iter()
        .filter(|(_, rain)| rain.is_soaking())
        .map(|(_, rain)| rain.on)
        .collect();
    let dry_on: BTreeSet<NaiveDate> = lately
        .iter()
        .filter(|(_, rain)| rain.is_dry())
        .map(|(_, rain)| rain.on)
        .collect();
    let soaked = people.values().filter(|soaked| **soaked).count();
    let reporters = people.len();
    let is_open = soaked * 100 >= reporters * SOAKED_PCT_MIN
        && soaked_on.len() >= SOAKED_DAYS_MIN
        && !is_dry_spell(&soaked_on, &dry_on, today);
    let advice = match (reporters >= REPORTERS_MIN, is_open) {
        (false, _) => Advice::TooFew,
        (true, true) => Advice::LooksOpen,
        (true, false) => Advice::Hold,
    };
    RainMap {
        soaked,
        reporters,
        advice,
    }
}

/// Whether seven days or more lie between one soaking and the next, or today, in which somebody
/// told that it was dry.
fn is_dry_spell(
    soaked_on: &BTreeSet<NaiveDate>,
    dry_on: &BTreeSet<NaiveDate>,
    today: NaiveDate,
) -> bool {
    let nexts = soaked_on.iter().skip(1).chain([&today]);
    soaked_on.iter().zip(nexts).any(|(soaked, next)| {
        let days = next.signed_duration_since(*soaked).num_days();
        days > DRY_SPELL_DAYS && dry_on.iter().any(|dry| soaked < dry && dry <= next)
    })
}

/// Whether the last that was told of a block is that it is dry, with no soaking rain in the week
/// before.
#[must_use]
pub fn is_dry(rains: &[Rain], today: NaiveDate) -> Option<NaiveDate> {
    let last = rains
        .iter()
        .filter(|rain| rain.on <= today)
        .max_by_key(|rain| rain.on)?;
    let soaked = rains.iter().any(|rain| {
        let days = last.on.signed_duration_since(rain.on).num_days();
        rain.is_soaking() && (0..DRY_SPELL_DAYS).contains(&days)
    });
    (last.is_dry() && !soaked).then_some(last.on)
}

#[cfg(test)]
mod tests {
    use std::vec::Vec;

    use budwood_parser::Wetness;
    use chrono::NaiveDate;

    use super::{Advice, Rain, RainMap, is_dry, rain_map};
    use crate::id::PersonId;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn told(person: u32, on: &str, wetness: Wetness) -> (PersonId, Rain) {
        let rain = Rain {
            on: day(on),
            wetness: Some(wetness),
            mm: None,
        };
        (PersonId(person), rain)
    }

    const TODAY: &str = "2027-06-10";

    fn place(soaked: u32, of: u32) -> Vec<(PersonId, Rain)> {
        let mut reports = Vec::new();
        for person in 0..of {
            if person < soaked {
                reports.push(told(person, "2027-06-05", Wetness::Soaked));
                reports.push(told(person, "2027-06-08", Wetness::Soaked));
            } else {
                reports.push(told(person, "2027-06-08", Wetness::None));
            }
        }
        reports
    }

    /// A worked example: Hilltop, 6 of 8 had soaking rain, looks open; River, 2 of 7, is held.
    #[test]
    fn one_place_looks_open_and_another_is_held() {
        let map = |soaked, of| rain_map(&place(soaked, of), day(TODAY));
        assert_eq!(
            map(6, 8),
            RainMap {
                soaked: 6,
                reporters: 8,
                advice: Advice::LooksOpen
            }
        );
        assert_eq!(
            map(2, 7),
            RainMap {
                soaked: 2,
                reporters: 7,
                advice: Advice::Hold
            }
        );
    }

    #[test]
    fn many_texts_of_one_person_are_one_report() {
        let mut keen = Vec::new();
        for on in ["2027-06-02", "2027-06-04", "2027-06-06", "2027-06-08"] {
            keen.push(told(1, on, Wetness::Soaked));
        }
        let map = rain_map(&keen, day(TODAY));
        assert_eq!((map.soaked, map.reporters), (1, 1));
        assert_eq!(map.advice, Advice::TooFew);
        assert_eq!(rain_map(&[], day(TODAY)).advice, Advice::TooFew);
    }

    #[test]
    fn one_day_of_rain_is_not_a_season() {
        let once: Vec<_> = (0..8)
            .map(|person| told(person, "2027-06-08", Wetness::Soaked))
            .collect();
        assert_eq!(rain_map(&once, day(TODAY)).advice, Advice::Hold);
        let long_ago = rain_map(&place(8, 8), day("2027-07-10"));
        assert_eq!(long_ago.advice, Advice::TooFew, "a month later");
    }

    /// A dry spell of seven days after the rain holds the window, where somebody told of it. Days
    /// without a report say nothing.
    #[test]
    fn a_dry_spell_holds() {
        let mut rained: Vec<_> = (0..8)
            .flat_map(|person| {
                [
                    told(person, "2027-06-01", Wetness::Soaked),
                    told(person, "2027-06-02", Wetness::Soaked),
                ]
            })
            .collect();
        assert_eq!(rain_map(&rained, day(TODAY)).advice, Advice::LooksOpen);
        rained.push(told(3, "2027-06-09", Wetness::None));
        assert_eq!(rain_map(&rained, day(TODAY)).advice, Advice::Hold);
        rained.push(told(4, "2027-06-09", Wetness::Soaked));
        rained.push(told(4, "2027-06-06", Wetness::Soaked));
        assert_eq!(rain_map(&rained, day(TODAY)).advice, Advice::LooksOpen);
    }

    #[test]
    fn measured_rain_counts_by_its_amount() {
        let measured = |mm| Rain {
            on: day(TODAY),
            wetness: Some(Wetness::Soaked),
            mm: Some(mm),
        };
        assert!(measured(20.0).is_soaking());
        assert!(!measured(3.0).is_soaking());
        assert!(measured(0.0).is_dry());
        assert!(!measured(3.0).is_dry());
    }

    #[test]
    fn a_block_is_dry_by_its_last_word() {
        let rains = |list: &[(&str, Wetness)]| -> Vec<Rain> {
            list.iter()
                .map(|(on, wetness)| told(1, on, *wetness).1)
                .collect()
        };
        let dry = |list: &[(&str, Wetness)]| is_dry(&rains(list), day(TODAY));
        assert_eq!(dry(&[]), None);
        assert_eq!(
            dry(&[("2027-06-09", Wetness::None)]),
            Some(day("2027-06-09"))
        );
        let shower = [
            ("2027-06-05", Wetness::Soaked),
            ("2027-06-09", Wetness::None),
        ];
        assert_eq!(dry(&shower), None, "wet four days before");
        let spell = [
            ("2027-06-01", Wetness::Soaked),
            ("2027-06-09", Wetness::None),
        ];
        assert_eq!(dry(&spell), Some(day("2027-06-09")));
        let over = [
            ("2027-06-08", Wetness::None),
            ("2027-06-09", Wetness::Soaked),
        ];
        assert_eq!(dry(&over), None);
    }
}
