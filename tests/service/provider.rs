//! A stand-in for a provider: takes what it is sent, as the OneAPI says, and keeps it.

use std::time::Duration;

use actix_web::{App, HttpResponse, HttpServer, web};
use serde_json::{Value, json};
use tokio::sync::watch;

/// Nothing here takes nearly as long.
pub(super) const DEADLINE: Duration = Duration::from_secs(60);

/// Who was sent which text.
type Sent = Vec<(String, String)>;

pub(super) struct Provider {
    pub(super) port: u16,
    sent: watch::Receiver<Sent>,
}

/// What a provider answers.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Answers {
    AsTheStandardSays,
    /// That something failed, whatever it did, and it does not look at the correlator.
    ThatItFailed,
}

impl Provider {
    pub(super) async fn start() -> Self {
        Self::answering(Answers::AsTheStandardSays).await
    }

    /// One that takes each text and says that something failed. It ignores the correlator, so that
    /// each request is a text.
    pub(super) async fn forgetful() -> Self {
        Self::answering(Answers::ThatItFailed).await
    }

    async fn answering(answers: Answers) -> Self {
        let (tell, sent) = watch::channel(Sent::new());
        let tell = web::Data::new(tell);
        let server = HttpServer::new(move || {
            App::new()
                .app_data(tell.clone())
                .app_data(web::Data::new(answers))
                .route("/outbound/{sender}/requests", web::post().to(take))
        })
        .workers(1)
        .disable_signals()
        .bind(("127.0.0.1", 0))
        .expect("a free port");
        let port = server.addrs().first().expect("one address").port();
        tokio::spawn(server.run());
        Self { port, sent }
    }

    pub(super) fn sent(&self) -> Sent {
        self.sent.borrow().clone()
    }

    /// Waits until so many texts were sent, and gives them in order.
    pub(super) async fn wait_for(&self, number: usize) -> Sent {
        let mut sent = self.sent.clone();
        let all = sent.wait_for(|sent| sent.len() >= number);
        let in_time = tokio::time::timeout(DEADLINE, all).await;
        assert!(in_time.is_ok(), "only {:?}", self.sent());
        self.sent()
    }
}

async fn take(
    tell: web::Data<watch::Sender<Sent>>,
    answers: web::Data<Answers>,
    body: web::Json<Value>,
) -> HttpResponse {
    let request = &body["outboundSMSMessageRequest"];
    let to = request["address"][0].as_str().expect("an address");
    let to = to.trim_start_matches("tel:").to_owned();
    let text = request["outboundSMSTextMessage"]["message"]
        .as_str()
        .expect("a text")
        .to_owned();
    let mut number = 0;
    tell.send_modify(|sent| {
        sent.push((to, text));
        number = sent.len();
    });
    if **answers == Answers::ThatItFailed {
        return HttpResponse::InternalServerError().finish();
    }
    let address = format!("http://127.0.0.1/outbound/12345/requests/r-{number}");
    HttpResponse::Created()
        .insert_header(("Location", address.clone()))
        .json(json!({ "resourceReference": { "resourceURL": address } }))
}
