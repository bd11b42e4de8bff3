//! What is said to the bot: answers, corrections, questions.

use std::string::ToString;

use super::{check, check_adviser};

#[test]
fn short_answers() {
    check("yes", "!yes");
    check("Yes please", "!yes");
    check("ok thanks", "!yes");
    check("Y", "!yes");
    check("no", "!no");
    check("no, wrong", "!no");
    check("done", "!done");
    check("all done sir", "!done");
    check("done B", "!done | =@B");
    check("later", "!later");
    check("later 2w", "!later(14d)");
    check("later 3 days", "!later(3d)");
    check("remind me next week", "!later(7d)");
    check("not yet", "!later");
    check("undo", "!undo");
    check("cancel that", "!undo");
    check("help", "!help");
    check("help me please", "!help");
    check("how does this work", "!help");
    check("can you help me", "");
    check("help me with my homework", "");
    check("?", "!help");
    check("start", "!start");
}

#[test]
fn stop_only_as_the_whole_message() {
    check("STOP", "!stop");
    check(" stop. ", "!stop");
    check("stop texting me about cows", "damage cause=animals | ~chat");
    check("dont stop", "");
    check("stop it", "");
}

#[test]
fn bare_answers() {
    check("120", "=120");
    check("1", "=1");
    check("2", "=2");
    check("B", "=@B");
    check("block B", "=@B");
    check("120 trees", "=120");
    check("yesterday", "=1d");
    check("12/5", "=12/5");
    check("Tamo", "=member Tamo | member=Tamo");
    check("41 43 39", "=41,43,39");
}

#[test]
fn corrections() {
    check("no 102 not 120", "!correct field=count from=120 to=102");
    check("102 not 120", "!correct field=count from=120 to=102");
    check("not 120 but 102", "!correct field=count from=120 to=102");
    check(
        "dead 21 not 210 B",
        "!correct field=count from=210 to=21 kind=dead block=B",
    );
    check("A not B", "!correct field=block from=B to=A");
    check("sorry 102", "!correct field=count to=102");
    check("sorry it was B", "!correct field=block to=B");
    check("it was B", "!correct field=block to=B");
    check("wrong, 102", "!correct field=count to=102");
    check("should be 102", "!correct field=count to=102");
    check("change 120 to 102", "!correct field=count from=120 to=102");
    check("change 102 to 120", "!correct field=count from=102 to=120");
    check("sorry dead 21", "!correct field=count to=21 kind=dead");
    check("i mean yesterday", "!correct field=date to=yesterday");
    check("102 instead of 120", "!correct field=count from=120 to=102");
    check("sorry i planted 120 in B", "planted @B 120");
    check(
        "girth 43 not 34 B",
        "!correct field=values_cm from=34 to=43 kind=girth block=B",
    );
    check("50 kg not 500 kg", "!correct field=amount from=500 to=50");
}

/// Beside words of no list the two values are handed on: what was told before decides.
#[test]
fn a_correction_in_words_of_no_list_needs_both_values() {
    let amends = |text: &str| {
        let change = super::read(text).amends;
        change.and_then(|change| change.from.zip(change.to))
    };
    let pair = |from: &str, to: &str| Some((from.to_string(), to.to_string()));
    let text = "sorry boss 38 not 33, i miscounted grogly";
    assert_eq!(amends(text), pair("33", "38"));
    assert_eq!(amends("it is A not B grogly mate"), pair("B", "A"));
    assert_eq!(amends("sorry grogly 38"), None);
    assert_eq!(amends("planted 38 in A and 33 in B"), None);
}

#[test]
fn farmers_ask() {
    check("what now", "!query next");
    check("what do i do next", "~question | !query next");
    check("when", "~question | !query when");
    check(
        "when to weed B",
        "weeded @B | ~question | !query when block=B kind=weeded",
    );
    check(
        "how many plants for 1.2 ha",
        "~question | !query how_much area=1.2ha",
    );
    check(
        "how much fertiliser B",
        "fertilised @B | ~question | !query how_much block=B kind=fertilised",
    );
    check("my data", "!query my_data");
    check("my plot", "!query status");
    check("call me", "!query call_me");
    check("who are you", "!query who");
    check("erase", "!query erase");
}

#[test]
fn another_language_is_asked_for_by_its_name() {
    check("LANGUAGE", "!query language");
    check("language?", "!query language");
    check("Language fr please", "!query language language=fr");
    check(
        "change language to Tiếng Việt",
        "!query language language=Tiếng Việt",
    );
    // A name may be a word of another kind, and more than a name is none.
    check("language in", "!query language language=in");
    check("language is what makes us human", "~question");
    check("planted 20 B in my language", "planted @B 20");
}

#[test]
fn a_farmer_may_ask_before_he_acts() {
    check(
        "can i tap",
        "tapping_opened | ~question | ~chat | !query may_i kind=tapping_opened",
    );
    check(
        "should i spray B",
        "sprayed @B | ~question | !query may_i block=B kind=sprayed",
    );
}

#[test]
fn a_member_is_named() {
    check("from Tamo: dead 4 A", "dead @A 4 | member=Tamo");
    check("tamo weeded A", "weeded @A | member=Tamo");
    check("planted 300 A Tamo", "planted @A 300 | member=Tamo");
    check("Tamo planted 300 A", "planted @A 300 | member=Tamo");
    check("Tamo: dead 3", "dead 3 | member=Tamo");
    // The first name is enough when one person has it.
    check_adviser("Siti: dead 3 block A", "dead @A 3 | member=Siti Hill");
}

#[test]
fn a_name_that_is_not_known_is_asked_about() {
    check("Kofi planted 200 B", "planted @B 200 ?by(Kofi)");
    check("Kofi has weeded A", "weeded @A ?by(Kofi)");
    check("Planted 200 B", "planted @B 200");
    check("Yesterday planted 200 B", "planted @B 200 on=1d");
    check("Block B planted 200", "planted @B 200");
}
