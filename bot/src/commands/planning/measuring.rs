//! How many trees a girth census of the planting takes, and how far it may be off.

use budwood_scheduler::outlook::census::{
    USUAL_SPREAD, points_off, trees_for_mean, trees_for_share, walk,
};

use super::Planned;

/// What most people call near enough (an assumption): points of a share, per cent of a mean.
const NEAR_POINTS: f64 = 5.0;
const NEAR_PCT: f64 = 5.0;

pub(super) fn of(planned: &Planned) -> String {
    let opening = &planned.calendar.opening;
    let share_pct = opening.share_pct;
    let mut page = format!(
        "\nMeasuring girths, for {share_pct} % at {} cm; how sure 19 times out of 20\n",
        opening.girth_cm
    );
    let usual = planned.calendar.census.sample_trees;
    let mut samples = vec![(usual, "the usual sample of this calendar")];
    if opening.sample_trees != usual {
        samples.push((opening.sample_trees, "its sample before opening"));
    }
    for (trees, what) in samples {
        let trees = trees.min(planned.points);
        let share = f64::from(trees) * share_pct / 100.0;
        let reached = (0..=trees).find(|count| f64::from(*count) + 0.5 > share);
        let off = reached.and_then(|reached| points_off(reached, trees));
        // The draw moves the first tree only.
        if let Some((off, walk)) = off.zip(walk(planned.points, trees, 0)) {
            let every = match walk.every {
                1 => "every tree".to_owned(),
                every => format!("one tree in {every}, counted along all rows"),
            };
            page += &format!("  {trees:>5}  {what}: the share within {off:.0} points; {every}\n");
        }
    }
    if let Some(trees) = trees_for_share(share_pct, NEAR_POINTS, planned.points) {
        page += &format!("  {trees:>5}  the share within {NEAR_POINTS:.0} points\n");
    }
    let spread_pct = USUAL_SPREAD * 100.0;
    if let Some(trees) = trees_for_mean(spread_pct, NEAR_PCT) {
        page += &format!(
            "  {trees:>5}  the mean within {NEAR_PCT:.0} %, where girths spread by {spread_pct:.0} % (memory)\n"
        );
    }
    page
}
