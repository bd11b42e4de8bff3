//! What was made of a text, for a person.

use std::fmt::Write;

use budwood_parser::{Reading, Taken, Word};
use budwood_scheduler::decide::{Decision, Draft};
use chrono::NaiveDate;

use super::output;

/// Explains a reading: each word, what came of it, what would be done and why.
pub(super) fn explain(
    text: &str,
    reading: &Reading,
    decision: &Decision,
    received: NaiveDate,
) -> String {
    let mut page = String::new();
    // Writing to a String cannot fail.
    let _ = writeln!(page, "text      {text}");
    for word in &reading.words {
        let _ = writeln!(page, "  {:<18} {}", piece(text, word), taken(word));
    }
    for stance in &reading.stances {
        let _ = writeln!(page, "stance    {}", stance.name());
    }
    for problem in &reading.problems {
        let _ = writeln!(page, "problem   {problem:?}");
    }
    for fact in facts(decision) {
        let _ = writeln!(page, "fact      {}", output::event_text(fact, received));
    }
    let _ = writeln!(
        page,
        "does      {} ({})",
        output::act(decision),
        output::note(decision)
    );
    page
}

fn facts(decision: &Decision) -> &[Draft] {
    match decision {
        Decision::Record(facts) | Decision::Confirm { facts, .. } | Decision::Ask { facts, .. } => {
            facts
        }
        Decision::Amend(_)
        | Decision::Answer(_)
        | Decision::Reply(_)
        | Decision::Help(_)
        | Decision::Silent(_)
        | Decision::Person(_) => &[],
    }
}

fn piece<'a>(text: &'a str, word: &Word) -> &'a str {
    text.get(word.span.start..word.span.end).unwrap_or_default()
}

fn taken(word: &Word) -> String {
    let mut what = match &word.taken {
        Taken::Kind(kind) => format!("work: {}", kind.name()),
        Taken::Number(number) => format!("number {number}"),
        Taken::Unit => "unit".to_owned(),
        Taken::BlockWord => "word for a block".to_owned(),
        Taken::Block(name) => format!("block {name}"),
        Taken::When(when) => format!("day: {when:?}"),
        Taken::Product => "product".to_owned(),
        Taken::Clone => "clone".to_owned(),
        Taken::Cause(cause) => format!("cause: {}", cause.name()),
        Taken::Ailment(ailment) => format!("sickness: {}", ailment.name()),
        Taken::Species => "crop".to_owned(),
        Taken::Negation => "not".to_owned(),
        Taken::Future => "plan or future".to_owned(),
        Taken::Question => "question".to_owned(),
        Taken::Command => "answer or command".to_owned(),
        Taken::Name => "name of a group or person".to_owned(),
        Taken::Courtesy => "courtesy".to_owned(),
        Taken::Filler => "-".to_owned(),
        Taken::Unknown => "unknown".to_owned(),
    };
    if let Some(listed) = &word.repaired {
        what.push_str(&format!(" (taken for {listed:?})"));
    }
    what
}
