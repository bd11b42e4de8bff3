//! The request for a text: its parts as patterns, and how they are filled in.

use budwood_parser::table::{Table, TableError};
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, utf8_percent_encode};
use serde_json::Value;
use url::Url;

use super::pattern::{Pattern, Place, hex_of_utf16};
use crate::{
    service::{clock::Clock, value},
    words::{sms::Alphabet, traffic::Outgoing},
};

/// RFC 3986, 2.3: everything but the unreserved characters is encoded in a path.
const ALL_BUT_UNRESERVED: &AsciiSet = &NON_ALPHANUMERIC
    .remove(b'-')
    .remove(b'.')
    .remove(b'_')
    .remove(b'~');

/// Names and what stands behind them.
pub(super) type Pairs = Vec<(String, Pattern)>;

/// What is the same in every request of a gateway.
#[derive(Clone, Debug)]
pub(super) struct Request {
    url: Pattern,
    query: Pairs,
    headers: Pairs,
    body: Body,
    sender: String,
    user: String,
    receipt_url: Option<Url>,
    /// What the provider calls the two alphabets.
    coding: [String; 2],
}

#[derive(Clone, Debug)]
enum Body {
    None,
    Form(Pairs),
    Json(Json),
}

/// JSON with patterns in the place of its strings.
#[derive(Clone, Debug)]
enum Json {
    Fixed(Value),
    Text(Pattern),
    List(Vec<Self>),
    Map(Vec<(String, Self)>),
}

/// A request, filled in.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Filled {
    pub(super) url: Url,
    pub(super) headers: Vec<(String, String)>,
    /// Its type and what is in it.
    pub(super) body: Option<(&'static str, String)>,
}

impl Request {
    /// Reads what `[gateway.out]` says of it.
    pub(super) fn read(table: &Table<'_>) -> Result<Self, TableError> {
        let url = value::need(table, "url", Pattern::parse)?;
        value::address(url.start()).map_err(|wrong| table.error("url", wrong))?;
        let form = pairs(table, "form")?;
        let json = value::maybe(table, "json", Json::parse)?;
        let body = match (form.is_empty(), json) {
            (true, None) => Body::None,
            (false, None) => Body::Form(form),
            (true, Some(json)) => Body::Json(json),
            (false, Some(_)) => {
                return Err(table.error("json", "is given beside form; a request has one body"));
            }
        };
        let coding = table.table("coding", |coding| {
            let of = |alphabet: Alphabet| coding.need_text(alphabet.name()).map(str::to_owned);
            Ok([of(Alphabet::Gsm7)?, of(Alphabet::Ucs2)?])
        })?;
        let coding =
            coding.unwrap_or([Alphabet::Gsm7, Alphabet::Ucs2].map(|one| one.name().into()));
        let request = Self {
            url,
            query: pairs(table, "query")?,
            headers: pairs(table, "headers")?,
            body,
            sender: value::maybe(table, "sender", value::sender)?.unwrap_or_default(),
            user: value::maybe(table, "user", value::user)?.unwrap_or_default(),
            receipt_url: value::maybe(table, "receipt_url", value::address)?,
            coding,
        };
        for (key, place, is_there) in [
            ("sender", Place::From, !request.sender.is_empty()),
            ("user", Place::User, !request.user.is_empty()),
        ] {
            if !is_there && request.patterns().iter().any(|one| one.has(place)) {
                return Err(table.error(key, "is missing, and the request has a place for it"));
            }
        }
        for (key, places) in [
            ("to", [Place::To, Place::ToDigits]),
            ("text", [Place::Text, Place::TextHex]),
        ] {
            let has = |one: &&Pattern| places.iter().any(|place| one.has(*place));
            if !request.patterns().iter().any(has) {
                let what = format!("nothing in the request has a place for {{{key}}}");
                return Err(table.error("url", what));
            }
        }
        Ok(request)
    }

    /// Where it goes, as far as that is the same for all texts.
    pub(super) fn address(&self) -> Option<Url> {
        value::address(self.url.start()).ok()
    }

    /// Whether it has a form.
    pub(super) const fn has_form(&self) -> bool {
        matches!(self.body, Body::Form(_))
    }

    /// The name of the user.
    pub(super) fn user(&self) -> &str {
        &self.user
    }

    fn patterns(&self) -> Vec<&Pattern> {
        let mut all = vec![&self.url];
        let pairs = self.query.iter().chain(&self.headers);
        all.extend(pairs.map(|(_, pattern)| pattern));
        match &self.body {
            Body::None => {}
            Body::Form(form) => all.extend(form.iter().map(|(_, pattern)| pattern)),
            Body::Json(json) => json.collect(&mut all),
        }
        all
    }

    /// The request for this text. None where its address comes out wrong.
    pub(super) fn filled(&self, text: &Outgoing, clock: &Clock) -> Option<Filled> {
        let left = text.expires_at - clock.now();
        let values = Values {
            request: self,
            text,
            left,
        };
        let encoded =
            |place| utf8_percent_encode(&values.of(place), ALL_BUT_UNRESERVED).to_string();
        let mut url = Url::parse(&self.url.filled(encoded)).ok()?;
        let query = values.pairs(&self.query);
        if !query.is_empty() {
            url.query_pairs_mut().extend_pairs(query);
        }
        let body = match &self.body {
            Body::None => None,
            Body::Form(form) => {
                let mut body = url::form_urlencoded::Serializer::new(String::new());
                body.extend_pairs(values.pairs(form));
                Some(("application/x-www-form-urlencoded", body.finish()))
            }
            Body::Json(json) => {
                let body = json.filled(&values).unwrap_or_default();
                Some(("application/json", body.to_string()))
            }
        };
        let headers = values.pairs(&self.headers);
        Some(Filled { url, headers, body })
    }
}

/// What stands in the places of one request.
struct Values<'a> {
    request: &'a Request,
    text: &'a Outgoing,
    left: chrono::TimeDelta,
}

impl Values<'_> {
    fn of(&self, place: Place) -> String {
        let Self {
            request,
            text,
            left,
        } = self;
        match place {
            Place::To => text.to.clone(),
            Place::ToDigits => text.to.trim_start_matches('+').to_owned(),
            Place::From => request.sender.clone(),
            Place::Text => text.text.clone(),
            Place::TextHex => hex_of_utf16(&text.text),
            Place::Id => text.id.to_string(),
            Place::Coding => {
                let [gsm7, ucs2] = &request.coding;
                match text.size().alphabet {
                    Alphabet::Gsm7 => gsm7.clone(),
                    Alphabet::Ucs2 => ucs2.clone(),
                }
            }
            Place::Parts => text.size().parts.to_string(),
            Place::Seconds => left.num_seconds().max(1).to_string(),
            Place::Minutes => left.num_minutes().max(1).to_string(),
            Place::User => request.user.clone(),
            Place::ReceiptUrl => request
                .receipt_url
                .as_ref()
                .map(Url::to_string)
                .unwrap_or_default(),
        }
    }

    /// Whether it can be filled: where no receipts are wanted, what asks for them is left out.
    fn can_fill(&self, pattern: &Pattern) -> bool {
        self.request.receipt_url.is_some() || !pattern.has(Place::ReceiptUrl)
    }

    fn pairs(&self, pairs: &Pairs) -> Vec<(String, String)> {
        let pairs = pairs.iter().filter(|(_, pattern)| self.can_fill(pattern));
        pairs
            .map(|(name, pattern)| (name.clone(), pattern.filled(|place| self.of(place))))
            .collect()
    }
}

impl Json {
    fn parse(written: &str) -> Result<Self, String> {
        let value: Value = serde_json::from_str(written)
            .map_err(|error| format!("expected JSON with places such as \"{{text}}\": {error}"))?;
        Self::of(value)
    }

    fn of(value: Value) -> Result<Self, String> {
        Ok(match value {
            Value::String(text) => Self::Text(Pattern::parse(&text)?),
            Value::Array(items) => {
                Self::List(items.into_iter().map(Self::of).collect::<Result<_, _>>()?)
            }
            Value::Object(map) => {
                let member = |(key, value)| Ok((key, Self::of(value)?));
                Self::Map(map.into_iter().map(member).collect::<Result<_, String>>()?)
            }
            Value::Null | Value::Bool(_) | Value::Number(_) => Self::Fixed(value),
        })
    }

    fn collect<'a>(&'a self, into: &mut Vec<&'a Pattern>) {
        match self {
            Self::Fixed(_) => {}
            Self::Text(pattern) => into.push(pattern),
            Self::List(items) => items.iter().for_each(|item| item.collect(into)),
            Self::Map(members) => members.iter().for_each(|(_, item)| item.collect(into)),
        }
    }

    /// None for what is left out.
    fn filled(&self, values: &Values<'_>) -> Option<Value> {
        Some(match self {
            Self::Fixed(value) => value.clone(),
            Self::Text(pattern) if !values.can_fill(pattern) => return None,
            Self::Text(pattern) => Value::String(pattern.filled(|place| values.of(place))),
            Self::List(items) => items
                .iter()
                .filter_map(|item| item.filled(values))
                .collect(),
            Self::Map(members) => {
                let member =
                    |(key, item): &(String, Self)| Some((key.clone(), item.filled(values)?));
                Value::Object(members.iter().filter_map(member).collect())
            }
        })
    }
}

fn pairs(table: &Table<'_>, key: &str) -> Result<Pairs, TableError> {
    let read = table.table(key, |inside| {
        let pair = |name: &&str| {
            Ok((
                (*name).to_owned(),
                value::need(inside, name, Pattern::parse)?,
            ))
        };
        inside.keys().iter().map(pair).collect()
    })?;
    Ok(read.unwrap_or_default())
}
