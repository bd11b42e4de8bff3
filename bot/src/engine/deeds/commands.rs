//! Commands, and who answers a question.

use budwood_parser::{Query, Topic};
use budwood_scheduler::{
    Body, Person, Role,
    decide::{Answer, Concern},
};

use crate::{
    args,
    engine::{outcome::Outcome, questions::codes::Large, said::Done, step::Step, turn::Turn},
    wording::Key,
    words::message::{Deed, Listed},
};

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
        let is_adviser = speaker.role == Role::Adviser;
        if is_adviser {
            self.talk(&turn.number).listed = Some(Listed {
                text: turn.text.clone(),
                shown: 0,
            });
        }
        let view = self.view();
        let phrase = if is_adviser {
            Key::HelpAdviser.into()
        } else {
            let args = args! { "example" => view.example(speaker.id) };
            view.signed_with(speaker, Key::Help, args)
        };
        Outcome::Helped.saying([view.reply(turn, phrase)])
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
            how: "text START".to_owned(),
        };
        self.record(telling, None, body);
        let view = self.view();
        let phrase = view.signed(speaker, Key::Started);
        Outcome::Started.saying([view.reply(turn, phrase)])
    }

    fn query(&mut self, turn: &Turn, speaker: &Person, query: &Query) -> Done {
        if let Some(done) = self.large(turn, speaker, query) {
            return done;
        }
        if query.topic == Topic::CallMe {
            return self.tell(turn, Concern::CallMe);
        }
        if let Some(done) = self.enter(turn, speaker, query) {
            return done;
        }
        let is_adviser = speaker.role == Role::Adviser;
        // Only a person can say.
        let by_person = [
            (Topic::HowTo, Concern::Question),
            (Topic::Advice, Concern::Unclear),
        ];
        let by_person = by_person.iter().find(|(topic, _)| *topic == query.topic);
        if let Some((_, concern)) = by_person.filter(|_| !is_adviser) {
            return self.tell(turn, *concern);
        }
        if is_adviser && matches!(query.topic, Topic::LeaveAlone | Topic::GoOn) {
            return self.hold_or_go(turn, speaker, query);
        }
        if is_adviser && query.topic == Topic::Promise {
            return self.promise(turn, speaker, query);
        }
        if is_adviser && query.topic == Topic::Pass {
            return self.pass_on(turn, speaker, query);
        }
        if is_adviser && query.topic == Topic::Kept {
            return self.kept(turn, speaker, query);
        }
        if is_adviser && query.topic == Topic::Next {
            let phrase = self.show_next(turn);
            return Outcome::Answered.saying([self.view().reply(turn, phrase)]);
        }
        if is_adviser && query.topic == Topic::More {
            return self.more(turn, speaker);
        }
        let view = self.view();
        let answer = match speaker.role {
            Role::Adviser => view.adviser_answer(speaker, query, &turn.text),
            Role::Leader | Role::Nursery => view.about_books(speaker, query),
            Role::Farmer | Role::Clerk | Role::Viewer => None,
        };
        match answer {
            Some(phrase) => self.answer_in_parts(turn, phrase),
            None => {
                let phrase = view.farmer_answer(speaker, query);
                Outcome::Answered.saying([view.reply(turn, phrase)])
            }
        }
    }

    /// What needs a code first.
    fn large(&mut self, turn: &Turn, speaker: &Person, query: &Query) -> Option<Done> {
        let view = self.view();
        let is_adviser = speaker.role == Role::Adviser;
        let topic = query.topic;
        let large = if topic == Topic::Erase {
            Ok(Large {
                deed: Deed::Erase { person: speaker.id },
                phrase: Key::EraseAsk.into(),
            })
        } else if is_adviser && matches!(topic, Topic::Window | Topic::Hold) {
            let group = view.group_asked(speaker, query)?;
            if topic == Topic::Hold || query.yes == Some(false) {
                view.holding_planting(group)
            } else {
                Ok(view.opening_window(group))
            }
        } else if is_adviser && topic == Topic::Warn {
            view.warning(speaker, view.group_asked(speaker, query)?.id)
        } else if is_adviser && topic == Topic::HandOver {
            view.handing_over(speaker, query)
        } else if is_adviser && topic == Topic::Tell {
            view.announcing(turn, speaker, query)
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
