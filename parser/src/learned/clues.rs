//! What each piece of a text shows of what is told: clues, each a hash that has learned weights.
//!
//! A clue is a word, a listed meaning, a run of letters of a word that is not listed, or two
//! neighbours. Deliberately absent: what a clue is worth; that is learned (`weights`).

use smallvec::SmallVec;

use crate::{
    glyphs::fold::{Folded, bare_letters},
    lists::piece::{IN_PLACE_MAX, Piece, Sense, Trust},
    meaning::{Meaning, Plain, sort},
    pieces::text::{FULL_STOP, break_strength},
    reading::Report,
    rules::segment::Segment,
};

/// A hash of what is shown.
pub(crate) type Clue = u32;

/// Longer words show by their first letters what they are.
const LETTERS_MAX: usize = 20;
/// Runs of letters that are looked at.
const RUN_MIN: usize = 2;
const RUN_MAX: usize = 5;

/// Where the clues of the pieces of a text are found. They are made anew each time they are asked for,
/// so that they take no memory.
pub(crate) struct Clues<'a, 'r> {
    pieces: &'a [Piece<'r>],
    folded: &'a Folded<'r>,
    faces: SmallVec<[Face; IN_PLACE_MAX]>,
    /// What colours the sentence of each piece.
    tones: SmallVec<[u32; IN_PLACE_MAX]>,
    hints: Hints,
}

/// What the rules of the lists make of each piece: nothing, or a number that stands for a kind of work,
/// and whether it is denied.
pub(crate) type Hints = SmallVec<[u8; IN_PLACE_MAX]>;

/// What the rules make of the pieces: the work of the segment that each lies in.
pub(crate) fn hints(
    count: usize,
    folded: &Folded<'_>,
    pieces: &[Piece<'_>],
    segments: &[Segment],
    reports: &[Report],
) -> Hints {
    let mut hints = Hints::from_elem(0, count);
    let start = |at: usize| {
        pieces.get(at).map_or(usize::MAX, |piece| {
            folded.span(piece.start, piece.end).start
        })
    };
    for segment in segments {
        let span = start(segment.pieces.start)..start(segment.pieces.end);
        let denied = reports.iter().any(|report| {
            span.contains(&report.span.start)
                && (report.details.not_done == Some(segment.kind)
                    || (report.kind == segment.kind && report.details.count == Some(0)))
        });
        let hint = 1 + segment.kind as u8 * 2 + u8::from(denied);
        for place in hints.get_mut(segment.pieces.clone()).unwrap_or_default() {
            *place = hint;
        }
    }
    hints
}

impl<'a, 'r> Clues<'a, 'r> {
    /// Looks at the pieces of a text.
    pub(crate) fn of(
        pieces: &'a [Piece<'r>],
        folded: &'a Folded<'r>,
        hints: Hints,
        adviser: bool,
    ) -> Self {
        let mut clues = Self {
            pieces,
            folded,
            faces: SmallVec::with_capacity(pieces.len()),
            tones: SmallVec::with_capacity(pieces.len()),
            hints,
        };
        let mut tone = 0;
        for (at, piece) in pieces.iter().enumerate() {
            let begins = at
                .checked_sub(1)
                .is_none_or(|before| is_stop(pieces.get(before)));
            if begins {
                tone = tone_of(pieces.get(at..).unwrap_or_default(), adviser);
            }
            clues.faces.push(Face::of(piece, folded));
            clues.tones.push(tone);
        }
        clues
    }

    /// Hands out the clues of one piece.
    pub(crate) fn each(&self, at: usize, put: impl FnMut(Clue)) {
        let mut sink = Sink { put };
        if let (Some(piece), Some(tone)) = (self.pieces.get(at), self.tones.get(at)) {
            sink.look(at, piece, &self.faces, self.folded, *tone);
            let hint = self.hints.get(at).copied().unwrap_or(0);
            let sense = self.faces.get(at).map_or(0, |face| face.sense);
            sink.put(21, u32::from(hint));
            sink.put(22, pair(u32::from(hint), sense));
        }
    }

    /// Number of pieces.
    pub(crate) fn len(&self) -> usize {
        self.pieces.len()
    }
}

/// Where clues go.
struct Sink<F> {
    put: F,
}

impl<F: FnMut(Clue)> Sink<F> {
    fn look(
        &mut self,
        at: usize,
        piece: &Piece<'_>,
        faces: &[Face],
        folded: &Folded<'_>,
        tone: u32,
    ) {
        let face = |at: Option<usize>| {
            at.and_then(|at| faces.get(at))
                .copied()
                .unwrap_or(Face::NONE)
        };
        let here = face(Some(at));
        let (before, after) = (face(at.checked_sub(1)), face(Some(at + 1)));
        let (before2, after2) = (face(at.checked_sub(2)), face(Some(at + 2)));
        self.put(1, here.word);
        self.put(2, here.sense);
        self.put(5, pair(before.sense, here.sense));
        self.put(6, pair(here.sense, after.sense));
        self.put(7, pair(before2.sense, pair(before.sense, here.sense)));
        self.put(8, pair(pair(here.sense, after.sense), after2.sense));
        self.put(9, before.word);
        self.put(10, after.word);
        self.put(16, before.sense);
        self.put(17, after.sense);
        self.put(18, before2.sense);
        self.put(19, after2.sense);
        let is_mark = matches!(piece.sense, Sense::Mark(_));
        if !is_mark {
            let mut left = tone;
            while left != 0 {
                self.put(11, left.trailing_zeros());
                left &= left - 1;
            }
        }
        if let Some(listed) = piece.listed() {
            let how = u32::from(listed.is_weak())
                | u32::from(piece.torn) << 1
                | u32::from(piece.repaired.is_some()) << 2;
            for meaning in listed.meanings() {
                self.put(12, code(meaning));
                if how != 0 {
                    self.put(13, pair(code(meaning), how));
                }
            }
            let mut plain = piece.traits.plain;
            while plain != 0 {
                self.put(14, plain.trailing_zeros());
                plain &= plain - 1;
            }
        }
        if matches!(piece.sense, Sense::Unknown | Sense::TwoKinds(..)) || piece.listed().is_some() {
            self.letters(folded.text.get(piece.start..piece.end).unwrap_or(""));
        }
        if piece.everyday {
            self.put(15, 1);
        }
        if piece.trust == Trust::Suspect {
            self.put(15, 2);
        }
    }

    /// Runs of letters, with the borders of the word.
    fn letters(&mut self, word: &str) {
        let mut letters: SmallVec<[u32; 32]> = SmallVec::new();
        letters.push(u32::from(' '));
        if word.is_ascii() {
            letters.extend(word.bytes().take(LETTERS_MAX).map(u32::from));
        } else {
            letters.extend(bare_letters(word).take(LETTERS_MAX).map(u32::from));
        }
        letters.push(u32::from(' '));
        for start in 0..letters.len() {
            let mut hash = SEED;
            for (len, letter) in letters.iter().skip(start).take(RUN_MAX).enumerate() {
                hash = mix(hash, *letter);
                if len + 1 >= RUN_MIN {
                    self.put(20, hash);
                }
            }
        }
    }

    fn put(&mut self, sort: u32, value: u32) {
        (self.put)(clue(sort, value));
    }
}

/// What the use of a number depends on beside its own clues: the work that it belongs to.
pub(crate) fn use_clues(pieces: &[Piece<'_>], at: usize, state: u8) -> [Clue; 4] {
    let sense = |at: Option<usize>| at.and_then(|at| pieces.get(at)).map_or(0, sense_of);
    let state = u32::from(state);
    let (before, after) = (sense(at.checked_sub(1)), sense(Some(at + 1)));
    [
        clue(30, state),
        clue(31, pair(state, before)),
        clue(32, pair(state, after)),
        clue(33, pair(state, sense(Some(at)))),
    ]
}

pub(crate) fn clue(sort: u32, value: u32) -> Clue {
    let mut hash = mix(mix(SEED, sort), value);
    hash ^= hash >> 15;
    hash = hash.wrapping_mul(0x2c1b_3c6d);
    hash ^= hash >> 12;
    hash = hash.wrapping_mul(0x297a_2d39);
    hash ^ (hash >> 15)
}

pub(crate) const SEED: u32 = 0x811c_9dc5;

/// One step of a hash.
pub(crate) const fn mix(hash: u32, value: u32) -> u32 {
    (hash ^ value)
        .wrapping_mul(0x0100_0193)
        .rotate_left(5)
        .wrapping_add(value)
}

pub(crate) const fn pair(one: u32, other: u32) -> u32 {
    mix(mix(SEED, one), other)
}

/// A piece as its neighbours see it.
#[derive(Clone, Copy)]
struct Face {
    /// Its letters; figures and names all look alike.
    word: u32,
    /// What it is first of all.
    sense: u32,
}

impl Face {
    const NONE: Self = Self { word: 0, sense: 0 };

    fn of(piece: &Piece<'_>, folded: &Folded<'_>) -> Self {
        let sense = sense_of(piece);
        let word = match piece.sense {
            Sense::Listed(_) | Sense::Unknown | Sense::TwoKinds(..) => {
                let text = folded.text.get(piece.start..piece.end).unwrap_or("");
                text.chars()
                    .fold(SEED, |hash, letter| mix(hash, u32::from(letter)))
            }
            Sense::Number(_)
            | Sense::List { .. }
            | Sense::Range(..)
            | Sense::Share(..)
            | Sense::Grade
            | Sense::Triple(_)
            | Sense::Fraction(..)
            | Sense::Metres(_)
            | Sense::When(_)
            | Sense::NoSuchDay
            | Sense::Clock
            | Sense::Spacing
            | Sense::TooLarge
            | Sense::NoNumber
            | Sense::Block(_)
            | Sense::Group(_)
            | Sense::Member(_)
            | Sense::Mark(_) => sense,
        };
        Self { word, sense }
    }
}

/// The one thing that a piece is first of all.
pub(crate) fn sense_of(piece: &Piece<'_>) -> u32 {
    match piece.sense {
        Sense::Listed(_) => {
            let work = piece
                .meanings()
                .find(|meaning| meaning.sort() & sort::WORK != 0);
            let mut others = piece.meanings();
            // Who is no adviser says nothing with a word of theirs.
            let other = || others.find(|meaning| meaning.sort() != sort::ADVISER_TOPIC);
            work.or_else(other).map_or(UNKNOWN, code)
        }
        Sense::Number(number) => {
            if number.whole().is_none() {
                1
            } else if number.value < 3.0 {
                2
            } else if number.value < 13.0 {
                3
            } else if number.value < 1000.0 {
                4
            } else {
                5
            }
        }
        Sense::List { .. } => 6,
        Sense::Range(..) => 7,
        Sense::Share(..) => 8,
        Sense::Grade => 9,
        Sense::Triple(_) => 10,
        Sense::Fraction(..) => 11,
        Sense::Metres(_) => 12,
        Sense::When(_) => 13,
        Sense::NoSuchDay => 14,
        Sense::Clock => 15,
        Sense::Spacing => 23,
        Sense::TooLarge => 16,
        Sense::NoNumber => 17,
        Sense::Block(_) => 18,
        Sense::Group(_) => 19,
        Sense::Member(_) => 20,
        Sense::Mark(mark) => 64 + u32::from(mark),
        Sense::TwoKinds(..) => 21,
        Sense::Unknown => UNKNOWN,
    }
}

/// A word of which nothing is known.
const UNKNOWN: u32 = 22;

/// A meaning as a number.
pub(crate) fn code(meaning: Meaning) -> u32 {
    let value = match meaning {
        Meaning::Kind(kind) => kind as u32,
        Meaning::Ailment(ailment) => ailment as u32,
        Meaning::Cause(cause) => cause as u32,
        Meaning::Material(material) => material as u32,
        Meaning::Unit(unit) => unit as u32,
        Meaning::Extent(extent) => extent as u32,
        Meaning::Wetness(wetness) => wetness as u32,
        Meaning::Per(per) => per as u32,
        Meaning::Stance(stance) => stance as u32,
        Meaning::Alarm(alarm) => alarm as u32,
        Meaning::Topic(topic) => topic as u32,
        Meaning::Plain(plain) => return 10_000 + plain as u32,
        Meaning::DaysAgo(_)
        | Meaning::Weekday(_)
        | Meaning::Month(_)
        | Meaning::Ago(_)
        | Meaning::Period(_)
        | Meaning::Land(_)
        | Meaning::Numeral(_)
        | Meaning::Fertiliser
        | Meaning::Spray
        | Meaning::Crop
        | Meaning::Cover
        | Meaning::Clone
        | Meaning::AdviserTopic(_) => 0,
    };
    1_000 + (meaning.sort().trailing_zeros() * 40) + value
}

fn is_stop(piece: Option<&Piece<'_>>) -> bool {
    piece.is_some_and(|piece| break_strength(piece) >= FULL_STOP)
}

/// What colours a whole sentence: asked, planned, of others, denied.
fn tone_of(rest: &[Piece<'_>], adviser: bool) -> u32 {
    let mut tone = u32::from(adviser);
    for piece in rest {
        if piece.is_of(sort::STANCE) {
            for meaning in piece.meanings() {
                if let Meaning::Stance(stance) = meaning {
                    tone |= 2 << (stance as u32);
                }
            }
        }
        if piece.is_mark('?') {
            tone |= 1 << 12;
        }
        if piece.is_plain(Plain::NotYet) {
            tone |= 1 << 13;
        }
        if piece.is_plain(Plain::Negation) {
            tone |= 1 << 14;
        }
        if matches!(piece.sense, Sense::Block(_)) {
            tone |= 1 << 15;
        }
        if piece.number().is_some() {
            tone |= 1 << 16;
        }
        if piece.is_plain(Plain::Next) {
            tone |= 1 << 17;
        }
        if is_stop(Some(piece)) {
            break;
        }
    }
    tone
}
