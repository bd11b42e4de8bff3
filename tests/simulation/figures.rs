//! What happened in a run, so that an idle run is no success.

use std::fmt;

/// Counts of a run, or of several.
#[derive(Clone, Debug, Default)]
pub(super) struct Figures {
    pub(super) farm_days: u64,
    pub(super) steps: u64,
    pub(super) texts: usize,
    pub(super) lost: usize,
    pub(super) facts: usize,
    pub(super) warned: usize,
    pub(super) handed: usize,
    pub(super) nudges: usize,
    pub(super) phones_looked_at: usize,
    pub(super) lists: usize,
    pub(super) listed: usize,
    pub(super) cuts: usize,
    pub(super) clocks: usize,
    pub(super) copies: usize,
    pub(super) restores: usize,
    pub(super) releases: usize,
}

impl Figures {
    pub(super) fn farm_years(&self) -> u64 {
        self.farm_days / 365
    }

    pub(super) fn add(&mut self, other: &Self) {
        self.farm_days += other.farm_days;
        self.steps += other.steps;
        self.texts += other.texts;
        self.lost += other.lost;
        self.facts += other.facts;
        self.warned += other.warned;
        self.handed += other.handed;
        self.nudges += other.nudges;
        self.phones_looked_at += other.phones_looked_at;
        self.lists += other.lists;
        self.listed += other.listed;
        self.cuts += other.cuts;
        self.clocks += other.clocks;
        self.copies += other.copies;
        self.restores += other.restores;
        self.releases += other.releases;
    }

    /// Fails unless each of these happened so often.
    #[track_caller]
    pub(super) fn expect(&self, least: &[(&str, u64)]) {
        let text = self.to_string();
        for (name, least) in least {
            let found = text
                .split(", ")
                .find_map(|part| part.strip_suffix(name)?.trim().parse::<u64>().ok())
                .expect("a figure of this name");
            assert!(found >= *least, "hardly any {name}: {text}");
        }
    }
}

impl fmt::Display for Figures {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{} farm-years, {} steps, {} texts in, {} texts lost, {} facts, {} warned blocks, \
             {} texts handed over, {} nudges, {} waiting phones, {} lists, {} late jobs, {} power cuts, \
             {} wrong clocks, {} copies, {} restores, {} releases",
            self.farm_years(),
            self.steps,
            self.texts,
            self.lost,
            self.facts,
            self.warned,
            self.handed,
            self.nudges,
            self.phones_looked_at,
            self.lists,
            self.listed,
            self.cuts,
            self.clocks,
            self.copies,
            self.restores,
            self.releases,
        )
    }
}
