//! A record as a line: what backups and exported logs are made of.
//!
//! A line is the record as it is stored, and says itself under which key it lies. So a copy needs
//! no keys, and any store can be filled from it.

use super::{Change, StoreError, keyed, record};

/// A record and where it lies. Only the store that it is from knows what its key means.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Record {
    /// Where it lies.
    pub key: Vec<u8>,
    /// The record: JSON without a line break.
    pub line: Vec<u8>,
}

/// Reads one line into a change, and gives the key under which it will lie.
///
/// # Errors
///
/// When it is no record, or of a version or kind that this program does not know.
pub fn read_line(line: &[u8], into: &mut Change) -> Result<Vec<u8>, StoreError> {
    let mut one = Change::default();
    record::read_into(line, &mut one)?;
    let (key, _) = keyed::only_row(&one)?;
    into.append(one);
    Ok(key)
}
