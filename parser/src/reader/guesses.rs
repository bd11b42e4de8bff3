//! What a text that nobody was sure of may tell, for a person to choose from.
//!
//! Deliberately absent: how likely each is. Nothing of it is stored but by a person's word.

use alloc::vec::Vec;

use super::Reader;
use crate::reading::{Known, Report};

impl Reader {
    /// What the text may tell, likeliest first: what holds, what was learned of other people's
    /// texts, and what the lists make of it, each without its doubts.
    #[must_use]
    pub fn guesses(&self, text: &str, known: &Known<'_>) -> Vec<Vec<Report>> {
        let holds = self.read(text, known).reports;
        let (learned, listed) = self.with_pieces(text, known, |all, folded| {
            let both = self.both(all, folded, known, |_, _| {});
            (both.learned.told.reports, both.told.reports)
        });
        let mut guesses: Vec<Vec<Report>> = Vec::new();
        for mut guess in [holds, learned, listed] {
            for report in &mut guess {
                report.doubts.clear();
            }
            let same = |other: &Vec<Report>| tells_the_same(other, &guess);
            if !guess.is_empty() && !guesses.iter().any(same) {
                guesses.push(guess);
            }
        }
        guesses
    }
}

/// Whether two readings tell the same, wherever in the text they found it.
fn tells_the_same(one: &[Report], other: &[Report]) -> bool {
    let told = |report: &Report| Report {
        span: crate::span::Span::default(),
        ..report.clone()
    };
    one.iter().map(told).eq(other.iter().map(told))
}
