//! The role of each number of a report: count, measured value, land, amount, or none.
//!
//! A number has exactly one role, given by the words beside it: a unit, "row", "times", "weak",
//! else what the kind of work wants. Deliberately absent: which report it belongs to (`segment`).

use alloc::string::{String, ToString};

use crate::{
    details::{Measure, Unit},
    glyphs::figure::{Number, Values},
    kind::{Kind, Slot},
    lists::piece::{Piece, Sense},
    meaning::{Meaning, Plain, sort},
    pieces::{text::break_strength, used::Use},
    reading::Doubt,
    rules::{lengths, slots::Filler},
    span::Span,
};

impl Filler<'_, '_> {
    /// Puts a number where it was learned that it belongs.
    pub(crate) fn number_used(&mut self, at: usize, number: Number, span: Span, used: Use) -> bool {
        match used {
            Use::Nothing | Use::Place | Use::Day => true,
            Use::Count => self.count(at, number, span),
            Use::Of => {
                self.row.details.of = number.whole();
                true
            }
            Use::Amount => {
                let unit = self
                    .unit_of(at)
                    .or(self.row.details.amount.map(|amount| amount.unit));
                unit.is_some_and(|unit| self.measure(at, number, unit))
            }
            Use::Area => self
                .unit_of(at)
                .filter(|unit| unit.is_area())
                .is_some_and(|unit| self.measure(at, number, unit)),
            Use::Value => {
                let unit = self.unit_of(at).filter(|unit| unit.is_length());
                self.length(at, number.value, unit);
                self.doubt_commas(span);
                true
            }
            Use::Rain => self.measure(at, number, self.unit_of(at).unwrap_or(Unit::Millimetre)),
        }
    }

    /// Gives a number its role; false if none fits.
    pub(crate) fn number(&mut self, at: usize, number: Number, span: Span) -> bool {
        let previous = at.checked_sub(1).and_then(|at| self.pieces.get(at));
        let next = self.pieces.get(at + 1);
        // "40 rows of 12": how many that is they must say.
        let of_rows = at.checked_sub(2).and_then(|at| self.pieces.get(at));
        if previous.is_some_and(|piece| piece.is_plain(Plain::Of))
            && of_rows.is_some_and(|piece| piece.is_plain(Plain::Row))
        {
            return false;
        }
        let beside = |class| {
            previous.is_some_and(|piece| piece.is_plain(class))
                || next.is_some_and(|piece| piece.is_plain(class))
        };
        if previous.is_some_and(|piece| piece.is_plain(Plain::Row))
            || next.is_some_and(|piece| {
                piece.is_any(&[Plain::Row, Plain::Round])
                    || piece.means(|meaning| matches!(meaning, Meaning::Period(_)))
            })
            || (previous.is_some_and(|piece| piece.is_plain(Plain::Round) && piece.kind().is_none())
                // "phan lan 3 bao" are three bags.
                && next.is_none_or(|next| next.part(Meaning::unit).is_none()))
        {
            return true;
        }
        if beside(Plain::Weak) && self.segment.kind == Kind::Dead && self.row.has_number() {
            self.row.details.weak = number.whole();
            return true;
        }
        if self.segment.kind == Kind::Rain && self.unit_of(at).is_none() {
            return self.measure(at, number, Unit::Millimetre);
        }
        if let Some(unit) = self.unit_of(at) {
            return self.measure(at, number, unit);
        }
        if self.repeats_amount(at) {
            let unit = self.row.details.amount.map(|amount| amount.unit);
            return unit.is_some_and(|unit| self.measure(at, number, unit));
        }
        if self.segment.kind.needs_values() && !beside(Plain::Trees) {
            self.length(at, number.value, None);
            self.doubt_commas(span);
            return true;
        }
        // "fertilised A 2": bags, kilograms or trees? "weeded A 2": trees, rows or a slip?
        if self.segment.kind.leaves_number() && !beside(Plain::Trees) {
            return false;
        }
        self.count(at, number, span)
    }

    /// "2 bags on A and 3 on B": the second number has the unit of the first.
    fn repeats_amount(&self, at: usize) -> bool {
        let after_and = self
            .previous(at)
            .is_some_and(|piece| piece.is_plain(Plain::And));
        let feeds = self.segment.kind.keeps(Slot::Product);
        feeds && after_and && self.row.details.amount.is_some() && self.row.block.is_some()
    }

    /// The unit after a number, or before it ("kg 50").
    fn unit_of(&self, at: usize) -> Option<Unit> {
        let unit = |piece: &Piece<'_>| {
            piece.meanings().find_map(|meaning| {
                if let Meaning::Unit(unit) = meaning {
                    Some(unit)
                } else {
                    None
                }
            })
        };
        let next = self.pieces.get(at + 1);
        if let Some(found) = next.and_then(unit) {
            // "16 in" is inches only of a girth or height, and not before a place.
            let is_place = next.is_some_and(|next| next.is_plain(Plain::At))
                && (!self.segment.kind.needs_values()
                    || self.pieces.get(at + 2).is_some_and(|place| {
                        matches!(place.sense, Sense::Block(_)) || place.is_plain(Plain::Block)
                    }));
            return (!is_place).then_some(found);
        }
        let before = self
            .previous(at)
            .filter(|piece| !piece.is_plain(Plain::At) && !piece.is_of(sort::LAND))?;
        let counted = at
            .checked_sub(2)
            .and_then(|at| self.pieces.get(at))
            .is_some_and(|piece| matches!(piece.sense, Sense::Number(_) | Sense::Fraction(..)));
        if counted { None } else { unit(before) }
    }

    pub(crate) fn measure(&mut self, at: usize, number: Number, unit: Unit) -> bool {
        let value = number.decimal.unwrap_or(number.value);
        let kind = self.segment.kind;
        let measure = Some(Measure { value, unit });
        if kind == Kind::Rain {
            self.row.details.mm = lengths::centimetres_of(value, unit).map(|cm| cm * 10.0);
            return self.row.details.mm.is_some();
        } else if unit.is_area() {
            self.row.details.area = measure;
        } else if !unit.is_length() {
            if !kind.takes_amount() {
                return false;
            }
            // "50 kg urea and 3 bags npk".
            if self.row.details.amount.is_some() {
                self.next_row(true);
            }
            self.row.details.amount = measure;
        } else if kind.needs_values() {
            self.length(at, value, Some(unit));
        }
        // A length beside other work is a spacing, which no report keeps.
        true
    }

    fn count(&mut self, at: usize, number: Number, span: Span) -> bool {
        let Some(count) = number.whole() else {
            return false;
        };
        self.new_row_for_number(at);
        let taken = self.row.details.count;
        if let Some(first) = taken {
            if first != count {
                self.row.doubts.push(Doubt::TwoCounts(first, count));
            }
            return true;
        }
        self.row.details.count = Some(count);
        if number.loose {
            self.row.doubts.push(Doubt::LooseNumber(count));
        }
        if number.letters {
            let written = self.written(span);
            self.row.doubts.push(Doubt::LetterForDigit(written));
        }
        true
    }

    /// "41, 43,5, 39": commas part the numbers and also stand inside one.
    fn doubt_commas(&mut self, span: Span) {
        let parts = self.pieces.windows(3).any(|three| {
            matches!(three, [one, mark, other]
                if mark.is_mark(',') && one.number().is_some() && other.number().is_some())
        });
        let doubt = Doubt::CommaList;
        if parts && self.source(span).contains(',') && !self.row.doubts.contains(&doubt) {
            self.row.doubts.push(doubt);
        }
    }

    pub(crate) fn written(&self, span: Span) -> String {
        self.source(span).to_string()
    }

    fn source(&self, span: Span) -> &str {
        self.folded.source.get(span.start..span.end).unwrap_or("")
    }

    /// A second number after a block, a clone or "and" with a day tells of something further.
    fn new_row_for_number(&mut self, at: usize) {
        let no_values = self.row.lengths.is_empty();
        let measures = self.segment.kind.needs_values();
        let after_and = self
            .previous(at)
            .is_some_and(|piece| break_strength(piece) > 0);
        let row = &self.row;
        // "girth of 10 trees B 41 42": the count is no value.
        let full = !no_values || (row.has_number() && !measures);
        let closed = (row.block.is_some() && !row.block_first)
            || (row.clone_name_said() && row.has_number())
            || (row.when.is_some() && after_and && row.has_number());
        if full && closed {
            self.next_row(false);
        }
    }

    pub(crate) fn length(&mut self, at: usize, value: f64, unit: Option<Unit>) {
        self.new_row_for_number(at);
        self.row.lengths.push(value, unit);
    }

    pub(crate) fn list(&mut self, at: usize, values: Values<'_>, sure: bool, span: Span) -> bool {
        if self.segment.kind == Kind::Height && self.is_metres(span) {
            let written = self.written(span).replace(',', ".");
            if let Ok(metres) = written.parse() {
                self.length(at, metres, Some(Unit::Metre));
                return true;
            }
        }
        if self.segment.kind.needs_values() {
            for value in values.iter() {
                self.length(at, value, None);
            }
            if !sure {
                self.row.doubts.push(Doubt::CommaList);
            }
            return true;
        }
        let Some(first) = values.iter().next() else {
            return false;
        };
        self.row.doubts.push(Doubt::CommaList);
        self.count(at, Number::new(first), span)
    }

    /// "2,35" of a height: metres and centimetres.
    fn is_metres(&self, span: Span) -> bool {
        let parts = self.source(span).split_once(',');
        parts.is_some_and(|(metres, rest)| {
            let digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
            metres.len() == 1 && digits(metres) && matches!(rest.len(), 1 | 2) && digits(rest)
        })
    }

    pub(crate) fn range(&mut self, at: usize, from: u32, to: u32) -> bool {
        if self.segment.kind.needs_values() {
            self.length(at, f64::from(from), None);
            self.length(at, f64::from(to), None);
        } else {
            self.new_row_for_number(at);
        }
        self.row.doubts.push(Doubt::Range(from, to));
        true
    }

    pub(crate) fn share(&mut self, at: usize, count: u32, of: u32) -> bool {
        self.new_row_for_number(at);
        let details = &mut self.row.details;
        details.count = Some(count);
        details.of = Some(of);
        true
    }
}
