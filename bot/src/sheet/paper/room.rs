//! Which column is how wide, where cells are wrapped, and which rows are on which page.

use std::ops::Range;

use unicode_normalization::char::is_combining_mark;

use super::{
    LONG, MARGIN, PAD, PaperError, ROW_MIN, ROW_MIN_PLAIN, SHORT, SIZE, SIZE_MIN, TEXT_SIZE,
    TITLE_SIZE,
    letters::{Letters, Weight},
    line_height,
};
use crate::sheet::{ColumnKind, Sheet};

/// So much wider columns of words are than the others before they are wrapped, in points.
const STEP: f32 = 0.5;

/// Cells in lines.
pub(super) struct Row {
    pub(super) cells: Vec<Vec<String>>,
    pub(super) height: f32,
}

/// Where everything stands.
pub(super) struct Layout {
    /// Width and height of the paper.
    pub(super) paper: (f32, f32),
    pub(super) size: f32,
    pub(super) widths: Vec<f32>,
    pub(super) head: Vec<String>,
    pub(super) titles: Row,
    pub(super) rows: Vec<Row>,
    pub(super) notes: Vec<String>,
    /// The rows of each page.
    pub(super) pages: Vec<Range<usize>>,
}

impl Layout {
    pub(super) fn of(sheet: &Sheet, letters: &Letters) -> Result<Self, PaperError> {
        let mut size = SIZE;
        let (paper, widths) = loop {
            if let Some(found) = columns(sheet, letters, size) {
                break found;
            }
            size -= 0.5;
            if size < SIZE_MIN {
                return Err(PaperError::Wide);
            }
        };
        let room = paper.0 - 2.0 * MARGIN;
        let lines = |texts: &[String]| -> Vec<String> {
            let texts = texts.iter();
            texts
                .flat_map(|text| wrapped(text, letters, Weight::Plain, TEXT_SIZE, room))
                .collect()
        };
        let has_room_to_write = sheet.columns.iter().any(|column| is_blank(column.kind));
        let least = if has_room_to_write {
            ROW_MIN
        } else {
            ROW_MIN_PLAIN
        };
        let row = |cells: Vec<String>, weight, least: f32| {
            let cells = cells.iter().zip(&widths);
            let cells: Vec<Vec<String>> = cells
                .map(|(cell, width)| wrapped(cell, letters, weight, size, width - 2.0 * PAD))
                .collect();
            let most = cells.iter().map(Vec::len).max().unwrap_or(1);
            let height = (line_height(size) * count(most) + PAD).max(least);
            Row { cells, height }
        };
        let titles = sheet.columns.iter().map(|column| column.title.clone());
        let titles = row(titles.collect(), Weight::Bold, 0.0);
        let rows = sheet
            .shown_rows()
            .map(|cells| row(cells, Weight::Plain, least));
        let mut layout = Self {
            paper,
            size,
            head: lines(&sheet.head),
            notes: lines(&sheet.notes),
            titles,
            rows: rows.collect(),
            pages: Vec::new(),
            widths,
        };
        layout.fill_pages()?;
        Ok(layout)
    }

    fn fill_pages(&mut self) -> Result<(), PaperError> {
        let text = line_height(TEXT_SIZE);
        let foot = line_height(SIZE) + PAD;
        let whole = self.paper.1 - 2.0 * MARGIN - foot - self.titles.height;
        let head = line_height(TITLE_SIZE) + text * count(self.head.len()) + PAD;
        let notes = text * count(self.notes.len()) + PAD;
        let mut left = whole - head;
        let mut start = 0;
        for (at, row) in self.rows.iter().enumerate() {
            let last = if at + 1 == self.rows.len() {
                notes
            } else {
                0.0
            };
            if row.height + last > left && at > start {
                self.pages.push(start..at);
                start = at;
                left = whole;
            }
            if row.height > left {
                return Err(PaperError::RowHigh);
            }
            left -= row.height;
        }
        self.pages.push(start..self.rows.len());
        Ok(())
    }
}
pub(super) const fn count(lines: usize) -> f32 {
    lines as f32
}

const fn is_blank(kind: ColumnKind) -> bool {
    matches!(kind, ColumnKind::Blank(_))
}

/// The paper and the widths of the columns at this size of letters: upright when everything has
/// room on it, else across; none when not even that is enough.
fn columns(sheet: &Sheet, letters: &Letters, size: f32) -> Option<((f32, f32), Vec<f32>)> {
    let rows: Vec<Vec<String>> = sheet.shown_rows().collect();
    let needs = sheet.columns.iter().enumerate().map(|(at, column)| {
        let cells = rows.iter().filter_map(|row| row.get(at));
        let widest = |texts: &mut dyn Iterator<Item = &str>, weight| {
            texts
                .map(|text| letters.width(text, weight, size))
                .fold(0.0, f32::max)
        };
        let title = widest(&mut pieces(&column.title), Weight::Bold);
        let whole = widest(&mut cells.clone().map(String::as_str), Weight::Plain);
        let piece = widest(&mut cells.flat_map(|cell| pieces(cell)), Weight::Plain);
        let pad = 2.0 * PAD + 1.0;
        let (least, full) = match column.kind {
            ColumnKind::Blank(room) => {
                let room = f32::from(room) * letters.width("0", Weight::Plain, size);
                (title.max(piece), title.max(whole).max(room))
            }
            ColumnKind::Number | ColumnKind::Day => (title.max(whole), title.max(whole)),
            ColumnKind::Words | ColumnKind::Code => (title.max(piece), title.max(whole)),
        };
        (least + pad, full + pad)
    });
    let needs: Vec<(f32, f32)> = needs.collect();
    let full: f32 = needs.iter().map(|(_, full)| full).sum();
    let upright = SHORT - 2.0 * MARGIN;
    if full <= upright {
        return Some(((SHORT, LONG), spread(sheet, &needs, upright)));
    }
    let across = LONG - 2.0 * MARGIN;
    let least: f32 = needs.iter().map(|(least, _)| least).sum();
    (least <= across).then(|| ((LONG, SHORT), spread(sheet, &needs, across)))
}

/// Gives each column what it needs. What is left goes to where people write; what is missing is
/// taken from the columns that have most to give.
fn spread(sheet: &Sheet, needs: &[(f32, f32)], room: f32) -> Vec<f32> {
    let mut widths: Vec<f32> = needs.iter().map(|(_, full)| *full).collect();
    let mut over = widths.iter().sum::<f32>() - room;
    while over > 0.0 {
        let spare = |at: usize| {
            let (least, _) = needs.get(at).copied().unwrap_or_default();
            widths.get(at).map_or(0.0, |width| width - least)
        };
        let most = (0..widths.len()).max_by(|one, other| spare(*one).total_cmp(&spare(*other)));
        let Some(width) = most.and_then(|at| widths.get_mut(at)) else {
            break;
        };
        *width -= STEP;
        over -= STEP;
    }
    let blanks = sheet.columns.iter().filter(|column| is_blank(column.kind));
    let blanks = blanks.count();
    if over < 0.0 && blanks > 0 {
        let more = -over / count(blanks);
        let columns = sheet.columns.iter().zip(&mut widths);
        for (_, width) in columns.filter(|(column, _)| is_blank(column.kind)) {
            *width += more;
        }
    }
    widths
}

/// What is never parted: words between blanks, and of long writing without blanks a few letters.
fn pieces(text: &str) -> impl Iterator<Item = &str> {
    text.split_whitespace().flat_map(|word| {
        let parts = if is_spaceless(word) {
            syllables(word)
        } else {
            vec![word]
        };
        parts.into_iter()
    })
}

/// Thai is written without blanks between words.
fn is_spaceless(word: &str) -> bool {
    word.chars()
        .any(|letter| ('\u{e00}'..='\u{e7f}').contains(&letter))
}

/// So many letters of Thai stay together.
const SYLLABLE: usize = 6;

/// Pieces of a Thai word that end neither before a mark or a vowel behind, nor after a vowel in
/// front.
fn syllables(word: &str) -> Vec<&str> {
    let mut parts = Vec::new();
    let mut start = 0;
    let mut letters = 0;
    let mut before = ' ';
    for (at, letter) in word.char_indices() {
        let leans_back = is_combining_mark(letter) || "ะาำๅๆฯ".contains(letter);
        let leans_on = "เแโใไ".contains(before);
        if letters >= SYLLABLE && !leans_back && !leans_on {
            parts.extend(word.get(start..at));
            start = at;
            letters = 0;
        }
        letters += usize::from(!is_combining_mark(letter));
        before = letter;
    }
    parts.extend(word.get(start..));
    parts
}

/// A text in lines that are no wider than the room.
pub(super) fn wrapped(
    text: &str,
    letters: &Letters,
    weight: Weight,
    size: f32,
    room: f32,
) -> Vec<String> {
    let is_wide = |line: &str| letters.width(line, weight, size) > room;
    if !is_wide(text) {
        return vec![text.to_owned()];
    }
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in text.split_whitespace() {
        for (at, piece) in pieces(word).enumerate() {
            let gap = if at == 0 && !line.is_empty() { " " } else { "" };
            let longer = format!("{line}{gap}{piece}");
            if is_wide(&longer) && !line.is_empty() {
                lines.push(std::mem::take(&mut line));
                line.push_str(piece);
            } else {
                line = longer;
            }
        }
    }
    lines.push(line);
    lines
}
