//! The files of texts as they are written, and the code that asks for them.

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    path::{Path, PathBuf},
};

use budwood::wording::Key;

/// Texts of one file by name, values as written; the longer form of a text as "name.long".
pub(super) fn texts(file: &str) -> BTreeMap<String, String> {
    let mut texts: BTreeMap<String, String> = BTreeMap::new();
    let mut last = String::new();
    for line in file.lines().filter(|line| !line.starts_with('#')) {
        let line = line.strip_prefix("    .").map_or_else(
            || line.to_owned(),
            |long| format!("{}.{long}", short_form(&last)),
        );
        match line.split_once(" = ").filter(|_| !line.starts_with(' ')) {
            Some((key, value)) => {
                key.clone_into(&mut last);
                assert!(
                    texts.insert(last.clone(), value.to_owned()).is_none(),
                    "{key} is there twice"
                );
            }
            None if line.trim().is_empty() => {}
            None => {
                let text = texts.get_mut(&last).expect("a text goes on after its name");
                text.push(' ');
                text.push_str(line.trim());
            }
        }
    }
    texts
}

/// The name of a text without that of its longer form.
pub(super) fn short_form(key: &str) -> &str {
    key.split('.').next().unwrap_or(key)
}

/// Every file of texts, by language.
pub(super) fn files() -> Vec<(String, String)> {
    let folder = bot().join("texts");
    let mut files: Vec<(String, String)> = fs::read_dir(folder)
        .expect("a folder of texts")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.is_file())
        .map(|path| {
            let language = path.file_stem().expect("a name").to_string_lossy();
            let text = fs::read_to_string(&path).expect("a text file");
            (language.into_owned(), text)
        })
        .collect();
    files.sort();
    files
}

/// The letters of a text that are its own: without the values put into it.
pub(super) fn own_letters(text: &str) -> String {
    let mut own = String::new();
    let mut depth = 0_u32;
    for c in text.chars() {
        match c {
            '{' => depth += 1,
            '}' => {
                depth -= 1;
                own.push(' ');
            }
            c if depth == 0 => own.push(c),
            _ => {}
        }
    }
    own
}

/// The values that a text names.
pub(super) fn values(text: &str) -> BTreeSet<String> {
    text.split("{ $")
        .skip(1)
        .map(|rest| {
            rest.chars()
                .take_while(|c| c.is_ascii_lowercase() || *c == '_')
                .collect()
        })
        .collect()
}

fn bot() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).to_path_buf()
}

/// The key with this name.
#[track_caller]
pub(super) fn key(name: &str) -> Key {
    let key = Key::all().find(|key| key.name() == name);
    key.unwrap_or_else(|| panic!("no text is called {name}"))
}

/// The code that may ask for a text, all in one: everything but the table of keys.
pub(super) fn code() -> String {
    let mut code = String::new();
    let mut folders = vec![bot().join("src")];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).expect("a folder of code") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.push(path);
            } else if !path.ends_with("wording/key.rs") {
                code.push_str(&fs::read_to_string(path).expect("a code file"));
            }
        }
    }
    code
}
