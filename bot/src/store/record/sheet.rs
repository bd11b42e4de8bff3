//! Sheets that were printed, as stored.

use budwood_scheduler::{BlockId, GroupId};
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use super::{Fault, instant};
use crate::words::printed::Printed;

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredSheet {
    number: u32,
    group: u32,
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    /// The block of each row.
    rows: Vec<u32>,
}

impl From<&Printed> for StoredSheet {
    fn from(sheet: &Printed) -> Self {
        Self {
            number: sheet.number,
            group: sheet.group.0,
            at: sheet.at,
            rows: sheet.rows.iter().map(|block| block.0).collect(),
        }
    }
}

impl TryFrom<StoredSheet> for Printed {
    type Error = Fault;

    fn try_from(stored: StoredSheet) -> Result<Self, Fault> {
        Ok(Self {
            number: stored.number,
            group: GroupId(stored.group),
            at: stored.at,
            rows: stored.rows.into_iter().map(BlockId).collect(),
        })
    }
}
