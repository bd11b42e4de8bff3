//! Where each page lies, and which page a path means.

use budwood_scheduler::{BlockId, EventId, MessageId, PersonId};
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_decode_str, utf8_percent_encode};

use crate::engine::looks::{Look, Rests};

/// What stands in a path as it is.
const PLAIN: &AsciiSet = &NON_ALPHANUMERIC.remove(b'-').remove(b'_');

/// The names of figures in paths.
const RESTS: [(&str, Rests); 2] = [("living", Rests::Living), ("sick", Rests::Sick)];

/// The path of a page.
pub(super) fn path(look: &Look) -> String {
    match look {
        Look::Today => "/".to_owned(),
        Look::Groups => "/groups".to_owned(),
        Look::Group(name) => format!("/groups/{}", utf8_percent_encode(name, PLAIN)),
        Look::Person(id) => format!("/people/{}", id.0),
        Look::Under(block, rests) => {
            let named = RESTS.iter().find(|(_, one)| one == rests);
            let name = named.map_or("", |(name, _)| *name);
            format!("/blocks/{}/{name}", block.0)
        }
        Look::Fact(id) => format!("/facts/{}", id.0),
        Look::Sick => "/sick".to_owned(),
        Look::Season => "/season".to_owned(),
        Look::Stock => "/stock".to_owned(),
        Look::Line => "/line".to_owned(),
        Look::Queue(None) => "/queue".to_owned(),
        Look::Queue(Some(message)) => format!("/queue/{}", message.0),
    }
}

/// The page that a path means, if any. Only the one way to write a number counts.
pub(super) fn look(path: &str) -> Option<Look> {
    let parts: Vec<&str> = path.strip_prefix('/')?.split('/').collect();
    Some(match parts.as_slice() {
        [""] => Look::Today,
        ["groups"] => Look::Groups,
        ["groups", name] => {
            let name = percent_decode_str(name).decode_utf8().ok()?;
            Look::Group(name.into_owned())
        }
        ["people", id] => Look::Person(PersonId(number(id)?)),
        ["blocks", id, rests] => {
            let (_, rests) = RESTS.iter().find(|(name, _)| name == rests)?;
            Look::Under(BlockId(number(id)?), *rests)
        }
        ["facts", id] => Look::Fact(EventId(number(id)?)),
        ["sick"] => Look::Sick,
        ["season"] => Look::Season,
        ["stock"] => Look::Stock,
        ["line"] => Look::Line,
        ["queue"] => Look::Queue(None),
        ["queue", id] => Look::Queue(Some(MessageId(number(id)?))),
        _ => return None,
    })
}

fn number<N: std::str::FromStr + ToString>(text: &str) -> Option<N> {
    let number: N = text.parse().ok()?;
    (number.to_string() == text).then_some(number)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_page_is_found_at_its_path() {
        for page in [
            Look::Today,
            Look::Groups,
            Look::Group("KOLO".to_owned()),
            Look::Group("a/b ../ç%".to_owned()),
            Look::Person(PersonId(12)),
            Look::Under(BlockId(3), Rests::Sick),
            Look::Fact(EventId(u64::MAX)),
            Look::Queue(None),
            Look::Queue(Some(MessageId(7))),
        ] {
            assert_eq!(look(&path(&page)), Some(page));
        }
    }

    #[test]
    fn nothing_else_is_a_page() {
        for path in [
            "",
            "groups",
            "//",
            "/people",
            "/people/",
            "/people/+1",
            "/people/01",
            "/people/-1",
            "/people/1/",
            "/people/99999999999",
            "/groups/%ff",
            "/blocks/1/name",
            "/..",
            "/queue/x",
        ] {
            assert_eq!(look(path), None, "{path}");
        }
    }
}
