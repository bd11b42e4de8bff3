//! A text comes in parts, or as a call that nobody answered.
//!
//! A part is stored before it is acknowledged, and becomes a text with the others.

use chrono::{DateTime, Utc};

use crate::{
    engine::{
        memory::{
            duplicates::{Hearing, Sender},
            parts::joined,
        },
        outcome::Outcome,
        said::Said,
        step::Step,
    },
    words::{
        message::ReceivedPart,
        phone_number::SenderKind,
        traffic::{Inbound, InboundPart},
    },
};

impl Step<'_> {
    /// Takes a part in.
    pub(crate) fn part(&mut self, part: InboundPart) -> Vec<Said> {
        let is_alone = part.of < 2 || part.number == 0 || part.number > part.of;
        if is_alone {
            return self.text(part.text);
        }
        let gateway_id = id_of(&part, self.now);
        let InboundPart {
            text,
            reference,
            of,
            number,
        } = part;
        let from = match self.sender(&text.from) {
            SenderKind::Number(number) => number,
            SenderKind::Name | SenderKind::ShortCode => text.from,
        };
        // A part is known by its id: of a text that is whole, the store keeps no other mark of it.
        let known = Inbound {
            gateway_id: Some(gateway_id.clone()),
            text: gateway_id.clone(),
            from: from.clone(),
            gateway: text.gateway.clone(),
            to: String::new(),
            sent_at: text.sent_at,
        };
        let sender = Sender {
            name: &from,
            is_known: self.world.directory.phone(&from).is_some(),
        };
        if self.world.heard.hears(sender, &known, self.now) == Hearing::Again {
            self.told.outcome = Some(Outcome::DeliveredAgain);
            return Vec::new();
        }
        let part = ReceivedPart {
            id: self.world.message_id(),
            at: self.now,
            gateway: text.gateway,
            gateway_id,
            from,
            to: text.to,
            text: text.text,
            sent_at: text.sent_at,
            reference,
            of,
            number,
        };
        self.change.parts.push(part.clone());
        match self.world.parts.put(part) {
            Some(parts) => self.text_of(parts),
            None => Vec::new(),
        }
    }

    /// The text that has waited longest for its parts, as far as they came.
    pub(crate) fn late_parts(&mut self) -> Vec<Said> {
        match self.world.parts.take_oldest() {
            Some(parts) => self.text_of(parts),
            None => Vec::new(),
        }
    }

    fn text_of(&mut self, parts: Vec<ReceivedPart>) -> Vec<Said> {
        let Some(first) = parts.first() else {
            return Vec::new();
        };
        let text = Inbound {
            gateway: first.gateway.clone(),
            gateway_id: None,
            from: first.from.clone(),
            to: first.to.clone(),
            text: joined(&parts),
            sent_at: first.sent_at,
        };
        let ids: Vec<_> = parts.iter().map(|part| part.id).collect();
        self.change.parts.retain(|part| !ids.contains(&part.id));
        self.change.gone_parts.extend(ids);
        let said = self.text(text);
        if let Some(received) = self.change.received.last_mut() {
            received.parts = parts.into_iter().map(|part| part.gateway_id).collect();
        }
        said
    }

    /// Somebody called and was not answered: a wish to be called, taken as the words that ask for it.
    /// Its id says that it was a call; the same one told twice counts once.
    pub(crate) fn missed_call(
        &mut self,
        gateway: &str,
        from: &str,
        at: DateTime<Utc>,
    ) -> Vec<Said> {
        self.text(Inbound {
            gateway: gateway.to_owned(),
            gateway_id: Some(format!("call {from} {}", at.timestamp() / 60)),
            from: from.to_owned(),
            to: String::new(),
            text: CALL_ME.to_owned(),
            sent_at: None,
        })
    }
}

/// What a call says, in words that every phone may use.
const CALL_ME: &str = "call me";

/// By which the same part is known again: its place in the text, what it says, and when it was
/// sent. Where that is not told, references that come round are kept apart by the day.
fn id_of(part: &InboundPart, now: DateTime<Utc>) -> String {
    if let Some(id) = &part.text.gateway_id {
        return id.clone();
    }
    let mut hash = hmac_sha256::Hash::new();
    let when = part
        .text
        .sent_at
        .map_or(now.timestamp() / 86_400, |at| at.timestamp());
    for field in [&part.text.from, &part.text.to, &part.text.text] {
        hash.update(field.as_bytes());
        hash.update([0]);
    }
    hash.update(when.to_be_bytes());
    let [a, b, c, d, ..] = hash.finalize();
    let mark = u32::from_be_bytes([a, b, c, d]);
    format!("{}/{}/{}/{mark:08x}", part.reference, part.number, part.of)
}
