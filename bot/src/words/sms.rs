//! How long a text is, and where it is cut into parts.
//!
//! The GSM default alphabet and its extension table are those of 3GPP TS 23.038, 6.2.1 and
//! 6.2.1.1; the sizes of parts are those of 3GPP TS 23.040, 9.2.3.24.1 (a header of six octets,
//! with a reference of eight bits). Deliberately absent: national language tables, which many
//! centres drop, and packing into octets, which is `septets`.

pub mod septets;

use std::{borrow::Cow, iter::once};

use unicode_normalization::UnicodeNormalization;

/// Septets of a text that goes alone: no text that is one SMS has more letters.
pub(crate) const SEPTETS_ALONE: usize = 160;

/// Septets of a text that goes alone, and of each part of a longer one.
const GSM7_UNITS: Limits = Limits {
    alone: SEPTETS_ALONE,
    part: 153,
};

/// UTF-16 units of a text that goes alone, and of each part of a longer one.
const UCS2_UNITS: Limits = Limits {
    alone: 70,
    part: 67,
};

struct Limits {
    alone: usize,
    part: usize,
}

/// How the characters of a text are coded. One character decides for the whole text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Alphabet {
    /// The GSM default alphabet with its extension table, seven bits each.
    Gsm7,
    /// UTF-16, which the standards call UCS-2.
    Ucs2,
}

/// How long a text is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// How it is coded.
    pub alphabet: Alphabet,
    /// Septets or UTF-16 units.
    pub units: usize,
    /// Messages that it takes. An empty text is one message.
    pub parts: usize,
}

/// Measures a text.
#[must_use]
pub fn measure(text: &str) -> Size {
    let alphabet = alphabet_of(text);
    let units = text.chars().map(|c| alphabet.units_of(c)).sum();
    let parts = cuts(text, alphabet, units).count() + 1;
    Size {
        alphabet,
        units,
        parts,
    }
}

/// Cuts a text into the parts that [`measure`] counts. Each part takes what fits; an escape pair
/// and a surrogate pair stay whole.
#[must_use]
pub fn split(text: &str) -> Vec<String> {
    let size = measure(text);
    let mut parts = Vec::with_capacity(size.parts);
    let mut start = 0;
    for cut in cuts(text, size.alphabet, size.units).chain([text.len()]) {
        parts.push(text.get(start..cut).unwrap_or_default().to_owned());
        start = cut;
    }
    parts
}

/// Puts plain characters in the place of typographic ones, which would push a text out of the GSM
/// alphabet and halve what fits in it. Marks on letters and scripts are left alone.
#[must_use]
pub fn plain(text: &str) -> Cow<'_, str> {
    if text.chars().all(|c| plain_form(c).is_none()) {
        return Cow::Borrowed(text);
    }
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match plain_form(c) {
            Some(form) => out.push_str(form),
            None => out.push(c),
        }
    }
    Cow::Owned(out)
}

/// Takes marks off letters that the GSM alphabet lacks: one such letter in a name would turn the
/// whole text into UTF-16 and halve what fits in it. Letters of other scripts stay.
#[must_use]
pub fn without_marks(text: &str) -> String {
    text.nfc()
        .map(|letter| match septets(letter) {
            Some(_) => letter,
            None => base(letter),
        })
        .collect()
}

/// Takes the marks off all letters, as people type a language whose marks their phones lack:
/// "đã trồng" becomes "da trong". Letters of other scripts stay.
#[must_use]
pub fn bare(text: &str) -> String {
    text.nfc().map(base).collect()
}

/// A Latin letter without its marks; any other character as it is.
pub(super) fn base(letter: char) -> char {
    match letter {
        // A stroke through a letter is no mark that Unicode takes off.
        'đ' | 'ð' | 'ɗ' => 'd',
        'Đ' | 'Ð' => 'D',
        'ł' => 'l',
        'Ł' => 'L',
        'ı' => 'i',
        'ŋ' => 'n',
        'Ŋ' => 'N',
        'ɓ' => 'b',
        'Ɓ' => 'B',
        'ɛ' => 'e',
        'Ɛ' => 'E',
        'ɔ' => 'o',
        'Ɔ' => 'O',
        _ => once(letter)
            .nfd()
            .next()
            .filter(|base| septets(*base).is_some())
            .unwrap_or(letter),
    }
}

impl Alphabet {
    /// Every one.
    pub const ALL: [Self; 2] = [Self::Gsm7, Self::Ucs2];

    /// The name in records.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Gsm7 => "gsm7",
            Self::Ucs2 => "ucs2",
        }
    }

    /// The alphabet with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL
            .into_iter()
            .find(|alphabet| alphabet.name() == name)
    }

    const fn limits(self) -> Limits {
        match self {
            Self::Gsm7 => GSM7_UNITS,
            Self::Ucs2 => UCS2_UNITS,
        }
    }

    fn units_of(self, c: char) -> usize {
        match self {
            Self::Gsm7 => septets(c).unwrap_or(1),
            Self::Ucs2 => c.len_utf16(),
        }
    }
}

fn alphabet_of(text: &str) -> Alphabet {
    if text.chars().all(|c| septets(c).is_some()) {
        Alphabet::Gsm7
    } else {
        Alphabet::Ucs2
    }
}

/// The places, in bytes, where the second and later parts begin.
fn cuts(text: &str, alphabet: Alphabet, units: usize) -> impl Iterator<Item = usize> + '_ {
    let limits = alphabet.limits();
    let room = if units <= limits.alone {
        limits.alone
    } else {
        limits.part
    };
    let mut used = 0;
    text.char_indices().filter_map(move |(at, c)| {
        let units = alphabet.units_of(c);
        used += units;
        let is_full = used > room;
        if is_full {
            used = units;
        }
        is_full.then_some(at)
    })
}

/// Septets that a character takes in the GSM alphabet, if it is in it.
fn septets(c: char) -> Option<usize> {
    // Most characters of most texts are these; the same in both tables.
    if c.is_ascii_alphanumeric() || c == ' ' {
        Some(1)
    } else if c == ESCAPE {
        // Sent as it is, it would turn the character after it into another one.
        None
    } else if DEFAULT_TABLE.contains(c) {
        Some(1)
    } else if EXTENSION_TABLE.iter().any(|(_, extended)| *extended == c) {
        Some(2)
    } else {
        None
    }
}

const ESCAPE: char = '\u{1b}';

/// The default table, in the order of the codes 00 to 7F. Code 1B is the escape.
const DEFAULT_TABLE: &str = concat!(
    "@£$¥èéùìòÇ\nØø\rÅå",
    "Δ_ΦΓΛΩΠΨΣΘΞ\u{1b}ÆæßÉ",
    " !\"#¤%&'()*+,-./",
    "0123456789:;<=>?",
    "¡ABCDEFGHIJKLMNO",
    "PQRSTUVWXYZÄÖÑÜ§",
    "¿abcdefghijklmno",
    "pqrstuvwxyzäöñüà",
);

/// The extension table: the code after the escape, and the character.
const EXTENSION_TABLE: [(u8, char); 10] = [
    (0x0a, '\u{c}'),
    (0x14, '^'),
    (0x28, '{'),
    (0x29, '}'),
    (0x2f, '\\'),
    (0x3c, '['),
    (0x3d, '~'),
    (0x3e, ']'),
    (0x40, '|'),
    (0x65, '€'),
];

/// What to write in the place of a typographic character. Joiners (U+200C, U+200D) are not here:
/// they change how words of some scripts are read.
fn plain_form(c: char) -> Option<&'static str> {
    Some(match c {
        '‘' | '’' | '‚' | '‛' | '′' | 'ʼ' | '´' | '`' => "'",
        '“' | '”' | '„' | '‟' | '″' | '«' | '»' => "\"",
        '‐' | '‑' | '‒' | '–' | '—' | '―' | '−' => "-",
        '…' => "...",
        'œ' => "oe",
        'Œ' => "OE",
        '•' => "-",
        '×' => "x",
        '²' => "2",
        '³' => "3",
        '\t' | '\u{a0}' | '\u{2000}'..='\u{200a}' | '\u{202f}' | '\u{205f}' | '\u{3000}' => " ",
        '\u{2028}' | '\u{2029}' => "\n",
        // Soft hyphen, zero-width space, word joiner, byte order mark: nothing to see.
        '\u{ad}' | '\u{200b}' | '\u{2060}' | '\u{feff}' => "",
        _ => return None,
    })
}

#[cfg(test)]
mod tests;
