//! The rules of the house that no compiler checks, each as a test that says what to do.
//!
//! Where a rule comes from and what else guards it is in DEVELOPERS.md, under "Invariants". Only
//! the files of the project are read: what is built, fetched or found by a fuzzer is not.

mod calls;
mod crates;
mod files;
mod floors;
mod imports;
mod kinds;
mod paths;
mod reach;
mod text;

use std::{
    fs,
    path::{Path, PathBuf},
};

/// Folders that no commit holds.
const NOT_OURS: [&str; 5] = [
    ".git",
    "target",
    "tests/.peers",
    "tests/fuzz/artifacts",
    "tests/fuzz/target",
];

/// A file of the project.
struct Source {
    /// Its path from the top, with `/`.
    path: String,
    /// Its text; files that are not UTF-8 have none here.
    text: String,
}

impl Source {
    /// The lines that are not wholly comment, with their numbers.
    fn code(&self) -> impl Iterator<Item = (usize, &str)> {
        let numbered = self.text.lines().enumerate();
        numbered
            .map(|(index, line)| (index + 1, line))
            .filter(|(_, line)| !line.trim_start().starts_with("//"))
    }

    fn is_rust(&self) -> bool {
        self.path.ends_with(".rs")
    }

    fn is_under(&self, folder: &str) -> bool {
        self.path
            .strip_prefix(folder)
            .is_some_and(|rest| rest.starts_with('/'))
    }
}

/// The top folder of the project.
fn top() -> PathBuf {
    let bot = Path::new(env!("CARGO_MANIFEST_DIR"));
    bot.parent().expect("bot is in the workspace").to_path_buf()
}

/// Every file of the project, by path.
fn sources() -> Vec<Source> {
    let top = top();
    let mut sources = Vec::new();
    let mut folders = vec![top.clone()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).expect("folders can be read") {
            let path = entry.expect("entries can be read").path();
            let inside = path.strip_prefix(&top).expect("it is inside");
            let inside = inside.to_string_lossy().replace('\\', "/");
            if NOT_OURS.contains(&inside.as_str()) {
                continue;
            }
            if path.is_dir() {
                folders.push(path);
            } else if let Ok(text) = fs::read_to_string(&path) {
                let path = inside;
                sources.push(Source { path, text });
            }
        }
    }
    sources.sort_by(|a, b| a.path.cmp(&b.path));
    sources
}

/// One file.
fn read(path: &str) -> String {
    fs::read_to_string(top().join(path)).unwrap_or_else(|error| format!("{path}: {error}"))
}

/// Fails with one line for each breach and what to do.
#[track_caller]
fn expect_none(breaches: &[String], what_to_do: &str) {
    assert!(
        breaches.is_empty(),
        "\n{}\n\nWhat to do: {what_to_do}\n",
        breaches.join("\n")
    );
}
