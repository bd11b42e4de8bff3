//! Questions of the adviser about the adviser's own week, and what texts cost.

use budwood_parser::Query;
use budwood_scheduler::{Body, Person, Source, figures::Wanted};
use chrono::{NaiveDate, TimeDelta};

use crate::{
    args,
    engine::view::View,
    wording::{Key, Phrase, Value},
    words::limits,
};

/// A week has so many days.
const WEEK_DAYS: i64 = 7;

impl View<'_> {
    /// COST: what left this month, of the whole service.
    pub(super) fn cost(self) -> Phrase {
        let total = self.ledger().total();
        let share = self.gone_pct();
        let share = share.map(|pct| Phrase::new(Key::OperatorShare, args! { "pct" => pct }));
        let money = (total.micro > 0)
            .then(|| Phrase::new(Key::CostMoney, args! { "cost" => money(total.micro) }));
        let parts = u32::try_from(total.parts).unwrap_or(u32::MAX);
        let args = args! {
            "parts" => parts,
            "money" => money,
            "share" => share,
            "failing" => self.failing_phones(),
        };
        Phrase::new(Key::Cost, args)
    }

    /// Phones on which no text arrives.
    pub(crate) fn failing_phones(self) -> usize {
        let talks = self.world.talks.values();
        talks.filter(|talk| talk.fails_since.is_some()).count()
    }

    /// WEEK: visits that were made, whom to visit, texts that wait, what must be ordered soon,
    /// and what is owed to whom.
    pub(super) fn own_week(self, speaker: &Person, query: &Query) -> Phrase {
        let today = self.today_of(speaker.id);
        let days = query.period_days.map_or(WEEK_DAYS, i64::from);
        let owed = self.owed(speaker);
        let deadline = self.order_deadline(speaker, today);
        let mut args = args! {
            "made" => self.visits_made(speaker, today - TimeDelta::days(days)),
            "left" => self.to_visit(speaker),
            "waiting" => self.waiting_for(speaker).len(),
        };
        if owed.is_empty() {
            args.extend(args! { "deadline" => deadline });
            return Phrase::new(Key::Week, args);
        }
        args.extend(args! {
            "deadline" => Value::Spare(vec![deadline, None]),
            "promises" => Value::List(owed),
        });
        Phrase::new(Key::WeekOwed, args)
    }

    /// Farmers of whom something was seen on a visit since a day.
    pub(crate) fn visits_made(self, speaker: &Person, since: NaiveDate) -> usize {
        let table = self.table_of(speaker);
        let visited = table.farmers.iter().filter(|farmer| {
            let facts = farmer.stands.iter().flat_map(|stand| {
                let facts = stand.state.facts.iter().rev();
                facts.take(limits::FACTS_OF_BLOCK)
            });
            let mut events = facts.filter_map(|fact| self.event(*fact));
            events.any(|event| {
                let is_told = matches!(event.body, Body::Reported { .. } | Body::TaskDone { .. });
                let is_visit = event.source == Source::Visit && event.by == Some(speaker.id);
                is_told && is_visit && event.at.date_naive() > since
            })
        });
        visited.count()
    }

    /// The next day by which plants must be ordered that nobody ordered yet.
    fn order_deadline(self, speaker: &Person, today: NaiveDate) -> Option<Phrase> {
        let wanted = self.table_of(speaker).wanted(None).value;
        let open = wanted.iter().filter(|one: &&Wanted| !one.is_firm);
        let days = open.filter_map(|one| one.order_by);
        let day = days.filter(|day| *day >= today).min()?;
        let day = Value::day_seen(day, today);
        Some(Phrase::new(Key::WeekOrder, args! { "day" => day }))
    }
}

/// Money in millionths, to the cent.
pub(super) fn money(micro: u64) -> String {
    let cents = micro / 10_000;
    format!("{}.{:02}", cents / 100, cents % 100)
}
