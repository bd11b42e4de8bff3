//! A part of a text that waits for another.

use budwood::words::message::ReceivedPart;
use budwood_scheduler::MessageId;

use super::at;

pub(super) fn part() -> ReceivedPart {
    ReceivedPart {
        id: MessageId(1),
        at: at(1, 8),
        gateway: "sim1".to_owned(),
        gateway_id: "300/1/2/0a1b2c3d".to_owned(),
        from: "+447700900001".to_owned(),
        to: "12345".to_owned(),
        text: "planted 120 in the ".to_owned(),
        sent_at: Some(at(1, 8)),
        reference: 300,
        of: 2,
        number: 1,
    }
}
