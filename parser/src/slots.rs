//! Fills the slots of the reports of one segment.
//!
//! Each number gets exactly one role, by its neighbours. A second block, or a second number after
//! a block, begins a further report of the same kind. Deliberately absent: what was said in other
//! segments (`reports` carries block and day over).

use alloc::{
    string::{String, ToString},
    vec::Vec,
};

use crate::{
    details::{Cause, Details, Extent, Measure, Per, Supply, Unit, Wetness},
    figure::Number,
    fold::Folded,
    kind::Kind,
    lengths::{self, Lengths},
    meaning::{Meaning, Numeral, Plain},
    piece::{Piece, Sense},
    reading::{Doubt, Problem, Report, Span},
    segment::{Segment, break_strength},
    when::When,
};

/// The reports of one segment, and what found no slot.
pub(crate) fn reports(
    pieces: &[Piece<'_>],
    segment: &Segment,
    folded: &Folded<'_>,
    problems: &mut Vec<Problem>,
) -> Vec<Row> {
    let mut filler = Filler {
        pieces,
        segment,
        folded,
        problems,
        rows: alloc::vec![Row::new(segment.kind)],
        lengths: alloc::vec![Lengths::default()],
    };
    for at in segment.pieces.clone() {
        if let Some(piece) = pieces.get(at) {
            filler.take(at, piece);
        }
    }
    filler.finish()
}

/// A report in the making.
pub(crate) struct Row {
    pub(crate) kind: Kind,
    pub(crate) details: Details,
    pub(crate) block: Option<String>,
    pub(crate) when: Option<When>,
    pub(crate) doubts: Vec<Doubt>,
    pub(crate) span: Option<Span>,
    /// "not yet" was said of it.
    pub(crate) not_yet: bool,
    /// Began with a block after "and": what is said of it was also said of the row before.
    joined: bool,
    /// A block came before its number.
    block_first: bool,
}

impl Row {
    const fn new_with(kind: Kind, details: Details) -> Self {
        Self {
            kind,
            details,
            block: None,
            when: None,
            doubts: Vec::new(),
            span: None,
            not_yet: false,
            joined: false,
            block_first: false,
        }
    }

    fn new(kind: Kind) -> Self {
        Self::new_with(kind, Details::default())
    }

    fn has_number(&self) -> bool {
        self.details.count.is_some()
    }

    /// The finished report.
    pub(crate) fn into_report(self) -> Report {
        Report {
            kind: self.kind,
            details: self.details,
            block: self.block,
            when: self.when,
            doubts: self.doubts,
            span: self.span.unwrap_or_default(),
        }
    }
}

struct Filler<'a, 'r> {
    pieces: &'a [Piece<'r>],
    segment: &'a Segment,
    folded: &'a Folded<'r>,
    problems: &'a mut Vec<Problem>,
    rows: Vec<Row>,
    /// Measured values of each row, before units are settled.
    lengths: Vec<Lengths>,
}

impl Filler<'_, '_> {
    fn take(&mut self, at: usize, piece: &Piece<'_>) {
        let span = self.folded.span(piece.start, piece.end);
        let used = match &piece.sense {
            Sense::Block(name) => {
                self.block(at, name);
                true
            }
            Sense::Number(number) => self.number(at, *number, span),
            Sense::Metres(metres) => {
                self.length(*metres, Some(Unit::Metre));
                true
            }
            Sense::List { values, sure } => self.list(values, *sure, span),
            Sense::Range(from, to) => self.range(*from, *to),
            Sense::Share(count, of) => self.share(*count, *of),
            Sense::Grade => {
                let grade = self.folded.written(piece.start, piece.end);
                self.row().details.formula = Some(grade.replace([' ', ':', '/'], "-"));
                true
            }
            Sense::When(when) => {
                self.row().when = Some(*when);
                true
            }
            Sense::Listed(_) => self.listed(at, piece),
            Sense::Triple(_)
            | Sense::Fraction(..)
            | Sense::NoSuchDay
            | Sense::Clock
            | Sense::TooLarge
            | Sense::NoNumber
            | Sense::Group(_)
            | Sense::Member(_)
            | Sense::Mark(_)
            | Sense::TwoKinds(..)
            | Sense::Unknown => false,
        };
        if used {
            let row = self.row();
            row.span = Some(row.span.map_or(span, |whole| Span {
                start: whole.start.min(span.start),
                end: whole.end.max(span.end),
            }));
        }
        if let Some(to) = piece.repaired.or(twin_of(piece)) {
            self.doubt_repair(piece, to);
        }
    }

    /// A repair that lands on a real word's twin is always asked about.
    fn doubt_repair(&mut self, piece: &Piece<'_>, to: &str) {
        if twin_of(piece).is_none() {
            return;
        }
        let from = self.folded.written(piece.start, piece.end).to_string();
        let to = to.to_string();
        self.row().doubts.push(Doubt::Repaired { from, to });
    }

    fn row(&mut self) -> &mut Row {
        if self.rows.is_empty() {
            self.rows.push(Row::new(self.segment.kind));
        }
        let last = self.rows.len() - 1;
        match self.rows.get_mut(last) {
            Some(row) => row,
            None => unreachable!("a row was just put in"),
        }
    }

    fn next_row(&mut self, joined: bool) {
        let kind = self.segment.kind;
        let mut row = Row::new(kind);
        row.joined = joined;
        row.when = self.row().when;
        self.rows.push(row);
        self.lengths.push(Lengths::default());
    }

    fn previous(&self, at: usize) -> Option<&Piece<'_>> {
        self.pieces.get(at.checked_sub(1)?)
    }

    fn block(&mut self, at: usize, name: &str) {
        let joined = |piece: &Piece<'_>| piece.is_plain(Plain::And) || piece.is_mark('&');
        let after_join = (0..at)
            .rev()
            .find_map(|at| {
                self.pieces
                    .get(at)
                    .filter(|piece| !piece.is_any(&[Plain::Block, Plain::At, Plain::Filler]))
            })
            .is_some_and(joined);
        if self.row().block.is_some() {
            self.next_row(after_join);
        }
        let no_values = self.lengths.last().is_none_or(Lengths::is_empty);
        let measures = self.segment.kind.needs_values();
        let is_first = no_values && (measures || !self.row().has_number());
        let row = self.row();
        row.block = Some(name.to_string());
        row.block_first = is_first;
    }

    /// Gives a number its role; false if none fits.
    fn number(&mut self, at: usize, number: Number, span: Span) -> bool {
        let previous = at.checked_sub(1).and_then(|at| self.pieces.get(at));
        let next = self.pieces.get(at + 1);
        let beside = |class| {
            previous.is_some_and(|piece| piece.is_plain(class))
                || next.is_some_and(|piece| piece.is_plain(class))
        };
        if previous.is_some_and(|piece| piece.is_plain(Plain::Row))
            || next.is_some_and(|piece| {
                piece.is_any(&[Plain::Row, Plain::Round])
                    || piece.means(|meaning| matches!(meaning, Meaning::Period(_)))
            })
            || previous.is_some_and(|piece| piece.is_plain(Plain::Round))
        {
            return true;
        }
        if beside(Plain::Weak) && self.segment.kind == Kind::Dead && self.row().has_number() {
            self.row().details.weak = number.whole();
            return true;
        }
        if self.segment.kind == Kind::Rain && self.unit_of(at).is_none() {
            return self.measure(number, Unit::Millimetre);
        }
        if let Some(unit) = self.unit_of(at) {
            return self.measure(number, unit);
        }
        if self.segment.kind.needs_values() && !beside(Plain::Trees) {
            self.length(number.value, None);
            self.doubt_commas(span);
            return true;
        }
        self.count(number, span)
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
            .filter(|piece| !piece.is_plain(Plain::At))?;
        let counted = at
            .checked_sub(2)
            .and_then(|at| self.pieces.get(at))
            .is_some_and(|piece| matches!(piece.sense, Sense::Number(_) | Sense::Fraction(..)));
        if counted { None } else { unit(before) }
    }

    fn measure(&mut self, number: Number, unit: Unit) -> bool {
        let value = number.decimal.unwrap_or(number.value);
        let kind = self.segment.kind;
        let measure = Some(Measure { value, unit });
        if kind == Kind::Rain {
            self.row().details.mm = match unit {
                Unit::Millimetre => Some(value),
                Unit::Centimetre => Some(value * 10.0),
                Unit::Inch => Some(value * 25.4),
                _ => return false,
            };
        } else if unit.is_area() {
            self.row().details.area = measure;
        } else if !unit.is_length() {
            self.row().details.amount = measure;
        } else if kind.needs_values() {
            self.length(value, Some(unit));
        } else {
            return false;
        }
        true
    }

    fn count(&mut self, number: Number, span: Span) -> bool {
        let Some(count) = number.whole() else {
            self.problems.push(Problem::LooseEnd(span));
            return false;
        };
        self.new_row_for_number();
        let taken = self.row().details.count;
        if let Some(first) = taken {
            if first != count {
                self.row().doubts.push(Doubt::TwoCounts(first, count));
            }
            return true;
        }
        self.row().details.count = Some(count);
        if number.loose {
            self.row().doubts.push(Doubt::LooseNumber(count));
        }
        if number.letters {
            let written = self.written(span);
            self.row().doubts.push(Doubt::LetterForDigit(written));
        }
        true
    }

    /// "41, 43,5, 39": commas part the numbers and also stand inside one.
    fn doubt_commas(&mut self, span: Span) {
        let mut pieces = self.pieces.iter();
        let parts = pieces.any(|piece| piece.is_mark(','));
        let doubt = Doubt::CommaList;
        if parts && self.written(span).contains(',') && !self.row().doubts.contains(&doubt) {
            self.row().doubts.push(doubt);
        }
    }

    fn written(&self, span: Span) -> String {
        let source = self.folded.source;
        source.get(span.start..span.end).unwrap_or("").to_string()
    }

    /// A number after a block that already has one belongs to the next block.
    fn new_row_for_number(&mut self) {
        let no_values = self.lengths.last().is_none_or(Lengths::is_empty);
        let measures = self.segment.kind.needs_values();
        let row = self.row();
        // "girth of 10 trees B 41 42": the count is no value.
        let full = !no_values || (row.has_number() && !measures);
        if full && row.block.is_some() && !row.block_first {
            self.next_row(false);
        }
    }

    fn length(&mut self, value: f64, unit: Option<Unit>) {
        self.new_row_for_number();
        if let Some(lengths) = self.lengths.last_mut() {
            lengths.push(value, unit);
        }
    }

    fn list(&mut self, values: &[f64], sure: bool, span: Span) -> bool {
        if self.segment.kind.needs_values() {
            for value in values {
                self.length(*value, None);
            }
            if !sure {
                self.row().doubts.push(Doubt::CommaList);
            }
            return true;
        }
        match values {
            [first, ..] => {
                self.row().doubts.push(Doubt::CommaList);
                self.count(Number::new(*first), span)
            }
            [] => false,
        }
    }

    fn range(&mut self, from: u32, to: u32) -> bool {
        if self.segment.kind.needs_values() {
            self.length(f64::from(from), None);
            self.length(f64::from(to), None);
        } else {
            self.new_row_for_number();
        }
        self.row().doubts.push(Doubt::Range(from, to));
        true
    }

    fn share(&mut self, count: u32, of: u32) -> bool {
        self.new_row_for_number();
        let details = &mut self.row().details;
        details.count = Some(count);
        details.of = Some(of);
        true
    }

    fn listed(&mut self, at: usize, piece: &Piece<'_>) -> bool {
        let name = piece.listed().and_then(|listed| listed.phrase.name.clone());
        let is_anchor = at == self.segment.anchor;
        let mut used = is_anchor;
        for meaning in piece.meanings() {
            used |= self.meaning(at, meaning, name.as_deref());
        }
        let each = self
            .previous(at)
            .is_some_and(|one| one.means(|meaning| meaning == Meaning::Numeral(Numeral::One)));
        if piece.is_plain(Plain::Trees) && each && self.row().details.amount.is_some() {
            self.row().details.per = Some(Per::Tree);
        }
        if piece.is_plain(Plain::Trees) && self.previous(at).is_some_and(|mark| mark.is_mark('/')) {
            self.row().details.per = Some(Per::Tree);
        }
        if piece.is_plain(Plain::NotYet) {
            self.not_yet(at);
            used = true;
        }
        used
    }

    fn meaning(&mut self, at: usize, meaning: Meaning, name: Option<&str>) -> bool {
        let kind = self.segment.kind;
        let name = || name.map(ToString::to_string);
        let details = &mut self.row().details;
        match meaning {
            Meaning::Ailment(ailment) if kind == Kind::Disease => {
                details.ailment = details.ailment.or(Some(ailment));
            }
            Meaning::Ailment(_) if kind == Kind::Dead => {
                details.cause = details.cause.or(Some(Cause::Other));
            }
            Meaning::Cause(cause) if matches!(kind, Kind::Dead | Kind::Damage) => {
                details.cause = match details.cause {
                    None | Some(Cause::Other) => Some(cause),
                    said => said,
                };
            }
            Meaning::Fertiliser if matches!(kind, Kind::Fertilised | Kind::Received) => {
                details.product = details.product.take().or_else(name);
                if kind == Kind::Received {
                    details.supply = Some(Supply::Fertiliser);
                }
            }
            Meaning::Spray if kind == Kind::Sprayed => {
                details.product = details.product.take().or_else(name);
            }
            Meaning::Crop if kind == Kind::IntercropSown => {
                details.species = details.species.take().or_else(name);
            }
            Meaning::Cover if kind == Kind::CoverSown => {
                details.species = details.species.take().or_else(name);
            }
            Meaning::Clone => details.clone_name = details.clone_name.take().or_else(name),
            Meaning::Material(material)
                if matches!(kind, Kind::Planted | Kind::Replaced | Kind::Received) =>
            {
                details.material = details.material.or(Some(material));
            }
            Meaning::Extent(extent) => return self.extent(at, extent),
            Meaning::Wetness(wetness) if kind == Kind::Rain => {
                details.wetness = Some(wetness);
            }
            Meaning::Per(per) => details.per = Some(per),
            _ => return false,
        }
        true
    }

    /// "all", "half", "many": how much, when nobody counted.
    fn extent(&mut self, at: usize, extent: Extent) -> bool {
        // "in all", "all 120 trees": the number says it.
        let counted = self
            .pieces
            .get(at + 1)
            .is_some_and(|next| matches!(next.sense, Sense::Number(_)));
        let row = self.row();
        if row.has_number() || counted {
            return false;
        }
        row.details.extent = Some(extent);
        true
    }

    /// "weeded A, B not yet": said of the last block, or of all that are joined to it.
    fn not_yet(&mut self, at: usize) {
        let mut joined = true;
        for row in self.rows.iter_mut().rev() {
            if !joined {
                break;
            }
            row.not_yet = true;
            joined = row.joined && at > 0;
        }
    }

    fn finish(mut self) -> Vec<Row> {
        let several_blocks_one_count =
            self.rows.len() > 1 && self.rows.iter().filter(|row| row.has_number()).count() == 1;
        let shared = self.rows.iter().find_map(|row| row.details.count);
        let plants = self
            .pieces
            .get(self.segment.pieces.clone())
            .is_some_and(|pieces| pieces.iter().any(|piece| piece.is_plain(Plain::Trees)));
        for (row, lengths) in self.rows.iter_mut().zip(&self.lengths) {
            let (values, guessed) = lengths::centimetres(lengths, row.kind);
            row.details.values_cm = values;
            if let Some(unit) = guessed {
                row.doubts.push(Doubt::GuessedUnit(unit));
            }
            if let Some(count) = shared.filter(|_| several_blocks_one_count) {
                // "planted 120 in A and B": in each, or in both together?
                row.details.count = Some(count);
                row.doubts.push(Doubt::LooseNumber(count));
            }
            if row.kind == Kind::Received && (plants || row.has_number()) {
                row.details.supply = row.details.supply.or(Some(Supply::Plants));
            }
            let large = matches!(row.kind, Kind::Dead | Kind::Damage | Kind::Disease);
            if let Some(extent) = row.details.extent.filter(|_| large) {
                row.doubts.push(Doubt::Whole(extent));
            }
        }
        share_details(&mut self.rows);
        self.rows
    }
}

/// What was said once of several blocks ("npk on A and B") holds for each.
fn share_details(rows: &mut [Row]) {
    let Some(first) = rows.first().map(|row| row.details.clone()) else {
        return;
    };
    for row in rows.iter_mut().skip(1) {
        let details = &mut row.details;
        details.product = details.product.take().or_else(|| first.product.clone());
        details.formula = details.formula.take().or_else(|| first.formula.clone());
        details.species = details.species.take().or_else(|| first.species.clone());
        details.clone_name = details
            .clone_name
            .take()
            .or_else(|| first.clone_name.clone());
        details.material = details.material.or(first.material);
        details.ailment = details.ailment.or(first.ailment);
        details.cause = details.cause.or(first.cause);
        details.wetness = details.wetness.or(first.wetness);
    }
}

fn twin_of<'r>(piece: &Piece<'r>) -> Option<&'r str> {
    piece.listed()?.phrase.twin_of.as_deref()
}

/// Whether rain was said to have come, by yes and no ("rain yes").
pub(crate) fn rain_answer(pieces: &[Piece<'_>], segment: &Segment) -> Option<Wetness> {
    let after = pieces.get(segment.anchor + 1..segment.pieces.end)?;
    let word = after.iter().find(|piece| break_strength(piece) == 0)?;
    if word.is_any(&[Plain::No, Plain::Negation]) {
        Some(Wetness::None)
    } else if word.is_plain(Plain::Yes) {
        Some(Wetness::Soaked)
    } else {
        None
    }
}
