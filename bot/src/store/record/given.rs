//! What was given to partners, and outlines of blocks, as stored.

use budwood_scheduler::BlockId;
use chrono::{DateTime, NaiveDate, Utc};
use serde::{Deserialize, Serialize};

use super::{Fault, instant, name_fault};
use crate::words::{
    given::{Given, ParcelKind},
    outline::{HowTaken, TakenOutline},
};

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredGiven {
    number: u32,
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    what: String,
    to: String,
    purpose: String,
    people: u32,
    blocks: u32,
    sha256: String,
}

impl From<&Given> for StoredGiven {
    fn from(given: &Given) -> Self {
        Self {
            number: given.number,
            at: given.at,
            what: given.kind.name().to_owned(),
            to: given.to.clone(),
            purpose: given.purpose.clone(),
            people: given.people,
            blocks: given.blocks,
            sha256: given.sha256.clone(),
        }
    }
}

impl TryFrom<StoredGiven> for Given {
    type Error = Fault;

    fn try_from(stored: StoredGiven) -> Result<Self, Fault> {
        let kind = ParcelKind::from_name(&stored.what);
        Ok(Self {
            number: stored.number,
            at: stored.at,
            kind: kind.ok_or_else(|| name_fault("parcel", &stored.what))?,
            to: stored.to,
            purpose: stored.purpose,
            people: stored.people,
            blocks: stored.blocks,
            sha256: stored.sha256,
        })
    }
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredOutline {
    block: u32,
    /// Latitude and longitude of each.
    corners: Vec<(f64, f64)>,
    how: String,
    on: NaiveDate,
}

impl From<&TakenOutline> for StoredOutline {
    fn from(outline: &TakenOutline) -> Self {
        Self {
            block: outline.block.0,
            corners: outline.corners.clone(),
            how: outline.how.name().to_owned(),
            on: outline.on,
        }
    }
}

impl TryFrom<StoredOutline> for TakenOutline {
    type Error = Fault;

    fn try_from(stored: StoredOutline) -> Result<Self, Fault> {
        let how = HowTaken::from_name(&stored.how);
        Ok(Self {
            block: BlockId(stored.block),
            corners: stored.corners,
            how: how.ok_or_else(|| name_fault("way to take an outline", &stored.how))?,
            on: stored.on,
        })
    }
}
