//! Sheets: the figures that answers by text show, as tables to be printed.
//!
//! Each sheet is a file here. Deliberately absent: how a table is written, which is the room
//! `sheet`, and what is kept of one that was printed, which is the deeds'.

mod cards;
mod census;
mod handover;
mod holds;
mod meeting;
mod pickup;
mod season;
mod shares;
mod visits;

use budwood_scheduler::{BlockId, Group};

use crate::{
    args,
    engine::view::View,
    sheet::{Column, ColumnKind, Layout, Sheet},
    wording::{Args, Key, Paper, Tongue, Value},
    words::printed::SheetKind,
};

/// A sheet that somebody wants.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetOrder {
    /// Which.
    pub kind: SheetKind,
    /// Of which group.
    pub group: String,
    /// In which language; without it the adviser's.
    pub language: Option<String>,
}

/// What a sheet is made with.
struct Maker<'a> {
    view: View<'a>,
    group: &'a Group,
    tongue: Tongue<'a>,
    language: &'a str,
}

impl<'a> View<'a> {
    /// The blocks of the rows of a sheet, if they are to be kept.
    pub(crate) fn rows_to_keep(self, kind: SheetKind, group: &'a Group) -> Option<Vec<BlockId>> {
        (kind == SheetKind::Meeting).then(|| self.meeting_blocks(group))
    }

    /// A sheet of a group, under the number by which its rows are kept.
    pub(crate) fn sheet(
        self,
        order: &'a SheetOrder,
        group: &'a Group,
        number: Option<u32>,
    ) -> Sheet {
        let adviser = group.adviser.and_then(|adviser| self.person(adviser));
        let texts = &self.setup.texts;
        let wanted = [
            order.language.as_deref(),
            adviser.map(|adviser| adviser.language.as_str()),
        ];
        let mut wanted = wanted.into_iter().flatten();
        let language = wanted.find_map(|code| texts.known(code)).unwrap_or("en");
        let maker = Maker {
            view: self,
            group,
            tongue: texts.tongue(&[language]),
            language,
        };
        let sheet = match order.kind {
            SheetKind::Meeting => maker.meeting(number),
            SheetKind::Shares => maker.shares(),
            SheetKind::Pickup => maker.pickup(),
            SheetKind::Visits => maker.visits(),
            SheetKind::Holds => maker.holds(),
            SheetKind::Census => maker.census(),
            SheetKind::Cards => maker.cards(),
            SheetKind::Season => maker.season(),
            SheetKind::Handover => maker.handover(),
        };
        maker.stamped(sheet, number)
    }
}

impl Maker<'_> {
    /// A text of the sheet.
    fn say(&self, paper: Paper, args: Args) -> String {
        self.tongue.paper(paper, args)
    }

    /// A sheet without rows yet.
    fn begin(&self, kind: SheetKind, title: Paper, columns: Vec<Column>) -> Sheet {
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

    fn column(&self, title: Paper, kind: ColumnKind) -> Column {
        let key = title.name();
        let key = key.strip_prefix("column-").unwrap_or(key);
        Column {
            key: key.to_owned(),
            title: self.say(title, args! {}),
            kind,
        }
    }

    /// The number and the day above everything else: what a sheet shows was so on that day.
    fn stamped(&self, mut sheet: Sheet, number: Option<u32>) -> Sheet {
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
