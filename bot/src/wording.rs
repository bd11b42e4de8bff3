//! From what is meant to the text of an SMS.
//!
//! The texts are files, one a language (`bot/texts/*.ftl`, Project Fluent). A test says that each
//! fits one SMS at its longest values. Deliberately absent: any sentence in code, and deciding
//! what to say.

mod adviser;
mod facts;
mod fit;
mod job;

use std::collections::BTreeMap;

use budwood_parser::Unit;
use budwood_scheduler::Happened;
use chrono::{Datelike, NaiveDate};
use fluent_bundle::{FluentArgs, FluentResource, FluentValue, concurrent::FluentBundle};

pub(crate) use self::fit::short;
pub use self::{
    adviser::{LateItem, MemberBlock},
    facts::{After, Said},
    fit::fit,
    job::NudgeText,
};

/// Texts that come with the program, by language code.
const BUILT_IN: &[(&str, &str)] = &[("en", include_str!("../texts/en.ftl"))];

/// The language that stands in where a text is missing.
const FALLBACK: &str = "en";

/// All texts, by language.
pub struct Texts {
    bundles: BTreeMap<String, FluentBundle<FluentResource>>,
}

/// Why a file of texts cannot be used.
#[derive(Debug, thiserror::Error)]
#[error("texts of language {language}: {what}")]
pub struct TextFault {
    language: String,
    what: String,
}

/// The values of a text.
pub type Args<'a> = Vec<(&'static str, FluentValue<'a>)>;

/// Builds the values of a text.
#[macro_export]
macro_rules! args {
    ($($name:literal => $value:expr),* $(,)?) => {
        vec![$(($name, fluent_bundle::FluentValue::from($value))),*]
    };
}

impl Texts {
    /// The texts that come with the program.
    ///
    /// # Errors
    ///
    /// When a file is not Fluent or names a text twice.
    pub fn built_in() -> Result<Self, TextFault> {
        let mut texts = Self {
            bundles: BTreeMap::new(),
        };
        for (language, source) in BUILT_IN {
            texts.add(language, source)?;
        }
        Ok(texts)
    }

    /// Adds the texts of a language.
    ///
    /// # Errors
    ///
    /// When the file is not Fluent or names a text twice.
    pub fn add(&mut self, language: &str, source: &str) -> Result<(), TextFault> {
        let fault = |what: String| TextFault {
            language: language.to_owned(),
            what,
        };
        let id: unic_langid::LanguageIdentifier = language
            .parse()
            .map_err(|error| fault(format!("{error}")))?;
        let resource = FluentResource::try_new(source.to_owned())
            .map_err(|(_, errors)| fault(format!("{errors:?}")))?;
        let mut bundle = FluentBundle::new_concurrent(vec![id]);
        // The marks that isolate directions would leave the GSM alphabet and halve an SMS.
        bundle.set_use_isolating(false);
        bundle
            .add_resource(resource)
            .map_err(|errors| fault(format!("{errors:?}")))?;
        self.bundles.insert(language.to_owned(), bundle);
        Ok(())
    }

    /// The languages that there are texts for.
    pub fn languages(&self) -> impl Iterator<Item = &str> {
        self.bundles.keys().map(String::as_str)
    }

    /// These texts in one language.
    #[must_use]
    pub fn tongue<'a>(&'a self, language: &str) -> Tongue<'a> {
        let language = if self.bundles.contains_key(language) {
            language
        } else {
            FALLBACK
        };
        Tongue {
            bundle: self.bundles.get(language),
            fallback: self.bundles.get(FALLBACK),
        }
    }
}

/// The texts in one language.
#[derive(Clone, Copy)]
pub struct Tongue<'a> {
    bundle: Option<&'a FluentBundle<FluentResource>>,
    fallback: Option<&'a FluentBundle<FluentResource>>,
}

impl Tongue<'_> {
    /// A text with its values. A text that is nowhere gives its own name, which tests catch.
    #[must_use]
    pub fn say(&self, key: &str, args: Args<'_>) -> String {
        let args: FluentArgs<'_> = args.into_iter().collect();
        [self.bundle, self.fallback]
            .into_iter()
            .flatten()
            .find_map(|bundle| {
                let pattern = bundle.get_message(key)?.value()?;
                let mut errors = Vec::new();
                let text = bundle.format_pattern(pattern, Some(&args), &mut errors);
                Some(text.into_owned())
            })
            .unwrap_or_else(|| key.to_owned())
    }

    /// Whether this language has a text of its own under this name.
    #[must_use]
    pub fn has(&self, key: &str) -> bool {
        self.bundle.is_some_and(|bundle| bundle.has_message(key))
    }

    /// A date as people write it: "Sat 14 Jun".
    #[must_use]
    pub fn day(&self, day: NaiveDate) -> String {
        let weekday = format!("weekday-{}", day.weekday().number_from_monday());
        self.say(
            "day",
            args! {
                "weekday" => self.say(&weekday, args! {}),
                "day" => day.day().to_string(),
                "month" => self.month(day),
            },
        )
    }

    /// A date with its year: "14 Jun 2026".
    #[must_use]
    pub fn day_year(&self, day: NaiveDate) -> String {
        self.say(
            "day-year",
            args! {
                "day" => day.day().to_string(),
                "month" => self.month(day),
                "year" => day.year().to_string(),
            },
        )
    }

    /// A month with its year: "Jun 2031".
    #[must_use]
    pub fn month_year(&self, day: NaiveDate) -> String {
        let args = args! { "month" => self.month(day), "year" => day.year().to_string() };
        self.say("month-year", args)
    }

    fn month(&self, day: NaiveDate) -> String {
        self.say(&format!("month-{}", day.month()), args! {})
    }

    fn happened(&self, on: Happened) -> String {
        if on.from == on.to {
            return self.day(on.from);
        }
        let args = args! { "from" => self.day(on.from), "to" => self.day(on.to) };
        self.say("span", args)
    }

    fn unit(&self, unit: Unit) -> String {
        self.say(&format!("unit-{}", unit.name()), args! {})
    }
}

/// A number with at most one decimal, and none where it says nothing.
#[must_use]
pub fn number(value: f64) -> String {
    let text = format!("{value:.1}");
    text.strip_suffix(".0")
        .map_or_else(|| text.clone(), str::to_owned)
}
