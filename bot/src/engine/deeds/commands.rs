//! Commands, and who answers a question.

use budwood_parser::{Alarm, Query, Topic};
use budwood_scheduler::{
    Body, Person, Purpose, Role,
    decide::{Answer, Concern},
};

use crate::{
    engine::{
        outcome::Outcome,
        questions::codes::Large,
        roles::{self, Reach, Verb},
        said::Done,
        step::Step,
        turn::Turn,
    },
    wording::Key,
    words::message::{Deed, Listed},
};

/// A deed that a question asks for.
type Doing<S> = fn(&mut S, &Turn, &Person, &Query) -> Done;

impl Step<'_> {
    /// Answers a question or a command.
    pub(crate) fn answer_to(&mut self, turn: &Turn, answer: Answer) -> Done {
        let Some(speaker) = self.view().person(turn.speaker).cloned() else {
            return Outcome::FromStranger.silently();
        };
        match answer {
            Answer::Help => self.help(turn, &speaker),
            Answer::Stop => self.stop(turn),
            Answer::Start => self.start(turn, &speaker),
            Answer::Query(query) if query.topic == Topic::Language => {
                self.language(turn, query.language.as_deref())
            }
            Answer::Query(query) => {
                // What this very text made us ask is still to be answered.
                let asked = self.view().open_question(&turn.number);
                if asked.is_none_or(|open| open.message != turn.message) {
                    self.close_question(&turn.number);
                }
                self.query(turn, &speaker, &query)
            }
        }
    }

    fn help(&mut self, turn: &Turn, speaker: &Person) -> Done {
        let pages = self.view().help_for(speaker);
        if pages.len() > 1 {
            self.talk(&turn.number).listed = Some(Listed {
                text: turn.text.clone(),
                shown: 0,
            });
        }
        let first = pages.into_iter().next();
        let said = first.map(|page| self.view().reply(turn, page));
        Outcome::Helped.saying(said)
    }

    /// An adviser who gets no more texts is told of no danger, so a forged number must not do it.
    fn stop(&mut self, turn: &Turn) -> Done {
        let people = self.view().everyone_on(&turn.number).into_iter();
        let mut people = people.filter_map(|person| self.view().person(person));
        if people.any(|person| person.role == Role::Adviser) {
            let large = Large {
                deed: Deed::Stop,
                phrase: Key::StopAsk.into(),
            };
            return self.ask_code(turn, large);
        }
        let said = self.stopped(turn);
        Outcome::Stopped.saying([said])
    }

    fn start(&mut self, turn: &Turn, speaker: &Person) -> Done {
        let person = turn.speaker;
        let telling = self.view().telling(turn, person);
        let body = Body::ConsentGiven {
            person,
            purpose: Purpose::Reminders,
            how: "text START".to_owned(),
        };
        self.record(telling, None, body);
        let view = self.view();
        let phrase = view.signed(speaker, Key::Started);
        Outcome::Started.saying([view.reply(turn, phrase)])
    }

    fn query(&mut self, turn: &Turn, speaker: &Person, query: &Query) -> Done {
        let asks_of_groups = roles::may(speaker.role, Verb::Look);
        let verb = Verb::of(query.topic);
        if asks_of_groups && verb.is_some_and(|verb| !roles::may(speaker.role, verb)) {
            let view = self.view();
            let phrase = view.signed(speaker, Key::NotYours);
            return Outcome::Answered.saying([view.reply(turn, phrase)]);
        }
        // A leader who tells of a member's new number is heard; the adviser does it.
        if query.topic == Topic::Moved
            && roles::reach(speaker.role, Verb::ReportFor) == Reach::OwnGroup
        {
            return self.tell(turn, Concern::Alarm(Alarm::Number));
        }
        // What people decide about themselves is not for who does the work for them.
        if matches!(query.topic, Topic::Erase | Topic::Share | Topic::MyData)
            && self.view().is_helpers(&turn.number)
        {
            let phrase = self.view().signed(speaker, Key::NotYours);
            return Outcome::Answered.saying([self.view().reply(turn, phrase)]);
        }
        if let Some(done) = self.large(turn, speaker, query) {
            return done;
        }
        if query.topic == Topic::Share
            && let Some(agrees) = query.yes
        {
            return self.share(turn, speaker, agrees);
        }
        if let Some(done) = self.lesson(turn, query) {
            return done;
        }
        // "How?" with no job to ask about: what can be texted.
        if query.topic == Topic::HowTo && query.kind.is_none() && query.material.is_none() {
            return self.help(turn, speaker);
        }
        if query.topic == Topic::More
            && let Some(done) = self.more_lesson(turn, speaker)
        {
            return done;
        }
        if query.topic == Topic::CallMe {
            return self.tell(turn, Concern::CallMe);
        }
        if let Some(done) = self.enter(turn, speaker, query) {
            return done;
        }
        // Only a person can say.
        let by_person = [
            (Topic::HowTo, Concern::Question),
            (Topic::Advice, Concern::Unclear),
        ];
        let by_person = by_person.iter().find(|(topic, _)| *topic == query.topic);
        if let Some((_, concern)) = by_person.filter(|_| !asks_of_groups) {
            return self.tell(turn, *concern);
        }
        if asks_of_groups && let Some(done) = self.of_staff(turn, speaker, query) {
            return done;
        }
        let view = self.view();
        if let Some(phrase) = view.about_own_books(speaker, query) {
            return self.answer_in_parts(turn, phrase);
        }
        let phrase = view.farmer_answer(speaker, query);
        Outcome::Answered.saying([view.reply(turn, phrase)])
    }

    /// What is done and asked by who looks after groups, or into them.
    fn of_staff(&mut self, turn: &Turn, speaker: &Person, query: &Query) -> Option<Done> {
        let topic = query.topic;
        if matches!(topic, Topic::LeaveAlone | Topic::GoOn) {
            return Some(self.hold_or_go(turn, speaker, query));
        }
        let deeds: [(Topic, Doing<Self>); 3] = [
            (Topic::Promise, Self::promise),
            (Topic::Kept, Self::kept),
            (Topic::Pass, Self::pass_on),
        ];
        if let Some((_, deed)) = deeds.iter().find(|(of, _)| *of == topic) {
            return Some(deed(self, turn, speaker, query));
        }
        if topic == Topic::Next && roles::may(speaker.role, Verb::ReadQueue) {
            let phrase = self.show_next(turn);
            return Some(Outcome::Answered.saying([self.view().reply(turn, phrase)]));
        }
        if topic == Topic::More {
            return Some(self.more(turn, speaker));
        }
        let phrase = self.view().adviser_answer(speaker, query, &turn.text)?;
        Some(self.answer_in_parts(turn, phrase))
    }

    /// What needs a code first.
    fn large(&mut self, turn: &Turn, speaker: &Person, query: &Query) -> Option<Done> {
        let view = self.view();
        let may = |verb| roles::may(speaker.role, verb);
        let topic = query.topic;
        let large = if topic == Topic::Erase {
            Ok(Large {
                deed: Deed::Erase { person: speaker.id },
                phrase: Key::EraseAsk.into(),
            })
        } else if may(Verb::OpenAndWarn) && matches!(topic, Topic::Window | Topic::Hold) {
            let group = view.group_asked(speaker, query)?;
            if topic == Topic::Hold || query.yes == Some(false) {
                view.holding_planting(group)
            } else {
                Ok(view.opening_window(group))
            }
        } else if may(Verb::OpenAndWarn) && topic == Topic::Warn {
            view.warning(speaker, view.group_asked(speaker, query)?.id)
        } else if may(Verb::HandOver) && topic == Topic::HandOver {
            view.handing_over(turn, speaker, query)
        } else if may(Verb::Announce) && topic == Topic::Tell {
            view.announcing(turn, speaker, query)
        } else if may(Verb::Announce) && matches!(topic, Topic::Ask | Topic::AskHarm) {
            view.asking(turn, speaker, query)
        } else if may(Verb::MovePeople) && topic.is_of_people() {
            view.passing(turn, speaker, query)
        } else if matches!(topic, Topic::Lost | Topic::Found | Topic::Moved) {
            view.about_phone(turn, speaker, topic, query.member.as_deref()?)
        } else {
            return None;
        };
        Some(match large {
            Ok(large) => self.ask_code(turn, large),
            Err(instead) => Outcome::Answered.saying([view.reply(turn, instead)]),
        })
    }
}
