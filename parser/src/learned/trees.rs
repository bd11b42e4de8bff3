//! What signs are worth together: many small trees of questions, each adds a little.
//!
//! All questions of one depth of a tree are one and the same, so a tree is as many questions as it is
//! deep, and a row of worths that the answers point into. How they are made: `teach`, with the tests.

use crate::learned::sure::Signs;

/// Trees, and how deep each is.
pub(crate) const TREES: usize = 200;
pub(crate) const DEPTH: usize = 4;
/// A question is a sign and what it must be above; a worth has two bytes, little end first.
pub(crate) const TREE_BYTES: usize = DEPTH * 2 + (1 << DEPTH) * 2;

/// What the trees of a table make of signs, on top of each other.
pub(crate) fn sum(table: &[u8], signs: &Signs) -> i32 {
    table
        .chunks_exact(TREE_BYTES)
        .map(|tree| one(tree, signs))
        .sum()
}

fn one(tree: &[u8], signs: &Signs) -> i32 {
    let (questions, worths) = tree.split_at_checked(DEPTH * 2).unwrap_or_default();
    let mut leaf = 0;
    for question in questions.chunks_exact(2) {
        let &[sign, above] = question else {
            return 0;
        };
        let value = signs.get(usize::from(sign)).copied().unwrap_or(0);
        leaf = leaf * 2 + usize::from(value > above);
    }
    match worths.get(leaf * 2..leaf * 2 + 2) {
        Some(&[low, high]) => i32::from(i16::from_le_bytes([low, high])),
        _ => 0,
    }
}
