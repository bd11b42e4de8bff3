//! The books of a group, with every kind of entry.

use budwood_parser::{Cause, Kind};
use budwood_scheduler::{Book, Entered, PersonId};

use super::day;

pub(super) fn entries() -> Vec<Entered> {
    let clone_name = Some("GT1".to_owned());
    vec![
        Entered::Trained {
            kind: Kind::BranchInduction,
            on: day(1, 12),
            came: vec![PersonId(2), PersonId(4)],
        },
        Entered::Buying {
            on: day(2, 6),
            bag_cents: 3_650,
        },
        Entered::Paid {
            person: PersonId(2),
            cents: 4_740,
        },
        Entered::Asked {
            cause: Cause::Wind,
            on: day(1, 20),
            people: vec![PersonId(2), PersonId(4)],
        },
        Entered::Stocked {
            nursery: PersonId(5),
            clone_name: clone_name.clone(),
            plants: 600,
            ready_on: day(3, 1),
        },
        Entered::Sent {
            nursery: PersonId(5),
            clone_name,
            plants: 200,
            on: day(3, 2),
        },
        Entered::PickUp { on: day(3, 5) },
    ]
}

pub(super) fn book() -> Book {
    let mut book = Book::default();
    for entered in &entries() {
        book.enter(entered);
    }
    book
}
