//! Which texts came lately, so that a second delivery has no second effect.
//!
//! A gateway that was not answered in time delivers again under the same id. A network that
//! missed an acknowledgement, or a second gateway for the same number, delivers again under
//! another one. A farmer who sends the same again is something else: that is for `inbound`.
//!
//! A text is known by gateway, id, sender and content: another sender or other words under a known
//! id are a new text. What is remembered lasts for [`limits::HEARD_DAYS`], and each phone of the
//! list has room of its own, so that nobody makes it forgotten by texting much. Strangers share
//! one room.

use std::{
    collections::{HashMap, hash_map::RandomState},
    hash::BuildHasher,
    mem,
};

use chrono::{DateTime, TimeDelta, Utc};

use crate::{
    engine::outcome::Outcome,
    words::{
        limits,
        message::{Received, ReceivedPart},
        traffic::Inbound,
    },
};

/// Texts that came lately.
#[derive(Default)]
pub(crate) struct Heard {
    /// By the hash of the number.
    phones: HashMap<u64, Room>,
    strangers: Room,
    /// Words are kept as their hashes, which nobody can foresee.
    hash: RandomState,
}

/// Whether a text came before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Hearing {
    /// It did not.
    New,
    /// The gateway brings its text once more.
    Again,
    /// The network or another gateway does.
    Twice,
}

/// Who sent a text.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Sender<'a> {
    /// The number as on the list, or whatever stands in its place.
    pub(crate) name: &'a str,
    /// Whether it is a phone of the list.
    pub(crate) is_known: bool,
}

/// Texts of one phone, by their words. What is older than the last two fillings is forgotten.
#[derive(Default)]
struct Room {
    now: Filling,
    before: Filling,
}

#[derive(Default)]
struct Filling {
    since: DateTime<Utc>,
    texts: HashMap<u64, Vec<Delivery>>,
    held: usize,
}

/// How a text came.
#[derive(Clone, Copy, Debug)]
struct Delivery {
    gateway: u64,
    id: Option<u64>,
    /// When it was sent, if that is known and can be believed.
    sent_at: Option<DateTime<Utc>>,
    at: DateTime<Utc>,
    is_first: bool,
    /// It came before the start, which may have cut our answer off.
    is_old: bool,
}

/// A sending time further back than this is not believed.
const LATE_DAYS_MAX: i64 = 30;

/// The time of sending counts unless it lies in the future or far back.
pub(crate) fn believable(
    sent_at: Option<DateTime<Utc>>,
    now: DateTime<Utc>,
) -> Option<DateTime<Utc>> {
    let earliest = now - TimeDelta::days(LATE_DAYS_MAX);
    sent_at.filter(|at| *at <= now && *at > earliest)
}

impl Heard {
    /// Keeps a text of the store in mind. To be called with the newest first.
    pub(crate) fn recall(&mut self, received: &Received, is_known: bool) {
        let sender = Sender {
            name: &received.from,
            is_known,
        };
        let delivery = Delivery {
            gateway: self.hash.hash_one(&received.gateway),
            id: self.id(received.gateway_id.as_deref()),
            sent_at: believable(received.sent_at, received.at),
            at: received.at,
            is_first: received.outcome != Outcome::DeliveredTwice.name(),
            is_old: true,
        };
        self.recall_words(sender, &received.text, delivery);
        for part in &received.parts {
            let id = self.id(Some(part));
            self.recall_words(sender, part, Delivery { id, ..delivery });
        }
    }

    /// Keeps a part that waits in mind.
    pub(crate) fn recall_part(&mut self, part: &ReceivedPart, is_known: bool) {
        let sender = Sender {
            name: &part.from,
            is_known,
        };
        let delivery = Delivery {
            gateway: self.hash.hash_one(&part.gateway),
            id: self.id(Some(&part.gateway_id)),
            sent_at: believable(part.sent_at, part.at),
            at: part.at,
            is_first: true,
            is_old: true,
        };
        self.recall_words(sender, &part.gateway_id, delivery);
    }

    fn recall_words(&mut self, sender: Sender<'_>, text: &str, delivery: Delivery) {
        let words = self.words(sender, text);
        let (room, most) = self.room(sender);
        if room.now.held < most {
            room.now.keep(words, delivery);
        }
    }

    /// Whether this text came before. From now on it is kept in mind.
    pub(crate) fn hears(
        &mut self,
        sender: Sender<'_>,
        inbound: &Inbound,
        now: DateTime<Utc>,
    ) -> Hearing {
        let mut delivery = Delivery {
            gateway: self.hash.hash_one(&inbound.gateway),
            id: self.id(inbound.gateway_id.as_deref()),
            sent_at: believable(inbound.sent_at, now),
            at: now,
            is_first: true,
            is_old: false,
        };
        let words = self.words(sender, &inbound.text);
        let most = limits::HEARD_TEXTS_OF_STRANGERS;
        self.strangers.make_place(now, most);
        // Before it was on the list.
        if (self.strangers.same_words(words)).any(|first| is_again(first, &delivery)) {
            return Hearing::Again;
        }
        let (room, most) = self.room(sender);
        room.make_place(now, most);
        if room
            .same_words(words)
            .any(|first| is_again(first, &delivery))
        {
            return Hearing::Again;
        }
        delivery.is_first = !room
            .same_words(words)
            .any(|first| is_twice(first, &delivery));
        room.now.keep(words, delivery);
        if delivery.is_first {
            Hearing::New
        } else {
            Hearing::Twice
        }
    }

    fn id(&self, id: Option<&str>) -> Option<u64> {
        id.filter(|id| !id.is_empty())
            .map(|id| self.hash.hash_one(id))
    }

    fn words(&self, sender: Sender<'_>, text: &str) -> u64 {
        self.hash.hash_one((sender.name, text.trim()))
    }

    /// Where the texts of a sender are, and how many find room.
    fn room(&mut self, sender: Sender<'_>) -> (&mut Room, usize) {
        let phone = self.hash.hash_one(sender.name);
        // Who was on the list when the text came is no stranger to it.
        if !sender.is_known && !self.phones.contains_key(&phone) {
            return (&mut self.strangers, limits::HEARD_TEXTS_OF_STRANGERS);
        }
        let room = self.phones.entry(phone).or_default();
        (room, limits::HEARD_TEXTS_OF_PHONE)
    }
}

impl Room {
    fn make_place(&mut self, now: DateTime<Utc>, most: usize) {
        // Time alone forgets nothing of a phone that texts little: a clock may have jumped.
        let is_old = now - self.now.since >= TimeDelta::days(limits::HEARD_DAYS)
            && self.now.held >= limits::HEARD_TEXTS_KEPT;
        if is_old || self.now.held >= most {
            self.before = mem::take(&mut self.now);
            self.now.since = now;
        }
    }

    fn same_words(&self, words: u64) -> impl Iterator<Item = &Delivery> {
        let fillings = [&self.now, &self.before].into_iter();
        fillings.flat_map(move |filling| filling.texts.get(&words).into_iter().flatten())
    }
}

impl Filling {
    fn keep(&mut self, words: u64, delivery: Delivery) {
        if self.held == 0 {
            self.since = delivery.at;
        }
        self.held += 1;
        self.texts.entry(words).or_default().push(delivery);
    }
}

/// Whether a gateway brings its text once more.
fn is_again(first: &Delivery, now: &Delivery) -> bool {
    now.id.is_some() && first.id == now.id && first.gateway == now.gateway
}

/// Whether one text was delivered twice. Nobody sends the same twice in one second, but in two
/// minutes one may; so through one gateway only the very same second counts. Where a gateway tells
/// neither an id nor the time, what it brought just before the start counts as the same: a kill
/// between the disk and our answer makes a centre deliver again.
fn is_twice(first: &Delivery, now: &Delivery) -> bool {
    let within = |a: DateTime<Utc>, b: DateTime<Utc>, most: TimeDelta| (a - b).abs() <= most;
    let other_gateway = first.gateway != now.gateway;
    let few_minutes = TimeDelta::minutes(limits::TWICE_MINUTES);
    let is_same = match (first.sent_at, now.sent_at) {
        (Some(a), Some(b)) => {
            let same_moment = a == b || (other_gateway && within(a, b, few_minutes));
            same_moment && within(first.at, now.at, TimeDelta::hours(limits::TWICE_HOURS))
        }
        (None, None) if !other_gateway => {
            let is_nameless = first.id.is_none() && now.id.is_none();
            let cut_off = TimeDelta::minutes(limits::CUT_OFF_MINUTES);
            first.is_old && is_nameless && within(first.at, now.at, cut_off)
        }
        (None, _) | (_, None) => other_gateway && within(first.at, now.at, few_minutes),
    };
    first.is_first && is_same
}

#[cfg(test)]
mod tests;
