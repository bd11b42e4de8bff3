//! What a request of the provider says: texts, or what became of texts of ours.
//!
//! Where each value lies is told by the configuration. Deliberately absent: who may call, which is
//! looked at before, and whether a number is a number.

use budwood_parser::table::{Table, TableError};
use budwood_scheduler::MessageId;
use chrono::{DateTime, Utc};
use serde_json::Value;

use super::answer::{json_pointer, scalar};
use crate::{
    service::{
        call::{Call, bare_address, pairs},
        mended::mended,
        taken::{Taken, good},
        value,
    },
    words::{
        bounded, limits,
        traffic::{About, Delivery, Inbound, Receipt},
    },
};

/// What is wrong with a request, for the person who sets the gateway up.
pub(crate) type Wrong = String;

/// How requests of one provider are read.
#[derive(Clone, Debug)]
pub struct Inward {
    name: String,
    texts: Option<Texts>,
    receipts: Option<Receipts>,
}

#[derive(Clone, Debug)]
struct Texts {
    shape: Shape,
    from: Field,
    to: Option<Field>,
    text: Field,
    id: Option<Field>,
    time: Option<Field>,
}

#[derive(Clone, Debug)]
struct Receipts {
    shape: Shape,
    about: AboutField,
    state: Field,
    code: Option<Field>,
    states: Vec<(String, Delivery)>,
}

#[derive(Clone, Debug)]
enum AboutField {
    Ours(Field),
    Theirs(Field),
}

/// How a body is read, and where several items are in it.
#[derive(Clone, Debug)]
struct Shape {
    kind: Format,
    items: Option<String>,
    charset: Option<Field>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Format {
    Form,
    Json,
    Query,
    Text,
}

/// Where a value is in a request.
#[derive(Clone, Debug)]
enum Field {
    Query(String),
    Form(String),
    Header(String),
    Body,
    /// RFC 6901, from the top of the body.
    Json(String),
    /// The same, from the item.
    Item(String),
}

impl Inward {
    /// Reads `[gateway.in]` and `[gateway.receipts]`, without how the provider proves itself.
    pub(super) fn read(
        name: &str,
        texts: Option<&Table<'_>>,
        receipts: Option<&Table<'_>>,
    ) -> Result<Self, TableError> {
        Ok(Self {
            name: name.to_owned(),
            texts: texts.map(Texts::read).transpose()?,
            receipts: receipts.map(Receipts::read).transpose()?,
        })
    }

    /// With how receipts are read, told apart.
    pub(super) fn with(self, receipts: Option<Self>) -> Self {
        Self {
            receipts: receipts.and_then(|one| one.receipts).or(self.receipts),
            ..self
        }
    }

    /// Values that are not in the body, by the keys of the configuration.
    pub(super) fn outside_body(&self) -> Vec<&'static str> {
        let mut fields = Vec::new();
        if let Some(texts) = &self.texts {
            fields.extend([("from", Some(&texts.from)), ("text", Some(&texts.text))]);
            fields.extend([("to", texts.to.as_ref()), ("id", texts.id.as_ref())]);
            fields.push(("time", texts.time.as_ref()));
            fields.push(("charset", texts.shape.charset.as_ref()));
        }
        if let Some(receipts) = &self.receipts {
            fields.push(match &receipts.about {
                AboutField::Ours(field) => ("ours", Some(field)),
                AboutField::Theirs(field) => ("id", Some(field)),
            });
            fields.extend([
                ("state", Some(&receipts.state)),
                ("code", receipts.code.as_ref()),
            ]);
            fields.push(("charset", receipts.shape.charset.as_ref()));
        }
        let is_outside = |field: &Field| matches!(field, Field::Query(_) | Field::Header(_));
        let outside = fields.into_iter();
        let outside = outside.filter(|(_, field)| field.is_some_and(is_outside));
        outside.map(|(key, _)| key).collect()
    }

    /// The texts of a request, in order. Those without an id of their own get one from the id of
    /// the request.
    ///
    /// # Errors
    ///
    /// When it is not as it was set.
    pub fn texts(&self, call: &Call, request_id: Option<&str>) -> Result<Taken<Inbound>, Wrong> {
        let texts = self.texts.as_ref().ok_or("there is no [gateway.in]")?;
        let seen = Seen::new(call, &texts.shape)?;
        let items = seen.items(&texts.shape)?;
        let text = |(index, item): (usize, &Value)| {
            let id = match &texts.id {
                Some(field) => seen.maybe(field, item)?,
                None => request_id.map(|id| format!("{id}/{index}")),
            };
            let to = texts.to.as_ref().map(|field| seen.maybe(field, item));
            let time = texts.time.as_ref().map(|field| seen.maybe(field, item));
            Ok(Inbound {
                gateway: self.name.clone(),
                gateway_id: id.map(bounded_id).transpose()?,
                from: address(&seen.need(&texts.from, "from", item)?, "from")?,
                to: address(&to.transpose()?.flatten().unwrap_or_default(), "to")?,
                text: bounded::text(seen.need(&texts.text, "text", item)?),
                sent_at: time.transpose()?.flatten().as_deref().and_then(instant),
            })
        };
        good(items.into_iter().enumerate().map(text))
    }

    /// The receipts of a request, in order.
    ///
    /// # Errors
    ///
    /// When it is not as it was set.
    pub fn receipts(&self, call: &Call) -> Result<Taken<Receipt>, Wrong> {
        let receipts = (self.receipts.as_ref()).ok_or("there is no [gateway.receipts]")?;
        let seen = Seen::new(call, &receipts.shape)?;
        let items = seen.items(&receipts.shape)?;
        let receipt = |item: &Value| {
            let state = seen.need(&receipts.state, "state", item)?;
            let code = receipts.code.as_ref().map(|field| seen.maybe(field, item));
            let code = code.transpose()?.flatten().unwrap_or_else(|| state.clone());
            Ok(Receipt {
                gateway: self.name.clone(),
                about: receipts.about.of(&seen, item)?,
                delivery: receipts.delivery(&state),
                code: bounded::word(&code, limits::STATUS_BYTES_MAX),
            })
        };
        good(items.into_iter().map(receipt))
    }
}

impl Texts {
    fn read(table: &Table<'_>) -> Result<Self, TableError> {
        let shape = Shape::read(table)?;
        let maybe = |key: &str| value::maybe(table, key, |found| Field::parse(found, &shape));
        let need = |key: &str| value::need(table, key, |found| Field::parse(found, &shape));
        Ok(Self {
            from: need("from")?,
            to: maybe("to")?,
            text: need("text")?,
            id: maybe("id")?,
            time: maybe("time")?,
            shape,
        })
    }
}

impl Receipts {
    fn read(table: &Table<'_>) -> Result<Self, TableError> {
        let shape = Shape::read(table)?;
        let maybe = |key: &str| value::maybe(table, key, |found| Field::parse(found, &shape));
        let about = match (maybe("ours")?, maybe("id")?) {
            (Some(ours), None) => AboutField::Ours(ours),
            (None, Some(theirs)) => AboutField::Theirs(theirs),
            (Some(_), Some(_)) | (None, None) => {
                let what = "expected ours (the {id} that was sent with the text) or id (the \
                            provider's own), one of them";
                return Err(table.error("ours", what));
            }
        };
        let states = table.need_table("states", |states| {
            let mut all = Vec::new();
            for (key, delivery) in [
                ("delivered", Delivery::Delivered),
                ("failed", Delivery::Failed),
                ("waiting", Delivery::Waiting),
                ("uncertain", Delivery::Uncertain),
            ] {
                let words = states.texts(key)?.into_iter();
                all.extend(words.map(|word| (word.to_owned(), delivery)));
            }
            Ok(all)
        })?;
        Ok(Self {
            about,
            state: value::need(table, "state", |found| Field::parse(found, &shape))?,
            code: maybe("code")?,
            states,
            shape,
        })
    }

    /// A word that nobody knows says, for all we can tell, that it is under way.
    fn delivery(&self, state: &str) -> Delivery {
        let mut states = self.states.iter();
        let found = states.find(|(word, _)| word.eq_ignore_ascii_case(state));
        found.map_or(Delivery::Waiting, |(_, delivery)| *delivery)
    }
}

impl AboutField {
    fn of(&self, seen: &Seen<'_>, item: &Value) -> Result<About, Wrong> {
        match self {
            Self::Ours(field) => {
                let found = seen.need(field, "ours", item)?;
                let id = found.trim().parse();
                let id = id.map_err(|_| "ours is not an id that was sent with a text")?;
                Ok(About::Ours(MessageId(id)))
            }
            Self::Theirs(field) => {
                let id = bounded_id(seen.need(field, "id", item)?)?;
                Ok(About::Theirs(id))
            }
        }
    }
}

impl Shape {
    fn read(table: &Table<'_>) -> Result<Self, TableError> {
        let kind = value::maybe(table, "body", |found| match found {
            "form" => Ok(Format::Form),
            "json" => Ok(Format::Json),
            "query" => Ok(Format::Query),
            "text" => Ok(Format::Text),
            _ => Err(format!(
                "expected \"form\", \"json\", \"query\" or \"text\", found {found:?}"
            )),
        })?;
        let mut shape = Self {
            kind: kind.unwrap_or(Format::Form),
            items: value::maybe(table, "items", json_pointer)?,
            charset: None,
        };
        if shape.items.is_some() && shape.kind != Format::Json {
            return Err(table.error("items", "is only for body = \"json\""));
        }
        shape.charset = value::maybe(table, "charset", |found| {
            if shape.kind != Format::Text {
                return Err("is only for body = \"text\"".to_owned());
            }
            let field = Field::parse(found, &shape)?;
            let is_the_text = matches!(field, Field::Body);
            (!is_the_text)
                .then_some(field)
                .ok_or_else(|| "is not the text itself".to_owned())
        })?;
        Ok(shape)
    }
}

impl Field {
    fn parse(written: &str, shape: &Shape) -> Result<Self, String> {
        let named = |name: &str| match name {
            "" => Err("expected the name of a field, found nothing".to_owned()),
            name => Ok(name.to_owned()),
        };
        if let Some(name) = written.strip_prefix("query:") {
            return named(name).map(Self::Query);
        }
        if let Some(name) = written.strip_prefix("header:") {
            return named(name).map(|name| Self::Header(name.to_ascii_lowercase()));
        }
        match (shape.kind, written) {
            (Format::Text, "body") => Ok(Self::Body),
            (Format::Text, _) => Err(format!(
                "expected \"body\", \"query:name\" or \"header:Name\", found {written:?}"
            )),
            (Format::Form, name) => named(name).map(Self::Form),
            (Format::Query, name) => named(name).map(Self::Query),
            (Format::Json, pointer) => match pointer.strip_prefix("json:") {
                Some(pointer) => json_pointer(pointer).map(Self::Json),
                None if pointer.starts_with('/') => Ok(Self::Item(pointer.to_owned())),
                // RFC 6901, 3: these two are written otherwise in a pointer.
                None => named(pointer).map(|name| {
                    Self::Item(format!("/{}", name.replace('~', "~0").replace('/', "~1")))
                }),
            },
        }
    }
}

/// A request with its body read.
struct Seen<'a> {
    call: &'a Call,
    form: Vec<(String, String)>,
    json: Value,
    text: String,
}

impl<'a> Seen<'a> {
    fn new(call: &'a Call, shape: &Shape) -> Result<Self, Wrong> {
        let mut seen = Self {
            call,
            form: Vec::new(),
            json: Value::Null,
            text: String::new(),
        };
        match shape.kind {
            Format::Query => {}
            Format::Form => seen.form = pairs(&call.body),
            Format::Json => {
                // RFC 8259, 8.1. Letters put in the place of others would change what people said.
                let body = str::from_utf8(&call.body).map_err(|error| {
                    let at = error.valid_up_to();
                    format!("the body is not UTF-8: no letter begins at byte {at}")
                })?;
                seen.json = serde_json::from_str(&mended(body))
                    .map_err(|error| format!("the body is not JSON: {error}"))?;
            }
            Format::Text => {
                let charset = shape.charset.as_ref().and_then(|field| match field {
                    Field::Query(name) => call.query(name),
                    Field::Header(name) => call.header(name),
                    Field::Form(_) | Field::Body | Field::Json(_) | Field::Item(_) => None,
                });
                let charset = charset.filter(|charset| !charset.is_empty());
                let text = call.text(charset);
                seen.text = text.ok_or("the body is in a character set that nobody knows")?;
            }
        }
        Ok(seen)
    }

    /// One item, or those of a list.
    fn items(&self, shape: &Shape) -> Result<Vec<&Value>, Wrong> {
        let Some(pointer) = &shape.items else {
            return Ok(vec![&self.json]);
        };
        let items = match self.json.pointer(pointer) {
            Some(Value::Array(items)) => items.iter().collect(),
            Some(item) => vec![item],
            None => return Err(format!("there is nothing at {pointer} in the body")),
        };
        let max = limits::NOTIFICATION_ITEMS_MAX;
        if items.len() > max {
            return Err(format!("more than {max} items; send fewer"));
        }
        Ok(items)
    }

    /// A value; one that is neither a text nor a number is wrong.
    fn value(&self, field: &Field, item: &Value) -> Result<Option<String>, Wrong> {
        let json = |value: Option<&Value>| match value {
            None | Some(Value::Null) => Ok(None),
            Some(value) => scalar(value)
                .map(Some)
                .ok_or_else(|| "expected a text or a number, found a list or an object".to_owned()),
        };
        Ok(match field {
            Field::Query(name) => self.call.query(name).map(str::to_owned),
            Field::Header(name) => self.call.header(name).map(str::to_owned),
            Field::Form(name) => {
                let found = self.form.iter().find(|(known, _)| known == name);
                found.map(|(_, value)| value.clone())
            }
            Field::Body => Some(self.text.clone()),
            Field::Json(pointer) => json(self.json.pointer(pointer))?,
            Field::Item(pointer) => json(item.pointer(pointer))?,
        })
    }

    /// An empty value counts as none.
    fn maybe(&self, field: &Field, item: &Value) -> Result<Option<String>, Wrong> {
        Ok(self.value(field, item)?.filter(|found| !found.is_empty()))
    }

    fn need(&self, field: &Field, key: &str, item: &Value) -> Result<String, Wrong> {
        self.value(field, item)?
            // A text may say nothing at all.
            .filter(|found| key == "text" || !found.trim().is_empty())
            .ok_or_else(|| format!("there is no {key} in the request where it was set to be"))
    }
}

/// An address without a scheme. A plus that came as a space, because the sender did not encode it,
/// is put right.
fn address(found: &str, key: &str) -> Result<String, Wrong> {
    let is_bare_plus = found.starts_with(' ') && found.trim().bytes().all(|b| b.is_ascii_digit());
    let bare = bare_address(found, key)?;
    Ok(if is_bare_plus && !bare.is_empty() {
        format!("+{bare}")
    } else {
        bare.to_owned()
    })
}

fn bounded_id(id: String) -> Result<String, Wrong> {
    let max = limits::GATEWAY_ID_BYTES_MAX;
    if id.len() > max {
        return Err(format!("id is longer than {max} bytes"));
    }
    Ok(id)
}

/// RFC 3339, or seconds or milliseconds since 1970. A time without a zone could be any of 26 hours,
/// so it counts as not told.
fn instant(found: &str) -> Option<DateTime<Utc>> {
    let found = found.trim();
    if let Ok(number) = found.parse::<i64>() {
        // Milliseconds since 1970 have as many digits from 2001 on.
        return if found.len() >= 12 {
            DateTime::from_timestamp_millis(number)
        } else {
            DateTime::from_timestamp(number, 0)
        };
    }
    Some(DateTime::parse_from_rfc3339(found).ok()?.to_utc())
}
