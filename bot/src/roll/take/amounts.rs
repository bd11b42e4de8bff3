//! Areas and numbers of trees as offices write them.

use budwood_parser::Unit;

use super::mended::Mended;

/// Names of units as they are typed behind a number.
const UNITS: [(&str, Unit); 18] = [
    ("hectares", Unit::Hectare),
    ("hectare", Unit::Hectare),
    ("hektar", Unit::Hectare),
    ("ha", Unit::Hectare),
    ("เฮกตาร์", Unit::Hectare),
    ("acres", Unit::Acre),
    ("acre", Unit::Acre),
    ("ac.", Unit::Acre),
    ("ac", Unit::Acre),
    ("rai", Unit::Rai),
    ("ไร่", Unit::Rai),
    ("square metres", Unit::SquareMetre),
    ("sqm", Unit::SquareMetre),
    ("m²", Unit::SquareMetre),
    ("m2", Unit::SquareMetre),
    ("ha.", Unit::Hectare),
    ("hecta", Unit::Hectare),
    ("acr", Unit::Acre),
];

/// A rai has four ngan, a ngan a hundred square wa (Thai Weights and Measures Act, B.E. 2466).
const NGAN_A_RAI: f64 = 4.0;
const WA_A_RAI: f64 = 400.0;

/// An area, with the unit that stands beside it.
pub(super) struct Land {
    pub(super) value: Mended,
    pub(super) unit: Option<Unit>,
}

/// The unit that a word names.
pub(super) fn unit(text: &str) -> Option<Unit> {
    let text = text.trim().to_lowercase();
    let mut units = UNITS.iter();
    units.find(|(name, _)| *name == text).map(|(_, unit)| *unit)
}

/// "1.2 ha", "8-2-50", "2 1/2", ",8".
pub(super) fn land(text: &str) -> Land {
    let lower = text.to_lowercase();
    let (number, unit) = UNITS
        .iter()
        .find_map(|(name, unit)| Some((lower.strip_suffix(name)?.trim(), Some(*unit))))
        .unwrap_or((lower.as_str(), None));
    if let Some(rai) = rai_ngan_wa(number) {
        let value = Mended::proposed(written(rai), "rai, ngan and square wa");
        let unit = Some(Unit::Rai);
        return Land { value, unit };
    }
    let value = if is_number(number) {
        Mended::Plain(number.to_owned())
    } else if let Some(halves) = with_fraction(number) {
        Mended::proposed(written(halves), "a number and a half or a quarter")
    } else if let Some(less) = number
        .strip_prefix([',', '.'])
        .filter(|rest| are_digits(rest))
    {
        Mended::proposed(format!("0.{less}"), "a number below 1")
    } else {
        Mended::Refused("write a number, like 1.5".into())
    };
    Land { value, unit }
}

/// "520.0", "520 trees", "1,200".
pub(super) fn trees(text: &str) -> Mended {
    if are_digits(text) {
        return Mended::Plain(text.to_owned());
    }
    if let Some((whole, zeros)) = text.split_once('.')
        && are_digits(whole)
        && !zeros.is_empty()
        && zeros.bytes().all(|byte| byte == b'0')
        && zeros.len() != 3
    {
        return Mended::Plain(whole.to_owned());
    }
    let parts: Vec<&str> = text.split([',', '.', ' ', '\'']).collect();
    let are_thousands = parts.len() > 1
        && parts.iter().all(|part| are_digits(part))
        && parts.iter().skip(1).all(|part| part.len() == 3);
    if are_thousands {
        return Mended::proposed(parts.concat(), "thousands with a sign between");
    }
    let number: String = text.chars().take_while(char::is_ascii_digit).collect();
    let rest = text.get(number.len()..).unwrap_or_default().trim();
    // Marks of Thai words are no letters, so it is asked what a word has not.
    let is_sign = |c: char| c.is_numeric() || (c.is_ascii_punctuation() && c != '.');
    let is_word = rest.starts_with(char::is_alphabetic) && !rest.contains(is_sign);
    if is_word && !number.is_empty() {
        return Mended::proposed(number, "a number with its word");
    }
    Mended::Refused("write a whole number in digits".into())
}

fn are_digits(text: &str) -> bool {
    !text.is_empty() && text.len() <= 9 && text.bytes().all(|byte| byte.is_ascii_digit())
}

fn is_number(text: &str) -> bool {
    let (whole, part) = text.split_once(['.', ',']).unwrap_or((text, "0"));
    // Three digits behind a comma may be thousands.
    let is_clear = !(text.contains(',') && part.len() == 3);
    are_digits(whole) && are_digits(part) && is_clear
}

fn rai_ngan_wa(text: &str) -> Option<f64> {
    let parts: Vec<&str> = text.split('-').map(str::trim).collect();
    let [rai, ngan, wa] = parts.as_slice() else {
        return None;
    };
    let number = |text: &str| text.parse::<f64>().ok().filter(|number| *number >= 0.0);
    let (rai, ngan, wa) = (number(rai)?, number(ngan)?, number(wa)?);
    (ngan < NGAN_A_RAI && wa < WA_A_RAI / NGAN_A_RAI)
        .then(|| rai + ngan / NGAN_A_RAI + wa / WA_A_RAI)
}

/// "2 1/2", "2 half", "2½".
fn with_fraction(text: &str) -> Option<f64> {
    const PARTS: [(&str, f64); 8] = [
        ("1/2", 0.5),
        ("½", 0.5),
        ("half", 0.5),
        ("and a half", 0.5),
        ("1/4", 0.25),
        ("¼", 0.25),
        ("3/4", 0.75),
        ("¾", 0.75),
    ];
    let (whole, part) = PARTS
        .iter()
        .find_map(|(name, part)| Some((text.strip_suffix(name)?.trim(), *part)))?;
    if whole.is_empty() {
        return Some(part);
    }
    let whole = are_digits(whole).then(|| whole.parse::<u32>().ok())??;
    Some(f64::from(whole) + part)
}

/// Without zeros at the end.
fn written(number: f64) -> String {
    let text = format!("{number:.4}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use budwood_parser::Unit;

    use super::{Mended, land, trees};

    #[track_caller]
    fn check(text: &str, value: &str, unit: Option<Unit>, is_plain: bool) {
        let found = land(text);
        assert_eq!(found.unit, unit, "{text}");
        match found.value {
            Mended::Plain(told) => assert_eq!((told.as_str(), is_plain), (value, true), "{text}"),
            Mended::Proposed { value: told, .. } => {
                assert_eq!((told.as_str(), is_plain), (value, false), "{text}");
            }
            Mended::Refused(why) => panic!("{text}: {why}"),
        }
    }

    #[test]
    fn land_of_offices() {
        check("1.2", "1.2", None, true);
        check("1,2", "1,2", None, true);
        check("1.2 ha", "1.2", Some(Unit::Hectare), true);
        check("3.5 Acres", "3.5", Some(Unit::Acre), true);
        check("12ไร่", "12", Some(Unit::Rai), true);
        // 8 rai, 2 ngan, 50 square wa: 8 + 2/4 + 50/400.
        check("8-2-50", "8.625", Some(Unit::Rai), false);
        check("2 1/2", "2.5", None, false);
        check("2 half", "2.5", None, false);
        check("½", "0.5", None, false);
        check(",8", "0.8", None, false);
        for text in ["1,200", "big", "", "-1", "8-5-50", "1.2.3"] {
            assert!(matches!(land(text).value, Mended::Refused(_)), "{text}");
        }
    }

    #[test]
    fn trees_of_offices() {
        assert_eq!(trees("520"), Mended::Plain("520".into()));
        assert_eq!(trees("520.0"), Mended::Plain("520".into()));
        for (text, value) in [
            ("1,200", "1200"),
            ("1.200", "1200"),
            ("520 trees", "520"),
            ("520 ต้น", "520"),
        ] {
            assert!(
                matches!(trees(text), Mended::Proposed { value: told, .. } if told == value),
                "{text}"
            );
        }
        for text in ["about 500", "520.5", "520 of 600", "", "many"] {
            assert!(matches!(trees(text), Mended::Refused(_)), "{text}");
        }
    }
}
