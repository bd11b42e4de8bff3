//! Texts that wait for a person, promises, somebody who is being taken out, and months: with every key and with
//! few.

use budwood::words::{
    erasure::{Erasure, UsedNumber},
    ledger::Ledger,
    matter::Matter,
    message::Audience,
    printed::Printed,
    promise::Promise,
};
use budwood_parser::Alarm;
use budwood_scheduler::{BlockId, GroupId, MessageId, PersonId, decide::Concern};

use super::{at, day};

pub(super) fn matters() -> Vec<Matter> {
    let matter = Matter {
        message: MessageId(7),
        at: at(1, 9),
        person: PersonId(1),
        number: "+447700900101".to_owned(),
        concern: Concern::Alarm(Alarm::Snake),
        text: "snake bit my son".to_owned(),
        read_at: Some(at(1, 10)),
        read_by: Some(PersonId(5)),
        passed_to: Some(PersonId(4)),
        told: 1,
        tell_at: Some(at(1, 12)),
    };
    let question = Matter {
        message: MessageId(8),
        concern: Concern::Question,
        read_at: None,
        read_by: None,
        passed_to: None,
        told: 0,
        tell_at: None,
        ..matter.clone()
    };
    vec![matter, question]
}

pub(super) fn sheet() -> Printed {
    Printed {
        number: 12,
        group: GroupId(1),
        at: at(1, 9),
        rows: vec![BlockId(1), BlockId(2)],
    }
}

pub(super) fn promises() -> Vec<Promise> {
    let to_one = Promise {
        message: MessageId(9),
        number: 1,
        at: at(1, 9),
        by: PersonId(4),
        to: Audience::Person(PersonId(1)),
        on: day(1, 12),
        words: "call Tamo \u{1f333} \"Friday\"".to_owned(),
    };
    let to_all = Promise {
        message: MessageId(10),
        number: 2,
        to: Audience::Group(GroupId(1)),
        words: String::new(),
        ..to_one.clone()
    };
    vec![to_one, to_all]
}

pub(super) fn erasure() -> Erasure {
    let shared = UsedNumber {
        number: "+447700900101".to_owned(),
        since: Some(day(1, 2)),
        until: Some(day(1, 8)),
    };
    let own = UsedNumber {
        number: "+447700900102".to_owned(),
        since: None,
        until: None,
    };
    Erasure {
        person: PersonId(6),
        name: "Tamo Rill 6".to_owned(),
        called: Some("Tamo".to_owned()),
        numbers: vec![shared, own],
        last: MessageId(99),
    }
}

pub(super) fn ledgers() -> Vec<Ledger> {
    let mut full = Ledger::of(at(1, 9));
    full.add("centre", 12, None);
    full.add("sim1", 4_210, Some(84_200_000));
    full.warned_pct = 80;
    full.told_on = Some(day(1, 9));
    vec![full, Ledger::of(at(2, 1))]
}
