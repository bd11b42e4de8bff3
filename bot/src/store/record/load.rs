//! The last list that was taken in, as stored.

use budwood_scheduler::{Block, EventId, Group, Person, Phone};
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use super::{
    Fault,
    directory::{StoredBlock, StoredGroup, StoredPerson, StoredPhone},
    instant,
};
use crate::words::load::{Load, Was};

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredLoad {
    #[serde(serialize_with = "instant::one")]
    at: DateTime<Utc>,
    next: u64,
    facts: Vec<u64>,
    groups: Vec<StoredWas<StoredGroup>>,
    persons: Vec<StoredWas<StoredPerson>>,
    phones: Vec<StoredWas<StoredPhone>>,
    blocks: Vec<StoredWas<StoredBlock>>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredWas<T> {
    #[serde(default = "Option::default", skip_serializing_if = "Option::is_none")]
    before: Option<T>,
    after: T,
}

fn stored<'a, T, S: From<&'a T>>(all: &'a [Was<T>]) -> Vec<StoredWas<S>> {
    let one = |was: &'a Was<T>| StoredWas {
        before: was.before.as_ref().map(Into::into),
        after: (&was.after).into(),
    };
    all.iter().map(one).collect()
}

fn opened<T, S>(all: Vec<StoredWas<S>>) -> Result<Vec<Was<T>>, Fault>
where
    T: TryFrom<S, Error = Fault>,
{
    let one = |was: StoredWas<S>| {
        Ok(Was {
            before: was.before.map(T::try_from).transpose()?,
            after: was.after.try_into()?,
        })
    };
    all.into_iter().map(one).collect()
}

impl From<&Load> for StoredLoad {
    fn from(load: &Load) -> Self {
        Self {
            at: load.at,
            next: load.next.0,
            facts: load.facts.iter().map(|fact| fact.0).collect(),
            groups: stored::<Group, _>(&load.groups),
            persons: stored::<Person, _>(&load.persons),
            phones: stored::<Phone, _>(&load.phones),
            blocks: stored::<Block, _>(&load.blocks),
        }
    }
}

impl TryFrom<StoredLoad> for Load {
    type Error = Fault;

    fn try_from(stored: StoredLoad) -> Result<Self, Fault> {
        Ok(Self {
            at: stored.at,
            next: EventId(stored.next),
            facts: stored.facts.into_iter().map(EventId).collect(),
            groups: opened(stored.groups)?,
            persons: opened(stored.persons)?,
            phones: opened(stored.phones)?,
            blocks: opened(stored.blocks)?,
        })
    }
}
