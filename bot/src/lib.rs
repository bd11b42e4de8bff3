//! The message bot: everything that has an effect.
//!
//! Read in this order: what goes in and out ([`words::traffic`], [`words::message`]), what is done
//! with it ([`engine`]), how it is said ([`wording`]) and kept ([`store`]), who drives it
//! ([`service`] for real, [`play`] on a clock that is moved), and the command line ([`commands`]).
//! Each room knows only those below it, as listed here from the top floor down.
#![forbid(unsafe_code)]

pub mod backup;
pub mod commands;
pub mod engine;
pub mod parcel;
pub mod play;
pub mod roll;
pub mod service;
pub mod sheet;
pub mod store;
pub mod wording;
pub mod words;
