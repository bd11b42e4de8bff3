//! What goes wrong with the computer: the power, the disk, the clock; and what people do then.

use std::collections::VecDeque;

use budwood::{
    engine::{Copied, CopyStep, Engine, Input, Told},
    store::Store as _,
};
use chrono::{DateTime, TimeDelta, Utc};

use super::{
    laws::{Laws, Picture},
    network::Under,
    valley::Valley,
};

/// A copy of the store, and the account as it was when the copy began.
pub(super) struct Copy {
    lines: Vec<Vec<u8>>,
    laws: Laws,
}

impl Valley {
    /// One step of the engine; none when the power went before the caller heard of it.
    pub(super) fn step(&mut self, inputs: Vec<Input>) -> Option<Vec<Told>> {
        self.steps(vec![inputs]).pop().flatten()
    }

    /// Steps that are taken before the first of them is written, as in service: what they wrote
    /// goes to the disk in their order, together or one after the other, and each is told only
    /// after that. None for those that were not told before the power went.
    pub(super) fn steps(&mut self, batches: Vec<Vec<Input>>) -> Vec<Option<Vec<Told>>> {
        let now = self.time.look(&mut self.engine);
        self.stepped = self.moment();
        if self.engine.is_erasing() && !self.erase_some(now) {
            return batches.iter().map(|_| None).collect();
        }
        let mut told: Vec<Option<Vec<Told>>> = Vec::new();
        let mut waiting = VecDeque::new();
        for inputs in batches {
            self.laws.figures.steps += 1;
            let stepped = self.engine.step(inputs, now);
            waiting.push_back(stepped.expect("facts can be read"));
        }
        while let Some(mut group) = waiting.pop_front() {
            let mut sizes = vec![group.told.len()];
            while !waiting.is_empty() && self.chance.once_in(2) {
                let next = waiting.pop_front().expect("there is one");
                sizes.push(next.told.len());
                group.change.append(next.change);
                group.told.extend(next.told);
            }
            let cut_before = self.chance.once_in(self.shape.cut * 2);
            if cut_before && !group.change.is_empty() {
                self.disk.fail_once();
            }
            let written = group.change.is_empty() || self.disk.commit(&group.change).is_ok();
            let cut_after = self.chance.once_in(self.shape.cut * 2);
            if !written || cut_after {
                self.laws.figures.cuts += 1;
                let all_written = written && waiting.is_empty();
                // What was not written is in memory all the same, and could not be compared.
                let before = all_written.then(|| Picture::of(&self.engine));
                told.extend(sizes.iter().map(|_| None));
                told.extend(waiting.iter().map(|_| None));
                self.start_again(before.as_ref());
                return told;
            }
            let mut all = group.told.into_iter();
            told.extend(
                sizes
                    .into_iter()
                    .map(|size| Some(all.by_ref().take(size).collect())),
            );
        }
        self.judge();
        told
    }

    /// Some more of somebody is taken out of the store; false when the power went before.
    fn erase_some(&mut self, now: DateTime<Utc>) -> bool {
        let change = self.engine.erase_some(now).expect("a sound disk");
        if self.chance.once_in(self.shape.cut) && !change.is_empty() {
            self.disk.fail_once();
        }
        let written = change.is_empty() || self.disk.commit(&change).is_ok();
        if !written {
            self.laws.figures.cuts += 1;
            self.start_again(None);
        }
        written
    }

    /// The engine's memory is gone; what is on the disk is all there is.
    pub(super) fn start_again(&mut self, before: Option<&Picture>) {
        self.way
            .retain(|_, under| !matches!(under, Under::Answer(..)));
        self.copying = None;
        self.disk.open_again();
        if let Some(before) = before {
            // At the same moment, so that what is rebuilt can be compared.
            let now = self.time.look(&mut self.engine);
            self.open(now);
            before.agrees_with(&self.engine);
            // While the clock is in doubt nobody wakes.
            if self.time.computer() == self.time.now() && now == self.time.now() {
                before.wakes_with(&self.engine, now);
            }
            self.time.start_again(&mut self.chance);
        } else {
            self.time.start_again(&mut self.chance);
            self.open(self.time.computer());
        }
    }

    fn open(&mut self, now: DateTime<Utc>) {
        self.engine = Engine::open(self.setup.clone(), Box::new(self.disk.clone()), now)
            .expect("what was written can be read");
        self.judge();
    }

    /// Somebody begins to copy the store while it is in use.
    pub(super) fn begin_copy(&mut self) {
        if self.step(vec![Input::Copy(CopyStep::Begin)]).is_some() {
            self.copying = Some(Copy {
                lines: Vec::new(),
                laws: self.laws.clone(),
            });
            self.later(Under::CopyNext, 30);
        }
    }

    pub(super) fn copy_next(&mut self) {
        let told = self.step(vec![Input::Copy(CopyStep::Next)]);
        let Some(copying) = &mut self.copying else {
            return;
        };
        match told
            .and_then(|mut told| told.pop())
            .and_then(|told| told.copied)
        {
            Some(Copied::Lines(lines)) => {
                copying.lines.extend(lines);
                self.later(Under::CopyNext, 30);
            }
            Some(Copied::End) => {
                self.laws.figures.copies += 1;
                self.copy = self.copying.take();
            }
            Some(copied @ (Copied::Begun | Copied::Broken(_))) => {
                panic!("a copy that goes on was told {copied:?}")
            }
            None => {}
        }
    }

    /// The disk is lost. A new computer is filled from the last copy, if there is one; nothing
    /// leaves until somebody says so, hours or days later.
    pub(super) fn lose_disk(&mut self) {
        let Some(copy) = &self.copy else {
            return;
        };
        self.laws.restored(&copy.laws);
        self.laws.nothing_is_owed();
        self.laws.figures.restores += 1;
        self.time.put_right();
        self.disk.restore(&copy.lines, self.time.now());
        self.disk.take_written();
        self.held = true;
        self.start_again(None);
        assert!(self.engine.held_since().is_some(), "a restore holds");
        self.laws.whole(&self.engine, &self.disk);
        self.later(Under::Release, 3 * 24 * 60);
    }

    /// The adviser looks at the clock, puts it right, and lets texts leave again.
    pub(super) fn release(&mut self) {
        self.time.put_right();
        self.time.believe(&mut self.engine);
        if self.step(vec![Input::Release]).is_some() {
            self.laws.figures.releases += 1;
        } else {
            self.later(Under::Release, 60);
        }
        // The write may have been done before the power went.
        self.held = self.engine.held_since().is_some();
    }

    fn later(&mut self, under: Under, minutes: u32) {
        let at = self.time.now() + TimeDelta::minutes(1) + self.chance.minutes(0, minutes);
        self.bring(at, under);
    }
}
