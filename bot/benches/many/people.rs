//! An invented valley of any size: one farmer, one phone and one block each.

use std::sync::Arc;

use budwood::{
    engine::Setup,
    service::setup,
    store::{Change, Loaded, Record, Store, StoreError},
    words::message::Received,
};
use budwood_parser::{Measure, Unit};
use budwood_scheduler::{
    Block, BlockId, Book, Consent, Event, EventId, Group, GroupId, Person, PersonId, PersonLink,
    Phone, Role,
};
use chrono::{DateTime, NaiveDate, Utc};

/// Farmers put into a store at once.
const PART: usize = 256;

/// Farmers of one group.
const GROUP: u32 = 1_000;

pub(crate) fn setup() -> Arc<Setup> {
    setup::built_in(0).unwrap().into()
}

pub(crate) fn day(year: i32, month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

/// Noon of the day on which the benches begin.
pub(crate) fn noon() -> DateTime<Utc> {
    day(2026, 9, 1).and_hms_opt(12, 0, 0).unwrap().and_utc()
}

/// The number of a farmer; +999 belongs to no country, so that there are enough.
pub(crate) fn number(farmer: u32) -> String {
    format!("+999{farmer:09}")
}

/// A valley in which every `due_one_in`th block is to be planted soon, and the others much later.
/// None is due soon with 0.
pub(crate) fn valley(farmers: u32, due_one_in: u32) -> Change {
    let soon = |farmer: u32| due_one_in > 0 && farmer.is_multiple_of(due_one_in);
    Change {
        groups: (0..=farmers / GROUP).map(group).collect(),
        persons: (0..farmers).map(person).collect(),
        phones: (0..farmers).map(phone).collect(),
        blocks: (0..farmers)
            .map(|farmer| block(farmer, soon(farmer)))
            .collect(),
        ..Change::default()
    }
}

/// Puts a valley into a store, no more at once than the service would.
pub(crate) fn settle(store: &dyn Store, farmers: u32, due_one_in: u32) {
    let whole = valley(farmers, due_one_in);
    let mut parts = (
        whole.persons.chunks(PART),
        whole.phones.chunks(PART),
        whole.blocks.chunks(PART),
    );
    let groups = Change {
        groups: whole.groups.clone(),
        ..Change::default()
    };
    store.commit(&groups).unwrap();
    while let (Some(persons), Some(phones), Some(blocks)) =
        (parts.0.next(), parts.1.next(), parts.2.next())
    {
        let part = Change {
            persons: persons.to_vec(),
            phones: phones.to_vec(),
            blocks: blocks.to_vec(),
            ..Change::default()
        };
        store.commit(&part).unwrap();
    }
}

fn group(id: u32) -> Group {
    Group {
        id: GroupId(id),
        name: format!("G{id}"),
        adviser: None,
        zone: "UTC".to_owned(),
        calendar: "fao".to_owned(),
        market_day: None,
        quiet_days: Vec::new(),
        rains_start: Some((11, 1)),
        rains_end: Some((4, 30)),
        second_rains: None,
        window_opened: None,
        book: Book::default(),
    }
}

fn person(id: u32) -> Person {
    Person {
        id: PersonId(id),
        name: format!("Farmer {id}"),
        role: Role::Farmer,
        language: "en".to_owned(),
        group: Some(GroupId(id / GROUP)),
        consent: Consent::Given {
            on: day(2026, 8, 1),
            how: "signed sheet".to_owned(),
        },
        sharing: Consent::Unknown,
        erased: false,
        hold: None,
    }
}

fn phone(farmer: u32) -> Phone {
    Phone {
        number: number(farmer),
        links: vec![PersonLink {
            person: PersonId(farmer),
            since: day(2026, 8, 1),
            until: None,
            helper: None,
        }],
        lost_on: None,
    }
}

fn block(id: u32, soon: bool) -> Block {
    Block {
        id: BlockId(id),
        owner: PersonId(id),
        name: "A".to_owned(),
        area: Some(Measure {
            value: 0.8,
            unit: Unit::Hectare,
        }),
        area_source: "told".to_owned(),
        slope_pct: None,
        spacing_m: None,
        point: None,
        planned_on: Some(if soon {
            day(2026, 12, 1)
        } else {
            day(2036, 12, 1)
        }),
        clone_name: None,
    }
}

/// A store that has this and keeps nothing: for the cost of the engine alone.
pub(crate) struct Nowhere(pub(crate) Loaded);

impl Store for Nowhere {
    fn commit(&self, _: &Change) -> Result<(), StoreError> {
        Ok(())
    }
    fn load(&self, _: usize) -> Result<Loaded, StoreError> {
        Ok(self.0.clone())
    }
    fn event(&self, _: EventId) -> Result<Option<Event>, StoreError> {
        Ok(None)
    }
    fn each_event(&self, _: &mut dyn FnMut(Event)) -> Result<(), StoreError> {
        Ok(())
    }
    fn each_received(&self, _: &mut dyn FnMut(Received)) -> Result<(), StoreError> {
        Ok(())
    }
    fn received_since(
        &self,
        _: DateTime<Utc>,
        _: &mut dyn FnMut(Received),
    ) -> Result<(), StoreError> {
        Ok(())
    }
    fn records(&self, _: Option<&[u8]>, _: usize) -> Result<Vec<Record>, StoreError> {
        Ok(Vec::new())
    }
    fn record(&self, _: &[u8]) -> Result<Option<Record>, StoreError> {
        Ok(None)
    }
}

impl Nowhere {
    pub(crate) fn with(change: Change) -> Self {
        Self(Loaded {
            persons: change.persons,
            phones: change.phones,
            groups: change.groups,
            blocks: change.blocks,
            ..Loaded::default()
        })
    }
}
