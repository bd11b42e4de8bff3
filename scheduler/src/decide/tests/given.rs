//! A scene to decide in, and decisions in short.
//!
//! The farmer has A (200 planted, room for 220 trees), B (120 planted, area not known) and C
//! (room for 100, nothing planted). It is Wednesday 17 March 2027.

use std::{
    format,
    string::{String, ToString},
    sync::OnceLock,
    vec,
    vec::Vec,
};

use budwood_parser::{
    Act, Bare, Details, Kind, Known, Pack, Reader, Reading, Report, Sender, languages,
};
use chrono::NaiveDate;

use crate::{
    decide::{
        Amend, Answer, Decision, Draft, Last, Missing, Nudged, Pending, Plot, Reply, Scene, decide,
        heed,
    },
    land::block::{BlockState, Cohort},
    words::event::Happened,
};

pub(super) fn day(text: &str) -> NaiveDate {
    text.parse().unwrap()
}

/// The day on which texts are sent.
pub(super) fn today() -> NaiveDate {
    day("2027-03-17")
}

pub(super) struct Given {
    pub(super) sender: Sender,
    pub(super) plots: Vec<Plot>,
    pub(super) last: Vec<Last>,
    pub(super) pending: Option<Pending>,
    pub(super) nudged: Option<Nudged<'static>>,
}

pub(super) fn given() -> Given {
    Given {
        sender: Sender::Farmer,
        plots: vec![
            plot("A", Some(220), 200),
            plot("B", None, 120),
            plot("C", Some(100), 0),
        ],
        last: Vec::new(),
        pending: None,
        nudged: None,
    }
}

fn plot(name: &str, points: Option<u32>, planted: u32) -> Plot {
    let cohort = Cohort {
        planted_on: day("2026-06-01"),
        clone_name: None,
        planted,
        dead: 0,
        backfill: false,
    };
    Plot {
        name: name.to_string(),
        points,
        state: BlockState {
            cohorts: if planted > 0 {
                vec![cohort]
            } else {
                Vec::new()
            },
            ..BlockState::default()
        },
    }
}

impl Given {
    /// The farmer has only the first block.
    pub(super) fn one_block(mut self) -> Self {
        self.plots.truncate(1);
        self
    }

    pub(super) fn state(&mut self, block: &str) -> &mut BlockState {
        let plot = self.plots.iter_mut().find(|plot| plot.name == block);
        &mut plot.unwrap().state
    }

    pub(super) fn after(mut self, facts: &[Draft]) -> Self {
        self.last = facts
            .iter()
            .map(|fact| Last {
                draft: fact.clone(),
            })
            .collect();
        self
    }

    pub(super) fn asked(mut self, pending: Pending) -> Self {
        self.pending = Some(pending);
        self
    }

    pub(super) fn from(mut self, sender: Sender) -> Self {
        self.sender = sender;
        self
    }

    fn scene(&self) -> Scene<'_> {
        Scene {
            sender: self.sender,
            today: today(),
            plots: &self.plots,
            last: &self.last,
            pending: self.pending.as_ref(),
            nudged: self.nudged,
        }
    }

    pub(super) fn decide(&self, reading: &Reading) -> Decision {
        decide(reading, &self.scene())
    }

    /// What a known phone gets of it in the end, in short.
    pub(super) fn heeded(&self, reading: &Reading) -> String {
        in_short(&heed(self.decide(reading), reading, &self.scene()))
    }

    /// Reads a text with the real reader and decides.
    #[track_caller]
    pub(super) fn check(&self, text: &str, then: &str) {
        let blocks: Vec<&str> = self.plots.iter().map(|plot| plot.name.as_str()).collect();
        let known = Known {
            languages: &[],
            blocks: &blocks,
            groups: &[],
            members: &[],
            rolls: &[],
            sender: self.sender,
        };
        let decision = self.decide(&reader().read(text, &known));
        assert_eq!(in_short(&decision), then, "{text:?}");
    }

    /// Decides on a report as if it had been read without doubt.
    #[track_caller]
    pub(super) fn check_report(&self, report: Report, then: &str) {
        assert_eq!(self.told(report), then);
    }

    /// What is decided on such a report, in short.
    pub(super) fn told(&self, report: Report) -> String {
        let reading = Reading {
            reports: vec![report],
            about_work: true,
            ..Reading::default()
        };
        in_short(&self.decide(&reading))
    }
}

/// A nudge that went so many days ago, and nothing since.
pub(super) fn nudge(days_ago: u64) -> Pending {
    Pending::Nudge {
        on: today() - chrono::Days::new(days_ago),
        is_last: true,
    }
}

pub(super) fn reader() -> &'static Reader {
    static READER: OnceLock<Reader> = OnceLock::new();
    READER.get_or_init(|| {
        let packs = languages::ALL.iter().map(|text| Pack::parse(text).unwrap());
        Reader::new(packs.collect()).unwrap()
    })
}

pub(super) fn report(kind: Kind, block: &str, details: Details) -> Report {
    Report {
        kind,
        details,
        block: Some(block.to_string()),
        when: None,
        doubts: Vec::new(),
        span: budwood_parser::Span::default(),
    }
}

pub(super) fn count(count: u32) -> Details {
    Details {
        count: Some(count),
        ..Details::default()
    }
}

pub(super) fn draft(kind: Kind, block: &str, details: Details) -> Draft {
    Draft {
        kind,
        block: Some(block.to_string()),
        said: None,
        on: Happened::on(today()),
        details,
    }
}

/// A decision in a line.
pub(super) fn in_short(decision: &Decision) -> String {
    match decision {
        Decision::Record(facts) => format!("record {}", facts_in_short(facts)),
        Decision::Confirm { facts, why } => {
            format!("confirm {}: {why:?}", facts_in_short(facts))
        }
        Decision::Ask { facts, missing } => {
            format!("ask {} of {}", slot(missing), facts_in_short(facts))
        }
        Decision::Amend(Amend::Undo) => "undo".to_string(),
        Decision::Amend(Amend::Wrong) => "wrong".to_string(),
        Decision::Amend(Amend::Unsure(_)) => "unsure which".to_string(),
        Decision::Amend(Amend::Change(change)) => {
            format!(
                "change {} of {} to {}",
                change.field.name(),
                change.index,
                fact_in_short(&change.now)
            )
        }
        Decision::Answer(Answer::Query(query)) => format!("answer {}", query.topic.name()),
        Decision::Answer(Answer::Help) => "help".to_string(),
        Decision::Answer(Answer::Stop) => "stop".to_string(),
        Decision::Answer(Answer::Start) => "start".to_string(),
        Decision::Reply(Reply::Yes(facts)) => format!("yes to {}", facts_in_short(facts)),
        Decision::Reply(Reply::No) => "no".to_string(),
        Decision::Reply(Reply::Seen) => "seen".to_string(),
        Decision::Reply(Reply::Done) => "done".to_string(),
        Decision::Reply(Reply::Later(days)) => format!("later {days:?}"),
        Decision::Reply(Reply::Choice(choice)) => format!("choice {choice}"),
        Decision::Help(unclear) => format!("example, {unclear:?}"),
        Decision::Silent(quiet) => format!("silent, {quiet:?}"),
        Decision::Both(told, beside) => {
            format!("{}; {}", in_short(told), in_short(beside))
        }
        Decision::Person(alarm) => format!("person, {}", alarm.name()),
    }
}

fn slot(missing: &Missing) -> String {
    match missing {
        Missing::Block { unknown: None } => "block".to_string(),
        Missing::Block {
            unknown: Some(name),
        } => format!("block not {name}"),
        Missing::Count { range: None } => "count".to_string(),
        Missing::Count {
            range: Some((low, high)),
        } => format!("count {low} or {high}"),
        Missing::Values => "values".to_string(),
        Missing::Date => "date".to_string(),
    }
}

fn facts_in_short(facts: &[Draft]) -> String {
    let facts: Vec<String> = facts.iter().map(fact_in_short).collect();
    facts.join(" + ")
}

fn fact_in_short(fact: &Draft) -> String {
    let mut short = fact.kind.name().to_string();
    if let Some(count) = fact.details.count {
        short += &format!(" {count}");
    }
    if !fact.details.values_cm.is_empty() {
        short += &format!(" {:?}", fact.details.values_cm);
    }
    if let Some(block) = &fact.block {
        short += &format!(" {block}");
    }
    if fact.on != Happened::on(today()) {
        short += &format!(" on {}", fact.on.from);
    }
    if fact.on.from != fact.on.to {
        short += &format!(" to {}", fact.on.to);
    }
    short
}

pub(super) fn says(act: Act) -> Reading {
    Reading {
        acts: vec![act],
        ..Reading::default()
    }
}

pub(super) fn bare(bare: Bare) -> Reading {
    Reading {
        bare: Some(bare),
        ..Reading::default()
    }
}

#[track_caller]
pub(super) fn check(given: &Given, reading: &Reading, then: &str) {
    assert_eq!(in_short(&given.decide(reading)), then);
}
