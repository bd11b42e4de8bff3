//! What the engine works with, put together by the service.

use std::collections::BTreeMap;

use budwood_parser::Reader;
use budwood_scheduler::{Calendar, jobs::nudge::Rules};
use chrono::NaiveTime;

use crate::{
    wording::Texts,
    words::{ledger::MonthBudget, ways::Ways},
};

/// What the engine needs to know and never changes.
pub struct Setup {
    /// Reads texts.
    pub reader: Reader,
    /// Words answers.
    pub texts: Texts,
    /// Calendars by name.
    pub calendars: BTreeMap<String, Calendar>,
    /// When to speak.
    pub rules: Rules,
    /// Our own numbers: a text from one of them is an echo.
    pub own_numbers: Vec<String>,
    /// Country of numbers without a plus, two letters.
    pub country: String,
    /// Zone of people without a group.
    pub zone: chrono_tz::Tz,
    /// Makes codes that cannot be guessed from outside.
    pub secret: u64,
    /// The gateways by which texts leave.
    pub ways: Ways,
    /// Parts that may leave in a day (UTC); none for no bound. What is urgent goes all the same.
    pub parts_a_day: Option<u32>,
    /// What may leave in a month (UTC), with the same exceptions.
    pub month: MonthBudget,
    /// Who is told how the service is.
    pub operator: Option<Operator>,
}

/// Who runs the service, and is told by text how it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Operator {
    /// The phone.
    pub number: String,
    /// The language; English when none is known.
    pub language: Option<String>,
    /// When the morning line goes, local time.
    pub at: NaiveTime,
    /// Where the operator is.
    pub zone: chrono_tz::Tz,
}
