//! What a monitor sees.

use serde_json::{Value, json};

use super::{SIGNED_AT, Service, at, bearer, client};

#[tokio::test]
async fn health_needs_no_password_and_says_what_waits() {
    let service = Service::start(bearer());
    let answer = client().get(service.url("/health")).send().await.unwrap();
    assert_eq!(answer.status(), 200);
    assert_eq!(answer.headers()["cache-control"], "no-store");
    assert_eq!(
        answer.json::<Value>().await.unwrap(),
        json!({
            "healthy": true,
            "inbox_waiting": 3,
            "outbox_waiting": 4,
            "held_back": {"answers": 5, "notices": 6, "strangers": 7, "unpaid": 8},
            "month": {"parts": 10, "gone_pct": 11},
            "locked": 9,
            "gateways": [{
                "name": "provider",
                "last_in": at(SIGNED_AT),
                "last_out": null,
                "oldest_waiting": at(SIGNED_AT),
                "refused_in_a_row": 2,
            }],
        })
    );
    service.stop().await;
}

#[tokio::test]
async fn trouble_is_503() {
    let service = Service::start(bearer());
    *service.taker.trouble.lock().unwrap() = Some("the disk is nearly full".into());
    let answer = client().get(service.url("/health")).send().await.unwrap();
    assert_eq!(answer.status(), 503);
    let body = answer.json::<Value>().await.unwrap();
    assert_eq!(body["healthy"], false);
    assert_eq!(body["trouble"], "the disk is nearly full");
    service.stop().await;
}
