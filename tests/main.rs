//! What a person sees, tested from outside, and the rules of the house.
#![cfg(test)]

mod demo;
mod http;
mod roll;
mod tidy;
