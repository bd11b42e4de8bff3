//! Questions of an adviser about groups and people.

use std::{format, string::ToString, vec::Vec};

use super::{ADVISER, check, check_adviser, reader, render};
use crate::{
    Act, Kind, Query, Topic, languages,
    reading::{Entry, Known},
};

#[test]
fn about_a_group() {
    check_adviser("KOLO", "!query status group=KOLO");
    check_adviser("status kolo", "!query status group=KOLO");
    check_adviser("two rivers", "!query status group=Two Rivers");
    check_adviser("LATE KOLO", "!query late group=KOLO");
    check_adviser("quiet kolo", "!query quiet group=KOLO");
    check_adviser("QUIET", "!query quiet");
    check_adviser("GAPS KOLO", "!query gaps group=KOLO");
    check_adviser("SICK", "!query sick");
    check_adviser("sick kolo", "!query sick group=KOLO");
    check_adviser("prune kolo", "!query job group=KOLO kind=pruned");
    check_adviser("window KOLO yes", "!query window group=KOLO yes=true");
    check_adviser("window KOLO no", "!query window group=KOLO yes=false");
    check_adviser("rains started KOLO", "!query window group=KOLO");
    check_adviser("the rains have come in KOLO", "!query window group=KOLO");
    check_adviser("open season KOLO", "!query window group=KOLO");
    check_adviser("open planting", "!query window");
    check_adviser("hold planting KOLO", "!query hold group=KOLO");
    check("rains started", "rain rain=soaked");
    check_adviser("any sick in kolo", "!query sick group=KOLO");
    check_adviser("late Hilltopp", "!query late group=Hilltopp");
    check_adviser("how is kolo?", "!query status group=KOLO");
}

#[test]
fn each_verb_is_read() {
    let mut wrong = Vec::new();
    for (text, told) in [
        ("DEAD KOLO", "dead group=KOLO"),
        ("dead", "dead"),
        ("dead cause KOLO", "cause group=KOLO"),
        ("DEAD clones", "clone"),
        ("ORDER KOLO 2027", "order group=KOLO number=2027"),
        ("BAGS KOLO", "bags group=KOLO"),
        (
            "how much fertiliser KOLO",
            "bags group=KOLO kind=fertilised",
        ),
        ("PAID KOLO", "paid group=KOLO"),
        ("LAST Tamo", "last member=Tamo"),
        ("LAST Tamo weeded", "last member=Tamo kind=weeded"),
        ("GIRTH KOLO", "girth group=KOLO"),
        ("READY KOLO", "ready group=KOLO"),
        ("READY Tamo", "ready member=Tamo"),
        ("READY now", "ready"),
        ("ROOT KOLO", "root group=KOLO"),
        ("VISIT THU", "visit"),
        ("RAIN", "rain"),
        ("PRUNE", "job kind=pruned"),
        ("WIND KOLO", "wind group=KOLO"),
        ("FIRE KOLO", "fire group=KOLO"),
        ("TRAIN BRANCH", "train kind=branched"),
        ("GRANT 2 KOLO", "grant group=KOLO number=2"),
        ("MAP KOLO", "map group=KOLO"),
        ("COST", "cost"),
        ("BEST WORST", "best"),
        ("LABOUR TAMO", "labour member=Tamo"),
        ("CLONE KOLO", "clone group=KOLO"),
        ("WEEK", "week days=7"),
        ("MORE", "more"),
        ("WHO 0003", "whose number=3"),
        ("ASK LEADERS", "ask"),
        ("HANDOVER BEN", "hand_over"),
        ("P Tamo", "pass member=Tamo"),
        ("kept Tamo", "kept member=Tamo"),
        ("done Tamo", "kept member=Tamo"),
        ("kept 41", "kept number=41"),
        ("promise Tamo a string by Friday", "promise member=Tamo"),
        (
            "TELL KOLO Plants come Sat 23 Aug 8:00 at school",
            "tell group=KOLO",
        ),
    ] {
        let told = format!("!query {told}");
        let read = render::reading(&reader().read(text, &ADVISER));
        let read = read.split(" | ").next().unwrap_or_default();
        if read != told {
            wrong.push(format!("{text}: {read} and not {told}"));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    check_adviser(
        "from Tamo: white root 4 trees block A",
        "disease @A 4 ailment=white_root | member=Tamo",
    );
}

/// The first word of each verb, in each language that advisers are answered in.
#[test]
fn each_verb_is_read_in_each_language() {
    let (mut wrong, mut checked) = (Vec::new(), 0);
    for pack in languages::ALL {
        let is_theirs = |code: &&str| pack.contains(&format!("code = \"{code}\""));
        let Some(code) = ["en", "fr", "id", "pt", "th", "vi"]
            .into_iter()
            .find(is_theirs)
        else {
            continue;
        };
        let (_, section) = pack.split_once("[adviser]").unwrap();
        let section = section.split("\n[").next().unwrap();
        let known = Known {
            languages: &[code],
            ..ADVISER
        };
        for line in section.lines().filter(|line| line.contains(" = ")) {
            let (verb, words) = line.split_once(" = [\"").unwrap();
            let word = words.split('"').next().unwrap();
            let text = match verb {
                "lost" | "found" | "moved" | "pass" | "kept" | "leave_alone" | "go_on" => {
                    format!("{word} Tamo")
                }
                "promise" | "tell" => format!("{word} Tamo 3 x"),
                "whose" => format!("{word} 0003"),
                "more" | "next" | "waiting" | "week" | "cost" | "ask" | "best" => word.into(),
                _ => format!("{word} KOLO"),
            };
            let read = render::reading(&reader().read(&text, &known));
            let wanted = format!("!query {verb}");
            let is_it = read
                .strip_prefix(&wanted)
                .is_some_and(|rest| rest.chars().next().is_none_or(|next| next == ' '));
            checked += 1;
            if !is_it {
                wrong.push(format!("{code}: {text}: {read} and not {wanted}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(checked > 200, "{checked}");
}

#[test]
fn in_a_sentence() {
    check_adviser(
        "can you tell me who of kolo is still behind this time?",
        "!query late group=KOLO",
    );
    check_adviser("who of them has sent no word at all?", "!query quiet");
    check_adviser("we were late and the bus was full", "~saying");
    check(
        "how much is the rubber price now",
        "~question | !query price",
    );
    check("when will the plants come", "!query order");
    check("sir when is the next meeting", "!query meeting");
}

#[test]
fn about_a_person() {
    check_adviser(
        "Tamo",
        "!query member member=Tamo | =member Tamo | member=Tamo",
    );
    check_adviser("STATUS tamo", "!query member member=Tamo | member=Tamo");
    check_adviser("girth tamo", "!query girth member=Tamo | member=Tamo");
    check_adviser(
        "siti hill",
        "!query member member=Siti Hill | =member Siti Hill | member=Siti Hill",
    );
}

#[test]
fn an_adviser_may_report_for_a_person() {
    check_adviser("Tamo dead 4 block A", "dead @A 4 | member=Tamo");
    check_adviser(
        "fix Tamo dead 21 not 210",
        "!correct field=count from=210 to=21 kind=dead | member=Tamo",
    );
}

#[test]
fn about_a_group_that_is_not_known_yet() {
    check_adviser("STATUS ODUM", "!query status group=ODUM");
    check_adviser("late ODUM", "!query late group=ODUM");
    check_adviser("gaps odum", "!query gaps group=odum");
    check_adviser("window odum yes", "!query window group=odum yes=true");
    check_adviser("odum status", "!query status group=odum");
    check_adviser("odum", "");
}

#[test]
fn a_farmer_has_no_such_words() {
    check("late", "");
    check("SICK", "disease");
}

/// Words that stand in reports too are deeds only where a name alone goes with them.
#[test]
fn about_a_phone() {
    check_adviser("lost tamo", "!query lost member=Tamo | member=Tamo");
    check_adviser(
        "LOST Tamo KOLO",
        "!query lost group=KOLO member=Tamo | member=Tamo",
    );
    check_adviser(
        "found tamo",
        "!query found member=Tamo | =member Tamo | member=Tamo",
    );
    check("lost 4 A", "dead @A 4");
}

#[test]
fn a_report_for_a_person_of_a_group() {
    let known = Known {
        blocks: &["A"],
        ..ADVISER
    };
    for (text, told) in [
        ("from Tamo KOLO: dead 4 A", "dead @A 4 | member=Tamo"),
        ("tamo kolo weeded A", "weeded @A | member=Tamo"),
        ("tamo lost 4 A", "dead @A 4 | member=Tamo"),
    ] {
        let reading = reader().read(text, &known);
        assert_eq!(render::reading(&reading), told, "for {text:?}");
    }
}

/// What is entered in a book: names with the numbers behind them, a clone, a day.
#[test]
fn what_is_entered_is_read_with_its_names_and_numbers() {
    let entered = |text: &str| -> Query {
        let reading = reader().read(text, &ADVISER);
        assert!(reading.reports.is_empty(), "{text}: {reading:?}");
        match reading.acts.as_slice() {
            [Act::Query(query)] => query.clone(),
            acts => panic!("{text}: {acts:?}"),
        }
    };
    let paid = entered("PAID Tamo 47.40, Siti Hill 30");
    assert_eq!(paid.topic, Topic::Paid);
    let lines = [("Tamo", 47.4), ("Siti Hill", 30.0)];
    let lines = lines.map(|(name, paid)| (name.to_string(), Some(paid)));
    assert_eq!(paid.entry.lines, lines);

    let trained = entered("trained pruning 12 Jul: Tamo, Siti Hill");
    assert_eq!(
        (trained.topic, trained.kind),
        (Topic::Trained, Some(Kind::Pruned))
    );
    let names: Vec<&str> = trained
        .entry
        .lines
        .iter()
        .map(|(name, _)| name.as_str())
        .collect();
    assert_eq!(names, ["Tamo", "Siti Hill"]);
    assert!(trained.entry.when.is_some());

    let stock = entered("STOCK GT1 600 15 Nov");
    assert_eq!(stock.topic, Topic::Stock);
    assert_eq!(stock.entry.amount, Some(600.0));
    assert_eq!(stock.entry.clone_name.as_deref(), Some("GT1"));
    assert!(stock.entry.when.is_some());

    let buying = entered("buying day KOLO 36.50 22 Aug");
    assert_eq!(
        (buying.topic, buying.entry.amount),
        (Topic::Buying, Some(36.5))
    );
    assert_eq!(buying.group.as_deref(), Some("KOLO"));

    // With a name that nobody has it is neither.
    for text in [
        "trained pruning: Tamo, Xoko",
        "PAID Tamo 40, Xoko 30",
        "STOCK SENA GT1 600",
    ] {
        let acts = reader().read(text, &ADVISER).acts;
        let is_entry =
            |act: &Act| matches!(act, Act::Query(query) if query.entry != Entry::default());
        assert!(!acts.iter().any(is_entry), "{text}: {acts:?}");
    }

    // Without them it is a question.
    for text in [
        "PAID KOLO",
        "STOCK",
        "TRAINED KOLO",
        "LIST KOLO",
        "ALLOT KOLO",
    ] {
        assert_eq!(entered(text).entry, Entry::default(), "{text}");
    }
}
