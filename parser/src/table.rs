//! Reads a TOML file key by key, and says exactly which key is wrong.
//!
//! Language packs, calendars and the service's configuration are files that people write, so every
//! refusal names the path of the key, and a key that nobody asked for is refused too. It stands in
//! the lowest crate because every crate above reads such a file. No serde: what is read here is not
//! a storage format, and the core crates have none.

mod fault;

use alloc::{
    collections::{BTreeMap, BTreeSet},
    format,
    string::{String, ToString},
    vec::Vec,
};
use core::cell::RefCell;

use toml::de::{DeTable, DeValue};

pub use self::fault::{Fault, faults, line_of, syntax_fault};

/// So many keys are shown to whoever wrote one that is not known.
const KEYS_SHOWN: usize = 12;

/// A key of a file that is missing, of the wrong type, or not known.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{path}: {what}")]
pub struct TableError {
    /// The path of the key, such as `weeding.year_1.rounds`; the file itself is "file".
    pub path: String,
    /// What was expected and what was found.
    pub what: String,
}

impl TableError {
    /// An error at this path.
    #[must_use]
    pub fn new(path: &str, what: impl Into<String>) -> Self {
        Self {
            path: path.to_string(),
            what: what.into(),
        }
    }
}

/// Parses a whole file and reads it with `read`; keys that `read` did not ask for are an error.
///
/// # Errors
///
/// When the text is not TOML, or what `read` says.
pub fn read_file<T>(
    text: &str,
    read: impl FnOnce(&Table<'_>) -> Result<T, TableError>,
) -> Result<T, TableError> {
    read_whole(&parse("file", text)?, read)
}

/// Reads files laid over each other: each puts its values in the place of those before it.
///
/// Tables are merged key by key. A list takes the place of the old list, and so does a table for
/// which `is_whole` says so by its path and its keys: parts of a value that belong together are
/// never mixed.
///
/// # Errors
///
/// When one of the texts is not TOML, or what `read` says.
pub fn read_layers<T>(
    texts: &[&str],
    is_whole: fn(path: &str, keys: &[&str]) -> bool,
    read: impl FnOnce(&Table<'_>) -> Result<T, TableError>,
) -> Result<T, TableError> {
    let mut table = DeTable::new();
    for text in texts {
        merge(&mut table, parse("file", text)?, "", is_whole);
    }
    read_whole(&table, read)
}

/// The texts of one table of a file (of the file itself when `table` is empty), without asking
/// what else there is. Empty when the file is not TOML.
#[must_use]
pub fn texts_of(text: &str, table: &str) -> BTreeMap<String, String> {
    let Ok(file) = parse("file", text) else {
        return BTreeMap::new();
    };
    let inner = match table {
        "" => Some(&file),
        name => file.get(name).and_then(|value| value.get_ref().as_table()),
    };
    let pairs = inner.into_iter().flat_map(|table| table.iter());
    pairs
        .filter_map(|(key, value)| {
            let text = value.get_ref().as_str()?;
            Some((key.get_ref().to_string(), text.to_string()))
        })
        .collect()
}

fn parse<'a>(name: &str, text: &'a str) -> Result<DeTable<'a>, TableError> {
    DeTable::parse(text)
        .map(toml::Spanned::into_inner)
        .map_err(|error| TableError::new(name, error.to_string().trim_end()))
}

fn merge<'a>(
    table: &mut DeTable<'a>,
    changes: DeTable<'a>,
    path: &str,
    is_whole: fn(&str, &[&str]) -> bool,
) {
    for (key, change) in changes {
        let inside = join(path, key.get_ref());
        let old = table.get_mut(&key).map(toml::Spanned::get_mut);
        match (old, change.into_inner()) {
            (Some(DeValue::Table(old)), DeValue::Table(new))
                if !is_whole(&inside, &keys_of(&new)) =>
            {
                merge(old, new, &inside, is_whole);
            }
            (Some(old), new) => *old = new,
            (None, new) => {
                let span = key.span();
                table.insert(key, toml::Spanned::new(span, new));
            }
        }
    }
}

fn keys_of<'t>(table: &'t DeTable<'_>) -> Vec<&'t str> {
    table.keys().map(|key| key.get_ref().as_ref()).collect()
}

fn join(path: &str, key: &str) -> String {
    if path.is_empty() {
        key.to_string()
    } else {
        format!("{path}.{key}")
    }
}

fn read_whole<T>(
    table: &DeTable<'_>,
    read: impl FnOnce(&Table<'_>) -> Result<T, TableError>,
) -> Result<T, TableError> {
    let table = Table::new(table, String::new());
    let value = read(&table)?;
    table.finish()?;
    Ok(value)
}

/// One table of a file. Remembers which keys were asked for.
pub struct Table<'a> {
    inner: &'a DeTable<'a>,
    path: String,
    asked: RefCell<BTreeSet<String>>,
}

impl<'a> Table<'a> {
    fn new(inner: &'a DeTable<'a>, path: String) -> Self {
        Self {
            inner,
            path,
            asked: RefCell::new(BTreeSet::new()),
        }
    }

    /// The path of this table, or of a key in it.
    #[must_use]
    pub fn path_of(&self, key: &str) -> String {
        join(&self.path, key)
    }

    /// An error at a key of this table.
    #[must_use]
    pub fn error(&self, key: &str, what: impl Into<String>) -> TableError {
        TableError::new(&self.path_of(key), what)
    }

    /// Every key, in order.
    #[must_use]
    pub fn keys(&self) -> Vec<&'a str> {
        self.inner
            .keys()
            .map(|key| key.get_ref().as_ref())
            .collect()
    }

    fn value(&self, key: &str) -> Option<&'a DeValue<'a>> {
        self.asked.borrow_mut().insert(key.to_string());
        self.inner.get(key).map(toml::Spanned::get_ref)
    }

    fn wrong(&self, key: &str, expected: &str, found: &DeValue<'_>) -> TableError {
        self.error(
            key,
            format!("expected {expected}, found {}", found.type_str()),
        )
    }

    fn required<T>(&self, key: &str, value: Option<T>) -> Result<T, TableError> {
        value.ok_or_else(|| {
            let near = self.keys().into_iter().find(|found| is_near(found, key));
            let hint = near.map_or_else(String::new, |near| format!("; does {near} stand for it?"));
            self.error(key, format!("is missing{hint}"))
        })
    }

    /// A text, if the key is there.
    ///
    /// # Errors
    ///
    /// When it is not a text.
    pub fn text(&self, key: &str) -> Result<Option<&'a str>, TableError> {
        self.value(key)
            .map(|value| {
                value
                    .as_str()
                    .ok_or_else(|| self.wrong(key, "a text", value))
            })
            .transpose()
    }

    /// A text that must be there.
    ///
    /// # Errors
    ///
    /// When it is missing or not a text.
    pub fn need_text(&self, key: &str) -> Result<&'a str, TableError> {
        let value = self.text(key)?;
        self.required(key, value)
    }

    /// A number, whole or not, if the key is there.
    ///
    /// # Errors
    ///
    /// When it is not a finite number.
    pub fn number(&self, key: &str) -> Result<Option<f64>, TableError> {
        let Some(value) = self.value(key) else {
            return Ok(None);
        };
        number_of(value)
            .map(Some)
            .ok_or_else(|| self.wrong(key, "a number", value))
    }

    /// A number that must be there.
    ///
    /// # Errors
    ///
    /// When it is missing or not a number.
    pub fn need_number(&self, key: &str) -> Result<f64, TableError> {
        let value = self.number(key)?;
        self.required(key, value)
    }

    /// A whole number, not negative, if the key is there.
    ///
    /// # Errors
    ///
    /// When it is not a whole number or too large.
    pub fn whole(&self, key: &str) -> Result<Option<u32>, TableError> {
        let Some(value) = self.value(key) else {
            return Ok(None);
        };
        value
            .as_integer()
            .and_then(|number| u32::from_str_radix(number.as_str(), number.radix()).ok())
            .map(Some)
            .ok_or_else(|| self.wrong(key, "a whole number", value))
    }

    /// A whole number that must be there.
    ///
    /// # Errors
    ///
    /// When it is missing or not a whole number.
    pub fn need_whole(&self, key: &str) -> Result<u32, TableError> {
        let value = self.whole(key)?;
        self.required(key, value)
    }

    /// True or false, if the key is there.
    ///
    /// # Errors
    ///
    /// When it is something else.
    pub fn flag(&self, key: &str) -> Result<Option<bool>, TableError> {
        self.value(key)
            .map(|value| {
                value
                    .as_bool()
                    .ok_or_else(|| self.wrong(key, "true or false", value))
            })
            .transpose()
    }

    /// A list of texts; empty when the key is not there.
    ///
    /// # Errors
    ///
    /// When it is not a list of texts.
    pub fn texts(&self, key: &str) -> Result<Vec<&'a str>, TableError> {
        let Some(value) = self.value(key) else {
            return Ok(Vec::new());
        };
        let list = value
            .as_array()
            .ok_or_else(|| self.wrong(key, "a list of texts", value))?;
        list.iter()
            .map(|item| {
                let item = item.get_ref();
                item.as_str()
                    .ok_or_else(|| self.wrong(key, "a list of texts", item))
            })
            .collect()
    }

    /// A list of numbers; empty when the key is not there.
    ///
    /// # Errors
    ///
    /// When it is not a list of numbers.
    pub fn numbers(&self, key: &str) -> Result<Vec<f64>, TableError> {
        let Some(value) = self.value(key) else {
            return Ok(Vec::new());
        };
        let list = value
            .as_array()
            .ok_or_else(|| self.wrong(key, "a list of numbers", value))?;
        list.iter()
            .map(|item| {
                let item = item.get_ref();
                number_of(item).ok_or_else(|| self.wrong(key, "a list of numbers", item))
            })
            .collect()
    }

    /// Reads a table inside this one, if it is there; keys that `read` did not ask for are an
    /// error.
    ///
    /// # Errors
    ///
    /// When it is not a table, or what `read` says.
    pub fn table<T>(
        &self,
        key: &str,
        read: impl FnOnce(&Table<'_>) -> Result<T, TableError>,
    ) -> Result<Option<T>, TableError> {
        let Some(value) = self.value(key) else {
            return Ok(None);
        };
        let inner = value
            .as_table()
            .ok_or_else(|| self.wrong(key, "a table", value))?;
        let table = Table::new(inner, self.path_of(key));
        let result = read(&table)?;
        table.finish()?;
        Ok(Some(result))
    }

    /// Reads this table laid over a text of usual values: what stands here takes the place of what
    /// stands there, table by table and key by key.
    ///
    /// # Errors
    ///
    /// When the text is not TOML, or what `read` says.
    pub fn over<T>(
        &self,
        usual: &str,
        read: impl FnOnce(&Table<'_>) -> Result<T, TableError>,
    ) -> Result<T, TableError> {
        let mut merged = parse(&self.path, usual)?;
        merge(&mut merged, self.inner.clone(), "", |_, _| false);
        let table = Table::new(&merged, self.path.clone());
        let result = read(&table)?;
        let asked = table.asked.into_inner();
        self.asked.borrow_mut().extend(asked);
        Ok(result)
    }

    /// Reads a table that must be there.
    ///
    /// # Errors
    ///
    /// When it is missing, not a table, or what `read` says.
    pub fn need_table<T>(
        &self,
        key: &str,
        read: impl FnOnce(&Table<'_>) -> Result<T, TableError>,
    ) -> Result<T, TableError> {
        let value = self.table(key, read)?;
        self.required(key, value)
    }

    /// Reads a list of tables; empty when the key is not there.
    ///
    /// # Errors
    ///
    /// When it is not a list of tables, or what `read` says.
    pub fn tables<T>(
        &self,
        key: &str,
        read: impl Fn(&Table<'_>) -> Result<T, TableError>,
    ) -> Result<Vec<T>, TableError> {
        let Some(value) = self.value(key) else {
            return Ok(Vec::new());
        };
        let list = value
            .as_array()
            .ok_or_else(|| self.wrong(key, "a list of tables", value))?;
        list.iter()
            .enumerate()
            .map(|(index, item)| {
                let item = item.get_ref();
                let inner = item
                    .as_table()
                    .ok_or_else(|| self.wrong(key, "a list of tables", item))?;
                let table = Table::new(inner, format!("{}[{index}]", self.path_of(key)));
                let result = read(&table)?;
                table.finish()?;
                Ok(result)
            })
            .collect()
    }

    /// An error for each key that was not asked for. They count as asked for from now on.
    pub fn take_unknown(&self) -> Vec<TableError> {
        let asked = self.asked.borrow().clone();
        let unknown = self.keys().into_iter().filter(|key| !asked.contains(*key));
        let errors = unknown.map(|key| self.unknown(key, &asked)).collect();
        let all = self.keys().into_iter().map(ToString::to_string);
        self.asked.borrow_mut().extend(all);
        errors
    }

    fn unknown(&self, key: &str, asked: &BTreeSet<String>) -> TableError {
        let near = asked.iter().find(|known| is_near(key, known));
        let all = || asked.iter().map(String::as_str).collect::<Vec<_>>();
        let hint = match near {
            Some(known) => format!("; is {known} meant?"),
            None if asked.len() <= KEYS_SHOWN => format!("; known are: {}", all().join(", ")),
            None => String::new(),
        };
        self.error(key, format!("is not a key that is known here{hint}"))
    }

    fn finish(&self) -> Result<(), TableError> {
        self.take_unknown().into_iter().next().map_or(Ok(()), Err)
    }
}

/// Whether one key may have been written for the other: one slip, or the same name with another
/// unit behind it.
fn is_near(key: &str, known: &str) -> bool {
    let stem = |name: &str| name.rsplit_once('_').map(|(stem, _)| stem.to_string());
    let same = |pairs: &mut dyn Iterator<Item = (char, char)>| {
        pairs.take_while(|(one, other)| one == other).count()
    };
    let front = same(&mut key.chars().zip(known.chars()));
    let back = same(&mut key.chars().rev().zip(known.chars().rev()));
    let longest = key.chars().count().max(known.chars().count());
    front + back + 1 >= longest || stem(key).is_some_and(|stem_| stem(known) == Some(stem_))
}

fn number_of(value: &DeValue<'_>) -> Option<f64> {
    let number: f64 = match (value.as_integer(), value.as_float()) {
        (Some(whole), _) => whole.as_str().parse().ok()?,
        (None, Some(float)) => float.as_str().parse().ok()?,
        (None, None) => return None,
    };
    number.is_finite().then_some(number)
}
