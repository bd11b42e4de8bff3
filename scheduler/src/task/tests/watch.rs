//! Jobs beside the main ones: filling pits, cover, leaves, food crops, the trees that were left.

use std::{format, string::ToString};

use budwood_parser::Ailment;

use super::given::{day, fao, given, indonesia};
use crate::task::TaskKind::{
    self, DigPits, Feed, FillPits, Intercrop, LeafCheck, OpenRest, Plant, Prune, RootCheck,
    SowCover, Weed,
};

/// FAO: holes are filled ten days before planting. 625 points of a hectare at 8 x 2 m.
#[test]
fn pits_are_filled_once_they_are_dug_and_before_planting() {
    let plan = |facts: &str| given(fao(), facts).planned("2027-06-01");
    let dug = "2027-05-02 holes_dug 600\n";
    assert!(plan("").at("2027-05-20", FillPits).is_none());
    assert!(
        plan("2027-05-02 holes_dug 300")
            .at("2027-05-20", FillPits)
            .is_none()
    );
    let fill = plan(dug).at("2027-05-03", FillPits).unwrap();
    assert_eq!(fill.due, day("2027-05-15"));
    assert_eq!(fill.late_after, day("2027-05-22"));
    assert!(plan(dug).at("2027-05-03", DigPits).is_none());
    assert!(plan(dug).at("2027-06-02", FillPits).is_none());
    for closed in ["2027-05-16 done fill_pits", "2027-05-25 planted 600"] {
        let facts = format!("{dug}{closed}");
        assert!(plan(&facts).at("2027-05-26", FillPits).is_none());
    }
}

/// Rains from 20 May; the calendar sows in the first 60 days of them.
#[test]
fn cover_is_sown_when_the_rains_begin_on_clear_land() {
    let plan = |facts: &str| given(fao(), facts).planned("2027-06-01").rains();
    let cleared = "2027-03-01 cleared\n";
    assert!(plan("").at("2027-05-25", SowCover).is_none());
    let dry = given(fao(), cleared).planned("2027-06-01");
    assert!(dry.at("2027-05-25", SowCover).is_none(), "no rains known");
    let sow = plan(cleared).at("2027-05-25", SowCover).unwrap();
    assert_eq!(sow.due, day("2027-05-20"));
    assert_eq!(sow.ends, Some(day("2027-07-19")));
    assert!(plan(cleared).at("2027-07-20", SowCover).is_none());
    let sown = format!("{cleared}2027-05-22 cover_sown");
    assert!(plan(&sown).at("2027-05-25", SowCover).is_none());
    let mut unasked = plan(cleared);
    unasked.calendar.cover.is_asked = false;
    assert!(unasked.at("2027-05-25", SowCover).is_none());
}

#[test]
fn leaves_are_looked_at_in_the_rains_and_any_sick_leaf_is_a_look() {
    let planted = "2027-06-01 planted 600\n";
    let due = |facts: &str, today| given(fao(), facts).rains().due(today, LeafCheck);
    assert_eq!(due(planted, "2027-06-02"), Some("2027-08-31".to_string()));
    for seen in ["2027-08-01 leaf_fall 3", "2027-08-01 done leaf_check"] {
        let facts = format!("{planted}{seen}");
        assert_eq!(due(&facts, "2027-08-02"), Some("2027-10-31".to_string()));
        // Missed, it waits for the next rains.
        assert_eq!(due(&facts, "2027-12-01"), Some("2028-05-20".to_string()));
    }
    let roots = format!("{planted}2027-08-01 white_root 3");
    assert_eq!(due(&roots, "2027-08-02"), Some("2027-08-31".to_string()));
}

#[test]
fn food_crops_are_asked_for_once_a_year_while_trees_are_young() {
    let planted = "2027-06-01 planted 600\n";
    let first = given(fao(), planted).at("2027-06-02", Intercrop).unwrap();
    assert_eq!(first.due, day("2027-07-01"));
    assert_eq!(first.figures.distance_m, Some(1.5));
    for told in ["2027-07-03 intercrop_sown", "2027-07-03 done intercrop"] {
        let facts = format!("{planted}{told}");
        let next = given(fao(), &facts).due("2027-07-04", Intercrop);
        assert_eq!(next, Some("2028-07-02".to_string()));
    }
    // Unanswered, it lapses after a month and comes back a year later.
    let fresh = given(fao(), planted);
    assert!(fresh.at("2027-08-02", Intercrop).is_none());
    assert!(fresh.at("2028-07-02", Intercrop).is_some());
    assert!(fresh.at("2030-06-01", Intercrop).is_none());
}

/// The trees that were left come half a year after each opening; nothing else is asked for then.
#[test]
fn the_trees_that_were_left_are_looked_at_half_a_year_later() {
    let stand = "2022-06-01 planted 425\n2027-07-01 girth 80/100\n2027-08-01 tapping_opened ";
    let most = given(indonesia(), &[stand, "340"].concat());
    let left = most.at("2027-08-02", OpenRest).unwrap();
    assert_eq!(left.due, day("2028-01-30"));
    assert_eq!(left.figures.trees, Some(85));
    let again = [stand, "340\n2028-02-01 tapping_opened 60"].concat();
    let again = given(indonesia(), &again)
        .at("2028-02-02", OpenRest)
        .unwrap();
    assert_eq!(again.due, day("2028-08-01"));
    assert_eq!(again.figures.trees, Some(25));
    let all = given(indonesia(), &[stand, "425"].concat());
    assert_eq!(all.tasks_on(day("2027-08-02")), []);
    // Opening itself is asked for while few are opened.
    let few = given(indonesia(), &[stand, "20"].concat());
    assert!(few.at("2027-08-02", OpenRest).is_none());
}

/// A phone gets one routine text a week: what is only looked at never takes it from these.
#[test]
fn looking_never_crowds_out_planting_weeding_and_feeding() {
    let looks = [SowCover, LeafCheck, Intercrop, OpenRest];
    for work in [Plant, Weed, Feed] {
        let is_first = |look: &TaskKind| work.urgency() < look.urgency();
        assert!(looks.iter().all(is_first), "{}", work.name());
    }
    assert!(Plant.urgency() < FillPits.urgency());
    assert!(Prune.urgency() < LeafCheck.urgency());
    let mut urgencies = TaskKind::ALL.map(TaskKind::urgency);
    urgencies.sort_unstable();
    assert!(urgencies.windows(2).all(|pair| pair[0] != pair[1]));
}

/// On the adviser's word one looks at once, in the dry season and at any age of the trees, for what
/// was seen nearby; only a look at that, or the word that the job is done, answers it.
#[test]
fn what_was_seen_nearby_is_looked_for_at_once() {
    let planted = "2027-06-01 planted 600\n";
    let at = |facts: &str, today, kind| given(fao(), facts).rains().at(today, kind);
    let pairs = [
        ("leaf_fall", LeafCheck, RootCheck),
        ("pink", LeafCheck, RootCheck),
        ("white_root", RootCheck, LeafCheck),
        ("termites", RootCheck, LeafCheck),
    ];
    for (ailment, kind, other) in pairs {
        let warned = format!("{planted}2027-12-01 warned {ailment}\n");
        let look = at(&warned, "2027-12-01", kind).unwrap();
        assert_eq!(look.due, day("2027-12-01"), "{ailment}");
        assert_eq!(look.late_after, day("2027-12-08"));
        assert_eq!(look.figures.near, Ailment::from_name(ailment));
        assert_eq!(look.urgency(), 0, "before all other jobs");
        assert_eq!(
            at(&warned, "2027-12-01", other),
            at(planted, "2027-12-01", other)
        );
        let old = format!("2012-06-01 planted 600\n2027-12-01 warned {ailment}");
        assert!(at(&old, "2027-12-02", kind).is_some(), "trees of any age");
        for answer in [
            format!("2027-12-03 {ailment} 0"),
            format!("2027-12-03 done {}", kind.name()),
        ] {
            let answered = at(&format!("{warned}{answer}"), "2027-12-04", kind);
            assert!(
                answered.is_none_or(|look| look.figures.near.is_none()),
                "{answer}"
            );
        }
        let unanswered = at(
            &format!("{warned}2027-11-30 {ailment} 2"),
            "2027-12-04",
            kind,
        );
        assert!(
            unanswered.is_some_and(|look| look.figures.near.is_some()),
            "a look before it"
        );
        let past = at(&warned, "2027-12-30", kind);
        assert!(
            past.is_none_or(|look| look.figures.near.is_none()),
            "four weeks later"
        );
    }
    let bare = "2027-12-01 warned leaf_fall";
    assert!(at(bare, "2027-12-01", LeafCheck).is_none(), "no trees");
}
