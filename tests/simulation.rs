//! A valley for six years in a minute: sixty farmers with manners, a network that loses, doubles,
//! delays and reorders texts, a gateway that fails, power cuts between any two steps, clocks that
//! somebody sets, disks that are lost and filled from a copy.
//!
//! The engine, the scheduler and the stores are those of the service. Everything follows from one
//! seed, and a run that breaks a law prints the command that repeats it.
//!
//! The long forms: a larger valley, `BUDWOOD_FARMERS=200 cargo test --release -p budwood --test it
//! large_valley`; small ones, each full of trouble, by the thousand: `BUDWOOD_SEEDS=10000
//! BUDWOOD_STEPS=1000 cargo test --release -p budwood --test it small_valleys`.

pub(crate) mod chance;
mod disk;
mod figures;
mod laws;
mod network;
mod people;
mod shape;
mod time;
mod trouble;
mod valley;

use std::{env, ops::Range, thread};

use self::{figures::Figures, shape::Shape, valley::Valley};

/// Small valleys of a plain run, and the steps of each.
const SEEDS: u64 = 200;
const STEPS: u64 = 1_000;

/// Farmers of the large valley in a plain run.
const FARMERS: u64 = 60;

/// Says how to repeat a run that failed.
struct Repeat {
    seed: u64,
    /// None where the shape alone says when it ends.
    steps: Option<u64>,
    test: &'static str,
}

impl Drop for Repeat {
    fn drop(&mut self) {
        if thread::panicking() {
            let Self { seed, steps, test } = self;
            let steps = steps.map_or_else(String::new, |steps| format!("BUDWOOD_STEPS={steps} "));
            eprintln!(
                "repeat it with: BUDWOOD_SEED={seed} {steps}\
                 cargo test -p budwood --test it simulation::{test}"
            );
        }
    }
}

/// A number that whoever starts the tests has set.
fn set(name: &str) -> Option<u64> {
    env::var(name)
        .ok()
        .map(|number| number.parse().expect("a number"))
}

/// Lives each seed's valley, and prints what happened in all of them.
fn live(test: &'static str, seeds: Range<u64>, shape: &Shape) -> Figures {
    let seeds = set("BUDWOOD_SEED").map_or(seeds, |seed| seed..seed + 1);
    let mut all = Figures::default();
    for seed in seeds.clone() {
        let _repeat = Repeat {
            seed,
            steps: set("BUDWOOD_STEPS"),
            test,
        };
        let mut valley = Valley::new(seed, shape.clone());
        valley.live();
        all.add(&valley.laws.figures);
    }
    eprintln!("seeds {seeds:?}: {all}");
    all
}

/// A seed alone, or with few steps, may well be quiet.
fn expect(all: &Figures, least: &[(&str, u64)]) {
    if set("BUDWOOD_SEED").is_none() && set("BUDWOOD_STEPS").is_none_or(|steps| steps >= STEPS) {
        all.expect(least);
    }
}

/// What must happen at least is seven tenths of what did.
#[test]
fn large_valley() {
    let farmers = set("BUDWOOD_FARMERS").unwrap_or(FARMERS);
    let all = live("large_valley", 1..2, &Shape::large(farmers));
    let least = [
        ("farm-years", 250),
        ("texts in", 12_000),
        ("facts", 11_000),
        ("warned blocks", 320),
        ("nudges", 9_700),
        ("waiting phones", 5_200),
        ("lists", 95),
        ("late jobs", 3_000),
        ("power cuts", 14),
        ("wrong clocks", 13),
        ("restores", 3),
    ];
    let share = |(name, least): (&'static str, u64)| (name, least * farmers.min(FARMERS) / FARMERS);
    expect(&all, &least.map(share));
}

#[test]
fn small_valleys() {
    let seeds = set("BUDWOOD_SEEDS").unwrap_or(SEEDS);
    let steps = set("BUDWOOD_STEPS").unwrap_or(STEPS);
    let all = live("small_valleys", 1..seeds + 1, &Shape::small(steps));
    let least = [
        ("steps", seeds * steps),
        ("texts in", seeds * 60),
        ("nudges", seeds * 10),
        ("waiting phones", seeds * 10),
        ("lists", seeds * 3),
        ("late jobs", seeds),
        ("power cuts", seeds * 10),
        ("wrong clocks", seeds),
        ("copies", seeds),
        ("restores", seeds / 2),
        ("releases", seeds / 2),
    ];
    expect(&all, &least);
}

#[test]
fn on_the_real_store() {
    let all = live("on_the_real_store", 1..3, &Shape::on_disk());
    let least = [
        ("nudges", 50),
        ("power cuts", 20),
        ("copies", 5),
        ("restores", 2),
        ("releases", 2),
    ];
    expect(&all, &least);
}
