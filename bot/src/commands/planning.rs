//! `budwood due --plan`: what a planting needs, from the first paper to the first cut.
//!
//! One page to be checked by a person: points, plants, days by which things must be done, the list
//! of seven years, the texts, and with a file of costs money and labour. All sums are the
//! scheduler's; this only reads what was asked.

mod costs;
mod feeding;
mod measuring;
mod page;

use std::{
    io::Write,
    path::{Path, PathBuf},
};

use anyhow::{Context, bail};
use budwood_parser::{Material, Measure, Unit};
use budwood_scheduler::{
    Block, BlockId, Calendar, PersonId, Season,
    handbook::calendar::profiles,
    jobs::{
        nutrients::Nutrients,
        orders::{in_bundles, plants_to_order},
    },
    outlook::forecast::{Range, of_planting},
    plan::{
        Land, Measured, Step, back_schedule, in_rectangle,
        life::{self, Done},
        outline, points,
    },
    words::area::hectares,
};
use chrono::{Months, NaiveDate};
use clap::Args;

pub(crate) use self::costs::Costs;
use crate::{service::setup, wording::Texts, words::outline_area::Ground};

/// The seven years are played from so many months before planting: the longest lead and slack.
const MONTHS_AHEAD: u32 = 36;

/// The first and the last day of the usual rains, each as month and day.
type Rains = ((u32, u32), (u32, u32));

/// What is to be planned.
#[derive(Args, Debug)]
pub struct PlanArgs {
    /// The calendar: one that ships, or a file.
    #[arg(long, default_value = "fao", requires = "plan")]
    calendar: String,
    /// The day on which planting begins.
    #[arg(long, requires = "plan")]
    planting: Option<NaiveDate>,
    /// The area, such as "1.2 ha", "3 acre" or "7.5 rai".
    #[arg(long, value_parser = area, requires = "plan")]
    area: Option<Measure>,
    /// The outline: a file of "latitude longitude" lines, or a polygon of RFC 7946.
    #[arg(long, conflicts_with = "area", requires = "plan")]
    outline: Option<PathBuf>,
    /// A rectangle with rows along its length, such as 100x80 (length and width in metres).
    #[arg(long, value_parser = metres, conflicts_with_all = ["area", "outline"], requires = "plan")]
    rectangle: Option<(f64, f64)>,
    /// Distances, such as 7x3; without them the calendar's.
    #[arg(long, value_parser = metres, requires = "plan")]
    spacing: Option<(f64, f64)>,
    /// Slope in per cent.
    #[arg(long, default_value_t = 0.0, requires = "plan")]
    slope_pct: f64,
    /// The area was measured along the ground, with a tape.
    #[arg(long, requires = "plan")]
    taped: bool,
    /// Distances between trees are measured along the ground, not held level.
    #[arg(long, requires = "plan")]
    along_ground: bool,
    /// Direction of the rows in degrees from north, for an outline.
    #[arg(long, default_value_t = 90.0, requires = "plan")]
    bearing: f64,
    /// Distance of the first trees from the boundary of an outline or rectangle; without it the calendar's.
    #[arg(long, requires = "plan")]
    margin_m: Option<f64>,
    /// Plants in a tray or bundle.
    #[arg(long, default_value_t = 1, requires = "plan")]
    bundle: u32,
    /// Usual rains, such as 05-20/10-31; two with a comma where it rains twice a year.
    #[arg(long, value_parser = rains, value_delimiter = ',', num_args = 1, requires = "plan")]
    rains: Vec<Rains>,
    /// What is planted: polybag, budded stump, stump or seedling; without it what the calendar calls
    /// usual.
    #[arg(long, value_parser = material, requires = "plan")]
    material: Option<Material>,
    /// Another fertiliser, such as 15-15-15: how much of it brings the same nitrogen each round.
    #[arg(long, value_parser = grade, requires = "plan")]
    instead: Option<Nutrients>,
    /// Costs, grants and labour, as demo-data/costs.toml has them.
    #[arg(long, requires = "plan")]
    costs: Option<PathBuf>,
}

/// What is known of the shape of the land.
pub(crate) enum Shape {
    /// Only its area.
    Area,
    /// Length and width.
    Rectangle,
    /// Its outline.
    Outline(Ground),
}

/// Everything that the page tells.
pub(crate) struct Planned {
    pub(crate) calendar: Calendar,
    pub(crate) planting: NaiveDate,
    pub(crate) hectares: f64,
    pub(crate) shape: Shape,
    pub(crate) spacing_m: (f64, f64),
    pub(crate) slope_pct: f64,
    pub(crate) margin_m: f64,
    pub(crate) points: u32,
    pub(crate) order: u32,
    pub(crate) opening: Option<Range>,
    pub(crate) steps: Vec<Step>,
    pub(crate) years: Vec<Done>,
    pub(crate) instead: Option<Nutrients>,
    pub(crate) costs: Option<Costs>,
}

/// Writes the page.
///
/// # Errors
///
/// When what was asked is no plan: no area, a wrong outline, an unknown calendar.
pub fn print(args: &PlanArgs, out: &mut impl Write) -> anyhow::Result<()> {
    let planned = planned(args)?;
    let texts = Texts::built_in()?;
    write!(out, "{}", page::of(&planned, &texts.tongue(&[])))?;
    Ok(())
}

fn planned(args: &PlanArgs) -> anyhow::Result<Planned> {
    let mut calendar = calendar(&args.calendar)?;
    calendar.order.material = args.material.unwrap_or(calendar.order.material);
    let planting = args
        .planting
        .context("--planting DAY is needed for a plan")?;
    let spacing_m = args
        .spacing
        .unwrap_or((calendar.spacing.row_m, calendar.spacing.in_row_m));
    let margin_m = args.margin_m.unwrap_or(calendar.spacing.margin_m);
    let (shape, area, points) = land(args, spacing_m, margin_m)?;
    let order = &calendar.order;
    let plants = plants_to_order(points, order.spares_pct, order.transit_loss_pct)
        .and_then(|plants| in_bundles(plants, args.bundle))
        .context("a bundle holds at least one plant")?;
    // As much land as these points take, so that the list speaks of the same trees.
    let block = block(points, spacing_m, planting);
    if args.rains.len() > 2 {
        bail!("expected at most two rains a year");
    }
    let season = Season {
        rains_start: args.rains.first().map(|rains| rains.0),
        rains_end: args.rains.first().map(|rains| rains.1),
        second_rains: args.rains.get(1).copied(),
        window_opened: None,
    };
    let from = planting
        .checked_sub_months(Months::new(MONTHS_AHEAD))
        .unwrap_or(planting);
    let costs = args.costs.as_deref().map(costs).transpose()?;
    Ok(Planned {
        opening: of_planting(planting, None, &calendar, &season),
        steps: back_schedule(&calendar, planting, order.material),
        years: life::years(&block, &calendar, season, from),
        order: plants,
        hectares: area,
        slope_pct: args.slope_pct,
        calendar,
        planting,
        shape,
        spacing_m,
        margin_m,
        points,
        instead: args.instead,
        costs,
    })
}

/// The shape of the land, its hectares, and the points on it.
fn land(
    args: &PlanArgs,
    spacing_m: (f64, f64),
    margin_m: f64,
) -> anyhow::Result<(Shape, f64, u32)> {
    if let Some(file) = args.outline.as_deref() {
        let ground = ground(file)?;
        let points = outline::count(&ground.outline, args.bearing, spacing_m, margin_m)?;
        let area = ground.hectares;
        return Ok((Shape::Outline(ground), area, points));
    }
    if let Some((length_m, width_m)) = args.rectangle {
        let points = in_rectangle((length_m, width_m), spacing_m, margin_m)?;
        let area = Measure {
            value: length_m * width_m,
            unit: Unit::SquareMetre,
        };
        let area = hectares(area).context("the rectangle has no area")?;
        return Ok((Shape::Rectangle, area, points));
    }
    let Some(area) = args.area else {
        bail!("--area, --rectangle or --outline is needed for a plan");
    };
    let area = hectares(area).context("the unit does not measure land")?;
    let land = Land {
        hectares: area,
        slope_pct: args.slope_pct,
        area: measured(args.taped),
        spacing: measured(args.along_ground),
    };
    Ok((Shape::Area, area, points(land, spacing_m.0, spacing_m.1)?))
}

fn block(points: u32, spacing_m: (f64, f64), planting: NaiveDate) -> Block {
    Block {
        id: BlockId(1),
        owner: PersonId(1),
        name: "A".to_owned(),
        area: Some(Measure {
            value: f64::from(points) * spacing_m.0 * spacing_m.1,
            unit: Unit::SquareMetre,
        }),
        area_source: "gps".to_owned(),
        slope_pct: None,
        spacing_m: Some(spacing_m),
        point: None,
        planned_on: Some(planting),
        clone_name: None,
    }
}

const fn measured(along_ground: bool) -> Measured {
    if along_ground {
        Measured::AlongTheGround
    } else {
        Measured::Level
    }
}

/// A calendar that ships, or one in a file.
///
/// # Errors
///
/// When it is neither, or the file is wrong.
pub fn calendar(name: &str) -> anyhow::Result<Calendar> {
    if let Some((_, text)) = profiles::ALL.iter().find(|(known, _)| *known == name) {
        return Ok(Calendar::parse(text)?);
    }
    let path = Path::new(name);
    if !path.exists() {
        let names: Vec<&str> = profiles::ALL.iter().map(|(known, _)| *known).collect();
        bail!(
            "no calendar {name}: expected a file or one of {}",
            names.join(", ")
        );
    }
    Calendar::parse(&setup::read_text(path)?).with_context(|| format!("calendar {name}"))
}

fn ground(file: &Path) -> anyhow::Result<Ground> {
    Ground::read(&setup::read_text(file)?).with_context(|| format!("outline {}", file.display()))
}

/// What work costs and takes, from a file.
///
/// # Errors
///
/// When the file is not there or wrong.
pub(crate) fn costs(file: &Path) -> anyhow::Result<Costs> {
    Costs::read(&setup::read_text(file)?).with_context(|| format!("costs {}", file.display()))
}

fn area(text: &str) -> Result<Measure, String> {
    let wrong = || "expected an area like \"1.2 ha\", \"3 acre\" or \"7.5 rai\"".to_owned();
    let digits = text.trim().trim_end_matches(char::is_alphabetic);
    let unit = match text.trim().get(digits.len()..).unwrap_or_default() {
        "ha" | "" => Unit::Hectare,
        "acre" | "acres" | "ac" => Unit::Acre,
        "rai" => Unit::Rai,
        _ => return Err(wrong()),
    };
    let value = digits.trim().parse().map_err(|_| wrong())?;
    Ok(Measure { value, unit })
}

fn metres(text: &str) -> Result<(f64, f64), String> {
    let parts = text.split_once('x');
    let both = parts.and_then(|(row, tree)| row.trim().parse().ok().zip(tree.trim().parse().ok()));
    both.ok_or_else(|| "expected two lengths in metres like 7x3".to_owned())
}

fn grade(text: &str) -> Result<Nutrients, String> {
    let grade = Nutrients::from_grade(text).filter(|grade| grade.n > 0.0);
    grade.ok_or_else(|| "expected a grade with nitrogen like 15-15-15".to_owned())
}

fn material(text: &str) -> Result<Material, String> {
    let name = text.trim().replace([' ', '-'], "_");
    Material::from_name(&name).ok_or_else(|| {
        let names: Vec<&str> = Material::ALL.iter().map(|one| one.name()).collect();
        format!("expected one of {}", names.join(", "))
    })
}

fn rains(text: &str) -> Result<Rains, String> {
    let day = |text: &str| {
        let (month, day) = text.split_once('-')?;
        let (month, day) = (month.parse().ok()?, day.parse().ok()?);
        // A leap year has every day that any year has.
        NaiveDate::from_ymd_opt(2028, month, day).map(|_| (month, day))
    };
    let both = text.split_once('/');
    let both = both.and_then(|(start, end)| day(start).zip(day(end)));
    both.ok_or_else(|| "expected months and days like 05-20/10-31".to_owned())
}
