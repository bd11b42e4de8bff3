//! Any bytes as the body of a notification: texts, receipts or neither, without a panic, and
//! never more than the limit.
#![no_main]

use budwood::{limits, web};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    if let Ok(body) = std::str::from_utf8(bytes) {
        let (texts, receipts) = web::items_in(body);
        for items in [texts, receipts].into_iter().flatten() {
            assert!(items <= limits::NOTIFICATION_ITEMS_MAX);
        }
    }
});
