//! Fertiliser that is bought together: what each takes home and pays. Grams and cents add up to
//! what is bought.

use budwood_scheduler::{figures::Money, jobs::feed::BAG_KG};

use super::maker::Maker;
use crate::{
    args,
    sheet::{Cell, ColumnKind, Sheet},
    wording::Paper,
    words::printed::SheetKind,
};

const GRAMS_A_KILOGRAM: f64 = 1_000.0;

impl Maker<'_> {
    pub(super) fn shares(&self) -> Sheet {
        let table = self.view.table(self.group);
        let feed = table.feed_due().value;
        let money = table.money(&self.group.book).value;
        let columns = vec![
            self.column(Paper::ColumnRow, ColumnKind::Number),
            self.column(Paper::ColumnFarmer, ColumnKind::Words),
            self.column(Paper::ColumnTrees, ColumnKind::Number),
            self.column(Paper::ColumnGrams, ColumnKind::Number),
            self.column(Paper::ColumnKilograms, ColumnKind::Number),
            self.column(Paper::ColumnBags, ColumnKind::Number),
            self.column(Paper::ColumnMoney, ColumnKind::Number),
            self.column(Paper::ColumnPaid, ColumnKind::Number),
            self.column(Paper::ColumnReceived, ColumnKind::Blank(8)),
            self.column(Paper::ColumnSignature, ColumnKind::Blank(16)),
        ];
        let mut sheet = self.begin(SheetKind::Shares, Paper::SheetShares, columns);
        for (share, row) in money.shares.iter().zip(1_u32..) {
            let farmer = table.farmers.iter();
            let Some(farmer) = farmer.into_iter().find(|one| one.person.id == share.person) else {
                continue;
            };
            let (kilograms, trees) = farmer.feed_due();
            let grams = kilograms * GRAMS_A_KILOGRAM / f64::from(trees.max(1));
            let alone = (kilograms / BAG_KG).ceil();
            sheet.rows.push(vec![
                row.into(),
                farmer.person.name.as_str().into(),
                trees.into(),
                Cell::tenths(grams),
                Cell::tenths(kilograms),
                Cell::whole(alone),
                share.cents.map(Cell::cents).into(),
                Some(share.paid)
                    .filter(|paid| *paid > 0)
                    .map(Cell::cents)
                    .into(),
                Cell::Blank,
                Cell::Blank,
            ]);
        }
        let alone = feed.bags.map_or(0, |bags| bags.alone);
        sheet.head.extend(self.sums(&money, alone, &sheet));
        sheet
    }

    fn sums(&self, money: &Money, alone: u32, sheet: &Sheet) -> Vec<String> {
        let shown = |cell: Cell| sheet.shown(&cell);
        let left = money.left_grams as f64 / GRAMS_A_KILOGRAM;
        let bags = args! {
            "bags" => money.bags,
            "weight" => BAG_KG,
            "left" => shown(Cell::tenths(left)),
            "alone" => alone,
        };
        let mut sums = vec![self.say(Paper::SheetBags, bags)];
        if let Some(total) = money.total {
            let price = args! {
                "money" => shown(Cell::cents(total)),
                "held" => shown(Cell::cents(money.held)),
            };
            sums.push(self.say(Paper::SheetPrice, price));
        }
        sums
    }
}
