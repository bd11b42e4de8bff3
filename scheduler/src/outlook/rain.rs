//! What the farmers of a place tell of the rain, put together.
//!
//! One keen reporter must not open the season for all, so people are counted, not texts; and a
//! day without a report is not a dry day. The answer is advice: only the adviser opens the
//! planting window. When several people tell of it, a published definition ([`crate::outlook::onset`]) dates
//! the start; a dry spell soon after makes it a false one.

use alloc::{
    collections::{BTreeMap, BTreeSet},
    vec::Vec,
};

use budwood_parser::Wetness;
use chrono::NaiveDate;

use crate::{
    outlook::onset::{DailyRain, Onset, STERN, onset},
    sums::days,
    words::{
        id::PersonId,
        rainfall::{Rain, SOAKING_MM},
    },
};

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

/// A change that the adviser should hear of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// The rains may have begun on this day.
    Begun(NaiveDate),
    /// It has not soaked since this day: they had not.
    Stopped(NaiveDate),
}

/// How the rains turned at a place, as told on each day from one to another.
///
/// They may have begun when [`rain_map`] looks open and the definition of Stern, Dennett and
/// Garbutt is met in those days; no sooner, and not when one person says so. They had not when,
/// within the days in which that definition forbids a dry spell, several people told of dry weather
/// after seven days without soaking rain.
#[must_use]
pub fn turns(reports: &[(PersonId, Rain)], from: NaiveDate, until: NaiveDate) -> Vec<Turn> {
    let days: BTreeSet<NaiveDate> = reports.iter().map(|(_, rain)| rain.on).collect();
    let mut turns = Vec::new();
    let days = days.into_iter().filter(|day| (from..=until).contains(day));
    for today in days {
        let turn = match turns.last() {
            Some(Turn::Begun(begun)) => stopped(reports, *begun, today).map(Turn::Stopped),
            Some(Turn::Stopped(_)) | None => begun(reports, from, today).map(Turn::Begun),
        };
        turns.extend(turn);
    }
    turns
}

fn begun(reports: &[(PersonId, Rain)], from: NaiveDate, today: NaiveDate) -> Option<NaiveDate> {
    if rain_map(reports, today).advice != Advice::LooksOpen {
        return None;
    }
    let since = days::before(today, LOOK_BACK_DAYS - 1)?.max(from);
    match onset(&daily(reports, today), since, &STERN) {
        Onset::On(day) | Onset::NotKnownYet(day) => Some(day),
        Onset::None => None,
    }
}

fn stopped(reports: &[(PersonId, Rain)], begun: NaiveDate, today: NaiveDate) -> Option<NaiveDate> {
    let told = || reports.iter().filter(|(_, rain)| rain.on <= today);
    let soaking = told().filter(|(_, rain)| rain.is_soaking());
    let last = soaking.map(|(_, rain)| rain.on).max()?;
    let dry: BTreeSet<PersonId> = told()
        .filter(|(_, rain)| rain.is_dry() && rain.on > last)
        .map(|(person, _)| *person)
        .collect();
    let look_ahead_days = STERN.dry_spell.map_or(0, |spell| spell.look_ahead_days);
    let is_soon = last <= days::after(begun, look_ahead_days)?;
    let is_spell = today.signed_duration_since(last).num_days() > DRY_SPELL_DAYS;
    (is_soon && is_spell && dry.len() >= REPORTERS_MIN).then_some(last)
}

/// Millimetres by day: what half of those who told had at least, so that one odd word changes
/// little. Soaking rain counts as its least amount.
fn daily(reports: &[(PersonId, Rain)], today: NaiveDate) -> DailyRain {
    let mut told: BTreeMap<NaiveDate, Vec<f64>> = BTreeMap::new();
    for (_, rain) in reports.iter().filter(|(_, rain)| rain.on <= today) {
        let wetness = rain.wetness.map(|wetness| match wetness {
            Wetness::Soaked => SOAKING_MM,
            Wetness::None => 0.0,
        });
        told.entry(rain.on).or_default().extend(rain.mm.or(wetness));
    }
    let middle = |(day, mut amounts): (NaiveDate, Vec<f64>)| {
        amounts.sort_by(f64::total_cmp);
        Some((day, *amounts.get(amounts.len() / 2)?))
    };
    told.into_iter().filter_map(middle).collect()
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

    use super::{Advice, RainMap, Turn, is_dry, rain_map, turns};
    use crate::words::{id::PersonId, rainfall::Rain};

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

    /// Two weeks as text, told by so many people: S soaked, - dry, a point where nothing was told.
    fn weeks(told: &str, people: u32) -> Vec<(PersonId, Rain)> {
        let days = day("2027-06-01").iter_days().zip(told.chars());
        let told = |(on, sign): (NaiveDate, char)| {
            let wetness = match sign {
                'S' => Wetness::Soaked,
                '-' => Wetness::None,
                _ => return Vec::new(),
            };
            let rain = Rain {
                on,
                wetness: Some(wetness),
                mm: None,
            };
            (0..people).map(|one| (PersonId(one), rain)).collect()
        };
        days.flat_map(told).collect()
    }

    fn turned(reports: &[(PersonId, Rain)]) -> Vec<Turn> {
        turns(reports, day("2027-06-01"), day("2027-07-31"))
    }

    /// Marteau et al. 2009 for West Africa: wet days, and no dry spell of seven days after them.
    #[test]
    fn rains_begin_when_several_tell_and_a_dry_spell_makes_it_a_false_start() {
        let begun = |on| Turn::Begun(day(on));
        let stopped = |on| Turn::Stopped(day(on));
        assert_eq!(turned(&weeks("..SS", 3)), [begun("2027-06-03")]);
        assert_eq!(turned(&weeks("..SS", 2)), [], "two people are no place");
        assert_eq!(turned(&weeks("..S.", 5)), [], "one day is no season");
        assert_eq!(turned(&weeks("..SS------", 3)), [begun("2027-06-03")]);
        let false_start = weeks("..SS--------", 3);
        let both = [begun("2027-06-03"), stopped("2027-06-04")];
        assert_eq!(turned(&false_start), both);
        assert_eq!(turned(&weeks("..SS.......-", 3)), both);
        let again = turned(&weeks("..SS--------.S.S", 3));
        assert_eq!(again, [both[0], both[1], begun("2027-06-14")]);
        // Later in the rains a dry week is no false start.
        let late = weeks(&["..", &"S".repeat(40), "---------"].concat(), 3);
        assert_eq!(turned(&late), [begun("2027-06-03")]);
        assert_eq!(turned(&[]), []);
        let (first, last) = (day("2027-06-01"), day("2027-07-31"));
        assert_eq!(turns(&false_start, last, first), [], "before the first day");
    }

    /// The dry word of one person, or of two, changes nothing.
    #[test]
    fn a_false_start_needs_several_people_too() {
        let mut reports = weeks("..SS", 3);
        for person in 0..3 {
            assert_eq!(turned(&reports).len(), 1);
            reports.push(told(person, "2027-06-14", Wetness::None));
        }
        assert_eq!(turned(&reports).len(), 2);
    }

    /// What half of them had counts: 12, 20 and 25 mm are 20 mm.
    #[test]
    fn one_odd_gauge_changes_nothing() {
        let mut reports = weeks(".SS", 3);
        for ((_, rain), mm) in reports.iter_mut().zip([12.0, 20.0, 25.0]) {
            rain.mm = Some(mm);
        }
        assert_eq!(turned(&reports), [Turn::Begun(day("2027-06-02"))]);
    }

    /// 12 mm and 9 mm are the 20 mm in two days of Stern, Dennett and Garbutt 1981; showers of
    /// less are not, whatever they felt like.
    #[test]
    fn measured_rain_dates_the_start() {
        let measured = |person, on: &str, mm| {
            let (person, rain) = told(person, on, Wetness::Soaked);
            (
                person,
                Rain {
                    mm: Some(mm),
                    ..rain
                },
            )
        };
        let rained = |first, second| {
            let mut reports = weeks("......S.S", 3);
            reports.retain(|(_, rain)| rain.on > day("2027-06-08"));
            for person in 0..3 {
                reports.push(measured(person, "2027-06-05", first));
                reports.push(measured(person, "2027-06-06", second));
            }
            reports.push(told(0, "2027-06-08", Wetness::Soaked));
            turned(&reports)
        };
        assert_eq!(rained(12.0, 9.0), [Turn::Begun(day("2027-06-05"))]);
        assert_eq!(rained(3.0, 4.0), [Turn::Begun(day("2027-06-08"))]);
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
