//! How far the acknowledged record went, in a small file of our own.
//!
//! Where a disk has damaged sled's log, sled takes the damage for the end of the log and goes on
//! without the rest. So after each commit the newest ids are written here, and an opening that
//! finds less than these is refused. The file is never synced: after a power cut it may tell of
//! an older commit, but never of one that is not on the disk. Deliberately absent: mending.

use std::{
    fs::File,
    io,
    os::unix::fs::FileExt,
    path::{Path, PathBuf},
};

use crate::store::Change;

/// The newest ids: of facts, and of messages in or out.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Newest {
    pub(super) event: u64,
    pub(super) message: u64,
}

impl Newest {
    /// With what a change adds.
    fn and(self, change: &Change) -> Self {
        let events = change.events.iter().map(|event| event.id.0);
        let received = change.received.iter().map(|text| text.id.0);
        let outbound = change.outbound.iter().map(|text| text.id.0);
        Self {
            event: events.fold(self.event, u64::max),
            message: received.chain(outbound).fold(self.message, u64::max),
        }
    }

    fn line(self) -> String {
        // Always as long, so that writing over it is one write in place.
        format!("{:020} {:020}\n", self.event, self.message)
    }

    fn parse(text: &str) -> Option<Self> {
        let (event, message) = text.strip_suffix('\n')?.split_once(' ')?;
        Some(Self {
            event: event.parse().ok()?,
            message: message.parse().ok()?,
        })
    }
}

/// The open file.
#[derive(Debug)]
pub(super) struct Mark {
    file: File,
    newest: Newest,
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
        let newest = Newest::parse(&text).unwrap_or_default();
        Ok(Self { file, newest })
    }

    /// Whether a store with these newest ids has all that was acknowledged.
    pub(super) const fn is_reached_by(&self, found: Newest) -> bool {
        found.event >= self.newest.event && found.message >= self.newest.message
    }

    /// Writes down that a change is on the disk.
    pub(super) fn advance(&mut self, change: &Change) -> io::Result<()> {
        let newest = self.newest.and(change);
        if newest != self.newest {
            self.file.write_all_at(newest.line().as_bytes(), 0)?;
            self.newest = newest;
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
        let newest = Newest {
            event: 7,
            message: u64::MAX,
        };
        assert_eq!(Newest::parse(&newest.line()), Some(newest));
        for rubbish in ["", "\n", "1 2", "1\n", "a b\n", "1 -2\n", "\0\0\0"] {
            assert_eq!(Newest::parse(rubbish), None, "{rubbish:?}");
        }
    }
}
