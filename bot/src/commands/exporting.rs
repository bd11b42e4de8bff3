//! `budwood export`: files for partners. `budwood outline`: where a block lies.
//!
//! Everything is read from a copy of one moment, so that the service can run meanwhile. What is
//! given is written down in the store before the first file is written.

use std::{
    fmt::Write as _,
    fs, io,
    path::{Path, PathBuf},
    sync::Arc,
};

use anyhow::{Context, anyhow, bail};
use chrono::{DateTime, NaiveDate, Utc};
use clap::{Args, builder::PossibleValuesParser};
use data_encoding::HEXLOWER;
use hmac_sha256::Hash;

use crate::{
    backup::records_of,
    engine::{Engine, Giving, Input, OutlineOrder, Parcel},
    parcel::{days, places},
    service::{
        clock::Clock,
        config::Config,
        control::Control,
        setup::{self, config},
    },
    store::{Change, MemoryStore, Store, read_line},
    words::{given::ParcelKind, limits, outline::HowTaken},
};

/// What goes to whom.
#[derive(Args)]
pub(super) struct ExportArgs {
    /// The configuration.
    config: PathBuf,
    /// The new folder. It must not be there yet, or be empty.
    #[arg(required_unless_present = "given")]
    folder: Option<PathBuf>,
    /// What: plots (names and places of those who agreed), programme (facts and figures without
    /// names), calendar (days to come of groups).
    #[arg(long, required_unless_present = "given",
        value_parser = PossibleValuesParser::new(ParcelKind::ALL.map(ParcelKind::name)))]
    what: Option<String>,
    /// To whom it goes.
    #[arg(long = "for", value_name = "WHOM", required_unless_present = "given")]
    to: Option<String>,
    /// What they want it for.
    #[arg(long, required_unless_present = "given")]
    purpose: Option<String>,
    /// Print who got what so far, and write nothing.
    #[arg(long, conflicts_with_all = ["folder", "what", "to", "purpose"])]
    given: bool,
}

/// Which block, and its corners.
#[derive(Args)]
pub(super) struct OutlineArgs {
    /// The configuration.
    config: PathBuf,
    /// The group.
    group: String,
    /// The farmer's whole name.
    farmer: String,
    /// The block.
    block: String,
    /// The corners: lines of latitude and longitude in degrees, or a GeoJSON polygon.
    file: PathBuf,
    /// How it was taken.
    #[arg(long, value_parser = PossibleValuesParser::new(HowTaken::ALL.map(HowTaken::name)))]
    how: String,
    /// On which day, such as 2026-11-25.
    #[arg(long)]
    on: NaiveDate,
}

/// A file of a parcel.
struct File {
    name: String,
    bytes: Vec<u8>,
}

pub(super) fn export(args: &ExportArgs, out: &mut impl io::Write) -> anyhow::Result<()> {
    let config = config(&args.config)?;
    let now = Clock::System.now();
    let engine = copy(&config, now)?;
    if args.given {
        return say_given(&engine, out);
    }
    let kind = args.what.as_deref().and_then(ParcelKind::from_name);
    let (Some(kind), Some(folder), Some(to), Some(purpose)) =
        (kind, &args.folder, &args.to, &args.purpose)
    else {
        bail!("say what goes to whom, and what for");
    };
    refuse_taken(folder)?;
    let parcel = engine.parcel(kind, now)?;
    let mut files = files(&parcel, now)?;
    let about = about(&parcel, &files, (to, purpose), now)?;
    files.push(File {
        name: "about.txt".to_owned(),
        bytes: about.into_bytes(),
    });
    let sums: String = files.iter().fold(String::new(), |sums, file| {
        format!("{sums}{}  {}\n", sum(&file.bytes), file.name)
    });
    let count = |many: usize| u32::try_from(many).unwrap_or(u32::MAX);
    let giving = Giving {
        kind,
        to: to.clone(),
        purpose: purpose.clone(),
        people: count(parcel.people),
        blocks: count(parcel.blocks),
        sha256: sum(sums.as_bytes()),
    };
    let number = give(&config, giving, now)?;
    files.push(File {
        name: "checksums.txt".to_owned(),
        bytes: sums.into_bytes(),
    });
    fs::create_dir_all(folder).with_context(|| format!("cannot make {}", folder.display()))?;
    for File { name, bytes } in &files {
        let file = folder.join(name);
        fs::write(&file, bytes).with_context(|| format!("cannot write {}", file.display()))?;
    }
    writeln!(
        out,
        "{} files in {}, written down as number {number}: {} people, {} blocks",
        files.len(),
        folder.display(),
        parcel.people,
        parcel.blocks
    )?;
    for note in &parcel.notes {
        writeln!(out, "{note}")?;
    }
    Ok(())
}

pub(super) fn outline(args: &OutlineArgs, out: &mut impl io::Write) -> anyhow::Result<()> {
    let config = config(&args.config)?;
    let text = setup::read_bytes(&args.file)?;
    let order = OutlineOrder {
        group: args.group.clone(),
        farmer: args.farmer.clone(),
        block: args.block.clone(),
        text: String::from_utf8(text).context("the outline is not in UTF-8")?,
        how: HowTaken::from_name(&args.how).context("there is no such way")?,
        on: args.on,
    };
    let page = match Control::connect(&config.store.folder)? {
        Some(mut control) => control.outline(&order)?,
        None => told(&config, Input::Outline(order), Clock::System.now())?,
    };
    writeln!(out, "{page}")?;
    Ok(())
}

/// An engine on a copy of everything as it is now.
fn copy(config: &Config, now: DateTime<Utc>) -> anyhow::Result<Engine> {
    let store = MemoryStore::new();
    records_of(config, &mut |lines| {
        let mut change = Change::default();
        for line in lines {
            read_line(&line, &mut change)?;
        }
        Ok(store.commit(&change)?)
    })?;
    let setup = Arc::new(setup::from_config(config)?);
    Ok(Engine::open(setup, Box::new(store), now)?)
}

/// Writes down what is given.
fn give(config: &Config, giving: Giving, now: DateTime<Utc>) -> anyhow::Result<String> {
    match Control::connect(&config.store.folder)? {
        Some(mut control) => Ok(control.give(&giving)?),
        None => told(config, Input::Give(giving), now),
    }
}

/// What the store itself says to an input.
fn told(config: &Config, input: Input, now: DateTime<Utc>) -> anyhow::Result<String> {
    let mut engine = setup::open_engine(config, now)?;
    let told = engine.handle(vec![input], now)?.pop();
    let page = told.and_then(|told| told.page);
    page.context("the engine says nothing")?
        .map_err(|why| anyhow!(why))
}

fn say_given(engine: &Engine, out: &mut impl io::Write) -> anyhow::Result<()> {
    for given in engine.givens() {
        writeln!(
            out,
            "{} {} {} to {}, for {}: {} people, {} blocks, sum {}",
            given.number,
            given.at.format("%Y-%m-%d %H:%M"),
            given.kind.name(),
            given.to,
            given.purpose,
            given.people,
            given.blocks,
            given.sha256
        )?;
    }
    Ok(())
}

fn files(parcel: &Parcel, now: DateTime<Utc>) -> anyhow::Result<Vec<File>> {
    let mut files = Vec::new();
    for sheet in &parcel.sheets {
        files.push(File {
            name: format!("{}.csv", sheet.key),
            bytes: sheet.csv(false),
        });
        // A workbook has no more rows than this; whoever has more reads the other file.
        if sheet.rows.len() <= limits::WORKBOOK_ROWS_MAX {
            files.push(File {
                name: format!("{}.xlsx", sheet.key),
                bytes: sheet.xlsx()?,
            });
        }
    }
    if let Some(places) = &parcel.places {
        files.push(File {
            name: "plots.geojson".to_owned(),
            bytes: places::geojson(places)?,
        });
    }
    if let Some(days) = &parcel.days {
        files.push(File {
            name: "days.ics".to_owned(),
            bytes: days::calendar(days, now),
        });
    }
    Ok(files)
}

/// What is in the folder, for whoever opens it.
fn about(
    parcel: &Parcel,
    files: &[File],
    (to, purpose): (&str, &str),
    now: DateTime<Utc>,
) -> anyhow::Result<String> {
    let mut about = String::new();
    writeln!(about, "For: {to}")?;
    writeln!(about, "Purpose: {purpose}")?;
    writeln!(about, "Made at: {} UTC", now.format("%Y-%m-%d %H:%M"))?;
    writeln!(
        about,
        "Use it for nothing else, and delete it when that is done.\n"
    )?;
    for note in &parcel.notes {
        writeln!(about, "{note}")?;
    }
    writeln!(
        about,
        "\nFiles (CSV and text are in UTF-8; days are year-month-day):"
    )?;
    for file in files {
        writeln!(about, "  {}", file.name)?;
    }
    for sheet in &parcel.sheets {
        let columns: Vec<&str> = sheet.columns.iter().map(|one| one.key.as_str()).collect();
        let rows = sheet.rows.len();
        writeln!(about, "\n{}: {}, {rows} rows", sheet.key, sheet.title)?;
        writeln!(about, "  {}", columns.join(", "))?;
    }
    writeln!(
        about,
        "\nchecksums.txt has the SHA-256 of each file: sha256sum -c checksums.txt"
    )?;
    Ok(about)
}

fn sum(bytes: &[u8]) -> String {
    HEXLOWER.encode(&Hash::hash(bytes))
}

fn refuse_taken(folder: &Path) -> anyhow::Result<()> {
    let is_taken = match fs::read_dir(folder) {
        Ok(mut inside) => inside.next().is_some(),
        Err(error) if error.kind() == io::ErrorKind::NotFound => false,
        Err(error) => {
            return Err(error).with_context(|| format!("cannot look into {}", folder.display()));
        }
    };
    if is_taken {
        bail!("{} is there already; name a new folder", folder.display());
    }
    Ok(())
}
