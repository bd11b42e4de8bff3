//! Fills an empty store from a log that was found good.
//!
//! While records are put in, the store says so itself; a store that was left half filled is
//! refused by everything, so it is never taken for a whole one.

use anyhow::{Context, bail};
use chrono::{DateTime, Utc};

use super::{
    log::{self, Checked},
    open_store,
};
use crate::{
    service::config::Config,
    store::{Change, Hold, Store, StoreError},
};

/// Gives how many records were put in.
pub(super) fn fill(config: &Config, log: &Checked, now: DateTime<Utc>) -> anyhow::Result<u64> {
    let store = open_store(config)?;
    let folder = config.store.folder.display();
    if store.load(0)?.hold == Hold::Filling {
        return Err(StoreError::HalfFilled).with_context(|| format!("store {folder}"));
    }
    if !store.records(None, 1)?.is_empty() {
        bail!(
            "the store in {folder} is not empty, and is left as it is; name an empty folder in \
             the configuration, or move this one away"
        );
    }
    hold(store.as_ref(), Hold::Filling)?;
    let put_in = log::read(&log.file, &mut |part| Ok(store.commit(&part)?))?;
    if put_in != log.summary {
        bail!(
            "{} was changed while it was read; remove the folder {folder} and do it again",
            log.file.display()
        );
    }
    hold(store.as_ref(), Hold::Held { since: now })?;
    Ok(put_in.records)
}

fn hold(store: &dyn Store, hold: Hold) -> Result<(), StoreError> {
    store.commit(&Change {
        hold: Some(hold),
        ..Change::default()
    })
}
