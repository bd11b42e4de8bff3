//! The words of all loaded packs, for lookup.
//!
//! A phrase is a path through a trie of word numbers, so that each word of a text is hashed once.
//! What a phrase means depends on who texts: the languages of the phone come first; a language
//! that it does not use lends only words that everyday talk is not full of.
//!
//! Deliberately absent: how packs become this (`compile`), misspellings (`repair`), and which of
//! several foreign languages a text is in (`tongues`).

use alloc::{boxed::Box, string::String, vec::Vec};

use hashbrown::HashMap;

use crate::{
    glyphs::{
        fold::{BareWord, has_accents},
        token::Shape,
    },
    kind::Kind,
    lists::{
        pairs::Pairs,
        repair::{Repairs, is_one_slip},
        vocabulary::{Found, Vocabulary, WordId},
    },
    meaning::{Meaning, Numeral, Plain, Traits},
    pack::Joins,
};

/// A set of languages, one bit each.
pub(crate) type Langs = u32;
/// More packs than this cannot be told apart.
pub(crate) const PACKS_MAX: usize = 31;
/// The bit of words that every language shares.
pub(crate) const SHARED: Langs = 1 << 31;

/// Where every phrase begins.
pub(crate) const ROOT: u32 = 0;

/// All words and phrases.
pub(crate) struct Lexicon {
    pub(crate) words: Vocabulary,
    /// For each word, the languages that have it in a phrase.
    pub(crate) word_langs: Vec<Langs>,
    /// For each word, the trie node of the phrases that begin with it; the root where none does.
    pub(crate) starts: Vec<u32>,
    /// From any other node, by the next word.
    pub(crate) steps: HashMap<(u32, WordId), u32>,
    pub(crate) nodes: Vec<Node>,
    pub(crate) phrases: Vec<Phrase>,
    pub(crate) repairs: Repairs,
    pub(crate) pairs: Pairs,
    /// Words for a block, each with its languages.
    pub(crate) block_words: Vec<(Langs, WordId)>,
    /// Number words, each with its languages.
    pub(crate) number_words: Vec<(Langs, WordId)>,
    /// Short words that turn what is said around ("not", "will"), each with its languages.
    pub(crate) turn_words: Vec<(Langs, WordId)>,
    /// Words for fire, which a slip must not hide.
    pub(crate) fire_words: Vec<(Langs, WordId)>,
    /// Words that stand for several.
    pub(crate) expands: HashMap<WordId, Expansion>,
    pub(crate) codes: Vec<String>,
    pub(crate) joins: Vec<Joins>,
}

/// A place in the trie of phrases.
#[derive(Clone, Copy, Default)]
pub(crate) struct Node {
    /// The phrase that ends there.
    pub(crate) end: Option<u32>,
    /// Longer phrases begin with it.
    pub(crate) goes_on: bool,
}

/// What a word stands for: a listed word each, or a number in digits.
pub(crate) struct Expansion {
    pub(crate) langs: Langs,
    pub(crate) parts: Vec<(WordId, Shape)>,
}

/// A listed word or phrase.
#[derive(Default)]
pub(crate) struct Phrase {
    pub(crate) text: String,
    pub(crate) senses: Vec<PhraseSense>,
    /// The languages that list it.
    pub(crate) langs: Langs,
    /// The languages whose chat is full of it: there it proves little.
    pub(crate) weak: Langs,
    /// It is a real word that stands for another, in these languages.
    pub(crate) twin_of: Option<(Langs, Box<str>)>,
    /// What its letters mean with an accent, where the phrase itself is something measured.
    pub(crate) unmeasured: Option<Kind>,
    /// What it is in any of them, at a glance.
    pub(crate) traits: Traits,
    /// Not all of the languages that list it mean the same by it.
    pub(crate) disputed: bool,
}

/// One meaning of a phrase.
pub(crate) struct PhraseSense {
    /// The languages that mean this by it.
    pub(crate) langs: Langs,
    pub(crate) meaning: Meaning,
    /// The usual name of a product, crop or clone.
    pub(crate) name: Option<Box<str>>,
    /// Only without its accents is it spelt so, and the pack lists this spelling for something else.
    pub(crate) shadow: bool,
    /// Only without its accents is it spelt so.
    pub(crate) bare: bool,
}

impl Phrase {
    /// The languages in which it asks for no more texts.
    fn stops(&self) -> Langs {
        let senses = self.senses.iter();
        senses
            .filter(|sense| sense.meaning == Meaning::Plain(Plain::Stop))
            .fold(0, |all, sense| all | sense.langs)
    }
}

/// A phrase as met in a text, seen through the languages in use.
#[derive(Clone, Copy)]
pub(crate) struct Listed<'r> {
    pub(crate) phrase: &'r Phrase,
    /// The languages through which it is seen.
    pub(crate) seen: Langs,
}

impl<'r> Listed<'r> {
    fn senses(self) -> impl Iterator<Item = &'r PhraseSense> {
        let seen = self.seen;
        let senses = self.phrase.senses.iter();
        senses.filter(move |sense| sense.langs & seen != 0)
    }

    /// The number words that it is, each with the languages in which it is one.
    pub(crate) fn of_numbers(self) -> impl Iterator<Item = (Langs, Numeral)> + 'r {
        self.senses()
            .filter_map(move |sense| Some((sense.langs & self.seen, sense.meaning.numeral()?)))
    }

    /// Whether it is a number word only without its accents, and something else as it stands.
    pub(crate) fn is_shadow_number(self) -> bool {
        let mut numbers = self
            .senses()
            .filter(|sense| sense.meaning.numeral().is_some());
        numbers.all(|sense| sense.shadow)
    }

    /// Whether it is listed only without its accents.
    pub(crate) fn is_bare(self) -> bool {
        self.senses().all(|sense| sense.bare)
    }

    /// Whether it is a number word only without its accents: then it may be any other word, too.
    pub(crate) fn is_bare_number(self) -> bool {
        let mut numbers = self
            .senses()
            .filter(|sense| sense.meaning.numeral().is_some());
        numbers.all(|sense| sense.bare)
    }

    /// Its meanings, each with the languages that mean it.
    pub(crate) fn meanings_by_langs(self) -> impl Iterator<Item = (Langs, Meaning)> + 'r {
        self.senses()
            .map(move |sense| (sense.langs & self.seen, sense.meaning))
    }

    /// Its meanings in the languages in use.
    pub(crate) fn meanings(self) -> impl Iterator<Item = Meaning> + 'r {
        self.senses().map(|sense| sense.meaning)
    }

    /// The usual name of the product, crop or clone that it names.
    pub(crate) fn name(self) -> Option<&'r str> {
        self.senses().find_map(|sense| sense.name.as_deref())
    }

    /// Whether it is of this class.
    pub(crate) fn is_plain(self, class: Plain) -> bool {
        self.meanings()
            .any(|meaning| meaning == Meaning::Plain(class))
    }

    /// What it is listed as, at a glance.
    pub(crate) fn traits(self) -> Traits {
        if !self.phrase.disputed {
            return self.phrase.traits;
        }
        let meanings = self.meanings().map(Traits::of);
        meanings.fold(Traits::default(), Traits::and)
    }

    /// The languages that list it, apart from what all share.
    pub(crate) fn langs(self) -> Langs {
        self.phrase.langs & self.seen & !SHARED
    }

    /// Whether ordinary chat is full of it.
    pub(crate) fn is_weak(self) -> bool {
        self.phrase.weak & self.seen != 0
    }

    /// The listed word that it stands for when a phone guessed wrong.
    pub(crate) fn twin_of(self) -> Option<&'r str> {
        let (langs, of) = self.phrase.twin_of.as_ref()?;
        (langs & self.seen != 0).then_some(of)
    }
}

impl Lexicon {
    /// The codes of the packs, in order of their bits.
    pub(crate) fn codes(&self) -> &[String] {
        &self.codes
    }

    /// The bits of the languages that a phone uses; none when it is not known or not loaded.
    pub(crate) fn own(&self, codes: &[&str]) -> Langs {
        let mut own = 0;
        for code in codes {
            let start = code.as_bytes().first_chunk::<2>();
            for (index, pack) in self.codes.iter().enumerate() {
                // Nearly all differ in the first two letters, and most have no more.
                let is_short = pack.len() == 2 && code.len() == 2;
                if pack.as_bytes().first_chunk::<2>() == start && (is_short || is_of(pack, code)) {
                    own |= 1 << index;
                }
            }
        }
        own
    }

    /// The number rules of these languages.
    pub(crate) fn joins(&self, langs: Langs) -> impl Iterator<Item = &Joins> {
        self.joins
            .iter()
            .enumerate()
            .filter(move |(index, _)| langs & (1 << index) != 0)
            .map(|(_, joins)| joins)
    }

    /// A word, listed or of every day; if it is neither, then without its accents.
    pub(crate) fn find(&self, word: &str) -> Option<Found> {
        let found = self.words.find(word);
        let is_listed = found.is_some_and(|found| found.listed);
        if is_listed || word.is_ascii() || !has_accents(word) {
            return found;
        }
        let plain = self.words.find(BareWord::new(word).as_str());
        plain.filter(|plain| plain.listed).or(found)
    }

    /// The number of a listed word.
    pub(crate) fn word(&self, word: &str) -> Option<WordId> {
        self.find(word)?.listed_id()
    }

    /// Whether a run of letters and digits is a word of its own ("sp36", "2day").
    pub(crate) fn is_word(&self, run: &str) -> bool {
        self.words.find(run).is_some_and(|found| found.listed)
    }

    /// Whether a phone of these languages may have meant this word.
    pub(crate) fn may_be_meant(&self, word: WordId, own: Langs) -> bool {
        let langs = self.word_langs.get(word as usize).copied().unwrap_or(0);
        own == 0 || langs & (own | SHARED) != 0
    }

    /// The words that a word stands for, if it is one that stands for several.
    pub(crate) fn expansion(&self, word: WordId, own: Langs) -> Option<&Expansion> {
        self.expands
            .get(&word)
            .filter(|expansion| own == 0 || expansion.langs & own != 0)
    }

    /// Whether a word of no list may be a slip of a number word.
    pub(crate) fn is_near_number(&self, word: &str) -> bool {
        let mut spellings = self
            .number_words
            .iter()
            .filter_map(|(_, id)| self.words.spelling(*id));
        spellings.any(|listed| is_one_slip(word, listed))
    }

    /// Whether a short word of no list may be a slip of one that turns what is said around.
    pub(crate) fn is_near_turn(&self, word: &str, own: Langs) -> bool {
        self.turn_words.iter().any(|(langs, id)| {
            let listed = self.words.spelling(*id);
            langs & own != 0 && listed.is_some_and(|listed| is_one_slip(word, listed))
        })
    }

    /// Whether a word is a slip of one for fire.
    pub(crate) fn is_near_fire(&self, word: &str, own: Langs) -> bool {
        self.fire_words.iter().any(|(langs, id)| {
            let listed = self.words.spelling(*id);
            langs & own != 0 && listed.is_some_and(|listed| is_one_slip(word, listed))
        })
    }

    /// Whether this is a word of every day.
    pub(crate) fn is_common(&self, word: &str) -> bool {
        self.words.find(word).is_some_and(|found| found.common)
    }

    /// The longest phrase along these words, and how many of them it takes. A phrase of the
    /// phone's own languages comes before a longer one of others.
    pub(crate) fn longest(
        &self,
        words: impl Iterator<Item = Option<WordId>>,
        own: Langs,
    ) -> Option<(Listed<'_>, usize)> {
        let mut node = ROOT;
        let mut best: Option<(Listed<'_>, usize)> = None;
        let mut best_is_own = false;
        for (index, word) in words.enumerate() {
            let Some(next) = word.and_then(|word| self.step_from(node, word)) else {
                break;
            };
            node = next;
            let Some(listed) = self.at(node, own) else {
                continue;
            };
            let is_own = own == 0 || listed.phrase.langs & (own | SHARED) != 0;
            if is_own || !best_is_own {
                best = Some((listed, index + 1));
                best_is_own = is_own;
            }
        }
        best
    }

    /// The phrase of exactly these words, if in some language it asks for no more texts.
    pub(crate) fn stop_phrase(
        &self,
        mut words: impl Iterator<Item = Option<WordId>>,
    ) -> Option<Listed<'_>> {
        let node = words.try_fold(ROOT, |node, word| self.step_from(node, word?))?;
        let end = self.nodes.get(node as usize)?.end?;
        let phrase = self.phrases.get(end as usize)?;
        let seen = phrase.stops();
        (seen != 0).then_some(Listed { phrase, seen })
    }

    /// The phrase of one word.
    pub(crate) fn single(&self, word: WordId, own: Langs) -> Option<Listed<'_>> {
        self.at(self.step_from(ROOT, word)?, own)
    }

    /// Whether a phrase of several words begins with this one.
    pub(crate) fn begins_phrase(&self, word: WordId) -> bool {
        let start = self.step_from(ROOT, word);
        let node = start.and_then(|start| self.nodes.get(start as usize));
        node.is_some_and(|node| node.goes_on)
    }

    /// The node that a word leads to.
    fn step_from(&self, node: u32, word: WordId) -> Option<u32> {
        if node == ROOT {
            let start = self.starts.get(word as usize).copied();
            return start.filter(|start| *start != ROOT);
        }
        // Most phrases are one word, and no phrase begins with them.
        let goes_on = self.nodes.get(node as usize)?.goes_on;
        goes_on.then(|| self.steps.get(&(node, word)).copied())?
    }

    fn at(&self, node: u32, own: Langs) -> Option<Listed<'_>> {
        let end = self.nodes.get(node as usize)?.end?;
        let phrase = self.phrases.get(end as usize)?;
        let seen = if own == 0 {
            Langs::MAX
        } else if phrase.langs & (own | SHARED) != 0 {
            own | SHARED
        } else {
            // Whoever wants no more texts is understood in every language.
            phrase.langs & (!phrase.weak | phrase.stops())
        };
        (phrase.langs & seen != 0).then_some(Listed { phrase, seen })
    }
}

/// Whether a pack is one of the language that a code names: "vi-bare" takes "vi", "en-WA" takes
/// "en" too, and "th" takes "th-Latn", for people type their language in both scripts.
fn is_of(pack: &str, code: &str) -> bool {
    let (pack_base, pack_variant) = pack.split_once('-').unwrap_or((pack, ""));
    let (base, variant) = code.split_once('-').unwrap_or((code, ""));
    let is_script = !matches!(pack_variant.len(), 1..=3);
    pack_base == base && (pack_variant == variant || is_script)
}
