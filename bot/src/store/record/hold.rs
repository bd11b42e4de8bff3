//! What may be done with a store, as stored.

use budwood_scheduler::MessageId;
use chrono::{DateTime, Utc};
use serde::{Deserialize, Serialize};

use super::Fault;
use crate::store::Hold;

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(super) enum StoredHold {
    Free,
    Held { since: DateTime<Utc> },
    Filling,
    Released { next_message: u64 },
}

impl From<&Hold> for StoredHold {
    fn from(hold: &Hold) -> Self {
        match hold {
            Hold::Free => Self::Free,
            Hold::Held { since } => Self::Held { since: *since },
            Hold::Filling => Self::Filling,
            Hold::Released { next_message } => Self::Released {
                next_message: next_message.0,
            },
        }
    }
}

impl TryFrom<StoredHold> for Hold {
    type Error = Fault;

    fn try_from(stored: StoredHold) -> Result<Self, Fault> {
        Ok(match stored {
            StoredHold::Free => Self::Free,
            StoredHold::Held { since } => Self::Held { since },
            StoredHold::Filling => Self::Filling,
            StoredHold::Released { next_message } => Self::Released {
                next_message: MessageId(next_message),
            },
        })
    }
}
