//! A log: every record as one JSON line, and a last line that says how many there are.
//!
//! `{"v":1,"kind":"end","body":{"records":2,"sha256":"…"}}` ends it; the sum is over all bytes
//! before that line. So a log that was cut off or changed is known without anything beside it.

use std::{
    fs::{self, File},
    io::{self, BufRead, BufReader, BufWriter, Read, Write},
    os::unix::fs::OpenOptionsExt,
    path::{Path, PathBuf},
};

use anyhow::{Context, bail};
use data_encoding::HEXLOWER;
use serde::{Deserialize, Serialize};

use super::source::Source;
use crate::{
    store::{Change, read_line},
    words::limits,
};

/// The version of the last line.
const VERSION: u32 = 1;
/// The kind of the last line.
const END: &str = "end";

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct LastLine {
    v: u32,
    kind: String,
    body: End,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct End {
    records: u64,
    sha256: String,
}

/// A log that was read once and found good.
pub(super) struct Checked {
    pub(super) file: PathBuf,
    pub(super) summary: Summary,
}

/// What a log comes to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Summary {
    pub(super) records: u64,
    pub(super) bytes: u64,
    /// Over the whole file, with its last line.
    pub(super) sha256: String,
}

/// Refuses a file that is there.
pub(super) fn refuse_taken(file: &Path) -> anyhow::Result<()> {
    if fs::symlink_metadata(file).is_ok() {
        bail!(
            "{} is there already and is left as it is; choose another name",
            file.display()
        );
    }
    Ok(())
}

/// Writes a log beside its place, and moves it there when it is on the disk.
pub(super) fn write_new(file: &Path, source: Source) -> anyhow::Result<u64> {
    let part = beside(file)?;
    let written = write(&part, source).and_then(|summary| {
        refuse_taken(file)?;
        fs::rename(&part, file)?;
        sync_folder_of(file)?;
        Ok(summary.records)
    });
    if written.is_err() {
        // What could not be written may not be removable either; the first error says more.
        let _ = fs::remove_file(&part);
    }
    written.with_context(|| {
        format!(
            "cannot write {}; is there room, and may you write there?",
            file.display()
        )
    })
}

/// The name under which something is written before it is whole.
pub(super) fn beside(place: &Path) -> anyhow::Result<PathBuf> {
    let Some(name) = place.file_name() else {
        bail!("{} is not a name for something new", place.display());
    };
    let mut part = name.to_owned();
    part.push(".part");
    Ok(place.with_file_name(part))
}

/// Puts a new name on the disk.
pub(super) fn sync_folder_of(place: &Path) -> io::Result<()> {
    let folder = place
        .parent()
        .filter(|parent| !parent.as_os_str().is_empty());
    File::open(folder.unwrap_or(Path::new(".")))?.sync_all()
}

/// Makes a file for its owner alone: numbers and texts of people are in it.
pub(super) fn create(file: &Path) -> io::Result<File> {
    File::options()
        .write(true)
        .create(true)
        .truncate(true)
        .mode(0o600)
        .open(file)
}

/// Writes a log into this file and puts it on the disk.
pub(super) fn write(file: &Path, mut source: Source) -> anyhow::Result<Summary> {
    let mut out = Summing::new(BufWriter::new(create(file)?));
    let mut records = 0;
    while let Some(lines) = source.next_lines()? {
        for line in lines {
            out.write_all(&line)?;
            out.write_all(b"\n")?;
            records += 1;
        }
    }
    let end = LastLine {
        v: VERSION,
        kind: END.to_owned(),
        body: End {
            records,
            sha256: out.sum(),
        },
    };
    out.write_all(&serde_json::to_vec(&end)?)?;
    out.write_all(b"\n")?;
    out.flush()?;
    let summary = Summary {
        records,
        bytes: out.bytes,
        sha256: out.sum(),
    };
    out.inner
        .into_inner()
        .map_err(io::IntoInnerError::into_error)?
        .sync_all()?;
    Ok(summary)
}

/// Reads a whole log, and says whether it is good.
pub(super) fn check(file: &Path) -> anyhow::Result<Checked> {
    let summary = read(file, &mut |_| Ok(()))?;
    Ok(Checked {
        file: file.to_owned(),
        summary,
    })
}

/// Reads a log and gives its records in parts to `take`.
pub(super) fn read(
    file: &Path,
    take: &mut dyn FnMut(Change) -> anyhow::Result<()>,
) -> anyhow::Result<Summary> {
    let shown = file.display();
    let mut lines = Lines::open(file).with_context(|| format!("cannot read {shown}"))?;
    let mut part = Change::default();
    let mut last_key = Vec::new();
    let mut records = 0;
    loop {
        let at = records + 1;
        let before = lines.input.hash;
        let line = lines
            .next()
            .with_context(|| format!("{shown}, line {at}"))?;
        if let Some(end) = end_of(line) {
            if end.records != records || end.sha256 != hexadecimal(before) {
                bail!("{shown} was changed after it was written; use another copy");
            }
            break;
        }
        let key = read_line(line, &mut part).with_context(|| format!("{shown}, line {at}"))?;
        if key <= last_key {
            bail!("{shown}, line {at}: the record is there twice or not in its place");
        }
        last_key = key;
        records += 1;
        if records % limits::FILL_RECORDS as u64 == 0 {
            take(std::mem::take(&mut part))?;
        }
    }
    take(part)?;
    lines.finish().with_context(|| shown.to_string())?;
    Ok(Summary {
        records,
        bytes: lines.input.bytes,
        sha256: lines.input.sum(),
    })
}

fn end_of(line: &[u8]) -> Option<End> {
    // Each line is asked, so the quick look comes first.
    if !line.starts_with(br#"{"v":1,"kind":"end","#) {
        return None;
    }
    let last: LastLine = serde_json::from_slice(line).ok()?;
    (last.kind == END && last.v == VERSION).then_some(last.body)
}

/// The lines of a log.
struct Lines {
    input: Summing<BufReader<File>>,
    line: Vec<u8>,
}

impl Lines {
    fn open(file: &Path) -> io::Result<Self> {
        Ok(Self {
            input: Summing::new(BufReader::new(File::open(file)?)),
            line: Vec::new(),
        })
    }

    fn next(&mut self) -> anyhow::Result<&[u8]> {
        self.line.clear();
        (&mut self.input.inner)
            .take(limits::LOG_LINE_BYTES_MAX)
            .read_until(b'\n', &mut self.line)?;
        self.input.count(&self.line);
        let Some(line) = self.line.strip_suffix(b"\n") else {
            bail!("the file is cut off here; use another copy");
        };
        if let Err(error) = serde_json::from_slice::<serde::de::IgnoredAny>(line) {
            bail!("not JSON ({error}); the file is damaged, use another copy");
        }
        Ok(line)
    }

    fn finish(&mut self) -> anyhow::Result<()> {
        if !self.input.inner.fill_buf()?.is_empty() {
            bail!("there is more after the last line; use another copy");
        }
        Ok(())
    }
}

/// Counts and sums up what goes through it.
struct Summing<T> {
    inner: T,
    bytes: u64,
    hash: hmac_sha256::Hash,
}

impl<T> Summing<T> {
    fn new(inner: T) -> Self {
        Self {
            inner,
            bytes: 0,
            hash: hmac_sha256::Hash::new(),
        }
    }

    fn count(&mut self, bytes: &[u8]) {
        self.bytes += bytes.len() as u64;
        self.hash.update(bytes);
    }

    fn sum(&self) -> String {
        hexadecimal(self.hash)
    }
}

/// A sum, SHA-256 (FIPS 180-4), in hexadecimal digits.
fn hexadecimal(hash: hmac_sha256::Hash) -> String {
    HEXLOWER.encode(&hash.finalize())
}

impl<T: Write> Write for Summing<T> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let written = self.inner.write(bytes)?;
        self.count(bytes.get(..written).unwrap_or_default());
        Ok(written)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.inner.flush()
    }
}
