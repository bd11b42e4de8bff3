//! What is done at a desk of the office instead of by text: a text that waits is stored, asked about,
//! passed on or closed, and a fact is put right.
//!
//! Each does what the same text would, by the same functions, and is told by whoever sits there. They
//! showed who they are when they came in, so no further code is asked; what a text would answer them
//! stands on the page.

use budwood_parser::{Correction, Field};
use budwood_scheduler::{
    Body, EventId, MessageId, Person, PersonId, Source,
    decide::{Amend, Change},
};

use crate::{
    engine::{
        looks::{Unseen, Viewer},
        outcome::Outcome,
        questions::read_back::draft_of,
        roles::{self, Verb},
        said::{Done, Said},
        step::Step,
        turn::{Telling, Turn},
    },
    wording::Key,
    words::{
        limits,
        matter::Matter,
        message::{Purpose, Received},
    },
};

/// Through which "gateway" a reason came that was typed at a desk.
const DESK: &str = "office";

/// What is done at a desk.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum DeskDeed {
    /// A text that waits.
    Waiting {
        /// Which.
        message: MessageId,
        /// What with it.
        with: WithText,
    },
    /// A fact is wrong.
    Fix {
        /// Which.
        fact: EventId,
        /// The right number; without one the fact is taken back.
        count: Option<u32>,
        /// Why.
        reason: String,
    },
}

/// What is done with a text that waits.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WithText {
    /// It is stored by this reading, from 1.
    Accept(u32),
    /// Its sender is asked to write it again.
    Ask,
    /// A colleague reads it.
    Pass(PersonId),
    /// It is seen to.
    Close,
}

impl Step<'_> {
    /// Somebody at a desk does something.
    pub(crate) fn desk(&mut self, viewer: &Viewer, deed: DeskDeed) -> Vec<Said> {
        let (told, said) = match self.at_desk(viewer, deed) {
            Ok(Done { outcome, said }) => (Ok(outcome), said),
            Err(unseen) => (Err(unseen), Vec::new()),
        };
        self.told.done = Some(told);
        let is_for_the_page = |one: &Said| {
            one.to.number == viewer.number && matches!(one.purpose, Purpose::Answer { .. })
        };
        said.into_iter()
            .filter(|one| !is_for_the_page(one))
            .collect()
    }

    fn at_desk(&mut self, viewer: &Viewer, deed: DeskDeed) -> Result<Done, Unseen> {
        let view = self.view();
        let person = view.viewer(viewer).ok_or(Unseen::Stranger)?.clone();
        match deed {
            DeskDeed::Waiting { message, with } => {
                let waiting = view.waiting_for(&person);
                let matter = waiting.into_iter().find(|one| one.message == message);
                let matter = matter.ok_or(Unseen::Nothing(Vec::new()))?.clone();
                let turn = Turn {
                    number: viewer.number.clone(),
                    message,
                    speaker: person.id,
                    target: matter.person,
                    text: matter.text.clone(),
                    sent_at: matter.at,
                };
                self.with_text(&turn, &person, &matter, &with)
            }
            DeskDeed::Fix {
                fact,
                count,
                reason,
            } => self.fix_at_desk(viewer, &person, (fact, count, reason)),
        }
    }

    fn with_text(
        &mut self,
        turn: &Turn,
        person: &Person,
        matter: &Matter,
        with: &WithText,
    ) -> Result<Done, Unseen> {
        match with {
            WithText::Accept(number) => {
                let readings = (1_u32..).zip(self.view().readings_of(matter));
                let mut chosen = readings.filter(|(at, _)| at == number);
                let (_, facts) = chosen.next().ok_or(Unseen::Nothing(Vec::new()))?;
                let telling = Telling {
                    by: Some(person.id),
                    source: Source::OwnText,
                    message: Some(matter.message),
                };
                let done = self.store_told(turn, telling, &facts);
                self.close_shown(person.id, matter.message);
                Ok(done)
            }
            WithText::Ask => {
                let asked = Turn {
                    number: matter.number.clone(),
                    speaker: matter.person,
                    ..turn.clone()
                };
                let said = self.view().with_example(&asked, Key::Unclear);
                self.close_shown(person.id, matter.message);
                Ok(Outcome::AskedForSlot.saying([said]))
            }
            WithText::Pass(to) => {
                let others = self.view().colleagues(person);
                let to = others.into_iter().find(|one| one.id == *to);
                let to = to.ok_or(Unseen::Nothing(Vec::new()))?.clone();
                Ok(self.pass_to(turn, person, matter, &to))
            }
            WithText::Close => Ok(self.close_and_say(turn, person, matter)),
        }
    }

    fn fix_at_desk(
        &mut self,
        viewer: &Viewer,
        person: &Person,
        (fact, count, reason): (EventId, Option<u32>, String),
    ) -> Result<Done, Unseen> {
        if !roles::may(person.role, Verb::Fix) {
            return Err(Unseen::NotTheirs(Vec::new()));
        }
        let nothing = || Unseen::Nothing(Vec::new());
        let view = self.view();
        let old = view.fact_asked(fact).ok_or_else(nothing)?;
        let is_report = matches!(old.body, Body::Reported { .. });
        let owner = view
            .owner_of(&old)
            .filter(|_| is_report && view.counts(&old));
        let owner = owner.and_then(|owner| view.farmer_looked_at(person, owner));
        let owner = owner.ok_or_else(nothing)?.id;
        let draft = draft_of(&self.world.directory, &old).ok_or_else(nothing)?;
        let reason: String = reason
            .trim()
            .chars()
            .take(limits::REASON_CHARS_MAX)
            .collect();
        if reason.is_empty() || (count.is_some() && draft.details.count.is_none()) {
            return Err(nothing());
        }
        let now = self.now;
        let turn = Turn {
            number: viewer.number.clone(),
            message: self.world.message_id(),
            speaker: person.id,
            target: owner,
            text: reason.clone(),
            sent_at: now,
        };
        let talk = self.talk(&viewer.number);
        talk.last = vec![fact];
        talk.last_at = Some(now);
        let amend = match count {
            None => Amend::Undo,
            Some(_) => {
                let mut right = draft;
                right.details.count = count;
                Amend::Change(Box::new(Change {
                    index: 0,
                    field: Field::Count,
                    said: Correction::default(),
                    now: right,
                }))
            }
        };
        let done = self.amend(&turn, amend);
        self.change.received.push(Received {
            id: turn.message,
            at: now,
            gateway: DESK.to_owned(),
            gateway_id: None,
            parts: Vec::new(),
            from: viewer.number.clone(),
            to: DESK.to_owned(),
            text: reason,
            sent_at: None,
            outcome: done.outcome.name().to_owned(),
        });
        Ok(done)
    }
}
