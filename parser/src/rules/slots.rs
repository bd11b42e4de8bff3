//! Fills the slots of the reports of one segment.
//!
//! A second block, or a second number after a block, begins a further report of the same kind.
//! Deliberately absent: the roles of numbers (`roles`), and what was said in other segments
//! (`reports` carries block and day over).

use alloc::{string::ToString, vec::Vec};

use crate::{
    details::{Extent, Per, Supply, Unit, Wetness},
    glyphs::fold::Folded,
    kind::{Effect, Kind, Slot},
    lists::{
        lexicon::Listed,
        piece::{Piece, Sense, Trust},
    },
    meaning::{Meaning, Numeral, Plain, sort},
    pieces::{text::break_strength, used::Uses},
    reading::{Doubt, Problem},
    rules::{
        row::{Row, share_details},
        segment::Segment,
    },
    span::Span,
};

/// What fills a slot beside the kind; most words do not.
const FILLING: u32 = sort::AILMENT
    | sort::CAUSE
    | sort::FERTILISER
    | sort::SPRAY
    | sort::CROP
    | sort::COVER
    | sort::CLONE
    | sort::MATERIAL
    | sort::EXTENT
    | sort::WETNESS
    | sort::PER;

/// Fills `done` with the reports of one segment, and notes what found no slot.
pub(crate) fn reports(
    pieces: &[Piece<'_>],
    segment: &Segment,
    folded: &Folded<'_>,
    problems: &mut Vec<Problem>,
    done: &mut Vec<Row>,
    uses: &Uses,
) {
    done.clear();
    let mut filler = Filler {
        pieces,
        segment,
        folded,
        problems,
        done,
        uses,
        row: Row::new(segment.kind),
    };
    for at in segment.pieces.clone() {
        if let Some(piece) = pieces.get(at) {
            filler.take(at, piece);
        }
    }
    filler.finish();
}

/// Fills the rows of one segment, piece by piece.
pub(crate) struct Filler<'a, 'r> {
    pub(crate) pieces: &'a [Piece<'r>],
    pub(crate) segment: &'a Segment,
    pub(crate) folded: &'a Folded<'r>,
    pub(crate) problems: &'a mut Vec<Problem>,
    done: &'a mut Vec<Row>,
    /// What each number is used for, where that was learned.
    pub(crate) uses: &'a Uses,
    /// The report that is being filled.
    pub(crate) row: Row,
}

impl Filler<'_, '_> {
    fn take(&mut self, at: usize, piece: &Piece<'_>) {
        let span = self.folded.span(piece.start, piece.end);
        let used = match &piece.sense {
            Sense::Block(name) => {
                self.block(at, name);
                true
            }
            Sense::Number(_) if self.is_of_rows(at) => self.part(at, Extent::Few),
            Sense::Number(number) => {
                let learned = self.uses.get(at).copied().flatten();
                let used = match learned {
                    Some((used, _)) => self.number_used(at, *number, span, used),
                    None => self.number(at, *number, span),
                };
                if !used {
                    self.problems.push(Problem::LooseEnd(span));
                    let written = self.written(span);
                    self.row.doubts.push(Doubt::LooseEnd(written));
                }
                used
            }
            Sense::Metres(metres) => {
                self.length(at, *metres, Some(Unit::Metre));
                true
            }
            Sense::List { values, sure } => self.list(at, *values, *sure, span),
            Sense::Range(from, to) => self.range(at, *from, *to),
            Sense::Share(count, of) => self.share(at, *count, *of),
            Sense::Grade => {
                let grade = self.folded.written(piece.start, piece.end);
                self.row.details.formula = Some(grade.replace([' ', ':', '/'], "-"));
                true
            }
            Sense::When(when) => {
                self.row.when = Some(*when);
                true
            }
            Sense::Spacing => self.spacing(span),
            Sense::Listed(_) => self.listed(at, piece),
            Sense::Triple(values) if self.segment.kind.needs_values() => {
                for value in values {
                    self.length(at, f64::from(*value), None);
                }
                true
            }
            Sense::Fraction(above, below) => self.fraction(at, (*above, *below), span),
            Sense::Triple(_)
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
            self.row.cover(span);
        }
        if piece.torn {
            let written = self.written(span);
            self.row.doubts.push(Doubt::TwoLanguages(written));
        }
        // "salam" greets where other work is named.
        let greets = piece.is_plain(Plain::Courtesy) && at != self.segment.anchor;
        if let Some(to) = piece.repaired.or(twin_of(piece)).filter(|_| !greets) {
            self.doubt_repair(piece, to);
        }
    }

    /// "1/2 of A": a part of the block; beside other work it may be a day.
    fn fraction(&mut self, at: usize, part: (u8, u8), span: Span) -> bool {
        if !self.segment.kind.keeps(Slot::Part) {
            let written = self.written(span);
            self.row.doubts.push(Doubt::LooseEnd(written));
            return false;
        }
        let extent = if part == (1, 2) {
            Extent::Half
        } else {
            Extent::Few
        };
        self.part(at, extent)
    }

    /// "6x3" is of pegs, holes and plants; beside other work it may be twice three bags.
    fn spacing(&mut self, span: Span) -> bool {
        let kind = self.segment.kind;
        let is_laid = matches!(
            kind.effect(),
            Effect::Pegs | Effect::Holes | Effect::Planted | Effect::Replaced
        );
        if !is_laid {
            let written = self.written(span);
            self.row.doubts.push(Doubt::LooseEnd(written));
        }
        is_laid
    }

    /// A guess, and a real word that stands for another, are always asked about.
    fn doubt_repair(&mut self, piece: &Piece<'_>, to: &str) {
        if twin_of(piece).is_none() && piece.trust != Trust::Guess {
            return;
        }
        let from = self.folded.written(piece.start, piece.end).to_string();
        let to = to.to_string();
        self.row.doubts.push(Doubt::Repaired { from, to });
    }

    pub(crate) fn next_row(&mut self, joined: bool) {
        let next = Row {
            joined,
            when: self.row.when,
            ..Row::new(self.segment.kind)
        };
        self.done.push(core::mem::replace(&mut self.row, next));
    }

    pub(crate) fn previous(&self, at: usize) -> Option<&Piece<'_>> {
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
        // Named twice, it is still one block.
        if self.row.block.as_deref() == Some(name) {
            return;
        }
        if self.row.block.is_some() {
            self.next_row(after_join);
        }
        let no_values = self.row.lengths.is_empty();
        let measures = self.segment.kind.needs_values();
        let is_first = no_values && (measures || !self.row.has_number());
        self.row.block = Some(name.to_string());
        self.row.block_first = is_first;
    }

    fn listed(&mut self, at: usize, piece: &Piece<'_>) -> bool {
        let is_anchor = at == self.segment.anchor;
        let mut used = is_anchor;
        if piece.is_of(FILLING) {
            let name = piece.listed().and_then(Listed::name);
            for meaning in piece.meanings() {
                used |= self.meaning(at, meaning, name);
            }
        }
        if piece.is_plain(Plain::Trees) && self.is_each(at) {
            self.row.details.per = Some(Per::Tree);
        }
        if piece.is_plain(Plain::NotYet) {
            self.not_yet(at);
            used = true;
        }
        used
    }

    /// "2 bags a tree", "50 g/tree": what stands before a word for trees.
    fn is_each(&self, at: usize) -> bool {
        let one =
            |piece: &Piece<'_>| piece.means(|meaning| meaning == Meaning::Numeral(Numeral::One));
        self.previous(at).is_some_and(|piece| {
            piece.is_mark('/') || (one(piece) && self.row.details.amount.is_some())
        })
    }

    fn meaning(&mut self, at: usize, meaning: Meaning, name: Option<&str>) -> bool {
        // "urea 50 kg npk 3 bags": the second product begins a further report.
        // "npk 169 kg fert" names one.
        let is_second = meaning == Meaning::Fertiliser
            && name.is_some()
            && self.row.details.product.is_some()
            && self.row.details.amount.is_some();
        if is_second {
            self.next_row(true);
        }
        if let Meaning::Extent(extent) = meaning {
            return self.extent(at, extent);
        }
        self.row.take_sight(meaning) || self.row.take_thing(meaning, name)
    }

    /// "all", "half", "many": how much, when nobody counted.
    fn extent(&mut self, at: usize, extent: Extent) -> bool {
        // "in all", "all 120 trees": the number says it.
        let counted = self
            .pieces
            .get(at + 1)
            .is_some_and(|next| matches!(next.sense, Sense::Number(_)));
        if self.segment.kind.keeps(Slot::Part) {
            return extent == Extent::Half && self.part(at, extent);
        }
        if self.row.has_number() || counted {
            return false;
        }
        self.row.details.extent = Some(extent);
        true
    }

    /// "half of B": only a part of the block that is named, here or next.
    fn part(&mut self, at: usize, extent: Extent) -> bool {
        let small = [
            Plain::Of,
            Plain::At,
            Plain::Block,
            Plain::Land,
            Plain::Filler,
        ];
        let after = self.pieces.get(at + 1..).unwrap_or_default();
        let next = after.iter().find(|piece| !piece.is_any(&small));
        let is_next = next.is_some_and(
            |next| matches!(next.sense, Sense::Block(name) if self.row.block.as_deref() != Some(name)),
        );
        if is_next && self.row.block.is_some() {
            self.next_row(true);
        }
        self.row.details.extent = Some(extent);
        true
    }

    /// "2 rows" of a work that goes on until all is done.
    fn is_of_rows(&self, at: usize) -> bool {
        let after = self.pieces.get(at + 1);
        self.segment.kind.keeps(Slot::Part) && after.is_some_and(|next| next.is_plain(Plain::Row))
    }

    /// "weeded A, B not yet": said of the last block, or of all that are joined to it.
    fn not_yet(&mut self, at: usize) {
        let mut joined = true;
        let rows = self.done.iter_mut().rev();
        for row in core::iter::once(&mut self.row).chain(rows) {
            if !joined {
                break;
            }
            row.not_yet = true;
            joined = row.joined && at > 0;
        }
    }

    fn finish(self) {
        let plants = self
            .pieces
            .get(self.segment.pieces.clone())
            .is_some_and(|pieces| pieces.iter().any(|piece| piece.is_plain(Plain::Trees)));
        self.done.push(self.row);
        let rows = self.done;
        share_details(rows);
        for row in rows {
            row.settle_lengths();
            let weighed = row.details.amount.is_some() || row.details.formula.is_some();
            if row.kind == Kind::Received && weighed && row.details.count.is_none() {
                row.details.supply = row.details.supply.or(Some(Supply::Fertiliser));
            }
            if row.kind == Kind::Received && (plants || row.has_number()) {
                row.details.supply = row.details.supply.or(Some(Supply::Plants));
            }
            // A count says it better than "some", and "weeded small small" says how.
            if row.kind.keeps(Slot::Part) {
                continue;
            }
            if row.has_number() || !row.kind.keeps(Slot::Extent) {
                row.details.extent = None;
            }
            if let Some(extent) = row.details.extent {
                row.doubts.push(Doubt::Whole(extent));
            }
        }
    }
}

fn twin_of<'r>(piece: &Piece<'r>) -> Option<&'r str> {
    piece.listed()?.twin_of()
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
