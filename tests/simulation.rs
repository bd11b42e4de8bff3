//! A valley for more than a year in a few seconds: farmers with manners, a network that doubles, delays
//! and reorders texts, a gateway that fails, and power cuts between any two steps.
//!
//! Everything follows from one seed. A run that breaks a law prints the command that repeats it.
//! `BUDWOOD_SEED=7 cargo test -p budwood --test it simulation` runs the valley of seed 7.

mod chance;
mod disk;
mod laws;
mod people;

use std::{collections::BTreeMap, env, sync::Arc, thread};

use budwood::{
    engine::{Engine, Entries, Input, Setup, Told},
    gateway::{Delivery, Inbound, Outgoing, Receipt, SendOutcome},
    rig,
};
use budwood_scheduler::MessageId;
use chrono::{DateTime, Days, NaiveDate, TimeDelta, TimeZone, Utc};

use self::{
    chance::Chance,
    disk::Disk,
    laws::Laws,
    people::{ADVISER, Phone},
};
use crate::sim;

/// Seeds of a plain run.
const SEEDS: std::ops::Range<u64> = 1..4;
const DAYS: u64 = 420;
/// One in so many steps ends in a power cut.
const CUT_ONE_IN: u32 = 400;
/// So many steps at one moment, and the engine does not get on.
const STEPS_AT_ONCE_MAX: u32 = 5_000;

/// What comes to us, or is to be told to us.
#[derive(Clone)]
enum Under {
    Text(Inbound),
    Receipt(Receipt),
    Answer(MessageId, SendOutcome),
}

struct Valley {
    chance: Chance,
    now: DateTime<Utc>,
    setup: Arc<Setup>,
    disk: Disk,
    engine: Engine,
    laws: Laws,
    phones: Vec<Phone>,
    /// What is under way to us, by when it comes.
    way: BTreeMap<(DateTime<Utc>, u64), Under>,
    /// What the provider has, by our id: it knows a second try of the same text.
    taken: BTreeMap<MessageId, Outgoing>,
    /// Until then the provider takes nothing.
    outage: DateTime<Utc>,
    count: u64,
    cuts: u32,
}

/// Says how to repeat a run that failed.
struct Repeat(u64);

impl Drop for Repeat {
    fn drop(&mut self) {
        if thread::panicking() {
            let seed = self.0;
            eprintln!(
                "repeat it with: BUDWOOD_SEED={seed} cargo test -p budwood --test it simulation"
            );
        }
    }
}

#[test]
fn no_law_is_broken_in_a_year_and_more() {
    let chosen = env::var("BUDWOOD_SEED")
        .ok()
        .map(|seed| seed.parse().expect("a number"));
    let seeds = chosen.map_or(SEEDS, |seed: u64| seed..seed + 1);
    for seed in seeds {
        let _repeat = Repeat(seed);
        let mut valley = Valley::new(seed);
        valley.live();
        let (nudges, facts) = (valley.laws.nudges, valley.laws.facts);
        let cuts = valley.cuts;
        assert!(
            nudges > 500 && facts > 1_500 && cuts > 20,
            "hardly anything happened: {nudges} nudges, {facts} facts, {cuts} power cuts"
        );
    }
}

fn start() -> NaiveDate {
    NaiveDate::from_ymd_opt(2026, 9, 1).expect("a day")
}

impl Valley {
    fn new(seed: u64) -> Self {
        let mut chance = Chance::new(seed);
        let now = Utc.from_utc_datetime(&start().and_hms_opt(8, 0, 0).expect("a time"));
        let mut setup = sim::own_setup();
        setup.idempotent_gateway = seed.is_multiple_of(2);
        let setup = Arc::new(setup);
        let disk = Disk::default();
        let mut engine =
            Engine::open(setup.clone(), Box::new(disk.clone()), now).expect("an empty store");
        let (roll, phones) = people::valley(&mut chance, start());
        let plan = rig::plan_roll(&engine, roll.as_bytes(), now);
        assert!(plan.may_be_stored(), "{plan}");
        let entries = with_quiet_days(rig::entries(&plan), &mut chance);
        engine
            .handle(vec![Input::Roll(Box::new(entries))], now)
            .expect("a sound disk");
        let mut valley = Self {
            chance,
            now,
            setup,
            disk,
            engine,
            laws: Laws::default(),
            phones,
            way: BTreeMap::new(),
            taken: BTreeMap::new(),
            outage: now,
            count: 0,
            cuts: 0,
        };
        valley.judge();
        valley
    }

    fn live(&mut self) {
        let first = self.now;
        for day in 0..DAYS {
            self.morning(day);
            self.run_until(first + Days::new(day + 1));
            if day.is_multiple_of(30) {
                self.laws.whole(&self.engine, &self.disk);
            }
        }
        self.reopen();
        self.laws.whole(&self.engine, &self.disk);
    }

    /// What people text today of their own accord.
    fn morning(&mut self, day: u64) {
        for index in 0..self.phones.len() {
            let said = self.phones[index].of_own_accord(&mut self.chance);
            let number = self.phones[index].number.clone();
            for (after, text) in said {
                self.send_to_us(&number, text, after);
            }
        }
        let questions = ["STATUS KOLO", "LATE SENA", "QUIET", "GAPS KOLO", "SICK"];
        // Some outages begin in the afternoon, when nudges go, and last into the night or for days.
        if self.chance.once_in(10) {
            self.outage = self.now + self.chance.minutes(60, 4 * 24 * 60);
        }
        if day.is_multiple_of(7) {
            let text = (*self.chance.pick(&questions)).to_owned();
            self.send_to_us(ADVISER, text, TimeDelta::hours(2));
        }
        if day.is_multiple_of(100) {
            self.send_to_us(ADVISER, "WINDOW KOLO".to_owned(), TimeDelta::hours(3));
        }
    }

    /// The network takes a text: it may delay it for days, double it, and let others overtake it.
    fn send_to_us(&mut self, from: &str, text: String, after: TimeDelta) {
        self.count += 1;
        let typed = self.now + after;
        let late = if self.chance.once_in(10) {
            self.chance.minutes(1, 5 * 24 * 60)
        } else {
            self.chance.minutes(0, 3)
        };
        let inbound = Inbound {
            gateway: "line".to_owned(),
            gateway_id: Some(format!("t-{}", self.count)),
            from: from.to_owned(),
            to: "12345".to_owned(),
            text,
            sent_at: (!self.chance.once_in(3)).then_some(typed),
        };
        self.bring(typed + late, Under::Text(inbound.clone()));
        while self.chance.once_in(8) {
            let again = self.chance.minutes(0, 2 * 24 * 60);
            self.bring(typed + late + again, Under::Text(inbound.clone()));
        }
    }

    fn bring(&mut self, at: DateTime<Utc>, under: Under) {
        self.count += 1;
        self.way.insert((at, self.count), under);
    }

    fn run_until(&mut self, end: DateTime<Utc>) {
        let mut at_once = 0;
        let mut tried = false;
        loop {
            let next = self.way.first_key_value().map(|((at, _), _)| *at);
            let wake = self.engine.next_wake();
            let send = self.engine.next_try().filter(|at| !tried || *at > self.now);
            let Some(soonest) = next.into_iter().chain(wake).chain(send).min() else {
                break;
            };
            if soonest > end {
                break;
            }
            at_once = if soonest > self.now { 0 } else { at_once + 1 };
            assert!(at_once < STEPS_AT_ONCE_MAX, "no progress at {}", self.now);
            self.now = self.now.max(soonest);
            let due = |at: Option<DateTime<Utc>>| at.is_some_and(|at| at <= self.now);
            if due(next) {
                self.take_what_came();
                tried = false;
            } else if due(wake) {
                self.step(vec![Input::Wake]);
                tried = false;
            } else {
                tried = !self.claim();
            }
        }
        self.now = self.now.max(end);
    }

    /// Several things that came at one moment share a write.
    fn take_what_came(&mut self) {
        let most = 1 + self.chance.below(4);
        let mut came = Vec::new();
        for _ in 0..most {
            let Some(entry) = self.way.first_entry().filter(|one| one.key().0 <= self.now) else {
                break;
            };
            came.push(entry.remove());
        }
        let inputs = came.iter().map(|under| match under.clone() {
            Under::Text(inbound) => Input::Text(inbound),
            Under::Receipt(receipt) => Input::Receipt(receipt),
            Under::Answer(id, outcome) => Input::Tried { id, outcome },
        });
        let told = self.step(inputs.collect());
        for under in came {
            match under {
                Under::Text(inbound) if told.is_none() => {
                    let again = self.now + self.chance.minutes(1, 120);
                    self.bring(again, Under::Text(inbound));
                }
                Under::Text(inbound) => {
                    let id = inbound.gateway_id.expect("this gateway has ids");
                    self.laws.acknowledged(&id, &inbound.text);
                }
                // Nobody tells an answer twice; receipts come again now and then.
                Under::Receipt(_) | Under::Answer(..) => {}
            }
        }
    }

    /// Whether there was a text to send.
    fn claim(&mut self) -> bool {
        let told = self.step(vec![Input::ClaimNext]);
        let Some(text) = told
            .and_then(|mut told| told.pop())
            .and_then(|told| told.send)
        else {
            return false;
        };
        self.laws.handed(&text, &self.engine, self.now);
        let outcome = self.provider(&text);
        if matches!(outcome, SendOutcome::TryAgain { .. }) {
            self.laws.was_not_taken(text.id);
        }
        let answers = self.now + TimeDelta::seconds(i64::from(self.chance.below(40)));
        self.bring(answers, Under::Answer(text.id, outcome));
        true
    }

    fn provider(&mut self, text: &Outgoing) -> SendOutcome {
        let why = "a bad day".to_owned();
        if self.now < self.outage {
            return SendOutcome::TryAgain { after: None, why };
        }
        match self.chance.below(20) {
            0 => SendOutcome::TryAgain { after: None, why },
            1 => SendOutcome::Refused { why },
            2 => {
                if self.chance.once_in(2) {
                    self.deliver(text);
                }
                SendOutcome::Unknown { why }
            }
            _ => {
                self.deliver(text);
                SendOutcome::Accepted {
                    gateway_id: Some(format!("p-{}", text.id)),
                }
            }
        }
    }

    /// A text reaches a phone, and whoever holds it may answer. A second try is no second text.
    fn deliver(&mut self, text: &Outgoing) {
        if self.taken.insert(text.id, text.clone()).is_some() {
            return;
        }
        while self.chance.once_in(2) {
            let receipt = Receipt {
                id: self.chance.once_in(2).then_some(text.id),
                gateway_id: Some(format!("p-{}", text.id)),
                delivery: *self.chance.pick(&[
                    Delivery::Delivered,
                    Delivery::Delivered,
                    Delivery::Failed,
                    Delivery::Waiting,
                    Delivery::Uncertain,
                ]),
            };
            let at = self.now + self.chance.minutes(0, 600);
            self.bring(at, Under::Receipt(receipt));
        }
        let phone = self.phones.iter().find(|phone| phone.number == text.to);
        let said = match phone {
            Some(phone) => phone.answer(&text.text, &mut self.chance),
            None => text
                .text
                .rsplit_once("YES ")
                .map(|(_, code)| (TimeDelta::minutes(5), format!("yes {code}"))),
        };
        if let Some((after, answer)) = said {
            self.send_to_us(&text.to, answer, after);
        }
    }

    /// One call of the engine; none when the power went before the caller heard of it.
    fn step(&mut self, inputs: Vec<Input>) -> Option<Vec<Told>> {
        let cut_before = self.chance.once_in(CUT_ONE_IN);
        if cut_before {
            self.disk.fail_once();
        }
        let result = self.engine.handle(inputs, self.now);
        let cut_after = self.chance.once_in(CUT_ONE_IN);
        if result.is_err() || cut_after {
            self.cuts += 1;
            self.reopen();
            return None;
        }
        self.judge();
        result.ok()
    }

    /// The engine's memory is gone; what is on the disk is all there is.
    fn reopen(&mut self) {
        let written = self.disk.take_written();
        self.engine = Engine::open(self.setup.clone(), Box::new(self.disk.clone()), self.now)
            .expect("what was written can be read");
        for change in written {
            self.laws.written(&change, &self.engine, self.now);
        }
        self.judge();
    }

    fn judge(&mut self) {
        for change in self.disk.take_written() {
            self.laws.written(&change, &self.engine, self.now);
        }
    }
}

/// Days without texts are not in the list; the office sets them.
fn with_quiet_days(mut entries: Entries, chance: &mut Chance) -> Entries {
    for group in &mut entries.groups {
        group.quiet_days = (0..20)
            .map(|_| start() + Days::new(u64::from(chance.below(500))))
            .collect();
    }
    entries
}
