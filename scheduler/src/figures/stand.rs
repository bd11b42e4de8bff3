//! Trees: how many live, where they are missing, and what may still be filled.

use alloc::vec::Vec;

use budwood_parser::Kind;

use super::{Farmer, Figure, Name, Table, Window};
use crate::{
    jobs::task::tasks,
    land::block::{BlockState, Living},
    outlook::infill::gaps_to_fill,
    words::{id::PersonId, job::TaskKind, season::Season},
};

impl Table<'_> {
    /// Farmers and leaders.
    #[must_use]
    pub fn farmers(&self) -> Figure<usize> {
        self.figure(Name::Farmers, Window::ALL, self.farmers.len())
    }

    /// Of these, those with something planted.
    #[must_use]
    pub fn planted(&self) -> Figure<usize> {
        let farmers = self.farmers.iter();
        let planted = farmers.filter(|farmer| {
            let mut stands = farmer.stands.iter();
            stands.any(|stand| stand.state.planted() > 0)
        });
        self.figure(Name::Planted, Window::ALL, planted.count())
    }

    /// Living trees: first ones, filled in, gaps.
    #[must_use]
    pub fn living(&self) -> Figure<Living> {
        let all = self.states().map(BlockState::living);
        let sum = all.fold(Living::default(), Living::with);
        self.figure(Name::Living, Window::ALL, sum)
    }

    /// Gaps by farmer, most first; who has none is not in the list.
    #[must_use]
    pub fn gaps(&self) -> Figure<Vec<(PersonId, u32)>> {
        let farmers = self.farmers.iter().map(|farmer| {
            let states = farmer.stands.iter().map(|stand| stand.state.gaps());
            (farmer.person.id, states.fold(0, u32::saturating_add))
        });
        let mut gaps: Vec<_> = farmers.filter(|(_, gaps)| *gaps > 0).collect();
        gaps.sort_by_key(|(_, gaps)| core::cmp::Reverse(*gaps));
        self.figure(Name::Gaps, Window::ALL, gaps)
    }

    /// Gaps for which plants may still be ordered.
    #[must_use]
    pub fn gaps_to_fill(&self) -> Figure<u32> {
        let mut sum = 0_u32;
        for farmer in &self.farmers {
            let Some(calendar) = farmer.calendar else {
                continue;
            };
            for stand in &farmer.stands {
                let open = gaps_to_fill(stand.state, &farmer.season, calendar, farmer.today);
                sum = sum.saturating_add(open);
            }
        }
        self.figure(Name::GapsToFill, Window::ALL, sum)
    }

    /// Planted blocks whose dead were never counted.
    #[must_use]
    pub fn uncounted(&self) -> Figure<usize> {
        let planted = self.states().filter(|state| state.planted() > 0);
        let uncounted = planted.filter(|state| state.last_of(Kind::Dead).is_none());
        self.figure(Name::Uncounted, Window::ALL, uncounted.count())
    }

    /// Farmers whom the word to plant reaches, were planting open: they agreed, have a phone, and
    /// land of theirs is to be planted.
    #[must_use]
    pub fn told_to_plant(&self) -> Figure<usize> {
        let is_to_plant = |farmer: &Farmer<'_>, calendar| {
            let season = Season {
                window_opened: farmer.season.window_opened.or(Some(farmer.today)),
                ..farmer.season
            };
            let mut jobs = farmer
                .stands
                .iter()
                .flat_map(|stand| tasks(stand.block, stand.state, &season, calendar, farmer.today));
            jobs.any(|task| task.kind == TaskKind::Plant)
        };
        let told = self.farmers.iter().filter(|farmer| {
            let is_reached = farmer.has_phone && farmer.person.consent.is_given();
            is_reached
                && !farmer.is_in_peace()
                && farmer
                    .calendar
                    .is_some_and(|calendar| is_to_plant(farmer, calendar))
        });
        self.figure(Name::ToldToPlant, Window::ALL, told.count())
    }
}
