//! A word, or a number that stands for one: some senders write ids and phone numbers without
//! quotation marks.

use serde::{Deserialize, Deserializer};

#[derive(Deserialize)]
#[serde(untagged)]
enum Word {
    Text(String),
    Unsigned(u64),
    Signed(i64),
}

impl Word {
    fn text(self) -> String {
        match self {
            Self::Text(text) => text,
            Self::Unsigned(number) => number.to_string(),
            Self::Signed(number) => number.to_string(),
        }
    }
}

/// A word that must be there.
pub(super) fn word_or_number<'de, D: Deserializer<'de>>(from: D) -> Result<String, D::Error> {
    Word::deserialize(from).map(Word::text)
}

/// A word that may be missing.
pub(super) fn maybe_word<'de, D: Deserializer<'de>>(from: D) -> Result<Option<String>, D::Error> {
    let word = Option::<Word>::deserialize(from)?;
    Ok(word.map(Word::text))
}
