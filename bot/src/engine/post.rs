//! What is said becomes a text: worded in the reader's language, fitted to one SMS, put into the
//! outbox. The only place that does.

use budwood_scheduler::{MessageId, PersonId, Role};
use chrono::{DateTime, TimeDelta, Utc};

use super::{
    budget::{self, Class, Verdict},
    said::{self, Said},
    step::Step,
    view::View,
};
use crate::{
    args,
    wording::{Key, Phrase, Value},
    words::{
        limits,
        message::{Digest, Outbound, Purpose, SendState},
        sms,
    },
};

/// Hours in a day.
const DAY_HOURS: i64 = 24;

/// What may be read by whoever holds a lost phone.
const fn is_for_anybody(key: Key) -> bool {
    matches!(
        key,
        Key::PhoneIsLost | Key::FirstFire | Key::FirstSnake | Key::FirstDanger | Key::FirstIllness
    )
}

impl View<'_> {
    /// What the reader will see.
    pub(crate) fn worded(self, said: &Said) -> String {
        let texts = &self.setup.texts;
        let language = said.to.language.as_deref();
        texts.tongue(language.as_slice()).word(&said.phrase)
    }

    /// How many items of its lists they will see at most.
    pub(crate) fn shown(self, said: &Said) -> usize {
        let texts = &self.setup.texts;
        let language = said.to.language.as_deref();
        texts
            .tongue(language.as_slice())
            .word_with_shown(&said.phrase)
            .1
    }
}

impl Step<'_> {
    /// Words what is said and sends it, as far as the budget allows. Gives back what was said too
    /// often, and a question that nobody will read.
    pub(crate) fn post(&mut self, said: Said) -> Option<Said> {
        let number = &said.to.number;
        if self.world.directory.is_lost(number) && !is_for_anybody(said.phrase.key) {
            return None;
        }
        let is_known = self.world.directory.phone(number).is_some();
        let class = Class::of(said.phrase.key, &said.purpose, is_known);
        // A reminder waits in the outbox until there is money again.
        if !class.is_reminder() && !self.view().has_money_for(class) {
            self.world.held_back.unpaid += 1;
            return said.asks.then_some(said);
        }
        match class {
            Class::Answer if is_known && self.is_said_enough(&said) => return Some(said),
            Class::Answer if self.is_to_machine(&said.to.number) => {
                self.world.held_back.machines += 1;
                return said.asks.then_some(said);
            }
            Class::Answer | Class::Security if is_known => {
                let verdict = self.may_answer(&said, class);
                if verdict == Verdict::Go {
                    self.send(said);
                    return None;
                }
                self.world.held_back.answers += 1;
                let unread = said.asks.then(|| said.clone());
                if verdict == Verdict::SayOnce {
                    self.warn_of_full_days(&said.to.number);
                    let phrase = Key::HeldBack.into();
                    self.send(Said {
                        phrase,
                        asks: false,
                        ..said
                    });
                }
                return unread;
            }
            Class::Notice | Class::Alarm => {
                let now = self.now;
                match budget::may_notify(self.talk(&said.to.number), class, now) {
                    Ok(()) => self.send(said),
                    Err(hour_ends) => self.gather(said, hour_ends),
                }
            }
            Class::Security
            | Class::Answer
            | Class::Nudge
            | Class::Round
            | Class::Stranger
            | Class::Service => self.send(said),
        }
        None
    }

    /// Whether what texts there says the same whenever we speak.
    fn is_to_machine(&self, number: &str) -> bool {
        let machine = self.view().talk(number).and_then(|talk| talk.machine);
        machine.is_some_and(|machine| machine.times >= limits::MACHINE_TIMES)
    }

    /// The operator is told of a phone that used up its answers day after day.
    fn warn_of_full_days(&mut self, number: &str) {
        let talk = self.view().talk(number);
        if talk.is_some_and(|talk| talk.full_days >= limits::FULL_DAYS) {
            self.warn_of_machine(number);
        }
    }

    /// The operator is told that a phone texts like a machine, and not soon again.
    pub(crate) fn warn_of_machine(&mut self, number: &str) {
        let today = self.now.date_naive();
        let told = self
            .view()
            .talk(number)
            .and_then(|talk| talk.machine_told_on);
        if told.is_some_and(|on| (today - on).num_days() < limits::MACHINE_TOLD_DAYS) {
            return;
        }
        let view = self.view();
        if let Some(said) = view.to_operator(view.machine_told(number)) {
            self.talk(number).machine_told_on = Some(today);
            self.send(said);
        }
    }

    fn send(&mut self, said: Said) {
        let id = self.world.message_id();
        let outbound = self.outbound(id, said);
        self.remember_said(&outbound);
        self.put_outbound(outbound);
    }

    fn outbound(&self, id: MessageId, said: Said) -> Outbound {
        let text = self.view().worded(&said);
        let hours = match said.purpose {
            Purpose::Answer { .. } => limits::ANSWER_HOURS,
            Purpose::Notice { .. } => limits::NOTICE_HOURS,
            Purpose::Service { .. } => limits::SERVICE_HOURS,
            Purpose::Announcement { .. } => limits::ANNOUNCEMENT_HOURS,
            Purpose::Nudge { .. } | Purpose::Welcome { .. } => {
                i64::from(self.setup.rules.expires_after_days) * DAY_HOURS
            }
        };
        Outbound::new(
            id,
            self.now,
            &said.to.number,
            // Names and values bring along what no keyboard of a phone has.
            sms::plain(&text).into_owned(),
            said.purpose,
            self.now + TimeDelta::hours(hours),
        )
    }

    /// What is said to a phone is known when it comes back.
    fn remember_said(&mut self, text: &Outbound) {
        let is_known = self.world.directory.phone(&text.to).is_some();
        if matches!(text.purpose, Purpose::Service { .. }) || !is_known {
            return;
        }
        if let Some(sum) = said::sum_of(&text.text) {
            let said = &mut self.talk(&text.to).said;
            said.retain(|before| *before != sum);
            if said.len() >= limits::ECHOES_KNOWN {
                said.remove(0);
            }
            said.push(sum);
        }
    }

    /// Whether the same was answered twice within the hour: once more helps nobody. An adviser has
    /// nobody above, and asks again to see what is new.
    pub(crate) fn is_said_enough(&self, said: &Said) -> bool {
        let view = self.view();
        let number = &said.to.number;
        let Some(talk) = view.talk(number) else {
            return false;
        };
        let hour_ago = self.now - TimeDelta::hours(1);
        let is_adviser = |person: PersonId| {
            let person = view.person(person);
            person.is_some_and(|person| person.role == Role::Adviser)
        };
        let text = view.worded(said);
        let last = talk.last_answer.as_ref();
        last.is_some_and(|(last, times)| *last == text && *times >= limits::SAME_ANSWER_TIMES)
            && talk.answered_at.iter().any(|at| *at > hour_ago)
            && !view.everyone_on(number).into_iter().any(is_adviser)
    }

    /// Whether a phone was not answered too often lately; this answer counts from now on.
    fn may_answer(&mut self, said: &Said, class: Class) -> Verdict {
        let number = &said.to.number;
        let view = self.view();
        let everyone = view.everyone_on(number).into_iter();
        let roles = everyone.filter_map(|person| Some(view.person(person)?.role));
        let allowance = roles.map(budget::answers).max().unwrap_or_default();
        let today = self.now.date_naive();
        let full_days = view.talk(number).map(|talk| budget::full_days(talk, today));
        let allowance = allowance.after_full_days(full_days.unwrap_or_default());
        let allowance = if class == Class::Security {
            allowance.with_urgent()
        } else {
            allowance
        };
        let text = view.worded(said);
        let now = self.now;
        let talk = self.talk(number);
        let verdict = budget::may_answer(talk, allowance, now);
        if verdict == Verdict::Go {
            let times = match &talk.last_answer {
                Some((last, times)) if *last == text && talk.answered_at.len() > 1 => *times,
                Some(_) | None => 0,
            };
            talk.last_answer = Some((text, times.saturating_add(1)));
        }
        verdict
    }

    /// One more notice for a phone that got enough of them in this hour: they wait until it ends
    /// and go as one text.
    fn gather(&mut self, said: Said, hour_ends: DateTime<Utc>) {
        self.world.held_back.notices += 1;
        let number = said.to.number.clone();
        let digest = self
            .view()
            .talk(&number)
            .and_then(|talk| talk.digest.clone());
        let waiting = digest.as_ref().and_then(|digest| {
            let text = self.world.outbox.get(digest.message)?.clone();
            (text.state == SendState::Ready).then_some(text)
        });
        let message = self.world.message_id();
        let (mut digest, try_at) = match (digest, waiting) {
            (Some(digest), Some(waiting)) => {
                let try_at = waiting.try_at;
                // An id stands for one text.
                let state = SendState::Cancelled;
                self.put_outbound(Outbound { state, ..waiting });
                (Digest { message, ..digest }, try_at)
            }
            (Some(_) | None, _) => {
                let empty = Digest {
                    message,
                    count: 0,
                    people: Vec::new(),
                };
                (empty, hour_ends)
            }
        };
        digest.count = digest.count.saturating_add(1);
        let about = ["name", "group"].into_iter();
        let about = about.filter_map(|arg| said.phrase.arg(arg)).next();
        if let Some(Value::Name(name)) = about
            && !digest.people.contains(name)
            && digest.people.len() < limits::DIGEST_PEOPLE_MAX
        {
            digest.people.push(name.clone());
        }
        let people = digest.people.iter().map(|name| Value::name(name));
        let args = args! {
            "count" => digest.count,
            "people" => Value::List(people.collect()),
        };
        let phrase = Phrase::new(Key::Digest, args);
        let text = self.outbound(message, Said { phrase, ..said });
        self.put_outbound(Outbound { try_at, ..text });
        self.talk(&number).digest = Some(digest);
    }
}
