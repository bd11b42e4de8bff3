//! Which slot of which fact a correction means.

use alloc::{boxed::Box, string::String, vec::Vec};

use budwood_parser::{Correction, Field, Reading, Sender};

use super::{Amend, Change, Decision, Draft, Pending, Scene, complete};

/// A correction reaches what waits to be confirmed first, then what was stored last.
pub(super) fn correct(correction: &Correction, scene: &Scene<'_>) -> Decision {
    let waiting = match scene.pending {
        Some(Pending::Confirm(facts)) => pending(correction, facts, scene),
        Some(Pending::Ask { .. } | Pending::Choose { .. } | Pending::Nudge { .. }) | None => None,
    };
    match waiting {
        Some(facts) => super::judge(facts, Vec::new(), None, scene),
        None => change(correction, scene),
    }
}

/// The change that "no 102 not 120" asks for. The number that equals the fact's value is the old
/// one; if that cannot be told, ask.
fn change(correction: &Correction, scene: &Scene<'_>) -> Decision {
    let facts = scene.last.iter().map(|last| &last.draft);
    let found = fitting(facts, correction, scene);
    let found = found.map(|(index, field, now)| {
        Box::new(Change {
            index,
            field,
            said: correction.clone(),
            now,
        })
    });
    Decision::Amend(found.map_or_else(|| Amend::Unsure(correction.clone()), Amend::Change))
}

/// A correction in words of no list, where a fact that was told before has one of its two values.
pub(super) fn borne_out(reading: &Reading, scene: &Scene<'_>) -> Option<Decision> {
    let correction = reading.amends.as_ref()?;
    if reading.alarm.is_some() || scene.sender == Sender::Unknown {
        return None;
    }
    let amended = correct(correction, scene);
    let is_unsure = matches!(amended, Decision::Amend(Amend::Unsure(_)));
    (!is_unsure).then_some(amended)
}

/// Facts that wait to be confirmed, with the correction in them; none when it does not fit them.
fn pending(correction: &Correction, facts: &[Draft], scene: &Scene<'_>) -> Option<Vec<Draft>> {
    let (index, _, now) = fitting(facts.iter(), correction, scene)?;
    let mut facts = facts.to_vec();
    *facts.get_mut(index)? = now;
    Some(facts)
}

/// The last fact that the correction fits: its place, the slot, and the fact with the new value.
fn fitting<'a>(
    facts: impl DoubleEndedIterator<Item = &'a Draft> + ExactSizeIterator,
    correction: &Correction,
    scene: &Scene<'_>,
) -> Option<(usize, Field, Draft)> {
    let named = facts
        .enumerate()
        .filter(|(_, fact)| meant(fact, correction));
    named.rev().find_map(|(index, fact)| {
        let (field, now) = changed(fact, correction, scene)?;
        Some((index, field, now))
    })
}

fn meant(draft: &Draft, correction: &Correction) -> bool {
    let kind = correction.kind.is_none_or(|kind| kind == draft.kind);
    // A block that is itself the new value does not say which fact is meant.
    let names_fact = correction.field != Some(Field::Block);
    let block = !names_fact || same(correction.block.as_deref(), draft.block.as_deref(), true);
    kind && block
}

fn same(said: Option<&str>, known: Option<&str>, when_unsaid: bool) -> bool {
    match (said, known) {
        (None, _) => when_unsaid,
        (Some(said), Some(known)) => said.eq_ignore_ascii_case(known),
        (Some(_), None) => false,
    }
}

fn changed(draft: &Draft, correction: &Correction, scene: &Scene<'_>) -> Option<(Field, Draft)> {
    let from = correction.from.as_deref();
    let to = correction.to.as_deref();
    if let Some(now) = block_change(draft, from, to, scene) {
        return Some((Field::Block, now));
    }
    let from = from.and_then(number);
    let to = to.and_then(number);
    let old = draft.details.count.map(f64::from);
    match (from, to, old) {
        // "102 not 120" and "120, no 102" both occur: the known value is the old one.
        (Some(a), Some(b), Some(old)) if a == old && b != old => counted(draft, b),
        (Some(a), Some(b), Some(old)) if b == old && a != old => counted(draft, a),
        (None, Some(new), Some(old)) if new != old => counted(draft, new),
        (None, Some(new), None) if draft.details.values_cm.len() == 1 => {
            let mut now = draft.clone();
            now.details.values_cm = alloc::vec![new];
            Some((Field::Values, now))
        }
        _ => None,
    }
}

fn counted(draft: &Draft, count: f64) -> Option<(Field, Draft)> {
    let mut now = draft.clone();
    now.details.count = Some(complete::whole(count)?);
    Some((Field::Count, now))
}

fn block_change(
    draft: &Draft,
    from: Option<&str>,
    to: Option<&str>,
    scene: &Scene<'_>,
) -> Option<Draft> {
    let plot = |name: Option<&str>| -> Option<String> {
        name.and_then(|name| scene.plot(name))
            .map(|plot| plot.name.clone())
    };
    let known = draft.block.as_deref();
    let new = match (plot(from), plot(to)) {
        (Some(from), Some(to)) if Some(from.as_str()) == known => to,
        (Some(from), Some(to)) if Some(to.as_str()) == known => from,
        (None, Some(to)) if Some(to.as_str()) != known => to,
        _ => return None,
    };
    let mut now = draft.clone();
    now.block = Some(new);
    Some(now)
}

fn number(text: &str) -> Option<f64> {
    text.parse().ok().filter(|number: &f64| number.is_finite())
}
