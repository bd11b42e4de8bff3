//! What questions ask, while it is learned: one choice among all that can be asked, and nothing of it.

use std::{vec, vec::Vec};

use super::{corpus::Line, features::Features, model::Draw, rows::Writer};
use crate::spoken::{
    askings::{FINER, SCALE, SIZES},
    meant::COLUMNS,
    signals::{SIGNALS, Signals},
};

/// How fast it learns.
const RATE: f32 = 0.25;
/// So large a part of the clues is left out each time, so that no weight leans on another.
const LEFT_OUT: f32 = 0.5;
const ROUNDS: usize = 16;
/// Signs learn as fast as a few clues.
const SIGNAL_RATE: f32 = 0.1;
/// Smaller slopes change nothing.
const SLOPE_MIN: f32 = 1e-3;
/// What is made of patterns counts less than what a person wrote.
const PATTERN: f32 = 0.25;

/// A text with what it asks.
pub(super) struct Question {
    pub(super) clues: Vec<u32>,
    pub(super) signals: Signals,
    pub(super) right: usize,
    pub(super) is_pattern: bool,
}

/// Weights while they are learned.
pub(super) struct Questions {
    weights: Vec<f32>,
    sums: Vec<f32>,
    /// What each column is worth by itself, and with each sign.
    signals: Vec<[f32; COLUMNS]>,
    draw: Draw,
}

impl Questions {
    /// Learns of texts whose clues are rows.
    pub(super) fn learned(rows: usize, texts: &[&Question]) -> Self {
        let mut model = Self {
            weights: vec![0.0; rows * COLUMNS],
            sums: vec![0.0; rows * COLUMNS],
            signals: vec![[0.0; COLUMNS]; SIGNALS + 1],
            draw: Draw::new(12_345),
        };
        let mut order: Vec<usize> = (0..texts.len()).collect();
        for round in 0..ROUNDS {
            for at in (1..order.len()).rev() {
                order.swap(at, model.draw.below(at + 1));
            }
            let rate = RATE * (1.0 - round as f32 / ROUNDS as f32);
            for at in &order {
                model.learn(texts[*at], rate);
            }
        }
        model
    }

    fn learn(&mut self, text: &Question, rate: f32) {
        let clues = self.draw.thin(&text.clues, LEFT_OUT);
        // Each clue counts less the more there are; those left out are not missed.
        let part = 1.0 / libm::sqrtf(text.clues.len().max(1) as f32) / (1.0 - LEFT_OUT);
        let signals = rows_of(text.signals);
        let mut worth = [0.0; COLUMNS];
        for row in signals.clone() {
            for (place, weight) in worth.iter_mut().zip(&self.signals[row]) {
                *place += weight;
            }
        }
        for clue in &clues {
            let start = *clue as usize * COLUMNS;
            for (place, weight) in worth.iter_mut().zip(&self.weights[start..start + COLUMNS]) {
                *place += weight * part;
            }
        }
        let peak = worth.iter().copied().fold(f32::MIN, f32::max);
        let mut total = 0.0;
        for place in &mut worth {
            *place = libm::expf(*place - peak);
            total += *place;
        }
        let share = if text.is_pattern { PATTERN } else { 1.0 };
        for (column, odds) in worth.iter().enumerate() {
            let wanted = if column == text.right { 1.0 } else { 0.0 };
            let slope = (wanted - odds / total) * share;
            if slope.abs() < SLOPE_MIN {
                continue;
            }
            for row in signals.clone() {
                self.signals[row][column] += SIGNAL_RATE * rate * slope;
            }
            for clue in &clues {
                let at = *clue as usize * COLUMNS + column;
                let slope = slope * part;
                self.sums[at] += slope * slope;
                self.weights[at] += rate * slope / libm::sqrtf(self.sums[at] + 1e-3);
            }
        }
    }

    /// The table as it ships.
    pub(super) fn bytes(&self, features: &Features) -> Vec<u8> {
        let steps = |weight: f32| (f64::from(weight) * SCALE).round().clamp(-127.0, 127.0) as i8;
        let mut bytes = Vec::new();
        for weight in self.signals.iter().flatten() {
            bytes.extend(((f64::from(*weight) * SCALE * FINER).round() as i16).to_le_bytes());
        }
        let mut rows = Writer::new(SIZES);
        for (clue, row) in features.each() {
            let start = row as usize * COLUMNS;
            let weights = &self.weights[start..start + COLUMNS];
            rows.put(clue, weights.iter().map(|weight| steps(*weight)));
        }
        bytes.extend(rows.bytes());
        bytes
    }
}

/// The rows of the signs of a text; the first is of every text.
fn rows_of(signals: Signals) -> impl Iterator<Item = usize> + Clone {
    let on = (0..SIGNALS).filter(move |sign| signals >> sign & 1 == 1);
    core::iter::once(0).chain(on.map(|sign| sign + 1))
}

/// The texts from which can be learned what is asked.
pub(super) fn questions(lines: &[Line]) -> Vec<(&Line, Question)> {
    let mut all = Vec::new();
    for line in lines {
        if let Some(right) = line.asks() {
            let (clues, signals) = line.asking_clues();
            let question = Question {
                clues,
                signals,
                right,
                is_pattern: line.fold().is_none(),
            };
            all.push((line, question));
        }
    }
    all
}
