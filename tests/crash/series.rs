//! One store through many rounds, each of which ends in some bad way.

use std::{env, fs, path::Path};

use super::{
    chance::Chance,
    ledger::Ledger,
    place::Place,
    provider::{Delivery, News},
    service::Service,
    verdict::judge,
};

/// Rounds on one store before the next one begins. Later rounds have an old store.
const ROUNDS_PER_STORE: u64 = 20;

/// Connections of the provider.
pub(crate) const CONNECTIONS: usize = 8;

/// How many rounds a random test has.
pub(crate) fn rounds(usual: u64) -> u64 {
    number("BUDWOOD_ROUNDS").unwrap_or(usual)
}

fn number(variable: &str) -> Option<u64> {
    let text = env::var(variable).ok()?;
    Some(text.parse().expect("a whole number"))
}

/// Runs a test's rounds; a failure names what repeats it.
pub(crate) fn run(
    test: &str,
    rounds: u64,
    settle: impl Fn(u64) -> Place,
    round: impl Fn(&mut Series) -> Result<(), String>,
) {
    let seeds = match number("BUDWOOD_SEED") {
        Some(seed) => seed..seed + 1,
        None => 1..1 + rounds.div_ceil(ROUNDS_PER_STORE),
    };
    let mut tally = 0;
    for seed in seeds {
        let mut series = Series::new(seed, settle(seed));
        for number in 1..=ROUNDS_PER_STORE {
            let result = round(&mut series).and_then(|()| series.judge());
            if let Err(problem) = result {
                panic!(
                    "round {number} of seed {seed}: {problem}\nit comes again with: \
                     BUDWOOD_SEED={seed} cargo test -p budwood --test crash {test}"
                );
            }
        }
        tally += series.ledger.acknowledged();
    }
    assert!(tally > 0, "no text was ever acknowledged");
    eprintln!("{test}: {tally} texts acknowledged, none lost, none twice");
}

/// One store, the provider's book, and a row of random numbers.
pub(crate) struct Series {
    pub(crate) place: Place,
    pub(crate) ledger: Ledger,
    pub(crate) chance: Chance,
}

impl Series {
    /// Begins with this store.
    pub(crate) fn new(seed: u64, place: Place) -> Self {
        Self {
            place,
            ledger: Ledger::default(),
            chance: Chance::new(seed),
        }
    }

    /// Brings everything that waits, until it is through or the service is gone. Gives how many
    /// texts were told "later".
    pub(crate) fn deliver(&mut self, service: &Service) -> usize {
        let delivery = Delivery::start(service.address, &self.ledger.waiting(), CONNECTIONS);
        let news = delivery.finish();
        self.note(news)
    }

    /// Begins to bring everything that waits.
    pub(crate) fn begin(&self, service: &Service) -> Delivery {
        Delivery::start(service.address, &self.ledger.waiting(), CONNECTIONS)
    }

    /// Notes what was told, and gives how many texts were told "later".
    pub(crate) fn note(&mut self, news: Vec<News>) -> usize {
        let mut later = 0;
        for one in news {
            match one {
                News::Acknowledged(id) => self.ledger.acknowledge(&id),
                News::Later(status) => {
                    assert_eq!(status, 503, "what is not taken is told to come later");
                    later += 1;
                }
            }
        }
        later
    }

    /// Compares a copy of the store with the book: the next round starts from what the crash
    /// left, not from what this opening mended.
    pub(crate) fn judge(&self) -> Result<(), String> {
        if !self.place.store().exists() {
            return match self.ledger.acknowledged() {
                0 => Ok(()),
                lost => Err(format!("{lost} acknowledged texts, and no store")),
            };
        }
        let copy = tempfile::tempdir().unwrap();
        copy_folder(self.place.store(), copy.path());
        judge(copy.path(), &self.ledger)
    }
}

/// Copies a folder with all that is in it.
pub(crate) fn copy_folder(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let path = entry.unwrap().path();
        let target = to.join(path.file_name().unwrap());
        if path.is_dir() {
            copy_folder(&path, &target);
        } else if path.is_file() {
            // The control socket stays behind.
            fs::copy(&path, &target).unwrap();
        }
    }
}
