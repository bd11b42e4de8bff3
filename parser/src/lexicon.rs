//! The words of all loaded packs, compiled for lookup.
//!
//! A phrase is a path through a trie of word numbers, so that each word of a text is hashed once.
//! Deliberately absent: misspellings (`repair`) and everything that depends on neighbours.

use alloc::{
    borrow::ToOwned,
    boxed::Box,
    string::{String, ToString},
    vec::Vec,
};

use hashbrown::{HashMap, HashSet};

use crate::{
    fold::{bare, fold, has_accents},
    languages,
    meaning::{Meaning, Numeral, Plain},
    pack::{Joins, Pack, TRADE_CODE},
    reading::Stance,
    repair::Repairs,
    token::{Shape, tokens},
};

/// A set of languages, one bit each.
pub(crate) type Langs = u32;
/// More packs than this cannot be told apart.
pub(crate) const PACKS_MAX: usize = 31;
/// The bit of words that every language shares.
const SHARED: Langs = 1 << 31;

/// The number of a distinct word.
pub(crate) type WordId = u32;

const ROOT: u32 = 0;

/// All words and phrases.
pub(crate) struct Lexicon {
    words: HashMap<Box<str>, WordId>,
    steps: HashMap<(u32, WordId), u32>,
    /// For each trie node, the phrase that ends there.
    ends: Vec<Option<u32>>,
    phrases: Vec<Phrase>,
    common: HashSet<Box<str>>,
    repairs: Repairs,
    /// Words that stand for several.
    expands: HashMap<WordId, Expansion>,
    codes: Vec<String>,
    joins: Vec<Joins>,
}

/// What a word stands for: a listed word each, or a number in digits.
pub(crate) struct Expansion {
    langs: Langs,
    pub(crate) parts: Vec<(WordId, Shape)>,
}

/// A listed word or phrase.
#[derive(Default)]
pub(crate) struct Phrase {
    pub(crate) text: String,
    meanings: Vec<(Langs, Meaning)>,
    /// The usual name of a product, crop or clone.
    pub(crate) name: Option<String>,
    /// Ordinary chat is full of it: it proves little.
    pub(crate) weak: bool,
    /// It is a real word that stands for another.
    pub(crate) twin_of: Option<String>,
}

/// A phrase as met in a text, seen through the languages in use.
#[derive(Clone, Copy)]
pub(crate) struct Listed<'r> {
    pub(crate) phrase: &'r Phrase,
    langs: Langs,
}

impl<'r> Listed<'r> {
    /// The number words that it is, each with the languages in which it is one.
    pub(crate) fn of_numbers(self) -> impl Iterator<Item = (Langs, Numeral)> + 'r {
        let langs = self.langs;
        self.phrase
            .meanings
            .iter()
            .filter_map(move |(of, meaning)| Some((of & langs, meaning.numeral()?)))
            .filter(|(of, _)| *of != 0)
    }

    /// Its meanings in the languages in use.
    pub(crate) fn meanings(self) -> impl Iterator<Item = Meaning> + 'r {
        let langs = self.langs;
        self.phrase
            .meanings
            .iter()
            .filter(move |(of, _)| of & langs != 0)
            .map(|(_, meaning)| *meaning)
    }

    /// Whether it means this.
    pub(crate) fn is(self, wanted: Meaning) -> bool {
        self.meanings().any(|meaning| meaning == wanted)
    }

    /// Whether it is of this class.
    pub(crate) fn is_plain(self, class: Plain) -> bool {
        self.is(Meaning::Plain(class))
    }

    /// The plain classes that it is listed in, as bits.
    pub(crate) fn plain_bits(self) -> u64 {
        self.meanings().fold(0, |all, meaning| {
            if let Meaning::Plain(class) = meaning {
                all | class.bit()
            } else {
                all
            }
        })
    }

    /// The languages that list it.
    pub(crate) fn langs(self) -> Langs {
        self.phrase
            .meanings
            .iter()
            .fold(0, |all, (of, _)| all | (of & self.langs))
    }
}

impl Lexicon {
    /// Compiles packs.
    pub(crate) fn new(packs: &[Pack], trade: &Pack) -> Self {
        let mut lexicon = Self {
            words: HashMap::new(),
            steps: HashMap::new(),
            ends: alloc::vec![None],
            phrases: Vec::new(),
            common: HashSet::new(),
            repairs: Repairs::default(),
            expands: HashMap::new(),
            codes: packs.iter().map(|pack| pack.code.clone()).collect(),
            joins: packs.iter().map(|pack| pack.joins.clone()).collect(),
        };
        lexicon.add(trade, SHARED);
        for (index, pack) in packs.iter().enumerate() {
            lexicon.add(pack, 1 << index);
            for word in languages::common_words(&pack.code).lines() {
                if !word.starts_with('#') {
                    lexicon
                        .common
                        .extend(word.split_whitespace().map(Box::from));
                }
            }
        }
        lexicon.repairs = Repairs::new(lexicon.repairable());
        lexicon
    }

    /// The codes of the packs, in order of their bits.
    pub(crate) fn codes(&self) -> &[String] {
        &self.codes
    }

    /// The bits of these languages, or of all when none of them is loaded.
    pub(crate) fn langs(&self, codes: &[&str]) -> Langs {
        let bit = |wanted: &bool, index: usize| if *wanted { 1 << index } else { 0 };
        let chosen = self
            .codes
            .iter()
            .enumerate()
            .map(|(index, code)| bit(&codes.contains(&code.as_str()), index))
            .fold(0, |all, bit: Langs| all | bit);
        if chosen == 0 {
            Langs::MAX
        } else {
            chosen | SHARED
        }
    }

    /// The number rules of the languages in use.
    pub(crate) fn joins(&self, langs: Langs) -> impl Iterator<Item = &Joins> {
        self.joins
            .iter()
            .enumerate()
            .filter(move |(index, _)| langs & (1 << index) != 0)
            .map(|(_, joins)| joins)
    }

    /// The number of a word.
    pub(crate) fn word(&self, word: &str) -> Option<WordId> {
        match self.words.get(word) {
            Some(id) => Some(*id),
            None if word.is_ascii() || !has_accents(word) => None,
            None => self.words.get(bare(word).as_str()).copied(),
        }
    }

    /// The words that a word stands for, if it is one that stands for several.
    pub(crate) fn expansion(&self, word: WordId, langs: Langs) -> Option<&Expansion> {
        self.expands
            .get(&word)
            .filter(|expansion| expansion.langs & langs != 0)
    }

    /// Whether a run of letters and digits is a word of its own ("sp36", "2day").
    pub(crate) fn is_word(&self, run: &str) -> bool {
        self.words.contains_key(run)
    }

    /// Whether this is a word of every day.
    pub(crate) fn is_common(&self, word: &str) -> bool {
        self.common.contains(word)
    }

    /// The listed words that a misspelt word may stand for, nearest only.
    pub(crate) fn repairs(&self, word: &str) -> Vec<WordId> {
        self.repairs.nearest(word)
    }

    /// The longest phrase along these words, and how many of them it takes.
    pub(crate) fn longest(
        &self,
        words: impl Iterator<Item = Option<WordId>>,
        langs: Langs,
    ) -> Option<(Listed<'_>, usize)> {
        let mut node = ROOT;
        let mut best = None;
        for (index, word) in words.enumerate() {
            let Some(next) = word.and_then(|word| self.steps.get(&(node, word))) else {
                break;
            };
            node = *next;
            if let Some(listed) = self.at(node, langs) {
                best = Some((listed, index + 1));
            }
        }
        best
    }

    /// The phrase of one word.
    pub(crate) fn single(&self, word: WordId, langs: Langs) -> Option<Listed<'_>> {
        self.longest(core::iter::once(Some(word)), langs)
            .map(|(listed, _)| listed)
    }

    /// The letters of a word.
    pub(crate) fn spelling(&self, id: WordId) -> Option<&str> {
        self.repairs.spelling(id)
    }

    fn at(&self, node: u32, langs: Langs) -> Option<Listed<'_>> {
        let end = (*self.ends.get(node as usize)?)?;
        let phrase = self.phrases.get(end as usize)?;
        let listed = Listed { phrase, langs };
        listed.meanings().next().is_some().then_some(listed)
    }

    /// The words that a misspelt word may stand for: all but those without weight.
    fn repairable(&self) -> Vec<(String, WordId, bool)> {
        let mut heavy: HashSet<&str> = HashSet::new();
        for phrase in &self.phrases {
            let light = |meaning: Meaning| {
                matches!(
                    meaning,
                    Meaning::Plain(Plain::Filler | Plain::Courtesy)
                        | Meaning::Topic(_)
                        | Meaning::AdviserTopic(_)
                        | Meaning::Stance(Stance::Saying | Stance::Advert)
                )
            };
            // Of a phrase that only shows a stance ("there are") the words are no work.
            let stance = |meaning: Meaning| matches!(meaning, Meaning::Stance(_));
            let is_phrase = phrase.text.contains(' ');
            let light = |meaning| light(meaning) || (is_phrase && stance(meaning));
            let is_heavy = phrase.meanings.iter().any(|(_, meaning)| !light(*meaning));
            if is_heavy && phrase.twin_of.is_none() {
                heavy.extend(phrase.text.split(|letter: char| !letter.is_alphanumeric()));
            }
        }
        self.words
            .iter()
            .map(|(word, id)| (word.to_string(), *id, heavy.contains(&**word)))
            .collect()
    }

    fn add(&mut self, pack: &Pack, langs: Langs) {
        for entry in &pack.entries {
            let index = self.phrase_index(&entry.phrase);
            if let Some(phrase) = self.phrases.get_mut(index) {
                phrase.meanings.push((langs, entry.meaning));
                phrase.name = phrase.name.take().or_else(|| entry.name.clone());
            }
        }
        for word in &pack.weak {
            let index = self.phrase_index(word);
            if let Some(phrase) = self.phrases.get_mut(index) {
                phrase.weak = true;
            }
        }
        for (twin, of) in &pack.twins {
            self.add_twin(twin, of, langs);
        }
        for (word, whole) in &pack.expands {
            self.add_expansion(word, whole, langs);
        }
        if pack.code != TRADE_CODE {
            self.add_bare_spellings(pack, langs);
        }
    }

    fn add_twin(&mut self, twin: &str, of: &str, langs: Langs) {
        let original = self.phrase_index(of);
        let meanings: Vec<Meaning> = self.phrases.get(original).map_or_else(Vec::new, |phrase| {
            Listed { phrase, langs }.meanings().collect()
        });
        let index = self.phrase_index(twin);
        if let Some(phrase) = self.phrases.get_mut(index) {
            let meanings = meanings.into_iter().map(|meaning| (langs, meaning));
            phrase.meanings.extend(meanings);
            phrase.twin_of = Some(of.to_string());
            phrase.weak = true;
        }
    }

    fn add_expansion(&mut self, word: &str, whole: &str, langs: Langs) {
        let parts = tokens(whole, |_| true)
            .into_iter()
            .map(|token| {
                let part = whole.get(token.start..token.end).unwrap_or("");
                (self.word_id(part), token.shape)
            })
            .collect();
        let word = self.word_id(word);
        let expansion = self
            .expands
            .entry(word)
            .or_insert(Expansion { langs, parts });
        expansion.langs |= langs;
    }

    /// Lists each accented phrase without accents too, where that spelling is still free.
    fn add_bare_spellings(&mut self, pack: &Pack, langs: Langs) {
        for entry in &pack.entries {
            let plain = fold(&bare(&entry.phrase));
            if plain == entry.phrase {
                continue;
            }
            let index = self.phrase_index(&plain);
            let taken = pack.entries.iter().any(|other| other.phrase == plain);
            if let Some(phrase) = self.phrases.get_mut(index)
                && !taken
            {
                phrase.meanings.push((langs, entry.meaning));
                phrase.name = phrase.name.take().or_else(|| entry.name.clone());
            }
        }
    }

    fn phrase_index(&mut self, text: &str) -> usize {
        let mut node = ROOT;
        // A run such as "sp36" is one word when it is listed so.
        for token in tokens(text, |_| true) {
            let word = text.get(token.start..token.end).unwrap_or("");
            if word == "-" {
                continue;
            }
            let id = self.word_id(word);
            node = self.step(node, id);
        }
        let fresh = self.phrases.len();
        let Some(slot) = self.ends.get_mut(node as usize) else {
            return fresh;
        };
        if let Some(index) = slot {
            return *index as usize;
        }
        *slot = u32::try_from(fresh).ok();
        self.phrases.push(Phrase {
            text: text.to_owned(),
            ..Phrase::default()
        });
        fresh
    }

    fn step(&mut self, node: u32, word: WordId) -> u32 {
        let fresh = u32::try_from(self.ends.len()).unwrap_or(u32::MAX);
        let next = *self.steps.entry((node, word)).or_insert(fresh);
        if next == fresh {
            self.ends.push(None);
        }
        next
    }

    fn word_id(&mut self, word: &str) -> WordId {
        let fresh = u32::try_from(self.words.len()).unwrap_or(u32::MAX);
        *self.words.entry(Box::from(word)).or_insert(fresh)
    }
}
