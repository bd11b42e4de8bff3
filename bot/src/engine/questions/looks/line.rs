//! How gateways are, what waits to leave, what the month has taken.

use chrono::{DateTime, TimeDelta, Utc};

use super::Page;
use crate::{
    args,
    engine::{
        looks::{Cell, Grid, Part, heads, page, page_of},
        view::View,
    },
    wording::{Key, Value},
};

/// Millionths of the money of the gateways in one of it.
const MICRO: f64 = 1e6;

impl View<'_> {
    pub(super) fn line_page(self) -> Page {
        let mut parts = self.line_parts();
        parts.push(self.month_part());
        let held = self.world.held_back;
        let notes = [
            ("page-held-answers", held.answers),
            ("page-held-strangers", held.strangers),
            ("page-held-unpaid", held.unpaid),
            ("page-held-machines", held.machines),
        ];
        let rows = notes.map(|(name, count)| vec![Cell::of(page(name)), Cell::of(whole(count))]);
        parts.push(Part::Table(Grid {
            title: page("page-held"),
            head: heads(&["page-what", "page-count"]),
            rows: rows.into(),
        }));
        Page::new(page("page-line"), parts)
    }

    /// Whether all is well, and each gateway.
    pub(super) fn line_parts(self) -> Vec<Part> {
        let troubles = self.troubles();
        let mut parts: Vec<Part> = match troubles.as_slice() {
            [] => vec![Part::Note(page("page-line-well"))],
            _ => troubles
                .into_iter()
                .map(|trouble| Part::Note(trouble.into()))
                .collect(),
        };
        if self.world.held_since.is_some() {
            parts.push(Part::Note(page("page-line-held")));
        }
        if self.world.nudges_wait {
            parts.push(Part::Note(page("page-clock")));
        }
        let args = args! { "count" => self.world.outbox.unsent() };
        parts.push(Part::Note(page_of("page-leaving", args)));
        let world = self.world;
        let oldest = |gateway: &str| world.outbox.oldest(gateway);
        let health = world
            .links
            .health(self.setup.ways.names(), oldest, self.now);
        let rows = health.into_iter().map(|one| {
            let trouble = one.trouble.map(|_| Key::Page("page-look-here"));
            vec![
                Cell::of(one.name).marked(trouble),
                Cell::of(self.ago(one.last_in)),
                Cell::of(self.ago(one.last_out)),
                Cell::of(match one.oldest_waiting {
                    Some(at) => self.ago(Some(at)),
                    None => page("page-nothing"),
                }),
                Cell::of(one.refused_in_a_row),
            ]
        });
        parts.push(Part::Table(Grid {
            title: page("page-gateways"),
            head: heads(&[
                "page-gateway",
                "page-last-in",
                "page-last-out",
                "page-oldest",
                "page-refused",
            ]),
            rows: rows.collect(),
        }));
        parts
    }

    fn month_part(self) -> Part {
        let ledger = self.ledger();
        let sent = ledger.sent.iter();
        let rows = sent.map(|(gateway, sent)| {
            let money = (sent.micro > 0).then_some(sent.micro as f64 / MICRO);
            vec![
                Cell::of(gateway.as_str()),
                Cell::of(whole(sent.parts)),
                Cell::of(Value::figure(money)),
            ]
        });
        let mut rows: Vec<Vec<Cell>> = rows.collect();
        if let Some(gone) = self.gone_pct() {
            rows.push(vec![
                Cell::of(page("page-budget-gone")),
                Cell::of(page_of("page-pct", args! { "pct" => gone })),
                Cell::empty(),
            ]);
        }
        Part::Table(Grid {
            title: page("page-month"),
            head: heads(&["page-gateway", "page-parts", "page-money"]),
            rows,
        })
    }

    /// How long ago a moment is, in hours or days.
    fn ago(self, at: Option<DateTime<Utc>>) -> Value {
        let Some(at) = at else {
            return page("page-never");
        };
        let gone = self.now - at;
        if gone < TimeDelta::hours(1) {
            page_of("page-minutes-ago", args! { "count" => gone.num_minutes() })
        } else if gone < TimeDelta::days(2) {
            page_of("page-hours-ago", args! { "count" => gone.num_hours() })
        } else {
            page_of("page-days-ago", args! { "count" => gone.num_days() })
        }
    }
}

fn whole(count: u64) -> Value {
    Value::Count(i64::try_from(count).unwrap_or(i64::MAX))
}
