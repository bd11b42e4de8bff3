//! Files that pages name are there: a map with a road that is gone leads nobody home.

use super::{expect_none, sources};

/// Endings of our files.
const ENDINGS: [&str; 8] = [
    ".rs", ".toml", ".md", ".txt", ".csv", ".ftl", ".jsonl", ".service",
];

/// Where our files lie.
const FOLDERS: [&str; 9] = [
    ".cargo/",
    ".ci/",
    "bot/",
    "demo-data/",
    "deploy/",
    "parser/",
    "scheduler/",
    "tests/",
    "src/",
];

/// Named, and in no commit: what a run or a person makes.
const MADE: [&str; 4] = [
    "tests/.peers/",
    "languages/xx.toml",
    "list.csv",
    "records.jsonl",
];

#[test]
fn the_files_that_pages_name_are_there() {
    let sources = sources();
    let pages = sources.iter().filter(|source| source.path.ends_with(".md"));
    let mut names = 0;
    let mut breaches = Vec::new();
    for page in pages {
        for name in named(&page.text) {
            names += 1;
            if !sources.iter().any(|source| is_at(&source.path, name)) {
                breaches.push(format!("{} names {name}", page.path));
            }
        }
    }
    assert!(names > 50, "{names} names are found");
    expect_none(
        &breaches,
        "name the file where it is now, by its path from the top",
    );
}

/// Names of files of ours between backticks.
fn named(page: &str) -> impl Iterator<Item = &str> {
    let shown = page.split("```").step_by(2);
    let marked = shown.flat_map(|prose| prose.split('`').skip(1).step_by(2));
    marked.filter(|name| {
        let is_word = !name.contains([' ', '<', ':']) && !name.starts_with('/');
        let is_file = ENDINGS.iter().any(|ending| name.ends_with(ending));
        let is_path = FOLDERS.iter().any(|folder| name.starts_with(folder));
        is_word && (is_file || is_path) && !MADE.iter().any(|made| name.starts_with(made))
    })
}

/// Whether a file is the one that is named, or lies in the folder that is. A `*` is any name.
fn is_at(path: &str, name: &str) -> bool {
    if let Some((before, after)) = name.split_once('*') {
        let rest = path.strip_prefix(before);
        return rest.is_some_and(|rest| rest.ends_with(after) && !rest.contains('/'));
    }
    let name = name.trim_end_matches('/');
    let rest = path.strip_prefix(name);
    rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
}

#[test]
fn a_name_is_seen_and_found() {
    let page = "`src/a.rs` and `deploy`, `bot/src/`, `b.toml`\n```sh\n`x.rs`\n```\n\
                `GET /health`, `https://x.md`, `Asia/Jakarta`, `tests/.peers/x`, `parser/*.txt`";
    let found: Vec<&str> = named(page).collect();
    assert_eq!(found, ["src/a.rs", "bot/src/", "b.toml", "parser/*.txt"]);
    assert!(is_at("bot/src/main.rs", "bot/src/"));
    assert!(is_at("bot/src/main.rs", "bot/src/*.rs"));
    assert!(!is_at("bot/src/store/sled.rs", "bot/src/*.rs"));
    assert!(!is_at("bot/src2/main.rs", "bot/src"));
    assert!(!is_at("bot/src/main.rs", "main.rs"));
}
