//! A copy of the store as it was at one moment, taken bit by bit while work goes on.
//!
//! The copy goes through the keys in order. Before a commit changes a record that the copy has
//! not come to, the record is kept as it was; the copy takes the kept one in its place. So the
//! engine stops for a few milliseconds at a time and the copy is still of one moment. Asked for
//! bit by bit from outside: whoever takes the copy sets the pace, and may go away.

use std::collections::BTreeMap;

use crate::{
    store::{Change, Record, Store, StoreError},
    words::limits,
};

/// What to do about a copy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CopyStep {
    /// Begin one, of this moment. One that was not finished is given up.
    Begin,
    /// Give the next part.
    Next,
    /// Nobody wants the rest.
    GiveUp,
}

/// A part of a copy.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Copied {
    /// It has begun.
    Begun,
    /// So many more lines; there may be none in a part that is not the last.
    Lines(Vec<Vec<u8>>),
    /// There are no more.
    End,
    /// It cannot go on, for this reason.
    Broken(String),
}

/// A copy being taken.
#[derive(Debug, Default)]
pub(crate) struct Copying {
    /// The last key that it came to.
    at: Option<Vec<u8>>,
    /// Records changed since it began, as they were; none for one that was not there.
    kept: BTreeMap<Vec<u8>, Option<Vec<u8>>>,
    /// It came to the end. What lies there now is new.
    is_done: bool,
    /// Why it cannot go on.
    broken: Option<String>,
}

impl Copying {
    /// To be called before each commit. A copy that cannot go on is in the way of none.
    pub(crate) fn keep(&mut self, store: &dyn Store, change: &Change) {
        if let Err(error) = self.keep_records(store, change) {
            self.broken = Some(unreadable(&error));
        }
        if self.kept.len() > limits::COPY_KEPT_MAX {
            self.broken =
                Some("too much changes meanwhile; try again when less comes in".to_owned());
        }
        if self.broken.is_some() {
            self.kept.clear();
        }
    }

    fn keep_records(&mut self, store: &dyn Store, change: &Change) -> Result<(), StoreError> {
        for key in change.keys()? {
            let is_over = self.is_done || self.broken.is_some();
            let passed = is_over || self.at.as_ref().is_some_and(|at| key <= *at);
            if passed || self.kept.contains_key(&key) {
                continue;
            }
            let before = store.record(&key)?.map(|record| record.line);
            self.kept.insert(key, before);
        }
        Ok(())
    }

    /// The next part; none at the end.
    ///
    /// # Errors
    ///
    /// With the reason, when it cannot go on.
    pub(crate) fn next_part(&mut self, store: &dyn Store) -> Result<Option<Vec<Vec<u8>>>, String> {
        match self.broken.take() {
            Some(why) => Err(why),
            None => self.next(store).map_err(|error| unreadable(&error)),
        }
    }

    fn next(&mut self, store: &dyn Store) -> Result<Option<Vec<Vec<u8>>>, StoreError> {
        if self.is_done {
            return Ok(None);
        }
        let now = store.records(self.at.as_deref(), limits::COPY_RECORDS)?;
        self.is_done = now.len() < limits::COPY_RECORDS;
        let last = now.last().map(|record| record.key.clone());
        let mut part: BTreeMap<Vec<u8>, Vec<u8>> = now
            .into_iter()
            .map(|Record { key, line }| (key, line))
            .collect();
        for (key, before) in self.take_kept(last.as_deref()) {
            match before {
                Some(line) => part.insert(key, line),
                None => part.remove(&key),
            };
        }
        self.at = last;
        Ok(Some(part.into_values().collect()))
    }

    /// Takes out the kept records up to this key, or all of them for the last part.
    fn take_kept(&mut self, last: Option<&[u8]>) -> BTreeMap<Vec<u8>, Option<Vec<u8>>> {
        match last {
            Some(last) if !self.is_done => {
                // The smallest key after this one.
                let after = [last, &[0]].concat();
                let rest = self.kept.split_off(&after);
                std::mem::replace(&mut self.kept, rest)
            }
            Some(_) | None => std::mem::take(&mut self.kept),
        }
    }
}

fn unreadable(error: &StoreError) -> String {
    format!("the store cannot be read: {error}")
}
