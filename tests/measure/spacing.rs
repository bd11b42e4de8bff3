//! Where the spaces go, and where they get lost.

use crate::{
    chance::Chance,
    draw::happens,
    rates::Rates,
    speech::Speech,
    token::{Token, What},
};

/// In a language without spaces, a gap is left open so often (assumed).
const OPEN_GAP: u64 = 3_000;

/// The tokens as one string.
pub(crate) fn joined(
    chance: &mut Chance,
    speech: &Speech,
    rates: &Rates,
    tokens: &[Token],
) -> String {
    let doubled = happens(chance, rates.double_space).then(|| chance.place(tokens.len().max(1)));
    let mut text = String::new();
    let mut before: Option<&Token> = None;
    for (place, token) in tokens.iter().enumerate() {
        if let Some(before) = before
            && gap(chance, speech, rates, before, token)
        {
            text.push(' ');
            if doubled == Some(place) {
                text.push(' ');
            }
        }
        text.push_str(&token.text);
        before = Some(token);
    }
    text
}

fn gap(chance: &mut Chance, speech: &Speech, rates: &Rates, one: &Token, other: &Token) -> bool {
    if other.what == What::Mark {
        return false;
    }
    let digits = other.begins_with_digit();
    if one.what == What::Mark {
        // "120.8" would be another number, and nobody could tell.
        return digits || !happens(chance, rates.tight_mark);
    }
    if one.ends_with_digit() && digits {
        return true;
    }
    if speech.joined && is_joined(one, other) {
        return happens(chance, OPEN_GAP);
    }
    let border = one.ends_with_digit() != digits;
    let code = |token: &Token| token.what == What::Name && token.text.len() > 1;
    if border && (other.begins_with_letter() || digits) {
        return code(one) || code(other) || !happens(chance, rates.glued);
    }
    let words = one.what == What::Word && matches!(other.what, What::Word | What::Name);
    !(words && happens(chance, rates.run_on))
}

/// Two pieces of a script without spaces, or a number or a letter beside one.
fn is_joined(one: &Token, other: &Token) -> bool {
    let plain = |token: &Token| token.text.is_ascii();
    !(plain(one) && plain(other))
}
