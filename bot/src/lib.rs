//! The message bot: everything that has an effect.
#![forbid(unsafe_code)]

pub mod clock;
pub mod gateway;
pub mod limits;
pub mod sms;
