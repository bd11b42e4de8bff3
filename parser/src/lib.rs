//! Reads one text message from a farmer or an adviser.
//!
//! Text in, a [`Reading`] out: reports of work, answers, questions and problems, each with its
//! place in the text. Reading never fails and never panics, whatever the bytes.
//!
//! ```
//! use budwood_parser::{Kind, Known, Pack, Reader, Sender, languages};
//!
//! let packs = languages::ALL.iter().map(|pack| Pack::parse(pack)).collect::<Result<_, _>>()?;
//! let reader = Reader::new(packs).map_err(|mut faults| faults.remove(0))?;
//! let known = Known {
//!     languages: &["en"],
//!     blocks: &["A", "B"],
//!     groups: &[],
//!     members: &[],
//!     rolls: &[],
//!     sender: Sender::Farmer,
//! };
//! let reading = reader.read("planted 120 block B, 8 dead A", &known);
//! assert_eq!(reading.reports[0].kind, Kind::Planted);
//! assert_eq!(reading.reports[1].block.as_deref(), Some("A"));
//! assert_eq!(reading.reports[1].details.count, Some(8));
//! # Ok::<(), budwood_parser::PackFault>(())
//! ```
//!
//! Deliberately absent: people, blocks as records, the date of today, files, network, clock.
//! The farmer's own block names come in as plain words ([`Known`]); a date stays as it was said
//! ([`When`]). What is done with a reading is decided by the scheduler crate.
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;
#[cfg(test)]
extern crate std;

pub mod details;
pub mod kind;
pub mod languages;
pub mod pack;
pub mod reader;
pub mod reading;
pub mod table;
pub mod when;

mod meaning;
mod span;

// The rooms, from the ground up.
mod glyphs;
mod lists;
mod pieces;
mod rules;

mod learned;
mod spoken;

#[cfg(test)]
#[expect(
    clippy::cast_possible_truncation,
    clippy::needless_range_loop,
    clippy::wildcard_enum_match_arm,
    clippy::too_many_lines,
    clippy::semicolon_if_nothing_returned,
    clippy::collapsible_if,
    reason = "sums over tables of one size, which no text can change"
)]
mod teach;

pub use details::{Ailment, Cause, Details, Extent, Material, Measure, Per, Supply, Unit, Wetness};
pub use glyphs::names::Names;
pub use kind::{Care, Effect, Kind};
pub use pack::{Pack, PackDoubt, PackFault};
pub use reader::{
    Reader,
    trace::{Holds, Role, Step, Trace},
};
pub use reading::{
    Act, Alarm, Bare, Correction, Doubt, Entry, Field, Known, Problem, Query, Reading, Report,
    Sender, Stance, Taken, Topic, Unnamed, Word,
};
pub use span::Span;
pub use spoken::sheet::SheetText;
pub use when::{Day, When};

#[cfg(test)]
mod tests;
