//! Pages of the manual and completions of shells say what the command line takes.

use std::{
    collections::BTreeMap,
    env, fs,
    path::PathBuf,
    process::{Command, Stdio},
};

use clap_complete::Shell;

use super::top;

/// Everything that is made of the grammar of the command line, by its file.
fn made() -> BTreeMap<PathBuf, Vec<u8>> {
    let scratch = tempfile::tempdir().unwrap();
    clap_mangen::generate_to(budwood::commands::grammar(), &scratch).unwrap();
    let mut files = BTreeMap::new();
    for entry in fs::read_dir(&scratch).unwrap() {
        let path = entry.unwrap().path();
        let name = PathBuf::from("deploy/man").join(path.file_name().unwrap());
        files.insert(name, fs::read(path).unwrap());
    }
    for (shell, file) in [
        (Shell::Bash, "budwood.bash"),
        (Shell::Fish, "budwood.fish"),
        (Shell::Zsh, "_budwood"),
    ] {
        let mut text = Vec::new();
        clap_complete::generate(
            shell,
            &mut budwood::commands::grammar(),
            "budwood",
            &mut text,
        );
        files.insert(PathBuf::from("deploy/completions").join(file), text);
    }
    files
}

/// The files in `deploy/man` and `deploy/completions` are these. `BUDWOOD_UPDATE=1` writes them.
#[test]
fn the_manual_is_that_of_the_command_line() {
    let made = made();
    assert!(made.len() > 20, "{:?}", made.keys());
    for folder in ["deploy/man", "deploy/completions"] {
        let folder = top().join(folder);
        if env::var_os("BUDWOOD_UPDATE").is_some() {
            // It is not there yet, or it is old.
            let _ = fs::remove_dir_all(&folder);
            fs::create_dir_all(&folder).unwrap();
        }
    }
    for (file, expected) in &made {
        let path = top().join(file);
        if env::var_os("BUDWOOD_UPDATE").is_some() {
            fs::write(&path, expected).unwrap();
        }
        let found = fs::read(&path).unwrap_or_default();
        let is_so = found == *expected;
        assert!(is_so, "{}: BUDWOOD_UPDATE=1 writes it", file.display());
    }
    for folder in ["deploy/man", "deploy/completions"] {
        for entry in fs::read_dir(top().join(folder)).unwrap() {
            let file = PathBuf::from(folder).join(entry.unwrap().file_name());
            assert!(made.contains_key(&file), "{} is old", file.display());
        }
    }
}

/// The shell itself, with the file that is installed for it.
#[test]
fn a_shell_completes_commands_and_flags() {
    let completed = |words: &[&str]| {
        let last = words.last().unwrap();
        let script = format!(
            "source deploy/completions/budwood.bash; COMP_WORDS=({}); COMP_CWORD={}; \
             _budwood budwood '{last}' '{}'; echo \"${{COMPREPLY[*]}}\"",
            words
                .iter()
                .map(|word| format!("'{word}'"))
                .collect::<Vec<_>>()
                .join(" "),
            words.len() - 1,
            words[words.len() - 2],
        );
        let mut bash = Command::new("bash");
        let bash = bash.current_dir(top()).stderr(Stdio::inherit());
        let output = bash.args(["--norc", "-c", &script]).output().unwrap();
        String::from_utf8(output.stdout).unwrap().trim().to_owned()
    };
    assert_eq!(completed(&["budwood", "rest"]), "restore");
    assert_eq!(completed(&["budwood", "roll", "l"]), "load");
    assert_eq!(completed(&["budwood", "backup", "--k"]), "--keep");
}
