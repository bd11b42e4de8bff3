//! A text with places in it, such as `{to}`, that are filled in for each text that is sent.
//!
//! Nothing is escaped here: whoever writes the result into an address, a form or JSON does that,
//! so that no text can break out of its place.

use data_encoding::HEXUPPER;

use crate::words::sms::septets;

/// A text with places.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Pattern(Vec<Piece>);

#[derive(Clone, Debug, PartialEq, Eq)]
enum Piece {
    Words(String),
    Place(Place),
}

/// What can stand in a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Place {
    To,
    ToDigits,
    From,
    Text,
    TextHex,
    Id,
    Coding,
    Parts,
    Seconds,
    Minutes,
    User,
    ReceiptUrl,
}

/// The places by the names that a person writes.
const PLACES: [(&str, Place); 12] = [
    ("to", Place::To),
    ("to_digits", Place::ToDigits),
    ("from", Place::From),
    ("text", Place::Text),
    ("text_hex", Place::TextHex),
    ("id", Place::Id),
    ("coding", Place::Coding),
    ("parts", Place::Parts),
    ("seconds", Place::Seconds),
    ("minutes", Place::Minutes),
    ("user", Place::User),
    ("receipt_url", Place::ReceiptUrl),
];

impl Pattern {
    /// Reads a pattern; a brace that is no place is written twice.
    pub(super) fn parse(written: &str) -> Result<Self, String> {
        let mut pieces = Vec::new();
        let mut words = String::new();
        let mut rest = written;
        while let Some(at) = rest.find(['{', '}']) {
            let (before, from) = rest.split_at(at);
            words.push_str(before);
            if let Some(after) = from.strip_prefix("{{") {
                words.push('{');
                rest = after;
            } else if let Some(after) = from.strip_prefix("}}") {
                words.push('}');
                rest = after;
            } else {
                let (place, after) = place(from)?;
                if !words.is_empty() {
                    pieces.push(Piece::Words(std::mem::take(&mut words)));
                }
                pieces.push(Piece::Place(place));
                rest = after;
            }
        }
        words.push_str(rest);
        if !words.is_empty() {
            pieces.push(Piece::Words(words));
        }
        Ok(Self(pieces))
    }

    /// Whether this place is in it.
    pub(super) fn has(&self, place: Place) -> bool {
        self.0.contains(&Piece::Place(place))
    }

    /// What stands before the first place.
    pub(super) fn start(&self) -> &str {
        match self.0.first() {
            Some(Piece::Words(words)) => words,
            Some(Piece::Place(_)) | None => "",
        }
    }

    /// The text with each place filled in by `value`, which escapes what must be.
    pub(super) fn filled(&self, value: impl Fn(Place) -> String) -> String {
        let mut filled = String::new();
        for piece in &self.0 {
            match piece {
                Piece::Words(words) => filled.push_str(words),
                Piece::Place(place) => filled.push_str(&value(*place)),
            }
        }
        filled
    }
}

/// The place that a text begins with, and what comes after it.
fn place(from: &str) -> Result<(Place, &str), String> {
    let found = from
        .strip_prefix('{')
        .and_then(|inside| inside.split_once('}'));
    let Some((name, after)) = found else {
        return Err(
            "expected a place such as {text}; a brace that is none is written twice".into(),
        );
    };
    match PLACES.iter().find(|(known, _)| *known == name) {
        Some((_, place)) => Ok((*place, after)),
        None => {
            let known: Vec<&str> = PLACES.iter().map(|(known, _)| *known).collect();
            let known = known.join("}, {");
            Err(format!("expected one of {{{known}}}; found {{{name}}}"))
        }
    }
}

/// A text in hexadecimal digits of UTF-16, big end first.
pub(super) fn hex_of_utf16(text: &str) -> String {
    HEXUPPER.encode(&septets::utf16(text))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_are_filled_and_braces_kept() {
        let pattern = Pattern::parse("{{{to}}} says {text}{id}").unwrap();
        let filled = pattern.filled(|place| format!("<{place:?}>"));
        assert_eq!(filled, "{<To>} says <Text><Id>");
        assert!(pattern.has(Place::Text) && !pattern.has(Place::From));
        assert_eq!(pattern.start(), "{");
        assert_eq!(Pattern::parse("").unwrap().filled(|_| String::new()), "");
    }

    #[test]
    fn what_is_no_place_is_refused() {
        for (written, why) in [
            ("{", "written twice"),
            ("a}b", "written twice"),
            ("{to", "written twice"),
            ("{txt}", "found {txt}"),
            ("{}", "found {}"),
        ] {
            let error = Pattern::parse(written).unwrap_err();
            assert!(error.contains(why), "{written}: {error}");
        }
    }

    // The Unicode standard, UTF-16BE of U+1F600.
    #[test]
    fn hex_is_that_of_utf16() {
        assert_eq!(hex_of_utf16("a😀"), "0061D83DDE00");
    }
}
