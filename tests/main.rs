//! What a person sees, tested from outside, and the rules of the house.
#![cfg(test)]

mod sim;

mod conversation;
mod demo;
mod format;
mod http;
mod roll;
mod service;
mod simulation;
mod store;
mod tidy;
mod wording;
