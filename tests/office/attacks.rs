//! Attacks on the pages, over HTTP as a browser or a program elsewhere makes them.

use std::{net::TcpListener, path::PathBuf};

use budwood::{
    engine::Input,
    service::{
        clock::{Clock, FixedClock},
        config::StoreConfig,
        server::{self, Handle, Room},
        web::office::{self, OfficeSettings},
    },
    words::traffic::SendOutcome,
};
use reqwest::{Client, Response, StatusCode, header, redirect};
use tokio::sync::oneshot;

use super::desk;
use crate::fixture::{claim, desk::at};

/// The pages, served on this computer.
struct Office {
    handle: Handle,
    clock: FixedClock,
    url: String,
    client: Client,
    _stop: oneshot::Sender<()>,
    _folder: tempfile::TempDir,
}

impl Office {
    fn open() -> Self {
        let clock = FixedClock::at(at(super::MORNING));
        let folder = tempfile::tempdir().expect("a folder");
        let store = StoreConfig {
            folder: PathBuf::from(folder.path()),
            cache_mb: 16,
            reserve_mb: 0,
        };
        let (engine, time) = (desk().engine, Clock::Fixed(clock.clone()));
        let running = server::start(engine, time.clone(), Room::new(&store)).expect("threads");
        let listener = TcpListener::bind("127.0.0.1:0").expect("a port");
        let url = format!("http://{}", listener.local_addr().expect("bound"));
        let settings = OfficeSettings {
            address: None,
            certificate: None,
            clock: time,
        };
        let (stop, stopped) = oneshot::channel::<()>();
        let handle = running.handle.clone();
        let stopped = async {
            let _ = stopped.await;
        };
        tokio::spawn(office::serve(listener, handle.clone(), settings, stopped));
        let client = budwood::service::gateway::http::client();
        Self {
            handle,
            clock,
            url,
            client: client
                .redirect(redirect::Policy::none())
                .build()
                .expect("a client"),
            _stop: stop,
            _folder: folder,
        }
    }

    async fn get(&self, path: &str, cookie: &str) -> Response {
        let request = self.client.get(format!("{}{path}", self.url));
        let request = request.header(header::COOKIE, cookie);
        request.send().await.expect("an answer")
    }

    async fn post(&self, path: &str, cookie: &str, form: &[(&str, &str)]) -> Response {
        self.post_from(&self.url, path, cookie, form).await
    }

    async fn post_from(
        &self,
        origin: &str,
        path: &str,
        cookie: &str,
        form: &[(&str, &str)],
    ) -> Response {
        let body = url::form_urlencoded::Serializer::new(String::new())
            .extend_pairs(form)
            .finish();
        let request = self
            .client
            .post(format!("{}{path}", self.url))
            .header(header::ORIGIN, origin)
            .header(header::COOKIE, cookie)
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .body(body);
        request.send().await.expect("an answer")
    }

    /// The texts that wait to be sent.
    async fn texts(&self) -> Vec<(String, String)> {
        let mut sent = Vec::new();
        while let Some(text) = self.handle.submit(claim()).await.expect("taken").send {
            let outcome = SendOutcome::Accepted { ids: Vec::new() };
            let id = text.id;
            let tried = Input::Tried { id, outcome };
            self.handle.submit(tried).await.expect("taken");
            sent.push((text.to, text.text));
        }
        sent
    }

    /// Comes in by name and code; gives the cookie.
    async fn come_in(&self, name: &str) -> String {
        self.post("/log-in", "", &[("name", name)]).await;
        let (_, text) = self.texts().await.pop().expect("a code");
        let form = [("name", name), ("code", &text[..6])];
        let answer = self.post("/log-in/code", "", &form).await;
        assert_eq!(answer.status(), StatusCode::SEE_OTHER);
        cookie(&answer).expect("a cookie")
    }
}

/// What a browser is given to show.
fn cookie(answer: &Response) -> Option<String> {
    let set = answer.headers().get(header::SET_COOKIE)?.to_str().ok()?;
    Some(set.split(';').next()?.to_owned())
}

fn leads_to(answer: &Response) -> Option<&str> {
    answer.headers().get(header::LOCATION)?.to_str().ok()
}

const PAGES: [&str; 9] = [
    "/",
    "/groups",
    "/groups/KOLO",
    "/people/3",
    "/sick",
    "/season",
    "/stock",
    "/line",
    "/queue",
];

#[tokio::test]
async fn without_coming_in_every_path_leads_to_the_door() {
    let office = Office::open();
    for path in PAGES.iter().chain(&["/facts/1", "/nothing", "/log-in/x"]) {
        for cookie in [
            "",
            "office=",
            "office=x",
            "__Host-office=x",
            "office=../../x",
        ] {
            let answer = office.get(path, cookie).await;
            assert_eq!(answer.status(), StatusCode::SEE_OTHER, "{path} {cookie}");
            assert_eq!(leads_to(&answer), Some("/log-in"), "{path} {cookie}");
        }
    }
}

#[tokio::test]
async fn no_page_shows_a_whole_number_or_loads_anything_from_elsewhere() {
    let office = Office::open();
    let mara = office.come_in("Mara Tindel").await;
    for path in PAGES {
        let answer = office.get(path, &mara).await;
        assert_eq!(answer.status(), StatusCode::OK, "{path}");
        let policy = answer.headers()["content-security-policy"]
            .to_str()
            .unwrap()
            .to_owned();
        assert!(policy.starts_with("default-src 'none'; "), "{policy}");
        assert_eq!(answer.headers()["cache-control"], "no-store");
        assert_eq!(answer.headers()["x-content-type-options"], "nosniff");
        let page = answer.text().await.expect("text");
        assert!(!page.contains("7700900"), "{path} shows a number");
        for other in [
            "<script",
            "style=",
            "http://",
            "https://",
            "onclick",
            "javascript:",
        ] {
            assert!(!page.contains(other), "{path} has {other}");
        }
    }
}

#[tokio::test]
async fn what_a_browser_showed_before_is_worth_nothing_after() {
    let office = Office::open();
    let planted = "office=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA";
    office
        .post("/log-in", planted, &[("name", "Mara Tindel")])
        .await;
    let (_, text) = office.texts().await.pop().expect("a code");
    let form = [("name", "Mara Tindel"), ("code", &text[..6])];
    let answer = office.post("/log-in/code", planted, &form).await;
    let given = cookie(&answer).expect("a cookie");
    assert_ne!(given, planted);
    let set = answer.headers()[header::SET_COOKIE]
        .to_str()
        .unwrap()
        .to_owned();
    for part in ["HttpOnly", "SameSite=Strict", "Path=/", "Max-Age=43200"] {
        assert!(set.contains(part), "{set}");
    }
    assert_eq!(
        office.get("/", planted).await.status(),
        StatusCode::SEE_OTHER
    );
    assert_eq!(office.get("/", &given).await.status(), StatusCode::OK);
}

#[tokio::test]
async fn forged_forms_do_nothing() {
    let office = Office::open();
    let name = [("name", "Mara Tindel")];
    for origin in ["null", "http://elsewhere.example", "https://127.0.0.1"] {
        let answer = office.post_from(origin, "/log-in", "", &name).await;
        assert_eq!(answer.status(), StatusCode::FORBIDDEN, "{origin}");
    }
    assert!(office.texts().await.is_empty(), "nobody was texted");
    let mara = office.come_in("Mara Tindel").await;
    for token in ["", "x", "AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"] {
        let answer = office.post("/log-out", &mara, &[("token", token)]).await;
        assert_eq!(answer.status(), StatusCode::FORBIDDEN, "{token}");
    }
    assert_eq!(office.get("/", &mara).await.status(), StatusCode::OK);
    // The token of somebody else's page is none of hers.
    let vera = office.come_in("Vera Lund").await;
    let token = token(&office.get("/", &vera).await.text().await.unwrap());
    let answer = office.post("/log-out", &mara, &[("token", &token)]).await;
    assert_eq!(answer.status(), StatusCode::FORBIDDEN);
    let answer = office.post("/log-out", &vera, &[("token", &token)]).await;
    assert_eq!(leads_to(&answer), Some("/log-in"));
    assert_eq!(office.get("/", &vera).await.status(), StatusCode::SEE_OTHER);
}

fn token(page: &str) -> String {
    let (_, rest) = page.split_once("name=\"token\" value=\"").expect("a token");
    rest.split('"').next().expect("its end").to_owned()
}

#[tokio::test]
async fn path_tricks_and_other_hosts_lead_nowhere() {
    let office = Office::open();
    let mara = office.come_in("Mara Tindel").await;
    for path in [
        "/groups/..%2f..%2fetc%2fpasswd",
        "/groups/KOLO%00",
        "/groups/RIVA",
        "/people/0",
        "/people/1%2f2",
        "/people/-1",
        "/people/18446744073709551616",
        "/log-in/code",
        "/.git/config",
        "/%2e%2e/store",
    ] {
        let status = office.get(path, &mara).await.status();
        assert_eq!(status, StatusCode::NOT_FOUND, "{path}");
    }
    let request = office.client.get(format!("{}/", office.url));
    let request = request.header(header::HOST, "office.elsewhere.example");
    let answer = request
        .header(header::COOKIE, &mara)
        .send()
        .await
        .expect("an answer");
    assert_eq!(answer.status(), StatusCode::MISDIRECTED_REQUEST);
    let long = "A".repeat(100_000);
    let answer = office.post("/log-in", "", &[("name", &long)]).await;
    assert_eq!(answer.status(), StatusCode::PAYLOAD_TOO_LARGE);
    let markup = [("name", "<script>alert(1)</script>\" onfocus=\"x")];
    let page = office
        .post("/log-in", "", &markup)
        .await
        .text()
        .await
        .expect("text");
    assert!(
        !page.contains("<script>") && !page.contains("\" onfocus"),
        "{page}"
    );
}

/// Ten thousand guesses at one name: the phone rings twice in ten minutes, and none is right.
#[tokio::test]
async fn ten_thousand_log_ins_neither_get_in_nor_make_a_phone_ring_without_end() {
    let office = Office::open();
    let mut refused = 0;
    for guess in 0..5_000_u32 {
        let name = ("name", "Mara Tindel");
        let asked = office.post("/log-in", "", &[name]).await;
        let code = format!("{:06}", 100_000 + guess);
        let answer = office
            .post("/log-in/code", "", &[name, ("code", &code)])
            .await;
        assert!(cookie(&answer).is_none(), "{code} got in");
        refused += u32::from(asked.status() == StatusCode::TOO_MANY_REQUESTS);
        refused += u32::from(answer.status() == StatusCode::TOO_MANY_REQUESTS);
    }
    assert_eq!(refused, 10_000 - 60, "a minute has room for 60");
    let texts = office.texts().await;
    assert_eq!(texts.len(), 2, "{texts:?}");
    assert!(texts.iter().all(|(to, _)| to == "+447700900100"));
}

#[tokio::test]
async fn a_session_ends_after_a_working_day() {
    let office = Office::open();
    let mara = office.come_in("Mara Tindel").await;
    assert_eq!(office.get("/", &mara).await.status(), StatusCode::OK);
    office.clock.advance(chrono::TimeDelta::hours(12));
    assert_eq!(office.get("/", &mara).await.status(), StatusCode::SEE_OTHER);
}
