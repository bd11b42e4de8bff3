//! What a person sees, tested from outside, and the rules of the house.
#![cfg(test)]

mod clock;
mod desk;
mod http;
mod inbox;
mod keep;
mod outbox;
mod roll;
mod tidy;
