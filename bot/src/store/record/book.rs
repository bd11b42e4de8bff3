//! The books of a group as stored, and what is entered in them.

use budwood_scheduler::{
    Book, Entered, PersonId,
    land::book::{AskedRound, Buying, Lot, Training},
};
use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::{
    Fault,
    details::{cause, kind},
};

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(super) enum StoredEntered {
    Trained {
        kind: String,
        on: NaiveDate,
        came: Vec<u32>,
    },
    Buying {
        on: NaiveDate,
        bag_cents: u64,
    },
    Paid {
        person: u32,
        cents: u64,
    },
    Stocked {
        nursery: u32,
        clone: Option<String>,
        plants: u32,
        ready_on: NaiveDate,
    },
    Sent {
        nursery: u32,
        clone: Option<String>,
        plants: u32,
        on: NaiveDate,
    },
    Asked {
        cause: String,
        on: NaiveDate,
        people: Vec<u32>,
    },
    PickUp {
        on: NaiveDate,
    },
}

impl From<&Entered> for StoredEntered {
    fn from(entered: &Entered) -> Self {
        match entered {
            Entered::Trained { kind, on, came } => Self::Trained {
                kind: kind.name().to_owned(),
                on: *on,
                came: came.iter().map(|person| person.0).collect(),
            },
            Entered::Asked { cause, on, people } => Self::Asked {
                cause: cause.name().to_owned(),
                on: *on,
                people: people.iter().map(|person| person.0).collect(),
            },
            Entered::Buying { on, bag_cents } => Self::Buying {
                on: *on,
                bag_cents: *bag_cents,
            },
            Entered::PickUp { on } => Self::PickUp { on: *on },
            Entered::Paid { person, cents } => Self::Paid {
                person: person.0,
                cents: *cents,
            },
            Entered::Stocked {
                nursery,
                clone_name,
                plants,
                ready_on,
            } => Self::Stocked {
                nursery: nursery.0,
                clone: clone_name.clone(),
                plants: *plants,
                ready_on: *ready_on,
            },
            Entered::Sent {
                nursery,
                clone_name,
                plants,
                on,
            } => Self::Sent {
                nursery: nursery.0,
                clone: clone_name.clone(),
                plants: *plants,
                on: *on,
            },
        }
    }
}

impl StoredEntered {
    pub(super) fn open(self) -> Result<Entered, Fault> {
        Ok(match self {
            Self::Trained {
                kind: name,
                on,
                came,
            } => Entered::Trained {
                kind: kind(&name)?,
                on,
                came: came.into_iter().map(PersonId).collect(),
            },
            Self::Asked {
                cause: name,
                on,
                people,
            } => Entered::Asked {
                cause: cause(&name)?,
                on,
                people: people.into_iter().map(PersonId).collect(),
            },
            Self::Buying { on, bag_cents } => Entered::Buying { on, bag_cents },
            Self::PickUp { on } => Entered::PickUp { on },
            Self::Paid { person, cents } => Entered::Paid {
                person: PersonId(person),
                cents,
            },
            Self::Stocked {
                nursery,
                clone,
                plants,
                ready_on,
            } => Entered::Stocked {
                nursery: PersonId(nursery),
                clone_name: clone,
                plants,
                ready_on,
            },
            Self::Sent {
                nursery,
                clone,
                plants,
                on,
            } => Entered::Sent {
                nursery: PersonId(nursery),
                clone_name: clone,
                plants,
                on,
            },
        })
    }
}

#[derive(Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredBook {
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    trainings: Vec<StoredTraining>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    buying: Option<StoredBuying>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    lots: Vec<StoredLot>,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    asked: Vec<StoredRound>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pick_up: Option<NaiveDate>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredRound {
    cause: String,
    on: NaiveDate,
    people: Vec<u32>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredTraining {
    kind: String,
    on: NaiveDate,
    came: Vec<u32>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredBuying {
    on: Option<NaiveDate>,
    bag_cents: Option<u64>,
    paid: Vec<(u32, u64)>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredLot {
    nursery: u32,
    clone: Option<String>,
    plants: u32,
    ready_on: NaiveDate,
    sent: u32,
}

impl StoredBook {
    pub(super) const fn is_empty(&self) -> bool {
        self.trainings.is_empty()
            && self.buying.is_none()
            && self.lots.is_empty()
            && self.asked.is_empty()
            && self.pick_up.is_none()
    }

    pub(super) fn open(self) -> Result<Book, Fault> {
        let trainings = self.trainings.into_iter().map(|stored| {
            Ok(Training {
                kind: kind(&stored.kind)?,
                on: stored.on,
                came: stored.came.into_iter().map(PersonId).collect(),
            })
        });
        let buying = self.buying.map(|stored| {
            let paid = stored.paid.into_iter();
            Buying {
                on: stored.on,
                bag_cents: stored.bag_cents,
                paid: paid
                    .map(|(person, cents)| (PersonId(person), cents))
                    .collect(),
            }
        });
        let lots = self.lots.into_iter().map(|stored| Lot {
            nursery: PersonId(stored.nursery),
            clone_name: stored.clone,
            plants: stored.plants,
            ready_on: stored.ready_on,
            sent: stored.sent,
        });
        let asked = self.asked.into_iter().map(|stored| {
            Ok(AskedRound {
                cause: cause(&stored.cause)?,
                on: stored.on,
                people: stored.people.into_iter().map(PersonId).collect(),
            })
        });
        Ok(Book {
            trainings: trainings.collect::<Result<_, Fault>>()?,
            buying,
            lots: lots.collect(),
            asked: asked.collect::<Result<_, Fault>>()?,
            pick_up: self.pick_up,
        })
    }
}

impl From<&Book> for StoredBook {
    fn from(book: &Book) -> Self {
        let trainings = book.trainings.iter().map(|training| StoredTraining {
            kind: training.kind.name().to_owned(),
            on: training.on,
            came: training.came.iter().map(|person| person.0).collect(),
        });
        let buying = book.buying.as_ref().map(|buying| StoredBuying {
            on: buying.on,
            bag_cents: buying.bag_cents,
            paid: buying
                .paid
                .iter()
                .map(|(person, cents)| (person.0, *cents))
                .collect(),
        });
        let lots = book.lots.iter().map(|lot| StoredLot {
            nursery: lot.nursery.0,
            clone: lot.clone_name.clone(),
            plants: lot.plants,
            ready_on: lot.ready_on,
            sent: lot.sent,
        });
        let asked = book.asked.iter().map(|round| StoredRound {
            cause: round.cause.name().to_owned(),
            on: round.on,
            people: round.people.iter().map(|person| person.0).collect(),
        });
        Self {
            trainings: trainings.collect(),
            buying,
            lots: lots.collect(),
            asked: asked.collect(),
            pick_up: book.pick_up,
        }
    }
}
