//! A code that must come back before something large is done, and the deed when it does.

use budwood_parser::Ailment;
use budwood_scheduler::{
    BlockId, Body, GroupId, Person, Purpose,
    group::health::{Cluster, Family},
};
use chrono::{DateTime, TimeDelta, Utc};

use crate::{
    args,
    engine::{
        outcome::Outcome,
        questions::codes::{Large, code_in},
        roles,
        said::{Done, Said},
        step::Step,
        turn::Turn,
    },
    wording::{Key, Phrase, Value},
    words::{
        limits,
        message::{CodeUse, Deed, Question},
    },
};

/// What a right or wrong code leads to.
#[derive(Debug, PartialEq)]
pub(crate) enum Given {
    /// It is done, or was not.
    Done(Done),
    /// A visit begins with the text that waited.
    Visit {
        text: String,
        sent_at: DateTime<Utc>,
    },
}

impl Step<'_> {
    /// Asks for the code before something large is done.
    pub(crate) fn ask_code(&mut self, turn: &Turn, large: Large) -> Done {
        let Large { deed, mut phrase } = large;
        if self.view().is_locked(&turn.number, &deed) {
            return Outcome::Locked.saying([self.view().locked(turn)]);
        }
        self.use_code(turn, &deed, false);
        let code = self.view().code(turn);
        phrase.args.extend(args! { "code" => code.as_str() });
        let question = Question::Code { code, deed };
        let said = self.ask(turn, turn.speaker, question, phrase);
        Outcome::AskedForCode.saying([said])
    }

    /// Whether this text brings the code that we wait for. So many wrong ones lock the deed; a text
    /// without such a number has nothing to do with it.
    pub(crate) fn code_given(&mut self, turn: &Turn, speaker: &Person) -> Option<Given> {
        let open = self.view().open_question(&turn.number)?;
        let Question::Code { code, deed } = open.question else {
            return None;
        };
        let given = code_in(&turn.text)?;
        if given != code {
            return Some(Given::Done(self.wrong_code(turn, &deed)));
        }
        self.talk(&turn.number).open = None;
        if roles::needs_code(speaker.role) {
            let until = self.view().visit_ends(speaker);
            self.talk(&turn.number).visit_until = Some(until);
        }
        if let Deed::Visit { text, sent_at } = deed {
            return Some(Given::Visit { text, sent_at });
        }
        let said = self.do_large(turn, speaker, deed);
        Some(Given::Done(Outcome::DoneWithCode.saying(said)))
    }

    fn wrong_code(&mut self, turn: &Turn, deed: &Deed) -> Done {
        self.use_code(turn, deed, true);
        if !self.view().is_locked(&turn.number, deed) {
            return Outcome::WrongCode.saying([self.view().reply(turn, Key::CodeWrong)]);
        }
        self.talk(&turn.number).open = None;
        self.world.locked += 1;
        Outcome::Locked.saying([self.view().locked(turn)])
    }

    /// Keeps in mind that a code was asked for, or a wrong one came.
    pub(crate) fn use_code(&mut self, turn: &Turn, deed: &Deed, was_wrong: bool) {
        let now = self.now;
        let since = now - TimeDelta::hours(limits::CODE_HOURS);
        let codes = &mut self.talk(&turn.number).codes;
        codes.retain(|code| code.at > since);
        codes.push(CodeUse {
            at: now,
            deed: deed.name().to_owned(),
            was_wrong,
        });
    }

    fn do_large(&mut self, turn: &Turn, speaker: &Person, deed: Deed) -> Vec<Said> {
        let telling = self.view().telling(turn, turn.speaker);
        let said = match deed {
            Deed::OpenWindow { group, on } => {
                self.record(telling, None, Body::WindowOpened { group, on });
                self.view().window_told(turn, Key::WindowOpened, group, on)
            }
            Deed::HoldPlanting { group, on } => {
                self.record(telling, None, Body::PlantingHeld { group, on });
                self.view().window_told(turn, Key::PlantingHeld, group, on)
            }
            Deed::Warn { group, ailment } => self.warn(turn, speaker, group, ailment),
            Deed::Erase { person } => {
                // Made first: afterwards nobody knows in which language.
                let said = self.view().reply(turn, Key::Erased);
                let telling = self.view().telling(turn, person);
                self.record(telling, None, Body::Erased { person });
                said
            }
            Deed::Stop => self.stopped(turn),
            Deed::Lost { person } => self.lost_or_found(turn, person, true),
            Deed::Found { person } => self.lost_or_found(turn, person, false),
            Deed::Moved { person, number } => {
                let said = self.move_number(turn, person, &number);
                let notice = self.number_notice(turn, speaker, &said);
                return std::iter::once(said).chain(notice).collect();
            }
            Deed::Pass { passing } => return self.pass(turn, speaker, passing),
            Deed::Announce { to, words } => return self.announce(turn, to, &words),
            Deed::AskHarm { group, cause } => return self.ask_harm(turn, group, cause),
            Deed::AskLeaders => return self.ask_leaders(turn, speaker),
            Deed::HandOver { to, groups } => return self.hand_over(turn, speaker, to, &groups),
            // Nothing large: the text that waited says what is to be done.
            Deed::Visit { .. } => return Vec::new(),
        };
        vec![said]
    }

    /// STOP ends texts to the phone, whoever of those who share it sent it: nobody is texted
    /// against their wish for the sake of another.
    pub(crate) fn stopped(&mut self, turn: &Turn) -> Said {
        let view = self.view();
        let names = view.everyone_on(&turn.number).into_iter();
        let names = names.filter_map(|person| view.person(person));
        let names: Vec<Value> = names.map(|person| Value::name(person.called())).collect();
        let phrase = if names.len() > 1 {
            Phrase::new(Key::StoppedShared, args! { "people" => Value::List(names) })
        } else {
            Key::Stopped.into()
        };
        let said = view.reply(turn, phrase);
        for person in self.view().everyone_on(&turn.number) {
            let telling = self.view().telling(turn, person);
            let body = Body::ConsentWithdrawn {
                person,
                purpose: Purpose::Reminders,
                how: "text STOP".to_owned(),
            };
            self.record(telling, None, body);
        }
        self.cancel_waiting(&turn.number);
        let talk = self.talk(&turn.number);
        talk.open = None;
        talk.nudge = None;
        said
    }

    /// Each block near a cluster gets a fact; the job to look follows from it, and its text keeps
    /// to the hours, the rest and the consent of every nudge.
    fn warn(&mut self, turn: &Turn, adviser: &Person, group: GroupId, ailment: Ailment) -> Said {
        let view = self.view();
        let on = view.today_of(adviser.id);
        let clusters = view.clusters_of(group, on);
        // One more report meanwhile may have changed the sign that most people name.
        let is_same = |cluster: &&Cluster| Some(cluster.family) == Family::of(ailment);
        let cluster = clusters.iter().find(is_same);
        let near = cluster.map(|cluster| view.near(adviser, cluster));
        let near: Vec<BlockId> = near.unwrap_or_default();
        let telling = view.telling(turn, turn.speaker);
        for block in near.iter().copied() {
            self.record(telling, None, Body::Warned { block, ailment, on });
        }
        let view = self.view();
        let args = args! {
            "blocks" => near.len(),
            "ailment" => ailment,
            "group" => view.group_name(Some(group)),
        };
        view.reply(turn, Phrase::new(Key::WarnDone, args))
    }
}
