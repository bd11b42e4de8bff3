//! The GSM alphabet against PyPI gsmcodecs, whose tables are those of 3GPP TS 23.038 release 18.

use std::collections::BTreeMap;

use budwood::words::sms::{Alphabet, measure};
use serde_json::{Value, json};

use crate::peer::ask;

/// The planes in which people write, with all emoji.
const LAST: u32 = 0x1FFFF;

#[test]
fn every_character_is_measured_as_the_standard_codes_it() {
    let number = |answer: &Value, key: &str| answer.get(key).and_then(Value::as_u64);
    let carried: BTreeMap<u64, u64> = ask("alphabet.py", &[json!({"last": LAST})])
        .iter()
        .filter_map(|answer| Some((number(answer, "point")?, number(answer, "septets")?)))
        .collect();
    // TS 23.038, 6.2.1: 127 characters and the escape; 6.2.1.1: ten more behind it.
    assert_eq!(carried.len(), 137);
    for point in 0..=LAST {
        let Some(letter) = char::from_u32(point) else {
            continue;
        };
        let size = measure(&letter.to_string());
        match carried.get(&u64::from(point)) {
            Some(septets) => {
                assert_eq!(size.alphabet, Alphabet::Gsm7, "{letter:?}");
                assert_eq!(size.units as u64, *septets, "{letter:?}");
            }
            None => {
                assert_eq!(size.alphabet, Alphabet::Ucs2, "{letter:?}");
                assert_eq!(size.units, letter.len_utf16(), "{letter:?}");
            }
        }
    }
}
