//! Texts and receipts come in.

use std::{
    io::{Read, Write},
    net::{SocketAddr, TcpStream},
    sync::Arc,
    time::Duration,
};

use budwood::{
    service::{door::Auth, port::Refused, signature::SignatureKeys},
    words::{
        limits,
        traffic::{About, Delivery, Receipt},
    },
};
use budwood_scheduler::MessageId;
use reqwest::{RequestBuilder, Response};
use serde_json::{Value, json};

use super::{RFC_6750, RFC_7617, SIGNED_AT, Service, Taker, basic, bearer, client};

// The example of the Standard Webhooks reference libraries.
const SECRET: &str = "whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw";
const EXAMPLE_ID: &str = "msg_p5jXN8AQM9LWM0D4loKWxJek";
const EXAMPLE_BODY: &str = r#"{"test": 2432232314}"#;
const EXAMPLE_SIGNATURE: &str = "v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE=";

fn signature() -> Auth {
    Auth::Signature {
        keys: SignatureKeys::parse(SECRET).unwrap(),
    }
}

fn notification(texts: &[&str]) -> String {
    let texts: Vec<_> = texts
        .iter()
        .enumerate()
        .map(|(index, text)| {
            json!({"messageId": format!("m-{index}"), "message": text,
                "senderAddress": "tel:+447700900123", "destinationAddress": "tel:12345"})
        })
        .collect();
    json!({"inboundSMSMessageNotification": {"inboundSMSMessage": texts}}).to_string()
}

fn post(service: &Service, path: &str, body: impl Into<reqwest::Body>) -> RequestBuilder {
    // A server that forgets a request must fail the test and not hold it.
    client()
        .post(service.url(path))
        .timeout(Duration::from_secs(60))
        .header("content-type", "application/json")
        .body(body)
}

/// Posts with the right token.
async fn send(service: &Service, path: &str, body: impl Into<reqwest::Body>) -> Response {
    post(service, path, body)
        .header("authorization", RFC_6750.1)
        .send()
        .await
        .unwrap()
}

/// An error is problem details with the same status (RFC 9457, 3.1); gives its detail.
async fn detail(answer: Response, status: u16) -> String {
    assert_eq!(answer.status(), status);
    assert_eq!(answer.headers()["content-type"], "application/problem+json");
    let body: Value = answer.json().await.unwrap();
    assert_eq!(body["status"], status);
    assert!(body["title"].is_string(), "{body}");
    body["detail"].as_str().unwrap().to_owned()
}

#[tokio::test]
async fn a_text_is_taken_as_it_was_sent() {
    let service = Service::start(bearer());
    let answer = send(
        &service,
        "/sms/in/provider",
        notification(&["trồng 120 lô B 🌱"]),
    )
    .await;
    assert_eq!(answer.status(), 204);
    let [text] = service.taker.texts().try_into().unwrap();
    assert_eq!(text.gateway, "provider");
    assert_eq!(text.gateway_id.as_deref(), Some("m-0"));
    assert_eq!(
        (text.from.as_str(), text.to.as_str()),
        ("+447700900123", "12345")
    );
    assert_eq!(text.text, "trồng 120 lô B 🌱");
    service.stop().await;
}

#[tokio::test]
async fn all_texts_of_a_notification_are_durable_before_it_is_answered() {
    let taker = Taker::new(3);
    let service = Service::start_with(bearer(), taker.clone(), SIGNED_AT);
    let answer = send(&service, "/sms/in/provider", notification(&["a", "b", "c"])).await;
    assert_eq!(answer.status(), 204);
    assert_eq!(*taker.durable.borrow(), 3);
    let texts: Vec<_> = taker.texts().into_iter().map(|text| text.text).collect();
    assert_eq!(texts, ["a", "b", "c"]);
    service.stop().await;
}

#[tokio::test]
async fn a_stop_lets_a_request_end() {
    // The text becomes durable only when a second one comes, which is after the stop.
    let taker = Taker::new(2);
    let service = Service::start_with(bearer(), taker.clone(), SIGNED_AT);
    let first = post(&service, "/sms/in/provider", notification(&["a"]))
        .header("authorization", RFC_6750.1)
        .send();
    let first = tokio::spawn(first);
    let mut came = taker.came.subscribe();
    came.wait_for(|count| *count == 1).await.unwrap();
    service.stop.send(()).unwrap();
    while TcpStream::connect(service.address).is_ok() {
        tokio::task::yield_now().await;
    }
    assert!(!service.running.is_finished());
    taker.came.send_modify(|count| *count += 1);
    assert_eq!(first.await.unwrap().unwrap().status(), 204);
    service.running.await.unwrap().unwrap();
    // The workers let go of what was served as they end, so that the engine can end too.
    drop(service.taker);
    let let_go = async {
        while Arc::strong_count(&taker) > 1 {
            tokio::task::yield_now().await;
        }
    };
    tokio::time::timeout(Duration::from_secs(60), let_go)
        .await
        .unwrap();
}

#[tokio::test]
async fn busy_and_unhealthy_ask_to_come_again() {
    let service = Service::start(bearer());
    for (refused, wait) in [
        (Refused::Busy, limits::BUSY_RETRY_AFTER_SECS),
        (Refused::Unhealthy, limits::UNHEALTHY_RETRY_AFTER_SECS),
    ] {
        *service.taker.refuses.lock().unwrap() = Some(refused);
        let answer = send(&service, "/sms/in/provider", notification(&["a"])).await;
        assert_eq!(answer.headers()["retry-after"], wait.to_string());
        assert!(detail(answer, 503).await.contains("send it again later"));
    }
    service.stop().await;
}

#[tokio::test]
async fn receipts_are_taken() {
    let service = Service::start(bearer());
    let body = json!({"deliveryInfoNotification": {"callbackData": "42", "deliveryInfo":
        {"address": "tel:+447700900123", "deliveryStatus": "DeliveredToTerminal"}}});
    let answer = send(&service, "/sms/receipts/provider", body.to_string()).await;
    assert_eq!(answer.status(), 204);
    let expected = Receipt {
        gateway: "provider".into(),
        about: About::Ours(MessageId(42)),
        delivery: Delivery::Delivered,
        code: Some("DeliveredToTerminal".into()),
    };
    assert_eq!(service.taker.receipts(), [expected]);
    service.stop().await;
}

#[tokio::test]
async fn a_password_or_token_opens_and_nothing_else_does() {
    for (auth, right, challenge) in [
        (basic(), RFC_7617.2, "Basic "),
        (bearer(), RFC_6750.1, "Bearer "),
    ] {
        let service = Service::start(auth);
        for path in ["/sms/in/provider", "/sms/receipts/provider"] {
            let wrong = [
                None,
                Some(""),
                Some("Basic"),
                Some("Basic QWxhZGRpbjpvcGVuIHNlc2FtZ"),
                Some("Basic QWxhZGRpbjpvcGVu"),
                Some("Bearer mF_9.B5f-4.1JqN"),
                Some("Bearer mF_9.B5f-4.1JqMx"),
                Some("Digest mF_9.B5f-4.1JqM"),
            ];
            for header in wrong {
                let mut request = post(&service, path, notification(&["a"]));
                if let Some(header) = header {
                    request = request.header("authorization", header);
                }
                let answer = request.send().await.unwrap();
                let found = answer.headers()["www-authenticate"].to_str().unwrap();
                assert!(found.starts_with(challenge), "{found}");
                detail(answer, 401).await;
            }
        }
        assert!(service.taker.texts().is_empty());
        // RFC 9110, 11.1: the case of the scheme does not matter.
        for header in [right.to_owned(), right.replacen('B', "b", 1)] {
            let answer = post(&service, "/sms/in/provider", notification(&["a"]))
                .header("authorization", header)
                .send()
                .await
                .unwrap();
            assert_eq!(answer.status(), 204);
        }
        service.stop().await;
    }
}

async fn send_signed(service: &Service, id: &str, signatures: &str, body: String) -> Response {
    post(service, "/sms/in/provider", body)
        .header("webhook-id", id)
        .header("webhook-timestamp", SIGNED_AT.to_string())
        .header("webhook-signature", signatures)
        .send()
        .await
        .unwrap()
}

/// The published body is no notification: it must come past the signature and be refused after.
#[tokio::test]
async fn the_published_signature_opens_for_five_minutes() {
    for (now, status) in [(0, 400), (300, 400), (-300, 400), (301, 401), (-301, 401)] {
        let service = Service::start_with(signature(), Taker::new(0), SIGNED_AT + now);
        let body = EXAMPLE_BODY.to_owned();
        let answer = send_signed(&service, EXAMPLE_ID, EXAMPLE_SIGNATURE, body).await;
        detail(answer, status).await;
        service.stop().await;
    }
}

#[tokio::test]
async fn a_signed_text_is_taken_and_a_changed_one_is_not() {
    let service = Service::start(signature());
    let body = r#"{"inboundSMSMessageNotification":{"inboundSMSMessage":
        {"message":"planted 120","senderAddress":"+447700900123"}}}"#;
    let library = standardwebhooks::Webhook::new(SECRET).unwrap();
    let right = library.sign("req-1", SIGNED_AT, body.as_bytes()).unwrap();
    let changed = body.replace("120", "121");
    for (id, signatures, body) in [
        ("req-1", right.as_str(), changed.as_str()),
        ("req-2", right.as_str(), body),
        ("req-1", EXAMPLE_SIGNATURE, body),
        ("req-1", "", body),
    ] {
        let answer = send_signed(&service, id, signatures, body.to_owned()).await;
        assert!(answer.headers().contains_key("www-authenticate"));
        detail(answer, 401).await;
    }
    let unsigned = post(&service, "/sms/in/provider", body)
        .send()
        .await
        .unwrap();
    detail(unsigned, 401).await;
    assert!(service.taker.texts().is_empty());

    let several = format!("{EXAMPLE_SIGNATURE} {right}");
    let answer = send_signed(&service, "req-1", &several, body.to_owned()).await;
    assert_eq!(answer.status(), 204);
    // The text has no id of its own, so the signed id of the request serves.
    let [text] = service.taker.texts().try_into().unwrap();
    assert_eq!(text.gateway_id.as_deref(), Some("req-1/0"));
    service.stop().await;
}

#[tokio::test]
async fn a_wrong_body_is_told_what_to_send() {
    let service = Service::start(bearer());
    let mut details = Vec::new();
    for body in [
        b"planted 120".as_slice(),
        br#"{"from":"+447700900123","text":"planted 120"}"#,
        b"{\"inboundSMSMessageNotification\":\"\xff\"}",
        b"",
        "[".repeat(10_000).as_bytes(),
    ] {
        let answer = send(&service, "/sms/in/provider", body.to_vec()).await;
        details.push(detail(answer, 400).await);
    }
    insta::assert_snapshot!(details.join("\n"), @"
    the body is not JSON: expected value at line 1 column 1
    the body is JSON, but not an inboundSMSMessageNotification: missing field `inboundSMSMessageNotification` at line 1 column 45
    the body is not UTF-8; send JSON in UTF-8 (byte 34 is wrong)
    the body is not JSON: EOF while parsing a value at line 1 column 0
    the body is not JSON: recursion limit exceeded at line 1 column 128
    ");
    assert!(service.taker.texts().is_empty());
    service.stop().await;
}

#[tokio::test]
async fn a_wrong_type_is_told_what_to_send() {
    let service = Service::start(bearer());
    let mut details = Vec::new();
    for (name, value) in [
        ("content-type", "text/plain"),
        ("content-type", "application/x-www-form-urlencoded"),
        ("content-type", "application/json; charset=ISO-8859-1"),
        ("content-encoding", "gzip"),
    ] {
        let mut request = post(&service, "/sms/in/provider", notification(&["a"]))
            .header("authorization", RFC_6750.1)
            .build()
            .unwrap();
        request.headers_mut().insert(name, value.parse().unwrap());
        let answer = client().execute(request).await.unwrap();
        details.push(detail(answer, 415).await);
    }
    insta::assert_snapshot!(details.join("\n"), @"
    send JSON, with the header Content-Type: application/json
    send JSON, with the header Content-Type: application/json
    send JSON in UTF-8; other character sets are not read
    send the body as it is, without Content-Encoding
    ");
    let mut request = post(&service, "/sms/in/provider", notification(&["a"]))
        .header("authorization", RFC_6750.1)
        .build()
        .unwrap();
    request.headers_mut().insert(
        "content-type",
        "Application/JSON; charset=\"UTF-8\"".parse().unwrap(),
    );
    let answer = client().execute(request).await.unwrap();
    assert_eq!(answer.status(), 204);
    service.stop().await;
}

#[tokio::test]
async fn a_body_has_a_limit_whether_its_length_is_told_or_not() {
    let service = Service::start(bearer());
    // White space is JSON, so this is right in all but its length.
    let padded = |bytes: usize| {
        let body = notification(&["a"]);
        format!("{}{body}", " ".repeat(bytes - body.len()))
    };
    let max = limits::BODY_BYTES_MAX;
    let answer = send(&service, "/sms/in/provider", padded(max)).await;
    assert_eq!(answer.status(), 204);
    let answer = send(&service, "/sms/in/provider", padded(max + 1)).await;
    detail(answer, 413).await;

    // A length that is told is enough: nothing of the body has to come.
    let announced = format!(
        "POST /sms/in/provider HTTP/1.1\r\nhost: x\r\nauthorization: {}\r\n\
         content-type: application/json\r\ncontent-length: {}\r\n\r\n",
        RFC_6750.1,
        max + 1
    );
    let answer = raw(service.address, announced).await;
    assert!(answer.starts_with("HTTP/1.1 413 "), "{answer}");

    let mut chunked = format!(
        "POST /sms/in/provider HTTP/1.1\r\nhost: x\r\nauthorization: {}\r\n\
         content-type: application/json\r\ntransfer-encoding: chunked\r\n\r\n",
        RFC_6750.1
    );
    for chunk in padded(max + 1).as_bytes().chunks(4096) {
        let chunk = std::str::from_utf8(chunk).unwrap();
        chunked += &format!("{:x}\r\n{chunk}\r\n", chunk.len());
    }
    chunked += "0\r\n\r\n";
    let answer = raw(service.address, chunked).await;
    assert!(answer.starts_with("HTTP/1.1 413 "), "{answer}");
    assert_eq!(service.taker.texts().len(), 1);
    service.stop().await;
}

/// A client that promises more than it sends is cut off by its own end, and nothing is taken.
#[tokio::test]
async fn half_a_body_is_not_taken() {
    let service = Service::start(bearer());
    let body = notification(&["a"]);
    let request = format!(
        "POST /sms/in/provider HTTP/1.1\r\nhost: x\r\nauthorization: {}\r\n\
         content-type: application/json\r\ncontent-length: {}\r\n\r\n{body}",
        RFC_6750.1,
        body.len() + 1
    );
    let answer = raw(service.address, request).await;
    assert!(!answer.starts_with("HTTP/1.1 2"), "{answer}");
    assert!(service.taker.texts().is_empty());
    service.stop().await;
}

#[tokio::test]
async fn other_paths_and_methods_say_where_to_go() {
    let service = Service::start(bearer());
    let client = client();
    for path in ["/", "/sms", "/sms/inbound", "/../etc", "/%ff"] {
        let answer = client.get(service.url(path)).send().await.unwrap();
        assert!(detail(answer, 404).await.contains("POST /sms/in/NAME"));
    }
    for path in ["/sms/in/other", "/sms/receipts/other"] {
        let answer = send(&service, path, notification(&["a"])).await;
        assert!(
            detail(answer, 404)
                .await
                .contains("the name of the gateway")
        );
    }
    assert!(service.taker.texts().is_empty());
    for (path, method, allow) in [
        ("/sms/in/provider", "GET", "POST"),
        ("/sms/receipts/provider", "DELETE", "POST"),
        ("/health", "POST", "GET"),
    ] {
        let method = method.parse().unwrap();
        let answer = client
            .request(method, service.url(path))
            .send()
            .await
            .unwrap();
        assert_eq!(answer.headers()["allow"], allow);
        detail(answer, 405).await;
    }
    service.stop().await;
}

/// Writes bytes, ends the writing side, and gives what comes back.
async fn raw(address: SocketAddr, request: String) -> String {
    tokio::task::spawn_blocking(move || {
        let mut stream = TcpStream::connect(address).unwrap();
        // The server may close before it has read all; what it answered counts.
        let _ = stream.write_all(request.as_bytes());
        let _ = stream.shutdown(std::net::Shutdown::Write);
        let mut answer = Vec::new();
        let _ = stream.read_to_end(&mut answer);
        String::from_utf8_lossy(&answer).into_owned()
    })
    .await
    .unwrap()
}

/// The body of a refused request is not read to its end, which may never come.
#[tokio::test]
async fn a_refused_body_is_not_read_without_end() {
    let service = Service::start(bearer());
    let address = service.address;
    let sent = tokio::task::spawn_blocking(move || {
        let mut stream = TcpStream::connect(address).unwrap();
        stream
            .set_write_timeout(Some(Duration::from_secs(60)))
            .unwrap();
        let head = "POST /sms/in/provider HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\n\
                    transfer-encoding: chunked\r\n\r\n";
        stream.write_all(head.as_bytes()).unwrap();
        let chunk = format!("10000\r\n{}\r\n", " ".repeat(0x10000));
        // Far more than any machine takes in while the server waits for the sender to see its answer.
        (0..1_000_000).any(|_| stream.write_all(chunk.as_bytes()).is_err())
    });
    assert!(sent.await.unwrap(), "64 gigabytes were read");
    service.stop().await;
}
