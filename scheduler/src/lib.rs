//! Facts about blocks of rubber go in; what is due, and which nudge may go, comes out.
//!
//! Read in this order: who there is ([`directory`]), what happened ([`event`]), how a block
//! stands ([`block`]), what the handbook says ([`calendar`]), which jobs follow ([`task`], with
//! the sums in [`stand`], [`plan`], [`orders`], [`feed`], [`wilson`], [`growth`] and
//! [`forecast`]), when to speak ([`nudge`]), what to
//! do with a text ([`decide`]), what concerns more than one block ([`health`], [`silence`],
//! [`trust`], [`visit`]).
//!
//! Deliberately absent: files, network, clock, environment, async, and every storage format.
//! Time is always an argument.
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;
#[cfg(test)]
extern crate std;

pub mod block;
pub mod calendar;
pub mod census;
pub mod chance;
mod days;
pub mod decide;
pub mod directory;
pub mod event;
pub mod feed;
pub mod forecast;
pub mod growth;
pub mod health;
pub mod id;
pub mod nudge;
mod number;
pub mod nutrients;
pub mod onset;
pub mod orders;
pub mod plan;
pub mod rain;
pub mod silence;
pub mod stand;
pub mod survival;
pub mod task;
pub mod trust;
pub mod visit;
pub mod wilson;

pub use block::{BlockState, Census, Cohort, NudgeTrack};
pub use calendar::Calendar;
pub use directory::{Block, Consent, Directory, Group, Person, PersonLink, Phone, Role};
pub use event::{Body, Event, Happened, Source};
pub use id::{BlockId, EventId, GroupId, MessageId, PersonId};
pub use task::{Clock, Figures, Season, Task, TaskKind, TextClass};
