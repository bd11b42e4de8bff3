//! Days as people say them: "3 days ago", "last monday", "12 may", "12/5/26".
//!
//! Deliberately absent: what today is. A day stays as it was said.

use crate::{
    lists::piece::{Piece, Sense},
    meaning::{Meaning, Plain},
    when::When,
};

/// Nobody reports work of more days ago than this.
const DAYS_AGO_MAX: u16 = 400;

/// Reads a day at the start of these pieces; also how many pieces it takes.
pub(crate) fn read<'r>(before: &[Piece<'r>], pieces: &[Piece<'r>]) -> Option<(Sense<'r>, usize)> {
    let first = pieces.first()?;
    if let Some(number) = first.number() {
        let count = number.whole()?;
        return ago(count, pieces)
            .or_else(|| day_month(count, pieces))
            .or_else(|| day_alone(before, count, pieces));
    }
    if let Sense::Triple(parts) = first.sense {
        return Some((triple(parts, pieces.get(1)), 1));
    }
    if let Sense::Fraction(day, month) = first.sense {
        return slashed(before.last(), (day, month), pieces).map(|sense| (sense, 1));
    }
    first.listed()?;
    in_words(pieces)
}

/// "12/5" is a day; "1/2 bag" and "1/2 of A" are not, and "A 1/2" may be either.
fn slashed<'r>(
    before: Option<&Piece<'_>>,
    (day, month): (u8, u8),
    pieces: &[Piece<'_>],
) -> Option<Sense<'r>> {
    let next = pieces.get(1);
    let before_unit = next
        .filter(|next| !next.is_plain(Plain::At))
        .is_some_and(|next| next.means(|meaning| meaning.unit().is_some()));
    let is_block = |piece: &Piece<'_>| matches!(piece.sense, Sense::Block(_));
    let on_a_day = before.is_some_and(|piece| piece.is_plain(Plain::At));
    let is_part = day < month && month <= PARTS_MAX && !on_a_day;
    let of_land = next.is_some_and(is_land);
    let is_half = (day, month) == (1, 2) && before.is_some_and(is_block);
    if before_unit || (is_part && (of_land || is_half)) {
        return None;
    }
    let day = calendar(u16::from(day), u16::from(month), None, false);
    Some(day.map_or(Sense::NoSuchDay, Sense::When))
}

/// A block, or what leads to one.
fn is_land(piece: &Piece<'_>) -> bool {
    let leads = [Plain::Block, Plain::Land, Plain::Of, Plain::At];
    matches!(piece.sense, Sense::Block(_)) || piece.is_any(&leads)
}

/// Nobody does a fifth of a block.
const PARTS_MAX: u8 = 4;

/// "the 15th", "dia 9", "9 haribulan": a day by its number, which nothing else counts.
fn day_alone<'r>(
    before: &[Piece<'_>],
    day: u32,
    pieces: &[Piece<'_>],
) -> Option<(Sense<'r>, usize)> {
    let number = pieces.first()?.number()?;
    // "tangkal" is no slip of "tanggal".
    let names = |piece: &Piece<'_>| piece.is_plain(Plain::DayNumber) && piece.repaired.is_none();
    // What is a small word too, as "le", stands before the number only.
    let is_small = |piece: &Piece<'_>| piece.is_any(&[Plain::Filler, Plain::At]);
    let is_period = |piece: &Piece<'_>| piece.part(Meaning::period).is_some();
    // "3 dias 9": the word belongs to the number before it.
    let led = match before {
        [.., other, word] => names(word) && other.number().is_none(),
        [word] => names(word),
        [] => false,
    };
    let next = pieces.get(1);
    let followed = next.is_some_and(|word| names(word) && !is_period(word) && !is_small(word));
    let counts = |next: &Piece<'_>| {
        let counted = [
            Plain::Row,
            Plain::Round,
            Plain::Trees,
            Plain::Block,
            Plain::Land,
        ];
        next.is_any(&counted)
            || next.part(Meaning::unit).is_some()
            || is_period(next)
            || matches!(next.sense, Sense::Unknown | Sense::TwoKinds(..))
    };
    let is_day = followed || ((led || number.ordinal) && !next.is_some_and(counts));
    let day = u8::try_from(day).ok().filter(|day| (1..=31).contains(day));
    let day = day.filter(|_| is_day)?;
    Some((Sense::When(When::MonthDay(day)), 1 + usize::from(followed)))
}

/// "may 12", "il y a 3 jours", "last monday", "last week", "yesterday".
fn in_words<'r>(pieces: &[Piece<'_>]) -> Option<(Sense<'r>, usize)> {
    let first = pieces.first()?;
    if let Some(found) = month_day(pieces) {
        return Some(found);
    }
    if first.is_plain(Plain::AgoBefore) {
        let each = pieces.get(2)?.part(Meaning::period)?;
        return Some((days_back(count(pieces.get(1)?)?, each), 3));
    }
    if first.is_plain(Plain::LastYear) {
        return Some((Sense::NoSuchDay, 1));
    }
    let weekday = |at: usize| pieces.get(at)?.part(Meaning::weekday).map(When::Weekday);
    if let Some(day) = weekday(1).filter(|_| first.is_plain(Plain::Last)) {
        return Some((Sense::When(day), 2));
    }
    let when = if first.is_plain(Plain::LastWeek) {
        Some(When::LastWeek)
    } else if first.is_plain(Plain::LastMonth) {
        Some(When::LastMonth)
    } else {
        weekday(0).or_else(|| first.part(Meaning::days_ago).map(When::DaysAgo))
    };
    when.map(|when| (Sense::When(when), 1))
}

/// A calendar day, if there is such a day either way round.
pub(crate) fn calendar(day: u16, month: u16, year: Option<u16>, named: bool) -> Option<When> {
    let exists = |day, month| day_exists(day, month, year);
    if !exists(day, month) && (named || !exists(month, day)) {
        return None;
    }
    Some(When::Calendar {
        day: u8::try_from(day).ok()?,
        month: u8::try_from(month).ok()?,
        year,
        named,
    })
}

fn day_exists(day: u16, month: u16, year: Option<u16>) -> bool {
    let leap = year.is_none_or(|year| year % 4 == 0 && (year % 100 != 0 || year % 400 == 0));
    let last = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => 0,
    };
    (1..=last).contains(&day)
}

/// "12/5/26" is a day; "15-15-15" and "12-12-17" are grades of fertiliser.
fn triple<'r>(parts: [u16; 3], next: Option<&Piece<'_>>) -> Sense<'r> {
    let [first, second, third] = parts;
    // "2026.03.13".
    if let Some(year) = full_year(first).filter(|_| first >= 2000) {
        return calendar(third, second, Some(year), false).map_or(Sense::NoSuchDay, Sense::When);
    }
    let product_follows =
        next.is_some_and(|next| next.means(|meaning| meaning == Meaning::Fertiliser));
    // No grade has a year in full.
    let Some(year) = full_year(third).filter(|_| !product_follows || third >= 2000) else {
        return Sense::Grade;
    };
    match calendar(first, second, Some(year), false) {
        Some(day) => Sense::When(day),
        None if third < 100 => Sense::Grade,
        None => Sense::NoSuchDay,
    }
}

/// The day of "13/3/26", if there is such a day.
pub(crate) fn with_year(day: u16, month: u16, year: u16) -> Option<When> {
    calendar(day, month, Some(full_year(year)?), false)
}

/// Two digits or four; Thai years count from 543 years earlier.
fn full_year(year: u16) -> Option<u16> {
    match year {
        20..=50 => Some(2000 + year),
        60..=75 => Some(2500 + year - 543),
        2000..=2100 => Some(year),
        2500..=2643 => Some(year - 543),
        _ => None,
    }
}

/// "3 days ago".
fn ago<'r>(count: u32, pieces: &[Piece<'_>]) -> Option<(Sense<'r>, usize)> {
    let each = pieces.get(1)?.part(Meaning::ago)?;
    Some((days_back(count, each), 2))
}

fn days_back<'r>(count: u32, each: u16) -> Sense<'r> {
    match u16::try_from(count.saturating_mul(u32::from(each))) {
        Ok(days) if days <= DAYS_AGO_MAX => Sense::When(When::DaysAgo(days)),
        _ => Sense::NoSuchDay,
    }
}

/// "12 may", "12th of may 2026".
fn day_month<'r>(day: u32, pieces: &[Piece<'_>]) -> Option<(Sense<'r>, usize)> {
    let of = usize::from(pieces.get(1)?.is_plain(Plain::Of));
    let month = pieces.get(1 + of)?.part(Meaning::month)?;
    let (year, used) = year_after(pieces, 1 + of);
    named_day(day, month, year).map(|sense| (sense, used))
}

/// "may 12", "may 12th, 2026".
fn month_day<'r>(pieces: &[Piece<'_>]) -> Option<(Sense<'r>, usize)> {
    let first = pieces.first()?;
    let month = first.part(Meaning::month)?;
    let day = count(pieces.get(1)?)?;
    // The year follows the day, the name of the month stands first.
    let (year, used) = year_at(pieces, 2, first.is_plain(Plain::BuddhistMonth));
    // "may 120" counts something.
    (day <= 31).then_some(())?;
    named_day(day, month, year).map(|sense| (sense, used))
}

fn named_day<'r>(day: u32, month: u8, year: Option<u16>) -> Option<Sense<'r>> {
    let day = u16::try_from(day).ok().filter(|day| *day <= 31)?;
    Some(calendar(day, u16::from(month), year, true).map_or(Sense::NoSuchDay, Sense::When))
}

/// The year after the month at this place, and how many pieces the day takes with it.
fn year_after(pieces: &[Piece<'_>], month: usize) -> (Option<u16>, usize) {
    let is_buddhist = pieces
        .get(month)
        .is_some_and(|month| month.is_plain(Plain::BuddhistMonth));
    year_at(pieces, month + 1, is_buddhist)
}

/// "2026", "de 2026", "năm 2026"; where years are Buddhist also "2569" and "69".
fn year_at(pieces: &[Piece<'_>], at: usize, is_buddhist: bool) -> (Option<u16>, usize) {
    let joins = pieces
        .get(at)
        .is_some_and(|piece| piece.is_any(&[Plain::Year, Plain::Of]));
    let place = at + usize::from(joins);
    // "12 march 69 trees" counts trees.
    let counts = pieces.get(place + 1).is_some_and(|next| {
        next.is_plain(Plain::Trees) || next.means(|meaning| meaning.unit().is_some())
    });
    let year = pieces
        .get(place)
        .and_then(count)
        .and_then(|year| u16::try_from(year).ok())
        .filter(|year| *year >= 2000 || (is_buddhist && !counts && (60..=75).contains(year)))
        .and_then(full_year);
    match year {
        Some(year) => (Some(year), place + 1),
        None => (None, at),
    }
}

fn count(piece: &Piece<'_>) -> Option<u32> {
    piece.number()?.whole()
}
