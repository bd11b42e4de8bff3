//! A reading in one line: `planted @B 120 on=1d + dead @B 8 | ~plan | !yes | =120 | ^grief`.
//!
//! Reports are joined by " + "; then stances, acts, a bare answer, an alarm, a member, problems.

use std::{
    format,
    string::{String, ToString},
    vec::Vec,
};

use crate::{
    Act, Bare, Correction, Details, Doubt, Measure, Problem, Query, Reading, Report, When,
};

pub(crate) fn reading(reading: &Reading) -> String {
    let mut parts: Vec<String> = Vec::new();
    if !reading.reports.is_empty() {
        let reports: Vec<String> = reading.reports.iter().map(report).collect();
        parts.push(reports.join(" + "));
    }
    parts.extend(
        reading
            .stances
            .iter()
            .map(|stance| format!("~{}", stance.name())),
    );
    parts.extend(reading.acts.iter().map(act));
    parts.extend(reading.bare.iter().map(bare));
    parts.extend(
        reading
            .alarm
            .iter()
            .map(|alarm| format!("^{}", alarm.name())),
    );
    parts.extend(
        reading
            .member
            .iter()
            .map(|member| format!("member={member}")),
    );
    parts.extend(reading.problems.iter().map(problem));
    parts.join(" | ")
}

pub(crate) fn report(report: &Report) -> String {
    let mut parts = Vec::from([report.kind.name().to_string()]);
    parts.extend(report.block.iter().map(|block| format!("@{block}")));
    parts.extend(details(&report.details));
    parts.extend(report.when.iter().map(|day| format!("on={}", when(*day))));
    parts.extend(report.doubts.iter().map(doubt));
    parts.join(" ")
}

fn details(details: &Details) -> Vec<String> {
    let mut parts: Vec<String> = Vec::new();
    match (details.count, details.of) {
        (Some(count), Some(of)) => parts.push(format!("{count}/{of}")),
        (Some(count), None) => parts.push(count.to_string()),
        (None, _) => {}
    }
    let mut named = |name: &str, value: Option<String>| {
        parts.extend(value.map(|value| format!("{name}={value}")));
    };
    named("weak", details.weak.map(|weak| weak.to_string()));
    named("area", details.area.map(measure));
    named("clone", details.clone_name.clone());
    named(
        "material",
        details.material.map(|value| value.name().into()),
    );
    named("product", details.product.clone());
    named("grade", details.formula.clone());
    named("amount", details.amount.map(measure));
    named("per", details.per.map(|value| value.name().into()));
    let values: Vec<String> = details
        .values_cm
        .iter()
        .map(|value| number(*value))
        .collect();
    named("cm", (!values.is_empty()).then(|| values.join(",")));
    named("ailment", details.ailment.map(|value| value.name().into()));
    named("cause", details.cause.map(|value| value.name().into()));
    named("extent", details.extent.map(|value| value.name().into()));
    named("species", details.species.clone());
    named("not", details.not_done.map(|kind| kind.name().into()));
    named("rain", details.wetness.map(|value| value.name().into()));
    named("mm", details.mm.map(number));
    named("supply", details.supply.map(|value| value.name().into()));
    parts
}

fn number(value: f64) -> String {
    ((value * 100.0).round() / 100.0).to_string()
}

fn measure(measure: Measure) -> String {
    format!("{}{}", number(measure.value), measure.unit.name())
}

pub(super) fn when(when: When) -> String {
    match when {
        When::MonthDay(day) => format!("day{day}"),
        When::DaysAgo(days) => format!("{days}d"),
        When::Weekday(day) => day.name().to_string(),
        When::Calendar {
            day,
            month,
            year,
            named,
        } => {
            let year = year.map_or(String::new(), |year| format!("/{year}"));
            let sure = if named { "!" } else { "" };
            format!("{day}/{month}{year}{sure}")
        }
        When::LastWeek => "last_week".to_string(),
        When::LastMonth => "last_month".to_string(),
    }
}

fn doubt(doubt: &Doubt) -> String {
    match doubt {
        Doubt::Repaired { from, to } => format!("?{from}>{to}"),
        Doubt::LetterForDigit(written) => format!("?letter({written})"),
        Doubt::LooseNumber(number) => format!("?loose({number})"),
        Doubt::Range(from, to) => format!("?range({from}-{to})"),
        Doubt::GuessedUnit(unit) => format!("?unit({})", unit.name()),
        Doubt::CommaList => "?commas".to_string(),
        Doubt::Whole(extent) => format!("?{}", extent.name()),
        Doubt::TwoCounts(one, other) => format!("?two({one},{other})"),
        Doubt::LooseEnd(written) => format!("?loose_end({written})"),
        Doubt::SomebodyElse(name) => format!("?by({name})"),
        Doubt::Likeness => "?like".to_string(),
        Doubt::StrangeWord(word) => format!("?strange({word})"),
        Doubt::TwoLanguages(word) => format!("?two_languages({word})"),
    }
}

fn act(act: &Act) -> String {
    match act {
        Act::Yes => "!yes".to_string(),
        Act::No => "!no".to_string(),
        Act::Done => "!done".to_string(),
        Act::Later(None) => "!later".to_string(),
        Act::Later(Some(days)) => format!("!later({days}d)"),
        Act::Undo => "!undo".to_string(),
        Act::Help => "!help".to_string(),
        Act::Stop => "!stop".to_string(),
        Act::Start => "!start".to_string(),
        Act::Correct(wrong) => correction(wrong),
        Act::Query(asked) => query(asked),
    }
}

fn correction(correction: &Correction) -> String {
    let mut text = String::from("!correct");
    let mut add = |name: &str, value: Option<String>| {
        if let Some(value) = value {
            text.push_str(&format!(" {name}={value}"));
        }
    };
    add("field", correction.field.map(|field| field.name().into()));
    add("from", correction.from.clone());
    add("to", correction.to.clone());
    add("kind", correction.kind.map(|kind| kind.name().into()));
    add("block", correction.block.clone());
    text
}

fn query(query: &Query) -> String {
    let mut text = format!("!query {}", query.topic.name());
    let mut add = |name: &str, value: Option<String>| {
        if let Some(value) = value {
            text.push_str(&format!(" {name}={value}"));
        }
    };
    add("group", query.group.clone());
    add("member", query.member.clone());
    add("block", query.block.clone());
    add("kind", query.kind.map(|kind| kind.name().into()));
    add("area", query.area.map(measure));
    add("days", query.period_days.map(|days| days.to_string()));
    add("number", query.number.map(|number| number.to_string()));
    add("yes", query.yes.map(|yes| yes.to_string()));
    add("language", query.language.clone());
    text
}

fn bare(bare: &Bare) -> String {
    match bare {
        Bare::Number(value) => format!("={}", number(*value)),
        Bare::Block(name) => format!("=@{name}"),
        Bare::Member(name) => format!("=member {name}"),
        Bare::When(day) => format!("={}", when(*day)),
        Bare::Numbers(values) => {
            let values: Vec<String> = values.iter().map(|value| number(*value)).collect();
            format!("={}", values.join(","))
        }
    }
}

fn problem(problem: &Problem) -> String {
    match problem {
        Problem::LooseEnd(_) => "%loose_end".to_string(),
        Problem::NumberTooLarge(_) => "%too_large".to_string(),
        Problem::NoSuchDay(_) => "%no_such_day".to_string(),
        Problem::TwoKinds(_, one, other) => format!("%two({},{})", one.name(), other.name()),
        Problem::Cut(_) => "%cut".to_string(),
    }
}
