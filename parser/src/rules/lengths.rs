//! Girths and heights in centimetres.
//!
//! Deliberately absent: whether a value is likely for this block. The scheduler crate knows the
//! block's history.

use alloc::vec::Vec;

use crate::{details::Unit, kind::Kind};

/// A girth from here on was read off in millimetres.
const GIRTH_MM_MIN: f64 = 150.0;
/// No girth is larger than this many millimetres.
const GIRTH_MM_MAX: f64 = 1_500.0;
/// A height up to here was said in metres.
const HEIGHT_M_MAX: f64 = 20.0;

/// Values as said, each with its unit if one was said.
#[derive(Default)]
pub(crate) struct Lengths {
    values: Vec<(f64, Option<Unit>)>,
}

impl Lengths {
    pub(crate) const fn is_empty(&self) -> bool {
        self.values.is_empty()
    }

    pub(crate) fn push(&mut self, value: f64, unit: Option<Unit>) {
        self.values.push((value, unit));
    }
}

/// The values in centimetres, and the unit that had to be guessed, if any.
///
/// A unit said after the last of several values holds for all of them.
pub(crate) fn centimetres(lengths: &Lengths, kind: Kind) -> (Vec<f64>, Option<Unit>) {
    let mut unit = None;
    let mut guessed = None;
    let mut values = Vec::with_capacity(lengths.values.len());
    for (value, said) in lengths.values.iter().rev() {
        unit = said.or(unit);
        let used = unit.unwrap_or_else(|| {
            let guess = guess(*value, kind);
            guessed = guessed.or((guess != Unit::Centimetre).then_some(guess));
            guess
        });
        values.extend(centimetres_of(*value, used));
    }
    values.reverse();
    (values, guessed)
}

fn guess(value: f64, kind: Kind) -> Unit {
    if kind == Kind::Height {
        if value <= HEIGHT_M_MAX {
            Unit::Metre
        } else {
            Unit::Centimetre
        }
    } else if (GIRTH_MM_MIN..=GIRTH_MM_MAX).contains(&value) {
        Unit::Millimetre
    } else {
        Unit::Centimetre
    }
}

/// A length in centimetres; none if the unit is no length.
///
/// International inch and foot: 2.54 cm and 30.48 cm (NIST Special Publication 811, appendix B).
pub(crate) fn centimetres_of(value: f64, unit: Unit) -> Option<f64> {
    match unit {
        Unit::Metre => Some(value * 100.0),
        Unit::Centimetre => Some(value),
        Unit::Millimetre => Some(value / 10.0),
        Unit::Inch => Some(value * 2.54),
        Unit::Foot => Some(value * 30.48),
        Unit::Hectare
        | Unit::Acre
        | Unit::Rai
        | Unit::SquareMetre
        | Unit::Kilogram
        | Unit::Gram
        | Unit::Bag
        | Unit::Tin
        | Unit::Cup
        | Unit::Litre => None,
    }
}
