//! Whom to visit, in the order of the answer VISIT, with what to bring.

use budwood_scheduler::group::visit::Reason;

use super::maker::Maker;
use crate::{
    args,
    sheet::{Cell, ColumnKind, Sheet},
    wording::{Paper, visit},
    words::printed::SheetKind,
};

/// So much of a number is printed: enough to find it in the phone, too little to call strangers.
const PHONE_DIGITS: usize = 4;

impl Maker<'_> {
    pub(super) fn visits(&self) -> Sheet {
        let columns = vec![
            self.column(Paper::ColumnRow, ColumnKind::Number),
            self.column(Paper::ColumnFarmer, ColumnKind::Words),
            self.column(Paper::ColumnPlace, ColumnKind::Words),
            self.column(Paper::ColumnPhone, ColumnKind::Words),
            self.column(Paper::ColumnReason, ColumnKind::Words),
            self.column(Paper::ColumnBring, ColumnKind::Words),
            self.column(Paper::ColumnNotes, ColumnKind::Blank(30)),
        ];
        let mut sheet = self.begin(SheetKind::Visits, Paper::SheetVisits, columns);
        let directory = &self.view.world.directory;
        for (found, row) in self.view.visits_in(self.group).into_iter().zip(1_u32..) {
            let Some(person) = self.view.person(found.person) else {
                continue;
            };
            let number = directory.numbers_that_reach(person.id).next();
            let end = number.and_then(|number| {
                let start = number.len().checked_sub(PHONE_DIGITS)?;
                number.get(start..)
            });
            let points = directory
                .blocks_of(person.id)
                .filter_map(|block| block.point);
            let mut points =
                points.map(|point| format!("{:.5}, {:.5}", point.latitude, point.longitude));
            // Without the name, which has a column of its own.
            let why = self.tongue.full(&visit("", &found.reason));
            let bring = self.say(to_bring(&found.reason), args! {});
            sheet.rows.push(vec![
                row.into(),
                person.name.as_str().into(),
                points.next().into(),
                end.into(),
                why.trim().into(),
                bring.into(),
                Cell::Blank,
            ]);
        }
        sheet.notes.push(self.say(Paper::SheetRestricted, args! {}));
        sheet
    }
}

/// What is needed on the land for this reason (common practice).
const fn to_bring(reason: &Reason) -> Paper {
    match reason {
        Reason::Cluster { .. } | Reason::Sick { .. } => Paper::BringKnife,
        Reason::Lost { .. } => Paper::BringCount,
        Reason::Silent { .. } => Paper::BringEar,
        Reason::Late { .. } | Reason::Ending { .. } => Paper::BringTape,
    }
}
