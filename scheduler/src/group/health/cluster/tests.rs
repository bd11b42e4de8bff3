//! The worked rule: three reports of one family, from three blocks and three phones, near each
//! other, in a span of days.

use budwood_parser::Ailment;
use chrono::{Days, NaiveDate};
use proptest::prelude::*;
use std::vec::Vec;

use super::{Cluster, Place, Sighting, clusters, independent, neighbours};
use crate::{
    group::health::Family,
    words::{
        event::Source,
        id::{BlockId, GroupId, PersonId},
        point::Point,
    },
};

const TODAY: NaiveDate = NaiveDate::from_ymd_opt(2025, 8, 14).unwrap();

/// A block and its owner of the same number, in a village that is on no map.
fn leaf(number: u32, days_ago: u64) -> Sighting {
    Sighting {
        place: Place {
            block: BlockId(number),
            group: Some(GroupId(1)),
            point: None,
        },
        teller: PersonId(number),
        source: Source::OwnText,
        ailment: Ailment::LeafSpot,
        on: TODAY - Days::new(days_ago),
        trees: Some(4),
    }
}

fn at(mut sighting: Sighting, north_km: f64) -> Sighting {
    // A degree of latitude is about 111.2 km.
    sighting.place.point = Some(Point {
        latitude: north_km / 111.2,
        longitude: 101.0,
    });
    sighting
}

fn only(sightings: &[Sighting]) -> Cluster {
    let found = clusters(sightings, TODAY);
    assert_eq!(found.len(), 1, "{found:?}");
    found.into_iter().next().unwrap()
}

/// Common practice: leaf signs, three within 5 km or in one village, in 21 days.
#[test]
fn three_leaf_reports_in_21_days_are_a_cluster() {
    let fall = Sighting {
        ailment: Ailment::LeafFall,
        ..leaf(3, 0)
    };
    let cluster = only(&[leaf(1, 21), leaf(2, 9), fall]);
    assert_eq!(cluster.family, Family::Leaf);
    assert_eq!(cluster.ailment, Ailment::LeafSpot, "most say so");
    assert_eq!(cluster.reports, 3);
    assert_eq!(cluster.since, TODAY - Days::new(21));
    assert_eq!(cluster.last, TODAY);
    assert_eq!(cluster.trees, 12);
    assert!(cluster.chance < 0.001, "{cluster:?}");
    assert!((cluster.certainty - (1.0 - 0.4_f64.powi(3))).abs() < 1e-12);
    assert_eq!(clusters(&[leaf(1, 22), leaf(2, 9), fall], TODAY), []);
    assert_eq!(clusters(&[leaf(1, 5), leaf(2, 0)], TODAY), [], "two only");
}

#[test]
fn what_is_far_apart_or_in_another_family_does_not_belong_together() {
    let near = [
        at(leaf(1, 1), 0.0),
        at(leaf(2, 1), 4.9),
        at(leaf(3, 1), 9.8),
    ];
    assert_eq!(only(&near).reports, 3, "from farm to farm");
    let far = [
        at(leaf(1, 1), 0.0),
        at(leaf(2, 1), 5.1),
        at(leaf(3, 1), 10.2),
    ];
    assert_eq!(clusters(&far, TODAY), []);
    let pink = Sighting {
        ailment: Ailment::Pink,
        ..leaf(3, 1)
    };
    assert_eq!(clusters(&[leaf(1, 1), leaf(2, 1), pink], TODAY), []);
    let other = [1, 2, 3].map(|number| Sighting {
        ailment: Ailment::Other,
        ..leaf(number, 1)
    });
    assert_eq!(clusters(&other, TODAY), [], "may be three things");
    let mut elsewhere = leaf(3, 1);
    elsewhere.place.group = Some(GroupId(2));
    assert_eq!(clusters(&[leaf(1, 1), leaf(2, 1), elsewhere], TODAY), []);
    let mut nowhere = [leaf(1, 1), leaf(2, 1), leaf(3, 1)];
    nowhere.iter_mut().for_each(|one| one.place.group = None);
    assert_eq!(clusters(&nowhere, TODAY), []);
}

/// Common practice: four texts from one phone are one report.
#[test]
fn one_phone_is_one_report() {
    let by_one = [1, 2, 3, 4].map(|number| Sighting {
        teller: PersonId(9),
        ..leaf(number, 1)
    });
    assert_eq!(clusters(&by_one, TODAY), []);
    assert_eq!(independent(by_one.iter()), 1);
    let one_block = [1, 2, 3].map(|number| Sighting {
        teller: PersonId(number),
        ..leaf(7, 1)
    });
    assert_eq!(clusters(&one_block, TODAY), []);
    // The leader told of three blocks, and two others of one of these: two at most differ in both.
    let told = [(1, 9), (2, 9), (3, 9), (1, 5), (1, 6)].map(|(block, teller)| Sighting {
        teller: PersonId(teller),
        ..leaf(block, 1)
    });
    assert_eq!(independent(told.iter()), 2);
    let seen = by_one.map(|one| Sighting {
        source: Source::Visit,
        ..one
    });
    assert_eq!(only(&seen).reports, 4, "an adviser saw each of them");
}

#[test]
fn no_sick_trees_is_no_report_and_an_old_cluster_is_over() {
    let none = Sighting {
        trees: Some(0),
        ..leaf(3, 1)
    };
    assert_eq!(clusters(&[leaf(1, 1), leaf(2, 1), none], TODAY), []);
    let old = [leaf(1, 30), leaf(2, 30), leaf(3, 22)];
    assert_eq!(clusters(&old, TODAY), []);
    let going_on = [leaf(1, 30), leaf(2, 30), leaf(3, 21)];
    assert_eq!(only(&going_on).since, TODAY - Days::new(30));
}

/// Root: 180 days, common practice.
#[test]
fn root_disease_has_half_a_year() {
    let root = |number, days_ago| Sighting {
        ailment: Ailment::WhiteRoot,
        ..leaf(number, days_ago)
    };
    let cluster = only(&[root(1, 180), root(2, 90), root(3, 1)]);
    assert_eq!(cluster.family, Family::Root);
    // Every three months in the first years: common practice.
    assert_eq!(cluster.recheck_on, TODAY + Days::new(89));
    assert_eq!(
        clusters(&[root(1, 182), root(2, 90), root(3, 1)], TODAY),
        []
    );
    let apart = [
        at(root(1, 9), 0.0),
        at(root(2, 9), 0.6),
        at(root(3, 9), 1.2),
    ];
    assert_eq!(clusters(&apart, TODAY), [], "roots do not reach so far");
}

/// Signs of leaf fall show 4 to 16 days after infection: Fair Rubber, note on leaf fall, 2023.
#[test]
fn leaves_are_looked_at_again_when_signs_would_show() {
    let cluster = only(&[leaf(1, 3), leaf(2, 2), leaf(3, 1)]);
    assert_eq!(cluster.recheck_on, TODAY + Days::new(15));
}

#[test]
fn where_leaves_are_often_sick_three_reports_say_less() {
    let now = [leaf(1, 3), leaf(2, 2), leaf(3, 1)];
    let mut often = now.to_vec();
    often.extend((0..40_u32).map(|number| leaf(number % 9, 30 + 8 * u64::from(number))));
    let rare = only(&now).chance;
    let usual = only(&often).chance;
    assert!(rare < 0.001 && usual > 10.0 * rare, "{rare} {usual}");
}

#[test]
fn neighbours_are_those_near_who_told_nothing() {
    let cluster = only(&[leaf(1, 3), leaf(2, 2), leaf(3, 1)]);
    let mut far = leaf(8, 0).place;
    far.group = Some(GroupId(2));
    let places = [leaf(3, 0).place, leaf(5, 0).place, far];
    let near: Vec<BlockId> = neighbours(&cluster, &places).into_iter().collect();
    assert_eq!(near, [BlockId(5)]);
}

fn sighting() -> impl Strategy<Value = Sighting> {
    let ailments = [
        Ailment::LeafFall,
        Ailment::LeafSpot,
        Ailment::WhiteRoot,
        Ailment::Pink,
        Ailment::Other,
    ];
    let sources = [Source::OwnText, Source::Leader, Source::Visit];
    (
        (0..12_u32, 0..10_u32, 1..3_u32),
        (0..250_u64, prop::option::of(0..5_u32)),
        prop::sample::select(ailments.to_vec()),
        prop::sample::select(sources.to_vec()),
    )
        .prop_map(|((block, teller, group), (days, trees), ailment, source)| {
            let mut sighting = Sighting {
                teller: PersonId(teller),
                ailment,
                source,
                trees,
                ..leaf(block, days)
            };
            sighting.place.group = Some(GroupId(group));
            // A block lies where it lies; some are on no map.
            if block % 3 == 0 {
                sighting = at(sighting, f64::from(block) * 0.4);
            }
            sighting
        })
}

proptest! {
    #[test]
    fn order_does_not_matter(mut all in prop::collection::vec(sighting(), 0..40)) {
        let there = clusters(&all, TODAY);
        all.reverse();
        let back = clusters(&all, TODAY);
        prop_assert_eq!(there.len(), back.len());
        for (one, two) in there.iter().zip(&back) {
            prop_assert_eq!(one, two);
        }
    }

    #[test]
    fn one_more_report_never_shrinks_a_cluster(
        mut all in prop::collection::vec(sighting(), 0..40), more in sighting()
    ) {
        let before = clusters(&all, TODAY);
        all.push(more);
        let after = clusters(&all, TODAY);
        for cluster in &before {
            let grown = after.iter().any(|one| {
                one.family == cluster.family
                    && one.reports >= cluster.reports
                    && one.trees >= cluster.trees
                    && one.since <= cluster.since
                    && one.last >= cluster.last
                    && cluster.places.iter().all(|place| one.holds(place.block))
            });
            prop_assert!(grown, "{:?} is not in {:?}", cluster, after);
        }
    }

    #[test]
    fn telling_again_changes_nothing(all in prop::collection::vec(sighting(), 0..30)) {
        let twice: Vec<Sighting> = all.iter().chain(&all).copied().collect();
        prop_assert_eq!(clusters(&all, TODAY), clusters(&twice, TODAY));
    }
}
