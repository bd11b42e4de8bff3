//! Whether so many reports are more than usual.

/// The chance of at least so many reports in a time that usually brings `expected` of them, when
/// they come independently of each other (S. D. Poisson, Recherches sur la probabilité, 1837).
pub(super) fn at_least(reports: usize, expected: f64) -> f64 {
    let mut term = libm::exp(-expected);
    let mut fewer = 0.0;
    let mut number = 0.0;
    for _ in 0..reports {
        fewer += term;
        number += 1.0;
        term *= expected / number;
    }
    (1.0 - fewer).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::at_least;

    /// `scipy` 1.17.1, `scipy.stats.poisson.sf(reports - 1, expected)`.
    #[test]
    fn chances_are_as_a_reference_library_has_them() {
        let table = [
            (3, 0.2, 0.001_148_481),
            (3, 1.0, 0.080_301_397),
            (5, 1.0, 0.003_659_847),
            (3, 6.0, 0.938_031_196),
            (1, 0.5, 0.393_469_340),
            (0, 2.0, 1.0),
            (12, 3.5, 0.000_288_992),
        ];
        for (reports, expected, chance) in table {
            let found = at_least(reports, expected);
            assert!(
                (found - chance).abs() < 1e-9,
                "{reports} of {expected}: {found}"
            );
        }
    }
}
