//! A list as an office keeps it becomes one that can be loaded.
//!
//! [`Grid`] has the cells of a file of any common kind; [`Mapping`] says what each of its columns
//! is; [`take`] mends cell by cell. What is mended without a doubt is told; what has one likely
//! meaning is proposed and waits for a yes; what cannot be known is asked of the whole list; the
//! rest is refused, with the reason. A row with something open in it is held back: above all
//! nothing is silently wrong. What comes out is the plain list that [`super::plan`] reads.

mod amounts;
mod day;
mod findings;
mod grid;
mod heads;
mod mend;
mod mended;
mod rows;

pub use self::{
    findings::{Doubt, Yes, from_csv, to_csv},
    grid::{Grid, GridFault},
    heads::Mapping,
    rows::{Taken, take},
};

/// What only a person knows about a whole list.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Answers {
    /// The unit of areas that have none: a name of `Unit`.
    pub unit: Option<String>,
    /// Which part of a day comes first.
    pub day_order: Option<DayOrder>,
    /// The country of numbers without a plus, two letters.
    pub country: String,
    /// The group of rows that name none.
    pub group: Option<String>,
    /// The day on which everybody in the list agreed, if one meeting or one day of signing was for
    /// all of them.
    pub consent_on: Option<chrono::NaiveDate>,
    /// The zone of groups that are new.
    pub zone: Option<String>,
    /// The calendar of groups that are new.
    pub calendar: Option<String>,
}

/// Which part of a day such as 5/6/2026 comes first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DayOrder {
    /// 5 June.
    DayFirst,
    /// 6 May.
    MonthFirst,
}

/// A question about the whole list.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Question {
    /// Which unit are the areas in?
    Unit,
    /// Is the day or the month first?
    DayOrder,
    /// Which group are these people in?
    Group,
}

impl Question {
    /// As a person reads it, with the answer's flag.
    #[must_use]
    pub const fn text(self) -> &'static str {
        match self {
            Self::Unit => "areas have no unit: answer with --unit ha, acre, rai or m2",
            Self::DayOrder => {
                "days can be read two ways: answer with --days day-first or --days month-first"
            }
            Self::Group => "rows name no group: answer with --group NAME",
        }
    }
}
