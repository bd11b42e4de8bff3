//! Pocket cards: for each farmer, in their own language, the number to text with a code that a phone
//! reads, ten words, their blocks, how to stop, and that nobody asks for money.

use budwood_scheduler::Person;

use super::maker::Maker;
use crate::{
    args,
    sheet::{Cell, ColumnKind, Layout, Sheet},
    wording::Paper,
    words::printed::SheetKind,
};

impl Maker<'_> {
    pub(super) fn cards(&self) -> Sheet {
        let columns = vec![
            self.column(Paper::ColumnFarmer, ColumnKind::Words),
            self.column(Paper::ColumnLine, ColumnKind::Code),
            self.column(Paper::ColumnAdviser, ColumnKind::Words),
            self.column(Paper::ColumnBlock, ColumnKind::Words),
            self.column(Paper::ColumnWords, ColumnKind::Words),
            self.column(Paper::ColumnRules, ColumnKind::Words),
        ];
        let mut sheet = self.begin(SheetKind::Cards, Paper::SheetCards, columns);
        sheet.layout = Layout::Cards;
        let table = self.view.table(self.group);
        let mut people: Vec<&Person> = table.farmers.iter().map(|farmer| farmer.person).collect();
        people.sort_by_key(|person| (person.name.to_lowercase(), person.id));
        sheet.rows = people.into_iter().map(|person| self.card(person)).collect();
        sheet
    }

    fn card(&self, person: &Person) -> Vec<Cell> {
        let tongue = self.view.setup.texts.tongue(&[&person.language]);
        let line = self.view.setup.own_numbers.first();
        let blocks = self.view.world.directory.blocks_of(person.id);
        let blocks: Vec<&str> = blocks.map(|block| block.name.as_str()).collect();
        vec![
            person.name.as_str().into(),
            line.map(String::as_str).into(),
            self.view.adviser_name(person).into(),
            blocks.join(", ").into(),
            tongue.paper(Paper::CardWords, args! {}).into(),
            tongue.paper(Paper::CardRules, args! {}).into(),
        ]
    }
}
