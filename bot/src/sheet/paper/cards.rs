//! Cards on A4, eight to a page, to be cut out.

use krilla::{Document, geom::PathBuilder, metadata::Metadata, page::PageSettings};

use super::{
    LONG, MARGIN, PAD, PaperError, Pen, SHORT,
    letters::{Letters, Weight},
    line_height,
    room::{count, wrapped},
};
use crate::sheet::{ColumnKind, Sheet, square::Square};

const SIDE_BY_SIDE: usize = 2;
const ABOVE_EACH_OTHER: usize = 4;
const NAME_SIZE: f32 = 12.0;
const SIZE: f32 = 8.0;
/// So wide the code is: readers of cheap phones need 2 cm and more (common practice).
const CODE: f32 = 68.0;
/// Between the edge of a card and what is on it.
const EDGE: f32 = 10.0;

impl Sheet {
    /// The PDF of a sheet whose rows are cards.
    pub(super) fn pdf_of_cards(&self, letters: &Letters) -> Result<Vec<u8>, PaperError> {
        let mut document = Document::new();
        let about = Metadata::new()
            .title(self.title.clone())
            .language(self.language.clone());
        document.set_metadata(about);
        let width = (SHORT - 2.0 * MARGIN) / count(SIDE_BY_SIDE);
        let height = (LONG - 2.0 * MARGIN) / count(ABOVE_EACH_OTHER);
        let rows: Vec<Vec<String>> = self.shown_rows().collect();
        let blank = [Vec::new()];
        let pages = rows.chunks(SIDE_BY_SIDE * ABOVE_EACH_OTHER);
        let pages: Vec<&[Vec<String>]> = pages.collect();
        let pages = if pages.is_empty() {
            vec![&blank[..]]
        } else {
            pages
        };
        for cards in pages {
            let settings = PageSettings::from_wh(SHORT, LONG).ok_or(PaperError::Wide)?;
            let mut page = document.start_page_with(settings);
            let mut surface = page.surface();
            let mut pen = Pen {
                surface: &mut surface,
                letters,
                y: MARGIN,
            };
            for (at, card) in cards.iter().enumerate() {
                let x = MARGIN + width * count(at % SIDE_BY_SIDE);
                pen.y = MARGIN + height * count(at / SIDE_BY_SIDE);
                pen.frame(x, width, height);
                self.card(&mut pen, card, (x, width, height));
            }
            surface.finish();
            page.finish();
        }
        let finished = document.finish();
        finished.map_err(|error| PaperError::File(format!("{error:?}")))
    }

    fn card(&self, pen: &mut Pen<'_, '_>, cells: &[String], (x, width, height): (f32, f32, f32)) {
        let top = pen.y;
        let left = x + EDGE;
        let right = x + width - EDGE - CODE;
        let mut base = top + EDGE + NAME_SIZE;
        for (at, (cell, column)) in cells.iter().zip(&self.columns).enumerate() {
            if at == 0 {
                pen.text(left, base, cell, Weight::Bold, NAME_SIZE);
                base += line_height(NAME_SIZE);
                continue;
            }
            if column.kind == ColumnKind::Code {
                pen.square(cell, right, top + EDGE);
            }
            let line = format!("{}: {cell}", column.title);
            // Beside the code there is less room than below it.
            let is_beside = base < top + EDGE + CODE + SIZE;
            let room = if is_beside {
                right - left - PAD
            } else {
                width - 2.0 * EDGE
            };
            for line in wrapped(&line, pen.letters, Weight::Plain, SIZE, room) {
                if base < top + height - PAD {
                    pen.text(left, base, &line, Weight::Plain, SIZE);
                }
                base += line_height(SIZE);
            }
        }
    }
}

impl Pen<'_, '_> {
    /// A code of this number.
    fn square(&mut self, number: &str, x: f32, y: f32) {
        let Some(square) = Square::to_text(number).filter(|_| !number.is_empty()) else {
            return;
        };
        let field = CODE / count(square.width);
        let mut path = PathBuilder::new();
        for (column, row) in square.fields() {
            let (left, top) = (x + field * count(column), y + field * count(row));
            path.move_to(left, top);
            path.line_to(left + field, top);
            path.line_to(left + field, top + field);
            path.line_to(left, top + field);
            path.close();
        }
        if let Some(path) = path.finish() {
            self.surface.draw_path(&path);
        }
    }
}
