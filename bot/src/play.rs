//! Farmers behind the scenes and a clock that is moved: for the demo, rehearsals and tests.

pub mod virtual_clock;

pub(crate) mod field;
pub(crate) mod manner;
pub(crate) mod replies;
pub(crate) mod seeded;
