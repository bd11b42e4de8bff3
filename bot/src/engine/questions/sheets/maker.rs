//! What every sheet is made with: its words, its head, its columns.

use budwood_scheduler::Group;

use crate::{
    args,
    engine::view::View,
    sheet::{Column, ColumnKind, Layout, Sheet},
    wording::{Args, Key, Paper, Tongue, Value},
    words::printed::SheetKind,
};

/// What a sheet is made with.
pub(super) struct Maker<'a> {
    pub(super) view: View<'a>,
    pub(super) group: &'a Group,
    pub(super) tongue: Tongue<'a>,
    pub(super) language: &'a str,
}

impl Maker<'_> {
    /// A text of the sheet.
    pub(super) fn say(&self, paper: Paper, args: Args) -> String {
        self.tongue.paper(paper, args)
    }

    /// A sheet without rows yet.
    pub(super) fn begin(&self, kind: SheetKind, title: Paper, columns: Vec<Column>) -> Sheet {
        let group = args! { "group" => self.group.name.as_str() };
        let decimal = self.tongue.say(Key::Decimal, args! {});
        Sheet {
            key: kind.name().to_owned(),
            number: None,
            title: self.say(title, group),
            head: Vec::new(),
            layout: Layout::Rows,
            columns,
            rows: Vec::new(),
            notes: Vec::new(),
            language: self.language.to_owned(),
            decimal: decimal.chars().next().unwrap_or('.'),
        }
    }

    pub(super) fn column(&self, title: Paper, kind: ColumnKind) -> Column {
        let key = title.name();
        let key = key.strip_prefix("column-").unwrap_or(key);
        Column {
            key: key.to_owned(),
            title: self.say(title, args! {}),
            kind,
        }
    }

    /// The number and the day above everything else: what a sheet shows was so on that day.
    pub(super) fn stamped(&self, mut sheet: Sheet, number: Option<u32>) -> Sheet {
        let day = Value::DayYear(self.view.today_in(self.group));
        let printed = self.say(Paper::SheetPrinted, args! { "day" => day });
        let number_told = number.map(|number| {
            let number = args! { "number" => number.to_string() };
            self.say(Paper::SheetNumber, number)
        });
        let first: Vec<String> = number_told.into_iter().chain([printed]).collect();
        sheet.head.insert(0, first.join(", "));
        sheet.number = number;
        sheet
    }
}
