//! What is wrong with a roll, where, and what to do about it.
//!
//! Faults carry their data, and their wording is here and nowhere else.

use std::fmt;

use budwood_parser::Measure;
use chrono::NaiveDate;

use super::column::{Column, RowKind};
use crate::words::{
    limits::{ROLL_CELL_CHARS_MAX, ROLL_FILE_BYTES_MAX, ROLL_ROWS_MAX},
    phone_number::NumberFault,
};

/// One thing to look at.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Line of the file, from 1.
    pub line: usize,
    /// What.
    pub fault: Fault,
}

impl Finding {
    /// How much it matters.
    #[must_use]
    pub const fn severity(&self) -> Severity {
        self.fault.severity()
    }
}

impl fmt::Display for Finding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let severity = match self.severity() {
            Severity::Refused => "refused",
            Severity::Doubtful => "doubtful",
        };
        write!(f, "line {}: {severity}: {}", self.line, self.fault)
    }
}

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Nothing of the file is stored until it is put right.
    Refused,
    /// Stored all the same; a person should look.
    Doubtful,
}

/// What can be wrong. The text says what to do.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Fault {
    /// Far too many bytes.
    #[error("the file has more than {} MB; split it by group", ROLL_FILE_BYTES_MAX / 1_000_000)]
    FileLarge,
    /// Not CSV at all.
    #[error("this is a spreadsheet's own file; save it as CSV in UTF-8")]
    Workbook,
    /// Letters in an old or wide encoding.
    #[error("this line is not UTF-8 text; save the sheet as CSV in UTF-8")]
    NotUtf8,
    /// Nothing there.
    #[error("the file is empty; its first line must name the columns")]
    FileEmpty,
    /// No usable first line.
    #[error("the first line must name the columns, and one of them must be `row`")]
    NoHeader,
    /// A name that is no column.
    #[error("{0:?} is not a column of the roll; take it out, or use one of {columns}", columns = names(Column::ALL))]
    ColumnUnknown(String),
    /// The same name twice in the first line.
    #[error("the column {0} is there twice; keep one")]
    ColumnTwice(Column),
    /// Too many lines.
    #[error("there are more than {ROLL_ROWS_MAX} rows; split the file by group")]
    RowsMany,
    /// More or fewer cells than columns.
    #[error(
        "this row has {found} cells and the first line has {expected}; look for a missing or \
         an extra separator, or a quotation mark that is not closed"
    )]
    CellCount {
        /// Cells in this row.
        found: usize,
        /// Columns.
        expected: usize,
    },
    /// A very long cell.
    #[error("{0} has more than {ROLL_CELL_CHARS_MAX} characters; is a quotation mark not closed?")]
    CellLong(Column),
    /// A cell that a spreadsheet would calculate.
    #[error(
        "{0} begins with = + - or @, as a formula does; type the plain value, or leave it empty"
    )]
    Formula(Column),
    /// A cell that the row needs.
    #[error("{0} is empty; a {1} row needs it")]
    Missing(Column, RowKind),
    /// One of two cells that only make sense together.
    #[error("{0} is empty, and {1} is not; fill both or none")]
    HalfPair(Column, Column),
    /// A place far from the equator.
    #[error("latitude {0} is far from where rubber grows; are latitude and longitude swapped?")]
    NoRubberThere(f64),
    /// A filled cell that this kind of row does not use.
    #[error("{0} is not used in a {1} row; the cell is passed over")]
    NotUsed(Column, RowKind),
    /// A cell that cannot be read.
    #[error("{column} is {found:?}; {want}")]
    Cell {
        /// Where.
        column: Column,
        /// What is there.
        found: String,
        /// What to write instead.
        want: String,
    },
    /// A phone number that cannot be read.
    #[error("phone {found:?} {fault}")]
    Phone {
        /// What is there.
        found: String,
        /// Why.
        fault: NumberFault,
    },
    /// More numbers than anyone has.
    #[error("there are more than {0} numbers for one person; keep those in use")]
    PhonesMany(usize),
    /// More people on one number than can be told apart by a question.
    #[error("{0} is used by more than {1} people; leave phone empty for those who do not hold it")]
    SharersMany(String, usize),
    /// Described twice in this file.
    #[error("{name} is already on line {line}; join the two rows, or tell them apart by name")]
    Twice {
        /// The name of the group, person or block.
        name: String,
        /// The line before.
        line: usize,
    },
    /// A group that nobody described.
    #[error("there is no group {0}; add a group row for it, or correct the name")]
    GroupUnknown(String),
    /// A person that nobody described.
    #[error("there is no person {0} in this group; add a person row, or correct the name")]
    OwnerUnknown(String),
    /// An adviser that nobody described.
    #[error("there is no adviser {0}; add a person row with the role adviser")]
    AdviserUnknown(String),
    /// Several advisers of that name.
    #[error(
        "there are several advisers called {0}; tell them apart by name, or keep one row with an empty group"
    )]
    AdviserUnclear(String),

    /// A landline.
    #[error("{0} is a landline number; texts will probably not arrive")]
    Landline(String),
    /// A service, a satellite, a ship.
    #[error("{0} is the number of a service, a satellite or a ship; it gets no texts")]
    CostlyNumber(String),
    /// No operator is known to use it.
    #[error("{0} is in no range of numbers known to be in use; compare it with the phone")]
    NumberNotInUse(String),
    /// A number of another country.
    #[error(
        "{0} is a number of another country; texts to it may cost more, or be answered by nobody"
    )]
    NumberAbroad(String),
    /// The same name in another group.
    #[error("{name} is also in the group {group}; if they are one person, keep one row")]
    NameElsewhere {
        /// The person of this row.
        name: String,
        /// The other group.
        group: String,
    },
    /// The person has another number now, and a list does not change that.
    #[error("{0} was theirs and is no more; correct the list, or let the adviser text MOVED")]
    NumberMoved(String),
    /// Several people on one phone.
    #[error(
        "{number} is shared by {names}; texts will name the person, and answers are asked \"for whom?\""
    )]
    Shared {
        /// The number.
        number: String,
        /// Whose.
        names: String,
    },
    /// Perhaps the same person twice.
    #[error("{name} looks like {other}; if they are one person, keep one spelling")]
    Alike {
        /// The person of this row.
        name: String,
        /// The one known before.
        other: String,
    },
    /// Nobody said that they agreed.
    #[error(
        "{0} has not agreed to texts and will not be texted; fill consent_on, or let them text START"
    )]
    NoConsent(String),
    /// The person said stop, and a list does not change that.
    #[error("{name} said stop on {on} and will not be texted; only their own START changes that")]
    StopStands {
        /// Who.
        name: String,
        /// When.
        on: NaiveDate,
    },
    /// The person said that no buyer is told of them, and a list does not change that.
    #[error(
        "{name} said on {on} that no buyer is told of them; only their own SHARE YES changes that"
    )]
    RefusalStands {
        /// Who.
        name: String,
        /// When.
        on: NaiveDate,
    },
    /// Consent is on record already, differently.
    #[error("{name} agreed on {on} ({how}); that is kept")]
    ConsentStands {
        /// Who.
        name: String,
        /// When.
        on: NaiveDate,
        /// How it is known.
        how: String,
    },
    /// Cannot be reached.
    #[error("{0} has no phone; a leader can report for them")]
    NoPhone(String),
    /// Nobody can ask about this group.
    #[error("{0} has no adviser; fill adviser, or nobody can ask about it")]
    NoAdviser(String),
    /// A name that reads as something else.
    #[error("{0:?} is also a word or a number of the text language; another name is safer")]
    NameTaken(String),
    /// Amounts cannot be worked out.
    #[error("block {0} has no area; amounts of plants and fertiliser will be missing")]
    NoArea(String),
    /// Larger than a smallholder's, or smaller than a garden.
    #[error("block {name} has an area of {} {}; is the unit right?", area.value, area.unit.name())]
    AreaOdd {
        /// The block.
        name: String,
        /// Its area.
        area: Measure,
    },
    /// More trees than fit.
    #[error("block {name} has {planted} trees on land for about {room}; compare trees and area")]
    Crowded {
        /// The block.
        name: String,
        /// Trees as told.
        planted: u32,
        /// Trees that fit.
        room: u32,
    },
    /// Far fewer trees than land of this size has.
    #[error("block {name} has {planted} trees on land for about {room}; is the unit right?")]
    Sparse {
        /// The block.
        name: String,
        /// Trees as told.
        planted: u32,
        /// Trees that are usual there.
        room: u32,
    },
    /// The record knows better than the list.
    #[error(
        "block {name} has {known} trees planted on record; the {told} here are passed over. Correct it by text"
    )]
    PlantedKnown {
        /// The block.
        name: String,
        /// Trees on record.
        known: u32,
        /// Trees as told.
        told: u32,
    },
}

impl Fault {
    /// How much it matters.
    #[must_use]
    pub const fn severity(&self) -> Severity {
        match self {
            Self::FileLarge
            | Self::Workbook
            | Self::NotUtf8
            | Self::FileEmpty
            | Self::NoHeader
            | Self::ColumnUnknown(_)
            | Self::ColumnTwice(_)
            | Self::RowsMany
            | Self::CellCount { .. }
            | Self::CellLong(_)
            | Self::Formula(_)
            | Self::Missing(..)
            | Self::HalfPair(..)
            | Self::NoRubberThere(_)
            | Self::Cell { .. }
            | Self::Phone { .. }
            | Self::PhonesMany(_)
            | Self::SharersMany(..)
            | Self::Twice { .. }
            | Self::GroupUnknown(_)
            | Self::OwnerUnknown(_)
            | Self::AdviserUnknown(_)
            | Self::AdviserUnclear(_) => Severity::Refused,
            Self::NotUsed(..)
            | Self::Landline(_)
            | Self::CostlyNumber(_)
            | Self::NumberNotInUse(_)
            | Self::NumberAbroad(_)
            | Self::NameElsewhere { .. }
            | Self::NumberMoved(_)
            | Self::Shared { .. }
            | Self::Alike { .. }
            | Self::NoConsent(_)
            | Self::StopStands { .. }
            | Self::RefusalStands { .. }
            | Self::ConsentStands { .. }
            | Self::NoPhone(_)
            | Self::NoAdviser(_)
            | Self::NameTaken(_)
            | Self::NoArea(_)
            | Self::AreaOdd { .. }
            | Self::Crowded { .. }
            | Self::Sparse { .. }
            | Self::PlantedKnown { .. } => Severity::Doubtful,
        }
    }
}

fn names(columns: &[Column]) -> String {
    let names: Vec<&str> = columns.iter().map(|column| column.name()).collect();
    names.join(", ")
}
