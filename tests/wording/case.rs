//! A language to be checked, and the longest values that go into its texts.

use std::collections::BTreeMap;

use budwood::{
    wording::{Texts, Tongue},
    words::sms,
};
use chrono::{Datelike, NaiveDate};

use super::source;
use crate::fixture;

/// The longest name that the list of people takes: 30 letters, one word.
pub(super) const NAME: &str = "Wilhelminamagdalenaconstantina";
/// The longest name of a block: 12 letters.
pub(super) const BLOCK: &str = "Uppernorthwe";
/// Names shrink to this before a text is cut.
pub(super) const SHORTEST: &str = "Mmmmm";
/// The most trees that the list takes for a block.
pub(super) const TREES: u32 = 60_000;

/// A language to be checked.
pub(super) struct Case<'a> {
    pub(super) tongue: Tongue<'a>,
    pub(super) written: BTreeMap<String, String>,
    pub(super) day: NaiveDate,
}

/// Runs a check in every language, and in its form without marks.
pub(super) fn in_every_language(check: impl Fn(&Case<'_>)) {
    let texts = Texts::built_in().unwrap();
    for (language, file) in source::files() {
        let bare = texts.bare_form(&language);
        for code in [Some(language), bare].into_iter().flatten() {
            let tongue = texts.tongue(&[&code]);
            check(&Case {
                tongue,
                written: source::texts(&file),
                day: longest_day(tongue),
            });
        }
    }
}

/// A day of two digits whose weekday and month have the longest names.
fn longest_day(tongue: Tongue<'_>) -> NaiveDate {
    let first = NaiveDate::from_ymd_opt(2026, 1, 1).expect("a day");
    let days = first.iter_days().take(365).filter(|day| day.day() >= 17);
    days.max_by_key(|day| sms::measure(&tongue.day(*day)).units)
        .expect("days")
}

impl Case<'_> {
    /// Fails unless a text is one SMS that ends as the text of this name does, or as its longer
    /// form does.
    #[track_caller]
    pub(super) fn assert_whole(&self, text: &str, key: &str) {
        fixture::assert_one_sms(text);
        let long = self.written.get(&format!("{key}.long"));
        let mut forms = self.written.get(key).into_iter().chain(long);
        let is_whole = forms.any(|pattern| ends_as(text, pattern));
        assert!(is_whole, "{key} is cut: {text}");
    }
}

fn ends_as(text: &str, pattern: &str) -> bool {
    let ending = pattern.rsplit('}').next().unwrap_or_default().trim();
    if !ending.is_empty() {
        return text.ends_with(ending) || text.ends_with(&*sms::bare(ending));
    }
    let signature = ["Wilhe", "Mmmmm"].iter().any(|name| {
        let at = text.rfind(name);
        at.is_some_and(|at| text[at..].chars().all(|c| c.is_alphanumeric()))
    });
    let last = pattern.rsplit("{ $").next().unwrap_or_default();
    !last.starts_with("adviser") || signature
}
