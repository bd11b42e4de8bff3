//! Planning a planting: how many points the land holds, and what must be done by when.
//!
//! The points come from an area ([`points`]), a rectangle ([`in_rectangle`]) or an outline
//! ([`outline::count`]); the pegs on the land override all of them. The seven years that follow are
//! played in [`life`]. Deliberately absent: positions on the globe and prices, which the bot knows.

pub mod life;
pub mod outline;
#[cfg(test)]
mod tests;

use alloc::vec::Vec;

use budwood_parser::Material;
use chrono::NaiveDate;

use crate::{
    handbook::calendar::Calendar,
    jobs::orders,
    land::{directory::Block, stand},
    sums::{days, rounding},
    words::job::TaskKind,
};

/// The largest area of one plan in hectares: twenty times the largest holding that is still called
/// small; more is a slip of the pen (square metres for hectares).
pub const HECTARES_MAX: f64 = 1_000.0;
/// The steepest slope in per cent: 60 degrees, where nobody stands any more.
pub const SLOPE_PCT_MAX: f64 = 173.0;

const SQUARE_METRES_A_HECTARE: f64 = 10_000.0;

/// Why nothing can be planned on this land.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum PlanError {
    /// No area, or less than none.
    #[error("the area is {0} ha, expected more than 0")]
    NoArea(f64),
    /// More than one block can have.
    #[error("the area is {0} ha, expected at most {HECTARES_MAX}")]
    TooLarge(f64),
    /// Distances that are no spacing.
    #[error("the spacing is {0} x {1} m, expected 1 to 40 m each")]
    Spacing(f64, f64),
    /// A slope that is none.
    #[error("the slope is {0} %, expected 0 to {SLOPE_PCT_MAX}")]
    Slope(f64),
    /// A margin that is none.
    #[error("the margin is {0} m, expected 0 to 20")]
    Margin(f64),
    /// Too few corners for an outline.
    #[error("the outline has {0} corners, expected at least 3")]
    FewCorners(usize),
    /// Too many corners for an outline.
    #[error("the outline has {0} corners, expected at most {max}", max = outline::CORNERS_MAX)]
    ManyCorners(usize),
    /// A corner that is no place.
    #[error("corner {0} is no place")]
    NoPlace(usize),
    /// Two sides that cross or touch.
    #[error("the sides that begin at corners {0} and {1} cross: were corners walked in turn?")]
    Crossing(usize, usize),
}

/// What a length on a slope is measured along.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measured {
    /// On a map, by positions, or held level.
    Level,
    /// Along the ground.
    AlongTheGround,
}

/// Land of which only the size is known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Land {
    /// Area.
    pub hectares: f64,
    /// Slope in per cent.
    pub slope_pct: f64,
    /// How the area was measured.
    pub area: Measured,
    /// How the distances between trees will be measured.
    pub spacing: Measured,
}

impl Land {
    /// Level land, or land from a map with distances held level.
    #[must_use]
    pub const fn level(hectares: f64) -> Self {
        Self {
            hectares,
            slope_pct: 0.0,
            area: Measured::Level,
            spacing: Measured::Level,
        }
    }
}

/// Trees that fit by the area, rounded down.
///
/// On a slope, distances measured along the ground put more trees on a level hectare, and an area
/// measured along the ground is larger than its level share, both by 1 / cos(angle).
///
/// # Errors
///
/// When area, slope or spacing are none.
pub fn points(land: Land, row_m: f64, in_row_m: f64) -> Result<u32, PlanError> {
    check_spacing(row_m, in_row_m)?;
    check_area(land.hectares)?;
    if !(0.0..=SLOPE_PCT_MAX).contains(&land.slope_pct) {
        return Err(PlanError::Slope(land.slope_pct));
    }
    let steeper = stand::slope_factor(land.slope_pct);
    let factor = match (land.area, land.spacing) {
        (Measured::Level, Measured::Level) => 1.0,
        (Measured::AlongTheGround, Measured::AlongTheGround) => 1.0,
        (Measured::Level, Measured::AlongTheGround) => steeper,
        (Measured::AlongTheGround, Measured::Level) => 1.0 / steeper,
    };
    let trees = land.hectares * SQUARE_METRES_A_HECTARE * factor / (row_m * in_row_m);
    rounding::floor(trees).ok_or(PlanError::TooLarge(land.hectares))
}

/// Trees that fit on a block of the list, by its own spacing or the calendar's. None without an
/// area.
#[must_use]
pub fn points_of(block: &Block, calendar: &Calendar) -> Option<Result<u32, PlanError>> {
    let (row_m, in_row_m) = spacing_of(block, calendar);
    let land = Land {
        slope_pct: block.slope_pct.unwrap_or(0.0),
        area: if block.area_source == "tape" {
            Measured::AlongTheGround
        } else {
            Measured::Level
        },
        ..Land::level(block.hectares()?)
    };
    Some(points(land, row_m, in_row_m))
}

/// The distances of a block: its own, or the calendar's.
#[must_use]
pub fn spacing_of(block: &Block, calendar: &Calendar) -> (f64, f64) {
    let usual = (calendar.spacing.row_m, calendar.spacing.in_row_m);
    block.spacing_m.unwrap_or(usual)
}

/// Trees on a rectangle with rows along its length: rows times trees in a row, a tree at both ends
/// of each, all of them the margin inside the boundary.
///
/// # Errors
///
/// When a length, the margin or the spacing is none.
pub fn in_rectangle(
    (length_m, width_m): (f64, f64),
    (row_m, in_row_m): (f64, f64),
    margin_m: f64,
) -> Result<u32, PlanError> {
    check_spacing(row_m, in_row_m)?;
    check_margin(margin_m)?;
    let hectares = length_m * width_m / SQUARE_METRES_A_HECTARE;
    check_area(length_m.min(width_m).min(hectares))?;
    check_area(hectares)?;
    let fit = |length_m: f64, each_m: f64| {
        let inner_m = length_m - 2.0 * margin_m;
        if inner_m < 0.0 {
            return Some(0);
        }
        rounding::floor(inner_m / each_m).map(|spaces| spaces.saturating_add(1))
    };
    let rows = fit(width_m, row_m).zip(fit(length_m, in_row_m));
    rows.and_then(|(rows, trees)| rows.checked_mul(trees))
        .ok_or(PlanError::TooLarge(hectares))
}

fn check_area(hectares: f64) -> Result<(), PlanError> {
    if hectares.is_nan() || hectares <= 0.0 {
        return Err(PlanError::NoArea(hectares));
    }
    if hectares > HECTARES_MAX {
        return Err(PlanError::TooLarge(hectares));
    }
    Ok(())
}

fn check_spacing(row_m: f64, in_row_m: f64) -> Result<(), PlanError> {
    let possible = 1.0..=40.0;
    if possible.contains(&row_m) && possible.contains(&in_row_m) {
        Ok(())
    } else {
        Err(PlanError::Spacing(row_m, in_row_m))
    }
}

fn check_margin(margin_m: f64) -> Result<(), PlanError> {
    if (0.0..=20.0).contains(&margin_m) {
        Ok(())
    } else {
        Err(PlanError::Margin(margin_m))
    }
}

/// One thing to do before or soon after planting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Step {
    /// What.
    pub what: StepKind,
    /// The target day, or the last one where there is one.
    pub by: NaiveDate,
}

/// The steps that are counted from the day of planting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StepKind {
    /// Have the land measured.
    Measure,
    /// The last day for ordering this material.
    Order(Material),
    /// A job of the calendar.
    Job(TaskKind),
    /// The plants arrive.
    Collect,
    /// Fill the pits again.
    RefillPits,
    /// Water the bag plants.
    Water,
    /// The day of planting.
    PlantingDay,
    /// The last day on which gaps are filled.
    LastFilling,
}

/// What must be done by when to plant on this day, in the order of the days. Steps whose day can
/// not be reckoned are left out.
#[must_use]
pub fn back_schedule(calendar: &Calendar, planting: NaiveDate, material: Material) -> Vec<Step> {
    let (land, pits) = (calendar.land, calendar.pits);
    let lead_days = calendar.order.lead_days.get(&material).copied();
    let order =
        lead_days.and_then(|lead| orders::order_by(planting, lead, calendar.order.slack_days));
    let first_feed = calendar.feeding.rounds.first().map(|round| round.month);
    let is_potted = material == Material::Polybag;
    let last_filling = days::months_after(planting, calendar.backfill.until_months);
    let days = [
        (
            StepKind::Measure,
            days::months_before(planting, land.measure_months_before),
        ),
        (StepKind::Order(material), order),
        (
            StepKind::Job(TaskKind::Clear),
            days::before(planting, land.clear_days_before),
        ),
        (
            StepKind::Job(TaskKind::Line),
            days::months_before(planting, land.line_months_before),
        ),
        (
            StepKind::Job(TaskKind::DigPits),
            days::months_before(planting, pits.dig_months_before),
        ),
        (
            StepKind::Collect,
            days::before(planting, calendar.order.slack_days),
        ),
        (
            StepKind::RefillPits,
            days::before(planting, pits.refill_days_before),
        ),
        (
            StepKind::Water,
            is_potted.then(|| days::before(planting, 1)).flatten(),
        ),
        (StepKind::PlantingDay, Some(planting)),
        (
            StepKind::Job(TaskKind::SurvivalCheck),
            days::after(planting, calendar.survival.first_days),
        ),
        (
            StepKind::Job(TaskKind::Feed),
            first_feed.and_then(|month| days::months_after(planting, month)),
        ),
        (
            StepKind::LastFilling,
            last_filling.and_then(|day| days::before(day, 1)),
        ),
    ];
    let mut steps: Vec<Step> = days
        .into_iter()
        .filter_map(|(what, by)| Some(Step { what, by: by? }))
        .collect();
    steps.sort_by_key(|step| step.by);
    steps
}
