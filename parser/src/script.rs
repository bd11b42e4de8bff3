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

/// A letter, a digit, or a mark that belongs to a letter.
pub(crate) fn is_word_letter(letter: char) -> bool {
    if letter.is_ascii() {
        letter.is_ascii_alphanumeric()
    } else {
        // Thai and Lao signs above a letter are neither letters nor combining marks by class.
        letter.is_alphanumeric()
            || is_mark(letter)
            || matches!(letter, '\u{e47}'..='\u{e4e}' | '\u{ec8}'..='\u{ece}')
    }
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
