//! What is said, as a value: to whom, what and why. Nothing is sent by making one.

use super::outcome::Outcome;
use crate::{
    wording::Phrase,
    words::{limits, message::Purpose},
};

/// A text to be sent.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Said {
    /// Who reads it.
    pub(crate) to: To,
    /// What it says.
    pub(crate) phrase: Phrase,
    /// Why it is sent.
    pub(crate) purpose: Purpose,
    /// Whether it is a question that waits for its answer: unread, it must not.
    pub(crate) asks: bool,
}

/// Who reads a text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct To {
    /// The phone.
    pub(crate) number: String,
    /// The language; English when none is known.
    pub(crate) language: Option<String>,
}

/// What a deed made of a text, and what is said of it.
#[derive(Debug, PartialEq)]
pub(crate) struct Done {
    pub(crate) outcome: Outcome,
    pub(crate) said: Vec<Said>,
}

impl Outcome {
    /// Nothing is said.
    pub(crate) const fn silently(self) -> Done {
        Done {
            outcome: self,
            said: Vec::new(),
        }
    }

    /// This is said.
    pub(crate) fn saying(self, said: impl IntoIterator<Item = Said>) -> Done {
        Done {
            outcome: self,
            said: said.into_iter().collect(),
        }
    }
}

/// The letters and digits of a text as a sum, where there are enough letters to know it again. The
/// digits count: rows of a sheet are texted one after the other, and differ in nothing else.
pub(crate) fn sum_of(text: &str) -> Option<u32> {
    let signs = text.chars().filter(|c| c.is_alphanumeric());
    let signs: String = signs.flat_map(char::to_lowercase).collect();
    let letters = signs.chars().filter(|c| c.is_alphabetic()).count();
    (letters >= limits::MACHINE_LETTERS).then(|| crc32fast::hash(signs.as_bytes()))
}
