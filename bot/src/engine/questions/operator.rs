//! What the operator is told: how the gateways are, what waits, what the month has cost.

use budwood_scheduler::Consent;
use chrono::{DateTime, NaiveDate, Utc};

use crate::{
    args,
    engine::{
        local_time::instant,
        memory::links::Trouble,
        questions::address::last_digits,
        said::{Said, To},
        view::View,
    },
    wording::{Key, Phrase, Value},
    words::{limits, message::Purpose},
};

impl View<'_> {
    /// The day that it is for the operator.
    pub(crate) fn operator_today(self) -> Option<NaiveDate> {
        let operator = self.setup.operator.as_ref()?;
        Some(self.now.with_timezone(&operator.zone).date_naive())
    }

    /// When the operator is to be told something next: in the morning, or when a line falls silent.
    pub(crate) fn next_for_operator(self) -> Option<DateTime<Utc>> {
        let morning = self.next_morning()?;
        let silence = self.world.links.next_silence(self.setup.ways.names());
        silence.into_iter().chain([morning]).min()
    }

    /// When the next morning line is due.
    pub(crate) fn next_morning(self) -> Option<DateTime<Utc>> {
        match self.world.ledger.told_on {
            Some(told) => self.morning_of(told.succ_opt()?),
            None => self.morning_of(self.operator_today()?),
        }
    }

    /// The last morning, and when it began.
    pub(crate) fn last_morning(self) -> Option<(NaiveDate, DateTime<Utc>)> {
        let today = self.operator_today()?;
        let days = [today, today.pred_opt()?].into_iter();
        days.filter_map(|day| Some((day, self.morning_of(day)?)))
            .find(|(_, began)| *began <= self.now)
    }

    fn morning_of(self, day: NaiveDate) -> Option<DateTime<Utc>> {
        let operator = self.setup.operator.as_ref()?;
        Some(instant(day.and_time(operator.at), operator.zone))
    }

    /// A text to the operator; none where nobody is to be told, or somebody on that phone wants no
    /// texts.
    pub(crate) fn to_operator(self, phrase: Phrase) -> Option<Said> {
        let operator = self.setup.operator.as_ref()?;
        let mut people = self.everyone_on(&operator.number).into_iter();
        let no_texts = people.any(|person| {
            let person = self.person(person);
            person.is_some_and(|person| matches!(person.consent, Consent::Withdrawn { .. }))
        });
        if no_texts {
            return None;
        }
        Some(Said {
            to: To {
                number: operator.number.clone(),
                language: operator.language.clone(),
            },
            phrase,
            purpose: Purpose::Service {
                on: self.operator_today()?,
            },
            asks: false,
        })
    }

    /// All is well, or what is not.
    pub(crate) fn morning(self) -> Phrase {
        let troubles = self.troubles();
        let state = Value::Extra(self.service_state());
        if troubles.is_empty() {
            return Phrase::new(Key::OperatorWell, args! { "state" => state });
        }
        let troubles = troubles.into_iter().map(Value::from).collect();
        let args = args! { "troubles" => Value::List(troubles), "state" => state };
        Phrase::new(Key::OperatorTrouble, args)
    }

    /// What a person must see to, the worst first.
    pub(super) fn troubles(self) -> Vec<Phrase> {
        let world = self.world;
        let mut troubles = Vec::new();
        if world.is_disk_low {
            troubles.push(Key::OperatorDisk.into());
        }
        for name in self.setup.ways.names() {
            let Some(trouble) = world.links.trouble(name, self.now) else {
                continue;
            };
            let (key, hours) = match trouble {
                Trouble::NotTaken { .. } => (Key::OperatorRefused, 0),
                Trouble::Down => (Key::OperatorDown, 0),
                Trouble::Says(_) => (Key::OperatorSays, 0),
                Trouble::Silent { hours } => (Key::OperatorSilent, hours),
            };
            let args = args! { "gateway" => Value::name(name), "hours" => hours };
            troubles.push(Phrase::new(key, args));
        }
        let hours = world.outbox.oldest_answer().map(|at| self.hours_since(at));
        if let Some(hours) = hours.filter(|hours| *hours >= limits::WAITS_LONG_HOURS) {
            troubles.push(Phrase::new(Key::OperatorOldest, args! { "hours" => hours }));
        }
        if self.gone_pct().is_some_and(|gone| gone >= 100) {
            troubles.push(Key::OperatorSpent.into());
        }
        troubles
    }

    /// The last text in, what waits to leave, what the month has taken.
    fn service_state(self) -> Phrase {
        let world = self.world;
        let parts = self.ledger().total().parts;
        let share = self.gone_pct().map(|pct| {
            let args = args! { "pct" => pct };
            Phrase::new(Key::OperatorShare, args)
        });
        let last_in = world.links.last_in(self.setup.ways.names());
        let args = args! {
            "hours" => last_in.map_or(0, |at| self.hours_since(at)),
            "waiting" => world.outbox.unsent(),
            "parts" => count(parts),
            "share" => share.map_or_else(Value::nothing, Value::from),
        };
        let key = match last_in {
            Some(_) => Key::OperatorState,
            None => Key::OperatorStateSilent,
        };
        Phrase::new(key, args)
    }

    /// So much of the month's budget is gone, and what stops now.
    pub(crate) fn budget_told(self, reached_pct: u32) -> Phrase {
        let stops = match reached_pct {
            100.. => Key::OperatorStopsAll,
            80..100 => Key::OperatorStopsSome,
            _ => Key::OperatorStopsNone,
        };
        let args = args! {
            "pct" => reached_pct,
            "parts" => count(self.ledger().total().parts),
            "stops" => Phrase::from(stops),
        };
        Phrase::new(Key::OperatorBudget, args)
    }

    /// A phone texts like a machine.
    pub(crate) fn machine_told(self, number: &str) -> Phrase {
        let args = args! { "digits" => last_digits(number) };
        Phrase::new(Key::OperatorMachine, args)
    }
}

fn count(parts: u64) -> i64 {
    i64::try_from(parts).unwrap_or(i64::MAX)
}
