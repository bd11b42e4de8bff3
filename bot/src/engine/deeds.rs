//! What changes the record: each deed takes a step, and gives back what is said of it.

pub(crate) mod amend;
pub(crate) mod announce;
pub(crate) mod ask;
pub(crate) mod codes;
pub(crate) mod commands;
pub(crate) mod copy;
pub(crate) mod erase;
pub(crate) mod facts;
pub(crate) mod holds;
pub(crate) mod inbound;
pub(crate) mod language;
pub(crate) mod lists;
pub(crate) mod many;
mod may_leave;
pub(crate) mod operator;
pub(crate) mod outbox;
pub(crate) mod parts;
pub(crate) mod phones;
pub(crate) mod queue;
pub(crate) mod reached;
pub(crate) mod record;
pub(crate) mod reply;
pub(crate) mod roll;
pub(crate) mod sharing;
pub(crate) mod spending;
pub(crate) mod tell;
pub(crate) mod tick;
