//! What somebody agrees to beside being texted: each purpose by itself, in words that are read to the
//! letter, by the person alone.

use budwood_scheduler::{Body, Person, Purpose};

use crate::{
    engine::{outcome::Outcome, said::Done, step::Step, turn::Turn},
    wording::Key,
};

impl Step<'_> {
    /// SHARE YES and SHARE NO.
    pub(crate) fn share(&mut self, turn: &Turn, speaker: &Person, agrees: bool) -> Done {
        let (person, purpose) = (speaker.id, Purpose::Buyers);
        let how = "text SHARE".to_owned();
        let (body, key) = if agrees {
            let body = Body::ConsentGiven {
                person,
                purpose,
                how,
            };
            (body, Key::ShareGiven)
        } else {
            let body = Body::ConsentWithdrawn {
                person,
                purpose,
                how,
            };
            (body, Key::ShareRefused)
        };
        let telling = self.view().telling(turn, person);
        self.record(telling, None, body);
        let view = self.view();
        Outcome::Recorded.saying([view.reply(turn, view.signed(speaker, key))])
    }
}
