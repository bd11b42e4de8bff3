//! The table of measures, with the target beside each.

use crate::{judge::Tally, rates::Level};

/// A measure in percent, and the target that it must not pass.
#[derive(Clone, Copy)]
pub(crate) struct Measure {
    pub(crate) name: &'static str,
    pub(crate) of: fn(&Tally) -> (usize, usize),
    /// By level: clean, typical, heavy; none where nothing is demanded.
    pub(crate) target: [Option<f64>; 3],
    /// More is better.
    pub(crate) at_least: bool,
}

const fn same(target: f64) -> [Option<f64>; 3] {
    [Some(target), Some(target), Some(target)]
}

/// What is measured, in the order of the table.
pub(crate) const MEASURES: [Measure; 13] = [
    Measure {
        name: "first",
        of: |tally| (tally.right, tally.marked_record),
        target: [Some(99.5), Some(97.0), Some(88.0)],
        at_least: true,
    },
    Measure {
        name: "wrong",
        of: |tally| (tally.wrong, tally.data),
        target: [Some(0.2), Some(0.2), Some(0.45)],
        at_least: false,
    },
    Measure {
        name: "w.slot",
        of: |tally| (tally.stored_wrong, tally.stored),
        target: [Some(0.5), Some(0.5), None],
        at_least: false,
    },
    Measure {
        name: "lost",
        of: |tally| (tally.lost, tally.data),
        target: [None, None, None],
        at_least: false,
    },
    Measure {
        name: "clarif",
        of: |tally| (tally.clarified, tally.marked_record),
        target: [Some(4.0), Some(4.0), None],
        at_least: false,
    },
    Measure {
        name: "needl",
        of: |tally| (tally.needless, tally.marked_record),
        target: [Some(2.0), Some(2.0), None],
        at_least: false,
    },
    Measure {
        name: "missed",
        of: |tally| (tally.missed, tally.marked_question),
        target: [Some(1.0), Some(1.0), None],
        at_least: false,
    },
    Measure {
        name: "f.acc",
        of: |tally| (tally.false_accepts, tally.negatives),
        target: same(0.01),
        at_least: false,
    },
    Measure {
        name: "unwant",
        of: |tally| (tally.unwanted, tally.marked_quiet),
        target: same(0.1),
        at_least: false,
    },
    Measure {
        name: "correct",
        of: |tally| (tally.exact, tally.corrections),
        target: same(99.0),
        at_least: true,
    },
    Measure {
        name: "talk",
        of: |tally| (tally.talk_right, tally.talk),
        target: [None, None, None],
        at_least: true,
    },
    Measure {
        name: "held",
        of: |tally| (tally.held_wrong, tally.held),
        target: same(0.0),
        at_least: false,
    },
    Measure {
        name: "slips",
        of: |tally| (tally.slips_caught, tally.slips_seen),
        target: same(90.0),
        at_least: true,
    },
];

impl Measure {
    /// The value in percent; none where there was nothing to measure.
    #[expect(clippy::cast_precision_loss, reason = "counts of texts are small")]
    pub(crate) fn value(&self, tally: &Tally) -> Option<f64> {
        let (part, whole) = (self.of)(tally);
        (whole > 0).then(|| part as f64 * 100.0 / whole as f64)
    }

    pub(crate) fn target(&self, level: Level) -> Option<f64> {
        let [clean, typical, heavy] = self.target;
        match level {
            Level::Clean => clean,
            Level::Typical => typical,
            Level::Heavy => heavy,
        }
    }

    pub(crate) fn is_missed(&self, tally: &Tally, level: Level) -> bool {
        match (self.value(tally), self.target(level)) {
            (Some(value), Some(target)) if self.at_least => value < target,
            (Some(value), Some(target)) => value > target,
            _ => false,
        }
    }
}

/// One cell of the table: a language at a level.
pub(crate) struct Cell {
    pub(crate) language: &'static str,
    pub(crate) level: Level,
    pub(crate) tally: Tally,
}

/// The table as text; a missed target is marked with a star.
pub(crate) fn table(cells: &[Cell]) -> String {
    let mut page = format!("{:<9} {:<7} {:>6}", "language", "level", "texts");
    for measure in MEASURES {
        page += &format!(" {:>8}", measure.name);
    }
    page += "   (% of; * misses its target)\n";
    for cell in cells {
        page += &format!(
            "{:<9} {:<7} {:>6}",
            cell.language,
            cell.level.name(),
            cell.tally.reports
        );
        for measure in MEASURES {
            let star = if measure.is_missed(&cell.tally, cell.level) {
                '*'
            } else {
                ' '
            };
            page += &match measure.value(&cell.tally) {
                Some(value) => format!(" {value:>7.2}{star}"),
                None => format!(" {:>8}", "-"),
            };
        }
        page.push('\n');
    }
    for level in Level::ALL {
        page += &format!("{:<9} {:<7} {:>6}", "target", level.name(), "");
        for measure in MEASURES {
            page += &match measure.target(level) {
                Some(target) => format!(" {target:>7.2} "),
                None => format!(" {:>8}", "-"),
            };
        }
        page.push('\n');
    }
    page
}
