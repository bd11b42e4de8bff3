//! Every command line of deploy/operator.md and deploy/upgrade.md runs, in its order, in a place of its
//! own.

use std::{
    fs,
    net::TcpListener,
    os::unix::net::UnixDatagram,
    path::{Path, PathBuf},
    process::{Child, Command, Output, Stdio},
    time::Duration,
};

use tempfile::TempDir;

use super::blocks;

/// A computer of its own: the folders that the page names, and the service.
struct Computer {
    place: TempDir,
    port: u16,
    setups: usize,
    service: Option<Child>,
}

impl Drop for Computer {
    fn drop(&mut self) {
        if let Some(service) = &mut self.service {
            // It may be gone already.
            let _ = service.kill();
            let _ = service.wait();
        }
    }
}

impl Computer {
    fn new() -> Self {
        let place = tempfile::tempdir().unwrap();
        for folder in ["var", "mnt/stick", "mnt/drill", "mnt/back"] {
            fs::create_dir_all(place.path().join(folder)).unwrap();
        }
        let free = TcpListener::bind("127.0.0.1:0").unwrap();
        Self {
            port: free.local_addr().unwrap().port(),
            place,
            setups: 0,
            service: None,
        }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.place.path().join(name)
    }

    /// A line of the page, as it runs here. Each setup after the first gets a folder of its own.
    fn run(&mut self, line: &str) {
        if let Some(rest) = line.strip_prefix("systemctl ") {
            match rest {
                "stop budwood" => self.stop(),
                "start budwood" => self.start(),
                _ if rest.contains("--now budwood ") => self.start(),
                _ => {}
            }
            return;
        }
        let rest = line.strip_prefix("budwood ");
        let rest = rest.unwrap_or_else(|| panic!("no command of ours: {line}"));
        let is_setup = rest.starts_with("setup ");
        self.setups += usize::from(is_setup);
        let settings = if is_setup && self.setups > 1 {
            format!("etc{}", self.setups)
        } else {
            "etc".to_owned()
        };
        let here = |text: &str| {
            let text = text.replace("/etc/budwood", self.path(&settings).to_str().unwrap());
            let text = text.replace("/var/lib/budwood", self.path("var").to_str().unwrap());
            text.replace("/mnt", self.path("mnt").to_str().unwrap())
        };
        let args = words(rest)
            .iter()
            .map(|word| here(word))
            .collect::<Vec<_>>();
        assert_done(line, &budwood(&args));
        if is_setup {
            self.settle(&settings);
        }
    }

    /// The settings keep what they store in this place, and a port that is free. The first ones are
    /// also those of the drill.
    fn settle(&self, settings: &str) {
        let file = self.path(settings).join("budwood.toml");
        let text = fs::read_to_string(&file).unwrap();
        let text = text.replace("8470", &self.port.to_string());
        // A line that is there, of which nobody holds the other end.
        let text = text.replace("/dev/ttyUSB0", "/dev/ptmx");
        let here = |store: PathBuf| text.replace("/var/lib/budwood/store", store.to_str().unwrap());
        fs::write(&file, here(self.path("var/store"))).unwrap();
        let checked = budwood(&["check".to_owned(), file.to_str().unwrap().to_owned()]);
        assert_done(settings, &checked);
        if settings == "etc" {
            for place in ["mnt/drill", "mnt/back"] {
                let elsewhere = self.path(place).join("budwood.toml");
                fs::write(elsewhere, here(self.path(place).join("store"))).unwrap();
            }
        }
    }

    /// Asks the service to stop, as the service manager does.
    fn stop(&mut self) {
        let mut service = self.service.take().expect("it runs");
        let id = service.id().to_string();
        let asked = Command::new("kill").args(["-TERM", &id]).status();
        assert!(asked.unwrap().success());
        assert!(service.wait().unwrap().success());
    }

    /// What the unit does: it waits until the service says that it is ready.
    fn start(&mut self) {
        let place = self.path("manager");
        // One of an earlier start is of no use.
        let _ = fs::remove_file(&place);
        let manager = UnixDatagram::bind(&place).unwrap();
        let patience = Some(Duration::from_secs(60));
        manager.set_read_timeout(patience).unwrap();
        let service = Command::new(env!("CARGO_BIN_EXE_budwood"))
            .arg("serve")
            .arg(self.path("etc/budwood.toml"))
            .env("NOTIFY_SOCKET", place)
            .env_remove("RUST_LOG")
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        self.service = Some(service);
        let mut line = [0; 64];
        let length = manager.recv(&mut line).expect("the service is ready");
        assert_eq!(&line[..length], b"READY=1");
    }
}

fn budwood(args: &[String]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_budwood"));
    command.args(args).env_remove("RUST_LOG").output().unwrap()
}

#[track_caller]
fn assert_done(line: &str, output: &Output) {
    let said = [output.stdout.as_slice(), &output.stderr].concat();
    let said = String::from_utf8_lossy(&said);
    assert!(output.status.success(), "{line}: {said}");
}

/// As a shell takes a line apart that has no other signs than double quotes.
fn words(line: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    let mut is_quoted = false;
    for c in line.chars() {
        match c {
            '"' => is_quoted = !is_quoted,
            ' ' if !is_quoted => words.push(String::new()),
            _ => words.last_mut().unwrap().push(c),
        }
    }
    words
}

#[test]
fn every_command_line_runs() {
    let mut computer = Computer::new();
    for (page, least) in [("deploy/operator.md", 15), ("deploy/upgrade.md", 7)] {
        let blocks = blocks(page, "sh");
        let lines: Vec<&str> = blocks.iter().flat_map(|block| block.lines()).collect();
        assert!(lines.len() >= least, "{lines:?}");
        for line in lines {
            computer.run(line);
        }
    }
    let is_there = |name: &str| Path::new(&computer.path(name)).exists();
    assert!(is_there("mnt/stick/monday/manifest.json") && is_there("mnt/drill/store"));
}

/// The page on upgrading shows which records this program writes.
#[test]
fn the_version_tells_which_records_are_written() {
    let output = budwood(&["--version".to_owned()]);
    let said = String::from_utf8(output.stdout).unwrap();
    assert_eq!(super::blocks("deploy/upgrade.md", "text"), [said.as_str()]);
    let row = said.trim().replace("budwood ", "| ");
    let row = row
        .replace(", records ", " | ")
        .replace(", backups ", " | ");
    let page = super::read("deploy/upgrade.md");
    assert!(page.contains(&format!("\n{row} | ")), "no row {row}");
}

/// What the units run is there: the first words behind the program's name.
#[test]
fn units_run_commands_that_are_there() {
    for (unit, command) in [
        ("deploy/budwood.service", "serve"),
        ("deploy/budwood-backup.service", "backup"),
        ("deploy/budwood-backup.service", "restore"),
    ] {
        let text = super::read(unit);
        let names = text.contains(&format!("budwood {command} "));
        assert!(names, "{unit} does not run {command}");
        let help = budwood(&["help".to_owned(), command.to_owned()]);
        assert_done(command, &help);
    }
}
