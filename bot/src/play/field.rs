//! What a farmer behind the scenes finds in the field: counts and girths that fit the block.

use budwood_scheduler::{BlockState, Task, TaskKind};
use chrono::NaiveDate;

use super::seeded::Seeded;

/// Trees of one count that died, in per cent: at most so many.
const DEAD_PCT_MAX: u32 = 4;
/// One root check in so many of a hundred finds something.
const ROOT_FOUND_PCT: u32 = 4;
/// Sick trees of one find, at most.
const ROOT_FOUND_MAX: u32 = 3;
/// Trees measured in one census: few farmers measure as many as they are asked to.
const MEASURED: u32 = 12;
/// Girths reach from the mean by so many per cent either way, most of them near it.
const SPREAD_PCT: u32 = 30;

/// The girth that growth tends to in centimetres, the years before it begins and its rate a year:
/// a monomolecular curve through 50 cm at 6 years (GT 1, PB 217 and PB 235 in Cote d'Ivoire). The
/// shape is that of a published comparison of curves; limit and lag are assumptions.
const LIMIT_CM: f64 = 90.0;
const LAG_YEARS: f64 = 0.5;
const RATE: f64 = 0.1474;
const DAYS_A_YEAR: f64 = 365.25;

/// The number that answers a nudge for this job.
pub(crate) fn count(task: &Task, state: &BlockState, chance: &mut Seeded) -> u32 {
    let trees = task.figures.trees.unwrap_or(0);
    match task.kind {
        // The last corner of a block is often rock or path.
        TaskKind::DigPits => share(trees, 96, 100, chance),
        TaskKind::Plant => share(trees, 97, 100, chance),
        TaskKind::SurvivalCheck => share(state.alive(), 0, DEAD_PCT_MAX, chance),
        TaskKind::Backfill => state.gaps(),
        TaskKind::RootCheck if chance.in_a_hundred(ROOT_FOUND_PCT) => {
            chance.between(1, ROOT_FOUND_MAX)
        }
        TaskKind::RootCheck => 0,
        TaskKind::InduceBranching => trees,
        TaskKind::LookAtInduced => share(trees, 70, 90, chance),
        TaskKind::CountTall => share(state.alive(), 5, 20, chance),
        TaskKind::OrderPlants
        | TaskKind::Clear
        | TaskKind::Line
        | TaskKind::FillPits
        | TaskKind::RainWatch
        | TaskKind::SowCover
        | TaskKind::Mulch
        | TaskKind::Firebreak
        | TaskKind::GetReady
        | TaskKind::Weed
        | TaskKind::Feed
        | TaskKind::Prune
        | TaskKind::GirthCensus
        | TaskKind::LeafCheck
        | TaskKind::Intercrop
        | TaskKind::Open
        | TaskKind::OpenRest
        | TaskKind::HandOver => trees,
    }
}

/// The girths of a sample on this day, in whole centimetres as a tape gives them.
pub(crate) fn girths(state: &BlockState, today: NaiveDate, chance: &mut Seeded) -> String {
    let mean = state
        .planted_on()
        .map_or(0.0, |day| mean_girth_cm(day, today));
    let measured: Vec<String> = (0..MEASURED)
        .map(|_| format!("{:.0}", mean * spread(chance)))
        .collect();
    measured.join(" ")
}

/// The mean girth of trees planted on this day.
pub(crate) fn mean_girth_cm(planted_on: NaiveDate, today: NaiveDate) -> f64 {
    let days = today.signed_duration_since(planted_on).num_days();
    let days = f64::from(i32::try_from(days).unwrap_or(0).max(0));
    let grown_years = (days / DAYS_A_YEAR - LAG_YEARS).max(0.0);
    LIMIT_CM * (1.0 - (-RATE * grown_years).exp())
}

/// Two throws make values near the mean more frequent than those far off.
pub(crate) fn spread(chance: &mut Seeded) -> f64 {
    let thrown = chance.between(0, SPREAD_PCT) + chance.between(0, SPREAD_PCT);
    1.0 + (f64::from(thrown) - f64::from(SPREAD_PCT)) / 100.0
}

fn share(of: u32, low_pct: u32, high_pct: u32, chance: &mut Seeded) -> u32 {
    of.saturating_mul(chance.between(low_pct, high_pct)) / 100
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 50 cm at 6.0 years is the anchor of the curve (Cote d'Ivoire, GT 1, PB 217, PB 235);
    /// 27.7 cm at 3 years was worked by hand from it.
    #[test]
    fn grows_along_the_curve() {
        let planted_on = NaiveDate::from_ymd_opt(2026, 12, 10).unwrap();
        let girth = |year| {
            let day = NaiveDate::from_ymd_opt(year, 12, 10).unwrap();
            mean_girth_cm(planted_on, day)
        };
        assert!((girth(2029) - 27.7).abs() < 0.1, "{}", girth(2029));
        assert!((girth(2032) - 50.0).abs() < 0.1, "{}", girth(2032));
    }

    #[test]
    fn measures_girths_that_lie_around_the_mean() {
        let planted_on = NaiveDate::from_ymd_opt(2021, 11, 28).unwrap();
        let today = NaiveDate::from_ymd_opt(2027, 11, 28).unwrap();
        let mut state = BlockState::default();
        state.cohorts.push(budwood_scheduler::Cohort {
            planted_on,
            clone_name: None,
            planted: 660,
            dead: 0,
            backfill: false,
        });
        let girths = girths(&state, today, &mut Seeded::new(1));
        let values: Vec<u32> = girths
            .split(' ')
            .map(|value| value.parse().unwrap())
            .collect();
        assert_eq!(values.len(), 12);
        assert!(
            values.iter().all(|value| (35..=65).contains(value)),
            "{girths}"
        );
        let mean = values.iter().sum::<u32>() / 12;
        assert!((47..=53).contains(&mean), "{girths}");
    }
}
