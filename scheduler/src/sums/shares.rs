//! A whole number of things is shared out in proportion: the largest remainders get what is left.

use alloc::{vec, vec::Vec};
use core::cmp::Reverse;

/// Shares of a supply in proportion to what each wants, in whole things.
///
/// Each gets the whole part of their share, and of what is left one goes to each of those with the largest remainders; of equal
/// ones the first on the list. Nobody gets more than they want, and the shares are together the
/// supply, or all that is wanted where that is less.
#[must_use]
pub fn shares(supply: u64, wants: &[u64]) -> Vec<u64> {
    let wanted: u128 = wants.iter().map(|want| u128::from(*want)).sum();
    if wanted <= u128::from(supply) {
        return wants.to_vec();
    }
    let mut shares = vec![0; wants.len()];
    let mut remainders: Vec<(u128, usize)> = Vec::with_capacity(wants.len());
    let mut left = supply;
    for (at, (share, want)) in shares.iter_mut().zip(wants).enumerate() {
        let part = u128::from(*want) * u128::from(supply);
        let whole = part.checked_div(wanted).unwrap_or(0);
        *share = u64::try_from(whole).unwrap_or(u64::MAX);
        left = left.saturating_sub(*share);
        remainders.push((part.checked_rem(wanted).unwrap_or(0), at));
    }
    remainders.sort_by_key(|(remainder, at)| (Reverse(*remainder), *at));
    let lucky = usize::try_from(left).unwrap_or(usize::MAX);
    for (_, at) in remainders.iter().take(lucky) {
        if let Some(share) = shares.get_mut(*at) {
            *share += 1;
        }
    }
    shares
}

#[cfg(test)]
mod tests {
    use std::vec::Vec;

    use proptest::{collection::vec, prelude::*};

    use super::shares;

    /// The census of the United States of 1790 and the 120 seats by largest remainders, which the
    /// bill had that Washington vetoed: M. L. Balinski and H. P. Young, Fair Representation (1982),
    /// chapter 3. Connecticut to Virginia, in alphabetical order.
    #[test]
    fn seats_of_1792() {
        let people = [
            236_841, 55_540, 70_835, 68_705, 278_514, 475_327, 141_822, 179_570, 331_589, 353_523,
            432_879, 68_446, 206_236, 85_533, 630_560,
        ];
        let seats = [8, 2, 2, 2, 9, 16, 5, 6, 11, 12, 14, 2, 7, 3, 21];
        assert_eq!(shares(120, &people), seats);
    }

    #[test]
    fn enough_is_shared_as_wanted_and_nothing_as_nothing() {
        assert_eq!(shares(900, &[568, 284]), [568, 284]);
        assert_eq!(shares(0, &[568, 284]), [0, 0]);
        assert_eq!(shares(5, &[]), Vec::<u64>::new());
        assert_eq!(shares(5, &[0, 0]), [0, 0]);
        // Three are equal and two are there: the first two of the list.
        assert_eq!(shares(2, &[1, 1, 1]), [1, 1, 0]);
    }

    proptest! {
        #[test]
        fn the_shares_are_the_supply_and_nobody_gets_more_than_wanted(
            supply: u64, wants in vec(any::<u64>(), 0..20)
        ) {
            let shares = shares(supply, &wants);
            let sum = |all: &[u64]| all.iter().map(|one| u128::from(*one)).sum::<u128>();
            prop_assert_eq!(sum(&shares), sum(&wants).min(supply.into()));
            prop_assert!(shares.iter().zip(&wants).all(|(share, want)| share <= want));
        }
    }
}
