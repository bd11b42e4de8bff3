//! Octets as hexadecimal digits.

use std::fmt::Write as _;

/// The octets, two digits each; none where anything else stands there.
pub(crate) fn octets(digits: &str) -> Option<Vec<u8>> {
    let digit = |digit: &u8| u8::try_from(char::from(*digit).to_digit(16)?).ok();
    let pair = |pair: &[u8]| match pair {
        [high, low] => Some(digit(high)? << 4 | digit(low)?),
        _ => None,
    };
    digits.as_bytes().chunks(2).map(pair).collect()
}

/// The digits of octets, small letters.
pub(crate) fn digits(octets: &[u8]) -> String {
    let mut digits = String::with_capacity(octets.len() * 2);
    for octet in octets {
        // Writing into a string cannot fail.
        let _ = write!(digits, "{octet:02x}");
    }
    digits
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_pairs_of_digits_are_octets() {
        assert_eq!(octets("00fFa7"), Some(vec![0, 0xff, 0xa7]));
        assert_eq!(octets(""), Some(vec![]));
        assert_eq!(digits(&[0, 0xff, 0xa7]), "00ffa7");
        for wrong in ["0", "0g", "+1", "00 ", "\u{e9}"] {
            assert_eq!(octets(wrong), None, "{wrong}");
        }
    }
}
