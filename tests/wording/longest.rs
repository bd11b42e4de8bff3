//! Every nudge, read-back and question at its longest values is one SMS, and is not cut: it ends
//! as its file says.

use std::collections::BTreeSet;

use budwood::{
    wording::{
        After, Facts, Key, NudgeText, Phrase, Ready, RoundText, ask, changed, clause, confirm,
        field_round, fixed, nudge, put_back, read_back, taken_back,
    },
    words::sms,
};
use budwood_parser::{Ailment, Cause, Details, Doubt, Kind, Measure, Supply, Unit, Wetness};
use budwood_scheduler::{
    BlockId, BlockState, Clock, Cohort, Figures, Happened, Task, TaskKind,
    decide::{Draft, Missing, Why},
    handbook::calendar::Datum,
    outlook::census::Walk,
};
use chrono::NaiveDate;

use super::case::{BLOCK, NAME, TREES, in_every_language};
use crate::fixture;

#[test]
fn every_nudge_fits_at_its_longest() {
    in_every_language(|case| {
        let tongue = case.tongue;
        for kind in TaskKind::ALL {
            let task = task(kind, case.day);
            let text = tongue.word(&nudge(NudgeText {
                name: NAME,
                block: BLOCK,
                task: &task,
                by: case.day,
                adviser: NAME,
                is_new: false,
            }));
            case.assert_whole(&text, &format!("nudge-{}", kind.name()));
            assert!(text.contains("Wilhe"), "whom does it speak to? {text}");
            assert!(text.contains("Upper"), "about which block? {text}");
        }
    });
}

#[test]
fn the_fullest_field_round_fits() {
    use TaskKind::{Intercrop, LeafCheck, Prune, RootCheck, Weed};
    let jobs = BTreeSet::from([Weed, Prune, RootCheck, LeafCheck, Intercrop]);
    in_every_language(|case| {
        for blocks in [1, 3] {
            let blocks = vec![BLOCK.to_owned(); blocks];
            let text = case.tongue.word(&field_round(RoundText {
                name: NAME,
                blocks: &blocks,
                jobs: &jobs,
                by: case.day,
                adviser: NAME,
            }));
            case.assert_whole(&text, "field-round");
            assert!(text.contains("Upper"), "on which block? {text}");
            for job in ["weeds", "shoots", "roots", "leaves", "crops"] {
                let job = case.tongue.word(&Phrase::from(key_of(job)));
                let bare = |text: &str| sms::without_marks(text).to_lowercase();
                assert!(bare(&text).contains(&bare(&job)), "{job}: {text}");
            }
        }
    });
}

fn key_of(walk: &str) -> Key {
    let name = format!("walk-{walk}");
    Key::all().find(|key| key.name() == name).unwrap()
}

fn task(kind: TaskKind, day: NaiveDate) -> Task {
    Task {
        kind,
        block: BlockId(1),
        due: day,
        late_after: day,
        ends: None,
        clock: kind.clock(),
        figures: Figures {
            trees: Some(TREES),
            grams_per_tree: Some(1_250.5),
            kilograms: Some(60_000.5),
            rations: Vec::new(),
            lost: Vec::new(),
            living: None,
            height_m: Some(2.7),
            girth_cm: Some(50.0),
            datum_cm: Some(150.0),
            datum: Some(Datum::Union),
            share_pct: Some(70.0),
            since: Some(day),
            pit_cm: Some(90.0),
            round_deep_cm: Some(120.0),
            round: Some(12),
            distance_m: Some(2.5),
            width_m: Some(13.7),
            is_steep: false,
            gap_cm: Some(20.0),
            is_published: true,
            near: None,
            walk: Some(Walk {
                every: 2_000,
                from: 2_000,
                trees: TREES,
            }),
        },
    }
}

/// What was seen nearby has the name of its sickness in it twice.
#[test]
fn every_warning_fits_at_its_longest() {
    in_every_language(|case| {
        for ailment in Ailment::ALL.iter().copied() {
            let mut task = task(TaskKind::LeafCheck, case.day);
            task.figures.near = Some(ailment);
            let text = case.tongue.word(&nudge(NudgeText {
                name: NAME,
                block: BLOCK,
                task: &task,
                by: case.day,
                adviser: NAME,
                is_new: false,
            }));
            case.assert_whole(&text, "nudge-near");
            let named = sms::bare(&case.tongue.say(Key::Ailment(ailment), Vec::new()));
            assert_eq!(sms::bare(&text).matches(&named).count(), 2, "{text}");
        }
    });
}

/// On steep land food crops are asked about in other words.
#[test]
fn steep_land_fits_at_its_longest() {
    in_every_language(|case| {
        let mut task = task(TaskKind::Intercrop, case.day);
        task.figures.is_steep = true;
        let text = case.tongue.word(&nudge(NudgeText {
            name: NAME,
            block: BLOCK,
            task: &task,
            by: case.day,
            adviser: NAME,
            is_new: false,
        }));
        case.assert_whole(&text, "nudge-intercrop-steep");
        task.figures.is_steep = false;
        let flat = case.tongue.word(&nudge(NudgeText {
            name: NAME,
            block: BLOCK,
            task: &task,
            by: case.day,
            adviser: NAME,
            is_new: false,
        }));
        assert_ne!(text, flat);
    });
}

#[test]
fn each_job_hangs_on_one_clock() {
    let clocks = [Clock::Planting, Clock::Season, Clock::Trees, Clock::Office];
    for kind in TaskKind::ALL {
        assert!(clocks.contains(&kind.clock()), "{}", kind.name());
    }
}

/// The longest that can be said of each kind of work.
fn said(kind: Kind, day: NaiveDate) -> Vec<Draft> {
    let on = Happened {
        from: day - chrono::Days::new(7),
        to: day,
    };
    let measure = |unit| {
        Some(Measure {
            value: 12_345.5,
            unit,
        })
    };
    let base = Details {
        count: Some(TREES),
        values_cm: vec![123.4; 30],
        ailment: Some(Ailment::Pink),
        cause: Some(Cause::Drought),
        species: Some("Groundnuts and sweet potato".to_owned()),
        not_done: Some(Kind::BranchInduction),
        amount: measure(Unit::Inch),
        area: measure(Unit::Hectare),
        mm: Some(1_234.5),
        wetness: Some(Wetness::Soaked),
        supply: Some(Supply::Fertiliser),
        ..Details::default()
    };
    let uncounted = Details {
        count: None,
        ..base.clone()
    };
    let sampled = Details {
        of: Some(TREES),
        supply: Some(Supply::Plants),
        mm: None,
        ..base.clone()
    };
    [base, uncounted, sampled]
        .into_iter()
        .map(|details| Draft {
            kind,
            block: Some(BLOCK.to_owned()),
            said: None,
            on,
            details,
        })
        .collect()
}

fn state(day: NaiveDate) -> BlockState {
    let cohort = |backfill| Cohort {
        planted_on: day,
        clone_name: None,
        planted: TREES,
        dead: TREES / 3,
        backfill,
    };
    BlockState {
        cohorts: vec![cohort(false), cohort(true)],
        ..BlockState::default()
    }
}

fn after(state: &BlockState, day: NaiveDate) -> After<'_> {
    After {
        state,
        places: Some(TREES * 3),
        next: Some(day),
        ready: Some(Ready::Between(day, day)),
        adviser: NAME,
        is_told: true,
        ordered: Some(TREES),
    }
}

/// The label of a block on a shared phone: its owner's name and its own.
fn label() -> String {
    format!("{NAME} {BLOCK}")
}

#[test]
fn every_read_back_fits_and_says_how_to_correct_it() {
    let label = label();
    in_every_language(|case| {
        let tongue = case.tongue;
        let state = state(case.day);
        let check = |facts: &[&Draft]| {
            let told = Facts {
                block: &label,
                facts,
                today: case.day + chrono::Days::new(100),
            };
            let text = tongue.word(&read_back(told, after(&state, case.day)));
            case.assert_whole(&text, "read-back");
            if let [fact] = facts {
                let clause = {
                    let clause = clause(fact.kind, &fact.details);
                    tongue.say(clause.key, clause.args)
                };
                let is_said = text.contains(&clause) || text.contains(&sms::bare(&clause));
                assert!(is_said, "{clause} is left out: {text}");
            }
            let text = tongue.word(&changed(None, told, after(&state, case.day)));
            case.assert_whole(&text, "changed");
            let text = tongue.word(&changed(Some(BLOCK), told, after(&state, case.day)));
            case.assert_whole(&text, "moved");
            for (old, key) in [(None, "fixed"), (Some(BLOCK), "fixed-moved")] {
                let text = fixed(1_234_567, old, told, after(&state, case.day));
                case.assert_whole(&tongue.word(&text), key);
            }
            let text = tongue.word(&put_back(told, after(&state, case.day)));
            case.assert_whole(&text, "put-back");
        };
        for fact in Kind::ALL.into_iter().flat_map(|kind| said(kind, case.day)) {
            check(&[&fact]);
        }
        for first in Kind::ALL
            .into_iter()
            .filter_map(|kind| said(kind, case.day).pop())
        {
            for second in Kind::ALL
                .into_iter()
                .filter_map(|kind| said(kind, case.day).pop())
            {
                check(&[&first, &second]);
            }
        }
    });
}

#[test]
fn a_text_of_many_reports_is_read_back_as_far_as_it_fits() {
    let label = label();
    in_every_language(|case| {
        let tongue = case.tongue;
        let state = state(case.day);
        let all = Kind::ALL.into_iter();
        let drafts: Vec<Draft> = all.flat_map(|kind| said(kind, case.day)).collect();
        let facts: Vec<&Draft> = drafts.iter().collect();
        for number in (1..=12).chain([facts.len()]) {
            let told = Facts {
                block: &label,
                facts: &facts[..number],
                today: case.day + chrono::Days::new(100),
            };
            let text = tongue.word(&read_back(told, after(&state, case.day)));
            case.assert_whole(&text, "read-back");
            let why = Why::MoreThanAlive { alive: TREES };
            let text = tongue.word(&confirm(Some(NAME), told, Some(&why)));
            case.assert_whole(&text, "confirm-for");
            let example = Phrase::new(Key::Example, budwood::args! { "block" => BLOCK });
            for key in [Key::TakenBackAsk, Key::TakenBackCount] {
                let text = tongue.word(&taken_back(key, told, &state, example.clone()));
                case.assert_whole(&text, &key.name());
            }
        }
    });
}

fn whys() -> Vec<Why> {
    let word = || "Wrongspeltwordoftwenty".to_owned();
    let doubts = [
        Doubt::Repaired {
            from: word(),
            to: word(),
        },
        Doubt::LetterForDigit(word()),
        Doubt::LooseNumber(TREES),
        Doubt::Range(TREES, TREES),
        Doubt::GuessedUnit(Unit::Centimetre),
        Doubt::CommaList,
        Doubt::TwoCounts(TREES, TREES),
    ];
    doubts
        .map(Why::Reading)
        .into_iter()
        .chain([
            Why::MoreThanAreaHolds { holds: TREES },
            Why::MoreThanAlive { alive: TREES },
            Why::MoreThanGaps { gaps: TREES },
            Why::LargeShare { alive: TREES },
            Why::SameAgain,
            Why::OddValue(12_345.5),
            Why::Shrunk { before: 123.4 },
            Why::Grew { before: 123.4 },
            Why::PerhapsInches,
            Why::Heaped,
            Why::DoesNotAddUp {
                told: TREES,
                alive: TREES,
            },
            Why::TooThin { mean: 123.4 },
            Why::TooMuchFeed,
            Why::BeforePlanting,
            Why::NotPlanted,
        ])
        .collect()
}

#[test]
fn every_question_fits_and_says_how_to_answer() {
    let label = label();
    in_every_language(|case| {
        let tongue = case.tongue;
        for draft in Kind::ALL.into_iter().flat_map(|kind| said(kind, case.day)) {
            let told = Facts {
                block: &label,
                facts: &[&draft],
                today: case.day + chrono::Days::new(100),
            };
            for why in whys() {
                let text = tongue.word(&confirm(None, told, Some(&why)));
                case.assert_whole(&text, "confirm");
                let text = tongue.word(&confirm(Some(NAME), told, Some(&why)));
                case.assert_whole(&text, "confirm-for");
            }
            for (missing, key) in missing() {
                let blocks: Vec<String> = (0..14).map(|index| format!("{BLOCK}{index}")).collect();
                let text = tongue.word(&ask(&draft, &missing, &blocks));
                if matches!(missing, Missing::Values) {
                    fixture::assert_one_sms(&text);
                } else {
                    case.assert_whole(&text, key);
                }
            }
        }
    });
}

fn missing() -> [(Missing, &'static str); 6] {
    let unknown = Some("Wrongblockname".to_owned());
    [
        (Missing::Block { unknown: None }, "ask-block"),
        (Missing::Block { unknown }, "ask-block-unknown"),
        (Missing::Count { range: None }, "ask-count"),
        (
            Missing::Count {
                range: Some((TREES, TREES)),
            },
            "ask-count-range",
        ),
        (Missing::Values, "ask-values"),
        (Missing::Date, "ask-date"),
    ]
}
