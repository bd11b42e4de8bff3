//! What one handbook says, as data: spacing, order times, rounds by age, doses, opening rule.
//!
//! A calendar is a TOML file that people write and check ([`profiles`] holds those that ship).
//! Each value in it names its source and how sure that is; both are kept in
//! [`Calendar::citations`]. Deliberately absent: any rule that is not a figure (those are in
//! [`crate::task`]), and any chemical against pests, disease or weeds.

mod cited;
mod feeding;
mod read;
#[cfg(test)]
mod tests;

use alloc::{collections::BTreeMap, string::String, vec::Vec};

use budwood_parser::{Material, table::TableError};

pub use cited::{Citation, Confidence};
pub use feeding::{Dose, FeedRound, Feeding};

/// The calendars that ship.
pub mod profiles {
    /// FAO and INADES, smallholders in West Africa.
    pub const FAO: &str = include_str!("../calendars/fao.toml");
    /// Rubber Board and university, India.
    pub const INDIA: &str = include_str!("../calendars/india.toml");
    /// Research centre and estate practice, Indonesia.
    pub const INDONESIA: &str = include_str!("../calendars/indonesia.toml");
    /// Manual and guides, Philippines.
    pub const PHILIPPINES: &str = include_str!("../calendars/philippines.toml");
    /// Department of Agriculture, Thailand.
    pub const THAILAND: &str = include_str!("../calendars/thailand.toml");
    /// Rubber group and guides, Vietnam.
    pub const VIETNAM: &str = include_str!("../calendars/vietnam.toml");
    /// Every calendar that ships: its name and its text.
    pub const ALL: &[(&str, &str)] = &[
        ("fao", FAO),
        ("india", INDIA),
        ("indonesia", INDONESIA),
        ("philippines", PHILIPPINES),
        ("thailand", THAILAND),
        ("vietnam", VIETNAM),
    ];
}

/// The handbook of one source. All ages are whole months after planting.
#[derive(Clone, Debug, PartialEq)]
pub struct Calendar {
    /// Short name, as groups refer to it.
    pub name: String,
    /// What a person calls it.
    pub title: String,
    /// The sources in full, by the key that values refer to.
    pub sources: BTreeMap<String, String>,
    /// Where each value comes from, in the order of the file.
    pub citations: Vec<Citation>,
    /// Distances between trees.
    pub spacing: Spacing,
    /// Ordering of plants.
    pub order: Order,
    /// Planting holes.
    pub pits: Pits,
    /// Planting.
    pub planting: Planting,
    /// Counting the dead.
    pub survival: Survival,
    /// Filling of gaps.
    pub backfill: Backfill,
    /// Weeding.
    pub weeding: Weeding,
    /// Feeding.
    pub feeding: Feeding,
    /// Side shoots.
    pub pruning: Pruning,
    /// Induction of branches.
    pub induction: Induction,
    /// Root checks by age.
    pub root_check: Vec<Rounds>,
    /// Girth census.
    pub census: Census,
    /// Opening for tapping.
    pub opening: Opening,
}

impl Calendar {
    /// Reads a calendar.
    ///
    /// # Errors
    ///
    /// When the text is not TOML, a key is missing, unknown or out of its range, a source is not
    /// listed, or a table by age has a gap or an overlap. The error names the key.
    pub fn parse(text: &str) -> Result<Self, TableError> {
        read::calendar(text)
    }

    /// Reads a calendar with an organisation's own values in the place of some of its values.
    ///
    /// The changes are a file of the same shape with only what differs: a value is replaced
    /// together with its source, a list of rounds as a whole, and sources are added.
    ///
    /// # Errors
    ///
    /// As for [`Self::parse`].
    pub fn parse_changed(text: &str, changes: &str) -> Result<Self, TableError> {
        read::changed_calendar(text, changes)
    }
}

/// Distances between trees, meant level, not along a slope.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spacing {
    /// Between rows, in metres.
    pub row_m: f64,
    /// Between trees in a row, in metres.
    pub in_row_m: f64,
}

/// Ordering of plants.
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// Spare plants for replacing losses in the field, in per cent of the points.
    pub spares_pct: f64,
    /// Plants lost on the way, in per cent of the plants sent.
    pub transit_loss_pct: f64,
    /// Days between delivery and planting that are kept in hand.
    pub slack_days: u32,
    /// How many days before the last day for ordering the reminder may go.
    pub notice_days: u32,
    /// The planting material that is usual here.
    pub material: Material,
    /// Days from the order to plants fit for the field, by material.
    pub lead_days: BTreeMap<Material, u32>,
}

/// Planting holes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pits {
    /// Length of each edge, in whole centimetres.
    pub edge_cm: u32,
    /// How many months before planting to dig.
    pub dig_months_before: u32,
    /// How many days before planting to fill them again.
    pub refill_days_before: u32,
}

/// Planting, in days since the planting window was opened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Planting {
    /// From then on it is late.
    pub late_days: u32,
    /// From then on it is too late for this season.
    pub window_days: u32,
}

/// Counting the dead, in days after planting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Survival {
    /// The first count.
    pub first_days: u32,
    /// Counts after the first, if the handbook asks for them.
    pub again: Option<CountAgain>,
}

/// Further counts of the dead.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CountAgain {
    /// Days from count to count.
    pub every_days: u32,
    /// Days after planting from which no further count is asked for.
    pub until_days: u32,
}

/// Filling of gaps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Backfill {
    /// Months after planting from which gaps are left.
    pub until_months: u32,
    /// Days of rain that new plants must have before them.
    pub rain_left_days: u32,
    /// Gaps are filled when fewer than this share of the trees live, in per cent.
    pub survival_target_pct: f64,
}

/// Weeding.
#[derive(Clone, Debug, PartialEq)]
pub struct Weeding {
    /// Width of the strip along the row that is kept clear, in metres.
    pub strip_m: f64,
    /// Rounds by age.
    pub rounds: Vec<Rounds>,
}

/// How often a job comes round at an age.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rounds {
    /// First month after planting.
    pub from_month: u32,
    /// First month after planting for which this no longer holds.
    pub until_month: u32,
    /// Days from round to round.
    pub every_days: u32,
}

/// Side shoots.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pruning {
    /// Up to this height the stem is kept clean, in metres above the ground.
    pub height_m: f64,
    /// First month after planting.
    pub from_month: u32,
    /// First month after planting in which it is no longer asked for.
    pub until_month: u32,
    /// Days from round to round.
    pub every_days: u32,
    /// Whether it waits for the rains.
    pub waits_for_rain: bool,
}

/// Induction of branches on tall trees that have none.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Induction {
    /// A tree of this height without branches needs it, in metres above the ground.
    pub height_m: f64,
    /// First month after planting.
    pub from_month: u32,
    /// First month after planting in which it is no longer asked for.
    pub until_month: u32,
    /// Days after induction from which shoots can be seen.
    pub look_from_days: u32,
    /// Days after induction by which one should have looked.
    pub look_until_days: u32,
}

/// Girth census.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Census {
    /// How many trees to measure.
    pub sample_trees: u32,
    /// Rounds by age.
    pub rounds: Vec<Rounds>,
}

/// When a stand may be opened for tapping.
#[derive(Clone, Debug, PartialEq)]
pub struct Opening {
    /// Girth that a tree must reach, in centimetres.
    pub girth_cm: f64,
    /// Height at which it is measured, in centimetres above the datum.
    pub height_cm: f64,
    /// What the height is measured from.
    pub datum: Datum,
    /// Share of the trees that must reach the girth, in per cent.
    pub share_pct: f64,
    /// First month after planting in which opening is thought of at all.
    pub minimum_months: u32,
    /// The fewest trees from which a share is believed.
    pub sample_trees: u32,
    /// Months of the year (1 to 12) in which stands are opened; empty means any.
    pub months: Vec<u32>,
}

/// What a height of measurement is counted from. One cannot be turned into the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Datum {
    /// The ground.
    Ground,
    /// The bud union.
    Union,
}

impl Datum {
    /// The name in files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Ground => "ground",
            Self::Union => "union",
        }
    }
}

/// The rounds that hold at this age, if any do.
#[must_use]
pub fn rounds_at(rounds: &[Rounds], month: u32) -> Option<&Rounds> {
    rounds
        .iter()
        .find(|row| row.from_month <= month && month < row.until_month)
}
