//! The message bot: everything that has an effect.
//!
//! Read in this order: what goes in and out ([`gateway`], [`message`]), what is done with it
//! ([`engine`]), how it is said ([`wording`]) and kept ([`store`]), who drives it ([`server`] for
//! real, [`rig`] on a virtual clock), and the command line ([`cli`]).
#![forbid(unsafe_code)]

pub mod cli;
pub mod clock;
pub mod config;
pub mod control;
pub mod demo;
pub mod engine;
pub mod gateway;
pub mod ground;
pub mod handbook;
pub mod keep;
pub mod limits;
pub mod message;
pub mod number;
pub mod planning;
pub mod read;
pub mod rehearse;
pub mod rig;
pub mod roll;
pub mod server;
pub mod setup;
pub mod sms;
pub mod store;
pub mod talk;
pub mod telemetry;
pub mod web;
pub mod wording;
