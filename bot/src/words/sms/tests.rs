//! Published octets and sizes, and the borders of parts.

use proptest::prelude::*;

use super::*;

/// Packed texts from public test suites and documentation. The table is right if and only if the
/// septets that it gives pack (TS 23.038, 6.1.2.1.1) into these octets.
const PACKED: [(&str, &str, &str); 14] = [
    (
        "smspdudecoder documentation",
        "hellohello",
        "E8329BFD4697D9EC37",
    ),
    (
        "smspdudecoder documentation",
        "How are you?",
        "C8F71D14969741F977FD07",
    ),
    (
        "python-gsmmodem-new test_pdu",
        "Hello World!",
        "C8329BFD065DDF72363904",
    ),
    ("python-gsmmodem-new test_pdu", "123", "31D90C"),
    ("python-gsmmodem-new test_pdu", "12345678", "31D98C56B3DD70"),
    (
        "python-gsmmodem-new test_pdu",
        "123456789",
        "31D98C56B3DD7039",
    ),
    (
        "python-gsmmodem-new test_pdu",
        "123456789012345678901234567890",
        "31D98C56B3DD7039584C36A3D56C375C0E1693CD6835DB0D978301",
    ),
    (
        "python-gsmmodem-new test_pdu",
        "[{abc}]~",
        "1BDE0615168F37A98D6FD303",
    ),
    (
        "python-gsmmodem-new test_pdu",
        "{åΦΓΛΩΠΨΣΘ€}",
        "1BD44332A1542C174C6653DEA400",
    ),
    (
        "python-gsmmodem-new test_pdu",
        "a[]{}€",
        "E10D6FE3DBA036A94D19",
    ),
    (
        "smspdudecoder documentation",
        "2 € par mois",
        "32D0A60C8287E5A0F63B3D07",
    ),
    ("gsm7 crate tests", "Test", "D4F29C0E"),
    ("gsm7 crate tests", "Tttt", "543A9D0E"),
    ("smspdudecoder documentation", "1234567", "31D98C56B3DD00"),
];

#[test]
fn the_tables_give_the_published_octets() {
    for (source, text, hex) in PACKED {
        let codes = codes_of(text);
        assert_eq!(pack(&codes), hex, "{text:?}, from {source}");
        assert_eq!(measure(text), gsm7(codes.len(), 1), "{text:?}");
    }
}

// TS 23.038, 6.2.1: 128 codes, one of them the escape; 6.2.1.1: ten characters by escape. The
// same 137 were counted in the Perl core module Encode::GSM0338.
#[test]
fn the_alphabet_has_137_characters() {
    assert_eq!(DEFAULT_TABLE.chars().count(), 128);
    assert_eq!(DEFAULT_TABLE.chars().nth(0x1b), Some(ESCAPE));
    let (one, two) = ('\0'..=char::MAX)
        .filter_map(septets)
        .fold((0, 0), |(one, two), units| {
            if units == 1 {
                (one + 1, two)
            } else {
                (one, two + 1)
            }
        });
    assert_eq!((one, two), (127, 10));
}

// TS 23.038, 6.2.1.1: the escape is no character. Sent raw it would change the next one.
#[test]
fn a_raw_escape_is_never_in_the_alphabet() {
    assert_eq!(measure("\u{1b}e"), ucs2(2, 1));
}

// TS 23.040, 9.2.3.24.1: 160 septets alone and 153 in a part; 140 octets alone, which are 70
// units, and 134 in a part, which are 67.
#[test]
fn parts_end_where_the_standard_says() {
    for (chars, parts) in [
        (0, 1),
        (1, 1),
        (153, 1),
        (160, 1),
        (161, 2),
        (306, 2),
        (307, 3),
        (459, 3),
        (460, 4),
    ] {
        check(&"a".repeat(chars), gsm7(chars, parts));
    }
    for (chars, parts) in [
        (1, 1),
        (67, 1),
        (70, 1),
        (71, 2),
        (134, 2),
        (135, 3),
        (201, 3),
        (202, 4),
    ] {
        check(&"ย".repeat(chars), ucs2(chars, parts));
    }
}

// TS 23.040, 9.2.3.24.1: a character that is an escape sequence is not cut in the middle.
#[test]
fn an_escape_pair_stays_whole() {
    check(&format!("{}€", "a".repeat(158)), gsm7(160, 1));
    check(&format!("{}€", "a".repeat(159)), gsm7(161, 2));
    // The pair would lie on the border of 153, so the first part is one septet short ...
    let text = format!("{}€{}", "a".repeat(152), "b".repeat(151));
    check(&text, gsm7(305, 2));
    assert_eq!(split(&text)[0], "a".repeat(152));
    // ... and 306 septets, which would fill two parts, need a third.
    check(&format!("{text}b"), gsm7(306, 3));
}

// The parts were packed for this case and read back by libGammu 1.42, which is in Debian.
#[test]
fn pairs_fill_a_part_as_in_a_packed_message() {
    let text = "A€".repeat(51 + 9);
    assert_eq!(split(&text), ["A€".repeat(51), "A€".repeat(9)]);
    check(&text, gsm7(180, 2));
}

// TS 23.040, 9.2.3.24.1: a UCS2 character is not cut in the middle; the same is done with the two
// halves of a pair (U+1F600 is D83D DE00, The Unicode Standard).
#[test]
fn a_surrogate_pair_stays_whole() {
    check("😀", ucs2(2, 1));
    check(&"😀".repeat(35), ucs2(70, 1));
    check(&"😀".repeat(36), ucs2(72, 2));
    let text = format!("{}😀{}", "ย".repeat(66), "ย".repeat(65));
    check(&text, ucs2(133, 2));
    assert_eq!(split(&text)[0], "ย".repeat(66));
    check(&format!("{text}ย"), ucs2(134, 3));
}

#[test]
fn one_character_decides_for_the_whole_text() {
    assert_eq!(measure("Weed B now").alphabet, Alphabet::Gsm7);
    assert_eq!(measure("Désherbez à Noël").alphabet, Alphabet::Ucs2); // ë is not in the table
    assert_eq!(measure("Cỏ").alphabet, Alphabet::Ucs2);
}

#[test]
fn typographic_characters_become_plain() {
    assert_eq!(
        plain("Don’t “weed” – wait…\u{a0}10\u{202f}m²"),
        "Don't \"weed\" - wait... 10 m2"
    );
    assert_eq!(
        measure(&plain("l’hévéa, l’œil – « clone »")).alphabet,
        Alphabet::Gsm7
    );
    for kept in ["à Noël", "cỏ", "ตัดหญ้า", "ക്\u{200d}"] {
        assert!(matches!(plain(kept), Cow::Borrowed(same) if same == kept));
    }
}

proptest! {
    #[test]
    fn parts_join_to_the_text_and_each_fits(text in "[ab€{^ยệ😀\u{1b}\n]{0,400}") {
        let size = measure(&text);
        let parts = split(&text);
        prop_assert_eq!(parts.len(), size.parts);
        prop_assert_eq!(parts.concat(), text);
        let room = match (size.alphabet, size.parts) {
            (Alphabet::Gsm7, 1) => 160,
            (Alphabet::Gsm7, _) => 153,
            (Alphabet::Ucs2, 1) => 70,
            (Alphabet::Ucs2, _) => 67,
        };
        for part in &parts {
            let units: usize = part.chars().map(|c| size.alphabet.units_of(c)).sum();
            prop_assert!(units <= room);
        }
    }

    #[test]
    fn plain_twice_is_plain_once(text in any::<String>()) {
        let once = plain(&text).into_owned();
        prop_assert_eq!(plain(&once), once.as_str());
    }
}

#[track_caller]
fn check(text: &str, expected: Size) {
    assert_eq!(measure(text), expected, "{text:?}");
    let parts = split(text);
    assert_eq!(parts.len(), expected.parts);
    assert_eq!(parts.concat(), text);
}

fn gsm7(units: usize, parts: usize) -> Size {
    Size {
        alphabet: Alphabet::Gsm7,
        units,
        parts,
    }
}

fn ucs2(units: usize, parts: usize) -> Size {
    Size {
        alphabet: Alphabet::Ucs2,
        units,
        parts,
    }
}

// Vietnamese and French names: letters that TS 23.038 has not lose their marks, those that it has
// keep them.
#[test]
fn marks_that_would_cost_half_the_text_are_taken_off_names() {
    for (name, plain) in [
        ("Thảo", "Thao"),
        ("Bénoît", "Bénoit"),
        ("Çelo", "Çelo"),
        ("e\u{301}", "é"),
        ("สมชาย", "สมชาย"),
        ("Đức", "Duc"),
        ("Ŋmɛ", "Nme"),
        ("Tamo", "Tamo"),
    ] {
        assert_eq!(without_marks(name), plain);
    }
    assert_eq!(
        measure(&without_marks("Nguyễn Ánh")).alphabet,
        Alphabet::Gsm7
    );
}

// What phones without Vietnamese letters type: every mark of tone and vowel goes, and the stroke.
#[test]
fn a_bare_text_has_no_marks_at_all() {
    for (text, plain) in [
        ("Đã trồng 120 cây, lô B", "Da trong 120 cay, lo B"),
        ("mười lăm, còn nữa à", "muoi lam, con nua a"),
        ("e\u{301}te\u{301} 42,5", "ete 42,5"),
        ("น้ำ ปุ๋ย", "น้ำ ปุ๋ย"),
        ("what now?", "what now?"),
    ] {
        assert_eq!(bare(text), plain);
    }
}

/// The septets of a text, from the tables.
fn codes_of(text: &str) -> Vec<u8> {
    let mut codes = Vec::new();
    for c in text.chars() {
        if let Some((code, _)) = EXTENSION_TABLE.iter().find(|(_, extended)| *extended == c) {
            codes.extend([0x1b, *code]);
        } else {
            let code = DEFAULT_TABLE.chars().position(|known| known == c).unwrap();
            codes.push(u8::try_from(code).unwrap());
        }
    }
    codes
}

/// Seven bits after seven bits, the lowest first (TS 23.038, 6.1.2.1.1).
fn pack(codes: &[u8]) -> String {
    let mut octets = vec![0_u8; (codes.len() * 7).div_ceil(8)];
    for bit in 0..codes.len() * 7 {
        if codes[bit / 7] >> (bit % 7) & 1 == 1 {
            octets[bit / 8] |= 1 << (bit % 8);
        }
    }
    octets.iter().map(|octet| format!("{octet:02X}")).collect()
}
