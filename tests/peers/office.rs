//! The program with a list of farmers behind a gateway, and what must be true of it afterwards.

use std::{
    collections::BTreeMap,
    fmt::Write as _,
    fs::{self, File},
    net::TcpListener,
    path::{Path, PathBuf},
    process::{Child, Command, ExitStatus, Stdio},
    sync::{
        Mutex,
        atomic::{AtomicU16, Ordering},
    },
    time::Duration,
};

use budwood::{
    service::gateway::http,
    store::{SledStore, Store},
    words::message::{Outbound, Received, SendState},
};
use serde_json::Value;
use tempfile::TempDir;

/// Nothing here takes nearly as long.
const DEADLINE: Duration = Duration::from_secs(60);

/// How long to wait before asking again.
const AGAIN: Duration = Duration::from_millis(20);

/// Farmers on the list, each with a phone and one block of 200 trees.
pub(crate) const FARMERS: usize = 40;

/// A port that is free now and that no other test is given. They lie below those that the system
/// gives to connections, so that none takes it before its owner listens.
pub(crate) fn free_port() -> u16 {
    static NEXT: AtomicU16 = AtomicU16::new(0);
    let first = 20_000 + u16::try_from(std::process::id() % 100).expect("small") * 100;
    loop {
        let port = first + NEXT.fetch_add(1, Ordering::Relaxed) % 1_000;
        if TcpListener::bind(("127.0.0.1", port)).is_ok() {
            return port;
        }
    }
}

/// The phone of a farmer.
pub(crate) fn phone(farmer: usize) -> String {
    format!("+4477009001{farmer:02}")
}

/// Asks again until it holds; says what did not.
pub(crate) async fn until(what: &str, holds: impl AsyncFn() -> bool) {
    let waits = async {
        while !holds().await {
            tokio::time::sleep(AGAIN).await;
        }
    };
    let in_time = tokio::time::timeout(DEADLINE, waits).await;
    assert!(in_time.is_ok(), "{what}: not in time");
}

/// An outside program that is stopped when it is no longer needed.
pub(crate) struct Peer(Child);

impl Peer {
    pub(crate) fn start(command: &mut Command, log: &Path) -> Self {
        let file = File::create(log).expect("a log");
        let child = command
            .stdin(Stdio::null())
            .stdout(file.try_clone().expect("a second handle"))
            .stderr(file)
            .spawn()
            .expect("the peer starts; run tests/all, which installs it");
        Self(child)
    }

    /// Ends it at once.
    pub(crate) fn kill(mut self) {
        self.end();
    }

    fn end(&mut self) {
        // It may be gone already.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

impl Drop for Peer {
    fn drop(&mut self) {
        self.end();
    }
}

/// The way to tell a peer what to do, and to ask what it saw.
pub(crate) struct Control(pub(crate) u16);

impl Control {
    pub(crate) async fn tell(&self, path: &str, what: Value) -> Value {
        let url = format!("http://127.0.0.1:{}{path}", self.0);
        let answer = http::client().build().expect("a client").post(url);
        let answer = answer.json(&what).send().await.expect("the peer is there");
        let answer: Value = answer.json().await.expect("JSON");
        assert_eq!(answer.get("error"), None, "{path} {what}");
        answer
    }

    pub(crate) async fn log(&self) -> Value {
        self.ask().await.expect("the peer is there")
    }

    pub(crate) async fn is_there(&self) {
        until("a peer answers", async || self.ask().await.is_some()).await;
    }

    async fn ask(&self) -> Option<Value> {
        let url = format!("http://127.0.0.1:{}/log", self.0);
        let client = http::client().build().expect("a client");
        client.get(url).send().await.ok()?.json().await.ok()
    }
}

/// A folder with a configuration and the list loaded.
pub(crate) struct Office {
    pub(crate) folder: TempDir,
    pub(crate) port: u16,
}

impl Office {
    /// `gateway` is the block of the gateway; in it `PORT` is the port of the program.
    pub(crate) fn new(gateway: &str) -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let port = free_port();
        let gateway = gateway.replace("PORT", &port.to_string());
        let config = format!(
            "[store]\nfolder = \"store\"\ncache_mb = 16\nreserve_mb = 16\n\
             [web]\nlisten = \"127.0.0.1:{port}\"\n{gateway}\n\
             [line]\nname = \"kolo\"\nown_number = \"12345\"\ncountry = \"GB\"\n\
             fallback_zone = \"Asia/Jakarta\"\n"
        );
        fs::write(folder.path().join("budwood.toml"), config).expect("a configuration");
        let mut roll = "row,group,name,role,phone,adviser,zone,calendar,block,area,unit,\
                        planted_on,planted\n\
                        group,KOLO,,,,Mara Tindel,Asia/Jakarta,fao,,,,,\n\
                        person,,Mara Tindel,adviser,+447700900100,,,,,,,,\n"
            .to_owned();
        for farmer in 1..=FARMERS {
            let (name, phone) = (name(farmer), phone(farmer));
            let _ = write!(
                roll,
                "person,KOLO,{name},farmer,{phone},,,,,,,,\n\
                 block,KOLO,{name},,,,,,A,0.6,ha,2024-12-12,200\n"
            );
        }
        fs::write(folder.path().join("roll.csv"), roll).expect("a list");
        let office = Self { folder, port };
        let loaded = office
            .command(&["roll", "load", "roll.csv", "--config", "budwood.toml"])
            .output()
            .expect("it runs");
        let said = [loaded.stdout.as_slice(), &loaded.stderr].concat();
        let said = String::from_utf8_lossy(&said);
        assert!(loaded.status.success(), "{said}");
        office
    }

    pub(crate) fn command(&self, arguments: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_budwood"));
        command
            .args(arguments)
            .current_dir(self.folder.path())
            .env_remove("RUST_LOG");
        command
    }

    pub(crate) fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Starts the service and waits until it answers. Each secret has the same value.
    pub(crate) async fn serve(&self) -> Serving {
        let serving = self.begin(&[]);
        let answers = async || {
            // Whatever else answers at its port is not it.
            assert!(serving.is_there(), "it ended:\n{}", serving.logged());
            self.answers().await
        };
        until("the program answers", answers).await;
        serving
    }

    /// Starts it with these variables, and waits until it answers or has ended.
    pub(crate) async fn serve_with(&self, variables: &[(&str, String)]) -> Serving {
        let serving = self.begin(variables);
        let is_decided = async || serving.ended().is_some() || self.answers().await;
        until("the program answers or ends", is_decided).await;
        serving
    }

    fn begin(&self, variables: &[(&str, String)]) -> Serving {
        let log = self.path("log.txt");
        let file = File::options().create(true).append(true).open(&log);
        let file = file.expect("a log");
        let child = self
            .command(&["serve", "budwood.toml"])
            .env("BUDWOOD_SECRET_LINE", "secret")
            .env("BUDWOOD_SECRET_LINE_IN", "secret")
            .envs(variables.iter().map(|(name, value)| (name, value)))
            .stdout(file.try_clone().expect("a second handle"))
            .stderr(file)
            .spawn()
            .expect("it runs");
        Serving {
            child: Mutex::new(child),
            log,
        }
    }

    async fn answers(&self) -> bool {
        let url = format!("http://127.0.0.1:{}/health", self.port);
        let client = http::client().build().expect("a client");
        client.get(&url).send().await.is_ok()
    }

    /// What is recorded now; the service may run. None where it starts just now.
    async fn now(&self) -> Option<Vec<Value>> {
        let file = self.path("now.jsonl");
        // It is not there yet, or it is old.
        let _ = fs::remove_file(&file);
        let mut export = self.command(&["log", "export", "budwood.toml", "now.jsonl"]);
        if !export.output().expect("it runs").status.success() {
            return None;
        }
        let text = fs::read_to_string(&file).expect("a log");
        let record = |line| serde_json::from_str(line).expect("JSON");
        Some(text.lines().map(record).collect())
    }

    /// Whether so many texts came in, and no more.
    pub(crate) async fn has_received(&self, number: usize) -> bool {
        let is_received = |record: &&Value| record["kind"] == "received";
        let now = self.now().await;
        now.is_some_and(|now| now.iter().filter(is_received).count() == number)
    }

    /// What is in the store of texts that came, but for second deliveries.
    pub(crate) async fn heard(&self) -> Vec<Said> {
        let now = self.now().await.unwrap_or_default();
        let is_text =
            |one: &&Value| one["kind"] == "received" && one["body"]["outcome"] != "delivered twice";
        let said =
            |one: &Value, key: &str| one["body"][key].as_str().unwrap_or_default().to_owned();
        let texts = now.iter().filter(is_text);
        texts
            .map(|one| (said(one, "from"), said(one, "text")))
            .collect()
    }

    /// Whether something came from this phone.
    pub(crate) async fn has_heard(&self, phone: &str) -> bool {
        let is_this =
            |record: &Value| record["kind"] == "received" && record["body"]["from"] == phone;
        self.now().await.is_some_and(|now| now.iter().any(is_this))
    }

    /// Waits until something came from every farmer.
    pub(crate) async fn until_all_came(&self) {
        for farmer in 1..=FARMERS {
            let came = async || self.has_heard(&phone(farmer)).await;
            until(&format!("a text of farmer {farmer}"), came).await;
        }
    }

    /// Whether there are texts out, and at most so many of them are in one of these states.
    pub(crate) async fn has_at_most(&self, most: usize, states: &[SendState]) -> bool {
        let Some(now) = self.now().await else {
            return false;
        };
        let outbound = now.iter().filter(|record| record["kind"] == "outbound");
        let found: Vec<SendState> = outbound
            .map(|record| {
                let name = record["body"]["state"].as_str().expect("a state");
                SendState::from_name(name).expect("a state that we know")
            })
            .collect();
        let number = found.iter().filter(|state| states.contains(state)).count();
        !found.is_empty() && number <= most
    }

    /// Waits until all that can become known of texts out is known.
    pub(crate) async fn until_settled(&self) {
        let open = [SendState::Ready, SendState::Sending, SendState::Sent];
        until("every receipt", async || self.has_at_most(0, &open).await).await;
    }

    /// The end of a day on which much went wrong: every text came in, everything has left but what
    /// `waits` for its next try, the service stops, and the laws hold.
    pub(crate) async fn end(
        &self,
        serving: Serving,
        brought: &[Said],
        waits: usize,
        handed: impl AsyncFnOnce() -> Vec<Said>,
    ) -> Stored {
        self.until_all_came().await;
        let open = [SendState::Ready, SendState::Sending];
        let is_done = async || self.has_at_most(waits, &open).await;
        until("everything has left", is_done).await;
        serving.stop().await;
        let stored = self.stored();
        let handed = handed().await;
        stored.assert_laws(brought, &handed);
        // Each farmer is answered; what was on its way in a kill or a cut is unknown.
        assert!(stored.outbound.len() >= FARMERS, "{:?}", stored.states());
        assert!(handed.len() >= FARMERS * 3 / 4, "{:?}", stored.states());
        stored
    }

    /// What is stored, once the service has stopped.
    pub(crate) fn stored(&self) -> Stored {
        let store = SledStore::open(&self.path("store"), 16 * 1024 * 1024).expect("it is free");
        let mut received = Vec::new();
        let each = store.each_received(&mut |text| received.push(text));
        each.expect("texts can be read");
        let outbound = store.load(10_000).expect("it can be read").outbound;
        Stored { received, outbound }
    }
}

fn name(farmer: usize) -> String {
    const FIRST: [&str; 8] = [
        "Keti", "Tamo", "Sela", "Bero", "Nadi", "Olan", "Pira", "Ruvo",
    ];
    const LAST: [&str; 5] = ["Olm", "Rill", "Dorn", "Vesk", "Hald"];
    let farmer = farmer - 1;
    format!("{} {}", FIRST[farmer % 8], LAST[farmer / 8])
}

/// The service as a process of its own. A test that fails leaves none behind.
pub(crate) struct Serving {
    child: Mutex<Child>,
    log: PathBuf,
}

impl Drop for Serving {
    fn drop(&mut self) {
        self.end();
    }
}

impl Serving {
    fn child<T>(&self, what: impl FnOnce(&mut Child) -> T) -> T {
        what(&mut self.child.lock().expect("nobody panics"))
    }

    fn is_there(&self) -> bool {
        self.ended().is_none()
    }

    /// How it ended, if it has.
    pub(crate) fn ended(&self) -> Option<ExitStatus> {
        self.child(Child::try_wait).expect("it can be asked")
    }

    fn end(&self) {
        // It may be gone already.
        let _ = self.child(Child::kill);
        let _ = self.child(Child::wait);
    }

    /// As a power cut that spares the disk.
    pub(crate) fn kill(self) {
        assert!(self.is_there(), "it ended:\n{}", self.logged());
        self.end();
    }

    /// Asks it to stop, as the system does, and waits for its end.
    pub(crate) async fn stop(self) {
        assert!(self.is_there(), "it ended:\n{}", self.logged());
        let id = self.child(|child| child.id().to_string());
        let asked = Command::new("kill").args(["-TERM", &id]).status();
        assert!(asked.expect("kill runs").success(), "it is not there");
        until("the program stops", async || !self.is_there()).await;
        let ended = self.child(Child::wait).expect("it can be asked");
        assert!(ended.success(), "{ended}:\n{}", self.logged());
        self.assert_discreet();
    }

    pub(crate) fn logged(&self) -> String {
        fs::read_to_string(&self.log).expect("a log")
    }

    pub(crate) async fn until_logged(&self, words: &str) {
        until(words, async || self.logged().contains(words)).await;
    }

    /// From "info" up no number, name, text or secret is logged.
    fn assert_discreet(&self) {
        let logged = self.logged();
        for word in ["7700900", "Olm", "Rill", "dead", "secret="] {
            assert!(!logged.contains(word), "{word} is in the log:\n{logged}");
        }
    }
}

/// What is in a store.
pub(crate) struct Stored {
    pub(crate) received: Vec<Received>,
    pub(crate) outbound: Vec<Outbound>,
}

/// A number and what was said to it or by it.
pub(crate) type Said = (String, String);

impl Stored {
    /// What came in, in order.
    pub(crate) fn heard(&self) -> Vec<Said> {
        // A text that is known for one that came before is kept too.
        let texts = self.received.iter();
        texts
            .filter(|one| one.outcome != "delivered twice")
            .map(|one| (one.from.clone(), one.text.clone()))
            .collect()
    }

    pub(crate) fn states(&self) -> BTreeMap<&'static str, usize> {
        let mut states = BTreeMap::new();
        for text in &self.outbound {
            *states.entry(text.state.name()).or_default() += 1;
        }
        states
    }

    /// Every text came in once, those of one phone in order; whatever the peer has been handed it
    /// has once, and what counts as sent it has.
    #[track_caller]
    pub(crate) fn assert_laws(&self, brought: &[Said], handed: &[Said]) {
        let heard = self.heard();
        for (from, said) in brought {
            let times = heard
                .iter()
                .filter(|one| *one == &(from.clone(), said.clone()))
                .count();
            let wanted = brought
                .iter()
                .filter(|one| *one == &(from.clone(), said.clone()))
                .count();
            assert_eq!(times, wanted, "{from} {said:?} came in {times} times");
        }
        for (from, _) in brought {
            let of = |all: &[Said]| -> Vec<String> {
                let of_phone = all.iter().filter(|(phone, _)| phone == from);
                of_phone.map(|(_, said)| said.clone()).collect()
            };
            assert_eq!(of(&heard), of(brought), "the order of {from}");
        }
        for text in &self.outbound {
            let is_this = |(to, said): &&Said| *to == text.to && *said == text.text;
            let times = handed.iter().filter(is_this).count();
            let most = usize::from(text.state != SendState::Ready);
            assert!(times <= most, "{:?} was handed over {times} times", text.id);
            let is_sent = matches!(text.state, SendState::Sent | SendState::Delivered);
            assert!(!is_sent || times == 1, "{:?} is lost", text.id);
        }
        for (to, said) in handed {
            let is_ours = |text: &Outbound| text.to == *to && text.text == *said;
            assert!(self.outbound.iter().any(is_ours), "nobody sent {said:?}");
        }
    }
}
