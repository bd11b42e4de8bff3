//! The account of a learned reading: what of the text no report takes up.
//!
//! A word of work, a day, a block, a number, a "not" that no report takes up may mean that the text
//! tells something else. Deliberately absent: what follows from it (`sure`, `verdict`).

use crate::{
    details::Wetness,
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
                let is_aside =
                    used.is_some_and(|(used, margin)| used == Use::Nothing && margin >= ASIDE_MIN);
                account.numbers += usize::from(idle);
                account.riddles += usize::from(idle && !is_aside);
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
