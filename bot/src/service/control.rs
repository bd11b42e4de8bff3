//! A way to talk to the running service: a socket in the store's folder.
//!
//! One JSON line in, one JSON line out, as often as wanted: `{"v":1,"do":"copy"}` begins a copy of
//! the store, `next` gives its next part, `release` lets texts leave again, `reload` reads the
//! configuration again, `check_roll` and `load_roll` bring a list of people in `csv` (Base64, RFC
//! 4648), `look_back` and `take_back` are about the last list taken in,
//! `give` writes down what is given to a partner, `outline` brings the outline of a block, `print` makes the sheet of `order`, `code` gives out a code for the office's pages to whom
//! `name` names. The socket is there
//! for the owner of the folder alone (mode 0600), and so nobody else is asked who they are. What
//! is written where is the business of whoever asks: the service needs no rights for it.
//! Deliberately absent: anything that only starts and stops the service; the system does that.

mod ask;
mod serve;

use chrono::NaiveDate;
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use crate::{
    engine::{ListFate, ListFinding},
    sheet::Sheet,
};

pub use self::{
    ask::{Control, ControlError},
    serve::Listener,
};

/// The socket's name in the store's folder.
const NAME: &str = "control";

/// The version of what is spoken.
const VERSION: u32 = 1;

/// A request.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Request {
    v: u32,
    #[serde(rename = "do")]
    deed: Deed,
    /// A list of people.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    csv: Option<String>,
    /// Which sheet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    order: Option<Order>,
    /// Whose code.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    name: Option<String>,
    /// What is given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    giving: Option<SpokenGiving>,
    /// An outline.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    outline: Option<SpokenOutline>,
}

/// What is given to a partner, as it is spoken.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct SpokenGiving {
    what: String,
    to: String,
    purpose: String,
    people: u32,
    blocks: u32,
    sha256: String,
}

/// An outline that somebody brings, as it is spoken.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct SpokenOutline {
    group: String,
    farmer: String,
    block: String,
    text: String,
    how: String,
    on: NaiveDate,
}

/// A sheet that somebody wants, as it is spoken.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Order {
    sheet: String,
    group: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    language: Option<String>,
}

/// What is wanted.
#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Deed {
    /// Begin a copy of the store.
    Copy,
    /// The next part of the copy.
    Next,
    /// Let texts leave again.
    Release,
    /// Say what loading a list would do.
    CheckRoll,
    /// Take a list in.
    LoadRoll,
    /// Say what taking the last list back would do.
    LookBack,
    /// Take the last list back.
    TakeBack,
    /// Make a sheet.
    Print,
    /// Read the configuration again.
    Reload,
    /// Write down what is given to a partner.
    Give,
    /// Take the outline of a block in.
    Outline,
    /// Give out a code for the office's pages.
    Code,
}

/// An answer.
#[derive(Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Answer {
    ok: bool,
    /// Why it was not done.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    why: Option<String>,
    /// Records of a copy; with `ok` and without records the copy is complete.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    records: Option<Vec<Box<RawValue>>>,
    /// What became of a list.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    roll: Option<RollAnswer>,
    /// A sheet.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    sheet: Option<Sheet>,
    /// What is new after the configuration was read again.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    new: Option<String>,
    /// A code for the office's pages.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    code: Option<String>,
    /// What is told of something that was given or brought.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    page: Option<String>,
}

/// What became of a list.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct RollAnswer {
    page: String,
    fate: Fate,
    findings: Vec<ListFinding>,
}

/// [`ListFate`] as it is spoken.
#[derive(Clone, Copy, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Fate {
    Refused,
    Good,
    Stored,
}

impl From<ListFate> for Fate {
    fn from(fate: ListFate) -> Self {
        match fate {
            ListFate::Refused => Self::Refused,
            ListFate::Good => Self::Good,
            ListFate::Stored => Self::Stored,
        }
    }
}

impl From<Fate> for ListFate {
    fn from(fate: Fate) -> Self {
        match fate {
            Fate::Refused => Self::Refused,
            Fate::Good => Self::Good,
            Fate::Stored => Self::Stored,
        }
    }
}

impl Request {
    /// One that brings nothing along.
    const fn plain(deed: Deed) -> Self {
        Self {
            v: VERSION,
            deed,
            csv: None,
            order: None,
            name: None,
            giving: None,
            outline: None,
        }
    }
}

impl Answer {
    fn refused(why: impl Into<String>) -> Self {
        Self {
            why: Some(why.into()),
            ..Self::default()
        }
    }

    fn done() -> Self {
        Self {
            ok: true,
            ..Self::default()
        }
    }
}
