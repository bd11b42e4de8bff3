//! What a known phone is owed where its text is sure of nothing.
//!
//! The rule is the project's own: a text is stored, asked about, answered or told to a person, and
//! silence is only for thanks, greetings, adverts and talk without a word of work or need. Readings
//! are built by hand, so that a change of the reader cannot hide a change of the rule.

use std::{
    string::{String, ToString},
    vec,
    vec::Vec,
};

use budwood_parser::{
    Act, Ailment, Bare, Cause, Details, Extent, Kind, Reading, Report, Sender, Span, Stance, Taken,
    Word,
};

use super::given::{Given, count, given, nudge, report};
use crate::decide::Nudged;

fn says(stances: &[Stance], reports: &[Report], words: &[Taken]) -> Reading {
    let word = |taken: &Taken| Word {
        span: Span::default(),
        taken: taken.clone(),
        repaired: None,
    };
    Reading {
        stances: stances.to_vec(),
        reports: reports.to_vec(),
        words: words.iter().map(word).collect(),
        ..Reading::default()
    }
}

#[track_caller]
fn check(reading: &Reading, then: &str) {
    assert_eq!(given().heeded(reading), then);
}

/// A report without a block, a number or anything else.
fn plain(kind: Kind) -> Report {
    Report {
        block: None,
        ..report(kind, "", Details::default())
    }
}

fn unknown(words: usize) -> Vec<Taken> {
    vec![Taken::Unknown; words]
}

fn fire(kind: Kind) -> Report {
    let details = Details {
        cause: Some(Cause::Fire),
        ..Details::default()
    };
    report(kind, "A", details)
}

#[test]
fn thanks_adverts_and_talk_are_met_with_silence() {
    let weeded = [report(Kind::Weeded, "A", Details::default())];
    let silent = |stance: Stance, then: &str| {
        let mut reading = says(&[stance], &weeded, &unknown(4));
        reading.may_need = true;
        check(&reading, then);
    };
    silent(Stance::Courtesy, "silent, Courtesy");
    silent(Stance::Advert, "silent, Stance(Advert)");
    check(
        &says(&[Stance::Saying], &weeded, &[]),
        "silent, Stance(Saying)",
    );
    check(&says(&[Stance::Chat], &[], &[]), "silent, Stance(Chat)");
    check(
        &says(&[], &[], &[Taken::Filler, Taken::Filler, Taken::Name]),
        "silent, NotWork",
    );
}

#[test]
fn a_word_of_need_is_told_to_a_person() {
    let needs = |reading: Reading, then: &str| {
        let reading = Reading {
            may_need: true,
            ..reading
        };
        check(&reading, then);
    };
    needs(Reading::default(), "person, unclear");
    needs(says(&[Stance::Chat], &[], &[]), "person, unclear");
    needs(
        says(&[Stance::Plan], &[], &[Taken::Unit]),
        "person, unclear",
    );
    needs(says(&[], &[], &[Taken::Unit]), "person, unclear");
    // Where something was made of the text, it stays.
    let weeded = report(Kind::Weeded, "A", Details::default());
    needs(says(&[], &[weeded], &[]), "record weeded A");
    let number = Reading {
        bare: Some(Bare::Number(7.0)),
        ..Reading::default()
    };
    needs(number, "example, NothingAsked");
    // Nobody is told of a stranger's text.
    let stranger = given().from(Sender::Unknown);
    let reading = Reading {
        may_need: true,
        ..Reading::default()
    };
    assert_eq!(stranger.heeded(&reading), "silent, Stranger");
}

#[test]
fn an_answer_to_nothing_gets_an_example_but_yes_does_not() {
    let bare = |bare: Bare| Reading {
        bare: Some(bare),
        ..Reading::default()
    };
    check(&bare(Bare::Number(7.0)), "example, NothingAsked");
    check(&bare(Bare::Block("A".to_string())), "example, NothingAsked");
    check(&bare(Bare::Number(1.0)), "silent, NothingAsked");
    let yes = Reading {
        acts: vec![Act::Yes],
        ..Reading::default()
    };
    check(&yes, "silent, NothingAsked");
}

/// Who tells of a fire is not asked how many trees; who only thinks of one has none.
#[test]
fn a_fire_is_told_to_a_person_whoever_has_it() {
    let burns = [fire(Kind::Damage)];
    for stance in [
        Stance::Chat,
        Stance::Hearsay,
        Stance::Saying,
        Stance::Request,
    ] {
        check(&says(&[stance], &burns, &[]), "person, fire");
    }
    let asked = says(&[Stance::Question], &burns, &[]);
    check(&asked, "person, question");
    for stance in [Stance::Plan, Stance::Hypothetical] {
        check(&says(&[stance], &burns, &[]), "example, NotDone");
    }
    // Counted trees have burnt already; wind is no fire; dead trees do not burn.
    let mut counted = fire(Kind::Damage);
    counted.details.count = Some(12);
    check(
        &says(&[Stance::Chat], &[counted], &[]),
        "confirm damage 12 A: []",
    );
    let mut wind = fire(Kind::Damage);
    wind.details.cause = Some(Cause::Wind);
    check(&says(&[Stance::Chat], &[wind], &[]), "confirm damage A: []");
    check(
        &says(&[Stance::Chat], &[fire(Kind::Dead)], &[]),
        "ask count of dead A",
    );
}

#[test]
fn a_question_about_work_goes_to_a_person() {
    for stance in [Stance::Question, Stance::Request] {
        let asks = |words: &[Taken]| says(&[stance], &[], words);
        check(&asks(&[Taken::Kind(Kind::Weeded)]), "person, question");
        check(&asks(&[Taken::Command]), "person, question");
        let about_nothing = given().heeded(&asks(&unknown(4)));
        assert!(about_nothing.starts_with("silent, Stance"), "{stance:?}");
    }
}

/// A plan, news of others, what they own: only what they did is stored, and an example says so.
#[test]
fn what_is_not_done_yet_gets_an_example() {
    let trade = [
        Taken::Kind(Kind::Planted),
        Taken::Ailment(Ailment::WhiteRoot),
        Taken::Cause(Cause::Wind),
        Taken::Product,
        Taken::Clone,
        Taken::Species,
        Taken::Unit,
        Taken::BlockWord,
        Taken::Block("A".to_string()),
    ];
    let others = [
        Taken::Number(4.0),
        Taken::Filler,
        Taken::Name,
        Taken::Unknown,
        Taken::Command,
    ];
    for stance in [
        Stance::Plan,
        Stance::Hearsay,
        Stance::Stock,
        Stance::Hypothetical,
    ] {
        for word in &trade {
            let reading = says(&[stance], &[], std::slice::from_ref(word));
            check(&reading, "example, NotDone");
        }
        for word in &others {
            let reading = says(&[stance], &[], std::slice::from_ref(word));
            let then = given().heeded(&reading);
            assert!(then.starts_with("silent, Stance"), "{word:?}: {then}");
        }
        let mut about_work = says(&[stance], &[], &[]);
        about_work.about_work = true;
        check(&about_work, "example, NotDone");
        let told = says(&[stance], &[plain(Kind::Weeded)], &[]);
        check(&told, "example, NotDone");
    }
}

fn chat(given: &Given, reports: &[Report], strange: usize) -> String {
    given.heeded(&says(&[Stance::Chat], reports, &unknown(strange)))
}

/// Nobody is asked about the dead in a story.
#[test]
fn reports_among_words_of_every_day_are_asked_about_and_never_stored() {
    let weeded = [report(Kind::Weeded, "A", Details::default())];
    let told = |strange| chat(&given(), &weeded, strange);
    assert_eq!(told(0), "confirm weeded A: []");
    assert_eq!(told(1), "example, NoReport");
    assert_eq!(told(2), "example, NoReport");
    assert_eq!(told(3), "person, unclear");
    // A loss is asked about without a block, and what has to be cared for; other work is not.
    let alone = |kind| chat(&given(), &[plain(kind)], 0);
    assert_eq!(alone(Kind::Dead), "ask block of dead");
    assert_eq!(alone(Kind::Sprayed), "ask block of sprayed");
    assert_eq!(alone(Kind::Weeded), "example, NoReport");
    let counted = Report {
        block: None,
        ..report(Kind::Pruned, "", count(12))
    };
    assert_eq!(chat(&given(), &[counted], 0), "ask block of pruned 12");
    // What is doubtful for its own sake is asked about for that.
    let many = [report(Kind::Dead, "A", count(900))];
    assert_eq!(
        chat(&given(), &many, 0),
        "confirm dead 900 A: [MoreThanAlive { alive: 200 }]"
    );
}

/// "Keti is dead" and "Keti is sick": a person, unless something says that it was trees.
#[test]
fn who_is_dead_or_sick_may_be_a_person() {
    let told = |report: Report| chat(&given(), &[report], 1);
    for kind in [Kind::Dead, Kind::Disease] {
        assert_eq!(told(plain(kind)), "person, unclear", "{kind:?}");
        let with = |details: Details| Report {
            details,
            ..plain(kind)
        };
        assert_eq!(told(with(count(4))), "example, NoReport");
        let half = Details {
            extent: Some(Extent::Half),
            ..Details::default()
        };
        assert_eq!(told(with(half)), "example, NoReport");
        let wind = Details {
            cause: Some(Cause::Wind),
            ..Details::default()
        };
        assert_eq!(told(with(wind)), "example, NoReport");
        let on_a = report(kind, "A", Details::default());
        assert_eq!(told(on_a), "example, NoReport");
    }
    assert_eq!(told(plain(Kind::Weeded)), "example, NoReport");
    let both = [plain(Kind::Dead), plain(Kind::Weeded)];
    assert_eq!(chat(&given(), &both, 1), "example, NoReport");
}

/// "Yes white threads" to "look at the roots of B": so how many.
#[test]
fn what_a_nudge_asked_to_count_is_asked_for() {
    let mut nudged = given().asked(nudge(0));
    nudged.nudged = Some(Nudged {
        block: "B",
        kind: Kind::Disease,
        ailment: None,
    });
    let sick = plain(Kind::Disease);
    assert_eq!(
        chat(&nudged, std::slice::from_ref(&sick), 0),
        "ask count of disease B"
    );
    let some = Report {
        details: count(4),
        ..plain(Kind::Disease)
    };
    assert_eq!(chat(&nudged, &[some], 0), "confirm disease 4 B: []");
    let half = Details {
        extent: Some(Extent::Half),
        ..Details::default()
    };
    let half = Report {
        details: half,
        ..plain(Kind::Disease)
    };
    assert_eq!(chat(&nudged, &[half], 0), "confirm disease B: []");
    // Which block the spray was on is not known, so that comes first.
    let with_spray = [sick, plain(Kind::Sprayed)];
    let asked = chat(&nudged, &with_spray, 0);
    assert!(!asked.starts_with("ask count"), "{asked}");
    // A nudge for weeding asks for no number.
    nudged.nudged = Some(Nudged {
        block: "B",
        kind: Kind::Sprayed,
        ailment: None,
    });
    assert_eq!(
        chat(&nudged, &[plain(Kind::Sprayed)], 0),
        "confirm sprayed B: []"
    );
}

/// "My trees look bad" is neither a report nor a question, and not nothing.
#[test]
fn a_longer_text_with_strange_words_goes_to_a_person() {
    let told = |words: &[Taken], then: &str| check(&says(&[], &[], words), then);
    let filler = || vec![Taken::Filler; 2];
    let with = |word: Taken| [filler(), vec![word]].concat();
    told(&[Taken::Kind(Kind::Weeded)], "example, NoReport");
    told(&with(Taken::Command), "example, NoReport");
    told(&[Taken::Filler, Taken::Command], "silent, NotWork");
    told(&with(Taken::Unknown), "person, unclear");
    told(&[Taken::Filler, Taken::Unknown], "silent, NotWork");
}
