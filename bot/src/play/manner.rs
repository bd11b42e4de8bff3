//! How farmers answer nudges: soon, late, with odd spelling, seldom, or only as the script says.

use super::replies::Spelling;

/// A way of answering.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Manner {
    /// Soon and nearly always.
    Diligent,
    /// Days later, and not always.
    Late,
    /// Soon, and spells badly.
    Misspelling,
    /// Hardly ever.
    Quiet,
    /// Only what the script says.
    Scripted,
}

/// What a way of answering means in figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Habits {
    /// Nudges answered of a hundred.
    pub(crate) answers: u32,
    /// Days until the answer, at least and at most.
    pub(crate) days: (u32, u32),
    /// How the answer is spelt.
    pub(crate) spelling: Spelling,
}

impl Manner {
    /// Every manner.
    pub(crate) const ALL: [Self; 5] = [
        Self::Diligent,
        Self::Late,
        Self::Misspelling,
        Self::Quiet,
        Self::Scripted,
    ];

    /// The word in the script.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Diligent => "diligent",
            Self::Late => "late",
            Self::Misspelling => "misspelling",
            Self::Quiet => "quiet",
            Self::Scripted => "scripted",
        }
    }

    /// The manner of this word.
    pub(crate) fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|manner| manner.word() == word)
    }

    /// The figures; what is done in a field and told by text differs as much as people do.
    pub(crate) const fn habits(self) -> Habits {
        let (answers, days, spelling) = match self {
            Self::Diligent => (95, (0, 3), Spelling::Plain),
            Self::Late => (75, (4, 12), Spelling::Plain),
            Self::Misspelling => (85, (1, 5), Spelling::Misspelt),
            Self::Quiet => (8, (2, 9), Spelling::Plain),
            Self::Scripted => (0, (0, 0), Spelling::Plain),
        };
        Habits {
            answers,
            days,
            spelling,
        }
    }
}
