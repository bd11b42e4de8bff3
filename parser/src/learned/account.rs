//! The account of a learned reading: what of the text no report takes up.
//!
//! A word of work, a day, a block, a number, a "not" that no report takes up may mean that the text
//! tells something else. Deliberately absent: what follows from it (`sure`, `verdict`).

use crate::{
    details::{Unit, Wetness},
    kind::Kind,
    lists::piece::{Piece, Sense},
    meaning::{Meaning, Plain},
    pieces::used::{Use, Uses},
    reading::Report,
    when::When,
};

/// How many pieces of each sort are left over.
#[derive(Clone, Copy, Default)]
pub(crate) struct Account {
    /// Words of work that chat is not full of.
    pub(crate) heads: usize,
    pub(crate) days: usize,
    pub(crate) blocks: usize,
    pub(crate) denials: usize,
    pub(crate) numbers: usize,
    /// Those of them that are not surely money, labour, hours or the like.
    pub(crate) riddles: usize,
}

impl Account {
    /// Looks at all pieces of a text.
    pub(crate) fn of(pieces: &[Piece<'_>], uses: &Uses, reports: &[Report]) -> Self {
        let mut account = Self::default();
        let denied = reports.iter().any(is_denial);
        for (piece, used) in pieces.iter().zip(uses) {
            let told = |of: &dyn Fn(&Report) -> bool| reports.iter().any(of);
            if let Sense::Listed(listed) = piece.sense {
                let idle = !listed.is_weak() && is_idle_head(piece, reports);
                account.heads += usize::from(idle);
            } else if let Sense::When(day) = piece.sense {
                account.days += usize::from(!told(&|report| report.when == Some(day)));
            } else if let Sense::Block(name) = piece.sense {
                account.blocks += usize::from(!told(&|report| is_at(report, name)));
            } else if let Some(number) = piece.number() {
                let idle = !told(&|report| has(report, number.value));
                account.numbers += usize::from(idle);
                account.riddles += usize::from(idle && !is_aside(*used));
            }
            let denies = piece.is_any(&[Plain::Negation, Plain::NotYet]);
            account.denials += usize::from(denies && !denied);
        }
        account
    }

    /// Nothing is left over that would make it another reading.
    pub(crate) const fn is_closed(self) -> bool {
        self.heads + self.blocks + self.riddles == 0
    }
}

/// The first piece that reports which are to be stored leave without a role: a word of work, a block, or
/// a number that is neither in a report, nor of rows, rounds or days, nor surely kept for nothing.
pub(crate) fn loose(pieces: &[Piece<'_>], uses: &Uses, reports: &[Report]) -> Option<usize> {
    let told = |of: &dyn Fn(&Report) -> bool| reports.iter().any(of);
    let measures = |value: f64| {
        let in_unit = |cm: &f64| LENGTHS.iter().any(|one| (cm - value * one).abs() < NEAR);
        told(&|report| report.details.values_cm.iter().any(in_unit))
    };
    let is_told = |value| told(&|report| has(report, value)) || measures(value);
    let is_loose = |(at, piece): &(usize, &Piece<'_>)| {
        if let Sense::Listed(listed) = piece.sense {
            !listed.is_weak() && is_idle_head(piece, reports) && !sets_out(piece, reports)
        } else if let Sense::Block(name) = piece.sense {
            !told(&|report| is_at(report, name))
        } else if let Sense::Fraction(..) = piece.sense {
            !told(&|report| report.details.extent.is_some())
        } else if let Some(number) = piece.number() {
            let used = uses.get(*at).copied().flatten();
            let told = is_told(number.value) || number.decimal.is_some_and(is_told);
            !told && !is_aside(used) && !has_role_beside(pieces, *at)
        } else {
            matches!(piece.sense, Sense::Triple(_))
        }
    };
    let mut all = pieces.iter().enumerate();
    all.find(is_loose).map(|(at, _)| at)
}

/// "planted gaps", "planted rice": the word for planting is told by what came into the ground.
fn sets_out(piece: &Piece<'_>, reports: &[Report]) -> bool {
    let into_ground = [Kind::Replaced, Kind::CoverSown, Kind::IntercropSown];
    piece.kind() == Some(Kind::Planted)
        && reports
            .iter()
            .any(|report| into_ground.contains(&report.kind))
}

/// "3 rows", "row 3", "3 times", "2 days", "3 m apart".
fn has_role_beside(pieces: &[Piece<'_>], at: usize) -> bool {
    let before = at.checked_sub(1).and_then(|at| pieces.get(at));
    let is_passed = |piece: &Piece<'_>| piece.is_any(&[Plain::Row, Plain::Round]);
    let measures = |piece: &Piece<'_>| {
        let length = piece.part(Meaning::unit).is_some_and(Unit::is_length);
        length || piece.part(Meaning::period).is_some()
    };
    before.is_some_and(is_passed)
        || pieces
            .get(at + 1)
            .is_some_and(|next| is_passed(next) || measures(next))
}

/// It is surely money, labour, hours or the like.
fn is_aside(used: Option<(Use, i32)>) -> bool {
    used.is_some_and(|(used, margin)| used == Use::Nothing && margin >= ASIDE_MIN)
}

/// By so much it must be likelier that nothing is kept of a number.
const ASIDE_MIN: i32 = 60;

/// A word of work that no report is of.
fn is_idle_head(piece: &Piece<'_>, reports: &[Report]) -> bool {
    let kind = |meaning: Meaning| {
        if let Meaning::Kind(kind) = meaning {
            Some(kind)
        } else {
            None
        }
    };
    let told = |meaning: Meaning| {
        kind(meaning).is_some_and(|kind| {
            reports
                .iter()
                .any(|report| report.kind == kind || report.details.not_done == Some(kind))
        })
    };
    piece.means(|meaning| kind(meaning).is_some()) && !piece.means(told)
}

fn is_at(report: &Report, name: &str) -> bool {
    report
        .block
        .as_deref()
        .is_some_and(|block| block.eq_ignore_ascii_case(name))
}

fn is_denial(report: &Report) -> bool {
    let details = &report.details;
    details.not_done.is_some() || details.count == Some(0) || details.wetness == Some(Wetness::None)
}

/// Units of length, in centimetres.
const LENGTHS: [f64; 5] = [0.1, 1.0, 2.54, 30.48, 100.0];

/// Two numbers closer than this are one.
const NEAR: f64 = 0.001;

/// Whether a value is in a report.
fn has(report: &Report, value: f64) -> bool {
    let details = &report.details;
    let day = if let Some(When::MonthDay(day)) = report.when {
        Some(u32::from(day))
    } else if let Some(When::DaysAgo(days)) = report.when {
        Some(u32::from(days))
    } else {
        None
    };
    let counts = [details.count, details.of, details.weak, day];
    let measures = [details.amount, details.area];
    let is = |other: f64| (other - value).abs() < NEAR || (other - value * 100.0).abs() < NEAR;
    counts.into_iter().flatten().any(|it| is(f64::from(it)))
        || measures.into_iter().flatten().any(|it| is(it.value))
        || details.mm.is_some_and(is)
        || details.values_cm.iter().any(|cm| is(*cm))
}
