//! What the texts say in figures: products that hold, years, units of the place, and what is asked
//! for is what is taken.

use std::{cell::Cell, fs, path::Path};

use budwood::wording::{After, Facts, NudgeText, Texts, Tongue, Value, read_back};
use budwood_parser::{Details, Kind};
use budwood_scheduler::{
    BlockId, BlockState, Calendar, Figures, Happened, Task, TaskKind,
    decide::Draft,
    handbook::calendar::{Datum, profiles},
    jobs::feed::{Portion, Ration},
    outlook::census::Walk,
};
use chrono::NaiveDate;

use super::{
    asking::Reply,
    case::in_every_language,
    reply::{spoken, word},
    source,
};

fn day(text: &str) -> NaiveDate {
    text.parse().expect("a day")
}

fn task(kind: TaskKind, figures: Figures) -> Task {
    Task {
        kind,
        block: BlockId(1),
        due: day("2026-08-05"),
        late_after: day("2026-08-05"),
        ends: None,
        clock: kind.clock(),
        figures,
    }
}

fn nudge(tongue: Tongue<'_>, task: &Task) -> String {
    tongue.word(&budwood::wording::nudge(NudgeText {
        name: "Tamo",
        block: "A",
        task,
        by: day("2026-08-05"),
        adviser: "Mara",
        is_new: false,
    }))
}

/// Trees, grams and kilograms wherever a text says "480 trees x 260 g = 124.8 kg".
fn products(text: &str) -> Vec<[f64; 3]> {
    let is_digit = |c: char| c.is_ascii_digit();
    let mut numbers: Vec<(String, String)> = Vec::new();
    for c in text.chars() {
        let inside = numbers.last().is_some_and(|(_, behind)| behind.is_empty());
        match numbers.last_mut() {
            Some((number, _)) if inside && (is_digit(c) || c == '.' || c == ',') => number.push(c),
            Some((_, behind)) if !is_digit(c) => behind.push(c),
            _ if is_digit(c) => numbers.push((c.to_string(), String::new())),
            _ => {}
        }
    }
    let value = |(number, _): &(String, String)| {
        let number = number.trim_end_matches(['.', ',']).replace(',', ".");
        number.parse::<f64>().expect("a number")
    };
    numbers
        .windows(3)
        .filter(|three| {
            let (trees, grams) = (&three[0].1, &three[1].1);
            let is_of_each = trees.trim_end().ends_with('x') && trees.len() < 20;
            is_of_each && ["g =", "ก=", "ก. ="].contains(&grams.trim())
        })
        .map(|three| [value(&three[0]), value(&three[1]), value(&three[2])])
        .collect()
}

#[track_caller]
fn assert_product(text: &str, [trees, grams, kilograms]: [f64; 3]) {
    // Each figure is rounded to one decimal.
    let slack = 0.051 + trees * 0.05 / 1_000.0;
    let off = (trees * grams / 1_000.0 - kilograms).abs();
    assert!(
        off <= slack,
        "{trees} x {grams} g is not {kilograms} kg: {text}"
    );
}

/// Every round of every calendar, for one farmer's trees, in every language: each product with its
/// grams and its kilograms, or, where that is no SMS, all products together; and trees times grams are
/// kilograms.
#[test]
fn trees_times_grams_is_kilograms_in_every_calendar_and_language() {
    const LIVE: u32 = 457;
    let named = Cell::new(0);
    for (calendar, source) in profiles::ALL {
        let calendar_of = Calendar::parse(source).expect("a calendar");
        let mut rounds = calendar_of.feeding.rounds;
        rounds.dedup_by(|one, before| one.doses == before.doses);
        for round in &rounds {
            let products = round.doses.iter().map(|dose| Portion {
                product: dose.product.clone(),
                grams_per_tree: dose.grams,
                kilograms: f64::from(LIVE) * dose.grams / 1_000.0,
            });
            let ration = Ration {
                trees: LIVE,
                products: products.collect(),
            };
            let feed = task(
                TaskKind::Feed,
                Figures {
                    trees: Some(LIVE),
                    grams_per_tree: Some(ration.grams_per_tree()),
                    kilograms: Some(ration.kilograms()),
                    rations: vec![ration.clone()],
                    ..Figures::default()
                },
            );
            in_every_language(|case| {
                let text = nudge(case.tongue, &feed);
                let (figures, told) = (numbers(&text), products_in(&text, &ration));
                let each: Vec<f64> = if told {
                    let grams = ration.products.iter().map(|one| one.grams_per_tree);
                    grams.collect()
                } else {
                    vec![ration.grams_per_tree()]
                };
                for grams in each {
                    let at = figures.iter().position(|one| (one - grams).abs() <= 0.051);
                    let at = at.unwrap_or_else(|| panic!("{grams} g: {calendar}: {text}"));
                    let kilograms = f64::from(LIVE) * grams / 1_000.0;
                    let mut behind = figures.iter().skip(at + 1);
                    assert!(
                        behind.any(|one| (one - kilograms).abs() <= 0.051),
                        "{kilograms} kg: {calendar}: {text}"
                    );
                }
                assert!(
                    figures.contains(&f64::from(LIVE)),
                    "of how many trees? {text}"
                );
                if case.written["walk-weeds"] == "weeds" {
                    assert!(told || ration.products.len() > 2, "{calendar}: {text}");
                    named.set(named.get() + usize::from(told));
                }
            });
        }
    }
    let named = named.get();
    assert!(named > 12, "products are named in {named} rounds only");
    for (language, file) in source::files() {
        for (key, text) in source::texts(&file) {
            let has = |value: &str| source::values(&text).contains(value);
            let is_sum = has("grams") && has("kilograms");
            assert!(!is_sum || has("trees"), "{language}: {key}: {text}");
        }
    }
}

fn products_in(text: &str, ration: &Ration) -> bool {
    let mut products = ration.products.iter();
    products.all(|one| text.contains(&format!("{} ", one.product)))
}

/// Every number of a text that stands alone, not inside a grade.
fn numbers(text: &str) -> Vec<f64> {
    let is_apart = |c: char| !(c.is_ascii_digit() || ".,-".contains(c));
    text.split(is_apart)
        .map(|number| number.trim_matches(['.', ',', '-']).replace(',', "."))
        .filter_map(|number| number.parse().ok())
        .collect()
}

/// Whatever the stories are told in: what was sent there holds.
#[test]
fn trees_times_grams_is_kilograms_in_every_story() {
    let stories = Path::new(env!("CARGO_MANIFEST_DIR")).join("../tests/conversations");
    let mut seen = 0;
    for entry in fs::read_dir(stories).expect("a folder of stories") {
        let story = fs::read_to_string(entry.expect("an entry").path()).expect("a story");
        for line in story.lines() {
            for product in products(line).into_iter().chain(doses(line)) {
                assert_product(line, product);
                seen += 1;
            }
        }
    }
    assert!(seen > 10, "only {seen} products in the stories");
}

/// Trees, grams and kilograms of each product: "480 trees, urea 125 g + tsp 60 g a tree: 60 kg + 28.8
/// kg", or in short "480 x urea 125+tsp 60 g = 60+28.8 kg".
fn doses(line: &str) -> Vec<[f64; 3]> {
    let told = || {
        let full = || {
            let (before, rest) = line.split_once(" trees, ")?;
            let (products, rest) = rest.split_once(" a tree: ")?;
            Some((before, products, rest))
        };
        let brief = || {
            let (before, rest) = line.split_once(" x ")?;
            let (products, rest) = rest.split_once(" g = ")?;
            let is_named = products.starts_with(|c: char| c.is_ascii_lowercase());
            is_named.then_some((before, products, rest))
        };
        let (before, products, rest) = full().or_else(brief)?;
        let (kilograms, _) = rest.split_once("kg. ")?;
        let trees = before.rsplit(' ').next()?.parse::<f64>().ok()?;
        let last = |part: &str| {
            part.trim_end_matches([' ', 'g'])
                .rsplit(' ')
                .next()?
                .parse()
                .ok()
        };
        let grams: Vec<f64> = products.split('+').filter_map(last).collect();
        let weight = |part: &str| part.trim().trim_end_matches(" kg").parse().ok();
        let kilograms: Vec<f64> = kilograms.split('+').filter_map(weight).collect();
        assert_eq!(grams.len(), kilograms.len(), "{line}");
        let pairs = grams.into_iter().zip(kilograms);
        Some(pairs.map(|(grams, kg)| [trees, grams, kg]).collect())
    };
    told().unwrap_or_default()
}

#[test]
fn the_linter_of_products_sees_a_wrong_one() {
    let wrong = "Tamo, feed A by Wed 12 Aug: 480 trees x 260 g = 118.8 kg. Weed first.";
    assert_eq!(products(wrong), [[480.0, 260.0, 118.8]]);
    assert_eq!(products("ปุ๋ย A 480x260.5ก=125กก"), [[480.0, 260.5, 125.0]]);
    assert!(products("every 10 trees, 2 x a year, 40 kg").is_empty());
    let two = "feed A by Wed 12 Aug: 480 trees, urea 125 g + tsp 60 g a tree: 60 kg + 29 kg. Weed";
    let expected = [[480.0, 125.0, 60.0], [480.0, 60.0, 29.0]];
    assert_eq!(doses(two), expected);
    assert_eq!(
        doses("feed A: 480 x urea 125+tsp 60 g = 60+29 kg. Weed"),
        expected
    );
}

/// But for the next weeks, of which the weekday tells.
#[test]
fn a_day_of_another_year_carries_its_year() {
    let (told, today) = (day("2025-08-05"), day("2026-09-20"));
    let fact = Draft {
        kind: Kind::Planted,
        block: Some("A".to_owned()),
        said: None,
        on: Happened {
            from: told,
            to: told,
        },
        details: Details {
            count: Some(12),
            ..Details::default()
        },
    };
    let facts = Facts {
        block: "A",
        facts: &[&fact],
        today,
    };
    let after = After {
        state: &BlockState::default(),
        places: None,
        next: None,
        ready: None,
        adviser: "Mara",
        is_told: true,
        ordered: None,
    };
    in_every_language(|case| {
        let ahead: i32 = case.written["years-ahead"].parse().expect("years");
        let text = case.tongue.word(&read_back(facts, after));
        let year = (2025 + ahead).to_string();
        assert!(text.contains(&year), "{text}");
    });
    let winter = day("2026-12-20");
    for (seen, has_year) in [
        (Value::day_seen(day("2026-08-05"), today), false),
        (Value::day_seen(told, today), true),
        (Value::day_seen(day("2027-01-05"), today), true),
        (Value::day_seen(day("2027-01-05"), winter), false),
        (Value::day_seen(day("2027-01-21"), winter), true),
        (Value::day_seen(day("2025-12-31"), day("2026-01-02")), false),
    ] {
        assert_eq!(matches!(seen, Value::DayYear(_)), has_year, "{seen:?}");
    }
}

/// Land is told in the unit of the place (1 rai is 1,600 square metres: the Thai Weights and
/// Measures Act of 1923), and no text but that of the unit itself names another.
#[test]
fn land_is_told_in_the_unit_of_the_place() {
    let texts = Texts::built_in().unwrap();
    let mut seen = 0;
    for (language, file) in source::files() {
        let tongue = texts.tongue(&[&language]);
        let (unit, other) = if language == "th" {
            ("5 ไร่", "เฮกตาร์")
        } else {
            ("ha", "rai")
        };
        assert!(tongue.land(0.8).ends_with(unit), "{language}");
        for (key, text) in source::texts(&file) {
            if !key.starts_with("unit-") && key != "land" {
                let own = source::own_letters(&text);
                let names = own.split_whitespace().any(|word| word == other);
                assert!(!names, "{language}: {key}: {text}");
                seen += usize::from(source::values(&text).contains("area"));
            }
        }
        assert!(source::texts(&file)["how-much-unknown"].contains(unit.trim_start_matches("5 ")));
    }
    assert!(seen >= 12, "an area is told in {seen} texts");
}

/// A hand is a breadth to one and a span to another; lengths are in metres and centimetres.
#[test]
fn no_text_measures_with_the_body_or_in_inches() {
    const MEASURES: [(&str, &[&str]); 6] = [
        (
            "en",
            &["a hand off", "a hand from", "span", "arm's", "paces"],
        ),
        ("fr", &["une main", "empan", "pouce", "coudée"]),
        ("id", &["sejengkal", "jengkal", "depa", "hasta"]),
        ("pt", &["palmo", "braca", "polegada"]),
        ("th", &["คืบ", "ศอก", "นิ้ว"]),
        ("vi", &["gang tay", "sải tay", "inch"]),
    ];
    for (language, file) in source::files() {
        let found = MEASURES.iter().find(|(code, _)| *code == language);
        let measures = found.expect("measures of each language").1;
        for (key, text) in source::texts(&file) {
            // What a farmer measured in is read back as told.
            if key.starts_with("unit-") || key == "why-inches" {
                continue;
            }
            let named = measures.iter().find(|measure| text.contains(**measure));
            assert!(named.is_none(), "{language}: {key}: {named:?} in {text}");
        }
    }
}

/// Between ground and graft lie some ten centimetres of stem.
#[test]
fn girth_is_asked_for_from_the_ground_or_from_the_graft() {
    in_every_language(|case| {
        let [ground, graft] = [Datum::Ground, Datum::Union].map(|datum| {
            [TaskKind::GirthCensus, TaskKind::OpenRest].map(|kind| {
                let figures = Figures {
                    trees: Some(480),
                    datum_cm: Some(100.0),
                    datum: Some(datum),
                    ..Figures::default()
                };
                let text = nudge(case.tongue, &task(kind, figures));
                assert!(text.contains("100"), "{text}");
                text
            })
        });
        assert!(ground.iter().zip(&graft).all(|(one, other)| one != other));
    });
}

/// Who is asked to measure is asked for the measures.
#[test]
fn a_text_that_asks_for_measures_takes_them() {
    for (speech, texts) in spoken() {
        for (key, text) in &texts {
            if source::values(text).contains("datum") {
                let girth = word(speech, Reply::Girth);
                assert!(text.contains(girth), "{}: {key}: {text}", speech.code);
                let done = word(speech, Reply::Done);
                assert!(!text.contains(done), "{}: {key}: {text}", speech.code);
            }
        }
    }
}

/// A longer form that is never sent would say its caution to nobody.
#[test]
fn the_longer_form_goes_at_usual_values() {
    let figures = || Figures {
        trees: Some(480),
        grams_per_tree: Some(260.0),
        kilograms: Some(124.8),
        girth_cm: Some(50.0),
        datum_cm: Some(100.0),
        share_pct: Some(70.0),
        pit_cm: Some(60.0),
        is_published: true,
        walk: Some(Walk {
            every: 14,
            from: 5,
            trees: 34,
        }),
        ..Figures::default()
    };
    in_every_language(|case| {
        for kind in TaskKind::ALL {
            let key = format!("nudge-{}", kind.name());
            if let Some(long) = case.written.get(&format!("{key}.long")) {
                let text = nudge(case.tongue, &task(kind, figures()));
                let own = source::own_letters(long);
                let lacks = own.split_whitespace().find(|part| !text.contains(part));
                assert!(lacks.is_none(), "{key} lacks {lacks:?}: {text}");
            }
        }
    });
    let files = source::files();
    let mut keys = files
        .iter()
        .flat_map(|(_, file)| source::texts(file).into_keys());
    assert!(
        keys.any(|key| key.ends_with(".long")),
        "nothing was checked"
    );
}
