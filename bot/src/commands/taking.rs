//! `budwood roll take`: a list as an office keeps it, step by step: what its columns are, what is
//! asked of the whole list, what is open in it, and the plain list that comes out.
//!
//! What a person says is kept beside the list: its columns and answers in one table, its findings in
//! another, both to be changed with any spreadsheet program and read back by the next take.

use std::{
    collections::{BTreeMap, BTreeSet},
    ffi::OsString,
    fs,
    io::Write,
    path::{Path, PathBuf},
    process::ExitCode,
};

use anyhow::{Context, bail};
use chrono::NaiveDate;
use clap::{Args, ValueEnum};

use super::{lists, page::Page};
use crate::{
    engine::{List, ListDeed, ListFate},
    roll::{
        Column,
        take::{
            Answers, DayOrder, Doubt, Grid, Mapping, Question, Taken, Yes, from_csv, take, to_csv,
        },
    },
    service::setup::{config, read_bytes},
};

/// A check can refuse rows because others were; so often it is done again without them.
const ROUNDS_MAX: usize = 8;
/// So many findings are shown; all are in the table.
const SHOWN_MAX: usize = 20;

/// A list of an office, and what is known about all of it.
#[derive(Args)]
pub(super) struct TakeArgs {
    /// The list: CSV in any encoding, or a workbook.
    file: PathBuf,
    /// The configuration whose store it goes into; without it nothing is stored.
    #[arg(long)]
    config: Option<PathBuf>,
    /// The unit of areas that have none: ha, acre, rai or m2.
    #[arg(long)]
    unit: Option<String>,
    /// Which part of a day like 5/6/2026 comes first.
    #[arg(long, value_enum)]
    days: Option<Days>,
    /// The country of numbers without a plus, two letters; without it the configuration's.
    #[arg(long)]
    country: Option<String>,
    /// The group of rows that name none.
    #[arg(long)]
    group: Option<String>,
    /// The zone of new groups, such as Asia/Jakarta; needs --calendar.
    #[arg(long, requires = "calendar")]
    zone: Option<String>,
    /// The calendar of new groups, such as fao.
    #[arg(long, requires = "zone")]
    calendar: Option<String>,
    /// The day on which everybody who is marked as agreed did so.
    #[arg(long)]
    consent_on: Option<NaiveDate>,
    /// Load the rows in which nothing is open, and give the rest back.
    #[arg(long, requires = "config")]
    good_rows: bool,
}

/// The order of a day's parts.
#[derive(Clone, Copy, ValueEnum)]
enum Days {
    /// 5 June.
    DayFirst,
    /// 6 May.
    MonthFirst,
}

/// A file beside the list.
fn beside(list: &Path, name: &str) -> PathBuf {
    let mut path = OsString::from(list);
    path.push(name);
    path.into()
}

/// What was said of a list before.
#[derive(Default)]
struct Said {
    columns: BTreeMap<String, Option<Column>>,
    answers: BTreeMap<String, String>,
}

pub(super) fn run(args: &TakeArgs) -> anyhow::Result<ExitCode> {
    let mut out = Page::open();
    let grid = Grid::read(&read_bytes(&args.file)?)?;
    let kept = beside(&args.file, ".columns.csv");
    let said = read_said(&kept)?;
    let answers = answers(args, &said)?;
    let mapping = Mapping::guessed(&grid, &said.columns);
    if mapping.columns.is_empty() {
        bail!(
            "no line of {} names the columns: write heads like Name, Phone, Area above them",
            args.file.display()
        );
    }
    write_said(&kept, &mapping, &answers)?;
    let findings = beside(&args.file, ".findings.csv");
    let yes = read_yes(&findings)?;
    let mut taken = take(&grid, &mapping, &answers, &yes);
    let doubtful = without_refused(args, &mut taken)?;
    let ready = beside(&args.file, ".ready.csv");
    write_file(&ready, &taken.csv)?;
    write_file(&findings, &to_csv(&taken.doubts, &yes))?;

    writeln!(
        out,
        "{}: {} rows, heads on line {}",
        args.file.display(),
        grid.rows.len(),
        grid.rows.get(mapping.head_row).map_or(0, |(line, _)| *line)
    )?;
    for (head, column) in &mapping.columns {
        let column = column.map_or("(not used)", Column::name);
        writeln!(out, "  {head} -> {column}")?;
    }
    say(&mut out, &taken, &doubtful)?;
    writeln!(
        out,
        "columns and answers: {}\nfindings: {}\nplain list: {}",
        kept.display(),
        findings.display(),
        ready.display()
    )?;
    load(args, &taken, &mut out)
}

fn say(out: &mut Page, taken: &Taken, doubtful: &[String]) -> anyhow::Result<()> {
    let good: BTreeSet<&usize> = taken.lines.iter().filter(|line| **line > 0).collect();
    writeln!(
        out,
        "{} rows are good, {} are held back",
        good.len(),
        taken.held.len()
    )?;
    for question in &taken.questions {
        writeln!(out, "asked: {}", Question::text(*question))?;
    }
    for doubt in taken.doubts.iter().take(SHOWN_MAX) {
        let Doubt {
            line,
            who,
            column,
            found,
            wrong,
            proposal,
        } = doubt;
        let proposal = proposal
            .as_ref()
            .map_or_else(String::new, |value| format!("; propose {value:?}"));
        writeln!(
            out,
            "line {line} {who}: {column} {found:?}: {wrong}{proposal}"
        )?;
    }
    let more = taken.doubts.len().saturating_sub(SHOWN_MAX);
    if more > 0 {
        writeln!(out, "and {more} more")?;
    }
    for line in doubtful.iter().take(SHOWN_MAX) {
        writeln!(out, "{line}")?;
    }
    if !taken.doubts.is_empty() {
        writeln!(
            out,
            "Write yes beside a proposal in the findings, or something better in its place, and take the list again."
        )?;
    }
    Ok(())
}

/// Takes rows out that the plain list's own check refuses. Gives what it only doubts, with the lines
/// of the office's list.
fn without_refused(args: &TakeArgs, taken: &mut Taken) -> anyhow::Result<Vec<String>> {
    for _ in 0..ROUNDS_MAX {
        let list = List {
            csv: taken.csv.clone(),
            deed: ListDeed::Check,
        };
        let answer = lists::bring(args.config.as_deref(), list)?;
        let line_of = |line: usize| {
            let at = line.checked_sub(1)?;
            taken.lines.get(at).copied()
        };
        let mut refused = BTreeMap::new();
        let mut doubtful = Vec::new();
        for finding in &answer.findings {
            let line = line_of(finding.line).unwrap_or(0);
            if finding.is_refused {
                refused.entry(line).or_insert_with(|| finding.what.clone());
            } else {
                doubtful.push(format!("line {line}: doubtful: {}", finding.what));
            }
        }
        if refused.is_empty() || refused.contains_key(&0) {
            for (_, what) in refused {
                doubtful.insert(0, format!("refused: {what}"));
            }
            return Ok(doubtful);
        }
        taken.refuse(&refused);
    }
    bail!("rows are refused again and again; check the plain list with `budwood roll check`")
}

/// Stores what is good, when that is wanted and nothing else is open.
fn load(args: &TakeArgs, taken: &Taken, out: &mut Page) -> anyhow::Result<ExitCode> {
    let is_open = !taken.held.is_empty() || !taken.questions.is_empty();
    if args.config.is_none() {
        return Ok(ExitCode::SUCCESS);
    }
    if is_open && !args.good_rows {
        writeln!(
            out,
            "nothing is stored: rows are held back. With --good-rows the others are stored."
        )?;
        return Ok(ExitCode::FAILURE);
    }
    let list = List {
        csv: taken.csv.clone(),
        deed: ListDeed::Load,
    };
    let answer = lists::bring(args.config.as_deref(), list)?;
    match answer.fate {
        ListFate::Stored => writeln!(out, "stored")?,
        ListFate::Good => writeln!(out, "nothing is new")?,
        ListFate::Refused => {
            writeln!(out, "nothing is stored:\n{}", answer.page)?;
            return Ok(ExitCode::FAILURE);
        }
    }
    Ok(ExitCode::SUCCESS)
}

fn answers(args: &TakeArgs, said: &Said) -> anyhow::Result<Answers> {
    let kept = |name: &str| said.answers.get(name).cloned();
    let day_order = match args.days {
        Some(Days::DayFirst) => Some(DayOrder::DayFirst),
        Some(Days::MonthFirst) => Some(DayOrder::MonthFirst),
        None => match kept("days").as_deref() {
            Some("day-first") => Some(DayOrder::DayFirst),
            Some("month-first") => Some(DayOrder::MonthFirst),
            Some(_) | None => None,
        },
    };
    let country = match (&args.country, &args.config) {
        (Some(country), _) => country.clone(),
        (None, Some(path)) => config(path)?.line.country,
        (None, None) => kept("country").unwrap_or_default(),
    };
    let kept_day = kept("consent_on").and_then(|day| day.parse().ok());
    Ok(Answers {
        unit: args.unit.clone().or_else(|| kept("unit")),
        day_order,
        country,
        group: args.group.clone().or_else(|| kept("group")),
        consent_on: args.consent_on.or(kept_day),
        zone: args.zone.clone().or_else(|| kept("zone")),
        calendar: args.calendar.clone().or_else(|| kept("calendar")),
    })
}

/// The rows of a table beside the list; none when it is not there.
fn table(path: &Path) -> anyhow::Result<Vec<Vec<String>>> {
    if !path.exists() {
        return Ok(Vec::new());
    }
    let grid = Grid::read(&read_bytes(path)?);
    let rows = grid
        .with_context(|| format!("cannot read {}", path.display()))?
        .rows;
    Ok(rows.into_iter().skip(1).map(|(_, cells)| cells).collect())
}

fn read_yes(path: &Path) -> anyhow::Result<Yes> {
    Ok(from_csv(&table(path)?))
}

fn read_said(path: &Path) -> anyhow::Result<Said> {
    let mut said = Said::default();
    for cells in table(path)? {
        let cell = |at: usize| cells.get(at).cloned().unwrap_or_default();
        if cell(0) == "column" {
            said.columns.insert(cell(1), Column::from_name(&cell(2)));
        } else if cell(0) == "answer" && !cell(2).is_empty() {
            said.answers.insert(cell(1), cell(2));
        }
    }
    Ok(said)
}

fn write_said(path: &Path, mapping: &Mapping, answers: &Answers) -> anyhow::Result<()> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(["what", "name", "is"])?;
    for (head, column) in &mapping.columns {
        writer.write_record(["column", head, column.map_or("", Column::name)])?;
    }
    let days = match answers.day_order {
        Some(DayOrder::DayFirst) => "day-first",
        Some(DayOrder::MonthFirst) => "month-first",
        None => "",
    };
    let consent_on = answers
        .consent_on
        .map_or_else(String::new, |on| on.to_string());
    let text = |answer: &Option<String>| answer.clone().unwrap_or_default();
    for (name, answer) in [
        ("unit", text(&answers.unit)),
        ("days", days.to_owned()),
        ("country", answers.country.clone()),
        ("group", text(&answers.group)),
        ("consent_on", consent_on),
        ("zone", text(&answers.zone)),
        ("calendar", text(&answers.calendar)),
    ] {
        writer.write_record(["answer", name, &answer])?;
    }
    write_file(path, &writer.into_inner()?)
}

fn write_file(path: &Path, bytes: &[u8]) -> anyhow::Result<()> {
    fs::write(path, bytes).with_context(|| format!("cannot write {}", path.display()))
}
