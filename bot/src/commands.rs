//! The command line: its grammar, and which file does each command. Help texts are the doc comments.

pub mod check_calendar;
mod checking;
pub mod demo;
pub mod due;
mod exporting;
mod gateway;
pub mod health;
mod keeping;
mod lists;
pub mod page;
pub mod planning;
pub mod read;
pub mod rehearse;
mod roll_columns;
pub mod setup;
mod sheets;
mod taking;
pub mod talk;

use std::{
    io::{self, Write},
    path::{Path, PathBuf},
    process::ExitCode,
};

use anyhow::Context;
use chrono::{NaiveDateTime, Timelike};
use clap::{CommandFactory, FromArgMatches, Parser, Subcommand};
use rustix::fs::Mode;
use tokio::runtime::{self, Runtime};

use self::page::Page;
use crate::{
    backup::BACKUP_VERSION,
    service::{
        self,
        clock::Clock,
        setup::{built_in, config},
    },
    store::RECORD_VERSION,
};

/// A message bot for rubber smallholders and the adviser who looks after them.
#[derive(Parser)]
#[command(name = "budwood")]
struct Cli {
    #[command(subcommand)]
    command: Command,
}

#[derive(Subcommand)]
enum Command {
    /// Plays three years of an invented group in a few seconds, and shows the conversation.
    Demo {
        /// Show every text, not only the scenes.
        #[arg(long)]
        all: bool,
    },
    /// Runs the service: texts in by HTTP, texts out through the gateway.
    Serve {
        /// The configuration, such as deploy/budwood.toml.
        config: PathBuf,
    },
    /// Makes a configuration, its secrets and the begin of a list of people, from six answers.
    Setup(setup::SetupArgs),
    /// Opens a phone in the terminal: text as any registered person, see the answers, move time.
    Talk {
        /// The list of people and blocks; without it the demo's list.
        #[arg(long)]
        roll: Option<PathBuf>,
        /// Keep the record in this folder; without it nothing is kept.
        #[arg(long)]
        store: Option<PathBuf>,
        /// The day on which it begins, such as 2026-12-01; without it today.
        #[arg(long)]
        from: Option<chrono::NaiveDate>,
    },
    /// Shows what would be made of a text, without storing anything.
    Read {
        /// The text.
        #[arg(required_unless_present = "lines")]
        text: Option<String>,
        /// Read JSON lines from standard input and answer each with a JSON line.
        #[arg(long, conflicts_with = "text")]
        lines: bool,
        /// When the texts arrived, such as 2026-03-18T12:00; without it now.
        #[arg(long, value_parser = moment)]
        received: Option<NaiveDateTime>,
    },
    /// Checks or loads a list of people, phones, groups, blocks and consent (CSV), or prints its
    /// columns.
    Roll {
        #[command(subcommand)]
        command: RollCommand,
    },
    /// Prints a sheet: for meetings, visits and the office. The service may run.
    Sheet(sheets::SheetArgs),
    /// Writes files for a partner into a new folder, and writes down who got what. The service may
    /// run.
    Export(exporting::ExportArgs),
    /// Takes in the outline of a block, as a walk with a positioning device gives it. The service
    /// may run.
    Outline(exporting::OutlineArgs),
    /// Copies everything into a new folder, as it is at this moment. The service may run.
    Backup {
        /// The configuration.
        config: PathBuf,
        /// The new folder, such as backups/2026-11-25. It must not be there yet, or be empty.
        folder: PathBuf,
        /// Make the new folder inside this one, named by the moment, and keep only so many of them:
        /// the newest.
        #[arg(long, value_name = "COPIES", value_parser = clap::value_parser!(u16).range(1..))]
        keep: Option<u16>,
    },
    /// Fills an empty store from a backup. The service must not be running.
    ///
    /// The whole backup is read and checked before anything is written. Afterwards texts are taken
    /// in but none is sent until `budwood release`: what waits in the backup may have been sent
    /// since. What is too old by then is never sent.
    Restore {
        /// The configuration that names the empty store.
        config: PathBuf,
        /// The folder of the backup.
        folder: PathBuf,
        /// Only read and check the backup. Needs no empty store and changes nothing.
        #[arg(long = "try")]
        only_try: bool,
    },
    /// Lets texts leave again after a restore or an import. The service may run.
    ///
    /// Also says that the computer's clock is right as it stands, when the service holds nudges
    /// because the clock was put forward.
    Release {
        /// The configuration.
        config: PathBuf,
    },
    /// Has the running service read its configuration again: hours of nudges, routes, language
    /// packs, calendars, the log's filter. The rest needs a new start, and is named.
    Reload {
        /// The configuration.
        config: PathBuf,
    },
    /// Asks the running service how it is. Fails when something is wrong or nobody answers, for a
    /// monitor or a container.
    Health {
        /// The configuration.
        config: PathBuf,
    },
    /// Helps people to the office's pages.
    Office {
        #[command(subcommand)]
        command: OfficeCommand,
    },
    /// Tries a gateway of a configuration.
    Gateway {
        #[command(subcommand)]
        command: GatewayCommand,
    },
    /// Writes all records as JSON lines, or fills an empty store from them.
    Log {
        #[command(subcommand)]
        command: LogCommand,
    },
    /// Lists the jobs that are due on a day, block by block, or plans a planting. Changes nothing.
    Due {
        /// The configuration.
        #[arg(required_unless_present = "plan")]
        config: Option<PathBuf>,
        /// The day, such as 2026-12-10; without it today where groups without a zone live.
        #[arg(long)]
        on: Option<chrono::NaiveDate>,
        /// Plan a planting instead: points, plants, days, the list of seven years, texts, money.
        #[arg(long, conflicts_with_all = ["config", "on"])]
        plan: bool,
        #[command(flatten)]
        planting: planning::PlanArgs,
    },
    /// Plays years of a list of people: texts, costs, busy weeks, clashes of labour, openings.
    /// Nothing is kept or sent.
    Rehearse(rehearse::RehearseArgs),
    /// Checks a configuration with its language packs and calendars, or one calendar.
    #[command(args_conflicts_with_subcommands = true)]
    Check {
        #[command(subcommand)]
        command: Option<CheckCommand>,
        /// The configuration.
        #[arg(required = true)]
        config: Option<PathBuf>,
        /// Also read every record of its store. The service may run.
        #[arg(long)]
        records: bool,
        /// Also try what it names on this computer: the port, the secrets, the store and its disk.
        #[arg(long = "try")]
        with_try: bool,
    },
}

#[derive(Subcommand)]
enum CheckCommand {
    /// Says everything that is wrong in a calendar, with the line, or how sure its values are.
    Calendar {
        /// The calendar.
        file: PathBuf,
    },
}

#[derive(Subcommand)]
enum GatewayCommand {
    /// Shows what a saved request of a provider becomes. Stores nothing.
    Try {
        /// The configuration.
        config: PathBuf,
        /// The gateway's name.
        name: String,
        /// The request as it came: its first line, headers, an empty line, the body; or the body
        /// alone.
        #[arg(long, value_name = "FILE")]
        inbound: PathBuf,
    },
}

#[derive(Subcommand)]
enum OfficeCommand {
    /// Prints a code with which somebody comes in, where no text can reach their phone. The service
    /// must be running, and only who owns its store can ask.
    Code {
        /// The configuration.
        config: PathBuf,
        /// The whole name, as it is on the list.
        #[arg(long = "for", value_name = "NAME")]
        name: String,
    },
}

#[derive(Subcommand)]
enum LogCommand {
    /// Writes every record as one JSON line, as it is at this moment. The service may run.
    Export {
        /// The configuration.
        config: PathBuf,
        /// The new file.
        file: PathBuf,
    },
    /// Fills an empty store from an exported log. The service must not be running. Afterwards no
    /// text is sent until `budwood release`.
    Import {
        /// The configuration that names the empty store.
        config: PathBuf,
        /// The exported log.
        file: PathBuf,
    },
}

#[derive(Subcommand)]
enum RollCommand {
    /// Lists every doubtful row with its line and reason. Stores nothing. The service may run.
    Check {
        /// The list.
        file: PathBuf,
        /// The configuration whose store the list is compared with; without it an empty store.
        #[arg(long)]
        config: Option<PathBuf>,
    },
    /// Takes the list in, all of it or nothing. Can be repeated. The service may run.
    Load {
        /// The list.
        file: PathBuf,
        /// The configuration whose store it goes into.
        #[arg(long)]
        config: PathBuf,
    },
    /// Shows what taking the last list back would do, and with --yes takes it back: people, phones
    /// and blocks are as they were, and facts are taken back by new ones. What others have built on
    /// since stays, and is named. The service may run.
    Undo {
        /// The configuration whose store the list went into.
        config: PathBuf,
        /// Take it back.
        #[arg(long)]
        yes: bool,
    },
    /// Makes a list that can be loaded of one as an office keeps it: CSV of any encoding or a
    /// workbook, any heads. Asks what it cannot know. With a configuration what is good is stored.
    Take(Box<taking::TakeArgs>),
    /// Prints the columns of a list: what is in each, which rows need it, and an example.
    Columns,
}

/// The grammar of the command line. The version also says which records and backups are written:
/// a program reads those and all before.
#[must_use]
pub fn grammar() -> clap::Command {
    let program = env!("CARGO_PKG_VERSION");
    Cli::command().version(format!(
        "{program}, records {RECORD_VERSION}, backups {BACKUP_VERSION}"
    ))
}

/// Runs the command that was given.
///
/// # Errors
///
/// When the command could not do its work.
pub fn run() -> anyhow::Result<ExitCode> {
    // Records, backups, logs and sockets hold numbers and texts: whoever starts the program, only
    // they can read what it makes.
    rustix::process::umask(Mode::RWXG | Mode::RWXO);
    let given = grammar().get_matches();
    let cli = Cli::from_arg_matches(&given).unwrap_or_else(|error| error.exit());
    match cli.command {
        Command::Demo { all } => demo::play(all, &mut Page::open())?,
        Command::Serve { config } => {
            runtime()?.block_on(service::serve(&config))?;
        }
        Command::Setup(args) => setup::run(&args, &mut io::stdin().lock(), &mut Page::open())?,
        Command::Talk { roll, store, from } => {
            let options = talk::Options { roll, store, from };
            talk::run(&options, &Clock::System, io::stdin().lock(), Page::open())?;
        }
        Command::Read { text, received, .. } => read_texts(text.as_deref(), received)?,
        Command::Roll { command } => return roll(command),
        Command::Export(args) => exporting::export(&args, &mut Page::open())?,
        Command::Outline(args) => exporting::outline(&args, &mut Page::open())?,
        Command::Sheet(args) => sheets::print(&args)?,
        Command::Check {
            command: Some(CheckCommand::Calendar { file }),
            ..
        } => return check_calendar::check(&file, &mut Page::open()),
        Command::Check {
            config,
            records,
            with_try,
            ..
        } => checking::check(&config.unwrap_or_default(), records, with_try)?,
        Command::Backup {
            config,
            folder,
            keep,
        } => keeping::backup(&config, &folder, keep)?,
        Command::Restore {
            folder,
            only_try: true,
            ..
        } => keeping::try_restore(&folder)?,
        Command::Restore { config, folder, .. } => keeping::restore(&config, &folder)?,
        Command::Release { config } => keeping::release(&config)?,
        Command::Reload { config } => keeping::reload(&config)?,
        Command::Health { config } => ask_health(&config)?,
        Command::Office {
            command: OfficeCommand::Code { config, name },
        } => keeping::office_code(&config, &name, &mut Page::open())?,
        Command::Gateway {
            command:
                GatewayCommand::Try {
                    config,
                    name,
                    inbound,
                },
        } => {
            let page = gateway::try_inbound(&config, &name, &inbound)?;
            write!(Page::open(), "{page}")?;
        }
        Command::Log { command } => log(&command)?,
        Command::Rehearse(args) => {
            let mut out = Page::open();
            rehearse::run(&args, &Clock::System, &mut out, &mut page::progress())?;
        }
        Command::Due {
            plan: true,
            planting,
            ..
        } => planning::print(&planting, &mut Page::open())?,
        Command::Due { config, on, .. } => due_on(&config.unwrap_or_default(), on)?,
    }
    Ok(ExitCode::SUCCESS)
}

fn ask_health(config: &Path) -> anyhow::Result<()> {
    let config = self::config(config)?;
    runtime()?.block_on(health::ask(&config, &mut Page::open()))
}

fn roll(command: RollCommand) -> anyhow::Result<ExitCode> {
    match command {
        RollCommand::Check { file, config } => lists::check(&file, config.as_deref()),
        RollCommand::Load { file, config } => lists::load(&file, &config),
        RollCommand::Undo { config, yes } => lists::undo(&config, yes),
        RollCommand::Take(args) => taking::run(&args),
        RollCommand::Columns => {
            write!(Page::open(), "{}", roll_columns::page())?;
            Ok(ExitCode::SUCCESS)
        }
    }
}

fn log(command: &LogCommand) -> anyhow::Result<()> {
    match command {
        LogCommand::Export { config, file } => keeping::export(config, file),
        LogCommand::Import { config, file } => keeping::import(config, file),
    }
}

/// What carries requests and connections.
fn runtime() -> io::Result<Runtime> {
    runtime::Builder::new_multi_thread().enable_all().build()
}

fn moment(text: &str) -> Result<NaiveDateTime, String> {
    ["%Y-%m-%dT%H:%M", "%Y-%m-%dT%H:%M:%S"]
        .iter()
        .find_map(|format| NaiveDateTime::parse_from_str(text, format).ok())
        .ok_or_else(|| "expected a moment like 2026-03-18T12:00".to_owned())
}

fn read_texts(text: Option<&str>, received: Option<NaiveDateTime>) -> anyhow::Result<()> {
    let setup = built_in(0)?;
    let now = Clock::System.now().naive_utc();
    let received = received.unwrap_or_else(|| now.with_nanosecond(0).unwrap_or(now));
    let mut out = Page::open();
    match text {
        Some(text) => {
            let page = read::explained(&setup.reader, received, text);
            write!(out, "{page}").context("cannot write standard output")
        }
        None => read::lines(
            &setup.reader,
            received,
            io::stdin().lock(),
            io::BufWriter::new(out),
        ),
    }
}

fn due_on(path: &Path, on: Option<chrono::NaiveDate>) -> anyhow::Result<()> {
    let config = config(path)?;
    let clock = Clock::System;
    let today = clock.now().with_timezone(&config.line.fallback_zone);
    let on = on.unwrap_or(today.date_naive());
    due::print(&config, on, clock.now(), &mut Page::open())
}
