//! Commands, and who answers a question.

use budwood_parser::{Query, Topic};
use budwood_scheduler::{Body, Person, PersonId, Role, decide::Answer};

use crate::{
    args,
    engine::{step::Step, turn::Turn},
    wording::{Key, short},
};

impl Step<'_> {
    /// Answers a question or a command.
    pub(crate) fn answer_to(&mut self, turn: &Turn, answer: Answer) -> &'static str {
        let Some(speaker) = self.world.directory.person(turn.speaker).cloned() else {
            return "from a stranger";
        };
        match answer {
            Answer::Help => self.help(turn, &speaker),
            Answer::Stop => self.stop(turn),
            Answer::Start => self.start(turn),
            Answer::Query(query) if query.topic == Topic::Language => {
                self.language(turn, query.language.as_deref())
            }
            Answer::Query(query) => {
                self.close_question(&turn.number);
                self.query(turn, &speaker, &query)
            }
        }
    }

    fn help(&mut self, turn: &Turn, speaker: &Person) -> &'static str {
        let tongue = self.tongue(speaker);
        let text = if speaker.role == Role::Adviser {
            tongue.whole(Key::HelpAdviser, args! {})
        } else {
            let example = self.example(speaker.id);
            let adviser = self.adviser_name(speaker);
            tongue.fit(|length| {
                let args = args! {
                    "example" => example.as_str(),
                    "adviser" => short(&adviser, length),
                };
                tongue.say(Key::Help, args)
            })
        };
        self.answer(&turn.number, turn.message, text);
        "helped"
    }

    pub(crate) fn everyone_on(&self, number: &str) -> Vec<PersonId> {
        self.world
            .directory
            .phone(number)
            .map(|phone| phone.people().collect())
            .unwrap_or_default()
    }

    /// STOP ends texts to the phone, whoever of those who share it sent it: nobody is texted
    /// against their wish for the sake of another.
    fn stop(&mut self, turn: &Turn) -> &'static str {
        let text = self.tongue_of(turn.speaker).whole(Key::Stopped, args! {});
        for person in self.everyone_on(&turn.number) {
            let telling = self.telling(turn, person);
            let body = Body::ConsentWithdrawn {
                person,
                how: "text STOP".to_owned(),
            };
            self.record(telling, None, body);
        }
        self.cancel_waiting(&turn.number);
        let talk = self.talk(&turn.number);
        talk.open = None;
        talk.nudge = None;
        self.answer(&turn.number, turn.message, text);
        "stopped"
    }

    fn start(&mut self, turn: &Turn) -> &'static str {
        let person = turn.speaker;
        let telling = self.telling(turn, person);
        let body = Body::ConsentGiven {
            person,
            how: "text START".to_owned(),
        };
        self.record(telling, None, body);
        let Some(speaker) = self.world.directory.person(person) else {
            return "from a stranger";
        };
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        let text = tongue.fit(|length| {
            let args = args! {
                "name" => short(speaker.called(), length),
                "adviser" => short(&adviser, length),
            };
            tongue.say(Key::Started, args)
        });
        self.answer(&turn.number, turn.message, text);
        "started"
    }

    fn query(&mut self, turn: &Turn, speaker: &Person, query: &Query) -> &'static str {
        if let Some(outcome) = self.large(turn, speaker, query) {
            return outcome;
        }
        let text = if speaker.role == Role::Adviser {
            self.adviser_answer(speaker, query)
        } else {
            None
        };
        let text = text.unwrap_or_else(|| self.farmer_answer(turn, speaker, query));
        self.answer(&turn.number, turn.message, text);
        if query.topic == Topic::CallMe {
            self.notify_about(turn, Key::CallMeNotice, None);
        }
        "answered"
    }

    /// What needs a code first.
    fn large(&mut self, turn: &Turn, speaker: &Person, query: &Query) -> Option<&'static str> {
        match query.topic {
            Topic::Erase => Some(self.ask_erase(turn, speaker)),
            Topic::Window | Topic::Hold if speaker.role == Role::Adviser => {
                let group = self.group_asked(speaker, query)?.id;
                let holds = query.topic == Topic::Hold || query.yes == Some(false);
                Some(if holds {
                    self.ask_hold(turn, speaker, group)
                } else {
                    self.ask_window(turn, speaker, group)
                })
            }
            Topic::Warn if speaker.role == Role::Adviser => {
                let group = self.group_asked(speaker, query)?.id;
                Some(self.ask_warn(turn, speaker, group))
            }
            Topic::Window
            | Topic::Warn
            | Topic::Hold
            | Topic::Status
            | Topic::Late
            | Topic::Quiet
            | Topic::Gaps
            | Topic::Sick
            | Topic::Visit
            | Topic::Member
            | Topic::Next
            | Topic::When
            | Topic::HowMuch
            | Topic::MayI
            | Topic::MyData
            | Topic::CallMe
            | Topic::Who
            | Topic::Language
            | Topic::Other => None,
        }
    }
}
