//! How often each kind of noise falls on a text, at three levels.
//!
//! Rates are shares of ten thousand. They follow counts over 55,835 real texts (Chen and Kan 2013)
//! and published studies where there are any; the rest are assumptions and say so.

/// How rough the texts are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Level {
    Clean,
    Typical,
    Heavy,
}

impl Level {
    pub(crate) const ALL: [Self; 3] = [Self::Clean, Self::Typical, Self::Heavy];

    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Clean => "clean",
            Self::Typical => "typical",
            Self::Heavy => "heavy",
        }
    }

    pub(crate) const fn rates(self) -> &'static Rates {
        match self {
            Self::Clean => &CLEAN,
            Self::Typical => &TYPICAL,
            Self::Heavy => &HEAVY,
        }
    }
}

/// Shares of ten thousand: of texts, borders, words or numbers, as said.
pub(crate) struct Rates {
    pub(crate) greeting: u64,
    pub(crate) thanks: u64,
    pub(crate) title: u64,
    /// "we", "i have" before the report (assumed).
    pub(crate) opening: u64,
    /// Of borders of a letter and a digit: the space is left out (13 % of real texts).
    pub(crate) glued: u64,
    /// Of marks: no space after it.
    pub(crate) tight_mark: u64,
    /// Of texts: two spaces somewhere.
    pub(crate) double_space: u64,
    /// Of gaps between words (run-ons are 13 % of misspellings, Kukich 1992 as quoted).
    pub(crate) run_on: u64,
    pub(crate) all_small: u64,
    pub(crate) all_capitals: u64,
    /// Of texts, in languages where marks are left out.
    pub(crate) no_marks: u64,
    /// Of words of five letters and more: a vowel dropped, a doubled letter made single.
    pub(crate) dropped: u64,
    /// Of words: a neighbouring key, the same key, another letter.
    pub(crate) neighbour: u64,
    pub(crate) same_key: u64,
    pub(crate) other_letter: u64,
    /// Of words: a letter put in, doubled, swapped with the next.
    pub(crate) put_in: u64,
    pub(crate) doubled: u64,
    pub(crate) swapped: u64,
    /// Of words that have a twin on a phone's keys.
    pub(crate) twin: u64,
    /// Of words that have a shorthand.
    pub(crate) shorthand: u64,
    /// Of numbers: written in words (assumed).
    pub(crate) number_words: u64,
    /// Of numbers: the mark of the language before decimals.
    pub(crate) own_decimal: u64,
    /// Of numbers: typed wrongly (4.8 % of data, Patnaik, Brunskill and Thies 2009).
    pub(crate) number_slip: u64,
    /// Of tokens: a word beside it that adds nothing (13 to 16 % of real words are unlisted).
    pub(crate) strange: u64,
    /// Of texts: sent twice (assumed).
    pub(crate) twice: u64,
}

const CLEAN: Rates = Rates {
    greeting: 0,
    thanks: 0,
    title: 0,
    opening: 0,
    glued: 0,
    tight_mark: 0,
    double_space: 0,
    run_on: 0,
    all_small: 0,
    all_capitals: 0,
    no_marks: 0,
    dropped: 0,
    neighbour: 0,
    same_key: 0,
    other_letter: 0,
    put_in: 0,
    doubled: 0,
    swapped: 0,
    twin: 0,
    shorthand: 0,
    number_words: 500,
    own_decimal: 10_000,
    number_slip: 0,
    strange: 0,
    twice: 0,
};

const TYPICAL: Rates = Rates {
    greeting: 1_500,
    thanks: 600,
    title: 1_000,
    opening: 1_000,
    glued: 1_000,
    tight_mark: 2_000,
    double_space: 1_500,
    run_on: 150,
    all_small: 6_000,
    all_capitals: 1_000,
    no_marks: 6_000,
    dropped: 400,
    neighbour: 100,
    same_key: 20,
    other_letter: 60,
    put_in: 50,
    doubled: 20,
    swapped: 20,
    twin: 50,
    shorthand: 1_500,
    number_words: 800,
    own_decimal: 7_000,
    number_slip: 150,
    strange: 600,
    twice: 200,
};

const HEAVY: Rates = Rates {
    greeting: 2_000,
    thanks: 800,
    title: 1_500,
    opening: 1_500,
    glued: 2_500,
    tight_mark: 2_700,
    double_space: 2_600,
    run_on: 500,
    all_small: 6_000,
    all_capitals: 2_000,
    no_marks: 9_000,
    dropped: 1_000,
    neighbour: 300,
    same_key: 60,
    other_letter: 200,
    put_in: 200,
    doubled: 80,
    swapped: 80,
    twin: 200,
    shorthand: 4_000,
    number_words: 1_500,
    own_decimal: 5_000,
    number_slip: 500,
    strange: 1_500,
    twice: 500,
};
