//! The parts of sled's log that an opening may write over, copied and put back.
//!
//! The log (`db`) is cut into segments of one size. Each begins with a header: a checksum, the
//! place of the segment in the history, and how far that was stable, the two numbers inverted.
//! Opening reads again what came after the newest snapshot, stops where it finds a tear, and fills
//! all beyond with zeros; so it does with a segment whose header is broken. Nothing older is lost:
//! an older segment is only written over once nothing in it counts any more.

use std::{
    collections::BTreeSet,
    fs::File,
    io, mem,
    os::unix::fs::FileExt,
    path::{Path, PathBuf},
};

use super::{SNAPSHOT, files, name};

/// How sled calls its log.
pub(super) const LOG: &str = "db";

/// Bytes of a segment: sled's default, which this program does not change.
const SEGMENT: u64 = 512 * 1024;

/// Bytes of a segment's header.
const HEADER: usize = 20;

/// A copy of what is at risk in a log.
pub(super) struct Log {
    path: PathBuf,
    copy: PathBuf,
    length: u64,
    /// The place in the history from which on opening reads.
    from: i64,
    /// The segments that are in the copy, by number.
    kept: BTreeSet<u64>,
}

impl Log {
    /// Copies what the next opening may write over, or all of it when it is no longer than this;
    /// `None` where there is no log.
    pub(super) fn keep(folder: &Path, copies: &Path, whole: u64) -> io::Result<Option<Self>> {
        let path = folder.join(LOG);
        if !path.exists() {
            return Ok(None);
        }
        let length = path.metadata()?.len();
        let mut log = Self {
            length,
            from: if length > whole { snapshot(folder)? } else { 0 },
            copy: copies.join(LOG),
            kept: BTreeSet::new(),
            path,
        };
        let from = log.from;
        log.copy(|header| place(header).is_none_or(|place| place >= from))?;
        Ok(Some(log))
    }

    /// Copies the rest, but not what an opening has begun meanwhile: without a snapshot, the next
    /// reads everything.
    pub(super) fn keep_rest(&mut self) -> io::Result<()> {
        let from = mem::replace(&mut self.from, 0);
        self.copy(|header| place(header).is_none_or(|place| place < from))
    }

    fn copy(&mut self, is_at_risk: impl Fn(&[u8]) -> bool) -> io::Result<()> {
        let log = File::open(&self.path)?;
        let copy = File::options()
            .write(true)
            .create(true)
            .truncate(false)
            .open(&self.copy)?;
        let mut header = [0; HEADER];
        for number in 0..self.length.div_ceil(SEGMENT) {
            let header = read(&log, number, &mut header)?;
            if self.kept.contains(&number) || !is_at_risk(header) {
                continue;
            }
            let mut segment = vec![0; segment_len()];
            let segment = read(&log, number, &mut segment)?;
            // Zeros stay zeros whatever sled does.
            if segment.iter().any(|byte| *byte != 0) {
                copy.write_all_at(segment, number * SEGMENT)?;
                self.kept.insert(number);
            }
        }
        Ok(())
    }

    /// The log is as it was, but for segments in which nothing counted.
    pub(super) fn put_back(&self) -> io::Result<()> {
        let log = File::options().read(true).write(true).open(&self.path)?;
        let copy = File::open(&self.copy)?;
        log.set_len(self.length)?;
        for number in 0..self.length.div_ceil(SEGMENT) {
            if self.kept.contains(&number) {
                let mut segment = vec![0; segment_len()];
                let left = usize::try_from(self.length - number * SEGMENT).unwrap_or(usize::MAX);
                segment.truncate(left);
                let segment = read(&copy, number, &mut segment)?;
                log.write_all_at(segment, number * SEGMENT)?;
            } else {
                self.wipe_new(&log, number)?;
            }
        }
        Ok(())
    }

    /// What sled has begun in a free segment would stand for the same place as one that was put
    /// back.
    fn wipe_new(&self, log: &File, number: u64) -> io::Result<()> {
        let mut header = [0; HEADER];
        if place(read(log, number, &mut header)?).is_some_and(|place| place >= self.from) {
            log.write_all_at(&[0; HEADER], number * SEGMENT)?;
        }
        Ok(())
    }
}

fn segment_len() -> usize {
    usize::try_from(SEGMENT).unwrap_or(usize::MAX)
}

/// The first bytes of a segment, as many as there are.
fn read<'a>(file: &File, number: u64, into: &'a mut [u8]) -> io::Result<&'a [u8]> {
    let mut filled = 0;
    while let Some(rest) = into.get_mut(filled..).filter(|rest| !rest.is_empty()) {
        match file.read_at(rest, number * SEGMENT + filled as u64) {
            Ok(0) => break,
            Ok(more) => filled += more,
            Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
            Err(error) => return Err(error),
        }
    }
    Ok(into.get(..filled).unwrap_or_default())
}

/// The place in the history that a segment's header names, if the header is whole.
fn place(header: &[u8]) -> Option<i64> {
    let (checksum, numbers) = header.split_first_chunk::<4>()?;
    let place = i64::from_le_bytes(*numbers.first_chunk()?) ^ i64::MAX;
    let is_whole = crc32fast::hash(numbers) == u32::from_le_bytes(*checksum) ^ u32::MAX;
    (numbers.len() == HEADER - checksum.len() && is_whole).then_some(place)
}

/// The start of the segment at which the newest snapshot ends: its name says where.
fn snapshot(folder: &Path) -> io::Result<i64> {
    let files = files(folder)?;
    let names = files
        .iter()
        .filter_map(|path| name(path)?.strip_prefix(SNAPSHOT));
    let ends = names.filter_map(|name| i64::from_str_radix(name, 16).ok());
    let segment = i64::try_from(SEGMENT).unwrap_or(i64::MAX);
    Ok(ends.max().map_or(0, |end| end / segment * segment))
}
