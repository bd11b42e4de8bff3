//! Parts a text into one segment for each kind of work named in it.
//!
//! Every word of work opens a segment (`anchors`). What stands between two of them is parted where
//! it costs least: at a full stop or comma, so that each has the numbers it needs. Deliberately
//! absent: what the numbers mean (`slots`).

use alloc::vec::Vec;
use core::ops::Range;

use smallvec::{SmallVec, smallvec};

use crate::{
    kind::{Kind, Slot},
    lists::piece::{Piece, Sense},
    meaning::{Meaning, Plain},
    pieces::text::{FULL_STOP, Sums, Text, break_strength},
    rules::anchors::{Anchor, anchors, opening},
};

/// The pieces of one report, or of several of one kind.
#[derive(Clone, Debug)]
pub(crate) struct Segment {
    pub(crate) kind: Kind,
    /// The piece that names the kind.
    pub(crate) anchor: usize,
    /// The kind was named by a thing ("urea", "cows"), not by the work.
    pub(crate) by_thing: bool,
    /// Whether it was learned that it is denied; none where the words beside it say so.
    pub(crate) denied: Option<bool>,
    pub(crate) pieces: Range<usize>,
}

/// The segments of a text. Those of a short one take no memory.
pub(crate) type Segments = SmallVec<[Segment; 2]>;

/// What it costs to part a list of measured values.
const IN_LIST_COST: u32 = 3;
/// What it costs that a sight has a size of land, which belongs to work beside it.
const STRAY_AREA_COST: u32 = 4;
/// More pieces between two kinds are never weighed one by one.
const GAP_PIECES_MAX: usize = 24;

/// Parts the pieces.
pub(crate) fn segments(pieces: &[Piece<'_>]) -> Segments {
    let opening = opening(pieces);
    match opening.as_slice() {
        [] => return Segments::new(),
        // Most reports are of one work, with nothing to weigh.
        [only] => return smallvec![whole(only, pieces)],
        [_, _, ..] => {}
    }
    let mut sums = Sums::new();
    let text = Text::new(pieces, &mut sums);
    let anchors = anchors(&text, &opening);
    if let [only] = anchors.as_slice() {
        return smallvec![whole(only, pieces)];
    }
    let cuts = cuts(&text, &anchors);
    anchors
        .into_iter()
        .zip(cuts.windows(2))
        .map(|(anchor, cut)| Segment {
            kind: anchor.kind,
            anchor: anchor.at,
            by_thing: anchor.thing.is_some(),
            denied: None,
            pieces: match cut {
                [start, end] => *start..*end,
                _ => 0..0,
            },
        })
        .collect()
}

/// The whole text as one segment.
fn whole(anchor: &Anchor, pieces: &[Piece<'_>]) -> Segment {
    Segment {
        kind: anchor.kind,
        anchor: anchor.at,
        by_thing: anchor.thing.is_some(),
        denied: None,
        pieces: 0..pieces.len(),
    }
}

impl Text<'_, '_> {
    /// What it costs that this work has these pieces.
    fn cost(&self, anchor: &Anchor, range: &Range<usize>) -> u32 {
        let (counts, blocks) = (self.counts(range), self.blocks(range));
        let numbers = if anchor.kind.needs_values() {
            6 * u32::from(counts == 0)
        } else if anchor.kind.wants_count() {
            let rows = blocks.max(1);
            if counts == 0 {
                6
            } else {
                4 * counts.saturating_sub(rows)
            }
        } else {
            2 * counts
        };
        let areas = if anchor.kind.keeps(Slot::Area) {
            0
        } else {
            STRAY_AREA_COST * self.areas(range)
        };
        let has_blocks = self.blocks(&(0..self.pieces.len())) > 0;
        let lacks_block = u32::from(has_blocks && blocks == 0);
        numbers + areas + lacks_block
    }

    /// Whether a place lies between two numbers with a mark.
    fn is_in_list(&self, at: usize) -> bool {
        let piece = |at: Option<usize>| at.and_then(|at| self.pieces.get(at));
        let number = |at: Option<usize>| piece(at).is_some_and(|piece| piece.number().is_some());
        let comma = |at: Option<usize>| piece(at).is_some_and(|piece| piece.is_mark(','));
        let (before, after) = (at.checked_sub(1), Some(at));
        (comma(before) && number(at.checked_sub(2)) && number(after))
            || (comma(after) && number(before) && number(Some(at + 1)))
    }

    /// What it costs to part the text before this piece; little at a mark.
    fn cut_cost(&self, at: usize) -> u32 {
        let piece = |at: Option<usize>| at.and_then(|at| self.pieces.get(at));
        let (before, after) = (piece(at.checked_sub(1)), piece(Some(at)));
        let belongs = before.is_some_and(|before| {
            before.is_any(&[Plain::Block, Plain::At, Plain::Land, Plain::Row])
                && after
                    .is_some_and(|after| matches!(after.sense, Sense::Block(_) | Sense::Number(_)))
        }) || after.is_some_and(|after| {
            before.is_some_and(|before| matches!(before.sense, Sense::Number(_)))
                && (after.is_any(&[Plain::Trees, Plain::Row, Plain::Round, Plain::Weak])
                    || after.means(|meaning| matches!(meaning, Meaning::Unit(_))))
        });
        if belongs {
            return 40;
        }
        // The mark itself may stand on either side of the cut.
        let strength = before
            .map_or(0, break_strength)
            .max(after.map_or(0, break_strength));
        6 - 2 * strength.min(FULL_STOP)
    }
}

/// Where each segment starts; one more for the end.
fn cuts(text: &Text<'_, '_>, anchors: &[Anchor]) -> Vec<usize> {
    let end = text.pieces.len();
    // For each anchor in turn the possible starts of its segment: cost so far, and which start
    // before led here. Those of the last anchor so far are the row.
    let mut ways: Vec<(usize, u32, usize)> = Vec::with_capacity(end + 1);
    ways.push((0, 0, 0));
    let mut row = 0..1;
    for pair in anchors.windows(2) {
        let [previous, anchor] = pair else {
            continue;
        };
        let gap = previous.at + 1..=anchor.at;
        // A very long gap belongs to the work before it, apart from its end.
        let skip = (anchor.at - previous.at).saturating_sub(GAP_PIECES_MAX);
        let here = ways.len();
        for cut in gap.skip(skip) {
            let cost_from = |start: usize| text.cost(previous, &(start..cut));
            let Some((choice, cost)) = cheapest(&ways, row.clone(), cost_from) else {
                continue;
            };
            let inside = u32::from(previous.kind.needs_values() && text.is_in_list(cut));
            let cost = cost + text.cut_cost(cut) + IN_LIST_COST * inside;
            ways.push((cut, cost, choice));
        }
        row = here..ways.len();
    }
    let last = anchors.last().and_then(|anchor| {
        let cost_from = |start: usize| text.cost(anchor, &(start..end));
        cheapest(&ways, row, cost_from)
    });
    let mut choice = last.map_or(0, |(choice, _)| choice);
    let mut cuts = Vec::with_capacity(anchors.len() + 1);
    cuts.push(end);
    for _ in anchors {
        let Some((start, _, before)) = ways.get(choice) else {
            break;
        };
        cuts.push(*start);
        choice = *before;
    }
    cuts.reverse();
    cuts
}

/// The cheapest way on from those of a row, and what it costs in all. Of equally good cuts it is the
/// latest: what was said belongs to what was named.
fn cheapest(
    ways: &[(usize, u32, usize)],
    row: Range<usize>,
    cost_from: impl Fn(usize) -> u32,
) -> Option<(usize, u32)> {
    row.filter_map(|choice| {
        let (start, cost, _) = ways.get(choice)?;
        Some((choice, cost + cost_from(*start)))
    })
    .min_by_key(|(choice, cost)| (*cost, usize::MAX - choice))
}
