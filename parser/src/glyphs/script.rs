//! Letters of the world's scripts, as far as reading needs to tell them apart.
//!
//! Deliberately absent: which language a text is in. That cannot be told from a short text.

use unicode_normalization::char::canonical_combining_class;

/// Thai, Lao, Burmese and Khmer: written without spaces between words.
pub(crate) const fn is_unspaced(letter: char) -> bool {
    matches!(
        letter,
        '\u{e00}'..='\u{eff}' | '\u{1000}'..='\u{109f}' | '\u{1780}'..='\u{17ff}'
    )
}

/// Latin and its like, scripts without spaces, the scripts of India and Lanka: where one follows the
/// other a new word begins ("Bல", "แปลงA").
pub(crate) const fn writing(letter: char) -> u8 {
    if is_unspaced(letter) {
        1
    } else if matches!(letter, '\u{900}'..='\u{dff}') {
        2
    } else {
        0
    }
}

/// A letter, a digit, or a mark that belongs to a letter.
pub(crate) fn is_word_letter(letter: char) -> bool {
    if letter.is_ascii() {
        letter.is_ascii_alphanumeric()
    } else {
        // Thai and Lao signs above a letter are neither letters nor combining marks by class.
        is_common_letter(letter)
            || letter.is_alphanumeric()
            || is_mark(letter)
            || matches!(letter, '\u{e47}'..='\u{e4e}' | '\u{ec8}'..='\u{ece}')
    }
}

/// Letters and vowel signs that texts are full of, told without the tables of all scripts, which
/// take long to search.
const fn is_common_letter(letter: char) -> bool {
    matches!(letter,
        // Latin with accents.
        '\u{c0}'..='\u{d6}' | '\u{d8}'..='\u{f6}' | '\u{f8}'..='\u{24f}' | '\u{1e00}'..='\u{1eff}'
        // Thai.
        | '\u{e01}'..='\u{e3a}' | '\u{e40}'..='\u{e4e}'
        // Tamil.
        | '\u{b85}'..='\u{b8a}' | '\u{b8e}'..='\u{b90}' | '\u{b92}'..='\u{b95}'
        | '\u{b99}' | '\u{b9a}' | '\u{b9f}' | '\u{ba3}' | '\u{ba4}' | '\u{ba8}'..='\u{baa}'
        | '\u{bae}'..='\u{bb9}' | '\u{bbe}'..='\u{bc2}' | '\u{bc6}'..='\u{bc8}' | '\u{bcd}'
        // Malayalam.
        | '\u{d05}'..='\u{d0c}' | '\u{d0e}'..='\u{d10}' | '\u{d12}'..='\u{d39}'
        | '\u{d3e}'..='\u{d43}' | '\u{d46}'..='\u{d48}' | '\u{d4a}'..='\u{d4d}'
        // Sinhala.
        | '\u{d85}'..='\u{d96}' | '\u{d9a}'..='\u{db1}' | '\u{db3}'..='\u{dbb}' | '\u{dbd}'
        | '\u{dc0}'..='\u{dc6}' | '\u{dca}' | '\u{dcf}'..='\u{dd4}' | '\u{dd6}' | '\u{dd8}'..='\u{ddf}'
    )
}

/// A mark that is combined with the letter before it.
pub(crate) fn is_mark(letter: char) -> bool {
    letter >= '\u{300}' && canonical_combining_class(letter) != 0
}

/// Whether a word of a script without spaces may begin with this letter: a vowel that stands after
/// its consonant, or a sign above or below one, belongs to what is before it (Unicode Standard,
/// chapter 16, "Thai").
pub(crate) fn may_begin(letter: char) -> bool {
    let follows = matches!(
        letter,
        '\u{e2f}'..='\u{e3a}' | '\u{e45}'..='\u{e4e}' | '\u{eb0}'..='\u{ebd}' | '\u{ec8}'..='\u{ece}'
    );
    !follows && !is_mark(letter)
}

/// Whether a word may end with this letter: a vowel that is written before its consonant needs one.
pub(crate) const fn may_end(letter: char) -> bool {
    !matches!(letter, '\u{e40}'..='\u{e44}' | '\u{ec0}'..='\u{ec4}')
}

/// The Latin letter that a Greek or Cyrillic one looks like (Unicode Technical Standard 39,
/// confusable characters; capitals and small letters differ), as a small letter.
pub(crate) const fn look_alike(letter: char) -> Option<char> {
    Some(match letter {
        'а' | 'А' | 'α' | 'Α' => 'a',
        'В' | 'Β' => 'b',
        'с' | 'С' => 'c',
        'ԁ' => 'd',
        'е' | 'Е' | 'Ε' => 'e',
        'Н' | 'Η' | 'һ' => 'h',
        'і' | 'І' | 'ι' | 'Ι' => 'i',
        'ј' | 'Ј' => 'j',
        'К' | 'к' | 'Κ' | 'κ' => 'k',
        'М' | 'Μ' => 'm',
        'Ν' => 'n',
        'о' | 'О' | 'ο' | 'Ο' => 'o',
        'р' | 'Р' | 'ρ' | 'Ρ' => 'p',
        'ԛ' => 'q',
        'ѕ' | 'Ѕ' => 's',
        'Т' | 'Τ' => 't',
        'υ' => 'u',
        'ν' => 'v',
        'ԝ' => 'w',
        'х' | 'Х' | 'χ' | 'Χ' => 'x',
        'у' | 'У' | 'Υ' => 'y',
        'Ζ' => 'z',
        _ => return None,
    })
}

/// The two letters of a Malayalam letter without vowel that is also written as a letter, a virama
/// and a joiner (Unicode Standard, chapter 12, "Malayalam").
pub(crate) const fn chillu(letter: char) -> Option<char> {
    Some(match letter {
        'ൺ' => 'ണ',
        'ൻ' => 'ന',
        'ർ' => 'ര',
        'ൽ' => 'ല',
        'ൾ' => 'ള',
        'ൿ' => 'ക',
        _ => return None,
    })
}

/// What takes the vowel from a Malayalam letter.
pub(crate) const VIRAMA: char = '\u{d4d}';

#[cfg(test)]
mod tests {
    use super::{is_common_letter, is_mark};

    #[test]
    fn common_letters_are_letters_or_marks() {
        let common = |letter: &char| is_common_letter(*letter);
        for letter in ('\0'..=char::MAX).filter(common) {
            let is_thai_sign = matches!(letter, '\u{e47}'..='\u{e4e}');
            assert!(
                letter.is_alphabetic() || is_mark(letter) || is_thai_sign,
                "{letter:?}"
            );
        }
    }
}
