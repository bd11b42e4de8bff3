//! What the crates depend on, and from where.

use std::process::Command;

use super::{expect_none, read, top};

/// Licences under which a library may be used here without asking anybody.
const LICENCES: [&str; 12] = [
    "MIT",
    "MIT-0",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

/// Kinds of library that the project does without: frameworks for tests, and error reports for
/// terminals. Our readers have 160 characters.
const NOT_WANTED: [&str; 6] = [
    "rstest", "mockall", "mockito", "miette", "figment", "config",
];

/// One line of `cargo tree` for each package.
fn tree(arguments: &[&str]) -> Vec<String> {
    let output = Command::new(env!("CARGO"))
        .args(["tree", "--offline", "--prefix", "none"])
        .args(arguments)
        .current_dir(top())
        .output()
        .expect("cargo runs");
    let problem = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "cargo tree failed: {problem}");
    let text = String::from_utf8_lossy(&output.stdout);
    let mut lines: Vec<String> = text
        .lines()
        .map(|line| line.trim_end_matches(" (*)").to_string())
        .filter(|line| !line.is_empty())
        .collect();
    lines.sort();
    lines.dedup();
    lines
}

#[track_caller]
fn check_direct(package: &str, expected: &[&str]) {
    let found: Vec<String> = tree(&["-p", package, "-e", "normal", "--depth", "1"])
        .iter()
        .filter_map(|line| line.split(' ').next().map(str::to_string))
        .filter(|name| name != package)
        .collect();
    assert_eq!(
        found, expected,
        "the direct dependencies of {package} changed. A new one for a core crate needs a \
         reason in DEVELOPERS.md; then change this list."
    );
}

#[test]
fn the_parser_has_exactly_these_dependencies() {
    check_direct(
        "budwood-parser",
        &[
            "hashbrown",
            "libm",
            "nom",
            "smallvec",
            "thiserror",
            "toml",
            "unicode-normalization",
        ],
    );
}

#[test]
fn the_scheduler_has_exactly_these_dependencies() {
    check_direct(
        "budwood-scheduler",
        &[
            "budwood-parser",
            "chrono",
            "libm",
            "statrs",
            "thiserror",
            "toml",
        ],
    );
}

/// Cargo refuses a circle of crates, but not one through the dependencies of tests.
#[test]
fn the_core_crates_have_no_test_dependency_on_ours() {
    let mut breaches = Vec::new();
    for name in ["parser", "scheduler"] {
        let manifest = read(&format!("{name}/Cargo.toml"));
        let tests = manifest.split("[dev-dependencies]").nth(1).unwrap_or("");
        let tests = tests.split("\n[").next().unwrap_or("");
        for line in tests.lines() {
            if line.starts_with("budwood") || line.contains("path") {
                breaches.push(format!("{name}/Cargo.toml: {line}"));
            }
        }
    }
    expect_none(
        &breaches,
        "move that test to tests/, which may use all crates",
    );
}

#[test]
fn the_core_crates_know_no_storage_format_and_no_operating_system() {
    let mut breaches = Vec::new();
    for name in ["parser", "scheduler"] {
        let manifest = read(&format!("{name}/Cargo.toml"));
        // Tests may read what others write.
        let ships = manifest.split("[dev-dependencies]").next();
        if ships.is_some_and(|ships| ships.contains("serde")) {
            breaches.push(format!("{name}/Cargo.toml names serde"));
        }
        let crate_root = read(&format!("{name}/src/lib.rs"));
        if !crate_root.lines().any(|line| line == "#![no_std]") {
            breaches.push(format!("{name}/src/lib.rs has no #![no_std]"));
        }
    }
    expect_none(
        &breaches,
        "records are formed in bot/src/store/record; the core crates stay without std and serde",
    );
}

#[test]
fn every_library_has_a_licence_that_suits() {
    let all = tree(&["--workspace", "-e", "normal,build", "--format", "{p}|{l}"]);
    assert!(all.len() > 100, "the list of libraries is there");
    let breaches: Vec<String> = all
        .iter()
        .filter_map(|line| line.split_once('|'))
        .filter(|(_, licence)| !suits(licence))
        .map(|(package, licence)| format!("{package}: {licence:?}"))
        .collect();
    expect_none(
        &breaches,
        "read the licence; add it to the list here and in .deny.toml, or use another library",
    );
}

/// Whether an SPDX expression can be met from the list. Old expressions have `/` for `OR`.
fn suits(expression: &str) -> bool {
    let plain = expression.replace(['(', ')'], "").replace('/', " OR ");
    // Taken apart without brackets, `A AND (B OR C)` would let C stand alone; so every name in a
    // mixed expression must suit.
    let mixed = plain.contains(" AND ");
    let mut names = plain
        .split(" AND ")
        .flat_map(|part| part.split(" OR "))
        .map(str::trim);
    let on_list = |name: &str| LICENCES.contains(&name);
    if mixed {
        names.all(on_list)
    } else {
        names.any(on_list)
    }
}

#[test]
fn licence_expressions_are_read_with_care() {
    // Expressions as in the SPDX specification, annex "SPDX license expressions".
    for expression in [
        "MIT",
        "Apache-2.0 OR GPL-2.0-only",
        "MIT/Apache-2.0",
        "(MIT OR ISC) AND Zlib",
    ] {
        assert!(suits(expression), "{expression}");
    }
    for expression in [
        "",
        "GPL-2.0-only",
        "MIT AND GPL-2.0-only",
        "MIT AND (ISC OR GPL-2.0-only)",
    ] {
        assert!(!suits(expression), "{expression}");
    }
}

#[test]
fn every_library_comes_from_the_registry_and_is_wanted() {
    let mut breaches = Vec::new();
    for package in read("Cargo.lock").split("[[package]]").skip(1) {
        let value = |key: &str| {
            let line = package.lines().find(|line| line.starts_with(key));
            line.and_then(|line| line.split('"').nth(1)).unwrap_or("")
        };
        let (name, source) = (value("name = "), value("source = "));
        let ours = name == "budwood" || name.starts_with("budwood-");
        if !ours && !source.starts_with("registry+") {
            breaches.push(format!("{name} comes from {source:?}"));
        }
    }
    let manifest = read("Cargo.toml");
    let table = manifest
        .split("[workspace.dependencies]")
        .nth(1)
        .unwrap_or("");
    let table = table.split("\n[").next().unwrap_or("");
    let names = table
        .lines()
        .filter_map(|line| line.split(['=', ' ', '.']).next());
    for name in names.filter(|name| NOT_WANTED.contains(name)) {
        breaches.push(format!("Cargo.toml asks for {name}"));
    }
    expect_none(
        &breaches,
        "use a published version, and a library that is not on the list",
    );
}

/// Versions are named once, with their reasons, in the manifest at the top.
#[test]
fn versions_are_named_in_one_place() {
    let mut breaches = Vec::new();
    for name in ["parser", "scheduler", "bot"] {
        let manifest = read(&format!("{name}/Cargo.toml"));
        let dependencies = manifest.split("dependencies]").skip(1);
        for line in dependencies.flat_map(|part| part.split("\n[").next().unwrap_or("").lines()) {
            if line.contains('=') && !line.starts_with('#') && !line.contains("workspace = true") {
                breaches.push(format!("{name}/Cargo.toml: {line}"));
            }
        }
        if !manifest.contains("[lints]\nworkspace = true") {
            breaches.push(format!(
                "{name}/Cargo.toml does not take the workspace's lints"
            ));
        }
    }
    expect_none(
        &breaches,
        "write `name.workspace = true` and put the version in Cargo.toml",
    );
}
