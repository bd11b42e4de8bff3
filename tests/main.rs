//! What a person sees, tested from outside, and the rules of the house.
#![cfg(test)]

mod fixture;

mod clock;
mod commands;
mod conversation;
mod cost;
mod demo;
mod erase;
mod folder;
mod format;
mod http;
mod inbox;
mod keep;
mod machines;
mod office;
mod operator;
mod outbox;
mod pages;
mod parcels;
mod planning;
mod reading;
mod rehearse;
mod roll;
mod service;
mod setting_up;
mod sheets;
mod simulation;
mod store;
mod tidy;
mod trust;
mod welcome;
mod wording;
