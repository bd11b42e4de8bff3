//! One line of input: a text and the scene that it falls into.

use budwood_parser::{Details, Kind, Known, Measure, Reader, Reading, Sender, Trace, Unit};
use budwood_scheduler::{
    Block, BlockId, BlockState, Calendar, Cohort, Happened, PersonId,
    decide::{Decision, Draft, Last, Missing, Pending, Plot, Scene, decide},
    land::block::Count,
};
use chrono::{NaiveDate, TimeDelta};
use serde::Deserialize;
use serde_json::{Map, Value};

/// Blocks when the line names none: three planted, one being prepared.
const DEFAULT_PLOTS: [(&str, u32); 4] = [("A", 200), ("B", 120), ("C", 80), ("D", 0)];

/// A planted block was planted so long ago, unless the line says otherwise.
const PLANTED_DAYS_AGO: i64 = 1_000;

/// Minutes in a day.
const DAY_MINUTES: i64 = 24 * 60;

/// The code that stands for every language at once.
const ALL_LANGUAGES: &str = "mix";

/// A line as it comes in. Keys that are not known here are for others and are let be.
#[derive(Deserialize)]
pub(super) struct Line {
    /// Comes back in the answer.
    pub(super) id: Option<Value>,
    /// A pack's code; none or "mix": all.
    lang: Option<String>,
    #[serde(default)]
    role: Role,
    /// The text.
    pub(super) text: String,
    #[serde(default)]
    ctx: Context,
}

#[derive(Clone, Copy, Default, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Role {
    #[default]
    Farmer,
    Leader,
    Adviser,
    Unknown,
}

impl Role {
    const fn sender(self) -> Sender {
        match self {
            Self::Farmer | Self::Leader => Sender::Farmer,
            Self::Adviser => Sender::Adviser,
            Self::Unknown => Sender::Unknown,
        }
    }
}

#[derive(Default, Deserialize)]
struct Context {
    plots: Option<Map<String, Value>>,
    last: Option<LastFact>,
    pending: Option<Asked>,
    #[serde(default)]
    groups: Vec<String>,
    #[serde(default)]
    members: Vec<String>,
}

#[derive(Deserialize)]
struct LastFact {
    kind: String,
    count: Option<u32>,
    block: Option<String>,
    #[serde(default)]
    values_cm: Vec<f64>,
    #[serde(default)]
    minutes_ago: i64,
}

#[derive(Deserialize)]
#[serde(untagged)]
enum Asked {
    Word(String),
    Slot {
        ask: String,
        kind: Option<String>,
        block: Option<String>,
    },
}

impl Line {
    /// A line of JSON in one of the languages of the reader.
    pub(super) fn parse(line: &str, reader: &Reader) -> Result<Self, String> {
        let line: Self = serde_json::from_str(line).map_err(|error| error.to_string())?;
        match line.lang.as_deref() {
            Some(code) if code != ALL_LANGUAGES && !reader.knows(code) => {
                Err(format!("the language {code:?} is not loaded"))
            }
            Some(_) | None => Ok(line),
        }
    }

    /// A text without any scene.
    pub(super) fn plain(text: &str) -> Self {
        Self {
            id: None,
            lang: None,
            role: Role::Farmer,
            text: text.to_owned(),
            ctx: Context::default(),
        }
    }

    /// Whether an adviser texts.
    pub(super) const fn by_adviser(&self) -> bool {
        matches!(self.role, Role::Adviser)
    }

    /// How the text is read, for a person who asks why.
    pub(super) fn trace(&self, reader: &Reader, today: NaiveDate) -> Trace {
        let plots = self.plots(today);
        self.with_known(&plots, |known| reader.trace(&self.text, known))
    }

    /// What is known of who texts.
    fn with_known<T>(&self, plots: &[Plot], look: impl FnOnce(&Known<'_>) -> T) -> T {
        let blocks: Vec<&str> = plots.iter().map(|plot| plot.name.as_str()).collect();
        let groups: Vec<&str> = self.ctx.groups.iter().map(String::as_str).collect();
        let members: Vec<&str> = self.ctx.members.iter().map(String::as_str).collect();
        let language = self.lang.as_deref().filter(|code| *code != ALL_LANGUAGES);
        look(&Known {
            languages: language.as_slice(),
            blocks: &blocks,
            groups: &groups,
            members: &members,
            rolls: &[],
            sender: self.role.sender(),
        })
    }

    /// Reads the text in its scene.
    pub(super) fn read(&self, reader: &Reader, today: NaiveDate) -> (Reading, Decision) {
        let last = self.ctx.last.as_ref().and_then(|fact| last(fact, today));
        let mut plots = self.plots(today);
        if let Some(Last { draft }) = &last
            && let Some(plot) = plots
                .iter_mut()
                .find(|plot| Some(&plot.name) == draft.block.as_ref())
        {
            let seen = Count {
                on: draft.on.day(),
                trees: draft.details.count,
            };
            plot.state.last.insert(draft.kind, seen);
        }
        let reading = self.with_known(&plots, |known| reader.read(&self.text, known));
        let pending = self
            .ctx
            .pending
            .as_ref()
            .and_then(|asked| pending(asked, today));
        let last: Vec<Last> = last.into_iter().collect();
        let scene = Scene {
            sender: self.role.sender(),
            today,
            plots: &plots,
            last: &last,
            pending: pending.as_ref(),
            nudged: None,
        };
        let decision = decide(&reading, &scene);
        (reading, decision)
    }

    fn plots(&self, today: NaiveDate) -> Vec<Plot> {
        match &self.ctx.plots {
            Some(plots) => plots
                .iter()
                .map(|(name, plot)| given(name, plot, today))
                .collect(),
            None => DEFAULT_PLOTS
                .iter()
                .map(|(name, planted)| planted_plot(name, *planted, today))
                .collect(),
        }
    }
}

/// A block as the line gives it: `{"planted":120,"dead":8,"replaced":6,"area_ha":0.4}`.
fn given(name: &str, plot: &Value, today: NaiveDate) -> Plot {
    let number = |key: &str| {
        plot.get(key)
            .and_then(Value::as_u64)
            .and_then(|number| u32::try_from(number).ok())
    };
    let mut given = planted_plot(name, number("planted").unwrap_or(0), today);
    if let Some(replaced) = number("replaced") {
        given.state.cohorts.push(cohort(replaced, today, true));
    }
    let alive = number("alive").map(|alive| given.state.planted().saturating_sub(alive));
    if let (Some(dead), Some(first)) = (number("dead").or(alive), given.state.cohorts.first_mut()) {
        first.dead = dead.min(first.planted);
    }
    given.points = plot.get("area_ha").and_then(Value::as_f64).and_then(points);
    given
}

fn planted_plot(name: &str, planted: u32, today: NaiveDate) -> Plot {
    let cohorts = if planted > 0 {
        vec![cohort(planted, today, false)]
    } else {
        Vec::new()
    };
    Plot {
        name: name.to_owned(),
        points: None,
        state: BlockState {
            cohorts,
            ..<_>::default()
        },
    }
}

fn cohort(planted: u32, today: NaiveDate, backfill: bool) -> Cohort {
    let planted_on = today - TimeDelta::days(PLANTED_DAYS_AGO);
    Cohort {
        planted_on,
        clone_name: None,
        planted,
        dead: 0,
        backfill,
    }
}

/// Planting points of an area at the spacing of the first calendar that ships.
fn points(hectares: f64) -> Option<u32> {
    let (_, text) = budwood_scheduler::handbook::calendar::profiles::ALL.first()?;
    let calendar = Calendar::parse(text).ok()?;
    let block = Block {
        id: BlockId(0),
        owner: PersonId(0),
        name: String::new(),
        area: Some(Measure {
            value: hectares,
            unit: Unit::Hectare,
        }),
        area_source: String::new(),
        slope_pct: None,
        spacing_m: None,
        point: None,
        planned_on: None,
        clone_name: None,
    };
    budwood_scheduler::land::stand::points(&block, &calendar)
}

fn last(fact: &LastFact, today: NaiveDate) -> Option<Last> {
    let on = today - TimeDelta::days(fact.minutes_ago.max(0) / DAY_MINUTES);
    let details = Details {
        count: fact.count,
        values_cm: fact.values_cm.clone(),
        ..Details::default()
    };
    let draft = Draft {
        kind: Kind::from_name(&fact.kind)?,
        block: fact.block.clone(),
        said: None,
        on: Happened::on(on),
        details,
    };
    Some(Last { draft })
}

fn pending(asked: &Asked, today: NaiveDate) -> Option<Pending> {
    match asked {
        Asked::Word(word) if word == "confirm" => Some(Pending::Confirm(Vec::new())),
        Asked::Word(word) if word == "nudge" => Some(Pending::Nudge {
            on: today,
            is_last: true,
        }),
        Asked::Word(_) => None,
        Asked::Slot { ask, kind, block } => {
            let draft = Draft {
                kind: Kind::from_name(kind.as_deref().unwrap_or("planted"))?,
                block: block.clone(),
                said: None,
                on: Happened::on(today),
                details: Details::default(),
            };
            let missing = match ask.as_str() {
                "block" => Missing::Block { unknown: None },
                "values" | "values_cm" => Missing::Values,
                "date" => Missing::Date,
                _ => Missing::Count { range: None },
            };
            Some(Pending::Ask {
                facts: vec![draft],
                missing,
            })
        }
    }
}
