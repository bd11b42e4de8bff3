//! What the error numbers of a modem mean for a text (3GPP TS 27.005, 3.2.5, whose numbers below 128
//! are those of the network, 24.011, annex E).

use crate::words::traffic::{SendOutcome, Whose};

/// Why a session ended, in words for the person who mends it.
pub(super) type Ended = String;

/// What an error is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Whom {
    /// This text, for good.
    Refused,
    /// This text, for now.
    Later,
    /// The modem, the SIM or the network: every text.
    Gateway,
    /// The network did not say what became of it.
    Unclear,
}

pub(super) const fn kind(number: Option<u16>) -> Whom {
    match number {
        // A number that nobody has, barred, rejected, not for this SIM; what is not allowed in a
        // message.
        Some(
            1 | 8 | 10 | 21 | 28..=30 | 50 | 69 | 81 | 95..=99 | 111 | 128..=159 | 193 | 304 | 305,
        ) => Whom::Refused,
        // The phone is off or full, the centre is busy with it.
        Some(27 | 192 | 195 | 196 | 208..=213 | 500) => Whom::Later,
        // The network gave no answer in time.
        Some(332) => Whom::Unclear,
        // Congestion, no service, no SIM, its memory, and whatever the maker of the modem counts.
        _ => Whom::Gateway,
    }
}

/// What became of a text whose first part ended so.
pub(super) fn outcome(number: Option<u16>) -> SendOutcome {
    let why = match number {
        Some(number) => format!("the modem answered error {number}"),
        None => "the modem answered an error without a number".to_owned(),
    };
    let wait = |whose, why| SendOutcome::Wait {
        whose,
        after: None,
        why,
    };
    match kind(number) {
        Whom::Refused => SendOutcome::Refused {
            code: number.map(|number| number.to_string()),
            why,
        },
        Whom::Later => wait(Whose::Text, why),
        Whom::Gateway => wait(Whose::Gateway, why),
        Whom::Unclear => SendOutcome::Unknown { why },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // 3GPP TS 27.005, 3.2.5, and 24.011, annex E.
    #[test]
    fn errors_are_sorted_by_whom_they_are_about() {
        for (number, expected) in [
            (Some(38), Whom::Gateway),
            (Some(42), Whom::Gateway),
            (Some(322), Whom::Gateway),
            (Some(331), Whom::Gateway),
            (Some(500), Whom::Later),
            (Some(27), Whom::Later),
            (Some(21), Whom::Refused),
            (Some(304), Whom::Refused),
            (Some(332), Whom::Unclear),
            (None, Whom::Gateway),
        ] {
            assert_eq!(kind(number), expected, "{number:?}");
        }
    }
}
