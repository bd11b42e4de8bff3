//! What a monitor collects: the figures of `GET /health` as the `OpenMetrics` standard has them.
//!
//! Deliberately absent: names, numbers and texts of people, and anything by person.

use std::sync::atomic::AtomicU64;

use chrono::{DateTime, Utc};
use prometheus_client::{
    encoding::{EncodeLabelSet, EncodeMetric, MetricEncoder, NoLabelSet, text::encode},
    metrics::{MetricType, counter::Counter, family::Family, gauge::Gauge, info::Info},
    registry::{Registry, Unit},
};

use crate::service::port::{Health, SPANS_MICROS, Spans};

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

/// How long something took.
#[derive(Debug)]
struct Took(Spans);

impl EncodeMetric for Took {
    fn encode(&self, mut encoder: MetricEncoder<'_>) -> Result<(), std::fmt::Error> {
        let ends = SPANS_MICROS.into_iter().map(micros);
        let ends = ends.chain([f64::INFINITY]);
        let buckets: Vec<(f64, u64)> = ends.zip(self.0.counts).collect();
        let count = self.0.counts.iter().sum();
        encoder.encode_histogram::<NoLabelSet>(micros(self.0.micros), count, &buckets, None)
    }

    fn metric_type(&self) -> MetricType {
        MetricType::Histogram
    }
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
    computer(&mut registry, health);
    gateways(&mut registry, health);
    times(&mut registry, health, now);
    passed(&mut registry, health);
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

/// The clock, the disk, and how fast the work goes.
fn computer(registry: &mut Registry, health: &Health) {
    let is_trusted = f64::from(u8::from(health.clock_trusted));
    for (name, help, value) in [
        (
            "unclear_waiting",
            "Texts that wait for a person",
            Some(count(health.unclear_waiting)),
        ),
        (
            "clock_trusted",
            "1 unless the computer's clock is doubted",
            Some(is_trusted),
        ),
    ] {
        set(registry, name, help, None, value);
    }
    let bytes = Some(Unit::Bytes);
    let store = health.store_bytes.map(large);
    set(
        registry,
        "store",
        "What the store takes",
        bytes.clone(),
        store,
    );
    let free = health.disk_free_bytes.map(large);
    set(registry, "disk_free", "What may be written", bytes, free);
    for (name, help, spans) in [
        ("step", "How long a step took", health.steps),
        (
            "commit",
            "How long a commit took until it was on the disk",
            health.commits,
        ),
    ] {
        registry.register_with_unit(name, help, Unit::Seconds, Took(spans));
    }
}

fn set(registry: &mut Registry, name: &str, help: &str, unit: Option<Unit>, value: Option<f64>) {
    let Some(value) = value else {
        return;
    };
    let figure = Figure::default();
    figure.set(value);
    match unit {
        Some(unit) => registry.register_with_unit(name, help, unit, figure),
        None => registry.register(name, help, figure),
    }
}

fn gateways(registry: &mut Registry, health: &Health) {
    let [up, link, refused, signal] = [(); 4].map(|()| Figures::default());
    for gateway in &health.gateways {
        let label = OfGateway {
            gateway: gateway.name.clone(),
        };
        let set = |figures: &Figures, value: f64| {
            figures.get_or_create(&label).set(value);
        };
        set(&up, f64::from(u8::from(gateway.trouble.is_none())));
        set(&link, f64::from(u8::from(gateway.down_since.is_none())));
        set(&refused, f64::from(gateway.refused_in_a_row));
        if let Some(pct) = gateway.signal_pct {
            set(&signal, f64::from(pct) / 100.0);
        }
    }
    for (name, help, figures) in [
        ("gateway_up", "1 unless somebody must see to it", up),
        (
            "gateway_refused_in_a_row",
            "Texts not taken since one was",
            refused,
        ),
        (
            "gateway_link_up",
            "1 unless it says that its line is down",
            link,
        ),
        (
            "gateway_signal_ratio",
            "How well it hears its network",
            signal,
        ),
    ] {
        registry.register(name, help, figures);
    }
}

/// When something passed last, and how long a text waits.
fn times(registry: &mut Registry, health: &Health, now: DateTime<Utc>) {
    let [last_in, last_receipt, last_out, oldest] = [(); 4].map(|()| Figures::default());
    for gateway in &health.gateways {
        let label = OfGateway {
            gateway: gateway.name.clone(),
        };
        let waits = gateway
            .oldest_waiting
            .map(|since| (seconds(now) - seconds(since)).max(0.0));
        for (figures, value) in [
            (&last_in, gateway.last_in.map(seconds)),
            (&last_receipt, gateway.last_receipt.map(seconds)),
            (&last_out, gateway.last_out.map(seconds)),
            (&oldest, waits),
        ] {
            if let Some(value) = value {
                figures.get_or_create(&label).set(value);
            }
        }
    }
    for (name, help, figures) in [
        (
            "gateway_last_in_timestamp",
            "When a text or receipt came",
            last_in,
        ),
        (
            "gateway_last_receipt_timestamp",
            "When a receipt came",
            last_receipt,
        ),
        (
            "gateway_last_out_timestamp",
            "When a text was taken",
            last_out,
        ),
        (
            "gateway_oldest_waiting",
            "How long a text has waited to leave",
            oldest,
        ),
    ] {
        registry.register_with_unit(name, help, Unit::Seconds, figures);
    }
}

/// What passed since the start.
fn passed(registry: &mut Registry, health: &Health) {
    let [texts_in, receipts, texts_out, failed] = [(); 4].map(|()| Counts::default());
    for gateway in &health.gateways {
        let label = OfGateway {
            gateway: gateway.name.clone(),
        };
        let passed = gateway.passed;
        for (counts, texts) in [
            (&texts_in, passed.texts_in),
            (&receipts, passed.receipts),
            (&texts_out, passed.texts_out),
            (&failed, passed.failed),
        ] {
            counts.get_or_create(&label).inc_by(texts);
        }
    }
    for (name, help, counts) in [
        ("texts_in", "Texts that came since the start", texts_in),
        ("receipts", "Reports on texts since the start", receipts),
        ("texts_out", "Texts taken since the start", texts_out),
        (
            "texts_failed",
            "Texts not taken for good, or of unknown fate",
            failed,
        ),
    ] {
        registry.register(name, help, counts);
    }
}

fn micros(micros: u64) -> f64 {
    large(micros) / 1_000_000.0
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
