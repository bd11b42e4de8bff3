//! The language packs that ship with this crate, as text.
//!
//! A further language is a further file and a further line here; no other code.

/// English.
pub const ENGLISH: &str = include_str!("../languages/en.toml");
/// English words of every day that lie near a word of work: never repaired into one.
pub(crate) const ENGLISH_COMMON: &str = include_str!("../languages/en.common.txt");
/// Clones, fertilisers and units that are written alike in every language.
pub(crate) const TRADE: &str = include_str!("../languages/trade.toml");

/// Every pack that ships.
pub const ALL: &[&str] = &[ENGLISH];

/// The common words of a language that ships, by the code of its pack.
pub(crate) fn common_words(code: &str) -> &'static str {
    match code {
        "en" => ENGLISH_COMMON,
        _ => "",
    }
}
