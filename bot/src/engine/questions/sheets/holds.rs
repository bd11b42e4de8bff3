//! People who are left in peace: since when, until when, why. For the office and the advisers only.

use budwood_scheduler::Reason;

use super::maker::Maker;
use crate::{
    args,
    sheet::{ColumnKind, Sheet},
    wording::Paper,
    words::printed::SheetKind,
};

impl Maker<'_> {
    pub(super) fn holds(&self) -> Sheet {
        let columns = vec![
            self.column(Paper::ColumnFarmer, ColumnKind::Words),
            self.column(Paper::ColumnSince, ColumnKind::Day),
            self.column(Paper::ColumnUntil, ColumnKind::Words),
            self.column(Paper::ColumnReason, ColumnKind::Words),
        ];
        let mut sheet = self.begin(SheetKind::Holds, Paper::SheetHolds, columns);
        let table = self.view.table(self.group);
        for farmer in table.farmers.iter().filter(|farmer| farmer.is_in_peace()) {
            let Some(hold) = &farmer.person.hold else {
                continue;
            };
            let until = hold.until.map_or_else(
                || self.say(Paper::HoldOpen, args! {}),
                |day| self.tongue.day_year(day),
            );
            let why = match &hold.reason {
                Reason::Grief => self.say(Paper::HoldGrief, args! {}),
                Reason::Told(words) => words.clone(),
            };
            sheet.rows.push(vec![
                farmer.person.name.as_str().into(),
                self.tongue.day_year(hold.since).into(),
                until.into(),
                why.into(),
            ]);
        }
        sheet.notes.push(self.say(Paper::SheetRestricted, args! {}));
        sheet
    }
}
