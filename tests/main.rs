//! What a person sees, from outside: one target, one module a subject.
#![cfg(test)]

mod http;
mod roll;
