//! A list that was taken in: somebody new, and somebody changed. What a partner got, and an outline.

use budwood::words::{
    given::{Given, ParcelKind},
    load::{Load, Was},
    outline::{HowTaken, TakenOutline},
};
use budwood_scheduler::{BlockId, EventId};

use super::{at, day};

pub(super) fn load() -> Load {
    let mut persons = super::persons().into_iter();
    let mut changed = Was {
        before: persons.next(),
        after: persons.next().expect("two people"),
    };
    changed.after.id = changed.before.as_ref().expect("one").id;
    Load {
        at: at(1, 9),
        next: EventId(12),
        facts: vec![EventId(10), EventId(11)],
        groups: super::groups().into_iter().map(new).collect(),
        persons: vec![changed],
        phones: super::phone::phones().into_iter().map(new).collect(),
        blocks: super::blocks().into_iter().map(new).collect(),
    }
}

fn new<T>(after: T) -> Was<T> {
    Was {
        before: None,
        after,
    }
}

pub(super) fn given() -> Given {
    Given {
        number: 1,
        at: at(1, 9),
        kind: ParcelKind::Plots,
        to: "Green Gate factory".to_owned(),
        purpose: "due diligence".to_owned(),
        people: 2,
        blocks: 3,
        sha256: "00ff".to_owned(),
    }
}

pub(super) fn outline() -> TakenOutline {
    TakenOutline {
        block: BlockId(1),
        corners: vec![
            (3.133_457, 101.522_346),
            (3.135_657, 101.522_346),
            (3.135_657, 101.524_646),
        ],
        how: HowTaken::Walked,
        on: day(1, 9),
    }
}
