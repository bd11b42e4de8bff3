//! The page for monitors against the strict parser of PyPI prometheus-client.
//!
//! `tests/http/health.rs` says that the service gives this very page.

use serde_json::json;

use crate::peer::ask;

const PAGE: &str = include_str!("../http/metrics.txt");

#[test]
fn figures_for_a_monitor_are_read_by_another_parser() {
    let answers = ask("metrics.py", &[json!({"page": PAGE})]);
    let samples = answers
        .first()
        .and_then(|answer| answer.as_array())
        .unwrap();
    let told = |name: &str, labels: serde_json::Value| {
        let mut of = samples
            .iter()
            .filter(|one| one[3] == name && one[4] == labels);
        let sample = of.next().expect(name);
        assert_eq!(of.next(), None);
        (sample[1].clone(), sample[2].clone(), sample[5].as_f64())
    };
    let provider = json!({"gateway": "provider"});
    for (name, labels, kind, unit, value) in [
        ("budwood_well", json!({}), "gauge", "", 1.0),
        ("budwood_outbox_waiting", json!({}), "gauge", "", 4.0),
        ("budwood_month_gone_ratio", json!({}), "gauge", "", 0.11),
        ("budwood_deeds_locked_total", json!({}), "counter", "", 9.0),
        (
            "budwood_held_back_total",
            json!({"what": "unpaid"}),
            "counter",
            "",
            8.0,
        ),
        (
            "budwood_gateway_refused_in_a_row",
            provider.clone(),
            "gauge",
            "",
            2.0,
        ),
        (
            "budwood_texts_in_total",
            provider.clone(),
            "counter",
            "",
            16.0,
        ),
        (
            "budwood_gateway_last_in_timestamp_seconds",
            provider,
            "gauge",
            "seconds",
            1_614_265_330.0,
        ),
    ] {
        let found = told(name, labels);
        assert_eq!(found, (json!(kind), json!(unit), Some(value)), "{name}");
    }
    assert_eq!(samples.len(), 53);
}
