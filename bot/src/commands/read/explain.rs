//! What was made of a text, for a person.

use std::fmt::Write;

use budwood_parser::{Holds, Reading, Role, Step, Taken, Trace, Word};
use budwood_scheduler::decide::Decision;
use chrono::NaiveDate;

use super::{output, plain};

/// Explains a reading: each word, what came of it, what would be done and why.
pub(super) fn explain(
    text: &str,
    (reading, trace): (&Reading, &Trace),
    decision: &Decision,
    received: NaiveDate,
) -> String {
    let mut page = String::new();
    // Writing to a String cannot fail.
    let _ = writeln!(page, "text      {text}");
    if let Some(language) = &reading.language {
        let _ = writeln!(page, "language  {language}");
    }
    for (at, word) in reading.words.iter().enumerate() {
        let _ = writeln!(
            page,
            "  {:<14} {:<22} {}",
            piece(text, word),
            taken(reading, at, word, decision),
            trace
                .steps
                .iter()
                .find(|step| step.span == word.span)
                .map(role)
                .unwrap_or_default()
        );
    }
    let _ = writeln!(page, "{}", margin(trace));
    for stance in &reading.stances {
        let _ = writeln!(page, "stance    {}", stance.name());
    }
    for problem in &reading.problems {
        let _ = writeln!(page, "problem   {}", plain::problem(text, problem));
    }
    let label = if facts_are_in(decision) {
        "fact"
    } else {
        "said"
    };
    for event in output::events(decision, received, false) {
        let _ = writeln!(page, "{label:<9} {}", plain::event(&event));
    }
    let _ = writeln!(
        page,
        "does      {}: {}",
        output::act(decision),
        output::note(decision)
    );
    page
}

/// What the word does in the text, what it alone is worth for that, and by how much it holds.
fn role(step: &Step) -> String {
    let mut role = match step.role {
        Role::Aside => "aside".to_owned(),
        Role::Asked => "asks".to_owned(),
        Role::Talk => "to the bot".to_owned(),
        Role::Told(kind) => format!("tells {}", kind.name()),
        Role::Denied(kind) => format!("denies {}", kind.name()),
    };
    if step.role != Role::Aside {
        let _ = write!(role, " {}", points(step.worth));
    }
    let _ = write!(role, ", by {}", points(step.margin));
    if let Some((used, margin)) = step.used {
        let _ = write!(role, "; {used}, by {}", points(margin));
    }
    role
}

/// How sure the reading is, what that is enough for, and whose it is.
fn margin(trace: &Trace) -> String {
    let whose = match trace.holds {
        Holds::Lists => "the lists' reading holds",
        Holds::Both => "the lists and what was learned tell the same",
        Holds::Learned => "what was learned holds",
    };
    format!(
        "margin    {}, asked about from {}, stored from {}; {whose}",
        points(trace.sure),
        points(trace.asked_from),
        points(trace.stored_from)
    )
}

/// Log-odds, with one digit behind the point.
fn points(hundredths: i32) -> String {
    format!("{:+.1}", f64::from(hundredths) / 100.0)
}

/// Facts; everything else is said to the bot.
const fn facts_are_in(decision: &Decision) -> bool {
    match decision {
        Decision::Record(_)
        | Decision::Confirm { .. }
        | Decision::Ask { .. }
        | Decision::Both(..) => true,
        Decision::Amend(_)
        | Decision::Answer(_)
        | Decision::Reply(_)
        | Decision::Help(_)
        | Decision::Silent(_)
        | Decision::Person(_) => false,
    }
}

fn piece<'a>(text: &'a str, word: &Word) -> &'a str {
    text.get(word.span.start..word.span.end).unwrap_or_default()
}

fn taken(reading: &Reading, at: usize, word: &Word, decision: &Decision) -> String {
    let mut what = match &word.taken {
        Taken::Kind(kind) => format!("work: {}", kind.name()),
        Taken::Number(number) => format!("number {number}"),
        Taken::Unit if stands_by_number(reading, at) => "unit".to_owned(),
        // "in" may be inches, "sdh" may be "done": here they are neither.
        Taken::Unit | Taken::Filler => "-".to_owned(),
        Taken::Command if facts_are_in(decision) => "-".to_owned(),
        Taken::Command => "answer or command".to_owned(),
        Taken::BlockWord => "word for a block".to_owned(),
        Taken::Block(name) => format!("block {name}"),
        Taken::When(when) => format!("day: {}", plain::day(*when)),
        Taken::Product => "product".to_owned(),
        Taken::Clone => "clone".to_owned(),
        Taken::Cause(cause) => format!("cause: {}", cause.name()),
        Taken::Ailment(ailment) => format!("sickness: {}", ailment.name()),
        Taken::Species => "crop".to_owned(),
        Taken::Negation => "not".to_owned(),
        Taken::Future => "plan or future".to_owned(),
        Taken::Question => "question".to_owned(),
        Taken::Name => "name of a group or person".to_owned(),
        Taken::Courtesy => "courtesy".to_owned(),
        Taken::Unknown => "unknown".to_owned(),
    };
    if let Some(listed) = &word.repaired {
        what.push_str(&format!(" (taken for {listed:?})"));
    }
    what
}

/// A unit counts beside a number only.
fn stands_by_number(reading: &Reading, at: usize) -> bool {
    let before = at.checked_sub(1).and_then(|at| reading.words.get(at));
    let beside = [before, reading.words.get(at + 1)];
    beside
        .into_iter()
        .flatten()
        .any(|word| matches!(word.taken, Taken::Number(_)))
}
