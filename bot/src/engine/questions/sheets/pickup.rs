//! Plants to be fetched: who comes when, for how many of which clone.

use chrono::{NaiveTime, TimeDelta};

use super::maker::Maker;
use crate::{
    args,
    sheet::{Cell, ColumnKind, Sheet},
    wording::Paper,
    words::printed::SheetKind,
};

/// Plants are handed out in the cool of the morning, from this hour on (common practice).
const FIRST_HOUR: u32 = 7;
/// So long a slot is.
const SLOT_MINUTES: i64 = 30;
/// So many farmers are served in a slot by two people (an assumption).
const FARMERS_A_SLOT: usize = 4;

impl Maker<'_> {
    pub(super) fn pickup(&self) -> Sheet {
        let table = self.view.table(self.group);
        let wanted = table.wanted(None).value;
        let columns = vec![
            self.column(Paper::ColumnTime, ColumnKind::Words),
            self.column(Paper::ColumnFarmer, ColumnKind::Words),
            self.column(Paper::ColumnClone, ColumnKind::Words),
            self.column(Paper::ColumnOrdered, ColumnKind::Number),
            self.column(Paper::ColumnGot, ColumnKind::Blank(8)),
            self.column(Paper::ColumnSpare, ColumnKind::Blank(8)),
            self.column(Paper::ColumnSignature, ColumnKind::Blank(16)),
        ];
        let mut sheet = self.begin(SheetKind::Pickup, Paper::SheetPickup, columns);
        let (firm, wished): (Vec<_>, Vec<_>) = wanted.iter().partition(|one| one.is_firm);
        for (at, one) in firm.iter().enumerate() {
            let name = self
                .view
                .person(one.person)
                .map(|person| person.name.as_str());
            sheet.rows.push(vec![
                slot(at / FARMERS_A_SLOT).into(),
                name.unwrap_or_default().into(),
                one.clone_name.as_deref().unwrap_or_default().into(),
                one.plants.saturating_sub(one.received).into(),
                Cell::Blank,
                Cell::Blank,
                Cell::Blank,
            ]);
        }
        let sum = |of: &[&budwood_scheduler::figures::Wanted]| {
            of.iter().map(|one| one.plants).fold(0, u32::saturating_add)
        };
        let plants = args! { "plants" => sum(&firm), "wished" => sum(&wished) };
        sheet.head.push(self.say(Paper::SheetPlants, plants));
        sheet.notes.push(self.say(Paper::SheetSlots, args! {}));
        sheet
    }
}

/// "07:30".
fn slot(slots: usize) -> String {
    let minutes = i64::try_from(slots)
        .unwrap_or(0)
        .saturating_mul(SLOT_MINUTES);
    let first = NaiveTime::from_hms_opt(FIRST_HOUR, 0, 0).unwrap_or_default();
    let (at, _) = first.overflowing_add_signed(TimeDelta::minutes(minutes % (24 * 60)));
    at.format("%H:%M").to_string()
}
