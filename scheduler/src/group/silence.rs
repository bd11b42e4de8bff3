//! How unusual it is that nothing is heard of a farmer, for this farmer and in this season.
//!
//! Whether anything is due is for the caller to see: a quiet farmer with nothing due is no
//! problem. Deliberately absent: delivery reports; a phone that is off and a farmer who keeps
//! silent look alike here.

use chrono::NaiveDate;

use crate::words::season::Season;

/// What is known of others counts as so many gaps of one's own: own rule.
const OTHERS_GAPS: f64 = 2.0;

/// A gap between two texts where nothing is known of anyone: own rule, about one report for each
/// monthly job.
const GAP_DAYS: f64 = 30.0;

/// A silence that would come less often than this is unusual: common practice of statistics.
const UNUSUAL: f64 = 0.05;

/// How often somebody is heard of in a season.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Habit {
    /// Gaps between days on which something was heard.
    pub gaps: u32,
    /// Their days together.
    pub days: i64,
}

/// A silence and how it compares.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Silence {
    /// How long it lasts.
    pub days: i64,
    /// The gap that is usual for this farmer in this season.
    pub usual_days: f64,
    /// How many of a hundred gaps, divided by a hundred, would last as long.
    pub chance: f64,
}

impl Silence {
    /// Whether it is to be looked into.
    #[must_use]
    pub fn is_unusual(&self) -> bool {
        self.chance < UNUSUAL
    }
}

impl Habit {
    /// From the days on which something was heard, in any order, as far as they lie in the same
    /// part of the year as today: in the rains people work and text more.
    #[must_use]
    pub fn of(heard: &[NaiveDate], season: Season, today: NaiveDate) -> Self {
        let mut days = heard.to_vec();
        days.sort_unstable();
        days.dedup();
        let now = in_rains(season, today);
        let mut habit = Self::default();
        for pair in days.windows(2) {
            if let [from, to] = pair
                && in_rains(season, *from) == now
            {
                habit.gaps = habit.gaps.saturating_add(1);
                habit.days = habit.days.saturating_add((*to - *from).num_days());
            }
        }
        habit
    }

    /// Both together.
    #[must_use]
    pub const fn with(self, other: Self) -> Self {
        Self {
            gaps: self.gaps.saturating_add(other.gaps),
            days: self.days.saturating_add(other.days),
        }
    }

    /// The mean gap, as far as it is known; the rest is believed.
    fn mean_days(self, believed: f64) -> f64 {
        let days = OTHERS_GAPS * believed + whole(self.days.max(0));
        days / (OTHERS_GAPS + f64::from(self.gaps))
    }
}

/// Compares a silence of so many days with a farmer's own habit, and with that of the group as
/// far as the own one is little known.
///
/// Texts that come independently, at a rate that is known from `n` gaps of `T` days in all and
/// from what was believed before (a gamma distribution of shape `a` and scale `b`), leave a gap
/// longer than `d` with the chance `((b + T) / (b + T + d)) ^ (a + n)`: K. S. Lomax, Journal of
/// the American Statistical Association 49, 1954.
#[must_use]
pub fn silence(own: Habit, group: Habit, days: i64) -> Silence {
    let believed = OTHERS_GAPS * group.mean_days(GAP_DAYS);
    let gaps = OTHERS_GAPS + f64::from(own.gaps);
    let known = believed + whole(own.days.max(0));
    let chance = libm::pow(known / (known + whole(days.max(0))), gaps);
    Silence {
        days,
        usual_days: own.mean_days(group.mean_days(GAP_DAYS)),
        chance,
    }
}

/// Whether a day lies in the rains; none when they are not known.
fn in_rains(season: Season, day: NaiveDate) -> Option<bool> {
    Some(season.rains(day)?.start <= day)
}

#[expect(
    clippy::cast_precision_loss,
    reason = "a calendar has far fewer days than a decimal holds"
)]
const fn whole(days: i64) -> f64 {
    days as f64
}

#[cfg(test)]
mod tests {
    use chrono::{Days, NaiveDate};
    use proptest::prelude::*;

    use super::{Habit, silence};
    use crate::words::season::Season;

    const TODAY: NaiveDate = NaiveDate::from_ymd_opt(2025, 8, 14).unwrap();

    const RAINS: Season = Season {
        rains_start: Some((6, 1)),
        rains_end: Some((10, 31)),
        second_rains: None,
        window_opened: None,
    };

    fn habit(gaps: u32, days: i64) -> Habit {
        Habit { gaps, days }
    }

    fn days_ago(days: &[u64]) -> Vec<NaiveDate> {
        days.iter().map(|days| TODAY - Days::new(*days)).collect()
    }

    use std::vec::Vec;

    /// `scipy` 1.17.1, `scipy.stats.lomax.sf(d, c=a + n, scale=b + T)`, `a` = 2, `b` = 2 x (60 + days
    /// of the group) / (2 + gaps of the group).
    #[test]
    fn chances_are_as_a_reference_library_has_them() {
        let table = [
            (64, (6, 84), (0, 0), 0.052_770_749),
            (64, (0, 0), (0, 0), 0.234_131_113),
            (10, (10, 100), (0, 0), 0.483_117_462),
            (30, (10, 100), (4, 120), 0.127_173_487),
            (90, (3, 90), (50, 500), 0.051_919_865),
            (0, (5, 50), (0, 0), 1.0),
        ];
        for (days, own, group, chance) in table {
            let found = silence(habit(own.0, own.1), habit(group.0, group.1), days);
            assert!(
                (found.chance - chance).abs() < 1e-9,
                "{days} {own:?}: {found:?}"
            );
        }
    }

    /// Who texts every week is missed after two months; who texts every two months is not.
    #[test]
    fn a_silence_is_measured_by_the_farmer() {
        let weekly = silence(habit(20, 140), Habit::default(), 64);
        let rare = silence(habit(6, 360), Habit::default(), 64);
        assert!(weekly.is_unusual(), "{weekly:?}");
        assert!(!rare.is_unusual(), "{rare:?}");
        assert!(weekly.usual_days < 10.0 && rare.usual_days > 50.0);
    }

    #[test]
    fn the_dry_months_do_not_count_for_the_wet_ones() {
        // A text a week since June, one every two months before.
        let heard = days_ago(&[7, 14, 21, 28, 35, 95, 155, 215]);
        let wet = Habit::of(&heard, RAINS, TODAY);
        assert_eq!(wet, habit(4, 28));
        let dry = Habit::of(&heard, RAINS, TODAY - Days::new(100));
        assert_eq!(dry, habit(3, 180));
        let any = Habit::of(&heard, Season::default(), TODAY);
        assert_eq!(any, habit(7, 208));
        assert!(silence(wet, wet, 30).chance < silence(dry, dry, 30).chance);
    }

    #[test]
    fn rains_may_go_over_the_new_year() {
        let season = Season {
            rains_start: Some((11, 1)),
            rains_end: Some((4, 30)),
            ..Season::default()
        };
        let heard = days_ago(&[10, 20, 30]);
        assert_eq!(Habit::of(&heard, season, TODAY).gaps, 2);
        let december = NaiveDate::from_ymd_opt(2025, 12, 24).unwrap();
        assert_eq!(Habit::of(&heard, season, december).gaps, 0);
    }

    proptest! {
        #[test]
        fn a_longer_silence_is_never_less_unusual(
            gaps in 0..500_u32, each in 1..90_i64, days in 0..2_000_i64, more in 0..500_i64
        ) {
            let own = habit(gaps, i64::from(gaps) * each);
            let short = silence(own, Habit::default(), days);
            let long = silence(own, Habit::default(), days + more);
            prop_assert!(long.chance <= short.chance);
            prop_assert!((0.0..=1.0).contains(&long.chance));
        }

        #[test]
        fn order_does_not_matter(ago in prop::collection::vec(0..900_u64, 0..30)) {
            let heard = days_ago(&ago);
            let mut back = heard.clone();
            back.reverse();
            back.extend(&heard);
            prop_assert_eq!(Habit::of(&heard, RAINS, TODAY), Habit::of(&back, RAINS, TODAY));
        }
    }
}
