//! The disk fills up: new texts are told to come later, and nothing that was acknowledged goes.
//!
//! A small disk in memory is the store's (tmpfs, so this needs root). Something else fills it.

use std::{fs, io::Write, path::Path, process::Command};

use tempfile::TempDir;

use super::{
    place::{Place, RESERVE_MB},
    provider::Line,
    series::Series,
    service::{Between, Service},
};

/// Room for a store of all the texts of a test, which an idle machine takes most of, the reserve, and
/// something else.
const DISK_MB: u64 = 96;

/// A small disk in memory.
pub(crate) struct Disk {
    folder: TempDir,
}

impl Disk {
    pub(crate) fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let size = format!("size={DISK_MB}m");
        mount(&["-t", "tmpfs", "-o", &size, "tmpfs"], folder.path());
        Self { folder }
    }

    pub(crate) fn path(&self) -> &Path {
        self.folder.path()
    }

    /// From now on nothing can be written to it.
    pub(crate) fn make_read_only(&self) {
        mount(&["-o", "remount,ro"], self.path());
    }

    fn place(&self) -> Place {
        Place::with_store(self.path().join("store"))
    }

    /// Something else takes up all but this much.
    fn fill_up_to(&self, left_mb: u64) {
        let mut ballast = fs::File::create(self.path().join("ballast")).unwrap();
        let chunk = vec![1; 64 * 1024];
        while free(self.path()) > left_mb * 1024 * 1024 {
            if ballast.write_all(&chunk).is_err() {
                // To the last byte, then.
                while ballast.write_all(&[1]).is_ok() {}
                break;
            }
        }
    }

    fn make_room(&self) {
        fs::remove_file(self.path().join("ballast")).unwrap();
    }
}

impl Drop for Disk {
    fn drop(&mut self) {
        let _ = Command::new("umount").arg("-l").arg(self.path()).status();
    }
}

fn mount(arguments: &[&str], at: &Path) {
    let done = Command::new("mount").args(arguments).arg(at).status();
    assert!(done.unwrap().success(), "mount needs root");
}

fn free(folder: &Path) -> u64 {
    let disk = rustix::fs::statvfs(folder).unwrap();
    disk.f_bavail * disk.f_frsize
}

#[track_caller]
fn health(service: &Service) -> (u16, String) {
    Line::open(service.address).unwrap().health().unwrap()
}

/// Below the reserve, and with the last byte gone: refused, healthy again by itself.
#[test]
fn below_the_reserve_texts_are_refused_until_there_is_room() {
    for left_mb in [RESERVE_MB - 1, 0] {
        let disk = Disk::new();
        let mut series = Series::new(left_mb, disk.place());
        series.place.load_roll();
        let mut service = Service::run(&series.place);
        series.ledger.write(20, &mut series.chance);
        assert_eq!(series.deliver(&service), 0);
        assert_eq!(health(&service).0, 200);

        disk.fill_up_to(left_mb);
        series.ledger.write(20, &mut series.chance);
        let before = series.ledger.acknowledged();
        assert!(series.deliver(&service) > 0);
        assert_eq!(series.ledger.acknowledged(), before, "nothing new is taken");
        let (status, why) = health(&service);
        assert_eq!(status, 503);
        assert!(why.contains("less than the reserve of 16 MiB"), "{why}");
        series.judge().unwrap();

        disk.make_room();
        // Without a text: the service looks by itself.
        assert!(service.wait_for("there is room on the disk again"));
        assert_eq!(health(&service).0, 200);
        assert_eq!(series.deliver(&service), 0);
        assert!(series.ledger.waiting().is_empty());
        let ended = service.stop();
        assert!(ended.status.success(), "{ended:?}");
        let refusals = ended
            .log
            .iter()
            .filter(|line| line.contains("new work is refused"));
        assert_eq!(refusals.count(), 1, "said once: {:?}", ended.log);
        series.judge().unwrap();
    }
}

/// Something else fills the disk faster than the service can look, at different moments.
#[test]
fn a_disk_that_fills_up_under_load_loses_nothing() {
    let disk = Disk::new();
    let mut series = Series::new(5, disk.place());
    series.place.load_roll();
    for round in 0..20 {
        series.ledger.write(200, &mut series.chance);
        let service = match Service::start(&series.place, &Between::Nothing) {
            Ok(service) => service,
            Err(ended) => panic!("round {round}: it does not start: {ended:?}"),
        };
        let delivery = series.begin(&service);
        let mut news = Vec::new();
        for _ in 0..series.chance.below(60) {
            news.extend(delivery.news.recv());
        }
        disk.fill_up_to(0);
        news.extend(delivery.finish());
        series.note(news);
        // It may still be there, refusing, or have ended because a commit failed.
        service.kill();
        // A start on a full disk works or fails; either way it spoils nothing.
        if let Ok(service) = Service::start(&series.place, &Between::Nothing) {
            service.kill();
        }
        disk.make_room();
        series
            .judge()
            .unwrap_or_else(|problem| panic!("round {round}: {problem}"));
    }
    let service = Service::run(&series.place);
    let later = series.deliver(&service);
    assert_eq!(later, 0, "{:?}", health(&service));
    assert!(series.ledger.waiting().is_empty());
    series.judge().unwrap();
}
