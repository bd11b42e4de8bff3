//! Weights while they are learned: rounds over texts, choices, signs; and the table as it ships.

use std::{vec, vec::Vec};

use super::{chain::Expected, features::Features, rows::Writer};
use crate::learned::{
    course::{ASIDE, BORDERS, DENIAL, DENIED, KINDS, STATES, STEPS, step},
    weights::{COLUMNS, MORE_COLUMNS, SCALE, SIZES},
};

/// A text to learn from.
pub(super) struct Sample {
    pub(super) clues: Vec<Vec<u32>>,
    pub(super) borders: Vec<usize>,
    /// The states that each piece may have.
    pub(super) allowed: Vec<Vec<usize>>,
    /// The states that must occur.
    pub(super) must: Vec<usize>,
}

/// A choice between columns: what was seen, and which columns are right.
pub(super) struct Choice {
    pub(super) clues: Vec<u32>,
    pub(super) right: Vec<usize>,
}

/// How fast it learns, and how strongly weights are drawn back to nothing.
const RATE: f32 = 0.2;
const PULL: f32 = 0.01;
/// So large a part of the clues is left out each time, so that no weight leans on another.
const LEFT_OUT: f32 = 0.6;
const CHOICE_LEFT_OUT: f32 = 0.5;
/// What is made of weights in the end, because all clues are there then.
const KEPT: f32 = 0.7;
const CHOICE_KEPT: f32 = 0.6;
/// Rounds over all texts; the weights are the mean of the last of them.
pub(super) const ROUNDS: usize = 8;
const MEAN_OF: usize = 4;
const CHOICE_ROUNDS: usize = 12;

/// Weights while they are learned.
pub(super) struct Model {
    rows: Vec<f32>,
    row_sums: Vec<f32>,
    more: Vec<f32>,
    more_sums: Vec<f32>,
    pub(super) steps: [[f32; STEPS]; BORDERS],
    step_sums: [[f32; STEPS]; BORDERS],
    draw: Draw,
    /// The sum of the rows after each of the last rounds, and how many those are.
    sum: Vec<f32>,
    summed: f32,
}

/// What each state is worth at one piece.
pub(super) type Worth = [f32; STATES];

impl Model {
    pub(super) fn new(rows: usize) -> Self {
        let steps = [
            [0.5, 1.0, -1.0, -0.5, -2.0],
            [0.2, 0.5, -0.5, -0.3, -1.0],
            [0.2, 0.2, -0.3, 0.0, -0.3],
        ];
        Self {
            rows: vec![0.0; rows * COLUMNS],
            row_sums: vec![1e-2; rows * COLUMNS],
            more: vec![0.0; rows * MORE_COLUMNS],
            more_sums: vec![1e-2; rows * MORE_COLUMNS],
            steps,
            step_sums: [[1.0; STEPS]; BORDERS],
            draw: Draw::new(12_345),
            sum: vec![0.0; rows * COLUMNS],
            summed: 0.0,
        }
    }

    /// Makes the weights what they are in the end.
    pub(super) fn settle(&mut self) {
        for (weight, sum) in self.rows.iter_mut().zip(&self.sum) {
            *weight = sum / self.summed * KEPT;
        }
    }

    fn worths(&self, clues: &[Vec<u32>]) -> Vec<Worth> {
        clues
            .iter()
            .map(|clues| {
                let mut sum = [0.0_f32; COLUMNS];
                for clue in clues {
                    let start = *clue as usize * COLUMNS;
                    for (place, weight) in sum.iter_mut().zip(&self.rows[start..start + COLUMNS]) {
                        *place += weight;
                    }
                }
                spread(&sum)
            })
            .collect()
    }

    /// One round over all texts; the mean loss.
    pub(super) fn round(&mut self, samples: &[&Sample], round: usize) -> f32 {
        let mut order: Vec<usize> = (0..samples.len()).collect();
        for at in (1..order.len()).rev() {
            order.swap(at, self.draw.next() as usize % (at + 1));
        }
        let mut loss = 0.0;
        for at in &order {
            let sample = samples[*at];
            let mut clues = Vec::new();
            for all in &sample.clues {
                clues.push(self.draw.thin(all, LEFT_OUT));
            }
            loss += self.learn(sample, &clues);
        }
        if round + MEAN_OF >= ROUNDS {
            for (sum, weight) in self.sum.iter_mut().zip(&self.rows) {
                *sum += weight;
            }
            self.summed += 1.0;
        }
        loss / samples.len() as f32
    }

    fn learn(&mut self, sample: &Sample, clues: &[Vec<u32>]) -> f32 {
        let worths = self.worths(clues);
        let Some(wanted) = self.wanted(sample, &worths) else {
            return 0.0;
        };
        let free = self.free(sample, &worths);
        let count = worths.len();
        for at in 0..count {
            let mut gradient = [0.0_f32; COLUMNS];
            for state in 0..STATES {
                let slope = wanted.states[at][state] - free.states[at][state];
                if state < DENIED {
                    gradient[state] += slope;
                } else {
                    gradient[state - KINDS] += slope;
                    gradient[DENIAL] += slope;
                }
            }
            if gradient.iter().all(|slope| slope.abs() < 1e-4) {
                continue;
            }
            for clue in &clues[at] {
                let start = *clue as usize * COLUMNS;
                for column in 0..=DENIAL {
                    let slope = gradient[column];
                    if slope == 0.0 {
                        continue;
                    }
                    let weight = &mut self.rows[start + column];
                    let slope = slope - PULL * *weight;
                    let sum = &mut self.row_sums[start + column];
                    *sum += slope * slope;
                    *weight += RATE * slope / libm::sqrtf(*sum + 0.5);
                }
            }
        }
        for border in 0..BORDERS {
            for step in 0..STEPS {
                let slope = wanted.steps[border][step] - free.steps[border][step];
                let sum = &mut self.step_sums[border][step];
                *sum += slope * slope;
                self.steps[border][step] += RATE * slope / libm::sqrtf(*sum);
            }
        }
        free.log - wanted.log
    }

    /// All courses.
    fn free(&self, sample: &Sample, worths: &[Worth]) -> Expected {
        let every: Vec<usize> = (0..STATES).collect();
        let allowed: Vec<&[usize]> = worths.iter().map(|_| every.as_slice()).collect();
        self.expected(sample, worths, &allowed, &[])
            .unwrap_or_default()
    }

    /// The courses that tell what is to be told.
    fn wanted(&self, sample: &Sample, worths: &[Worth]) -> Option<Expected> {
        let allowed: Vec<&[usize]> = sample.allowed.iter().map(Vec::as_slice).collect();
        self.expected(sample, worths, &allowed, &sample.must)
            .or_else(|| self.expected(sample, worths, &allowed, &[]))
    }

    /// Learns which of some columns is right.
    pub(super) fn learn_choice(&mut self, (first, count): (usize, usize), texts: &[Choice]) {
        for _ in 0..CHOICE_ROUNDS {
            for text in texts {
                let clues = self.draw.thin(&text.clues, CHOICE_LEFT_OUT);
                let odds = self.odds(&clues, first, count);
                let right: f32 = text
                    .right
                    .iter()
                    .map(|column| odds[column - first])
                    .sum::<f32>()
                    .max(1e-9);
                for at in 0..count {
                    let wanted = if text.right.contains(&(first + at)) {
                        odds[at] / right
                    } else {
                        0.0
                    };
                    let slope = wanted - odds[at];
                    if slope.abs() < 1e-3 {
                        continue;
                    }
                    for clue in &clues {
                        let place = *clue as usize * MORE_COLUMNS + first + at;
                        let slope = slope - PULL * self.more[place];
                        self.more_sums[place] += slope * slope;
                        self.more[place] += RATE * slope / libm::sqrtf(self.more_sums[place] + 0.5);
                    }
                }
            }
        }
        for row in self.more.chunks_exact_mut(MORE_COLUMNS) {
            for weight in &mut row[first..first + count] {
                *weight *= CHOICE_KEPT;
            }
        }
    }

    fn odds(&self, clues: &[u32], first: usize, count: usize) -> Vec<f32> {
        let mut sum = vec![0.0_f32; count];
        for clue in clues {
            let start = *clue as usize * MORE_COLUMNS + first;
            for (place, weight) in sum.iter_mut().zip(&self.more[start..start + count]) {
                *place += weight;
            }
        }
        let peak = sum.iter().copied().fold(f32::MIN, f32::max);
        let mut total = 0.0;
        for place in &mut sum {
            *place = libm::expf(*place - peak);
            total += *place;
        }
        for place in &mut sum {
            *place /= total;
        }
        sum
    }

    /// The best course of those that tell what is to be told.
    pub(super) fn decode_within(&self, sample: &Sample) -> Vec<usize> {
        self.decode_among(sample, &|at, state| sample.allowed[at].contains(&state))
    }

    /// The best course.
    pub(super) fn decode(&self, sample: &Sample) -> Vec<usize> {
        self.decode_among(sample, &|_, _| true)
    }

    fn decode_among(&self, sample: &Sample, may: &dyn Fn(usize, usize) -> bool) -> Vec<usize> {
        let worths = self.worths(&sample.clues);
        let mut last = [0.0_f32; STATES];
        let mut from: Vec<[usize; STATES]> = Vec::new();
        for (at, worth) in worths.iter().enumerate() {
            let steps = &self.steps[sample.borders[at]];
            let mut here = [0.0_f32; STATES];
            let mut came = [0; STATES];
            for state in 0..STATES {
                let (mut best, mut who) = (f32::MIN, 0);
                if at == 0 {
                    best = if state == ASIDE { steps[0] } else { steps[2] };
                } else {
                    for before in 0..STATES {
                        let way = last[before] + steps[step(before, state)];
                        if way > best {
                            best = way;
                            who = before;
                        }
                    }
                }
                here[state] = if may(at, state) {
                    best + worth[state]
                } else {
                    -1e9
                };
                came[state] = who;
            }
            from.push(came);
            last = here;
        }
        let mut state = (0..STATES)
            .max_by(|a, b| last[*a].total_cmp(&last[*b]))
            .unwrap_or(0);
        let mut states = vec![0; worths.len()];
        for at in (0..worths.len()).rev() {
            states[at] = state;
            state = from[at][state];
        }
        states
    }

    /// The table as it ships.
    pub(super) fn bytes(&self, features: &Features, sure: &[u8]) -> Vec<u8> {
        let mut bytes = Vec::new();
        for border in &self.steps {
            for value in border {
                let step = (value * f32::from(SCALE))
                    .round()
                    .clamp(-32_000.0, 32_000.0) as i16;
                bytes.extend(step.to_le_bytes());
            }
        }
        bytes.extend(sure);
        let mut rows = Writer::new(SIZES);
        let steps = |weight: &f32| (weight * f32::from(SCALE)).round().clamp(-127.0, 127.0) as i8;
        for (clue, row) in features.each() {
            let row = row as usize;
            let told = &self.rows[row * COLUMNS..(row + 1) * COLUMNS];
            let more = &self.more[row * MORE_COLUMNS..(row + 1) * MORE_COLUMNS];
            rows.put(clue, told.iter().chain(more).map(steps));
        }
        bytes.extend(rows.bytes());
        bytes
    }
}

fn spread(columns: &[f32; COLUMNS]) -> Worth {
    let mut worth = [0.0; STATES];
    for (state, place) in worth.iter_mut().enumerate() {
        *place = if state < DENIED {
            columns[state]
        } else {
            columns[state - KINDS] + columns[DENIAL]
        };
    }
    worth
}

/// Draws numbers from a seed (xorshift, 32 bits).
pub(super) struct Draw(u32);

impl Draw {
    pub(super) const fn new(seed: u32) -> Self {
        Self(seed)
    }

    /// A number below another.
    pub(super) fn below(&mut self, end: usize) -> usize {
        self.next() as usize % end.max(1)
    }

    /// Whether something happens that happens so many times in a hundred.
    pub(super) fn chance(&mut self, percent: u32) -> bool {
        self.next() % 100 < percent
    }

    fn next(&mut self) -> u32 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 17;
        self.0 ^= self.0 << 5;
        self.0
    }

    /// Clues without a part of them.
    pub(super) fn thin(&mut self, clues: &[u32], left_out: f32) -> Vec<u32> {
        let least = (f64::from(left_out) * f64::from(u32::MAX)) as u32;
        clues
            .iter()
            .copied()
            .filter(|_| self.next() >= least)
            .collect()
    }
}
