//! Given facts, at a day, then these tasks.

mod condition;
mod enrolment;
mod feeding;
mod figures;
mod given;
mod growing;
mod laws;
mod life;
mod planting;
mod season;
mod tapping;
mod watch;
