//! The real service in a process of its own.

use std::{
    fs,
    io::{BufRead, BufReader},
    net::{SocketAddr, TcpListener},
    process::{Child, Command, ExitStatus, Stdio},
    sync::mpsc::{Receiver, channel},
    thread,
};

use super::{library::library, place::Place, place::TOKEN, provider::PATIENCE};

/// What stands between the service and the disk.
#[derive(Clone, Debug)]
pub(crate) enum Between {
    /// Nothing.
    Nothing,
    /// The preload library, set by these variables.
    Library(Vec<(&'static str, String)>),
    /// strace, which makes calls fail. These are its arguments.
    Strace(Vec<String>),
    /// The preload library with these variables, and strace with these arguments to watch it.
    Both(Vec<(&'static str, String)>, Vec<String>),
}

/// A running service.
pub(crate) struct Service {
    child: Child,
    /// Its lines on standard error.
    lines: Receiver<String>,
    log: Vec<String>,
    is_behind_strace: bool,
    /// Where it listens.
    pub(crate) address: SocketAddr,
}

/// A service that has ended.
#[derive(Debug)]
pub(crate) struct Ended {
    /// How.
    pub(crate) status: ExitStatus,
    /// What it wrote on standard error.
    pub(crate) log: Vec<String>,
}

impl Service {
    /// Starts it and waits until it serves; if it ends before, says how.
    pub(crate) fn start(place: &Place, between: &Between) -> Result<Self, Ended> {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap();
        let config = place.config(listener);
        let mut child = command(place, between)
            .arg("serve")
            .arg(config)
            .env("BUDWOOD_SECRET_LINE_IN", TOKEN)
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let stderr = BufReader::new(child.stderr.take().unwrap());
        let (tell, lines) = channel();
        thread::spawn(move || {
            for line in stderr.lines().map_while(Result::ok) {
                // Nobody listens any more once the test has what it wants.
                let _ = tell.send(line);
            }
        });
        let mut service = Self {
            child,
            lines,
            log: Vec::new(),
            is_behind_strace: matches!(between, Between::Strace(_) | Between::Both(..)),
            address,
        };
        if service.wait_for(": serving ") {
            Ok(service)
        } else {
            Err(service.ended())
        }
    }

    /// Starts it where nothing should go wrong.
    pub(crate) fn run(place: &Place) -> Self {
        match Self::start(place, &Between::Nothing) {
            Ok(service) => service,
            Err(ended) => panic!("it does not start: {ended:?}"),
        }
    }

    /// Waits for a line of the log; false when the service has ended without it.
    pub(crate) fn wait_for(&mut self, words: &str) -> bool {
        loop {
            match self.lines.recv_timeout(PATIENCE) {
                Ok(line) => {
                    let found = line.contains(words);
                    self.log.push(line);
                    if found {
                        return true;
                    }
                }
                Err(std::sync::mpsc::RecvTimeoutError::Disconnected) => return false,
                Err(std::sync::mpsc::RecvTimeoutError::Timeout) => {
                    panic!("no {words:?} in the log: {:?}", self.log)
                }
            }
        }
    }

    /// Ends it at once.
    pub(crate) fn kill(self) -> Ended {
        self.signal("-KILL");
        self.ended()
    }

    /// Asks it to stop, as a service manager does.
    pub(crate) fn stop(self) -> Ended {
        self.signal("-TERM");
        self.ended()
    }

    /// To the service itself; where strace stands before it, that is strace's child. One that is
    /// gone already needs no signal.
    fn signal(&self, signal: &str) {
        let id = self.child.id();
        let children = fs::read_to_string(format!("/proc/{id}/task/{id}/children"));
        let children = children.unwrap_or_default();
        let target = match self.is_behind_strace {
            true => children.trim(),
            false => &id.to_string(),
        };
        if !target.is_empty() {
            let mut kill = Command::new("kill");
            let _ = kill.args([signal, target]).stderr(Stdio::null()).status();
        }
    }

    /// Waits until it has ended.
    pub(crate) fn ended(mut self) -> Ended {
        self.wait_for("\0");
        let log = std::mem::take(&mut self.log);
        let status = self.child.wait().unwrap();
        Ended { status, log }
    }
}

impl Drop for Service {
    fn drop(&mut self) {
        // A test that failed leaves nothing behind.
        if matches!(self.child.try_wait(), Ok(None)) {
            self.signal("-KILL");
            let _ = self.child.wait();
        }
    }
}

fn command(place: &Place, between: &Between) -> Command {
    let program = env!("CARGO_BIN_EXE_budwood");
    match between {
        Between::Nothing => Command::new(program),
        Between::Library(variables) => {
            let mut command = Command::new(program);
            command.envs(preload(place, variables));
            command
        }
        Between::Strace(arguments) => {
            let mut command = strace(place, arguments);
            command.arg(program);
            command
        }
        Between::Both(variables, arguments) => {
            let mut command = strace(place, arguments);
            // Only for the service: strace itself is left alone.
            for (name, value) in preload(place, variables) {
                command.arg("-E").arg(format!("{name}={value}"));
            }
            command.arg(program);
            command
        }
    }
}

fn strace(place: &Place, arguments: &[String]) -> Command {
    let mut command = Command::new("strace");
    let output = place.beside("strace.txt");
    command
        .args(["-f", "-qq", "-o"])
        .arg(output)
        .args(arguments);
    command
}

fn preload(place: &Place, variables: &[(&'static str, String)]) -> Vec<(&'static str, String)> {
    let mut all = variables.to_vec();
    all.push(("LD_PRELOAD", library().display().to_string()));
    all.push(("POWERLOSS_DIR", place.store().display().to_string()));
    all
}
