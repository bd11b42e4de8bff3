//! The message bot: everything that has an effect.
#![forbid(unsafe_code)]

pub mod clock;
pub mod config;
pub mod gateway;
pub mod limits;
pub mod sms;
pub mod telemetry;
pub mod web;
