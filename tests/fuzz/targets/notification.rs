//! Any bytes as the body of a notification: texts, receipts or a refusal, within the limits, and
//! what was taken says the same when it is written out and read again.
//!
//! Deliberately absent: HTTP itself, and who may send; `tests/http.rs` checks those.
#![no_main]

use budwood::{
    gateway::{Inbound, Receipt},
    limits, web,
};
use chrono::Datelike;
use libfuzzer_sys::fuzz_target;
use serde_json::{Value, json};

fuzz_target!(|bytes: &[u8]| {
    // The server refuses these two before it looks inside.
    let Ok(body) = std::str::from_utf8(bytes) else {
        return;
    };
    if body.len() > limits::BODY_BYTES_MAX {
        return;
    }
    let (texts, receipts) = web::items_in(body);
    for why in [texts.as_ref().err(), receipts.as_ref().err()] {
        assert!(why.is_none_or(|why| !why.is_empty()));
    }
    texts.iter().for_each(|texts| check_texts(texts));
    receipts
        .iter()
        .for_each(|receipts| check_receipts(receipts));
});

fn check_texts(texts: &[Inbound]) {
    assert!(texts.len() <= limits::NOTIFICATION_ITEMS_MAX);
    for text in texts {
        assert!(!text.from.is_empty() && text.from.trim() == text.from);
        for address in [&text.from, &text.to] {
            assert!(address.chars().count() <= limits::ADDRESS_CHARS_MAX);
        }
        assert!(text.text.chars().count() <= limits::TEXT_CHARS_MAX);
        let id = text.gateway_id.as_ref();
        assert!(id.is_none_or(|id| id.len() <= limits::GATEWAY_ID_BYTES_MAX));
    }
    let items: Vec<Value> = texts.iter().map(written).collect();
    let again = json!({"inboundSMSMessageNotification": {"inboundSMSMessage": items}});
    assert_eq!(web::items_in(&again.to_string()).0.as_deref(), Ok(texts));
}

/// The text as a sender would write it.
fn written(text: &Inbound) -> Value {
    // RFC 3339 has four digits for a year; a zone can carry an instant out of them.
    let sent_at = text.sent_at.filter(|at| (0..=9999).contains(&at.year()));
    assert_eq!(sent_at.is_none(), text.sent_at.is_none());
    json!({
        "messageId": text.gateway_id,
        "senderAddress": format!("tel:{}", text.from),
        "destinationAddress": format!("tel:{}", text.to),
        "message": text.text,
        "dateTime": sent_at.map(|at| at.to_rfc3339()),
    })
}

fn check_receipts(receipts: &[Receipt]) {
    assert!(receipts.len() <= limits::NOTIFICATION_ITEMS_MAX);
    for receipt in receipts {
        assert!(receipt.id.is_some() || receipt.gateway_id.is_some());
    }
}
