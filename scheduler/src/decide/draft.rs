//! The fact that a report tells, as far as it gives it: its block, its day, its slots.

use alloc::{borrow::ToOwned, string::String, vec::Vec};

use budwood_parser::{Details, Doubt, Effect, Extent, Kind, Report, Supply, Wetness};

use super::{Draft, Nudged, Scene, date, unnamed::only_place};
use crate::words::event::Happened;

/// The fact as far as the report gives it.
pub(super) fn of(report: &Report, scene: &Scene<'_>) -> Draft {
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
pub(super) fn is_nudged_for(kind: Kind, scene: &Scene<'_>) -> bool {
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
pub(super) fn as_nudged(nudged: Nudged<'_>, details: Details, scene: &Scene<'_>) -> Draft {
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
        (None, _) if only_place(report.kind, scene).is_some() => {
            only_place(report.kind, scene).map(|plot| plot.name.clone())
        }
        (None, _) if is_nudged_for(report.kind, scene) => {
            scene.nudged.map(|nudged| nudged.block.to_owned())
        }
        // Rain falls on all of a farmer's blocks, and what came is not of one; the first stands for
        // them.
        (None, [first, ..]) if report.kind.is_of_no_block() => Some(first.name.clone()),
        (None, _) => None,
    }
}

/// Reports of one text that name no block mean the one that is named beside them.
pub(super) fn share_blocks(facts: &mut [Draft], scene: &Scene<'_>) {
    let named = facts
        .iter()
        .filter(|fact| !fact.kind.is_of_no_block())
        .find_map(|fact| fact.block.clone());
    if let Some(name) = named
        && scene.plot(&name).is_some()
    {
        for fact in facts.iter_mut().filter(|fact| fact.block.is_none()) {
            fact.block = Some(name.clone());
        }
    }
}
