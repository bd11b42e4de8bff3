//! What changes the record: each deed takes a step.

pub(crate) mod adviser_notices;
pub(crate) mod amend;
pub(crate) mod ask;
pub(crate) mod codes;
pub(crate) mod copy;
pub(crate) mod due_index;
pub(crate) mod facts;
pub(crate) mod heard;
pub(crate) mod inbound;
pub(crate) mod language;
pub(crate) mod outbox;
pub(crate) mod rain;
pub(crate) mod reply;
pub(crate) mod roll;
pub(crate) mod sharing;
pub(crate) mod tick;
pub(crate) mod warn_neighbours;
