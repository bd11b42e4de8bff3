//! The language packs that ship with this crate, as text.
//!
//! A further language is a further file and a further line here; no other code.

/// English.
pub const ENGLISH: &str = include_str!("../languages/en.toml");
/// Clones, fertilisers and units that are written alike in every language.
pub(crate) const TRADE: &str = include_str!("../languages/trade.toml");

/// Every pack that ships.
pub const ALL: &[&str] = &[
    ENGLISH,
    include_str!("../languages/en-WA.toml"),
    include_str!("../languages/fr.toml"),
    include_str!("../languages/id.toml"),
    include_str!("../languages/ms.toml"),
    include_str!("../languages/th.toml"),
    include_str!("../languages/th-Latn.toml"),
    include_str!("../languages/vi.toml"),
    include_str!("../languages/pt.toml"),
    include_str!("../languages/ta.toml"),
    include_str!("../languages/ml.toml"),
    include_str!("../languages/si.toml"),
];

/// Words of every day that lie near a word of work and are never repaired into one, by the code
/// of the pack.
const COMMON: &[(&str, &str)] = &[
    ("en", include_str!("../languages/en.common.txt")),
    ("fr", include_str!("../languages/fr.common.txt")),
    ("id", include_str!("../languages/id.common.txt")),
    ("ms", include_str!("../languages/ms.common.txt")),
    ("th", include_str!("../languages/th.common.txt")),
    ("pt", include_str!("../languages/pt.common.txt")),
];

const CHAT: &str = include_str!("../languages/chat.txt");

/// Words that nearly every English chat holds.
pub(crate) fn chat_words() -> impl Iterator<Item = &'static str> {
    words_of(CHAT)
}

fn words_of(list: &'static str) -> impl Iterator<Item = &'static str> {
    list.lines()
        .filter(|line| !line.starts_with('#'))
        .flat_map(str::split_whitespace)
}

/// The common words of a language that ships, by the code of its pack.
pub(crate) fn common_words(code: &str) -> &'static str {
    COMMON
        .iter()
        .find(|(of, _)| *of == code)
        .map_or("", |(_, words)| words)
}
