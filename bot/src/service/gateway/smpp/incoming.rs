//! What a centre delivers, as what it is for the engine: a text, a part of one, or a receipt.

use data_encoding::HEXLOWER;

use super::{
    pdu::{Address, Message},
    receipt::{ReceiptIds, receipt},
    text::{DefaultAlphabet, Said, said},
};
use crate::{
    service::port::Arrival,
    words::{
        bounded, limits,
        traffic::{About, Inbound, Receipt},
    },
};

/// Kinds of number (SMPP 3.4, 5.2.5).
const INTERNATIONAL: u8 = 1;

/// What the body of a `deliver_sm` is: nothing for people, or the arrival. What cannot be read is
/// an arrival too, from a sender that nobody has, so that it is kept.
pub(super) fn arrival(
    body: &[u8],
    gateway: &str,
    (alphabet, receipt_ids): (DefaultAlphabet, ReceiptIds),
) -> Result<Option<Arrival>, Box<Arrival>> {
    let inbound = |from: String, to: String, text: String| Inbound {
        gateway: gateway.to_owned(),
        gateway_id: None,
        from,
        to,
        text: bounded::text(text),
        sent_at: None,
    };
    let Some(message) = Message::read(body) else {
        let kept = inbound("unreadable".into(), String::new(), HEXLOWER.encode(body));
        return Err(Box::new(Arrival::Text(kept)));
    };
    if let Some(told) = receipt(&message, receipt_ids) {
        return Ok(Some(Arrival::Receipt(Receipt {
            gateway: gateway.to_owned(),
            about: About::Theirs(told.id),
            delivery: told.delivery,
            code: told.code,
        })));
    }
    // 5.2.12: what a phone or a centre says of its own, and is no text, has one of these bits.
    if message.esm_class & 0x3c != 0 {
        return Ok(None);
    }
    let Said::Text(text, part) = said(&message, alphabet) else {
        return Ok(None);
    };
    let text = inbound(number(&message.from), number(&message.to), text);
    Ok(Some(Arrival::of(text, part)))
}

fn number(address: &Address) -> String {
    let digits = address.digits.trim();
    let is_number = !digits.is_empty() && digits.bytes().all(|octet| octet.is_ascii_digit());
    let plus = if address.ton == INTERNATIONAL && is_number {
        "+"
    } else {
        ""
    };
    let short: String = digits.chars().take(limits::ADDRESS_CHARS_MAX - 1).collect();
    format!("{plus}{short}")
}
