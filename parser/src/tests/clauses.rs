//! What stands beside a report without being part of it: a time of day, the weather, a plan, a
//! word of no list.

use super::check;

#[test]
fn gaps_that_are_planted_are_filled() {
    check("planted 60 gaps B", "replaced @B 60");
    check("planted gaps 60 B", "replaced @B 60");
    check("60 gaps planted B", "replaced @B 60");
    check("planted 60 of the gaps in B", "replaced @B 60");
    check("planted 120, gaps 8 B", "planted @B 120 + dead @B 8");
    check("planted 120 gaps 8 B", "planted @B 120 + dead @B 8");
}

#[test]
fn a_time_of_day_counts_nothing() {
    check("weeded A around 2pm", "weeded @A");
    check("weeded A at 2 pm", "weeded @A");
    check("weeded A at 14:30", "weeded @A");
    check("weeded A 14h30", "weeded @A");
    check("at 7am dead 8 B", "dead @B 8");
}

#[test]
fn the_weather_at_work_is_no_report() {
    check("planted 20 B in the rain", "planted @B 20");
    check("planted 120 B after rain", "planted @B 120");
    check(
        "planted 120 B, rain",
        "planted @B 120 + rain @B rain=soaked",
    );
    check("weeded A but no rain", "weeded @A + rain @A rain=none");
    check("rain 20 mm A", "rain @A rain=soaked mm=20");
}

#[test]
fn a_plan_of_its_own_takes_nothing_back() {
    check("planted 120 B, will weed A soon", "planted @B 120");
    check("planted 120 B and will weed tomorrow", "planted @B 120");
    check("weeded A, will plant 120 B tomorrow", "weeded @A");
    check("planted 120 B, hope to see you soon", "planted @B 120");
    // Said of the report itself, it does.
    check("planted 120 B, tomorrow", "planted @B 120 | ~plan");
    check("planted 120 B soon", "planted @B 120 | ~plan");
    check("must plant 120 B", "planted @B 120 | ~plan");
    check(
        "planted 120 B, should i weed A tomorrow?",
        "planted @B 120 + weeded @A | ~question | ~plan | !query may_i block=B kind=weeded days=1 number=120",
    );
}

#[test]
fn one_strange_word_does_not_hide_a_clear_report() {
    check("dead 8 abeg B", "dead @B 8");
    check("dead 8 kitchen B", "dead @B 8 | ~saying");
    check("dead 8 abeg wahala B", "dead @B 8 ?strange(abeg)");
}

#[test]
fn girths_are_no_grade_and_a_grade_is_no_day() {
    check(
        "girths A 27 26 28 30 30 30",
        "girth @A cm=27,26,28,30,30,30",
    );
    check("npk 15 15 15 B", "fertilised @B product=npk grade=15-15-15");
    check(
        "fertilised 15 kg npk 20-8-20 A",
        "fertilised @A product=npk grade=20-8-20 amount=15kg",
    );
    check("fertilised A 12/5/26", "fertilised @A on=12/5/2026");
}

#[test]
fn one_product_is_one_report() {
    check(
        "npk 169 kgs fert B",
        "fertilised @B product=npk amount=169kg",
    );
    check(
        "urea 50 kg npk 3 bags B",
        "fertilised @B product=urea amount=50kg + fertilised @B product=npk amount=3bag",
    );
}

#[test]
fn a_list_keeps_its_last_value() {
    check(
        "blk C girth 26 20 22 25 22 23, missing 3 cows",
        "girth @C cm=26,20,22,25,22,23 + dead @C 3 cause=animals",
    );
}

#[test]
fn a_misspelt_block_word_still_leads_to_its_block() {
    check(
        "holes 173 ploot a and planting b 440",
        "holes_dug @A 173 + planted @B 440",
    );
    check("weeded feld c", "weeded @C");
}

#[test]
fn small_figures_for_small_words() {
    check("opened 4 tapping B 201 trees", "tapping_opened @B 201");
    check("going 2 weed block B", "weeded @B | ~plan");
}

#[test]
fn a_word_before_a_number_word_does_not_make_it_loose() {
    check("dead abeg thirteen plants B", "dead @B 13");
    check(
        "dead fify three plants B",
        "dead @B 3 ?loose(3) ?strange(fify)",
    );
}
