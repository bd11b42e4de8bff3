//! Quantiles, intervals, sample sizes and fitted curves against PyPI scipy and statsmodels.
//!
//! The peers compute each value in this run. Curves are fitted to published girths: months 4 to 15
//! at two sites in Ghana (plantain-rubber trial, International Journal of Agronomy 2021, article
//! 3240686, table 1), and to made-up stands of later years.

use budwood_scheduler::{
    outlook::{
        census::trees_for_mean,
        growth::{Curve, Seen, fit},
    },
    sums::{
        chance::{below, hits, quantile},
        wilson,
    },
};
use serde_json::{Value, json};

use crate::peer::ask;

/// How far a computed share or value may be from the peer's.
const NEAR: f64 = 1e-9;

#[track_caller]
fn near(found: f64, theirs: &Value, by: f64, what: &Value) {
    let theirs = theirs.as_f64().expect("the peer answers with a number");
    assert!(
        (found - theirs).abs() <= by,
        "{what}: {found}, but {theirs}"
    );
}

fn compare(questions: Vec<Value>, check: impl Fn(&Value, &Value)) {
    let answers = ask("statistics.py", &questions);
    assert_eq!(answers.len(), questions.len());
    for (question, answer) in questions.iter().zip(&answers) {
        check(question, answer);
    }
}

fn number(question: &Value, key: &str) -> f64 {
    question[key].as_f64().expect("a number that we asked with")
}

fn whole(question: &Value, key: &str) -> u32 {
    let number = question[key].as_u64().expect("a number that we asked with");
    u32::try_from(number).expect("a small one")
}

#[test]
fn normal_quantiles_and_shares_are_those_of_scipy() {
    let shares = (1..1_000)
        .map(|n| f64::from(n) / 1_000.0)
        .chain([1e-6, 1.0 - 1e-6]);
    let questions = shares.map(|share| json!({"ask": "quantile", "share": share}));
    compare(questions.collect(), |question, theirs| {
        let found = quantile(number(question, "share")).unwrap();
        near(found, theirs, 1e-8, question);
    });
    let values = (-60..=60).map(|n| f64::from(n) / 10.0);
    let questions = values.map(|value| json!({"ask": "below", "value": value}));
    compare(questions.collect(), |question, theirs| {
        near(below(number(question, "value")), theirs, NEAR, question);
    });
}

#[test]
fn binomial_quantiles_are_those_of_scipy() {
    let mut questions = Vec::new();
    for of in [1, 5, 15, 30, 50, 100, 425] {
        for chance in [0.05, 0.3, 0.5, 0.65, 0.7, 0.95] {
            for share in [0.025, 0.1, 0.5, 0.9, 0.975] {
                questions.push(json!({"ask": "hits", "share": share, "of": of, "chance": chance}));
            }
        }
    }
    compare(questions, |question, theirs| {
        let (share, chance) = (number(question, "share"), number(question, "chance"));
        let found = hits(share, whole(question, "of"), chance);
        assert_eq!(found.map(u64::from), theirs.as_u64(), "{question}");
    });
}

fn counts(ask: &str) -> Vec<Value> {
    let mut questions = Vec::new();
    for of in [1, 2, 3, 10, 15, 30, 50, 100, 300, 425] {
        let step = (of / 15).max(1);
        questions.extend(
            (0..=of)
                .step_by(step)
                .map(|hits| json!({"ask": ask, "hits": hits, "of": of})),
        );
    }
    questions
}

fn check_interval(questions: Vec<Value>, interval: impl Fn(u32, u32) -> Option<(f64, f64)>) {
    compare(questions, |question, theirs| {
        let found = interval(whole(question, "hits"), whole(question, "of")).unwrap();
        for peer in ["scipy", "statsmodels"] {
            near(found.0, &theirs[peer][0], 1e-8, question);
            near(found.1, &theirs[peer][1], 1e-8, question);
        }
    });
}

#[test]
fn wilson_intervals_are_those_of_scipy_and_statsmodels() {
    check_interval(counts("wilson"), wilson::interval);
}

#[test]
fn samples_are_as_large_as_scipy_has_them() {
    let mut questions = Vec::new();
    for spread in [8.0, 12.0, 18.0, 25.0, 35.0] {
        for within in [0.4, 2.0, 5.0, 10.0, 20.0] {
            questions.push(json!({"ask": "trees_for_mean", "spread": spread, "within": within}));
        }
    }
    compare(questions, |question, theirs| {
        let found = trees_for_mean(number(question, "spread"), number(question, "within"));
        assert_eq!(found.map(u64::from), theirs.as_u64(), "{question}");
    });
}

/// Months after planting and mean girths in millimetres, rubber alone and under plantain of low,
/// medium and high density. Month 10 is missing at the one site, month 14 at the other.
const ELLEMBELLE: [(u32, [f64; 4]); 7] = [
    (4, [5.25, 5.78, 6.33, 6.93]),
    (5, [6.08, 6.88, 7.36, 8.00]),
    (6, [6.99, 8.00, 8.53, 9.17]),
    (7, [8.64, 9.32, 10.18, 11.30]),
    (8, [10.27, 10.56, 11.07, 13.21]),
    (9, [11.73, 12.57, 12.92, 14.39]),
    (11, [14.76, 16.24, 17.49, 18.22]),
];
const JOMORO: [(u32, [f64; 4]); 11] = [
    (4, [12.30, 14.28, 16.32, 17.72]),
    (5, [19.77, 21.22, 22.57, 25.58]),
    (6, [23.63, 25.12, 28.94, 32.05]),
    (7, [25.57, 28.73, 31.89, 36.08]),
    (8, [27.95, 32.85, 36.40, 39.66]),
    (9, [32.40, 35.50, 39.34, 41.88]),
    (10, [35.54, 38.42, 43.48, 45.08]),
    (11, [38.59, 41.10, 44.64, 47.71]),
    (12, [41.96, 44.40, 47.43, 50.16]),
    (13, [45.34, 47.39, 50.72, 52.41]),
    (15, [54.88, 55.67, 61.33, 64.33]),
];

fn series(site: &[(u32, [f64; 4])], treatment: usize) -> Vec<Seen> {
    site.iter()
        .map(|(month, girths_mm)| Seen {
            age_years: f64::from(*month) / 12.0,
            girth_cm: girths_mm[treatment] / 10.0,
        })
        .collect()
}

fn question(seen: &[Seen], limit_cm: f64, start: Option<f64>) -> Value {
    let seen: Vec<[f64; 2]> = seen
        .iter()
        .map(|one| [one.age_years, one.girth_cm])
        .collect();
    json!({"ask": "fit", "limit": limit_cm, "seen": seen, "start": start})
}

fn check_fits(all: &[(Vec<Seen>, f64, Option<f64>)]) {
    let questions = all
        .iter()
        .map(|(seen, limit_cm, start)| question(seen, *limit_cm, *start))
        .collect();
    compare(questions, |question, theirs| {
        let seen: Vec<Seen> = question["seen"]
            .as_array()
            .expect("a list that we asked with")
            .iter()
            .map(|pair| Seen {
                age_years: pair[0].as_f64().expect("an age"),
                girth_cm: pair[1].as_f64().expect("a girth"),
            })
            .collect();
        let start = question["start"].as_f64();
        let found = fit(&seen, number(question, "limit"), start).unwrap();
        near(found.curve.rate, &theirs["rate"], 1e-6, question);
        near(found.curve.start_years, &theirs["start"], 1e-5, question);
        // Whoever misses less has the better fit.
        let theirs = theirs["squares"].as_f64().expect("a number");
        assert!(found.squares <= theirs * (1.0 + 1e-9) + 1e-12, "{question}");
    });
}

#[test]
fn curves_through_published_girths_are_those_of_scipy() {
    let mut all = Vec::new();
    for site in [&ELLEMBELLE[..], &JOMORO[..]] {
        for treatment in 0..4 {
            for limit_cm in [80.0, 90.0, 110.0] {
                all.push((series(site, treatment), limit_cm, None));
            }
            all.push((series(site, treatment), 90.0, Some(0.0)));
        }
    }
    check_fits(&all);
}

#[test]
fn curves_through_later_years_are_those_of_scipy() {
    let noise = [0.4, -0.7, 0.2, 0.9, -0.5, -0.3, 0.6, -0.8];
    let mut all = Vec::new();
    for (girth_cm, age_years) in [(45.0, 4.0), (50.0, 6.0), (29.0, 4.5), (35.26, 6.0)] {
        let curve = Curve::through(girth_cm, age_years, 90.0).unwrap();
        let seen: Vec<Seen> = (2..)
            .zip(noise)
            .map(|(age, off)| Seen {
                age_years: f64::from(age),
                girth_cm: curve.girth_cm(f64::from(age)) + off,
            })
            .collect();
        all.push((seen.clone(), 90.0, None));
        all.push((seen.clone(), 90.0, Some(0.5)));
        all.push((seen, 110.0, None));
    }
    check_fits(&all);
}
