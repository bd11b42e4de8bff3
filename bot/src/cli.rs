//! The command line. Help texts are the doc comments.

use std::{
    env,
    io::{self, Write},
    path::{Path, PathBuf},
    process::ExitCode,
};

use anyhow::Context;
use chrono::{NaiveDateTime, Timelike};
use clap::{Parser, Subcommand};

use crate::{clock::Clock, config::Config, demo, engine::Input, read, rig, server, setup, talk};

/// A message bot for rubber smallholders and the adviser who looks after them.
#[derive(Parser)]
#[command(name = "budwood", version)]
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
    /// Checks or loads a list of people, phones, groups, blocks and consent (CSV).
    Roll {
        #[command(subcommand)]
        command: RollCommand,
    },
    /// Checks a configuration with its language packs and calendars.
    Check {
        /// The configuration.
        config: PathBuf,
    },
}

#[derive(Subcommand)]
enum RollCommand {
    /// Lists every doubtful row with its line and reason. Stores nothing.
    Check {
        /// The list.
        file: PathBuf,
        /// The configuration whose store the list is compared with; without it an empty store.
        #[arg(long)]
        config: Option<PathBuf>,
    },
    /// Takes the list in, all of it or nothing. Can be repeated. The service must not be running.
    Load {
        /// The list.
        file: PathBuf,
        /// The configuration whose store it goes into.
        #[arg(long)]
        config: PathBuf,
    },
}

/// Runs the command that was given.
///
/// # Errors
///
/// When the command could not do its work.
pub fn run() -> anyhow::Result<ExitCode> {
    match Cli::parse().command {
        Command::Demo { all } => demo::play(all, &mut io::stdout().lock())?,
        Command::Serve { config } => serve(&config)?,
        Command::Talk { roll, store, from } => {
            let options = talk::Options { roll, store, from };
            talk::run(
                &options,
                &Clock::System,
                io::stdin().lock(),
                io::stdout().lock(),
            )?;
        }
        Command::Read { text, received, .. } => read_texts(text.as_deref(), received)?,
        Command::Roll {
            command: RollCommand::Check { file, config },
        } => {
            return check_roll(&file, config.as_deref());
        }
        Command::Roll {
            command: RollCommand::Load { file, config },
        } => {
            return load_roll(&file, &config);
        }
        Command::Check { config } => check(&config)?,
    }
    Ok(ExitCode::SUCCESS)
}

fn moment(text: &str) -> Result<NaiveDateTime, String> {
    ["%Y-%m-%dT%H:%M", "%Y-%m-%dT%H:%M:%S"]
        .iter()
        .find_map(|format| NaiveDateTime::parse_from_str(text, format).ok())
        .ok_or_else(|| "expected a moment like 2026-03-18T12:00".to_owned())
}

fn serve(config: &Path) -> anyhow::Result<()> {
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .enable_all()
        .build()?;
    runtime.block_on(server::serve(config))
}

fn environment(name: &str) -> Option<String> {
    env::var(name).ok()
}

/// Reads and checks a configuration.
///
/// # Errors
///
/// When the file or a secret is missing or wrong.
pub fn config(path: &Path) -> anyhow::Result<Config> {
    Config::load(path, &environment).with_context(|| format!("configuration {}", path.display()))
}

fn read_texts(text: Option<&str>, received: Option<NaiveDateTime>) -> anyhow::Result<()> {
    let setup = setup::built_in(0)?;
    let now = Clock::System.now().naive_utc();
    let received = received.unwrap_or_else(|| now.with_nanosecond(0).unwrap_or(now));
    let mut out = io::stdout().lock();
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

fn check_roll(file: &Path, config_path: Option<&Path>) -> anyhow::Result<ExitCode> {
    let csv = setup::read_bytes(file)?;
    let now = Clock::System.now();
    let engine = match config_path {
        Some(path) => server::open_engine(&config(path)?, now)?,
        None => talk::empty_engine(now)?,
    };
    let plan = rig::plan_roll(&engine, &csv, now);
    writeln!(io::stdout(), "{plan}")?;
    Ok(if plan.may_be_stored() {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    })
}

fn load_roll(file: &Path, config_path: &Path) -> anyhow::Result<ExitCode> {
    let csv = setup::read_bytes(file)?;
    let now = Clock::System.now();
    let mut engine = server::open_engine(&config(config_path)?, now)?;
    let plan = rig::plan_roll(&engine, &csv, now);
    writeln!(io::stdout(), "{plan}")?;
    if !plan.may_be_stored() {
        return Ok(ExitCode::FAILURE);
    }
    if plan.is_empty() {
        return Ok(ExitCode::SUCCESS);
    }
    engine.handle(vec![Input::Roll(Box::new(rig::entries(&plan)))], now)?;
    writeln!(io::stdout(), "stored")?;
    Ok(ExitCode::SUCCESS)
}

fn check(path: &Path) -> anyhow::Result<()> {
    let config = config(path)?;
    let setup = setup::from_config(&config)?;
    let calendars: Vec<&str> = setup.calendars.keys().map(String::as_str).collect();
    let mut out = io::stdout().lock();
    writeln!(out, "configuration: good")?;
    let languages: Vec<&str> = setup.reader.languages().collect();
    writeln!(out, "languages read: {}", languages.join(", "))?;
    writeln!(out, "calendars: {}", calendars.join(", "))?;
    Ok(())
}
