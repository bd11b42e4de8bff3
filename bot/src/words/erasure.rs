//! What must be taken out of the records when somebody wants to be forgotten: their name, their
//! numbers and their texts. Kept only until it is done.

use std::cmp::Reverse;

use budwood_scheduler::{MessageId, PersonId};
use chrono::{DateTime, NaiveDate, Utc};

use super::sms;

/// Somebody is being taken out of the records.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Erasure {
    /// Who.
    pub person: PersonId,
    /// Their whole name.
    pub name: String,
    /// What they were called, where nobody else is called so.
    pub called: Option<String>,
    /// Their numbers, past and present.
    pub numbers: Vec<UsedNumber>,
    /// The last message that may tell of them.
    pub last: MessageId,
}

/// A number, and when texts from it and to it are theirs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UsedNumber {
    /// E.164, with the plus.
    pub number: String,
    /// From this day; none where nobody else used it.
    pub since: Option<NaiveDate>,
    /// To this day; none where it was theirs until now.
    pub until: Option<NaiveDate>,
}

impl UsedNumber {
    /// A day more at either end: where they live it may be another day.
    fn was_theirs(&self, at: DateTime<Utc>) -> bool {
        let day = at.date_naive();
        let begun = self.since.is_none_or(|since| {
            let before = since.pred_opt().unwrap_or(since);
            before <= day
        });
        let over = self.until.is_some_and(|until| {
            let after = until.succ_opt().unwrap_or(until);
            after < day
        });
        begun && !over
    }
}

/// So many digits at the end of a number tell it from every other that a village knows.
const DIGITS: usize = 8;

/// A name is cut to so many letters at least where a text would be too long.
const SHORTEST_CUT: usize = 5;

impl Erasure {
    /// Whether a text from this number, or to it, is theirs.
    #[must_use]
    pub fn is_theirs(&self, number: &str, at: DateTime<Utc>) -> bool {
        let mut numbers = self.numbers.iter();
        numbers.any(|used| used.number == number && used.was_theirs(at))
    }

    /// Whether a text of ours names them, be it by a name that was cut.
    #[must_use]
    pub fn is_named_in(&self, text: &str) -> bool {
        !self.places(&folded(text), true).is_empty()
    }

    /// A text without their name and numbers; none where they do not stand in it.
    #[must_use]
    pub fn without_name(&self, text: &str) -> Option<String> {
        let mut places = self.places(&folded(text), false);
        if places.is_empty() {
            return None;
        }
        // A number beside their name is theirs, even one that they never had.
        places.extend(any_numbers_in(&folded(text)));
        // The whole name before what they are called.
        places.sort_unstable_by_key(|(from, to)| (*from, Reverse(*to)));
        let mut without = String::new();
        let mut done = 0;
        for (from, to) in places {
            if from < done {
                continue;
            }
            without += text.get(done..from).unwrap_or_default();
            without += &code(self.person);
            done = to;
        }
        without += text.get(done..).unwrap_or_default();
        Some(without)
    }

    /// Where they are named: from which byte to which.
    fn places(&self, letters: &[Letter], is_cut: bool) -> Vec<(usize, usize)> {
        let mut places = Vec::new();
        for (name, least) in self.names() {
            let name: Vec<char> = folded(&name).iter().map(|letter| letter.is).collect();
            let least = if is_cut {
                least.min(name.len())
            } else {
                name.len()
            };
            places.extend(names_in(letters, &name, least));
        }
        for used in &self.numbers {
            let digits = used.number.chars().filter(char::is_ascii_digit);
            let mut last: Vec<char> = digits.rev().take(DIGITS).collect();
            last.reverse();
            places.extend(numbers_in(letters, &last));
        }
        places
    }

    /// Their names, and how many letters of each must be there where names are cut. Of a name that
    /// somebody else is called by, more than that.
    fn names(&self) -> Vec<(String, usize)> {
        let first = self.name.split_whitespace().next().unwrap_or_default();
        let whole = (self.name.clone(), first.chars().count() + 2);
        let called = self.called.clone().map(|called| (called, SHORTEST_CUT));
        [Some(whole), called].into_iter().flatten().collect()
    }
}

/// The word that stands for somebody who was erased. It says nothing of them.
#[must_use]
pub fn code(person: PersonId) -> String {
    format!("P{person}")
}

/// A letter without marks and capitals, and where it stands in the text.
struct Letter {
    is: char,
    from: usize,
    to: usize,
}

fn folded(text: &str) -> Vec<Letter> {
    let is_mark = |c: char| ('\u{300}'..='\u{36f}').contains(&c);
    text.char_indices()
        .filter(|(_, c)| !is_mark(*c))
        .map(|(from, c)| {
            let bare = sms::base(c);
            Letter {
                is: bare.to_lowercase().next().unwrap_or(bare),
                from,
                to: from + c.len_utf8(),
            }
        })
        .collect()
}

/// Where a name stands as a word of its own. Scripts without spaces have no such words.
fn names_in(letters: &[Letter], name: &[char], least: usize) -> Vec<(usize, usize)> {
    let is_letter = |letter: Option<&Letter>| letter.is_some_and(|l| l.is.is_ascii_alphanumeric());
    let mut places = Vec::new();
    for (at, first) in letters.iter().enumerate() {
        let is_within = is_letter(at.checked_sub(1).and_then(|before| letters.get(before)));
        if is_within && first.is.is_ascii_alphanumeric() {
            continue;
        }
        let rest = letters.get(at..).unwrap_or_default();
        let alike = rest
            .iter()
            .zip(name)
            .take_while(|(l, c)| l.is == **c)
            .count();
        let last = alike.checked_sub(1).and_then(|last| rest.get(last));
        if let Some(last) = last
            && alike >= least
            && !(last.is.is_ascii_alphanumeric() && is_letter(rest.get(alike)))
        {
            places.push((first.from, last.to));
        }
    }
    places
}

/// Runs of digits, however they are spaced.
fn runs(letters: &[Letter]) -> impl Iterator<Item = &[Letter]> {
    let is_between = |c: char| matches!(c, ' ' | '-' | '.' | '/' | '(' | ')' | '+');
    letters.split(move |letter| !letter.is.is_ascii_digit() && !is_between(letter.is))
}

/// Where anybody's number stands; measures of trees have two digits each.
fn any_numbers_in(letters: &[Letter]) -> Vec<(usize, usize)> {
    let of_run = |run: &[Letter]| {
        let mut groups = run.split(|letter| !letter.is.is_ascii_digit());
        groups.find(|group| group.len() > 2)?;
        let digits: Vec<&Letter> = run.iter().filter(|l| l.is.is_ascii_digit()).collect();
        let (first, last) = (digits.first()?, digits.last()?);
        (digits.len() >= DIGITS).then_some((first.from, last.to))
    };
    runs(letters).filter_map(of_run).collect()
}

/// Where a run of digits, however it is spaced, ends in these.
fn numbers_in(letters: &[Letter], last: &[char]) -> Vec<(usize, usize)> {
    let mut places = Vec::new();
    for run in runs(letters) {
        let digits: Vec<&Letter> = run.iter().filter(|l| l.is.is_ascii_digit()).collect();
        let found = digits
            .windows(last.len().max(1))
            .rposition(|some| some.iter().map(|l| l.is).eq(last.iter().copied()));
        let ends = found.and_then(|found| digits.get(found..)?.get(..last.len())?.last().copied());
        if let (Some(first), Some(end)) = (digits.first(), ends) {
            places.push((first.from, end.to));
        }
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    fn erasure(name: &str, called: Option<&str>) -> Erasure {
        Erasure {
            person: PersonId(7),
            name: name.to_owned(),
            called: called.map(str::to_owned),
            numbers: vec![UsedNumber {
                number: "+447700900003".to_owned(),
                since: None,
                until: None,
            }],
            last: MessageId(9),
        }
    }

    #[test]
    fn a_name_and_a_number_go_however_they_are_written() {
        let nilo = erasure("Nilo Farr", Some("Nilo"));
        for (text, without) in [
            ("Nilo planted 300", "P7 planted 300"),
            ("tell NILO FARR: no", "tell P7: no"),
            ("Nilo Farr said", "P7 said"),
            ("Nílo's land", "P7's land"),
            ("his 07700 900-003 now", "his P7 now"),
            ("00447700900003", "P7"),
            ("moved Nilo 07700 900555", "moved P7 P7"),
            ("Nilo girth 41 43 39 38", "P7 girth 41 43 39 38"),
        ] {
            assert_eq!(nilo.without_name(text).as_deref(), Some(without), "{text}");
            assert!(nilo.is_named_in(text), "{text}");
        }
        for text in ["", "Nilofar planted 300", "manilo", "900003", "dead 4 A"] {
            assert_eq!(nilo.without_name(text), None, "{text}");
        }
    }

    /// The words before a name in Thai are parted from it by nothing.
    #[test]
    fn a_name_is_found_in_a_script_without_spaces() {
        let somchai = erasure("สมใจ", Some("สมใจ"));
        let without = somchai.without_name("คุณสมใจปลูก 30");
        assert_eq!(without.as_deref(), Some("คุณP7ปลูก 30"));
    }

    #[test]
    fn who_has_a_namesake_is_known_by_the_whole_name_only() {
        let one = erasure("Rosalinda Farr", None);
        assert!(!one.is_named_in("Rosalinda: weeded A"));
        assert!(one.is_named_in("Rosalinda F: weeded A"), "cut");
        assert_eq!(one.without_name("Rosalinda F: weeded A"), None, "not cut");
        let other = erasure("Rosalinda Farr", Some("Rosalinda"));
        assert!(other.is_named_in("Rosal: weeded A"), "cut");
        assert!(!other.is_named_in("Rosa: weeded A"), "never so short");
    }

    #[test]
    fn a_number_that_others_used_too_is_theirs_for_its_days() {
        let day = |day| NaiveDate::from_ymd_opt(2027, 3, day);
        let used = UsedNumber {
            number: "+447700900003".to_owned(),
            since: day(10),
            until: day(20),
        };
        let at = |of| day(of).unwrap().and_hms_opt(12, 0, 0).unwrap().and_utc();
        let theirs = [8, 9, 21, 22].map(|day| used.was_theirs(at(day)));
        assert_eq!(theirs, [false, true, true, false]);
    }
}
