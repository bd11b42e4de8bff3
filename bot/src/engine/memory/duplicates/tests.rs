//! What is a second delivery and what is not, and how much is kept in mind.

use super::*;

const FARMER: Sender<'static> = Sender {
    name: "+447700900006",
    is_known: true,
};

fn at(seconds: i64) -> DateTime<Utc> {
    DateTime::from_timestamp(1_790_000_000 + seconds, 0).unwrap()
}

fn days(number: i64) -> i64 {
    number * 24 * 60 * 60
}

fn text(id: Option<&str>, text: &str) -> Inbound {
    Inbound {
        gateway: "line".to_owned(),
        gateway_id: id.map(str::to_owned),
        from: String::new(),
        to: String::new(),
        text: text.to_owned(),
        sent_at: None,
    }
}

fn stranger(name: &str) -> Sender<'_> {
    Sender {
        name,
        is_known: false,
    }
}

#[test]
fn no_number_of_texts_of_others_makes_a_text_forgotten() {
    let mut heard = Heard::default();
    let no = text(Some("m-1"), "NO");
    assert_eq!(heard.hears(FARMER, &no, at(0)), Hearing::New);
    for other in 0..limits::HEARD_TEXTS_OF_STRANGERS * 2 {
        let name = format!("+4477009{other:06}");
        assert_eq!(heard.hears(stranger(&name), &no, at(1)), Hearing::New);
        assert!(heard.strangers.now.held <= limits::HEARD_TEXTS_OF_STRANGERS);
    }
    for other in 0..50_100 {
        let sender = Sender {
            name: "+447700900011",
            is_known: true,
        };
        let words = text(Some("m-1"), &format!("planted {other}"));
        assert_eq!(heard.hears(sender, &words, at(2)), Hearing::New);
    }
    assert_eq!(heard.hears(FARMER, &no, at(days(7))), Hearing::Again);
}

#[test]
fn a_phone_that_texts_without_end_takes_no_more_than_its_room() {
    let mut heard = Heard::default();
    let most = limits::HEARD_TEXTS_OF_PHONE;
    for number in 0..most * 3 {
        heard.hears(FARMER, &text(None, &number.to_string()), at(0));
    }
    let room = &heard.phones[&heard.hash.hash_one(FARMER.name)];
    assert_eq!(room.now.held + room.before.held, most * 2);
}

#[test]
fn what_was_heard_is_forgotten_after_two_weeks_and_not_before_one() {
    for sender in [FARMER, stranger("+447700900999")] {
        let mut heard = Heard::default();
        let no = text(Some("m-1"), "NO");
        assert_eq!(heard.hears(sender, &no, at(0)), Hearing::New);
        let mut others = |day: i64| {
            for number in 0..limits::HEARD_TEXTS_KEPT {
                let other = text(None, &format!("{day} {number}"));
                heard.hears(sender, &other, at(days(day)));
            }
        };
        others(1);
        others(7);
        assert_eq!(heard.hears(sender, &no, at(days(13))), Hearing::Again);
        assert_eq!(heard.hears(sender, &no, at(days(14))), Hearing::New);
    }
}

/// A clock that was a year ahead must not make yesterday's text a new one.
#[test]
fn the_last_texts_of_a_phone_are_known_whatever_the_time() {
    let mut heard = Heard::default();
    let no = text(Some("m-1"), "NO");
    assert_eq!(heard.hears(FARMER, &no, at(0)), Hearing::New);
    let ahead = text(Some("m-2"), "ok");
    assert_eq!(heard.hears(FARMER, &ahead, at(days(365))), Hearing::New);
    assert_eq!(heard.hears(FARMER, &no, at(days(366))), Hearing::Again);
}

#[test]
fn a_text_is_known_by_gateway_id_sender_and_words() {
    let mut heard = Heard::default();
    let first = text(Some("m-1"), "planted 120");
    assert_eq!(heard.hears(FARMER, &first, at(0)), Hearing::New);
    let other_words = text(Some("m-1"), "planted 130");
    assert_eq!(heard.hears(FARMER, &other_words, at(1)), Hearing::New);
    let name = stranger("+447700900999");
    assert_eq!(heard.hears(name, &first, at(1)), Hearing::New);
    let other_gateway = Inbound {
        gateway: "modem".to_owned(),
        ..first.clone()
    };
    let much_later = at(days(1));
    assert_eq!(
        heard.hears(FARMER, &other_gateway, much_later),
        Hearing::New
    );
    assert_eq!(heard.hears(FARMER, &first, much_later), Hearing::Again);
}

#[test]
fn an_empty_id_is_none() {
    let mut heard = Heard::default();
    let text = text(Some(""), "ok");
    assert_eq!(heard.hears(FARMER, &text, at(0)), Hearing::New);
    assert_eq!(heard.hears(FARMER, &text, at(60)), Hearing::New);
}

#[test]
fn a_text_is_known_though_its_sender_came_on_the_list_or_went_from_it() {
    let unknown = stranger(FARMER.name);
    let first = text(Some("m-1"), "hello");
    for (before, after) in [(FARMER, unknown), (unknown, FARMER)] {
        let mut heard = Heard::default();
        assert_eq!(heard.hears(before, &first, at(0)), Hearing::New);
        assert_eq!(heard.hears(after, &first, at(1)), Hearing::Again);
        let other = text(Some("m-2"), "hello");
        assert_eq!(heard.hears(after, &other, at(2)), Hearing::New);
    }
}

/// A centre that tells neither an id nor a time delivers again what a kill kept us from answering.
#[test]
fn what_came_just_before_a_start_may_come_again_without_a_name() {
    let before = |minutes: i64| Received {
        id: budwood_scheduler::MessageId(1),
        at: at(-60 * minutes),
        gateway: "line".to_owned(),
        gateway_id: None,
        parts: Vec::new(),
        from: FARMER.name.to_owned(),
        to: String::new(),
        text: "dead 8".to_owned(),
        sent_at: None,
        outcome: Outcome::Seen.name().to_owned(),
    };
    for (minutes, named, expected) in [
        (1, None, Hearing::Twice),
        (1, Some("m-1"), Hearing::New),
        (limits::CUT_OFF_MINUTES + 1, None, Hearing::New),
    ] {
        let mut heard = Heard::default();
        heard.recall(&before(minutes), true);
        let again = text(named, "dead 8");
        assert_eq!(heard.hears(FARMER, &again, at(0)), expected, "{minutes}");
    }
}

/// What comes again after the twin of a text is not its twin too.
#[test]
fn twins_make_no_chain() {
    let mut heard = Heard::default();
    let modem = Inbound {
        gateway: "modem".to_owned(),
        ..text(None, "ok")
    };
    let line = text(None, "ok");
    assert_eq!(heard.hears(FARMER, &modem, at(0)), Hearing::New);
    assert_eq!(heard.hears(FARMER, &line, at(110)), Hearing::Twice);
    assert_eq!(heard.hears(FARMER, &modem, at(220)), Hearing::New);
}

#[test]
fn a_start_recalls_the_newest_texts_of_each_phone() {
    let received = |id: u64, outcome: Outcome| Received {
        id: budwood_scheduler::MessageId(id),
        at: at(0),
        gateway: "line".to_owned(),
        gateway_id: Some(format!("m-{id}")),
        parts: Vec::new(),
        from: FARMER.name.to_owned(),
        to: String::new(),
        text: "ok".to_owned(),
        sent_at: None,
        outcome: outcome.name().to_owned(),
    };
    let mut heard = Heard::default();
    let most = limits::HEARD_TEXTS_OF_PHONE;
    for id in (0..=most).rev() {
        heard.recall(&received(id as u64, Outcome::Seen), true);
    }
    let newest = text(Some(&format!("m-{most}")), "ok");
    assert_eq!(heard.hears(FARMER, &newest, at(1)), Hearing::Again);
    let oldest = text(Some("m-0"), "ok");
    assert_eq!(heard.hears(FARMER, &oldest, at(1)), Hearing::New);
    // The second delivery of a text is the first of none.
    let mut heard = Heard::default();
    heard.recall(&received(1, Outcome::DeliveredTwice), true);
    let modem = Inbound {
        gateway: "modem".to_owned(),
        ..text(None, "ok")
    };
    assert_eq!(heard.hears(FARMER, &modem, at(1)), Hearing::New);
}
