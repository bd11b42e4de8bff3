//! Names shorten before a text grows to a second part.

use crate::sms;

/// Name lengths to try, longest first. Five letters still tell people of a village apart.
const NAME_LENGTHS: [usize; 4] = [20, 12, 8, 5];

/// Renders a text with shorter and shorter names until it is one SMS. `render` gets the longest
/// name allowed; if even the shortest is too long, the text is cut at the end of the SMS.
#[must_use]
pub fn fit(render: impl Fn(usize) -> String) -> String {
    let mut last = String::new();
    for length in NAME_LENGTHS {
        last = sms::plain(&render(length)).into_owned();
        if sms::measure(&last).parts <= 1 {
            return last;
        }
    }
    sms::split(&last).into_iter().next().unwrap_or_default()
}

/// A name of at most this many letters, all of the GSM alphabet where that is possible.
#[must_use]
pub(crate) fn short(name: &str, length: usize) -> String {
    sms::without_marks(name)
        .chars()
        .take(length)
        .collect::<String>()
        .trim_end()
        .to_owned()
}

/// Joins as many items as let the text fit, best first, and says how many are left out.
#[must_use]
pub(crate) fn fit_list(items: usize, render: impl Fn(usize, usize, usize) -> String) -> String {
    for shown in (1..=items).rev() {
        for length in NAME_LENGTHS {
            let text = sms::plain(&render(length, shown, items - shown)).into_owned();
            if sms::measure(&text).parts <= 1 {
                return text;
            }
        }
    }
    fit(|length| render(length, 0, items))
}
