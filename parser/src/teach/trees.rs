//! Learns trees of questions from signs: each tree makes a little better what those before it make.

use std::{vec, vec::Vec};

use super::{corpus::Seen, model::Draw};
use crate::learned::{
    sure::{SIGN_MAX, SIGNS},
    trees::{DEPTH, TREES},
};

/// How much of what a tree finds is taken.
const RATE: f32 = 0.06;
/// How strongly worths are drawn back to nothing.
const PULL: f32 = 6.0;
/// A tree sees so many texts of a hundred, and so many signs.
const TEXTS_SEEN: u32 = 70;
const SIGNS_SEEN: u32 = 60;
/// So many steps of a worth are one unit of log-odds.
const SCALE: f32 = 100.0;

const VALUES: usize = SIGN_MAX as usize + 1;
const LEAVES: usize = 1 << DEPTH;

/// What is to be put right of one text, and how much that counts.
#[derive(Clone, Copy, Default)]
struct Slope {
    slope: f32,
    weight: f32,
}

impl Slope {
    fn add(&mut self, other: Self) {
        self.slope += other.slope;
        self.weight += other.weight;
    }

    /// How much better it gets by one worth for all.
    fn gain(self) -> f32 {
        self.slope * self.slope / (self.weight + PULL)
    }

    fn without(self, other: Self) -> Self {
        Self {
            slope: self.slope - other.slope,
            weight: self.weight - other.weight,
        }
    }
}

/// The trees as they ship.
pub(super) fn learn(seen: &[&Seen]) -> Vec<u8> {
    let mut draw = Draw::new(4_711);
    let mut worth = vec![0.0_f32; seen.len()];
    let mut bytes = Vec::new();
    for _ in 0..TREES {
        let slopes: Vec<Slope> = seen
            .iter()
            .zip(&worth)
            .map(|(one, worth)| {
                let odds = 1.0 / (1.0 + libm::expf(-worth));
                let wanted = f32::from(u8::from(one.right));
                Slope {
                    slope: one.weight * (wanted - odds),
                    weight: one.weight * odds * (1.0 - odds),
                }
            })
            .collect();
        let texts: Vec<usize> = (0..seen.len())
            .filter(|_| draw.chance(TEXTS_SEEN))
            .collect();
        let signs: Vec<usize> = (0..SIGNS).filter(|_| draw.chance(SIGNS_SEEN)).collect();
        let mut leaves = vec![0_usize; seen.len()];
        for depth in 0..DEPTH {
            let (sign, above) = question(seen, &slopes, (&texts, &signs), &leaves, depth);
            bytes.extend([sign as u8, above as u8]);
            for (leaf, one) in leaves.iter_mut().zip(seen) {
                *leaf = *leaf * 2 + usize::from(usize::from(one.signs[sign]) > above);
            }
        }
        let mut sums = [Slope::default(); LEAVES];
        for text in &texts {
            sums[leaves[*text]].add(slopes[*text]);
        }
        let steps = sums.map(|sum| {
            let step = RATE * sum.slope / (sum.weight + PULL);
            (step * SCALE).round() as i16
        });
        bytes.extend(steps.iter().flat_map(|step| step.to_le_bytes()));
        for (worth, leaf) in worth.iter_mut().zip(&leaves) {
            *worth += f32::from(steps[*leaf]) / SCALE;
        }
    }
    bytes
}

/// The question that parts the texts best.
fn question(
    seen: &[&Seen],
    slopes: &[Slope],
    (texts, signs): (&[usize], &[usize]),
    leaves: &[usize],
    depth: usize,
) -> (usize, usize) {
    let mut best = (f32::MIN, 0, 0);
    for sign in signs {
        let mut sums = vec![[Slope::default(); VALUES]; 1 << depth];
        for text in texts {
            let value = usize::from(seen[*text].signs[*sign]);
            sums[leaves[*text]][value].add(slopes[*text]);
        }
        let wholes: Vec<Slope> = sums
            .iter()
            .map(|sums| {
                let mut whole = Slope::default();
                sums.iter().for_each(|sum| whole.add(*sum));
                whole
            })
            .collect();
        let mut below = vec![Slope::default(); 1 << depth];
        for above in 0..VALUES - 1 {
            let mut gain = 0.0;
            for ((below, sums), whole) in below.iter_mut().zip(&sums).zip(&wholes) {
                below.add(sums[above]);
                gain += below.gain() + whole.without(*below).gain();
            }
            if gain > best.0 {
                best = (gain, *sign, above);
            }
        }
    }
    (best.1, best.2)
}
