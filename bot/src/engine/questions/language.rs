//! In which language a person is answered, and in which a phone is read.
//!
//! Answers are in the language that the phone asked for, else that of the list, else the
//! adviser's, which stands for the group's. They do not follow the texts that come in: people mix
//! languages in one text, and a child or a neighbour types for them; nobody should find the bot
//! in another language without having said so. Reading does follow: it only weighs words.
//! Deliberately absent: what is said.

use budwood_scheduler::{Person, PersonId};

use crate::{
    args,
    engine::view::View,
    wording::{BARE, Key, Phrase},
    words::{limits, message::Talk, sms},
};

impl<'a> View<'a> {
    /// The language that a person is answered in; none when there are texts in none of theirs.
    pub(crate) fn language_of(self, person: PersonId) -> Option<String> {
        let person = self.person(person)?;
        let code = self.known_language(person)?;
        let bare = self.setup.texts.bare_form(code);
        let bare = bare.filter(|bare| self.talks_of(person).any(|talk| is_learnt(talk, bare)));
        Some(bare.unwrap_or_else(|| code.to_owned()))
    }

    /// The first language of theirs that there are texts in.
    fn known_language(self, person: &'a Person) -> Option<&'a str> {
        let asked = self
            .talks_of(person)
            .find_map(|talk| talk.language.as_deref());
        let group = self
            .adviser_of(person)
            .map(|adviser| adviser.language.as_str());
        [asked, Some(person.language.as_str()), group]
            .into_iter()
            .flatten()
            .find(|code| self.setup.texts.known(code).is_some())
    }

    fn talks_of(self, person: &Person) -> impl Iterator<Item = &'a Talk> {
        let numbers = self.world.directory.numbers_of(person.id);
        numbers.filter_map(move |number| self.talk(number))
    }

    /// The languages whose words weigh first on this phone: those that it was heard in; before
    /// that, those of its people.
    pub(crate) fn languages_of(self, number: &str, people: &[PersonId]) -> Vec<String> {
        let talk = self.talk(number);
        let mut languages: Vec<String> = talk
            .map(|talk| talk.spoken.iter().map(|code| with_marks(code).to_owned()))
            .into_iter()
            .flatten()
            .filter(|code| talk.is_some_and(|talk| is_learnt(talk, code)))
            .collect();
        if languages.is_empty() {
            let asked = talk.and_then(|talk| talk.language.as_deref());
            let people = people.iter().filter_map(|id| self.person(*id));
            languages = match asked {
                Some(asked) => vec![asked],
                None => people.filter_map(|one| self.read_as(one)).collect(),
            }
            .into_iter()
            .map(|code| with_marks(code).to_owned())
            .collect();
        }
        languages.sort_unstable();
        languages.dedup();
        languages
    }

    /// A person's language as the list says it, although there may be no texts in it.
    fn read_as(self, person: &'a Person) -> Option<&'a str> {
        let listed = Some(person.language.as_str()).filter(|code| !code.is_empty());
        listed.or_else(|| self.known_language(person))
    }

    /// Which languages there are, each by its own name.
    pub(crate) fn languages_there_are(self) -> Phrase {
        let texts = &self.setup.texts;
        let codes: Vec<&str> = texts.languages().collect();
        let named = codes.iter().map(|code| {
            let name = texts.tongue(&[code]).say(Key::LanguageName, args! {});
            format!("{code} {name}")
        });
        let named: Vec<String> = named.collect();
        let args = args! { "languages" => named.join(", "), "codes" => codes.join(" ") };
        Phrase::new(Key::Languages, args)
    }

    /// The code of a language by its code or by what people call it, with or without marks.
    pub(crate) fn language_named(self, name: &str) -> Option<String> {
        let plain = |text: &str| sms::bare(text.trim()).to_lowercase();
        let wanted = plain(name);
        let texts = &self.setup.texts;
        let called = |code: &str| {
            let names = texts.tongue(&[code]).say(Key::LanguageCalled, args! {});
            names.split(',').any(|name| plain(name) == wanted)
        };
        let bare = texts.languages().filter_map(|code| texts.bare_form(code));
        let codes = texts.languages().chain(self.setup.reader.languages());
        codes
            .map(str::to_owned)
            .chain(bare)
            .find(|code| plain(code) == wanted)
            .or_else(|| {
                texts
                    .languages()
                    .find(|code| called(code))
                    .map(str::to_owned)
            })
    }
}

/// Whether enough of a phone's last texts were in this language, or in this form of it.
fn is_learnt(talk: &Talk, code: &str) -> bool {
    let is_form = |spoken: &&String| *spoken == code || with_marks(spoken) == code;
    talk.spoken.iter().filter(is_form).count() >= limits::SPOKEN_LEARNT
}

/// The code without what says that marks are left out: words are read in either form.
fn with_marks(code: &str) -> &str {
    code.strip_suffix(BARE).unwrap_or(code)
}
