//! The words that all rooms of the bot share: messages, numbers, limits, what a gateway carries.

pub mod bounded;
pub mod erasure;
pub mod given;
pub mod ledger;
pub mod limits;
pub mod load;
pub mod matter;
pub mod message;
pub mod outline;
pub mod outline_area;
pub mod passing;
pub mod phone_number;
pub mod printed;
pub mod promise;
pub mod question;
pub mod secret;
pub mod sms;
pub mod traffic;
pub mod ways;
