//! A request as a gateway of ours sent it: what is in it, before anybody knows what it means.

use encoding_rs::{Encoding, UTF_8};

use crate::words::limits;

/// A request that a gateway sent.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Call {
    /// What stands behind the question mark, decoded.
    pub query: Vec<(String, String)>,
    /// Names in small letters, and values.
    pub headers: Vec<(String, String)>,
    /// The body as it came.
    pub body: Vec<u8>,
}

impl Call {
    /// A value of the query.
    #[must_use]
    pub fn query(&self, name: &str) -> Option<&str> {
        of(&self.query, name)
    }

    /// A header; its name in small letters.
    #[must_use]
    pub fn header(&self, name: &str) -> Option<&str> {
        of(&self.headers, name)
    }

    /// The body as text in a character set of the web (WHATWG Encoding); what is no letter in it
    /// becomes U+FFFD. None for a character set that nobody knows.
    #[must_use]
    pub fn text(&self, charset: Option<&str>) -> Option<String> {
        let said = self.header("content-type").and_then(charset_of);
        let encoding = match charset.or(said) {
            Some(label) => Encoding::for_label(label.trim().as_bytes())?,
            None => UTF_8,
        };
        Some(encoding.decode(&self.body).0.into_owned())
    }

    /// Reads a request as it lies in a file: the line with the path, headers, an empty line, the
    /// body. Gives the path too. A file that does not begin with such a line is a body.
    #[must_use]
    pub fn of_file(bytes: &[u8]) -> (String, Self) {
        let end = |mark: &[u8]| {
            let mut windows = bytes.windows(mark.len());
            windows
                .position(|window| window == mark)
                .map(|at| (at, at + mark.len()))
        };
        let (head_ends, body_begins) = end(b"\r\n\r\n")
            .or_else(|| end(b"\n\n"))
            .unwrap_or((bytes.len(), bytes.len()));
        let head = String::from_utf8_lossy(bytes.get(..head_ends).unwrap_or_default());
        let mut lines = head.lines();
        let first: Vec<&str> = lines.next().unwrap_or_default().split(' ').collect();
        let [_, target, version] = first.as_slice() else {
            return Self::only_body(bytes);
        };
        if !version.starts_with("HTTP/") {
            return Self::only_body(bytes);
        }
        let (path, query) = target.split_once('?').unwrap_or((target, ""));
        let headers = lines.filter_map(|line| line.split_once(':'));
        let call = Self {
            query: pairs(query.as_bytes()),
            headers: headers
                .map(|(name, value)| (name.trim().to_ascii_lowercase(), value.trim().to_owned()))
                .collect(),
            body: bytes.get(body_begins..).unwrap_or_default().to_vec(),
        };
        (path.to_owned(), call)
    }

    fn only_body(bytes: &[u8]) -> (String, Self) {
        let call = Self {
            body: bytes.to_vec(),
            ..Self::default()
        };
        (String::new(), call)
    }
}

/// The pairs of a form or a query.
#[must_use]
pub fn pairs(encoded: &[u8]) -> Vec<(String, String)> {
    url::form_urlencoded::parse(encoded).into_owned().collect()
}

fn of<'a>(pairs: &'a [(String, String)], name: &str) -> Option<&'a str> {
    let found = pairs.iter().find(|(known, _)| known == name);
    found.map(|(_, value)| value.as_str())
}

fn charset_of(media: &str) -> Option<&str> {
    let mut parameters = media.split(';').skip(1);
    parameters.find_map(|parameter| {
        let (name, value) = parameter.split_once('=')?;
        name.trim()
            .eq_ignore_ascii_case("charset")
            .then(|| value.trim().trim_matches('"'))
    })
}

/// The address of a phone without `tel:` (RFC 3966), bounded; `field` names it where it is too long.
pub(crate) fn bare_address<'a>(found: &'a str, field: &str) -> Result<&'a str, String> {
    let found = found.trim();
    let bare = match found.split_at_checked(4) {
        Some((scheme, rest)) if scheme.eq_ignore_ascii_case("tel:") => rest.trim(),
        Some(_) | None => found,
    };
    let max = limits::ADDRESS_CHARS_MAX;
    if bare.chars().count() > max {
        return Err(format!("{field} is longer than {max} characters"));
    }
    Ok(bare)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_saved_request_is_read_with_its_path_headers_and_body() {
        let saved = b"POST /sms/in/box?from=%2B447700900123&x=a+b HTTP/1.1\r\nHost: a\r\n\
                      Content-Type: text/plain; charset=ISO-8859-1\r\n\r\nplant\xe9 12\r\n";
        let (path, call) = Call::of_file(saved);
        assert_eq!(path, "/sms/in/box");
        assert_eq!(call.query("from"), Some("+447700900123"));
        assert_eq!(call.query("x"), Some("a b"));
        assert_eq!(call.header("host"), Some("a"));
        assert_eq!(call.text(None).as_deref(), Some("planté 12\r\n"));
        let (path, call) = Call::of_file(b"phone=1&words=2");
        assert_eq!(
            (path.as_str(), call.body.as_slice()),
            ("", &b"phone=1&words=2"[..])
        );
        assert_eq!(Call::of_file(b"").1, Call::default());
    }

    #[test]
    fn the_charset_that_is_told_apart_counts_more_than_the_header() {
        let call = Call {
            headers: vec![(
                "content-type".into(),
                "text/plain; charset=\"utf-8\"".into(),
            )],
            body: vec![0x0e, 0x2d, 0xd8, 0x3d, 0xde, 0x00],
            ..Call::default()
        };
        assert_eq!(call.text(Some("UTF-16BE")).as_deref(), Some("อ😀"));
        assert!(call.text(None).unwrap().contains('\u{fffd}'));
        assert_eq!(call.text(Some("no-such-set")), None);
    }
}
