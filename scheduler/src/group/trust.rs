//! How far a figure can be trusted: who told it, how many trees it rests on, how old it is, and
//! who else says the same.
//!
//! The order of the sources (visit, sheet, leader, own text) is [`Source`]'s. What each is worth
//! is an own rule, fit to put figures in order and for nothing else. Deliberately absent: what a
//! programme pays on; that asks for a visit, whatever the certainty.

use alloc::collections::BTreeMap;

use chrono::NaiveDate;

use crate::{sums::wilson, words::event::Source};

/// A figure is worth half of what it was after so many days: own rule. Half a year is the longest
/// that the handbooks leave between two rounds of counting or looking.
const HALF_LIFE_DAYS: f64 = 180.0;

/// Two figures that differ by no more than this share of the larger say the same: own rule.
const AGREES_WITHIN: f64 = 0.1;

/// A figure as one source tells it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Evidence {
    /// Who told it.
    pub source: Source,
    /// The day that it is of.
    pub on: NaiveDate,
    /// The figure.
    pub figure: u32,
    /// "18 of 30": hits and trees of the sample, when not all trees were looked at.
    pub sample: Option<(u32, u32)>,
}

/// The figure to show, and how sure it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trust {
    /// The figure of the surest source.
    pub best: Evidence,
    /// From 0 (worth nothing) to 1.
    pub certainty: f64,
}

/// Weighs all that is known of one figure. Another source that agrees makes it surer; one that
/// says otherwise leaves it as it is. None when nobody told anything.
#[must_use]
pub fn weigh(told: &[Evidence], today: NaiveDate) -> Option<Trust> {
    let by_certainty = |one: &&Evidence, two: &&Evidence| {
        let sure = certainty(one, today).total_cmp(&certainty(two, today));
        sure.then(one.cmp(two))
    };
    let best = *told.iter().max_by(by_certainty)?;
    let mut by_source: BTreeMap<Source, f64> = BTreeMap::new();
    for one in told.iter().filter(|one| agree(one.figure, best.figure)) {
        // The same source again is no second witness.
        let known = by_source.entry(one.source).or_default();
        *known = known.max(certainty(one, today));
    }
    Some(Trust {
        best,
        certainty: together(by_source.into_values()),
    })
}

/// How sure one figure is by itself.
#[must_use]
pub fn certainty(told: &Evidence, today: NaiveDate) -> f64 {
    #[expect(
        clippy::cast_precision_loss,
        reason = "a calendar has far fewer days than a decimal holds"
    )]
    let days = (today - told.on).num_days().max(0) as f64;
    let sample = told.sample.map_or(1.0, |(hits, of)| {
        wilson::interval(hits, of).map_or(0.0, |(low, high)| 1.0 - (high - low))
    });
    worth(told.source) * libm::exp2(-days / HALF_LIFE_DAYS) * sample
}

/// What a fresh and full figure of a source is worth: own rule.
#[must_use]
pub const fn worth(source: Source) -> f64 {
    match source {
        Source::Bot => 0.0,
        Source::OwnText => 0.6,
        Source::Leader => 0.7,
        Source::Sheet => 0.8,
        Source::Visit => 0.95,
    }
}

/// How sure witnesses are together who do not know of each other: all would have to be wrong.
#[must_use]
pub fn together(certainties: impl IntoIterator<Item = f64>) -> f64 {
    let all_wrong: f64 = certainties.into_iter().map(|one| 1.0 - one).product();
    1.0 - all_wrong
}

/// The share of trees in per cent whose figure comes from a visit; none without trees.
#[must_use]
pub fn visited_pct(figures: impl IntoIterator<Item = (u32, Source)>) -> Option<u32> {
    let (mut seen, mut all) = (0_u64, 0_u64);
    for (trees, source) in figures {
        all += u64::from(trees);
        seen += if source == Source::Visit {
            u64::from(trees)
        } else {
            0
        };
    }
    let pct = seen.saturating_mul(100).checked_div(all)?;
    pct.try_into().ok()
}

fn agree(one: u32, two: u32) -> bool {
    f64::from(one.abs_diff(two)) <= AGREES_WITHIN * f64::from(one.max(two))
}

#[cfg(test)]
mod tests {
    use chrono::{Days, NaiveDate};
    use proptest::prelude::*;

    use super::{Evidence, Trust, certainty, together, visited_pct, weigh};
    use crate::words::event::Source;

    const TODAY: NaiveDate = NaiveDate::from_ymd_opt(2025, 8, 14).unwrap();

    fn told(source: Source, days_ago: u64, figure: u32) -> Evidence {
        Evidence {
            source,
            on: TODAY - Days::new(days_ago),
            figure,
            sample: None,
        }
    }

    /// Common practice: a visit counts for more than a sheet, a sheet for more than a leader's
    /// word, that for more than a farmer's own text.
    #[test]
    fn sources_come_in_order() {
        let order = [
            Source::Bot,
            Source::OwnText,
            Source::Leader,
            Source::Sheet,
            Source::Visit,
        ];
        let worth = order.map(|source| certainty(&told(source, 0, 100), TODAY));
        assert!(worth.is_sorted_by(|one, two| one < two), "{worth:?}");
    }

    /// Own rule: a visit of long ago is worth less than a fresh text.
    #[test]
    fn figures_grow_old() {
        let half = certainty(&told(Source::Visit, 180, 100), TODAY);
        assert!((half - 0.475).abs() < 1e-12, "{half}");
        let old = told(Source::Visit, 360, 500);
        let text = told(Source::OwnText, 5, 520);
        assert_eq!(weigh(&[old, text], TODAY).unwrap().best, text);
        let tomorrow = told(Source::OwnText, 0, 1);
        assert!(certainty(&tomorrow, TODAY - Days::new(1)) <= 0.6);
    }

    /// Worked figures: a share of 65 % is off by 24 points with 15 trees, 17 with 30, 9 with 100
    /// (1.96 standard errors of a share, any textbook of statistics). Wilson's interval, which is
    /// used here, is a little narrower in small samples.
    #[test]
    fn a_small_sample_says_less() {
        for (hits, of, points) in [(10, 15, 0.24), (20, 30, 0.17), (65, 100, 0.09)] {
            let sample = Evidence {
                sample: Some((hits, of)),
                ..told(Source::Visit, 0, hits)
            };
            let lost = 1.0 - certainty(&sample, TODAY) / 0.95;
            assert!((lost / 2.0 - points).abs() < 0.025, "{of} trees: {lost}");
        }
        let none = Evidence {
            sample: Some((0, 0)),
            ..told(Source::Visit, 0, 0)
        };
        assert_eq!(certainty(&none, TODAY), 0.0);
    }

    #[test]
    fn who_agrees_makes_surer_and_who_does_not_changes_nothing() {
        let text = told(Source::OwnText, 0, 520);
        let leader = told(Source::Leader, 0, 510);
        let both = weigh(&[text, leader], TODAY).unwrap();
        assert!((both.certainty - (1.0 - 0.4 * 0.3)).abs() < 1e-12);
        assert_eq!(both.best, leader);
        let other = told(Source::OwnText, 0, 210);
        let alone = weigh(&[other, leader], TODAY).unwrap();
        assert!((alone.certainty - 0.7).abs() < 1e-12);
        let twice = weigh(&[text, text, text], TODAY).unwrap();
        assert!((twice.certainty - 0.6).abs() < 1e-12, "one witness");
        assert_eq!(weigh(&[], TODAY), None);
    }

    #[test]
    fn the_share_backed_by_visits() {
        let figures = [
            (600, Source::Visit),
            (300, Source::OwnText),
            (100, Source::Sheet),
        ];
        assert_eq!(visited_pct(figures), Some(60));
        assert_eq!(visited_pct([(0, Source::Visit)]), None);
        assert_eq!(visited_pct([(u32::MAX, Source::Visit); 3]), Some(100));
    }

    fn evidence() -> impl Strategy<Value = Evidence> {
        let sources = [
            Source::OwnText,
            Source::Leader,
            Source::Sheet,
            Source::Visit,
        ];
        (
            prop::sample::select(sources.to_vec()),
            0..700_u64,
            0..60_u32,
        )
            .prop_map(|(source, days, figure)| told(source, days, figure))
    }

    proptest! {
        #[test]
        fn order_does_not_matter(mut all in prop::collection::vec(evidence(), 1..12)) {
            let there = weigh(&all, TODAY);
            all.reverse();
            let back = weigh(&all, TODAY);
            let figures = |trust: Option<Trust>| trust.map(|trust| (trust.best, trust.certainty));
            let (there, back) = (figures(there).unwrap(), figures(back).unwrap());
            prop_assert_eq!(there.0, back.0);
            prop_assert!((there.1 - back.1).abs() < 1e-12);
            prop_assert!((0.0..=1.0).contains(&there.1));
        }

        #[test]
        fn more_witnesses_are_surer(some in prop::collection::vec(0.0..1.0_f64, 0..8), one in 0.0..1.0_f64) {
            let before = together(some.iter().copied());
            let after = together(some.into_iter().chain([one]));
            prop_assert!(after >= before - 1e-12);
        }
    }
}
