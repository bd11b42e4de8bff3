//! The bank of shapes: in which ways a stand may grow, and how much each is believed.
//!
//! Before anything is measured each shape goes through the girth that the handbook leads to expect.
//! Stands of other places under the same handbook tell which shapes are likely, but nothing of the
//! pace here. The censuses of other stands of the place move the usual rate of each shape, and tell
//! which of them foretold these stands; then the stand's own censuses do the same.

use alloc::vec::Vec;

use super::{Sample, path::Path};
use crate::{
    handbook::calendar::Calendar,
    outlook::growth::{Among, Course, Place, Seen, Shape, pace},
};

/// How far the rate of a place is from what the handbook leads to expect, as standard deviation
/// over the rate. An assumption: published rates differ by a factor of three between countries.
const PLACE_SPREAD: f64 = 0.18;
/// How far the rate of a stand is from that of its place, in the same way. An assumption.
const STAND_SPREAD: f64 = 0.10;
/// Stands of one place have the same good and bad years: however many were measured, so much of its
/// rate stays open. An assumption.
const SHARED_SPREAD: f64 = 0.05;
/// For the same reason many stands tell little more of the shape than so many.
const STANDS_THAT_COUNT: f64 = 4.0;
/// So many stands are asked; more say the same.
const STANDS_HEARD: usize = 24;
/// How likely stands of another place under the same handbook grow by the same law. An assumption.
const SAME_LAW: f64 = 2.0 / 3.0;
/// The girth that tells how a stand grew is known no better than so, over itself.
const PEER_ERROR: f64 = 0.05;

/// Ages at which plants begin to grow, in years. Assumptions, as likely one as the other.
const STARTS_YEARS: [f64; 2] = [0.5, 1.0];
/// Each shape with its weight before anything was measured. Assumptions: what was published stands
/// about as much for slowing growth as for a straight line, and those at the ends of the bank weigh
/// most, so that the range holds whichever of them is true. The limits and the girth of the bend are
/// assumptions too: about so thick are stands when their crowns close.
const SHAPES: [(Shape, f64); 9] = [
    (Shape::Slowing { limit_cm: 80.0 }, 0.18),
    (Shape::Slowing { limit_cm: 90.0 }, 0.05),
    (Shape::Slowing { limit_cm: 110.0 }, 0.03),
    (Shape::Slowing { limit_cm: 150.0 }, 0.03),
    (Shape::Straight, 0.29),
    (Shape::Bent { knee_cm: 45.0 }, 0.09),
    (Shape::Sigmoid { limit_cm: 80.0 }, 0.11),
    (Shape::Sigmoid { limit_cm: 110.0 }, 0.11),
    (Shape::Sigmoid { limit_cm: 150.0 }, 0.11),
];

/// A shape and how much it is believed.
#[derive(Clone, Copy, Debug)]
pub(super) struct Member {
    pub(super) weight: f64,
    pub(super) path: Path,
}

/// The measured stands of a place. What they tell of each shape is worked out once, however many
/// stands ask for it.
#[derive(Clone, Debug, Default)]
pub struct Stands {
    usual: Place,
    girths: Vec<Vec<Seen>>,
    /// In the order of [`courses`].
    rates: Vec<PlaceRate>,
}

impl Stands {
    /// Of the girths of each stand, oldest first.
    #[must_use]
    pub fn of(calendar: &Calendar, girths: Vec<Vec<Seen>>) -> Self {
        let last: Vec<Seen> = girths
            .iter()
            .filter_map(|stand| stand.last().copied())
            .collect();
        let heard = girths
            .get(..girths.len().min(STANDS_HEARD))
            .unwrap_or_default();
        let rates = courses(calendar)
            .map(|(usual, _)| PlaceRate::of(usual, heard.iter().map(Vec::as_slice)))
            .collect();
        Self {
            usual: Place::of(&last),
            girths,
            rates,
        }
    }

    /// Without one of them, so that a stand is not held against itself. Where there are very many
    /// one more or less tells nothing.
    fn rate(&self, number: usize, usual: Course, own: &[Seen]) -> Option<PlaceRate> {
        if own.is_empty() || self.girths.len() > STANDS_HEARD {
            return self.rates.get(number).copied();
        }
        let others = self.girths.iter().map(Vec::as_slice);
        Some(PlaceRate::of(usual, others.filter(|stand| *stand != own)))
    }
}

/// How far each shape is believed for what the stands of other places tell.
#[derive(Clone, Debug)]
pub struct Laws {
    /// In the order of [`courses`].
    weights: Vec<f64>,
}

impl Laws {
    /// Of the stands of each other place under this handbook. None without any.
    #[must_use]
    pub fn of(calendar: &Calendar, places: &[Stands]) -> Option<Self> {
        let count = places.len();
        let usual = shares(courses(calendar).map(|(_, weight)| libm::log(weight)));
        let mut weights: Vec<f64> = usual.iter().map(|one| one * (1.0 - SAME_LAW)).collect();
        for place in places {
            let told = place.rates.iter().map(|rate| rate.evidence);
            let logs = usual.iter().map(|weight| libm::log(*weight));
            let told = shares(logs.zip(told).map(|(log, told)| log + told));
            for (weight, told) in weights.iter_mut().zip(told) {
                *weight += SAME_LAW * told / count as f64;
            }
        }
        (count > 0).then_some(Self { weights })
    }
}

/// What each of these logarithms of weights is of all.
fn shares(logs: impl Iterator<Item = f64>) -> Vec<f64> {
    let logs: Vec<f64> = logs.collect();
    let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let weights: Vec<f64> = logs.iter().map(|log| libm::exp(log - most)).collect();
    let all: f64 = weights.iter().sum();
    weights.into_iter().map(|weight| weight / all).collect()
}

/// A stand beside others of its place.
#[derive(Clone, Copy, Debug, Default)]
pub struct Beside<'a> {
    /// The stands of the place.
    pub stands: Option<&'a Stands>,
    /// The stand's own girths, if it is one of those.
    pub own: &'a [Seen],
    /// What the stands of other places tell.
    pub laws: Option<&'a Laws>,
}

impl<'a> Beside<'a> {
    /// The same for the usual curve of the place.
    pub(super) fn among(self) -> Among<'a> {
        Among {
            place: self.stands.map(|stands| &stands.usual),
            own: self.own.last().copied(),
        }
    }
}

/// Each shape from each start, as the handbook leads to expect it, with its weight.
fn courses(calendar: &Calendar) -> impl Iterator<Item = (Course, f64)> {
    SHAPES.into_iter().flat_map(move |(shape, weight)| {
        STARTS_YEARS.into_iter().filter_map(move |start_years| {
            let usual = Course::usual(calendar, shape, start_years)?;
            Some((usual, weight))
        })
    })
}

/// All shapes that the stand's censuses allow, with the stand where each leads it.
pub(super) fn bank(
    calendar: &Calendar,
    clone_name: Option<&str>,
    beside: Beside<'_>,
    samples: &[(f64, Sample)],
) -> Vec<Member> {
    let mut members: Vec<(f64, Path)> = Vec::new();
    for (number, (usual, weight)) in courses(calendar).enumerate() {
        let member = || {
            let told = beside
                .stands
                .and_then(|stands| stands.rate(number, usual, beside.own))
                .filter(|place| place.stands > 0.0);
            // Stands of the place tell more than the class of the clone.
            let place = told.unwrap_or_else(|| PlaceRate::unknown(usual.faster(pace(clone_name))));
            let course = Course {
                rate: place.rate,
                ..usual
            };
            let weight = beside
                .laws
                .and_then(|laws| laws.weights.get(number).copied())
                .unwrap_or(weight);
            let own = STAND_SPREAD * place.rate;
            let start = Path::start(course, place.rate_var + own * own);
            let path = samples
                .iter()
                .try_fold(start, |path, (age_years, sample)| {
                    path.seen(*age_years, sample.mean_cm, sample.error_cm)
                })?;
            Some((libm::log(weight) + place.evidence + path.evidence, path))
        };
        members.extend(member());
    }
    let weights = shares(members.iter().map(|(log, _)| *log));
    let weighed = weights.into_iter().zip(members);
    weighed
        .map(|(weight, (_, path))| Member { weight, path })
        .collect()
}

/// How fast stands of a place go along a shape, as its measured stands tell.
#[derive(Clone, Copy, Debug)]
struct PlaceRate {
    rate: f64,
    rate_var: f64,
    evidence: f64,
    stands: f64,
}

impl PlaceRate {
    /// Before any stand was measured.
    fn unknown(usual: Course) -> Self {
        let spread = PLACE_SPREAD * usual.rate;
        let shared = SHARED_SPREAD * usual.rate;
        Self {
            rate: usual.rate,
            rate_var: spread * spread + shared * shared,
            evidence: 0.0,
            stands: 0.0,
        }
    }

    fn of<'a>(usual: Course, girths: impl Iterator<Item = &'a [Seen]>) -> Self {
        let spread = PLACE_SPREAD * usual.rate;
        let mut place = Self {
            rate_var: spread * spread,
            ..Self::unknown(usual)
        };
        for stand in girths {
            if place.learn(usual, stand).is_some() {
                place.stands += 1.0;
            }
        }
        let shared = SHARED_SPREAD * place.rate;
        place.rate_var += shared * shared;
        place.evidence *= f64::min(1.0, STANDS_THAT_COUNT / f64::max(place.stands, 1.0));
        place
    }

    /// Takes in how one stand grew: each of its girths is foretold from those before.
    fn learn(&mut self, usual: Course, stand: &[Seen]) -> Option<()> {
        let own = STAND_SPREAD * self.rate;
        let before = self.rate_var + own * own;
        let course = Course {
            rate: self.rate,
            ..usual
        };
        let path = stand
            .iter()
            .try_fold(Path::start(course, before), |path, seen| {
                path.seen(seen.age_years, seen.girth_cm, PEER_ERROR * seen.girth_cm)
            })?;
        // What the stand's rate tells of the place: both were one figure before, so that the share
        // of the doubt that was the place's moves with it.
        let of_place = self.rate_var / before;
        self.rate += of_place * (path.rate - self.rate);
        self.rate_var -= of_place * of_place * (before - path.rate_var);
        self.evidence += path.evidence;
        Some(())
    }
}
