//! The power fails: only what a sync covered is sure to be there.
//!
//! The preload library of `tests/powerloss` ends the service at a chosen call and takes back what
//! no sync covered: everything, or a random part, torn at sectors. It models files, not folders:
//! a name that was made or changed counts as on the disk.

use super::{
    library::CUT,
    place::Place,
    series::{Series, run},
    service::{Between, Service},
};

/// Calls within which the power fails. A start takes some 10, the texts of a round some 200.
const CALLS: u64 = 160;

/// Calls within which the power fails on a new store: making it takes some 30.
const FIRST_CALLS: u64 = 60;

/// Texts of a round.
const TEXTS: u64 = 60;

fn cut_round(
    series: &mut Series,
    mode: &str,
    calls: u64,
    more: &[(&'static str, &str)],
) -> Result<(), String> {
    let mut variables = vec![
        ("POWERLOSS_MODE", mode.to_owned()),
        (
            "POWERLOSS_AFTER",
            (1 + series.chance.below(calls)).to_string(),
        ),
        ("POWERLOSS_SEED", series.chance.below(1_000_000).to_string()),
    ];
    variables.extend(
        more.iter()
            .map(|(name, value)| (*name, (*value).to_owned())),
    );
    series.ledger.write(TEXTS, &mut series.chance);
    let ended = match Service::start(&series.place, &Between::Library(variables.clone())) {
        Err(ended) => ended,
        Ok(service) => {
            series.deliver(&service);
            if series.ledger.waiting().is_empty() {
                service.stop()
            } else {
                service.ended()
            }
        }
    };
    match ended.status.code() {
        Some(CUT | 0) => Ok(()),
        _ => Err(format!("{variables:?}: it ended by itself: {ended:?}")),
    }
}

#[test]
fn power_cuts_that_undo_everything_lose_nothing() {
    let test = "power_cuts_that_undo_everything_lose_nothing";
    run(
        test,
        super::series::rounds(100),
        |_| Place::settled(),
        |series| cut_round(series, "all", CALLS, &[]),
    );
}

#[test]
fn power_cuts_that_tear_lose_nothing() {
    let test = "power_cuts_that_tear_lose_nothing";
    run(
        test,
        super::series::rounds(100),
        |_| Place::settled(),
        |series| cut_round(series, "random", CALLS, &[]),
    );
}

/// Every round makes the store anew, and the power fails soon: while it is made, or soon after.
#[test]
fn power_cuts_of_a_first_start_lose_nothing() {
    let test = "power_cuts_of_a_first_start_lose_nothing";
    run(
        test,
        super::series::rounds(60),
        |_| Place::new(),
        |series| {
            let mode = ["all", "random"][series.chance.place(2)];
            *series = Series {
                place: Place::new(),
                ledger: super::ledger::Ledger::default(),
                chance: super::chance::Chance::new(series.chance.next()),
            };
            // Twice, so that a store that was only half made is finished, and cut again.
            for _ in 0..2 {
                cut_round(series, mode, FIRST_CALLS, &[])?;
                series.judge()?;
            }
            Ok(())
        },
    );
}

/// The check of the check: a disk that takes no notice of syncs of the store's file must lose
/// texts, or these tests would see nothing.
#[test]
fn a_store_that_does_not_sync_is_caught() {
    for mode in ["all", "random"] {
        let mut series = Series::new(7, Place::settled());
        let caught = (0..20).any(|_| {
            let deaf = [("POWERLOSS_DEAF", "/store/db")];
            cut_round(&mut series, mode, CALLS, &deaf)
                .and_then(|()| series.judge())
                .is_err()
        });
        assert!(caught, "{mode}: nothing was lost without a sync");
    }
}
