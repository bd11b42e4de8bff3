//! The texts of pages: in every language, with the same values, and each is asked for.

use std::{
    collections::{BTreeMap, BTreeSet},
    fs,
    path::{Path, PathBuf},
};

fn bot() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The texts of a file by their names.
fn texts(language: &str) -> BTreeMap<String, String> {
    let file = bot().join(format!("texts/page/{language}.ftl"));
    let file = fs::read_to_string(file).expect("a file of texts");
    let lines = file.lines().filter(|line| !line.starts_with('#'));
    let pairs = lines.filter_map(|line| line.split_once(" = "));
    pairs
        .map(|(name, text)| (name.to_owned(), text.to_owned()))
        .collect()
}

fn values(text: &str) -> BTreeSet<String> {
    let parts = text.split("{ $").skip(1);
    let names = parts.filter_map(|part| part.split([' ', '}']).next());
    names.map(str::to_owned).collect()
}

/// Every file below a folder.
fn files(folder: PathBuf, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            files(path, found);
        } else {
            found.push(path);
        }
    }
}

/// The names that code and pages ask for.
fn asked() -> BTreeSet<String> {
    let mut found = Vec::new();
    files(bot().join("src"), &mut found);
    files(bot().join("pages"), &mut found);
    let mut asked = BTreeSet::new();
    for file in found {
        let Ok(text) = fs::read_to_string(&file) else {
            continue;
        };
        for part in text.split("\"page-").skip(1) {
            let name: String = part.chars().take_while(|c| *c != '"').collect();
            asked.insert(format!("page-{name}"));
        }
    }
    asked
}

#[test]
fn every_language_has_every_text_that_pages_ask_for_and_no_other() {
    let asked = asked();
    assert!(asked.len() > 150, "{}", asked.len());
    let english = texts("en");
    for language in ["en", "fr", "id", "pt", "th", "vi"] {
        let texts = texts(language);
        let written: BTreeSet<String> = texts.keys().cloned().collect();
        let missing: Vec<_> = asked.difference(&written).collect();
        assert!(missing.is_empty(), "{language} lacks {missing:?}");
        let unknown: Vec<_> = written.difference(&asked).collect();
        assert!(unknown.is_empty(), "{language} has in vain {unknown:?}");
        for (name, text) in &texts {
            assert_eq!(values(text), values(&english[name]), "{language}: {name}");
        }
    }
}

/// A file that was copied and not put into its language says the same as another.
#[test]
fn no_language_is_another_one() {
    let english = texts("en");
    for language in ["fr", "id", "pt", "th", "vi"] {
        let texts = texts(language);
        let same = texts
            .iter()
            .filter(|(name, text)| english.get(*name) == Some(text));
        let same: Vec<&String> = same.map(|(name, _)| name).collect();
        assert!(same.len() < 20, "{language}: {same:?}");
    }
}
