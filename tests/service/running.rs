//! The program as a process of its own, in a folder of its own.

use std::{
    fmt::Write as _,
    fs::{self, File},
    net::TcpListener,
    path::{Path, PathBuf},
    process::{Child, Command, Output, Stdio},
    time::Duration,
};

use reqwest::Client;
use serde_json::json;

use super::provider::{DEADLINE, Provider};
use crate::http::client;

/// How long to wait before asking again.
const AGAIN: Duration = Duration::from_millis(20);

pub(super) const SECRET: &str = "s3cret-of-the-line";

/// Runs a command to its end.
pub(super) fn budwood(arguments: &[&str]) -> Output {
    budwood_in(Path::new("."), arguments)
}

/// Runs a command in a folder to its end.
pub(super) fn budwood_in(folder: &Path, arguments: &[&str]) -> Output {
    command(folder, arguments).output().expect("it runs")
}

pub(super) fn command(folder: &Path, arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_budwood"));
    command
        .args(arguments)
        .current_dir(folder)
        .env_remove("RUST_LOG");
    command
}

/// All that a command said.
pub(super) fn text_of(output: &Output) -> String {
    let said = [output.stdout.as_slice(), &output.stderr].concat();
    String::from_utf8_lossy(&said).into_owned()
}

/// Writes the configuration of an office, with a port that is free now.
pub(super) fn write_config(folder: &Path, provider: Option<&Provider>, more: &str) {
    let (demo, out) = match provider {
        Some(provider) => (
            "allow_demo_numbers = true\n",
            format!(
                "[gateway.out]\nbase_url = \"http://127.0.0.1:{}\"\nsender = \"12345\"\n\
                 auth = \"bearer\"\n",
                provider.port
            ),
        ),
        None => ("", String::new()),
    };
    let port = TcpListener::bind("127.0.0.1:0")
        .and_then(|listener| listener.local_addr())
        .expect("a free port")
        .port();
    let mut config = format!(
        "[store]\nfolder = \"store\"\ncache_mb = 16\nreserve_mb = 16\n\
         [web]\nlisten = \"127.0.0.1:{port}\"\n\
         [[gateway]]\nname = \"line\"\nkind = \"oneapi\"\n{demo}\
         [gateway.in]\nauth = \"bearer\"\n{out}\
         [line]\nname = \"kolo\"\nown_number = \"12345\"\ncountry = \"GB\"\n\
         fallback_zone = \"Asia/Jakarta\"\n"
    );
    write!(config, "{more}").expect("a string grows");
    fs::write(folder.join("budwood.toml"), config).expect("a configuration");
}

/// The service, until it is asked to stop. A test that fails leaves none behind.
pub(super) struct Running {
    child: Child,
    log: PathBuf,
    url: String,
    client: Client,
}

impl Drop for Running {
    fn drop(&mut self) {
        // It may be gone already.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl Running {
    /// Starts it and waits until it answers.
    pub(super) async fn start(folder: &Path) -> Self {
        Self::answering(Self::start_up(folder)).await
    }

    /// Starts it by this command, and waits until it answers.
    pub(super) async fn started_by(folder: &Path, command: Command) -> Self {
        Self::answering(Self::spawn(folder, command)).await
    }

    /// The same, with no secret in the environment.
    pub(super) async fn without_secrets(folder: &Path, command: Command) -> Self {
        Self::answering(Self::spawn_as_it_is(folder, command)).await
    }

    /// Starts it where the system knows one authority for certificates, and waits until it answers.
    pub(super) async fn start_trusting(folder: &Path, authority: &str) -> Self {
        let file = folder.join("authority.pem");
        fs::write(&file, authority).expect("a file");
        let mut command = command(folder, &["serve", "budwood.toml"]);
        command
            .env("SSL_CERT_FILE", file)
            .env_remove("SSL_CERT_DIR");
        Self::answering(Self::spawn(folder, command)).await
    }

    async fn answering(running: Self) -> Self {
        let health = format!("{}/health", running.url);
        let client = &running.client;
        let answers = async || client.get(&health).send().await.is_ok();
        running.until("it answers", answers).await;
        running
    }

    /// Starts it and waits for nothing.
    pub(super) fn start_up(folder: &Path) -> Self {
        Self::spawn(folder, command(folder, &["serve", "budwood.toml"]))
    }

    fn spawn(folder: &Path, mut command: Command) -> Self {
        command
            .env("BUDWOOD_SECRET_LINE_IN", SECRET)
            .env("BUDWOOD_SECRET_LINE", SECRET);
        Self::spawn_as_it_is(folder, command)
    }

    fn spawn_as_it_is(folder: &Path, mut command: Command) -> Self {
        let config = fs::read_to_string(folder.join("budwood.toml")).expect("a configuration");
        let (_, address) = config.split_once("listen = \"").expect("an address");
        let address = address.split('"').next().expect("an address");
        let log = folder.join("log.txt");
        let file = File::create(&log).expect("a log");
        let child = command
            .stdout(Stdio::from(file.try_clone().expect("a second handle")))
            .stderr(Stdio::from(file))
            .spawn()
            .expect("it runs");
        Self {
            child,
            log,
            url: format!("http://{address}"),
            client: client(),
        }
    }

    /// Waits until a connection is accepted, by the system if not by the service.
    pub(super) async fn until_port_is_taken(&self) {
        let address = self.url.trim_start_matches("http://");
        let is_taken = async || tokio::net::TcpStream::connect(address).await.is_ok();
        self.until("its port is taken", is_taken).await;
    }

    /// Asks again until it holds.
    pub(super) async fn until(&self, what: &str, holds: impl AsyncFn() -> bool) {
        let waits = async {
            while !holds().await {
                tokio::time::sleep(AGAIN).await;
            }
        };
        let in_time = tokio::time::timeout(DEADLINE, waits).await;
        assert!(in_time.is_ok(), "{what}: not in time\n{}", self.logged());
    }

    pub(super) async fn wait_for_log(&self, words: &str) {
        self.until(words, async || self.logged().contains(words))
            .await;
    }

    fn logged(&self) -> String {
        fs::read_to_string(&self.log).expect("a log")
    }

    /// What is read at a path; nothing where it cannot be.
    pub(super) async fn page(&self, path: &str) -> String {
        let asked = self.client.get(format!("{}{path}", self.url)).send().await;
        match asked {
            Ok(answer) => answer.text().await.unwrap_or_default(),
            Err(_) => String::new(),
        }
    }

    /// Brings a text; gives the status of the answer, if there was one.
    pub(super) async fn bring(&self, id: &str, from: &str, text: &str) -> Option<u16> {
        self.bring_later(id.to_owned(), from.to_owned(), text.to_owned())
            .await
    }

    pub(super) fn bring_later(
        &self,
        id: String,
        from: String,
        text: String,
    ) -> impl Future<Output = Option<u16>> + Send + 'static {
        let request = self
            .client
            .post(format!("{}/sms/in/line", self.url))
            .bearer_auth(SECRET)
            .json(
                &json!({ "inboundSMSMessageNotification": { "inboundSMSMessage": {
                    "messageId": id,
                    "senderAddress": format!("tel:{from}"),
                    "destinationAddress": "12345",
                    "message": text,
                }}}),
            );
        async move { Some(request.send().await.ok()?.status().as_u16()) }
    }

    /// Asks it to stop, as the system does.
    pub(super) fn ask_to_stop(&self) {
        self.signal("-TERM");
    }

    pub(super) fn signal(&self, which: &str) {
        let id = self.child.id().to_string();
        let asked = Command::new("kill").args([which, &id]).status();
        assert!(asked.expect("kill runs").success(), "it is not there");
    }

    /// Waits until it has ended by itself, with success; gives what it logged.
    pub(super) async fn exit(mut self) -> String {
        let child = std::cell::RefCell::new(&mut self.child);
        let waits = async {
            loop {
                let ended = child.borrow_mut().try_wait().expect("it can be asked");
                match ended {
                    Some(status) => return status,
                    None => tokio::time::sleep(AGAIN).await,
                }
            }
        };
        let status = tokio::time::timeout(DEADLINE, waits).await;
        let logged = fs::read_to_string(&self.log).expect("a log");
        let status = status.expect("it does not stop");
        assert_eq!(status.code(), Some(0), "{logged}");
        logged
    }

    pub(super) async fn stop(self) -> String {
        self.ask_to_stop();
        self.exit().await
    }
}
