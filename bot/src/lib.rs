//! The message bot: everything that has an effect.
//!
//! Read in this order: what goes in and out ([`gateway`], [`message`]), what is done with it
//! ([`engine`]), how it is said ([`wording`]) and kept ([`store`]).
#![forbid(unsafe_code)]

pub mod clock;
pub mod config;
pub mod engine;
pub mod gateway;
pub mod limits;
pub mod message;
pub mod number;
pub mod sms;
pub mod store;
pub mod telemetry;
pub mod web;
pub mod wording;
