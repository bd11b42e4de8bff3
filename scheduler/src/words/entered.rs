//! What is entered in the books of a group: trainings, money for fertiliser, plants of nurseries,
//! rounds of asking.

use alloc::{string::String, vec::Vec};

use budwood_parser::{Cause, Kind};
use chrono::NaiveDate;

use crate::words::id::PersonId;

/// One entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Entered {
    /// People were shown how a kind of work is done.
    Trained {
        /// Which work.
        kind: Kind,
        /// When.
        on: NaiveDate,
        /// Who came.
        came: Vec<PersonId>,
    },
    /// Fertiliser will be bought together.
    Buying {
        /// On which day.
        on: NaiveDate,
        /// What a bag costs, in hundredths of the money.
        bag_cents: u64,
    },
    /// Somebody has paid so much for it, in all.
    Paid {
        /// Who.
        person: PersonId,
        /// How much, in hundredths of the money.
        cents: u64,
    },
    /// A nursery has so many plants of a clone for the group.
    Stocked {
        /// Who raises them.
        nursery: PersonId,
        /// Of which clone, if it is told.
        clone_name: Option<String>,
        /// How many.
        plants: u32,
        /// The day from which they are ready.
        ready_on: NaiveDate,
    },
    /// People were asked what a storm, a fire, a flood or a drought did to their trees.
    Asked {
        /// Which of these.
        cause: Cause,
        /// When.
        on: NaiveDate,
        /// Who was asked.
        people: Vec<PersonId>,
    },
    /// A nursery gave out so many plants of a clone.
    Sent {
        /// Who raised them.
        nursery: PersonId,
        /// Of which clone, if it is told.
        clone_name: Option<String>,
        /// How many.
        plants: u32,
        /// When.
        on: NaiveDate,
    },
    /// Plants are given out.
    PickUp {
        /// On which day.
        on: NaiveDate,
    },
}
