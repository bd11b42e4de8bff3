//! A text comes in: who is it, what do they say, what is to be done.

use budwood_parser::Alarm;
use budwood_scheduler::{
    MessageId, PersonId,
    decide::{Concern, Decision, Quiet, Reply, Unclear},
};
use chrono::{DateTime, Utc};

use crate::{
    engine::{
        deeds::codes::Given,
        memory::duplicates::{Hearing, Sender, believable},
        outcome::Outcome,
        said::{Done, Said, To},
        step::Step,
        turn::Turn,
    },
    wording::Key,
    words::{
        message::{Purpose, Received},
        phone_number::{self, SenderKind},
        traffic::Inbound,
    },
};

impl Step<'_> {
    /// Takes a text in. Whatever it is, it is kept as it came.
    pub(crate) fn text(&mut self, inbound: Inbound) -> Vec<Said> {
        self.world.links.heard(&inbound.gateway, self.now);
        let sender = self.sender(&inbound.from);
        let hearing = self.hearing(&sender, &inbound);
        if hearing == Hearing::Again {
            self.told.outcome = Some(Outcome::DeliveredAgain);
            return Vec::new();
        }
        self.world.links.passed(&inbound.gateway).texts_in += 1;
        let id = self.world.message_id();
        let done = match &sender {
            SenderKind::Name => self.heard_service(Outcome::FromName),
            SenderKind::ShortCode => self.heard_service(Outcome::FromShortCode),
            SenderKind::Number(number) if self.setup.own_numbers.contains(number) => self.echo(),
            SenderKind::Number(_) if hearing == Hearing::Twice => {
                Outcome::DeliveredTwice.silently()
            }
            SenderKind::Number(number) => self.hear(number, id, &inbound),
        };
        self.told.outcome = Some(done.outcome);
        let from = match sender {
            SenderKind::Number(number) => number,
            SenderKind::Name | SenderKind::ShortCode => inbound.from,
        };
        self.change.received.push(Received {
            id,
            at: self.now,
            gateway: inbound.gateway,
            gateway_id: inbound.gateway_id.filter(|id| !id.is_empty()),
            parts: Vec::new(),
            from,
            to: inbound.to,
            text: inbound.text,
            sent_at: inbound.sent_at,
            outcome: done.outcome.name().to_owned(),
        });
        done.said
    }

    /// What stands in the place of the sender.
    pub(crate) fn sender(&self, from: &str) -> SenderKind {
        // Most come from a number on the list, as it is written there.
        if self.world.directory.phone(from).is_some() {
            SenderKind::Number(from.to_owned())
        } else {
            phone_number::kind(from, &self.setup.country)
        }
    }

    /// Whether a text was taken in before.
    fn hearing(&mut self, sender: &SenderKind, inbound: &Inbound) -> Hearing {
        let name = match sender {
            SenderKind::Number(number) => number,
            SenderKind::Name | SenderKind::ShortCode => &inbound.from,
        };
        let sender = Sender {
            name,
            is_known: self.world.directory.phone(name).is_some(),
        };
        self.world.heard.hears(sender, inbound, self.now)
    }

    /// Finds out who texts. A number is not a person.
    fn hear(&mut self, number: &str, message: MessageId, inbound: &Inbound) -> Done {
        let people: Vec<PersonId> = self.view().everyone_on(number);
        let sent_at = believable(inbound.sent_at, self.now).unwrap_or(self.now);
        let text = inbound.text.clone();
        let [first, others @ ..] = people.as_slice() else {
            return self.stranger(number, message, &text);
        };
        if self.world.directory.is_lost(number) {
            return self.heard_from_lost(number, message, (text, sent_at), *first);
        }
        if let Some(done) = self.watch_for_machines(number, &text) {
            return done;
        }
        let now = self.now;
        let talk = self.talk(number);
        talk.heard_at = Some(now);
        talk.heard_by = Some(inbound.gateway.clone());
        talk.fails_since = None;
        if let Some(done) = self.helper_heard(number, message, &text) {
            return done;
        }
        let turn = |speaker: PersonId, text: String, sent_at: DateTime<Utc>| Turn {
            number: number.to_owned(),
            message,
            speaker,
            target: speaker,
            text,
            sent_at,
        };
        if others.is_empty() {
            return self.converse(turn(*first, text, sent_at));
        }
        if let Some((speaker, waiting, waiting_sent_at)) = self.chosen(number, &text) {
            return self.converse(turn(speaker, waiting, waiting_sent_at));
        }
        match self.view().who_of(number, &people, &text) {
            Some(speaker) => self.converse(turn(speaker, text, sent_at)),
            None => self.ask_for_whom(number, message, people, text, sent_at),
        }
    }

    fn stranger(&mut self, number: &str, message: MessageId, text: &str) -> Done {
        // Abroad, and to services, an answer may cost any sum.
        if !phone_number::is_at_home(number, &self.setup.country) {
            self.world.held_back.strangers += 1;
            return Outcome::FromStranger.silently();
        }
        let Some((language, key)) = self.view().stranger_asks(text) else {
            return Outcome::FromStranger.silently();
        };
        if !self.world.strangers.may_answer(number, self.now) {
            self.world.held_back.strangers += 1;
            return Outcome::FromStranger.silently();
        }
        let to = To {
            number: number.to_owned(),
            language,
        };
        Outcome::FromStranger.saying([Said {
            to,
            phrase: key.into(),
            purpose: Purpose::Answer { to: message },
            asks: false,
        }])
    }

    /// Reads a text and does what is decided. Of a text about several people the rest waits until
    /// what the first part asks is answered.
    fn converse(&mut self, mut turn: Turn) -> Done {
        for group in self.view().groups_spoken_of(turn.speaker) {
            self.world.make_names_ready(group);
        }
        if let Some(done) = self.take_rows(&mut turn) {
            return done;
        }
        let waiting = self.view().open_question(&turn.number);
        let mut rest = waiting.and_then(|open| open.rest);
        let view = self.view();
        let speaker = view.person(turn.speaker);
        if let Some((told, others)) = speaker.and_then(|one| view.told_of_many(&turn, one)) {
            return self.ask_many(&turn, told, others);
        }
        let parts = speaker.and_then(|speaker| view.first_of_many(&turn, speaker));
        if let Some((first, others)) = parts {
            turn.text = first;
            rest = Some(others);
        }
        let again = turn.clone();
        let mut done = self.converse_once(turn);
        // Who has said STOP, or is gone, says nothing more.
        let goes_on = done.outcome != Outcome::Stopped
            && self
                .view()
                .everyone_on(&again.number)
                .contains(&again.speaker);
        let Some(rest) = rest.filter(|_| goes_on) else {
            return done;
        };
        match &mut self.talk(&again.number).open {
            Some(open) => open.rest = Some(rest),
            None => {
                let turn = Turn {
                    text: rest,
                    target: again.speaker,
                    ..again
                };
                done.said.extend(self.converse(turn).said);
            }
        }
        done
    }

    /// Reads a text in its scene and does what is decided.
    fn converse_once(&mut self, mut turn: Turn) -> Done {
        let Some(speaker) = self.view().person(turn.speaker).cloned() else {
            return Outcome::FromStranger.silently();
        };
        match self.code_given(&turn, &speaker) {
            Some(Given::Done(done)) => return done,
            Some(Given::Visit { text, sent_at }) => {
                turn.text = text;
                turn.sent_at = sent_at;
            }
            None => {}
        }
        // A sheet that waited for a code.
        if let Some(done) = self.take_rows(&mut turn) {
            return done;
        }
        if let Some(done) = self.put_back(&turn, &speaker) {
            return done;
        }
        let reading = self.view().read(&turn, speaker.role);
        if let Some(done) = self.accept_read(&turn, &reading) {
            return done;
        }
        if let Some(done) = self.many_answered(&turn, &reading) {
            return done;
        }
        if let Some(which) = self.view().which_of(&turn, &speaker, &reading) {
            let said = self.view().reply(&turn, which);
            return Outcome::AskedForWhom.saying([said]);
        }
        if let Some(target) = self.view().spoken_for(&turn, &speaker, &reading) {
            turn.target = target;
        }
        self.reach_theirs(&turn, &speaker, &reading);
        self.reach_contested(&turn, &reading);
        if self.view().is_same_again(&turn, &reading) {
            return self.same_again(&turn);
        }
        let decision = self.view().decide(&turn, &reading, speaker.role);
        if self.view().needs_visit(&turn, speaker.role, &decision) {
            let visit = self.view().visit(&turn);
            return self.ask_code(&turn, visit);
        }
        let at = self.now;
        self.talk(&turn.number).last_text = Some((turn.text.trim().to_owned(), at));
        let told = if let Decision::Both(told, _) = &decision {
            told
        } else {
            &decision
        };
        if matches!(told, Decision::Record(_)) {
            self.learn_language(&turn, &reading);
        }
        self.act(&turn, decision)
    }

    /// Said once only.
    fn same_again(&self, turn: &Turn) -> Done {
        let view = self.view();
        let said = view.reply(turn, Key::SameAgain);
        let text = view.worded(&said);
        let last = view
            .talk(&turn.number)
            .and_then(|talk| talk.last_answer.as_ref());
        let is_said = last.is_some_and(|(last, _)| *last == text);
        Outcome::SameAgain.saying((!is_said).then_some(said))
    }

    fn act(&mut self, turn: &Turn, decision: Decision) -> Done {
        if !matches!(decision, Decision::Help(_) | Decision::Silent(_)) {
            self.talk(&turn.number).unclear = 0;
        }
        match decision {
            // What somebody tells of another is confirmed first: a name is soon misread.
            Decision::Record(facts) if turn.target != turn.speaker => {
                self.ask_confirm(turn, facts, &[])
            }
            Decision::Record(facts) | Decision::Reply(Reply::Yes(facts)) => {
                self.store_facts(turn, &facts)
            }
            Decision::Confirm { facts, why } => self.ask_confirm(turn, facts, &why),
            Decision::Ask { facts, missing } => self.ask_slot(turn, facts, missing),
            Decision::Amend(amend) => self.amend(turn, amend),
            Decision::Answer(answer) => self.answer_to(turn, answer),
            Decision::Reply(Reply::No) => self.drop_question(turn),
            Decision::Reply(Reply::Seen) => Outcome::Seen.silently(),
            Decision::Reply(Reply::Done) => match self.close_read(turn) {
                Some(done) => done,
                None => self.nudge_done(turn),
            },
            Decision::Reply(Reply::Later(days)) => self.nudge_later(turn, days),
            Decision::Reply(Reply::Choice(_)) | Decision::Silent(Quiet::NothingAsked) => {
                Outcome::NothingWasAsked.silently()
            }
            Decision::Help(Unclear::NoReport | Unclear::Stranger) => self.give_example(turn),
            Decision::Help(Unclear::NotDone) => {
                Outcome::Chat.saying([self.view().with_example(turn, Key::OnlyDone)])
            }
            Decision::Help(Unclear::NothingAsked) => self.nothing_open(turn),
            Decision::Silent(
                Quiet::Courtesy | Quiet::Stance(_) | Quiet::NotWork | Quiet::Stranger,
            ) => Outcome::Chat.silently(),
            Decision::Person(Concern::Alarm(Alarm::Number)) => {
                let moved = self.new_number(turn);
                moved.unwrap_or_else(|| self.tell(turn, Concern::Alarm(Alarm::Number)))
            }
            Decision::Person(concern) => self.tell(turn, concern),
            Decision::Both(told, beside) => {
                let mut done = self.act(turn, *told);
                done.said.extend(self.act(turn, *beside).said);
                done
            }
        }
    }
}
