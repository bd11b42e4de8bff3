//! What sounds like work and is none.

use super::{check, read};
use crate::{Alarm, Stance};

#[track_caller]
fn is_stance(text: &str, stance: Stance) {
    let stances = read(text).stances;
    assert!(stances.contains(&stance), "{text}: {stances:?}");
}

/// No report, or a reason why it is none.
#[track_caller]
fn is_no_fact(text: &str) {
    let reading = read(text);
    assert!(
        reading.reports.is_empty() || !reading.stances.is_empty(),
        "{text}: {}",
        super::render::reading(&reading)
    );
}

#[test]
fn plans() {
    for text in [
        "will plant 120 tomorrow B",
        "i will plant 120 B",
        "we are going to weed A",
        "plan to plant 120 B",
        "want to plant 120 in B",
        "next week weeding A",
        "weed A tmr",
        "planted 120 B next monday",
        "dead 8 B not yet",
    ] {
        is_stance(text, Stance::Plan);
    }
}

#[test]
fn questions() {
    for text in [
        "should i plant 120?",
        "planted 120 B?",
        "how many dead in B",
        "did you weed A",
        "can i tap B",
    ] {
        is_stance(text, Stance::Question);
    }
}

#[test]
fn requests_hearsay_stock() {
    is_stance("give me 120 trees", Stance::Request);
    is_stance("please send 120 plants for B", Stance::Request);
    is_stance("my neighbour planted 200", Stance::Hearsay);
    is_stance("they planted 200 in B", Stance::Hearsay);
    is_stance("i have 120 trees", Stance::Stock);
    is_stance("there are 120 trees planted B", Stance::Stock);
    is_stance("if it rains i plant 120 B", Stance::Hypothetical);
}

#[test]
fn a_family_that_works_is_no_hearsay() {
    check("my wife planted 120 in B", "planted @B 120");
    check("I have planted 120 trees in block B", "planted @B 120");
}

#[test]
fn sayings() {
    for text in [
        "phone is dead",
        "my battery died 2 times",
        "dead tired",
        "open the gate",
        "line is dead",
        "i am broke",
    ] {
        is_no_fact(text);
    }
}

#[test]
fn chat_with_words_of_work() {
    for text in [
        "Pig:D",
        "I lost 2 games yesterday a bit sad",
        "its raining cats and dogs",
        "are you clear about it",
        "the storm was so bad we slept late and woke at 9",
        "Was the farm open?",
        "die die must try that 2 dollar laksa",
        "ok see u at the opening 7pm",
        "got 2 more tickets",
        "clean the kitchen before 8",
        "A fire at noon",
        "open the door",
        "long time no see, you around?",
        "i dug out the old photos",
        "round 3 of beers",
        "crown looks nice on her",
        "dry season is long",
    ] {
        is_no_fact(text);
    }
    // A number, a block, and what cows do.
    check(
        "ate rice at 3 with the gang B",
        "damage @B 3 cause=animals ?like",
    );
}

#[test]
fn courtesy_and_adverts() {
    check("thanks sir", "~courtesy");
    check("good morning boss", "~courtesy");
    is_stance(
        "Congratulations! You won 1000. Reply YES to claim",
        Stance::Advert,
    );
    is_stance("Dear customer your bonus code is 4471", Stance::Advert);
}

#[test]
fn greetings_do_not_hide_a_report() {
    check(
        "hello sir i planted 120 rubber trees in block B yesterday thank you",
        "planted @B 120 on=1d",
    );
    check("Good morning. Dead 8 B. Thanks", "dead @B 8");
    check("pls note weeded A", "weeded @A");
    check(
        "Hello sir how are you? I want to report that I planted 120 trees in block B",
        "planted @B 120",
    );
}

#[test]
fn alarms() {
    for (text, alarm) in [
        ("my father died", Alarm::Grief),
        ("my mother has passed away", Alarm::Grief),
        ("house is burning", Alarm::Fire),
        ("fire", Alarm::Fire),
        ("snake bit my son", Alarm::Snake),
        ("i lost my phone", Alarm::Number),
        ("this is my new number", Alarm::Number),
        ("help thieves", Alarm::Danger),
        ("i fainted after spraying", Alarm::Illness),
        ("he is poisoned", Alarm::Illness),
        ("my wife is sick", Alarm::Illness),
        ("my child is ill", Alarm::Illness),
        ("i am sick", Alarm::Illness),
        ("Tamo is very sick", Alarm::Illness),
        ("plants did not come", Alarm::Complaint),
        ("when will you pay me", Alarm::Money),
    ] {
        assert_eq!(read(text).alarm, Some(alarm), "{text}");
    }
    assert_eq!(read("8 trees died in B").alarm, None);
    assert_eq!(read("FIRE 120").alarm, None);
    assert_eq!(read("trees sick B 4").alarm, None);
    assert_eq!(read("my wife saw 4 sick in B").alarm, None);
    assert_eq!(read("poisoned stumps A").alarm, None);
}
