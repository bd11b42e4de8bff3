//! Which files there are, how long they are, and how they begin.

use std::{collections::BTreeSet, fs};

use super::{expect_none, read, sources, top};

/// The top of the project. Everything else has a place below.
const TOP: [&str; 14] = [
    ".cargo",
    ".ci",
    ".clippy.toml",
    ".deny.toml",
    ".gitignore",
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "bot",
    "demo-data",
    "deploy",
    "parser",
];
const TOP_REST: [&str; 2] = ["scheduler", "tests"];

/// Folders below `tests` that are test targets of their own, with a `main.rs`.
const TARGETS: [&str; 3] = ["crash", "measure", "peers"];

/// More than this in one file is more than one idea.
const LINES_MAX: usize = 500;

/// Files that are tables of data, and may be longer.
const TABLES: [&str; 3] = [
    "bot/src/roll/take/heads.rs",
    "bot/src/wording/key.rs",
    "tests/wording/speech.rs",
];

#[test]
fn the_top_folder_holds_exactly_these() {
    let found: BTreeSet<String> = fs::read_dir(top())
        .expect("the top folder can be read")
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| !matches!(name.as_str(), ".git" | "target"))
        .collect();
    let expected: BTreeSet<String> = TOP.iter().chain(&TOP_REST).map(|n| n.to_string()).collect();
    let extra = found
        .difference(&expected)
        .map(|name| format!("{name} is too many"));
    let gone = expected
        .difference(&found)
        .map(|name| format!("{name} is missing"));
    let breaches: Vec<String> = extra.chain(gone).collect();
    expect_none(
        &breaches,
        "the layout is fixed; put new files below one of the folders",
    );
}

#[test]
fn every_module_says_what_it_is_for() {
    let breaches: Vec<String> = sources()
        .iter()
        .filter(|source| source.is_rust())
        .filter(|source| {
            let first = source.text.lines().find(|line| !line.trim().is_empty());
            !first.is_some_and(|line| line.starts_with("//! ") && !line.contains("Placeholder"))
        })
        .map(|source| source.path.clone())
        .collect();
    expect_none(
        &breaches,
        "open the file with `//!`: what it is for, and what it deliberately leaves out",
    );
}

#[test]
fn no_file_is_longer_than_one_idea() {
    let breaches: Vec<String> = sources()
        .iter()
        .filter(|source| source.is_rust() && !TABLES.contains(&source.path.as_str()))
        .map(|source| (source, source.text.lines().count()))
        .filter(|(_, lines)| *lines > LINES_MAX)
        .map(|(source, lines)| format!("{}: {lines} lines", source.path))
        .collect();
    expect_none(
        &breaches,
        "split it by idea; a table of data goes on the list in tests/tidy/files.rs",
    );
}

/// A test file that nobody declares is never compiled and always green.
#[test]
fn every_test_file_is_declared() {
    let mut breaches = Vec::new();
    for source in sources().iter().filter(|source| source.is_rust()) {
        let Some(inside) = source.path.strip_prefix("tests/") else {
            continue;
        };
        // A package of its own; the next test looks after it.
        if inside.starts_with("fuzz/") {
            continue;
        }
        let name = inside.trim_end_matches(".rs");
        let (parent, module) = match name.rsplit_once('/') {
            Some((folder, module)) if !TARGETS.contains(&folder) => {
                (format!("tests/{folder}.rs"), module)
            }
            Some((folder, module)) => (format!("tests/{folder}/main.rs"), module),
            None => ("tests/main.rs".to_string(), name),
        };
        let declared = format!("mod {module};");
        let declares = |line: &str| line.trim().trim_start_matches("pub(crate) ") == declared;
        if module != "main" && !read(&parent).lines().any(declares) {
            breaches.push(format!("{} is not declared in {parent}", source.path));
        }
    }
    expect_none(&breaches, "add its `mod` line, in reading order");
}

/// A fuzz target that is not built, or never run, finds nothing; one without seeds finds little.
#[test]
fn every_fuzz_target_is_built_and_run() {
    let manifest = read("tests/fuzz/Cargo.toml");
    let runs = read("tests/all");
    let mut targets = 0;
    let mut breaches = Vec::new();
    for source in sources() {
        let Some(file) = source.path.strip_prefix("tests/fuzz/targets/") else {
            continue;
        };
        let name = file.trim_end_matches(".rs");
        targets += 1;
        if !manifest.contains(&format!("path = \"targets/{file}\"")) {
            breaches.push(format!("{name} is no [[bin]] of tests/fuzz/Cargo.toml"));
        }
        if !runs.contains(&format!("fuzz {name} ")) {
            breaches.push(format!("{name} is not run by tests/all"));
        }
        if read(&format!("tests/fuzz/words/{name}.txt"))
            .lines()
            .count()
            < 2
        {
            breaches.push(format!("{name} has no words"));
        }
        breaches.extend(seeds_that_are_too_much(name));
    }
    assert!(targets > 0, "the targets are gone");
    expect_none(&breaches, "see Fuzzing in DEVELOPERS.md");
}

fn seeds_that_are_too_much(target: &str) -> Vec<String> {
    const SEEDS_MAX: usize = 60;
    const BYTES_MAX: u64 = 400;
    let folder = top().join("tests/fuzz/corpus").join(target);
    let seeds: Vec<_> = fs::read_dir(folder)
        .into_iter()
        .flatten()
        .filter_map(Result::ok)
        .collect();
    let long = seeds
        .iter()
        .filter(|seed| seed.metadata().is_ok_and(|data| data.len() > BYTES_MAX))
        .map(|seed| format!("{} has more than {BYTES_MAX} bytes", seed.path().display()));
    let number = (!(1..=SEEDS_MAX).contains(&seeds.len()))
        .then(|| format!("{target} has {} seeds, not 1 to {SEEDS_MAX}", seeds.len()));
    long.chain(number).collect()
}
