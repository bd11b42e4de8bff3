//! A sheet as PDF: A4, the columns on every page, black on white, its letters in the file.
//!
//! Columns get the room that they need; where all need more than there is, columns of words are
//! wrapped, and only then letters grow smaller. Deliberately absent: hyphens.

mod cards;
mod letters;
mod room;

use krilla::{
    Document,
    geom::{PathBuilder, Point},
    metadata::Metadata,
    page::PageSettings,
    paint::Stroke,
    surface::Surface,
};

use self::{
    letters::{Letters, Weight},
    room::Layout,
};
use super::{Layout as Way, Sheet};

/// A4, in points.
const SHORT: f32 = 595.28;
const LONG: f32 = 841.89;
const MARGIN: f32 = 30.0;
/// Between a line and what stands beside it.
const PAD: f32 = 3.0;
const TITLE_SIZE: f32 = 14.0;
const TEXT_SIZE: f32 = 10.0;
/// Below it nobody reads by the light of a meeting hall (an assumption).
const SIZE_MIN: f32 = 6.5;
const SIZE: f32 = 9.0;
/// From line to line, in letter heights.
const LEADING: f32 = 1.3;
/// Room for a pen.
const ROW_MIN: f32 = 20.0;
/// Rows of a sheet on which nobody writes.
const ROW_MIN_PLAIN: f32 = 14.0;

/// Why there is no PDF.
#[derive(Debug, thiserror::Error)]
pub enum PaperError {
    /// The letters that ship cannot be used.
    #[error("the font of this program cannot be read")]
    Font,
    /// A row that no page holds.
    #[error("a row is higher than a page")]
    RowHigh,
    /// There are too many columns.
    #[error("the columns of this sheet do not fit on a page")]
    Wide,
    /// The file could not be made.
    #[error("the PDF cannot be made: {0}")]
    File(String),
}

/// A page that is being filled.
struct Pen<'s, 'p> {
    surface: &'s mut Surface<'p>,
    letters: &'s Letters,
    y: f32,
}

impl Sheet {
    /// The PDF.
    ///
    /// # Errors
    ///
    /// When it does not fit on pages.
    pub fn pdf(&self) -> Result<Vec<u8>, PaperError> {
        let letters = Letters::built_in()?;
        if self.layout == Way::Cards {
            return self.pdf_of_cards(&letters);
        }
        let layout = Layout::of(self, &letters)?;
        let mut document = Document::new();
        let about = Metadata::new()
            .title(self.title.clone())
            .language(self.language.clone());
        document.set_metadata(about);
        let pages = layout.pages.len();
        for (at, rows) in layout.pages.iter().enumerate() {
            let (width, height) = layout.paper;
            let settings = PageSettings::from_wh(width, height).ok_or(PaperError::Wide)?;
            let mut page = document.start_page_with(settings);
            let mut surface = page.surface();
            let mut pen = Pen {
                surface: &mut surface,
                letters: &letters,
                y: MARGIN,
            };
            if at == 0 {
                pen.line_of(&self.title, Weight::Bold, TITLE_SIZE);
                for line in &layout.head {
                    pen.line_of(line, Weight::Plain, TEXT_SIZE);
                }
                pen.y += PAD;
            }
            pen.row(&layout.titles, &layout, Weight::Bold, self);
            for row in layout.rows.get(rows.clone()).unwrap_or_default() {
                pen.row(row, &layout, Weight::Plain, self);
            }
            if at + 1 == pages {
                pen.y += PAD;
                for line in &layout.notes {
                    pen.line_of(line, Weight::Plain, TEXT_SIZE);
                }
            }
            let foot = format!("{} / {pages}", at + 1);
            pen.y = height - MARGIN;
            pen.line_of(
                &format!("{}  {foot}", self.title),
                Weight::Plain,
                SIZE_MIN + 1.0,
            );
            surface.finish();
            page.finish();
        }
        document
            .finish()
            .map_err(|error| PaperError::File(format!("{error:?}")))
    }
}

impl Pen<'_, '_> {
    /// A line of its own.
    fn line_of(&mut self, text: &str, weight: Weight, size: f32) {
        self.y += size;
        self.text(MARGIN, self.y, text, weight, size);
        self.y += size * (LEADING - 1.0);
    }

    fn text(&mut self, x: f32, base: f32, text: &str, weight: Weight, size: f32) {
        let mut x = x;
        // One script at a time: marks are set by the rules of their own.
        for run in letters::runs(text) {
            let font = self.letters.font(weight);
            let direction = krilla::text::TextDirection::LeftToRight;
            self.surface
                .draw_text(Point::from_xy(x, base), font, size, run, false, direction);
            x += self.letters.width(run, weight, size);
        }
    }

    fn row(&mut self, row: &room::Row, layout: &Layout, weight: Weight, sheet: &Sheet) {
        let size = layout.size;
        let mut x = MARGIN;
        for ((lines, width), column) in row.cells.iter().zip(&layout.widths).zip(&sheet.columns) {
            self.frame(x, *width, row.height);
            let block = line_height(size) * room::count(lines.len());
            let mut base = self.y + (row.height - block) / 2.0 + size;
            for line in lines {
                let left = if column.kind.is_right() {
                    x + width - PAD - self.letters.width(line, weight, size)
                } else {
                    x + PAD
                };
                self.text(left, base, line, weight, size);
                base += line_height(size);
            }
            x += width;
        }
        self.y += row.height;
    }

    fn frame(&mut self, x: f32, width: f32, height: f32) {
        let mut path = PathBuilder::new();
        path.move_to(x, self.y);
        path.line_to(x + width, self.y);
        path.line_to(x + width, self.y + height);
        path.line_to(x, self.y + height);
        path.close();
        if let Some(path) = path.finish() {
            self.surface.set_fill(None);
            self.surface.set_stroke(Some(Stroke {
                width: 0.5,
                ..Stroke::default()
            }));
            self.surface.draw_path(&path);
            self.surface.set_stroke(None);
            self.surface.set_fill(Some(krilla::paint::Fill::default()));
        }
    }
}

/// From one line to the next.
fn line_height(size: f32) -> f32 {
    size * LEADING
}
