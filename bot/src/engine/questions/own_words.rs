//! What a text means to one who knows the people and blocks: a block's name with a letter wrong,
//! the name of one who died.

use budwood_parser::{Doubt, Effect, Known, Reading, Taken};
use budwood_scheduler::{Person, PersonId};

use crate::engine::{turn::Turn, view::View};

/// Shorter names than this are too much like each other.
const BLOCK_LETTERS_MIN: usize = 4;

impl View<'_> {
    /// The same text with a block's name as its owner wrote it on the list; none when no word of
    /// no list is one letter off such a name.
    pub(crate) fn with_own_block(
        self,
        turn: &Turn,
        known: &Known<'_>,
        reading: &Reading,
    ) -> Option<Reading> {
        let strange = reading.words.iter();
        let mut strange = strange.filter(|word| word.taken == Taken::Unknown);
        let (span, name) = strange.find_map(|word| {
            let written = turn.text.get(word.span.start..word.span.end)?;
            let mut near = known.blocks.iter().filter(|name| is_nearly(written, name));
            let name = near.next()?;
            near.next().is_none().then_some((word.span, *name))
        })?;
        let before = turn.text.get(..span.start)?;
        let from = turn.text.get(span.start..span.end)?;
        let after = turn.text.get(span.end..)?;
        let mended = format!("{before}{name}{after}");
        let mut reading = self.setup.reader.read(&mended, known);
        for report in &mut reading.reports {
            report.doubts.push(Doubt::Repaired {
                from: from.to_owned(),
                to: name.to_owned(),
            });
        }
        Some(reading)
    }

    /// Whoever of the speaker's group is said to be dead, where no trees are counted: "Keti died".
    pub(crate) fn said_dead(self, turn: &Turn, reading: &Reading) -> Option<PersonId> {
        let is_bare = reading.reports.iter().all(|report| {
            let details = &report.details;
            let is_death = report.kind.effect() == Effect::Dead;
            is_death && details.count.is_none() && details.extent.is_none()
        });
        let is_told = !reading.reports.is_empty() && is_bare;
        self.member_in(turn).filter(|_| is_told)
    }

    /// Whoever else of the speaker's group is named in a text.
    fn member_in(self, turn: &Turn) -> Option<PersonId> {
        let group = self.person(turn.speaker)?.group?;
        let words: Vec<&str> = turn.text.split(|c: char| !c.is_alphanumeric()).collect();
        let is_named = |person: &&Person| {
            let called = person.called();
            let mut words = words.iter();
            person.id != turn.speaker && words.any(|word| word.eq_ignore_ascii_case(called))
        };
        let mut members = self.world.directory.members(group);
        members.find(is_named).map(|person| person.id)
    }

    /// Whose family a death has struck: of the one who is named, else of those on this phone.
    pub(crate) fn bereaved(self, turn: &Turn) -> Vec<PersonId> {
        let Some(dead) = self.member_in(turn) else {
            return self.everyone_on(&turn.number);
        };
        let numbers = self.world.directory.numbers_of(dead);
        let mut family: Vec<PersonId> = numbers
            .flat_map(|number| self.everyone_on(number))
            .collect();
        family.push(dead);
        family.sort_unstable();
        family.dedup();
        family
    }
}

/// One letter more, less or another.
fn is_nearly(written: &str, name: &str) -> bool {
    let written: Vec<char> = written.to_lowercase().chars().collect();
    let name: Vec<char> = name.to_lowercase().chars().collect();
    if name.len() < BLOCK_LETTERS_MIN || written.len().abs_diff(name.len()) > 1 {
        return false;
    }
    let pairs = || written.iter().zip(&name);
    let same = pairs().take_while(|(one, other)| one == other).count();
    let longest = written.len().max(name.len());
    let reversed = written.iter().rev().zip(name.iter().rev());
    let same_behind = reversed.take_while(|(one, other)| one == other).count();
    written != name && same + same_behind + 1 >= longest
}

#[cfg(test)]
mod tests {
    use super::is_nearly;

    #[test]
    fn a_letter_more_less_or_another_is_nearly_the_name() {
        for written in ["hil", "Hilll", "hall", "ill", "HELL"] {
            assert!(is_nearly(written, "Hill"), "{written}");
        }
        for written in ["hill", "hi", "lihl", "hole", "hlil"] {
            assert!(!is_nearly(written, "Hill"), "{written}");
        }
        assert!(!is_nearly("B", "A"));
    }
}
