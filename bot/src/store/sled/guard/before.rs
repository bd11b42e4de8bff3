//! What stood in the folder before an attempt to open it, so that a refusal leaves it so.

use std::{
    fs, io,
    path::{Path, PathBuf},
};

use super::{
    ASIDE, files,
    log::{LOG, Log},
    name,
};

/// The folder among what was set aside, empty while nothing is being opened. What an opening
/// that was cut off has left in it is replaced.
const BEFORE: &str = "before";

/// Copies of the files of a store, of its log only what is at risk.
pub(super) struct Before {
    folder: PathBuf,
    copies: PathBuf,
    log: Option<Log>,
}

impl Before {
    /// Copies them, a log no longer than this as a whole.
    pub(super) fn keep(folder: &Path, whole: u64) -> io::Result<Self> {
        let mut before = Self {
            folder: folder.to_owned(),
            copies: folder.join(ASIDE).join(BEFORE),
            log: None,
        };
        match before.copy(whole) {
            Ok(()) => Ok(before),
            Err(error) => {
                before.forget()?;
                Err(error)
            }
        }
    }

    fn copy(&mut self, whole: u64) -> io::Result<()> {
        self.forget()?;
        let all = files(&self.folder)?;
        if !all.is_empty() {
            fs::create_dir_all(&self.copies)?;
        }
        for file in all.iter().filter(|file| !is_log(file)) {
            fs::copy(file, in_folder(&self.copies, file))?;
        }
        self.log = Log::keep(&self.folder, &self.copies, whole)?;
        Ok(())
    }

    /// Copies what is at risk once the snapshots are set aside.
    pub(super) fn keep_rest(&mut self) -> io::Result<()> {
        self.log.as_mut().map_or(Ok(()), Log::keep_rest)
    }

    /// The files stand as they stood; what is new goes.
    pub(super) fn put_back(self) -> io::Result<()> {
        if let Some(log) = &self.log {
            log.put_back()?;
        }
        for file in files(&self.folder)? {
            if !in_folder(&self.copies, &file).exists() {
                fs::remove_file(file)?;
            }
        }
        for copy in files(&self.copies)?.iter().filter(|file| !is_log(file)) {
            fs::rename(copy, in_folder(&self.folder, copy))?;
        }
        self.forget()
    }

    /// The copies are not needed.
    pub(super) fn forget(&self) -> io::Result<()> {
        files(&self.copies)?.iter().try_for_each(fs::remove_file)
    }
}

fn is_log(file: &Path) -> bool {
    name(file) == Some(LOG)
}

fn in_folder(folder: &Path, file: &Path) -> PathBuf {
    folder.join(file.file_name().unwrap_or_default())
}
