//! Facts about blocks of rubber go in; what is due, and which nudge may go, comes out.
//!
//! Read in this order: what happened and which jobs there are ([`words`]), who there is and how a
//! block stands ([`land`]), what the handbook says ([`handbook`]), what is to be expected of a
//! stand ([`outlook`]) and of a group ([`group`]), which jobs follow and when to speak of them
//! ([`jobs`]), what to do with a text ([`decide`]), every number that is shown ([`figures`]), and a
//! whole planting ahead ([`plan`]). Each room knows only those below it.
//!
//! Deliberately absent: files, network, clock, environment, async, and every storage format.
//! Time is always an argument.
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;
#[cfg(test)]
extern crate std;

pub mod decide;
pub mod figures;
pub mod group;
pub mod handbook;
pub mod jobs;
pub mod land;
pub mod outlook;
pub mod plan;
pub mod sums;
pub mod words;

pub use handbook::calendar::Calendar;
pub use handbook::lesson::Lesson;
pub use jobs::task::{Figures, Task};
pub use land::block::{BlockState, Census, Cohort, Living, NudgeTrack};
pub use land::book::Book;
pub use land::directory::{
    Block, Consent, Directory, Group, Helper, Person, PersonLink, Phone, Role,
};
pub use words::entered::Entered;
pub use words::event::{Body, Event, Happened, Purpose, Source};
pub use words::hold::{Hold, Reason};
pub use words::id::{BlockId, EventId, GroupId, MessageId, PersonId};
pub use words::passed::{Passed, Trees};
pub use words::{
    job::{Clock, TaskKind, TextClass},
    season::Season,
};
