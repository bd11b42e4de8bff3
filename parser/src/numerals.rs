//! Numbers in words.
//!
//! One grammar for all languages; what differs is data: values ("twenty", "seratus"), scales
//! ("hundred", "puluh"), what adds ("belas"), which values a unit may follow, which word joins.
//!
//! A run of number words is read whole or not at all: "twenty thirteen" is no number, and never
//! twenty. Deliberately absent: digits alone, which `figure` reads.

use crate::{
    figure::{NUMBER_MAX, Number},
    meaning::{Meaning, Numeral},
    pack::Joins,
    piece::{Piece, Sense},
};

/// What a run of number words came to.
pub(crate) enum Said {
    /// A number.
    Number(Number),
    /// Number words that make no number.
    Nonsense,
}

/// Reads the number words at the start of these pieces; also how many pieces they take.
pub(crate) fn read<'j>(
    pieces: &[Piece<'_>],
    joins: &(impl Iterator<Item = &'j Joins> + Clone),
) -> Option<(Said, usize)> {
    let mut run = Run::default();
    let mut used = 0;
    let mut words = 0;
    while let Some(piece) = pieces.get(used) {
        if words > 0
            && piece.is_mark('-')
            && pieces
                .get(used + 1)
                .is_some_and(|next| numeral(next).is_some())
        {
            used += 1;
            continue;
        }
        let after_hyphen = usize::from(pieces.get(used + 1).is_some_and(|next| next.is_mark('-')));
        let next = pieces.get(used + 1 + after_hyphen);
        let Some(part) = part(piece, words == 0, next) else {
            break;
        };
        if !run.take(part, joins, next) {
            break;
        }
        words += 1;
        used += 1;
    }
    let first_is_digits = matches!(pieces.first()?.sense, Sense::Number(_));
    if words == 0 || (first_is_digits && words == 1) {
        return None;
    }
    let stuck = pieces.get(used).is_some_and(has_value) && !run.may_be_followed(pieces.get(used)?);
    if stuck {
        let more = pieces
            .iter()
            .skip(used)
            .take_while(|piece| has_value(piece));
        return Some((Said::Nonsense, used + more.count()));
    }
    Some((Said::Number(run.number()?), used))
}

/// The number words read so far.
#[derive(Default)]
struct Run {
    /// Whole thousands.
    thousands: u32,
    /// Whole hundreds.
    hundreds: u32,
    /// What is below a hundred.
    below: Option<u32>,
    /// The last value added to it.
    last: u32,
    /// A scale was just said, so that "and" may follow.
    after_scale: Option<u32>,
    loose: bool,
    closed: bool,
    started: bool,
}

impl Run {
    /// Takes one more part, if it can follow.
    fn take<'j>(
        &mut self,
        part: Numeral,
        joins: &(impl Iterator<Item = &'j Joins> + Clone),
        next: Option<&Piece<'_>>,
    ) -> bool {
        if self.closed {
            return false;
        }
        // "hundred" alone may have lost the word before it.
        self.loose |= !self.started && matches!(part, Numeral::Scale(100..));
        let taken = match part {
            Numeral::Value(value) => self.value(value, joins),
            Numeral::Scale(scale) => self.scale(scale),
            Numeral::Plus(more) => self.plus(more),
            Numeral::Loose(each) => self.loose(each),
            // Only before a scale; `part` saw to it.
            Numeral::One => {
                self.below = Some(1);
                self.last = 1;
                true
            }
            Numeral::Join => {
                let joins_value = next.and_then(value_of).is_some_and(|value| value < 100);
                let place =
                    self.after_scale.is_some() || joins.clone().any(|joins| joins.join_tens);
                return place && joins_value;
            }
            Numeral::HalfScale => self.half_scale(),
        };
        if taken {
            self.started = true;
            self.after_scale = match part {
                Numeral::Scale(scale) if scale >= 100 => Some(scale),
                Numeral::Value(value) if value >= 100 => Some(100),
                Numeral::Value(_)
                | Numeral::Scale(_)
                | Numeral::Plus(_)
                | Numeral::Loose(_)
                | Numeral::One
                | Numeral::Join
                | Numeral::HalfScale => None,
            };
        }
        taken
    }

    fn value<'j>(&mut self, value: u32, joins: &(impl Iterator<Item = &'j Joins> + Clone)) -> bool {
        if value >= 100 {
            let is_thousand = value >= 1000;
            let free =
                self.hundreds == 0 && self.below.is_none() && !(is_thousand && self.thousands > 0);
            if free && is_thousand {
                self.thousands = value;
            } else if free {
                self.hundreds = value;
            }
            return free;
        }
        let Some(below) = self.below else {
            self.closed = value == 0;
            let free = value > 0 || !self.started;
            if free {
                self.below = Some(value);
                self.last = value;
            }
            return free;
        };
        let allowed = |list: fn(&Joins) -> &[u32]| {
            joins.clone().any(|joins| list(joins).contains(&self.last))
        };
        let unit = (1..10).contains(&value) && allowed(|joins| &joins.unit_after);
        let teen = (10..20).contains(&value) && allowed(|joins| &joins.teen_after);
        let hundreds_left_out = self.hundreds == 0
            && self.thousands == 0
            && (1..10).contains(&below)
            && value >= 10
            && joins.clone().any(|joins| joins.loose_hundreds);
        if unit || teen {
            self.below = Some(below + value);
        } else if hundreds_left_out {
            self.hundreds = below * 100;
            self.below = Some(value);
            self.loose = true;
        } else {
            return false;
        }
        self.last = value;
        true
    }

    fn scale(&mut self, scale: u32) -> bool {
        let below = self.below.unwrap_or(0);
        let bare = self.below.is_none();
        match scale {
            10 => {
                let ok = bare || ((2..10).contains(&below) && self.last == below);
                if ok {
                    self.last = if bare { 10 } else { below * 10 };
                    self.below = Some(self.last);
                }
                ok
            }
            100 => {
                let ok = self.hundreds == 0 && (bare || (1..100).contains(&below));
                if ok {
                    self.hundreds = if bare { 100 } else { below * 100 };
                    self.below = None;
                }
                ok
            }
            _ => {
                let before = self.hundreds + below;
                let ok = self.thousands == 0 && (bare && self.hundreds == 0 || before > 0);
                if ok {
                    self.thousands = before.max(1).saturating_mul(scale);
                    self.hundreds = 0;
                    self.below = None;
                }
                ok
            }
        }
    }

    fn plus(&mut self, more: u32) -> bool {
        let below = self.below.unwrap_or(0);
        let ok = (2..10).contains(&below) && self.last == below;
        if ok {
            self.below = Some(below + more);
            // Nothing can follow.
            self.last = 0;
        }
        ok
    }

    fn loose(&mut self, each: u32) -> bool {
        let ok = self.hundreds == 0 && self.thousands == 0;
        if ok {
            let many = self.below.unwrap_or(1);
            self.thousands = many * each;
            self.below = None;
            self.loose = true;
            self.closed = true;
        }
        ok
    }

    fn half_scale(&mut self) -> bool {
        let Some(scale) = self.after_scale else {
            return false;
        };
        if scale == 100 {
            self.below = Some(50);
        } else {
            self.hundreds = scale / 2;
        }
        self.closed = true;
        true
    }

    /// "forty one forty three" is two numbers; "twenty thirteen" is none.
    fn may_be_followed(&self, next: &Piece<'_>) -> bool {
        let whole = self.below.is_some_and(|below| below > 20) && (1..10).contains(&self.last);
        whole && value_of(next).is_some_and(|value| (20..100).contains(&value))
    }

    fn number(&self) -> Option<Number> {
        let value = self.thousands + self.hundreds + self.below.unwrap_or(0);
        (value <= NUMBER_MAX).then(|| Number {
            loose: self.loose,
            ..Number::new(f64::from(value))
        })
    }
}

fn part(piece: &Piece<'_>, first: bool, next: Option<&Piece<'_>>) -> Option<Numeral> {
    if let Sense::Number(number) = &piece.sense {
        let small = number.whole().filter(|value| (1..100).contains(value));
        let scaled = next.is_some_and(|next| {
            numeral(next).is_some_and(|part| matches!(part, Numeral::Scale(_) | Numeral::Loose(_)))
        });
        return small.filter(|_| first && scaled).map(Numeral::Value);
    }
    let scaled = || {
        next.and_then(numeral)
            .is_some_and(|part| matches!(part, Numeral::Scale(_) | Numeral::Loose(_)))
    };
    match numeral(piece)? {
        Numeral::One => (first && scaled()).then_some(Numeral::One),
        Numeral::Join if first => None,
        other @ (Numeral::Value(_)
        | Numeral::Scale(_)
        | Numeral::Plus(_)
        | Numeral::Loose(_)
        | Numeral::Join
        | Numeral::HalfScale) => Some(other),
    }
}

fn numeral(piece: &Piece<'_>) -> Option<Numeral> {
    piece.part(Meaning::numeral)
}

fn value_of(piece: &Piece<'_>) -> Option<u32> {
    match numeral(piece)? {
        Numeral::Value(value) | Numeral::Scale(value) => Some(value),
        Numeral::Plus(_)
        | Numeral::Loose(_)
        | Numeral::One
        | Numeral::Join
        | Numeral::HalfScale => None,
    }
}

fn has_value(piece: &Piece<'_>) -> bool {
    value_of(piece).is_some()
}
