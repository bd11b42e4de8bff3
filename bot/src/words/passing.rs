//! What an adviser lets pass from one to another, before it is done.

use budwood_scheduler::{BlockId, GroupId, PersonId};

/// What is to pass, and waits for a code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Passing {
    /// A block to another owner.
    Owner {
        /// Which.
        block: BlockId,
        /// To whom.
        to: PersonId,
    },
    /// So many living trees of a block, to be a block of their own.
    Part {
        /// Of which block.
        block: BlockId,
        /// Whose they will be.
        to: PersonId,
        /// How many.
        trees: u32,
    },
    /// A person of the list into a group.
    Join {
        /// Who.
        person: PersonId,
        /// Which group.
        group: GroupId,
    },
    /// Somebody new into a group.
    New {
        /// What they are called.
        name: String,
        /// Their number, E.164.
        number: String,
        /// Which group.
        group: GroupId,
    },
    /// A person out of their group.
    Leave {
        /// Who.
        person: PersonId,
    },
    /// The phone of whoever does the work for a person.
    Helper {
        /// For whom.
        person: PersonId,
        /// What they are called.
        name: String,
        /// Their number, E.164.
        number: String,
    },
}

impl Passing {
    /// Whether somebody of the list has a part in it.
    #[must_use]
    pub fn is_about(&self, who: PersonId) -> bool {
        match self {
            Self::Owner { to: person, .. }
            | Self::Part { to: person, .. }
            | Self::Join { person, .. }
            | Self::Leave { person }
            | Self::Helper { person, .. } => *person == who,
            Self::New { .. } => false,
        }
    }

    /// A name and a number that are not on the list.
    #[must_use]
    pub fn names(&self) -> String {
        match self {
            Self::New { name, number, .. } | Self::Helper { name, number, .. } => {
                format!("{name} {number}")
            }
            Self::Owner { .. } | Self::Part { .. } | Self::Join { .. } | Self::Leave { .. } => {
                String::new()
            }
        }
    }
}
