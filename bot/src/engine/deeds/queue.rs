//! The queue of the adviser: shown one by one, stored by a 1, closed by a word.

use budwood_parser::{Bare, Reading};
use budwood_scheduler::{MessageId, Person, PersonId, Role, Source};
use chrono::TimeDelta;

use crate::{
    args,
    engine::{
        outcome::Outcome,
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
            ..next.clone()
        };
        self.put_matter(read);
        phrase
    }

    /// 1 of an adviser: what was read last is stored as its sender told it, by her word. It needs
    /// the code of a visit, as whatever is written for others.
    pub(crate) fn accept_read(&mut self, turn: &Turn, reading: &Reading) -> Option<Done> {
        let view = self.view();
        let is_asked = view.open_question(&turn.number).is_some();
        if is_asked || reading.bare != Some(Bare::Number(1.0)) {
            return None;
        }
        let speaker = view.person(turn.speaker);
        let adviser = speaker.filter(|speaker| speaker.role == Role::Adviser)?;
        let adviser = adviser.clone();
        let matter = view.read_last(&adviser)?.clone();
        let facts = view.facts_in(&matter);
        if facts.is_empty() {
            return None;
        }
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
    fn close_shown(&mut self, adviser: PersonId, message: MessageId) {
        self.close_matter(message);
        let view = self.view();
        let waiting = view.person(adviser).map(|one| view.waiting_for(one));
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
