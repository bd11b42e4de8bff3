//! What a monitor collects: the figures of `GET /health` as the `OpenMetrics` standard has them.
//!
//! Deliberately absent: names, numbers and texts of people, and anything by person.

use std::sync::atomic::AtomicU64;

use chrono::{DateTime, Utc};
use prometheus_client::{
    encoding::{EncodeLabelSet, text::encode},
    metrics::{counter::Counter, family::Family, gauge::Gauge, info::Info},
    registry::{Registry, Unit},
};

use crate::service::port::Health;

/// As the standard has it.
pub(super) const CONTENT_TYPE: &str = "application/openmetrics-text; version=1.0.0; charset=utf-8";

/// Which gateway a figure is of.
#[derive(Clone, Debug, Hash, PartialEq, Eq, EncodeLabelSet)]
struct OfGateway {
    gateway: String,
}

/// Of what a figure is.
#[derive(Clone, Debug, Hash, PartialEq, Eq, EncodeLabelSet)]
struct OfWhat {
    what: &'static str,
}

type Figure = Gauge<f64, AtomicU64>;
type Figures = Family<OfGateway, Figure>;
type Counts = Family<OfGateway, Counter>;

/// The page. None where it cannot be written.
pub(super) fn page(health: &Health, now: DateTime<Utc>) -> Option<String> {
    let mut registry = Registry::with_prefix("budwood");
    let version = [("version", env!("CARGO_PKG_VERSION"))];
    registry.register("build", "Which program runs", Info::new(version));
    whole_service(&mut registry, health);
    gateways(&mut registry, health, now);
    let mut page = String::new();
    encode(&mut page, &registry).ok()?;
    Some(page)
}

fn whole_service(registry: &mut Registry, health: &Health) {
    let mut figure = |name: &str, help: &str, value: f64| {
        let figure = Figure::default();
        figure.set(value);
        registry.register(name, help, figure);
    };
    let is_well = f64::from(u8::from(health.trouble.is_none()));
    figure("well", "1 unless a person must see to something", is_well);
    figure(
        "inbox_waiting",
        "Inputs that wait for the engine",
        count(health.inbox_waiting),
    );
    figure(
        "outbox_waiting",
        "Texts that wait to leave",
        count(health.outbox_waiting),
    );
    figure(
        "month_parts",
        "Parts that left in this month",
        large(health.month.parts),
    );
    figure(
        "month_money",
        "What they cost, in the money of the line",
        health.month.money(),
    );
    if let Some(pct) = health.month.gone_pct {
        let share = f64::from(pct) / 100.0;
        figure("month_gone_ratio", "Of the month's budget", share);
    }
    let locked = Counter::<u64>::default();
    locked.inc_by(health.locked);
    registry.register(
        "deeds_locked",
        "Deeds that wrong codes locked since the start",
        locked,
    );
    let held_back = Family::<OfWhat, Counter>::default();
    for (what, texts) in [
        ("answers", health.held_back.answers),
        ("notices", health.held_back.notices),
        ("strangers", health.held_back.strangers),
        ("unpaid", health.held_back.unpaid),
        ("services", health.held_back.services),
        ("echoes", health.held_back.echoes),
        ("machines", health.held_back.machines),
        ("costly", health.held_back.costly),
    ] {
        held_back.get_or_create(&OfWhat { what }).inc_by(texts);
    }
    registry.register("held_back", "Texts not said since the start", held_back);
}

fn gateways(registry: &mut Registry, health: &Health, now: DateTime<Utc>) {
    let [up, refused, last_in, last_out, oldest, signal] = [(); 6].map(|()| Figures::default());
    let [texts_in, texts_out, failed] = [(); 3].map(|()| Counts::default());
    for gateway in &health.gateways {
        let label = OfGateway {
            gateway: gateway.name.clone(),
        };
        let set = |figures: &Figures, value: f64| {
            figures.get_or_create(&label).set(value);
        };
        set(&up, f64::from(u8::from(gateway.trouble.is_none())));
        set(&refused, f64::from(gateway.refused_in_a_row));
        let passed = gateway.passed;
        for (counts, texts) in [
            (&texts_in, passed.texts_in),
            (&texts_out, passed.texts_out),
            (&failed, passed.failed),
        ] {
            counts.get_or_create(&label).inc_by(texts);
        }
        if let Some(pct) = gateway.signal_pct {
            set(&signal, f64::from(pct) / 100.0);
        }
        let times = [(&last_in, gateway.last_in), (&last_out, gateway.last_out)];
        for (figures, at) in times {
            if let Some(at) = at {
                set(figures, seconds(at));
            }
        }
        if let Some(since) = gateway.oldest_waiting {
            set(&oldest, (seconds(now) - seconds(since)).max(0.0));
        }
    }
    registry.register("gateway_up", "1 unless somebody must see to it", up);
    registry.register(
        "gateway_refused_in_a_row",
        "Texts not taken since one was",
        refused,
    );
    registry.register("texts_in", "Texts that came since the start", texts_in);
    registry.register("texts_out", "Texts taken since the start", texts_out);
    registry.register(
        "texts_failed",
        "Texts not taken for good, or of unknown fate",
        failed,
    );
    registry.register(
        "gateway_signal_ratio",
        "How well it hears its network",
        signal,
    );
    let mut in_seconds = |name: &str, help: &str, figures: Figures| {
        registry.register_with_unit(name, help, Unit::Seconds, figures);
    };
    in_seconds(
        "gateway_last_in_timestamp",
        "When a text or receipt came",
        last_in,
    );
    in_seconds(
        "gateway_last_out_timestamp",
        "When a text was taken",
        last_out,
    );
    in_seconds(
        "gateway_oldest_waiting",
        "How long a text has waited to leave",
        oldest,
    );
}

fn seconds(at: DateTime<Utc>) -> f64 {
    let milliseconds = u64::try_from(at.timestamp_millis()).unwrap_or(0);
    large(milliseconds) / 1_000.0
}

fn count(number: usize) -> f64 {
    large(u64::try_from(number).unwrap_or(u64::MAX))
}

#[expect(
    clippy::cast_precision_loss,
    reason = "a figure for a monitor; exact up to nine thousand million million"
)]
const fn large(number: u64) -> f64 {
    number as f64
}
