//! The rehearsal as a page for a person.

use std::collections::BTreeMap;

use budwood_scheduler::{TaskKind, TextClass};
use chrono::NaiveDate;

use super::{
    RehearseArgs,
    tally::{CLASH_JOBS, Tally},
};

/// Weeks that are named.
const NAMED: usize = 5;

pub(super) fn of(args: &RehearseArgs, usual: &Tally, late: Option<&Tally>) -> String {
    let mut page = assumed(args, usual);
    page += "\nWith the usual rains\n";
    page += &play(args, usual);
    if let Some(late) = late {
        page += &format!("\nWith rains {} days later\n", args.rains_late);
        page += &play(args, late);
        page += &difference(usual, late);
    }
    page
}

fn assumed(args: &RehearseArgs, tally: &Tally) -> String {
    format!(
        "{} farmers with {} blocks, {} years from {}{}\n\
         Assumed: {} of 100 farmers answer soon, half of the others late, half hardly ever; they \
         answer in English; up to 4 % of the trees die at first; girths are those that the \
         calendar of the group leads to expect, with a spread of 30 %, and all trees asked for are \
         measured; the adviser opens the planting window in the week in which the rains begin; nobody opens a block.\n",
        tally.farmers,
        tally.blocks,
        args.years,
        tally.from,
        match tally.silent_farmers {
            0 => String::new(),
            silent => format!(" (without consent, so without reminders: {silent})"),
        },
        args.diligent_pct,
    )
}

fn play(args: &RehearseArgs, tally: &Tally) -> String {
    let mut page = format!(
        "  {:>4} {:>10} {:>12} {:>8} {:>9} {:>9} {:>10}\n",
        "year", "reminders", "per farmer", "most", "answers", "segments", "cost"
    );
    let farmers = f64::from(tally.farmers.saturating_sub(tally.silent_farmers).max(1));
    for (year, counts) in &tally.years {
        let of_year = tally.nudges_of.iter().filter(|((of, _), _)| of == year);
        let most = of_year.map(|(_, nudges)| *nudges).max().unwrap_or(0);
        page += &format!(
            "  {year:>4} {:>10} {:>12.1} {most:>8} {:>9} {:>9} {:>10.2}\n",
            counts.nudges,
            f64::from(counts.nudges) / farmers,
            counts.answers,
            counts.segments,
            f64::from(counts.segments) * args.price,
        );
    }
    let weeks: Vec<_> = tally.weeks.iter().collect();
    page += &format!("  busiest weeks (texts out): {}\n", most(&weeks));
    page += &format!(
        "  farmers with {CLASH_JOBS} or more jobs due at once: {}\n",
        or_never(&tally.clashes)
    );
    if let Some(short) = &tally.short {
        page += &format!(
            "  farmers with more work due than days for it: {}\n",
            or_never(short)
        );
    }
    page += &format!("  blocks planted: {}\n", by_year(&tally.planted));
    let ready = tally
        .ready
        .iter()
        .map(|(year, blocks)| (*year, u32::try_from(blocks.len()).unwrap_or(u32::MAX)));
    page += &format!(
        "  blocks that come to opening: {}\n",
        by_year(&ready.collect())
    );
    page += &format!("  most reminders for: {}\n", by_job(&tally.jobs, NAMED));
    let untold = |is_round: bool| {
        let mut jobs: BTreeMap<TaskKind, u32> = BTreeMap::new();
        for (_, job, _) in &tally.untold {
            if (job.class() == TextClass::Round) == is_round {
                *jobs.entry(*job).or_default() += 1;
            }
        }
        by_job(&jobs, TaskKind::ALL.len())
    };
    page + &format!(
        "  late before a text spoke of it: {}; in the field round: {}\n",
        untold(false),
        untold(true)
    )
}

/// Jobs with their numbers, most first.
fn by_job(counts: &BTreeMap<TaskKind, u32>, named: usize) -> String {
    if counts.is_empty() {
        return "none".to_owned();
    }
    let mut jobs: Vec<_> = counts.iter().collect();
    jobs.sort_by(|one, other| other.1.cmp(one.1));
    let jobs: Vec<String> = jobs
        .into_iter()
        .take(named)
        .map(|(job, times)| format!("{} {times}", job.name().replace('_', " ")))
        .collect();
    jobs.join(", ")
}

fn difference(usual: &Tally, late: &Tally) -> String {
    let sum = |tally: &Tally| -> (i64, i64) {
        let years = tally.years.values();
        let nudges = years.clone().map(|year| i64::from(year.nudges)).sum();
        (nudges, years.map(|year| i64::from(year.segments)).sum())
    };
    let ((nudges, segments), (late_nudges, late_segments)) = (sum(usual), sum(late));
    format!(
        "\nThe shift makes {:+} reminders and {:+} segments\n",
        late_nudges - nudges,
        late_segments - segments
    )
}

fn or_never(weeks: &BTreeMap<NaiveDate, u32>) -> String {
    if weeks.is_empty() {
        return "never".to_owned();
    }
    most(&weeks.iter().collect::<Vec<_>>())
}

fn most<K: ToString + Ord>(counts: &[(&K, &u32)]) -> String {
    let mut sorted: Vec<_> = counts.to_vec();
    sorted.sort_by(|one, other| other.1.cmp(one.1).then(one.0.cmp(other.0)));
    let shown: Vec<String> = sorted
        .into_iter()
        .take(NAMED)
        .map(|(key, count)| format!("{} ({count})", key.to_string()))
        .collect();
    shown.join(", ")
}

fn by_year(counts: &BTreeMap<i32, u32>) -> String {
    if counts.is_empty() {
        return "none".to_owned();
    }
    let shown: Vec<String> = counts
        .iter()
        .map(|(year, count)| format!("{count} in {year}"))
        .collect();
    shown.join(", ")
}
