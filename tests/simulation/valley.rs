//! The valley: people, network, computer and engine on one virtual clock.

use std::{
    collections::BTreeMap,
    sync::{Arc, OnceLock},
};

use budwood::{
    engine::{Engine, Entries, Input, Setup},
    play::virtual_clock,
    words::{traffic::Outgoing, ways::Ways},
};
use budwood_scheduler::{MessageId, jobs::nudge::Rules};
use chrono::{DateTime, Days, NaiveDate, TimeDelta, TimeZone, Utc};

use super::{
    chance::Chance,
    disk::Disk,
    laws::{Laws, Moment, Picture},
    network::Under,
    people::{self, Desk, Phone},
    shape::{On, Shape},
    time::Time,
    trouble::Copy,
};
use crate::fixture::{self, LINE};

/// So many steps at one moment, and the engine does not get on.
const STEPS_AT_ONCE_MAX: u32 = 5_000;
/// While the engine's time stands still, the outbox is looked at this often.
const LOOK_MINUTES: i64 = 10;
/// Days between two looks at what is owed.
const OWED_DAYS: u64 = 3;

pub(super) struct Valley {
    pub(super) shape: Shape,
    pub(super) chance: Chance,
    pub(super) time: Time,
    pub(super) setup: Arc<Setup>,
    pub(super) disk: Disk,
    pub(super) engine: Engine,
    pub(super) laws: Laws,
    pub(super) phones: Vec<Phone>,
    desks: Vec<Desk>,
    /// What is under way to us, by when it comes.
    pub(super) way: BTreeMap<(DateTime<Utc>, u64), Under>,
    /// What the provider has, by our id: it knows a second try of the same text.
    pub(super) taken: BTreeMap<MessageId, Outgoing>,
    /// Until then the provider takes nothing.
    pub(super) outage: DateTime<Utc>,
    pub(super) held: bool,
    /// The moment of the last step.
    pub(super) stepped: Moment,
    /// A copy that is being taken, and the last whole one.
    pub(super) copying: Option<Copy>,
    pub(super) copy: Option<Copy>,
    ids: u64,
}

/// Few, so that some people must wait for their welcome.
const WELCOMES_A_DAY: u32 = 3;

fn start() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 9, 1).expect("a day")
}

/// The setup of the service, behind a gateway that does or does not know a second try.
fn setup(idempotent: bool) -> Arc<Setup> {
    static SETUPS: OnceLock<[Arc<Setup>; 2]> = OnceLock::new();
    let setups = SETUPS.get_or_init(|| {
        [false, true].map(|idempotent| {
            Arc::new(Setup {
                ways: Ways::one(LINE, idempotent),
                rules: Rules {
                    welcomes_a_day: WELCOMES_A_DAY,
                    ..Rules::standard()
                },
                ..fixture::own_setup()
            })
        })
    });
    setups[usize::from(idempotent)].clone()
}

impl Valley {
    pub(super) fn new(seed: u64, shape: Shape) -> Self {
        let mut chance = Chance::new(seed);
        let now = Utc.from_utc_datetime(&start().and_hms_opt(8, 0, 0).expect("a time"));
        let setup = setup(seed.is_multiple_of(2));
        let disk = match shape.on {
            On::Memory => Disk::in_memory(),
            On::Folder => Disk::in_folder(),
        };
        let engine = Engine::open(setup.clone(), Box::new(disk.clone()), now).expect("a new store");
        let people = people::people(&mut chance, &shape, start());
        let plan = virtual_clock::plan_roll(&engine, people.roll.as_bytes(), now);
        assert!(plan.may_be_stored(), "{plan}");
        let entries = with_quiet_days(virtual_clock::entries(&plan), &mut chance, &shape);
        let mut valley = Self {
            shape,
            chance,
            time: Time::at(now),
            setup,
            disk,
            engine,
            laws: Laws::default(),
            phones: people.phones,
            desks: people.desks,
            way: BTreeMap::new(),
            taken: BTreeMap::new(),
            outage: now,
            held: false,
            stepped: Moment {
                now,
                held: false,
                wrong: false,
            },
            copying: None,
            copy: None,
            ids: 0,
        };
        // The clock is right at first: one that is not, and never was, cannot be told from it.
        valley.time.look(&mut valley.engine);
        valley
            .engine
            .handle(vec![Input::Roll(Box::new(entries))], now)
            .expect("a sound disk");
        valley.judge();
        valley
    }

    /// Until the days or the steps are over.
    pub(super) fn live(&mut self) {
        let first = self.time.now();
        for day in 0..self.shape.days {
            self.morning(day);
            self.run_until(first + Days::new(day + 1));
            self.laws.figures.farm_days += u64::from(self.shape.farmers);
            if day % OWED_DAYS == 0 {
                self.look_what_is_owed();
            }
            if day % self.shape.whole == self.shape.whole - 1 {
                self.laws.whole(&self.engine, &self.disk);
            }
            if self.laws.figures.steps >= self.shape.steps {
                break;
            }
        }
        self.time.look(&mut self.engine);
        let before = Picture::of(&self.engine);
        self.start_again(Some(&before));
        self.laws.whole(&self.engine, &self.disk);
    }

    fn look_what_is_owed(&mut self) {
        let now = self.time.look(&mut self.engine);
        let moment = self.moment();
        // The engine may doubt a clock that is nearly right.
        let is_sure = (now - self.time.now()).abs() < TimeDelta::minutes(1);
        let settled = self.time.right_for() >= Some(TimeDelta::days(1));
        assert!(is_sure || !settled, "a clock that is right is in doubt");
        if self.held || moment.wrong || !is_sure {
            self.laws.nothing_is_owed();
        } else {
            self.laws.owed(&self.engine, moment);
        }
    }

    /// What people text today of their own accord, and what goes wrong.
    fn morning(&mut self, day: u64) {
        for index in 0..self.phones.len() {
            let said = self.phones[index].of_own_accord(&mut self.chance);
            let number = self.phones[index].number.clone();
            for (after, text) in said {
                self.send_to_us(&number, text, after);
            }
        }
        // Some outages begin in the afternoon, when nudges go, and last into the night or for days.
        if self.chance.once_in(self.shape.outage) {
            let most = *self.chance.pick(&[6 * 60, 24 * 60, 4 * 24 * 60]);
            self.outage = self.time.now() + self.chance.minutes(60, most);
        }
        self.advisers(day);
        if self.chance.once_in(self.shape.clock) {
            self.time.set_by_somebody(&mut self.chance);
            if self.time.is_wrong() {
                self.laws.figures.clocks += 1;
                self.laws.nothing_is_owed();
            }
        } else if self.time.is_wrong() && self.chance.once_in(5) {
            self.time.put_right();
        }
        if self.chance.once_in(self.shape.copy) && self.copying.is_none() {
            self.begin_copy();
        }
        if self.chance.once_in(self.shape.loss) {
            self.lose_disk();
        }
    }

    fn advisers(&mut self, day: u64) {
        for index in 0..self.desks.len() {
            let Desk { adviser, group } = self.desks[index].clone();
            if self.chance.once_in(self.shape.ask) {
                let after = self.chance.minutes(0, 600);
                let question = *self
                    .chance
                    .pick(&["LATE", "LATE", "LATE", "STATUS", "GAPS", "SICK", "WARN"]);
                self.send_to_us(adviser, format!("{question} {group}"), after);
            }
            if day.is_multiple_of(100) {
                self.send_to_us(adviser, format!("WINDOW {group}"), TimeDelta::hours(3));
            }
        }
        if day.is_multiple_of(31) {
            let adviser = self.desks[0].adviser;
            self.send_to_us(adviser, "QUIET".to_owned(), TimeDelta::hours(2));
        }
    }

    fn run_until(&mut self, end: DateTime<Utc>) {
        let mut at_once = 0;
        let mut tried = false;
        loop {
            // The engine's time may be another one than the true time.
            let engine_now = self.time.look(&mut self.engine);
            let now = self.time.now();
            let true_time = |at: DateTime<Utc>| at - (engine_now - now);
            let next = self.way.first_key_value().map(|((at, _), _)| *at);
            let wake = self.engine.next_wake().map(true_time);
            let send = self.engine.next_try().map(true_time);
            let look = now + TimeDelta::minutes(LOOK_MINUTES);
            let send = match send {
                Some(at) if at > now && engine_now != now => Some(at.max(look)),
                Some(at) if at <= now && tried => None,
                other => other,
            };
            let Some(soonest) = next.into_iter().chain(wake).chain(send).min() else {
                break;
            };
            if soonest > end || self.laws.figures.steps >= self.shape.steps {
                break;
            }
            at_once = if soonest > now { 0 } else { at_once + 1 };
            assert!(at_once < STEPS_AT_ONCE_MAX, "no progress at {now}");
            self.time.pass_until(soonest);
            let due = |at: Option<DateTime<Utc>>| at.is_some_and(|at| at <= soonest);
            if due(next) {
                self.take_what_came();
                tried = false;
            } else if due(wake) {
                self.step(vec![Input::Wake]);
                tried = false;
            } else {
                tried = !self.claim();
            }
            if self.chance.once_in(200) {
                // Callers may ask at any time.
                self.step(vec![Input::Wake]);
                self.claim();
            }
        }
        self.time.pass_until(end);
    }

    pub(super) fn moment(&mut self) -> Moment {
        Moment {
            now: self.time.look(&mut self.engine),
            held: self.held,
            wrong: self.time.is_wrong(),
        }
    }

    /// What was written must be what may be written.
    pub(super) fn judge(&mut self) {
        let written = self.disk.take_written();
        for change in &written {
            self.laws.written(change, &self.engine, self.stepped);
        }
        self.laws.live(&written, &self.engine);
    }

    pub(super) const fn next_id(&mut self) -> u64 {
        self.ids += 1;
        self.ids
    }
}

/// Days without texts are not in the list; the office sets them, some twelve a year.
fn with_quiet_days(mut entries: Entries, chance: &mut Chance, shape: &Shape) -> Entries {
    let days = u32::try_from(shape.days.min(8 * 365)).expect("a few years");
    for group in &mut entries.groups {
        group.quiet_days = (0..days / 30)
            .map(|_| start() + Days::new(u64::from(chance.below(days))))
            .collect();
    }
    entries
}
