//! What a fact still lacks, and how an answer fills it.

use alloc::{string::ToString, vec::Vec};

use budwood_parser::{Bare, Details, Kind};

use super::{Draft, Missing, Scene, date, draft::as_nudged};

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

/// Facts that wait to be confirmed, with another block or another count; none when that does not
/// fit them.
pub(super) fn instead(facts: &[Draft], bare: &Bare, scene: &Scene<'_>) -> Option<Vec<Draft>> {
    let mut facts = facts.to_vec();
    match (bare, facts.as_mut_slice()) {
        (Bare::Block(name), facts) => {
            let plot = scene.plot(name)?;
            for fact in facts {
                fact.block = Some(plot.name.clone());
            }
        }
        (Bare::Number(number), [fact]) if fact.details.count.is_some() => {
            fact.details.count = Some(whole(*number)?);
        }
        _ => return None,
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
