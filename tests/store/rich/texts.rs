//! Texts in and out, with every key and with few, in every state.

use budwood::words::message::{Outbound, Purpose, Received, SendState};
use budwood_scheduler::{BlockId, MessageId, PersonId, TaskKind};

use super::{at, day};

pub(super) fn received() -> Vec<Received> {
    let full = Received {
        id: MessageId(1),
        at: at(1, 9),
        gateway: "http".to_owned(),
        gateway_id: Some("wamp-7/0".to_owned()),
        parts: vec!["wamp-7/0".to_owned(), "wamp-8/0".to_owned()],
        from: "+447700900001".to_owned(),
        to: "12345".to_owned(),
        text: "dead 8 \u{0}\u{202e}\u{1f333}\n\"B\"".to_owned(),
        sent_at: Some(at(1, 8)),
        outcome: "recorded".to_owned(),
    };
    let bare = Received {
        id: MessageId(2),
        gateway_id: None,
        parts: Vec::new(),
        sent_at: None,
        text: String::new(),
        ..full.clone()
    };
    vec![full, bare]
}

pub(super) fn outbound() -> Vec<Outbound> {
    let purposes = [
        Purpose::Answer { to: MessageId(1) },
        Purpose::Nudge {
            block: BlockId(1),
            task: TaskKind::Weed,
            due: day(1, 7),
        },
        Purpose::Notice {
            about: MessageId(2),
        },
        Purpose::Welcome {
            person: PersonId(3),
        },
        Purpose::Announcement {
            person: PersonId(3),
            by: MessageId(2),
        },
        Purpose::Service { on: day(1, 9) },
    ];
    let ids = |ids: &[&str]| ids.iter().map(|id| (*id).to_owned()).collect();
    (10_u64..)
        .zip(SendState::ALL)
        .zip(purposes.into_iter().cycle())
        .map(|((id, state), purpose)| {
            let is_sent = state == SendState::Sent;
            let text = "Tamo, please weed the rows of B.".to_owned();
            let new = Outbound::new(
                MessageId(id),
                at(1, 9),
                "+447700900001",
                text,
                purpose,
                at(1, 12),
            );
            Outbound {
                state,
                tries: u32::from(state != SendState::Ready),
                gateway: (state != SendState::Ready).then(|| "sim1".to_owned()),
                ids: ids(if is_sent { &["p-99", "p-100"] } else { &[] }),
                arrived: ids(if is_sent { &["p-100"] } else { &[] }),
                sent_at: is_sent.then(|| at(1, 10)),
                settled_at: state.is_final().then(|| at(1, 11)),
                code: (state == SendState::Failed).then(|| "SVC0004".to_owned()),
                price_micro: (state == SendState::Delivered).then_some(20_000),
                ..new
            }
        })
        .collect()
}
