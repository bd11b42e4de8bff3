//! Whether the store has everything that was acknowledged, read through once behind a start.
//!
//! A start reads what it needs, and may not meet a damage in the middle of the store. So a thread
//! of its own reads all of it meanwhile. What it misses is told in the log and by health until a
//! person has restored a backup; texts are taken all the same, since each is stored whole.

use std::{
    io,
    sync::Arc,
    thread::{self, JoinHandle},
};

use tracing::error;

use super::handle::Shared;
use crate::store::Store;

/// What health says of a store with a gap.
const GAP: &str = "the store is damaged: something that was acknowledged is missing in it. Stop the \
                   service, copy the store's folder away as it is, and restore the last backup into \
                   an empty folder";

/// Reads the store on a thread of its own. Nobody waits for it: when the service ends, so does it.
pub(super) fn look(store: Arc<dyn Store>, shared: Arc<Shared>) -> io::Result<JoinHandle<()>> {
    let read = move || {
        if let Err(cause) = store.verify() {
            error!(error = format!("{cause:#}"), "the store is not whole");
            // Nobody else writes here.
            shared.gap.tell(GAP);
        }
    };
    thread::Builder::new().name("look".to_owned()).spawn(read)
}
