//! From a report as said to a fact with block and date, and what is still missing for that.

use alloc::{
    borrow::ToOwned,
    string::{String, ToString},
    vec::Vec,
};

use budwood_parser::{Bare, Details, Doubt, Effect, Extent, Kind, Report, Supply, Wetness};

use super::{Draft, Missing, Nudged, Scene, date};
use crate::words::event::Happened;

/// The fact as far as the report gives it.
pub(super) fn draft(report: &Report, scene: &Scene<'_>) -> Draft {
    let mut details = report.details.clone();
    // A whole block said to be dead or opened is the number of its living trees, to be confirmed.
    let whole =
        report.doubts.contains(&Doubt::Whole(Extent::All)) || details.extent == Some(Extent::All);
    let block = block_of(report, scene);
    if whole && details.count.is_none() && report.kind.needs_count() {
        details.count = block
            .as_deref()
            .and_then(|name| scene.plot(name))
            .map(|plot| plot.state.alive())
            .filter(|alive| *alive > 0);
    }
    // "Rain" alone, to somebody who asked whether it soaked the ground, is a yes.
    if report.kind == Kind::Rain && details.mm.is_none() && is_nudged_for(Kind::Rain, scene) {
        details.wetness = details.wetness.or(Some(Wetness::Soaked));
    }
    Draft {
        kind: report.kind,
        block,
        said: report.when,
        on: report
            .when
            .and_then(|when| date::resolve(when, scene.today))
            .unwrap_or(Happened::on(scene.today)),
        details,
    }
}

/// Whether the last nudge asked for this kind of report.
fn is_nudged_for(kind: Kind, scene: &Scene<'_>) -> bool {
    scene.nudged.is_some_and(|nudged| nudged.kind == kind)
}

/// What is said to be broken of the plants that came is no damage to trees: so many plants fewer
/// came.
pub(super) fn take_off_broken(facts: &mut Vec<Draft>) {
    let is_plants = |fact: &Draft| {
        fact.kind.effect() == Effect::Arrival && fact.details.supply == Some(Supply::Plants)
    };
    let Some(came) = facts.iter().position(is_plants) else {
        return;
    };
    let block = facts.get(came).and_then(|fact| fact.block.clone());
    let mut broken = 0_u32;
    facts.retain(|fact| {
        let is_of_them = matches!(fact.kind.effect(), Effect::Harmed | Effect::Dead)
            && (fact.block.is_none() || fact.block == block);
        if is_of_them {
            broken = broken.saturating_add(fact.details.count.unwrap_or(0));
        }
        !is_of_them
    });
    if let Some(fact) = facts.iter_mut().find(|fact| is_plants(fact)) {
        let whole = fact.details.count;
        fact.details.count = whole.map(|whole| whole.saturating_sub(broken));
    }
}

/// "Yes" or "no" to whether rain has fallen.
pub(super) fn rain(wetness: Wetness, scene: &Scene<'_>) -> Option<Draft> {
    let nudged = scene.nudged.filter(|nudged| nudged.kind == Kind::Rain)?;
    let details = Details {
        wetness: Some(wetness),
        ..Details::default()
    };
    Some(as_nudged(nudged, details, scene))
}

/// What a nudge asked for, told today.
fn as_nudged(nudged: Nudged<'_>, details: Details, scene: &Scene<'_>) -> Draft {
    Draft {
        kind: nudged.kind,
        block: Some(nudged.block.to_owned()),
        said: None,
        on: Happened::on(scene.today),
        details,
    }
}

fn block_of(report: &Report, scene: &Scene<'_>) -> Option<String> {
    match (&report.block, scene.plots) {
        (Some(name), _) => Some(
            scene
                .plot(name)
                .map_or_else(|| name.clone(), |plot| plot.name.clone()),
        ),
        (None, [only]) => Some(only.name.clone()),
        (None, _) if is_nudged_for(report.kind, scene) => {
            scene.nudged.map(|nudged| nudged.block.to_owned())
        }
        // Rain falls on all of a farmer's blocks; the first one stands for them.
        (None, [first, ..]) if report.kind == Kind::Rain => Some(first.name.clone()),
        (None, _) => None,
    }
}

/// Reports of one text that name no block mean the one that is named beside them.
pub(super) fn share_blocks(facts: &mut [Draft], scene: &Scene<'_>) {
    let named = facts
        .iter()
        .filter(|fact| fact.kind != Kind::Rain)
        .find_map(|fact| fact.block.clone());
    if let Some(name) = named
        && scene.plot(&name).is_some()
    {
        for fact in facts.iter_mut().filter(|fact| fact.block.is_none()) {
            fact.block = Some(name.clone());
        }
    }
}

/// Thicker than any planted rubber tree, in centimetres: a slip of the point or of the unit.
const GIRTH_CM_MAX: f64 = 300.0;

/// The first slot without which the fact says nothing.
pub(super) fn missing(
    fact: &Draft,
    range: Option<(u32, u32)>,
    scene: &Scene<'_>,
) -> Option<Missing> {
    match &fact.block {
        None => return Some(Missing::Block { unknown: None }),
        Some(name) if scene.plot(name).is_none() => {
            return Some(Missing::Block {
                unknown: Some(name.clone()),
            });
        }
        Some(_) => {}
    }
    if fact
        .said
        .is_some_and(|when| date::resolve(when, scene.today).is_none())
    {
        return Some(Missing::Date);
    }
    let details = &fact.details;
    let sampled = details.of.is_some() && details.count.is_some();
    if !sampled && lacks_values(fact) {
        return Some(Missing::Values);
    }
    let uncounted = details.count.is_none() && fact.kind.needs_count();
    if uncounted || (range.is_some() && details.count.is_none()) {
        return Some(Missing::Count { range });
    }
    None
}

/// What a bare number or list tells that answers a nudge; none when the nudge asked for no number.
pub(super) fn answer(bare: &Bare, scene: &Scene<'_>) -> Option<Draft> {
    let nudged = scene.nudged?;
    let mut details = Details {
        ailment: nudged.ailment,
        ..Details::default()
    };
    match bare {
        Bare::Numbers(numbers) if nudged.kind.needs_values() => {
            details.values_cm.clone_from(numbers);
        }
        Bare::Number(number) if nudged.kind.is_counted() => details.count = Some(whole(*number)?),
        Bare::Number(_) | Bare::Numbers(_) | Bare::Block(_) | Bare::Member(_) | Bare::When(_) => {
            return None;
        }
    }
    Some(as_nudged(nudged, details, scene))
}

/// Puts what was asked for into the facts; none when it does not fit the question.
pub(super) fn fill(
    facts: &[Draft],
    missing: &Missing,
    bare: &Bare,
    scene: &Scene<'_>,
) -> Option<Vec<Draft>> {
    let mut facts = facts.to_vec();
    match (missing, bare) {
        (Missing::Block { .. }, bare) => {
            let said = match bare {
                Bare::Block(name) => name.clone(),
                Bare::Number(number) => whole(*number)?.to_string(),
                Bare::Member(_) | Bare::When(_) | Bare::Numbers(_) => return None,
            };
            let name = scene.plot(&said)?.name.clone();
            for fact in facts.iter_mut().filter(|fact| {
                fact.block
                    .as_deref()
                    .is_none_or(|block| scene.plot(block).is_none())
            }) {
                fact.block = Some(name.clone());
            }
        }
        (Missing::Count { .. }, Bare::Number(number)) => {
            let open = |fact: &&mut Draft| fact.details.count.is_none();
            facts.iter_mut().find(open)?.details.count = Some(whole(*number)?);
        }
        (Missing::Values, Bare::Number(number)) => {
            first_measured(&mut facts)?.details.values_cm = alloc::vec![*number];
        }
        (Missing::Values, Bare::Numbers(numbers)) => {
            first_measured(&mut facts)?
                .details
                .values_cm
                .clone_from(numbers);
        }
        (Missing::Date, Bare::When(when)) => {
            let on = date::resolve(*when, scene.today)?;
            for fact in &mut facts {
                fact.said = Some(*when);
                fact.on = on;
            }
        }
        (Missing::Count { .. } | Missing::Values | Missing::Date, _) => return None,
    }
    Some(facts)
}

fn first_measured(facts: &mut [Draft]) -> Option<&mut Draft> {
    facts.iter_mut().find(|fact| lacks_values(fact))
}

/// Nothing was measured, or what no tree can be: to ask "is this right?" would let it in.
fn lacks_values(fact: &Draft) -> bool {
    let values = &fact.details.values_cm;
    let is_impossible = |cm: &f64| fact.kind == Kind::Girth && *cm > GIRTH_CM_MAX;
    fact.kind.needs_values() && (values.is_empty() || values.iter().any(is_impossible))
}

/// A count of trees from a number as read.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the range is checked on the same line"
)]
pub(super) fn whole(number: f64) -> Option<u32> {
    (number >= 0.0 && number <= f64::from(u32::MAX) && libm::trunc(number) == number)
        .then_some(number as u32)
}
