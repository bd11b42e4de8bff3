//! Any bytes as a list of people: a plan whose findings lie in the file; a plan with a refused row
//! stores nothing, and any other leaves nothing to do the second time.
//!
//! Deliberately absent: what the rows mean; `tests/roll.rs` checks that.
#![no_main]

use std::{cell::LazyCell, sync::Arc};

use budwood::{
    engine::Setup,
    play::virtual_clock::{self, Rig},
    roll::{Plan, Severity},
    service::setup,
    store::MemoryStore,
};
use chrono::{DateTime, Utc};
use libfuzzer_sys::fuzz_target;

thread_local! {
    static SETUP: LazyCell<Arc<Setup>> =
        LazyCell::new(|| Arc::new(setup::built_in(1).expect("what ships can be used")));
}

/// 18 November 2026, in the morning.
const NOW: DateTime<Utc> = DateTime::from_timestamp(1_795_000_000, 0).unwrap();

fuzz_target!(|bytes: &[u8]| {
    let setup = SETUP.with(|setup| Arc::clone(setup));
    let store = Box::new(MemoryStore::new());
    let mut rig = Rig::open(setup, store, NOW).expect("an empty store opens");
    let plan = virtual_clock::plan_roll(rig.engine(), bytes, NOW);
    check_findings(&plan, bytes);
    let loaded = rig.load_roll(bytes);
    assert_eq!(loaded.is_ok(), plan.count(Severity::Refused) == 0);
    let records = rig.engine().store().records(None, usize::MAX);
    let records = records.expect("memory can be read").len();
    if loaded.is_err() {
        assert_eq!(records, 0, "a refused list was stored");
        return;
    }
    assert_eq!(records == 0, plan.is_empty());
    let second = virtual_clock::plan_roll(rig.engine(), bytes, NOW);
    assert!(second.is_empty(), "not all was taken in: {second}");
});

fn check_findings(plan: &Plan, bytes: &[u8]) {
    // Line ends of every system; a last line without an end counts too.
    let lines = 1 + bytes.iter().filter(|byte| b"\r\n".contains(byte)).count();
    let mut last = 0;
    for finding in &plan.findings {
        assert!((1..=lines).contains(&finding.line), "{finding}");
        assert!(last <= finding.line, "findings come in the order of lines");
        last = finding.line;
    }
    assert!(!plan.to_string().is_empty());
}
