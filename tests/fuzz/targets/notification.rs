//! Any bytes as the body of a notification: texts, receipts or a refusal, within the limits, and
//! what was taken says the same when it is written out and read again.
//!
//! Deliberately absent: HTTP itself, and who may send; `tests/http.rs` checks those.
#![no_main]

use budwood::{
    service::web,
    words::{
        limits,
        traffic::{About, Inbound, Receipt},
    },
};
use chrono::{DateTime, Datelike, Utc};
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
    texts.iter().for_each(|texts| check_texts(&texts.items));
    let receipts = receipts.iter();
    receipts.for_each(|receipts| check_receipts(&receipts.items));
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
    let mut texts = texts.to_vec();
    for text in &mut texts {
        // RFC 3339 has four digits for a year, and a zone can carry an instant out of them.
        let in_four_digits = |at: &DateTime<Utc>| (0..=9999).contains(&at.year());
        text.sent_at = text.sent_at.filter(in_four_digits);
    }
    let items: Vec<Value> = texts.iter().map(written).collect();
    let again = json!({"inboundSMSMessageNotification": {"inboundSMSMessage": items}});
    let again = web::items_in(&again.to_string()).0;
    assert_eq!(again.map(|taken| taken.items), Ok(texts));
}

/// The text as a sender would write it.
fn written(text: &Inbound) -> Value {
    json!({
        "messageId": text.gateway_id,
        "senderAddress": format!("tel:{}", text.from),
        "destinationAddress": format!("tel:{}", text.to),
        "message": text.text,
        "dateTime": text.sent_at.map(|at| at.to_rfc3339()),
    })
}

fn check_receipts(receipts: &[Receipt]) {
    assert!(receipts.len() <= limits::NOTIFICATION_ITEMS_MAX);
    for receipt in receipts {
        if let About::Theirs(id) = &receipt.about {
            assert!(!id.is_empty() && id.len() <= limits::GATEWAY_ID_BYTES_MAX);
        }
        let code = receipt.code.as_deref().unwrap_or("-");
        assert!(!code.is_empty() && code.len() <= limits::STATUS_BYTES_MAX);
    }
}
