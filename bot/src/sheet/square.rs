//! The code that a phone reads from paper (ISO/IEC 18004): a square of dark and light fields that
//! opens a text to a number (RFC 5724).

use qrcode::{EcLevel, QrCode, types::Color};

/// A code: how many fields it is wide, and which are dark, row by row.
pub(super) struct Square {
    pub(super) width: usize,
    dark: Vec<bool>,
}

impl Square {
    /// The code of a number; none for what is too long for one.
    pub(super) fn to_text(number: &str) -> Option<Self> {
        let link = format!("sms:{number}");
        let code = QrCode::with_error_correction_level(link.as_bytes(), EcLevel::M).ok()?;
        let fields = code.to_colors().into_iter();
        Some(Self {
            width: code.width(),
            dark: fields.map(|field| field == Color::Dark).collect(),
        })
    }

    /// Column and row of each dark field.
    pub(super) fn fields(&self) -> impl Iterator<Item = (usize, usize)> {
        let fields = self.dark.iter().enumerate();
        fields
            .filter(|(_, is_dark)| **is_dark)
            .map(|(at, _)| (at % self.width, at / self.width))
    }

    /// As a drawing for a page, with the light edge of four fields that readers need.
    pub(super) fn drawing(&self) -> String {
        let fields = self.fields().map(|(x, y)| format!("M{x} {y}h1v1h-1z"));
        let path: String = fields.collect();
        let whole = self.width + 8;
        format!(
            "<svg class=\"code\" viewBox=\"-4 -4 {whole} {whole}\" aria-hidden=\"true\">\
             <path d=\"{path}\"/></svg>"
        )
    }
}
