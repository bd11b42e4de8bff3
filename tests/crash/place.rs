//! A folder with a configuration, a roll of an invented valley, and a store.

use std::{
    fmt::Write as _,
    fs,
    net::TcpListener,
    path::{Path, PathBuf},
    process::Command,
};

use tempfile::TempDir;

/// What the provider of the tests proves itself with.
pub(crate) const TOKEN: &str = "only-for-the-rounds";

/// Farmers on the roll, each with one phone and one block. Many, because a phone gets at most
/// five answers in ten minutes, and each answer is checked.
pub(crate) const FARMERS: usize = 300;

/// Free space below which no new work is taken: the smallest that can be set.
pub(crate) const RESERVE_MB: u64 = 16;

/// The program.
pub(crate) fn program() -> Command {
    Command::new(env!("CARGO_BIN_EXE_budwood"))
}

/// The number of a farmer; see `number::is_for_fiction`.
pub(crate) fn number(farmer: usize) -> String {
    format!("+447700900{farmer:03}")
}

/// A folder for one store.
pub(crate) struct Place {
    folder: TempDir,
    store: PathBuf,
}

impl Place {
    /// A place whose store is not made yet.
    pub(crate) fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let store = folder.path().join("store");
        Self { folder, store }
    }

    /// A place whose store lies elsewhere.
    pub(crate) fn with_store(store: PathBuf) -> Self {
        let folder = tempfile::tempdir().unwrap();
        Self { folder, store }
    }

    /// A place with everybody on the roll.
    pub(crate) fn settled() -> Self {
        let place = Self::new();
        place.load_roll();
        place
    }

    /// Takes the roll in.
    pub(crate) fn load_roll(&self) {
        let roll = self.folder.path().join("roll.csv");
        fs::write(&roll, roll_csv()).unwrap();
        let output = program()
            .args(["roll", "load"])
            .arg(&roll)
            .arg("--config")
            .arg(self.config(TcpListener::bind("127.0.0.1:0").unwrap()))
            .output()
            .unwrap();
        assert!(
            output.status.success(),
            "{}",
            String::from_utf8_lossy(&output.stderr)
        );
    }

    /// The folder of the store.
    pub(crate) fn store(&self) -> &Path {
        &self.store
    }

    /// A file beside the store.
    pub(crate) fn beside(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Writes the configuration, for the port of this listener, which is closed then.
    pub(crate) fn config(&self, listener: TcpListener) -> PathBuf {
        let port = listener.local_addr().unwrap().port();
        let file = self.folder.path().join("budwood.toml");
        let text = format!(
            "[store]\nfolder = {:?}\nreserve_mb = {RESERVE_MB}\ncache_mb = 16\n\
             [web]\nlisten = \"127.0.0.1:{port}\"\n[[gateway]]\nname = \"line\"\n\
             kind = \"oneapi\"\n[gateway.in]\nauth = \"bearer\"\n\
             [line]\nname = \"mera\"\nown_number = \"12345\"\ncountry = \"GB\"\n\
             fallback_zone = \"Europe/London\"\n\
             [nudges]\n[languages]\n[calendars]\n[log]\nfilter = \"warn,budwood=info\"\n",
            self.store
        );
        fs::write(&file, text).unwrap();
        file
    }
}

fn roll_csv() -> String {
    let mut roll = "row,group,name,role,phone,language,consent_on,consent_how,adviser,zone,\
                    calendar,block,area,unit,clone\n\
                    group,MERA,,,,,,,Ada Brone,Asia/Jakarta,fao,,,,\n\
                    person,,Ada Brone,adviser,+447700900999,en,2026-09-01,contract,,,,,,,\n"
        .to_owned();
    for farmer in 0..FARMERS {
        writeln!(
            roll,
            "person,MERA,Farmer {farmer},farmer,{},en,2026-09-05,signed sheet,,,,,,,",
            number(farmer)
        )
        .unwrap();
    }
    for farmer in 0..FARMERS {
        writeln!(roll, "block,MERA,Farmer {farmer},,,,,,,,,A,40,ha,PB260").unwrap();
    }
    roll
}
