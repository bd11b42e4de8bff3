//! Corrections of an earlier report: "no 102 not 120", "sorry 102", "A not B", "it was B".
//!
//! Deliberately absent: which report is meant. The one that holds the old value, or the last.

use alloc::{
    string::{String, ToString},
    vec::Vec,
};

use crate::{
    glyphs::fold::Folded,
    kind::Kind,
    lists::piece::{Glance, Piece, Sense},
    meaning::{Meaning, Plain},
    pieces::text::break_strength,
    reading::{Correction, Field},
};

/// The correction in a text, if it is one.
pub(crate) fn read(
    pieces: &[Piece<'_>],
    glance: Glance,
    folded: &Folded<'_>,
) -> Option<Correction> {
    let is_range = |piece: &Piece<'_>| matches!(piece.sense, Sense::Range(..));
    // Most texts hold no such word; they need no closer look.
    if !glance.traits.has_plain(CORRECTING) && !pieces.iter().any(is_range) {
        return None;
    }
    let text = Text::new(pieces, folded);
    if let Some(correction) = text.change_in_order() {
        return Some(correction);
    }
    let change = text
        .this_not_that()
        .or_else(|| text.change_to())
        .or_else(|| text.sorry_this())?;
    Some(text.correction(&change))
}

/// The correction in a text that corrects in words of no list: two values of one sort, in either order,
/// or the only one. What was told before says which of two is the old one.
pub(crate) fn likely(pieces: &[Piece<'_>], folded: &Folded<'_>) -> Option<Correction> {
    let text = Text::new(pieces, folded);
    let values = || (0..text.core.len()).filter_map(|index| text.value(index));
    let numbers = values().filter(|value| matches!(value, Value::Number(_)));
    let blocks = values().filter(|value| matches!(value, Value::Block(_)));
    let change = pair(numbers).or_else(|| pair(blocks))?;
    Some(text.correction(&change))
}

/// The first value, and the second.
fn pair(mut values: impl Iterator<Item = Value>) -> Option<Change> {
    let (to, from) = (values.next()?, values.next());
    Some(Change { to: Some(to), from })
}

/// Words without which nothing is corrected.
const CORRECTING: u64 =
    Plain::Correction.bit() | Plain::Instead.bit() | Plain::Negation.bit() | Plain::No.bit();

/// A value that can be corrected, by place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Value {
    Number(usize),
    Block(usize),
    When(usize),
    Kind(usize),
}

impl Value {
    const fn at(self) -> usize {
        match self {
            Self::Number(at) | Self::Block(at) | Self::When(at) | Self::Kind(at) => at,
        }
    }

    fn same_sort(self, other: Self) -> bool {
        core::mem::discriminant(&self) == core::mem::discriminant(&other)
    }
}

#[derive(Default)]
struct Change {
    to: Option<Value>,
    from: Option<Value>,
}

/// The pieces that carry weight, in order.
struct Text<'a, 'r> {
    pieces: &'a [Piece<'r>],
    folded: &'a Folded<'r>,
    /// Places of the pieces that are not small words or marks.
    core: Vec<usize>,
}

impl<'a, 'r> Text<'a, 'r> {
    fn new(pieces: &'a [Piece<'r>], folded: &'a Folded<'r>) -> Self {
        let small = |piece: &Piece<'_>| {
            let classes = [
                Plain::Courtesy,
                Plain::Trees,
                Plain::Block,
                Plain::At,
                Plain::And,
                Plain::Filler,
            ];
            matches!(piece.sense, Sense::Mark(_))
                || (piece.is_any(&classes)
                    && !piece.is_any(&[Plain::Correction, Plain::Negation, Plain::Instead])
                    && piece.kind().is_none())
        };
        let mut core = Vec::with_capacity(pieces.len());
        core.extend(
            (0..pieces.len()).filter(|at| pieces.get(*at).is_some_and(|piece| !small(piece))),
        );
        Self {
            pieces,
            folded,
            core,
        }
    }

    fn piece(&self, core_index: usize) -> Option<&'a Piece<'r>> {
        self.pieces.get(*self.core.get(core_index)?)
    }

    fn is(&self, core_index: usize, class: Plain) -> bool {
        self.piece(core_index)
            .is_some_and(|piece| piece.is_plain(class))
    }

    fn value(&self, core_index: usize) -> Option<Value> {
        let at = *self.core.get(core_index)?;
        let piece = self.pieces.get(at)?;
        if matches!(piece.sense, Sense::Number(_) | Sense::Metres(_)) {
            Some(Value::Number(at))
        } else if matches!(piece.sense, Sense::Block(_)) {
            Some(Value::Block(at))
        } else if matches!(piece.sense, Sense::When(_)) {
            Some(Value::When(at))
        } else {
            piece.kind().map(|_| Value::Kind(at))
        }
    }

    fn is_denial(&self, core_index: usize) -> bool {
        self.is(core_index, Plain::Instead)
            || (self.is(core_index, Plain::Negation) && !self.is(core_index, Plain::NotYet))
    }

    fn has_correction_word(&self) -> bool {
        (0..self.core.len()).any(|index| self.is(index, Plain::Correction))
    }

    /// The nearest value of this sort before a place, not past another denial.
    fn before(&self, core_index: usize, sort: Value) -> Option<Value> {
        (0..core_index)
            .rev()
            .take_while(|index| !self.is_denial(*index))
            .find_map(|index| self.value(index).filter(|value| value.same_sort(sort)))
    }

    /// "102 not 120", "A not B"; "not 120 102", "not 120".
    fn this_not_that(&self) -> Option<Change> {
        (0..self.core.len()).find_map(|index| {
            if !self.is_denial(index) {
                return None;
            }
            let Some(denied) = self.value(index + 1) else {
                return self.denied_last(index);
            };
            // "weeded, not pruned" tells of two jobs.
            if matches!(denied, Value::Kind(_)) && !self.has_correction_word() {
                return None;
            }
            let here = Change {
                to: self.before(index, denied),
                from: Some(denied),
            };
            if here.to.is_some() {
                return Some(here);
            }
            // "not 8 to 6".
            let skip = usize::from(self.is(index + 2, Plain::To));
            let after = self
                .value(index + 2 + skip)
                .filter(|value| value.same_sort(denied));
            // "no 102" gives the right value; "not 120" only the wrong one.
            let is_answer = self.is(index, Plain::No);
            match after {
                // "bukan 8, 6": a word that also says "no" and that puts one in place of another.
                Some(_) if !is_answer || self.is(index, Plain::Instead) => Some(Change {
                    to: after,
                    from: Some(denied),
                }),
                None if !is_answer && !matches!(denied, Value::Kind(_)) && index == 0 => {
                    Some(Change {
                        to: None,
                        from: Some(denied),
                    })
                }
                _ => None,
            }
        })
    }

    /// "6, 8 illa": some languages deny what stands before. Nothing else may be told.
    fn denied_last(&self, denial: usize) -> Option<Change> {
        let words = || (0..self.core.len()).filter(|index| *index != denial);
        let only_values =
            words().all(|index| self.value(index).is_some() || self.is(index, Plain::Correction));
        let mut values = words().filter_map(|index| self.value(index));
        let (to, from) = (values.next()?, values.next()?);
        let is_last = self.core.len() == denial + 1;
        let pair = is_last && only_values && values.next().is_none() && to.same_sort(from);
        pair.then_some(Change {
            to: Some(to),
            from: Some(from),
        })
    }

    /// "change 120 to 102".
    fn change_to(&self) -> Option<Change> {
        let changes = (0..self.core.len()).any(|index| self.is(index, Plain::Correction));
        (0..self.core.len()).find_map(|index| {
            let to = self
                .value(index + 1)
                .filter(|_| self.is(index, Plain::To))?;
            let from = self.value(index.checked_sub(1)?)?;
            (changes && from.same_sort(to)).then_some(Change {
                to: Some(to),
                from: Some(from),
            })
        })
    }

    /// "change 102 to 120" has been taken for a range.
    fn change_in_order(&self) -> Option<Correction> {
        let opens = self.is(0, Plain::Correction);
        let range = self.core.iter().find_map(|at| {
            if let Sense::Range(from, to) = self.pieces.get(*at)?.sense {
                Some((from, to))
            } else {
                None
            }
        });
        let (from, to) = range.filter(|_| opens)?;
        Some(Correction {
            field: Some(Field::Count),
            from: Some(from.to_string()),
            to: Some(to.to_string()),
            ..self.correction(&Change::default())
        })
    }

    /// "no 102", "sorry 102", "it was B", "sorry dead 21".
    fn sorry_this(&self) -> Option<Change> {
        let opening = (0..self.core.len())
            .take_while(|index| self.is(*index, Plain::Correction) || self.is(*index, Plain::No))
            .count();
        let last = opening.checked_sub(1)?;
        let told_anew = self
            .pieces
            .get(self.core.get(last)? + 1..*self.core.get(opening)?)
            .is_some_and(|between| between.iter().any(|piece| self.is_subject(piece)));
        let parted = self
            .pieces
            .get(self.core.get(last)? + 1..*self.core.get(opening)?)
            .is_some_and(|between| between.iter().any(|piece| break_strength(piece) > 2));
        let first = self.value(opening).filter(|_| !parted)?;
        let value = match first {
            Value::Kind(_) if told_anew || !self.is(last, Plain::Correction) => return None,
            // "sorry dead 21": the number is what was wrong.
            Value::Kind(_) => (opening + 1..self.core.len()).find_map(|index| {
                self.value(index)
                    .filter(|value| matches!(value, Value::Number(_)))
            })?,
            Value::Number(_) | Value::Block(_) | Value::When(_) => first,
        };
        Some(Change {
            to: Some(value),
            from: None,
        })
    }

    /// "I" and "we" begin a report of its own, also after "sorry".
    fn is_subject(&self, piece: &Piece<'_>) -> bool {
        piece.is_plain(Plain::Subject)
    }

    fn correction(&self, change: &Change) -> Correction {
        let used = |at: usize| {
            [change.to, change.from]
                .into_iter()
                .flatten()
                .any(|value| value.at() == at)
        };
        let others = || {
            self.core
                .iter()
                .filter(|at| !used(**at))
                .filter_map(|at| self.pieces.get(*at))
        };
        let kind = others().find_map(Piece::kind);
        Correction {
            field: change
                .to
                .or(change.from)
                .map(|value| self.field(value, kind)),
            from: change.from.and_then(|value| self.written(value)),
            to: change.to.and_then(|value| self.written(value)),
            kind,
            block: others().find_map(block_of),
        }
    }

    fn field(&self, value: Value, kind: Option<Kind>) -> Field {
        match value {
            Value::Block(_) => Field::Block,
            Value::When(_) => Field::Date,
            Value::Kind(_) => Field::Kind,
            Value::Number(at) => {
                let next = self.pieces.get(at + 1);
                let unit = next
                    .filter(|next| !next.is_plain(Plain::At))
                    .and_then(|next| next.part(Meaning::unit));
                match unit {
                    Some(unit) if unit.is_area() => Field::Area,
                    Some(unit) if unit.is_length() => Field::Values,
                    Some(_) => Field::Amount,
                    None if kind.is_some_and(Kind::needs_values) => Field::Values,
                    None => Field::Count,
                }
            }
        }
    }

    fn written(&self, value: Value) -> Option<String> {
        let piece = self.pieces.get(value.at())?;
        let number = piece.number().map(|number| number.value.to_string());
        let as_written = || self.folded.written(piece.start, piece.end).to_string();
        Some(
            number
                .or_else(|| block_of(piece))
                .unwrap_or_else(as_written),
        )
    }
}

fn block_of(piece: &Piece<'_>) -> Option<String> {
    if let Sense::Block(name) = piece.sense {
        Some(name.to_string())
    } else {
        None
    }
}
