//! The words of the field, without rules: who is meant, what happened, which job, which season.

pub mod area;
pub mod entered;
pub mod event;
pub mod hold;
pub mod id;
pub mod job;
pub mod passed;
pub mod point;
pub mod rainfall;
pub mod season;
