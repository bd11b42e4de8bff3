//! The examples of deploy/provider.md, byte for byte: what a provider may send, and what it gets.
//!
//! The shapes are those of the GSMA OneAPI (OMA RESTful Network API for Short Messaging).

use std::{
    io::{Read, Write},
    net::{TcpListener, TcpStream},
    thread,
    time::Duration,
};

use budwood::{
    service::{
        clock::{Clock, FixedClock},
        gateway::oneapi::{Credentials, OneApi, OneApiSettings},
        port::{Abilities, Gateway},
    },
    words::{
        secret::Secret,
        traffic::{About, Delivery, Inbound, Outgoing, Receipt},
    },
};
use budwood_scheduler::MessageId;

use super::{RFC_6750, SIGNED_AT, Service, at, bearer};

const PAGE: &str = include_str!("../../deploy/provider.md");

/// A request as a `curl` line of the page has it.
struct Curl {
    headers: Vec<(String, String)>,
    path: String,
    body: String,
}

/// The requests that are shown, in order. The token stands in a variable there.
fn curls() -> Vec<Curl> {
    let shown = PAGE.split("curl ").skip(1);
    shown
        .map(|text| curl(text.split("```").next().unwrap()))
        .collect()
}

fn curl(text: &str) -> Curl {
    let headers = text.split("-H \"").skip(1).map(|part| {
        let header = part.split('"').next().unwrap();
        let (name, value) = header.split_once(": ").unwrap();
        (
            name.to_owned(),
            value.replace("$BUDWOOD_SECRET_PROVIDER_IN", RFC_6750.0),
        )
    });
    let (_, rest) = text.split_once("-d '").unwrap();
    let (_, address) = text.split_once("http://127.0.0.1:8470").unwrap();
    Curl {
        headers: headers.collect(),
        path: address.split_whitespace().next().unwrap().to_owned(),
        body: rest.split('\'').next().unwrap().to_owned(),
    }
}

async fn post(service: &Service, curl: &Curl) -> u16 {
    let mut request = super::client()
        .post(service.url(&curl.path))
        .timeout(Duration::from_secs(60))
        .body(curl.body.clone());
    for (name, value) in &curl.headers {
        request = request.header(name, value);
    }
    request.send().await.unwrap().status().as_u16()
}

#[tokio::test]
async fn a_provider_may_send_what_is_shown() {
    let [text, receipt] = curls().try_into().ok().unwrap();
    let service = Service::start(bearer());
    assert_eq!(post(&service, &text).await, 204);
    assert_eq!(post(&service, &receipt).await, 204);
    let expected = Inbound {
        gateway: "provider".into(),
        gateway_id: Some("m-1".into()),
        from: "+447700900001".into(),
        to: "12345".into(),
        text: "planted 120 block B".into(),
        sent_at: None,
    };
    assert_eq!(service.taker.texts(), [expected]);
    let expected = Receipt {
        gateway: "provider".into(),
        about: About::Ours(MessageId(42)),
        delivery: Delivery::Delivered,
        code: Some("DeliveredToTerminal".into()),
    };
    assert_eq!(service.taker.receipts(), [expected]);
    service.stop().await;
}

/// Without the token nothing is taken, so the lines show all that it needs.
#[tokio::test]
async fn the_token_of_the_example_is_needed() {
    let [mut text, _] = curls().try_into().ok().unwrap();
    text.headers.retain(|(name, _)| name != "Authorization");
    assert_eq!(text.headers.len(), 1);
    let service = Service::start_with(bearer(), super::Taker::new(0), SIGNED_AT);
    assert_eq!(post(&service, &text).await, 401);
    service.stop().await;
}

#[tokio::test]
async fn a_provider_gets_what_is_shown() {
    let (_, shown) = PAGE.split_once("```http\n").unwrap();
    let (shown, _) = shown.split_once("\n```").unwrap();
    let (head, body) = shown.split_once("\n\n").unwrap();
    let mut head = head.lines();
    let request = head.next().unwrap();

    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = listener.local_addr().unwrap();
    let provider = thread::spawn(move || taken(listener.accept().unwrap().0));
    let settings = OneApiSettings {
        name: "provider".into(),
        base_url: format!("http://{address}/smsmessaging/v1").parse().unwrap(),
        sender: "12345".into(),
        notify_url: Some(
            "https://budwood.example/sms/receipts/provider"
                .parse()
                .unwrap(),
        ),
        credentials: Credentials::Basic {
            user: "budwood".into(),
            password: Secret::new("secret"),
        },
        timeout: Duration::from_secs(30),
        abilities: Abilities {
            sends: true,
            idempotent: false,
            demo_numbers: true,
        },
    };
    let clock = Clock::Fixed(FixedClock::at(at(SIGNED_AT)));
    let text = Outgoing {
        id: MessageId(42),
        to: "+447700900001".into(),
        text: "B: 120 planted Sat 12 Dec. Wrong? Text NO".into(),
        expires_at: chrono::DateTime::UNIX_EPOCH,
    };
    OneApi::new(settings, clock).unwrap().send(&text).await;

    let (found, sent) = provider.join().unwrap();
    assert_eq!(sent, body);
    assert_eq!(
        found.lines().next(),
        Some(format!("{request} HTTP/1.1").as_str())
    );
    // Names of fields have no case (RFC 9110, 5.1).
    let found = found.to_lowercase();
    for field in head {
        let (name, value) = field.split_once(": ").unwrap();
        let field = format!("\r\n{name}: {value}\r\n").to_lowercase();
        assert!(found.contains(&field), "{field:?} is not in {found:?}");
    }
}

/// The head and the body of one request, as they came; answered with 201.
fn taken(mut stream: TcpStream) -> (String, String) {
    let mut bytes = Vec::new();
    let mut part = [0; 4_096];
    loop {
        let length = stream.read(&mut part).unwrap();
        bytes.extend_from_slice(&part[..length]);
        let text = String::from_utf8_lossy(&bytes).into_owned();
        let Some((head, body)) = text.split_once("\r\n\r\n") else {
            continue;
        };
        let head = format!("{head}\r\n");
        let (_, rest) = head.split_once("content-length: ").unwrap();
        let wanted: usize = rest.lines().next().unwrap().parse().unwrap();
        if body.len() >= wanted {
            stream
                .write_all(b"HTTP/1.1 201 Created\r\ncontent-length: 0\r\n\r\n")
                .unwrap();
            return (head, body.to_owned());
        }
    }
}
