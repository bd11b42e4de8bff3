//! Somebody is taken out of the records: at once out of everything that memory holds, and then,
//! some records at a time, out of the facts and texts in the store.
//!
//! Facts stay, for the figures of the land, with nobody's name. What must go is stored until it is
//! gone, so that a start after a crash goes on with it.

use budwood_scheduler::{Body, Consent, Event, Hold, MessageId, Person, PersonId, Reason};

use crate::{
    engine::{
        memory::{
            erasures::{is_on_its_way, tells_of, without_words},
            world::World,
        },
        step::Step,
    },
    store::{Change, StoreError, read_line},
    words::{
        erasure::{self, Erasure, UsedNumber},
        limits,
        matter::Matter,
        message::{Audience, Deed, Outbound, Question, Received, Talk},
        promise::Promise,
    },
};

impl Step<'_> {
    /// Takes a person's name and numbers out. The code that stands for them says nothing.
    pub(crate) fn erase(&mut self, person: PersonId) {
        let Some(person) = self.world.directory.person(person).cloned() else {
            return;
        };
        let what = self.erasure(&person);
        for used in &what.numbers {
            self.unlink(person.id, &used.number);
        }
        self.forget_matters(&what);
        self.forget_promises(&what);
        self.forget_talks(&what);
        self.forget_parts(&what);
        self.forget_reasons(&what);
        let erased = Consent::Withdrawn {
            on: self.view().today_of(person.id),
            how: "erased".to_owned(),
        };
        self.put_person(Person {
            name: erasure::code(person.id),
            erased: true,
            hold: None,
            consent: erased.clone(),
            sharing: erased,
            ..person
        });
        let load = self.world.load.as_ref();
        if let Some(load) = load.and_then(|load| load.without(what.person)) {
            self.put_load(load);
        }
        self.change.erasures.push(what.clone());
        let World {
            erasures, outbox, ..
        } = &mut *self.world;
        erasures.begin(what, outbox.all());
    }

    /// What must go. The next text is the last word to them.
    fn erasure(&self, person: &Person) -> Erasure {
        let directory = &self.world.directory;
        let called = person.called();
        let mut others = directory.persons().filter(|other| other.id != person.id);
        let is_shared = others.any(|other| other.called().eq_ignore_ascii_case(called));
        let used = directory.phones().flat_map(|phone| {
            let is_alone = phone.links.iter().all(|link| link.person == person.id);
            let theirs = phone.links.iter().filter(|link| link.person == person.id);
            theirs.map(move |link| UsedNumber {
                number: phone.number.clone(),
                since: (!is_alone).then_some(link.since),
                until: link.until.filter(|_| !is_alone),
            })
        });
        Erasure {
            person: person.id,
            name: person.name.clone(),
            called: (!is_shared).then(|| called.to_owned()),
            numbers: used.collect(),
            last: self.world.next_message(),
        }
    }

    fn unlink(&mut self, person: PersonId, number: &str) {
        let Some(mut phone) = self.world.directory.phone(number).cloned() else {
            return;
        };
        phone.links.retain(|link| link.person != person);
        if phone.links.is_empty() {
            self.drop_phone(number);
        } else {
            self.world.directory.put_phone(phone.clone());
            self.change.phones.push(phone);
        }
    }

    fn forget_matters(&mut self, what: &Erasure) {
        let matters: Vec<Matter> = self.world.matters.all().cloned().collect();
        for matter in matters {
            if matter.person == what.person {
                self.close_matter(matter.message);
            } else if matter.passed_to == Some(what.person) {
                self.put_matter(Matter {
                    passed_to: None,
                    ..matter
                });
            } else if let Some(text) = what.without_name(&matter.text) {
                self.put_matter(Matter { text, ..matter });
            }
        }
    }

    fn forget_promises(&mut self, what: &Erasure) {
        let promises: Vec<Promise> = self.world.promises.values().cloned().collect();
        for promise in promises {
            let is_theirs = promise.by == what.person;
            if is_theirs || promise.to == Audience::Person(what.person) {
                self.drop_promise(promise.message);
            } else if let Some(words) = what.without_name(&promise.words) {
                self.put_promise(Promise { words, ..promise });
            }
        }
    }

    /// Why others are left in peace may name them.
    fn forget_reasons(&mut self, what: &Erasure) {
        let persons = self.world.directory.persons();
        let others = persons.filter(|person| person.id != what.person);
        let changed = |person: &Person| {
            let hold = person.hold.as_ref()?;
            let hold = hold_without(what, person.id, hold)?;
            Some(Person {
                hold: Some(hold),
                ..person.clone()
            })
        };
        let changed: Vec<Person> = others.filter_map(changed).collect();
        for person in changed {
            self.put_person(person);
        }
    }

    fn forget_parts(&mut self, what: &Erasure) {
        let now = self.now;
        let parts = &mut self.world.parts;
        let gone = parts.take_from(|from| what.is_theirs(from, now));
        let ids: Vec<MessageId> = gone.iter().map(|part| part.id).collect();
        self.change.parts.retain(|part| !ids.contains(&part.id));
        self.change.gone_parts.extend(ids);
    }

    /// What others talked about with us, and what was said on a phone that others go on using.
    fn forget_talks(&mut self, what: &Erasure) {
        let changed = |(number, talk): (&String, &Talk)| {
            let is_theirs = what.numbers.iter().any(|used| used.number == *number);
            let forgetful = forgetful(talk.clone(), what, is_theirs);
            (forgetful != *talk).then(|| (number.clone(), forgetful))
        };
        let talks: Vec<(String, Talk)> = self.world.talks.iter().filter_map(changed).collect();
        for (number, talk) in talks {
            *self.talk(&number) = talk;
        }
    }

    /// Looks through some more records. Everything before must be in the store.
    pub(crate) fn erase_some(&mut self) -> Result<(), StoreError> {
        let Some(job) = self.world.erasures.unfinished() else {
            return Ok(());
        };
        let what = job.what.clone();
        let records = self
            .store
            .records(job.at.as_deref(), limits::ERASE_RECORDS)?;
        let mut found = Change::default();
        for record in &records {
            read_line(&record.line, &mut found)?;
        }
        for event in found.events {
            self.erase_from_fact(&what, event);
        }
        let received = found.received.into_iter();
        let received = received.filter_map(|text| without_sender(&what, text));
        self.change.received.extend(received);
        for outbound in found.outbound {
            self.erase_from_outbound(&what, outbound);
        }
        // Not before: a job that is through and waits for nothing is done.
        if let Some(job) = self.world.erasures.unfinished() {
            job.is_through = records.len() < limits::ERASE_RECORDS;
            job.at = records.into_iter().last().map(|record| record.key);
        }
        self.close_erasures();
        Ok(())
    }

    /// A fact stays as it is, but for words about them in it.
    fn erase_from_fact(&mut self, what: &Erasure, event: Event) {
        let Body::LeftAlone { person, hold } = &event.body else {
            return;
        };
        let Some(hold) = hold_without(what, *person, hold) else {
            return;
        };
        let body = Body::LeftAlone {
            person: *person,
            hold,
        };
        let event = Event { body, ..event };
        self.change.events.push(event.clone());
        self.world.keep_event(event);
    }

    fn erase_from_outbound(&mut self, what: &Erasure, outbound: Outbound) {
        if !tells_of(what, &outbound) || is_on_its_way(&outbound) {
            return;
        }
        if let Some(kept) = self.world.outbox.get(outbound.id).cloned() {
            self.put_outbound(kept);
        } else {
            self.change.outbound.push(without_words(what, outbound));
        }
    }
}

/// A hold without what it tells of them; none where it stays as it is.
fn hold_without(what: &Erasure, person: PersonId, hold: &Hold) -> Option<Hold> {
    let Reason::Told(words) = &hold.reason else {
        return None;
    };
    let kept = if person == what.person {
        String::new()
    } else {
        what.without_name(words)?
    };
    (kept != *words).then(|| Hold {
        reason: Reason::Told(kept),
        ..hold.clone()
    })
}

/// A text in without what is theirs; none where it stays as it is.
fn without_sender(what: &Erasure, received: Received) -> Option<Received> {
    if received.id > what.last {
        return None;
    }
    if what.is_theirs(&received.from, received.at) {
        // The id of a call that nobody answered names the number.
        let names_them = |id: &String| what.without_name(id).is_some();
        let (from, text) = (String::new(), String::new());
        return Some(Received {
            from,
            text,
            gateway_id: received.gateway_id.filter(|id| !names_them(id)),
            ..received
        });
    }
    let text = what.without_name(&received.text)?;
    Some(Received { text, ..received })
}

/// A conversation without what tells of them.
fn forgetful(mut talk: Talk, what: &Erasure, is_theirs: bool) -> Talk {
    let is_about_them = |text: &str| is_theirs || what.is_named_in(text);
    if let Some(open) = &talk.open {
        let waits = match &open.question {
            Question::ForWhom { people, text, .. } => {
                people.contains(&what.person) || is_about_them(text)
            }
            Question::Code {
                deed: Deed::Visit { text, .. },
                ..
            } => is_about_them(text),
            Question::Code {
                deed: Deed::HandOver { to, .. },
                ..
            } => *to == what.person,
            Question::Code {
                deed: Deed::Announce { to, words },
                ..
            } => *to == Audience::Person(what.person) || is_about_them(words),
            Question::Code {
                deed: Deed::Lost { person } | Deed::Found { person } | Deed::Moved { person, .. },
                ..
            } => *person == what.person,
            Question::Code {
                deed: Deed::Pass { passing },
                ..
            } => passing.is_about(what.person) || is_about_them(&passing.names()),
            Question::ConfirmMany(told) => told.iter().any(|one| one.person == what.person),
            Question::Confirm(_) | Question::Ask { .. } | Question::Code { .. } => false,
        };
        let rest = open.rest.as_deref().is_some_and(is_about_them);
        if waits || rest || open.person == Some(what.person) {
            talk.open = None;
        }
    }
    if talk
        .last_text
        .as_ref()
        .is_some_and(|(text, _)| is_about_them(text))
    {
        talk.last_text = None;
    }
    if talk
        .last_answer
        .as_ref()
        .is_some_and(|(text, _)| is_about_them(text))
    {
        talk.last_answer = None;
    }
    if let Some(digest) = &mut talk.digest {
        digest.people.retain(|name| !what.is_named_in(name));
    }
    talk
}
