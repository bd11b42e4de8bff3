//! When the rains have begun, from daily rain: the published definition that the bot goes by, as data.
//!
//! A start that a dry spell follows is a false start: what was planted on it dies. Deliberately
//! absent: what farmers tell by text ([`crate::outlook::rain`]), and the word of the adviser, who alone
//! opens the planting window.

use alloc::collections::BTreeMap;

use chrono::NaiveDate;

use crate::sums::days;

/// What is measured each day, in millimetres. A day that is not in it was not measured, which is
/// not the same as dry.
pub type DailyRain = BTreeMap<NaiveDate, f64>;

/// When rains count as begun.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Definition {
    /// This much rain.
    pub amount_mm: f64,
    /// Whether the amount itself is enough, or only more.
    pub reach: Reach,
    /// In a run of at most so many days.
    pub within_days: u32,
    /// Of these, so many with rain.
    pub rainy_days_min: u32,
    /// Which day of the run counts as the start.
    pub dated: Dated,
    /// The dry spell that makes it a false start, if one does.
    pub dry_spell: Option<DrySpell>,
    /// A day with less is dry.
    pub dry_day_mm: f64,
}

/// Whether an amount is reached by just that amount.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// Just as much is enough.
    AtLeast,
    /// Only more is.
    MoreThan,
}

/// Which day of a run is called its start. Sources differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dated {
    /// The first.
    First,
    /// The last.
    Last,
}

/// Dry days in a row that make a start a false one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DrySpell {
    /// So many dry days.
    pub days: u32,
    /// Within so many days after the run.
    pub look_ahead_days: u32,
}

/// Dry-day threshold of the climate guide (IDEMS, chapter 7), in millimetres.
const DRY_DAY_MM: f64 = 0.85;

/// Stern, Dennett and Garbutt 1981, Journal of Climatology 1: a set amount within two successive
/// days, then no dry spell. The abstract was read; the usual figures (20 mm, 10 days in 30) are
/// from memory.
pub const STERN: Definition = Definition {
    amount_mm: 20.0,
    reach: Reach::AtLeast,
    within_days: 2,
    rainy_days_min: 1,
    dated: Dated::First,
    dry_spell: Some(DrySpell {
        days: 10,
        look_ahead_days: 30,
    }),
    dry_day_mm: DRY_DAY_MM,
};

/// What a series of days says of the start of the rains.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Onset {
    /// They began on this day.
    On(NaiveDate),
    /// They may have begun on this day; too few days are known since.
    NotKnownYet(NaiveDate),
    /// They have not begun in the days that are known.
    None,
}

/// Looks for the start of the rains from a day on.
#[must_use]
pub fn onset(rain: &DailyRain, from: NaiveDate, definition: &Definition) -> Onset {
    for (day, _) in rain.range(from..) {
        let Some(run) = run_from(rain, *day, definition) else {
            continue;
        };
        let start = match definition.dated {
            Dated::First => run.first,
            Dated::Last => run.last,
        };
        match definition
            .dry_spell
            .map(|spell| after(rain, run.last, spell, definition))
        {
            None | Some(Since::Wet) => return Onset::On(start),
            Some(Since::Dry) => {}
            Some(Since::NotKnown) => return Onset::NotKnownYet(start),
        }
    }
    Onset::None
}

#[derive(Clone, Copy)]
struct Run {
    first: NaiveDate,
    last: NaiveDate,
}

/// The shortest run of days from this rainy one on that reaches the amount.
fn run_from(rain: &DailyRain, first: NaiveDate, definition: &Definition) -> Option<Run> {
    let is_rainy = |mm: f64| mm >= definition.dry_day_mm;
    if !is_rainy(*rain.get(&first)?) {
        return None;
    }
    let (mut sum_mm, mut rainy_days) = (0.0, 0);
    for later in 0..definition.within_days {
        let last = days::after(first, later)?;
        // A day that was not measured adds nothing, and breaks nothing.
        let mm = rain.get(&last).copied().unwrap_or(0.0);
        sum_mm += mm;
        rainy_days += u32::from(is_rainy(mm));
        let enough = match definition.reach {
            Reach::AtLeast => sum_mm >= definition.amount_mm,
            Reach::MoreThan => sum_mm > definition.amount_mm,
        };
        if enough && rainy_days >= definition.rainy_days_min {
            return Some(Run { first, last });
        }
    }
    None
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Since {
    Wet,
    Dry,
    NotKnown,
}

/// What came after a run. Days that were not measured could have been wet or dry: a spell that
/// only they would make leaves it open.
fn after(rain: &DailyRain, last: NaiveDate, spell: DrySpell, definition: &Definition) -> Since {
    let (mut dry, mut perhaps) = (0, 0);
    let mut is_open = false;
    for ahead in 1..=spell.look_ahead_days {
        let mm = days::after(last, ahead).and_then(|day| rain.get(&day).copied());
        (dry, perhaps) = match mm {
            Some(mm) if mm < definition.dry_day_mm => (dry + 1, perhaps + 1),
            Some(_) => (0, 0),
            None => (0, perhaps + 1),
        };
        if dry >= spell.days {
            return Since::Dry;
        }
        is_open |= perhaps >= spell.days;
    }
    let ends = days::after(last, spell.look_ahead_days);
    let known_until = rain.keys().next_back().copied();
    if is_open || known_until < ends {
        Since::NotKnown
    } else {
        Since::Wet
    }
}

#[cfg(test)]
mod tests;
