//! Counts what happens, for the end.

use std::collections::BTreeSet;

use crate::words::sms;

/// What happened so far.
#[derive(Debug, Default)]
pub(super) struct Tally {
    /// Texts from people.
    pub(super) texts_in: u32,
    /// Texts of the bot.
    pub(super) texts_out: u32,
    /// Of these, nudges.
    pub(super) nudges: u32,
    /// Nudges after which the phone texted before its next nudge.
    pub(super) answered: u32,
    /// Nudges to somebody who has not agreed, or has said STOP.
    pub(super) unwanted: u32,
    /// The longest text of the bot.
    pub(super) longest: String,
    /// Texts of the bot that took more than one message.
    pub(super) in_parts: u32,
    open: BTreeSet<String>,
}

impl Tally {
    /// Somebody texts.
    pub(super) fn texted(&mut self, number: &str) {
        self.texts_in += 1;
        if self.open.remove(number) {
            self.answered += 1;
        }
    }

    /// The bot texts.
    pub(super) fn sent(&mut self, text: &str) {
        self.texts_out += 1;
        let size = sms::measure(text);
        if size.parts > 1 {
            self.in_parts += 1;
        }
        if size.units > sms::measure(&self.longest).units {
            text.clone_into(&mut self.longest);
        }
    }

    /// The text just sent was a nudge.
    pub(super) fn nudged(&mut self, number: &str, agreed: bool) {
        self.nudges += 1;
        if !agreed {
            self.unwanted += 1;
        }
        self.open.insert(number.to_owned());
    }
}
