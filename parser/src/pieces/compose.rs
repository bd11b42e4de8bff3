//! Pieces that belong together become one: number words, days, "12 of 30", "10 to 12".
//!
//! Deliberately absent: which report a number belongs to (`roles`).

use crate::{
    details::{Extent, Unit},
    glyphs::{figure::Number, fold::Folded},
    kind::Kind,
    lists::{
        lexicon::{Langs, Lexicon, Listed},
        piece::{Piece, Pieces, Sense},
    },
    meaning::{Meaning, Numeral, Plain, Traits, sort},
    pieces::{
        dates,
        numerals::{self, Said},
    },
};

/// Joins pieces.
pub(crate) fn compose(pieces: &mut Pieces<'_>, folded: &Folded<'_>, lexicon: &Lexicon, own: Langs) {
    // Most texts hold nothing that joins; a glance tells.
    let traits = Traits::of_all(pieces);
    if traits.has(sort::NUMERAL) {
        let has_digits = pieces.iter().any(is_figure);
        pass(pieces, |before, rest| {
            numerals_at(before.last(), rest, folded, (lexicon, own, has_digits))
        });
    }
    if traits.has(sort::LAND) {
        pass(pieces, |_, rest| land(rest));
    }
    if traits.has(sort::EXTENT | sort::NUMERAL) && traits.has(sort::UNIT) {
        half_behind(pieces);
    }
    let figures = pieces.iter().filter(|piece| is_figure(piece)).count();
    let is_odd = |piece: &Piece<'_>| matches!(piece.sense, Sense::Triple(_) | Sense::Fraction(..));
    let odd = pieces.iter().any(is_odd);
    if figures > 1 || odd || traits.has(sort::EXTENT) {
        pass(pieces, |before, rest| {
            half(rest).or_else(|| pair(before.last(), rest))
        });
    }
    if traits.has(sort::EXTENT | sort::NUMERAL) && pieces.iter().any(measures) {
        pass(pieces, |_, rest| half_of_value(rest));
    }
    if figures > 1 {
        pass(pieces, |before, rest| thousands(before.last(), rest));
        if traits.has(sort::UNIT) {
            pass(pieces, |_, rest| metres(rest));
        }
    }
    let is_ordinal = |piece: &Piece<'_>| piece.number().is_some_and(|number| number.ordinal);
    let may_be_day = traits.has(sort::DAY)
        || traits.has_plain(DAY_WORDS)
        || (figures > 0 && traits.has(sort::AGO | sort::PERIOD))
        || pieces.iter().any(is_ordinal);
    if may_be_day || figures > 2 || odd {
        let weighs = |piece: &Piece<'_>| piece.part(Meaning::unit) == Some(Unit::Bag);
        let is_fed = pieces.iter().any(|piece| feeds(piece) || weighs(piece));
        pass(pieces, |before, rest| {
            grade(before.last(), rest, folded, is_fed)
                .or_else(|| clock(rest))
                .or_else(|| dates::read(before, rest))
        });
    }
}

/// "3 ngan": as many square metres, which is the unit that the word is listed with. The number
/// beside a unit that differs from place to place counts nothing.
fn land<'r>(pieces: &[Piece<'r>]) -> Option<(Sense<'r>, usize)> {
    let number = pieces.first()?.number()?;
    let size = pieces.get(1)?.part(Meaning::land)?;
    let sense = size.map_or(Sense::NoNumber, |size| {
        let value = number.decimal.unwrap_or(number.value) * f64::from(size) / SIZES_IN_A_METRE;
        Sense::Number(Number {
            value,
            decimal: None,
            ..number
        })
    });
    Some((sense, 1))
}

/// Square decimetres in a square metre.
const SIZES_IN_A_METRE: f64 = 100.0;

/// Words that begin or make a day, or a time of day.
const DAY_WORDS: u64 = Plain::LastYear.bit()
    | Plain::LastWeek.bit()
    | Plain::LastMonth.bit()
    | Plain::AgoBefore.bit()
    | Plain::Clock.bit()
    | Plain::DayNumber.bit();

fn is_figure(piece: &Piece<'_>) -> bool {
    matches!(piece.sense, Sense::Number(_) | Sense::Fraction(..))
}

fn numerals_at<'r>(
    before: Option<&Piece<'r>>,
    rest: &[Piece<'r>],
    folded: &Folded<'_>,
    (lexicon, own, has_digits): (&Lexicon, Langs, bool),
) -> Option<(Sense<'r>, usize)> {
    let has_digits = has_digits && !counts_work(before, rest, own);
    let (said, used) = numerals::read(rest, lexicon, own, has_digits)?;
    // "ffty three": a word that we do not know may be part of the number.
    let unsure = [before, rest.get(used)].into_iter().flatten().any(|piece| {
        matches!(piece.sense, Sense::Unknown)
            && folded
                .text
                .get(piece.start..piece.end)
                .is_some_and(|word| lexicon.is_near_number(word))
    });
    let torn = rest.iter().take(used).any(|piece| piece.torn);
    let sense = match said {
        Said::Number(number) => Sense::Number(Number {
            loose: number.loose || unsure || torn,
            ..number
        }),
        Said::Nonsense => Sense::NoNumber,
    };
    Some((sense, used))
}

/// "lima mati", "mal rosado sete": a number word beside work of which trees are counted is one, on a
/// phone of its language, also where digits stand elsewhere.
fn counts_work(before: Option<&Piece<'_>>, rest: &[Piece<'_>], own: Langs) -> bool {
    let Some(word) = rest.first() else {
        return false;
    };
    let is_sure = own != 0
        && word.end - word.start >= NUMBER_LEN_MIN
        && !word.listed().is_some_and(Listed::is_bare_number);
    let is_counted = |piece: &Piece<'_>| {
        piece.kind().is_some_and(Kind::wants_count) || piece.is_of(sort::AILMENT | sort::CAUSE)
    };
    let beside = [before, rest.get(1)];
    is_sure && beside.into_iter().flatten().any(is_counted)
}

/// Shorter number words are too much else.
const NUMBER_LEN_MIN: usize = 3;

/// Goes along the pieces and puts one piece for each run that `join` takes; `join` also sees what
/// stands before. What is done moves up in its place, so that no memory is taken.
fn pass<'r>(
    pieces: &mut Pieces<'r>,
    join: impl Fn(&[Piece<'r>], &[Piece<'r>]) -> Option<(Sense<'r>, usize)>,
) {
    let (mut done, mut at) = (0_usize, 0);
    while let Some((before, rest)) = pieces.split_at_checked(at) {
        let Some(piece) = rest.first() else {
            break;
        };
        let before = before.get(..done).unwrap_or_default();
        let found = join(before, rest).filter(|(_, used)| *used > 0);
        let used = found.as_ref().map_or(1, |(_, used)| *used);
        if found.is_some() || done < at {
            let mut next = *piece;
            next.end = rest.get(used - 1).unwrap_or(piece).end;
            if let Some((sense, _)) = found {
                next.becomes(sense);
            }
            if let Some(place) = pieces.get_mut(done) {
                *place = next;
            }
        }
        done += 1;
        at += used;
    }
    pieces.truncate(done);
}

/// "half bag", "1/2 bag", "1 1/2 bags", "1 and a half bags".
fn half<'r>(pieces: &[Piece<'r>]) -> Option<(Sense<'r>, usize)> {
    let skip = |at: usize, is: fn(&Piece<'_>) -> bool| usize::from(pieces.get(at).is_some_and(is));
    let is_unit = |at: usize| {
        let skip = skip(at, is_one);
        pieces.get(at + skip)?.part(Meaning::unit).map(|_| skip)
    };
    if let Some(value) = part(pieces.first()?) {
        let skip = is_unit(1)?;
        return Some((Sense::Number(Number::new(value)), 1 + skip));
    }
    let number = pieces.first()?.number()?;
    let and = 1 + skip(1, joins);
    let at = and + skip(and, is_one);
    let value = number.value + part(pieces.get(at)?)?;
    is_unit(at + 1)?;
    Some((Sense::Number(Number::new(value)), at + 1))
}

/// "2 sacos e meio", "2 meter setengah", "kilo setengah": half of the unit before it.
fn half_behind(pieces: &mut Pieces<'_>) {
    let mut at = 0;
    while let Some(unit) = pieces.get(at).copied() {
        let is_unit = unit.part(Meaning::unit).is_some();
        let found = pieces
            .get(at + 1..)
            .filter(|_| is_unit)
            .and_then(and_a_half);
        if let Some((more, used)) = found {
            pieces.drain(at + 1..at + 1 + used);
            let before = at.checked_sub(1).and_then(|at| pieces.get_mut(at));
            // "a kilo and a half": the article is the one.
            let counted = |piece: &&mut Piece<'_>| piece.number().is_some() || is_one(piece);
            if let Some(place) = before.filter(counted) {
                let whole = place.number().map_or(1.0, |number| number.value);
                place.becomes(Sense::Number(Number::new(whole + more)));
            } else {
                let mut one = unit;
                one.becomes(Sense::Number(Number::new(1.0 + more)));
                one.end = one.start;
                pieces.insert(at, one);
                at += 1;
            }
        }
        at += 1;
    }
}

/// "41 et demi", where something is measured.
fn half_of_value<'r>(pieces: &[Piece<'r>]) -> Option<(Sense<'r>, usize)> {
    let number = pieces.first()?.number()?;
    let (more, used) = and_a_half(pieces.get(1..)?)?;
    Some((Sense::Number(Number::new(number.value + more)), 1 + used))
}

/// "and a half", "setengah" at the start of these pieces, and how many say it; but not "and half of A".
fn and_a_half(pieces: &[Piece<'_>]) -> Option<(f64, usize)> {
    let is = |at: usize, is: fn(&Piece<'_>) -> bool| usize::from(pieces.get(at).is_some_and(is));
    let and = is(0, joins);
    let at = and + is(and, is_one);
    let word = pieces.get(at)?;
    let more = if and > 0 { part(word)? } else { more(word)? };
    let next = at + 1 + is(at + 1, |piece| piece.is_plain(Plain::Filler));
    let is_land = |piece: &Piece<'_>| {
        piece.is_any(&[Plain::Of, Plain::Block, Plain::Land])
            || matches!(piece.sense, Sense::Block(_))
    };
    (!pieces.get(next).is_some_and(is_land)).then_some((more, at + 1))
}

/// A word that says "and a half" by itself.
fn more(piece: &Piece<'_>) -> Option<f64> {
    (piece.part(Meaning::numeral) == Some(Numeral::HalfScale)).then_some(0.5)
}

/// A part of one: "1/2", "half".
fn part(piece: &Piece<'_>) -> Option<f64> {
    if let Sense::Fraction(above, below) = piece.sense {
        return (above < below).then(|| f64::from(above) / f64::from(below));
    }
    let is_half = |meaning| meaning == Meaning::Extent(Extent::Half);
    piece.means(is_half).then_some(0.5)
}

fn joins(piece: &Piece<'_>) -> bool {
    piece.is_plain(Plain::And) || piece.part(Meaning::numeral) == Some(Numeral::Join)
}

fn is_one(piece: &Piece<'_>) -> bool {
    piece.part(Meaning::numeral) == Some(Numeral::One)
}

/// "12 of 30" and "10 to 12".
fn pair<'r>(before: Option<&Piece<'r>>, pieces: &[Piece<'r>]) -> Option<(Sense<'r>, usize)> {
    let [first, word, second, ..] = pieces else {
        return None;
    };
    let (Sense::Number(first), Sense::Number(second)) = (&first.sense, &second.sense) else {
        return None;
    };
    let (one, other) = (first.whole()?, second.whole()?);
    if word.is_plain(Plain::Of) {
        return Some((Sense::Share(one, other), 3));
    }
    // "lost 3 to 1" is a score, "change 3 to 1" is none.
    let corrects = before.is_some_and(|before| {
        before.is_any(&[
            Plain::Correction,
            Plain::Instead,
            Plain::Negation,
            Plain::No,
        ])
    });
    if word.is_plain(Plain::To) && other < one && other < SCORE_MAX && !corrects {
        return Some((Sense::NoNumber, 3));
    }
    let is_range = word.is_plain(Plain::To) || word.is_mark('-');
    (is_range && one < other).then_some((Sense::Range(one, other), 3))
}

/// Goals of a side that loses.
const SCORE_MAX: u32 = 10;

/// "1 200 trees": a group of three digits after one or two, where only a count can stand.
fn thousands<'r>(before: Option<&Piece<'r>>, pieces: &[Piece<'r>]) -> Option<(Sense<'r>, usize)> {
    let [first, second, ..] = pieces else {
        return None;
    };
    let (Sense::Number(high), Sense::Number(low)) = (&first.sense, &second.sense) else {
        return None;
    };
    let groups = first.end - first.start <= 2 && second.end - second.start == 3;
    let one_space = second.start == first.end + 1;
    let after_work =
        before.is_none_or(|piece| piece.kind().is_some_and(|kind| !kind.needs_values()));
    let counted = pieces
        .get(2)
        .is_some_and(|next| next.is_plain(Plain::Trees));
    if !(groups && one_space && after_work && high.value > 0.0) {
        return None;
    }
    let number = Number {
        // Beside a word for trees it is sure; else the person is asked.
        loose: !counted,
        ..Number::new(high.value * 1000.0 + low.value)
    };
    Some((Sense::Number(number), 2))
}

/// "2 meter 10 cm", "1 m 60": one length.
fn metres<'r>(pieces: &[Piece<'r>]) -> Option<(Sense<'r>, usize)> {
    let whole = |at: usize| pieces.get(at)?.number()?.whole();
    let is = |at: usize, unit: Unit| {
        let piece = pieces.get(at);
        piece.is_some_and(|piece| piece.means(|meaning| meaning == Meaning::Unit(unit)))
    };
    let (high, low) = (whole(0)?, whole(2)?);
    let said = is(3, Unit::Centimetre);
    // "1 m 5" may be half a metre more or five centimetres.
    let counts = pieces.get(3).is_some_and(|next| {
        next.is_any(&[Plain::Trees, Plain::Row])
            || next.means(|meaning| matches!(meaning, Meaning::Unit(_)))
    });
    let part = (1..100).contains(&low) && (said || (!counts && low >= 10));
    let sense = Sense::Metres(f64::from(high) + f64::from(low) / 100.0);
    (is(1, Unit::Metre) && high < METRES_MAX && part).then_some((sense, 3 + usize::from(said)))
}

/// No young tree is taller.
const METRES_MAX: u32 = 40;

/// "jam 7", "7 o'clock": a time of day counts nothing.
fn clock<'r>(pieces: &[Piece<'r>]) -> Option<(Sense<'r>, usize)> {
    let [first, second, ..] = pieces else {
        return None;
    };
    let hour = |piece: &Piece<'_>| piece.number()?.whole().filter(|hour| *hour <= 24);
    let is_time = (first.is_plain(Plain::Clock) && hour(second).is_some())
        || (hour(first).is_some() && second.is_plain(Plain::Clock));
    is_time.then_some((Sense::Clock, 2))
}

/// What is said of girth or height.
fn measures(piece: &Piece<'_>) -> bool {
    piece.kind().is_some_and(Kind::needs_values)
}

/// What is said of feeding.
fn feeds(piece: &Piece<'_>) -> bool {
    piece.is_of(sort::FERTILISER) || piece.kind() == Some(Kind::Fertilised)
}

/// "npk 15 15 15" and "npk 15:15:15"; also "npk 20-8-20", which is no day: in a text that feeds, three
/// numbers of which the first and the last are one are a grade. Without a fertiliser beside them three
/// equal numbers may be girths.
fn grade<'r>(
    before: Option<&Piece<'r>>,
    pieces: &[Piece<'r>],
    folded: &Folded<'_>,
    is_fed: bool,
) -> Option<(Sense<'r>, usize)> {
    let first = pieces.first()?;
    if let Sense::Triple([day, month, last]) = first.sense {
        let written = folded.written(first.start, first.end);
        // Grades are written with dashes.
        if let Some(day) = dates::with_year(day, month, last).filter(|_| written.contains('/')) {
            return Some((Sense::When(day), 1));
        }
        let dashed = written.contains('-');
        let named = before.is_some_and(|before| before.is_of(sort::FERTILISER));
        let on_a_day = before.is_some_and(|before| before.is_plain(Plain::At));
        let is_even = is_fed && day == last && !on_a_day;
        return (last < 100 && dashed && (named || is_even)).then_some((Sense::Grade, 1));
    }
    let [first, second, third, ..] = pieces else {
        return None;
    };
    if !before.is_some_and(feeds) && !pieces.get(3).is_some_and(feeds) {
        return None;
    }
    let small = |piece: &Piece<'_>| piece.number()?.whole().filter(|value| *value <= 60);
    let (one, two, three) = (small(first)?, small(second)?, small(third)?);
    // Three equal small numbers in a row count nothing.
    (one == two && two == three && one > 0).then_some((Sense::Grade, 3))
}
