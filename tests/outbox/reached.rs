//! Whether texts arrive on a phone, as its network tells it.

use budwood::words::traffic::Delivery;

use crate::fixture::desk::{ADVISER, Desk, JARO};

/// What its network says of a phone is known until a text arrives there, or it is heard from.
#[test]
fn a_phone_on_which_no_text_arrives_is_known_as_such() {
    let mut desk = Desk::open("2026-11-02T03:00:00Z");
    let fails = |desk: &Desk| {
        let talks = desk.stored("talk");
        let talk = talks.iter().find(|talk| talk["number"] == JARO).unwrap();
        !talk["fails_since"].is_null()
    };
    let answered = |desk: &mut Desk, text: &str| {
        desk.text(JARO, text);
        desk.send_all().last().expect("an answer").id
    };
    let first = answered(&mut desk, "status");
    assert!(!fails(&desk));
    desk.receipt(first, Delivery::Failed);
    assert!(fails(&desk));
    let second = answered(&mut desk, "who are you");
    assert!(!fails(&desk), "it is heard from");
    desk.receipt(second, Delivery::Failed);
    assert!(fails(&desk));
    desk.text(ADVISER, "from Jaro: weeded A");
    desk.send_all();
    assert!(fails(&desk), "others do not make it work");
}
