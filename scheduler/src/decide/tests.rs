//! The policy: scene and text in, decision out.

mod dates;
mod ghana;
mod given;
mod policy;
mod sanity;
