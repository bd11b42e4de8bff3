//! Nothing is lost and nothing is done twice, whatever ends the service.
//!
//! The real program, over HTTP, on a real disk: power cuts (`power`), SIGKILL at every call that
//! changes the store and at random moments (`kill`), errors of the disk (`errors`), a full disk
//! (`full`) and folders that cannot be used (`folder`). After each round the store is opened and
//! compared with what the provider was told (`verdict`). Takes minutes, and needs a C compiler,
//! strace and root (for a small disk), so only `tests/all` runs it.
//!
//! The method is common practice: end the process at chosen points, keep only what the operating
//! system promised, compare with what was acknowledged. What the system promises is from POSIX
//! (IEEE Std 1003.1-2017, `fsync` and `fdatasync`) and the Linux manual page `sync_file_range`(2),
//! which says that it does not make changes last through a crash.
//!
//! `BUDWOOD_ROUNDS=1000` makes the random tests longer; `BUDWOOD_SEED=n` repeats a series that
//! failed, which names its seed.
#![cfg(test)]

mod chance;
mod errors;
mod folder;
mod full;
mod kill;
mod ledger;
mod library;
mod place;
mod power;
mod provider;
mod series;
mod service;
mod verdict;
