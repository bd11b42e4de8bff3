//! Trees that died: whose, of what, of which clone; and which clones stand.
//!
//! As everywhere, trees of the first planting: those that were filled in cannot hide losses.

use alloc::{collections::BTreeMap, string::String, vec::Vec};
use core::cmp::Reverse;

use budwood_parser::{Cause, Kind};

use super::{Figure, Known, Name, Stand, Table, Window};
use crate::{
    land::{
        block::{Cohort, Living},
        directory::Block,
    },
    words::{event::Source, id::PersonId},
};

/// Losses of one farmer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Loss {
    /// Whose.
    pub person: PersonId,
    /// Their trees.
    pub living: Living,
    /// Who told the last count.
    pub source: Option<Source>,
}

/// First trees, and how many of them died.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Dead {
    /// Planted.
    pub planted: u32,
    /// Of these, dead.
    pub dead: u32,
}

impl Dead {
    fn with(self, cohort: &Cohort) -> Self {
        Self {
            planted: self.planted.saturating_add(cohort.planted),
            dead: self.dead.saturating_add(cohort.dead),
        }
    }

    /// In per cent of those planted: what the share of the living leaves of a hundred.
    #[must_use]
    pub fn pct(self) -> Option<u32> {
        lost_pct(Living {
            first: self.planted.saturating_sub(self.dead),
            planted: self.planted,
            ..Living::default()
        })
    }
}

/// What the share of the living leaves of a hundred: the two of them always make one.
#[must_use]
pub fn lost_pct(living: Living) -> Option<u32> {
    living.survival_pct().map(|pct| 100_u32.saturating_sub(pct))
}

impl Table<'_> {
    /// Farmers who lost first trees, the largest share first. `facts` gives what is known of a block.
    #[must_use]
    pub fn losses(&self, facts: impl Fn(&Block) -> Vec<Known>) -> Figure<Vec<Loss>> {
        let farmers = self.farmers.iter().map(|farmer| {
            let living = farmer.stands.iter().map(|stand| stand.state.living());
            let living = living.fold(Living::default(), Living::with);
            (farmer, living)
        });
        let mut losses: Vec<Loss> = farmers
            .filter(|(_, living)| living.first < living.planted)
            .map(|(farmer, living)| {
                let facts = farmer.stands.iter().flat_map(|stand| facts(stand.block));
                let counts = facts.filter(|fact| fact.kind == Kind::Dead);
                let last = counts.max_by_key(|fact| (fact.on, fact.source));
                Loss {
                    person: farmer.person.id,
                    living,
                    source: last.map(|fact| fact.source),
                }
            })
            .collect();
        losses.sort_by_key(|loss| Reverse((lost_pct(loss.living), loss.living.planted)));
        self.figure(Name::Losses, Window::ALL, losses)
    }

    /// First trees that died by what it was, most first; none for those of which it was not told.
    #[must_use]
    pub fn losses_by_cause(
        &self,
        facts: impl Fn(&Block) -> Vec<Known>,
    ) -> Figure<Vec<(Option<Cause>, u32)>> {
        let mut causes: BTreeMap<Cause, u32> = BTreeMap::new();
        let mut left = 0_u32;
        for stand in self.stands() {
            let living = stand.state.living();
            let mut open = living.planted.saturating_sub(living.first);
            for fact in facts(stand.block) {
                let (Kind::Dead, Some(cause), Some(count)) = (fact.kind, fact.cause, fact.count)
                else {
                    continue;
                };
                // More than died of the first trees are not told of here.
                let count = count.min(open);
                open = open.saturating_sub(count);
                let sum = causes.entry(cause).or_default();
                *sum = sum.saturating_add(count);
            }
            left = left.saturating_add(open);
        }
        let told = causes.into_iter().map(|(cause, dead)| (Some(cause), dead));
        let mut all: Vec<_> = told.chain([(None, left)]).collect();
        all.retain(|(_, dead)| *dead > 0);
        all.sort_by_key(|(_, dead)| Reverse(*dead));
        self.figure(Name::LossesByCause, Window::ALL, all)
    }

    /// First trees by clone, most planted first; none for those whose clone was not told.
    #[must_use]
    pub fn clones(&self) -> Figure<Vec<(Option<String>, Dead)>> {
        let mut clones: BTreeMap<Option<String>, Dead> = BTreeMap::new();
        for stand in self.stands() {
            for cohort in stand.state.cohorts.iter().filter(|cohort| !cohort.backfill) {
                let sum = clones.entry(clone_of(stand, cohort)).or_default();
                *sum = sum.with(cohort);
            }
        }
        let mut clones: Vec<_> = clones.into_iter().collect();
        clones.retain(|(_, trees)| trees.planted > 0);
        clones.sort_by_key(|(clone, trees)| (Reverse(trees.planted), clone.is_none()));
        self.figure(Name::Clones, Window::ALL, clones)
    }
}

/// As told of the trees themselves, else as the list has it of the land; in capitals, as clones are
/// called.
fn clone_of(stand: &Stand<'_>, cohort: &Cohort) -> Option<String> {
    let named = cohort.clone_name.as_ref();
    let named = named.or(stand.block.clone_name.as_ref())?;
    Some(named.to_uppercase())
}
