//! What the error codes of a centre mean for a text (SMPP 3.4, 5.1.3).

use crate::words::{
    limits,
    traffic::{SendOutcome, Whose},
};

const QUEUE_FULL: u32 = 0x14;
const THROTTLED: u32 = 0x58;

/// Errors of the moment, of this text: a system error, a failed submission, temporary and unknown
/// errors.
const LATER: [u32; 7] = [0x08, 0x45, 0x64, 0x65, 0x66, 0xfe, 0xff];

/// The bind, the source address, the service, flags and parameters that each text has: the same for
/// every text, so our set-up is wrong; refusing would throw away texts that are good.
const SET_UP: [u32; 21] = [
    0x03, 0x04, 0x05, 0x06, 0x07, 0x0a, 0x0d, 0x0e, 0x0f, 0x15, 0x43, 0x48, 0x49, 0x53, 0x61, 0x62,
    0xc0, 0xc1, 0xc2, 0xc3, 0xc4,
];

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
        _ if SET_UP.contains(&status) => SendOutcome::Wait {
            whose: Whose::SetUp,
            after: Some(limits::SETUP_RETRY_AFTER),
            why: format!(
                "{why}; check the account, the source address, long_texts and what it may do"
            ),
        },
        // What a centre means by an error of its own nobody can know: it is tried again a few times.
        0x400..=0x4ff => wait_of_text(why),
        _ if LATER.contains(&status) => wait_of_text(why),
        _ => SendOutcome::Refused {
            code: Some(format!("{status:x}")),
            why,
        },
    }
}

/// What became of a text whose first part the centre could not read as a message.
pub(super) fn outcome_of_nack(status: u32) -> SendOutcome {
    match status {
        // 5.1.3: no error at all; the length of the message, of the command, the command.
        0..=0x03 => wait_of_text(format!(
            "the centre could not read the message ({status:#x})"
        )),
        _ => outcome(status),
    }
}

const fn wait_of_text(why: String) -> SendOutcome {
    SendOutcome::Wait {
        whose: Whose::Text,
        after: None,
        why,
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

    /// Who is to wait; none where the text is refused.
    fn whose(status: u32, outcome: SendOutcome) -> Option<Whose> {
        match outcome {
            SendOutcome::Wait { whose, .. } => Some(whose),
            SendOutcome::Refused { code, .. } => {
                assert_eq!(code, Some(format!("{status:x}")));
                None
            }
            other @ (SendOutcome::Accepted { .. } | SendOutcome::Unknown { .. }) => {
                panic!("{other:?}")
            }
        }
    }

    // SMPP 3.4, 5.1.3, table 5-2.
    #[test]
    fn errors_of_the_text_of_the_gateway_and_of_the_moment_are_told_apart() {
        for (status, expected) in [
            (0x58, Some(Whose::Gateway)),
            (0x14, Some(Whose::Gateway)),
            (0x0a, Some(Whose::SetUp)),
            (0x43, Some(Whose::SetUp)),
            (0xc1, Some(Whose::SetUp)),
            (0x08, Some(Whose::Text)),
            (0xff, Some(Whose::Text)),
            (0x400, Some(Whose::Text)),
            (0x4ff, Some(Whose::Text)),
            (0x0b, None),
            (0x33, None),
            (0x3ff, None),
            (0x500, None),
        ] {
            assert_eq!(whose(status, outcome(status)), expected, "{status:x}");
        }
    }

    #[test]
    fn a_message_that_was_not_read_is_no_fault_of_the_number() {
        for status in 0..=3 {
            let found = whose(status, outcome_of_nack(status));
            assert_eq!(found, Some(Whose::Text), "{status:x}");
        }
        let throttled = whose(0x58, outcome_of_nack(0x58));
        assert_eq!(throttled, Some(Whose::Gateway));
    }
}
