//! The GSM alphabet as codes, and codes packed into octets (3GPP TS 23.038, 6.1.2.1 and 6.2.1).
//!
//! Deliberately absent: the shift tables of national languages, which hardly any centre passes on.

use super::{DEFAULT_TABLE, ESCAPE, EXTENSION_TABLE};

/// The code that stands before those of the extension table.
const ESCAPE_CODE: u8 = 0x1b;

/// The codes of a text, one septet each. None where a character is not in the alphabet.
#[must_use]
pub fn codes(text: &str) -> Option<Vec<u8>> {
    let mut codes = Vec::with_capacity(text.len());
    for letter in text.chars() {
        if let Some((code, _)) = EXTENSION_TABLE.iter().find(|(_, known)| *known == letter) {
            codes.extend([ESCAPE_CODE, *code]);
        } else {
            let place = DEFAULT_TABLE.chars().position(|known| known == letter)?;
            let is_escape = letter == ESCAPE;
            codes.push(u8::try_from(place).ok().filter(|_| !is_escape)?);
        }
    }
    Some(codes)
}

/// The text that codes stand for. Codes that nobody knows never fail: after an escape the letter of
/// the main table is shown (6.2.1.1), and an octet that is no septet is read without its high bit.
#[must_use]
pub fn text(codes: &[u8]) -> String {
    let mut text = String::with_capacity(codes.len());
    let mut is_extended = false;
    for code in codes {
        let code = code & 0x7f;
        if is_extended {
            is_extended = false;
            let found = EXTENSION_TABLE.iter().find(|(known, _)| *known == code);
            text.push(match found {
                Some((_, letter)) => *letter,
                None if code == ESCAPE_CODE => ' ',
                None => letter_of(code),
            });
        } else if code == ESCAPE_CODE {
            is_extended = true;
        } else {
            text.push(letter_of(code));
        }
    }
    text
}

fn letter_of(code: u8) -> char {
    DEFAULT_TABLE.chars().nth(code.into()).unwrap_or(' ')
}

/// Packs septets into octets, after so many bits of filling.
#[must_use]
pub fn packed(codes: &[u8], fill: u32) -> Vec<u8> {
    let mut octets = Vec::with_capacity(codes.len());
    let (mut bits, mut held) = (0_u32, fill);
    for code in codes {
        bits |= u32::from(code & 0x7f) << held;
        held += 7;
        while held >= 8 {
            octets.push(low_octet(bits));
            bits >>= 8;
            held -= 8;
        }
    }
    if held > 0 {
        octets.push(low_octet(bits));
    }
    octets
}

/// So many septets out of octets, after so many bits of filling; fewer where the octets end.
#[must_use]
pub fn unpacked(octets: &[u8], count: usize, fill: u32) -> Vec<u8> {
    let mut codes = Vec::with_capacity(count);
    let (mut bits, mut held, mut skip) = (0_u32, 0_u32, fill);
    for octet in octets {
        if codes.len() == count {
            break;
        }
        bits |= u32::from(*octet) << held;
        held += 8;
        if skip > 0 {
            bits >>= skip;
            held -= skip;
            skip = 0;
        }
        while held >= 7 && codes.len() < count {
            codes.push(low_octet(bits) & 0x7f);
            bits >>= 7;
            held -= 7;
        }
    }
    codes
}

/// The bits of filling that bring septets after a header of so many octets to their border (3GPP TS
/// 23.040, 9.2.3.24).
#[must_use]
pub const fn fill_after(header: usize) -> u32 {
    match header % 7 {
        0 => 0,
        1 => 6,
        2 => 5,
        3 => 4,
        4 => 3,
        5 => 2,
        _ => 1,
    }
}

const fn low_octet(bits: u32) -> u8 {
    let [low, ..] = bits.to_le_bytes();
    low
}

/// A text in UTF-16, big end first, which the standards call UCS-2.
#[must_use]
pub fn utf16(text: &str) -> Vec<u8> {
    text.encode_utf16().flat_map(u16::to_be_bytes).collect()
}

/// The text of UTF-16, big end first; what is broken in it becomes U+FFFD.
#[must_use]
pub fn of_utf16(octets: &[u8]) -> String {
    let units = octets.chunks(2).map(|pair| match pair {
        [high, low] => u16::from_be_bytes([*high, *low]),
        _ => 0xfffd,
    });
    char::decode_utf16(units)
        .map(|letter| letter.unwrap_or(char::REPLACEMENT_CHARACTER))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hex(octets: &[u8]) -> String {
        octets.iter().map(|octet| format!("{octet:02X}")).collect()
    }

    // Widely quoted, and the tests of two libraries of other authors (python-gsmmodem-new 0.13.0,
    // smspdudecoder 2.2.0); "1234567" leaves seven spare bits, which are zero.
    #[test]
    fn published_texts_are_packed_as_they_were() {
        for (text_, packed_) in [
            ("hellohello", "E8329BFD4697D9EC37"),
            ("How are you?", "C8F71D14969741F977FD07"),
            ("123", "31D90C"),
            ("1234567", "31D98C56B3DD00"),
            ("12345678", "31D98C56B3DD70"),
            ("123456789", "31D98C56B3DD7039"),
            ("[{abc}]~", "1BDE0615168F37A98D6FD303"),
            ("{åΦΓΛΩΠΨΣΘ€}", "1BD44332A1542C174C6653DEA400"),
            ("2 € par mois", "32D0A60C8287E5A0F63B3D07"),
            ("", ""),
        ] {
            let codes = codes(text_).unwrap();
            let octets = packed(&codes, 0);
            assert_eq!(hex(&octets), packed_, "{text_}");
            assert_eq!(text(&unpacked(&octets, codes.len(), 0)), text_);
        }
    }

    #[test]
    fn every_length_and_filling_comes_back() {
        for length in 0..40 {
            let codes: Vec<u8> = (0..length)
                .map(|at: u8| at.wrapping_mul(37) % 128)
                .collect();
            for header in 0..15_u8 {
                let fill = fill_after(header.into());
                // What is before and the septets after it meet at a border of seven bits.
                assert_eq!((u32::from(header) * 8 + fill) % 7, 0);
                let octets = packed(&codes, fill);
                assert_eq!(
                    unpacked(&octets, codes.len(), fill),
                    codes,
                    "{length} {fill}"
                );
            }
        }
        assert_eq!(fill_after(6), 1);
        assert_eq!(fill_after(7), 0);
    }

    // A message may hold far more octets than it says to have septets.
    #[test]
    fn what_is_more_than_was_told_is_left() {
        assert_eq!(unpacked(&[0xff; 140], 3, 6), [0x7f; 3]);
        assert!(unpacked(&[0xff; 140], 0, 0).is_empty());
    }

    // 3GPP TS 23.038, 6.2.1.1: the letter of the main table; an escape after an escape is a space.
    #[test]
    fn codes_that_nobody_knows_show_something() {
        assert_eq!(text(&[0x1b, 0x41, 0x1b, 0x1b, 0x42, 0x1b]), "A B");
        assert_eq!(text(&[0xe8, 0x1b, 0x65]), "h€");
        assert_eq!(codes("a\u{1b}b"), None);
        assert_eq!(codes("ệ"), None);
    }

    #[test]
    fn utf16_comes_back_and_halves_are_shown() {
        assert_eq!(hex(&utf16("あ😀")), "3042D83DDE00");
        assert_eq!(of_utf16(&utf16("đã 😀")), "đã 😀");
        assert_eq!(of_utf16(&[0xd8, 0x3d, 0x00]), "\u{fffd}\u{fffd}");
    }
}
