//! How sure a learned reading is: one scale, by signs that were weighed on texts of other people.
//!
//! The signs: how much worse the next reading is, how strongly a single word names each kind, words
//! of no list, what the rules of the lists make of the same text, how many reports there are, what is
//! left over. What they are worth together is learned (`trees`).
//! Deliberately absent: what follows from it (`verdict`).

use crate::{
    kind::Kind,
    learned::{
        account::Account,
        course::{ASIDE, Course, KINDS, TOLD},
        tellings::Tellings,
    },
    lists::piece::{Piece, Sense, Trust},
    meaning::{Meaning, Plain, sort},
    pieces::{
        text::{FULL_STOP, break_strength},
        used::{Use, Uses},
    },
    reading::{Known, Report, Stance},
    rules::segment::Segment,
};

/// The signs of a reading, each a small number.
pub(crate) type Signs = [u8; SIGNS];
/// How many signs there are.
pub(crate) const SIGNS: usize = OTHERS + Stance::ALL.len() + KINDS;
/// Those that are of no one stance or kind.
const OTHERS: usize = 52;
/// No sign is larger.
pub(crate) const SIGN_MAX: u8 = 40;

/// Margins are looked at in steps.
const STEP: i32 = 10;
/// A head may also speak against its kind.
const HEAD_FROM: i32 = -100;

/// What the rules of the lists make of the same text.
pub(crate) struct Rules<'a> {
    pub(crate) reports: &'a [Report],
    pub(crate) stances: &'a [Stance],
}

/// A learned reading, to be looked at.
pub(crate) struct Found<'a, 'r> {
    pub(crate) pieces: &'a [Piece<'r>],
    pub(crate) course: &'a Course,
    pub(crate) tellings: &'a Tellings,
    pub(crate) uses: &'a Uses,
    pub(crate) told: &'a [Report],
    pub(crate) account: Account,
    /// By how much a sickness or a cause of harm is likelier than another.
    pub(crate) harm: i32,
    pub(crate) evidence: usize,
    pub(crate) way: Way,
}

/// How a course differs from the best one.
#[derive(Clone, Copy, Default)]
pub(crate) struct Way {
    /// It is worth so much less.
    pub(crate) worse: i32,
    /// It was made to tell a kind more; else, if it is worse, one less.
    pub(crate) more: bool,
}

/// Where signs are put, one after the other.
struct Sink {
    signs: Signs,
    next: usize,
}

impl Sink {
    fn put(&mut self, value: i32) {
        let value = value.clamp(0, i32::from(SIGN_MAX));
        if let Some(place) = self.signs.get_mut(self.next) {
            *place = u8::try_from(value).unwrap_or(SIGN_MAX);
        }
        self.next += 1;
    }

    fn count(&mut self, value: usize) {
        self.put(i32::try_from(value).unwrap_or(i32::MAX));
    }

    fn is(&mut self, value: bool) {
        self.put(i32::from(value));
    }
}

/// The signs of a reading.
pub(crate) fn signs(found: &Found<'_, '_>, rules: &Rules<'_>, known: &Known<'_>) -> Signs {
    let mut sink = Sink {
        signs: [0; SIGNS],
        next: 0,
    };
    margins(&mut sink, found);
    words(&mut sink, found);
    reports(&mut sink, found, known);
    left(&mut sink, found);
    beside(&mut sink, found.told, rules);
    sink.put((found.way.worse + STEP - 1) / STEP);
    sink.is(found.way.more);
    debug_assert!(sink.next <= OTHERS, "the signs have their places");
    sink.next = OTHERS;
    let mut said = 0_u32;
    for piece in found
        .pieces
        .iter()
        .filter(|piece| piece.is_of(sort::STANCE))
    {
        for meaning in piece.meanings() {
            if let Meaning::Stance(stance) = meaning {
                said |= 1 << (stance as u32);
            }
        }
    }
    for stance in Stance::ALL {
        sink.is(said & (1 << (*stance as u32)) != 0);
    }
    for kind in Kind::ALL {
        let told = |denied: bool| {
            found
                .tellings
                .segments
                .iter()
                .filter(|one| one.kind == kind && (one.denied == Some(true)) == denied)
                .count()
        };
        sink.count(told(false).min(2) + 3 * told(true).min(2));
    }
    sink.signs
}

/// How much likelier it is than anything else.
fn margins(sink: &mut Sink, found: &Found<'_, '_>) {
    let Found {
        pieces,
        course,
        tellings,
        uses,
        ..
    } = found;
    sink.put(tellings.margin / STEP);
    sink.put(course.missed / STEP);
    let least = |of: &dyn Fn(Use) -> bool| {
        let of = uses.iter().flatten().filter(|(used, _)| of(*used));
        of.map(|(_, margin)| *margin).min().unwrap_or(i32::MAX)
    };
    sink.put(least(&|_| true) / STEP);
    sink.put(least(&|used| used == Use::Nothing) / STEP);
    let heads = tellings
        .segments
        .iter()
        .map(|segment| head(pieces, course, segment));
    sink.put((heads.min().unwrap_or(HEAD_FROM) - HEAD_FROM) / STEP);
    sink.put(closest(pieces, course) / STEP);
    sink.put(found.harm / STEP);
    sink.is(tellings.asked);
    sink.is(tellings.listed);
    sink.count(found.evidence);
}

/// What words there are.
fn words(sink: &mut Sink, found: &Found<'_, '_>) {
    let pieces = found.pieces;
    let count = |of: &dyn Fn(&Piece<'_>) -> bool| pieces.iter().filter(|piece| of(piece)).count();
    sink.count(count(&|piece| !matches!(piece.sense, Sense::Mark(_))));
    sink.count(count(&|piece| matches!(piece.sense, Sense::Unknown)));
    sink.count(count(&|piece| piece.everyday));
    sink.count(count(&|piece| piece.trust != Trust::Full));
    sink.count(count(&|piece| piece.torn || piece.repaired.is_some()));
    sink.count(count(&|piece| piece.is_of(sort::STANCE)));
    sink.count(count(&|piece| piece.is_mark('?')));
    sink.count(count(&|piece| piece.is_plain(Plain::Next)));
    sink.count(count(&|piece| {
        piece.is_any(&[Plain::Negation, Plain::NotYet])
    }));
    sink.count(count(&|piece| matches!(piece.sense, Sense::When(_))));
    sink.count(count(&|piece| matches!(piece.sense, Sense::Block(_))));
    sink.count(count(&|piece| piece.number().is_some()));
    sink.count(count(&|piece| break_strength(piece) >= FULL_STOP));
    sink.count(count(&|piece| break_strength(piece) > 0));
    let aside = |piece: &Piece<'_>, state: u8| {
        usize::from(state) == ASIDE && !matches!(piece.sense, Sense::Mark(_))
    };
    let with_state = || pieces.iter().zip(found.course.states.iter().copied());
    sink.count(
        with_state()
            .filter(|(piece, state)| aside(piece, *state))
            .count(),
    );
    let is_value =
        |piece: &Piece<'_>| piece.number().is_some() || matches!(piece.sense, Sense::Block(_));
    let values = with_state().filter(|(piece, state)| aside(piece, *state) && is_value(piece));
    sink.count(values.count());
    let strange = with_state().filter(|(piece, state)| {
        usize::from(*state) >= TOLD && matches!(piece.sense, Sense::Unknown)
    });
    sink.count(strange.count());
}

/// What is told.
fn reports(sink: &mut Sink, found: &Found<'_, '_>, known: &Known<'_>) {
    let told = found.told;
    let count = |of: &dyn Fn(&Report) -> bool| told.iter().filter(|report| of(report)).count();
    sink.count(told.len());
    sink.count(found.tellings.segments.len());
    sink.count(count(&|report| report.block.is_none()));
    sink.count(count(&|report| report.when.is_some()));
    sink.count(told.iter().map(|report| report.doubts.len()).sum());
    sink.count(count(&|report| {
        report.kind.wants_count() && report.details.count.is_none()
    }));
    sink.count(count(&|report| report.details.count.is_some()));
    sink.count(count(&|report| {
        report.details.amount.is_some() || report.details.area.is_some()
    }));
    sink.count(count(&|report| {
        let own = |name: &str| {
            known
                .blocks
                .iter()
                .any(|own| own.eq_ignore_ascii_case(name))
        };
        report.block.as_deref().is_some_and(own)
    }));
    sink.count(count(&|report| {
        let lone = |name: &str| name.chars().count() == 1;
        report.block.as_deref().is_some_and(lone)
    }));
    let most = told.iter().filter_map(|report| report.details.count).max();
    sink.put(most.map_or(0, |most| {
        1 + i32::try_from(most.checked_ilog2().unwrap_or(0)).unwrap_or(0)
    }));
    let denied = |segment: &Segment| segment.denied == Some(true);
    sink.is(found.tellings.segments.iter().any(denied));
}

/// What no report takes up.
fn left(sink: &mut Sink, found: &Found<'_, '_>) {
    let account = found.account;
    sink.count(account.heads);
    sink.count(account.days);
    sink.count(account.blocks);
    sink.count(account.numbers);
    sink.count(account.riddles);
    sink.count(account.denials);
}

/// What the rules of the lists make of it.
fn beside(sink: &mut Sink, told: &[Report], rules: &Rules<'_>) {
    sink.count(rules.reports.len());
    sink.count(rules.stances.len());
    sink.put(agreement(told, rules));
    let both = |same: &dyn Fn(&Report, &Report) -> bool| {
        told.len() == rules.reports.len()
            && told
                .iter()
                .zip(rules.reports)
                .all(|(one, other)| same(one, other))
    };
    sink.is(both(&|one, other| one.kind == other.kind));
    sink.is(both(&|one, other| one.block == other.block));
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
    segment
        .pieces
        .clone()
        .filter_map(own)
        .max()
        .unwrap_or(HEAD_FROM)
}

/// The least margin of a number or a block.
fn closest(pieces: &[Piece<'_>], course: &Course) -> i32 {
    let values = pieces
        .iter()
        .zip(&course.margins)
        .filter(|(piece, _)| piece.number().is_some() || matches!(piece.sense, Sense::Block(_)));
    values.map(|(_, margin)| *margin).min().unwrap_or(i32::MAX)
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
                && one.details.mm == other.details.mm
                && one.details.wetness == other.details.wetness
                && one.when == other.when
        });
    match (same, rules.stances.is_empty()) {
        (true, true) => 3,
        (true, false) => 2,
        (false, _) => 1,
    }
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
