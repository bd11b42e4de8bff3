//! The queue of the adviser: shown one by one, stored by the number of a reading, passed on
//! to a colleague, closed by a word.

use budwood_parser::{Bare, Query, Reading};
use budwood_scheduler::{MessageId, Person, PersonId, Source};
use chrono::TimeDelta;

use crate::{
    args,
    engine::{
        outcome::Outcome,
        roles::{self, Verb},
        said::Done,
        step::Step,
        turn::{Telling, Turn},
    },
    wording::{Key, Phrase, Value},
    words::{limits, matter::Matter},
};

impl Step<'_> {
    /// NEXT: a text that waits, as it came.
    pub(crate) fn show_next(&mut self, turn: &Turn) -> Phrase {
        let view = self.view();
        let adviser = view.person(turn.speaker);
        let Some(next) = adviser.and_then(|adviser| view.next_waiting(adviser)) else {
            return Key::WaitingNone.into();
        };
        let phrase = view.matter_shown(next);
        let read = Matter {
            read_at: Some(self.now),
            read_by: Some(turn.speaker),
            ..next.clone()
        };
        self.put_matter(read);
        phrase
    }

    /// A number of an adviser: what was read last is stored by that reading of it, as its sender told
    /// it, by her word. It needs
    /// the code of a visit, as whatever is written for others.
    pub(crate) fn accept_read(&mut self, turn: &Turn, reading: &Reading) -> Option<Done> {
        let view = self.view();
        let is_asked = view.open_question(&turn.number).is_some();
        let (false, Some(Bare::Number(number))) = (is_asked, &reading.bare) else {
            return None;
        };
        let speaker = view.person(turn.speaker);
        let adviser = speaker.filter(|one| roles::may(one.role, Verb::ReadQueue))?;
        let adviser = adviser.clone();
        let matter = view.read_last(&adviser)?.clone();
        let readings = view.readings_of(&matter);
        let numbered = (1_u32..).zip(readings);
        let (_, facts) = numbered
            .into_iter()
            .find(|(at, _)| f64::from(*at).total_cmp(number).is_eq())?;
        if !view.is_on_visit(&turn.number) {
            let visit = view.visit(turn);
            return Some(self.ask_code(turn, visit));
        }
        let telling = Telling {
            by: Some(turn.speaker),
            source: Source::OwnText,
            message: Some(matter.message),
        };
        let told = Turn {
            target: matter.person,
            ..turn.clone()
        };
        let done = self.store_told(&told, telling, &facts);
        self.close_shown(adviser.id, matter.message);
        Some(done)
    }

    /// DONE of an adviser: what was read last waits no more.
    pub(crate) fn close_read(&mut self, turn: &Turn) -> Option<Done> {
        let view = self.view();
        let adviser = view.person(turn.speaker)?.clone();
        let read = view.read_last(&adviser)?.clone();
        Some(self.close_and_say(turn, &adviser, &read))
    }

    /// A text waits no more, and the adviser reads how many still do.
    pub(super) fn close_and_say(&mut self, turn: &Turn, adviser: &Person, matter: &Matter) -> Done {
        self.close_shown(adviser.id, matter.message);
        let view = self.view();
        let sender = view.person(matter.person);
        let args = args! {
            "name" => Value::name(sender.map_or("", |sender| &sender.name)),
            "count" => view.waiting_for(adviser).len(),
        };
        let said = view.reply(turn, Phrase::new(Key::WaitingClosed, args));
        Outcome::SeenTo.saying([said])
    }

    /// What was shown last waits no more. The next answer must not be about what was shown before.
    pub(super) fn close_shown(&mut self, adviser: PersonId, message: MessageId) {
        self.close_matter(message);
        self.forget_shown(adviser);
    }

    /// P and a name: what was read last waits for a colleague from now on. It is somebody's text,
    /// so it needs the code of a visit.
    pub(crate) fn pass_on(&mut self, turn: &Turn, adviser: &Person, query: &Query) -> Done {
        let view = self.view();
        let to = match view.colleague(adviser, query) {
            Ok(to) => to.clone(),
            Err(instead) => return Outcome::Answered.saying([view.reply(turn, instead)]),
        };
        let Some(read) = view.read_last(adviser).cloned() else {
            return Outcome::Answered.saying([view.reply(turn, Key::PassNone)]);
        };
        if !view.is_on_visit(&turn.number) {
            let visit = view.visit(turn);
            return self.ask_code(turn, visit);
        }
        self.pass_to(turn, adviser, &read, &to)
    }

    /// A text waits for this colleague from now on, who is told so.
    pub(super) fn pass_to(
        &mut self,
        turn: &Turn,
        adviser: &Person,
        read: &Matter,
        to: &Person,
    ) -> Done {
        self.put_matter(Matter {
            passed_to: Some(to.id),
            read_at: None,
            ..read.clone()
        });
        self.forget_shown(adviser.id);
        let view = self.view();
        let sender = view.person(read.person);
        let args = args! {
            "name" => Value::name(sender.map_or("", |sender| &sender.name)),
            "group" => Value::name(view.group_name(sender.and_then(|sender| sender.group))),
            "adviser" => Value::name(adviser.called()),
        };
        let notice = view.notice_to(to, turn.message, Phrase::new(Key::PassedNotice, args));
        let args = args! {
            "adviser" => Value::name(to.called()),
            "name" => Value::name(sender.map_or("", |sender| &sender.name)),
            "count" => view.waiting_for(adviser).len(),
        };
        let said = view.reply(turn, Phrase::new(Key::Passed, args));
        Outcome::Passed.saying(std::iter::once(said).chain(notice))
    }

    /// What was shown to somebody before is not what the next answer is about.
    fn forget_shown(&mut self, reader: PersonId) {
        let view = self.view();
        let waiting = view.person(reader).map(|one| view.waiting_for(one));
        let waiting: Vec<Matter> = waiting.unwrap_or_default().into_iter().cloned().collect();
        for matter in waiting {
            if let Some(at) = matter.read_at {
                let long_ago = at - TimeDelta::hours(limits::READ_HOURS);
                self.put_matter(Matter {
                    read_at: Some(long_ago),
                    ..matter
                });
            }
        }
    }
}
