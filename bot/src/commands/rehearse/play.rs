//! The play: time passes week by week, nudges arrive, farmers answer, the adviser opens windows.

use std::{
    collections::{BTreeMap, BTreeSet},
    sync::Arc,
};

use budwood_scheduler::{
    BlockId, BlockState, Figures, GroupId, PersonId, TaskKind,
    outlook::growth::{Among, LIMITS_CM, standard},
};
use chrono::{DateTime, Datelike, NaiveDate, TimeDelta, Utc};
use chrono_tz::Tz;

use super::{
    forget::Forgetful,
    labour::{Work, is_short},
    rains,
    tally::{CLASH_JOBS, Tally},
};
use crate::{
    commands::planning::Costs,
    engine::Setup,
    play::{
        field,
        manner::Manner,
        replies::{REPLIES, Replies, Spelling},
        seeded::Seeded,
        virtual_clock::{Arrived, Rig},
    },
    words::message::Purpose,
};

/// Any number does; another one gives another play.
const SEED: u64 = 1_977;
/// The hour at which a play begins.
const HOUR: u32 = 1;
/// An adviser who opens several windows on a day takes so long for each.
const BETWEEN_GROUPS_MINUTES: i64 = 15;
/// What was late when the play began counts as late only after so many days: a phone gets one text a
/// week.
const SETTLED_DAYS: i64 = 28;
/// Digits of a code against forged numbers.
const CODE_DIGITS: usize = 6;
/// How the bot asks whether something is right.
const YES_OR_NO: &str = "Reply 1 yes";
/// What answers for every job of a field round.
const DONE: &str = "done";
const DAYS_A_YEAR: f64 = 365.25;

pub(super) struct Play {
    rig: Rig,
    setup: Arc<Setup>,
    replies: Replies,
    manners: BTreeMap<PersonId, Manner>,
    /// How often each job was spoken of.
    rounds: BTreeMap<(BlockId, TaskKind), u64>,
    answers: BTreeMap<(DateTime<Utc>, u32), Answer>,
    planned: u32,
    opened: BTreeSet<(GroupId, NaiveDate)>,
    costs: Option<Costs>,
    tally: Tally,
}

/// What somebody will text.
enum Answer {
    Job {
        number: String,
        block: BlockId,
        job: TaskKind,
        luck: Seeded,
    },
    Yes {
        number: String,
    },
}

impl Play {
    pub(super) fn open(
        setup: Arc<Setup>,
        csv: &str,
        from: Option<NaiveDate>,
        diligent_pct: u32,
        costs: Option<Costs>,
    ) -> anyhow::Result<Self> {
        let from = match from {
            Some(from) => from,
            None => rains::begin(csv)?,
        };
        let now = from.and_hms_opt(HOUR, 0, 0).unwrap_or_default().and_utc();
        let mut rig = Rig::open(setup.clone(), Box::new(Forgetful::default()), now)?;
        rig.load_roll(csv.as_bytes())?;
        let mut play = Self {
            rig,
            setup,
            replies: Replies::parse(REPLIES)?,
            manners: BTreeMap::new(),
            rounds: BTreeMap::new(),
            answers: BTreeMap::new(),
            planned: 0,
            opened: BTreeSet::new(),
            tally: Tally {
                from,
                short: costs.is_some().then(BTreeMap::new),
                ..Tally::default()
            },
            costs,
        };
        play.meet(diligent_pct);
        Ok(play)
    }

    /// Gives each farmer a way of answering.
    fn meet(&mut self, diligent_pct: u32) {
        let directory = self.rig.engine().directory();
        let mut farmers = Vec::new();
        for person in directory.persons() {
            let blocks = directory.blocks_of(person.id).count();
            if blocks > 0 {
                farmers.push((person.id, person.consent.is_given()));
                self.tally.blocks += u32::try_from(blocks).unwrap_or(u32::MAX);
            }
        }
        let mut chance = Seeded::new(SEED);
        for (person, agreed) in farmers {
            self.tally.farmers += 1;
            self.tally.silent_farmers += u32::from(!agreed);
            let manner = if chance.in_a_hundred(diligent_pct) {
                Manner::Diligent
            } else if chance.in_a_hundred(50) {
                Manner::Late
            } else {
                Manner::Quiet
            };
            self.manners.insert(person, manner);
        }
    }

    pub(super) fn into_tally(self) -> Tally {
        self.tally
    }

    /// Lets a week pass.
    pub(super) fn week(&mut self) -> anyhow::Result<()> {
        let end = self.rig.now() + TimeDelta::days(7);
        self.open_windows()?;
        loop {
            let engine = self.rig.engine();
            let planned = self.answers.first_key_value().map(|((at, _), _)| *at);
            let next = [planned, engine.next_wake(), engine.next_try()];
            let next = next.into_iter().flatten().min().filter(|next| *next < end);
            let stop = next.unwrap_or(end).max(self.rig.now());
            for arrived in self.rig.run_until(stop)? {
                self.arrive(&arrived);
            }
            if next.is_none() {
                break;
            }
            while let Some(entry) = self.answers.first_entry()
                && entry.key().0 <= stop
            {
                let answer = entry.remove();
                self.answer(answer)?;
            }
        }
        self.look();
        Ok(())
    }

    fn arrive(&mut self, arrived: &Arrived) {
        let engine = self.rig.engine();
        let purpose = engine
            .outbound(arrived.text.id)
            .map(|text| text.purpose.clone());
        let zone = self.zone_of(&arrived.text.to);
        let on = arrived.at.with_timezone(&zone).date_naive();
        let text = &arrived.text.text;
        match purpose {
            Some(Purpose::Nudge { block, task, .. }) => {
                let owner = engine.directory().block(block).map(|block| block.owner);
                self.tally.sent(on, text, owner.map(|owner| (owner, task)));
                if let Some(owner) = owner {
                    self.plan_answer(arrived, owner, block, task);
                }
            }
            Some(Purpose::Answer { .. }) if text.contains(YES_OR_NO) => {
                self.tally.sent(on, text, None);
                let number = arrived.text.to.clone();
                self.plan(arrived.at + TimeDelta::minutes(10), Answer::Yes { number });
            }
            Some(
                Purpose::Answer { .. }
                | Purpose::Notice { .. }
                | Purpose::Welcome { .. }
                | Purpose::Announcement { .. }
                | Purpose::Service { .. },
            )
            | None => {
                self.tally.sent(on, text, None);
            }
        }
    }

    fn plan_answer(&mut self, arrived: &Arrived, owner: PersonId, block: BlockId, job: TaskKind) {
        let manner = self.manners.get(&owner).copied().unwrap_or(Manner::Quiet);
        let habits = manner.habits();
        let mut luck = self.luck(block, job);
        if !luck.in_a_hundred(habits.answers) {
            return;
        }
        let days = luck.between(habits.days.0, habits.days.1);
        let minutes = luck.between(20, 150);
        let later = TimeDelta::days(days.into()) + TimeDelta::minutes(minutes.into());
        let number = arrived.text.to.clone();
        let answer = Answer::Job {
            number,
            block,
            job,
            luck,
        };
        self.plan(arrived.at + later, answer);
    }

    /// The chance of one round of one job: the same whenever it comes round, so that two plays
    /// differ by what is changed between them and not by luck.
    fn luck(&mut self, block: BlockId, job: TaskKind) -> Seeded {
        let round = self.rounds.entry((block, job)).or_default();
        *round += 1;
        let kind = TaskKind::ALL.iter().position(|kind| *kind == job);
        let kind = kind.map_or(0, |kind| kind as u64);
        Seeded::new(SEED ^ (u64::from(block.0) << 32) ^ (kind << 24) ^ *round)
    }

    fn plan(&mut self, at: DateTime<Utc>, answer: Answer) {
        self.planned += 1;
        self.answers.insert((at, self.planned), answer);
    }

    fn answer(&mut self, answer: Answer) -> anyhow::Result<()> {
        match answer {
            Answer::Yes { number } => self.text(&number, "1"),
            Answer::Job {
                number,
                block,
                job,
                mut luck,
            } => match self.words(&number, block, job, &mut luck) {
                Some(text) => self.text(&number, &text),
                None => Ok(()),
            },
        }
    }

    fn text(&mut self, number: &str, text: &str) -> anyhow::Result<()> {
        let zone = self.zone_of(number);
        let on = self.rig.now().with_timezone(&zone).date_naive();
        self.tally.texted(on);
        for arrived in self.rig.text(number, text)? {
            self.arrive(&arrived);
        }
        Ok(())
    }

    /// What the owner texts about a job; nothing when it is no longer open.
    fn words(
        &self,
        number: &str,
        block: BlockId,
        job: TaskKind,
        luck: &mut Seeded,
    ) -> Option<String> {
        let today = self
            .rig
            .now()
            .with_timezone(&self.zone_of(number))
            .date_naive();
        let engine = self.rig.engine();
        let tasks = engine.tasks(block, today);
        let open = tasks
            .iter()
            .find(|open| open.kind == job && open.due <= today)?;
        if engine.jobs_told(number) > 1 {
            return Some(DONE.to_owned());
        }
        let state = engine.state(block).cloned().unwrap_or_default();
        let directory = engine.directory();
        let name = directory.block(block)?.name.clone();
        let owner = directory.person(directory.block(block)?.owner)?;
        let shared = directory.phone(number)?.people().count() > 1;
        let called = shared.then(|| owner.called().to_owned());
        if job == TaskKind::GirthCensus {
            let mean_cm = self.mean_girth_cm(block, state.planted_on()?, today)?;
            return girths(&open.figures, &name, mean_cm, luck);
        }
        let count = field::count(open, &state, luck).to_string();
        let way = self.replies.pick(job, Spelling::Plain, luck)?;
        let text = way.replace("{block}", &name).replace("{n}", &count);
        Some(match called {
            Some(called) if way.contains("{block}") => format!("{called}: {text}"),
            Some(_) | None => text,
        })
    }

    /// What the calendar of the block's group leads to expect of it.
    fn mean_girth_cm(
        &self,
        block: BlockId,
        planted_on: NaiveDate,
        today: NaiveDate,
    ) -> Option<f64> {
        let directory = self.rig.engine().directory();
        let block = directory.block(block)?;
        let calendar = directory.group_of_block(block)?.calendar.as_str();
        let calendar = self.setup.calendars.get(calendar)?;
        let clone_name = block.clone_name.as_deref();
        let likely = LIMITS_CM.likely;
        let curve = standard(calendar, clone_name, Among::default(), likely)?;
        let days = i32::try_from((today - planted_on).num_days()).ok()?;
        Some(curve.girth_cm(f64::from(days) / DAYS_A_YEAR))
    }

    /// The adviser opens the window of each group in the week in which its rains begin, in the
    /// years in which one of its blocks is to be planted.
    fn open_windows(&mut self) -> anyhow::Result<()> {
        let today = self.rig.now().date_naive();
        let directory = self.rig.engine().directory();
        let mut due = Vec::new();
        for group in directory.groups() {
            let second = group.second_rains.map(|(start, _)| start);
            let starts = group.rains_start.into_iter().chain(second);
            let start = starts
                .filter_map(|(month, day)| {
                    NaiveDate::from_ymd_opt(today.year(), month, day.min(28))
                })
                .find(|start| (0..7).contains(&(today - *start).num_days()));
            let is_meant = directory.blocks().any(|block| {
                let near = block
                    .planned_on
                    .is_some_and(|day| (day - today).num_days().abs() < 183);
                near && directory
                    .group_of_block(block)
                    .is_some_and(|of| of.id == group.id)
            });
            let number = group
                .adviser
                .and_then(|adviser| directory.numbers_of(adviser).next());
            if let Some((start, number)) = start.zip(number).filter(|_| is_meant) {
                due.push(((group.id, start), group.name.clone(), number.to_owned()));
            }
        }
        for (window, name, number) in due {
            if !self.opened.insert(window) {
                continue;
            }
            // An adviser of many groups texts one after the other, or would look like a loop.
            let next = self.rig.now() + TimeDelta::minutes(BETWEEN_GROUPS_MINUTES);
            for arrived in self.rig.run_until(next)? {
                self.arrive(&arrived);
            }
            let asked = self.rig.text(&number, &format!("WINDOW {name}"))?;
            let code = asked
                .iter()
                .rev()
                .find_map(|arrived| code_in(&arrived.text.text));
            if let Some(code) = code {
                self.text(&number, &format!("yes {code}"))?;
            }
        }
        Ok(())
    }

    /// What stands at the end of a week.
    fn look(&mut self) {
        let today = self.rig.now().date_naive();
        let engine = self.rig.engine();
        let mut due_of: BTreeMap<PersonId, Vec<Work>> = BTreeMap::new();
        let (mut planted, mut ready, mut untold) = (Vec::new(), Vec::new(), Vec::new());
        let settled = self.tally.from + TimeDelta::days(SETTLED_DAYS);
        for block in engine.directory().blocks() {
            let planted_on = engine.state(block.id).and_then(BlockState::planted_on);
            planted.extend(planted_on.map(|on| (block.id, on)));
            let owner = engine.directory().person(block.owner);
            let agreed = owner.is_some_and(|owner| owner.consent.is_given());
            for task in engine.tasks(block.id, today) {
                if task.due <= today {
                    let hectares = block.hectares().unwrap_or(0.0);
                    let takes = |costs: &Costs| costs.days(task.kind, hectares);
                    due_of.entry(block.owner).or_default().push(Work {
                        takes: self.costs.as_ref().map_or(0.0, takes),
                        left: (task.late_after - today).num_days(),
                    });
                    let told = engine
                        .state(block.id)
                        .and_then(|state| state.nudges.get(&task.kind));
                    let told = told.filter(|track| track.due == task.due);
                    let late_after = task.late_after.max(settled);
                    if agreed && told.map_or(today, |track| track.first_on) > late_after {
                        untold.push((block.id, task.kind, task.due));
                    }
                    if task.kind == TaskKind::Open {
                        ready.push((block.id, task.due));
                    }
                }
            }
        }
        self.tally.untold.extend(untold);
        for (block, on) in planted {
            self.tally.planted(block, on);
        }
        for (block, on) in ready {
            self.tally.ready(block, on);
        }
        for due in due_of.values() {
            if due.len() >= CLASH_JOBS {
                self.tally.clash(today);
            }
            if is_short(due) {
                self.tally.short(today);
            }
        }
    }

    fn zone_of(&self, number: &str) -> Tz {
        let directory = self.rig.engine().directory();
        let person = directory
            .phone(number)
            .and_then(|phone| phone.people().next());
        let group = person
            .and_then(|person| directory.person(person)?.group)
            .and_then(|group| directory.group(group));
        group
            .and_then(|group| group.zone.parse().ok())
            .unwrap_or(Tz::UTC)
    }
}

/// As many trees as were asked for, and how many of them reach the string.
fn girths(figures: &Figures, block: &str, mean_cm: f64, luck: &mut Seeded) -> Option<String> {
    let (of, girth_cm) = figures.trees.zip(figures.girth_cm)?;
    let reached = (0..of)
        .filter(|_| mean_cm * field::spread(luck) >= girth_cm)
        .count();
    Some(format!("girth {block} {reached} of {of}"))
}

fn code_in(text: &str) -> Option<&str> {
    text.split(|sign: char| !sign.is_ascii_digit())
        .rfind(|digits| digits.len() == CODE_DIGITS)
}
