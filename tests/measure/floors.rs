//! What is reached today, and why a target is missed: `floors.toml`.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::{
    rates::Level,
    table::{Cell, MEASURES},
};

/// What one language reaches, by level.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Floors {
    first: [f64; 3],
    wrong: [f64; 3],
    false_accepts: [f64; 3],
}

/// A reason for a measure in all languages, or the reasons of one language by measure.
#[derive(Deserialize)]
#[serde(untagged)]
enum Reason {
    All(String),
    Of(BTreeMap<String, String>),
}

/// The file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Reached {
    languages: BTreeMap<String, Floors>,
    reasons: BTreeMap<String, Reason>,
}

impl Reached {
    pub(crate) fn read() -> Self {
        toml::from_str(include_str!("floors.toml"))
            .unwrap_or_else(|error| panic!("floors.toml: {error}"))
    }

    /// Every target that is missed, one line for a language and a measure, with the reason.
    ///
    /// # Panics
    ///
    /// When a target is missed for which nobody has given a reason.
    pub(crate) fn missed(&self, cells: &[Cell]) -> Vec<String> {
        let mut missed: BTreeMap<(&str, &str), Vec<String>> = BTreeMap::new();
        for cell in cells {
            for measure in MEASURES
                .iter()
                .filter(|one| one.is_missed(&cell.tally, cell.level))
            {
                let (value, target) = (measure.value(&cell.tally), measure.target(cell.level));
                let level = cell.level.name();
                let values = value
                    .zip(target)
                    .map(|(value, target)| format!("{level} {value:.2} for {target:.2}"));
                missed
                    .entry((cell.language, measure.name))
                    .or_default()
                    .extend(values);
            }
        }
        let lines = missed.into_iter().map(|((language, measure), values)| {
            let reason = self.reason(language, measure);
            let reason =
                reason.unwrap_or_else(|| panic!("{language} {measure}: say why in floors.toml"));
            format!("{language} {measure}: {}; {reason}", values.join(", "))
        });
        lines.collect()
    }

    fn reason(&self, language: &str, measure: &str) -> Option<&str> {
        let own = match self.reasons.get(language) {
            Some(Reason::Of(reasons)) => reasons.get(measure).map(String::as_str),
            Some(Reason::All(_)) | None => None,
        };
        let common = || match self.reasons.get(measure) {
            Some(Reason::All(reason)) => Some(reason.as_str()),
            Some(Reason::Of(_)) | None => None,
        };
        own.or_else(common)
    }

    /// Where a cell falls short of what it has reached before.
    pub(crate) fn lost(&self, cell: &Cell) -> Vec<String> {
        let Some(floors) = self.languages.get(cell.language) else {
            return vec![format!("{}: no floors in floors.toml", cell.language)];
        };
        let level = |[clean, typical, heavy]: [f64; 3]| match cell.level {
            Level::Clean => clean,
            Level::Typical => typical,
            Level::Heavy => heavy,
        };
        let bounds = [
            ("first", floors.first),
            ("wrong", floors.wrong),
            ("f.acc", floors.false_accepts),
        ];
        let mut lost = Vec::new();
        for (name, bound) in bounds {
            let measure = MEASURES.iter().find(|measure| measure.name == name);
            let Some(value) = measure.and_then(|measure| measure.value(&cell.tally)) else {
                continue;
            };
            let bound = level(bound);
            let falls = if name == "first" {
                value < bound
            } else {
                value > bound
            };
            if falls {
                let (language, level) = (cell.language, cell.level.name());
                lost.push(format!(
                    "{language} {level} {name}: {value:.2}, was {bound:.2} or better"
                ));
            }
        }
        lost
    }
}
