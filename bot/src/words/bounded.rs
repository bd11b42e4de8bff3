//! What others write, within bounds: a text, and a word of theirs that is kept.

use super::limits;

/// A text that is too long is cut and not refused: refused, it would be sent again for ever, and no
/// phone sends one as long.
#[must_use]
pub fn text(mut text: String) -> String {
    if let Some((end, _)) = text.char_indices().nth(limits::TEXT_CHARS_MAX) {
        text.truncate(end);
    }
    text
}

/// A code or state of a gateway, which is one word. What is none may quote the number or the text,
/// and so may a number of many digits: neither is kept.
#[must_use]
pub fn word(found: &str, most: usize) -> Option<String> {
    const DIGITS_MAX: usize = 6;
    let is_word = (1..=most).contains(&found.len())
        && (found.bytes()).all(|byte| byte.is_ascii_alphanumeric() || byte == b'_');
    let is_number = found.len() > DIGITS_MAX && found.bytes().all(|byte| byte.is_ascii_digit());
    (is_word && !is_number).then(|| found.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_is_cut_between_letters() {
        let long = "ก".repeat(limits::TEXT_CHARS_MAX);
        assert_eq!(text(long.clone()), long);
        assert_eq!(text(format!("{long}ข")), long);
    }

    #[test]
    fn what_may_be_somebodys_is_no_word() {
        for good in ["DELIVRD", "000", "SVC0004", "not_there", "123456"] {
            assert_eq!(word(good, 16).as_deref(), Some(good));
        }
        for bad in [
            "",
            "two words",
            "447700900123",
            "é",
            "a-b",
            "twenty_letters_long_",
        ] {
            assert_eq!(word(bad, 16), None, "{bad}");
        }
    }
}
