//! Loads people, phones, groups and blocks from a list that an office keeps in a spreadsheet.
//!
//! [`plan`] compares the list with what is known and says what would be stored and what is wrong
//! with it. It stores nothing: the caller shows the plan and stores it when a person agrees. The
//! same list twice gives an empty plan the second time, so a load can be repeated.
//!
//! A list adds and changes; it never takes away. What an empty cell or a missing row means
//! (gone? not known?) cannot be told, so leaving is said by text or by the adviser. Nor does it
//! overrule a person: a STOP stands whatever the list says.
//!
//! # Format
//!
//! CSV in UTF-8. The first line names the columns, in any order: `row` is `group`, `person` or
//! `block`; the others are those of [`Column`], and may be left out when they are not needed.
//! Rows may be in any order: a group may name an adviser whose row comes later.

mod alike;
mod blocks;
mod cell;
mod column;
mod draft;
mod finding;
mod groups;
mod odd;
mod people;
mod rows;
pub mod take;

use std::fmt;

use budwood_scheduler::{Block, BlockId, Body, Directory, Group, Person, Phone};
use chrono::NaiveDate;

pub use column::{Column, Need, RowKind};
pub use finding::{Fault, Finding, Severity};

use draft::Draft;

/// Findings shown for one file; past these a person mends the first ones and tries again.
const FINDINGS_SHOWN_MAX: usize = 500;

/// What is known before the list is read.
#[derive(Clone, Copy)]
pub struct Known<'a> {
    /// People, phones, groups and blocks.
    pub directory: &'a Directory,
    /// Trees planted on a block as recorded; none when no planting is on record.
    pub planted: &'a dyn Fn(BlockId) -> Option<u32>,
    /// Names of the calendar profiles that are loaded.
    pub calendars: &'a [&'a str],
    /// Codes of the language packs that are loaded.
    pub languages: &'a [&'a str],
    /// The language of a new person when the list does not say.
    pub language: &'a str,
    /// Two-letter code of the country that numbers without a plus belong to, or empty.
    pub country: &'a str,
    /// The day of loading.
    pub today: NaiveDate,
}

/// What would be stored, and what is wrong with the list.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Plan {
    /// New and changed groups.
    pub groups: Vec<Group>,
    /// New and changed people.
    pub persons: Vec<Person>,
    /// New and changed phones.
    pub phones: Vec<Phone>,
    /// New and changed blocks.
    pub blocks: Vec<Block>,
    /// Facts that the list tells: consent given, trees planted before the bot was there.
    pub facts: Vec<Body>,
    /// What is wrong, by line.
    pub findings: Vec<Finding>,
    /// How many groups.
    pub group_tally: Tally,
    /// How many people.
    pub person_tally: Tally,
    /// How many phones.
    pub phone_tally: Tally,
    /// How many blocks.
    pub block_tally: Tally,
}

/// How many of the things in the list are new, changed, or as known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Not known before.
    pub new: usize,
    /// Known, and different in the list.
    pub changed: usize,
    /// Known, and the same.
    pub same: usize,
}

/// Works out what loading a list would do.
///
/// # Examples
///
/// ```
/// use budwood::roll::{Known, plan};
/// use budwood_scheduler::Directory;
///
/// let list = "row,group,name,phone,consent_on,zone,calendar,block,area,unit\n\
///             group,KOLO,,,,Asia/Jakarta,fao,,,\n\
///             person,KOLO,Tamo Rill,+447700900001,2026-02-01,,,,,\n\
///             block,KOLO,Tamo Rill,,,,,A,1.2,ha\n";
/// let plan = plan(list.as_bytes(), &Known {
///     directory: &Directory::default(),
///     planted: &|_| None,
///     calendars: &["fao"],
///     languages: &["en"],
///     language: "en",
///     country: "ID",
///     today: chrono::NaiveDate::from_ymd_opt(2026, 11, 1).unwrap(),
/// });
/// assert!(plan.may_be_stored());
/// assert_eq!(plan.persons[0].name, "Tamo Rill");
/// ```
#[must_use]
pub fn plan(csv: &[u8], known: &Known<'_>) -> Plan {
    let mut findings = Vec::new();
    let rows = rows::read(csv, &mut findings);
    let mut draft = Draft::new(*known, findings);
    let of = |kind: RowKind| rows.iter().filter(move |row| row.kind == kind);
    groups::take(&mut draft, of(RowKind::Group));
    people::take(&mut draft, of(RowKind::Person));
    groups::take_advisers(&mut draft, of(RowKind::Group));
    blocks::take(&mut draft, of(RowKind::Block));
    draft.into_plan()
}

impl Plan {
    /// Whether nothing was refused.
    #[must_use]
    pub fn may_be_stored(&self) -> bool {
        self.count(Severity::Refused) == 0
    }

    /// Whether there is nothing to store.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.groups.is_empty()
            && self.persons.is_empty()
            && self.phones.is_empty()
            && self.blocks.is_empty()
            && self.facts.is_empty()
    }

    /// How many findings are of this severity.
    #[must_use]
    pub fn count(&self, severity: Severity) -> usize {
        self.findings
            .iter()
            .filter(|finding| finding.severity() == severity)
            .count()
    }

    fn write_verdict(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let refused = self.count(Severity::Refused);
        let doubtful = self.count(Severity::Doubtful);
        write!(f, "{refused} refused, {doubtful} doubtful. ")?;
        if refused > 0 {
            f.write_str("Nothing can be stored until the refused lines are put right.")
        } else if self.is_empty() {
            f.write_str("There is nothing to store: all of it is known.")
        } else {
            f.write_str("This can be stored.")
        }
    }
}

impl fmt::Display for Plan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for finding in self.findings.iter().take(FINDINGS_SHOWN_MAX) {
            writeln!(f, "{finding}")?;
        }
        let hidden = self.findings.len().saturating_sub(FINDINGS_SHOWN_MAX);
        if hidden > 0 {
            writeln!(f, "and {hidden} more")?;
        }
        if !self.findings.is_empty() {
            writeln!(f)?;
        }
        writeln!(f, "groups: {}", self.group_tally)?;
        writeln!(f, "people: {}", self.person_tally)?;
        writeln!(f, "phones: {}", self.phone_tally)?;
        writeln!(f, "blocks: {}", self.block_tally)?;
        writeln!(f, "facts:  {} new", self.facts.len())?;
        self.write_verdict(f)
    }
}

impl fmt::Display for Tally {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { new, changed, same } = self;
        write!(f, "{new} new, {changed} changed, {same} as known")
    }
}
