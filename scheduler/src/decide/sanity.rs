//! Whether a fact can be true, seen from its block. Challenge, never drop.
//!
//! Limits are from the project's reading rules; those of the trade are marked.

use alloc::{vec, vec::Vec};

use budwood_parser::{Effect, Kind, Per, Unit};
use chrono::NaiveDate;

use super::{Draft, Plot, Scene, Why};
use crate::{
    land::{
        block::{Census, Count},
        stand,
    },
    outlook::growth::{Curve, LIMITS_CM},
    sums::days,
};

/// Planted this many times what the area holds is doubtful.
const OVER_AREA: f64 = 1.3;
/// Where the area is not known, this many times what was planted before is doubtful.
const OVER_STAND: f64 = 1.5;
/// A loss of more than this share at once is doubtful.
const LARGE_LOSS: f64 = 0.2;
/// A small stand loses more than that share by a handful of trees.
const LARGE_LOSS_TREES_MIN: u32 = 5;
/// The same report again within these days is doubtful.
const SAME_AGAIN_DAYS: i64 = 7;
/// Girth of a rubber tree in its first years, in centimetres.
const GIRTH_CM: core::ops::RangeInclusive<f64> = 1.0..=150.0;
/// Height of a rubber tree, in centimetres.
const HEIGHT_CM: core::ops::RangeInclusive<f64> = 10.0..=3_500.0;
/// A mean girth below the last one by more than this is doubtful; a dry season shrinks stems by
/// under a millimetre (Chandrashekar et al. 1998).
const SHRINK_CM: f64 = 2.0;
/// Trees do not get shorter, but other trees may be measured: below this share of the last mean
/// height is doubtful (an assumption). A published series that falls from 48.2 to 45.0 cm within a
/// month is asked about.
const HEIGHT_KEPT: f64 = 0.95;
/// No stand grows by more than this in a year (from memory), and samples differ by so much.
const GROWTH_CM_A_YEAR: f64 = 15.0;
const SAMPLE_CM: f64 = 5.0;
/// The most that any source names before opening (Chinese notes, 6 to 18 cm a year), with room.
const GROWTH_CM_A_YEAR_MOST: f64 = 20.0;
/// The slowest growth that was published: under half the trees at 50 cm in year 10, high in Kerala
/// (Lakshmanan 2020); girth and years. A stand well below even that is doubtful.
const SLOWEST: (f64, f64) = (50.0, 10.0);
const THIN_SHARE: f64 = 0.7;
/// Before this age girths are not judged by age.
const JUDGED_FROM_YEARS: f64 = 3.0;
/// NIST Special Publication 811, appendix B.
const CM_AN_INCH: f64 = 2.54;
/// A value this far from the median of its list is doubtful.
const OFF_MEDIAN: f64 = 0.35;
/// So many girths that are all whole multiples of so many centimetres were guessed.
const HEAPED_MIN: usize = 5;
const HEAPED_CM: f64 = 5.0;
/// Trees with branches and without, counted within these days, are the same trees.
const SAME_COUNT_DAYS: i64 = 7;
/// A count by walking may miss so many.
const COUNT_OFF: f64 = 0.1;
/// Trees of a lower mean girth are not opened under any profile.
const OPENING_MEAN_CM: f64 = 45.0;
/// More fertiliser than this a tree in one round is doubtful, in kilograms.
const FEED_KG_PER_TREE: f64 = 1.0;
/// Weight of a common bag, in kilograms (common practice).
const BAG_KG: f64 = 50.0;

/// Everything doubtful about these facts, in their order. Earlier facts of the same text count:
/// "planted 120, 8 died" is sound on an empty block.
pub(super) fn check(facts: &[Draft], scene: &Scene<'_>) -> Vec<Why> {
    let mut why = Vec::new();
    for (index, fact) in facts.iter().enumerate() {
        let Some(plot) = fact.block.as_deref().and_then(|name| scene.plot(name)) else {
            continue;
        };
        let before = facts.get(..index).unwrap_or_default();
        let same_block: Vec<&Draft> = before
            .iter()
            .filter(|other| other.block == fact.block)
            .collect();
        why.extend(check_one(fact, plot, &same_block));
    }
    why
}

fn check_one(fact: &Draft, plot: &Plot, before: &[&Draft]) -> Vec<Why> {
    let counted = |kind: Kind| -> u32 {
        before
            .iter()
            .filter(|other| other.kind == kind)
            .filter_map(|other| other.details.count)
            .fold(0, u32::saturating_add)
    };
    let planted = plot.state.planted().saturating_add(counted(Kind::Planted));
    let alive = plot
        .state
        .alive()
        .saturating_add(counted(Kind::Planted))
        .saturating_add(counted(Kind::Replaced))
        .saturating_sub(counted(Kind::Dead));
    let gaps = plot.state.gaps().saturating_add(counted(Kind::Dead));
    let count = fact.details.count.unwrap_or(0);
    let mut why = match fact.kind.effect() {
        Effect::Pegs => over(plot.state.pegs.saturating_add(count), plot.points),
        Effect::Holes => {
            let dug = plot.state.holes.saturating_add(count);
            over(dug, stand::pegged(plot.points, &plot.state))
        }
        Effect::Planted => over_area(plot, count, planted.saturating_add(count)),
        Effect::Dead => dead(count, alive, planted),
        Effect::Replaced if count > gaps => {
            replaced(plot, count, gaps, planted, counted(Kind::Dead) > 0)
        }
        Effect::Branched | Effect::Tall | Effect::Induced | Effect::Opened if count > alive => {
            vec![Why::MoreThanAlive { alive }]
        }
        Effect::Opened => young(fact, plot).unwrap_or_else(|| thin(plot)),
        Effect::Branched => {
            let others = told_lately(fact, plot.state.tall).or(told(before, Kind::NotBranched));
            // Once some were made to branch, these may be meant, and no longer the whole stand.
            let all = others.filter(|_| plot.state.induced.is_none());
            adds_up(count, all, alive)
        }
        Effect::Tall => {
            let others = told_lately(fact, plot.state.branched).or(told(before, Kind::Branched));
            adds_up(count, others, alive)
        }
        Effect::Sick | Effect::Harmed if count > alive && alive > 0 => {
            vec![Why::MoreThanAlive { alive }]
        }
        Effect::Girth => values(fact, plot, &GIRTH_CM),
        Effect::Height => heights(fact, plot),
        Effect::Fed => feed(fact, alive),
        Effect::Nothing
        | Effect::Round
        | Effect::Arrival
        | Effect::Replaced
        | Effect::Induced
        | Effect::Sick
        | Effect::Harmed
        | Effect::Rain => Vec::new(),
    };
    why.extend(timing(fact, plot, counted(Kind::Planted) > 0));
    why
}

fn timing(fact: &Draft, plot: &Plot, planted_in_text: bool) -> Vec<Why> {
    let mut why = Vec::new();
    if !planted_in_text && fact.kind.needs_trees() {
        match plot.state.planted_on() {
            Some(planted_on) if fact.on.to < planted_on => why.push(Why::BeforePlanting),
            None => why.push(Why::NotPlanted),
            Some(_) => {}
        }
    }
    let again = plot.last(fact.kind).is_some_and(|last| {
        last.trees.is_some_and(|trees| trees > 0)
            && last.trees == fact.details.count
            && (fact.on.day() - last.on).num_days().abs() < SAME_AGAIN_DAYS
    });
    if again {
        why.push(Why::SameAgain);
    }
    why
}

fn over_area(plot: &Plot, count: u32, planted: u32) -> Vec<Why> {
    let before = plot.state.planted();
    match stand::places(plot.points, &plot.state) {
        None if before > 0 && f64::from(count) > f64::from(before) * OVER_STAND => {
            vec![Why::MoreThanAreaHolds { holds: before }]
        }
        places => over(planted, places),
    }
}

/// Pegs, pits and trees are one chain: what does not fit on the one before is asked about.
fn over(number: u32, holds: Option<u32>) -> Vec<Why> {
    match holds {
        Some(holds) if f64::from(number) > f64::from(holds) * OVER_AREA => {
            vec![Why::MoreThanAreaHolds { holds }]
        }
        Some(_) | None => Vec::new(),
    }
}

fn dead(count: u32, alive: u32, planted: u32) -> Vec<Why> {
    if planted == 0 {
        return Vec::new();
    }
    if count > alive {
        vec![Why::MoreThanAlive { alive }]
    } else if count > LARGE_LOSS_TREES_MIN && f64::from(count) > f64::from(planted) * LARGE_LOSS {
        vec![Why::LargeShare { alive }]
    } else {
        Vec::new()
    }
}

/// Where no death was ever told, a few replaced trees tell of as many deaths; where deaths were
/// counted, more replaced than dead is doubtful.
fn replaced(plot: &Plot, count: u32, gaps: u32, planted: u32, dead_in_text: bool) -> Vec<Why> {
    let told = plot.state.dead() > 0 || plot.last(Kind::Dead).is_some();
    let counted = dead_in_text || told;
    let many = f64::from(count) > f64::from(planted) * LARGE_LOSS;
    if counted || many {
        vec![Why::MoreThanGaps { gaps }]
    } else {
        Vec::new()
    }
}

/// What was counted about the same time; a report without a number counts nothing.
fn told_lately(fact: &Draft, count: Option<Count>) -> Option<u32> {
    let count = count?;
    let days = (fact.on.day() - count.on).num_days().abs();
    count.trees.filter(|_| days <= SAME_COUNT_DAYS)
}

/// What an earlier fact of the same text counts.
fn told(before: &[&Draft], kind: Kind) -> Option<u32> {
    let counted = before.iter().filter(|other| other.kind == kind);
    counted.filter_map(|other| other.details.count).next()
}

/// Whether these trees and the others are about all that live.
fn adds_up(count: u32, others: Option<u32>, alive: u32) -> Vec<Why> {
    let Some(told) = others.and_then(|others| others.checked_add(count)) else {
        return Vec::new();
    };
    if f64::from(told.abs_diff(alive)) > f64::from(alive) * COUNT_OFF {
        vec![Why::DoesNotAddUp { told, alive }]
    } else {
        Vec::new()
    }
}

/// Trees that not even the fastest growth that was published makes thick enough by then.
fn young(fact: &Draft, plot: &Plot) -> Option<Vec<Why>> {
    let planted_on = plot.state.planted_on()?;
    let most_cm = years_between(planted_on, fact.on.day()) * GROWTH_CM_A_YEAR_MOST;
    let months = days::months_between(planted_on, fact.on.day());
    (most_cm < OPENING_MEAN_CM).then(|| vec![Why::TooYoung { months }])
}

fn thin(plot: &Plot) -> Vec<Why> {
    let mean = plot.state.girths.last().and_then(Census::mean_cm);
    match mean {
        Some(mean) if mean < OPENING_MEAN_CM => vec![Why::TooThin { mean }],
        _ => Vec::new(),
    }
}

fn values(fact: &Draft, plot: &Plot, range: &core::ops::RangeInclusive<f64>) -> Vec<Why> {
    let mut why = odd(&fact.details.values_cm, range);
    if why.is_empty() && is_heaped(&fact.details.values_cm) {
        why.push(Why::Heaped);
    }
    if why.is_empty()
        && let Some(now) = mean(&fact.details.values_cm)
    {
        why.extend(against_last(fact, plot, now).or_else(|| against_age(fact, plot, now)));
    }
    why
}

fn heights(fact: &Draft, plot: &Plot) -> Vec<Why> {
    let mut why = odd(&fact.details.values_cm, &HEIGHT_CM);
    let on = fact.on.day();
    let measured = |census: &Census| Some((census.on, census.mean_cm()?));
    let earlier = plot
        .state
        .heights
        .iter()
        .filter(|census| census.on <= on)
        .filter_map(measured)
        .max_by_key(|(on, _)| *on);
    if let (Some((_, before)), Some(now)) = (earlier, mean(&fact.details.values_cm))
        && now < before * HEIGHT_KEPT
        && why.is_empty()
    {
        why.push(Why::Shrunk { before });
    }
    why
}

/// Whether the trees can have got from the mean of the last census to this one.
fn against_last(fact: &Draft, plot: &Plot, now: f64) -> Option<Why> {
    let on = fact.on.day();
    let measured = |census: &Census| Some((census.on, census.mean_cm()?));
    let earlier = plot.state.girths.iter().filter(|census| census.on <= on);
    let (before_on, before) = earlier.filter_map(measured).max_by_key(|(on, _)| *on)?;
    let grown_most = GROWTH_CM_A_YEAR * years_between(before_on, on) + SAMPLE_CM;
    if now < before - SHRINK_CM {
        Some(Why::Shrunk { before })
    } else if now > before + grown_most {
        Some(Why::Grew { before })
    } else {
        None
    }
}

/// Whether trees of this age can be so thick or so thin. Young ones vary too much to say.
fn against_age(fact: &Draft, plot: &Plot, now: f64) -> Option<Why> {
    let age_years = years_between(plot.state.planted_on()?, fact.on.day());
    if age_years < JUDGED_FROM_YEARS {
        return None;
    }
    let least_cm = |girth_cm, years| {
        let curve = Curve::through(girth_cm, years, LIMITS_CM.likely)?;
        Some(curve.girth_cm(age_years))
    };
    let (slow_girth_cm, slow_years) = SLOWEST;
    let thin_cm = least_cm(slow_girth_cm, slow_years)? * THIN_SHARE;
    let thick_cm = GROWTH_CM_A_YEAR_MOST * age_years;
    if now > thick_cm {
        Some(Why::OddValue(now))
    } else if now < thin_cm && (thin_cm..=thick_cm).contains(&(now * CM_AN_INCH)) {
        Some(Why::PerhapsInches)
    } else {
        None
    }
}

fn years_between(from: NaiveDate, to: NaiveDate) -> f64 {
    let days = to.signed_duration_since(from).num_days();
    i32::try_from(days).map_or(0.0, f64::from) / 365.25
}

fn odd(values: &[f64], range: &core::ops::RangeInclusive<f64>) -> Vec<Why> {
    let median = median(values);
    values
        .iter()
        .find(|value| {
            let off = median
                .filter(|_| values.len() >= 3)
                .is_some_and(|median| libm::fabs(**value - median) > median * OFF_MEDIAN);
            !range.contains(value) || off
        })
        .map_or_else(Vec::new, |value| vec![Why::OddValue(*value)])
}

/// Of five girths read from a tape in whole centimetres, all end in 0 or 5 once in three thousand
/// times; guessed ones do so nearly always (heaping).
fn is_heaped(values: &[f64]) -> bool {
    values.len() >= HEAPED_MIN && values.iter().all(|cm| cm % HEAPED_CM == 0.0)
}

fn mean(values: &[f64]) -> Option<f64> {
    let number = values.iter().fold(0.0, |number, _| number + 1.0);
    (number > 0.0).then(|| values.iter().sum::<f64>() / number)
}

fn median(values: &[f64]) -> Option<f64> {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    sorted.get(sorted.len() / 2).copied()
}

fn feed(fact: &Draft, alive: u32) -> Vec<Why> {
    let Some(amount) = fact.details.amount else {
        return Vec::new();
    };
    let kilograms = match amount.unit {
        Unit::Kilogram => amount.value,
        Unit::Gram => amount.value / 1_000.0,
        Unit::Bag => amount.value * BAG_KG,
        Unit::Hectare
        | Unit::Acre
        | Unit::Rai
        | Unit::SquareMetre
        | Unit::Tin
        | Unit::Cup
        | Unit::Litre
        | Unit::Metre
        | Unit::Centimetre
        | Unit::Millimetre
        | Unit::Inch
        | Unit::Foot => return Vec::new(),
    };
    let per_tree = match fact.details.per {
        Some(Per::Tree) => kilograms,
        Some(Per::Total) | None if alive > 0 => kilograms / f64::from(alive),
        Some(Per::Total) | None => return Vec::new(),
    };
    if per_tree > FEED_KG_PER_TREE {
        vec![Why::TooMuchFeed]
    } else {
        Vec::new()
    }
}
