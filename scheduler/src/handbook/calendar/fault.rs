//! What is wrong in a calendar's file, with the line.

use alloc::vec::Vec;
use core::fmt;

pub use budwood_parser::table::Fault;
use budwood_parser::table::{TableError, faults};

/// Everything that is wrong in a calendar's file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CalendarError {
    /// The faults, in the order of the file. At least one.
    pub faults: Vec<Fault>,
}

impl CalendarError {
    pub(super) fn of(text: &str, errors: Vec<TableError>) -> Self {
        let faults = faults(text, errors);
        Self { faults }
    }
}

impl fmt::Display for CalendarError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, fault) in self.faults.iter().enumerate() {
            let break_ = if index == 0 { "" } else { "\n" };
            write!(f, "{break_}{fault}")?;
        }
        Ok(())
    }
}

impl core::error::Error for CalendarError {}
