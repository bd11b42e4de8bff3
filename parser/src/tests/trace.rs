//! How a text was read: cuts, roles, what they are worth, margins.

use super::{FARMER, reader};
use crate::{Holds, Kind, Role};

#[test]
fn every_piece_has_a_role_and_a_number_its_use() {
    let text = "planted 120 block B";
    let trace = reader().trace(text, &FARMER);
    let cuts: std::vec::Vec<&str> = (trace.steps.iter())
        .map(|step| &text[step.span.start..step.span.end])
        .collect();
    assert_eq!(cuts, ["planted", "120", "block", "B"]);
    for step in &trace.steps {
        assert_eq!(step.role, Role::Told(Kind::Planted));
        assert!(step.margin > 0, "{step:?}");
    }
    let uses = trace.steps.iter().filter_map(|step| step.used);
    let uses: std::vec::Vec<&str> = uses.map(|(used, _)| used).collect();
    assert_eq!(uses, ["count"]);
}

#[test]
fn a_denial_a_question_and_chat_have_other_roles() {
    let role_of = |text: &str, at: usize| reader().trace(text, &FARMER).steps[at].role;
    assert_eq!(role_of("not weeded A yet", 1), Role::Denied(Kind::Weeded));
    assert_eq!(role_of("can i tap B?", 2), Role::Asked);
    assert_eq!(role_of("see you at the wedding", 3), Role::Aside);
}

#[test]
fn a_trace_is_of_the_reading_that_is_given() {
    let mut both = 0;
    for text in [
        "planted 120 block B",
        "we put 40 more in B where the dead ones stood",
        "8 ded in A, weeded B",
        "thanks sir",
        "",
    ] {
        let (trace, reading) = (reader().trace(text, &FARMER), reader().read(text, &FARMER));
        assert_eq!(trace.sure, reading.margin, "{text}");
        assert_eq!(trace.holds != Holds::Lists, reading.both, "{text}");
        both += usize::from(reading.both);
    }
    assert!(both > 0);
}
