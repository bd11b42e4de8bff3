//! What fingers do to the letters of a word.

use unicode_normalization::{UnicodeNormalization, char::is_combining_mark};

use crate::{
    chance::Chance,
    draw::{happens, pick},
    rates::Rates,
};

/// Shorter words are not slipped: nobody could mend them, and nobody misses the key of three.
const LETTERS_MIN: usize = 3;
/// Vowels are dropped from words of this length on.
const LONG: usize = 5;

/// The letters of a phone's keys, and the rows of a full keyboard.
const PHONE: [&str; 8] = ["abc", "def", "ghi", "jkl", "mno", "pqrs", "tuv", "wxyz"];
const KEYBOARD: [&str; 3] = ["qwertyuiop", "asdfghjkl", "zxcvbnm"];

/// A word with its slips; most words have none.
pub(crate) fn slipped(chance: &mut Chance, rates: &Rates, word: &str) -> String {
    let mut letters: Vec<char> = word.chars().collect();
    if letters.len() < LETTERS_MIN || !letters.iter().all(|letter| is_of_a_word(*letter)) {
        return word.to_owned();
    }
    if letters.len() >= LONG && happens(chance, rates.dropped) {
        drop_letter(chance, &mut letters);
    }
    // The first letter is kept: of listed misspellings 97.4 % keep it.
    let place = 1 + chance.place(letters.len() - 1);
    if happens(chance, rates.neighbour) {
        replace(&mut letters, place, |letter| neighbour(chance, letter));
    } else if happens(chance, rates.same_key) {
        replace(&mut letters, place, |letter| same_key(chance, letter));
    } else if happens(chance, rates.other_letter) {
        replace(&mut letters, place, |letter| other(chance, letter));
    } else if happens(chance, rates.put_in) {
        if let Some(letter) = letters
            .get(place)
            .and_then(|letter| neighbour(chance, *letter))
        {
            letters.insert(place, letter);
        }
    } else if happens(chance, rates.doubled) {
        if let Some(letter) = letters.get(place).copied() {
            letters.insert(place, letter);
        }
    } else if happens(chance, rates.swapped) && place + 1 < letters.len() {
        letters.swap(place, place + 1);
    }
    letters.into_iter().collect()
}

fn is_of_a_word(letter: char) -> bool {
    letter.is_alphabetic() || is_combining_mark(letter)
}

/// A vowel that is not the first letter, or one of two that are the same.
fn drop_letter(chance: &mut Chance, letters: &mut Vec<char>) {
    let places: Vec<usize> = letters
        .iter()
        .enumerate()
        .skip(1)
        .filter(|(place, letter)| {
            let doubled = letters.get(place - 1) == Some(letter);
            doubled || matches!(base(**letter), 'a' | 'e' | 'i' | 'o' | 'u')
        })
        .map(|(place, _)| place)
        .collect();
    if !places.is_empty() {
        letters.remove(*pick(chance, &places));
    }
}

fn replace(letters: &mut [char], place: usize, other: impl FnOnce(char) -> Option<char>) {
    if let Some(letter) = letters.get_mut(place)
        && let Some(other) = other(*letter)
    {
        *letter = other;
    }
}

/// A letter beside this one on a full keyboard. Other scripts have none here.
fn neighbour(chance: &mut Chance, letter: char) -> Option<char> {
    let letter = base(letter);
    let row = KEYBOARD.iter().find(|row| row.contains(letter))?;
    let place = row.find(letter)?;
    let beside: Vec<char> = row
        .char_indices()
        .filter(|(other, _)| other.abs_diff(place) == 1)
        .map(|(_, letter)| letter)
        .collect();
    Some(*pick(chance, &beside))
}

/// Another letter of the same key of a phone.
fn same_key(chance: &mut Chance, letter: char) -> Option<char> {
    let letter = base(letter);
    let key = PHONE.iter().find(|key| key.contains(letter))?;
    let others: Vec<char> = key.chars().filter(|other| *other != letter).collect();
    Some(*pick(chance, &others))
}

fn other(chance: &mut Chance, letter: char) -> Option<char> {
    let letters: Vec<char> = ('a'..='z').filter(|other| *other != letter).collect();
    letter.is_ascii().then(|| *pick(chance, &letters))
}

/// A letter without its marks.
fn base(letter: char) -> char {
    core::iter::once(letter).nfd().next().unwrap_or(letter)
}

/// A text without marks, as phones without them send it.
pub(crate) fn without_marks(text: &str) -> String {
    text.nfd()
        .filter(|letter| !is_combining_mark(*letter))
        .map(|letter| match letter {
            'đ' => 'd',
            'Đ' => 'D',
            letter => letter,
        })
        .collect()
}
