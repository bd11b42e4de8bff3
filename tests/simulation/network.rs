//! What lies between phones and the engine: a network that loses, doubles, delays and reorders
//! texts, and a provider that fails, forgets to answer, and now and then takes nothing for days.

use budwood::{
    engine::{Input, Told},
    words::traffic::{About, Delivery, Inbound, Outgoing, Receipt, SendOutcome, Whose},
};
use budwood_scheduler::MessageId;
use chrono::{DateTime, TimeDelta, Utc};

use super::valley::Valley;
use crate::fixture::{LINE, claim};

/// What comes to us, or is to be told to us.
#[derive(Clone)]
pub(super) enum Under {
    Text(Inbound),
    Receipt(Receipt),
    /// The provider's answer to our sending. It is lost with the process that waits for it.
    Answer(MessageId, SendOutcome),
    /// Whoever takes a copy asks for its next part.
    CopyNext,
    /// The adviser lets texts leave again.
    Release,
}

impl Valley {
    /// The network takes a text: it may lose it, delay it for days, double it, and let others
    /// overtake it. Who gets no answer to a lost text may send it again.
    pub(super) fn send_to_us(&mut self, from: &str, text: String, after: TimeDelta) {
        let mut typed = self.time.now() + after;
        while self.chance.once_in(25) {
            self.laws.figures.lost += 1;
            if self.chance.once_in(2) {
                return;
            }
            typed += self.chance.minutes(30, 3 * 24 * 60);
        }
        let late = if self.chance.once_in(10) {
            self.chance.minutes(1, 5 * 24 * 60)
        } else {
            self.chance.minutes(0, 3)
        };
        let id = self.next_id();
        let inbound = Inbound {
            gateway: LINE.to_owned(),
            gateway_id: Some(format!("t-{id}")),
            from: from.to_owned(),
            to: "12345".to_owned(),
            text,
            sent_at: (!self.chance.once_in(3)).then_some(typed),
        };
        self.bring(typed + late, Under::Text(inbound.clone()));
        while self.chance.once_in(8) {
            let again = self.chance.minutes(0, 2 * 24 * 60);
            self.bring(typed + late + again, Under::Text(inbound.clone()));
        }
    }

    pub(super) fn bring(&mut self, at: DateTime<Utc>, under: Under) {
        let id = self.next_id();
        self.way.insert((at, id), under);
    }

    /// Several things that came at one moment share a write.
    pub(super) fn take_what_came(&mut self) {
        let most = 1 + self.chance.below(4);
        let mut came = Vec::new();
        for _ in 0..most {
            let now = self.time.now();
            let Some(entry) = self.way.first_entry().filter(|one| one.key().0 <= now) else {
                break;
            };
            match entry.remove() {
                Under::CopyNext => return self.begun(came, Self::copy_next),
                Under::Release => return self.begun(came, Self::release),
                under @ (Under::Text(_) | Under::Receipt(_) | Under::Answer(..)) => {
                    came.push(under);
                }
            }
        }
        self.take(came);
    }

    fn begun(&mut self, came: Vec<Under>, then: fn(&mut Self)) {
        if !came.is_empty() {
            self.take(came);
        }
        then(self);
    }

    fn take(&mut self, came: Vec<Under>) {
        let inputs = came.iter().filter_map(|under| match under.clone() {
            Under::Text(inbound) => Some(Input::Text(inbound)),
            Under::Receipt(receipt) => Some(Input::Receipt(receipt)),
            Under::Answer(id, outcome) => Some(Input::Tried { id, outcome }),
            Under::CopyNext | Under::Release => None,
        });
        let inputs: Vec<Input> = inputs.collect();
        // A sender may ask for its next text before this is on the disk.
        let copies = self.engine.looks_at_store(&inputs);
        let claims = if copies { 0 } else { self.chance.below(3) };
        let claim = (0..claims).map(|_| vec![claim()]);
        let mut all = self.steps([inputs].into_iter().chain(claim).collect());
        let claimed = all.split_off(1);
        let told = all.pop().flatten();
        for told in claimed.into_iter().flatten() {
            self.send_claimed(told);
        }
        for under in came {
            match under {
                Under::Text(inbound) if told.is_none() => {
                    let again = self.time.now() + self.chance.minutes(1, 120);
                    self.bring(again, Under::Text(inbound));
                }
                Under::Text(inbound) => {
                    let id = inbound.gateway_id.expect("this gateway has ids");
                    self.laws.acknowledged(&id, &inbound.text);
                }
                // Nobody tells an answer twice; receipts come again now and then.
                Under::Receipt(_) | Under::Answer(..) | Under::CopyNext | Under::Release => {}
            }
        }
    }

    /// Whether there was a text to send.
    pub(super) fn claim(&mut self) -> bool {
        let told = self.step(vec![claim()]);
        told.is_some_and(|told| self.send_claimed(told))
    }

    fn send_claimed(&mut self, mut told: Vec<Told>) -> bool {
        let Some(text) = told.pop().and_then(|told| told.send) else {
            return false;
        };
        // The power may have gone, and the clock with it, after this was told.
        self.laws.handed(&text, &self.engine, self.stepped);
        let outcome = self.provider(&text);
        if matches!(outcome, SendOutcome::Wait { .. }) {
            self.laws.was_not_taken(text.id);
        }
        let answers = self.time.now() + TimeDelta::seconds(i64::from(self.chance.below(40)));
        self.bring(answers, Under::Answer(text.id, outcome));
        true
    }

    fn provider(&mut self, text: &Outgoing) -> SendOutcome {
        let why = "a bad day".to_owned();
        if self.time.now() < self.outage {
            return wait(Whose::Gateway, why);
        }
        match self.chance.below(20) {
            0 => wait(Whose::Text, why),
            1 => SendOutcome::Refused { code: None, why },
            2 => {
                if self.chance.once_in(2) {
                    self.deliver(text);
                }
                SendOutcome::Unknown { why }
            }
            // Taken, and lost on its way to the phone.
            3 => accepted(text),
            _ => {
                self.deliver(text);
                accepted(text)
            }
        }
    }

    /// A text reaches a phone, and whoever holds it may answer. A second try is no second text.
    fn deliver(&mut self, text: &Outgoing) {
        if let Some(before) = self.taken.insert(text.id, text.clone()) {
            assert_eq!(before, *text, "the provider has another text of this id");
            return;
        }
        while self.chance.once_in(2) {
            let receipt = Receipt {
                gateway: LINE.to_owned(),
                about: if self.chance.once_in(2) {
                    About::Ours(text.id)
                } else {
                    About::Theirs(format!("p-{}", text.id))
                },
                code: None,
                delivery: *self.chance.pick(&[
                    Delivery::Delivered,
                    Delivery::Delivered,
                    Delivery::Failed,
                    Delivery::Waiting,
                    Delivery::Uncertain,
                ]),
            };
            let at = self.time.now() + self.chance.minutes(0, 600);
            self.bring(at, Under::Receipt(receipt));
        }
        let phone = self.phones.iter().find(|phone| phone.number == text.to);
        let said = match phone {
            Some(phone) => phone.answer(&text.text, &mut self.chance),
            None => text
                .text
                .rsplit_once("YES ")
                .map(|(_, code)| (TimeDelta::minutes(5), format!("yes {code}"))),
        };
        if let Some((after, answer)) = said {
            self.send_to_us(&text.to, answer, after);
        }
    }
}

fn accepted(text: &Outgoing) -> SendOutcome {
    SendOutcome::Accepted {
        ids: vec![format!("p-{}", text.id)],
    }
}

const fn wait(whose: Whose, why: String) -> SendOutcome {
    let after = None;
    SendOutcome::Wait { whose, after, why }
}
