//! What the operator is told, put together at its longest, is one SMS.

use budwood::{
    args,
    wording::{Key, Phrase, Value},
    words::sms,
};

use super::case::in_every_language;

/// The longest name of a gateway: 16 letters.
const GATEWAY: &str = "northernprovider";

/// A month of a large service, in parts.
const PARTS: u32 = 1_234_567;

fn state(key: Key) -> Phrase {
    let share = Phrase::new(Key::OperatorShare, args! { "pct" => 100 });
    let args = args! {
        "hours" => 167, "waiting" => 99_999, "parts" => PARTS, "share" => share,
    };
    Phrase::new(key, args)
}

fn trouble(key: Key) -> Value {
    let args = args! { "gateway" => Value::name(GATEWAY), "hours" => 8_760 };
    Phrase::new(key, args).into()
}

#[test]
fn a_good_morning_has_all_its_figures() {
    in_every_language(|case| {
        for key in [Key::OperatorState, Key::OperatorStateSilent] {
            let state = Value::Extra(state(key));
            let phrase = Phrase::new(Key::OperatorWell, args! { "state" => state });
            let text = case.tongue.word(&phrase);
            case.assert_whole(&text, &Key::OperatorWell.name());
            assert!(text.contains("1234567") && text.contains("99999"), "{text}");
        }
    });
}

#[test]
fn a_bad_morning_names_the_first_trouble_whatever_else_there_is() {
    const TROUBLES: [Key; 7] = [
        Key::OperatorRefused,
        Key::OperatorDown,
        Key::OperatorSays,
        Key::OperatorSilent,
        Key::OperatorOldest,
        Key::OperatorSpent,
        Key::OperatorDisk,
    ];
    in_every_language(|case| {
        for first in TROUBLES {
            let mut troubles = vec![trouble(first)];
            troubles.extend(TROUBLES.map(trouble));
            let args = args! {
                "troubles" => Value::List(troubles),
                "state" => Value::Extra(state(Key::OperatorState)),
            };
            let text = case.tongue.word(&Phrase::new(Key::OperatorTrouble, args));
            case.assert_whole(&text, &Key::OperatorTrouble.name());
            let args = args! { "gateway" => "\u{1}", "hours" => 8_760 };
            let named = case.tongue.say(first, args);
            let after = named.rsplit('\u{1}').next().unwrap_or_default().trim();
            let (after, text) = (sms::bare(after), sms::bare(&text));
            assert!(text.contains(&after), "{after}: {text}");
        }
    });
}

#[test]
fn that_a_phone_texts_like_a_machine_fits() {
    in_every_language(|case| {
        let args = args! { "digits" => "9999" };
        let text = case.tongue.word(&Phrase::new(Key::OperatorMachine, args));
        case.assert_whole(&text, &Key::OperatorMachine.name());
        assert!(text.contains("9999"), "{text}");
    });
}

#[test]
fn how_much_is_gone_and_what_stops_fit() {
    in_every_language(|case| {
        for (pct, stops) in [
            (50, Key::OperatorStopsNone),
            (80, Key::OperatorStopsSome),
            (100, Key::OperatorStopsAll),
        ] {
            let args = args! {
                "pct" => pct, "parts" => PARTS, "stops" => Phrase::from(stops),
            };
            let text = case.tongue.word(&Phrase::new(Key::OperatorBudget, args));
            case.assert_whole(&text, &Key::OperatorBudget.name());
            let stops = sms::bare(&case.tongue.word(&stops.into()));
            assert!(sms::bare(&text).ends_with(&stops), "{text}");
        }
    });
}
