//! Letters of a PDF: one family that has Latin, Vietnamese and Thai, in two weights, and how wide
//! texts are in it.

use krilla::text::Font;
use ttf_parser::Face;

use super::PaperError;

/// Sarabun, under the SIL Open Font License 1.1 (`bot/fonts/LICENSE`).
static REGULAR: &[u8] = include_bytes!("../../../fonts/Sarabun-Regular.ttf");
static BOLD: &[u8] = include_bytes!("../../../fonts/Sarabun-Bold.ttf");

/// How dark letters are.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Weight {
    Plain,
    Bold,
}

/// The letters, and what is known of their widths.
pub(super) struct Letters {
    plain: (Font, Face<'static>),
    bold: (Font, Face<'static>),
}

impl Letters {
    pub(super) fn built_in() -> Result<Self, PaperError> {
        let read = |bytes: &'static [u8]| {
            let font = Font::new(bytes.to_vec().into(), 0).ok_or(PaperError::Font)?;
            let face = Face::parse(bytes, 0).map_err(|_| PaperError::Font)?;
            Ok((font, face))
        };
        Ok(Self {
            plain: read(REGULAR)?,
            bold: read(BOLD)?,
        })
    }

    const fn of(&self, weight: Weight) -> &(Font, Face<'static>) {
        match weight {
            Weight::Plain => &self.plain,
            Weight::Bold => &self.bold,
        }
    }

    pub(super) fn font(&self, weight: Weight) -> Font {
        self.of(weight).0.clone()
    }

    /// How wide a text is, in points.
    pub(super) fn width(&self, text: &str, weight: Weight, size: f32) -> f32 {
        let face = &self.of(weight).1;
        let units = text.chars().filter_map(|letter| {
            let glyph = face.glyph_index(letter).unwrap_or_default();
            face.glyph_hor_advance(glyph)
        });
        let units: f32 = units.map(f32::from).sum();
        units * size / f32::from(face.units_per_em())
    }
}

/// The text in pieces of one script each: Thai, and all else.
pub(super) fn runs(text: &str) -> Vec<&str> {
    let mut runs = Vec::new();
    let mut start = 0;
    let mut was_thai = None;
    for (at, letter) in text.char_indices() {
        let is_thai = ('\u{e00}'..='\u{e7f}').contains(&letter);
        if was_thai.is_some_and(|was| was != is_thai) {
            runs.extend(text.get(start..at));
            start = at;
        }
        was_thai = Some(is_thai);
    }
    runs.extend(text.get(start..).filter(|run| !run.is_empty()));
    runs
}
