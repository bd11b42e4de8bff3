//! Runs a script of this folder: JSON lines in, JSON lines out.

use std::{
    env,
    io::Write,
    path::{Path, PathBuf},
    process::{Command, Stdio},
    thread,
};

use serde_json::Value;

/// The variable that names the folder into which `tests/all` installed the peers.
const FOLDER: &str = "BUDWOOD_PEERS";

/// Scripts whose peer is a package of the system, which has its own Python.
const OF_THE_SYSTEM: [&str; 1] = ["pdu.py"];

/// Asks the peer behind a script, and gives its answers in order.
///
/// A peer that is not there is a failure, never a check that is left out.
pub(crate) fn ask(script: &str, questions: &[Value]) -> Vec<Value> {
    let mut child = command(script)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the peer's interpreter starts; run tests/all, which installs it");
    let mut lines = String::new();
    for question in questions {
        lines += &question.to_string();
        lines.push('\n');
    }
    let mut input = child.stdin.take().expect("it was asked for");
    // Written from beside, since a script may answer before it has read everything.
    let writer = thread::spawn(move || input.write_all(lines.as_bytes()));
    let output = child.wait_with_output().expect("the peer ends");
    let problem = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{script} failed:\n{problem}");
    writer
        .join()
        .expect("writing does not panic")
        .expect("the peer reads all questions");
    let text = String::from_utf8(output.stdout).expect("peers answer in UTF-8");
    text.lines()
        .map(|line| serde_json::from_str(line).expect("peers answer in JSON lines"))
        .collect()
}

/// The command that runs a script with its peer.
pub(crate) fn command(script: &str) -> Command {
    let peers = folder();
    let path = self::script(script);
    let mut command = if OF_THE_SYSTEM.contains(&script) {
        Command::new("/usr/bin/python3")
    } else if script.ends_with(".py") {
        Command::new(peers.join("python/bin/python"))
    } else {
        let mut node = Command::new("node");
        node.env("NODE_PATH", peers.join("node/node_modules"));
        node
    };
    command
        .arg(path)
        .env("PYTHONIOENCODING", "utf-8")
        // A script of ours must not stand in for a module of the same name.
        .env("PYTHONSAFEPATH", "1");
    command
}

/// Where a script lies.
pub(crate) fn script(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../tests/peers")
        .join(name)
}

fn folder() -> PathBuf {
    let folder = env::var_os(FOLDER).expect(
        "BUDWOOD_PEERS is not set: it names the folder of the outside peers. Run tests/all, which \
         installs them into tests/.peers and sets it",
    );
    let folder = PathBuf::from(folder);
    assert!(
        folder.is_dir(),
        "{FOLDER} names {}, which is no folder: run tests/all",
        folder.display()
    );
    folder
}
