//! The table of measures for every language and level, and the floors that hold today.

use std::env;

use serde_json::Value;

use crate::{
    floors::Reached,
    held_out,
    message::Want,
    rates::Level,
    run::{measure, messages, reader, texts},
    speech::Speech,
    table::{Cell, table},
};

/// Texts shown of one cell, unless `BUDWOOD_SHOW_MAX` says otherwise.
const SHOWN: usize = 40;

#[test]
fn the_measures_of_every_language_and_level() {
    let reader = reader();
    let loaded: Vec<String> = reader.languages().map(str::to_owned).collect();
    let shown = env::var("BUDWOOD_SHOW").unwrap_or_default();
    let shown_max = env::var("BUDWOOD_SHOW_MAX")
        .ok()
        .and_then(|number| number.parse().ok());
    let number = texts();
    let mut cells = Vec::new();
    for (index, (language, speech)) in Speech::all().into_iter().enumerate() {
        let only = env::var("BUDWOOD_ONLY").ok();
        if !loaded.contains(&speech.code) || only.is_some_and(|only| only != language) {
            continue;
        }
        for level in Level::ALL {
            let wanted = shown == level.name() || shown == format!("{language}/{}", level.name());
            let mut left = if wanted {
                shown_max.unwrap_or(SHOWN)
            } else {
                0
            };
            let texts = messages(index as u64, &speech, level, number);
            let mut tally = measure(&reader, &texts, |message, verdict, answer| {
                if left > 0 {
                    left -= 1;
                    let fault = verdict.fault.unwrap_or_default();
                    println!(
                        "{fault}\n  text {:?}\n  want {}\n  got  {answer}",
                        message.text,
                        want(&message.want)
                    );
                }
            });
            if level == Level::Clean {
                held_out::measure(&speech, number, &mut tally, |line, kind, answer| {
                    if shown == "held" {
                        println!("held out\n  text {line}\n  want {kind}\n  got  {answer}");
                    }
                });
            }
            cells.push(Cell {
                language,
                level,
                tally,
            });
        }
    }
    let reached = Reached::read();
    println!("{}", table(&cells));
    println!("missed:\n{}", reached.missed(&cells).join("\n"));
    assert!(!cells.is_empty(), "no language was measured");
    let lost: Vec<String> = cells.iter().flat_map(|cell| reached.lost(cell)).collect();
    assert!(lost.is_empty(), "\n{}\n", lost.join("\n"));
}

fn want(want: &Want) -> String {
    let all = |how: &str, events: &[Value]| {
        let events: Vec<String> = events.iter().map(ToString::to_string).collect();
        format!("{how} {}", events.join(" "))
    };
    match want {
        Want::Record(events) => all("record", events),
        Want::Challenge(events) => all("ask", events),
        Want::Either(events) => all("record or ask", events),
        Want::Change { field, to } => format!("{field} to {to}"),
        Want::Act { act, is } => format!("{act} {is}"),
        Want::Undo => "the last fact taken back".to_owned(),
        Want::Quiet => "nothing".to_owned(),
        Want::NoEvent => "nothing stored".to_owned(),
    }
}
