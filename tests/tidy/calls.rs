//! Who calls whom in the engine: methods of one type in many files make no circle of files, and
//! nothing that only looks calls what changes.
//!
//! A `use` line does not show that a method of another file is called on `self`, so calls are read
//! from the code: on `self`, and on a view however it was come by.

use std::collections::{BTreeMap, BTreeSet};

use super::{Source, expect_none, sources};

/// The rooms whose calls are read.
const ENGINE: &str = "bot/src/engine";

/// Rooms that only look, and the one that they may not call.
const BELOW: [&str; 2] = ["bot/src/engine/questions/", "bot/src/engine/memory/"];
const DEEDS: &str = "bot/src/engine/deeds/";

/// A type and one of its methods.
type Method = (String, String);

/// A file of the engine: the methods that it defines and those that it calls.
struct File {
    path: String,
    defines: BTreeSet<Method>,
    calls: BTreeSet<Method>,
}

/// Reads the methods of a file as rustfmt leaves them: what begins a line with `impl`, or with a
/// function of no type, ends at the next line that begins with `}`.
fn file(source: &Source) -> File {
    let mut read = File {
        path: source.path.clone(),
        defines: BTreeSet::new(),
        calls: BTreeSet::new(),
    };
    let mut of: Option<String> = None;
    let mut body = String::new();
    for (_, line) in source.code() {
        if line.starts_with("#[cfg(test)]") {
            break;
        }
        if let Some(header) = line.strip_prefix("impl") {
            of = Some(type_of(header));
        } else if of.is_none() && line.contains("fn ") {
            of = Some(String::new());
        } else if line.starts_with('}') {
            if let Some(of) = of.take() {
                read.calls.extend(calls(&of, &body));
            }
            body.clear();
        } else if let Some(of) = &of {
            let signature = line.trim_start();
            let name = signature.split_once("fn ").map(|(_, rest)| word(rest));
            let is_method = line.starts_with("    ") && !line.starts_with("     ");
            if let Some(name) = name.filter(|_| is_method && !of.is_empty()) {
                read.defines.insert((of.clone(), name.to_owned()));
            }
            body.push_str(signature);
        }
    }
    read
}

/// The type that an `impl` is for: `<'a> View<'a> {`, `Display for Outcome {`.
fn type_of(header: &str) -> String {
    let header = header.rsplit(" for ").next().unwrap_or(header);
    let name = if header.starts_with('<') {
        header.split_once("> ").map_or(header, |(_, name)| name)
    } else {
        header
    };
    word(name.trim_start()).to_owned()
}

fn word(text: &str) -> &str {
    let end = text.find(|c: char| !c.is_alphanumeric() && c != '_');
    &text[..end.unwrap_or(text.len())]
}

/// The methods that the body of an `impl` calls, lines joined.
fn calls(of: &str, body: &str) -> BTreeSet<Method> {
    let ways = [
        ("self.", of),
        ("self.view().", "View"),
        ("view.", "View"),
        ("Self::", of),
    ];
    let mut found = BTreeSet::new();
    for (way, of) in ways {
        for (at, _) in body.match_indices(way) {
            let before = body[..at].chars().next_back();
            if before.is_some_and(|c| c.is_alphanumeric() || c == '_' || c == '.') {
                continue;
            }
            let name = word(&body[at + way.len()..]);
            found.insert((of.to_owned(), name.to_owned()));
        }
    }
    found
}

/// From each file to those whose methods it calls, with one such method.
fn arrows(files: &[File]) -> BTreeMap<&str, BTreeMap<&str, &str>> {
    let mut owners: BTreeMap<&Method, &str> = BTreeMap::new();
    for file in files {
        owners.extend(
            file.defines
                .iter()
                .map(|method| (method, file.path.as_str())),
        );
    }
    let mut arrows: BTreeMap<&str, BTreeMap<&str, &str>> = BTreeMap::new();
    for file in files {
        let from = arrows.entry(&file.path).or_default();
        for method in &file.calls {
            if let Some(owner) = owners.get(method).filter(|owner| **owner != file.path) {
                from.insert(owner, &method.1);
            }
        }
    }
    arrows
}

/// Takes away files that call no other until none is left; what stays lies on a circle or leads
/// to one.
fn knot<'a>(arrows: &BTreeMap<&'a str, BTreeMap<&'a str, &'a str>>) -> Vec<String> {
    let mut left: BTreeMap<&str, BTreeMap<&str, &str>> = arrows.clone();
    loop {
        let ends: Vec<&str> = left
            .iter()
            .filter(|(_, to)| !to.keys().any(|to| left.contains_key(to)))
            .map(|(from, _)| *from)
            .collect();
        if ends.is_empty() {
            break;
        }
        left.retain(|from, _| !ends.contains(from));
    }
    let mut told = Vec::new();
    for (from, to) in &left {
        let inside = to.iter().filter(|(to, _)| left.contains_key(*to));
        told.extend(inside.map(|(to, method)| format!("{from} calls {method} of {to}")));
    }
    told
}

fn engine() -> Vec<File> {
    let inside = |source: &&Source| source.is_rust() && source.is_under(ENGINE);
    let files: Vec<File> = sources().iter().filter(inside).map(file).collect();
    let methods: usize = files.iter().map(|file| file.defines.len()).sum();
    assert!(methods > 100, "the engine's methods are not found any more");
    files
}

#[test]
fn methods_of_the_engine_make_no_circle_of_files() {
    let files = engine();
    let knot = knot(&arrows(&files));
    expect_none(
        &knot,
        "move the method that both need into a file below both",
    );
}

#[test]
fn what_only_looks_calls_no_deed() {
    let files = engine();
    let mut breaches = Vec::new();
    for (from, to) in arrows(&files) {
        let looks = BELOW.iter().any(|below| from.starts_with(below));
        let deeds = to.iter().filter(|(to, _)| looks && to.starts_with(DEEDS));
        breaches.extend(deeds.map(|(to, method)| format!("{from} calls {method} of {to}")));
    }
    for file in &files {
        let steps = file.defines.iter().any(|(of, _)| of == "Step");
        let looks = BELOW.iter().any(|below| file.path.starts_with(below));
        if steps && looks {
            breaches.push(format!("{} has methods of Step", file.path));
        }
    }
    expect_none(
        &breaches,
        "a question takes a View; what changes something is a deed",
    );
}

#[test]
fn a_knot_of_calls_is_seen() {
    let source = |path: &str, text: &str| {
        file(&Source {
            path: path.to_owned(),
            text: text.to_owned(),
        })
    };
    let one = "impl<'a> View<'a> {\n    pub(crate) fn one(self) {\n        self.two()\n    }\n}\n";
    let two =
        "impl View<'_> {\n    fn two(self) {\n        self\n            .three();\n    }\n}\n";
    let three = "impl Step<'_> {\n    fn four(&mut self) {\n        let view = self.view();\n        view.one();\n    }\n}\n\nimpl View<'_> {\n    fn three(self) {}\n}\n";
    let tied = [
        source("one", one),
        source("two", two),
        source("three", three),
    ];
    let expected = [
        "one calls two of two",
        "three calls one of one",
        "two calls three of three",
    ];
    assert_eq!(knot(&arrows(&tied)), expected);
    let straight = [source("one", one), source("two", two)];
    assert!(knot(&arrows(&straight)).is_empty());
}
