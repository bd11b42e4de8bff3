//! Blocks that are meant without their names: the only one that can be, both, all.

use alloc::{string::String, vec, vec::Vec};

use budwood_parser::{Kind, Reading, Unnamed};

use super::{Decision, Draft, Missing, Pending, Plot, Scene, judge};

/// "Both" to "which block?".
pub(super) fn answer(reading: &Reading, scene: &Scene<'_>) -> Option<Decision> {
    let Some(Pending::Ask {
        facts,
        missing: Missing::Block { .. },
    }) = scene.pending
    else {
        return None;
    };
    let unnamed = reading.unnamed.filter(|_| reading.reports.is_empty())?;
    let facts = spread(facts.clone(), Some(unnamed), scene);
    Some(judge(facts, Vec::new(), None, scene))
}

/// Where work of this kind can have been done: trees die only where some were planted.
fn places<'a>(kind: Kind, scene: &Scene<'a>) -> impl Iterator<Item = &'a Plot> {
    let bare = move |plot: &&Plot| plot.state.planted() > 0 || !kind.needs_trees();
    scene.plots.iter().filter(bare)
}

/// The one block where it can have been done, if there is only one.
pub(super) fn only_place<'a>(kind: Kind, scene: &Scene<'a>) -> Option<&'a Plot> {
    let mut places = places(kind, scene);
    places.next().filter(|_| places.next().is_none())
}

/// "Weeded both blocks": the same work on each block where it can have been done. Trees and bags
/// are not the same on each.
pub(super) fn spread(facts: Vec<Draft>, unnamed: Option<Unnamed>, scene: &Scene<'_>) -> Vec<Draft> {
    let spreads = |fact: &Draft| {
        let details = &fact.details;
        let is_measured = details.count.is_some() || details.amount.is_some();
        let is_clear = match unnamed {
            Some(Unnamed::Both) => places(fact.kind, scene).count() == 2,
            Some(Unnamed::All) => true,
            None => false,
        };
        is_clear && !is_measured && !fact.kind.needs_count() && !fact.kind.needs_values()
    };
    let each = facts.into_iter().flat_map(|fact| {
        let on: Vec<Option<String>> = if spreads(&fact) {
            places(fact.kind, scene)
                .map(|plot| Some(plot.name.clone()))
                .collect()
        } else {
            vec![fact.block.clone()]
        };
        on.into_iter().map(move |block| Draft {
            block,
            ..fact.clone()
        })
    });
    each.collect()
}
