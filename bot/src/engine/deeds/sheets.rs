//! A sheet is printed: what its rows stand for is kept under its number.

use budwood_parser::SheetText;
use budwood_scheduler::{BlockId, GroupId};

use crate::{
    engine::{
        outcome::Outcome,
        questions::{sheet_rows::SheetTold, sheets::SheetOrder},
        roles,
        said::Done,
        step::Step,
        turn::Turn,
    },
    sheet::Sheet,
    words::printed::Printed,
};

impl Step<'_> {
    /// Rows of a sheet that are texted back, if the text is some. When none of them is clear, what they
    /// tell becomes the text, with people and blocks by name, to be read like any other.
    pub(crate) fn take_rows(&mut self, turn: &mut Turn) -> Option<Done> {
        let sheet = self.view().sheet_meant(turn)?;
        match self.sheet_text(turn, &sheet) {
            Ok(done) => Some(done),
            Err(rows) => {
                turn.text = rows;
                None
            }
        }
    }

    /// The rows, or none that is clear as such a text.
    fn sheet_text(&mut self, turn: &Turn, text: &SheetText) -> Result<Done, String> {
        let Some(speaker) = self.view().person(turn.speaker).cloned() else {
            return Ok(Outcome::FromStranger.silently());
        };
        let view = self.view();
        if roles::needs_code(speaker.role) && !view.is_on_visit(&turn.number) {
            let visit = view.visit(turn);
            return Ok(self.ask_code(turn, visit));
        }
        match view.sheet_told(turn, &speaker, text) {
            SheetTold::Nothing(why) => {
                let said = view.reply(turn, why);
                Ok(Outcome::Answered.saying([said]))
            }
            SheetTold::Named(text) => Err(text),
            SheetTold::Asks {
                person,
                facts,
                missing,
                rest,
            } => {
                let of_row = Turn {
                    target: person,
                    ..turn.clone()
                };
                let done = self.ask_slot(&of_row, facts, missing);
                if let Some(open) = &mut self.talk(&turn.number).open {
                    open.rest = Some(rest).filter(|rest| !rest.is_empty());
                }
                Ok(done)
            }
            SheetTold::Rows(clear, rest) => Ok(self.ask_many(turn, clear, rest)),
        }
    }

    /// Makes a sheet. Rows that are as on a sheet before keep its number, so that printing again
    /// changes nothing.
    pub(crate) fn print(&mut self, order: &SheetOrder) {
        let view = self.view();
        let group = view.world.directory.group_named(&order.group);
        self.told.sheet = Some(match group.map(|group| group.id) {
            Some(group) => self.printed(order, group),
            None => Err(format!("there is no group {}", order.group)),
        });
    }

    fn printed(&mut self, order: &SheetOrder, group: GroupId) -> Result<Sheet, String> {
        let gone = || "the group is gone".to_owned();
        let view = self.view();
        let known = view.world.directory.group(group).ok_or_else(gone)?;
        let number = view
            .rows_to_keep(order.kind, known)
            .map(|rows| self.number_of(group, rows));
        let view = self.view();
        let known = view.world.directory.group(group).ok_or_else(gone)?;
        Ok(view.sheet(order, known, number))
    }

    /// The number under which these rows are kept.
    fn number_of(&mut self, group: GroupId, rows: Vec<BlockId>) -> u32 {
        let sheets = &self.world.sheets;
        let same = |sheet: &&Printed| sheet.group == group && sheet.rows == rows;
        if let Some(known) = sheets.values().rev().find(same) {
            return known.number;
        }
        let last = sheets.last_key_value().map_or(0, |(number, _)| *number);
        let number = last.saturating_add(1);
        let sheet = Printed {
            number,
            group,
            at: self.now,
            rows,
        };
        self.change.sheets.push(sheet.clone());
        self.world.sheets.insert(number, sheet);
        number
    }
}
