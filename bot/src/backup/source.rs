//! Where the records of a copy come from: the running service, or a store that nobody uses.

use anyhow::Context;

use super::{need_store, open_store};
use crate::{
    service::{config::Config, control::Control},
    store::{Hold, Store, StoreError},
    words::limits,
};

/// Gives every record of one moment, part by part, in the order of keys.
pub(crate) enum Source {
    /// The running service.
    Service(Control),
    /// A store that this process has for itself, and the last key that was read.
    Store(Box<dyn Store>, Option<Vec<u8>>),
}

impl Source {
    pub(crate) fn open(config: &Config) -> anyhow::Result<Self> {
        need_store(config)?;
        if let Some(mut control) = Control::connect(&config.store.folder)? {
            control.begin_copy()?;
            return Ok(Self::Service(control));
        }
        let store = open_store(config)?;
        if store.load(0)?.hold == Hold::Filling {
            return Err(StoreError::HalfFilled.into());
        }
        Ok(Self::Store(store, None))
    }

    /// Whether nothing is missing. A running service looks itself, and its health says so.
    pub(crate) fn verify(&self) -> Result<(), StoreError> {
        match self {
            Self::Service(_) => Ok(()),
            Self::Store(store, _) => store.verify(),
        }
    }

    /// The next lines; none at the end.
    pub(crate) fn next_lines(&mut self) -> anyhow::Result<Option<Vec<Vec<u8>>>> {
        match self {
            Self::Service(control) => Ok(control.next_records()?),
            Self::Store(store, at) => {
                let records = store
                    .records(at.as_deref(), limits::COPY_RECORDS)
                    .context("cannot read the store")?;
                let Some(last) = records.last() else {
                    return Ok(None);
                };
                *at = Some(last.key.clone());
                Ok(Some(
                    records.into_iter().map(|record| record.line).collect(),
                ))
            }
        }
    }
}
