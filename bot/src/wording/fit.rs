//! What gives way before a text grows to a second part: names shorten, marks go, lists end.

use unicode_normalization::UnicodeNormalization;

use super::{Args, Letters, Tongue};
use crate::words::sms;

/// Name lengths to try, longest first. Five letters still tell people of a village apart.
const NAME_LENGTHS: [usize; 4] = [20, 12, 8, 5];

impl Tongue<'_> {
    /// Renders a text with shorter and shorter names until it is one SMS. `render` gets the
    /// longest name allowed; if even the shortest is too long, the text is cut at the end of the
    /// SMS.
    #[must_use]
    pub fn fit(&self, render: impl Fn(usize) -> String) -> String {
        self.one_sms(render)
            .unwrap_or_else(|longer| sms::split(&longer).into_iter().next().unwrap_or_default())
    }

    /// A text with its values, in its longer form if that is one SMS.
    #[must_use]
    pub fn fit_text<'v>(&self, key: &str, args: impl Fn(usize) -> Args<'v>) -> String {
        self.one_sms(|length| self.say_long(key, args(length)))
            .unwrap_or_else(|_| self.fit(|length| self.say(key, args(length))))
    }

    /// Joins as many items as let the text fit, best first, and says how many are left out.
    #[must_use]
    pub(crate) fn fit_list(
        &self,
        items: usize,
        render: impl Fn(usize, usize, usize) -> String,
    ) -> String {
        let with = |shown: usize| {
            let render = &render;
            move |length| render(length, shown, items - shown)
        };
        (1..=items)
            .rev()
            .find_map(|shown| self.one_sms(with(shown)).ok())
            .unwrap_or_else(|| self.fit(with(0)))
    }

    /// The text with the longest names that make it one SMS, or else the shortest that there is.
    pub(super) fn one_sms(&self, render: impl Fn(usize) -> String) -> Result<String, String> {
        let mut last = String::new();
        for length in NAME_LENGTHS {
            match self.in_letters(&render(length)) {
                Ok(text) => return Ok(text),
                Err(longer) => last = longer,
            }
        }
        Err(last)
    }

    /// A text in letters that may be sent, if it is one SMS then; else the last that was tried.
    /// Marks go before names shorten: a bare word is read as it was meant, half a name is not.
    fn in_letters(&self, text: &str) -> Result<String, String> {
        let plain = sms::plain(text);
        let one_sms = |text: String| {
            if sms::measure(&text).parts <= 1 {
                Ok(text)
            } else {
                Err(text)
            }
        };
        match self.letters {
            Letters::Gsm => one_sms(sms::without_marks(&plain)),
            Letters::Marked => {
                one_sms(plain.into_owned()).or_else(|text| one_sms(sms::bare(&text)))
            }
            Letters::Bare => one_sms(sms::bare(&plain)),
            Letters::Script => one_sms(plain.into_owned()),
        }
    }
}

/// A name of at most this many letters.
#[must_use]
pub(crate) fn short(name: &str, length: usize) -> String {
    name.nfc()
        .take(length)
        .collect::<String>()
        .trim_end()
        .to_owned()
}
