//! The octet that says how a text is coded (3GPP TS 23.038, 4).

use crate::words::sms::Alphabet;

/// The alphabet of a text. None for what is no text: eight-bit data, compressed text, and notices
/// of a mailbox that may be thrown away.
pub(crate) const fn alphabet(coding: u8) -> Option<Alphabet> {
    match coding >> 4 {
        0x0..=0x7 if coding & 0x20 != 0 => None,
        0x0..=0x7 => match coding >> 2 & 0x03 {
            1 => None,
            2 => Some(Alphabet::Ucs2),
            _ => Some(Alphabet::Gsm7),
        },
        0x8..=0xb => Some(Alphabet::Gsm7),
        0xc => None,
        0xd => Some(Alphabet::Gsm7),
        0xe => Some(Alphabet::Ucs2),
        _ if coding & 0x04 != 0 => None,
        _ => Some(Alphabet::Gsm7),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // The table of the standard, a value of each group.
    #[test]
    fn each_group_of_the_table_is_known() {
        let (gsm, ucs) = (Some(Alphabet::Gsm7), Some(Alphabet::Ucs2));
        for (coding, expected) in [
            (0x00, gsm),
            (0x04, None),
            (0x08, ucs),
            (0x10, gsm),
            (0x15, None),
            (0x18, ucs),
            (0x20, None),
            (0x48, ucs),
            (0x80, gsm),
            (0xc8, None),
            (0xd0, gsm),
            (0xe0, ucs),
            (0xf1, gsm),
            (0xf5, None),
        ] {
            assert_eq!(alphabet(coding), expected, "{coding:02x}");
        }
    }
}
