//! Record, confirm, ask, answer, stay silent, hand over: which, in which scene.
//!
//! The rules are the project's own policy for texts. Readings that need no words are built by
//! hand, so that a change of the reader cannot hide a change of the policy.

use std::{
    string::{String, ToString},
    vec,
    vec::Vec,
};

use budwood_parser::{
    Act, Ailment, Bare, Details, Doubt, Extent, Kind, Known, Reading, Sender, Stance, Wetness,
};

use super::given::{Given, bare, check, count, day, draft, given, nudge, reader, report, says};
use crate::decide::{Decision, Draft, Missing, Nudged, Pending};

#[test]
fn one_block_need_not_be_named() {
    given()
        .one_block()
        .check("planted 20", "record planted 20 A");
    given().check("planted 20", "ask block of planted 20");
    given().check("planted 20 B", "record planted 20 B");
    given().check("planted 20 b", "record planted 20 B");
}

#[test]
fn reports_beside_a_named_block_are_about_it() {
    given().check("weeded and pruned A", "record weeded A + pruned A");
    given().check("weeded A, dead 2 B", "record weeded A + dead 2 B");
}

#[test]
fn an_unknown_block_a_missing_count_and_missing_values_are_asked_for() {
    let farmer = given();
    farmer.check_report(
        report(Kind::Planted, "Q", count(20)),
        "ask block not Q of planted 20 Q",
    );
    farmer.check_report(
        report(Kind::Dead, "A", Details::default()),
        "ask count of dead A",
    );
    farmer.check_report(
        report(Kind::Girth, "A", Details::default()),
        "ask values of girth A",
    );
    let mut range = report(Kind::Dead, "A", Details::default());
    range.doubts = vec![Doubt::Range(10, 12)];
    farmer.check_report(range, "ask count 10 or 12 of dead A");
}

#[test]
fn a_whole_block_is_its_living_trees_to_be_confirmed() {
    let mut burnt = report(Kind::Dead, "A", Details::default());
    burnt.doubts = vec![Doubt::Whole(Extent::All)];
    given().check_report(
        burnt,
        "confirm dead 200 A: [LargeShare { alive: 200 }, Reading(Whole(All))]",
    );
}

fn ask(facts: Vec<Draft>, missing: Missing) -> Pending {
    Pending::Ask { facts, missing }
}

fn without_block() -> Draft {
    Draft {
        block: None,
        ..draft(Kind::Planted, "", count(20))
    }
}

#[test]
fn what_was_asked_for_fills_the_slot() {
    let block = given().asked(ask(vec![without_block()], Missing::Block { unknown: None }));
    check(
        &block,
        &bare(Bare::Block("A".to_string())),
        "record planted 20 A",
    );
    check(
        &block,
        &bare(Bare::Block("b".to_string())),
        "record planted 20 B",
    );
    check(&block, &bare(Bare::Number(7.0)), "ask block of planted 20");
    let uncounted = draft(Kind::Dead, "A", Details::default());
    let number = given().asked(ask(vec![uncounted], Missing::Count { range: None }));
    check(&number, &bare(Bare::Number(6.0)), "record dead 6 A");
    check(&number, &bare(Bare::Number(0.0)), "record dead 0 A");
    check(&number, &bare(Bare::Number(6.5)), "ask count of dead A");
    check(&number, &bare(Bare::Number(-1.0)), "ask count of dead A");
    check(&number, &bare(Bare::Number(5e9)), "ask count of dead A");
    check(
        &number,
        &bare(Bare::Number(f64::NAN)),
        "ask count of dead A",
    );
    let unmeasured = draft(Kind::Girth, "A", Details::default());
    let girths = given().asked(ask(vec![unmeasured], Missing::Values));
    check(&girths, &bare(Bare::Number(44.0)), "record girth [44.0] A");
    check(
        &girths,
        &bare(Bare::Numbers(vec![44.0, 45.5])),
        "record girth [44.0, 45.5] A",
    );
    let impossible = Details {
        values_cm: vec![44.0, 25_000.0],
        ..Details::default()
    };
    let impossible = draft(Kind::Girth, "A", impossible);
    let again = given().asked(ask(vec![impossible], Missing::Values));
    check(&again, &bare(Bare::Number(44.0)), "record girth [44.0] A");
}

#[test]
fn an_answer_is_judged_like_a_report() {
    let uncounted = draft(Kind::Dead, "A", Details::default());
    let number = given().asked(ask(vec![uncounted], Missing::Count { range: None }));
    check(
        &number,
        &bare(Bare::Number(900.0)),
        "confirm dead 900 A: [MoreThanAlive { alive: 200 }]",
    );
    let nameless = Draft {
        details: Details::default(),
        ..without_block()
    };
    let both = given().asked(ask(vec![nameless], Missing::Block { unknown: None }));
    check(
        &both,
        &bare(Bare::Block("A".to_string())),
        "ask count of planted A",
    );
}

#[test]
fn a_new_report_is_no_answer() {
    let asked = given().asked(ask(vec![without_block()], Missing::Block { unknown: None }));
    asked.check("weeded A", "record weeded A");
}

#[test]
fn yes_and_no_count_only_when_something_was_asked() {
    let fact = || vec![draft(Kind::Dead, "A", count(90))];
    let confirm = || given().asked(Pending::Confirm(fact()));
    check(&confirm(), &says(Act::Yes), "yes to dead 90 A");
    check(&confirm(), &bare(Bare::Number(1.0)), "yes to dead 90 A");
    check(&confirm(), &says(Act::No), "no");
    check(&confirm(), &bare(Bare::Number(2.0)), "no");
    // Another number is the right one, another block too.
    check(&confirm(), &bare(Bare::Number(3.0)), "record dead 3 A");
    check(&given(), &says(Act::Yes), "silent, NothingAsked");
    check(&given(), &says(Act::No), "silent, NothingAsked");
    check(&given(), &bare(Bare::Number(1.0)), "silent, NothingAsked");
    // After a read-back NO means that it was wrong.
    check(&given().after(&fact()), &says(Act::No), "wrong");
    check(
        &given().after(&fact()),
        &says(Act::Yes),
        "silent, NothingAsked",
    );
}

#[test]
fn a_nudge_is_answered_with_a_word_or_a_number() {
    let nudged = given().asked(nudge(0));
    check(&nudged, &says(Act::Done), "done");
    check(&nudged, &says(Act::Yes), "seen");
    check(&nudged, &bare(Bare::Number(1.0)), "done");
    check(&nudged, &says(Act::Later(Some(14))), "later Some(14)");
    check(&nudged, &says(Act::Later(None)), "later None");
    check(&nudged, &bare(Bare::Number(2.0)), "silent, NothingAsked");
}

/// The words by which people say that they have read something are no work.
#[test]
fn ok_after_a_nudge_means_seen_and_is_never_a_fact() {
    let nudged = given().asked(nudge(0));
    for text in ["ok", "yes", "ok sir", "okay", "YES"] {
        nudged.check(text, "seen");
    }
    nudged.check("done", "done");
    // "Has it rained?" - "Ok": that would be a fact, so it is asked.
    let mut rain = given().asked(nudge(0));
    rain.nudged = Some(Nudged {
        block: "B",
        kind: Kind::Rain,
        ailment: None,
    });
    rain.check("yes", "confirm rain B: []");
}

#[test]
fn the_question_of_a_nudge_lapses_after_two_weeks() {
    for (days_ago, then) in [(14, "done"), (15, "example, NoReport")] {
        let nudged = given().asked(nudge(days_ago));
        check(&nudged, &says(Act::Done), then);
    }
    for act in [Act::Yes, Act::No] {
        let old = given().asked(nudge(15));
        check(&old, &says(act), "silent, NothingAsked");
    }
    let mut old = given().asked(nudge(15));
    old.nudged = Some(Nudged {
        block: "B",
        kind: Kind::Dead,
        ailment: None,
    });
    check(&old, &bare(Bare::Number(1.0)), "silent, NothingAsked");
    check(&old, &bare(Bare::Number(12.0)), "silent, NothingAsked");
    check(&old, &says(Act::Later(None)), "example, NoReport");
    old.check("dead 4", "ask block of dead 4");
    old.pending = Some(nudge(14));
    old.check("dead 4", "record dead 4 B");
}

/// "1" after "B: 8 more dead, 16 in all" means that it is right, not that the weeding is done.
#[test]
fn one_after_a_read_back_never_answers_an_older_nudge() {
    let fact = [draft(Kind::Dead, "A", count(8))];
    let nudged = given().after(&fact).asked(Pending::Nudge {
        on: day("2027-03-15"),
        is_last: false,
    });
    check(&nudged, &bare(Bare::Number(1.0)), "silent, NothingAsked");
    check(&nudged, &says(Act::Yes), "seen");
    check(&nudged, &says(Act::Done), "done");
}

/// "Reply DEAD and the number": many text the number alone. What was meant is clear where there is
/// nothing to report; a number is asked about, as it may answer something older.
#[test]
fn a_number_alone_answers_a_nudge_that_asked_for_one() {
    let asked = |kind, ailment| {
        let mut nudged = given().asked(nudge(0));
        nudged.nudged = Some(Nudged {
            block: "B",
            kind,
            ailment,
        });
        nudged
    };
    let dead = asked(Kind::Dead, None);
    check(&dead, &bare(Bare::Number(0.0)), "record dead 0 B");
    check(
        &dead,
        &bare(Bare::Number(12.0)),
        "confirm dead 12 B: [Reading(LooseEnd(\"12\"))]",
    );
    check(&dead, &bare(Bare::Number(1.0)), "done");
    check(&dead, &bare(Bare::Number(2.5)), "silent, NothingAsked");
    check(
        &dead,
        &bare(Bare::Numbers(vec![4.0, 5.0])),
        "silent, NothingAsked",
    );
    let root = asked(Kind::Disease, Some(Ailment::WhiteRoot));
    let Decision::Record(facts) = root.decide(&bare(Bare::Number(0.0))) else {
        panic!("recorded");
    };
    assert_eq!(facts[0].details.ailment, Some(Ailment::WhiteRoot));
    let girth = asked(Kind::Girth, None);
    check(
        &girth,
        &bare(Bare::Numbers(vec![41.0, 43.0])),
        "record girth [41.0, 43.0] B",
    );
    let weed = asked(Kind::Weeded, None);
    check(&weed, &bare(Bare::Number(12.0)), "silent, NothingAsked");
}

#[test]
fn the_word_of_the_nudge_is_about_its_block() {
    let mut nudged = given().asked(nudge(0));
    nudged.nudged = Some(Nudged {
        block: "B",
        kind: Kind::Weeded,
        ailment: None,
    });
    nudged.check("weeded", "record weeded B");
    nudged.check("weeded A", "record weeded A");
    nudged.check("pruned", "ask block of pruned");
}

/// Asked whether rain has soaked the ground, people answer "rain" or "no" as well as "rain yes".
#[test]
fn a_question_about_rain_is_answered_with_a_word() {
    let mut asked = given().asked(nudge(0));
    asked.nudged = Some(Nudged {
        block: "B",
        kind: Kind::Rain,
        ailment: None,
    });
    let on_b = |wetness| vec![("B".to_string(), Some(wetness))];
    for text in ["rain yes", "rain", "it rained"] {
        assert_eq!(rain_told(&asked, text), on_b(Wetness::Soaked), "{text}");
    }
    for text in ["rain no", "no rain", "no"] {
        assert_eq!(rain_told(&asked, text), on_b(Wetness::None), "{text}");
    }
    assert_eq!(
        rain_told(&asked, "rain 5 mm"),
        vec![("B".to_string(), None)]
    );
    // Unasked, whoever tells of rain means one that wets; so a clerk enters it (the corpus, 147 of 151).
    asked.nudged = None;
    assert_eq!(
        rain_told(&asked, "rain"),
        vec![("A".to_string(), Some(Wetness::Soaked))]
    );
}

/// Each block with what is recorded of the rain there.
fn rain_told(given: &Given, text: &str) -> Vec<(String, Option<Wetness>)> {
    let known = Known {
        languages: &["en"],
        blocks: &["A", "B", "C"],
        groups: &[],
        members: &[],
        rolls: &[],
        sender: Sender::Farmer,
    };
    let Decision::Record(facts) = given.decide(&reader().read(text, &known)) else {
        panic!("nothing is recorded of {text:?}");
    };
    let told = |fact: &Draft| (fact.block.clone().unwrap(), fact.details.wetness);
    facts.iter().map(told).collect()
}

#[test]
fn a_choice_must_be_on_the_list() {
    let choose = given().asked(Pending::Choose { options: 3 });
    check(&choose, &bare(Bare::Number(1.0)), "choice 1");
    check(&choose, &bare(Bare::Number(3.0)), "choice 3");
    check(&choose, &bare(Bare::Number(0.0)), "silent, NothingAsked");
    check(&choose, &bare(Bare::Number(4.0)), "silent, NothingAsked");
}

/// "12 of 30 reach the string" measures without a tape. A share of nothing counted does not.
#[test]
fn trees_that_reach_the_string_need_no_values() {
    let sampled = |count: Option<u32>, of: Option<u32>, then: &str| {
        let details = Details {
            count,
            of,
            ..Details::default()
        };
        given().check_report(report(Kind::Girth, "A", details), then);
    };
    sampled(Some(12), Some(30), "record girth 12 A");
    sampled(Some(12), None, "ask values of girth 12 A");
    sampled(None, Some(30), "ask values of girth A");
}

#[test]
fn plans_thanks_and_news_of_others_are_met_with_silence() {
    for stance in Stance::ALL {
        let reading = Reading {
            reports: vec![report(Kind::Planted, "A", count(20))],
            stances: vec![*stance],
            about_work: true,
            ..Reading::default()
        };
        let decision = given().decide(&reading);
        assert!(matches!(decision, Decision::Silent(_)), "{decision:?}");
    }
    given().check("thanks", "silent, Courtesy");
    given().check("will plant 50 tomorrow", "silent, Stance(Plan)");
    given().check("my neighbour planted 200", "silent, Stance(Hearsay)");
}

#[test]
fn only_what_is_about_work_gets_an_example() {
    let reading = |about_work| Reading {
        about_work,
        ..Reading::default()
    };
    check(&given(), &reading(true), "example, NoReport");
    check(&given(), &reading(false), "silent, NotWork");
}

#[test]
fn a_stranger_may_say_three_words_and_learn_whom_to_ask() {
    let stranger = given().from(Sender::Unknown);
    check(&stranger, &says(Act::Stop), "stop");
    check(&stranger, &says(Act::Start), "start");
    check(&stranger, &says(Act::Help), "help");
    for act in [Act::Yes, Act::No, Act::Done, Act::Undo, Act::Later(None)] {
        check(&stranger, &says(act), "silent, Stranger");
    }
    let work = Reading {
        reports: vec![report(Kind::Planted, "A", count(20))],
        ..Reading::default()
    };
    check(&stranger, &work, "example, Stranger");
    check(&stranger, &Reading::default(), "silent, Stranger");
}
