//! What is wrong in a calendar's file, with the line.

use alloc::{
    string::{String, ToString},
    vec::Vec,
};
use core::fmt;

use budwood_parser::table::{TableError, line_of, syntax_fault};

/// One fault of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The line, from 1; none when nothing of it stands in the file.
    pub line: Option<usize>,
    /// The path of the key, such as `pits.edge_cm.value`.
    pub path: String,
    /// What was expected and what was found.
    pub what: String,
}

/// Everything that is wrong in a calendar's file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CalendarError {
    /// The faults, in the order of the file. At least one.
    pub faults: Vec<Fault>,
}

impl CalendarError {
    pub(super) fn of(text: &str, errors: Vec<TableError>) -> Self {
        if let Some((line, what)) = syntax_fault(text) {
            let fault = Fault {
                line: Some(line),
                path: "file".to_string(),
                what,
            };
            return Self {
                faults: Vec::from([fault]),
            };
        }
        let mut faults: Vec<Fault> = errors
            .into_iter()
            .map(|error| Fault {
                line: line_of(text, &error.path),
                path: error.path,
                what: error.what,
            })
            .collect();
        faults.sort_by_key(|fault| fault.line.unwrap_or(usize::MAX));
        Self { faults }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(line) = self.line {
            write!(f, "line {line}: ")?;
        }
        write!(f, "{}: {}", self.path, self.what)
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
