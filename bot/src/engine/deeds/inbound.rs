//! A text comes in: who is it, what do they say, what is to be done.

use budwood_parser::{Kind, Known, Reading, Sender};
use budwood_scheduler::{
    MessageId, Person, PersonId, Role,
    decide::{Answer, Decision, Last, Nudged, Pending, Plot, Quiet, Reply, Scene, Unclear, decide},
};
use chrono::{DateTime, TimeDelta, Utc};

use super::{due_index::points_of, facts::draft_of};
use crate::{
    args,
    engine::{
        memory::duplicates::CAME_TWICE,
        step::{Step, civil_day},
        turn::Turn,
    },
    words::{
        limits,
        message::{Open, Question, Received},
        phone_number::{self, SenderKind},
        traffic::Inbound,
    },
};

impl Step<'_> {
    /// Takes a text in. Whatever it is, it is kept as it came.
    pub(crate) fn text(&mut self, inbound: Inbound) {
        if let Some(gateway_id) = &inbound.gateway_id {
            let key = (inbound.gateway.clone(), gateway_id.clone());
            if !self.world.heard.is_new_id(key) {
                self.told.outcome = Some("delivered again");
                return;
            }
        }
        let id = self.world.message_id();
        // Most come from a number on the list, as it is written there.
        let sender = if self.world.directory.phone(&inbound.from).is_some() {
            SenderKind::Number(inbound.from.clone())
        } else {
            phone_number::kind(&inbound.from, &self.setup.country)
        };
        let outcome = match &sender {
            SenderKind::Name => "from a name",
            SenderKind::ShortCode => "from a short code",
            SenderKind::Number(number) if self.setup.own_numbers.contains(number) => "echo",
            SenderKind::Number(number) if self.came_twice(number, &inbound) => CAME_TWICE,
            SenderKind::Number(number) => self.hear(number, id, &inbound),
        };
        self.told.outcome = Some(outcome);
        let from = match sender {
            SenderKind::Number(number) => number,
            SenderKind::Name | SenderKind::ShortCode => inbound.from,
        };
        self.change.received.push(Received {
            id,
            at: self.now,
            gateway: inbound.gateway,
            gateway_id: inbound.gateway_id,
            from,
            to: inbound.to,
            text: inbound.text,
            sent_at: inbound.sent_at,
            outcome: outcome.to_owned(),
        });
    }

    /// Finds out who texts. A number is not a person.
    fn hear(&mut self, number: &str, message: MessageId, inbound: &Inbound) -> &'static str {
        let people: Vec<PersonId> = self
            .world
            .directory
            .phone(number)
            .map(|phone| phone.people().collect())
            .unwrap_or_default();
        let sent_at = self.believable(inbound.sent_at);
        let text = inbound.text.clone();
        let [first, others @ ..] = people.as_slice() else {
            return self.stranger(number, message, &text);
        };
        let now = self.now;
        self.talk(number).heard_at = Some(now);
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
        match self.who_of(number, &people, &text) {
            Some(speaker) => self.converse(turn(speaker, text, sent_at)),
            None => self.ask_for_whom(number, message, people, text, sent_at),
        }
    }

    fn stranger(&mut self, number: &str, message: MessageId, text: &str) -> &'static str {
        let known = Known {
            languages: &[],
            blocks: &[],
            groups: &[],
            members: &[],
            sender: Sender::Unknown,
        };
        let reading = self.setup.reader.read(text, &known);
        let scene = Scene {
            sender: Sender::Unknown,
            today: civil_day(self.now, self.setup.zone),
            plots: &[],
            last: &[],
            pending: None,
            nudged: None,
        };
        let worth_an_answer = matches!(
            decide(&reading, &scene),
            Decision::Help(Unclear::Stranger) | Decision::Answer(Answer::Help | Answer::Start)
        );
        if worth_an_answer && self.may_help(number) {
            let language = reading.language.as_deref();
            let tongue = self.setup.texts.tongue(language.as_slice());
            self.answer(number, message, tongue.whole("stranger", args! {}));
        }
        "from a stranger"
    }

    /// Reads a text in its scene and does what is decided.
    fn converse(&mut self, mut turn: Turn) -> &'static str {
        let Some(speaker) = self.world.directory.person(turn.speaker).cloned() else {
            return "from a stranger";
        };
        if let Some(outcome) = self.code_given(&turn, &speaker) {
            return outcome;
        }
        let reading = self.read(&turn, speaker.role);
        if matches!(speaker.role, Role::Leader | Role::Adviser)
            && let Some(member) = &reading.member
            && let Some(target) = self.member_named(&speaker, member)
        {
            turn.target = target;
        } else if reading.reports.is_empty()
            && let Some(person) = self.asked_about(&turn.number)
        {
            turn.target = person;
        }
        if self.is_same_again(&turn, &reading) {
            return self.same_again(&turn, &speaker);
        }
        let decision = self.decide(&turn, &reading, speaker.role);
        let at = self.now;
        self.talk(&turn.number).last_text = Some((turn.text.trim().to_owned(), at));
        if matches!(decision, Decision::Record(_)) {
            self.learn_language(&turn, &reading);
        }
        self.act(&turn, decision)
    }

    fn read(&self, turn: &Turn, role: Role) -> Reading {
        let directory = &self.world.directory;
        let mut blocks: Vec<&str> = directory
            .blocks_of(turn.speaker)
            .map(|block| block.name.as_str())
            .collect();
        let mut groups: Vec<&str> = Vec::new();
        let mut members: Vec<&str> = Vec::new();
        let group = directory
            .person(turn.speaker)
            .and_then(|person| person.group);
        if role == Role::Adviser {
            for group in directory.groups_of(turn.speaker) {
                groups.push(&group.name);
                members.extend(directory.members(group.id).flat_map(names));
            }
        } else if role == Role::Leader
            && let Some(group) = group
        {
            for person in directory.members(group) {
                members.extend(names(person));
                blocks.extend(
                    directory
                        .blocks_of(person.id)
                        .map(|block| block.name.as_str()),
                );
            }
        }
        // Those who share a phone name themselves.
        let phone = directory.phone(&turn.number);
        let people: Vec<PersonId> = phone
            .map(|phone| phone.people().collect())
            .unwrap_or_default();
        if people.len() > 1 {
            let sharers = people.iter().filter_map(|id| directory.person(*id));
            members.extend(sharers.flat_map(names));
        }
        let sender = if role == Role::Adviser {
            Sender::Adviser
        } else {
            Sender::Farmer
        };
        let languages = self.languages_of(&turn.number, &[turn.speaker]);
        let languages: Vec<&str> = languages.iter().map(String::as_str).collect();
        let known = Known {
            languages: &languages,
            blocks: &blocks,
            groups: &groups,
            members: &members,
            sender,
        };
        self.setup.reader.read(&turn.text, &known)
    }

    /// Whom the facts are about that a question of ours waits for. An answer is about them; a new
    /// report is not.
    fn asked_about(&self, number: &str) -> Option<PersonId> {
        let open = self.open_question(number)?;
        let about_facts = matches!(open.question, Question::Confirm(_) | Question::Ask { .. });
        open.person.filter(|_| about_facts)
    }

    /// Of the leader's own group, or of those that the adviser looks after: who counts on a visit
    /// texts for the farmer.
    fn member_named(&self, teller: &Person, name: &str) -> Option<PersonId> {
        let directory = &self.world.directory;
        let looked_after = directory.groups_of(teller.id).map(|group| group.id);
        let own = teller.group.filter(|_| teller.role == Role::Leader);
        own.into_iter()
            .chain(looked_after)
            .flat_map(|group| directory.members(group))
            .find(|person| person.is_named(name))
            .map(|person| person.id)
    }

    /// The same report again, although it was taken in: an impatient finger.
    fn is_same_again(&self, turn: &Turn, reading: &Reading) -> bool {
        let Some(talk) = self.world.talks.get(&turn.number) else {
            return false;
        };
        let within = self.now - TimeDelta::hours(limits::SAME_TEXT_HOURS);
        let same = talk
            .last_text
            .as_ref()
            .is_some_and(|(text, at)| *at > within && text.eq_ignore_ascii_case(turn.text.trim()));
        let waits = talk
            .open
            .as_ref()
            .is_some_and(|open| !matches!(open.question, Question::Code { .. }));
        let recorded = talk.last_at.is_some_and(|at| at > within) && !waits;
        same && recorded && !reading.reports.is_empty()
    }

    fn same_again(&mut self, turn: &Turn, speaker: &budwood_scheduler::Person) -> &'static str {
        let text = self.tongue(speaker).whole("same-again", args! {});
        let said = self
            .world
            .talks
            .get(&turn.number)
            .and_then(|talk| talk.last_answer.as_ref())
            .is_some_and(|(last, _)| *last == text);
        if !said {
            self.answer(&turn.number, turn.message, text);
        }
        "same again"
    }

    fn decide(&self, turn: &Turn, reading: &Reading, role: Role) -> Decision {
        let plots: Vec<Plot> = self
            .world
            .directory
            .blocks_of(turn.target)
            .map(|block| Plot {
                name: block.name.clone(),
                points: points_of(self.world, self.setup, block),
                state: self
                    .world
                    .states
                    .get(&block.id)
                    .cloned()
                    .unwrap_or_default(),
            })
            .collect();
        let last = self.last_facts(&turn.number);
        let pending = self.pending(&turn.number);
        let scene = Scene {
            sender: if role == Role::Adviser {
                Sender::Adviser
            } else {
                Sender::Farmer
            },
            today: civil_day(turn.sent_at, self.zone_of(turn.target)),
            plots: &plots,
            last: &last,
            pending: pending.as_ref(),
            nudged: self.nudged(turn),
        };
        decide(reading, &scene)
    }

    /// What the last nudge to this phone asked for, if it is a block of the one who texts.
    fn nudged(&self, turn: &Turn) -> Option<Nudged<'_>> {
        let nudge = self.world.talks.get(&turn.number)?.nudge?;
        let block = self.world.directory.block(nudge.block)?;
        let ailment = self.looked_for(nudge.block, nudge.task);
        let kind = ailment.map_or_else(|| nudge.task.proven_by(), |_| Some(Kind::Disease))?;
        (block.owner == turn.target).then_some(Nudged {
            block: &block.name,
            kind,
            ailment,
        })
    }

    /// The facts of the phone's last recorded text, as a correction may still reach them.
    fn last_facts(&self, number: &str) -> Vec<Last> {
        self.in_reach(number)
            .filter_map(|event| draft_of(&self.world.directory, &event))
            .map(|draft| Last { draft })
            .collect()
    }

    /// A question of ours that has not lapsed.
    pub(crate) fn open_question(&self, number: &str) -> Option<Open> {
        let open = self.world.talks.get(number)?.open.clone()?;
        let lapsed = open.at + TimeDelta::hours(limits::QUESTION_HOURS) < self.now;
        (!lapsed).then_some(open)
    }

    fn pending(&self, number: &str) -> Option<Pending> {
        if let Some(open) = self.open_question(number) {
            return match open.question {
                Question::Confirm(facts) => Some(Pending::Confirm(facts)),
                Question::Ask { facts, missing } => Some(Pending::Ask { facts, missing }),
                Question::ForWhom { .. } | Question::Code { .. } => None,
            };
        }
        let talk = self.world.talks.get(number)?;
        let nudge = talk.nudge?;
        let owner = self.world.directory.block(nudge.block)?.owner;
        Some(Pending::Nudge {
            on: civil_day(nudge.at, self.zone_of(owner)),
            is_last: talk.last_at.is_none_or(|at| at < nudge.at),
        })
    }

    fn act(&mut self, turn: &Turn, decision: Decision) -> &'static str {
        if !matches!(decision, Decision::Help(_) | Decision::Silent(_)) {
            self.talk(&turn.number).unclear = 0;
        }
        match decision {
            // What somebody tells of another is confirmed first: a name is soon misread.
            Decision::Record(facts) if turn.target != turn.speaker => {
                self.ask_confirm(turn, facts, &[])
            }
            Decision::Record(facts) | Decision::Reply(Reply::Yes(facts)) => {
                self.store_facts(turn, facts)
            }
            Decision::Confirm { facts, why } => self.ask_confirm(turn, facts, &why),
            Decision::Ask { facts, missing } => self.ask_slot(turn, facts, missing),
            Decision::Amend(amend) => self.amend(turn, amend),
            Decision::Answer(answer) => self.answer_to(turn, answer),
            Decision::Reply(Reply::No) => self.drop_question(turn),
            Decision::Reply(Reply::Seen) => "seen",
            Decision::Reply(Reply::Done) => self.nudge_done(turn),
            Decision::Reply(Reply::Later(days)) => self.nudge_later(turn, days),
            Decision::Reply(Reply::Choice(_)) | Decision::Silent(Quiet::NothingAsked) => {
                "nothing was asked"
            }
            Decision::Help(Unclear::NoReport | Unclear::Stranger) => self.give_example(turn),
            Decision::Silent(
                Quiet::Courtesy | Quiet::Stance(_) | Quiet::NotWork | Quiet::Stranger,
            ) => "chat",
            Decision::Person(alarm) => self.hand_over(turn, alarm),
        }
    }
}

/// What a person may be called in a text: the whole name, or the first of it.
pub(crate) fn names(person: &Person) -> [&str; 2] {
    [&person.name, person.called()]
}
