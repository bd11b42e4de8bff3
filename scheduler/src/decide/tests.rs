//! The policy: scene and text in, decision out.

mod alarms;
mod corrections;
mod dates;
mod doubts;
mod ghana;
mod given;
mod heard;
mod policy;
mod sanity;
mod unnamed;
