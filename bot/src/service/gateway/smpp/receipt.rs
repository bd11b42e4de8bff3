//! What became of a text, as a centre tells it: by parameters, or in a text whose form the
//! standard only suggests (SMPP 3.4, Appendix B), so it is read with patience.

use super::pdu::Message;
use crate::words::{bounded, limits, traffic::Delivery};

/// How a centre writes ids in receipts, beside how it wrote them in its answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum ReceiptIds {
    /// The same way.
    Same,
    /// In decimal digits, where the answer had hexadecimal ones.
    Decimal,
    /// In hexadecimal digits, where the answer had decimal ones.
    Hex,
}

/// What a receipt says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Told {
    pub(super) id: String,
    pub(super) delivery: Delivery,
    pub(super) code: Option<String>,
}

impl ReceiptIds {
    /// The id of an answer, in the form in which it is kept.
    pub(super) fn of_answer(self, id: &str) -> String {
        let digits = match self {
            Self::Same => None,
            Self::Decimal => u128::from_str_radix(id.trim(), 16).ok(),
            Self::Hex => id.trim().parse().ok(),
        };
        digits.map_or_else(|| id.trim().to_owned(), |number: u128| number.to_string())
    }

    /// The id of a receipt, in the same form.
    pub(super) fn of_receipt(self, id: &str) -> String {
        let digits = match self {
            Self::Same => None,
            Self::Decimal => id.trim().parse().ok(),
            Self::Hex => u128::from_str_radix(id.trim(), 16).ok(),
        };
        digits.map_or_else(|| id.trim().to_owned(), |number: u128| number.to_string())
    }
}

/// The receipt that a message is, if it is one. Its bit says so, or the parameter that only a centre
/// can set: the form of the text alone anybody can write.
pub(super) fn receipt(message: &Message, ids: ReceiptIds) -> Option<Told> {
    // 5.2.12: a receipt, or one that tells how it goes meanwhile.
    let is_marked = matches!(message.esm_class & 0x3c, 0x04 | 0x20);
    let text = String::from_utf8_lossy(&message.octets);
    let id = word_after(&text, "id:");
    let state = word_after(&text, "stat:");
    let by_parameter = message.receipted.as_deref().filter(|id| !id.is_empty());
    if !is_marked && by_parameter.is_none() {
        return None;
    }
    let id = ids.of_receipt(by_parameter.or(id)?);
    if id.is_empty() || id.len() > limits::GATEWAY_ID_BYTES_MAX {
        return None;
    }
    let delivery = match message.state {
        Some(state) => of_number(state),
        None => state.map_or(Delivery::Waiting, of_word),
    };
    let code = word_after(&text, "err:").or(state);
    let code = code.and_then(|code| bounded::word(code, limits::REFUSAL_CODE_BYTES_MAX));
    Some(Told { id, delivery, code })
}

/// What stands behind a key, up to a space. Keys differ in case from centre to centre.
fn word_after<'a>(text: &'a str, key: &str) -> Option<&'a str> {
    let mut words = text.split([' ', '\r', '\n', '\0']);
    words.find_map(|word| {
        let (start, rest) = word.split_at_checked(key.len())?;
        start.eq_ignore_ascii_case(key).then_some(rest)
    })
}

/// 5.2.28.
const fn of_number(state: u8) -> Delivery {
    match state {
        2 => Delivery::Delivered,
        3 | 4 | 5 | 8 => Delivery::Failed,
        7 => Delivery::Uncertain,
        _ => Delivery::Waiting,
    }
}

/// Appendix B.
fn of_word(state: &str) -> Delivery {
    match state.to_ascii_uppercase().as_str() {
        "DELIVRD" => Delivery::Delivered,
        "EXPIRED" | "DELETED" | "UNDELIV" | "REJECTD" => Delivery::Failed,
        "UNKNOWN" => Delivery::Uncertain,
        _ => Delivery::Waiting,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn message(esm_class: u8, text: &str) -> Message {
        Message {
            esm_class,
            octets: text.as_bytes().to_vec(),
            ..Message::default()
        }
    }

    // The example of SMPP 3.4, Appendix B.
    #[test]
    fn the_suggested_form_is_read_where_its_bit_is_set() {
        let text = "id:0123456789 sub:001 dlvrd:001 submit date:0610191507 done date:0610191507 \
                    stat:DELIVRD err:000 text:hello";
        let expected = Told {
            id: "0123456789".into(),
            delivery: Delivery::Delivered,
            code: Some("000".into()),
        };
        for esm_class in [0x04, 0x20, 0x44] {
            let told = receipt(&message(esm_class, text), ReceiptIds::Same);
            assert_eq!(told, Some(expected.clone()), "{esm_class}");
        }
        let upper = receipt(&message(4, "ID:7 STAT:undeliv ERR:011"), ReceiptIds::Same).unwrap();
        assert_eq!((upper.id.as_str(), upper.delivery), ("7", Delivery::Failed));
        for none in [text, "my id: 5 stat: 6", "id:7 stat:UNDELIV", ""] {
            assert_eq!(receipt(&message(0, none), ReceiptIds::Same), None, "{none}");
        }
    }

    #[test]
    fn parameters_count_more_than_the_text_and_need_no_bit() {
        let told = Message {
            receipted: Some("77".into()),
            state: Some(5),
            ..message(4, "id:1 stat:DELIVRD")
        };
        for esm_class in [4, 0] {
            let message = Message {
                esm_class,
                ..told.clone()
            };
            let told = receipt(&message, ReceiptIds::Same).unwrap();
            assert_eq!((told.id.as_str(), told.delivery), ("77", Delivery::Failed));
        }
    }

    #[test]
    fn ids_meet_whatever_digits_they_are_written_in() {
        for (ids, answer, receipt) in [
            (ReceiptIds::Same, "4b1", "4b1"),
            (ReceiptIds::Decimal, "4b1", "1201"),
            (ReceiptIds::Decimal, "000004B1", "0001201"),
            (ReceiptIds::Hex, "1201", "4b1"),
            (ReceiptIds::Hex, "no-number", "no-number"),
        ] {
            assert_eq!(
                ids.of_answer(answer),
                ids.of_receipt(receipt),
                "{ids:?} {answer}"
            );
        }
    }
}
