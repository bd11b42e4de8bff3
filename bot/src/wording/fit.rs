//! What gives way before a text grows to a second part: names shorten, marks go, lists end.

use unicode_normalization::UnicodeNormalization;

use super::{Letters, Phrase, Tongue, Value};
use crate::words::sms;

/// Name lengths to try, longest first. Five letters still tell people of a village apart.
const NAME_LENGTHS: [usize; 4] = [20, 12, 8, SHORTEST_NAME];
const SHORTEST_NAME: usize = 5;

/// What parts the items of a list.
pub(super) const LIST_COMMA: &str = ", ";

/// How much of a phrase is said.
#[derive(Clone, Copy, Debug)]
pub(super) struct Room {
    /// Letters of a name.
    pub(super) name: usize,
    /// Items of a list.
    pub(super) shown: usize,
    /// Which form of what can be spared.
    pub(super) form: usize,
    /// Whether extras are told.
    pub(super) extra: bool,
    /// Whether the longer form of a text is said, where a language has one.
    pub(super) long: bool,
}

impl Room {
    /// For everything.
    pub(super) const ALL: Self = Self {
        name: usize::MAX,
        shown: usize::MAX,
        form: 0,
        extra: true,
        long: false,
    };
}

impl Tongue<'_> {
    /// A phrase as it is sent: the fullest form of it that is one SMS. If even the least is too
    /// long, it is cut at the end of the SMS.
    #[must_use]
    pub fn word(&self, phrase: &Phrase) -> String {
        self.word_with_shown(phrase).0
    }

    /// The same, and how many items of its lists were shown at most.
    #[must_use]
    pub(crate) fn word_with_shown(&self, phrase: &Phrase) -> (String, usize) {
        let mut last = String::new();
        for room in self.rooms(phrase) {
            match self.in_letters(self.part(phrase, room).trim_end()) {
                Ok(text) => return (text, room.shown),
                Err(longer) => last = longer,
            }
        }
        let cut = sms::split(&last).into_iter().next();
        (cut.unwrap_or_default(), 0)
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

    /// How much of a phrase to try, the fullest first. Of many items the last ones are only counted;
    /// then what can be spared gives way; at last there is no item. Each with shorter and shorter
    /// names. All of that in the longer form before any of it in the shorter one, which alone has no
    /// item.
    fn rooms(&self, phrase: &Phrase) -> impl Iterator<Item = Room> + use<> {
        let (mut items, mut forms, mut has_extra) = (0, 1, false);
        let mut is_whole = true;
        phrase.each(&mut |value| match value {
            Value::List(list) | Value::Jobs(list) => {
                let shown = self.most_shown(list);
                items = items.max(shown);
                is_whole &= shown == list.len();
            }
            Value::Spare(spare) => forms = forms.max(spare.len()),
            Value::Extra(_) => has_extra = true,
            Value::Text(_)
            | Value::Name(_)
            | Value::Count(_)
            | Value::Figure(_)
            | Value::Usual(_)
            | Value::Land(_)
            | Value::Day(_)
            | Value::DayYear(_)
            | Value::Month(_)
            | Value::Phrase(_)
            | Value::Joined(_) => {}
        });
        let unshortened = (has_extra && is_whole).then_some(Room {
            name: NAME_LENGTHS[0],
            long: true,
            ..Room::ALL
        });
        let fewer = (1..=items.max(1)).rev().map(|shown| (shown, 0));
        let less = (1..forms).map(|form| (1, form));
        let of = |(shown, form)| Room {
            shown,
            form,
            extra: false,
            ..Room::ALL
        };
        let levels = fewer.chain(less).map(of);
        let long = levels.clone().map(|room| Room { long: true, ..room });
        let rooms = long
            .chain(levels)
            .chain([of((0, forms - 1))])
            .flat_map(|room| NAME_LENGTHS.map(|name| Room { name, ..room }));
        unshortened.into_iter().chain(rooms)
    }

    /// How many items of a list can be shown at most: those whose letters alone fill an SMS, with
    /// the shortest names. Each is worded once for this, and no more than can be shown.
    fn most_shown(&self, list: &[Value]) -> usize {
        let shortest = Room {
            name: SHORTEST_NAME,
            shown: 0,
            extra: false,
            ..Room::ALL
        };
        let mut letters = 0;
        let fits = |item: &&Value| {
            let text = self.letters(item, shortest);
            letters += sms::bare(&sms::plain(&text)).chars().count();
            let is_shown = letters <= sms::SEPTETS_ALONE;
            letters += LIST_COMMA.len();
            is_shown
        };
        list.iter().take_while(fits).count()
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

#[cfg(test)]
mod tests {
    use super::{Phrase, Value};
    use crate::{
        args,
        wording::{Key, Texts},
    };

    fn worded(value: Value) -> String {
        let texts = Texts::built_in().unwrap();
        let phrase = Phrase::new(Key::MyBlocks, args! { "blocks" => value });
        texts.tongue(&["en"]).word(&phrase)
    }

    fn names(number: usize) -> Value {
        let name = Value::name("Wilhelminamagdalena");
        Value::List(vec![name; number])
    }

    /// What takes the rest of an SMS beside five names of five letters.
    fn phrase_of(letters: usize) -> Phrase {
        let args = args! { "block" => "x".repeat(letters) };
        Phrase::new(Key::Example, args)
    }

    #[test]
    fn names_shorten_before_an_item_is_left_out() {
        assert_eq!(worded(names(2)), "Wilhelminamagdalena, Wilhelminamagdalena");
        assert_eq!(worded(names(20)), ["Wilhe"; 20].join(", "));
        let less = [["Wilhe"; 22].join(", "), "+8".to_owned()].join(", ");
        assert_eq!(worded(names(30)), less);
    }

    #[test]
    fn items_are_left_out_before_what_can_be_spared_is() {
        let spare = |letters| Value::Spare(vec![Some(phrase_of(letters)), None]);
        let both = |letters| Value::Joined(vec![names(3), spare(letters)]);
        let rest = "x".repeat(144);
        assert_eq!(worded(both(144)), format!("Wilhe, +2dead 8 {rest}"));
        let all = ["Wilhelminamagdalena"; 3].join(", ");
        assert!(worded(both(170)).starts_with("Wilhelminamagdalena, +2"));
        assert!(worded(both(1)).starts_with(&all));
    }

    #[test]
    fn an_extra_is_told_only_where_the_rest_fits_unshortened() {
        let both = |letters| Value::Joined(vec![names(3), Value::Extra(phrase_of(letters))]);
        let all = ["Wilhelminamagdalena"; 3].join(", ");
        assert_eq!(worded(both(20)), format!("{all}dead 8 {}", "x".repeat(20)));
        assert_eq!(worded(both(120)), all);
    }

    #[test]
    fn a_text_that_cannot_fit_is_cut() {
        assert_eq!(worded(Value::Text("x".repeat(200))), "x".repeat(153));
    }
}
