//! Writes instants as chrono does, but in one piece: chrono gives serde a letter at a time, which
//! was a sixth of the time of a commit.

use chrono::{DateTime, SecondsFormat, Utc};
use serde::{Serialize, Serializer};

/// An instant.
pub(super) fn one<S: Serializer>(at: &DateTime<Utc>, to: S) -> Result<S::Ok, S::Error> {
    Whole(at).serialize(to)
}

/// An instant, or none.
pub(super) fn maybe<S: Serializer>(at: &Option<DateTime<Utc>>, to: S) -> Result<S::Ok, S::Error> {
    at.as_ref().map(Whole).serialize(to)
}

/// Several instants.
pub(super) fn all<S: Serializer>(all: &[DateTime<Utc>], to: S) -> Result<S::Ok, S::Error> {
    to.collect_seq(all.iter().map(Whole))
}

struct Whole<'a>(&'a DateTime<Utc>);

impl Serialize for Whole<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(&self.0.to_rfc3339_opts(SecondsFormat::AutoSi, true))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn instants_are_written_as_chrono_writes_them() {
        for (seconds, nanos) in [
            (0, 0),
            (1_790_000_000, 1_000_000),
            (-1, 999_999_999),
            (5, 10),
        ] {
            let at = DateTime::from_timestamp(seconds, nanos).unwrap();
            assert_eq!(
                serde_json::to_string(&Whole(&at)).unwrap(),
                serde_json::to_string(&at).unwrap()
            );
        }
    }
}
