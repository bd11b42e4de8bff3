//! What is said to the bot itself: answers, commands, corrections, questions, alarms.

pub(crate) mod acts;
pub(crate) mod alarm;
pub(crate) mod asked;
pub(crate) mod askings;
pub(crate) mod books;
pub(crate) mod corrections;
pub(crate) mod meant;
pub(crate) mod own;
pub(crate) mod queries;
pub(crate) mod replied;
pub(crate) mod said;
pub(crate) mod sheet;
pub(crate) mod signals;
pub(crate) mod topic;
pub(crate) mod unknown;
