//! The list of what is in the program (CycloneDX), which `tests/release` gives away with it, against
//! what cargo itself says that is built in.

use std::{
    collections::BTreeSet,
    fs,
    path::Path,
    process::{Command, Stdio},
};

use serde_json::Value;

/// A library and its version.
type Library = (String, String);

/// The last commit, in a folder of its own: the tool writes beside the manifests.
fn copy(folder: &Path) {
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut archive = Command::new("git")
        .args(["archive", "HEAD"])
        .current_dir(top)
        .stdout(Stdio::piped())
        .spawn()
        .expect("git is here");
    let unpacked = Command::new("tar")
        .arg("-x")
        .current_dir(folder)
        .stdin(archive.stdout.take().expect("it was asked for"))
        .status();
    assert!(unpacked.expect("tar runs").success());
    assert!(archive.wait().expect("it ends").success());
}

fn listed(folder: &Path) -> BTreeSet<Library> {
    let peers = std::env::var("BUDWOOD_PEERS").expect("tests/all sets it");
    let mut list = Command::new(Path::new(&peers).join("cargo/bin/cargo-cyclonedx"));
    list.current_dir(folder)
        .args(["cyclonedx", "--format", "json", "--quiet"])
        .args(["--manifest-path", "bot/Cargo.toml"])
        .args(["--override-filename", "budwood.cdx"])
        .env("CARGO_NET_OFFLINE", "true");
    let done = list.output().expect("it runs; tests/all installs it");
    let said = String::from_utf8_lossy(&done.stderr);
    assert!(done.status.success(), "{said}");
    let list = fs::read(folder.join("bot/budwood.cdx.json")).expect("a list");
    let list: Value = serde_json::from_slice(&list).expect("JSON");
    assert_eq!(list["bomFormat"], "CycloneDX");
    assert_eq!(list["metadata"]["component"]["name"], "budwood");
    let components = list["components"].as_array().expect("a list");
    let word = |one: &Value, key: &str| one[key].as_str().expect("a word").to_owned();
    components
        .iter()
        .map(|one| (word(one, "name"), word(one, "version")))
        .collect()
}

/// What is compiled into the program for this machine, by cargo.
fn built_in(folder: &Path) -> BTreeSet<Library> {
    let tree = Command::new(env!("CARGO"))
        .args(["tree", "--locked", "--offline", "-p", "budwood"])
        .args(["-e", "normal", "--prefix", "none", "--format", "{p}"])
        .current_dir(folder)
        .output()
        .expect("cargo runs");
    let tree = String::from_utf8(tree.stdout).expect("text");
    let library = |line: &str| {
        let mut words = line.split_whitespace();
        let (name, version) = (words.next()?, words.next()?);
        Some((name.to_owned(), version.trim_start_matches('v').to_owned()))
    };
    tree.lines().filter_map(library).collect()
}

#[test]
fn the_list_of_libraries_names_all_that_is_built_in_and_nothing_else() {
    let folder = tempfile::tempdir().expect("a folder");
    copy(folder.path());
    let (listed, built_in) = (listed(folder.path()), built_in(folder.path()));
    assert!(built_in.len() > 100, "{}", built_in.len());
    let own = |(name, _): &&Library| name == "budwood";
    let missing: Vec<_> = built_in
        .difference(&listed)
        .filter(|one| !own(one))
        .collect();
    assert!(missing.is_empty(), "not listed: {missing:?}");
    // Beside them only what builds them, from the same lock.
    let lock = fs::read_to_string(folder.path().join("Cargo.lock")).expect("a lock");
    let is_locked = |(name, version): &&Library| {
        lock.contains(&format!("name = \"{name}\"\nversion = \"{version}\""))
    };
    let strange: Vec<_> = listed.iter().filter(|one| !is_locked(one)).collect();
    assert!(strange.is_empty(), "not in the lock: {strange:?}");
}
