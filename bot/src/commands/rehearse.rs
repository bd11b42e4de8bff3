//! `budwood rehearse`: what a calendar would mean for these people, before it is used.
//!
//! Plays years of a list of people through the real engine, reader, calendar and nudge rules on a
//! clock that is moved. Farmers answer as the assumptions say, which stand on the page. It is
//! played twice: with the usual rains, and with rains that come later. Nothing is kept or sent.

mod forget;
mod labour;
mod page;
mod play;
mod rains;
mod tally;

use std::{io::Write, path::PathBuf, sync::Arc};

use anyhow::{Context, bail};
use chrono::NaiveDate;
use clap::Args;

use self::{play::Play, tally::Tally};
use crate::{
    commands::planning,
    service::{clock::Clock, setup, value},
    words::{
        ledger::MonthBudget,
        ways::{HANDSET, Ways},
    },
};

/// Codes protect nothing here, and must be the same in every run.
const SECRET: u64 = 0;
/// Longer than a stand takes to be opened.
const YEARS_MAX: u32 = 15;

/// What is to be rehearsed.
#[derive(Args, Debug)]
pub struct RehearseArgs {
    /// The list of people and blocks (CSV).
    roll: PathBuf,
    /// A calendar for all groups, one that ships or a file; without it each group's own.
    #[arg(long)]
    calendar: Option<String>,
    /// The configuration of a service: its calendars, language packs, times of day and country.
    #[arg(long)]
    config: Option<PathBuf>,
    /// The country of numbers that begin without a plus, such as ID; without it that of the
    /// configuration.
    #[arg(long, value_parser = country)]
    country: Option<String>,
    /// The day on which it begins; without it the first planting day of the list.
    #[arg(long)]
    from: Option<NaiveDate>,
    /// How many years.
    #[arg(long, default_value_t = 7)]
    years: u32,
    /// The price of one segment, in any money.
    #[arg(long, default_value_t = 0.02)]
    price: f64,
    /// Farmers who answer soon, of a hundred; half of the others answer late, half hardly ever.
    #[arg(long, default_value_t = 70)]
    diligent_pct: u32,
    /// Costs and labour, as demo-data/costs.toml has them: tells who has more work than days.
    #[arg(long)]
    costs: Option<PathBuf>,
    /// How many days later the rains begin and end in the second play.
    #[arg(long, default_value_t = 21)]
    rains_late: i64,
}

/// Plays and writes the page; a bar that fills and the time it took go to `progress`.
///
/// # Errors
///
/// When the list or the calendar cannot be used.
pub fn run(
    args: &RehearseArgs,
    clock: &Clock,
    out: &mut impl Write,
    progress: &mut impl Write,
) -> anyhow::Result<()> {
    if !(1..=YEARS_MAX).contains(&args.years) {
        bail!("expected 1 to {YEARS_MAX} years, found {}", args.years);
    }
    if args.diligent_pct > 100 || !(0.0..=1_000.0).contains(&args.price) {
        bail!("expected a share up to 100 and a price from 0 to 1000");
    }
    let csv = setup::read_bytes(&args.roll)?;
    let csv = String::from_utf8(csv).context("the list is not UTF-8")?;
    let began = clock.now();
    let usual = play(args, &csv, 0, progress)?;
    let late = match args.rains_late {
        0 => None,
        days => Some(play(args, &csv, days, progress)?),
    };
    writeln!(progress)?;
    write!(out, "{}", page::of(args, &usual, late.as_ref()))?;
    let took = clock.now().signed_duration_since(began);
    writeln!(progress, "played in {} s", took.num_seconds())?;
    Ok(())
}

fn play(
    args: &RehearseArgs,
    csv: &str,
    days_late: i64,
    progress: &mut impl Write,
) -> anyhow::Result<Tally> {
    let mut setup = match args.config.as_deref() {
        Some(file) => setup::from_config(&setup::config(file)?)?,
        None => setup::built_in(SECRET)?,
    };
    setup.secret = SECRET;
    // Nothing leaves the computer, so nothing is paid and nobody is told of the service.
    setup.ways = Ways::one(HANDSET, true);
    (setup.parts_a_day, setup.month, setup.operator) = (None, MonthBudget::default(), None);
    if let Some(country) = &args.country {
        setup.country.clone_from(country);
    }
    // What a year of reminders costs; one welcome for each phone comes on top.
    setup.rules.welcomes_a_day = 0;
    if let Some(name) = &args.calendar {
        let calendar = planning::calendar(name)?;
        for known in setup.calendars.values_mut() {
            *known = calendar.clone();
        }
    }
    let csv = rains::shifted(csv, days_late)?;
    let costs = args.costs.as_deref().map(planning::costs).transpose()?;
    let mut play = Play::open(Arc::new(setup), &csv, args.from, args.diligent_pct, costs)?;
    let weeks = args.years * 365 / 7;
    for week in 0..weeks {
        play.week()?;
        bar(progress, days_late, week + 1, weeks)?;
    }
    Ok(play.into_tally())
}

fn country(given: &str) -> Result<String, String> {
    value::country(given)
}

/// One line that fills from the left; written only when it changes.
fn bar(progress: &mut impl Write, days_late: i64, done: u32, of: u32) -> std::io::Result<()> {
    const WIDE: u32 = 40;
    let filled = |done: u32| done * WIDE / of.max(1);
    if filled(done) == filled(done - 1) && done > 1 {
        return Ok(());
    }
    let full: String = (0..filled(done)).map(|_| '#').collect();
    let what = if days_late == 0 {
        "usual rains"
    } else {
        "late rains "
    };
    write!(progress, "\r{what} [{full:<40}]")?;
    progress.flush()
}
