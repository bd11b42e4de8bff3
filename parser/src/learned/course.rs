//! The best course through a text: what each piece tells of, found by weights and a search.
//!
//! Every piece belongs to one telling: a kind told, a kind denied, a question, talk with the bot,
//! or aside. Going from one telling to another costs less where a mark parts them. The search is
//! linear in the pieces. Deliberately absent: what is made of a telling (`segment`, `slots`).

use smallvec::SmallVec;

use crate::{
    kind::Kind,
    learned::{
        clues::Clues,
        weights::{COLUMNS, Weights},
    },
    lists::piece::{IN_PLACE_MAX, Piece},
    pieces::{text::break_strength, used},
};

/// Kinds, and with them columns and states.
pub(crate) const KINDS: usize = Kind::ALL.len();
pub(crate) const ASIDE: usize = 0;
pub(crate) const ASKED: usize = 1;
#[cfg(test)]
pub(crate) const TALK: usize = 2;
/// The first state of a kind told; that of a kind denied.
pub(crate) const TOLD: usize = 3;
pub(crate) const DENIED: usize = TOLD + KINDS;
/// All states.
pub(crate) const STATES: usize = DENIED + KINDS;
/// The column that all denied states share.
pub(crate) const DENIAL: usize = DENIED;

/// The kind of a state, and whether it is denied.
pub(crate) fn kind_of(state: u8) -> Option<(Kind, bool)> {
    let state = usize::from(state);
    let at = state.checked_sub(TOLD)?;
    let kind = Kind::ALL.get(at % KINDS)?;
    Some((*kind, state >= DENIED))
}

/// Columns that say which sickness, which cause of harm, and what a number is used for.
pub(crate) const AILMENTS: usize = 0;
pub(crate) const AILMENT_COUNT: usize = 8;
pub(crate) const CAUSES: usize = AILMENTS + AILMENT_COUNT;
pub(crate) const CAUSE_COUNT: usize = 8;
pub(crate) const USES: usize = CAUSES + CAUSE_COUNT;
pub(crate) const USE_COUNT: usize = used::ALL.len();

/// How strongly two neighbours are parted: not, by a comma or "and", by a full stop.
pub(crate) const BORDERS: usize = 3;
/// Ways from one state to the next.
pub(crate) const STEPS: usize = 5;

/// The way from one state to the next, as a column of the steps.
#[cfg(test)]
pub(crate) const fn step(from: usize, to: usize) -> usize {
    if from == to {
        if from == ASIDE { 0 } else { 1 }
    } else if from == ASIDE {
        2
    } else if to == ASIDE {
        3
    } else {
        4
    }
}

/// How strongly the piece is parted from the one before it.
pub(crate) fn border(pieces: &[Piece<'_>], at: usize) -> usize {
    let strength = |at: Option<usize>| at.and_then(|at| pieces.get(at)).map_or(0, break_strength);
    match strength(at.checked_sub(1)).max(strength(Some(at))) {
        0 => 0,
        1 | 2 => 1,
        _ => 2,
    }
}

/// What each state is worth at one piece.
pub(crate) type Worth = [i32; STATES];

/// Spreads columns over states.
pub(crate) fn worth_of(columns: &[i32; COLUMNS]) -> Worth {
    let mut worth = [0; STATES];
    for (state, place) in worth.iter_mut().enumerate() {
        *place = if state < DENIED {
            columns.get(state).copied().unwrap_or(0)
        } else {
            columns.get(state - KINDS).copied().unwrap_or(0)
                + columns.get(DENIAL).copied().unwrap_or(0)
        };
    }
    worth
}

/// A course through a text.
pub(crate) struct Course {
    /// The state of each piece.
    pub(crate) states: SmallVec<[u8; IN_PLACE_MAX]>,
    /// How much worse the best course is that has another state there.
    pub(crate) margins: SmallVec<[i32; IN_PLACE_MAX]>,
    /// What each state is worth at each piece by itself.
    pub(crate) worths: SmallVec<[Worth; IN_PLACE_MAX]>,
    /// How much worse the best course is that has a kind which the best one has not.
    pub(crate) missed: i32,
    /// What all of it is worth.
    pub(crate) score: i32,
    /// The states that it lacks and that are worth most, each with the piece that is best there.
    pub(crate) lacks: SmallVec<[(u8, usize); LACKS]>,
}

/// So many states that a course lacks are tried.
const LACKS: usize = 2;
/// Kinds that are left out, one at a time.
const LEFT_OUT_MAX: usize = 4;

/// What another course must do.
#[derive(Clone, Copy)]
pub(crate) enum Must {
    /// Leave a state out.
    Lack(u8),
    /// Have a state at a piece.
    Pass(u8, usize),
}

impl Course {
    /// One that is still to be found.
    fn through(worths: SmallVec<[Worth; IN_PLACE_MAX]>) -> Self {
        Self {
            states: SmallVec::from_elem(0, worths.len()),
            margins: SmallVec::from_elem(0, worths.len()),
            worths,
            missed: 0,
            score: 0,
            lacks: SmallVec::new(),
        }
    }

    /// What other courses may do: lack a kind that this one tells, or tell one that it lacks.
    pub(crate) fn others(&self) -> SmallVec<[Must; 4]> {
        let mut others = SmallVec::new();
        for (at, state) in self.states.iter().enumerate() {
            let is_new = !self.states.iter().take(at).any(|before| before == state);
            if is_new && usize::from(*state) >= TOLD && others.len() < LEFT_OUT_MAX {
                others.push(Must::Lack(*state));
            }
        }
        let lacks = self.lacks.iter();
        others.extend(lacks.map(|(state, at)| Must::Pass(*state, *at)));
        others
    }

    /// The best course that does what it must.
    pub(crate) fn other(&self, pieces: &[Piece<'_>], weights: &Weights, must: Must) -> Self {
        let mut worths = self.worths.clone();
        match must {
            Must::Lack(state) => {
                for worth in &mut worths {
                    if let Some(place) = worth.get_mut(usize::from(state)) {
                        *place -= NEVER;
                    }
                }
            }
            Must::Pass(state, at) => {
                if let Some(worth) = worths.get_mut(at) {
                    for (other, place) in worth.iter_mut().enumerate() {
                        if other != usize::from(state) {
                            *place -= NEVER;
                        }
                    }
                }
            }
        }
        let mut found = Self::through(worths);
        search(pieces, &mut found, weights);
        found.worths.clone_from(&self.worths);
        found
    }
}

/// No course is worth so much.
const NEVER: i32 = 1 << 20;

/// Finds the best course. Worths are large, so they are put where they stay.
pub(crate) fn course(pieces: &[Piece<'_>], clues: &Clues<'_, '_>, weights: &Weights) -> Course {
    let count = clues.len();
    let mut worths = SmallVec::new();
    worths.reserve(count);
    for at in 0..count {
        let sum = weights.sum(clues, at);
        worths.push(worth_of(&sum));
    }
    let mut course = Course::through(worths);
    search(pieces, &mut course, weights);
    course
}

/// The search: forwards and backwards, so that every piece knows the best course through each state.
fn search(pieces: &[Piece<'_>], course: &mut Course, weights: &Weights) {
    let count = course.worths.len();
    let mut ahead: SmallVec<[Worth; IN_PLACE_MAX]> = SmallVec::new();
    ahead.reserve(count);
    let mut last = [0; STATES];
    for (at, worth) in course.worths.iter().enumerate() {
        let steps = weights.steps(border(pieces, at));
        let mut here = if at == 0 {
            first(steps)
        } else {
            onward(&last, steps)
        };
        for (place, worth) in here.iter_mut().zip(worth) {
            *place += worth;
        }
        ahead.push(here);
        last = here;
    }
    let mut behind = [0; STATES];
    // The best course through each state, wherever it passes.
    let mut reach = [(i32::MIN / 4, 0); STATES];
    let mut top = i32::MIN / 4;
    let parts = course.states.iter_mut().zip(&mut course.margins);
    let parts = parts.zip(&course.worths).zip(&mut ahead).enumerate().rev();
    for (at, (((state, margin), worth), whole)) in parts {
        for (place, more) in whole.iter_mut().zip(&behind) {
            *place += more;
        }
        let (best_state, best, second) = two_best(whole);
        top = top.max(best);
        for (place, worth) in reach.iter_mut().zip(whole.iter()) {
            *place = (*place).max((*worth, at));
        }
        *state = u8::try_from(best_state).unwrap_or(0);
        *margin = best - second;
        for (place, worth) in behind.iter_mut().zip(worth) {
            *place += worth;
        }
        behind = backward(&behind, weights.steps(border(pieces, at)));
    }
    course.score = top;
    course.missed = i32::MAX;
    for _ in 0..LACKS {
        let states = &course.states;
        let has = |state: usize| states.iter().any(|other| usize::from(*other) == state);
        let others = reach.iter().enumerate();
        let others = others.filter(|(state, _)| *state >= TOLD && !has(*state));
        let Some((state, &(worth, at))) = others.max_by_key(|(_, worth)| **worth) else {
            break;
        };
        course.missed = course.missed.min(top - worth);
        course.lacks.push((u8::try_from(state).unwrap_or(0), at));
        if let Some(place) = reach.get_mut(state) {
            place.0 = i32::MIN / 4;
        }
    }
}

/// What it is worth to begin in each state.
fn first(steps: [i32; STEPS]) -> Worth {
    let [stay, _, begin, ..] = steps;
    let mut worth = [begin; STATES];
    if let Some(aside) = worth.get_mut(ASIDE) {
        *aside = stay;
    }
    worth
}

/// The best way into each state.
fn onward(last: &Worth, steps: [i32; STEPS]) -> Worth {
    let [idle, stay, begin, end, change] = steps;
    let aside = last.first().copied().unwrap_or(0);
    let (_, best, _) = two_best_told(last);
    let mut here = [0; STATES];
    for (state, (place, before)) in here.iter_mut().zip(last).enumerate() {
        *place = if state == ASIDE {
            (aside + idle).max(best + end)
        } else {
            (before + stay).max(aside + begin).max(best + change)
        };
    }
    here
}

/// The best way on from each state.
fn backward(next: &Worth, steps: [i32; STEPS]) -> Worth {
    let [idle, stay, begin, end, change] = steps;
    let aside = next.first().copied().unwrap_or(0);
    let (_, best, _) = two_best_told(next);
    let mut here = [0; STATES];
    for (state, (place, after)) in here.iter_mut().zip(next).enumerate() {
        *place = if state == ASIDE {
            (aside + idle).max(best + begin)
        } else {
            (after + stay).max(aside + end).max(best + change)
        };
    }
    here
}

/// The best state, what it is worth, and what the second is.
fn two_best(worth: &Worth) -> (usize, i32, i32) {
    two_best_from(worth, 0)
}

fn two_best_told(worth: &Worth) -> (usize, i32, i32) {
    two_best_from(worth, 1)
}

fn two_best_from(worth: &Worth, skip: usize) -> (usize, i32, i32) {
    let (mut state, mut best, mut second) = (0, i32::MIN / 4, i32::MIN / 4);
    for (at, worth) in worth.iter().enumerate().skip(skip) {
        if *worth > best {
            second = best;
            (state, best) = (at, *worth);
        } else if *worth > second {
            second = *worth;
        }
    }
    (state, best, second)
}
