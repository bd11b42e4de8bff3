//! The girth census: how many trees to measure, which ones, and how far they may be off.
//!
//! Trees chosen by eye flatter the result (Rouf, Setiono and Pamungkas, Warta Perkaretan 2013), so
//! a farmer is told which ones: every so many-th along the rows, from a start that is drawn. How
//! many trees a sample needs was not found in print; it follows from how sure the answer is to be.

use statrs::distribution::{ContinuousCDF, StudentsT};

use crate::sums::{chance, rounding, wilson};

/// How single girths spread about the mean before any were measured, as standard deviation over
/// mean (from memory).
pub const USUAL_SPREAD: f64 = 0.18;

/// More trees than this are never asked for: a day's work for two.
const TREES_MAX: u32 = 1_000;
/// Fewer say nothing of how trees spread.
const TREES_MIN: u32 = 2;

/// The fewest trees whose mean lies within so many per cent of the mean of the stand, 19 times out
/// of 20, when single trees spread by `spread_pct`. None where no sample does it.
#[must_use]
pub fn trees_for_mean(spread_pct: f64, within_pct: f64) -> Option<u32> {
    if !(spread_pct > 0.0 && within_pct > 0.0) {
        return None;
    }
    (TREES_MIN..=TREES_MAX).find(|trees| {
        let n = f64::from(*trees);
        StudentsT::new(0.0, 1.0, n - 1.0)
            .is_ok_and(|t| t.inverse_cdf(0.975) * spread_pct / libm::sqrt(n) <= within_pct)
    })
}

/// The fewest trees whose share at the girth lies within so many points of the share of the
/// stand, 19 times out of 20, when about `share_pct` are expected. In a small stand fewer do.
#[must_use]
pub fn trees_for_share(share_pct: f64, within_points: f64, alive: u32) -> Option<u32> {
    let share = share_pct / 100.0;
    if !(share > 0.0 && share < 1.0 && within_points > 0.0) {
        return None;
    }
    let off = within_points / 100.0 / chance::NINETEEN_OF_TWENTY;
    let without_end = share * (1.0 - share) / (off * off);
    let n = without_end / (1.0 + (without_end - 1.0).max(0.0) / f64::from(alive.max(1)));
    rounding::ceil(n).map(|trees| trees.clamp(1, alive.max(1)))
}

/// How far a share in a sample may be off, in points to each side, as Wilson's interval has it.
#[must_use]
pub fn points_off(reached: u32, of: u32) -> Option<f64> {
    let (low, high) = wilson::interval(reached, of)?;
    Some((high - low) * 50.0)
}

/// The mean girth at which this share of the trees has reached `girth_cm`, when single trees
/// spread about the mean by `spread` (standard deviation over mean).
#[must_use]
pub(crate) fn mean_for_share(girth_cm: f64, share: f64, spread: f64) -> Option<f64> {
    let below = 1.0 - chance::quantile(share)? * spread;
    (below > 0.0).then(|| girth_cm / below)
}

/// Which trees to measure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Walk {
    /// Every so many-th tree, counted along all rows; 1 for every tree.
    pub every: u32,
    /// From this tree on, counted from 1.
    pub from: u32,
    /// So many trees at least.
    pub trees: u32,
}

/// Plans a census of at least so many trees of a stand. `draw` is any number that nobody chose: the
/// start follows from it. None for a stand without trees.
#[must_use]
pub fn walk(alive: u32, wanted: u32, draw: u64) -> Option<Walk> {
    if alive == 0 {
        return None;
    }
    let wanted = wanted.clamp(1, alive);
    let every = (alive / wanted).max(1);
    let from = u32::try_from(mixed(draw) % u64::from(every)).ok()? + 1;
    Some(Walk {
        every,
        from,
        trees: (alive - from) / every + 1,
    })
}

/// Spreads numbers that lie close together over all numbers (the finaliser of S. Vigna's
/// `SplitMix64`).
const fn mixed(draw: u64) -> u64 {
    let mixed = (draw ^ (draw >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    mixed ^ (mixed >> 31)
}

#[cfg(test)]
mod tests {
    use std::{collections::BTreeSet, vec::Vec};

    use super::{Walk, points_off, trees_for_mean, trees_for_share, walk};

    /// Oliveira et al. 2018, Bioscience Journal: 15 trees for an error of 10 per cent. With trees
    /// that spread by 18 % Student's t gives the same.
    #[test]
    fn trees_for_a_mean() {
        assert_eq!(trees_for_mean(18.0, 10.0), Some(15));
        assert_eq!(trees_for_mean(18.0, 5.0), Some(53));
        assert!(trees_for_mean(30.0, 10.0) > trees_for_mean(18.0, 10.0));
        assert_eq!(trees_for_mean(18.0, 0.1), None, "more than anyone measures");
        assert_eq!(trees_for_mean(f64::NAN, 10.0), None);
        assert_eq!(trees_for_mean(18.0, 0.0), None);
    }

    /// A worked table for a share of 65 %: 24 points off with 15 trees, 17 with 30, 9 with 100.
    #[test]
    fn trees_for_a_share() {
        let trees = |points| trees_for_share(65.0, points, u32::MAX).unwrap();
        assert!((15..=16).contains(&trees(24.0)), "{}", trees(24.0));
        assert!((30..=31).contains(&trees(17.0)), "{}", trees(17.0));
        assert!((100..=108).contains(&trees(9.0)), "{}", trees(9.0));
        let small = trees_for_share(65.0, 9.0, 120).unwrap();
        assert!((50..=60).contains(&small), "{small}");
        assert_eq!(trees_for_share(65.0, 9.0, 0), Some(1));
        assert_eq!(trees_for_share(0.0, 9.0, 500), None);
        assert_eq!(trees_for_share(65.0, f64::NAN, 500), None);
        let off = points_off(70, 100).unwrap();
        assert!((off - 8.85).abs() < 0.01, "{off}");
    }

    /// Every tree has the same chance: each start is drawn about as often, and all rows are walked.
    #[test]
    fn a_walk_over_all_rows() {
        let walk_425 = |draw| walk(425, 30, draw).unwrap();
        let mut starts = BTreeSet::new();
        for draw in 0..400 {
            let Walk { every, from, trees } = walk_425(draw);
            assert_eq!(every, 14);
            assert!((1..=14).contains(&from) && trees >= 30, "{from} {trees}");
            assert!(from + (trees - 1) * every <= 425);
            starts.insert(from);
        }
        assert_eq!(starts.len(), 14);
        assert_eq!(walk_425(7), walk_425(7), "asked again, the same trees");
    }

    #[test]
    fn small_stands_are_walked_whole() {
        for alive in [1, 20, 30, 40] {
            let found = walk(alive, 30, 5).unwrap();
            assert_eq!((found.every, found.from, found.trees), (1, 1, alive));
        }
        assert_eq!(walk(0, 30, 5), None);
        let all: Vec<u32> = (1..=3).map(|n| walk(9, 0, n).unwrap().trees).collect();
        assert_eq!(all, [1, 1, 1]);
    }
}
