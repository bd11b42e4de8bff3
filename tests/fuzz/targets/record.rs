//! Any bytes as a stored record: refused, or written back the same from then on.
#![no_main]

use budwood::store::rewritten;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    if let Ok(once) = rewritten(bytes) {
        assert_eq!(rewritten(&once).unwrap(), once);
    }
});
