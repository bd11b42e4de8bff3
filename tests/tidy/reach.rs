//! What is published must be reached by somebody: a function, constant or type that no product code
//! uses is a thing that no person can ask for.
//!
//! A scan over names, on the careful side: a name that stands anywhere in the code of the three
//! crates, outside imports, tests and its own definition, is alive, whatever it stands for there.
//! Names that are made by macros are not seen.

use std::collections::HashMap;

use super::{Source, expect_none, sources};

/// Published for others than the product, and why.
const ALLOWED: [(&str, &str); 3] = [
    (
        "from_centre",
        "a fuzz target has no line to a message centre",
    ),
    ("from_modem", "a fuzz target has no modem"),
    (
        "rewritten",
        "tests and a fuzz target read records of every version",
    ),
];

#[test]
fn what_is_published_is_used() {
    let sources = sources();
    let product: Vec<Product> = sources
        .iter()
        .filter(|source| is_product(source))
        .map(Product::of)
        .collect();
    assert!(product.len() > 100, "the crates are there");
    let mut used: HashMap<&str, usize> = HashMap::new();
    for word in product.iter().flat_map(|file| words(&file.code)) {
        *used.entry(word).or_default() += 1;
    }
    let mut breaches = Vec::new();
    for file in &product {
        for (name, span) in definitions(&file.code) {
            let inside = words(span).filter(|word| *word == name).count() + own(&file.code, name);
            let is_used = used.get(name).is_some_and(|all| *all > inside);
            let is_allowed = ALLOWED.iter().any(|(allowed, _)| *allowed == name);
            if is_used == is_allowed {
                let what = if is_used {
                    "is used after all"
                } else {
                    "is used by nobody"
                };
                breaches.push(format!("{}: {name} {what}", file.path));
            }
        }
    }
    expect_none(
        &breaches,
        "wire it to a command, a page or an answer, or take it out with its tests; what only tests \
         need is under #[cfg(test)]",
    );
}

fn is_product(source: &Source) -> bool {
    let is_ours = ["parser/src", "scheduler/src", "bot/src"]
        .iter()
        .any(|folder| source.is_under(folder));
    let is_test = source.path.contains("/tests/") || source.path.ends_with("/tests.rs");
    source.is_rust() && is_ours && !is_test
}

struct Product {
    path: String,
    /// The code without comments, imports and what is built for tests only.
    code: String,
}

impl Product {
    fn of(source: &Source) -> Self {
        let mut code = String::new();
        let mut lines = source.code().map(|(_, line)| line);
        while let Some(line) = lines.next() {
            let bare = line.trim_start();
            if bare == "#[cfg(test)]" {
                skip_item(line, &mut lines);
            } else if bare.starts_with("use ") || bare.starts_with("pub use ") {
                let is_whole = line.trim_end().ends_with(';');
                let _ = is_whole || lines.any(|line| line.trim_end().ends_with(';'));
            } else {
                code.push_str(line);
                code.push('\n');
            }
        }
        let path = source.path.clone();
        Self { path, code }
    }
}

/// Passes over an item with its attributes: to its `;`, or the brace that stands below its start.
fn skip_item<'a>(first: &str, lines: &mut impl Iterator<Item = &'a str>) {
    let end = format!("{}}}", indent(first));
    let _ = lines.any(|line| {
        let is_short = indent(line) == indent(first) && line.trim_end().ends_with([';', '}']);
        line.starts_with(&end) || is_short
    });
}

fn indent(line: &str) -> &str {
    line.split_at(line.len() - line.trim_start().len()).0
}

/// How often a type is named where it only says what it can do itself.
fn own(code: &str, name: &str) -> usize {
    let heads = code.lines().filter(|line| line.starts_with("impl"));
    heads.flat_map(words).filter(|word| *word == name).count()
}

/// The public functions, constants and types of a file, each with the text of its definition.
fn definitions(code: &str) -> Vec<(&str, &str)> {
    const STARTS: [&str; 6] = [
        "pub fn ",
        "pub const fn ",
        "pub const ",
        "pub static ",
        "pub struct ",
        "pub enum ",
    ];
    let mut found = Vec::new();
    let mut from = 0;
    for line in code.split_inclusive('\n') {
        let bare = line.trim_start();
        if let Some(rest) = STARTS.iter().find_map(|start| bare.strip_prefix(start)) {
            let name = words(rest)
                .next()
                .filter(|name| !matches!(*name, "fn" | "async"));
            let rest_of_file = code.split_at(from).1;
            found.extend(name.map(|name| (name, definition(rest_of_file))));
        }
        from += line.len();
    }
    found
}

/// From the start of a definition to its end.
fn definition(text: &str) -> &str {
    let first = text.lines().next().unwrap_or("");
    let mut to = 0;
    for line in text.split_inclusive('\n') {
        to += line.len();
        let is_at_left = indent(line) == indent(first);
        if is_at_left && line.trim_end().ends_with(['}', ';']) {
            break;
        }
    }
    text.split_at(to).0
}

fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !(c.is_alphanumeric() || c == '_'))
        .filter(|word| !word.is_empty())
}

#[test]
fn a_name_in_an_import_a_test_or_itself_is_no_use() {
    let text = "use crate::x::{\n    alone,\n};\npub fn alone(n: u32) -> u32 {\n    alone(n)\n}\n\
                // alone\n#[cfg(test)]\nmod tests {\n    fn f() {\n        alone(1);\n    }\n}\n\
                pub const ONE: u32 = 1;\n#[cfg(test)]\nconst TWO: u32 = ONE;\nfn g() {}\n";
    let file = Product::of(&Source {
        path: "bot/src/x.rs".into(),
        text: text.into(),
    });
    assert_eq!(
        file.code,
        "pub fn alone(n: u32) -> u32 {\n    alone(n)\n}\npub const ONE: u32 = 1;\nfn g() {}\n"
    );
    let names: Vec<&str> = definitions(&file.code)
        .iter()
        .map(|found| found.0)
        .collect();
    assert_eq!(names, ["alone", "ONE"]);
    assert_eq!(definitions(&file.code)[0].1.lines().count(), 3);
    assert_eq!(words(&file.code).filter(|word| *word == "alone").count(), 2);
}
