//! A text as octets of SMPP, and back: alphabets, and the three ways in which a long one is carried.

use super::pdu::{Message, Sar};
use crate::{
    service::gateway::{
        data_coding,
        text_header::{Header, of_part},
    },
    words::sms::{Alphabet, septets},
};

/// What a centre takes `data_coding` 0 for (SMPP 3.4, 5.2.19: "the centre's default alphabet").
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum DefaultAlphabet {
    Gsm7,
    Latin1,
    Ascii,
}

/// How a text that is longer than one message is carried.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum LongTexts {
    /// A header before each part (3GPP TS 23.040, 9.2.3.24.1).
    Header,
    /// Parameters beside each part (SMPP 3.4, 5.3.2.22 to 24).
    Sar,
    /// One message, with the text as a parameter (5.3.2.32).
    Payload,
}

/// The bit of `esm_class` that says that a header stands before the text (5.2.12).
const HAS_HEADER: u8 = 0x40;

/// IA5, Latin-1 and UCS-2 as `data_coding` (5.2.19).
const IA5: u8 = 1;
const LATIN1: u8 = 3;
const UCS2: u8 = 8;

/// Puts a text into messages like `base`, one for each part, in order.
pub(super) fn messages(
    text: &str,
    reference: u8,
    alphabet: DefaultAlphabet,
    long: LongTexts,
    base: &Message,
) -> Vec<Message> {
    let (coding, alone, part, units) = units(text, alphabet);
    let whole: Vec<u8> = units.concat();
    if whole.len() <= alone {
        return vec![Message {
            coding,
            octets: whole,
            ..base.clone()
        }];
    }
    if long == LongTexts::Payload {
        return vec![Message {
            coding,
            octets: whole,
            is_payload: true,
            ..base.clone()
        }];
    }
    let parts = cut(&units, part);
    let of = u8::try_from(parts.len()).unwrap_or(u8::MAX);
    (1..=of)
        .zip(parts)
        .map(|(number, octets)| match long {
            LongTexts::Sar => Message {
                coding,
                octets,
                sar: Some(Sar {
                    reference: reference.into(),
                    of,
                    number,
                }),
                ..base.clone()
            },
            LongTexts::Header | LongTexts::Payload => Message {
                coding,
                esm_class: base.esm_class | HAS_HEADER,
                octets: [&of_part(reference, of, number), octets.as_slice()].concat(),
                ..base.clone()
            },
        })
        .collect()
}

/// `data_coding`, octets of a text alone and of each part, and the octets of each letter, which
/// stay together.
fn units(text: &str, alphabet: DefaultAlphabet) -> (u8, usize, usize, Vec<Vec<u8>>) {
    let each = |octets: &dyn Fn(char) -> Option<Vec<u8>>| text.chars().map(octets).collect();
    let plain: Option<Vec<Vec<u8>>> = match alphabet {
        DefaultAlphabet::Gsm7 => each(&|letter| septets::codes(letter.encode_utf8(&mut [0; 4]))),
        DefaultAlphabet::Latin1 => each(&|letter| Some(vec![u8::try_from(letter).ok()?])),
        DefaultAlphabet::Ascii => {
            each(&|letter| Some(vec![u8::try_from(letter).ok().filter(u8::is_ascii)?]))
        }
    };
    match plain {
        // A letter of eight bits takes an octet of the 140; of seven bits 160 have room.
        Some(units) if alphabet == DefaultAlphabet::Latin1 => (0, 140, 134, units),
        Some(units) => (0, 160, 153, units),
        None => {
            let utf16 = |letter: char| septets::utf16(letter.encode_utf8(&mut [0; 4]));
            (UCS2, 140, 134, text.chars().map(utf16).collect())
        }
    }
}

fn cut(units: &[Vec<u8>], most: usize) -> Vec<Vec<u8>> {
    let mut parts = Vec::new();
    let mut part = Vec::new();
    for unit in units {
        if part.len() + unit.len() > most {
            parts.push(std::mem::take(&mut part));
        }
        part.extend(unit);
    }
    parts.push(part);
    parts
}

/// What a message that came in says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Said {
    /// A text, or a part of one: reference, number of parts, which.
    Text(String, Option<(u16, u8, u8)>),
    /// Nothing for people: data for a port, settings, a ring tone.
    Data,
}

/// Reads what a message says.
pub(super) fn said(message: &Message, alphabet: DefaultAlphabet) -> Said {
    let (header, octets) = if message.esm_class & HAS_HEADER == 0 {
        (Header::default(), message.octets.as_slice())
    } else {
        let length = message
            .octets
            .first()
            .map_or(0, |length| usize::from(*length) + 1);
        let (header, octets) = message
            .octets
            .split_at_checked(length)
            .unwrap_or((&[], &message.octets));
        (Header::read(header.get(1..).unwrap_or_default()), octets)
    };
    if header.has_port {
        return Said::Data;
    }
    let sar = message.sar.map(|sar| (sar.reference, sar.of, sar.number));
    let part = header.part.or(sar);
    let latin1 = || octets.iter().map(|octet| char::from(*octet)).collect();
    let default = || match alphabet {
        DefaultAlphabet::Gsm7 => septets::text(octets),
        DefaultAlphabet::Latin1 | DefaultAlphabet::Ascii => latin1(),
    };
    let text = match message.coding {
        IA5 | LATIN1 => latin1(),
        UCS2 => septets::of_utf16(octets),
        2 | 4 => return Said::Data,
        // Other alphabets of the standard, which centres do not use for texts.
        ..0x10 => default(),
        // As on the air.
        coding => match data_coding::alphabet(coding) {
            None => return Said::Data,
            Some(Alphabet::Ucs2) => septets::of_utf16(octets),
            Some(Alphabet::Gsm7) => default(),
        },
    };
    Said::Text(text, part)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::sms;

    const ALPHABETS: [DefaultAlphabet; 3] = [
        DefaultAlphabet::Gsm7,
        DefaultAlphabet::Latin1,
        DefaultAlphabet::Ascii,
    ];
    const WAYS: [LongTexts; 3] = [LongTexts::Header, LongTexts::Sar, LongTexts::Payload];

    #[test]
    fn codings_of_the_standard_and_of_the_air_are_read() {
        let said = |coding, octets: &[u8]| {
            let octets = octets.to_vec();
            said(
                &Message {
                    coding,
                    octets,
                    ..Message::default()
                },
                DefaultAlphabet::Gsm7,
            )
        };
        let text = |text: &str| Said::Text(text.into(), None);
        for coding in [0, 0x10, 0xf1] {
            assert_eq!(said(coding, &[0, b'a']), text("@a"), "{coding}");
        }
        for coding in [1, 3] {
            assert_eq!(said(coding, &[0xe9]), text("é"), "{coding}");
        }
        for coding in [8, 0x18] {
            assert_eq!(said(coding, &[0x0e, 0x2d]), text("อ"), "{coding}");
        }
        for coding in [2, 4, 0x15, 0xf5, 0xc0] {
            assert_eq!(said(coding, b"abc"), Said::Data, "{coding}");
        }
    }

    #[test]
    fn every_text_comes_back_in_every_way() {
        let long = "[€] {x} ".repeat(60);
        let emoji = "🌱".repeat(100);
        let accents = "café à la crème ".repeat(20);
        for text in [
            "",
            "dead 8",
            "prices @ 5 €",
            "ปลูกแล้ว",
            &long,
            &emoji,
            &accents,
        ] {
            for alphabet in ALPHABETS {
                for way in WAYS {
                    let messages = messages(text, 7, alphabet, way, &Message::default());
                    let mut found = String::new();
                    for (index, message) in messages.iter().enumerate() {
                        let Said::Text(said, part) = said(message, alphabet) else {
                            panic!("{text}: data")
                        };
                        if messages.len() > 1 {
                            let (reference, of, number) = part.unwrap();
                            assert_eq!((reference, usize::from(of)), (7, messages.len()));
                            assert_eq!(usize::from(number), index + 1);
                            assert!(message.octets.len() <= 159, "{}", message.octets.len());
                        }
                        found.push_str(&said);
                    }
                    assert_eq!(found, text, "{alphabet:?} {way:?}");
                }
            }
        }
        let messages = messages(
            &long,
            7,
            ALPHABETS[0],
            LongTexts::Header,
            &Message::default(),
        );
        assert_eq!(messages.len(), sms::measure(&long).parts);
    }
}
