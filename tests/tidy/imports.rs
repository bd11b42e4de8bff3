//! Which file takes something from which: read from `use` lines and from paths in the code.
//!
//! Paths are followed as the compiler does for `crate`, `self`, `super` and modules declared in the
//! file; everything else belongs to another crate. Test code is left out.

use std::collections::{BTreeMap, BTreeSet};

use super::Source;

/// The path of a module within its crate; empty for the crate's own file.
pub(super) type Module = Vec<String>;

/// Each module of a crate, and those from which it takes something.
pub(super) type Imports = BTreeMap<Module, BTreeSet<Module>>;

/// Reads the imports of the crate whose sources lie below this folder, such as `bot/src`.
pub(super) fn imports(sources: &[Source], folder: &str) -> Imports {
    let files: Vec<(Module, &Source)> = sources
        .iter()
        .filter(|source| source.is_rust() && source.is_under(folder))
        .filter_map(|source| Some((module(&source.path, folder)?, source)))
        .collect();
    let modules: BTreeSet<Module> = files.iter().map(|(module, _)| module.clone()).collect();
    files
        .iter()
        .map(|(module, source)| (module.clone(), taken(module, &source.text, &modules)))
        .collect()
}

/// The module of a file; none for tests and for the program's own file.
fn module(path: &str, folder: &str) -> Option<Module> {
    let inside = path.strip_prefix(folder)?.trim_start_matches('/');
    let names: Module = inside
        .strip_suffix(".rs")?
        .split('/')
        .map(str::to_owned)
        .collect();
    let is_test = names.iter().any(|name| name == "tests");
    match names.last().map(String::as_str) {
        Some("main") => None,
        Some("lib") => Some(Vec::new()),
        _ => (!is_test).then_some(names),
    }
}

/// The modules from which this file takes something, itself left out.
fn taken(from: &Module, text: &str, modules: &BTreeSet<Module>) -> BTreeSet<Module> {
    let code = without_comments(text.split("#[cfg(test)]\nmod tests {").next().unwrap_or(""));
    let children: BTreeSet<&str> = modules
        .iter()
        .filter(|module| module.len() == from.len() + 1 && module.starts_with(from))
        .filter_map(|module| module.last().map(String::as_str))
        .collect();
    let mut paths = used(&code);
    paths.extend(inline(&code));
    paths
        .iter()
        .filter_map(|path| absolute(from, path, &children))
        .filter_map(|path| owner(&path, modules))
        .filter(|owner| owner != from)
        .collect()
}

fn without_comments(text: &str) -> String {
    let lines = text.lines().map(|line| match line.split_once("//") {
        Some((code, _)) => code,
        None => line,
    });
    lines.collect::<Vec<_>>().join("\n")
}

/// The paths of all `use` lines, taken apart at their braces.
fn used(code: &str) -> Vec<Vec<String>> {
    let mut paths = Vec::new();
    for line in code.split("use ").skip(1) {
        let tree: String = line
            .split(';')
            .next()
            .unwrap_or("")
            .split_whitespace()
            .collect();
        spread(&[], &tree, &mut paths);
    }
    paths
}

/// `a::{b, c::d}` after `before` becomes `before::a::b` and `before::a::c::d`.
fn spread(before: &[String], tree: &str, paths: &mut Vec<Vec<String>>) {
    let Some((head, rest)) = tree.split_once('{') else {
        paths.push([before, &names(tree)].concat());
        return;
    };
    let before = [before, &names(head)].concat();
    let mut depth = 0_u32;
    let mut begin = 0;
    for (at, sign) in rest.char_indices() {
        match sign {
            '{' => depth += 1,
            '}' if depth == 0 => {
                spread(&before, &rest[begin..at], paths);
                return;
            }
            '}' => depth -= 1,
            ',' if depth == 0 => {
                spread(&before, &rest[begin..at], paths);
                begin = at + 1;
            }
            _ => {}
        }
    }
}

fn names(path: &str) -> Vec<String> {
    let names = path.split("::").filter(|name| !name.is_empty());
    names.map(str::to_owned).collect()
}

/// Paths in the code itself, such as `super::job::late(…)`.
fn inline(code: &str) -> Vec<Vec<String>> {
    let is_path = |sign: char| sign.is_alphanumeric() || sign == '_' || sign == ':';
    code.split(|sign| !is_path(sign))
        .filter(|word| word.contains("::"))
        .map(names)
        .collect()
}

fn absolute(from: &Module, path: &[String], children: &BTreeSet<&str>) -> Option<Module> {
    let first = path.first()?.as_str();
    let rest = path.get(1..)?;
    match first {
        "crate" => Some(rest.to_vec()),
        "self" => Some([from.as_slice(), rest].concat()),
        "super" => {
            let ups = path.iter().take_while(|name| *name == "super").count();
            let kept = from.get(..from.len().checked_sub(ups)?)?;
            Some([kept, path.get(ups..)?].concat())
        }
        _ if children.contains(first) => Some([from.as_slice(), path].concat()),
        _ => None,
    }
}

/// The longest beginning of a path that is a module.
fn owner(path: &[String], modules: &BTreeSet<Module>) -> Option<Module> {
    (1..=path.len())
        .rev()
        .map(|length| path[..length].to_vec())
        .find(|module| modules.contains(module))
}

#[test]
fn imports_are_followed_as_the_compiler_does() {
    let file = |path: &str, text: &str| Source {
        path: path.to_owned(),
        text: text.to_owned(),
    };
    let sources = [
        file("x/src/lib.rs", "//! A crate.\npub mod a;\npub mod b;\n"),
        file(
            "x/src/a.rs",
            "mod inner;\nuse crate::{b::{self, Thing}, chrono};\nfn f() { inner::g(); }\n",
        ),
        file(
            "x/src/a/inner.rs",
            "pub fn g() { super::super::b::h() } // crate::a\n",
        ),
        file(
            "x/src/b.rs",
            "use std::fmt;\n#[cfg(test)]\nmod tests {\n    use crate::a;\n}\n",
        ),
    ];
    let found = imports(&sources, "x/src");
    let of = |module: &str| {
        let taken = found[&names(module)].iter().map(|module| module.join("::"));
        taken.collect::<Vec<_>>().join(" ")
    };
    assert_eq!(of("a"), "a::inner b");
    assert_eq!(of("a::inner"), "b");
    assert_eq!(of("b"), "");
}
