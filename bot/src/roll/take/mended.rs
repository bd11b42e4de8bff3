//! What became of a cell.

/// What became of a cell.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Mended {
    /// It is, or was without a doubt meant as, this.
    Plain(String),
    /// It probably means this.
    Proposed {
        /// The cell as the plain list wants it.
        value: String,
        /// What was seen in it.
        why: String,
    },
    /// Nobody can tell what it means.
    Refused(String),
}

impl Mended {
    pub(super) fn proposed(value: impl Into<String>, why: &str) -> Self {
        Self::Proposed {
            value: value.into(),
            why: why.to_owned(),
        }
    }
}
