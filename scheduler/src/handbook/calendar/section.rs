//! The sections of a calendar: plain values, each in the unit that its name says.
//!
//! What a value is good for is said where it is used ([`crate::jobs::task`], [`crate::plan`]).

use alloc::{collections::BTreeMap, vec::Vec};

use budwood_parser::Material;

use crate::words::job::TaskKind;

/// Distances between trees, meant level, not along a slope.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spacing {
    /// Between rows, in metres.
    pub row_m: f64,
    /// Between trees in a row, in metres.
    pub in_row_m: f64,
    /// Between the boundary and the nearest trees, in metres.
    pub margin_m: f64,
}

/// What a slope asks for, in per cent of slope (not degrees).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slope {
    /// Above it rows follow the contour.
    pub contour_pct: f64,
    /// Above it trees stand on terraces; none where the handbook names no limit.
    pub terrace_pct: Option<f64>,
    /// Above it nothing is planted; none where the handbook names no limit.
    pub most_pct: Option<f64>,
}

/// Preparing the land, counted back from the day of planting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Land {
    /// How many months before planting to have the land measured.
    pub measure_months_before: u32,
    /// How many months before planting the old stand may be felled.
    pub clear_months_before: u32,
    /// How many days before planting the land should be clear.
    pub clear_days_before: u32,
    /// How many months before planting to peg the rows.
    pub line_months_before: u32,
}

/// The ground cover between the rows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cover {
    /// Whether the handbook asks for one.
    pub is_asked: bool,
    /// How many days after the rains begin it is still sown.
    pub within_days: u32,
}

/// Getting young trees through the dry season.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrySeason {
    /// How many days before the rains end the reminders may go.
    pub days_before: u32,
    /// First month after planting in which trees need no mulch any more.
    pub mulch_until_month: u32,
    /// How far the mulch stays off the stem, in whole centimetres.
    pub mulch_gap_cm: u32,
    /// First month after planting in which no firebreak is asked for any more.
    pub firebreak_until_month: u32,
    /// Width of the firebreak, in metres.
    pub firebreak_m: f64,
}

/// Food crops between the rows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Intercrop {
    /// First month after planting in which they should be gone.
    pub until_month: u32,
    /// How far they stay off the row, in metres.
    pub distance_m: f64,
    /// Per cent of slope above which there should be none; none where the handbook names no limit.
    pub most_pct: Option<f64>,
    /// Days from one question about them to the next.
    pub every_days: u32,
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
    /// Length of each edge, in whole centimetres; of round pits, how wide they are.
    pub edge_cm: u32,
    /// How deep round pits are, in whole centimetres.
    pub round_deep_cm: Option<u32>,
    /// How many months before planting to dig.
    pub dig_months_before: u32,
    /// How many days before planting to fill them again.
    pub refill_days_before: u32,
}

/// Planting, in days since the planting window was opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Planting {
    /// From then on it is late.
    pub late_days: u32,
    /// From then on it is too late for this season.
    pub window_days: u32,
    /// Months of the year (1 to 12) in which the handbook plants; empty where it names none.
    pub months: Vec<u32>,
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
    /// Days from one count of tall trees without branches to the next.
    pub count_every_days: u32,
    /// Days after induction from which shoots can be seen.
    pub look_from_days: u32,
    /// Days after induction by which one should have looked.
    pub look_until_days: u32,
}

/// Growth to be expected of a stand before its girths are known: one girth at one age, through
/// which [`crate::outlook::growth`] lays its curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Growth {
    /// Girth in centimetres.
    pub girth_cm: f64,
    /// Years after planting at which it is reached.
    pub age_years: f64,
    /// Whether that is when stands are opened, so that the handbook's share of the trees has this
    /// girth; else it is the mean girth.
    pub is_opening: bool,
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
    /// How many days before the likely opening people and tools are made ready.
    pub ready_days_before: u32,
    /// After so many days the trees that were left are looked at again.
    pub rest_every_days: u32,
}

/// How long a kind of work takes one person.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LabourNorm {
    /// Which work.
    pub task: TaskKind,
    /// Working days for each hectare.
    pub days_per_ha: f64,
}

/// Weeks of each year in which people have no time: a harvest, a feast.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BusyWeeks {
    /// The first month and day.
    pub from: (u32, u32),
    /// The last ones, which may lie in the next year.
    pub until: (u32, u32),
}

/// A part payment of a programme, and what it asks for.
#[derive(Clone, Debug, PartialEq)]
pub struct PartPayment {
    /// Its number, as people call it.
    pub part: u32,
    /// Months after planting before which it is not paid.
    pub months: u32,
    /// Living trees on each hectare.
    pub stand_per_ha: f64,
    /// How many days ago somebody must have been there at most.
    pub visit_days: u32,
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
