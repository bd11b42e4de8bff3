//! Any bytes as a list of people: a plan without a panic, and nothing left to do the second time.
#![no_main]

use budwood::{rig, talk};
use chrono::DateTime;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let now = DateTime::from_timestamp(1_795_000_000, 0).unwrap();
    let mut engine = talk::empty_engine(now).unwrap();
    let plan = rig::plan_roll(&engine, bytes, now);
    let _ = plan.to_string();
    if plan.may_be_stored() {
        let entries = Box::new(rig::entries(&plan));
        engine.handle(vec![budwood::engine::Input::Roll(entries)], now).unwrap();
        assert!(rig::plan_roll(&engine, bytes, now).is_empty());
    }
});
