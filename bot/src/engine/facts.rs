//! Reports become facts; what is missing or doubtful is asked for.

use budwood_parser::{Alarm, Details, Kind};
use budwood_scheduler::{
    Block, BlockId, Body, Directory, Event, EventId, Happened, Person, PersonId, Role, Source,
    TaskKind,
    decide::{Draft, Missing, Why},
};
use chrono::{NaiveDate, TimeDelta};

use super::{
    inbound::Turn,
    plan::{points_of, tasks_of},
    step::{Step, Telling, civil_day},
};
use crate::{
    args, limits,
    message::{Open, OpenNudge, Purpose, Question},
    wording::{After, Said, fit},
};

/// "Later" without a time means a week.
const LATER_DAYS: u16 = 7;
/// A job cannot be put off for longer than this.
const LATER_DAYS_MAX: u16 = 60;

/// The draft of a stored report, for corrections.
pub(super) fn draft_of(directory: &Directory, event: &Event) -> Option<Draft> {
    let Body::Reported {
        block,
        kind,
        on,
        details,
    } = &event.body
    else {
        return None;
    };
    Some(Draft {
        kind: *kind,
        block: directory.block(*block).map(|block| block.name.clone()),
        said: None,
        on: *on,
        details: details.clone(),
    })
}

impl Step<'_> {
    /// Stores facts and reads their consequence back.
    pub(super) fn store_facts(&mut self, turn: &Turn, facts: Vec<Draft>) -> &'static str {
        let target = self.asked_for(turn);
        let telling = self.telling(turn, target);
        let mut stored: Vec<EventId> = Vec::new();
        let mut touched: Vec<(BlockId, Vec<&Draft>)> = Vec::new();
        for fact in &facts {
            let Some(block) = self.block_named(target, fact.block.as_deref()) else {
                continue;
            };
            let body = Body::Reported {
                block,
                kind: fact.kind,
                on: fact.on,
                details: fact.details.clone(),
            };
            stored.push(self.record(telling, None, body));
            match touched.iter_mut().find(|(known, _)| *known == block) {
                Some((_, drafts)) => drafts.push(fact),
                None => touched.push((block, vec![fact])),
            }
        }
        if stored.is_empty() {
            return self.no_blocks(turn);
        }
        let now = self.now;
        let talk = self.talk(&turn.number);
        talk.open = None;
        talk.last = stored;
        talk.last_at = Some(now);
        self.close_nudge(&turn.number);
        for (block, drafts) in touched.iter().take(limits::READ_BACKS_MAX) {
            let text = self.read_back(turn, *block, drafts);
            self.answer(&turn.number, turn.message, text);
            self.tell_of_sickness(turn, *block, drafts);
        }
        "recorded"
    }

    /// For whom a question of ours was asked, or whom the text itself is about.
    fn asked_for(&self, turn: &Turn) -> PersonId {
        self.open_question(&turn.number)
            .and_then(|open| open.person)
            .unwrap_or(turn.target)
    }

    pub(super) fn telling(&self, turn: &Turn, target: PersonId) -> Telling {
        let role = self
            .world
            .directory
            .person(turn.speaker)
            .map(|person| person.role);
        let source = match role {
            Some(Role::Adviser) => Source::Visit,
            Some(Role::Leader) if target != turn.speaker => Source::Leader,
            _ => Source::OwnText,
        };
        Telling {
            by: Some(turn.speaker),
            source,
            message: Some(turn.message),
        }
    }

    pub(super) fn block_named(&self, owner: PersonId, name: Option<&str>) -> Option<BlockId> {
        let name = name?;
        self.world
            .directory
            .blocks_of(owner)
            .find(|block| block.name.eq_ignore_ascii_case(name))
            .map(|block| block.id)
    }

    pub(super) fn read_back(&self, turn: &Turn, block: BlockId, drafts: &[&Draft]) -> String {
        self.with_stand(turn, block, drafts, |tongue, said, after| {
            tongue.read_back(said, after)
        })
    }

    /// Words facts together with how their block stands now.
    pub(super) fn with_stand(
        &self,
        turn: &Turn,
        block: BlockId,
        drafts: &[&Draft],
        word: impl Fn(crate::wording::Tongue<'_>, Said<'_>, After<'_>) -> String,
    ) -> String {
        let (Some(record), Some(speaker)) = (
            self.world.directory.block(block),
            self.world.directory.person(turn.speaker),
        ) else {
            return String::new();
        };
        let state = self.world.states.get(&block).cloned().unwrap_or_default();
        let adviser = self.adviser_name(speaker);
        let after = After {
            state: &state,
            points: points_of(self.world, self.setup, record),
            next: drafts
                .last()
                .and_then(|fact| self.next_round(block, fact.kind)),
            adviser: &adviser,
        };
        let today = civil_day(turn.sent_at, self.zone_of(turn.target));
        let said = Said {
            block: &record.name,
            facts: drafts,
            today,
        };
        word(self.tongue(speaker), said, after)
    }

    /// When the job that this kind of report proves comes again.
    fn next_round(&self, block: BlockId, kind: Kind) -> Option<NaiveDate> {
        let owner = self.world.directory.block(block)?.owner;
        let today = self.today_of(owner);
        let wanted = match kind {
            Kind::BranchInduction => TaskKind::LookAtInduced,
            other => TaskKind::ALL
                .into_iter()
                .find(|task| task.proven_by() == Some(other))?,
        };
        tasks_of(self.world, self.setup, block, today)
            .into_iter()
            .find(|task| task.kind == wanted && task.due > today)
            .map(|task| task.due)
    }

    /// A report that proves the nudged job answers the nudge.
    fn close_nudge(&mut self, number: &str) {
        let Some(OpenNudge {
            block, task, due, ..
        }) = self.world.talks.get(number).and_then(|talk| talk.nudge)
        else {
            return;
        };
        let Some(owner) = self.world.directory.block(block).map(|block| block.owner) else {
            return;
        };
        let today = self.today_of(owner);
        let open = tasks_of(self.world, self.setup, block, today)
            .iter()
            .any(|open| open.kind == task && open.due == due);
        if !open {
            self.talk(number).nudge = None;
        }
    }

    fn tell_of_sickness(&mut self, turn: &Turn, block: BlockId, drafts: &[&Draft]) {
        let news: Vec<&Draft> = drafts
            .iter()
            .filter(|fact| matches!(fact.kind, Kind::Disease | Kind::Damage))
            .filter(|fact| fact.details.count != Some(0))
            .copied()
            .collect();
        let Some(target) = self.world.directory.person(turn.target) else {
            return;
        };
        if news.is_empty() {
            return;
        }
        let Some(record) = self.world.directory.block(block) else {
            return;
        };
        let (name, block_name) = (target.name.clone(), record.name.clone());
        let group = self.group_name(target);
        let today = self.today_of(turn.target);
        self.notify(turn, |tongue| {
            let said = Said {
                block: &block_name,
                facts: &news,
                today,
            };
            let facts = tongue.clauses(said);
            fit(|length| {
                tongue.say(
                    "sick-notice",
                    args! {
                        "name" => name.chars().take(length).collect::<String>(),
                        "block" => block_name.chars().take(length).collect::<String>(),
                        "group" => group.as_str(),
                        "facts" => facts.as_str(),
                    },
                )
            })
        });
    }

    /// Tells the adviser of the person whom a text is about.
    pub(super) fn notify(
        &mut self,
        turn: &Turn,
        word: impl Fn(crate::wording::Tongue<'_>) -> String,
    ) {
        let Some(target) = self.world.directory.person(turn.target) else {
            return;
        };
        let Some(adviser) = self.adviser_of(target).cloned() else {
            return;
        };
        let stopped = matches!(
            adviser.consent,
            budwood_scheduler::Consent::Withdrawn { .. }
        );
        let number = self
            .world
            .directory
            .numbers_of(adviser.id)
            .next()
            .map(str::to_owned);
        if let Some(number) = number
            && !stopped
        {
            let text = word(self.tongue(&adviser));
            let purpose = Purpose::Notice {
                about: turn.message,
            };
            self.post(&number, text, purpose, limits::NOTICE_HOURS);
        }
    }

    pub(super) fn group_name(&self, person: &Person) -> String {
        person
            .group
            .and_then(|group| self.world.directory.group(group))
            .map(|group| group.name.clone())
            .unwrap_or_default()
    }

    /// Asks whether doubtful facts are right.
    pub(super) fn ask_confirm(
        &mut self,
        turn: &Turn,
        facts: Vec<Draft>,
        why: &[Why],
    ) -> &'static str {
        let target = self.asked_for(turn);
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return "from a stranger";
        };
        let other = (target != turn.speaker)
            .then(|| {
                self.world
                    .directory
                    .person(target)
                    .map(|person| person.name.clone())
            })
            .flatten();
        let today = civil_day(turn.sent_at, self.zone_of(target));
        let block = facts
            .first()
            .and_then(|fact| fact.block.clone())
            .unwrap_or_default();
        let drafts: Vec<&Draft> = facts.iter().collect();
        let said = Said {
            block: &block,
            facts: &drafts,
            today,
        };
        let reading = Why::NotPlanted;
        let why = why.first().unwrap_or(&reading);
        let text = self.tongue(speaker).confirm(other.as_deref(), said, why);
        self.ask(turn, target, Question::Confirm(facts), text);
        "asked to confirm"
    }

    /// Asks for one slot.
    pub(super) fn ask_slot(
        &mut self,
        turn: &Turn,
        facts: Vec<Draft>,
        missing: Missing,
    ) -> &'static str {
        let target = self.asked_for(turn);
        let blocks: Vec<String> = self
            .world
            .directory
            .blocks_of(target)
            .map(|block| block.name.clone())
            .collect();
        if blocks.is_empty() {
            return self.no_blocks(turn);
        }
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return "from a stranger";
        };
        let Some(first) = facts.first() else {
            return "chat";
        };
        let text = self.tongue(speaker).ask(first, &missing, &blocks);
        self.ask(turn, target, Question::Ask { facts, missing }, text);
        "asked for a slot"
    }

    pub(super) fn ask(&mut self, turn: &Turn, person: PersonId, question: Question, text: String) {
        let now = self.now;
        let message = turn.message;
        self.talk(&turn.number).open = Some(Open {
            at: now,
            message,
            person: Some(person),
            question,
        });
        self.answer(&turn.number, turn.message, text);
    }

    fn no_blocks(&mut self, turn: &Turn) -> &'static str {
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return "from a stranger";
        };
        let args = args! {
            "name" => speaker.name.as_str(),
            "adviser" => self.adviser_name(speaker),
        };
        let text = self.tongue(speaker).say("no-blocks", args);
        self.answer(&turn.number, turn.message, text);
        "has no block"
    }

    /// "2, no" to a question of ours.
    pub(super) fn drop_question(&mut self, turn: &Turn) -> &'static str {
        self.talk(&turn.number).open = None;
        let text = self.say_with_example(turn, "dropped");
        self.answer(&turn.number, turn.message, text);
        "dropped"
    }

    /// A text of ours that ends in an example with the farmer's own block.
    pub(super) fn say_with_example(&self, turn: &Turn, key: &str) -> String {
        let tongue = self.tongue_of(turn.speaker);
        let example = self.example(turn.target);
        fit(|_| tongue.say(key, args! { "example" => example.as_str() }))
    }

    pub(super) fn tongue_of(&self, person: PersonId) -> crate::wording::Tongue<'_> {
        self.world.directory.person(person).map_or_else(
            || self.setup.texts.tongue("en"),
            |person| self.tongue(person),
        )
    }

    pub(super) fn example(&self, person: PersonId) -> String {
        let block = self
            .world
            .directory
            .blocks_of(person)
            .next()
            .map_or_else(|| "A".to_owned(), |block: &Block| block.name.clone());
        self.tongue_of(person)
            .say("example", args! { "block" => block })
    }

    /// The nudged job is done.
    pub(super) fn nudge_done(&mut self, turn: &Turn) -> &'static str {
        let Some(nudge) = self
            .world
            .talks
            .get(&turn.number)
            .and_then(|talk| talk.nudge)
        else {
            return self.nothing_open(turn);
        };
        let Some(block) = self.world.directory.block(nudge.block).cloned() else {
            return self.nothing_open(turn);
        };
        let today = civil_day(turn.sent_at, self.zone_of(block.owner));
        let Some(kind) = nudge.task.proven_by() else {
            return self.task_done(turn, &block, nudge.task, today);
        };
        let draft = Draft {
            kind,
            block: Some(block.name.clone()),
            said: None,
            on: Happened::on(today),
            details: Details::default(),
        };
        let counted = kind.needs_count() || matches!(kind, Kind::Disease | Kind::Branched);
        let turn = Turn {
            target: block.owner,
            ..turn.clone()
        };
        if kind.needs_values() {
            return self.ask_slot(&turn, vec![draft], Missing::Values);
        }
        if counted {
            return self.ask_slot(&turn, vec![draft], Missing::Count { range: None });
        }
        self.store_facts(&turn, vec![draft])
    }

    fn task_done(
        &mut self,
        turn: &Turn,
        block: &Block,
        task: TaskKind,
        today: NaiveDate,
    ) -> &'static str {
        let telling = self.telling(turn, block.owner);
        let body = Body::TaskDone {
            block: block.id,
            task,
            on: today,
        };
        let event = self.record(telling, None, body);
        let now = self.now;
        let talk = self.talk(&turn.number);
        talk.last = vec![event];
        talk.last_at = Some(now);
        self.close_nudge(&turn.number);
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return "from a stranger";
        };
        let tongue = self.tongue(speaker);
        let text = fit(|length| {
            tongue.say(
                "done",
                args! {
                    "name" => speaker.name.chars().take(length).collect::<String>(),
                    "task" => tongue.job(task),
                    "block" => block.name.as_str(),
                    "day" => tongue.day(today),
                },
            )
        });
        self.answer(&turn.number, turn.message, text);
        "recorded"
    }

    /// The nudged job is put off.
    pub(super) fn nudge_later(&mut self, turn: &Turn, days: Option<u16>) -> &'static str {
        let nudge = self
            .world
            .talks
            .get(&turn.number)
            .and_then(|talk| talk.nudge);
        let block = nudge.and_then(|nudge| self.world.directory.block(nudge.block).cloned());
        let (Some(nudge), Some(block)) = (nudge, block) else {
            return self.nothing_open(turn);
        };
        let days = days.unwrap_or(LATER_DAYS).clamp(1, LATER_DAYS_MAX);
        let until = self.today_of(block.owner) + TimeDelta::days(i64::from(days));
        let telling = self.telling(turn, block.owner);
        let body = Body::Postponed {
            block: block.id,
            task: nudge.task,
            until,
        };
        self.record(telling, None, body);
        self.talk(&turn.number).nudge = None;
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return "from a stranger";
        };
        let tongue = self.tongue(speaker);
        let adviser = self.adviser_name(speaker);
        let text = fit(|length| {
            let cut = |name: &str| name.chars().take(length).collect::<String>();
            tongue.say(
                "later",
                args! {
                    "name" => cut(&speaker.name),
                    "task" => tongue.job(nudge.task),
                    "block" => cut(&block.name),
                    "day" => tongue.day(until),
                    "adviser" => cut(&adviser),
                },
            )
        });
        self.answer(&turn.number, turn.message, text);
        "put off"
    }

    fn nothing_open(&mut self, turn: &Turn) -> &'static str {
        let text = self.tongue_of(turn.speaker).say("nothing-open", args! {});
        self.answer(&turn.number, turn.message, text);
        "nothing was asked"
    }

    /// Whether an example may be sent to this phone now: one a day.
    pub(super) fn may_help(&mut self, number: &str) -> bool {
        let now = self.now;
        let talk = self.talk(number);
        let lately = now - TimeDelta::hours(limits::EXAMPLE_HOURS);
        if talk.helped_at.is_some_and(|at| at > lately) {
            return false;
        }
        talk.helped_at = Some(now);
        true
    }

    /// Not understood: one example; after two in a row a person is told.
    pub(super) fn give_example(&mut self, turn: &Turn) -> &'static str {
        let talk = self.talk(&turn.number);
        talk.unclear = talk.unclear.saturating_add(1);
        let again = talk.unclear == 2;
        if again {
            self.notify_about(turn, "unclear-notice", None);
        }
        if self.may_help(&turn.number) {
            let text = self.say_with_example(turn, "unclear");
            self.answer(&turn.number, turn.message, text);
        }
        "not understood"
    }

    /// Grief, danger and the like go to a person; the bot keeps quiet.
    pub(super) fn to_a_person(&mut self, turn: &Turn, alarm: Alarm) -> &'static str {
        self.notify_about(turn, "alarm-notice", Some(alarm));
        "for a person"
    }

    /// Tells the adviser to see to the person who texted, without the text itself.
    pub(super) fn notify_about(&mut self, turn: &Turn, key: &str, alarm: Option<Alarm>) {
        let Some(speaker) = self.world.directory.person(turn.speaker) else {
            return;
        };
        let name = speaker.name.clone();
        let group = self.group_name(speaker);
        let digits: String = last_digits(&turn.number);
        let today = civil_day(turn.sent_at, self.zone_of(turn.speaker));
        self.notify(turn, |tongue| {
            let alarm = alarm.map_or_else(String::new, |alarm| {
                tongue.say(&format!("alarm-{}", alarm.name()), args! {})
            });
            fit(|length| {
                tongue.say(
                    key,
                    args! {
                        "name" => name.chars().take(length).collect::<String>(),
                        "group" => group.chars().take(length).collect::<String>(),
                        "digits" => digits.as_str(),
                        "day" => tongue.day(today),
                        "alarm" => alarm.as_str(),
                    },
                )
            })
        });
    }
}

/// The last four digits say which phone to someone who knows it, and nothing to others.
fn last_digits(number: &str) -> String {
    let digits: Vec<char> = number.chars().rev().take(4).collect();
    digits.into_iter().rev().collect()
}
