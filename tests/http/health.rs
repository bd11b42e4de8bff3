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
            "unclear_waiting": 19,
            "held_back": {
                "answers": 5, "notices": 6, "strangers": 7, "unpaid": 8,
                "services": 12, "echoes": 13, "machines": 14, "costly": 15,
            },
            "month": {"parts": 10, "money": 2.5, "gone_pct": 11},
            "locked": 9,
            "gateways": [{
                "name": "provider",
                "last_in": at(SIGNED_AT),
                "last_receipt": at(SIGNED_AT),
                "last_out": null,
                "oldest_waiting": at(SIGNED_AT),
                "refused_in_a_row": 2,
                "texts_in": 16, "receipts": 22, "texts_out": 17, "failed": 18,
                "signal_pct": 61, "balance": "12.50 left",
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

/// The page itself is read by another author's parser in `tests/peers/metrics.rs`.
#[tokio::test]
async fn a_monitor_collects_the_same_figures() {
    let service = Service::start(bearer());
    let answer = client().get(service.url("/metrics")).send().await.unwrap();
    assert_eq!(answer.status(), 200);
    assert_eq!(
        answer.headers()["content-type"],
        "application/openmetrics-text; version=1.0.0; charset=utf-8"
    );
    let version = concat!("version=\"", env!("CARGO_PKG_VERSION"), "\"");
    let page = answer.text().await.unwrap();
    let page = page.replace(version, "version=\"0.0.0\"");
    // Samples of one figure have no order.
    let sorted = |page: &str| {
        let mut lines: Vec<String> = page.lines().map(str::to_owned).collect();
        lines.sort();
        lines
    };
    assert_eq!(sorted(&page), sorted(include_str!("metrics.txt")));
    assert!(page.ends_with("\n# EOF\n"));
    *service.taker.trouble.lock().unwrap() = Some("the disk is nearly full".into());
    let answer = client().get(service.url("/metrics")).send().await.unwrap();
    assert!(
        answer
            .text()
            .await
            .unwrap()
            .contains("\nbudwood_well 0.0\n")
    );
    service.stop().await;
}
