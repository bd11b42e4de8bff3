//! How land and people pass from one to another: a block has another owner, a part of it becomes a
//! block of its own, somebody comes to a group or leaves it.
//!
//! Trees that pass are told with their days and clones, so that what goes here and what comes there
//! add up to what there was.

use alloc::{string::String, vec::Vec};

use chrono::NaiveDate;

use crate::words::id::{BlockId, GroupId, PersonId};

/// Trees of one planting that pass to another block.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Trees {
    /// First day of planting.
    pub planted_on: NaiveDate,
    /// Clone, if told.
    pub clone_name: Option<String>,
    /// Places that were planted.
    pub planted: u32,
    /// Of these, dead.
    pub dead: u32,
    /// Planted into the gaps of an older planting.
    pub backfill: bool,
}

/// What passed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Passed {
    /// A block has another owner; what was told of it stays with it.
    Owner {
        /// Which.
        block: BlockId,
        /// Whose it was.
        from: PersonId,
        /// Whose it is.
        to: PersonId,
    },
    /// Trees of a block are those of another one now.
    Gave {
        /// Of which block.
        block: BlockId,
        /// Of which they are now.
        into: BlockId,
        /// Which trees.
        trees: Vec<Trees>,
    },
    /// And there they came.
    Got {
        /// To which block.
        block: BlockId,
        /// Of which they were.
        from: BlockId,
        /// Which trees.
        trees: Vec<Trees>,
    },
    /// Somebody comes to a group.
    Joined {
        /// Who.
        person: PersonId,
        /// Which group.
        group: GroupId,
    },
    /// Somebody leaves it.
    Left {
        /// Who.
        person: PersonId,
        /// Which group.
        group: GroupId,
    },
    /// Somebody else uses a phone for a person. Which number stands with the phones.
    Helper {
        /// For whom.
        person: PersonId,
    },
    /// And does so no more.
    HelperLeft {
        /// For whom.
        person: PersonId,
    },
}

impl Passed {
    /// The block that this is about, if it is about one.
    #[must_use]
    pub const fn block(&self) -> Option<BlockId> {
        match self {
            Self::Owner { block, .. } | Self::Gave { block, .. } | Self::Got { block, .. } => {
                Some(*block)
            }
            Self::Joined { .. }
            | Self::Left { .. }
            | Self::Helper { .. }
            | Self::HelperLeft { .. } => None,
        }
    }
}
