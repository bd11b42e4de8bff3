//! The names of a whole group, made ready once, so that a text does not cost more because the group
//! is large.
//!
//! Deliberately absent: what they name, and the few names of one farmer (`called`).

use alloc::{
    collections::BTreeMap,
    string::{String, ToString},
    vec::Vec,
};
use core::cmp::Ordering;

use crate::glyphs::fold::{bare, fold};

/// The names of many people, made ready for finding.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Names {
    /// By their letters.
    spellings: Vec<(String, Named)>,
}

/// Whom a spelling names.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Named {
    /// This is the whole name, which is given as it was handed in.
    Whole(String),
    /// Nobody else has this first name.
    First(String),
    /// The first name of several.
    Several,
}

/// Whom a text names.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Called<'n> {
    /// The one with this name.
    Whole(&'n str),
    /// The one with this name, by the first of it.
    First(&'n str),
    /// One of several.
    Several,
}

impl Names {
    /// Makes names ready: each is found by the whole of it, and by its first word where nobody
    /// else has the same.
    pub fn new<'n>(names: impl IntoIterator<Item = &'n str>) -> Self {
        let mut wholes: BTreeMap<String, &str> = BTreeMap::new();
        let mut firsts: BTreeMap<String, Option<&str>> = BTreeMap::new();
        for name in names.into_iter().filter(|name| is_long_name(name)) {
            let first = name.split_whitespace().next().unwrap_or("");
            for spelling in spellings(name) {
                wholes.entry(spelling).or_insert(name);
            }
            for spelling in spellings(first) {
                let of = firsts.entry(spelling).or_insert(Some(name));
                if *of != Some(name) {
                    *of = None;
                }
            }
        }
        let firsts = firsts.into_iter().map(|(spelling, name)| {
            let named = name.map_or(Named::Several, |name| Named::First(name.to_string()));
            (spelling, named)
        });
        let mut all: BTreeMap<String, Named> = firsts.collect();
        all.extend(
            wholes
                .into_iter()
                .map(|(spelling, name)| (spelling, Named::Whole(name.to_string()))),
        );
        Self {
            spellings: all.into_iter().collect(),
        }
    }

    /// The longest name at the start of a folded text that ends at one of these places, which are
    /// given the nearest first.
    pub(crate) fn longest(
        &self,
        text: &str,
        ends: impl Iterator<Item = usize>,
    ) -> Option<(usize, Called<'_>)> {
        let mut best = None;
        for end in ends {
            let Some(written) = text.get(..end) else {
                continue;
            };
            let at = self.at(written);
            let Some((spelling, named)) = self.spellings.get(at) else {
                break;
            };
            let (is_whole, goes_on) = begins(spelling, written);
            if is_whole {
                best = Some((end, named.called()));
            }
            // Whatever is longer lies behind this one and begins with it.
            if !goes_on {
                break;
            }
        }
        best
    }

    /// Whether this word is a name, or the first word of one.
    pub(crate) fn has_word(&self, word: &str) -> bool {
        let found = self.spellings.get(self.at(word));
        found.is_some_and(|(spelling, _)| order(spelling, word) == Ordering::Equal)
    }

    /// Where this spelling is, or would be.
    fn at(&self, written: &str) -> usize {
        self.spellings
            .partition_point(|(spelling, _)| order(spelling, written) == Ordering::Less)
    }
}

impl Named {
    fn called(&self) -> Called<'_> {
        match self {
            Self::Whole(name) => Called::Whole(name),
            Self::First(name) => Called::First(name),
            Self::Several => Called::Several,
        }
    }
}

impl<'n> Called<'n> {
    /// What two groups make of the same letters.
    pub(crate) fn or(self, other: Self) -> Self {
        match (self, other) {
            (Self::Whole(_), _) => self,
            (_, Self::Whole(_)) => other,
            (Self::First(_) | Self::Several, Self::First(_) | Self::Several) => Self::Several,
        }
    }

    /// Who, if it is one.
    pub(crate) const fn one(self) -> Option<&'n str> {
        match self {
            Self::Whole(name) | Self::First(name) => Some(name),
            Self::Several => None,
        }
    }
}

/// How a text may spell a name: folded, and without its accents.
fn spellings(name: &str) -> impl Iterator<Item = String> {
    let folded: String = spaced(&fold(name)).collect();
    let plain = bare(&folded);
    let plain = (plain != folded).then_some(plain);
    [folded].into_iter().chain(plain)
}

/// The letters with one space for white space of any width.
fn spaced(text: &str) -> impl Iterator<Item = char> {
    let mut after_space = false;
    text.trim().chars().filter_map(move |letter| {
        let is_space = letter.is_whitespace();
        let is_kept = !(is_space && after_space);
        after_space = is_space;
        is_kept.then_some(if is_space { ' ' } else { letter })
    })
}

fn order(spelling: &str, written: &str) -> Ordering {
    spelling.chars().cmp(spaced(written))
}

/// Whether this is the whole spelling, and whether a spelling begins so.
fn begins(spelling: &str, written: &str) -> (bool, bool) {
    let mut letters = spelling.chars();
    let begins = spaced(written).all(|letter| letters.next() == Some(letter));
    (begins && letters.next().is_none(), begins)
}

/// "1" and "A" are a number and a letter until their neighbours say otherwise.
pub(crate) fn is_long_name(name: &str) -> bool {
    name.len() > 1 && !name.bytes().all(|byte| byte.is_ascii_digit())
}

#[cfg(test)]
mod tests {
    use std::{format, string::String, vec::Vec};

    use super::{Called, Names};

    fn find<'n>(names: &'n Names, text: &str) -> Option<(usize, Called<'n>)> {
        let ends = text
            .char_indices()
            .filter(|(_, letter)| *letter == ' ')
            .map(|(at, _)| at);
        names.longest(text, ends.chain([text.len()]))
    }

    /// Invented people.
    #[test]
    fn people_are_found_by_the_whole_name_and_by_a_first_name_that_is_theirs_alone() {
        let names = Names::new(["Siti Hill", "Tamo Oss", "Tamo Farr", "Élan Dor", "7", "K"]);
        for (text, found) in [
            ("siti hill dead 4", Some((9, Called::Whole("Siti Hill")))),
            ("siti  hill dead 4", Some((10, Called::Whole("Siti Hill")))),
            ("siti dead 4", Some((4, Called::First("Siti Hill")))),
            ("siti hilly", Some((4, Called::First("Siti Hill")))),
            ("tamo farr 3", Some((9, Called::Whole("Tamo Farr")))),
            ("tamo 3", Some((4, Called::Several))),
            ("élan", Some((5, Called::First("Élan Dor")))),
            ("elan dor", Some((8, Called::Whole("Élan Dor")))),
            ("sitihill", None),
            ("hill", None),
            ("7 dead", None),
            ("k", None),
            ("", None),
        ] {
            assert_eq!(find(&names, text), found, "{text:?}");
        }
        assert!(names.has_word("elan") && names.has_word("tamo"));
        assert!(!names.has_word("hill") && !names.has_word("ta"));
    }

    #[test]
    fn a_name_that_is_the_first_of_another_is_whole() {
        let names = Names::new(["Pira Oss", "Pira"]);
        assert_eq!(find(&names, "pira"), Some((4, Called::Whole("Pira"))));
    }

    /// Who is one of several in one group is not the only one of another.
    #[test]
    fn two_groups_make_one_of_several() {
        let (one, other) = (Called::First("Pira Oss"), Called::First("Pira Lem"));
        assert_eq!(one.or(other), Called::Several);
        assert_eq!(one.or(Called::Whole("Pira")), Called::Whole("Pira"));
        assert_eq!(Called::Several.or(one).one(), None);
        assert_eq!(one.one(), Some("Pira Oss"));
    }

    #[test]
    fn one_of_very_many_is_found() {
        let all: Vec<String> = (0..5_000).map(|id| format!("Kolo{id} Oss{id}")).collect();
        let names = Names::new(all.iter().map(String::as_str));
        let found = find(&names, "kolo4711 oss4711 dead 4");
        assert_eq!(found, Some((16, Called::Whole("Kolo4711 Oss4711"))));
    }
}
