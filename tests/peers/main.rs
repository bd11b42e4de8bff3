//! Checks against outside peers: reference libraries in other languages, at pinned versions.
//!
//! `tests/all` installs them and runs this; a plain `cargo test` leaves it out. Each module has
//! one script beside it, which asks the peer and does nothing else. What is compared, and where
//! we differ on purpose, is said in the modules.

#[path = "../crash/chance.rs"]
mod chance;
#[path = "../crash/library.rs"]
mod library;

mod alphabet;
mod centre;
mod chat;
mod dates;
mod everyday;
mod formats;
mod ground;
mod kannel;
mod libraries;
mod lines;
mod metrics;
mod misspellings;
mod modem;
mod numbering;
mod numbers;
mod office;
mod package;
mod packs;
mod pages;
mod parcels;
mod pdu;
mod peer;
mod port;
mod provider;
mod segments;
mod sheets;
mod signature;
mod sim;
mod smpp;
mod statistics;
mod table;
mod words;
