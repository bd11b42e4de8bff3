//! Questions of an adviser about groups and people.

use super::{ADVISER, check, check_adviser, reader, render};
use crate::reading::Known;

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
    check_adviser("prune kolo", "!query status group=KOLO kind=pruned");
    check_adviser("window KOLO yes", "!query window group=KOLO yes=true");
    check_adviser("window KOLO no", "!query window group=KOLO yes=false");
    check_adviser("rains started KOLO", "!query window group=KOLO");
    check_adviser("the rains have come in KOLO", "!query window group=KOLO");
    check_adviser("open season KOLO", "!query window group=KOLO");
    check_adviser("open planting", "!query window");
    check_adviser("hold planting KOLO", "!query hold group=KOLO");
    check("rains started", "rain");
    check_adviser("any sick in kolo", "!query sick group=KOLO");
    check_adviser("late Hilltopp", "!query late group=Hilltopp");
    check_adviser("how is kolo?", "!query status group=KOLO");
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
    check_adviser(
        "girth tamo",
        "!query member member=Tamo kind=girth | member=Tamo",
    );
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
