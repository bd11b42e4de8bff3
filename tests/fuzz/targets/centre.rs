//! Any octets as the body of a `deliver_sm` (SMPP 3.4), for a centre of each kind. Whatever the
//! kind, it is a receipt for all of them or for none.
#![no_main]

#[path = "../laws.rs"]
mod laws;

use budwood::service::{gateway::from_centre, port::Arrival};
use libfuzzer_sys::fuzz_target;

fuzz_target!(|body: &[u8]| {
    let arrivals = from_centre(body);
    arrivals.iter().for_each(laws::check);
    let receipts = arrivals
        .iter()
        .filter(|one| matches!(one, Arrival::Receipt(_)));
    assert!([0, arrivals.len()].contains(&receipts.count()));
});
