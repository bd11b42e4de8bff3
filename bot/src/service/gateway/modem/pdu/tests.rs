//! Messages that others have published, both ways.

use data_encoding::HEXLOWER;

use super::*;

fn text_of(hex: &str) -> (String, String, Option<(u16, u8, u8)>, String) {
    match incoming(hex) {
        Some(Incoming::Text {
            from,
            sent_at,
            text,
            part,
        }) => {
            let at = sent_at.map(|at| at.to_rfc3339()).unwrap_or_default();
            (from, text, part, at)
        }
        other => panic!("{other:?}"),
    }
}

// Widely quoted samples, and the tests of python-gsmmodem-new 0.13.0.
#[test]
fn published_texts_are_read() {
    for (hex, from, text, part, at) in [
        (
            "07911326040000F0040B911346610089F60000208062917314480CC8F71D14969741F977FD07",
            "+31641600986",
            "How are you?",
            None,
            "2002-08-26T20:37:41+00:00",
        ),
        (
            "07917283010010F5040BC87238880900F10000993092516195800AE8329BFD4697D9EC37",
            "27838890001",
            "hellohello",
            None,
            "2099-03-29T13:16:59+00:00",
        ),
        (
            "06917228195339040B917228214365F70000313062315352800A800D8A5E98D337A910",
            "+27821234567",
            "@{tést}!",
            None,
            "2013-03-26T11:35:25+00:00",
        ),
        (
            "07919762020033F1400DD0CDF2396C7EBB010008415072411084618C0500035602010053004D00530020\
             0063006F00640065003A00200034003800350036002C00200063006F006E006600690072006D00610074\
             0069006F006E0020006F00660020006100730073006F00630069006100740069006F006E002000620065\
             0074007700650065006E0020006100630063006F0075006E007400200061006E00640020004D00650067",
            "Megafon",
            "SMS code: 4856, confirmation of association between account and Meg",
            Some((86, 2, 1)),
            "2014-05-27T10:01:48+00:00",
        ),
    ] {
        let found = text_of(hex);
        assert_eq!(
            (found.0.as_str(), found.1.as_str(), found.2),
            (from, text, part)
        );
        assert!(
            !found.3.is_empty() && (at.starts_with("2099") || found.3 == at),
            "{}",
            found.3
        );
    }
}

// A concatenation of one part, from the same tests, is a text of its own.
#[test]
fn a_part_of_one_is_a_whole_text() {
    let found = text_of(
        "0591721891F1400781721881F800003160526104848059050003C30101916536FB1DCABEEB2074D85E064941B1\
         9CAB060319A5C522289C96D3D3ED32286C0FA7D96131BBEC024941B19CAB0603DDD36C36A88C87A7E565D0DB0D\
         82C55EB0DB4B068BCD5C20",
    );
    let begin = "Hello!You have R 19.50 FREE airtime available.";
    assert!(found.1.starts_with(begin), "{}", found.1);
    assert_eq!((found.0.as_str(), found.2), ("2781188", None));
}

// The same source; the parts of an octet are those of TS 23.040, 9.2.3.15.
#[test]
fn a_report_tells_what_and_whose() {
    let hex = "0006D60B911326880736F4111011719551401110117195714000";
    let Some(Incoming::Report {
        reference,
        to,
        status,
    }) = incoming(hex)
    else {
        panic!("no report")
    };
    assert_eq!((reference, to.as_str(), status), (0xd6, "+31628870634", 0));
}

// The most quoted sample of a submission, and one of python-gsmmodem-new.
#[test]
fn a_submission_is_as_published() {
    let four_days = TimeDelta::days(4);
    let [one] = submits("+46708251358", "hellohello", 0, four_days, false)
        .try_into()
        .unwrap();
    assert_eq!(one.hex, "0011000B916407281553F80000AA0AE8329BFD4697D9EC37");
    assert_eq!(one.length, one.hex.len() / 2 - 1);
}

// TS 23.040, 9.2.3.12.1, with the values of python-gsmmodem-new for half an hour, 16 hours, three
// days and five weeks.
#[test]
fn how_long_it_is_of_use_is_one_octet() {
    for (minutes, octet) in [
        (0, 0),
        (30, 5),
        (12 * 60, 143),
        (16 * 60, 151),
        (3 * 1_440, 169),
        (5 * 10_080, 197),
        (100 * 10_080, 255),
    ] {
        assert_eq!(validity(TimeDelta::minutes(minutes)), octet, "{minutes}");
    }
}

/// What we submit reads as what we said once it is made a delivery.
#[test]
fn parts_come_back_in_every_alphabet() {
    for text in [
        "x".repeat(160),
        "{€} [maize] ".repeat(40),
        "ปลูกแล้ว 120 ต้น ".repeat(12),
        "🌱".repeat(80),
        String::new(),
    ] {
        let submitted = submits("+447700900123", &text, 200, TimeDelta::hours(3), true);
        let mut found = String::new();
        for (index, one) in submitted.iter().enumerate() {
            let octets = HEXUPPER.decode(one.hex.as_bytes()).unwrap();
            assert_eq!(octets.len(), one.length + 1);
            assert!(one.length <= 165, "{}", one.length);
            let (first, rest) = (octets[1], &octets[3..]);
            let (address, rest) = rest.split_at(8);
            let (coding, data) = (rest[1], &rest[3..]);
            assert_eq!(first & !HAS_HEADER, 0x31);
            let time = [0x62, 0x11, 0x03, 0x21, 0x43, 0x65, 0x00];
            let deliver = [&[0, first & HAS_HEADER], address, &[0, coding], &time, data].concat();
            let hex = HEXLOWER.encode(&deliver);
            let (from, said, part, _) = text_of(&hex);
            assert_eq!(from, "+447700900123");
            if submitted.len() > 1 {
                let number = u8::try_from(index + 1).unwrap();
                assert_eq!(
                    part,
                    Some((200, u8::try_from(submitted.len()).unwrap(), number))
                );
            }
            found.push_str(&said);
        }
        assert_eq!(found, text);
    }
}

#[test]
fn what_is_cut_or_garbage_is_nothing() {
    let whole = "07911326040000F0040B911346610089F60000208062917314480CC8F71D14969741F977FD07";
    for end in 0..whole.len() - 20 {
        // Never a panic; half an octet is nothing.
        let cut = incoming(&whole[..end]);
        assert!(end % 2 == 0 || cut.is_none(), "{end}");
    }
    for none in ["", "zz", "0", "00", "FF00", "é"] {
        assert_eq!(incoming(none), None, "{none}");
    }
    // 9.1.2.5: an address has at most twelve octets.
    let long = |digits: u8| {
        let number = "1".repeat(usize::from(digits.div_ceil(2)) * 2);
        format!("0004{digits:02X}91{number}00002080629173144801C8")
    };
    assert!(incoming(&long(20)).is_some());
    assert_eq!(incoming(&long(21)), None);
    // A notice of a mailbox (23.038, 4: C0 to CF), data of eight bits, a silent message.
    for (protocol, coding) in [(0, 0xc0), (0, 0x04), (0x40, 0)] {
        let hex = format!("00040B911346610089F6{protocol:02X}{coding:02X}2080629173144801C8");
        assert_eq!(incoming(&hex), Some(Incoming::Data));
    }
}
