//! How sure a learned reading is: one scale, by signs that were weighed on texts of other people.
//!
//! The signs: how much worse the next reading is, how strongly a single word names each kind, words
//! of no list, what the rules of the lists make of the same text, how many reports there are.
//! Deliberately absent: what follows from it (`reader`).

use smallvec::SmallVec;

use crate::{
    account::Account,
    course::{ASIDE, Course, KINDS, TOLD},
    details::Measure,
    kind::Kind,
    meaning::{Meaning, Plain, sort},
    piece::{Piece, Sense},
    reading::{Known, Report, Stance},
    segment::Segment,
    tellings::Tellings,
    uses::{Use, Uses},
};

/// A sign that holds of a text.
pub(crate) type Sign = u8;
/// Those of one text.
pub(crate) type Signs = SmallVec<[Sign; 64]>;
/// All signs.
pub(crate) const SIGNS: usize = 252;

/// Steps of the scales, and how many steps each has.
const STEP: i32 = 10;
const STEPS: i32 = 14;

/// What the rules of the lists make of the same text.
pub(crate) struct Rules<'a> {
    pub(crate) reports: &'a [Report],
    pub(crate) stances: &'a [Stance],
}

/// The signs of a reading.
#[expect(
    clippy::too_many_lines,
    reason = "one list: each sign and its place in the table"
)]
pub(crate) fn signs(
    pieces: &[Piece<'_>],
    course: &Course,
    found: &Tellings,
    uses: &Uses,
    (told, account): (&[Report], Account),
    rules: &Rules<'_>,
) -> Signs {
    let mut signs = Signs::new();
    let mut put = |first: i32, value: i32, most: i32| {
        signs.push(u8::try_from(first + value.clamp(0, most)).unwrap_or(0));
    };
    put(0, 0, 0);
    put(1, found.margin / STEP, STEPS);
    let used = uses.iter().flatten().map(|(_, margin)| *margin).min();
    put(16, used.map_or(STEPS, |margin| margin / STEP), STEPS);
    let heads = found
        .segments
        .iter()
        .map(|segment| head(pieces, course, segment));
    put(31, heads.min().unwrap_or(0) / STEP + 4, STEPS);
    put(46, i32::from(found.listed), 1);
    let strange = pieces
        .iter()
        .filter(|piece| matches!(piece.sense, Sense::Unknown))
        .count();
    put(48, i32::try_from(strange).unwrap_or(9), 7);
    put(56, agreement(told, rules), 3);
    let stance = pieces.iter().any(|piece| piece.is_of(sort::STANCE));
    let asks = pieces.iter().any(|piece| piece.is_mark('?'));
    let next = pieces.iter().any(|piece| piece.is_plain(Plain::Next));
    put(60, i32::from(stance), 1);
    put(62, i32::from(asks), 1);
    put(64, i32::from(next), 1);
    put(66, i32::try_from(told.len()).unwrap_or(9), 5);
    let aside = pieces.iter().zip(&course.states).filter(|(piece, state)| {
        usize::from(**state) == ASIDE
            && (piece.number().is_some() || matches!(piece.sense, Sense::Block(_)))
    });
    put(72, i32::try_from(aside.count()).unwrap_or(9), 4);
    put(77, i32::from(found.asked), 1);
    let blocks = told.iter().filter(|report| report.block.is_none()).count();
    put(79, i32::try_from(blocks).unwrap_or(9), 2);
    for segment in &found.segments {
        let kind = Kind::ALL.iter().position(|kind| *kind == segment.kind);
        let denied = if segment.denied == Some(true) { 24 } else { 0 };
        put(
            84 + denied,
            i32::try_from(kind.unwrap_or(0)).unwrap_or(0),
            22,
        );
    }
    let length = pieces
        .iter()
        .filter(|piece| !matches!(piece.sense, Sense::Mark(_)))
        .count();
    put(132, i32::try_from(length / 3).unwrap_or(9), 9);
    let closest = closest(pieces, course);
    put(142, closest / STEP, STEPS);
    let no = pieces
        .iter()
        .any(|piece| piece.is_any(&[Plain::Negation, Plain::NotYet]));
    let denied = found
        .segments
        .iter()
        .any(|segment| segment.denied == Some(true));
    put(157, i32::from(no) * 2 + i32::from(denied), 3);
    let mut said = 0_u32;
    for piece in pieces.iter().filter(|piece| piece.is_of(sort::STANCE)) {
        for meaning in piece.meanings() {
            if let Meaning::Stance(stance) = meaning {
                said |= 1 << (stance as u32);
            }
        }
    }
    while said != 0 {
        put(161, i32::try_from(said.trailing_zeros()).unwrap_or(0), 10);
        said &= said - 1;
    }
    let idle = uses
        .iter()
        .flatten()
        .filter(|(used, _)| *used == Use::Nothing);
    put(
        172,
        idle.clone()
            .map(|(_, margin)| *margin)
            .min()
            .map_or(STEPS, |least| least / STEP),
        STEPS,
    );
    put(187, i32::try_from(idle.count()).unwrap_or(9), 5);
    let mended = pieces
        .iter()
        .filter(|piece| piece.torn || piece.repaired.is_some())
        .count();
    put(193, i32::try_from(mended).unwrap_or(9), 3);
    let days = pieces
        .iter()
        .filter(|piece| matches!(piece.sense, Sense::When(_)))
        .count();
    let told_days = told.iter().filter(|report| report.when.is_some()).count();
    put(
        197,
        i32::try_from(days.min(2) * 3 + told_days.min(2)).unwrap_or(0),
        8,
    );
    let blocks = pieces
        .iter()
        .filter(|piece| matches!(piece.sense, Sense::Block(_)))
        .count();
    put(
        206,
        i32::try_from(blocks.min(3) * 4 + told.len().min(3)).unwrap_or(0),
        15,
    );
    let doubts = told.iter().map(|report| report.doubts.len()).sum::<usize>();
    put(222, i32::try_from(doubts).unwrap_or(9), 2);
    put(
        225,
        i32::try_from(rules.reports.len().min(2)).unwrap_or(0) * 3
            + i32::try_from(told.len().min(2)).unwrap_or(0),
        8,
    );
    let left = [
        (234, account.heads, 3),
        (238, account.days, 2),
        (241, account.blocks, 2),
        (244, account.numbers, 3),
        (248, account.denials, 2),
    ];
    for (first, count, most) in left {
        put(first, i32::try_from(count).unwrap_or(9), most);
    }
    signs
}

/// How strongly any one word of a segment names its kind and no other.
fn head(pieces: &[Piece<'_>], course: &Course, segment: &Segment) -> i32 {
    let kind = Kind::ALL
        .iter()
        .position(|kind| *kind == segment.kind)
        .unwrap_or(0);
    let own = |at: usize| -> Option<i32> {
        let piece = pieces.get(at)?;
        let is_word = matches!(
            piece.sense,
            Sense::Unknown | Sense::Listed(_) | Sense::TwoKinds(..)
        );
        let worth = course.worths.get(at).filter(|_| is_word)?;
        let own = *worth.get(TOLD + kind)?;
        let others = worth.iter().take(TOLD + KINDS).enumerate();
        let others = others.filter(|(state, _)| *state != TOLD + kind);
        Some(own - others.map(|(_, worth)| *worth).max()?)
    };
    segment.pieces.clone().filter_map(own).max().unwrap_or(-40)
}

/// The least margin of a number or a block.
fn closest(pieces: &[Piece<'_>], course: &Course) -> i32 {
    let values = pieces
        .iter()
        .zip(&course.margins)
        .filter(|(piece, _)| piece.number().is_some() || matches!(piece.sense, Sense::Block(_)));
    values
        .map(|(_, margin)| *margin)
        .min()
        .unwrap_or(STEP * STEPS)
}

/// Whether the rules of the lists tell the same: nothing, something else, the same but not as fact,
/// the same.
pub(crate) fn agreement(told: &[Report], rules: &Rules<'_>) -> i32 {
    if rules.reports.is_empty() {
        return 0;
    }
    let same = told.len() == rules.reports.len()
        && told.iter().zip(rules.reports).all(|(one, other)| {
            one.kind == other.kind
                && one.block == other.block
                && one.details.count == other.details.count
                && one.details.amount == other.details.amount
                && one.details.area == other.details.area
                && one.details.values_cm == other.details.values_cm
                && one.when == other.when
        });
    match (same, rules.stances.is_empty()) {
        (true, true) => 3,
        (true, false) => 2,
        (false, _) => 1,
    }
}

/// Whether the lists tell the same and only more: a value that was not learned, or a further report
/// with a number of its own.
pub(crate) fn tells_less(told: &[Report], lists: &[Report]) -> bool {
    let mut left = told.iter().peekable();
    let all = lists.iter().all(|more| {
        let same = left.peek().is_some_and(|less| is_less(less, more));
        if same {
            left.next();
        }
        same || has_number(more)
    });
    all && left.next().is_none()
}

/// Whether a report tells the same as another, or less.
fn is_less(one: &Report, other: &Report) -> bool {
    let number = |one: Option<f64>, other: Option<f64>| one.is_none() || one == other;
    let value = |it: Option<Measure>| it.map(|it| it.value);
    let (less, more) = (&one.details, &other.details);
    one.kind == other.kind
        && one.block == other.block
        && (one.when.is_none() || one.when == other.when)
        && number(less.count.map(f64::from), more.count.map(f64::from))
        && number(value(less.amount), value(more.amount))
        && number(value(less.area), value(more.area))
        && (less.values_cm.is_empty() || less.values_cm == more.values_cm)
}

fn has_number(report: &Report) -> bool {
    let details = &report.details;
    details.count.is_some()
        || details.amount.is_some()
        || details.area.is_some()
        || !details.values_cm.is_empty()
}

/// How much in the text belongs to reports and seldom to chat: a block, a word of work that chat is
/// not full of, a number that is used, a word that counts trees or weighs.
pub(crate) fn evidence(pieces: &[Piece<'_>], uses: &Uses, known: &Known<'_>) -> usize {
    // A telephone number: an advert. "lost 3 to 1": a score.
    if pieces
        .iter()
        .any(|piece| matches!(piece.sense, Sense::TooLarge | Sense::NoNumber))
    {
        return 0;
    }
    let any = |wanted: &dyn Fn(&Piece<'_>) -> bool| pieces.iter().any(wanted);
    let own = |piece: &Piece<'_>| {
        matches!(piece.sense, Sense::Block(name)
            if known.blocks.is_empty() || known.blocks.iter().any(|own| own.eq_ignore_ascii_case(name)))
    };
    let strong = |piece: &Piece<'_>| {
        piece.is_of(sort::WORK) && piece.listed().is_some_and(|listed| !listed.is_weak())
    };
    let counted = uses.iter().flatten().any(|(used, _)| *used != Use::Nothing);
    let said = |piece: &Piece<'_>| piece.is_any(&[Plain::Block, Plain::Trees, Plain::Row]);
    let others = usize::from(any(&own))
        + usize::from(any(&strong))
        + usize::from(any(&said))
        + usize::from(any(&|piece| {
            piece.is_of(sort::FERTILISER | sort::AILMENT | sort::CLONE)
        }));
    // A number alone is anything.
    let counted =
        counted || any(&|piece| matches!(piece.sense, Sense::List { .. } | Sense::Share(..)));
    others + usize::from(others > 0 && counted)
}
