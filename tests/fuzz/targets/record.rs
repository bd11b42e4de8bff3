//! Any bytes as a stored record: refused, or the same value and the same bytes when it is written
//! and read again.
//!
//! Deliberately absent: whether a record of an older version keeps its meaning; the samples of
//! `tests/format.rs` say that.
#![no_main]

use budwood::store::{Change, read_line, rewritten};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let mut first = Change::default();
    let Ok(key) = read_line(bytes, &mut first) else {
        return;
    };
    let written = rewritten(bytes).expect("what was read can be written");
    assert!(!written.contains(&b'\n'), "a record is one line of a log");
    let mut second = Change::default();
    let key_again = read_line(&written, &mut second).expect("what was written can be read");
    assert_eq!(first, second);
    assert_eq!(key, key_again);
    assert_eq!(rewritten(&written).expect("and written again"), written);
});
