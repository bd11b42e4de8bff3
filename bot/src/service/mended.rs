//! Puts half letters right that JSON may hold and text may not.
//!
//! A letter outside the first 65,536 is written as two escapes (RFC 8259, 7). A phone or a network
//! that cuts a text between them leaves one, and a reader of JSON would refuse the whole
//! notification for it.

use std::borrow::Cow;

/// What stands for a letter that is not known.
const UNKNOWN: &str = "\\ufffd";
/// An escape such as `\\ud83d`.
const ESCAPE_LEN: usize = 6;

/// The body with a mark for an unknown letter where half of one stands. Nothing moves: the mark is
/// as long as what it stands for.
pub(crate) fn mended(body: &str) -> Cow<'_, str> {
    let mut out: Option<String> = None;
    let mut at = 0;
    while let Some(found) = body.get(at..).and_then(|rest| rest.find('\\')) {
        let start = at + found;
        at = match half(body, start) {
            None => start + 2,
            Some(Half::First) if half(body, start + ESCAPE_LEN) == Some(Half::Second) => {
                start + 2 * ESCAPE_LEN
            }
            Some(_) => {
                let end = start + ESCAPE_LEN;
                out.get_or_insert_with(|| body.to_owned())
                    .replace_range(start..end, UNKNOWN);
                end
            }
        };
    }
    out.map_or(Cow::Borrowed(body), Cow::Owned)
}

#[derive(PartialEq, Eq)]
enum Half {
    First,
    Second,
}

/// Which half of a letter is escaped here.
fn half(body: &str, start: usize) -> Option<Half> {
    let escape = body.get(start..start + ESCAPE_LEN)?;
    let unit = u16::from_str_radix(escape.strip_prefix("\\u")?, 16).ok()?;
    match unit {
        0xd800..=0xdbff => Some(Half::First),
        0xdc00..=0xdfff => Some(Half::Second),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::mended;

    /// The pair of RFC 8259, 7: the G clef is `\\uD834\\uDD1E`.
    #[test]
    fn whole_letters_stay_and_halves_become_unknown_ones() {
        for (body, expected) in [
            (r#""a""#, r#""a""#),
            (r#""\uD834\uDD1E""#, r#""\uD834\uDD1E""#),
            (r#""\uD834""#, r#""\ufffd""#),
            (r#""\udd1e!""#, r#""\ufffd!""#),
            (r#""\uD834\uD834\uDD1E""#, r#""\ufffd\uD834\uDD1E""#),
            (r#""\\uD834""#, r#""\\uD834""#),
            (r#""\\\uD834""#, r#""\\\ufffd""#),
            (r#""\u00e9\n""#, r#""\u00e9\n""#),
            (r#""\uD8"#, r#""\uD8"#),
            ("\\", "\\"),
            ("\\é", "\\é"),
        ] {
            assert_eq!(mended(body), expected, "{body}");
        }
    }
}
