//! What is done at a desk is what the same text would do.

use budwood::engine::{
    DeskDeed, Input, Outcome, WithText,
    looks::{Look, Part, Unseen, Viewer, Waits},
};
use budwood_scheduler::{EventId, MessageId};
use chrono::TimeDelta;
use serde_json::Value;

use super::{MARA, TAMO, comes_in, desk, look};
use crate::fixture::{code, desk::Desk};

/// A desk with a text that waits and may tell one thing or another.
fn waiting() -> Desk {
    let mut desk = desk();
    desk.text(TAMO, "call me");
    desk.send_all();
    desk.wait(TimeDelta::hours(1));
    desk.text(TAMO, "why did 9 trees die");
    desk.wait(TimeDelta::minutes(30));
    desk.send_all();
    desk
}

fn queue(desk: &mut Desk, viewer: &Viewer) -> Option<Waits> {
    let seen = look(desk, viewer, Look::Queue(None)).expect("a page");
    seen.parts.into_iter().find_map(|part| {
        let Part::Matter(waits) = part else {
            return None;
        };
        Some(*waits)
    })
}

fn does(desk: &mut Desk, viewer: &Viewer, deed: DeskDeed) -> Result<Outcome, Unseen> {
    let viewer = viewer.clone();
    desk.input(Input::Desk { viewer, deed })
        .done
        .expect("an answer")
}

fn with(message: MessageId, with: WithText) -> DeskDeed {
    DeskDeed::Waiting { message, with }
}

/// Facts without their ids, which count how much was done before.
fn facts(desk: &Desk) -> Vec<Value> {
    let mut facts = desk.reports();
    for fact in &mut facts {
        let fact = fact.as_object_mut().expect("a fact");
        fact.remove("id");
        fact.remove("at");
    }
    facts
}

#[test]
fn a_reading_that_is_chosen_on_the_page_stores_what_its_number_by_text_does() {
    let mut by_text = waiting();
    let mut by_page = waiting();
    let mara = comes_in(&mut by_page, "Mara Tindel");
    let mut tried = 0;
    while let Some(waits) = queue(&mut by_page, &mara) {
        by_text.text(MARA, "NEXT");
        by_text.send_all();
        if waits.readings.is_empty() {
            by_text.text(MARA, "DONE");
            if let Some(sent) = by_text
                .send_all()
                .last()
                .filter(|one| one.text.contains("YES "))
            {
                let code = code(std::slice::from_ref(sent));
                by_text.text(MARA, &code);
                by_text.send_all();
            }
            let closed = does(&mut by_page, &mara, with(waits.message, WithText::Close));
            assert_eq!(closed, Ok(Outcome::SeenTo));
            continue;
        }
        tried += 1;
        by_text.text(MARA, "1");
        if let Some(sent) = by_text
            .send_all()
            .last()
            .filter(|one| one.text.contains("YES "))
        {
            let code = code(std::slice::from_ref(sent));
            by_text.text(MARA, &code);
            by_text.send_all();
        }
        let stored = does(
            &mut by_page,
            &mara,
            with(waits.message, WithText::Accept(1)),
        );
        assert_eq!(stored, Ok(Outcome::Recorded));
        let again = does(
            &mut by_page,
            &mara,
            with(waits.message, WithText::Accept(1)),
        );
        assert_eq!(again, Err(Unseen::Nothing(Vec::new())));
        assert_eq!(facts(&by_page), facts(&by_text));
    }
    assert!(tried > 0, "a text with readings waited");
}

#[test]
fn who_is_asked_again_gets_a_text_and_the_adviser_none() {
    let mut desk = waiting();
    let mara = comes_in(&mut desk, "Mara Tindel");
    let waits = queue(&mut desk, &mara).expect("a text waits");
    desk.wait(TimeDelta::hours(2));
    let asked = does(&mut desk, &mara, with(waits.message, WithText::Ask));
    assert_eq!(asked, Ok(Outcome::AskedForSlot));
    let sent = desk.send_all();
    assert_eq!(sent.len(), 1, "{sent:?}");
    assert_eq!(sent[0].to, TAMO);
}

#[test]
fn a_text_that_is_passed_on_waits_for_the_colleague() {
    let mut desk = waiting();
    let (mara, ben) = (
        comes_in(&mut desk, "Mara Tindel"),
        comes_in(&mut desk, "Ben Tarr"),
    );
    let waits = queue(&mut desk, &mara).expect("a text waits");
    assert_eq!(queue(&mut desk, &ben), None);
    let (to, name) = waits.colleagues.first().cloned().expect("a colleague");
    assert_eq!((to, name.as_str()), (ben.person, "Ben Tarr"));
    let passed = does(&mut desk, &mara, with(waits.message, WithText::Pass(to)));
    assert_eq!(passed, Ok(Outcome::Passed));
    let theirs = queue(&mut desk, &ben).expect("it waits for him");
    assert_eq!(theirs.message, waits.message);
}

/// The last report, and what of it is stored.
fn last(desk: &Desk) -> (EventId, Value) {
    let fact = desk.reports().pop().expect("a report");
    let id = fact["id"].as_u64().expect("an id");
    (EventId(id), fact)
}

#[test]
fn a_fact_is_put_right_with_a_reason_that_stays_with_it() {
    let mut desk = desk();
    desk.text(TAMO, "dead 80");
    desk.send_all();
    desk.text(TAMO, "1");
    desk.send_all();
    let (fact, _) = last(&desk);
    let mara = comes_in(&mut desk, "Mara Tindel");
    let fix = |count, reason: &str| DeskDeed::Fix {
        fact,
        count,
        reason: reason.to_owned(),
    };
    assert_eq!(
        does(&mut desk, &mara, fix(Some(8), " ")),
        Err(Unseen::Nothing(Vec::new()))
    );
    assert_eq!(
        does(&mut desk, &mara, fix(Some(8), "counted with Tamo")),
        Ok(Outcome::Changed)
    );
    let (new, stored) = last(&desk);
    assert_eq!(stored["supersedes"], fact.0);
    let tamo = desk
        .engine
        .directory()
        .persons()
        .find(|one| one.name == "Tamo Oss");
    let tamo = tamo.expect("Tamo").id;
    let block = desk
        .engine
        .directory()
        .blocks_of(tamo)
        .next()
        .expect("a block")
        .id;
    assert_eq!(desk.engine.state(block).expect("a state").dead(), 8);
    let page = look(&mut desk, &mara, Look::Fact(new)).expect("a page");
    let page = super::words(&page).join("\n");
    for part in [
        "8 more dead trees",
        "80 more dead trees",
        "Mara Tindel",
        "counted with Tamo",
    ] {
        assert!(page.contains(part), "{part}: {page}");
    }
    // Tamo reads of it once.
    let told: Vec<_> = desk
        .send_all()
        .into_iter()
        .filter(|one| one.to == TAMO)
        .collect();
    assert_eq!(told.len(), 1, "{told:?}");
    // What was put right cannot be put right again.
    assert!(does(&mut desk, &mara, fix(None, "again")).is_err());
}

#[test]
fn a_clerk_stores_and_does_not_correct_and_a_viewer_does_neither() {
    let mut desk = waiting();
    let (ilse, vera) = (
        comes_in(&mut desk, "Ilse Vann"),
        comes_in(&mut desk, "Vera Lund"),
    );
    let waits = queue(&mut desk, &ilse).expect("a text waits");
    let close = || with(waits.message, WithText::Close);
    assert_eq!(
        does(&mut desk, &vera, close()),
        Err(Unseen::Nothing(Vec::new()))
    );
    let tamo = desk
        .engine
        .directory()
        .persons()
        .find(|one| one.name == "Tamo Oss");
    let tamo = tamo.expect("Tamo").id;
    let block = desk
        .engine
        .directory()
        .blocks_of(tamo)
        .next()
        .expect("a block")
        .id;
    let fact = desk.engine.state(block).expect("a state").facts[0];
    for viewer in [&ilse, &vera] {
        let fix = DeskDeed::Fix {
            fact,
            count: None,
            reason: "no".to_owned(),
        };
        assert_eq!(
            does(&mut desk, viewer, fix),
            Err(Unseen::NotTheirs(Vec::new()))
        );
    }
    assert_eq!(does(&mut desk, &ilse, close()), Ok(Outcome::SeenTo));
}
