//! How well texts are read, measured on texts that are made from plans: the expected outcome comes
//! from the plan, never from reading the text.
//!
//! `cargo test -p budwood --test measure -- --nocapture` prints the table. `BUDWOOD_TEXTS=5000`
//! makes so many reports and as many negatives for each language and level; `BUDWOOD_SHOW=fr/typical`
//! prints texts that came out otherwise (`BUDWOOD_SHOW_MAX` of them, forty without it), and
//! `BUDWOOD_SHOW=typical` those of every language, `BUDWOOD_SHOW=held` those with words held out;
//! `BUDWOOD_ONLY=fr` measures one language only, and
//! `BUDWOOD_ALL=1` reads with all packs on, as the service does.
#![cfg(test)]

#[path = "../crash/chance.rs"]
mod chance;
mod draw;

// What is said.
mod farm;
mod order;
mod plan;
mod slips;
mod speech;
mod surface;
mod talk;
mod token;

// How it arrives.
mod keys;
mod noise;
mod rates;
mod spacing;

mod message;
mod negative;

// What is made of it.
mod corpus;
mod floors;
mod held_out;
mod judge;
mod laws;
mod measures;
mod run;
mod table;
