//! Whether texts arrive on a phone: what its network told last of a text to it.

use crate::{engine::step::Step, words::message::SendState};

impl Step<'_> {
    /// A phone on which texts do not arrive is told of where it is silent.
    pub(super) fn reached(&mut self, number: &str, state: SendState) {
        // Whoever was taken out has no conversation, and a receipt must not begin one.
        let Some(since) = self.view().talk(number).map(|talk| talk.fails_since) else {
            return;
        };
        let now = self.now;
        let since = match (state, since) {
            (SendState::Failed, None) => Some(now),
            (SendState::Delivered, Some(_)) => None,
            _ => return,
        };
        self.talk(number).fails_since = since;
    }
}
