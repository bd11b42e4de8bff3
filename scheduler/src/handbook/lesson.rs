//! Short lessons: which piece of work is taught in five steps, and who has been shown it.
//!
//! Deliberately absent: the words, which are texts of the bot, with a source for each step; and figures
//! that differ from calendar to calendar (how high, how large), which the texts of the jobs tell.

use budwood_parser::{Kind, Material};

use crate::words::job::TaskKind;

/// Steps of a lesson.
pub const STEPS: usize = 5;

/// A piece of work that is taught.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lesson {
    /// Choosing plants at the nursery or from the lorry.
    Plants,
    /// Bare stumps and their roots.
    Stumps,
    /// Pits, and filling them.
    Pits,
    /// Planting a bag.
    Planting,
    /// Taking off side shoots.
    Shoots,
    /// Making a tall tree branch.
    Branching,
    /// Measuring girth.
    Girth,
}

impl Lesson {
    /// Every lesson, in the order of a stand's life.
    pub const ALL: [Self; 7] = [
        Self::Plants,
        Self::Stumps,
        Self::Pits,
        Self::Planting,
        Self::Shoots,
        Self::Branching,
        Self::Girth,
    ];

    /// The name in the files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Plants => "plants",
            Self::Stumps => "stumps",
            Self::Pits => "pits",
            Self::Planting => "planting",
            Self::Shoots => "shoots",
            Self::Branching => "branching",
            Self::Girth => "girth",
        }
    }

    /// The work that is shown where this is taught: who came to such a training knows it.
    #[must_use]
    pub const fn shown_as(self) -> Kind {
        match self {
            Self::Plants => Kind::Received,
            Self::Stumps | Self::Planting => Kind::Planted,
            Self::Pits => Kind::HolesDug,
            Self::Shoots => Kind::Pruned,
            Self::Branching => Kind::BranchInduction,
            Self::Girth => Kind::Girth,
        }
    }

    /// The lesson that somebody asks for who names this work, or these plants.
    #[must_use]
    pub fn asked(kind: Option<Kind>, material: Option<Material>) -> Option<Self> {
        match (kind, material) {
            (_, Some(Material::BuddedStump | Material::Stump)) => Some(Self::Stumps),
            (Some(Kind::Replaced), _) => Some(Self::Planting),
            (Some(kind), _) => Self::ALL
                .into_iter()
                .filter(|lesson| *lesson != Self::Stumps)
                .find(|lesson| lesson.shown_as() == kind),
            (None, Some(Material::Polybag | Material::Seedling)) => Some(Self::Plants),
            (None, None) => None,
        }
    }

    /// The lesson for a job.
    #[must_use]
    pub fn of_job(job: TaskKind) -> Option<Self> {
        let of_its_own = [
            (TaskKind::OrderPlants, Self::Plants),
            (TaskKind::FillPits, Self::Pits),
        ];
        let found = of_its_own.into_iter().find(|(other, _)| *other == job);
        let found = found.map(|(_, lesson)| lesson);
        found.or_else(|| Self::asked(job.proven_by(), None))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lesson_is_found_by_its_work_by_its_plants_and_by_its_job() {
        for (kind, material, lesson) in [
            (Some(Kind::Pruned), None, Lesson::Shoots),
            (Some(Kind::Planted), None, Lesson::Planting),
            (Some(Kind::Replaced), None, Lesson::Planting),
            (Some(Kind::Planted), Some(Material::Stump), Lesson::Stumps),
            (None, Some(Material::BuddedStump), Lesson::Stumps),
            (None, Some(Material::Polybag), Lesson::Plants),
        ] {
            assert_eq!(Lesson::asked(kind, material), Some(lesson));
        }
        assert_eq!(Lesson::asked(Some(Kind::Weeded), None), None);
        for (job, lesson) in [
            (TaskKind::OrderPlants, Some(Lesson::Plants)),
            (TaskKind::FillPits, Some(Lesson::Pits)),
            (TaskKind::Backfill, Some(Lesson::Planting)),
            (TaskKind::GirthCensus, Some(Lesson::Girth)),
            (TaskKind::InduceBranching, Some(Lesson::Branching)),
            (TaskKind::Weed, None),
        ] {
            assert_eq!(Lesson::of_job(job), lesson, "{}", job.name());
        }
    }
}
