//! A text in its scene: what it says to one who knows the people, blocks and questions around it,
//! and what is to be done.

use budwood_parser::{
    Act, Ailment, Alarm, Kind, Known, Names, Reading, Report, Sender, Taken, Topic,
};
use budwood_scheduler::{
    Block, BlockId, GroupId, Person, PersonId, Role, TaskKind,
    decide::{Answer, Decision, Last, Nudged, Pending, Plot, Scene, Unclear, decide, heed},
    jobs::{nudge::has_lapsed, task::warning},
};
use chrono::{NaiveDate, TimeDelta};

use super::read_back::draft_of;
use crate::{
    engine::{
        local_time::civil_day,
        memory::names::{GroupNames, names},
        roles::{self, Reach, Verb},
        turn::Turn,
        view::View,
    },
    wording::{Key, Phrase},
    words::{
        limits,
        message::{Open, OpenNudge, Question},
    },
};

/// Whether somebody wants to be taken out of the records.
pub(super) fn erases(reading: &Reading) -> bool {
    let is_erase = |act: &Act| matches!(act, Act::Query(query) if query.topic == Topic::Erase);
    reading.acts.iter().any(is_erase)
}

impl<'a> View<'a> {
    /// In which language a number that is not on the list asks for something, if it does, and the
    /// answer: there is one only where it seems to know what the bot is for.
    pub(crate) fn stranger_asks(self, text: &str) -> Option<(Option<String>, Key)> {
        let known = Known {
            languages: &[],
            blocks: &[],
            groups: &[],
            members: &[],
            rolls: &[],
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
        // Whoever was taken out is a stranger from then on.
        if erases(&reading) {
            return Some((reading.language, Key::NothingHeld));
        }
        worth_an_answer.then_some((reading.language, Key::Stranger))
    }

    /// The groups whose people somebody speaks of: asks about, or reports for. Their names
    /// are made ready before such a text is read.
    pub(crate) fn groups_spoken_of(self, speaker: PersonId) -> Vec<GroupId> {
        let directory = &self.world.directory;
        let Some(person) = directory.person(speaker) else {
            return Vec::new();
        };
        let of_others = roles::reach(person.role, Verb::ReportFor);
        let own = person.group.filter(|_| of_others == Reach::OwnGroup);
        let asked = self.groups_of(person).map(|group| group.id);
        asked.chain(own).collect()
    }

    /// What the text says to one who knows the people and blocks around it.
    pub(crate) fn read(self, turn: &Turn, role: Role) -> Reading {
        let directory = &self.world.directory;
        let mut blocks: Vec<&str> = directory
            .blocks_of(turn.speaker)
            .map(|block| block.name.as_str())
            .collect();
        let mut groups: Vec<&str> = Vec::new();
        let mut members: Vec<&str> = Vec::new();
        if let Some(speaker) = directory.person(turn.speaker) {
            let asked = self.groups_of(speaker);
            groups.extend(asked.map(|group| group.name.as_str()));
        }
        let heard = self.groups_spoken_of(turn.speaker);
        let ready: Vec<&GroupNames> = heard
            .into_iter()
            .filter_map(|group| self.world.rolls.of(group))
            .collect();
        let rolls: Vec<&Names> = ready.iter().map(|names| &names.people).collect();
        // Who reports for others names their blocks too.
        let all = ready.iter().flat_map(|names| &names.blocks);
        blocks.extend(all.map(String::as_str));
        // Those who share a phone name themselves.
        let people = self.everyone_on(&turn.number);
        if people.len() > 1 {
            let sharers = people.iter().filter_map(|id| directory.person(*id));
            members.extend(sharers.flat_map(names));
        }
        let sender = roles::sender(role);
        let languages = self.languages_of(&turn.number, &[turn.speaker]);
        let languages: Vec<&str> = languages.iter().map(String::as_str).collect();
        let of_staff = self.of_advisers_phone(turn, role, &languages);
        if let Some(reading) = of_staff.or_else(|| self.to_colleague(turn, role, &languages)) {
            return reading;
        }
        let known = Known {
            languages: &languages,
            blocks: &blocks,
            groups: &groups,
            members: &members,
            rolls: &rolls,
            sender,
        };
        let reading = self.setup.reader.read(&turn.text, &known);
        if let Some(reading) = self.of_books((turn, role), &known, &reading) {
            return reading;
        }
        let own = self.with_own_block(turn, &known, &reading);
        let mut reading = own.unwrap_or(reading);
        if reading.alarm.is_none() && self.said_dead(turn, &reading).is_some() {
            reading.alarm = Some(Alarm::Grief);
        }
        reading
    }

    /// Whose blocks the text is about, when not the speaker's own: the one who is named, or whom we
    /// asked about.
    pub(crate) fn spoken_for(
        self,
        turn: &Turn,
        speaker: &Person,
        reading: &Reading,
    ) -> Option<PersonId> {
        let for_others = roles::may(speaker.role, Verb::ReportFor);
        let named = reading.member.as_ref().filter(|_| for_others);
        let named = named.and_then(|name| match self.members_named(turn, speaker, name)[..] {
            [only] => Some(only),
            _ => None,
        });
        let is_answer = named.is_none() && reading.reports.is_empty();
        named.or_else(|| self.asked_about(&turn.number).filter(|_| is_answer))
    }

    /// Whom the facts are about that a question of ours waits for. An answer is about them; a new
    /// report is not.
    fn asked_about(self, number: &str) -> Option<PersonId> {
        let open = self.open_question(number)?;
        let about_facts = matches!(open.question, Question::Confirm(_) | Question::Ask { .. });
        open.person.filter(|_| about_facts)
    }

    /// What is asked when a report is for one of several who are called the same.
    pub(crate) fn which_of(
        self,
        turn: &Turn,
        speaker: &Person,
        reading: &Reading,
    ) -> Option<Phrase> {
        let name = reading.member.as_deref()?;
        let tells_all = roles::reach(speaker.role, Verb::ReportFor) == Reach::Advised;
        let is_report = tells_all && !reading.reports.is_empty();
        let several = is_report.then(|| self.members_named(turn, speaker, name))?;
        (several.len() > 1).then(|| self.which(speaker, &several))
    }

    /// The first part of a text that tells of several people by name, and the rest: each is worked
    /// on for its own.
    pub(crate) fn first_of_many(self, turn: &Turn, speaker: &Person) -> Option<(String, String)> {
        if !roles::may(speaker.role, Verb::ReportFor) {
            return None;
        }
        let reading = self.read(turn, speaker.role);
        let mut named = reading
            .words
            .iter()
            .filter(|word| word.taken == Taken::Name)
            .filter_map(|word| {
                let name = turn.text.get(word.span.start..word.span.end)?;
                let person = self.members_named(turn, speaker, name);
                Some((word.span.start, *person.first()?))
            });
        let (_, first) = named.next()?;
        let (at, _) = named.find(|(_, person)| *person != first)?;
        let is_told = |report: &Report| report.span.start < at;
        let reports = &reading.reports;
        let both = reports.iter().any(is_told) && !reports.iter().all(is_told);
        let (one, rest) = turn.text.split_at_checked(at).filter(|_| both)?;
        Some((one.to_owned(), rest.to_owned()))
    }

    /// The same report again, although it was taken in: an impatient finger.
    pub(crate) fn is_same_again(self, turn: &Turn, reading: &Reading) -> bool {
        let Some(talk) = self.talk(&turn.number) else {
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

    /// What is to be done with it.
    pub(crate) fn decide(self, turn: &Turn, reading: &Reading, role: Role) -> Decision {
        let plots: Vec<Plot> = self
            .world
            .directory
            .blocks_of(turn.target)
            .map(|block| Plot {
                name: block.name.clone(),
                points: self.points_of(block),
                state: self.state(block.id).cloned().unwrap_or_default(),
            })
            .collect();
        let last = self.last_facts(&turn.number);
        let pending = self.pending(&turn.number);
        let scene = Scene {
            sender: roles::sender(role),
            today: self.day_of(turn),
            plots: &plots,
            last: &last,
            pending: pending.as_ref(),
            nudged: self.nudged(turn),
        };
        heed(decide(reading, &scene), reading, &scene)
    }

    /// The civil day on which a nudge went, where its block is.
    fn went_on(self, nudge: &OpenNudge) -> Option<NaiveDate> {
        let owner = self.world.directory.block(nudge.block)?.owner;
        Some(civil_day(nudge.at, self.zone_of(owner)))
    }

    /// The nudge that this phone may answer, and its block.
    pub(crate) fn open_nudge(self, turn: &Turn) -> Option<(OpenNudge, Block)> {
        let nudge = self.talk(&turn.number)?.nudge?;
        let block = self.world.directory.block(nudge.block)?;
        let today = civil_day(turn.sent_at, self.zone_of(block.owner));
        let is_open = !has_lapsed(self.went_on(&nudge)?, today);
        is_open.then(|| (nudge, block.clone()))
    }

    /// What the last nudge to this phone asked for, if it is a block of the one who texts.
    fn nudged(self, turn: &Turn) -> Option<Nudged<'a>> {
        let nudge = self.talk(&turn.number)?.nudge?;
        let block = self.world.directory.block(nudge.block)?;
        // After a round a bare number could be anything.
        if self.parts_told(&nudge).len() > 1 {
            return None;
        }
        let ailment = self.looked_for(nudge.block, nudge.task);
        let kind = ailment.map_or_else(|| nudge.task.proven_by(), |_| Some(Kind::Disease))?;
        (block.owner == turn.target).then_some(Nudged {
            block: &block.name,
            kind,
            ailment,
        })
    }

    /// For which sickness this job looks: what was seen nearby, or the white root, as only a look
    /// at the roots closes the check of roots.
    pub(crate) fn looked_for(self, block: BlockId, task: TaskKind) -> Option<Ailment> {
        let state = self.state(block);
        let near = state.and_then(|state| warning(state, task));
        let usual = (task == TaskKind::RootCheck).then_some(Ailment::WhiteRoot);
        near.map(|(ailment, _)| ailment).or(usual)
    }

    /// The facts of the phone's last recorded text, as a correction may still reach them.
    fn last_facts(self, number: &str) -> Vec<Last> {
        self.in_reach(number)
            .filter_map(|event| draft_of(&self.world.directory, &event))
            .map(|draft| Last { draft })
            .collect()
    }

    /// A question of ours that has not lapsed.
    pub(crate) fn open_question(self, number: &str) -> Option<Open> {
        let open = self.talk(number)?.open.clone()?;
        let hours = match open.question {
            Question::Code { .. } => limits::CODE_HOURS,
            Question::Confirm(_)
            | Question::ConfirmMany(_)
            | Question::Ask { .. }
            | Question::ForWhom { .. } => limits::QUESTION_HOURS,
        };
        let lapsed = open.at + TimeDelta::hours(hours) < self.now;
        (!lapsed).then_some(open)
    }

    fn pending(self, number: &str) -> Option<Pending> {
        if let Some(open) = self.open_question(number) {
            return match open.question {
                Question::Confirm(facts) => Some(Pending::Confirm(facts)),
                Question::Ask { facts, missing } => Some(Pending::Ask { facts, missing }),
                Question::ConfirmMany(_) | Question::ForWhom { .. } | Question::Code { .. } => None,
            };
        }
        let talk = self.talk(number)?;
        let nudge = talk.nudge?;
        Some(Pending::Nudge {
            on: self.went_on(&nudge)?,
            is_last: talk.last_at.is_none_or(|at| at < nudge.at),
        })
    }
}
