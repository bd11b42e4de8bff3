//! Trees that pass from one block to another: what goes here comes there, and nothing is lost.

use alloc::vec::Vec;

use super::{BlockState, Cohort};
use crate::{
    sums::shares::shares,
    words::passed::{Passed, Trees},
};

impl BlockState {
    /// Which trees go when so many of the living ones do: of each planting its part, and as many of
    /// the dead as stood between them. None when there are not so many, or none is left or goes.
    #[must_use]
    pub fn trees_that_go(&self, living: u32) -> Option<Vec<Trees>> {
        let alive = self.alive();
        if living == 0 || living >= alive {
            return None;
        }
        let dead = u64::from(self.dead()) * u64::from(living) / u64::from(alive);
        let parts = |supply: u64, of: fn(&Cohort) -> u32| {
            let wants: Vec<u64> = self.cohorts.iter().map(|one| of(one).into()).collect();
            let parts = shares(supply, &wants).into_iter();
            parts.map(|part| u32::try_from(part).unwrap_or(u32::MAX))
        };
        let dead = parts(dead, |cohort| cohort.dead);
        let living = parts(living.into(), Cohort::alive);
        let going = self.cohorts.iter().zip(living).zip(dead);
        let trees = going.map(|((cohort, living), dead)| Trees {
            planted_on: cohort.planted_on,
            clone_name: cohort.clone_name.clone(),
            planted: living.saturating_add(dead),
            dead,
            backfill: cohort.backfill,
        });
        Some(trees.filter(|trees| trees.planted > 0).collect())
    }

    /// Lets what passed take effect. Whoever has the land now was told of nothing yet.
    pub(super) fn pass(&mut self, passed: &Passed) {
        match passed {
            Passed::Owner { .. } => {
                self.nudges.clear();
                self.postponed.clear();
            }
            Passed::Gave { trees, .. } => {
                for trees in trees {
                    self.give(trees);
                }
            }
            Passed::Got { trees, .. } => {
                let come = trees.iter().map(|trees| Cohort {
                    planted_on: trees.planted_on,
                    clone_name: trees.clone_name.clone(),
                    planted: trees.planted,
                    dead: trees.dead,
                    backfill: trees.backfill,
                });
                self.cohorts.extend(come);
                self.cohorts.sort_by_key(|cohort| cohort.planted_on);
            }
            Passed::Joined { .. }
            | Passed::Left { .. }
            | Passed::Helper { .. }
            | Passed::HelperLeft { .. } => {}
        }
    }

    fn give(&mut self, trees: &Trees) {
        let is_it = |cohort: &&mut Cohort| {
            cohort.planted_on == trees.planted_on
                && cohort.backfill == trees.backfill
                && cohort.clone_name == trees.clone_name
        };
        if let Some(cohort) = self.cohorts.iter_mut().find(is_it) {
            cohort.planted = cohort.planted.saturating_sub(trees.planted);
            cohort.dead = cohort.dead.saturating_sub(trees.dead).min(cohort.planted);
        }
        self.opened = self.opened.min(self.alive());
    }
}

#[cfg(test)]
mod tests {
    use std::vec::Vec;

    use chrono::NaiveDate;
    use proptest::{collection::vec, prelude::*};

    use super::{BlockState, Cohort, Passed};
    use crate::words::id::BlockId;

    fn day(number: u32) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 1, 1).unwrap() + chrono::Days::new(number.into())
    }

    fn stand(cohorts: &[(u32, u32)]) -> BlockState {
        let cohorts = cohorts
            .iter()
            .enumerate()
            .map(|(at, (planted, dead))| Cohort {
                planted_on: day(u32::try_from(at).unwrap() * 365),
                clone_name: None,
                planted: *planted,
                dead: (*dead).min(*planted),
                backfill: at > 0,
            });
        BlockState {
            cohorts: cohorts.collect(),
            ..BlockState::default()
        }
    }

    /// Planted, dead and living of a stand.
    fn sums(state: &BlockState) -> (u32, u32, u32) {
        let planted = state.planted() + state.replaced();
        (planted, state.dead(), state.alive())
    }

    /// By hand: of 480 planted 40 died, and of 20 filled in 4; 228 of the 456 living are half of
    /// each, and so are 22 of the 44 dead.
    #[test]
    fn half_of_a_stand_is_half_of_each_planting() {
        let trees = stand(&[(480, 40), (20, 4)]).trees_that_go(228).unwrap();
        let told: Vec<_> = trees.iter().map(|one| (one.planted, one.dead)).collect();
        assert_eq!(told, [(240, 20), (10, 2)]);
    }

    #[test]
    fn all_of_a_stand_is_no_part_of_it() {
        let state = stand(&[(480, 40)]);
        for living in [0, 440, 441] {
            assert_eq!(state.trees_that_go(living), None, "{living}");
        }
    }

    proptest! {
        /// Two parts are together what there was, whatever goes.
        #[test]
        fn nothing_is_lost_and_nothing_comes_by_itself(
            cohorts in vec((1_u32..2_000, 0_u32..2_000), 1..5), living in 1_u32..8_000
        ) {
            let before = stand(&cohorts);
            let Some(trees) = before.trees_that_go(living) else {
                prop_assert!(living >= before.alive());
                return Ok(());
            };
            let (mut here, mut there) = (before.clone(), BlockState::default());
            let (block, into) = (BlockId(1), BlockId(2));
            here.pass(&Passed::Gave { block, into, trees: trees.clone() });
            there.pass(&Passed::Got { block: into, from: block, trees });
            prop_assert_eq!(there.alive(), living);
            let (one, other, all) = (sums(&here), sums(&there), sums(&before));
            prop_assert_eq!((one.0 + other.0, one.1 + other.1, one.2 + other.2), all);
        }
    }
}
