//! What a person sees, tested from outside, and the rules of the house.

mod roll;
mod tidy;
