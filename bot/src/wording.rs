//! From what is meant to the text of an SMS.
//!
//! The texts are files, one a language (`bot/texts/*.ftl`, Project Fluent). A test says that each
//! fits one SMS at its longest values. Deliberately absent: any sentence in code, and deciding
//! what to say.
//!
//! A language whose own texts need letters outside the GSM alphabet has two forms in one file:
//! with its marks as long as that fits one SMS, and without any when not. A phone that writes
//! without marks gets only the second: its language has `-bare` behind its code.

mod adviser;
mod ask;
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
    adviser::{LateItem, MemberBlock, MemberGirth},
    facts::{After, Ready, Said},
    job::NudgeText,
};
use crate::words::sms::{self, Alphabet};

/// Texts that come with the program, by language code.
const BUILT_IN: &[(&str, &str)] = &[
    ("en", include_str!("../texts/en.ftl")),
    ("fr", include_str!("../texts/fr.ftl")),
    ("id", include_str!("../texts/id.ftl")),
    ("pt", include_str!("../texts/pt.ftl")),
    ("th", include_str!("../texts/th.ftl")),
    ("vi", include_str!("../texts/vi.ftl")),
];

/// The language that stands in where a text is missing.
const FALLBACK: &str = "en";

/// The text that lists what a language is called.
pub(crate) const CALLED: &str = "language-called";

/// What stands behind the code of a language that is written without its marks.
pub(crate) const BARE: &str = "-bare";

/// All texts, by language.
pub struct Texts {
    languages: BTreeMap<String, Language>,
}

struct Language {
    bundle: FluentBundle<FluentResource>,
    letters: Letters,
}

/// Which letters a text may have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Letters {
    /// Those of the GSM alphabet; what a name brings along loses its marks.
    Gsm,
    /// The language's own marked ones, as long as that fits one SMS.
    Marked,
    /// None with a mark.
    Bare,
    /// Those of another script.
    Script,
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
            languages: BTreeMap::new(),
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
        let letters = letters_of(source);
        let known = Language { bundle, letters };
        self.languages.insert(language.to_owned(), known);
        Ok(())
    }

    /// The languages that there are texts for.
    pub fn languages(&self) -> impl Iterator<Item = &str> {
        self.languages.keys().map(String::as_str)
    }

    /// The language that stands for this one here: itself, or the one that it is a form of
    /// ("en-WA"). None when there are no texts in it.
    #[must_use]
    pub fn known<'c>(&self, code: &'c str) -> Option<&'c str> {
        let base = code.split('-').next().unwrap_or(code);
        [code, base]
            .into_iter()
            .find(|code| self.languages.contains_key(*code))
    }

    /// The code of this language as it is typed without its marks, if that is another form of it.
    #[must_use]
    pub fn bare_form(&self, code: &str) -> Option<String> {
        let known = self.languages.get(self.known(code)?)?;
        (known.letters == Letters::Marked).then(|| format!("{}{BARE}", code.trim_end_matches(BARE)))
    }

    /// The texts in the first of these languages that there are any in, or in English.
    #[must_use]
    pub fn tongue<'a>(&'a self, wanted: &[&str]) -> Tongue<'a> {
        let english = self.languages.get(FALLBACK);
        let code = wanted.iter().find(|code| self.known(code).is_some());
        let language = code.and_then(|code| self.languages.get(self.known(code)?));
        let is_bare = code.is_some_and(|code| code.ends_with(BARE));
        let letters = match language.map(|language| language.letters) {
            Some(Letters::Marked) if is_bare => Letters::Bare,
            Some(letters) => letters,
            None => Letters::Gsm,
        };
        Tongue {
            bundle: language.or(english).map(|language| &language.bundle),
            fallback: english.map(|language| &language.bundle),
            letters,
        }
    }
}

/// The letters that a file of texts needs. What is said about it, and what others call the
/// language, is not sent.
fn letters_of(source: &str) -> Letters {
    let is_gsm = |text: &str| sms::measure(text).alphabet == Alphabet::Gsm7;
    let is_said = |line: &&str| !line.starts_with('#') && !line.starts_with(CALLED);
    let mut said = source.lines().filter(is_said);
    if said.clone().all(is_gsm) {
        Letters::Gsm
    } else if said.all(|line| is_gsm(&sms::bare(line))) {
        Letters::Marked
    } else {
        Letters::Script
    }
}

/// A text may have a longer form (an attribute `long`), which says more where there is room.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Form {
    Short,
    Long,
}

/// The texts in one language.
#[derive(Clone, Copy)]
pub struct Tongue<'a> {
    bundle: Option<&'a FluentBundle<FluentResource>>,
    fallback: Option<&'a FluentBundle<FluentResource>>,
    letters: Letters,
}

impl Tongue<'_> {
    /// A text with its values, to be put into another. A text that is nowhere gives its own name,
    /// which tests catch.
    #[must_use]
    pub fn say(&self, key: &str, args: Args<'_>) -> String {
        self.say_in(key, args, Form::Short)
    }

    /// The longer form of a text, in a language that has one; else the text.
    pub(crate) fn say_long(&self, key: &str, args: Args<'_>) -> String {
        self.say_in(key, args, Form::Long)
    }

    fn say_in(&self, key: &str, args: Args<'_>, form: Form) -> String {
        let args: FluentArgs<'_> = args.into_iter().collect();
        [self.bundle, self.fallback]
            .into_iter()
            .flatten()
            .find_map(|bundle| {
                let message = bundle.get_message(key)?;
                let long = message.get_attribute("long").map(|long| long.value());
                let long = long.filter(|_| form == Form::Long);
                let pattern = long.or_else(|| message.value())?;
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

    /// A text with its values, as it is sent.
    #[must_use]
    pub fn whole(&self, key: &str, args: Args<'_>) -> String {
        let text = self.say(key, args);
        self.fit(|_| text.clone())
    }

    /// A number with at most one decimal, and none where it says nothing.
    #[must_use]
    pub fn number(&self, value: f64) -> String {
        let text = format!("{value:.1}");
        match text.strip_suffix(".0") {
            Some(whole) => whole.to_owned(),
            None => text.replace('.', &self.say("decimal", args! {})),
        }
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

    /// A date ahead: with its year where the month alone could be taken for this year's.
    #[must_use]
    pub fn day_ahead(&self, day: NaiveDate, today: NaiveDate) -> String {
        self.day_seen(day, today)
    }

    /// A date of the past, with its year likewise.
    #[must_use]
    pub fn day_past(&self, day: NaiveDate, today: NaiveDate) -> String {
        self.day_seen(day, today)
    }

    fn day_seen(&self, day: NaiveDate, today: NaiveDate) -> String {
        const SAME_MONTH_SOON_DAYS: i64 = 300;
        if (day - today).num_days().abs() < SAME_MONTH_SOON_DAYS {
            self.day(day)
        } else {
            self.day_year(day)
        }
    }

    /// A date with its year: "14 Jun 2026".
    #[must_use]
    pub fn day_year(&self, day: NaiveDate) -> String {
        self.say(
            "day-year",
            args! {
                "day" => day.day().to_string(),
                "month" => self.month(day),
                "year" => self.year(day),
            },
        )
    }

    /// A month with its year: "Jun 2031".
    #[must_use]
    pub fn month_year(&self, day: NaiveDate) -> String {
        let args = args! { "month" => self.month(day), "year" => self.year(day) };
        self.say("month-year", args)
    }

    fn month(&self, day: NaiveDate) -> String {
        self.say(&format!("month-{}", day.month()), args! {})
    }

    /// The year as it is counted where the language is spoken.
    fn year(&self, day: NaiveDate) -> String {
        let ahead = self.say("years-ahead", args! {}).parse().unwrap_or(0);
        day.year().saturating_add(ahead).to_string()
    }

    fn happened(&self, on: Happened, today: NaiveDate) -> String {
        let day = |day| self.day_past(day, today);
        if on.from == on.to {
            return day(on.from);
        }
        let args = args! { "from" => day(on.from), "to" => day(on.to) };
        self.say("span", args)
    }

    /// An area in the unit that land has where the language is spoken: "1.2 ha".
    #[must_use]
    pub fn land(&self, hectares: f64) -> String {
        let args = args! {
            "hectares" => self.number(hectares),
            "rai" => self.number(hectares / 0.16),
        };
        self.say("land", args)
    }

    fn unit(&self, unit: Unit) -> String {
        self.say(&format!("unit-{}", unit.name()), args! {})
    }
}
