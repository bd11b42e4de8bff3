//! A report in the making.
//!
//! Deliberately absent: how its slots are filled (`slots`, `roles`).

use alloc::{string::String, vec::Vec};

use crate::{
    details::Details,
    kind::Kind,
    reading::{Doubt, Report},
    rules::lengths::{self, Lengths},
    span::Span,
    when::When,
};

/// A report in the making.
pub(crate) struct Row {
    pub(crate) kind: Kind,
    pub(crate) details: Details,
    /// Measured values, before their unit is settled.
    pub(crate) lengths: Lengths,
    pub(crate) block: Option<String>,
    pub(crate) when: Option<When>,
    pub(crate) doubts: Vec<Doubt>,
    pub(crate) span: Option<Span>,
    /// "not yet" was said of it.
    pub(crate) not_yet: bool,
    /// Began with a block after "and": what is said of it was also said of the row before.
    pub(crate) joined: bool,
    /// A block came before its number.
    pub(crate) block_first: bool,
}

impl Row {
    /// An empty report of this kind.
    pub(crate) fn new(kind: Kind) -> Self {
        Self {
            kind,
            details: Details::default(),
            lengths: Lengths::default(),
            block: None,
            when: None,
            doubts: Vec::new(),
            span: None,
            not_yet: false,
            joined: false,
            block_first: false,
        }
    }

    /// Takes a place of the text in.
    pub(crate) fn cover(&mut self, span: Span) {
        self.span = Some(self.span.map_or(span, |whole| Span {
            start: whole.start.min(span.start),
            end: whole.end.max(span.end),
        }));
    }

    /// Turns the measured values into centimetres.
    pub(crate) fn settle_lengths(&mut self) {
        let (values, guessed) = lengths::centimetres(&self.lengths, self.kind);
        // "5 trees: 25 26 24 27 25" says the same twice.
        let measured = u32::try_from(values.len())
            .ok()
            .filter(|number| *number > 0);
        self.details.count = self.details.count.filter(|count| Some(*count) != measured);
        self.details.values_cm = values;
        self.doubts.extend(guessed.map(Doubt::GuessedUnit));
    }

    /// Whether its count was said.
    pub(crate) const fn has_number(&self) -> bool {
        self.details.count.is_some()
    }

    /// Whether a clone was named, so that a further number is of another one.
    pub(crate) const fn clone_name_said(&self) -> bool {
        self.details.clone_name.is_some()
    }

    /// The finished report.
    pub(crate) fn into_report(self) -> Report {
        Report {
            kind: self.kind,
            details: self.details,
            block: self.block,
            when: self.when,
            doubts: self.doubts,
            span: self.span.unwrap_or_default(),
        }
    }
}

/// What was said once of several blocks ("npk on A and B") holds for each.
pub(crate) fn share_details(rows: &mut [Row]) {
    let counted = rows.iter().filter(|row| row.has_number()).count();
    if let Some(count) = rows.iter().find_map(|row| row.details.count)
        && counted == 1
        && rows.len() > 1
    {
        // "planted 120 in A and B": in each, or in both together?
        for row in rows.iter_mut() {
            row.details.count = Some(count);
            row.doubts.push(Doubt::LooseNumber(count));
        }
    }
    let Some((first, others)) = rows.split_first_mut() else {
        return;
    };
    let first = &first.details;
    for row in others {
        let details = &mut row.details;
        details.product = details.product.take().or_else(|| first.product.clone());
        details.formula = details.formula.take().or_else(|| first.formula.clone());
        details.species = details.species.take().or_else(|| first.species.clone());
        details.clone_name = details
            .clone_name
            .take()
            .or_else(|| first.clone_name.clone());
        details.material = details.material.or(first.material);
        details.ailment = details.ailment.or(first.ailment);
        details.cause = details.cause.or(first.cause);
        details.wetness = details.wetness.or(first.wetness);
    }
}
