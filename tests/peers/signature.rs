//! Signed requests against PyPI standardwebhooks.

use base64::{Engine, engine::general_purpose::STANDARD};
use budwood::service::signature::{SignatureKeys, Signed};
use chrono::DateTime;
use serde_json::{Value, json};

use crate::peer::ask;

/// One request to sign.
struct Request {
    key: String,
    id: String,
    timestamp: i64,
    body: String,
}

/// Keys of every length that the standard allows, bodies from empty to long, with all letters.
fn requests() -> Vec<Request> {
    (24..=64_u8)
        .map(|length| {
            let key: Vec<u8> = (0..length).map(|at| at.wrapping_mul(37) ^ length).collect();
            Request {
                key: format!("whsec_{}", STANDARD.encode(key)),
                id: format!("msg_{length}"),
                timestamp: 1_614_265_330 + i64::from(length) * 86_400,
                body: format!("{{\"text\": \"dead {length} ต้น é\"}}")
                    .repeat(usize::from(length - 24)),
            }
        })
        .collect()
}

fn is_good(request: &Request, signatures: &str, body: &str, seconds_late: i64) -> bool {
    let keys = SignatureKeys::parse(&request.key).expect("a key of an allowed length");
    let now = request.timestamp + seconds_late;
    let signed = Signed {
        id: &request.id,
        timestamp: &request.timestamp.to_string(),
        signatures,
        body: body.as_bytes(),
    };
    keys.verify(&signed, DateTime::from_timestamp(now, 0).expect("a time"))
}

#[test]
fn what_the_peer_signs_is_taken_and_what_was_changed_is_not() {
    let requests = requests();
    let questions: Vec<Value> = requests
        .iter()
        .map(|r| json!({"key": r.key, "id": r.id, "timestamp": r.timestamp, "body": r.body}))
        .collect();
    let answers = ask("signature.py", &questions);
    assert_eq!(answers.len(), requests.len());
    let mut other = "v1,AAAA";
    for (request, answer) in requests.iter().zip(&answers) {
        let good = answer
            .get("signature")
            .and_then(Value::as_str)
            .expect("a text");
        let body = request.body.as_str();
        assert!(is_good(request, good, body, 0), "{}", request.id);
        assert!(
            is_good(request, &format!("{other} {good}"), body, 60),
            "{}",
            request.id
        );
        assert!(!is_good(request, other, body, 0), "{}", request.id);
        assert!(
            !is_good(request, good, &format!("{body} "), 0),
            "{}",
            request.id
        );
        // Five minutes is the tolerance of the reference libraries.
        assert!(!is_good(request, good, body, 301), "{}", request.id);
        assert!(!is_good(request, good, body, -301), "{}", request.id);
        other = good;
    }
}
