//! The same with the real service running: through its control socket.

use std::{
    fs,
    net::TcpListener,
    os::unix::{
        fs::{FileTypeExt, PermissionsExt},
        net::UnixStream,
    },
    sync::Arc,
};

use budwood::{
    backup,
    commands::{due, health},
    service::{self, config::Config},
};
use tokio::{
    io::{AsyncBufReadExt, AsyncWriteExt, BufReader},
    sync::oneshot,
    task::{JoinHandle, spawn_blocking},
};

use super::Place;
use crate::http::client;

/// The running service.
struct Service {
    place: Arc<Place>,
    address: String,
    stop: oneshot::Sender<()>,
    running: JoinHandle<anyhow::Result<()>>,
}

impl Service {
    /// Starts it, and waits until it answers.
    async fn start(place: Place) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap().to_string();
        let (config, clock) = (place.config(), place.clock());
        let (stop, stopped) = oneshot::channel();
        let stopped = async {
            let _ = stopped.await;
        };
        let service = async move {
            let secret = |_: &str| Some("not-a-real-secret".to_owned());
            service::run_service(config, &secret, listener, clock, stopped).await
        };
        let service = Self {
            place: Arc::new(place),
            address,
            stop,
            running: tokio::spawn(service),
        };
        // The port is bound already, so the request waits until the service takes it.
        service.health().await;
        service
    }

    async fn health(&self) -> serde_json::Value {
        let url = format!("http://{}/health", self.address);
        client()
            .get(url)
            .send()
            .await
            .unwrap()
            .json()
            .await
            .unwrap()
    }

    /// What `budwood health` prints, or why it fails.
    async fn asked(&self) -> Result<String, String> {
        let mut config = self.place.config();
        config.web.listen = self.address.parse().unwrap();
        let mut page = Vec::new();
        let asked = health::ask(&config, &mut page).await;
        let page = String::from_utf8(page).unwrap();
        asked.map(|()| page).map_err(|error| format!("{error:#}"))
    }

    /// What another process does meanwhile.
    async fn beside<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Place, &Config) -> T + Send + 'static,
    ) -> T {
        let place = self.place.clone();
        spawn_blocking(move || work(&place, &place.config()))
            .await
            .unwrap()
    }

    async fn stop(self) -> Arc<Place> {
        self.stop.send(()).unwrap();
        self.running.await.unwrap().unwrap();
        self.place
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn a_backup_is_taken_while_the_service_runs() {
    let place = Place::filled();
    let log = place.export("before.jsonl").unwrap();
    let service = Service::start(place).await;
    let (records, due) = service
        .beside(|place, config| {
            let mut due = Vec::new();
            let day = place.clock.now().date_naive();
            due::print(config, day, place.clock().now(), &mut due).unwrap();
            let records = backup::backup(config, &place.path("backup"), &place.clock()).unwrap();
            assert_eq!(backup::check_records(config).unwrap(), records);
            (records, String::from_utf8(due).unwrap())
        })
        .await;
    assert!(due.contains("KOLO, Tamo Rill, A"), "{due}");
    assert_eq!(records + 1, log.lines().count() as u64);
    let exported = service
        .beside(|place, _| place.export("meanwhile.jsonl").unwrap())
        .await;
    assert_eq!(exported, log);
    let place = service.stop().await;
    assert_eq!(
        fs::read_to_string(place.path("backup/records.jsonl")).unwrap(),
        log
    );
    // The socket goes with the service, and the store can be opened again.
    assert!(!place.path("store/control").exists());
    assert_eq!(place.export("after.jsonl").unwrap(), log);
}

#[tokio::test(flavor = "multi_thread")]
async fn a_held_service_says_so_until_it_is_released() {
    let first = Place::filled();
    let backup = first.path("backup");
    backup::backup(&first.config(), &backup, &first.clock()).unwrap();
    let place = Place::empty();
    backup::restore(&place.config(), &backup, &place.clock()).unwrap();
    let service = Service::start(place).await;
    let health = service.health().await;
    assert_eq!(health["healthy"], false);
    let trouble = health["trouble"].as_str().unwrap();
    assert!(
        trouble.starts_with("held: the store was filled"),
        "{trouble}"
    );
    assert_eq!(health["outbox_waiting"], 2);
    let asked = service.asked().await;
    let told = asked.unwrap_err();
    assert!(told.contains("held: the store was filled"), "{told}");
    service
        .beside(|place, config| backup::release(config, &place.clock()).unwrap())
        .await;
    let asked = service.asked().await.unwrap();
    assert!(
        asked.starts_with("well\nwaiting: 0 to be read, "),
        "{asked}"
    );
    assert!(asked.contains("gateway "), "{asked}");
    let health = service.health().await;
    assert_eq!(health["healthy"], true, "{health}");
    let place = service.stop().await;
    assert_eq!(place.engine().held_since(), None);
}

#[tokio::test(flavor = "multi_thread")]
async fn a_restore_into_the_store_of_a_running_service_is_refused() {
    let first = Place::filled();
    let backup = first.path("backup");
    backup::backup(&first.config(), &backup, &first.clock()).unwrap();
    let service = Service::start(Place::filled()).await;
    let refused = service
        .beside(move |place, config| {
            let refused = backup::restore(config, &backup, &place.clock()).unwrap_err();
            format!("{refused:#}")
        })
        .await;
    assert!(refused.contains("in use by another process"), "{refused}");
    assert_eq!(service.health().await["healthy"], true);
    service.stop().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn the_socket_is_for_its_owner_and_survives_nonsense() {
    let place = Place::filled();
    // One that a killed service left behind.
    drop(std::os::unix::net::UnixListener::bind(place.path("store/control")).unwrap());
    let service = Service::start(place).await;
    let socket = service.place.path("store/control");
    let metadata = fs::metadata(&socket).unwrap();
    assert!(metadata.file_type().is_socket());
    assert_eq!(metadata.permissions().mode() & 0o777, 0o600);
    for (request, answer) in [
        ("hello\n", "\"ok\":false,\"why\":\"not a request"),
        (
            "{\"v\":2,\"do\":\"copy\"}\n",
            "version 2 is not spoken here",
        ),
        ("{\"v\":1,\"do\":\"dance\"}\n", "not a request"),
        ("{\"v\":1,\"do\":\"next\"}\n", "no copy has begun"),
        ("{\"v\":1,\"do\":\"load_roll\"}\n", "the list is missing"),
        (
            "{\"v\":1,\"do\":\"load_roll\",\"csv\":\"row\"}\n",
            "the list is not in Base64",
        ),
        ("{\"v\":1,\"do\":\"copy\"}\n", "{\"ok\":true}"),
    ] {
        let said = ask(&service, request).await;
        assert!(said.contains(answer), "{request} {said}");
    }
    // Neither bytes that are no text nor a line without an end stop it.
    for bytes in [vec![0xFF, b'\n'], vec![b'x'; 10_000]] {
        let mut stream = connect(&service).await;
        // The other end may hang up before it has read everything.
        let _ = stream.write_all(&bytes).await;
    }
    assert_eq!(
        ask(&service, "{\"v\":1,\"do\":\"copy\"}\n").await,
        "{\"ok\":true}\n"
    );
    service.stop().await;
}

async fn connect(service: &Service) -> tokio::net::UnixStream {
    tokio::net::UnixStream::connect(service.place.path("store/control"))
        .await
        .unwrap()
}

async fn ask(service: &Service, request: &str) -> String {
    let mut stream = BufReader::new(connect(service).await);
    stream.write_all(request.as_bytes()).await.unwrap();
    let mut answer = String::new();
    stream.read_line(&mut answer).await.unwrap();
    answer
}

/// Somebody who goes away in the middle of a copy is in nobody's way, nor is one who says nothing.
#[tokio::test(flavor = "multi_thread")]
async fn a_stop_does_not_wait_for_whoever_is_connected() {
    let service = Service::start(Place::filled()).await;
    let silent = UnixStream::connect(service.place.path("store/control")).unwrap();
    let place = service.stop().await;
    drop(silent);
    assert!(!place.path("store/control").exists());
}

#[tokio::test(flavor = "multi_thread")]
async fn whoever_does_not_answer_is_not_well() {
    let service = Service::start(Place::filled()).await;
    assert!(service.asked().await.is_ok());
    let mut config = service.place.config();
    config.web.listen = service.address.parse().unwrap();
    service.stop().await;
    let told = health::ask(&config, &mut Vec::new()).await.unwrap_err();
    assert!(
        told.to_string()
            .starts_with("no service answers at http://127.0.0.1:")
    );
}
