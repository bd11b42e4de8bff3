//! A backup: a folder with a log and a manifest that says what the log must come to.

use std::{
    fs::{self, DirBuilder, File},
    io::{Read, Write},
    os::unix::fs::DirBuilderExt,
    path::{Path, PathBuf},
};

use anyhow::{Context, bail};
use chrono::{DateTime, NaiveDateTime, Utc};
use serde::{Deserialize, Serialize};

use super::{
    log::{self, Checked},
    source::Source,
};
use crate::words::limits;

/// The version of the manifest.
pub(super) const VERSION: u32 = 1;
const MANIFEST: &str = "manifest.json";
const RECORDS: &str = "records.jsonl";

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Manifest {
    v: u32,
    kind: String,
    body: Body,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Body {
    made_at: DateTime<Utc>,
    files: Vec<Entry>,
}

#[derive(Serialize, Deserialize, PartialEq, Eq)]
#[serde(deny_unknown_fields)]
struct Entry {
    name: String,
    records: u64,
    bytes: u64,
    sha256: String,
}

/// Just enough to know whether the rest can be read.
#[derive(Deserialize)]
struct Version {
    v: u32,
    kind: String,
}

/// The kind in the manifest.
const KIND: &str = "backup";

/// Refuses a folder in which something is.
pub(super) fn refuse_taken(folder: &Path) -> anyhow::Result<()> {
    let is_taken = match fs::read_dir(folder) {
        Ok(mut inside) => inside.next().is_some(),
        Err(_) => fs::symlink_metadata(folder).is_ok(),
    };
    if is_taken {
        bail!(
            "{} is there already and is left as it is; name a new folder for each backup, such as \
             one with the day in its name",
            folder.display()
        );
    }
    Ok(())
}

/// Writes a backup beside its place, and moves it there when it is on the disk.
pub(super) fn write(folder: &Path, source: Source, now: DateTime<Utc>) -> anyhow::Result<u64> {
    let part = log::beside(folder)?;
    let written = write_part(&part, source, now).and_then(|records| {
        refuse_taken(folder)?;
        fs::rename(&part, folder)?;
        log::sync_folder_of(folder)?;
        Ok(records)
    });
    if written.is_err() {
        // What could not be written may not be removable either; the first error says more.
        let _ = remove(&part);
    }
    written.with_context(|| {
        format!(
            "cannot write the backup {}; is there room, and may you write there?",
            folder.display()
        )
    })
}

fn write_part(part: &Path, source: Source, now: DateTime<Utc>) -> anyhow::Result<u64> {
    // One that broke off earlier.
    if part.is_dir() {
        remove(part)?;
    }
    DirBuilder::new().mode(0o700).create(part)?;
    let summary = log::write(&part.join(RECORDS), source)?;
    let records = summary.records;
    let manifest = Manifest {
        v: VERSION,
        kind: KIND.to_owned(),
        body: Body {
            made_at: now,
            files: vec![Entry {
                name: RECORDS.to_owned(),
                records,
                bytes: summary.bytes,
                sha256: summary.sha256,
            }],
        },
    };
    let mut file = log::create(&part.join(MANIFEST))?;
    file.write_all(&serde_json::to_vec_pretty(&manifest)?)?;
    file.write_all(b"\n")?;
    file.sync_all()?;
    File::open(part)?.sync_all()?;
    Ok(records)
}

/// Removes the files that a backup has, and the folder if nothing else is in it.
fn remove(part: &Path) -> std::io::Result<()> {
    for name in [RECORDS, MANIFEST] {
        let file = part.join(name);
        if file.exists() {
            fs::remove_file(file)?;
        }
    }
    fs::remove_dir(part)
}

/// Makes the folder in which several backups are kept, if it is not there.
pub(super) fn prepare(folder: &Path) -> anyhow::Result<()> {
    let made = DirBuilder::new().recursive(true).mode(0o700).create(folder);
    made.with_context(|| format!("cannot make {}", folder.display()))
}

/// How the backups are called that are kept side by side: in the order of time.
const NAME: &str = "budwood-%Y-%m-%dT%H%M%SZ";

/// The place of a backup among others.
pub(super) fn named(folder: &Path, now: DateTime<Utc>) -> PathBuf {
    folder.join(now.format(NAME).to_string())
}

/// Removes the oldest of the backups that were named so. What has another name, or is no backup,
/// stays.
pub(super) fn keep_newest(folder: &Path, keep: usize) -> anyhow::Result<()> {
    let is_ours = |path: &PathBuf| {
        let name = path.file_name().and_then(|name| name.to_str());
        let is_named = name.is_some_and(|name| NaiveDateTime::parse_from_str(name, NAME).is_ok());
        is_named && manifest(path).is_ok()
    };
    let inside = fs::read_dir(folder)?.collect::<Result<Vec<_>, _>>()?;
    let paths = inside.into_iter().map(|entry| entry.path());
    let mut copies: Vec<PathBuf> = paths.filter(is_ours).collect();
    copies.sort();
    let surplus = copies.len().saturating_sub(keep);
    for old in copies.iter().take(surplus) {
        remove(old).with_context(|| format!("cannot remove {}", old.display()))?;
    }
    Ok(())
}

/// Reads a whole backup, and says whether it is good.
pub(super) fn check(folder: &Path) -> anyhow::Result<Checked> {
    let shown = folder.display();
    let entry = manifest(folder).with_context(|| format!("backup {shown}"))?;
    let file = folder.join(RECORDS);
    let size = fs::metadata(&file)
        .with_context(|| format!("cannot read {}", file.display()))?
        .len();
    if size != entry.bytes {
        bail!(
            "{} has {size} bytes, its manifest says {}; it was cut off or changed, use another \
             backup",
            file.display(),
            entry.bytes
        );
    }
    let checked = log::check(&file)?;
    if checked.summary.sha256 != entry.sha256 || checked.summary.records != entry.records {
        bail!(
            "{} is not what its manifest says (SHA-256 or number of records); use another backup",
            file.display()
        );
    }
    Ok(checked)
}

/// What the manifest says of the log.
fn manifest(folder: &Path) -> anyhow::Result<Entry> {
    let mut bytes = Vec::new();
    File::open(folder.join(MANIFEST))
        .and_then(|file| {
            file.take(limits::MANIFEST_BYTES_MAX)
                .read_to_end(&mut bytes)
        })
        .context("cannot read manifest.json; is this the folder of a backup?")?;
    let version: Version =
        serde_json::from_slice(&bytes).context("manifest.json is damaged; use another backup")?;
    if version.kind != KIND || version.v != VERSION {
        bail!(
            "manifest.json is of kind {:?}, version {}; this program knows {KIND:?}, version \
             {VERSION}: use a newer program",
            version.kind,
            version.v
        );
    }
    let manifest: Manifest =
        serde_json::from_slice(&bytes).context("manifest.json is damaged; use another backup")?;
    let files: Result<[Entry; 1], _> = manifest.body.files.try_into();
    match files {
        Ok([entry]) if entry.name == RECORDS => Ok(entry),
        Ok(_) | Err(_) => bail!("manifest.json does not name {RECORDS} alone; use another backup"),
    }
}
