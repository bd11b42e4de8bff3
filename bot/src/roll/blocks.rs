//! Block rows: land, spacing, plan, and what is known of a stand that was there before the bot.

mod stand;

use budwood_parser::{Kind, Measure};
use budwood_scheduler::{
    Block, BlockId, PersonId,
    land::enrolment::{Enrolment, Known},
    words::{area::hectares, point::Point},
};

use super::{
    cell::Cells,
    column::Column,
    draft::{Draft, key},
    finding::Fault,
    people::group,
    rows::Row,
};
use crate::words::outline_area::LATITUDE_MAX;

/// The closest usual planting, trees on a hectare; a third more is looked at.
///
/// Handbooks plant 400 to 700 (FAO and national boards; the densest are for smallholders).
const TREES_PER_HECTARE: f64 = 700.0;
const CROWDED_FACTOR: f64 = 1.3;
/// The widest usual planting; half of that is looked at: acres and rai that are taken for hectares
/// have fewer.
const TREES_PER_HECTARE_LEAST: f64 = 400.0;
const SPARSE_FACTOR: f64 = 0.5;
/// A smallholder has a few hectares; fifty is an estate, or square metres taken for hectares.
const HECTARES_MAX: f64 = 50.0;
/// A hundred square metres hold seven trees.
const HECTARES_MIN: f64 = 0.01;
/// Rows closer than a metre or wider than thirty are no rubber planting.
const SPACING_M: (f64, f64) = (1.0, 30.0);
/// Twice as high as long is a cliff.
const SLOPE_PCT: (f64, f64) = (0.0, 200.0);
/// Where an area of a list comes from.
const AREA_SOURCE: &str = "list";

/// Words of the text language that cannot also name a block without confusion. Names of jobs
/// are added to them.
const WORDS: [&str; 36] = [
    "yes", "no", "ok", "done", "later", "stop", "start", "help", "undo", "wrong", "why", "next",
    "late", "quiet", "gaps", "sick", "status", "all", "none", "half", "today", "block", "plot",
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "twelve",
    "twenty", "hundred",
];

/// Takes block rows in.
pub(super) fn take<'a>(draft: &mut Draft<'_>, rows: impl Iterator<Item = &'a Row>) {
    for row in rows {
        if row.refused {
            continue;
        }
        let cells = Cells::new(row, draft.known.today);
        let block = block(draft, row.line, &cells);
        let Some(block) = draft.keep(row.line, block) else {
            continue;
        };
        let stand = stand::known(&cells);
        if let Some(Some(stand)) = draft.keep(row.line, stand) {
            enrol(draft, row.line, &block, stand);
        }
        draft.directory.put_block(block);
    }
}

fn block(draft: &mut Draft<'_>, line: usize, cells: &Cells<'_>) -> Result<Block, Fault> {
    let owner = owner(draft, cells)?;
    let name = cells.short_name(Column::Block)?;
    let known = draft.blocks.get(&(owner, key(name))).copied();
    if let Some(line) = known.and_then(|id| draft.block_lines.get(&id)).copied() {
        let name = format!("block {name} of this farmer");
        return Err(Fault::Twice { name, line });
    }
    let area = cells.area()?;
    let spacing = spacing(cells)?;
    let slope = cells.number(Column::SlopePct, SLOPE_PCT.0, SLOPE_PCT.1)?;
    let point = point(cells)?;
    let planned_on = cells.plan_day(Column::PlannedOn)?;
    let clone_name = cells.clone_name()?;
    let mut block = match known.and_then(|id| draft.directory.block(id)) {
        Some(block) => block.clone(),
        None => new_block(draft.new_block(), owner, name),
    };
    if area.is_some() && area != block.area {
        block.area = area;
        block.area_source = AREA_SOURCE.to_string();
    }
    block.spacing_m = spacing.or(block.spacing_m);
    block.slope_pct = slope.or(block.slope_pct);
    block.point = point.or(block.point);
    block.planned_on = planned_on.or(block.planned_on);
    block.clone_name = clone_name.or(block.clone_name);
    draft.blocks.insert((owner, key(name)), block.id);
    draft.block_lines.insert(block.id, line);
    look_at(draft, line, &block);
    Ok(block)
}

fn new_block(id: BlockId, owner: PersonId, name: &str) -> Block {
    Block {
        id,
        owner,
        name: name.to_string(),
        area: None,
        area_source: AREA_SOURCE.to_string(),
        slope_pct: None,
        spacing_m: None,
        point: None,
        planned_on: None,
        clone_name: None,
    }
}

fn owner(draft: &Draft<'_>, cells: &Cells<'_>) -> Result<PersonId, Fault> {
    let name = cells.name(Column::Name)?;
    let group = group(draft, cells)?;
    match draft.people.get(&(group, key(name))) {
        Some(id) => Ok(*id),
        None => Err(Fault::OwnerUnknown(name.to_string())),
    }
}

fn spacing(cells: &Cells<'_>) -> Result<Option<(f64, f64)>, Fault> {
    let (low, high) = SPACING_M;
    let row = cells.number(Column::RowM, low, high)?;
    let tree = cells.number(Column::TreeM, low, high)?;
    match (row, tree) {
        (Some(row), Some(tree)) => Ok(Some((row, tree))),
        (None, None) => Ok(None),
        (Some(_), None) => Err(Fault::HalfPair(Column::TreeM, Column::RowM)),
        (None, Some(_)) => Err(Fault::HalfPair(Column::RowM, Column::TreeM)),
    }
}

/// Where it lies. A latitude that is far too large is a longitude.
fn point(cells: &Cells<'_>) -> Result<Option<Point>, Fault> {
    let latitude = cells.number(Column::Latitude, -180.0, 180.0)?;
    let longitude = cells.number(Column::Longitude, -180.0, 180.0)?;
    match (latitude, longitude) {
        (Some(latitude), Some(_)) if latitude.abs() > LATITUDE_MAX => {
            Err(Fault::NoRubberThere(latitude))
        }
        (Some(latitude), Some(longitude)) => Ok(Some(Point {
            latitude,
            longitude,
        })),
        (None, None) => Ok(None),
        (Some(_), None) => Err(Fault::HalfPair(Column::Longitude, Column::Latitude)),
        (None, Some(_)) => Err(Fault::HalfPair(Column::Latitude, Column::Longitude)),
    }
}

/// What is odd, though it can be stored.
fn look_at(draft: &mut Draft<'_>, line: usize, block: &Block) {
    if means_something(&block.name) {
        draft.note(line, Fault::NameTaken(block.name.clone()));
    }
    let name = of_owner(draft, block);
    match block.area.map(|area| (area, hectares(area))) {
        None => draft.note(line, Fault::NoArea(name)),
        Some((_, Some(size))) if (HECTARES_MIN..=HECTARES_MAX).contains(&size) => {}
        Some((area, _)) => draft.note(line, Fault::AreaOdd { name, area }),
    }
}

/// A block with whose it is: half of all blocks are called A.
fn of_owner(draft: &Draft<'_>, block: &Block) -> String {
    let owner = draft.directory.person(block.owner);
    owner.map_or_else(
        || block.name.clone(),
        |owner| format!("{} of {}", block.name, owner.name),
    )
}

/// A name that begins with a digit reads as a number of trees; one that is a word of the text
/// language reads as that word.
fn means_something(name: &str) -> bool {
    let name = key(name);
    name.starts_with(|c: char| c.is_numeric())
        || WORDS.contains(&name.as_str())
        || Kind::ALL.iter().any(|kind| kind.name() == name)
}

/// Only a stand of which nothing is on record is taken from a list: what farmers report later is the
/// better record.
fn enrol(draft: &mut Draft<'_>, line: usize, block: &Block, stand: Known) {
    let of_whom = of_owner(draft, block);
    let name = || of_whom.clone();
    let trees = stand.planted.map_or(0, |(_, trees)| trees);
    match (draft.known.planted)(block.id) {
        None => {
            let enrolment = Enrolment {
                block: block.id,
                on: draft.known.today,
                known: Known {
                    clone_name: block.clone_name.clone(),
                    ..stand
                },
            };
            draft.facts.extend(enrolment.facts());
        }
        Some(known) if known != trees => {
            let (name, told) = (name(), trees);
            draft.note(line, Fault::PlantedKnown { name, known, told });
        }
        Some(_) => {}
    }
    if let Some(room) = is_sparse(trees, block) {
        let (name, planted) = (name(), trees);
        draft.note(
            line,
            Fault::Sparse {
                name,
                planted,
                room,
            },
        );
    }
    if let Some(room) = block.area.and_then(|area| room(area, block.spacing_m))
        && f64::from(trees) > room * CROWDED_FACTOR
    {
        let (name, planted) = (name(), trees);
        let room = to_trees(room);
        draft.note(
            line,
            Fault::Crowded {
                name,
                planted,
                room,
            },
        );
    }
}

/// Trees that are too few for the land, as far as they were planted close enough to be a stand.
fn is_sparse(trees: u32, block: &Block) -> Option<u32> {
    let size = block.area.and_then(hectares)?;
    let is_wide = block.spacing_m.is_some();
    let usual = size * TREES_PER_HECTARE_LEAST;
    (trees > 0 && !is_wide && f64::from(trees) < usual * SPARSE_FACTOR).then(|| to_trees(usual))
}

/// Trees that fit, at the block's own spacing if that is closer than usual.
fn room(area: Measure, spacing_m: Option<(f64, f64)>) -> Option<f64> {
    const SQUARE_METRES_PER_HECTARE: f64 = 10_000.0;
    let own = spacing_m.map_or(0.0, |(row, tree)| SQUARE_METRES_PER_HECTARE / (row * tree));
    Some(hectares(area)? * own.max(TREES_PER_HECTARE))
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to the range of trees first, and only shown"
)]
fn to_trees(number: f64) -> u32 {
    number.clamp(0.0, f64::from(u32::MAX)) as u32
}
