//! What a disk has left, and what a folder takes of it.

use std::{fs::read_dir, io, path::Path};

/// What this program may still write; the part that only root may use does not count.
pub(crate) fn free_bytes(folder: &Path) -> io::Result<u64> {
    let disk = rustix::fs::statvfs(folder)?;
    Ok(disk.f_bavail.saturating_mul(disk.f_frsize))
}

/// What lies in a folder and in those below it.
pub(super) fn folder_bytes(folder: &Path) -> io::Result<u64> {
    let mut bytes = 0;
    for entry in read_dir(folder)? {
        let entry = entry?;
        let found = entry.metadata()?;
        bytes += if found.is_dir() {
            folder_bytes(&entry.path())?
        } else {
            found.len()
        };
    }
    Ok(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_folder_is_as_large_as_what_is_in_it() {
        let folder = tempfile::tempdir().unwrap();
        std::fs::create_dir(folder.path().join("below")).unwrap();
        std::fs::write(folder.path().join("one"), [0; 1_000]).unwrap();
        std::fs::write(folder.path().join("below/two"), [0; 234]).unwrap();
        assert_eq!(folder_bytes(folder.path()).unwrap(), 1_234);
        assert!(folder_bytes(&folder.path().join("none")).is_err());
    }
}
