//! A sheet as a page that prints itself: no script, black on white, the head on every sheet of
//! paper.

use askama::Template;

use super::{Cell, Column, ColumnKind, Layout, Sheet, square::Square};

/// From this room on a blank column is a wide one.
const WIDE: u8 = 12;

#[derive(Template)]
#[template(path = "sheet.html")]
struct Page<'a> {
    sheet: &'a Sheet,
}

impl Sheet {
    /// The whole page.
    ///
    /// # Errors
    ///
    /// When there is no memory for it.
    pub fn page(&self) -> Result<String, askama::Error> {
        Page { sheet: self }.render()
    }
}

impl Sheet {
    /// Whether its rows are cards.
    const fn is_of_cards(&self) -> bool {
        matches!(self.layout, Layout::Cards)
    }

    /// The code beside a number, as a drawing.
    fn code(&self, column: &Column, cell: &Cell) -> String {
        let square = (column.kind == ColumnKind::Code).then(|| self.shown(cell));
        let square = square.filter(|number| !number.is_empty());
        let square = square.and_then(|number| Square::to_text(&number));
        square.map_or_else(String::new, |square| square.drawing())
    }
}

impl ColumnKind {
    /// The class of its cells.
    fn class(self) -> &'static str {
        match self {
            Self::Number => "right",
            Self::Blank(room) if room >= WIDE => "wide",
            Self::Blank(_) => "pen",
            Self::Words | Self::Day | Self::Code => "",
        }
    }
}
