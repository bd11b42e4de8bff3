//! Which texts came lately, so that a second delivery has no second effect.
//!
//! A gateway that was not answered in time delivers again under the same id. A network that
//! missed an acknowledgement, or a second gateway for the same number, delivers again under
//! another one. A farmer who sends the same again is something else: that is for `inbound`.

use std::collections::{HashMap, HashSet, VecDeque};

use chrono::{DateTime, TimeDelta, Utc};

use crate::{
    engine::outcome::Outcome,
    words::{
        limits,
        message::{Received, ReceivedPart},
    },
};

/// A gateway and its id of a text.
type GatewayText = (String, String);

/// A sender and their text.
type SenderText = (String, String);

/// Texts that came lately.
#[derive(Default)]
pub(crate) struct Heard {
    ids: HashSet<GatewayText>,
    /// The same, oldest first, to forget by.
    ids_in_order: VecDeque<GatewayText>,
    texts: HashMap<SenderText, Delivery>,
    /// The same, oldest first, each with when it came.
    texts_in_order: VecDeque<(SenderText, DateTime<Utc>)>,
}

/// How a text came.
#[derive(Clone, Debug)]
pub(crate) struct Delivery {
    /// Through which gateway.
    pub(crate) gateway: String,
    /// When it was sent, if that is known and can be believed.
    pub(crate) sent_at: Option<DateTime<Utc>>,
    /// When it came.
    pub(crate) at: DateTime<Utc>,
}

impl Heard {
    /// Keeps a text of the store in mind.
    pub(crate) fn recall(&mut self, received: Received) {
        if received.outcome != Outcome::DeliveredTwice.name() {
            let delivery = Delivery {
                gateway: received.gateway.clone(),
                sent_at: received.sent_at,
                at: received.at,
            };
            self.keep_text(&received.from, &received.text, delivery);
        }
        for part in received.parts {
            self.is_new_id((received.gateway.clone(), part));
        }
        if let Some(gateway_id) = received.gateway_id {
            self.is_new_id((received.gateway, gateway_id));
        }
    }

    /// Keeps a part of the store in mind.
    pub(crate) fn recall_part(&mut self, part: &ReceivedPart) {
        self.is_new_id((part.gateway.clone(), part.gateway_id.clone()));
    }

    /// Whether a gateway's id is new; it is not new a second time.
    pub(crate) fn is_new_id(&mut self, text: GatewayText) -> bool {
        let is_new = self.ids.insert(text.clone());
        if is_new {
            self.ids_in_order.push_back(text);
        }
        if self.ids_in_order.len() > limits::RECENT_MESSAGES
            && let Some(oldest) = self.ids_in_order.pop_front()
        {
            self.ids.remove(&oldest);
        }
        is_new
    }

    /// Whether this is a text that came before; it is kept in mind if it is not.
    pub(crate) fn came_twice(&mut self, from: &str, text: &str, delivery: Delivery) -> bool {
        let said = (from.to_owned(), text.trim().to_owned());
        let twice = self
            .texts
            .get(&said)
            .is_some_and(|first| is_same(first, &delivery));
        if !twice {
            self.keep_text(from, text, delivery);
        }
        twice
    }

    fn keep_text(&mut self, from: &str, text: &str, delivery: Delivery) {
        let said = (from.to_owned(), text.trim().to_owned());
        self.texts_in_order.push_back((said.clone(), delivery.at));
        self.texts.insert(said, delivery);
        if self.texts_in_order.len() > limits::TWICE_TEXTS
            && let Some((oldest, at)) = self.texts_in_order.pop_front()
            // The same words may have come again since.
            && self.texts.get(&oldest).is_some_and(|kept| kept.at == at)
        {
            self.texts.remove(&oldest);
        }
    }
}

/// Whether one text was delivered twice. Nobody sends the same twice in one second, but in two
/// minutes one may; so through one gateway only the very same second counts.
fn is_same(first: &Delivery, second: &Delivery) -> bool {
    let within = |a: DateTime<Utc>, b: DateTime<Utc>, most: TimeDelta| (a - b).abs() <= most;
    let other_gateway = first.gateway != second.gateway;
    let few_minutes = TimeDelta::minutes(limits::TWICE_MINUTES);
    match (first.sent_at, second.sent_at) {
        (Some(a), Some(b)) => {
            let same_moment = a == b || (other_gateway && within(a, b, few_minutes));
            same_moment && within(first.at, second.at, TimeDelta::hours(limits::TWICE_HOURS))
        }
        (None, _) | (_, None) => other_gateway && within(first.at, second.at, few_minutes),
    }
}
