//! What can be taken of a request with several items.
//!
//! An item that cannot be read is left out, and the others are taken: refused, all of them would be
//! sent again for ever.

/// What could be taken.
#[derive(Debug, PartialEq, Eq)]
pub struct Taken<T> {
    /// The items, in order.
    pub items: Vec<T>,
    /// How many could not be read.
    pub left_out: usize,
}

/// What can be taken, if anything can; else what is wrong with the first.
pub(crate) fn good<T>(read: impl Iterator<Item = Result<T, String>>) -> Result<Taken<T>, String> {
    let mut items = Vec::new();
    let mut faults = Vec::new();
    for one in read {
        match one {
            Ok(item) => items.push(item),
            Err(why) => faults.push(why),
        }
    }
    let left_out = faults.len();
    match faults.into_iter().next() {
        Some(why) if items.is_empty() => Err(why),
        Some(_) | None => Ok(Taken { items, left_out }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_good_ones_are_taken_and_the_first_fault_is_told_when_none_is() {
        let good = |read: Vec<Result<u8, String>>| super::good(read.into_iter());
        let items = |items, left_out| Ok(Taken { items, left_out });
        assert_eq!(
            good(vec![Ok(1), Err("a".into()), Ok(2)]),
            items(vec![1, 2], 1)
        );
        assert_eq!(good(vec![]), items(vec![], 0));
        assert_eq!(
            good(vec![Err("a".into()), Err("b".into())]),
            Err("a".to_owned())
        );
    }
}
