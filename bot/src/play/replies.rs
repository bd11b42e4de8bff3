//! The words in which the farmers behind the scenes answer a nudge.
//!
//! A line is a job, a colon and one way of saying that it is done; "misspelt" after the job marks
//! words for those who spell badly. `{block}` and `{n}` stand for the farmer's own block and
//! number, `{girths}` for the girths measured.

use std::collections::BTreeMap;

use budwood_scheduler::TaskKind;

use super::seeded::Seeded;

/// The replies that ship.
pub(crate) const REPLIES: &str = include_str!("../../../demo-data/replies.txt");

/// Ways of answering, by job.
#[derive(Clone, Debug, Default)]
pub(crate) struct Replies {
    ways: BTreeMap<(TaskKind, Spelling), Vec<String>>,
}

/// How somebody spells.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Spelling {
    /// As in a book, nearly.
    Plain,
    /// Badly.
    Misspelt,
}

/// Why a file of replies cannot be used.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("line {line} of the replies: {what}")]
pub(crate) struct RepliesError {
    line: usize,
    what: String,
}

impl Replies {
    /// Reads a file of replies.
    ///
    /// # Errors
    ///
    /// At the first line that is not a job and its words.
    pub(crate) fn parse(text: &str) -> Result<Self, RepliesError> {
        let mut replies = Self::default();
        for (index, line) in text.lines().enumerate() {
            let line = line.trim();
            if line.is_empty() || line.starts_with('#') {
                continue;
            }
            let (key, way) = entry(line).map_err(|what| RepliesError {
                line: index + 1,
                what,
            })?;
            replies.ways.entry(key).or_default().push(way);
        }
        Ok(replies)
    }

    /// One way of saying that this job is done; plain words where no misspelt ones are listed.
    pub(crate) fn pick(
        &self,
        task: TaskKind,
        spelling: Spelling,
        chance: &mut Seeded,
    ) -> Option<&str> {
        let ways = self
            .ways
            .get(&(task, spelling))
            .or_else(|| self.ways.get(&(task, Spelling::Plain)))?;
        chance.one_of(ways).map(String::as_str)
    }
}

fn entry(line: &str) -> Result<((TaskKind, Spelling), String), String> {
    let (key, way) = line
        .split_once(':')
        .ok_or_else(|| format!("expected \"job: words\", but found {line:?}"))?;
    let (job, spelling) = match key.trim().split_once(' ') {
        None => (key.trim(), Spelling::Plain),
        Some((job, "misspelt")) => (job, Spelling::Misspelt),
        Some((_, word)) => return Err(format!("expected \"misspelt\", but found {word:?}")),
    };
    let task = TaskKind::from_name(job).ok_or_else(|| format!("no job is called {job:?}"))?;
    Ok(((task, spelling), way.trim().to_owned()))
}

#[cfg(test)]
mod tests {
    use super::{Replies, Spelling};
    use crate::play::{replies::REPLIES, seeded::Seeded};
    use budwood_scheduler::TaskKind;

    #[test]
    fn has_words_for_every_job_that_farmers_answer() {
        let replies = Replies::parse(REPLIES).unwrap();
        let unanswered: Vec<TaskKind> = TaskKind::ALL
            .into_iter()
            .filter(|task| {
                let mut chance = Seeded::new(1);
                replies
                    .pick(*task, Spelling::Misspelt, &mut chance)
                    .is_none()
            })
            .collect();
        // The adviser looks before a block is opened, and a farewell asks nothing.
        assert_eq!(unanswered, [TaskKind::Open, TaskKind::HandOver]);
    }

    #[test]
    fn says_which_line_is_wrong() {
        #[track_caller]
        fn check(text: &str, expected: &str) {
            assert_eq!(Replies::parse(text).unwrap_err().to_string(), expected);
        }
        check(
            "# words\nweed weeded {block}",
            "line 2 of the replies: expected \"job: words\", but found \"weed weeded {block}\"",
        );
        check(
            "harvest: done",
            "line 1 of the replies: no job is called \"harvest\"",
        );
        check(
            "weed badly: weded {block}",
            "line 1 of the replies: expected \"misspelt\", but found \"badly\"",
        );
    }
}
