//! A provider over HTTP whom only a template tells: brings each text until it is acknowledged, takes
//! what it is sent, and reports on it.
//!
//! Of our own hand, unlike the box behind the other template: what was acknowledged, and when, is seen
//! by nobody but who asks.

use std::{
    sync::{
        Arc, Mutex,
        atomic::{AtomicBool, AtomicUsize, Ordering},
    },
    time::Duration,
};

use actix_web::{App, HttpResponse, HttpServer, web};
use budwood::service::gateway::http;
use serde_json::{Value, json};
use tokio::{
    task::JoinHandle,
    time::{sleep, timeout},
};

use crate::office::{Office, Said, free_port};

/// Texts under way at once. Those of one phone go one after the other.
const LANES: usize = 4;

/// How long until it tries again.
const AGAIN: Duration = Duration::from_millis(20);

/// Tries of a report: a service that is away for so long is not waited for.
const REPORTS_MAX: usize = 500;

/// A request that is broken off has so long: it may have been taken or not.
const BROKEN_OFF: Duration = Duration::from_millis(3);

pub(crate) struct Provider {
    book: Arc<Book>,
    lanes: Vec<JoinHandle<()>>,
}

struct Book {
    /// Where the service listens.
    bot: u16,
    waiting: Mutex<Vec<(usize, Said)>>,
    brought: AtomicUsize,
    acknowledged: AtomicUsize,
    taken: Mutex<Vec<Said>>,
    /// So many requests are still to be broken off, of ours and of the service.
    cuts: [AtomicUsize; 2],
    is_noisy: AtomicBool,
}

impl Drop for Provider {
    fn drop(&mut self) {
        for lane in &self.lanes {
            lane.abort();
        }
    }
}

pub(crate) async fn scene() -> (Office, Provider) {
    let send = free_port();
    let office = Office::new(&format!(
        "[[gateway]]\nname = \"line\"\nkind = \"template\"\nallow_demo_numbers = true\n\
         [gateway.out]\nurl = \"http://127.0.0.1:{send}/send\"\nauth = \"bearer\"\n\
         json = '{{\"to\":\"{{to}}\",\"words\":\"{{text}}\",\"ref\":\"{{id}}\"}}'\nid = \"none\"\n\
         [gateway.in]\nverify = \"bearer\"\nbody = \"json\"\nfrom = \"/phone\"\ntext = \"/words\"\n\
         id = \"/mark\"\n\
         [gateway.receipts]\nbody = \"json\"\nours = \"/ref\"\nstate = \"/state\"\n\
         states = {{ delivered = [\"there\"] }}\n"
    ));
    let provider = Provider::start(send, office.port);
    (office, provider)
}

impl Provider {
    fn start(send: u16, bot: u16) -> Self {
        let book = Arc::new(Book {
            bot,
            waiting: Mutex::default(),
            brought: AtomicUsize::new(0),
            acknowledged: AtomicUsize::new(0),
            taken: Mutex::default(),
            cuts: [AtomicUsize::new(0), AtomicUsize::new(0)],
            is_noisy: AtomicBool::new(false),
        });
        let shared = web::Data::new(book.clone());
        let server = HttpServer::new(move || {
            let app = App::new().app_data(shared.clone());
            app.route("/send", web::post().to(take))
        })
        .workers(1)
        .disable_signals()
        .bind(("127.0.0.1", send))
        .expect("a free port");
        tokio::spawn(server.run());
        let lane = |lane| tokio::spawn(bring_all(book.clone(), lane));
        let lanes = (0..LANES).map(lane).collect();
        Self { book, lanes }
    }

    pub(crate) fn bring(&self, from: &str, text: &str) {
        let id = self.book.brought.fetch_add(1, Ordering::Relaxed);
        let said = (from.to_owned(), text.to_owned());
        self.book.waiting().push((id, said));
    }

    pub(crate) fn acknowledged(&self) -> usize {
        self.book.acknowledged.load(Ordering::Relaxed)
    }

    /// What it was handed, oldest first.
    pub(crate) fn handed(&self) -> Vec<Said> {
        self.book.taken.lock().expect("nobody panics").clone()
    }

    /// The next request of ours is broken off, and the next of the service.
    pub(crate) fn cut(&self) {
        for cuts in &self.book.cuts {
            cuts.fetch_add(1, Ordering::Relaxed);
        }
    }

    /// Requests that are none; from now on each text and report comes twice, reports before their
    /// time too.
    pub(crate) async fn noise(&self) {
        self.book.is_noisy.store(true, Ordering::Relaxed);
        for (path, body) in [
            ("in", "{\"phone\":\"+447700900101\""),
            ("in", "{\"words\":\"dead 1\"}"),
            ("in", "\u{0}\u{ff}"),
            ("receipts", "{\"ref\":\"no number\",\"state\":\"there\"}"),
        ] {
            let post = self.book.post(path);
            // One that is down hears no noise.
            if let Ok(answer) = post.body(body).send().await {
                assert!(answer.status().is_client_error(), "{path} {body}");
            }
        }
    }
}

impl Book {
    fn waiting(&self) -> std::sync::MutexGuard<'_, Vec<(usize, Said)>> {
        self.waiting.lock().expect("nobody panics")
    }

    fn post(&self, path: &str) -> reqwest::RequestBuilder {
        let url = format!("http://127.0.0.1:{}/sms/{path}/line", self.bot);
        let client = http::client().build().expect("a client");
        let post = client.post(url).bearer_auth("secret");
        post.header("content-type", "application/json")
    }

    /// Whether this one is to be broken off.
    fn is_cut(&self, whose: usize) -> bool {
        let cuts = &self.cuts[whose];
        let one_less = |left: usize| left.checked_sub(1);
        cuts.fetch_update(Ordering::Relaxed, Ordering::Relaxed, one_less)
            .is_ok()
    }

    async fn bring(&self, id: usize, (from, text): &Said) -> bool {
        let body = json!({"phone": from, "words": text, "mark": format!("m-{id}")});
        let asked = self.post("in").json(&body).send();
        let answer = if self.is_cut(0) {
            match timeout(BROKEN_OFF, asked).await {
                Ok(answer) => answer,
                Err(_) => return false,
            }
        } else {
            asked.await
        };
        answer.is_ok_and(|answer| answer.status().is_success())
    }

    async fn report(&self, ours: &Value) {
        let body = json!({"ref": ours, "state": "there"});
        for _ in 0..REPORTS_MAX {
            let told = self.post("receipts").json(&body).send().await;
            if told.is_ok_and(|answer| answer.status().is_success()) {
                return;
            }
            sleep(AGAIN).await;
        }
    }
}

/// Brings the texts of a part of the phones, each until it is acknowledged.
async fn bring_all(book: Arc<Book>, lane: usize) {
    let is_own = |(_, (from, _)): &&(usize, Said)| {
        let last = from.bytes().next_back().unwrap_or_default();
        usize::from(last) % LANES == lane
    };
    loop {
        let next = book.waiting().iter().find(is_own).cloned();
        let Some((id, said)) = next else {
            sleep(AGAIN).await;
            continue;
        };
        if book.bring(id, &said).await {
            book.acknowledged.fetch_add(1, Ordering::Relaxed);
            book.waiting().retain(|(waiting, _)| *waiting != id);
            if book.is_noisy.load(Ordering::Relaxed) {
                book.bring(id, &said).await;
            }
        } else {
            sleep(AGAIN).await;
        }
    }
}

async fn take(book: web::Data<Arc<Book>>, body: web::Json<Value>) -> HttpResponse {
    let word = |key: &str| body[key].as_str().expect("it is there").to_owned();
    let said = (word("to"), word("words"));
    book.taken.lock().expect("nobody panics").push(said);
    let (ours, later) = (body["ref"].clone(), book.clone());
    let is_noisy = book.is_noisy.load(Ordering::Relaxed);
    if is_noisy {
        book.report(&ours).await;
    }
    let answer = json!({"id": ours});
    actix_web::rt::spawn(async move {
        for _ in 0..1 + usize::from(is_noisy) {
            later.report(&ours).await;
        }
    });
    if book.is_cut(1) {
        // What becomes of the text is not said.
        return HttpResponse::InternalServerError().finish();
    }
    HttpResponse::Ok().json(answer)
}
