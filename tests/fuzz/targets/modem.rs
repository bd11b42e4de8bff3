//! Any octets as a message that a modem hands over (3GPP TS 23.040): a text, a part, a report or
//! nothing, within the limits.
//!
//! Deliberately absent: the lines around it; `bot/src/service/gateway/modem` checks those.
#![no_main]

#[path = "../laws.rs"]
mod laws;

use budwood::service::gateway::from_modem;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|octets: &[u8]| {
    if let Some(arrival) = from_modem(octets) {
        laws::check(&arrival);
    }
});
