//! What the error codes of a centre mean for a text (SMPP 3.4, 5.1.3).

use crate::words::{
    limits,
    traffic::{SendOutcome, Whose},
};

const QUEUE_FULL: u32 = 0x14;
const THROTTLED: u32 = 0x58;

/// Whether the centre takes less for now.
pub(super) const fn is_throttled(status: u32) -> bool {
    matches!(status, QUEUE_FULL | THROTTLED)
}

/// What became of a text whose first part was answered with this error: the centre has none of it.
pub(super) fn outcome(status: u32) -> SendOutcome {
    let why = format!("the centre answered {status:#x}");
    match status {
        QUEUE_FULL | THROTTLED => SendOutcome::Wait {
            whose: Whose::Gateway,
            after: None,
            why,
        },
        // The bind, the source address, the service: the same for every text, so our set-up is
        // wrong; refusing would throw away texts that are good.
        0x03..=0x05 | 0x0a | 0x0d..=0x0f | 0x15 | 0x48 | 0x49 | 0x53 | 0x61 => SendOutcome::Wait {
            whose: Whose::SetUp,
            after: Some(limits::SETUP_RETRY_AFTER),
            why: format!("{why}; check the account, the source address and what it may do"),
        },
        // A system error, a failed submission, temporary errors of the application.
        0x08 | 0x45 | 0x64 | 0x65 | 0x66 => SendOutcome::Wait {
            whose: Whose::Text,
            after: None,
            why,
        },
        _ => SendOutcome::Refused {
            code: Some(format!("{status:x}")),
            why,
        },
    }
}

/// Why a bind was refused.
pub(super) fn why_no_bind(status: u32) -> String {
    let what = match status {
        0x05 => "the account is bound already; an old line may not have ended yet",
        0x0d => "the bind failed",
        0x0e => "the password is wrong",
        0x0f => "the system_id is wrong",
        0x53 => "the system_type is wrong",
        _ => "see the code in the centre's manual",
    };
    format!("the centre refused the bind ({status:#x}): {what}")
}

#[cfg(test)]
mod tests {
    use super::*;

    // SMPP 3.4, 5.1.3, table 5-2.
    #[test]
    fn errors_of_the_text_of_the_gateway_and_of_the_moment_are_told_apart() {
        for (status, whose) in [
            (0x58, Some(Whose::Gateway)),
            (0x14, Some(Whose::Gateway)),
            (0x0a, Some(Whose::SetUp)),
            (0x08, Some(Whose::Text)),
            (0x0b, None),
            (0x33, None),
            (0x400, None),
        ] {
            let found = match outcome(status) {
                SendOutcome::Wait { whose, .. } => Some(whose),
                SendOutcome::Refused { code, .. } => {
                    assert_eq!(code, Some(format!("{status:x}")));
                    None
                }
                other @ (SendOutcome::Accepted { .. } | SendOutcome::Unknown { .. }) => {
                    panic!("{other:?}")
                }
            };
            assert_eq!(found, whose, "{status:x}");
        }
    }
}
