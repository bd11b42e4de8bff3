//! The preload library that takes back what no sync covered, compiled at its first use.

use std::{path::PathBuf, process::Command, sync::OnceLock};

/// The exit status of a process that it has ended.
pub(crate) const CUT: i32 = 99;

pub(crate) fn library() -> PathBuf {
    static LIBRARY: OnceLock<PathBuf> = OnceLock::new();
    LIBRARY.get_or_init(compile).clone()
}

fn compile() -> PathBuf {
    let source = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../tests/powerloss/powerloss.c"
    );
    let library = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("powerloss.so");
    let done = Command::new("cc")
        .args([
            "-O2", "-Wall", "-Wextra", "-Werror", "-shared", "-fPIC", "-o",
        ])
        .arg(&library)
        .args([source, "-lpthread"])
        .status()
        .expect("a C compiler is here");
    assert!(done.success(), "the preload library does not compile");
    library
}
