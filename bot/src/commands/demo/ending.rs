//! The end of the demo: three years in figures, and what to try next.

use std::{collections::BTreeMap, io::Write};

use budwood_scheduler::{BlockState, Body, Role};

use super::{screen, tally::Tally};
use crate::{play::virtual_clock::Rig, words::sms};

const NEXT: &str = "
Try next
  budwood talk               be a farmer or the adviser yourself, and let time pass
  budwood read \"ded 8 B\"     see what is made of a text
  budwood demo --all         every text of these three years
  budwood roll check LIST    check a list of your own people and blocks
  budwood serve CONFIG       the service
";

/// Outcomes of texts that were not simply taken, and how to say them.
const NOT_GUESSED: [(&str, &str); 8] = [
    ("asked for a slot", "a word or number asked for"),
    ("asked to confirm", "a doubtful number asked about"),
    ("asked for whom", "for whom?"),
    ("asked what is wrong", "what is wrong?"),
    ("not understood", "an example sent"),
    ("from a stranger", "not on the list"),
    ("for a person", "given to the adviser"),
    ("chat", "talk and thanks"),
];

/// Tells how it all stands at the end.
pub(super) fn tell(rig: &Rig, tally: &Tally, out: &mut impl Write) -> anyhow::Result<()> {
    let directory = rig.engine().directory();
    let farmers = directory
        .persons()
        .filter(|person| matches!(person.role, Role::Farmer | Role::Leader))
        .count();
    let blocks = directory.blocks().count();
    let facts = facts(rig)?;
    let answered = tally.answered * 100 / tally.nudges.max(1);
    let longest = sms::measure(&tally.longest).units;
    writeln!(out, "\nThree years in figures")?;
    writeln!(
        out,
        "  {farmers} farmers, {blocks} blocks, {facts} facts told"
    )?;
    writeln!(
        out,
        "  {} texts in, {} out: {} of more than one SMS, the longest of {longest} characters",
        tally.texts_in, tally.texts_out, tally.in_parts
    )?;
    writeln!(
        out,
        "  {} nudges: {answered} % answered before the next, {} to somebody who had not agreed",
        tally.nudges, tally.unwanted
    )?;
    survival(rig, out)?;
    let outcomes = outcomes(rig)?;
    let times = |(outcome, words)| Some(format!("{} {words}", outcomes.get(outcome)?));
    let told: Vec<String> = NOT_GUESSED.into_iter().filter_map(times).collect();
    let told = format!("Not guessed: {}", told.join(", "));
    screen::wrapped(out, "  ", 4, &told)?;
    write!(out, "{NEXT}")?;
    Ok(())
}

/// What people told; the bot's own nudges are facts too, but not news.
fn facts(rig: &Rig) -> anyhow::Result<u32> {
    let mut facts = 0;
    rig.engine().store().each_event(&mut |event| {
        if !matches!(event.body, Body::Nudged { .. }) {
            facts += 1;
        }
    })?;
    Ok(facts)
}

fn outcomes(rig: &Rig) -> anyhow::Result<BTreeMap<String, u32>> {
    let mut outcomes = BTreeMap::new();
    rig.engine().store().each_received(&mut |received| {
        *outcomes.entry(received.outcome).or_default() += 1;
    })?;
    Ok(outcomes)
}

/// Trees of the first plantings that live: backfills are left out, so that they hide no loss.
fn survival(rig: &Rig, out: &mut impl Write) -> anyhow::Result<()> {
    let engine = rig.engine();
    let directory = engine.directory();
    let blocks = directory
        .blocks()
        .filter_map(|block| engine.state(block.id));
    let (alive, planted) = blocks
        .map(first_trees)
        .fold((0, 0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
    let share = pct(alive, planted);
    writeln!(out, "  {alive} of {planted} first trees alive, {share}")?;
    Ok(())
}

fn first_trees(state: &BlockState) -> (u32, u32) {
    state
        .cohorts
        .iter()
        .filter(|cohort| !cohort.backfill)
        .fold((0, 0), |(alive, planted), cohort| {
            (alive + cohort.alive(), planted + cohort.planted)
        })
}

fn pct(part: u32, whole: u32) -> String {
    if whole == 0 {
        return "none".to_owned();
    }
    // Rounded down: a lost tree must not vanish.
    format!("{} %", u64::from(part) * 100 / u64::from(whole))
}
