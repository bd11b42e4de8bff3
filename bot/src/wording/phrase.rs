//! What is to be said, as a value: which text, and what goes into it.
//!
//! A phrase knows no language, so whoever decides what to say can be tested without reading an
//! SMS. Deliberately absent: words, which are [`Tongue`](super::Tongue)'s, and how long a text may
//! be, which is `fit`'s.

use budwood_parser::{Ailment, Alarm, Cause, Kind, Unit};
use budwood_scheduler::TaskKind;
use chrono::{Datelike, NaiveDate, TimeDelta};

use super::{Key, fit::short};
use crate::words::limits::{SHORT_NAME, SHORT_WORDS};

/// A text with its values.
#[derive(Clone, Debug, PartialEq)]
pub struct Phrase {
    /// Which text.
    pub key: Key,
    /// What goes into it.
    pub args: Args,
}

/// The values of a text by their names.
pub type Args = Vec<(&'static str, Value)>;

/// What goes into a text.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// Letters as they are.
    Text(String),
    /// A name, which is shortened before the text grows to a second part.
    Name(String),
    /// A whole number, by which a plural is chosen.
    Count(i64),
    /// A number with at most one decimal.
    Figure(f64),
    /// The same, as what is usual where there is room to say so: no publication stands behind it.
    Usual(f64),
    /// Land in hectares, told in the unit of the place.
    Land(f64),
    /// A day without its year.
    Day(NaiveDate),
    /// A day with its year.
    DayYear(NaiveDate),
    /// A month with its year.
    Month(NaiveDate),
    /// Another text.
    Phrase(Phrase),
    /// One after the other, nothing between them.
    Joined(Vec<Self>),
    /// The best first: as many as fit, and how many are left out.
    List(Vec<Self>),
    /// The same of jobs, where a bare number would say nothing.
    Jobs(Vec<Self>),
    /// From the fullest to the least: the first that leaves one fact its place.
    Spare(Vec<Option<Phrase>>),
    /// Said only where everything else fits unshortened beside it.
    Extra(Phrase),
}

/// Builds the values of a text.
#[macro_export]
macro_rules! args {
    ($($name:literal => $value:expr),* $(,)?) => {
        vec![$(($name, $crate::wording::Value::from($value))),*]
    };
}

impl Phrase {
    /// A text with its values.
    #[must_use]
    pub const fn new(key: Key, args: Args) -> Self {
        Self { key, args }
    }

    /// The value of this name, if it goes into the text.
    #[must_use]
    pub fn arg(&self, name: &str) -> Option<&Value> {
        let mut args = self.args.iter();
        args.find(|(known, _)| *known == name)
            .map(|(_, value)| value)
    }

    /// How many items its list has; none without one.
    #[must_use]
    pub fn listed(&self) -> Option<usize> {
        self.args.iter().find_map(|(_, value)| {
            if let Value::List(items) = value {
                Some(items.len())
            } else {
                None
            }
        })
    }

    /// The same with what is left of its list behind so many items; none when nothing is.
    #[must_use]
    pub fn after(mut self, shown: usize) -> Option<Self> {
        let list = self.args.iter_mut().find_map(|(_, value)| {
            if let Value::List(items) = value {
                Some(items)
            } else {
                None
            }
        })?;
        let left: Vec<Value> = list.drain(..).skip(shown).collect();
        *list = left;
        (!list.is_empty()).then_some(self)
    }

    /// Looks at every value in it, however deep.
    pub(super) fn each(&self, look: &mut dyn FnMut(&Value)) {
        for (_, value) in &self.args {
            value.each(look);
        }
    }
}

impl Value {
    /// A name that is shortened when there is no room.
    #[must_use]
    pub fn name(name: &str) -> Self {
        Self::Name(name.to_owned())
    }

    /// A name beside a list of others: those shrink, it is short from the start.
    #[must_use]
    pub fn brief(name: &str) -> Self {
        Self::Text(short(name, SHORT_NAME))
    }

    /// Somebody's own words beside others in a list.
    #[must_use]
    pub fn brief_words(words: &str) -> Self {
        Self::Text(short(words, SHORT_WORDS))
    }

    /// A day of another year carries the year. So near that the weekday tells which one is meant it
    /// has that instead.
    #[must_use]
    pub fn day_seen(day: NaiveDate, today: NaiveDate) -> Self {
        const NEAR: TimeDelta = TimeDelta::days(31);
        if day.year() == today.year() || (day - today).abs() <= NEAR {
            Self::Day(day)
        } else {
            Self::DayYear(day)
        }
    }

    /// The number if there is one, nothing else.
    #[must_use]
    pub fn figure(number: Option<f64>) -> Self {
        number.map_or_else(Self::nothing, Self::Figure)
    }

    /// No letters at all.
    #[must_use]
    pub const fn nothing() -> Self {
        Self::Text(String::new())
    }

    fn each(&self, look: &mut dyn FnMut(&Self)) {
        look(self);
        match self {
            Self::Phrase(phrase) | Self::Extra(phrase) => phrase.each(look),
            Self::Joined(values) | Self::List(values) | Self::Jobs(values) => {
                values.iter().for_each(|value| value.each(look));
            }
            Self::Spare(forms) => forms.iter().flatten().for_each(|form| form.each(look)),
            Self::Text(_)
            | Self::Name(_)
            | Self::Count(_)
            | Self::Figure(_)
            | Self::Usual(_)
            | Self::Land(_)
            | Self::Day(_)
            | Self::DayYear(_)
            | Self::Month(_) => {}
        }
    }
}

impl From<Key> for Phrase {
    fn from(key: Key) -> Self {
        Self::new(key, Vec::new())
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<String> for Value {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<u32> for Value {
    fn from(count: u32) -> Self {
        Self::Count(count.into())
    }
}

impl From<u16> for Value {
    fn from(count: u16) -> Self {
        Self::Count(count.into())
    }
}

impl From<i32> for Value {
    fn from(count: i32) -> Self {
        Self::Count(count.into())
    }
}

impl From<i64> for Value {
    fn from(count: i64) -> Self {
        Self::Count(count)
    }
}

impl From<usize> for Value {
    fn from(count: usize) -> Self {
        Self::Count(i64::try_from(count).unwrap_or(i64::MAX))
    }
}

impl From<f64> for Value {
    fn from(number: f64) -> Self {
        Self::Figure(number)
    }
}

impl From<NaiveDate> for Value {
    fn from(day: NaiveDate) -> Self {
        Self::Day(day)
    }
}

impl From<Vec<Self>> for Value {
    fn from(list: Vec<Self>) -> Self {
        Self::List(list)
    }
}

impl From<Phrase> for Value {
    fn from(phrase: Phrase) -> Self {
        Self::Phrase(phrase)
    }
}

impl From<Option<Phrase>> for Value {
    fn from(phrase: Option<Phrase>) -> Self {
        phrase.map_or_else(Self::nothing, Self::Phrase)
    }
}

macro_rules! named_by_a_text {
    ($($thing:ident => $key:path),+) => {
        $(impl From<$thing> for Value {
            fn from(thing: $thing) -> Self {
                Self::Phrase(Phrase::from($key(thing)))
            }
        })+
    };
}

named_by_a_text! {
    Ailment => Key::Ailment,
    Alarm => Key::Alarm,
    Cause => Key::Cause,
    Kind => Key::Kind,
    TaskKind => Key::Job,
    Unit => Key::Unit
}
