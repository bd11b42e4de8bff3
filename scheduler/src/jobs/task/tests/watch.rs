//! Jobs beside the main ones: filling pits, rain, cover, leaves, food crops, the trees that were left.

use std::{
    format,
    string::{String, ToString},
    vec,
    vec::Vec,
};

use budwood_parser::Ailment;

use super::given::{Given, day, fao, given, indonesia};
use crate::{
    TextClass,
    jobs::task::Task,
    words::job::{
        Clock,
        TaskKind::{
            self, DigPits, Feed, FillPits, HandOver, Intercrop, LeafCheck, OpenRest, Plant, Prune,
            RainWatch, RootCheck, SowCover, Weed,
        },
    },
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
    assert_eq!(fill.figures.trees, Some(600));
    // Said to be dug, but never counted: no number is told.
    let said = plan("2027-05-02 done dig_pits").at("2027-05-03", FillPits);
    assert_eq!(said.unwrap().figures.trees, None);
    assert!(plan(dug).at("2027-05-03", DigPits).is_none());
    assert!(plan(dug).at("2027-06-02", FillPits).is_none());
    for closed in ["2027-05-16 done fill_pits", "2027-05-25 planted 600"] {
        let facts = format!("{dug}{closed}");
        assert!(plan(&facts).at("2027-05-26", FillPits).is_none());
    }
}

/// Rains from 20 May: asked for from three weeks before that day until 45 days after it.
#[test]
fn rain_is_asked_for_where_holes_wait_for_it() {
    let plan = |facts: &str| given(fao(), facts).planned("2027-06-01").rains();
    let dug = "2027-04-02 holes_dug 600\n";
    let watch = plan(dug).at("2027-04-10", RainWatch).unwrap();
    assert_eq!((watch.due, watch.clock), (day("2027-04-29"), Clock::Season));
    assert_eq!(watch.ends, Some(day("2027-05-26")));
    assert_eq!(watch.figures.since, Some(day("2027-04-22")));
    let late = plan("2027-05-10 holes_dug 600").due("2027-05-11", RainWatch);
    assert_eq!(late, Some("2027-05-10".to_string()));
    let none = |given: Given, today: &str| assert_eq!(given.at(today, RainWatch), None, "{today}");
    none(plan(""), "2027-05-20");
    none(
        plan(&[dug, "2027-05-21 planted 300"].concat()),
        "2027-05-22",
    );
    none(plan(dug).planned("2028-06-01"), "2027-05-20");
    none(given(fao(), dug).planned("2027-06-01"), "2027-05-20");
    none(plan(dug), "2027-05-27");
    let unplanned = given(fao(), dug).rains();
    assert!(unplanned.at("2027-05-20", RainWatch).is_some());
}

/// Any word of rain is an answer for a week, and the adviser's word ends the questions.
#[test]
fn rain_is_asked_for_once_a_week_until_the_window_opens() {
    let plan = |facts: &str| {
        let dug = ["2027-04-02 holes_dug 600\n", facts].concat();
        given(fao(), &dug).planned("2027-06-01").rains()
    };
    for told in ["2027-05-18 soaked", "2027-05-18 dry"] {
        let next = plan(told).at("2027-05-19", RainWatch).unwrap();
        assert_eq!(next.due, day("2027-05-25"), "{told}");
        assert_eq!(next.figures.since, Some(day("2027-05-18")));
    }
    let last = plan("2027-06-28 dry").at("2027-06-29", RainWatch);
    assert_eq!(last, None, "the next question would come after 4 July");
    let put_off = plan("2027-05-01 later rain_watch 2027-05-20\n2027-05-02 soaked");
    assert_eq!(
        put_off.due("2027-05-03", RainWatch),
        Some("2027-05-09".to_string())
    );
    for (opened, is_over) in [
        ("2027-05-24", true),
        ("2027-04-06", true),
        ("2026-06-10", false),
    ] {
        let watch = plan("").window(opened).at("2027-05-25", RainWatch);
        assert_eq!(watch.is_none(), is_over, "{opened}");
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
    assert_eq!(sow.late_after, day("2027-06-19"), "half of the sixty days");
    // Pegs, holes and trees stand on land that is clear.
    for further in ["lined", "holes_dug 40", "planted 40"] {
        let plan = plan(&format!("2027-03-01 {further}"));
        assert!(plan.at("2027-05-25", SowCover).is_some(), "{further}");
    }
    let said = plan("2027-03-01 done dig_pits");
    assert!(said.at("2027-05-25", SowCover).is_some());
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

/// No food crops above 8 % of slope (a guide for the North-West of Vietnam).
#[test]
fn steep_land_is_no_land_for_food_crops() {
    let is_steep = |slope_pct| {
        let mut given = given(fao(), "2027-06-01 planted 600");
        given.block.slope_pct = slope_pct;
        given.at("2027-06-02", Intercrop).unwrap().figures.is_steep
    };
    assert!(!is_steep(None), "not known");
    assert!(!is_steep(Some(8.0)));
    assert!(is_steep(Some(9.0)));
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
    assert!(all.at("2027-08-02", OpenRest).is_none());
    // Looked at in May, the next round would end after the year does.
    for looked in ["done open_rest", "girth 60/85"] {
        let facts = [stand, "340\n2028-05-10 ", looked].concat();
        let after = given(indonesia(), &facts).at("2028-05-11", OpenRest);
        assert!(after.is_none(), "{looked}");
    }
    // Opening itself is asked for while few are opened.
    let few = given(indonesia(), &[stand, "20"].concat());
    assert!(few.at("2027-08-02", OpenRest).is_none());
}

/// The record of the years before tapping closes with the last tree, or after a year in which no
/// more were opened. One text says so, and nothing is asked of the stand any more.
#[test]
fn a_tapping_plot_is_handed_over_once() {
    let stand = "2022-06-01 planted 425\n2027-07-01 girth 80/100\n2027-08-01 tapping_opened ";
    let kinds = |facts: &str, today: &str| -> Vec<(TaskKind, String)> {
        let tasks = given(indonesia(), &[stand, facts].concat()).tasks_on(day(today));
        let told = |task: &Task| (task.kind, task.due.to_string());
        tasks.iter().map(told).collect()
    };
    let over = |due: &str| vec![(HandOver, due.to_string())];
    assert_eq!(kinds("425", "2027-08-02"), over("2027-08-01"));
    assert_eq!(kinds("340", "2028-08-02"), over("2028-08-01"));
    let more = "340\n2028-02-01 tapping_opened 60";
    assert_eq!(kinds(more, "2028-08-02")[1..], over("2029-02-01"));
    assert_eq!(
        kinds("20", "2028-08-02")
            .iter()
            .find(|job| job.0 == HandOver),
        None
    );
    // Told, or never to be told.
    let told = given(
        indonesia(),
        &[stand, "425\n2027-08-05 nudged hand_over 2027-08-01"].concat(),
    );
    assert_eq!(
        told.at("2027-08-08", HandOver).unwrap().ends,
        Some(day("2027-08-08"))
    );
    assert_eq!(told.tasks_on(day("2027-08-09")), []);
    assert_eq!(kinds("425", "2027-10-01"), []);
    assert_eq!(kinds("425\n2027-08-05 done hand_over", "2027-08-06"), []);
}

/// A phone gets one routine text a week: what is only looked at never takes it from these.
#[test]
fn looking_never_crowds_out_planting_weeding_and_feeding() {
    let looks = [
        RainWatch, SowCover, LeafCheck, Intercrop, OpenRest, HandOver,
    ];
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
        assert_eq!(look.class(), TextClass::Urgent);
        assert_eq!(kind.class(), TextClass::Round, "with the others else");
        assert_eq!(
            at(&warned, "2027-12-01", other),
            at(planted, "2027-12-01", other)
        );
        let old = format!("2012-06-01 planted 600\n2027-12-01 warned {ailment}");
        assert!(at(&old, "2027-12-02", kind).is_some(), "trees of any age");
        for answer in [
            format!("2027-12-01 {ailment} 0"),
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
        let last = at(&warned, "2027-12-29", kind);
        assert!(last.is_some_and(|look| look.figures.near.is_some()));
        let past = at(&warned, "2027-12-30", kind);
        assert!(past.is_some(), "the usual round comes again");
        assert_eq!(past, at(planted, "2027-12-30", kind), "four weeks later");
    }
    let bare = "2027-12-01 warned leaf_fall";
    assert!(at(bare, "2027-12-01", LeafCheck).is_none(), "no trees");
    let dead = format!("{planted}2027-11-01 dead 600\n{bare}");
    assert!(at(&dead, "2027-12-01", LeafCheck).is_none(), "none alive");
}

/// Who does not answer a mere question is nobody's worry, but the adviser wants to know what was
/// seen nearby.
#[test]
fn a_look_that_the_adviser_asked_for_is_no_mere_question() {
    let planted = "2027-06-01 planted 600\n";
    let looks = |facts: &str, kind: TaskKind| {
        let given = given(fao(), &[planted, facts].concat()).rains();
        (0..700).find_map(|days| {
            let all = given.tasks_on(day("2027-12-02") + chrono::Days::new(days));
            all.into_iter().find(|task| task.kind == kind)
        })
    };
    assert!(looks("", LeafCheck).unwrap().only_tells());
    assert!(!looks("", RootCheck).unwrap().only_tells());
    let warned = "2027-12-01 warned leaf_fall";
    assert!(!looks(warned, LeafCheck).unwrap().only_tells());
}
