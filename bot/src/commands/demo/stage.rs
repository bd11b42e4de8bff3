//! The play: the script's people text, the others answer their nudges, time passes.
//!
//! All texts go through the same engine as in service. The farmers here know only what a farmer
//! knows: their phone, their field and their own habits.

use std::{collections::BTreeMap, io::Write};

use anyhow::{Context, bail};
use budwood_scheduler::{BlockId, PersonId, TaskKind};
use chrono::{DateTime, Days, NaiveDateTime, NaiveTime, TimeDelta, TimeZone, Utc};
use chrono_tz::Tz;

use super::{
    screen::Screen,
    script::{Cue, Deed, Line, Said},
    tally::Tally,
};
use crate::{
    play::{
        field,
        manner::Manner,
        replies::Replies,
        seeded::Seeded,
        virtual_clock::{Arrived, Rig},
    },
    words::message::Purpose,
};

/// Any number does; another one gives another play.
const SEED: u64 = 359;
/// Nobody answers faster than this.
const ANSWER_MINUTES_MIN: i64 = 20;
/// Farmers text between these hours.
const DAY_HOURS: (u32, u32) = (6, 18);
/// A question of the bot is answered after this long.
const QUESTION_MINUTES: i64 = 7;
/// How the bot ends a question whether something is right. Farmers read, so the demo does too.
const YES_OR_NO: &str = "Reply 1 yes";
/// What answers for every job of a field round.
const DONE: &str = "done";
/// What the script writes for the code that the bot texted.
const CODE: &str = "{code}";
const CODE_DIGITS: usize = 6;
/// How the screen and the script say that the bot is silent.
const NOTHING: &str = "(nothing)";
/// Where the block's name stands in a reply.
const BLOCK: &str = "{block}";

/// People, their phones, the engine, and the watcher's screen.
pub(super) struct Stage<'a, W> {
    rig: Rig,
    zone: Tz,
    replies: Replies,
    chance: Seeded,
    manners: BTreeMap<PersonId, Manner>,
    planned: BTreeMap<(DateTime<Utc>, u32), Plan>,
    plans: u32,
    last_on: BTreeMap<String, Arrived>,
    /// What the bot said that was shown last.
    shown: Vec<String>,
    tally: Tally,
    screen: Screen<'a, W>,
}

/// What somebody behind the scenes will text.
enum Plan {
    /// The nudged job is done.
    Job {
        number: String,
        block: BlockId,
        task: TaskKind,
    },
    /// Just this.
    Say { number: String, text: String },
}

impl<'a, W: Write> Stage<'a, W> {
    /// A stage with these people on it.
    pub(super) fn new(rig: Rig, zone: Tz, replies: Replies, screen: Screen<'a, W>) -> Self {
        Self {
            rig,
            zone,
            replies,
            chance: Seeded::new(SEED),
            manners: BTreeMap::new(),
            planned: BTreeMap::new(),
            plans: 0,
            last_on: BTreeMap::new(),
            shown: Vec::new(),
            tally: Tally::default(),
            screen,
        }
    }

    /// Plays the script; gives the engine as it stands at the end, and the counts.
    pub(super) fn play(mut self, script: &[Line]) -> anyhow::Result<(Rig, Tally)> {
        for line in script {
            self.line(line)
                .with_context(|| format!("line {} of the script", line.number))?;
        }
        Ok((self.rig, self.tally))
    }

    fn line(&mut self, line: &Line) -> anyhow::Result<()> {
        match &line.said {
            Said::Scene(heading) => self.screen.scene(heading),
            Said::Note(note) => self.screen.note(note)?,
            Said::Cue(cue) => self.cue(cue)?,
            Said::Holds(words) => self.holds(words)?,
        }
        Ok(())
    }

    /// A heading must be true.
    fn holds(&self, words: &str) -> anyhow::Result<()> {
        let is_so = if words == NOTHING {
            self.shown.is_empty()
        } else {
            self.shown.iter().any(|text| text.contains(words))
        };
        if !is_so {
            bail!("shown should be {words:?}, but it is {:?}", self.shown);
        }
        Ok(())
    }

    fn cue(&mut self, cue: &Cue) -> anyhow::Result<()> {
        let number = self.number_of(&cue.who)?;
        self.pass(self.instant(cue.at))?;
        match &cue.deed {
            Deed::Is(manner) => {
                let people = self.people_of(&cue.who);
                for person in people {
                    self.manners.insert(person, *manner);
                }
            }
            Deed::Reads => {
                let Some(last) = self.last_on.get(&number) else {
                    bail!("{} has got no text yet", cue.who);
                };
                let at = self.local(last.at);
                let text = last.text.text.clone();
                self.shown = vec![text.clone()];
                self.screen.read(cue.at, at, &cue.who, &text)?;
            }
            Deed::Texts(text) => {
                let text = self.with_code(&number, text);
                self.screen.texted(cue.at, &cue.who, &text)?;
                self.tally.texted(&number);
                let answers = self.rig.text(&number, &text)?;
                let said = answers.iter().map(|arrived| arrived.text.text.clone());
                self.shown = said.collect();
                if answers.is_empty() {
                    self.screen.silent(NOTHING)?;
                }
                let mut said = answers.iter().peekable();
                while let Some(arrived) = said.next() {
                    self.take(arrived);
                    let to = self.name_of(&arrived.text.to);
                    let mut to = (arrived.text.to != number).then_some(to);
                    let is_same = |other: &&Arrived| other.text.text == arrived.text.text;
                    let mut phones = 1;
                    while !self.screen.shows_all()
                        && let Some(other) = said.next_if(is_same)
                    {
                        self.take(other);
                        phones += 1;
                        to = Some(format!("{phones} phones"));
                    }
                    self.screen.answered(to.as_deref(), &arrived.text.text)?;
                }
            }
        }
        Ok(())
    }

    /// Lets time pass; meanwhile nudges arrive, and some are answered.
    fn pass(&mut self, until: DateTime<Utc>) -> anyhow::Result<()> {
        loop {
            let planned = self.planned.first_key_value().map(|((at, _), _)| *at);
            let woken = self.rig.engine().next_wake();
            let tried = self.rig.engine().next_try();
            let next = [planned, woken, tried]
                .into_iter()
                .flatten()
                .min()
                .filter(|next| *next < until);
            let stop = next.unwrap_or(until).max(self.rig.now());
            for arrived in self.rig.run_until(stop)? {
                self.behind(&arrived)?;
            }
            if next.is_none() {
                return Ok(());
            }
            while let Some(entry) = self.planned.first_entry()
                && entry.key().0 <= stop
            {
                let plan = entry.remove();
                self.carry_out(plan)?;
            }
        }
    }

    /// A text arrives behind the scenes.
    fn behind(&mut self, arrived: &Arrived) -> anyhow::Result<()> {
        self.take(arrived);
        let to = self.name_of(&arrived.text.to);
        let at = self.local(arrived.at);
        self.screen.answered_behind(at, &to, &arrived.text.text)?;
        let purpose = self
            .rig
            .engine()
            .outbound(arrived.text.id)
            .map(|outbound| outbound.purpose.clone());
        match purpose {
            Some(Purpose::Nudge { block, task, .. }) => {
                self.tally.nudged(&arrived.text.to, self.has_agreed(block));
                self.screen.nudged();
                self.plan_answer(arrived, block, task);
            }
            Some(Purpose::Answer { .. }) if arrived.text.text.contains(YES_OR_NO) => {
                let at = arrived.at + TimeDelta::minutes(QUESTION_MINUTES);
                let number = arrived.text.to.clone();
                let text = "1".to_owned();
                self.plan(at, Plan::Say { number, text });
            }
            Some(
                Purpose::Answer { .. }
                | Purpose::Notice { .. }
                | Purpose::Welcome { .. }
                | Purpose::Announcement { .. }
                | Purpose::Service { .. },
            )
            | None => {}
        }
        Ok(())
    }

    fn take(&mut self, arrived: &Arrived) {
        self.tally.sent(&arrived.text.text);
        self.last_on
            .insert(arrived.text.to.clone(), arrived.clone());
    }

    fn plan_answer(&mut self, arrived: &Arrived, block: BlockId, task: TaskKind) {
        let Some(owner) = self.owner(block) else {
            return;
        };
        let manner = self.manner_of(owner);
        let habits = manner.habits();
        if !self.chance.in_a_hundred(habits.answers) {
            return;
        }
        let day = self
            .local(arrived.at)
            .date()
            .checked_add_days(Days::new(
                self.chance.between(habits.days.0, habits.days.1).into(),
            ))
            .unwrap_or_default();
        let hour = self.chance.between(DAY_HOURS.0, DAY_HOURS.1);
        let minute = self.chance.between(0, 59);
        let time = NaiveTime::from_hms_opt(hour, minute, 0).unwrap_or_default();
        let soonest = arrived.at + TimeDelta::minutes(ANSWER_MINUTES_MIN);
        let at = self.instant(day.and_time(time)).max(soonest);
        let number = arrived.text.to.clone();
        self.plan(
            at,
            Plan::Job {
                number,
                block,
                task,
            },
        );
    }

    fn plan(&mut self, at: DateTime<Utc>, plan: Plan) {
        self.plans += 1;
        self.planned.insert((at, self.plans), plan);
    }

    fn carry_out(&mut self, plan: Plan) -> anyhow::Result<()> {
        let (number, text) = match plan {
            Plan::Say { number, text } => (number, text),
            Plan::Job {
                number,
                block,
                task,
            } => match self.words(&number, block, task) {
                Some(text) => (number, text),
                None => return Ok(()),
            },
        };
        let at = self.local(self.rig.now());
        let who = self.name_of(&number);
        self.screen.texted_behind(at, &who, &text)?;
        self.tally.texted(&number);
        for arrived in self.rig.text(&number, &text)? {
            self.behind(&arrived)?;
        }
        Ok(())
    }

    /// What the owner of a block texts about a job; nothing when it is no longer open.
    fn words(&mut self, number: &str, block: BlockId, task: TaskKind) -> Option<String> {
        let today = self.local(self.rig.now()).date();
        let engine = self.rig.engine();
        let open = engine
            .tasks(block, today)
            .into_iter()
            .find(|open| open.kind == task && open.due <= today)?;
        if engine.jobs_told(number) > 1 {
            return Some(DONE.to_owned());
        }
        let owner = self.owner(block)?;
        let spelling = self.manner_of(owner).habits().spelling;
        let state = engine.state(block).cloned().unwrap_or_default();
        let count = field::count(&open, &state, &mut self.chance);
        let mut text = self
            .replies
            .pick(task, spelling, &mut self.chance)?
            .to_owned();
        let names_a_block = text.contains(BLOCK);
        let name = &self.rig.engine().directory().block(block)?.name;
        text = text
            .replace("{block}", name)
            .replace("{n}", &count.to_string());
        if text.contains("{girths}") {
            text = text.replace("{girths}", &field::girths(&state, today, &mut self.chance));
        }
        let directory = self.rig.engine().directory();
        let is_shared = directory.phone(number)?.people().count() > 1;
        let person = directory.person(owner)?;
        Some(if is_shared && names_a_block {
            format!("{}: {text}", person.called())
        } else {
            text
        })
    }

    /// The farmer's text with the code from the last text on the same phone.
    fn with_code(&self, number: &str, text: &str) -> String {
        let code = self
            .last_on
            .get(number)
            .and_then(|last| {
                last.text
                    .text
                    .split(|c: char| !c.is_ascii_digit())
                    .rfind(|digits| digits.len() == CODE_DIGITS)
            })
            .unwrap_or_default();
        text.replace(CODE, code)
    }

    fn number_of(&self, who: &str) -> anyhow::Result<String> {
        if who.starts_with('+') {
            return Ok(who.to_owned());
        }
        let directory = self.rig.engine().directory();
        directory
            .persons()
            .filter(|person| person.is_named(who))
            .find_map(|person| directory.numbers_of(person.id).next())
            .map(str::to_owned)
            .with_context(|| format!("nobody on the list is called {who:?}"))
    }

    fn people_of(&self, who: &str) -> Vec<PersonId> {
        let directory = self.rig.engine().directory();
        directory
            .persons()
            .filter(|person| person.is_named(who))
            .map(|person| person.id)
            .collect()
    }

    fn name_of(&self, number: &str) -> String {
        let directory = self.rig.engine().directory();
        let names: Vec<&str> = directory
            .phone(number)
            .into_iter()
            .flat_map(|phone| phone.people().collect::<Vec<_>>())
            .filter_map(|person| directory.person(person))
            .map(|person| person.called())
            .collect();
        if names.is_empty() {
            number.to_owned()
        } else {
            names.join("+")
        }
    }

    fn owner(&self, block: BlockId) -> Option<PersonId> {
        let directory = self.rig.engine().directory();
        directory.block(block).map(|block| block.owner)
    }

    fn has_agreed(&self, block: BlockId) -> bool {
        self.owner(block)
            .and_then(|owner| self.rig.engine().directory().person(owner))
            .is_some_and(|owner| owner.consent.is_given())
    }

    fn manner_of(&self, person: PersonId) -> Manner {
        self.manners
            .get(&person)
            .copied()
            .unwrap_or(Manner::Diligent)
    }

    fn local(&self, at: DateTime<Utc>) -> NaiveDateTime {
        at.with_timezone(&self.zone).naive_local()
    }

    fn instant(&self, local: NaiveDateTime) -> DateTime<Utc> {
        self.zone
            .from_local_datetime(&local)
            .earliest()
            .map_or_else(|| local.and_utc(), |at| at.with_timezone(&Utc))
    }
}
