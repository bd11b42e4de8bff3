//! A piece of a text: a listed phrase, a name, a number, a mark.
//!
//! Deliberately absent: how a text is cut into pieces (`cutter`).

use smallvec::SmallVec;

use crate::{
    glyphs::figure::{Number, Values},
    kind::Kind,
    lists::lexicon::Listed,
    meaning::{Meaning, Plain, Traits, sort},
    when::When,
};

/// A text of so many words, which is more than one SMS usually holds, takes no memory for them.
pub(crate) const IN_PLACE_MAX: usize = 64;

/// The pieces of a text.
pub(crate) type Pieces<'r> = SmallVec<[Piece<'r>; IN_PLACE_MAX]>;

/// One word, phrase, name, number or mark of the text.
#[derive(Clone, Copy)]
pub(crate) struct Piece<'r> {
    /// First byte in the folded text.
    pub(crate) start: usize,
    pub(crate) end: usize,
    pub(crate) sense: Sense<'r>,
    /// What it is listed as, at a glance: that is asked for many times.
    pub(crate) traits: Traits,
    /// Two languages in use read it differently.
    pub(crate) torn: bool,
    /// It is a word of every day that is not listed, or a part of a body.
    pub(crate) everyday: bool,
    pub(crate) trust: Trust,
    /// The listed word that it was repaired to.
    pub(crate) repaired: Option<&'r str>,
}

/// How far the reading of a word can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Trust {
    Full,
    /// The repair is only a guess.
    Guess,
    /// It is in no list, and may be a slip of a word that says something, or hold one.
    Suspect,
}

/// What a piece is.
#[derive(Clone, Copy)]
pub(crate) enum Sense<'r> {
    /// A listed word or phrase.
    Listed(Listed<'r>),
    Number(Number),
    List {
        values: Values<'r>,
        sure: bool,
    },
    Range(u32, u32),
    /// "12 of 30".
    Share(u32, u32),
    /// "15-15-15".
    Grade,
    /// Three numbers, not yet known to be a date or a grade.
    Triple([u16; 3]),
    Fraction(u8, u8),
    Metres(f64),
    When(When),
    NoSuchDay,
    Clock,
    /// "6x3".
    Spacing,
    TooLarge,
    /// Number words that make no number.
    NoNumber,
    /// A block: the farmer's spelling, or as written.
    Block(&'r str),
    /// A group or a person.
    Group(&'r str),
    Member(&'r str),
    Mark(char),
    /// Two kinds are equally near.
    TwoKinds(Kind, Kind),
    Unknown,
}

impl Traits {
    /// What any of these pieces is listed as.
    pub(crate) fn of_all(pieces: &[Piece<'_>]) -> Self {
        let traits = pieces.iter().map(|piece| piece.traits);
        traits.fold(Self::default(), Self::and)
    }
}

/// What a text holds, at a glance, so that most rules need not look at its pieces.
#[derive(Clone, Copy)]
pub(crate) struct Glance {
    /// What any of its pieces is listed as.
    pub(crate) traits: Traits,
    /// There is a question mark.
    pub(crate) asks: bool,
}

impl Glance {
    /// Looks at a text.
    pub(crate) fn of(pieces: &[Piece<'_>]) -> Self {
        Self {
            traits: Traits::of_all(pieces),
            asks: pieces.iter().any(|piece| piece.is_mark('?')),
        }
    }
}

impl<'r> Piece<'r> {
    /// Turns into something else than what it was listed as.
    pub(crate) fn becomes(&mut self, sense: Sense<'r>) {
        self.sense = sense;
        self.traits = Traits::default();
        self.everyday = false;
        self.trust = Trust::Full;
        self.torn = false;
    }

    /// Whether it is this mark.
    pub(crate) fn is_mark(&self, wanted: char) -> bool {
        matches!(self.sense, Sense::Mark(mark) if mark == wanted)
    }

    /// What it is listed as.
    pub(crate) fn listed(&self) -> Option<Listed<'r>> {
        if let Sense::Listed(listed) = self.sense {
            Some(listed)
        } else {
            None
        }
    }

    /// Its meanings, if it is listed.
    pub(crate) fn meanings(&self) -> impl Iterator<Item = Meaning> + 'r {
        self.listed().into_iter().flat_map(Listed::meanings)
    }

    /// Whether it is listed in this class.
    pub(crate) fn is_plain(&self, class: Plain) -> bool {
        self.traits.has_plain(class.bit())
    }

    /// Whether it is listed as one of these.
    pub(crate) fn is_any(&self, classes: &[Plain]) -> bool {
        let wanted = classes.iter().fold(0, |all, class| all | class.bit());
        self.traits.has_plain(wanted)
    }

    /// Whether it has a meaning of one of these sorts.
    pub(crate) const fn is_of(&self, sorts: u32) -> bool {
        self.traits.has(sorts)
    }

    /// Whether any of its meanings, plain classes apart, is wanted.
    pub(crate) fn means(&self, wanted: impl Fn(Meaning) -> bool) -> bool {
        self.traits.sorts != 0 && self.meanings().any(wanted)
    }

    /// The first of its meanings, plain classes apart, that has this part.
    pub(crate) fn part<T>(&self, part: impl Fn(Meaning) -> Option<T>) -> Option<T> {
        if self.traits.sorts == 0 {
            return None;
        }
        self.meanings().find_map(part)
    }

    /// The number that it is, if it is one.
    pub(crate) fn number(&self) -> Option<Number> {
        if let Sense::Number(number) = self.sense {
            Some(number)
        } else {
            None
        }
    }

    /// The kind of work that it names outright.
    pub(crate) fn kind(&self) -> Option<Kind> {
        if !self.is_of(sort::KIND) {
            return None;
        }
        self.meanings().find_map(Meaning::kind)
    }
}
