//! What left in a month, as stored.

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};

use super::Fault;
use crate::words::ledger::{Ledger, Sent};

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct StoredLedger {
    month: NaiveDate,
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    sent: Vec<StoredSent>,
    #[serde(default, skip_serializing_if = "is_zero")]
    warned_pct: u32,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    told_on: Option<NaiveDate>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct StoredSent {
    gateway: String,
    parts: u64,
    micro: u64,
}

#[expect(
    clippy::trivially_copy_pass_by_ref,
    reason = "serde passes what it may skip by reference"
)]
const fn is_zero(pct: &u32) -> bool {
    *pct == 0
}

impl From<&Ledger> for StoredLedger {
    fn from(ledger: &Ledger) -> Self {
        let sent = ledger.sent.iter().map(|(gateway, sent)| StoredSent {
            gateway: gateway.clone(),
            parts: sent.parts,
            micro: sent.micro,
        });
        Self {
            month: ledger.month,
            sent: sent.collect(),
            warned_pct: ledger.warned_pct,
            told_on: ledger.told_on,
        }
    }
}

impl TryFrom<StoredLedger> for Ledger {
    type Error = Fault;

    fn try_from(stored: StoredLedger) -> Result<Self, Fault> {
        let sent = stored.sent.into_iter().map(|sent| {
            let StoredSent { parts, micro, .. } = sent;
            (sent.gateway, Sent { parts, micro })
        });
        Ok(Self {
            month: stored.month,
            sent: sent.collect(),
            warned_pct: stored.warned_pct,
            told_on: stored.told_on,
        })
    }
}
