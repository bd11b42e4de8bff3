//! What somebody wants to see on a page of the office, and what is seen, as values.
//!
//! Every number comes from the figures that answers by text use. Deliberately absent: HTML, paths
//! and languages; whoever shows a page has these.

use budwood_parser::Ailment;
use budwood_scheduler::{
    BlockId, EventId, MessageId, PersonId, figures::season::Week, group::health::Family,
};
use chrono::NaiveDate;

use crate::wording::{Args, Key, Phrase, Value};

/// Who looks: a person, by the phone that showed that it is them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Viewer {
    /// Who.
    pub person: PersonId,
    /// Their phone.
    pub number: String,
}

/// What somebody wants to see.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Look {
    /// What the day brings.
    Today,
    /// All groups, a row each.
    Groups,
    /// A group: its season, its people, the texts to come.
    Group(String),
    /// A farmer with their blocks.
    Person(PersonId),
    /// The facts under a figure of a block.
    Under(BlockId, Rests),
    /// A fact, with the text that told it.
    Fact(EventId),
    /// Where trees are sick.
    Sick,
    /// Seasons and rain.
    Season,
    /// Plants and fertiliser.
    Stock,
    /// How gateways are.
    Line,
    /// Texts that wait for a person: this one, or the first.
    Queue(Option<MessageId>),
}

/// A figure of a block that opens to its facts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rests {
    /// Living trees.
    Living,
    /// Sick trees.
    Sick,
}

/// Why nothing is seen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Unseen {
    /// The phone is lost, was given up, or wants no texts: whoever looks must show again who they are.
    Stranger,
    /// This is not for them; these pages are.
    NotTheirs(Vec<Look>),
    /// There is no such thing, or it is somebody else's.
    Nothing(Vec<Look>),
}

/// A page.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// What it is about.
    pub title: Value,
    /// Who looks at it.
    pub reader: String,
    /// In which language.
    pub language: Option<String>,
    /// The day where they are.
    pub today: NaiveDate,
    /// The pages that they may see.
    pub menu: Vec<Look>,
    /// What stands on it, from the top.
    pub parts: Vec<Part>,
    /// Whose records it shows, for the log.
    pub about: Option<PersonId>,
}

/// A part of a page.
#[derive(Clone, Debug, PartialEq)]
pub enum Part {
    /// A line of words.
    Note(Value),
    /// A table.
    Table(Grid),
    /// Weeks across, farmers down.
    Weeks(Weeks),
    /// Places of blocks.
    Spots(Spots),
    /// When stands will be ready.
    Ranges(Vec<Range>),
    /// A text that waits, and what can be done with it.
    Matter(Box<Waits>),
    /// What can be done with a fact that is wrong.
    Fix {
        /// Which.
        fact: EventId,
        /// Of whom.
        person: PersonId,
        /// The number that it tells.
        count: Option<u32>,
    },
}

/// A table. The first cell of a row says what the row is about.
#[derive(Clone, Debug, PartialEq)]
pub struct Grid {
    /// What it shows.
    pub title: Value,
    /// The heads of its columns.
    pub head: Vec<Value>,
    /// Its rows.
    pub rows: Vec<Vec<Cell>>,
}

/// A cell of a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// What it says.
    pub value: Value,
    /// What it opens to.
    pub to: Option<Look>,
    /// A word of warning beside it.
    pub mark: Option<Key>,
    /// It holds no more.
    pub is_struck: bool,
}

/// What was done, seen, asked and late, by farmer and week.
#[derive(Clone, Debug, PartialEq)]
pub struct Weeks {
    /// The first days of the weeks.
    pub from: Vec<NaiveDate>,
    /// Who, and what was in each week.
    pub rows: Vec<(Cell, Vec<Week>)>,
}

/// Where trees are sick.
#[derive(Clone, Debug, PartialEq)]
pub struct Spots {
    /// Blocks with a point.
    pub spots: Vec<Spot>,
}

/// A block on the map.
#[derive(Clone, Debug, PartialEq)]
pub struct Spot {
    /// Its number in the table below.
    pub number: usize,
    /// Degrees north.
    pub latitude: f64,
    /// Degrees east.
    pub longitude: f64,
    /// What spreads there; none where nothing was told.
    pub family: Option<Family>,
    /// Whether a visit saw it.
    pub is_seen: bool,
}

/// When a stand will be ready.
#[derive(Clone, Debug, PartialEq)]
pub struct Range {
    /// Which block.
    pub block: String,
    /// The census under it.
    pub census_on: NaiveDate,
    /// Trees measured in it.
    pub of: u32,
    /// Not likely before.
    pub earliest: NaiveDate,
    /// As likely before as after.
    pub likely: NaiveDate,
    /// Not likely after.
    pub latest: NaiveDate,
}

/// A text that waits for a person.
#[derive(Clone, Debug, PartialEq)]
pub struct Waits {
    /// Which.
    pub message: MessageId,
    /// Who sent it.
    pub sender: Cell,
    /// On which day, where its reader is.
    pub on: NaiveDate,
    /// Why it waits.
    pub concern: Value,
    /// What it says.
    pub text: String,
    /// What it may tell, each as it would be stored.
    pub readings: Vec<Value>,
    /// The open jobs of its sender.
    pub jobs: Vec<Value>,
    /// The last facts of its sender.
    pub facts: Vec<Value>,
    /// Who else could read it.
    pub colleagues: Vec<(PersonId, String)>,
    /// The next text that waits.
    pub next: Option<MessageId>,
}

impl Cell {
    /// Something that is said.
    pub(crate) fn of(value: impl Into<Value>) -> Self {
        Self {
            value: value.into(),
            to: None,
            mark: None,
            is_struck: false,
        }
    }

    /// Nothing.
    pub(crate) fn empty() -> Self {
        Self::of(Value::nothing())
    }

    /// The same, and what it opens to.
    pub(crate) fn to(self, look: Look) -> Self {
        Self {
            to: Some(look),
            ..self
        }
    }

    /// The same with a word of warning.
    pub(crate) fn marked(self, mark: Option<Key>) -> Self {
        Self { mark, ..self }
    }
}

/// A text of a page.
pub(crate) fn page(name: &'static str) -> Value {
    Value::Phrase(Key::Page(name).into())
}

/// A text of a page with its values.
pub(crate) fn page_of(name: &'static str, args: Args) -> Value {
    Value::Phrase(Phrase::new(Key::Page(name), args))
}

/// The heads of a table.
pub(crate) fn heads(names: &[&'static str]) -> Vec<Value> {
    names.iter().map(|name| page(name)).collect()
}

/// A sickness with its family, where it has one that spreads.
pub(crate) fn family(ailment: Ailment) -> Option<Family> {
    Family::of(ailment)
}
