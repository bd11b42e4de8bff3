//! Names of the farmer's blocks with the endings that a language gives them.
//!
//! Deliberately absent: names as they are, which `cutter` finds.

use crate::{
    glyphs::{fold::Folded, script::is_word_letter},
    lists::piece::{Pieces, Sense},
    reading::Known,
};

/// "மேலவிளையில்", "veetu thottathil": one of the farmer's names with an ending.
pub(crate) fn settle<'r>(pieces: &mut Pieces<'r>, folded: &'r Folded<'r>, known: &Known<'r>) {
    let mut at = 0;
    while let Some(piece) = pieces.get(at) {
        // "morreu" is no "morro" with an ending: a listed word in Latin letters is itself.
        let is_latin = folded
            .text
            .as_bytes()
            .get(piece.start)
            .is_some_and(u8::is_ascii);
        let is_itself = is_latin && piece.listed().is_some();
        let found = (!matches!(piece.sense, Sense::Block(_) | Sense::Mark(_)))
            .then(|| inflected(piece.start, folded, known))
            .flatten()
            .filter(|(own, _)| !is_itself || own.contains(' '));
        if let Some((own, end)) = found {
            let more = pieces.iter().skip(at + 1);
            let inside = more.take_while(|piece| piece.start < end).count();
            if let Some(piece) = pieces.get_mut(at) {
                piece.end = piece.end.max(end);
                piece.becomes(Sense::Block(own));
            }
            for _ in 0..inside {
                pieces.remove(at + 1);
            }
        }
        at += 1;
    }
}

/// The own name that begins here with its last letters changed, and where its word ends.
fn inflected<'r>(start: usize, folded: &Folded<'_>, known: &Known<'r>) -> Option<(&'r str, usize)> {
    let text = folded.text.get(start..)?;
    known.blocks.iter().find_map(|own| {
        let letters = own.chars().count();
        // Letters of other scripts carry a vowel.
        let least = NAME_LETTERS_MIN - usize::from(!own.is_ascii());
        if letters < least {
            return None;
        }
        let name = own.chars().flat_map(char::to_lowercase);
        let same = name
            .zip(text.chars())
            .take_while(|(one, other)| one == other || open_form(*one) == Some(*other))
            .count();
        // Latin names change their last vowel only.
        let lost = own.chars().skip(same);
        let is_ending = own.is_ascii().then(|| {
            lost.clone()
                .all(|letter| "aeioum".contains(letter.to_ascii_lowercase()))
        });
        if same + CHANGED_LETTERS_MAX < letters
            || same < NAME_LETTERS_MIN - 1
            || (letters < NAME_LETTERS_MIN && same < letters)
            || is_ending == Some(false)
        {
            return None;
        }
        let rest = text.char_indices().skip(same);
        let mut ending = 0;
        for (at, letter) in rest {
            if !is_word_letter(letter) {
                return Some((*own, start + at)).filter(|_| ending > 0);
            }
            ending += 1;
            if ending > ENDING_LETTERS_MAX {
                return None;
            }
        }
        (ending > 0).then_some((*own, start + text.len()))
    })
}

/// The letter that a Malayalam letter without a vowel becomes before an ending (the Unicode standard's
/// chillu letters).
const fn open_form(letter: char) -> Option<char> {
    match letter {
        'ൻ' => Some('ന'),
        'ർ' => Some('ര'),
        'ൽ' => Some('ല'),
        'ൾ' => Some('ള'),
        'ൺ' => Some('ണ'),
        _ => None,
    }
}

/// Shorter names are too much else.
const NAME_LETTERS_MIN: usize = 4;
/// So many letters at the end of a name give way to an ending of so many letters.
const CHANGED_LETTERS_MAX: usize = 2;
const ENDING_LETTERS_MAX: usize = 7;
