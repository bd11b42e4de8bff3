//! Whether somebody's hands are enough for the work that is due.

/// A job that is due: the days it takes, and the days left to do it in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Work {
    pub(super) takes: f64,
    pub(super) left: i64,
}

/// So many days are left for a job that is late already: it is done this week.
const LATE_LEFT_DAYS: i64 = 7;

/// Whether the jobs cannot all be done in time, the most pressing first and every day worked.
pub(super) fn is_short(work: &[Work]) -> bool {
    let mut work = work.to_vec();
    work.sort_by_key(|job| job.left);
    let mut taken = 0.0;
    work.iter().any(|job| {
        taken += job.takes;
        let left = u32::try_from(job.left.max(LATE_LEFT_DAYS)).unwrap_or(u32::MAX);
        taken > f64::from(left)
    })
}

#[cfg(test)]
mod tests {
    use super::{Work, is_short};

    fn short(jobs: &[(f64, i64)]) -> bool {
        let work: Vec<Work> = jobs
            .iter()
            .map(|(takes, left)| Work {
                takes: *takes,
                left: *left,
            })
            .collect();
        is_short(&work)
    }

    /// Worked by hand: 6 and 5 days of work are too much for 10 days, and enough for 11.
    #[test]
    fn work_is_compared_with_the_days_before_each_deadline() {
        assert!(!short(&[]));
        assert!(short(&[(6.0, 10), (5.0, 10)]));
        assert!(!short(&[(6.0, 10), (5.0, 11)]));
        assert!(short(&[(1.0, 30), (12.5, 12)]), "the first deadline counts");
        assert!(!short(&[(7.0, -40)]));
        assert!(
            short(&[(7.5, -40)]),
            "late work waits no longer than a week"
        );
    }
}
