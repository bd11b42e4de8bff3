//! What a phone is learnt to speak, and the language that it asks for.

use budwood_parser::Reading;

use crate::{
    engine::{outcome::Outcome, said::Done, step::Step, turn::Turn},
    wording::Key,
    words::limits,
};

impl Step<'_> {
    /// Keeps in mind in which language a text was that is stored.
    pub(crate) fn learn_language(&mut self, turn: &Turn, reading: &Reading) {
        let Some(language) = &reading.language else {
            return;
        };
        let bare = self.setup.texts.bare_form(language);
        let heard = bare
            .filter(|_| turn.text.is_ascii())
            .unwrap_or_else(|| language.clone());
        let spoken = &mut self.talk(&turn.number).spoken;
        spoken.push(heard);
        let past = spoken.len().saturating_sub(limits::SPOKEN_TEXTS);
        spoken.drain(..past);
    }

    /// Answers "language": which there are, or from now on in the one that is named.
    pub(crate) fn language(&mut self, turn: &Turn, named: Option<&str>) -> Done {
        let view = self.view();
        let Some(code) = named.and_then(|name| view.language_named(name)) else {
            let said = view.reply(turn, view.languages_there_are());
            return Outcome::Answered.saying([said]);
        };
        let talk = self.talk(&turn.number);
        talk.language = Some(code);
        talk.spoken.clear();
        let said = self.view().reply(turn, Key::LanguageSet);
        Outcome::SpeaksAnotherLanguage.saying([said])
    }
}
