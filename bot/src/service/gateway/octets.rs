//! What is left of a message of octets to read. Reading beyond the end is told, never a panic.

/// The octets that were not read yet.
pub(super) struct Octets<'a>(pub(super) &'a [u8]);

impl<'a> Octets<'a> {
    /// The next so many.
    pub(super) fn take(&mut self, length: usize) -> Option<&'a [u8]> {
        let (taken, rest) = self.0.split_at_checked(length)?;
        self.0 = rest;
        Some(taken)
    }

    /// The next one.
    pub(super) fn octet(&mut self) -> Option<u8> {
        let (first, rest) = self.0.split_first()?;
        self.0 = rest;
        Some(*first)
    }
}
