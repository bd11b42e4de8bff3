//! The door, and for how long somebody is in.

use budwood::engine::{
    Input, Knock,
    looks::{Look, Unseen},
};
use chrono::TimeDelta;

use super::{MARA, comes_in, desk, door, look, texted};

#[test]
fn a_code_lets_in_once_and_who_says_stop_is_out() {
    let mut desk = desk();
    let (_, code) = texted(&mut desk, "Ilse Vann").expect("a code");
    let name = "Ilse Vann".to_owned();
    let knock = Knock::Code { name, code };
    let ilse = door(&mut desk, knock.clone()).entered.expect("she is in");
    assert_eq!(door(&mut desk, knock).entered, None);
    assert!(look(&mut desk, &ilse, Look::Today).is_ok());
    desk.text(&ilse.number, "STOP");
    if let Some(code) = desk.send_all().iter().find_map(|sent| {
        let (_, rest) = sent.text.split_once("YES ")?;
        Some(rest.chars().take(6).collect::<String>())
    }) {
        desk.text(&ilse.number, &code);
    }
    assert_eq!(look(&mut desk, &ilse, Look::Today), Err(Unseen::Stranger));
    assert_eq!(texted(&mut desk, "Ilse Vann"), None);
}

#[test]
fn a_lost_phone_shows_nothing_any_more() {
    let mut desk = desk();
    let mara = comes_in(&mut desk, "Mara Tindel");
    assert!(look(&mut desk, &mara, Look::Today).is_ok());
    // Another registered phone of the group says that the adviser's is lost.
    desk.text("+447700900102", "LOST Mara");
    let code = crate::fixture::code(&desk.send_all());
    desk.text("+447700900102", &code);
    assert!(desk.engine.directory().is_lost(MARA));
    assert_eq!(look(&mut desk, &mara, Look::Today), Err(Unseen::Stranger));
}

#[test]
fn the_computer_itself_gives_a_code_when_no_text_can_go() {
    let mut desk = desk();
    let within = |name: &str| Knock::Within(name.to_owned());
    assert_eq!(door(&mut desk, within("Tamo Oss")).code, None);
    let code = door(&mut desk, within("Mara Tindel")).code.expect("a code");
    assert!(desk.send_all().is_empty());
    let name = "Mara Tindel".to_owned();
    assert!(
        door(&mut desk, Knock::Code { name, code })
            .entered
            .is_some()
    );
}

#[test]
fn a_code_is_too_old_after_ten_minutes() {
    let mut desk = desk();
    let (_, code) = texted(&mut desk, "Mara Tindel").expect("a code");
    desk.wait(TimeDelta::minutes(10));
    let name = "Mara Tindel".to_owned();
    assert_eq!(door(&mut desk, Knock::Code { name, code }).entered, None);
}

/// A look writes nothing: no record, no talk, no text.
#[test]
fn looking_changes_nothing() {
    let mut desk = desk();
    let mara = comes_in(&mut desk, "Mara Tindel");
    let before = desk.lines();
    for page in [
        Look::Today,
        Look::Groups,
        Look::Group("KOLO".to_owned()),
        Look::Sick,
        Look::Season,
        Look::Stock,
        Look::Line,
        Look::Queue(None),
    ] {
        let viewer = mara.clone();
        let told = desk.input(Input::Look { viewer, look: page });
        assert!(matches!(told.seen, Some(Ok(_))));
    }
    assert_eq!(desk.lines(), before);
}
