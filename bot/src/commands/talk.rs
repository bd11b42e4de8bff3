//! `budwood talk`: a phone in the terminal.
//!
//! Type as any registered person, see what arrives, let time pass. It drives the same engine as
//! the service; only the clock and the gateway are in memory.

use std::{
    io::{BufRead, Write},
    path::PathBuf,
    sync::Arc,
};

use anyhow::Context;
use budwood_scheduler::{Directory, Person};
use chrono::{DateTime, Days, NaiveDate, TimeDelta, Utc};

use crate::{
    engine::Engine,
    play::virtual_clock::{Arrived, DEMO_ROLL, Rig},
    service::{clock::Clock, setup},
    store::{MemoryStore, SledStore, Store},
    words::limits,
};

/// The hour of the day at which a conversation begins, and to which whole days lead.
const HOUR: u32 = 10;

/// A text on a phone's keys takes a while. Without this the guard against two machines that talk
/// to each other would take a quick typist for one.
const TEXT_TAKES: TimeDelta = TimeDelta::minutes(3);

/// Codes in the terminal protect nothing.
const SECRET: u64 = 0;

const HELP: &str = "\
Type a text and press Enter: it is sent as the person in front of the arrow.
  /as NAME or /as +NUMBER   text as somebody else (any number may be tried)
  /who                      who there is
  /wait 3 days              let time pass (hours, days, weeks, months)
  /until 2027-01-31         let time pass until that day
  /end                      leave
";

/// How the terminal is opened.
#[derive(Clone, Debug)]
pub struct Options {
    /// The list of people; without it the demo's.
    pub roll: Option<PathBuf>,
    /// Where the record is kept; without it in memory.
    pub store: Option<PathBuf>,
    /// The first day; without it today.
    pub from: Option<NaiveDate>,
}

/// An engine without people, in memory.
///
/// # Errors
///
/// When what ships is broken.
pub fn empty_engine(now: DateTime<Utc>) -> anyhow::Result<Engine> {
    let setup = Arc::new(setup::built_in(SECRET)?);
    Ok(Engine::open(setup, Box::new(MemoryStore::new()), now)?)
}

/// Opens the terminal, until its input ends.
///
/// # Errors
///
/// When the list or the store cannot be used, or the terminal breaks.
pub fn run(
    options: &Options,
    clock: &Clock,
    input: impl BufRead,
    mut output: impl Write,
) -> anyhow::Result<()> {
    let store: Box<dyn Store> = match &options.store {
        Some(folder) => Box::new(SledStore::open(folder, limits::TALK_CACHE_BYTES)?),
        None => Box::new(MemoryStore::new()),
    };
    let day = options.from.unwrap_or_else(|| clock.now().date_naive());
    let mut rig = Rig::open(Arc::new(setup::built_in(SECRET)?), store, morning(day))?;
    let csv = match &options.roll {
        Some(file) => setup::read_bytes(file)?,
        None => DEMO_ROLL.to_vec(),
    };
    rig.load_roll(&csv)?;
    let mut number = first_number(rig.engine().directory());
    writeln!(output, "{HELP}")?;
    prompt(&mut output, &rig, &number)?;
    for line in input.lines() {
        let line = line.context("cannot read the terminal")?;
        match line.trim().strip_prefix('/') {
            Some("end") => break,
            Some(command) => command_line(&mut rig, &mut number, command, &mut output)?,
            None if line.trim().is_empty() => {}
            None => {
                let arrived = rig.text(&number, &line)?;
                show(&mut output, &rig, &arrived)?;
                let arrived = rig.run_until(rig.now() + TEXT_TAKES)?;
                show(&mut output, &rig, &arrived)?;
            }
        }
        prompt(&mut output, &rig, &number)?;
    }
    writeln!(output)?;
    Ok(())
}

fn morning(day: NaiveDate) -> DateTime<Utc> {
    day.and_hms_opt(HOUR, 0, 0).unwrap_or_default().and_utc()
}

fn first_number(directory: &Directory) -> String {
    directory
        .persons()
        .filter(|person| directory.blocks_of(person.id).next().is_some())
        .flat_map(|person| directory.numbers_of(person.id))
        .next()
        .unwrap_or("+447700900001")
        .to_owned()
}

fn command_line(
    rig: &mut Rig,
    number: &mut String,
    command: &str,
    output: &mut impl Write,
) -> anyhow::Result<()> {
    let (word, rest) = command.split_once(' ').unwrap_or((command, ""));
    match word {
        "as" => match number_of(rig.engine().directory(), rest.trim()) {
            Some(found) => *number = found,
            None => writeln!(output, "nobody is called {:?}; try /who", rest.trim())?,
        },
        "who" => who(output, rig.engine().directory())?,
        "wait" => match duration(rest, rig.now()) {
            Some(end) => pass(rig, end, output)?,
            None => writeln!(output, "how long? Like: /wait 3 days")?,
        },
        "until" => match rest.trim().parse::<NaiveDate>() {
            Ok(day) => pass(rig, morning(day), output)?,
            Err(_) => writeln!(output, "until when? Like: /until 2027-01-31")?,
        },
        _ => write!(output, "{HELP}")?,
    }
    Ok(())
}

fn number_of(directory: &Directory, name: &str) -> Option<String> {
    if name.starts_with('+') {
        return Some(name.to_owned());
    }
    directory
        .persons()
        .filter(|person| person.is_named(name))
        .find_map(|person| directory.numbers_of(person.id).next())
        .map(str::to_owned)
}

fn who(output: &mut impl Write, directory: &Directory) -> anyhow::Result<()> {
    for person in directory.persons() {
        let numbers: Vec<&str> = directory.numbers_of(person.id).collect();
        let blocks: Vec<&str> = directory
            .blocks_of(person.id)
            .map(|block| block.name.as_str())
            .collect();
        writeln!(
            output,
            "{:<16} {:<8} {:<16} blocks: {}",
            person.name,
            person.role.name(),
            numbers.join(" "),
            blocks.join(" ")
        )?;
    }
    Ok(())
}

fn duration(text: &str, now: DateTime<Utc>) -> Option<DateTime<Utc>> {
    let (number, unit) = text.trim().split_once(' ')?;
    let number: u32 = number.parse().ok()?;
    let unit = unit.trim().trim_end_matches('s');
    match unit {
        "hour" => now.checked_add_signed(TimeDelta::hours(i64::from(number))),
        "day" => now.checked_add_days(Days::new(u64::from(number))),
        "week" => now.checked_add_days(Days::new(u64::from(number) * 7)),
        "month" => now.checked_add_months(chrono::Months::new(number)),
        _ => None,
    }
}

fn pass(rig: &mut Rig, end: DateTime<Utc>, output: &mut impl Write) -> anyhow::Result<()> {
    if end <= rig.now() {
        writeln!(output, "time only goes forward here")?;
        return Ok(());
    }
    let arrived = rig.run_until(end)?;
    show(output, rig, &arrived)
}

fn show(output: &mut impl Write, rig: &Rig, arrived: &[Arrived]) -> anyhow::Result<()> {
    let directory = rig.engine().directory();
    for one in arrived {
        let size = crate::words::sms::measure(&one.text.text);
        writeln!(
            output,
            "  {} to {} ({}): {}",
            one.at.format("%a %d %b %Y %H:%M"),
            name_of(directory, &one.text.to),
            size.units,
            one.text.text
        )?;
    }
    Ok(())
}

fn name_of(directory: &Directory, number: &str) -> String {
    let names: Vec<&str> = directory
        .phone(number)
        .into_iter()
        .flat_map(|phone| phone.people().collect::<Vec<_>>())
        .filter_map(|person| directory.person(person).map(Person::called))
        .collect();
    if names.is_empty() {
        number.to_owned()
    } else {
        names.join(" and ")
    }
}

fn prompt(output: &mut impl Write, rig: &Rig, number: &str) -> anyhow::Result<()> {
    let directory = rig.engine().directory();
    let mut name = name_of(directory, number);
    let people = directory.phone(number).into_iter();
    let roles = people.flat_map(|phone| phone.people().collect::<Vec<_>>());
    let mut roles = roles.filter_map(|person| directory.person(person));
    // Those who share a phone do the same work, as far as a list tells.
    if let Some(first) = roles.next() {
        name = format!("{name} ({})", first.role.name());
    }
    write!(output, "{} {name}> ", rig.now().format("%a %d %b %Y %H:%M"))?;
    output.flush()?;
    Ok(())
}
