//! Published series as a farmer would text them: what rises is taken as it comes, what is odd is
//! asked about, and nothing is dropped.
//!
//! Plantain-rubber trial at two sites in Ghana, International Journal of Agronomy 2021, article
//! 3240686, table 1: means by month after planting. Month 10 is missing at the one site, month 14
//! at the other.

use std::{string::String, vec::Vec};

use budwood_parser::{Details, Kind, Report, When};

use super::given::{day, given, report, today};
use crate::{
    land::block::{BlockState, Census},
    sums::days,
    words::event::Source,
};

/// Rubber alone, girth in centimetres.
const JOMORO: [(u32, f64); 11] = [
    (4, 1.230),
    (5, 1.977),
    (6, 2.363),
    (7, 2.557),
    (8, 2.795),
    (9, 3.240),
    (10, 3.554),
    (11, 3.859),
    (12, 4.196),
    (13, 4.534),
    (15, 5.488),
];
const ELLEMBELLE: [(u32, f64); 7] = [
    (4, 0.525),
    (5, 0.608),
    (6, 0.699),
    (7, 0.864),
    (8, 1.027),
    (9, 1.173),
    (11, 1.476),
];
/// Under dense plantain, height in centimetres.
const ELLEMBELLE_HEIGHTS: [(u32, f64); 7] = [
    (4, 41.2),
    (5, 48.2),
    (6, 45.0),
    (7, 56.4),
    (8, 69.2),
    (9, 83.6),
    (11, 120.5),
];

/// Texts a series month by month to a block planted on 1 December 2025, as seen in March 2027; gives
/// the months at which something was asked.
fn asked_at(kind: Kind, series: &[(u32, f64)]) -> Vec<(u32, String)> {
    let mut farmer = given();
    let planted_on = day("2025-12-01");
    farmer.state("A").cohorts[0].planted_on = planted_on;
    let mut asked = Vec::new();
    for (month, cm) in series {
        let on = days::months_after(planted_on, *month).unwrap();
        let days_ago = (today() - on).num_days();
        let details = Details {
            values_cm: Vec::from([*cm]),
            ..Details::default()
        };
        let told = farmer.told(Report {
            when: Some(When::DaysAgo(u16::try_from(days_ago).unwrap())),
            ..report(kind, "A", details)
        });
        if !told.starts_with("record") {
            assert!(told.starts_with("confirm"), "not dropped: {told}");
            asked.push((*month, told));
        }
        let census = Census {
            on,
            values_cm: Vec::from([*cm]),
            reached: None,
            source: Source::OwnText,
        };
        let state: &mut BlockState = farmer.state("A");
        if kind == Kind::Girth {
            state.girths.push(census);
        } else {
            state.heights.push(census);
        }
    }
    asked
}

#[test]
fn a_rising_series_is_taken_as_it_comes() {
    assert_eq!(asked_at(Kind::Girth, &JOMORO), []);
    let rises = JOMORO
        .iter()
        .zip(JOMORO.iter().skip(1))
        .all(|(a, b)| b.1 > a.1);
    assert!(rises, "as published");
}

/// Girths under a centimetre are asked about, and nothing else.
#[test]
fn very_young_plants_are_asked_about() {
    let asked: Vec<u32> = asked_at(Kind::Girth, &ELLEMBELLE)
        .iter()
        .map(|(month, _)| *month)
        .collect();
    assert_eq!(asked, [4, 5, 6, 7]);
}

/// One published mean is lower than the month before: flagged, not refused.
#[test]
fn a_height_that_falls_is_asked_about() {
    let asked = asked_at(Kind::Height, &ELLEMBELLE_HEIGHTS);
    assert_eq!(asked.len(), 1, "{asked:?}");
    assert_eq!(asked[0].0, 6);
    assert!(asked[0].1.contains("Shrunk"), "{asked:?}");
}

/// Stems shrink by 0.2 to 0.5 mm in the dry season (Chandrashekar et al. 1998), and a tape reads
/// to about a millimetre (from memory): 32.0 cm in November and 31.9 cm in March is no doubt.
#[test]
fn dry_seasons_shrink_stems_a_little() {
    assert_eq!(asked_at(Kind::Girth, &[(11, 32.0), (15, 31.9)]), []);
    assert_eq!(asked_at(Kind::Girth, &[(11, 32.0), (15, 29.9)]).len(), 1);
}
