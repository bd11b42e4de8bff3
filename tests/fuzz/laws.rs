//! What every arrival keeps to, whichever way it came.

use budwood::{
    service::port::Arrival,
    words::{
        limits,
        traffic::{About, Inbound},
    },
};

pub fn check(arrival: &Arrival) {
    match arrival {
        Arrival::Text(text) => check_text(text),
        Arrival::Part(part) => {
            assert!(
                (1..=part.of).contains(&part.number),
                "{} of {}",
                part.number,
                part.of
            );
            check_text(&part.text);
        }
        Arrival::Receipt(receipt) => {
            if let About::Theirs(id) = &receipt.about {
                assert!(!id.is_empty() && id.len() <= limits::GATEWAY_ID_BYTES_MAX);
            }
            let code = receipt.code.as_deref().unwrap_or("-");
            assert!(!code.is_empty() && code.len() <= limits::STATUS_BYTES_MAX);
        }
        Arrival::MissedCall { .. } => unreachable!("no message is a call"),
    }
}

pub fn check_text(text: &Inbound) {
    for address in [&text.from, &text.to] {
        assert!(address.chars().count() <= limits::ADDRESS_CHARS_MAX);
    }
    assert!(text.text.chars().count() <= limits::TEXT_CHARS_MAX);
    let id = text.gateway_id.as_ref();
    assert!(id.is_none_or(|id| id.len() <= limits::GATEWAY_ID_BYTES_MAX));
}
