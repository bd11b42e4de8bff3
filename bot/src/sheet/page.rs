//! A sheet as a page that prints itself: no script, black on white, the head on every sheet of
//! paper.

use askama::Template;

use super::{ColumnKind, Sheet};

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

impl ColumnKind {
    /// The class of its cells.
    fn class(self) -> &'static str {
        match self {
            Self::Number => "right",
            Self::Blank(room) if room >= WIDE => "wide",
            Self::Blank(_) => "pen",
            Self::Words | Self::Day => "",
        }
    }
}
