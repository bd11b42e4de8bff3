//! What a number is used for: counted, weighed, measured, a block, a day, or nothing that is kept.
//!
//! Learned like the tellings, and seen together with the work that the number belongs to. Money,
//! labour, hours, rows, dimensions and names of clones are numbers of which nothing is kept.

use crate::{
    learned::{
        clues::{Clues, use_clues},
        course::{Course, USES, kind_of},
        weights::{MORE_COLUMNS, Weights},
    },
    lists::piece::Piece,
    pieces::used::{ALL, Use, Uses},
};

/// The uses of all numbers of a text.
pub(crate) fn uses(
    pieces: &[Piece<'_>],
    course: &Course,
    clues: &Clues<'_, '_>,
    weights: &Weights,
) -> Uses {
    let mut uses = Uses::with_capacity(pieces.len());
    for (at, piece) in pieces.iter().enumerate() {
        uses.push(
            piece
                .number()
                .and_then(|_| use_of(pieces, at, course, clues, weights)),
        );
    }
    uses
}

fn use_of(
    pieces: &[Piece<'_>],
    at: usize,
    course: &Course,
    clues: &Clues<'_, '_>,
    weights: &Weights,
) -> Option<(Use, i32)> {
    let state = *course.states.get(at)?;
    let mut sum = [0; MORE_COLUMNS];
    weights.add_piece(&mut sum, clues, at);
    for clue in use_clues(pieces, at, state) {
        weights.add_clue(&mut sum, clue);
    }
    let worths = sum.get(USES..)?.iter().copied();
    let kind = kind_of(state).map(|(kind, _)| kind);
    let mut best: Option<(Use, i32)> = None;
    let mut second = i32::MIN / 4;
    for (used, worth) in ALL.into_iter().zip(worths) {
        if kind.is_some_and(|kind| !used.suits(kind)) {
            continue;
        }
        match best {
            Some((_, most)) if worth <= most => second = second.max(worth),
            Some((_, most)) => {
                second = most;
                best = Some((used, worth));
            }
            None => best = Some((used, worth)),
        }
    }
    best.map(|(used, worth)| (used, worth - second))
}
