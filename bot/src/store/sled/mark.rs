//! What the acknowledged record holds, in a small file of our own.
//!
//! Where a disk has damaged sled's log, sled takes the damage for the end of the log and goes on
//! without the rest, or leaves out what it cannot read. So after each commit the newest ids are
//! written here, and how many there are: an opening that finds less than the newest ids is
//! refused, and whoever reads the whole store can tell whether something is missing in between.
//! The file is never synced: after a power cut it may tell of an older commit, but never of one
//! that is not on the disk. Deliberately absent: mending.

use std::{
    fs::File,
    io,
    os::unix::fs::FileExt,
    path::{Path, PathBuf},
};

use crate::store::Change;

/// The records of one kind, which are numbered as they come and never taken out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Tally {
    /// The newest id.
    pub(super) newest: u64,
    /// At least so many there are.
    pub(super) number: u64,
}

impl Tally {
    fn and(self, ids: impl Iterator<Item = u64>) -> Self {
        // A text out that moves on is written again under its id.
        ids.fold(self, |tally, id| match id > tally.newest {
            true => Self {
                newest: id,
                number: tally.number + 1,
            },
            false => tally,
        })
    }
}

/// What was told: facts, texts in, texts out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Told(pub(super) [Tally; 3]);

impl Told {
    /// With what a change adds.
    fn and(self, change: &Change) -> Self {
        let Self([events, received, outbound]) = self;
        Self([
            events.and(change.events.iter().map(|event| event.id.0)),
            received.and(change.received.iter().map(|text| text.id.0)),
            outbound.and(change.outbound.iter().map(|text| text.id.0)),
        ])
    }

    fn line(self) -> String {
        // Always as long, so that writing over it is one write in place.
        let numbers = self
            .0
            .map(|tally| format!("{:020} {:020}", tally.newest, tally.number));
        format!("{}\n", numbers.join(" "))
    }

    fn parse(text: &str) -> Option<Self> {
        let mut numbers = text.strip_suffix('\n')?.split(' ').map(str::parse);
        let mut told = Self::default();
        for tally in &mut told.0 {
            tally.newest = numbers.next()?.ok()?;
            tally.number = numbers.next()?.ok()?;
        }
        numbers.next().is_none().then_some(told)
    }
}

/// The open file.
#[derive(Debug)]
pub(super) struct Mark {
    file: File,
    told: Told,
}

impl Mark {
    /// Opens the file. One that is not there, or cannot be understood, tells nothing.
    pub(super) fn open(folder: &Path) -> io::Result<Self> {
        let file = File::options()
            .read(true)
            .write(true)
            .create(true)
            .truncate(false)
            .open(path(folder))?;
        let text = io::read_to_string(&file).unwrap_or_default();
        let told = Told::parse(&text).unwrap_or_default();
        Ok(Self { file, told })
    }

    /// What was acknowledged.
    pub(super) const fn told(&self) -> Told {
        self.told
    }

    /// Takes over the newest ids that a store has; gives whether it has all that were acknowledged.
    pub(super) fn is_reached_by(&mut self, found: [u64; 3]) -> bool {
        let mut is_reached = true;
        for (tally, found) in self.told.0.iter_mut().zip(found) {
            is_reached &= found >= tally.newest;
            tally.newest = tally.newest.max(found);
        }
        is_reached
    }

    /// Writes down that a change is on the disk.
    pub(super) fn advance(&mut self, change: &Change) -> io::Result<()> {
        let told = self.told.and(change);
        if told != self.told {
            self.file.write_all_at(told.line().as_bytes(), 0)?;
            self.told = told;
        }
        Ok(())
    }
}

fn path(folder: &Path) -> PathBuf {
    folder.join("acknowledged")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_is_read_back_and_rubbish_tells_nothing() {
        let told = Told([1, 2, u64::MAX].map(|newest| Tally { newest, number: 1 }));
        assert_eq!(Told::parse(&told.line()), Some(told));
        for rubbish in [
            "",
            "\n",
            "1 2\n",
            "1 2 3 4 5 6",
            "1 2 3 4 5 x\n",
            "1 2 3 4 5 6 7\n",
            "\0",
        ] {
            assert_eq!(Told::parse(rubbish), None, "{rubbish:?}");
        }
    }

    #[test]
    fn what_is_written_again_counts_once() {
        let tally = Tally::default().and([3, 4, 4, 3, 9].into_iter());
        let newest_and_number = (tally.newest, tally.number);
        assert_eq!(newest_and_number, (9, 3));
    }
}
