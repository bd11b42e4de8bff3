//! Finds names that may be one person written twice.
//!
//! Two names look alike when they are the same after titles, order of words, marks and common double
//! spellings are taken out. They also do when a letter more or less, an initial or a middle name
//! makes them so, and their numbers do not tell them apart. Nobody is ever joined by this: a person
//! decides.
//!
//! Deliberately without comparing every name with every other: each name leaves its keys in a
//! map, so a list of 20,000 takes no longer per name than a list of 20.

use std::{collections::BTreeMap, rc::Rc};

use unicode_normalization::{UnicodeNormalization, char::is_combining_mark};

/// Below this many letters one letter makes a different name ("Ali", "Adi").
const LETTERS_MIN: usize = 5;

/// Words before a name that are not part of it (common practice in rubber countries).
const TITLES: [&str; 22] = [
    "mr", "mrs", "ms", "miss", "dr", "haji", "hajah", "hj", "pak", "bapak", "bu", "ibu", "nai",
    "nang", "khun", "ong", "ba", "anh", "chi", "chief", "monsieur", "madame",
];

/// Spellings of one sound that change from sheet to sheet (common practice; the first four are
/// the old and the new spelling of Indonesian).
const SOUNDS: [(&str, &str); 12] = [
    ("oe", "u"),
    ("dj", "j"),
    ("tj", "c"),
    ("sj", "s"),
    ("ph", "f"),
    ("kh", "k"),
    ("dh", "d"),
    ("th", "t"),
    ("ck", "k"),
    ("ou", "u"),
    ("y", "i"),
    ("v", "w"),
];

/// So many names under one key are remembered: a list of thousands of one name is no list.
const SEEN_MAX: usize = 50;

/// Names seen so far.
#[derive(Debug, Default)]
pub(super) struct Alike {
    /// By what they have in common with others that are alike, and by how they have it.
    by_key: BTreeMap<(String, Form), Vec<Rc<Seen>>>,
    /// How many people have a word in their name.
    by_word: BTreeMap<String, u32>,
}

/// A name seen, and the numbers beside it.
#[derive(Debug)]
struct Seen {
    name: String,
    numbers: Vec<String>,
    /// Its letters with all their marks, in order of the alphabet, where it has marks.
    marked: Option<String>,
    words: Vec<String>,
}

impl Seen {
    /// Whether a number stands beside both.
    fn shares(&self, other: &Self) -> bool {
        self.numbers.iter().any(|mine| other.numbers.contains(mine))
    }
}

/// What a key is of a name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Form {
    /// All of it.
    Plain,
    /// All but a letter.
    Letter,
    /// The whole name is no more than this: "T. Pell".
    Short,
    /// What a short form of the name would be.
    Shortened,
    /// One name alone: "Tor".
    Lone,
    /// The first name of several.
    First,
    /// A name of two words.
    Pair,
    /// The first and the last word of a longer one: "Kofi Mensa" of "Kofi Yaw Mensa".
    Ends,
}

impl Form {
    /// What stands under the same key of a name that is alike.
    const fn others(self) -> &'static [Self] {
        match self {
            Self::Plain | Self::Letter => &[Self::Plain, Self::Letter],
            Self::Short => &[Self::Shortened],
            Self::Shortened => &[Self::Short],
            Self::Lone => &[Self::First],
            Self::First => &[Self::Lone],
            Self::Pair => &[Self::Ends],
            Self::Ends => &[Self::Pair],
        }
    }
}

impl Alike {
    /// Counts the words of a name. Before any is compared all are to be counted: a word that several
    /// have is no slip of the pen.
    pub(super) fn count(&mut self, name: &str) {
        for word in words(name) {
            *self.by_word.entry(word).or_default() += 1;
        }
    }

    /// Takes a name in; gives an earlier one that looks like it.
    pub(super) fn add(&mut self, name: &str, numbers: &[String]) -> Option<String> {
        let seen = Rc::new(Seen {
            name: name.to_string(),
            numbers: numbers.to_vec(),
            marked: marked(name),
            words: words(name),
        });
        let mut like: Option<Rc<Seen>> = None;
        for (key, form) in keys(name).into_iter().chain(shorts(name)) {
            for theirs in form.others() {
                let known = self.by_key.get(&(key.clone(), *theirs));
                let known = known.into_iter().flatten();
                for other in known.filter(|other| self.are_alike((other, *theirs), (&seen, form))) {
                    // A number in common says more than the same letters.
                    let is_better = |like: &Rc<Seen>| !like.shares(&seen) && other.shares(&seen);
                    if like.as_ref().is_none_or(is_better) {
                        like = Some(other.clone());
                    }
                }
            }
            let known = self.by_key.entry((key, form)).or_default();
            if known.len() < SEEN_MAX {
                known.push(seen.clone());
            }
        }
        like.map(|other| other.name.clone())
    }

    /// Whether two names that have a key in common are probably one person's.
    ///
    /// What is the same but for title, order, spelling and marks that one of them lacks is, whatever
    /// the numbers. A letter or a middle name more or less is where the numbers do not speak against
    /// it and a word stands in no other name; an initial where they do not speak against it; one
    /// name alone only where they speak for it.
    fn are_alike(&self, (one, form): (&Seen, Form), (other, other_form): (&Seen, Form)) -> bool {
        let shares = one.shares(other);
        let is_open = one.numbers.is_empty() || other.numbers.is_empty();
        match (form, other_form) {
            (Form::Plain, Form::Plain) => {
                let has_marks = one.marked.is_some() && other.marked.is_some();
                shares || !has_marks || one.marked == other.marked
            }
            (Form::Letter | Form::Pair | Form::Ends, _) | (_, Form::Letter) => {
                shares || (is_open && self.is_slip(one, other))
            }
            (Form::Plain | Form::Short | Form::Shortened, _) => shares || is_open,
            (Form::Lone | Form::First, _) => shares,
        }
    }

    /// Whether a word that only one of two names has stands in no other name.
    fn is_slip(&self, one: &Seen, other: &Seen) -> bool {
        let lacks = |word: &&String, name: &Seen| !name.words.contains(word);
        let mine = one.words.iter().filter(|word| lacks(word, other));
        let theirs = other.words.iter().filter(|word| lacks(word, one));
        let is_rare = |word: &String| self.by_word.get(word).is_none_or(|many| *many <= 1);
        mine.chain(theirs).any(is_rare)
    }
}

/// Short forms of a name: "t pell" for "Tor Pell" and for "T. Pell"; "tor" for "Tor Pell" and for
/// "Tor"; "kofi mensa" for "Kofi Yaw Mensa" and for "Kofi Mensa".
fn shorts(name: &str) -> Vec<(String, Form)> {
    let words = words(name);
    let letters = |word: &String| word.chars().count();
    let either =
        |is_short: bool, (short, other): (Form, Form)| if is_short { short } else { other };
    let Some(first) = words.first() else {
        return Vec::new();
    };
    let mut shorts = vec![(
        format!("1 {first}"),
        either(words.len() == 1, (Form::Lone, Form::First)),
    )];
    if let [one, .., other] = words.as_slice() {
        for (initial, whole, side) in [(one, other, "<"), (other, one, ">")] {
            let letter: String = initial.chars().take(1).collect();
            let form = either(letters(initial) == 1, (Form::Short, Form::Shortened));
            shorts.push((format!("{side}{letter} {whole}"), form));
        }
        shorts.push((
            format!("2 {one} {other}"),
            either(words.len() == 2, (Form::Pair, Form::Ends)),
        ));
    }
    shorts
}

/// The letters of a name with their marks, where it has any: people who write marks tell names apart
/// by them.
fn marked(name: &str) -> Option<String> {
    let lower = name.to_lowercase();
    let words = bare(&lower).split(|letter: char| letter.is_whitespace() || letter == ',');
    let is_title = |word: &&str| TITLES.contains(&word.trim_end_matches('.'));
    let words = words.filter(|word| !word.is_empty()).skip_while(is_title);
    let mut letters: Vec<char> = words
        .flat_map(|word| word.nfc())
        .filter(|letter| letter.is_alphabetic() || is_combining_mark(*letter))
        .collect();
    letters.sort_unstable();
    let has_marks = lower.nfd().any(is_combining_mark);
    has_marks.then(|| letters.into_iter().collect())
}

/// A name without what stands in brackets behind it.
fn bare(name: &str) -> &str {
    let (before, _) = name.split_once('(').unwrap_or((name, ""));
    if before.trim().is_empty() {
        name
    } else {
        before
    }
}

/// What two names have in common when they look alike: a plain form, or a plain form with any one
/// letter but the first taken out; names that differ in their first letter are two names.
fn keys(name: &str) -> BTreeMap<String, Form> {
    let mut keys = BTreeMap::new();
    for plain in plain_forms(name) {
        let letters: Vec<char> = plain.chars().collect();
        keys.insert(plain, Form::Plain);
        if letters.len() < LETTERS_MIN {
            continue;
        }
        for (skip, _) in letters.iter().enumerate().skip(1) {
            let kept = letters.iter().enumerate().filter(|(at, _)| *at != skip);
            let kept = kept.map(|(_, letter)| letter).collect();
            keys.entry(kept).or_insert(Form::Letter);
        }
    }
    keys
}

/// Lower case, without titles, one spelling for each sound, no doubled letters; once with the
/// words as written, since they may be joined, and once in order of the alphabet, since first and
/// last names change places.
fn plain_forms(name: &str) -> [String; 2] {
    let mut words = words(name);
    let written = words.concat();
    words.sort_unstable();
    [written, words.concat()]
}

/// The words of a name as they sound, without titles, marks, and what stands in brackets.
fn words(name: &str) -> Vec<String> {
    let lower: String = name
        .to_lowercase()
        .nfd()
        .filter(|letter| !is_combining_mark(*letter))
        .map(|letter| if letter == 'đ' { 'd' } else { letter })
        .collect();
    let mut words: Vec<&str> = bare(&lower)
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    // Only before the name: behind it the same letters are a name.
    while words.len() > 1 && words.first().is_some_and(|first| TITLES.contains(first)) {
        words.remove(0);
    }
    words.into_iter().map(sound).collect()
}

fn sound(word: &str) -> String {
    let mut text = word.to_string();
    for (written, sound) in SOUNDS {
        text = text.replace(written, sound);
    }
    let mut letters: Vec<char> = text.chars().collect();
    letters.dedup();
    letters.into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(first: &str, second: &str, alike: bool) {
        let mut names = Alike::default();
        assert_eq!(names.add(first, &[]), None);
        assert_eq!(
            names.add(second, &[]).is_some(),
            alike,
            "{first} and {second}"
        );
    }

    /// Twenty pairs as typed lists have them: titles, order, one letter, old spelling.
    #[test]
    fn pairs_that_are_probably_one_person() {
        for (first, second) in [
            ("Tamo Rill", "Tammo Rill"),
            ("Tamo Rill", "Rill Tamo"),
            ("Tamo Rill", "Rill, Tamo"),
            ("Tamo Rill", "Pak Tamo Rill"),
            ("Tamo Rill", "TAMO RILL"),
            ("Tamo Rill", "Tamo Ril"),
            ("Tamo Rill", "Tano Rill"),
            ("Tamo Rill", "Tmao Rill"),
            ("Tamo Rill", "Mr. Tamo Rill"),
            ("Soelo Venn", "Sulo Venn"),
            ("Djarra Oss", "Jarra Oss"),
            ("Tjimo Kand", "Cimo Kand"),
            ("Phella Dunn", "Fella Dunn"),
            ("Yorra Best", "Iorra Best"),
            ("Anna-Lise Korr", "Anna Lise Korr"),
            ("Anna-Lise Korr", "Annalise Korr"),
            ("Bokhar Tinn", "Bokar Tinn"),
            ("Haji Bokar Tinn", "Bokar Tinn"),
            ("Thessa Munn", "Tessa Mun"),
            ("Ouro Makk", "Uro Mack"),
            ("Tor Pell", "T. Pell"),
            ("Bako M.", "Bako Mirk"),
            ("Tor Pell", "Tor Pell (Haji)"),
        ] {
            check(first, second, true);
        }
    }

    #[test]
    fn pairs_that_are_two_people() {
        for (first, second) in [
            ("Ali", "Adi"),
            ("Tamo Rill", "Tamo Dorn"),
            ("Tamo Rill", "Sela Rill"),
            ("Bu", "Ba"),
            ("Oss Djarra", "Oss Tamara"),
            ("Hilo Kell", "Nilo Kell"),
            ("Tor Pell", "Tor"),
            ("T. Pell", "T. Dorn"),
        ] {
            check(first, second, false);
        }
    }

    /// A first name alone is one person with the whole name where the number is the same.
    #[test]
    fn a_number_is_evidence() {
        let number = ["+447700900001".to_owned()];
        let other = ["+447700900002".to_owned()];
        let mut names = Alike::default();
        assert_eq!(names.add("Tor Pell", &number), None);
        assert_eq!(names.add("Tor", &other), None);
        assert_eq!(names.add("Tor", &number).as_deref(), Some("Tor Pell"));
    }
}
