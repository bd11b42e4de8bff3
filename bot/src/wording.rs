//! From what is meant to the text of an SMS.
//!
//! What is meant is a [`Phrase`]: which text, and what goes into it. A [`Tongue`] words it in one
//! language. The texts are files, one a language (`bot/texts/*.ftl`, Project Fluent). A test says that each
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
mod key;
mod paper;
mod phrase;

use std::collections::BTreeMap;

use budwood_scheduler::TaskKind;
use chrono::{Datelike, NaiveDate};
use fluent_bundle::{FluentArgs, FluentResource, FluentValue, concurrent::FluentBundle};

pub(crate) use self::fit::short;
use self::fit::{LIST_COMMA, Room};
pub use self::{
    adviser::{
        LateItem, MemberBlock, MemberGirth, late_item, member_block, member_girth, sick_person,
        visit,
    },
    ask::{ask, confirm},
    facts::{After, Facts, Ready, changed, clause, fixed, living, put_back, read_back, taken_back},
    job::{NudgeText, RoundText, dose, field_round, nudge, task_counts},
    key::Key,
    paper::Paper,
    phrase::{Args, Phrase, Value},
};
use crate::{
    args,
    words::sms::{self, Alphabet},
};

/// Texts that come with the program, by language code.
const BUILT_IN: &[(&str, &str)] = &[
    ("en", include_str!("../texts/en.ftl")),
    ("fr", include_str!("../texts/fr.ftl")),
    ("id", include_str!("../texts/id.ftl")),
    ("pt", include_str!("../texts/pt.ftl")),
    ("th", include_str!("../texts/th.ftl")),
    ("vi", include_str!("../texts/vi.ftl")),
];

/// What is printed, by language code.
const PRINTED: &[(&str, &str)] = &[
    ("en", include_str!("../texts/office/en.ftl")),
    ("fr", include_str!("../texts/office/fr.ftl")),
    ("id", include_str!("../texts/office/id.ftl")),
    ("pt", include_str!("../texts/office/pt.ftl")),
    ("th", include_str!("../texts/office/th.ftl")),
    ("vi", include_str!("../texts/office/vi.ftl")),
];

/// Texts of pages, which may be of any length and have any letters.
const OF_PAGES: &[(&str, &str)] = &[
    ("en", include_str!("../texts/page/en.ftl")),
    ("fr", include_str!("../texts/page/fr.ftl")),
    ("id", include_str!("../texts/page/id.ftl")),
    ("pt", include_str!("../texts/page/pt.ftl")),
    ("th", include_str!("../texts/page/th.ftl")),
    ("vi", include_str!("../texts/page/vi.ftl")),
];

/// The language that stands in where a text is missing.
const FALLBACK: &str = "en";

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
        for (language, source) in PRINTED {
            texts.add_printed(language, source)?;
        }
        for (language, source) in OF_PAGES {
            texts.add_printed(language, source)?;
        }
        Ok(texts)
    }

    /// Adds what is printed, or stands on a page, to the texts of a language. It does not say which
    /// letters an SMS needs.
    fn add_printed(&mut self, language: &str, source: &str) -> Result<(), TextFault> {
        let fault = |what: String| TextFault {
            language: language.to_owned(),
            what,
        };
        let resource = FluentResource::try_new(source.to_owned())
            .map_err(|(_, errors)| fault(format!("what is printed: {errors:?}")))?;
        let known = self.languages.get_mut(language);
        let known = known.ok_or_else(|| fault("is printed and not sent".to_owned()))?;
        known
            .bundle
            .add_resource(resource)
            .map_err(|errors| fault(format!("{errors:?}")))
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
    let called = Key::LanguageCalled.name();
    let is_said = |line: &&str| !line.starts_with('#') && !line.starts_with(&*called);
    let mut said = source.lines().filter(is_said);
    if said.clone().all(is_gsm) {
        Letters::Gsm
    } else if said.all(|line| is_gsm(&sms::bare(line))) {
        Letters::Marked
    } else {
        Letters::Script
    }
}

/// The texts in one language.
#[derive(Clone, Copy)]
pub struct Tongue<'a> {
    bundle: Option<&'a FluentBundle<FluentResource>>,
    fallback: Option<&'a FluentBundle<FluentResource>>,
    letters: Letters,
}

impl Tongue<'_> {
    /// A text with its values, to be put into another.
    #[must_use]
    pub fn say(&self, key: Key, args: Args) -> String {
        self.part(&Phrase::new(key, args), Room::ALL)
    }

    /// All of a value, for a page, where there is room.
    #[must_use]
    pub fn whole(&self, value: &Value) -> String {
        self.letters(value, Room::ALL)
    }

    /// A job in one or two words.
    #[must_use]
    pub fn job(&self, kind: TaskKind) -> String {
        self.say(Key::Job(kind), Vec::new())
    }

    /// A text that is printed.
    #[must_use]
    pub fn paper(&self, paper: Paper, args: Args) -> String {
        self.say(Key::Paper(paper), args)
    }

    /// A phrase at its full length.
    #[must_use]
    pub fn full(&self, phrase: &Phrase) -> String {
        self.part(phrase, Room::ALL)
    }

    /// As much of a phrase as there is room for. A text that is nowhere gives its own name, which
    /// tests catch.
    fn part(&self, phrase: &Phrase, room: Room) -> String {
        let args = phrase.args.iter();
        let args: FluentArgs<'_> = args
            .map(|(name, value)| (*name, self.value(value, room)))
            .collect();
        let name = phrase.key.name();
        [self.bundle, self.fallback]
            .into_iter()
            .flatten()
            .find_map(|bundle| {
                let message = bundle.get_message(&name)?;
                let long = room.long.then(|| message.get_attribute("long")).flatten();
                let pattern = long.map(|long| long.value()).or_else(|| message.value())?;
                let mut errors = Vec::new();
                let text = bundle.format_pattern(pattern, Some(&args), &mut errors);
                Some(text.into_owned())
            })
            .unwrap_or_else(|| name.into_owned())
    }

    fn value(&self, value: &Value, room: Room) -> FluentValue<'static> {
        if let Value::Count(count) = value {
            // A plural is chosen by it.
            return FluentValue::from(*count);
        }
        FluentValue::from(self.letters(value, room))
    }

    fn letters(&self, value: &Value, room: Room) -> String {
        match value {
            Value::Text(text) => text.clone(),
            Value::Name(name) => short(name, room.name),
            Value::Count(count) => count.to_string(),
            Value::Figure(number) => self.number(*number),
            Value::Usual(number) if room.long => {
                let args = args! { "value" => *number };
                self.say(Key::Usual, args)
            }
            Value::Usual(number) => self.number(*number),
            Value::Land(hectares) => self.land(*hectares),
            Value::Day(day) => self.day(*day),
            Value::DayYear(day) => self.day_year(*day),
            Value::Month(day) => self.month_year(*day),
            Value::Phrase(phrase) => self.part(phrase, room),
            Value::Joined(values) => {
                let letters = values.iter().map(|value| self.letters(value, room));
                letters.collect()
            }
            Value::List(items) => self.list(items, Key::More, room),
            Value::Jobs(items) => self.list(items, Key::MoreJobs, room),
            Value::Spare(forms) => {
                let form = forms.get(room.form).or(forms.last());
                let form = form.and_then(Option::as_ref);
                form.map_or_else(String::new, |form| self.part(form, room))
            }
            Value::Extra(phrase) if room.extra => self.part(phrase, room),
            Value::Extra(_) => String::new(),
        }
    }

    /// The first items, and "+3" for those left out.
    fn list(&self, items: &[Value], more: Key, room: Room) -> String {
        let shown = items.iter().take(room.shown);
        let mut words: Vec<String> = shown.map(|item| self.letters(item, room)).collect();
        let left = items.len() - words.len();
        if left > 0 {
            words.push(self.say(more, args! { "count" => left }));
        }
        words.join(LIST_COMMA)
    }

    /// A number with at most one decimal, and none where it says nothing.
    #[must_use]
    pub fn number(&self, value: f64) -> String {
        let text = format!("{value:.1}");
        match text.strip_suffix(".0") {
            Some(whole) => whole.to_owned(),
            None => text.replace('.', &self.say(Key::Decimal, args! {})),
        }
    }

    /// Land in the unit of the place: "1.2 ha".
    #[must_use]
    pub fn land(&self, hectares: f64) -> String {
        // One rai is 1,600 square metres.
        let args = args! { "hectares" => hectares, "rai" => hectares / 0.16 };
        self.say(Key::Land, args)
    }

    /// A date as people write it: "Sat 14 Jun".
    #[must_use]
    pub fn day(&self, day: NaiveDate) -> String {
        self.say(
            Key::Day,
            args! {
                "weekday" => Phrase::from(Key::Weekday(day.weekday())),
                "day" => day.day().to_string(),
                "month" => Phrase::from(Key::Month(day.month())),
            },
        )
    }

    /// A date with its year: "14 Jun 2026".
    #[must_use]
    pub fn day_year(&self, day: NaiveDate) -> String {
        self.say(
            Key::DayYear,
            args! {
                "day" => day.day().to_string(),
                "month" => Phrase::from(Key::Month(day.month())),
                "year" => self.year(day),
            },
        )
    }

    /// A month with its year: "Jun 2031".
    #[must_use]
    pub fn month_year(&self, day: NaiveDate) -> String {
        let month = Phrase::from(Key::Month(day.month()));
        self.say(
            Key::MonthYear,
            args! { "month" => month, "year" => self.year(day) },
        )
    }

    /// The year as it is counted where the language is spoken.
    fn year(&self, day: NaiveDate) -> String {
        let ahead = self.say(Key::YearsAhead, args! {}).parse().unwrap_or(0);
        day.year().saturating_add(ahead).to_string()
    }
}
