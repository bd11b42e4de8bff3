//! The Debian package and the container, with the program as it was built for the tests.
//!
//! `cargo deb` makes the package; it is installed, upgraded over itself, removed and purged in a
//! copy of this machine that is thrown away (an overlay, which needs root). The container's folder
//! is gathered by the very lines of its file and entered with nothing else in it; no engine for
//! containers is asked. Deliberately absent: the optimised program, which `tests/release` builds.

use std::{
    fs,
    os::unix::fs::PermissionsExt,
    path::{Path, PathBuf},
    process::{Child, Command, Output, Stdio},
};

use tempfile::TempDir;

use crate::office::{free_port, until};

const PROGRAM: &str = env!("CARGO_BIN_EXE_budwood");

const SETUP: [&str; 14] = [
    "setup",
    "/etc/budwood",
    "--country",
    "GB",
    "--zone",
    "Asia/Jakarta",
    "--number",
    "12345",
    "--gateway",
    "smpp",
    "--adviser",
    "Mara Tindel",
    "--phone",
    "+447700900100",
];

fn top() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

#[track_caller]
fn done(command: &mut Command) -> String {
    let output: Output = command.output().expect("it starts");
    let said = [output.stdout.as_slice(), &output.stderr].concat();
    let said = String::from_utf8_lossy(&said).into_owned();
    assert!(output.status.success(), "{command:?}: {said}");
    said
}

/// A copy of this machine: what is written there is written nowhere else.
struct Machine(TempDir);

impl Machine {
    fn new() -> Self {
        let machine = Self(tempfile::tempdir().expect("a folder"));
        let part = |name: &str| {
            let path = machine.0.path().join(name);
            fs::create_dir(&path).expect("a folder");
            path.display().to_string()
        };
        let (upper, work, root) = (part("upper"), part("work"), part("root"));
        let how = format!("lowerdir=/,upperdir={upper},workdir={work}");
        done(Command::new("mount").args(["-t", "overlay", "overlay", "-o", &how, &root]));
        machine
    }

    fn root(&self) -> PathBuf {
        self.0.path().join("root")
    }

    fn path(&self, name: &str) -> PathBuf {
        self.root().join(name.trim_start_matches('/'))
    }

    fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new("chroot");
        command.arg(self.root()).args(arguments);
        command
    }

    #[track_caller]
    fn run(&self, arguments: &[&str]) -> String {
        done(&mut self.command(arguments))
    }
}

impl Drop for Machine {
    fn drop(&mut self) {
        // One that is still there keeps the folder from being removed, which is told.
        let _ = Command::new("umount").arg(self.root()).status();
    }
}

/// Makes the package, quickly and not small.
fn package(folder: &Path) -> PathBuf {
    let target = Path::new(PROGRAM).ancestors().nth(2).expect("a folder");
    let file = folder.join("budwood.deb");
    let peers = std::env::var("BUDWOOD_PEERS").expect("tests/all sets it");
    let mut deb = Command::new(Path::new(&peers).join("cargo/bin/cargo-deb"));
    deb.current_dir(top())
        .env("CARGO_TARGET_DIR", target)
        .args(["--package", "budwood", "--profile", "dev", "--no-build"])
        .args(["--no-strip", "--fast", "--offline", "--output"])
        .arg(&file);
    done(&mut deb);
    file
}

#[test]
fn the_package_is_installed_upgraded_and_purged_and_the_store_stays() {
    let folder = tempfile::tempdir().expect("a folder");
    let package = package(folder.path());
    let machine = Machine::new();
    fs::copy(&package, machine.path("/budwood.deb")).expect("a copy");
    machine.run(&["dpkg", "-i", "/budwood.deb"]);
    let version = machine.run(&["/usr/bin/budwood", "--version"]);
    assert!(version.starts_with("budwood "), "{version}");
    for file in [
        "/usr/lib/systemd/system/budwood.service",
        "/usr/lib/systemd/system/budwood-backup.timer",
        "/usr/share/man/man1/budwood-restore.1.gz",
        "/usr/share/bash-completion/completions/budwood",
        "/usr/share/zsh/vendor-completions/_budwood",
        "/usr/share/doc/budwood/copyright",
        "/usr/share/doc/budwood/operator.md",
        "/usr/share/doc/budwood/examples/budwood.service.d/modem.conf",
    ] {
        assert!(machine.path(file).exists(), "{file}");
    }
    // The service manager finds nothing to complain of in the units.
    machine.run(&[
        "systemd-analyze",
        "verify",
        "/usr/lib/systemd/system/budwood.service",
        "/usr/lib/systemd/system/budwood-backup.timer",
    ]);
    machine.run(&[&["/usr/bin/budwood"][..], &SETUP].concat());
    let config = "/etc/budwood/budwood.toml";
    let people = "/etc/budwood/people.csv";
    machine.run(&[
        "/usr/bin/budwood",
        "roll",
        "load",
        people,
        "--config",
        config,
    ]);
    let log = |name: &str| {
        machine.run(&["/usr/bin/budwood", "log", "export", config, name]);
        fs::read_to_string(machine.path(name)).expect("a log")
    };
    let (settings, records) = (
        fs::read(machine.path(config)).expect("a file"),
        log("/before"),
    );
    machine.run(&["dpkg", "-i", "/budwood.deb"]);
    assert_eq!(fs::read(machine.path(config)).expect("a file"), settings);
    assert_eq!(log("/after"), records);
    assert!(records.contains("Mara Tindel"), "{records}");
    machine.run(&["dpkg", "--remove", "budwood"]);
    let said = machine.run(&["dpkg", "--purge", "budwood"]);
    assert!(said.contains("/var/lib/budwood is kept"), "{said}");
    assert!(!machine.path("/usr/bin/budwood").exists());
    assert_eq!(fs::read(machine.path(config)).expect("a file"), settings);
    // By the same program from elsewhere: every record is there.
    fs::copy(PROGRAM, machine.path("/again")).expect("a copy");
    machine.run(&["/again", "check", config, "--records"]);
}

/// The lines of the container's file that gather its folder, for this folder and this program.
fn gather(folder: &Path) {
    let file = fs::read_to_string(top().join("deploy/Containerfile")).expect("a file");
    let (_, lines) = file.split_once("RUN mkdir -p /image").expect("the lines");
    let (lines, _) = lines.split_once("\n\n").expect("their end");
    let folder = folder.display().to_string();
    let script = format!("set -e; mkdir -p /image{lines}");
    let script = script
        .replace("/image", &folder)
        .replace("target/release/budwood", PROGRAM);
    done(Command::new("sh").args(["-c", &script]));
}

/// A service that is stopped when it is no longer needed.
struct Service(Child);

impl Drop for Service {
    fn drop(&mut self) {
        // It may be gone already.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

#[tokio::test]
async fn the_container_holds_what_the_service_needs_and_no_more() {
    let folder = tempfile::tempdir().expect("a folder");
    let root = folder.path().join("image");
    fs::create_dir(&root).expect("a folder");
    gather(&root);
    let mut names: Vec<String> = (fs::read_dir(&root).expect("a folder"))
        .map(|entry| {
            entry
                .expect("an entry")
                .file_name()
                .to_string_lossy()
                .into_owned()
        })
        .collect();
    names.sort();
    assert_eq!(names, ["etc", "lib", "lib64", "usr", "var"]);
    // As a folder of the host, which the user in the container may read.
    let settings = root.join("etc/budwood");
    let mut setup = Command::new("chroot");
    done(setup.arg(&root).arg("/usr/bin/budwood").args(SETUP));
    let open = fs::Permissions::from_mode(0o755);
    fs::set_permissions(&settings, open.clone()).expect("a folder");
    let config = settings.join("budwood.toml");
    fs::set_permissions(&config, open).expect("a file");
    let text = fs::read_to_string(&config).expect("a file");
    let port = free_port().to_string();
    fs::write(&config, text.replace("8470", &port)).expect("a file");
    let inside = |arguments: &[&str]| {
        let mut command = Command::new("chroot");
        command
            .args(["--userspec=65532:65532"])
            .arg(&root)
            .arg("/usr/bin/budwood")
            .args(arguments)
            .env_clear()
            .env("PATH", "/usr/sbin:/usr/bin:/sbin:/bin")
            .env("BUDWOOD_SECRET_LINE", "secret")
            .env("BUDWOOD_SECRET_CENTRE", "secret");
        command
    };
    let config = "/etc/budwood/budwood.toml";
    let mut serving = inside(&["serve", config]);
    let child = serving.stderr(Stdio::null()).spawn().expect("it starts");
    let _service = Service(child);
    // What the file asks for health, until it says that all is well.
    let is_well = async || {
        let asked = inside(&["health", config]).output();
        asked.expect("it runs").status.success()
    };
    until("all is well", is_well).await;
    done(&mut inside(&[
        "backup",
        config,
        "/var/lib/budwood/backups",
        "--keep",
        "2",
    ]));
}
