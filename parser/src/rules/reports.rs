//! From segments to reports: what is denied, and what is carried from one to the next.
//!
//! Deliberately absent: whether a report may be stored; `gate` says why not, the scheduler crate
//! decides.

use alloc::{
    string::{String, ToString},
    vec::Vec,
};

use smallvec::SmallVec;

use crate::{
    details::{Details, Wetness},
    glyphs::fold::Folded,
    kind::Kind,
    lists::{
        lexicon::Listed,
        piece::{Piece, Sense},
    },
    meaning::{Meaning, Plain},
    pieces::{
        text::{FULL_STOP, break_strength},
        used::Uses,
    },
    reading::{Doubt, Problem, Report},
    rules::{row::Row, segment::Segment, slots},
    when::When,
};

/// How far before a word of work its "not" may stand.
const NEGATION_REACH: usize = 4;

/// The reports of a text.
pub(crate) struct Told {
    pub(crate) reports: Vec<Report>,
    pub(crate) problems: Vec<Problem>,
    /// The pieces that deny a report.
    pub(crate) denials: Vec<usize>,
    /// A sight was said not to be yet ("dead 8 not yet"), which is no fact.
    pub(crate) not_a_fact: bool,
}

impl Told {
    /// Nothing.
    pub(crate) const fn none() -> Self {
        Self {
            reports: Vec::new(),
            problems: Vec::new(),
            denials: Vec::new(),
            not_a_fact: false,
        }
    }

    /// Puts a doubt on every report, once.
    pub(crate) fn doubt(&mut self, doubt: &Doubt) {
        for report in &mut self.reports {
            if !report.doubts.contains(doubt) {
                report.doubts.push(doubt.clone());
            }
        }
    }
}

/// Reads the reports.
pub(crate) fn read(
    pieces: &[Piece<'_>],
    segments: &[Segment],
    folded: &Folded<'_>,
    uses: &Uses,
) -> Told {
    let mut told = Told::none();
    let mut previous = None;
    let mut groups: SmallVec<[Vec<Report>; 2]> = SmallVec::with_capacity(segments.len());
    // Nearly always one row, and a row is large.
    let mut rows: Vec<Row> = Vec::with_capacity(usize::from(!segments.is_empty()));
    let mut bare: SmallVec<[usize; 2]> = SmallVec::new();
    for segment in segments {
        slots::reports(pieces, segment, folded, &mut told.problems, &mut rows, uses);
        // "não morreu nenhuma" says no twice.
        let (before, after) = if segment.denied.is_some() {
            (None, None)
        } else {
            (
                denial_before(pieces, segment, previous),
                denial_after(pieces, segment),
            )
        };
        told.denials.extend(before.into_iter().chain(after));
        let denied = segment
            .denied
            .unwrap_or(before.is_some() || after.is_some());
        let answer = slots::rain_answer(pieces, segment);
        for row in &mut rows {
            if segment.kind == Kind::Rain {
                row.details.wetness = rain(row, answer, denied);
            } else if segment.kind == Kind::IntercropSown
                && row.details.species.is_none()
                && (answer == Some(Wetness::None) || denied)
            {
                row.details.count = Some(0);
            } else if segment.kind == Kind::Branched && before.is_some() {
                // "82 not branched": trees that were looked at.
                row.kind = Kind::NotBranched;
            } else if denied || (segment.denied.is_none() && row.not_yet) {
                told.not_a_fact |= deny(row);
            }
        }
        let is_weak = pieces
            .get(segment.anchor)
            .and_then(Piece::listed)
            .is_some_and(Listed::is_weak);
        let is_empty = |row: &Row| row.kind.needs_values() && row.details.values_cm.is_empty();
        if is_weak && rows.iter().all(is_empty) {
            bare.push(groups.len());
        }
        groups.push(rows.drain(..).map(Row::into_report).collect());
        previous = Some(segment.anchor);
    }
    if let [group] = groups.as_mut_slice()
        && group.len() == 1
    {
        told.reports = core::mem::take(group);
        return told;
    }
    carry_blocks(&mut groups);
    // "ROUND B: weeded": a word that is much else measures nothing without a length.
    if bare.len() < groups.len() {
        for at in bare {
            groups.get_mut(at).map(Vec::clear);
        }
    }
    told.reports
        .reserve_exact(groups.iter().map(Vec::len).sum());
    told.reports.extend(groups.into_iter().flatten());
    let learned = segments.iter().any(|segment| segment.denied.is_some());
    let stops = if learned {
        stops(pieces, folded)
    } else {
        SmallVec::new()
    };
    carry_days(&mut told.reports, &stops);
    drop_repeats(&mut told.reports);
    told
}

/// "lost 8 B, 8 dead B": what is told twice happened once.
fn drop_repeats(reports: &mut Vec<Report>) {
    let mut at = 0;
    while let Some(report) = reports.get(at) {
        let is_same = |other: &Report| {
            other.kind == report.kind
                && other.block == report.block
                && other.details == report.details
                && other.when == report.when
        };
        if reports.iter().take(at).any(is_same) {
            reports.remove(at);
        } else {
            at += 1;
        }
    }
}

/// The piece before this work that says "not" of it.
fn denial_before(
    pieces: &[Piece<'_>],
    segment: &Segment,
    previous: Option<usize>,
) -> Option<usize> {
    let start = previous
        .map_or(0, |at| at + 1)
        .max(segment.anchor.saturating_sub(NEGATION_REACH));
    for at in (start..segment.anchor).rev() {
        let piece = pieces.get(at)?;
        // "pruned but not weeded", "pruned instead of weeded".
        let is_beside = at + 1 == segment.anchor && previous.is_some();
        if piece.is_plain(Plain::Negation) || (is_beside && piece.is_plain(Plain::Instead)) {
            return Some(at);
        }
        let small = piece.is_any(&[Plain::Filler, Plain::Trees, Plain::At, Plain::NotYet])
            || piece.means(|meaning| matches!(meaning, Meaning::Cause(_) | Meaning::Ailment(_)));
        if break_strength(piece) > 0 || !small {
            break;
        }
    }
    None
}

/// "dead none", "sethathu onnum illa".
fn denial_after(pieces: &[Piece<'_>], segment: &Segment) -> Option<usize> {
    let small = pieces
        .get(segment.anchor + 1)
        .is_some_and(|next| next.is_plain(Plain::Filler) && !next.is_plain(Plain::Negation));
    let at = segment.anchor + 1 + usize::from(small);
    let after = pieces.get(at)?;
    let ends = pieces
        .get(at + 1)
        .is_none_or(|next| !matches!(next.sense, Sense::Number(_)));
    let denies =
        after.is_plain(Plain::Negation) && !after.is_any(&[Plain::NotYet, Plain::Ahead]) && ends;
    denies.then_some(at)
}

/// Whoever tells of rain means that the ground got wet, unless it was measured and little.
fn rain(row: &Row, answer: Option<Wetness>, denied: bool) -> Option<Wetness> {
    let measured = match row.details.mm {
        _ if denied => Some(Wetness::None),
        Some(mm) if mm <= 0.0 => Some(Wetness::None),
        Some(mm) if mm < WETTING_MM => return row.details.wetness,
        Some(_) | None => None,
    };
    measured
        .or(row.details.wetness)
        .or(answer)
        .or(Some(Wetness::Soaked))
}

/// Less rain wets dust only (common practice).
const WETTING_MM: f64 = 10.0;

/// Turns a denied report into "none" or "not done". True if it is no fact at all.
fn deny(row: &mut Row) -> bool {
    if row.kind.is_denied_by_none() {
        if row.not_yet || row.details.count.is_some() {
            return true;
        }
        row.details.count = Some(0);
        row.details.extent = None;
        row.doubts.retain(|doubt| !matches!(doubt, Doubt::Whole(_)));
        return false;
    }
    row.doubts.clear();
    // "pluk yang 120": is it not yet, or rubber? What was counted was done.
    if let Some(count) = row.details.count.filter(|_| row.kind.needs_count()) {
        row.doubts.push(Doubt::LooseEnd(count.to_string()));
    }
    row.details = Details {
        not_done: Some(row.kind),
        ..Details::default()
    };
    row.kind = Kind::NotDone;
    false
}

/// A block holds for what follows, and for what went before if nothing went before that.
fn carry_blocks(groups: &mut [Vec<Report>]) {
    // The group that last named blocks of its own.
    let mut last = None;
    for at in 0..groups.len() {
        let Some((before, [group, later @ ..])) = groups.split_at_mut_checked(at) else {
            break;
        };
        if blocks_of(group).is_empty() {
            let last = last.and_then(|last: usize| before.get(last));
            let from = last.or_else(|| only_named(later));
            put_in_blocks(group, &from.map(|from| blocks_of(from)).unwrap_or_default());
        } else {
            last = Some(at);
            carry_within(group);
        }
    }
}

/// The first of these groups that names blocks. "weeded. D pruned. C 8 dead": where others name
/// further ones it may have been either, or a third.
fn only_named(groups: &[Vec<Report>]) -> Option<&Vec<Report>> {
    let mut naming = groups.iter().filter(|group| !blocks_of(group).is_empty());
    let first = naming.next()?;
    naming
        .all(|group| blocks_of(group) == blocks_of(first))
        .then_some(first)
}

fn blocks_of(group: &[Report]) -> SmallVec<[&str; 4]> {
    let mut blocks = SmallVec::new();
    for block in group.iter().filter_map(|report| report.block.as_deref()) {
        if !blocks.contains(&block) {
            blocks.push(block);
        }
    }
    blocks
}

/// "weeded and pruned A and B" is work in both. A count is of one block; which, has to be asked.
fn put_in_blocks(group: &mut Vec<Report>, blocks: &[&str]) {
    let counted = group.iter().any(|report| {
        report.kind.needs_count() || report.details.count.is_some() || report.kind.needs_values()
    });
    match blocks {
        [] => {}
        [only] => {
            for report in group {
                report.block = Some((*only).to_string());
            }
        }
        _ if counted => {}
        several => {
            let spread = several.iter().flat_map(|block| {
                group.iter().map(|report| Report {
                    block: Some((*block).to_string()),
                    ..report.clone()
                })
            });
            *group = spread.collect();
        }
    }
}

fn carry_within(group: &mut [Report]) {
    let only = match blocks_of(group).as_slice() {
        [only] => Some((*only).to_string()),
        _ => None,
    };
    let mut last: Option<String> = None;
    for report in group {
        match &report.block {
            Some(block) => last = Some(block.clone()),
            None => report.block = last.clone().or_else(|| only.clone()),
        }
    }
}

/// Where sentences end.
fn stops(pieces: &[Piece<'_>], folded: &Folded<'_>) -> SmallVec<[usize; 8]> {
    let ends = pieces
        .iter()
        .filter(|piece| break_strength(piece) >= FULL_STOP);
    ends.map(|piece| folded.span(piece.start, piece.end).start)
        .collect()
}

/// A day likewise, within a sentence; what is not done has none.
fn carry_days(reports: &mut [Report], stops: &[usize]) {
    let sentence = |report: &Report| stops.iter().filter(|at| **at < report.span.start).count();
    let said: SmallVec<[(usize, When); 4]> = reports
        .iter()
        .filter_map(|report| Some((sentence(report), report.when?)))
        .collect();
    let mut last: Option<(usize, When)> = None;
    for report in reports {
        let here = sentence(report);
        if let Some(when) = report.when {
            last = Some((here, when));
        } else if report.kind != Kind::NotDone || stops.is_empty() {
            let here = |(at, _): &(usize, When)| *at == here;
            let all = || said.iter().filter(|said| here(said)).map(|(_, when)| when);
            report.when = last
                .filter(here)
                .map(|(_, when)| when)
                .or_else(|| only(all()).copied());
        }
    }
}

/// The one value, if all are the same.
fn only<'v, T: PartialEq>(mut values: impl Iterator<Item = &'v T>) -> Option<&'v T> {
    let first = values.next()?;
    values.all(|value| value == first).then_some(first)
}
