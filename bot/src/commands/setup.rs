//! `budwood setup`: a configuration, its secrets and the begin of a list of people, from six answers.
//!
//! Each answer is a flag, or is asked for. Nothing that is there already is written over. Secrets and
//! people are for their owner alone; the settings hold neither, and the user of the service, who is
//! another one, must be able to read them. What only a provider knows is left open and named at the
//! end.

mod files;

use std::{
    fs::{self, DirBuilder, OpenOptions, Permissions},
    io::{BufRead, Write},
    os::unix::fs::{OpenOptionsExt, PermissionsExt},
    path::{Path, PathBuf},
};

use anyhow::{Context, bail};
use chrono_tz::Tz;
use clap::{Args, ValueEnum};

use crate::{service::config::Config, words::phone_number};

/// The answers that were given as flags.
#[derive(Args)]
pub struct SetupArgs {
    /// The folder for the files; it is made when it is not there.
    folder: PathBuf,
    /// The country of numbers without a country code: two letters, such as GB.
    #[arg(long)]
    country: Option<String>,
    /// The time zone, such as Asia/Jakarta.
    #[arg(long)]
    zone: Option<String>,
    /// The number or short code that people text to.
    #[arg(long)]
    number: Option<String>,
    /// What carries the texts.
    #[arg(long)]
    gateway: Option<Kind>,
    /// The adviser's name.
    #[arg(long)]
    adviser: Option<String>,
    /// The adviser's phone, which is also told each morning how the service is.
    #[arg(long)]
    phone: Option<String>,
}

/// What carries the texts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(super) enum Kind {
    /// A modem with a SIM on this computer.
    Modem,
    /// An account at a message centre, by SMPP.
    Smpp,
    /// A provider that speaks GSMA OneAPI.
    Oneapi,
    /// Kannel on this computer.
    Kannel,
}

/// All six.
pub(super) struct Answers {
    pub(super) country: String,
    pub(super) zone: Tz,
    pub(super) number: String,
    pub(super) kind: Kind,
    pub(super) adviser: String,
    pub(super) phone: String,
}

/// Asks for what no flag says, writes the files, and says what is left to do.
///
/// # Errors
///
/// When an answer is wrong or missing, or a file is there already or cannot be written.
pub fn run(
    args: &SetupArgs,
    answers: &mut impl BufRead,
    out: &mut impl Write,
) -> anyhow::Result<()> {
    let answers = gather(args, answers, out)?;
    let folder = &args.folder;
    let secrets = files::secrets(answers.kind)?;
    let config = files::config(&answers);
    // What is written can be used: only a provider's own words are missing.
    Config::parse(&config, folder).context("these answers make no configuration")?;
    let all = [
        ("budwood.toml", config, 0o644),
        ("budwood.env", secrets, 0o600),
        ("people.csv", files::people(&answers), 0o600),
    ];
    let taken = |name: &str| folder.join(name).symlink_metadata().is_ok();
    if let Some((name, ..)) = all.iter().find(|(name, ..)| taken(name)) {
        bail!(
            "{} is there already and is left as it is",
            folder.join(name).display()
        );
    }
    if !folder.is_dir() {
        let made = DirBuilder::new().recursive(true).create(folder);
        made.and_then(|()| fs::set_permissions(folder, Permissions::from_mode(0o755)))
            .with_context(|| format!("cannot make {}", folder.display()))?;
    }
    for (name, text, mode) in &all {
        let file = folder.join(name);
        write_new(&file, text, *mode)
            .with_context(|| format!("cannot write {}", file.display()))?;
        writeln!(out, "written: {}", file.display())?;
    }
    write!(out, "\n{}", files::left_to_do(answers.kind, folder))?;
    Ok(())
}

/// For the owner alone until it is whole.
fn write_new(file: &Path, text: &str, mode: u32) -> std::io::Result<()> {
    let mut opened = OpenOptions::new()
        .write(true)
        .create_new(true)
        .mode(0o600)
        .open(file)?;
    opened.write_all(text.as_bytes())?;
    opened.set_permissions(Permissions::from_mode(mode))?;
    opened.sync_all()
}

fn gather(
    args: &SetupArgs,
    answers: &mut impl BufRead,
    out: &mut impl Write,
) -> anyhow::Result<Answers> {
    let mut ask = Ask { answers, out };
    let country = ask.one(&args.country, "--country", "Country, two letters", country)?;
    let zone = ask.one(
        &args.zone,
        "--zone",
        "Time zone, such as Asia/Jakarta",
        zone,
    )?;
    let number = ask.one(
        &args.number,
        "--number",
        "Number or short code that people text to",
        |text| own_number(text, &country),
    )?;
    let kind = args.gateway.map(|kind| files::name_of(kind).to_owned());
    let kind = ask.one(
        &kind,
        "--gateway",
        "What carries the texts: modem, smpp, oneapi or kannel",
        |text| Kind::from_str(text, true),
    )?;
    let adviser = ask.one(&args.adviser, "--adviser", "Adviser's name", name)?;
    let phone = ask.one(&args.phone, "--phone", "Adviser's phone", |text| {
        phone_number::parse(text, &country).map_err(|fault| fault.to_string())
    })?;
    Ok(Answers {
        country,
        zone,
        number,
        kind,
        adviser,
        phone,
    })
}

/// Asks somebody at a terminal, or reads the answers line by line.
struct Ask<'a, R, W> {
    answers: &'a mut R,
    out: &'a mut W,
}

impl<R: BufRead, W: Write> Ask<'_, R, W> {
    /// The answer of the flag, or the first right one that is typed.
    fn one<T>(
        &mut self,
        given: &Option<String>,
        flag: &str,
        question: &str,
        read: impl Fn(&str) -> Result<T, String>,
    ) -> anyhow::Result<T> {
        if let Some(given) = given {
            return read(given).map_err(|why| anyhow::anyhow!("{flag}: {why}"));
        }
        loop {
            write!(self.out, "{question}: ")?;
            self.out.flush()?;
            let mut line = String::new();
            if self.answers.read_line(&mut line)? == 0 {
                bail!("no answer; give it as {flag}");
            }
            match read(line.trim()) {
                Ok(answer) => return Ok(answer),
                Err(why) => writeln!(self.out, "{why}")?,
            }
        }
    }
}

fn country(text: &str) -> Result<String, String> {
    let code = text.to_ascii_uppercase();
    let is_one = phone_number::is_country(&code);
    is_one
        .then_some(code)
        .ok_or_else(|| format!("{text:?} is no country; two letters, such as GB"))
}

fn zone(text: &str) -> Result<Tz, String> {
    let found = text.parse();
    found.map_err(|_| format!("{text:?} is no time zone; write it like Asia/Jakarta"))
}

/// A short code stays as it is.
fn own_number(text: &str, country: &str) -> Result<String, String> {
    let is_short =
        (3..=6).contains(&text.len()) && text.bytes().all(|digit| digit.is_ascii_digit());
    if is_short {
        return Ok(text.to_owned());
    }
    phone_number::parse(text, country).map_err(|fault| fault.to_string())
}

fn name(text: &str) -> Result<String, String> {
    let is_name = !text.is_empty()
        && text.chars().count() <= 60
        && !text.chars().any(|c| c.is_control() || c == '"');
    is_name
        .then(|| text.to_owned())
        .ok_or_else(|| "expected a name of up to 60 letters".to_owned())
}

/// So many random bytes of the system.
fn random<const BYTES: usize>() -> anyhow::Result<[u8; BYTES]> {
    let mut bytes = [0; BYTES];
    let mut source = fs::File::open("/dev/urandom").context("no random numbers")?;
    std::io::Read::read_exact(&mut source, &mut bytes)?;
    Ok(bytes)
}
