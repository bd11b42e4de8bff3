//! Budwood: a message bot for rubber smallholders and the adviser who looks after them.
pub mod message;
pub mod store;
