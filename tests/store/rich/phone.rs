//! Phones: of one person, of several, and one that is lost.

use budwood_scheduler::{PersonId, PersonLink, Phone};

use super::day;

pub(super) fn phones() -> Vec<Phone> {
    let link = |person, until| PersonLink {
        person: PersonId(person),
        since: day(1, 1),
        until,
        helper: None,
    };
    vec![
        Phone {
            number: "+447700900001".to_owned(),
            links: vec![link(1, None)],
            lost_on: None,
        },
        Phone {
            number: "+447700900002".to_owned(),
            links: vec![link(2, None), link(4, None), link(5, Some(day(1, 5)))],
            lost_on: Some(day(1, 7)),
        },
    ]
}
