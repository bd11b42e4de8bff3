//! One line of output: what would be done, as JSON.

use budwood_parser::{Correction, Details, Field, Kind, Measure, Query, Reading, When};
use budwood_scheduler::decide::{
    Amend, Answer, Change, Decision, Draft, Missing, Quiet, Reply, Unclear, Why,
};
use chrono::NaiveDate;
use serde_json::{Map, Value, json};

use super::plain;

/// What is done with a text, in one word.
pub(super) const fn act(decision: &Decision) -> &'static str {
    match decision {
        Decision::Record(_) => "record",
        Decision::Confirm { .. } => "confirm",
        Decision::Ask { .. } | Decision::Amend(Amend::Unsure(_)) => "ask",
        Decision::Amend(Amend::Undo | Amend::Wrong | Amend::Change(_)) => "amend",
        Decision::Answer(_) => "answer",
        Decision::Reply(_) => "reply",
        Decision::Help(_) => "help",
        Decision::Silent(_) => "silent",
        Decision::Person(_) => "person",
        Decision::Both(told, _) => act(told),
    }
}

/// The answer to a line.
pub(super) fn answer(
    id: Option<&Value>,
    reading: &Reading,
    decision: &Decision,
    received: NaiveDate,
    by_adviser: bool,
) -> String {
    let mut line = Map::new();
    if let Some(id) = id {
        line.insert("id".to_owned(), id.clone());
    }
    line.insert("act".to_owned(), json!(act(decision)));
    line.insert(
        "events".to_owned(),
        Value::Array(events(decision, received, by_adviser)),
    );
    line.insert("lang".to_owned(), json!(reading.language));
    line.insert("margin".to_owned(), json!(reading.margin));
    line.insert("note".to_owned(), json!(note(decision)));
    Value::Object(line).to_string()
}

/// The answer to a line that is not right.
pub(super) fn fault(what: &str) -> String {
    json!({ "error": format!("this line cannot be read: {what}") }).to_string()
}

/// The answer to a line that is too long.
pub(super) fn too_long() -> String {
    json!({ "error": "this line is too long" }).to_string()
}

/// What was understood, as JSON.
pub(super) fn events(decision: &Decision, received: NaiveDate, by_adviser: bool) -> Vec<Value> {
    let drafts = |facts: &[Draft]| facts.iter().map(|fact| event(fact, received)).collect();
    match decision {
        Decision::Record(facts) | Decision::Confirm { facts, .. } | Decision::Ask { facts, .. } => {
            drafts(facts)
        }
        Decision::Amend(Amend::Undo) => vec![json!({ "kind": "undo" })],
        Decision::Amend(Amend::Wrong) | Decision::Reply(Reply::No) => {
            vec![json!({ "kind": "no" })]
        }
        Decision::Amend(Amend::Change(change)) => {
            vec![correction(&settled(change), Some(change.field.name()))]
        }
        Decision::Amend(Amend::Unsure(said)) => {
            vec![correction(
                said,
                said.field.map(budwood_parser::Field::name),
            )]
        }
        Decision::Answer(answer) => vec![answered(answer, by_adviser)],
        Decision::Reply(Reply::Yes(_)) => vec![json!({ "kind": "yes" })],
        Decision::Reply(Reply::Seen) => vec![json!({ "kind": "seen" })],
        Decision::Reply(Reply::Done) => vec![json!({ "kind": "done" })],
        Decision::Reply(Reply::Later(days)) => vec![later(*days)],
        Decision::Reply(Reply::Choice(choice)) => {
            vec![json!({ "kind": "choice", "number": choice })]
        }
        Decision::Both(told, beside) => {
            let mut all = events(told, received, by_adviser);
            all.extend(events(beside, received, by_adviser));
            all
        }
        Decision::Help(_) | Decision::Silent(_) | Decision::Person(_) => Vec::new(),
    }
}

fn later(days: Option<u16>) -> Value {
    days.map_or_else(
        || json!({ "kind": "later" }),
        |days| json!({ "kind": "later", "days": days }),
    )
}

fn answered(answer: &Answer, by_adviser: bool) -> Value {
    match answer {
        Answer::Help => json!({ "kind": "help" }),
        Answer::Stop => json!({ "kind": "stop" }),
        Answer::Start => json!({ "kind": "start" }),
        Answer::Query(asked) => query(asked, by_adviser),
    }
}

/// Keeps only what is there.
struct Slots(Map<String, Value>);

impl Slots {
    fn of(kind: &str) -> Self {
        let mut map = Map::new();
        map.insert("kind".to_owned(), json!(kind));
        Self(map)
    }

    fn put(&mut self, name: &str, value: Option<Value>) {
        if let Some(value) = value {
            self.0.insert(name.to_owned(), value);
        }
    }

    fn measure(&mut self, name: &str, measure: Option<Measure>) {
        self.put(name, measure.map(|measure| number(measure.value)));
        self.put("unit", measure.map(|measure| json!(measure.unit.name())));
    }
}

/// Whole numbers are written without a point.
fn number(value: f64) -> Value {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "the range is checked just before"
    )]
    if value.fract() == 0.0 && value.abs() < 9e15 {
        json!(value as i64)
    } else {
        json!(value)
    }
}

fn query(asked: &Query, by_adviser: bool) -> Value {
    let is_deed = asked.topic.is_deed();
    let mut slots = Slots::of(if is_deed { "deed" } else { "query" });
    slots.put("what", Some(json!(asked.what(by_adviser))));
    slots.put("group", asked.group.as_ref().map(|group| json!(group)));
    slots.put("member", asked.member.as_ref().map(|member| json!(member)));
    slots.put("block", asked.block.as_ref().map(|block| json!(block)));
    slots.put("topic", asked.kind.map(|kind| json!(kind.name())));
    slots.put("period", asked.period_days.map(|days| json!(days)));
    slots.put("number", asked.number.map(|number| json!(number)));
    slots.measure("area", asked.area);
    slots.put("language", asked.language.as_ref().map(|name| json!(name)));
    Value::Object(slots.0)
}

/// The correction with the old value and the right one as they came out: "24 not 40" and "24 no,
/// 40" both occur, and the fact itself says which of them is old.
fn settled(change: &Change) -> Correction {
    let now = match change.field {
        Field::Count => change.now.details.count.map(|count| count.to_string()),
        Field::Block => change.now.block.clone(),
        Field::Date | Field::Kind | Field::Values | Field::Area | Field::Amount => None,
    };
    let mut said = change.said.clone();
    let is_turned = match (&now, &said.from) {
        (Some(now), Some(from)) => now.eq_ignore_ascii_case(from),
        _ => false,
    };
    if is_turned {
        core::mem::swap(&mut said.from, &mut said.to);
    }
    said
}

fn correction(said: &Correction, field: Option<&str>) -> Value {
    let as_number = |text: &String| {
        text.parse::<f64>()
            .ok()
            .filter(|value| value.is_finite())
            .map_or_else(|| json!(text), number)
    };
    let mut slots = Slots::of("correct");
    slots.put("field", field.map(|field| json!(field)));
    slots.put("from", said.from.as_ref().map(as_number));
    slots.put("to", said.to.as_ref().map(as_number));
    slots.put("kind_ref", said.kind.map(|kind| json!(kind.name())));
    slots.put("block", said.block.as_ref().map(|block| json!(block)));
    Value::Object(slots.0)
}

fn event(fact: &Draft, received: NaiveDate) -> Value {
    let mut slots = Slots::of(fact.kind.name());
    details(&mut slots, fact.kind, &fact.details);
    slots.put("block", fact.block.as_ref().map(|block| json!(block)));
    slots.put(
        "date_rel",
        fact.said.map(|said| date_rel(said, fact, received)),
    );
    Value::Object(slots.0)
}

fn details(slots: &mut Slots, kind: Kind, details: &Details) {
    slots.put("count", details.count.map(|count| json!(count)));
    slots.put("of", details.of.map(|of| json!(of)));
    slots.put("weak", details.weak.map(|weak| json!(weak)));
    slots.measure("area", details.area);
    slots.put("clone", details.clone_name.as_ref().map(|name| json!(name)));
    slots.put(
        "material",
        details.material.map(|material| json!(material.name())),
    );
    slots.put(
        "product",
        details.product.as_ref().map(|product| json!(product)),
    );
    slots.put(
        "formula",
        details.formula.as_ref().map(|formula| json!(formula)),
    );
    slots.measure("amount", details.amount);
    slots.put("per", details.per.map(|per| json!(per.name())));
    if !details.values_cm.is_empty() {
        let values = details
            .values_cm
            .iter()
            .map(|value| number(*value))
            .collect();
        slots.put("values_cm", Some(Value::Array(values)));
    }
    let what = if kind == Kind::Rain {
        details.wetness.map(budwood_parser::Wetness::name)
    } else if kind == Kind::Received {
        details.supply.map(budwood_parser::Supply::name)
    } else {
        details.ailment.map(budwood_parser::Ailment::name)
    };
    slots.put("what", what.map(|what| json!(what)));
    slots.put("cause", details.cause.map(|cause| json!(cause.name())));
    slots.put("extent", details.extent.map(|extent| json!(extent.name())));
    slots.put(
        "species",
        details.species.as_ref().map(|species| json!(species)),
    );
    slots.put("task", details.not_done.map(|kind| json!(kind.name())));
    slots.put("mm", details.mm.map(number));
}

/// Days from the day of sending (yesterday is -1), or the span as said.
fn date_rel(said: When, fact: &Draft, received: NaiveDate) -> Value {
    match said {
        When::LastWeek => json!("last_week"),
        When::LastMonth => json!("last_month"),
        When::DaysAgo(_) | When::Weekday(_) | When::MonthDay(_) | When::Calendar { .. } => {
            json!((fact.on.from - received).num_days())
        }
    }
}

/// Why, in a few words.
pub(super) fn note(decision: &Decision) -> String {
    match decision {
        Decision::Record(_) => "stored, and read back".to_owned(),
        Decision::Confirm { why, .. } => why.iter().map(reason).collect::<Vec<_>>().join("; "),
        Decision::Ask { missing, .. } => missing_slot(missing),
        Decision::Amend(Amend::Undo) => "takes the last facts back".to_owned(),
        Decision::Amend(Amend::Wrong) => {
            "takes the last fact back and asks what is right".to_owned()
        }
        Decision::Amend(Amend::Change(change)) => format!("changes {}", change.field.name()),
        Decision::Amend(Amend::Unsure(_)) => "cannot tell what is to be changed".to_owned(),
        Decision::Answer(_) => "the bot answers".to_owned(),
        Decision::Reply(_) => "answers a question of ours".to_owned(),
        Decision::Help(Unclear::NoReport) => "about work, but not understood".to_owned(),
        Decision::Help(Unclear::Stranger) => {
            "a report from a number that is not on the list".to_owned()
        }
        Decision::Help(Unclear::NotDone) => "not their own work that is done".to_owned(),
        Decision::Help(Unclear::NothingAsked) => "answers what nobody asked".to_owned(),
        Decision::Silent(quiet) => silence(*quiet),
        Decision::Both(told, beside) => format!("{}; {}", note(told), note(beside)),
        Decision::Person(concern) => format!("a person must see this: {}", concern.name()),
    }
}

fn silence(quiet: Quiet) -> String {
    match quiet {
        Quiet::Courtesy => "courtesy only".to_owned(),
        Quiet::Stance(stance) => format!("no fact of the field: {}", stance.name()),
        Quiet::NotWork => "nothing about work".to_owned(),
        Quiet::NothingAsked => "an answer, but nothing was asked".to_owned(),
        Quiet::Stranger => "not one of our people".to_owned(),
    }
}

fn missing_slot(missing: &Missing) -> String {
    match missing {
        Missing::Block {
            unknown: Some(name),
        } => format!("no block is called {name:?}"),
        Missing::Block { unknown: None } => "which block?".to_owned(),
        Missing::Count { .. } => "how many?".to_owned(),
        Missing::Values => "which measured values?".to_owned(),
        Missing::Date => "on which day?".to_owned(),
    }
}

fn reason(why: &Why) -> String {
    match why {
        Why::Reading(doubt) => format!("not sure: {}", plain::doubt(doubt)),
        Why::MoreThanAreaHolds { holds } => format!("the land holds about {holds}"),
        Why::MoreThanAlive { alive } => format!("only {alive} trees are alive"),
        Why::MoreThanGaps { gaps } => format!("only {gaps} gaps are known"),
        Why::LargeShare { alive } => format!("a large share of {alive}"),
        Why::SameAgain => "the same was told a few days ago".to_owned(),
        Why::OddValue(value) => format!("{value} cm is unusual"),
        Why::Grew { before } => format!("the mean was only {before} cm before"),
        Why::Heaped => "all end in 0 or 5, as if guessed".to_owned(),
        Why::DoesNotAddUp { told, alive } => {
            format!("with and without branches make {told}, and {alive} are alive")
        }
        Why::PerhapsInches => "so thin for their age that it may be inches".to_owned(),
        Why::Shrunk { before } => format!("the mean was {before} cm before"),
        Why::TooThin { mean } => format!("a mean girth of {mean} cm is too thin to open"),
        Why::TooYoung { months } => format!("trees of {months} months are too young to open"),
        Why::TooMuchFeed => "over a kilogram for each tree".to_owned(),
        Why::BeforePlanting => "before the block was planted".to_owned(),
        Why::NotPlanted => "nothing is planted there".to_owned(),
    }
}
