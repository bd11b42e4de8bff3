//! Where in a file a fault stands: the line of a key, or of what is no TOML.

use alloc::{
    string::{String, ToString},
    vec::Vec,
};
use core::fmt;

use toml::de::{DeArray, DeTable};

use super::{TableError, parse};

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

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(line) = self.line {
            write!(f, "line {line}: ")?;
        }
        write!(f, "{}: {}", self.path, self.what)
    }
}

/// The errors of a file with their lines, in its order; where it is no TOML, only that.
#[must_use]
pub fn faults(text: &str, errors: Vec<TableError>) -> Vec<Fault> {
    if let Some((line, what)) = syntax_fault(text) {
        return Vec::from([Fault {
            line: Some(line),
            path: "file".to_string(),
            what,
        }]);
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
    faults
}

/// The line on which a key stands, from 1: that of the key itself, or of the innermost table
/// around it that is there. None when the file holds nothing of it, or is not TOML.
#[must_use]
pub fn line_of(text: &str, path: &str) -> Option<usize> {
    let file = parse("file", text).ok()?;
    Some(line_at(text, place(&file, path)?))
}

/// The line on which a text stops being TOML, from 1, and why. None when it is TOML.
#[must_use]
pub fn syntax_fault(text: &str) -> Option<(usize, String)> {
    let error = DeTable::parse(text).err()?;
    let at = error.span().map_or(0, |span| span.start);
    Some((line_at(text, at), error.message().replace('\n', ", ")))
}

fn line_at(text: &str, byte: usize) -> usize {
    text.bytes()
        .take(byte)
        .filter(|byte| *byte == b'\n')
        .count()
        + 1
}

fn place(table: &DeTable<'_>, path: &str) -> Option<usize> {
    // Names of products hold dots, so the longest key that fits is the one that is meant.
    let (key, value) = table
        .iter()
        .filter(|(key, _)| starts(path, key.get_ref()))
        .max_by_key(|(key, _)| key.get_ref().len())?;
    let rest = path.get(key.get_ref().len()..)?;
    let inner = match (value.get_ref().as_table(), value.get_ref().as_array()) {
        (Some(inner), _) => rest.strip_prefix('.').and_then(|rest| place(inner, rest)),
        (None, Some(list)) => place_in_list(list, rest),
        (None, None) => None,
    };
    inner.or(Some(key.span().start))
}

fn place_in_list(list: &DeArray<'_>, rest: &str) -> Option<usize> {
    let (index, rest) = rest.strip_prefix('[')?.split_once(']')?;
    let item = list.get(index.parse::<usize>().ok()?)?;
    let inside = item.get_ref().as_table().zip(rest.strip_prefix('.'));
    let inside = inside.and_then(|(table, rest)| place(table, rest));
    inside.or(Some(item.span().start))
}

fn starts(path: &str, key: &str) -> bool {
    let rest = path.strip_prefix(key);
    rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
}
