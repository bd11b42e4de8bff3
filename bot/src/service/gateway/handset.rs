//! A phone in memory: keeps what was sent, so that tests and the terminal can read it.
//!
//! It takes every number, the demo numbers too, because nothing leaves the computer.

use std::{
    collections::VecDeque,
    sync::{Mutex, PoisonError},
};

use crate::{
    service::port::{Abilities, Gateway, SendFuture},
    words::traffic::{Outgoing, SendOutcome},
};

/// A phone in memory.
#[derive(Debug, Default)]
pub struct Handset {
    /// A plain mutex: it is held for one push or take and never across an await.
    inner: Mutex<Inner>,
}

#[derive(Debug, Default)]
struct Inner {
    sent: Vec<Outgoing>,
    /// What the next tries answer, before it goes back to accepting.
    answers: VecDeque<SendOutcome>,
}

impl Handset {
    /// Takes out what was sent since the last call, oldest first.
    #[must_use]
    pub fn take(&self) -> Vec<Outgoing> {
        self.with(|inner| std::mem::take(&mut inner.sent))
    }

    /// Makes a coming try answer this; each answer serves once, in order. A text is kept as sent
    /// if the answer is `Accepted` or `Unknown`.
    #[cfg(test)]
    fn answer_next(&self, answer: SendOutcome) {
        self.with(|inner| inner.answers.push_back(answer));
    }

    fn with<T>(&self, change: impl FnOnce(&mut Inner) -> T) -> T {
        // A panic elsewhere cannot leave the lists half changed, so a poisoned lock is usable.
        change(&mut self.inner.lock().unwrap_or_else(PoisonError::into_inner))
    }

    fn send_now(&self, text: &Outgoing) -> SendOutcome {
        self.with(|inner| {
            let accepted = SendOutcome::Accepted {
                ids: vec![format!("handset-{}", text.id)],
            };
            let outcome = inner.answers.pop_front().unwrap_or(accepted);
            if matches!(
                outcome,
                SendOutcome::Accepted { .. } | SendOutcome::Unknown { .. }
            ) {
                inner.sent.push(text.clone());
            }
            outcome
        })
    }
}

impl Gateway for Handset {
    fn name(&self) -> &str {
        "handset"
    }

    fn abilities(&self) -> Abilities {
        Abilities {
            sends: true,
            idempotent: false,
            demo_numbers: true,
        }
    }

    fn send<'a>(&'a self, text: &'a Outgoing) -> SendFuture<'a> {
        Box::pin(async move { self.send_now(text) })
    }
}

#[cfg(test)]
mod tests {
    use budwood_scheduler::MessageId;

    use super::*;

    #[tokio::test]
    async fn keeps_what_was_accepted_in_order() {
        let handset = Handset::default();
        let text = |id| Outgoing {
            id: MessageId(id),
            to: "+447700900123".into(),
            text: format!("text {id}"),
            expires_at: chrono::DateTime::UNIX_EPOCH,
        };
        let full = SendOutcome::Refused {
            code: None,
            why: "full".into(),
        };
        handset.answer_next(full.clone());
        assert_eq!(handset.send(&text(1)).await, full);
        let ids = vec!["handset-2".to_owned()];
        let accepted = SendOutcome::Accepted { ids };
        assert_eq!(handset.send(&text(2)).await, accepted);
        handset.send(&text(3)).await;
        assert_eq!(handset.take(), [text(2), text(3)]);
        assert_eq!(handset.take(), []);
    }
}
