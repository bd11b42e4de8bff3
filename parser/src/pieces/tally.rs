//! The sum of the number words of one run, word by word.
//!
//! Deliberately absent: which words of a text make the run (`numerals`).

use crate::{
    glyphs::figure::{NUMBER_MAX, Number},
    lists::lexicon::{Langs, Lexicon},
    meaning::Numeral,
    pack::Joins,
};

/// The number words read so far.
#[derive(Clone)]
pub(crate) struct Tally<'l> {
    lexicon: &'l Lexicon,
    /// The languages that all of the words belong to.
    pub(crate) langs: Langs,
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
    /// "and" was just said.
    joined: bool,
    loose: bool,
    stage: Stage,
}

/// How far a number is said.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stage {
    Empty,
    Open,
    /// Nothing can follow.
    Closed,
}

impl<'l> Tally<'l> {
    /// Nothing read yet.
    pub(crate) const fn new(lexicon: &'l Lexicon) -> Self {
        Self {
            lexicon,
            langs: Langs::MAX,
            thousands: 0,
            hundreds: 0,
            below: None,
            last: 0,
            after_scale: None,
            joined: false,
            loose: false,
            stage: Stage::Empty,
        }
    }

    /// Takes one more part, if it can follow. `next` is the value of the word after it.
    pub(crate) fn take(&mut self, part: Numeral, next: Option<u32>) -> bool {
        if self.stage == Stage::Closed {
            return false;
        }
        if part == Numeral::Join {
            return self.join(next);
        }
        // "hundred" alone may have lost the word before it.
        self.loose |= self.stage == Stage::Empty && matches!(part, Numeral::Scale(100..));
        let taken = match part {
            Numeral::Value(value) => self.value(value, next),
            Numeral::Scale(scale) => self.scale(scale),
            Numeral::Plus(more) => self.plus(more),
            Numeral::Loose(each) => self.loose(each),
            // Only before a scale; `numerals` saw to it.
            Numeral::One => {
                self.below = Some(1);
                self.last = 1;
                true
            }
            Numeral::HalfScale => self.half_scale(),
            Numeral::Join => false,
        };
        if taken {
            if self.stage == Stage::Empty {
                self.stage = Stage::Open;
            }
            self.joined = false;
            self.after_scale = match part {
                Numeral::Scale(scale) => Some(scale),
                Numeral::Value(1000..) => Some(1000),
                Numeral::Value(100..) => Some(100),
                Numeral::Value(_)
                | Numeral::Plus(_)
                | Numeral::Loose(_)
                | Numeral::One
                | Numeral::Join
                | Numeral::HalfScale => None,
            };
        }
        taken
    }

    /// Takes digits glued to a scale: "1tram2" is 120.
    pub(crate) fn take_glued(&mut self, value: u32) -> bool {
        let Some(scale) = self.after_scale.filter(|scale| *scale >= 100) else {
            return false;
        };
        let value = if value < 10 {
            value * scale / 10
        } else {
            value
        };
        let taken = value < scale && self.stage != Stage::Closed;
        if taken {
            self.below = Some(value);
            self.loose = true;
            self.stage = Stage::Closed;
        }
        taken
    }

    /// "and": after a scale; in some languages also after tens, and before hundreds.
    fn join(&mut self, next: Option<u32>) -> bool {
        let tens = self.any(|joins| joins.join_tens);
        let most = if tens && self.hundreds == 0 {
            1000
        } else {
            100
        };
        let place = tens || self.after_scale.is_some_and(|scale| scale >= 100);
        self.joined = place && next.is_some_and(|value| value < most);
        self.joined
    }

    fn any(&self, rule: impl Fn(&Joins) -> bool) -> bool {
        self.lexicon.joins(self.langs).any(rule)
    }

    fn value(&mut self, value: u32, next: Option<u32>) -> bool {
        if value >= 100 {
            return self.large_value(value);
        }
        let Some(below) = self.below else {
            return self.first_below(value, next);
        };
        let unit =
            (1..10).contains(&value) && self.any(|joins| joins.unit_after.contains(&self.last));
        let teen =
            (10..20).contains(&value) && self.any(|joins| joins.teen_after.contains(&self.last));
        let hundreds_left_out = self.hundreds == 0
            && self.thousands == 0
            && (1..10).contains(&below)
            && value >= 10
            && self.any(|joins| joins.loose_hundreds);
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

    /// "seratus", "duzentos", "seribu".
    fn large_value(&mut self, value: u32) -> bool {
        let is_thousand = value >= 1000;
        let free =
            self.hundreds == 0 && self.below.is_none() && !(is_thousand && self.thousands > 0);
        if free && is_thousand {
            self.thousands = value;
        } else if free {
            self.hundreds = value;
        }
        free
    }

    /// The first value below a hundred, alone or after a scale.
    fn first_below(&mut self, value: u32, next: Option<u32>) -> bool {
        if value == 0 {
            // Vietnamese says the hundreds that are none: "one thousand zero hundred odd five".
            let no_hundreds = self.thousands > 0 && self.hundreds == 0 && next == Some(100);
            let free = no_hundreds || self.stage == Stage::Empty;
            if !no_hundreds {
                self.stage = Stage::Closed;
            }
            if free {
                self.below = Some(0);
                self.last = 0;
            }
            return free;
        }
        let is_last_unit = value < 10 && next.is_none() && !self.joined;
        let scale = self.after_scale.filter(|_| is_last_unit);
        if let Some(scale) = scale {
            if self.any(|joins| joins.short_after.contains(&scale)) {
                self.loose = true;
                self.stage = Stage::Closed;
                self.below = Some(value * scale / 10);
                return true;
            }
            self.loose |= self.any(|joins| joins.loose_after.contains(&scale));
        }
        self.below = Some(value);
        self.last = value;
        true
    }

    fn scale(&mut self, scale: u32) -> bool {
        let below = self.below.unwrap_or(0);
        let bare = self.below.is_none();
        match scale {
            10 => {
                let ok = bare || ((1..10).contains(&below) && self.last == below);
                if ok {
                    self.last = if bare { 10 } else { below * 10 };
                    self.below = Some(self.last);
                }
                ok
            }
            100 => {
                let none = self.below == Some(0) && self.thousands > 0;
                let ok = self.hundreds == 0 && (bare || none || (1..100).contains(&below));
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
            self.stage = Stage::Closed;
        }
        ok
    }

    fn half_scale(&mut self) -> bool {
        match self.after_scale {
            Some(10) => self.below = Some(self.below.unwrap_or(0) + 5),
            Some(100) => self.below = Some(50),
            Some(scale) => self.hundreds = scale / 2,
            None => return false,
        }
        self.stage = Stage::Closed;
        true
    }

    /// "forty one forty three" is two numbers; "twenty thirteen" is none.
    pub(crate) fn may_be_followed(&self, next: Option<u32>) -> bool {
        let whole = self.below.is_some_and(|below| below > 20) && (1..10).contains(&self.last);
        whole && next.is_some_and(|value| (20..100).contains(&value))
    }

    /// The number, if it is not too large.
    pub(crate) fn number(&self) -> Option<Number> {
        let value = self
            .thousands
            .saturating_add(self.hundreds)
            .saturating_add(self.below.unwrap_or(0));
        (value <= NUMBER_MAX).then(|| Number {
            loose: self.loose,
            ..Number::new(f64::from(value))
        })
    }
}
