//! Calendars that stand on another: `base = "fao"` and what differs.

use alloc::{format, vec::Vec};

use budwood_parser::table::{Table, TableError, read_layers, texts_of};

use super::profiles;

/// Reads a file with what its base says beneath it, and what that one's base says.
pub(super) fn read_on_base<T>(
    text: &str,
    read: impl FnOnce(&Table<'_>) -> Result<T, Vec<TableError>>,
) -> Result<T, Vec<TableError>> {
    let layers = layers(text).map_err(|fault| Vec::from([fault]))?;
    let mut faults = Vec::new();
    if layers.len() > 1 {
        let top = texts_of(text, "");
        let missing = ["name", "title"]
            .into_iter()
            .filter(|key| !top.contains_key(*key));
        faults.extend(missing.map(|key| {
            TableError::new(key, "is missing: a calendar with a base has one of its own")
        }));
    }
    for below in layers.iter().filter(|below| **below != text) {
        faults.extend(clashes(below, text));
    }
    let read = read_layers(&layers, is_whole, |file| Ok(read(file)));
    match read.map_err(|fault| Vec::from([fault])).flatten() {
        Ok(value) if faults.is_empty() => Ok(value),
        Ok(_) => Err(faults),
        Err(more) => {
            faults.extend(more);
            Err(faults)
        }
    }
}

/// The texts to lay over each other, the lowest first.
fn layers(text: &str) -> Result<Vec<&str>, TableError> {
    let mut layers = Vec::from([text]);
    let mut upper = text;
    while let Some(name) = texts_of(upper, "").get("base") {
        let base = profiles::ALL.iter().find(|(known, _)| known == name);
        let Some((_, base)) = base else {
            let names: Vec<&str> = profiles::ALL.iter().map(|(known, _)| *known).collect();
            let names = names.join(", ");
            let what = format!("expected one of {names}, found \"{name}\"");
            return Err(TableError::new("base", what));
        };
        if layers.contains(base) {
            return Err(TableError::new("base", "leads back to itself"));
        }
        layers.insert(0, base);
        upper = base;
    }
    Ok(layers)
}

/// A key that means one page in the base and another here would give the base's values a source
/// that they are not from.
fn clashes(base: &str, text: &str) -> Vec<TableError> {
    let theirs = texts_of(base, "sources");
    texts_of(text, "sources")
        .iter()
        .filter(|(key, page)| theirs.get(*key).is_some_and(|their| their != *page))
        .map(|(key, _)| {
            let what = "is another page in the base; give it another key";
            TableError::new(&format!("sources.{key}"), what)
        })
        .collect()
}

/// A value goes with its source, and two feeding tables are never blended.
fn is_whole(path: &str, keys: &[&str]) -> bool {
    keys.contains(&"value")
        || (path == "feeding" && ["months", "years"].iter().any(|list| keys.contains(list)))
}
