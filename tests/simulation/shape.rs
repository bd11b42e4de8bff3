//! How large a valley is, how long it lives, and how often what goes wrong.

/// The shape of a valley. Rates are "once in so many".
#[derive(Clone, Debug)]
pub(super) struct Shape {
    pub(super) farmers: u32,
    pub(super) groups: usize,
    pub(super) days: u64,
    /// It ends after so many calls of the engine, however few days that took.
    pub(super) steps: u64,
    /// Days between two texts that somebody sends of their own accord.
    pub(super) quiet: u32,
    /// Calls of the engine for each power cut, before or after the write.
    pub(super) cut: u32,
    /// Days for each time that the provider takes nothing for long.
    pub(super) outage: u32,
    /// Days for each time that somebody sets the clock wrong.
    pub(super) clock: u32,
    /// Days for each copy of the store.
    pub(super) copy: u32,
    /// Days for each loss of the disk, once there is a copy.
    pub(super) loss: u32,
    /// Days between two questions of an adviser for each group.
    pub(super) ask: u32,
    /// Days between two looks at the whole store.
    pub(super) whole: u64,
    pub(super) on: On,
}

/// Where the store is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum On {
    Memory,
    Folder,
}

impl Shape {
    /// Farmers for six years. Every answer of an adviser looks ahead for each stand, so a larger valley
    /// takes long.
    pub(super) fn large(farmers: u64) -> Self {
        Self {
            farmers: u32::try_from(farmers).unwrap_or(u32::MAX),
            groups: 3,
            days: 6 * 365 + 2,
            steps: u64::MAX,
            quiet: 14,
            cut: 12_000,
            outage: 20,
            clock: 40,
            copy: 120,
            loss: 400,
            ask: 21,
            whole: 365,
            on: On::Memory,
        }
    }

    /// A few farmers and every kind of trouble, for so many steps.
    pub(super) fn small(steps: u64) -> Self {
        Self {
            farmers: 5,
            groups: 2,
            days: 20 * 365,
            steps,
            quiet: 8,
            cut: 40,
            outage: 10,
            clock: 15,
            copy: 10,
            loss: 25,
            ask: 4,
            whole: 90,
            on: On::Memory,
        }
    }

    /// Some farmers on the real store, which waits for the disk at each step.
    pub(super) fn on_disk() -> Self {
        Self {
            farmers: 12,
            steps: 2_500,
            cut: 80,
            on: On::Folder,
            ..Self::small(0)
        }
    }
}
