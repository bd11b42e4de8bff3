//! The sheet of a meeting: every block of a group, what is known of it, and room to write what
//! people tell. A row can be texted back by its number.

use budwood_scheduler::{
    BlockId, Group,
    figures::{Farmer, Stand},
};

use super::maker::Maker;
use crate::{
    args,
    engine::view::View,
    sheet::{Cell, ColumnKind, Sheet},
    wording::Paper,
    words::printed::SheetKind,
};

/// Room for a number.
const NUMBER: ColumnKind = ColumnKind::Blank(6);
/// Room for a signature.
const SIGNATURE: ColumnKind = ColumnKind::Blank(16);

/// The blocks of farmers, by the names of people and blocks, as they are looked for on paper.
fn in_order<'f, 'a>(farmers: &'f [Farmer<'a>]) -> Vec<(&'f Farmer<'a>, &'f Stand<'a>)> {
    let rows = farmers
        .iter()
        .flat_map(|farmer| farmer.stands.iter().map(move |stand| (farmer, stand)));
    let mut rows: Vec<_> = rows.collect();
    rows.sort_by_key(|(farmer, stand)| {
        (
            farmer.person.name.to_lowercase(),
            farmer.person.id,
            &stand.block.name,
        )
    });
    rows
}

impl View<'_> {
    /// The blocks of the rows.
    pub(super) fn meeting_blocks(self, group: &Group) -> Vec<BlockId> {
        let table = self.table(group);
        let rows = in_order(&table.farmers).into_iter();
        rows.map(|(_, stand)| stand.block.id).collect()
    }
}

impl Maker<'_> {
    pub(super) fn meeting(&self, number: Option<u32>) -> Sheet {
        let table = self.view.table(self.group);
        let columns = vec![
            self.column(Paper::ColumnRow, ColumnKind::Number),
            self.column(Paper::ColumnFarmer, ColumnKind::Words),
            self.column(Paper::ColumnBlock, ColumnKind::Words),
            self.column(Paper::ColumnPlanted, ColumnKind::Number),
            self.column(Paper::ColumnAlive, ColumnKind::Number),
            self.column(Paper::ColumnGaps, ColumnKind::Number),
            self.column(Paper::ColumnDue, ColumnKind::Words),
            self.column(Paper::ColumnDead, NUMBER),
            self.column(Paper::ColumnFilled, NUMBER),
            self.column(Paper::ColumnWeeded, NUMBER),
            self.column(Paper::ColumnFed, NUMBER),
            self.column(Paper::ColumnSignature, SIGNATURE),
        ];
        let mut sheet = self.begin(SheetKind::Meeting, Paper::SheetMeeting, columns);
        let rows = in_order(&table.farmers).into_iter().zip(1_u32..);
        sheet.rows = rows
            .map(|((farmer, stand), row)| {
                let planted = Some(stand.state.planted()).filter(|trees| *trees > 0);
                let mut cells: Vec<Cell> = vec![
                    row.into(),
                    farmer.person.name.as_str().into(),
                    stand.block.name.as_str().into(),
                    planted.into(),
                    planted.map(|_| stand.state.alive()).into(),
                    planted.map(|_| stand.state.gaps()).into(),
                    self.due(farmer, stand).into(),
                ];
                cells.resize(sheet.columns.len(), Cell::Blank);
                cells
            })
            .collect();
        let people = args! { "people" => table.farmers.len(), "blocks" => sheet.rows.len() };
        sheet.head.push(self.say(Paper::SheetOfPeople, people));
        if let Some(number) = number {
            let number = args! { "number" => number.to_string() };
            sheet.notes.push(self.say(Paper::SheetTextBack, number));
        }
        sheet
    }

    /// The jobs that are due, those that pressed first as they are kept.
    fn due(&self, farmer: &Farmer<'_>, stand: &Stand<'_>) -> String {
        let due = farmer
            .jobs(stand)
            .iter()
            .filter(|task| task.due <= farmer.today && !task.only_tells());
        let names: Vec<String> = due.map(|task| self.tongue.job(task.kind)).collect();
        names.join(", ")
    }
}
