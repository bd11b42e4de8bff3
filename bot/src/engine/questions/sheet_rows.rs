//! Rows of a printed sheet that are texted back: "SHEET 12: 3 dead 20, 5 weeded".
//!
//! The number of a row leads to the block that it stood for when it was printed, and from there to
//! whose that block is today. What is clear is confirmed together, as what one text tells of many.

use budwood_parser::{Reading, SheetText};
use budwood_scheduler::{Block, Person};

use super::many::Part;
use crate::{
    args,
    engine::{
        roles::{self, Reach, Verb},
        turn::Turn,
        view::View,
    },
    wording::{Key, Phrase},
    words::{message::Told, printed::Printed},
};

/// What becomes of a text about a sheet.
pub(crate) enum SheetTold {
    /// It is asked whether this is right; the rest is a text of its own.
    Rows(Vec<Told>, String),
    /// Nothing of it can be used, and this is why.
    Nothing(Phrase),
}

impl<'a> View<'a> {
    /// The sheet that a text is about, if whoever sends it may text rows back.
    pub(crate) fn sheet_meant(self, turn: &Turn) -> Option<SheetText> {
        let speaker = self.person(turn.speaker)?;
        let may = roles::may(speaker.role, Verb::TextSheet);
        let text = self.setup.reader.sheet(&turn.text).filter(|_| may)?;
        // A text may begin like this by chance, as long as nothing was ever printed.
        (!self.world.sheets.is_empty()).then_some(text)
    }

    /// What its rows tell.
    pub(crate) fn sheet_told(self, turn: &Turn, speaker: &Person, text: &SheetText) -> SheetTold {
        let number = text.number.to_string();
        let known = self.world.sheets.get(&text.number);
        let Some(sheet) = known.filter(|sheet| self.may_text(speaker, sheet)) else {
            let none = Phrase::new(Key::SheetNone, args! { "number" => number });
            return SheetTold::Nothing(none);
        };
        let parts: Option<Vec<Part>> = text
            .rows
            .iter()
            .map(|(row, span)| {
                let block = self.block_of_row(sheet, *row)?;
                self.row_told(turn, block, turn.text.get(span.start..span.end)?)
            })
            .collect();
        match parts {
            Some(parts) if !parts.is_empty() => {
                let (clear, rest) = self.asked_together(turn, speaker, parts);
                SheetTold::Rows(clear, rest)
            }
            Some(_) | None => {
                let args = args! { "number" => number, "rows" => sheet.rows.len().to_string() };
                SheetTold::Nothing(Phrase::new(Key::SheetRows, args))
            }
        }
    }

    fn may_text(self, speaker: &Person, sheet: &Printed) -> bool {
        match roles::reach(speaker.role, Verb::TextSheet) {
            Reach::Nobody => false,
            Reach::OwnGroup => speaker.group == Some(sheet.group),
            Reach::Advised => {
                let group = self.world.directory.group(sheet.group);
                group.is_some_and(|group| group.adviser == Some(speaker.id))
            }
        }
    }

    /// Rows are counted from 1.
    fn block_of_row(self, sheet: &Printed, row: u32) -> Option<&'a Block> {
        let at = usize::try_from(row).ok()?.checked_sub(1)?;
        self.world.directory.block(*sheet.rows.get(at)?)
    }

    /// What is told in a row, of its block and no other.
    fn row_told(self, turn: &Turn, block: &Block, told: &str) -> Option<Part> {
        let owner = self.person(block.owner)?;
        let of_row = Turn {
            text: told.to_owned(),
            ..turn.clone()
        };
        let mut reading = self.read(&of_row, owner.role);
        for report in &mut reading.reports {
            report.block = Some(block.name.clone());
        }
        // What is left to be asked is asked in words that name both.
        let text = format!("{}: {} {told}", owner.name, block.name);
        let is_plain = reading.acts.is_empty()
            && reading.stances.is_empty()
            && reading.problems.is_empty()
            && !reading.reports.is_empty();
        let reading = if is_plain {
            reading
        } else {
            Reading::default()
        };
        Some(Part {
            person: owner.id,
            text,
            reading,
        })
    }
}
