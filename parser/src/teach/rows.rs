//! Writes weights of clues as [`Rows`](crate::learned::rows::Rows) reads them.

use std::{collections::BTreeMap, vec, vec::Vec};

use crate::learned::{
    clues::Clue,
    rows::{BUCKETS, COLUMNS_MAX, FREQUENT, MORE, NEGATIVE, SET, SETS, START, Sizes, bucket, tag},
};

/// Rows that are written.
pub(super) struct Writer {
    sizes: Sizes,
    rows: BTreeMap<(usize, u16), (u64, Vec<i8>)>,
}

impl Writer {
    /// Weights become the nearest of these sizes; those below the least are left out.
    pub(super) const fn new(sizes: Sizes) -> Self {
        Self {
            sizes,
            rows: BTreeMap::new(),
        }
    }

    /// A clue with the weights of its columns. Of clues that look alike the first stays.
    pub(super) fn put(&mut self, clue: Clue, weights: impl Iterator<Item = i8>) {
        let (mut columns, mut kept) = (0, Vec::new());
        for (column, weight) in weights.enumerate() {
            assert!(column < COLUMNS_MAX, "each column has a bit");
            if weight.abs() >= self.sizes[0] {
                columns |= 1 << column;
                kept.push(weight);
            }
        }
        if columns != 0 {
            let place = self.rows.entry((bucket(clue), tag(clue)));
            place.or_insert((columns, kept));
        }
    }

    /// The bytes of all rows.
    pub(super) fn bytes(&self) -> Vec<u8> {
        let frequent = self.frequent();
        let mut bytes = Vec::new();
        for at in 0..SETS {
            let set: u64 = frequent.get(at).copied().unwrap_or(0);
            bytes.extend(&set.to_le_bytes()[..SET]);
        }
        let mut buckets: Vec<(Vec<u16>, Vec<u8>)> = vec![(Vec::new(), Vec::new()); BUCKETS];
        for ((bucket, tag), (columns, weights)) in &self.rows {
            let (tags, rows) = &mut buckets[*bucket];
            if let Some(last) = tags.last_mut() {
                *last |= MORE;
            }
            tags.push(*tag);
            put_set(rows, *columns, &frequent);
            self.put_weights(rows, weights);
        }
        let mut start = 0;
        for (tags, rows) in &buckets {
            bytes.extend(&u32::to_le_bytes(start)[..START]);
            start += (tags.len() * 2 + rows.len()) as u32;
        }
        bytes.extend(&start.to_le_bytes()[..START]);
        for (tags, rows) in &buckets {
            bytes.extend(tags.iter().flat_map(|tag| tag.to_le_bytes()));
            bytes.extend(rows);
        }
        bytes
    }

    /// The sets of columns that most rows have, in order.
    fn frequent(&self) -> Vec<u64> {
        let mut times: BTreeMap<u64, usize> = BTreeMap::new();
        for (columns, _) in self.rows.values() {
            *times.entry(*columns).or_default() += 1;
        }
        let mut sets: Vec<(usize, u64)> = times.into_iter().map(|(set, it)| (it, set)).collect();
        sets.sort_unstable_by(|one, other| other.cmp(one));
        sets.into_iter().take(SETS).map(|(_, set)| set).collect()
    }

    fn put_weights(&self, bytes: &mut Vec<u8>, weights: &[i8]) {
        for pair in weights.chunks(2) {
            let other = pair.get(1).map_or(0, |weight| self.half(*weight));
            bytes.push(self.half(pair[0]) | other << 4);
        }
    }

    fn half(&self, weight: i8) -> u8 {
        let off = |at: &usize| self.sizes[*at].abs_diff(weight.saturating_abs());
        let size = (0..self.sizes.len()).min_by_key(off).unwrap_or(0);
        size as u8 | if weight < 0 { NEGATIVE } else { 0 }
    }
}

fn put_set(bytes: &mut Vec<u8>, set: u64, frequent: &[u64]) {
    if let Some(at) = frequent.iter().position(|other| *other == set) {
        bytes.push(FREQUENT | at as u8);
        return;
    }
    let all = &set.to_le_bytes()[..SET];
    let mut which = 0;
    for (at, byte) in all.iter().enumerate() {
        which |= u8::from(*byte != 0) << at;
    }
    bytes.push(which);
    bytes.extend(all.iter().filter(|byte| **byte != 0));
}
