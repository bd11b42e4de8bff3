//! The sheet of a girth census: which trees, at what height, and a box for each.

use budwood_scheduler::{TaskKind, figures::Farmer, outlook::census::Walk};

use super::maker::Maker;
use crate::{
    args,
    sheet::{Cell, Column, ColumnKind, Sheet},
    wording::{Key, Paper},
    words::printed::SheetKind,
};

/// Boxes side by side, so that a hundred are on one page.
const SIDES: u32 = 5;
/// Boxes of a count of a farmer's own, and of one that opens a stand (30 and 100 are usual samples).
const BOXES: [u32; 2] = [30, 100];

impl Maker<'_> {
    pub(super) fn census(&self) -> Sheet {
        let table = self.view.table(self.group);
        let mut due: Vec<String> = Vec::new();
        let mut most = 0;
        for farmer in &table.farmers {
            for (block, walk) in walks(farmer) {
                let which = match walk {
                    None => self.tongue.say(Key::WalkAll, args! {}),
                    Some(Walk { every, from, trees }) => {
                        most = most.max(trees);
                        let args = args! { "every" => every, "from" => from };
                        let rule = self.tongue.say(Key::WalkEvery, args);
                        format!("{rule} ({trees})")
                    }
                };
                due.push(format!("{} {block}: {which}", farmer.person.name));
            }
        }
        let columns = (0..SIDES).flat_map(|side| {
            [Paper::ColumnTree, Paper::ColumnGirth].map(|title| {
                let kind = if title == Paper::ColumnTree {
                    ColumnKind::Number
                } else {
                    ColumnKind::Blank(8)
                };
                let column = self.column(title, kind);
                Column {
                    key: format!("{}{}", column.key, side + 1),
                    ..column
                }
            })
        });
        let mut sheet = self.begin(SheetKind::Census, Paper::SheetCensus, columns.collect());
        let boxes = BOXES
            .into_iter()
            .find(|boxes| *boxes >= most)
            .unwrap_or_else(|| most.div_ceil(SIDES) * SIDES);
        let high = boxes / SIDES;
        for row in 1..=high {
            let sides = (0..SIDES).flat_map(|side| [(row + side * high).into(), Cell::Blank]);
            sheet.rows.push(sides.collect());
        }
        sheet.head.push(self.say(Paper::SheetCensusOf, args! {}));
        sheet.head.extend(due);
        sheet.notes.push(self.say(Paper::SheetCensusHow, args! {}));
        sheet
            .notes
            .push(self.say(Paper::SheetCensusString, args! {}));
        sheet
    }
}

/// The blocks of a farmer that are to be measured, and which trees.
fn walks<'f>(farmer: &'f Farmer<'_>) -> impl Iterator<Item = (&'f str, Option<Walk>)> {
    farmer.stands.iter().flat_map(|stand| {
        let jobs = farmer.jobs(stand).iter();
        let due = jobs.filter(|job| job.kind == TaskKind::GirthCensus && job.due <= farmer.today);
        due.map(|job| (stand.block.name.as_str(), job.figures.walk))
    })
}
