//! Texts go out to a stand-in provider, which keeps what it is sent and answers as it is told.

use std::{
    collections::VecDeque,
    io::Read,
    net::{SocketAddr, TcpListener},
    sync::{Arc, Mutex},
    time::Duration,
};

use actix_web::{
    App, HttpRequest, HttpResponse, HttpServer,
    http::StatusCode,
    web::{Bytes, Data, to},
};
use budwood::{
    service::{
        clock::{Clock, FixedClock},
        gateway::oneapi::{Credentials, OneApi, OneApiSettings},
        port::{Abilities, Gateway},
    },
    words::{
        limits,
        secret::Secret,
        traffic::{Outgoing, SendOutcome, Whose},
    },
};
use budwood_scheduler::MessageId;
use serde_json::{Value, json};
use tokio::sync::oneshot;

use super::{RFC_6750, RFC_7617, at};

/// RFC 9110, 10.2.3: the date of the example, and two minutes before it.
const RFC_9110_DATE: &str = "Fri, 31 Dec 1999 23:59:59 GMT";
const TWO_MINUTES_BEFORE: i64 = 946_684_799 - 120;

/// One request as the provider saw it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Seen {
    pub(super) method: String,
    pub(super) path: String,
    pub(super) query: String,
    pub(super) authorization: String,
    pub(super) content_type: String,
    pub(super) headers: Vec<(String, String)>,
    pub(super) body: Value,
    pub(super) raw: String,
}

impl Seen {
    pub(super) fn header(&self, name: &str) -> &str {
        let found = self.headers.iter().find(|(known, _)| known == name);
        found.map_or("", |(_, value)| value)
    }
}

/// Status, headers and body of an answer.
type Answer = (u16, Vec<(&'static str, &'static str)>, &'static str);

#[derive(Default)]
struct Log {
    seen: Mutex<Vec<Seen>>,
    answers: Mutex<VecDeque<Answer>>,
}

/// A stand-in for a provider, on a free port.
pub(super) struct Provider {
    pub(super) address: SocketAddr,
    log: Arc<Log>,
    _stop: oneshot::Sender<()>,
}

impl Provider {
    pub(super) fn start() -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let address = listener.local_addr().unwrap();
        let log = Arc::new(Log::default());
        let data = Data::from(log.clone());
        let (stop, stopped) = oneshot::channel();
        let server = HttpServer::new(move || {
            App::new()
                .app_data(data.clone())
                .default_service(to(answer))
        })
        .workers(1)
        .shutdown_signal(async {
            let _ = stopped.await;
        })
        .listen(listener)
        .unwrap()
        .run();
        tokio::spawn(server);
        Self {
            address,
            log,
            _stop: stop,
        }
    }

    pub(super) fn answers(&self, answer: Answer) {
        self.log.answers.lock().unwrap().push_back(answer);
    }

    pub(super) fn seen(&self) -> Vec<Seen> {
        self.log.seen.lock().unwrap().clone()
    }
}

async fn answer(request: HttpRequest, body: Bytes, log: Data<Log>) -> HttpResponse {
    let header = |name: &str| {
        let value = request.headers().get(name);
        value.map_or("", |value| value.to_str().unwrap()).to_owned()
    };
    log.seen.lock().unwrap().push(Seen {
        method: request.method().to_string(),
        path: request.uri().path().to_owned(),
        authorization: header("authorization"),
        content_type: header("content-type"),
        query: request.query_string().to_owned(),
        headers: request
            .headers()
            .iter()
            .map(|(name, value)| (name.to_string(), value.to_str().unwrap().to_owned()))
            .collect(),
        body: serde_json::from_slice(&body).unwrap_or_default(),
        raw: String::from_utf8_lossy(&body).into_owned(),
    });
    let next = log.answers.lock().unwrap().pop_front();
    let (status, headers, body) = next.unwrap_or((201, vec![], ""));
    let mut response = HttpResponse::build(StatusCode::from_u16(status).unwrap());
    for header in headers {
        response.insert_header(header);
    }
    response.body(body)
}

fn settings(address: SocketAddr) -> OneApiSettings {
    OneApiSettings {
        name: "provider".into(),
        base_url: format!("http://{address}/smsmessaging/v1").parse().unwrap(),
        sender: "+447700900000".into(),
        notify_url: Some(
            "https://budwood.example/sms/receipts/provider"
                .parse()
                .unwrap(),
        ),
        credentials: Credentials::Basic {
            user: RFC_7617.0.into(),
            password: Secret::new(RFC_7617.1),
        },
        timeout: Duration::from_secs(30),
        abilities: Abilities {
            sends: true,
            idempotent: true,
            demo_numbers: true,
        },
    }
}

fn gateway(settings: OneApiSettings) -> OneApi {
    OneApi::new(
        settings,
        Clock::Fixed(FixedClock::at(at(TWO_MINUTES_BEFORE))),
    )
    .unwrap()
}

fn text() -> Outgoing {
    Outgoing {
        id: MessageId(42),
        to: "+447700900123".into(),
        text: "Weed B by 12 May. Reply 1 when done — ขอบคุณ".into(),
        expires_at: chrono::DateTime::UNIX_EPOCH,
    }
}

fn accepted(gateway_id: &str) -> SendOutcome {
    SendOutcome::Accepted {
        ids: vec![gateway_id.into()],
    }
}

#[tokio::test]
async fn a_text_is_posted_as_the_interface_says() {
    let provider = Provider::start();
    provider.answers((
        201,
        vec![(
            "location",
            "http://sms.example/outbound/tel%3A12345/requests/abc-1",
        )],
        "",
    ));
    let gateway = gateway(settings(provider.address));
    assert_eq!(gateway.send(&text()).await, accepted("abc-1"));

    let [mut seen] = provider.seen().try_into().unwrap();
    let correlator = seen.body["outboundSMSMessageRequest"]
        .as_object_mut()
        .unwrap()
        .remove("clientCorrelator")
        .unwrap();
    assert!(correlator.as_str().unwrap().starts_with("42-"));
    assert_eq!(
        seen,
        Seen {
            method: "POST".into(),
            query: String::new(),
            headers: seen.headers.clone(),
            raw: seen.raw.clone(),
            path: "/smsmessaging/v1/outbound/tel%3A%2B447700900000/requests".into(),
            authorization: RFC_7617.2.into(),
            content_type: "application/json".into(),
            body: json!({"outboundSMSMessageRequest": {
                "address": ["tel:+447700900123"],
                "senderAddress": "tel:+447700900000",
                "outboundSMSTextMessage": {"message": text().text},
                "receiptRequest": {
                    "notifyURL": "https://budwood.example/sms/receipts/provider",
                    "callbackData": "42",
                },
            }}),
        }
    );
}

#[tokio::test]
async fn the_same_text_again_has_the_same_correlator() {
    let provider = Provider::start();
    let gateway = gateway(settings(provider.address));
    let other = Outgoing {
        id: MessageId(43),
        ..text()
    };
    for text in [text(), text(), other] {
        gateway.send(&text).await;
    }
    let correlators: Vec<_> = provider
        .seen()
        .iter()
        .map(|seen| seen.body["outboundSMSMessageRequest"]["clientCorrelator"].clone())
        .collect();
    assert_eq!(correlators[0], correlators[1]);
    assert_ne!(correlators[0], correlators[2]);
}

#[tokio::test]
async fn a_token_is_sent_and_receipts_are_asked_for_only_if_wanted() {
    let provider = Provider::start();
    let gateway = gateway(OneApiSettings {
        notify_url: None,
        credentials: Credentials::Bearer {
            token: Secret::new(RFC_6750.0),
        },
        ..settings(provider.address)
    });
    gateway.send(&text()).await;
    let [seen] = provider.seen().try_into().unwrap();
    assert_eq!(seen.authorization, RFC_6750.1);
    assert!(
        seen.body["outboundSMSMessageRequest"]
            .get("receiptRequest")
            .is_none()
    );
}

#[tokio::test]
async fn each_answer_means_one_thing() {
    let provider = Provider::start();
    let gateway = gateway(settings(provider.address));
    let created = r#"{"resourceReference":{"resourceURL":"/a/b-2"}}"#;
    let padding = " ".repeat(limits::ANSWER_BYTES_MAX + 1 - created.len());
    let long: &'static str = format!("{padding}{created}").leak();
    let table: [(Answer, &str); 20] = [
        ((200, vec![], "{}"), "accepted"),
        ((201, vec![], created), "accepted b-2"),
        ((202, vec![], "planted"), "accepted"),
        ((201, vec![("location", "/a/b-3")], long), "accepted b-3"),
        ((201, vec![], long), "accepted"),
        (
            (429, vec![("retry-after", "120")], ""),
            "all again after 120 s",
        ),
        (
            (503, vec![("retry-after", RFC_9110_DATE)], ""),
            "all again after 120 s",
        ),
        (
            (503, vec![("retry-after", "999999999")], ""),
            "all again after 3600 s",
        ),
        ((503, vec![("retry-after", "soon")], ""), "all again"),
        ((503, vec![], ""), "all again"),
        ((408, vec![], ""), "again"),
        ((425, vec![("retry-after", "120")], ""), "again after 120 s"),
        ((401, vec![], ""), "set-up, after 300 s"),
        ((402, vec![], ""), "set-up, after 300 s"),
        ((403, vec![], ""), "set-up, after 300 s"),
        ((404, vec![], ""), "set-up, after 300 s"),
        (
            (302, vec![("location", "/elsewhere")], ""),
            "set-up, after 300 s",
        ),
        ((400, vec![], "+447700900123 is wrong"), "refused"),
        ((500, vec![], ""), "unknown"),
        ((502, vec![], ""), "unknown"),
    ];
    let count = table.len();
    for (answer, meaning) in table {
        provider.answers(answer.clone());
        let outcome = gateway.send(&text()).await;
        assert_eq!(brief(&outcome), meaning, "{answer:?}");
        assert!(!format!("{outcome:?}").contains("900123"), "{outcome:?}");
    }
    // Nothing was followed or tried again.
    assert_eq!(provider.seen().len(), count);
}

#[tokio::test]
async fn a_refusal_tells_the_code_of_the_provider_and_not_its_text() {
    let provider = Provider::start();
    provider.answers((
        400,
        vec![],
        r#"{"requestError":{"serviceException":{"messageId":"SVC0004","variables":["+447700900123"]}}}"#,
    ));
    assert_eq!(
        gateway(settings(provider.address)).send(&text()).await,
        SendOutcome::Refused {
            code: Some("SVC0004".into()),
            why: "the provider answered 400 Bad Request (SVC0004)".into()
        }
    );
}

#[tokio::test]
async fn no_answer_in_time_is_unknown() {
    let gateway = gateway(OneApiSettings {
        timeout: Duration::from_millis(200),
        ..settings(reads_and_is_silent())
    });
    assert_eq!(brief(&gateway.send(&text()).await), "unknown");
}

#[tokio::test]
async fn a_connection_that_breaks_after_the_text_is_unknown() {
    let gateway = gateway(settings(reads_and_hangs_up()));
    assert_eq!(brief(&gateway.send(&text()).await), "unknown");
}

#[tokio::test]
async fn no_connection_is_tried_again() {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let nobody = listener.local_addr().unwrap();
    drop(listener);
    let outcome = gateway(settings(nobody)).send(&text()).await;
    assert_eq!(brief(&outcome), "all again");
    assert!(!format!("{outcome:?}").contains(&nobody.port().to_string()));
}

#[test]
fn an_address_that_cannot_be_extended_is_refused_at_the_start() {
    let settings = OneApiSettings {
        base_url: "mailto:someone@sms.example".parse().unwrap(),
        ..settings(([127, 0, 0, 1], 9).into())
    };
    assert!(OneApi::new(settings, Clock::System).is_err());
}

fn brief(outcome: &SendOutcome) -> String {
    match outcome {
        SendOutcome::Accepted { ids } => match ids.as_slice() {
            [] => "accepted".into(),
            ids => format!("accepted {}", ids.join(" ")),
        },
        SendOutcome::Wait { whose, after, .. } => {
            let whose = match whose {
                Whose::Text => "again",
                Whose::Gateway => "all again",
                Whose::SetUp => "set-up,",
            };
            let after = after.map(|wait| format!(" after {} s", wait.as_secs()));
            format!("{whose}{}", after.unwrap_or_default())
        }
        SendOutcome::Refused { .. } => "refused".into(),
        SendOutcome::Unknown { .. } => "unknown".into(),
    }
}

/// Takes one connection, reads for as long as the other side holds it, and says nothing.
fn reads_and_is_silent() -> SocketAddr {
    listen(|stream| {
        let mut all = Vec::new();
        let _ = stream.read_to_end(&mut all);
    })
}

/// Takes one connection, reads the end of a JSON body, and closes.
fn reads_and_hangs_up() -> SocketAddr {
    listen(|stream| {
        let mut all = Vec::new();
        let mut some = [0; 4096];
        while !all.ends_with(b"}}") {
            match stream.read(&mut some) {
                Ok(0) | Err(_) => return,
                Ok(bytes) => all.extend_from_slice(&some[..bytes]),
            }
        }
    })
}

fn listen(serve: impl FnOnce(&mut std::net::TcpStream) + Send + 'static) -> SocketAddr {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = listener.local_addr().unwrap();
    std::thread::spawn(move || {
        let (mut stream, _) = listener.accept().unwrap();
        serve(&mut stream);
    });
    address
}
