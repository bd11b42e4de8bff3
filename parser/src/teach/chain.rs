//! A chain of states over the pieces of a text: how likely courses are, and what is expected over
//! all of them.

use std::{vec, vec::Vec};

use super::model::{Model, Sample, Worth};
use crate::learned::course::{ASIDE, BORDERS, STATES, STEPS, step};

/// What is expected over many courses.
#[derive(Default)]
pub(super) struct Expected {
    pub(super) log: f32,
    pub(super) states: Vec<Worth>,
    pub(super) steps: [[f32; STEPS]; BORDERS],
}

impl Model {
    /// What is expected over the courses that pass only allowed states, and every state that must be.
    pub(super) fn expected(
        &self,
        sample: &Sample,
        worths: &[Worth],
        allowed: &[&[usize]],
        must: &[usize],
    ) -> Option<Expected> {
        let masks = 1_usize << must.len();
        let bit = |state: usize| {
            must.iter()
                .position(|m| *m == state)
                .map_or(0, |at| 1 << at)
        };
        let count = worths.len();
        let dense = must.is_empty() && allowed.first().is_some_and(|all| all.len() == STATES);
        // ahead[at][mask * STATES + state], as probabilities scaled at each piece.
        let mut ahead: Vec<Vec<f32>> = Vec::with_capacity(count);
        let mut scales = Vec::with_capacity(count);
        let exps: Vec<[f32; STEPS]> = sample
            .borders
            .iter()
            .map(|border| {
                let mut out = [0.0; STEPS];
                for (place, value) in out.iter_mut().zip(&self.steps[*border]) {
                    *place = libm::expf(*value);
                }
                out
            })
            .collect();
        let mut peaks = Vec::with_capacity(count);
        let odds: Vec<Worth> = worths
            .iter()
            .map(|worth| {
                let peak = worth.iter().copied().fold(f32::MIN, f32::max);
                peaks.push(peak);
                let mut odds = [0.0; STATES];
                for (place, value) in odds.iter_mut().zip(worth) {
                    *place = libm::expf(value - peak);
                }
                odds
            })
            .collect();
        for at in 0..count {
            let mut here = vec![0.0_f32; masks * STATES];
            let steps = &exps[at];
            for &state in allowed[at] {
                let own = bit(state);
                for mask in 0..masks {
                    if own != 0 && mask & own == 0 {
                        continue;
                    }
                    let mut sum = 0.0;
                    if at == 0 {
                        if mask == own {
                            sum = if state == ASIDE { steps[0] } else { steps[2] };
                        }
                    } else {
                        let before = &ahead[at - 1];
                        let mut from_masks = [mask, usize::MAX];
                        if own != 0 {
                            from_masks[1] = mask & !own;
                        }
                        for from_mask in from_masks {
                            if from_mask == usize::MAX {
                                continue;
                            }
                            let base = from_mask * STATES;
                            if dense {
                                let total: f32 = before[base..base + STATES].iter().sum();
                                let aside = before[base];
                                if state == ASIDE {
                                    sum += aside * steps[0] + (total - aside) * steps[3];
                                } else {
                                    let same = before[base + state];
                                    sum += same * steps[1]
                                        + aside * steps[2]
                                        + (total - aside - same).max(0.0) * steps[4];
                                }
                            } else {
                                for &from in allowed[at - 1] {
                                    sum += before[base + from] * steps[step(from, state)];
                                }
                            }
                        }
                    }
                    here[mask * STATES + state] = sum * odds[at][state];
                }
            }
            let total: f32 = here.iter().sum();
            if total <= 0.0 || !total.is_finite() {
                return None;
            }
            for place in &mut here {
                *place /= total;
            }
            scales.push(total);
            ahead.push(here);
        }
        let full = masks - 1;
        let last = &ahead[count - 1];
        let end: f32 = (0..STATES).map(|state| last[full * STATES + state]).sum();
        if end <= 1e-20 {
            return None;
        }
        let mut log = libm::logf(end);
        for at in 0..count {
            log += libm::logf(scales[at]) + peaks[at];
        }
        let mut found = Expected {
            log,
            states: vec![[0.0; STATES]; count],
            steps: [[0.0; STEPS]; BORDERS],
        };
        let mut behind = vec![0.0_f32; masks * STATES];
        for state in 0..STATES {
            behind[full * STATES + state] = 1.0 / end;
        }
        for at in (0..count).rev() {
            let here = &ahead[at];
            for mask in 0..masks {
                for &state in allowed[at] {
                    found.states[at][state] +=
                        here[mask * STATES + state] * behind[mask * STATES + state];
                }
            }
            if at == 0 {
                break;
            }
            let steps = &exps[at];
            let border = sample.borders[at];
            let before = &ahead[at - 1];
            let mut next = vec![0.0_f32; masks * STATES];
            if dense {
                let mut weight = [0.0_f32; STATES];
                let mut total = 0.0;
                for state in 0..STATES {
                    weight[state] = odds[at][state] * behind[state] / scales[at];
                    total += weight[state];
                }
                let aside = weight[0];
                let from_total: f32 = before.iter().sum();
                let mut same_sum = 0.0;
                for from in 0..STATES {
                    let told = total - aside;
                    next[from] = if from == ASIDE {
                        aside * steps[0] + told * steps[2]
                    } else {
                        weight[from] * steps[1]
                            + aside * steps[3]
                            + (told - weight[from]).max(0.0) * steps[4]
                    };
                    if from != ASIDE {
                        same_sum += before[from] * weight[from];
                    }
                }
                let told_before = from_total - before[0];
                let told = total - aside;
                found.steps[border][0] += before[0] * aside * steps[0];
                found.steps[border][1] += same_sum * steps[1];
                found.steps[border][2] += before[0] * told * steps[2];
                found.steps[border][3] += told_before * aside * steps[3];
                found.steps[border][4] += (told_before * told - same_sum).max(0.0) * steps[4];
            } else {
                for &from in allowed[at - 1] {
                    for from_mask in 0..masks {
                        let mut sum = 0.0;
                        for &state in allowed[at] {
                            let mask = from_mask | bit(state);
                            let way = steps[step(from, state)]
                                * odds[at][state]
                                * behind[mask * STATES + state]
                                / scales[at];
                            sum += way;
                            found.steps[border][step(from, state)] +=
                                before[from_mask * STATES + from] * way;
                        }
                        next[from_mask * STATES + from] = sum;
                    }
                }
            }
            behind = next;
        }
        Some(found)
    }
}
