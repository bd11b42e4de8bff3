//! In which of several languages a word is meant.
//!
//! A word of the phone's own languages is meant so (`lexicon`). Any other word is taken in the
//! language that most words of the text belong to. Where that leaves two readings, the word is
//! torn: what it says is asked about, and an answer that may be yes or no is none.
//!
//! Deliberately absent: a guess at the language of a text with nothing to go by.

use crate::{
    lists::{
        lexicon::{Langs, Listed, SHARED},
        piece::{Piece, Sense, Trust},
    },
    meaning::{Meaning, Plain, sort},
};

/// Settles every piece on the languages it is seen through.
pub(crate) fn settle(pieces: &mut [Piece<'_>], own: Langs) {
    let needs = |piece: &Piece<'_>| {
        piece.listed().is_some_and(|listed| {
            listed.phrase.disputed || own == 0 || listed.phrase.langs & (own | SHARED) == 0
        })
    };
    // On a phone of one language most texts hold no such word; they need no closer look.
    if !pieces.iter().any(needs) {
        return;
    }
    let text = of_text(pieces, own);
    for piece in pieces.iter_mut() {
        let Some(listed) = piece.listed() else {
            continue;
        };
        let phrase = listed.phrase;
        let is_own = phrase.langs & (own | SHARED) != 0 && own != 0;
        let in_text = phrase.langs & text != 0;
        let is_slip = piece.repaired.is_some() && text != 0;
        let is_foreign = !is_own && !in_text;
        let is_everyday = text != 0 && (is_slip || phrase.langs & !phrase.weak == 0);
        // "i never": several words that deny are spelt so by no chance.
        let denies = piece.is_any(&[Plain::Negation, Plain::NotYet]) && phrase.text.contains(' ');
        if is_foreign && !denies && (is_everyday || (own != 0 && is_chance(piece))) {
            // An everyday word of a language that nobody speaks here. Of work it is not passed over.
            let is_work = piece.is_of(sort::WORK) && piece.end - piece.start > CHANCE_LEN_MAX;
            piece.becomes(Sense::Unknown);
            piece.repaired = None;
            if is_work && own != 0 {
                piece.trust = Trust::Suspect;
            }
            continue;
        }
        let seen = if is_own || !in_text {
            listed.seen
        } else {
            text | SHARED
        };
        let listed = Listed { phrase, seen };
        piece.sense = Sense::Listed(listed);
        piece.traits = listed.traits();
        if phrase.disputed {
            settle_dispute(piece, listed);
        }
    }
}

/// Longer words are seldom spelt alike by chance.
const CHANCE_LEN_MAX: usize = 3;

/// A word that may be spelt like one of another language by chance: a short one, and one that only
/// colours what others say. STOP counts in every language.
fn is_chance(piece: &Piece<'_>) -> bool {
    let is_short = piece.end - piece.start <= CHANCE_LEN_MAX;
    let only_colours = piece.is_of(sort::STANCE) && !piece.is_of(!(sort::STANCE | sort::NUMERAL));
    (is_short || only_colours) && !piece.is_plain(Plain::Stop)
}

/// The languages that most words of the text belong to; several when they are level. The phone's
/// own are left out: their words need no vote.
fn of_text(pieces: &[Piece<'_>], own: Langs) -> Langs {
    // On a phone whose language is known, a small word alone does not bring in another language.
    let counts = |piece: &&Piece<'_>| piece.repaired.is_none() && (own == 0 || !is_chance(piece));
    let listed = pieces.iter().filter(counts).filter_map(Piece::listed);
    let votes = votes(listed.map(|listed| listed.phrase.langs & !SHARED & !own));
    let most = votes.iter().copied().max().unwrap_or(0);
    let with_most = votes
        .iter()
        .enumerate()
        .filter(|(_, count)| **count == most);
    if most == 0 {
        return 0;
    }
    with_most.fold(0, |all, (index, _)| all | 1 << index)
}

/// How many of these have each language.
pub(crate) fn votes(of: impl Iterator<Item = Langs>) -> [u16; Langs::BITS as usize] {
    let mut votes = [0; Langs::BITS as usize];
    for mut langs in of {
        while langs != 0 {
            if let Some(count) = votes.get_mut(langs.trailing_zeros() as usize) {
                *count += 1;
            }
            langs &= langs - 1;
        }
    }
    votes
}

/// What is left of a word that its languages read differently.
fn settle_dispute(piece: &mut Piece<'_>, listed: Listed<'_>) {
    let mut kinds = listed.meanings().filter_map(Meaning::kind);
    let first = kinds.next();
    let other = kinds.find(|kind| Some(*kind) != first);
    if let (Some(one), Some(other)) = (first, other) {
        piece.becomes(Sense::TwoKinds(one, other));
        return;
    }
    let all = listed.phrase.langs & listed.seen & !SHARED;
    let carries = |meaning: Meaning| {
        meaning.kind().is_some()
            || meaning.numeral().is_some()
            || matches!(meaning, Meaning::Plain(Plain::Negation | Plain::NotYet))
    };
    let by = |wanted: fn(Meaning) -> bool| {
        listed
            .meanings_by_langs()
            .filter(|(_, meaning)| wanted(*meaning))
            .fold(0, |of, (langs, _)| of | langs)
            & !SHARED
    };
    piece.torn = listed
        .meanings_by_langs()
        .any(|(of, meaning)| carries(meaning) && of & SHARED == 0 && of & all != all);
    let yes = by(|meaning| meaning == Meaning::Plain(Plain::Yes));
    let no = by(|meaning| meaning == Meaning::Plain(Plain::No));
    if yes != 0 && no != 0 && yes != no {
        piece.traits.plain &= !(Plain::Yes.bit() | Plain::No.bit());
    }
}
