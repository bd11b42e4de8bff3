//! Rows of a printed sheet that are texted back: "SHEET 12: 3 dead 20, 5 weeded".
//!
//! The number of a row leads to the block that it stood for when it was printed, and from there to
//! whose that block is today. What is clear is confirmed together, as what one text tells of many.

use budwood_parser::{Reading, SheetText};
use budwood_scheduler::{
    Block, Person, PersonId,
    decide::{Decision, Draft, Missing},
};

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
    /// One row lacks something that is asked for; the rest is a text of its own.
    Asks {
        /// Whose the row is.
        person: PersonId,
        /// What it tells.
        facts: Vec<Draft>,
        /// What it lacks.
        missing: Missing,
        /// The other rows.
        rest: String,
    },
    /// Only a text that names people and blocks can tell what is meant.
    Named(String),
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
        let rows: Option<Vec<Row<'_>>> = text
            .rows
            .iter()
            .map(|(row, span)| {
                let block = self.block_of_row(sheet, *row)?;
                let told = turn.text.get(span.start..span.end)?;
                Some(Row {
                    row: *row,
                    block,
                    told,
                })
            })
            .collect();
        let parts = rows.as_ref().and_then(|rows| {
            let parts = rows.iter().map(|row| self.row_told(turn, row));
            parts.collect::<Option<Vec<Part>>>()
        });
        match (rows, parts) {
            (Some(rows), Some(parts)) if !parts.is_empty() => {
                self.rows_told((turn, speaker), text.number, &rows, parts)
            }
            _ => {
                let args = args! { "number" => number, "rows" => sheet.rows.len().to_string() };
                SheetTold::Nothing(Phrase::new(Key::SheetRows, args))
            }
        }
    }

    /// What is clear is confirmed; of what is not, the first row is asked about.
    fn rows_told(
        self,
        (turn, speaker): (&Turn, &Person),
        sheet: u32,
        rows: &[Row<'_>],
        parts: Vec<Part>,
    ) -> SheetTold {
        // Rows stay rows: a name before "dead" could be taken for a person's death.
        let others = |rows: &str| match rows {
            "" => String::new(),
            rows => format!("sheet {sheet}: {rows}"),
        };
        let asked = parts.first().and_then(|part| {
            let of_row = Turn {
                target: part.person,
                ..turn.clone()
            };
            let decision = self.decide(&of_row, &part.reading, speaker.role);
            let Decision::Ask { facts, missing } = decision else {
                return None;
            };
            let rest = parts.iter().skip(1).map(|part| part.text.as_str());
            let rest = rest.collect::<Vec<_>>().join(". ");
            Some(SheetTold::Asks {
                person: part.person,
                facts,
                missing,
                rest: others(&rest),
            })
        });
        let (clear, rest) = self.asked_together(turn, speaker, parts);
        if !clear.is_empty() {
            return SheetTold::Rows(clear, others(&rest));
        }
        asked.unwrap_or_else(|| {
            let named = rows.iter().filter_map(|row| {
                let owner = self.person(row.block.owner)?;
                Some(format!("{}: {} {}", owner.name, row.block.name, row.told))
            });
            SheetTold::Named(named.collect::<Vec<_>>().join(". "))
        })
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

    /// What is told in a row, of its block and no other. A word alone ("dead") is told of the block.
    fn row_told(self, turn: &Turn, row: &Row<'_>) -> Option<Part> {
        let owner = self.person(row.block.owner)?;
        let read = |text: String| {
            let of_row = Turn {
                text,
                ..turn.clone()
            };
            self.read(&of_row, owner.role)
        };
        let mut reading = read(row.told.to_owned());
        if reading.reports.is_empty() {
            reading = read(format!("{} {}", row.told, row.block.name));
        }
        for report in &mut reading.reports {
            report.block = Some(row.block.name.clone());
        }
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
            text: format!("{} {}", row.row, row.told),
            reading,
        })
    }
}

/// A row that was texted back.
struct Row<'r> {
    row: u32,
    block: &'r Block,
    told: &'r str,
}
