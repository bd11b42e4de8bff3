//! A person must see a text: it waits for the adviser, who is told, and its sender reads what was
//! really done. First help comes at once where a life may hang on it.

use budwood_parser::Alarm;
use budwood_scheduler::{Body, Hold, Person, PersonId, Reason, Role, decide::Concern};
use chrono::{NaiveDate, TimeDelta};

use crate::{
    engine::{
        outcome::Outcome,
        said::{Done, Said},
        step::Step,
        turn::Turn,
    },
    wording::Key,
    words::{limits, matter::Matter, message::Purpose},
};

impl Step<'_> {
    /// Lets a text wait for the adviser and says so, if it is so.
    pub(crate) fn tell(&mut self, turn: &Turn, concern: Concern) -> Done {
        let view = self.view();
        let Some(speaker) = view.person(turn.speaker).cloned() else {
            return Outcome::FromStranger.silently();
        };
        // An adviser has nobody above; what they can text helps more.
        if speaker.role == Role::Adviser && !concern.is_danger() {
            let said = view.reply(turn, Key::HelpAdviser);
            return Outcome::NotUnderstood.saying([said]);
        }
        let notice = view.matter_notice(turn, concern);
        let is_told = notice.is_some();
        let is_news = !self.is_told_lately(turn, concern);
        let has_place = self.let_wait(turn, concern);
        let is_told = is_told && has_place;
        let mut phrase = self.view().told(&speaker, concern, is_told);
        if concern == Concern::Alarm(Alarm::Grief) {
            let bereaved = self.view().bereaved(turn);
            if !bereaved.contains(&turn.speaker) {
                let key = if is_told { Key::Told } else { Key::NotTold };
                phrase = self.view().signed(&speaker, key);
            }
            self.leave_alone_all(turn, &bereaved);
        }
        if is_told && concern == Concern::Alarm(Alarm::Complaint) {
            phrase = self.owed_an_answer(turn, &speaker).unwrap_or(phrase);
        }
        let said = self.view().reply(turn, phrase);
        let notice = notice.filter(|_| is_news && has_place);
        Outcome::ForPerson.saying([Some(said), notice].into_iter().flatten())
    }

    fn leave_alone_all(&mut self, turn: &Turn, people: &[PersonId]) {
        for person in people {
            self.leave_alone(turn, *person, None, Reason::Grief);
        }
    }

    /// Leaves a person in peace until a day, or until the adviser says go.
    pub(crate) fn leave_alone(
        &mut self,
        turn: &Turn,
        person: PersonId,
        until: Option<NaiveDate>,
        reason: Reason,
    ) {
        let view = self.view();
        let hold = Hold {
            since: view.today_of(person),
            until,
            reason,
        };
        let telling = view.telling(turn, person);
        self.record(telling, None, Body::LeftAlone { person, hold });
    }

    /// Whether the adviser was told of the same trouble of this phone a moment ago.
    pub(crate) fn is_told_lately(&self, turn: &Turn, concern: Concern) -> bool {
        let lately = self.now - TimeDelta::minutes(limits::TOLD_MINUTES);
        let same = |matter: &Matter| {
            let of_it = matter.number == turn.number && matter.concern == concern;
            of_it && matter.at > lately && matter.message != turn.message
        };
        self.world.matters.all().any(same)
    }

    /// Whether there was a place for it: of one phone only so many wait, but danger always does. What
    /// has nobody above its sender to read it waits for nobody.
    pub(crate) fn let_wait(&mut self, turn: &Turn, concern: Concern) -> bool {
        let view = self.view();
        let speaker = view.person(turn.speaker);
        let is_adviser = speaker.filter(|one| one.role == Role::Adviser);
        if is_adviser.is_some_and(|one| view.adviser_of(one).is_none()) {
            return false;
        }
        let of_phone = |matter: &&Matter| matter.number == turn.number;
        let own = self.world.matters.all().filter(of_phone).count();
        if own >= limits::WAITING_OF_PHONE_MAX && !concern.is_danger() {
            return false;
        }
        let mut matter = Matter {
            message: turn.message,
            at: self.now,
            person: turn.speaker,
            number: turn.number.clone(),
            concern,
            text: turn.text.trim().to_owned(),
            read_at: None,
            read_by: None,
            passed_to: None,
            told: 0,
            tell_at: None,
        };
        matter.tell_at = self.view().tell_at(&matter);
        self.put_matter(matter);
        true
    }

    /// Posts what is said; where that is in vain, a person looks instead.
    pub(crate) fn say(&mut self, said: Vec<Said>) {
        for said in said {
            let Some(unsaid) = self.post(said) else {
                continue;
            };
            for said in self.instead_of(unsaid) {
                self.post(said);
            }
        }
    }

    /// What would have been the same answer a third time, or is a question that nobody will read.
    fn instead_of(&mut self, unsaid: Said) -> Vec<Said> {
        // The next text must not answer what was never asked.
        if unsaid.asks && !self.is_said_enough(&unsaid) {
            self.talk(&unsaid.to.number).open = None;
        }
        let Purpose::Answer { to } = unsaid.purpose else {
            return Vec::new();
        };
        let people = self.view().everyone_on(&unsaid.to.number);
        let received = self.change.received.last();
        let text = received.filter(|received| received.id == to);
        let (Some(speaker), Some(text)) = (people.first(), text) else {
            return Vec::new();
        };
        // Nobody stands above the adviser, and the answer was given twice.
        let is_adviser = |person: &Person| person.role == Role::Adviser;
        if self.view().person(*speaker).is_some_and(is_adviser) {
            return Vec::new();
        }
        // Who was told twice that a person looks knows it.
        let is_person = |matter: &Matter| matter.message == to;
        if self.world.matters.all().any(is_person) {
            return Vec::new();
        }
        let turn = Turn {
            number: unsaid.to.number,
            message: to,
            speaker: *speaker,
            target: *speaker,
            text: text.text.clone(),
            sent_at: self.now,
        };
        self.tell(&turn, Concern::Unclear).said
    }

    /// The time has come to say that texts are old.
    pub(crate) fn tell_of_age(&mut self) -> Vec<Said> {
        let old = self.world.matters.due(self.now);
        let said = self.view().told_of_age(&old);
        for mut matter in old {
            matter.told = matter.told.saturating_add(1);
            matter.tell_at = self.view().tell_at(&matter);
            self.put_matter(matter);
        }
        said
    }
}
