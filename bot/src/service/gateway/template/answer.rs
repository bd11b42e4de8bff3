//! What a provider's answer means, and where the id of a text is in it.

use budwood_parser::table::{Table, TableError};
use regex_lite::Regex;
use serde_json::Value;

use crate::{
    service::value,
    words::{bounded, limits},
};

/// Which answers mean what. The first that fits counts.
#[derive(Clone, Debug)]
pub(super) struct Meanings {
    refused: Option<Fits>,
    wait: Option<Fits>,
    accepted: Fits,
    id: Source,
    code: Source,
}

/// What an answer means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Meaning {
    Accepted,
    Wait,
    Refused,
    /// Nothing of it is set, so the status decides as usual.
    Unlisted,
    /// The status is one of success, and the body is not.
    Unclear,
}

/// A status and a pattern for the body; both must fit where both are there.
#[derive(Clone, Debug, Default)]
struct Fits {
    statuses: Vec<u32>,
    body: Option<Regex>,
}

/// Where a value is in an answer.
#[derive(Clone, Debug)]
enum Source {
    Nowhere,
    /// The first group of a pattern, or all of it.
    Pattern(Regex),
    /// RFC 6901.
    Json(String),
    Header(String),
}

/// An answer, taken apart.
pub(super) struct Answer {
    pub(super) status: u16,
    pub(super) headers: Vec<(String, String)>,
    pub(super) body: Vec<u8>,
}

impl Meanings {
    /// Reads what `[gateway.out]` says of them.
    pub(super) fn read(table: &Table<'_>) -> Result<Self, TableError> {
        let source = |key: &str| value::maybe(table, key, Source::parse);
        Ok(Self {
            refused: table.table("refused", Fits::read)?,
            wait: table.table("wait", Fits::read)?,
            accepted: table.table("accepted", Fits::read)?.unwrap_or_default(),
            id: source("id")?.unwrap_or(Source::Nowhere),
            code: source("code")?.unwrap_or(Source::Nowhere),
        })
    }

    pub(super) fn of(&self, answer: &Answer) -> Meaning {
        let fits = |fits: &Option<Fits>| fits.as_ref().is_some_and(|fits| fits.fit(answer));
        let is_success = (200..300).contains(&answer.status);
        let accepted = &self.accepted;
        let is_usual = accepted.statuses.is_empty() && !is_success;
        if fits(&self.refused) {
            Meaning::Refused
        } else if fits(&self.wait) {
            Meaning::Wait
        } else if !is_usual && accepted.fit(answer) {
            Meaning::Accepted
        } else if is_success {
            Meaning::Unclear
        } else {
            Meaning::Unlisted
        }
    }

    /// The provider's id of the text.
    pub(super) fn id(&self, answer: &Answer) -> Option<String> {
        let id = self.id.value(answer)?;
        (!id.is_empty() && id.len() <= limits::GATEWAY_ID_BYTES_MAX).then_some(id)
    }

    /// The provider's word for a refusal.
    pub(super) fn code(&self, answer: &Answer) -> Option<String> {
        bounded::word(&self.code.value(answer)?, limits::REFUSAL_CODE_BYTES_MAX)
    }
}

impl Fits {
    fn read(table: &Table<'_>) -> Result<Self, TableError> {
        let statuses = table.numbers("status")?;
        let is_status = |found: &f64| found.fract() == 0.0 && (100.0..600.0).contains(found);
        if !statuses.iter().all(is_status) {
            return Err(table.error("status", "expected HTTP statuses such as 200"));
        }
        let body = value::maybe(table, "body", regex)?;
        if statuses.is_empty() && body.is_none() {
            return Err(table.error("status", "is missing, and body too: give one or both"));
        }
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "whole numbers from 100 to 599"
        )]
        let statuses = statuses.into_iter().map(|status| status as u32).collect();
        Ok(Self { statuses, body })
    }

    fn fit(&self, answer: &Answer) -> bool {
        let of_status = self.statuses.is_empty() || self.statuses.contains(&answer.status.into());
        of_status
            && self
                .body
                .as_ref()
                .is_none_or(|body| body.is_match(&String::from_utf8_lossy(&answer.body)))
    }
}

impl Source {
    fn parse(written: &str) -> Result<Self, String> {
        if written == "none" {
            Ok(Self::Nowhere)
        } else if let Some(pattern) = written.strip_prefix("regex:") {
            regex(pattern).map(Self::Pattern)
        } else if let Some(pointer) = written.strip_prefix("json:") {
            json_pointer(pointer).map(Self::Json)
        } else if let Some(name) = written.strip_prefix("header:") {
            Ok(Self::Header(name.to_ascii_lowercase()))
        } else {
            Err(format!(
                "expected \"json:/a/b\", \"regex:…\", \"header:Name\" or \"none\", found {written:?}"
            ))
        }
    }

    fn value(&self, answer: &Answer) -> Option<String> {
        match self {
            Self::Nowhere => None,
            Self::Pattern(pattern) => {
                let body = String::from_utf8_lossy(&answer.body);
                let found = pattern.captures(&body)?;
                let found = found.get(1).or_else(|| found.get(0))?;
                Some(found.as_str().trim().to_owned())
            }
            Self::Json(pointer) => {
                let body: Value = serde_json::from_slice(&answer.body).ok()?;
                scalar(body.pointer(pointer)?)
            }
            Self::Header(name) => {
                let mut headers = answer.headers.iter();
                let (_, value) = headers.find(|(known, _)| known == name)?;
                let path = value.split(['?', '#']).next()?.trim_end_matches('/');
                // Of an address the last part is the id.
                path.rsplit('/').next().map(str::to_owned)
            }
        }
    }
}

/// A JSON value that is one word or number.
pub(super) fn scalar(value: &Value) -> Option<String> {
    match value {
        Value::String(text) => Some(text.clone()),
        Value::Number(number) => Some(number.to_string()),
        Value::Bool(flag) => Some(flag.to_string()),
        Value::Null | Value::Array(_) | Value::Object(_) => None,
    }
}

/// A pointer as in RFC 6901.
pub(super) fn json_pointer(found: &str) -> Result<String, String> {
    if found.starts_with('/') {
        Ok(found.to_owned())
    } else {
        Err(format!(
            "expected a JSON pointer such as \"/a/0/b\", found {found:?}"
        ))
    }
}

fn regex(found: &str) -> Result<Regex, String> {
    Regex::new(found).map_err(|error| format!("expected a regular expression: {error}"))
}

#[cfg(test)]
mod tests {
    use budwood_parser::table::read_file;

    use super::*;

    fn meanings(toml: &str) -> Result<Meanings, TableError> {
        read_file(toml, Meanings::read)
    }

    fn answer(status: u16, body: &str) -> Answer {
        Answer {
            status,
            headers: vec![("location".into(), "https://a.example/x/id-7?y".into())],
            body: body.as_bytes().to_vec(),
        }
    }

    #[test]
    fn the_first_that_fits_counts() {
        let set = meanings(
            "accepted = { status = [200, 409], body = '\"ok\":true' }\nwait = { body = \"busy\" }\n\
             refused = { status = [400, 200], body = \"blacklist|invalid\" }",
        )
        .unwrap();
        for (status, body, meaning) in [
            (200, "{\"ok\":true}", Meaning::Accepted),
            (409, "{\"ok\":true}", Meaning::Accepted),
            (200, "{\"ok\":false}", Meaning::Unclear),
            (200, "{\"ok\":true, invalid", Meaning::Refused),
            (500, "too busy", Meaning::Wait),
            (400, "what?", Meaning::Unlisted),
            (500, "", Meaning::Unlisted),
        ] {
            assert_eq!(set.of(&answer(status, body)), meaning, "{status} {body}");
        }
        let usual = meanings("").unwrap();
        assert_eq!(usual.of(&answer(204, "")), Meaning::Accepted);
        assert_eq!(usual.of(&answer(400, "")), Meaning::Unlisted);
        let by_body = meanings("accepted = { body = \"ok\" }").unwrap();
        assert_eq!(by_body.of(&answer(500, "ok")), Meaning::Unlisted);
    }

    #[test]
    fn the_id_is_found_where_it_is_said_to_be() {
        for (source, body, id) in [
            (
                "json:/messages/0/id",
                r#"{"messages":[{"id":"m-7"}]}"#,
                Some("m-7"),
            ),
            ("json:/id", r#"{"id":77}"#, Some("77")),
            ("json:/id", r#"{"id":null}"#, None),
            ("json:/id", "<html>", None),
            ("regex:^OK ([0-9a-f]+)$", "OK 7f", Some("7f")),
            ("regex:[0-9]+", "id 12", Some("12")),
            ("regex:^OK (.*)$", "NO 1", None),
            ("header:Location", "", Some("id-7")),
            ("none", "7", None),
        ] {
            let set = meanings(&format!("id = '{source}'")).unwrap();
            assert_eq!(set.id(&answer(200, body)).as_deref(), id, "{source}");
        }
        let set = meanings("id = 'regex:.*'").unwrap();
        let long = "x".repeat(limits::GATEWAY_ID_BYTES_MAX + 1);
        assert_eq!(set.id(&answer(200, &long)), None);
    }

    #[test]
    fn a_code_is_one_word_and_no_number_of_a_phone() {
        let set = meanings("code = 'json:/code'").unwrap();
        for (code, kept) in [
            ("BLACKLISTED", true),
            ("21", true),
            ("+447700900123", false),
            ("447700900123", false),
            ("no such one", false),
        ] {
            let body = serde_json::json!({ "code": code }).to_string();
            assert_eq!(set.code(&answer(400, &body)).is_some(), kept, "{code}");
        }
    }

    #[test]
    fn what_cannot_be_looked_for_is_refused() {
        for (toml, why) in [
            ("id = 'messages'", "json:/a/b"),
            ("id = 'json:a'", "JSON pointer"),
            ("id = 'regex:('", "regular expression"),
            ("accepted = { status = [20] }", "HTTP statuses"),
            ("wait = {}", "give one or both"),
        ] {
            let error = meanings(toml).unwrap_err().to_string();
            assert!(error.contains(why), "{toml}: {error}");
        }
    }
}
