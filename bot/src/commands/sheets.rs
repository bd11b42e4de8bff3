//! `budwood sheet`: has a sheet made by the running service, or from the store itself, and writes it
//! in the form that is wanted.

use std::{
    fs,
    io::Write,
    path::{Path, PathBuf},
};

use anyhow::{Context, anyhow};
use clap::{Args, ValueEnum, builder::PossibleValuesParser};

use super::page::Page;
use crate::{
    engine::{Input, SheetOrder},
    service::{
        clock::Clock,
        control::Control,
        setup::{self, config},
    },
    sheet::Sheet,
    words::printed::SheetKind,
};

/// Which sheet, of whom, in which form.
#[derive(Args)]
pub(super) struct SheetArgs {
    /// The configuration.
    config: PathBuf,
    /// Which sheet.
    #[arg(value_parser = PossibleValuesParser::new(SheetKind::ALL.map(SheetKind::name)))]
    sheet: String,
    /// Of which group.
    group: String,
    /// In which form.
    #[arg(long, value_enum, default_value_t)]
    form: Form,
    /// In which language, by code; without it the adviser's.
    #[arg(long)]
    language: Option<String>,
    /// The new file; without it to standard output.
    #[arg(long)]
    to: Option<PathBuf>,
}

/// A form of a sheet.
#[derive(Clone, Copy, Default, ValueEnum)]
enum Form {
    /// Columns side by side.
    #[default]
    Terminal,
    /// For other programs, in UTF-8.
    Csv,
    /// For a spreadsheet program.
    Xlsx,
    /// For a browser, and to be printed from there.
    Page,
    /// To be printed as it is.
    #[cfg(feature = "paper")]
    Pdf,
}

pub(super) fn print(args: &SheetArgs) -> anyhow::Result<()> {
    let kind = SheetKind::from_name(&args.sheet).context("there is no such sheet")?;
    let order = SheetOrder {
        kind,
        group: args.group.clone(),
        language: args.language.clone(),
    };
    let sheet = sheet(&args.config, order)?;
    let written = match args.form {
        Form::Terminal => sheet.to_string().into_bytes(),
        Form::Csv => sheet.csv(args.to.is_some()),
        Form::Xlsx => sheet.xlsx()?,
        Form::Page => sheet.page()?.into_bytes(),
        #[cfg(feature = "paper")]
        Form::Pdf => sheet.pdf()?,
    };
    match &args.to {
        Some(file) => {
            fs::write(file, written).with_context(|| format!("cannot write {}", file.display()))
        }
        None => Ok(Page::open().write_all(&written)?),
    }
}

/// From the running service, or from the store itself.
fn sheet(path: &Path, order: SheetOrder) -> anyhow::Result<Sheet> {
    let config = config(path)?;
    if let Some(mut control) = Control::connect(&config.store.folder)? {
        return Ok(control.print(&order)?);
    }
    let now = Clock::System.now();
    let mut engine = setup::open_engine(&config, now)?;
    let told = engine.handle(vec![Input::Print(order)], now)?.pop();
    let sheet = told.and_then(|told| told.sheet);
    sheet
        .context("the engine says nothing of the sheet")?
        .map_err(|why| anyhow!(why))
}
