//! What is planned, told in one breath with what was done: "planted 120 B, will weed A soon".
//!
//! A plan takes nothing back that a clause of its own reported before it. Deliberately absent: a
//! plan inside the clause that reports, which makes all of it a plan (`gate`).

use crate::{
    lists::piece::{Piece, Sense},
    meaning::{Meaning, Plain, sort},
    pieces::{
        known::{is_clear_work, is_known},
        text::break_strength,
    },
    reading::Stance,
};

/// A clause ends at least with a comma, or with "and".
const CLAUSE_BREAK: u32 = 2;
/// What is planned is said in known words, or it is chat.
const KNOWN_PERCENT_MIN: usize = 60;

/// The pieces that tell what was done: all of them, or those before a clause that plans.
pub(crate) fn before_plan<'p, 'r>(pieces: &'p [Piece<'r>]) -> &'p [Piece<'r>] {
    let Some(plan) = pieces.iter().position(is_plan) else {
        return pieces;
    };
    let start = (0..plan).rfind(|at| {
        pieces
            .get(*at)
            .is_some_and(|piece| break_strength(piece) >= CLAUSE_BREAK)
    });
    let parts = start.and_then(|start| pieces.split_at_checked(start));
    match parts {
        Some((done, planned)) if reports(done) && stands_alone(planned) => done,
        _ => pieces,
    }
}

fn is_plan(piece: &Piece<'_>) -> bool {
    piece.is_of(sort::STANCE) && piece.means(|meaning| meaning == Meaning::Stance(Stance::Plan))
}

/// Work with its number or block.
fn reports(pieces: &[Piece<'_>]) -> bool {
    pieces.iter().any(is_clear_work)
        && pieces
            .iter()
            .any(|piece| piece.number().is_some() || matches!(piece.sense, Sense::Block(_)))
}

/// Whether a clause plans something of its own. "planted 120 B, tomorrow" only says when.
fn stands_alone(clause: &[Piece<'_>]) -> bool {
    let words = || {
        clause
            .iter()
            .filter(|piece| !matches!(piece.sense, Sense::Mark(_)) && !piece.is_plain(Plain::And))
    };
    let only_plans = clause.iter().all(|piece| {
        piece.meanings().all(|meaning| {
            !matches!(meaning, Meaning::Alarm(_))
                && !matches!(meaning, Meaning::Stance(stance) if stance != Stance::Plan)
        }) && !piece.is_mark('?')
            && !piece.is_any(&[Plain::Correction, Plain::Undo])
    });
    let others = words()
        .filter(|piece| !is_plan(piece) && !matches!(piece.sense, Sense::When(_)))
        .count();
    let plans = words().filter(|piece| is_plan(piece)).count();
    let tells_more =
        clause.iter().any(|piece| piece.kind().is_some()) || (others > 0 && others + plans > 2);
    let known = words().filter(|piece| is_known(piece)).count();
    only_plans && tells_more && known * 100 >= words().count() * KNOWN_PERCENT_MIN
}
