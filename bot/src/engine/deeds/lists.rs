//! Lists that are longer than one text: MORE shows what follows.

use budwood_scheduler::Person;

use crate::{
    engine::{outcome::Outcome, said::Done, step::Step, turn::Turn},
    wording::{Key, Phrase},
    words::message::Listed,
};

impl Step<'_> {
    /// The answer to an adviser's question; how much of its list was shown is kept for MORE.
    pub(super) fn answer_in_parts(&mut self, turn: &Turn, phrase: Phrase) -> Done {
        self.show_part(
            turn,
            phrase,
            Listed {
                text: turn.text.clone(),
                shown: 0,
            },
        )
    }

    /// MORE: the question is asked again, as things stand now, and answered from where the last text
    /// ended.
    pub(super) fn more(&mut self, turn: &Turn, speaker: &Person) -> Done {
        let listed = self
            .view()
            .talk(&turn.number)
            .and_then(|talk| talk.listed.clone());
        if let Some(done) = self.more_help(turn, speaker, listed.as_ref()) {
            return done;
        }
        let rest = listed.and_then(|listed| {
            let asked = Turn {
                text: listed.text.clone(),
                ..turn.clone()
            };
            let phrase = self.view().asked_again(&asked, speaker)?;
            let shown = usize::try_from(listed.shown).ok()?;
            Some((phrase.after(shown)?, listed))
        });
        match rest {
            Some((phrase, listed)) => self.show_part(turn, phrase, listed),
            None => Outcome::Answered.saying([self.view().reply(turn, Key::MoreNone)]),
        }
    }

    /// After HELP: its next text.
    fn more_help(
        &mut self,
        turn: &Turn,
        speaker: &Person,
        listed: Option<&Listed>,
    ) -> Option<Done> {
        let listed = listed?;
        let asked = Turn {
            text: listed.text.clone(),
            ..turn.clone()
        };
        if !self.view().asks_for_help(&asked, speaker) {
            return None;
        }
        let pages = self.view().help_for(speaker);
        let next = usize::try_from(listed.shown).ok()?.saturating_add(1);
        let is_last = next.saturating_add(1) >= pages.len();
        let page = pages.into_iter().nth(next)?;
        self.talk(&turn.number).listed = (!is_last).then(|| Listed {
            shown: listed.shown.saturating_add(1),
            ..listed.clone()
        });
        Some(Outcome::Answered.saying([self.view().reply(turn, page)]))
    }

    fn show_part(&mut self, turn: &Turn, phrase: Phrase, listed: Listed) -> Done {
        let said = self.view().reply(turn, phrase);
        let items = said.phrase.listed().unwrap_or_default();
        let shown = self.view().shown(&said).min(items);
        let shown_before = usize::try_from(listed.shown).unwrap_or(usize::MAX);
        let all = u32::try_from(shown_before.saturating_add(shown)).unwrap_or(u32::MAX);
        let listed = (shown < items).then_some(Listed {
            shown: all,
            ..listed
        });
        let talk = self.view().talk(&turn.number);
        if talk.is_none_or(|talk| talk.listed != listed) {
            self.talk(&turn.number).listed = listed;
        }
        Outcome::Answered.saying([said])
    }
}
