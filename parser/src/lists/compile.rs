//! From packs to the lexicon.
//!
//! Deliberately absent: looking things up (`lexicon`).

use alloc::{borrow::ToOwned, boxed::Box, vec::Vec};

use hashbrown::{HashMap, HashSet};

use crate::{
    details::Cause,
    glyphs::{
        fold::{bare, fold},
        token::tokens,
    },
    kind::Kind,
    languages,
    lists::{
        lexicon::{Expansion, Langs, Lexicon, Node, Phrase, PhraseSense, ROOT, SHARED},
        pairs::Pairs,
        repair::Repairs,
        vocabulary::{Vocabulary, WordId},
    },
    meaning::{Meaning, Plain, Traits, sort},
    pack::{Entry, Pack, TRADE_CODE},
    reading::Stance,
};

/// Words before the name of a block.
const BLOCK_WORDS: u64 = Plain::Block.bit() | Plain::Land.bit();
/// "not" and "not yet".
pub(crate) const TURNS: u64 = Plain::Negation.bit() | Plain::NotYet.bit();
/// One slip makes any other word of so short a one.
const SHORT_LEN_MAX: usize = 3;

/// How a phrase comes to its spelling.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Spelling {
    /// As listed.
    Full,
    /// Without its accents.
    Bare,
    /// Without its accents, and the pack lists this spelling for something else.
    Shadow,
}

impl Lexicon {
    /// Compiles packs.
    pub(crate) fn new(packs: &[Pack], trade: &Pack) -> Self {
        let mut lexicon = Self {
            words: Vocabulary::default(),
            word_langs: Vec::new(),
            steps: HashMap::new(),
            starts: Vec::new(),
            nodes: alloc::vec![Node::default()],
            phrases: Vec::new(),
            repairs: Repairs::default(),
            pairs: Pairs::default(),
            block_words: Vec::new(),
            number_words: Vec::new(),
            turn_words: Vec::new(),
            fire_words: Vec::new(),
            expands: HashMap::new(),
            codes: packs.iter().map(|pack| pack.code.clone()).collect(),
            joins: packs.iter().map(|pack| pack.joins.clone()).collect(),
        };
        lexicon.add(trade, SHARED);
        for (index, pack) in packs.iter().enumerate() {
            lexicon.add(pack, 1 << index);
            for word in languages::common_words(&pack.code).lines() {
                if !word.starts_with('#') {
                    word.split_whitespace()
                        .for_each(|word| lexicon.words.add_common(word));
                }
            }
        }
        for phrase in &mut lexicon.phrases {
            phrase.disputed = is_disputed(phrase);
            let meanings = phrase.senses.iter().map(|sense| Traits::of(sense.meaning));
            phrase.traits = meanings.fold(Traits::default(), Traits::and);
        }
        let longer = SHORT_LEN_MAX + 1;
        lexicon.block_words = lexicon.words_with(longer, |word| word.traits.has_plain(BLOCK_WORDS));
        lexicon.number_words = lexicon.words_with(longer, |word| word.traits.has(sort::NUMERAL));
        lexicon.turn_words = lexicon.words_with(SHORT_LEN_MAX, |word| {
            word.traits.has(sort::STANCE) || word.traits.has_plain(TURNS)
        });
        lexicon.fire_words = lexicon.words_with(longer, |word| {
            let mut senses = word.senses.iter();
            senses.any(|sense| sense.meaning == Meaning::Cause(Cause::Fire))
        });
        let heavy = lexicon.repairable();
        lexicon.repairs = Repairs::new(heavy.into_iter(), &lexicon.words);
        lexicon.pairs = Pairs::new(lexicon.heavy_pairs());
        lexicon
    }

    fn add(&mut self, pack: &Pack, langs: Langs) {
        for entry in &pack.entries {
            self.add_sense(&entry.phrase, entry, langs, Spelling::Full);
        }
        for word in &pack.weak {
            let index = self.phrase_index(word, langs);
            if let Some(phrase) = self.phrases.get_mut(index) {
                phrase.weak |= langs;
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

    fn add_sense(&mut self, text: &str, entry: &Entry, langs: Langs, spelling: Spelling) {
        let index = self.phrase_index(text, langs);
        if let Some(phrase) = self.phrases.get_mut(index) {
            phrase.note(langs, entry.meaning, entry.name.as_deref(), spelling);
        }
    }

    fn add_twin(&mut self, twin: &str, of: &str, langs: Langs) {
        let original = self.phrase_index(of, langs);
        let meanings: Vec<Meaning> = self.phrases.get(original).map_or_else(Vec::new, |phrase| {
            let senses = phrase.senses.iter();
            senses
                .filter(|sense| sense.langs & langs != 0)
                .map(|sense| sense.meaning)
                .collect()
        });
        let index = self.phrase_index(twin, langs);
        if let Some(phrase) = self.phrases.get_mut(index) {
            for meaning in meanings {
                phrase.note(langs, meaning, None, Spelling::Full);
            }
            let twins = phrase.twin_of.get_or_insert((0, Box::from(of)));
            twins.0 |= langs;
            phrase.weak |= langs;
        }
    }

    fn add_expansion(&mut self, word: &str, whole: &str, langs: Langs) {
        let parts = tokens(whole, |_| true)
            .map(|token| {
                let part = whole.get(token.start..token.end).unwrap_or("");
                (self.word_id(part, langs), token.shape)
            })
            .collect();
        let word = self.word_id(word, langs);
        let expansion = self
            .expands
            .entry(word)
            .or_insert(Expansion { langs, parts });
        expansion.langs |= langs;
    }

    /// Lists each accented phrase without accents too, where that spelling is still free.
    fn add_bare_spellings(&mut self, pack: &Pack, langs: Langs) {
        let marked: HashSet<&str> = pack
            .entries
            .iter()
            .map(|entry| entry.phrase.as_str())
            .collect();
        for entry in pack.entries.iter().filter(|entry| !entry.phrase.is_ascii()) {
            let plain = fold(&bare(&entry.phrase));
            if plain == entry.phrase {
                continue;
            }
            let is_taken = marked.contains(plain.as_str());
            if is_taken && let Some(kind) = entry.meaning.kind() {
                self.note_unmeasured(&plain, kind, langs);
            }
            // A number word that is missed makes another number of those around it.
            if !is_taken || entry.meaning.numeral().is_some() {
                let spelling = if is_taken {
                    Spelling::Shadow
                } else {
                    Spelling::Bare
                };
                self.add_sense(&plain, entry, langs, spelling);
            }
        }
        for word in pack.weak.iter().filter(|word| !word.is_ascii()) {
            let plain = fold(&bare(word));
            let index = self.phrase_index(&plain, langs);
            if let Some(phrase) = self.phrases.get_mut(index) {
                phrase.weak |= langs;
            }
        }
    }

    /// "taille" is a height; as "taillé", which many type so, it is other work.
    fn note_unmeasured(&mut self, plain: &str, kind: Kind, langs: Langs) {
        let index = self.phrase_index(plain, langs);
        if let Some(phrase) = self.phrases.get_mut(index) {
            let mut kinds = phrase
                .senses
                .iter()
                .filter_map(|sense| sense.meaning.kind());
            let is_measured = kinds.any(Kind::needs_values);
            if is_measured && !kind.needs_values() {
                phrase.unmeasured = Some(kind);
            }
        }
    }

    fn phrase_index(&mut self, text: &str, langs: Langs) -> usize {
        let mut node = ROOT;
        // A run such as "sp36" is one word when it is listed so.
        for token in tokens(text, |_| true) {
            let word = text.get(token.start..token.end).unwrap_or("");
            if matches!(word, "-" | ".") {
                continue;
            }
            let id = self.word_id(word, langs);
            node = self.step(node, id);
        }
        let fresh = self.phrases.len();
        let Some(node) = self.nodes.get_mut(node as usize) else {
            return fresh;
        };
        if let Some(index) = node.end {
            return index as usize;
        }
        node.end = u32::try_from(fresh).ok();
        self.phrases.push(Phrase {
            text: text.to_owned(),
            ..Phrase::default()
        });
        fresh
    }

    fn step(&mut self, node: u32, word: WordId) -> u32 {
        let fresh = u32::try_from(self.nodes.len()).unwrap_or(u32::MAX);
        let next = if node == ROOT {
            // Each word is a number below how many there are.
            self.starts.resize(self.words.len(), ROOT);
            match self.starts.get_mut(word as usize) {
                Some(start) if *start == ROOT => {
                    *start = fresh;
                    fresh
                }
                Some(start) => *start,
                None => fresh,
            }
        } else {
            if let Some(node) = self.nodes.get_mut(node as usize) {
                node.goes_on = true;
            }
            *self.steps.entry((node, word)).or_insert(fresh)
        };
        if next == fresh {
            self.nodes.push(Node::default());
        }
        next
    }

    fn word_id(&mut self, word: &str, langs: Langs) -> WordId {
        let id = self.words.list(word);
        self.word_langs.resize(self.words.len(), 0);
        if let Some(of) = self.word_langs.get_mut(id as usize) {
            *of |= langs;
        }
        id
    }

    /// The single words with these traits, in plain letters and not too short to be mended.
    fn words_with(&self, letters: usize, wanted: impl Fn(&Phrase) -> bool) -> Vec<(Langs, WordId)> {
        let phrases = self.phrases.iter();
        phrases
            .filter(|phrase| wanted(phrase) && phrase.text.len() >= letters)
            .filter(|phrase| phrase.text.bytes().all(|byte| byte.is_ascii_lowercase()))
            .filter_map(|phrase| Some((phrase.langs, self.words.find(&phrase.text)?.id)))
            .collect()
    }

    /// Every two words that are a phrase which says something.
    fn heavy_pairs(&self) -> Vec<(WordId, WordId)> {
        let says = |phrase: &&Phrase| {
            phrase.twin_of.is_none() && phrase.senses.iter().any(|sense| !is_light(sense.meaning))
        };
        let pair = |phrase: &Phrase| {
            let (first, second) = phrase.text.split_once(' ')?;
            let id = |word: &str| self.words.find(word).map(|found| found.id);
            id(first).zip(id(second))
        };
        self.phrases.iter().filter(says).filter_map(pair).collect()
    }

    /// The words that a misspelt word may stand for: all but those without weight.
    fn repairable(&self) -> Vec<WordId> {
        let mut heavy = Vec::new();
        for phrase in &self.phrases {
            let is_phrase = phrase.text.contains(' ');
            // Of a phrase that only shows a stance ("there are") the words are no work.
            let light = |meaning: Meaning| {
                is_light(meaning) || (is_phrase && matches!(meaning, Meaning::Stance(_)))
            };
            let is_heavy = phrase.senses.iter().any(|sense| !light(sense.meaning));
            if is_heavy && phrase.twin_of.is_none() {
                let words = phrase.text.split(|letter: char| !letter.is_alphanumeric());
                heavy.extend(words.filter_map(|word| self.words.find(word)));
            }
        }
        let mut heavy: Vec<WordId> = heavy.iter().map(|found| found.id).collect();
        heavy.sort_unstable();
        heavy.dedup();
        heavy
    }
}

impl Phrase {
    fn note(&mut self, langs: Langs, meaning: Meaning, name: Option<&str>, spelling: Spelling) {
        let shadow = spelling == Spelling::Shadow;
        let bare = spelling != Spelling::Full;
        self.langs |= langs;
        let mut senses = self.senses.iter_mut();
        let same = senses.find(|sense| sense.meaning == meaning && sense.name.as_deref() == name);
        match same {
            Some(sense) => {
                sense.langs |= langs;
                sense.shadow &= shadow;
                sense.bare &= bare;
            }
            None => self.senses.push(PhraseSense {
                langs,
                meaning,
                name: name.map(Box::from),
                shadow,
                bare,
            }),
        }
    }
}

fn is_light(meaning: Meaning) -> bool {
    matches!(
        meaning,
        Meaning::Plain(Plain::Filler | Plain::Courtesy)
            | Meaning::Topic(_)
            | Meaning::AdviserTopic(_)
            | Meaning::Stance(Stance::Saying | Stance::Advert)
    )
}

/// Whether some meaning is not that of all languages that list the phrase, or two kinds of work are
/// meant even by one.
fn is_disputed(phrase: &Phrase) -> bool {
    let mut kinds = phrase
        .senses
        .iter()
        .filter_map(|sense| sense.meaning.kind());
    let first = kinds.next();
    let two_kinds = first.is_some() && kinds.any(|kind| Some(kind) != first);
    let divided =
        |sense: &PhraseSense| sense.langs & phrase.langs & !SHARED != phrase.langs & !SHARED;
    two_kinds || phrase.senses.iter().any(divided)
}
