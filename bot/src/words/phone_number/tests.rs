//! Numbers as people and gateways write them, against the plans that regulators publish.

use super::*;

#[track_caller]
fn check(text: &str, country: &str, expected: &Result<&str, NumberFault>) {
    assert_eq!(
        &parse(text, country).as_deref().map_err(Clone::clone),
        expected,
        "{text:?} in {country:?}"
    );
}

// Ofcom, "Numbers for drama": the mobile range for fiction. Its national and international
// forms follow ITU-T E.123.
#[test]
fn one_number_in_its_many_spellings() {
    for text in [
        "+447700900123",
        "+44 7700 900123",
        "+44 (0)7700 900123",
        "tel:+44-7700-900123",
        "TEL:+44-7700-900123",
        "  +44.7700.900123  ",
        "'+447700900123",
        "\u{202a}+44 7700 900123\u{202c}",
        "+44\u{a0}7700\u{a0}900\u{200b}123",
        "+447700900123",
        "07700 900123",
        "07700900123",
        "7700900123",
        "00447700900123",
        "447700900123",
    ] {
        check(text, "GB", &Ok("+447700900123"));
    }
}

#[test]
fn a_plus_wins_over_the_home_country() {
    check("+447700900123", "ID", &Ok("+447700900123"));
    check("+447700900123", "", &Ok("+447700900123"));
    check("+447700900123", "id", &Ok("+447700900123"));
}

#[test]
fn every_refusal_says_why() {
    check("", "GB", &Err(NumberFault::Empty));
    check(" \u{feff} ", "GB", &Err(NumberFault::Empty));
    check("2.31777E+11", "GB", &Err(NumberFault::Rounded));
    check("4,477E11", "GB", &Err(NumberFault::Rounded));
    check("077OO 900123", "GB", &Err(NumberFault::Letter('O')));
    check("07700 900l23", "GB", &Err(NumberFault::Letter('l')));
    check("07700 900123 ext 4", "GB", &Err(NumberFault::Letter('e')));
    check("---", "GB", &Err(NumberFault::NotANumber));
    check("7700900123", "", &Err(NumberFault::NoCountry));
    // +999 is kept for future use and assigned to nobody (ITU-T E.164 list of codes).
    check("+9997700900123", "GB", &Err(NumberFault::NoCountry));
    check(
        "07700900123",
        "Kolo",
        &Err(NumberFault::UnknownCountry("Kolo".into())),
    );
    check(
        "07700900123",
        "QQ",
        &Err(NumberFault::UnknownCountry("QQ".into())),
    );
    check("40404", "GB", &Err(NumberFault::ShortCode));
    // From Nigeria abroad is 009 (ITU-T E.164, list of international prefixes), not 00.
    check("00447700900123", "NG", &Err(NumberFault::DialledZeros));
    check("+44770090", "GB", &Err(NumberFault::TooShort));
    check("07700900123 07700900124", "GB", &Err(NumberFault::TooLong));
    check(&"7".repeat(65), "GB", &Err(NumberFault::Long));
}

#[test]
fn an_unknown_sender_is_a_number_a_short_code_or_a_name() {
    let number = || SenderKind::Number("+447700900123".to_string());
    assert_eq!(kind("+447700900123", "ID"), number());
    assert_eq!(kind("tel:+447700900123", "ID"), number());
    assert_eq!(kind("447700900123", "ID"), number());
    assert_eq!(kind("00447700900123", "ID"), number());
    assert_eq!(kind("07700900123", "GB"), number());
    assert_eq!(kind("7700900123", "GB"), number());
    assert_eq!(kind("40404", "GB"), SenderKind::ShortCode);
    assert_eq!(kind("+40404", "GB"), SenderKind::ShortCode);
    assert_eq!(kind("", "GB"), SenderKind::Name);
    assert_eq!(kind("tel:", "GB"), SenderKind::Name);
    assert_eq!(kind("KoloCoop", "GB"), SenderKind::Name);
    assert_eq!(kind("Kolo 2026 100", "GB"), SenderKind::Name);
}

#[test]
fn countries_are_those_with_a_numbering_plan() {
    for country in ["ID", "gb"] {
        assert!(is_country(country), "{country}");
    }
    for none in ["", "QQ", "001"] {
        assert!(!is_country(none), "{none}");
    }
}

// The numbers are kept for fiction: Ofcom as above; Swedish Post and Telecom Authority, numbers for
// books and films. The peer test has all countries.
#[test]
fn what_is_dialled_before_a_number_goes() {
    check("070-174 06 05", "SE", &Ok("+46701740605"));
    check("020 7946 0123", "GB", &Ok("+442079460123"));
    check("011 44 7700 900123", "US", &Ok("+447700900123"));
    check("+44 (0)20 7946 0123", "SE", &Ok("+442079460123"));
    check("46701740605", "SE", &Ok("+46701740605"));
}

#[test]
fn digits_of_any_script_and_extensions_are_understood() {
    check(
        "\u{e50}\u{e57}\u{e57}\u{e50}\u{e50} 900123",
        "GB",
        &Ok("+447700900123"),
    );
    check("\u{ff0b}44 7700 900123", "", &Ok("+447700900123"));
    for extension in ["#5", " # 55", ",,7", ", 12", ";123", " - 503#", "~9"] {
        check(
            &format!("07700 900123{extension}"),
            "GB",
            &Ok("+447700900123"),
        );
    }
    let two = "07700 900123;07700 900124";
    check(two, "GB", &Err(NumberFault::NotANumber));
}

proptest::proptest! {
    #[test]
    fn reading_a_number_never_panics_and_is_stable(text in "\\PC*", plus in "[+0-9 ()OE./;-]{0,24}") {
        for text in [text, plus] {
            let _any = kind(&text, "ID");
            if let Ok(number) = parse(&text, "ID") {
                proptest::prop_assert_eq!(parse(&number, ""), Ok(number.clone()));
                proptest::prop_assert_eq!(kind(&number, "GB"), SenderKind::Number(number));
            }
        }
    }
}

// Ofcom, "Telephone numbers for use in TV and radio drama programmes": mobile 07700 900000
// to 900999.
#[test]
fn demo_numbers_are_the_thousand_that_are_set_aside() {
    for number in [
        "+447700900000",
        "+44 7700 900999",
        "00447700900123",
        "tel:+447700900123",
    ] {
        assert!(is_for_fiction(number), "{number}");
    }
    for number in [
        "+447700899999",
        "+447700901000",
        "+4477009001234",
        "+44770090012",
        "",
    ] {
        assert!(!is_for_fiction(number), "{number}");
    }
}

#[test]
fn numbers_for_fiction_are_possible_and_never_in_use() {
    // The reason why validity is only a warning.
    assert_eq!(line("+447700900123"), Line::Unassigned);
    // The London numbers for fiction (Ofcom, "Numbers for drama") count as in use.
    assert_eq!(line("+442079460123"), Line::Landline);
}

/// ITU-T E.164: +870 is for ships, +881 and +882 for satellites and networks of no country, +979 for
/// premium rate; Ofcom's numbering plan has premium rate at 09 and free calls at 0800, and 07 for
/// mobiles.
#[test]
fn services_satellites_and_ships_are_costly_and_people_are_not() {
    for number in [
        "+870773111632",
        "+881612345678",
        "+88213123456",
        "+979123456789",
        "+449012345678",
        "+448001234567",
    ] {
        assert!(is_costly(number), "{number}");
    }
    for number in [
        "+447400123456",
        "+447700900001",
        "+442079460123",
        "+33612345678",
    ] {
        assert!(!is_costly(number), "{number}");
    }
}
