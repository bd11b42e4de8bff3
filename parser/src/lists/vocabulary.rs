//! All distinct words, each with a number.
//!
//! The words lie one behind the other in one text, and one table finds them, so that a word of a
//! message is hashed once and loading takes memory a few times only. Deliberately absent: what a
//! word means (`lexicon`).

use alloc::{string::String, vec::Vec};

use hashbrown::HashTable;

/// The number of a distinct word.
pub(crate) type WordId = u32;

/// The words.
#[derive(Default)]
pub(crate) struct Vocabulary {
    letters: String,
    words: Vec<Entry>,
    table: HashTable<WordId>,
}

#[derive(Clone, Copy)]
struct Entry {
    start: u32,
    end: u32,
    /// Its first letters, so that most words are compared at once.
    head: u64,
    listed: bool,
    common: bool,
}

/// A word that was found.
#[derive(Clone, Copy)]
pub(crate) struct Found {
    pub(crate) id: WordId,
    /// It is part of a listed phrase.
    pub(crate) listed: bool,
    /// It is a word of every day.
    pub(crate) common: bool,
}

impl Found {
    /// Its number, if it is part of a listed phrase.
    pub(crate) fn listed_id(self) -> Option<WordId> {
        self.listed.then_some(self.id)
    }
}

impl Vocabulary {
    /// The word with these letters.
    pub(crate) fn find(&self, word: &str) -> Option<Found> {
        let head = first_eight(word.as_bytes());
        let same = |id: &WordId| {
            self.words.get(*id as usize).is_some_and(|entry| {
                entry.head == head
                    && (entry.end - entry.start) as usize == word.len()
                    && (word.len() <= 8 || self.spelling(*id) == Some(word))
            })
        };
        let id = *self.table.find(hash(word.as_bytes()), same)?;
        let entry = self.words.get(id as usize)?;
        Some(Found {
            id,
            listed: entry.listed,
            common: entry.common,
        })
    }

    /// The letters of a word.
    pub(crate) fn spelling(&self, id: WordId) -> Option<&str> {
        let entry = self.words.get(id as usize)?;
        self.letters.get(entry.start as usize..entry.end as usize)
    }

    /// The number of a word that is part of a listed phrase, taken in if it is new.
    pub(crate) fn list(&mut self, word: &str) -> WordId {
        let id = self.take_in(word);
        if let Some(entry) = self.words.get_mut(id as usize) {
            entry.listed = true;
        }
        id
    }

    /// Takes a word of every day in.
    pub(crate) fn add_common(&mut self, word: &str) {
        let id = self.take_in(word);
        if let Some(entry) = self.words.get_mut(id as usize) {
            entry.common = true;
        }
    }

    /// The numbers of all words are below this.
    pub(crate) const fn len(&self) -> usize {
        self.words.len()
    }

    fn take_in(&mut self, word: &str) -> WordId {
        if let Some(found) = self.find(word) {
            return found.id;
        }
        let place = |at: usize| u32::try_from(at).unwrap_or(u32::MAX);
        let id = place(self.words.len());
        let start = place(self.letters.len());
        self.letters.push_str(word);
        self.words.push(Entry {
            start,
            end: place(self.letters.len()),
            head: first_eight(word.as_bytes()),
            listed: false,
            common: false,
        });
        let (words, letters) = (&self.words, &self.letters);
        let hash_of = |id: &WordId| {
            let word = words
                .get(*id as usize)
                .and_then(|entry| letters.get(entry.start as usize..entry.end as usize));
            hash(word.unwrap_or("").as_bytes())
        };
        self.table.insert_unique(hash(word.as_bytes()), id, hash_of);
        id
    }
}

/// A hash of a short word, eight letters at a time. Nobody can choose the listed words, so that a
/// hash without a secret will do.
fn hash(word: &[u8]) -> u64 {
    /// The fraction of the golden ratio, an odd number with well-mixed bits.
    const MIX: u64 = 0x9e37_79b9_7f4a_7c15;
    let mut state = word.len() as u64;
    let (eights, rest) = word.as_chunks::<8>();
    for eight in eights {
        state = (state ^ u64::from_le_bytes(*eight)).wrapping_mul(MIX);
        state ^= state >> 29;
    }
    state = (state ^ first_eight(rest)).wrapping_mul(MIX);
    state ^ (state >> 32)
}

/// The first eight letters as a number, the first one lowest; zeros where there are fewer.
fn first_eight(word: &[u8]) -> u64 {
    if let Some(eight) = word.first_chunk::<8>() {
        return u64::from_le_bytes(*eight);
    }
    if let (Some(first), Some(last)) = (word.first_chunk::<4>(), word.last_chunk::<4>()) {
        // Where the two overlap they are the same.
        let last = u64::from(u32::from_le_bytes(*last)) << (8 * (word.len() - 4));
        return u64::from(u32::from_le_bytes(*first)) | last;
    }
    let letters = word.iter().rev();
    letters.fold(0, |bits, letter| bits << 8 | u64::from(*letter))
}
