//! Every kind of report, its slots, and several in one text.

use std::format;

use super::check;

#[test]
fn land_work() {
    check("cleared block A", "cleared @A");
    check("cleared 1.2 ha A", "cleared @A area=1.2ha");
    check("land clearing done in A", "cleared @A");
    check("PEGS 560", "lined 560");
    check("lined B", "lined @B");
    check("pegging done C 300 pegs", "lined @C 300");
    check("dug 120 holes in B", "holes_dug @B 120");
    check("holes 120 B", "holes_dug @B 120");
}

#[test]
fn plants_and_fertiliser_received() {
    check("GOT 648", "received 648 supply=plants");
    check("received 120 plants", "received 120 supply=plants");
    check(
        "received 3 bags npk",
        "received product=npk amount=3bag supply=fertiliser",
    );
    check(
        "got 3 bags of fertilizer",
        "received amount=3bag supply=fertiliser",
    );
    check(
        "fertilizer arrived 10 bags",
        "received amount=10bag supply=fertiliser",
    );
    check("plants came 150 today", "received 150 supply=plants on=0d");
    check("plants arrived 200", "received 200 supply=plants");
    check(
        "fertiliser came 3 bags",
        "received amount=3bag supply=fertiliser",
    );
    check("i came at 8 B", "");
}

#[test]
fn planting() {
    check("planted 120 block B", "planted @B 120");
    check("120 trees planted in B", "planted @B 120");
    check("B planted 120", "planted @B 120");
    check("planted B 120 trees", "planted @B 120");
    check(
        "planted 120 pb260 polybags B",
        "planted @B 120 clone=PB260 material=polybag",
    );
    check(
        "planted 120 budded stumps gt 1 B",
        "planted @B 120 clone=GT1 material=budded_stump",
    );
    check("planted 2 ha B", "planted @B area=2ha");
    check("planted 120 B no rice", "planted @B 120");
    check("I planted 120 trees in Old Mill", "planted @Old Mill 120");
    check("planted 120 old  mill", "planted @Old Mill 120");
}

#[test]
fn deaths() {
    check("dead 8 B", "dead @B 8");
    check("8 dead, cows", "dead 8 cause=animals");
    check("8 trees died in B from wind", "dead @B 8 cause=wind");
    check("lost 8 trees to goats in B", "dead @B 8 cause=animals");
    check("fire 20 dead B", "dead @B 20 cause=fire");
    check("8 missing in C", "dead @C 8");
    check("termites in B killed 5", "dead @B 5 cause=termites");
    check("dead 5 B termites", "dead @B 5 cause=termites");
    check(
        "the termites killed 3 trees in A",
        "dead @A 3 cause=termites",
    );
    check(
        "my dear boss the cows came and ate 14 trees in B",
        "damage @B 14 cause=animals",
    );
    check(
        "some leaves are falling in block C, about 15 trees",
        "disease @C 15 ailment=leaf_fall",
    );
    check("DEAD 23 WEAK 8", "dead 23 weak=8");
    check("DEAD 23, weak 8 A", "dead @A 23 weak=8");
    check("all dead in B", "dead @B extent=all ?all");
}

#[test]
fn zero_is_a_report() {
    check("no dead in C", "dead @C 0");
    check("none dead in C", "dead @C 0");
    check("dead none A", "dead @A 0");
    check("DEAD 0", "dead 0");
    check("no dead", "dead 0");
    check("root 0", "disease 0 ailment=white_root");
    check("no white root in A", "disease @A 0 ailment=white_root");
    check("no wind damage in A", "damage @A 0 cause=wind");
    check("CROP NONE", "intercrop_sown 0");
}

#[test]
fn filling_gaps() {
    check("FILLED 31", "replaced 31");
    check("replaced 6 B", "replaced @B 6");
    check("supplied 6 trees in B", "replaced @B 6");
    check("supplied 6 gaps in B today", "replaced @B 6 on=0d");
    check("refilled 10 gaps on A", "replaced @A 10");
    check("filled 6 gaps", "replaced 6");
    check("gaps filled 6 B", "replaced @B 6");
    check("8 gaps, filled 6 B", "dead @B 8 + replaced @B 6");
}

#[test]
fn upkeep() {
    check("weeded A", "weeded @A");
    check("WEEDED", "weeded");
    check("weeded A and B", "weeded @A + weeded @B");
    check("weeded A, B and C", "weeded @A + weeded @B + weeded @C");
    check("cut the grass in block A yesterday", "weeded @A on=1d");
    check("weeded 2 ha B", "weeded @B area=2ha");
    check("weeded B 2 times", "weeded @B");
    check("pruned side shoots A", "pruned @A");
    check("removed suckers B", "pruned @B");
    check("took off side shoots A", "pruned @A");
    check("PRUNED", "pruned");
    check("sprayed herbicide A", "sprayed @A product=herbicide");
    check("applied fungicide in A", "sprayed @A product=fungicide");
}

#[test]
fn feeding() {
    check("FED", "fertilised");
    check("FED DONE", "fertilised");
    check(
        "put 50g urea per tree B",
        "fertilised @B product=urea amount=50g per=tree",
    );
    check(
        "50 g/tree urea B",
        "fertilised @B product=urea amount=50g per=tree",
    );
    check(
        "fertilised B with npk 15-15-15, 50 kg",
        "fertilised @B product=npk grade=15-15-15 amount=50kg",
    );
    check("put fert A 2 bags", "fertilised @A amount=2bag");
    check("fertlized A 2 bgs", "fertilised @A amount=2bag");
    check("fertilised A 2", "fertilised @A ?loose_end(2) | %loose_end");
    check("feed B done", "fertilised @B");
    check("feeding done B", "fertilised @B");
    check("done feeding B", "fertilised @B");
    check(
        "half bag urea A",
        "fertilised @A product=urea amount=0.5bag",
    );
    check(
        "1 1/2 bags urea A",
        "fertilised @A product=urea amount=1.5bag",
    );
    check("sp-36 20 kg A", "fertilised @A product=sp36 amount=20kg");
    check("fed 520 trees B", "fertilised @B 520");
    check(
        "urea 2 bags in A and B",
        "fertilised @A product=urea amount=2bag + fertilised @B product=urea",
    );
}

#[test]
fn branching() {
    check("branched 40 B", "branched @B 40");
    check("TALL 40", "not_branched 40");
    check("no branches 12 B", "not_branched @B 12");
    check(
        "branched 40 B, not branched 12",
        "branched @B 40 + not_branched @B 12",
    );
    check("topped 12 B", "branch_induction @B 12");
}

/// Inch and foot: 2.54 cm and 30.48 cm (NIST Special Publication 811, appendix B).
#[test]
fn measuring() {
    check("GIRTH 12 OF 30", "girth 12/30");
    check("girth B 41 43 39", "girth @B cm=41,43,39");
    let census = ["41 43 39 44 46 38 42 45 47 40"; 3].join(" ");
    let values = ["41,43,39,44,46,38,42,45,47,40"; 3].join(",");
    check(
        &format!("girth B {census}"),
        &format!("girth @B cm={values}"),
    );
    check("girth B 16 inch 17 inch", "girth @B cm=40.64,43.18");
    check("girth 410 420 B", "girth @B cm=41,42 ?unit(mm)");
    check("girth 410mm 420mm B", "girth @B cm=41,42");
    check("girth of 3 trees in B 41 42 43", "girth @B cm=41,42,43");
    check(
        "girth A 41 42 B 39 40",
        "girth @A cm=41,42 + girth @B cm=39,40",
    );
    check("height 2.5 m B", "height @B cm=250");
    check("height 1m8 B", "height @B cm=180");
    check("height B 1 m 80", "height @B cm=180");
    check("height B 2 m 5 cm, 1 m 95", "height @B cm=205,195");
    check("B is 2 metres 10 tall", "height @B cm=210");
    check("height B 250", "height @B cm=250");
    check("height B 2.5", "height @B cm=250 ?unit(m)");
    check("height 8 ft B", "height @B cm=243.84");
    check("2.5m tall B", "height @B cm=250");
}

#[test]
fn sickness() {
    check("SICK LEAF", "disease ailment=leaf_fall");
    check("sick leaf 20 B", "disease @B 20 ailment=leaf_fall");
    check("white root 3 trees in C", "disease @C 3 ailment=white_root");
    check("pink disease 3 B", "disease @B 3 ailment=pink");
    check("termites 5 B", "disease @B 5 ailment=termites");
    check("many trees sick in B", "disease @B extent=many ?many");
}

#[test]
fn harm() {
    check("WIND 28", "damage 28 cause=wind");
    check("wind broke 12", "damage 12 cause=wind");
    check("EATEN 14", "damage 14 cause=animals");
    check(
        "goats have eaten 14 plants block A",
        "damage @A 14 cause=animals",
    );
    check("cows ate 14 trees B", "damage @B 14 cause=animals");
    check("FIRE 120", "damage 120 cause=fire");
    check("half of B burnt", "damage @B cause=fire extent=half ?half");
    check("12 stolen B", "damage @B 12 cause=theft");
    check("flood 30 trees A", "damage @A 30 cause=flood");
}

#[test]
fn sowing() {
    check("CROP BANANA", "intercrop_sown species=banana");
    check("planted rice B", "intercrop_sown @B species=rice");
    check("planted 40 banana B", "intercrop_sown @B 40 species=banana");
    check(
        "planted 2 kg pueraria in A",
        "cover_sown @A amount=2kg species=pueraria",
    );
    check("cover crop done in B", "cover_sown @B");
}

#[test]
fn opening_for_tapping() {
    check("opened 71 trees B", "tapping_opened @B 71");
    check(
        "we opened 50 trees in B for tapping today",
        "tapping_opened @B 50 on=0d",
    );
    check("opened 71 of 100 trees B", "tapping_opened @B 71/100");
}

#[test]
fn rain() {
    check("RAIN YES", "rain rain=soaked");
    check("RAIN NO", "rain rain=none");
    check("no rain", "rain rain=none");
    check("rain soaked yesterday", "rain rain=soaked on=1d");
    check("soaked", "rain rain=soaked");
    check("heavy rain yesterday", "rain rain=soaked on=1d");
    check("rain 20mm", "rain rain=soaked mm=20");
    check("rain 4 mm", "rain mm=4");
    check("rain 0", "rain rain=none mm=0");
}

/// Half a round, or some rows, is a part; half a bag is an amount, and half the trees are counted.
#[test]
fn a_part_of_the_work() {
    check("weeded half A", "weeded @A extent=half");
    check("half weeded A", "weeded @A extent=half");
    check("half the block weeded A", "weeded @A extent=half");
    check("weeded 2 rows A", "weeded @A extent=few");
    check("pruned three rows in B", "pruned @B extent=few");
    check("weeded all of A", "weeded @A");
    check(
        "weeded A and half of B",
        "weeded @A + weeded @B extent=half",
    );
    check("weeded A and B half", "weeded @A + weeded @B extent=half");
    check(
        "fed A half bag urea",
        "fertilised @A product=urea amount=0.5bag",
    );
    check("dead half B", "dead @B extent=half ?half");
}

/// From row to row and from tree to tree; beside feed it is twice a bag.
#[test]
fn a_spacing_counts_nothing() {
    check("lined A 6x3", "lined @A");
    check("pegged A 6.7x3.4m, 500 pegs", "lined @A 500");
    check("120 holes 60x60x60 B", "holes_dug @B 120");
    check("fed A 2x50", "fertilised @A ?loose_end(2x50)");
}

/// The name of the round in front of its answers; measured girths stay.
#[test]
fn a_round_is_read_as_its_facts() {
    check(
        "ROUND B: weeded, 3 sick leaves",
        "weeded @B + disease @B 3 ailment=leaf_fall",
    );
    check("round 41 42 B, weeded", "girth @B cm=41,42 + weeded @B");
}

#[test]
fn not_done() {
    check("not weeded A yet", "not_done @A not=weeded");
    check("havent planted", "not_done not=planted");
    check("did not prune B", "not_done @B not=pruned");
    check("we didn't weed A", "not_done @A not=weeded");
    check("weeded A, B not yet", "weeded @A + not_done @B not=weeded");
    check(
        "weeded A and B not yet",
        "not_done @A not=weeded + not_done @B not=weeded",
    );
    check("weeded A, not pruned", "weeded @A + not_done @A not=pruned");
    for text in ["pruned but not weeded A", "pruned A but not weeded"] {
        check(text, "pruned @A + not_done @A not=weeded");
    }
    // Nobody counts what was not done.
    check(
        "not planted 120 in B",
        "not_done @B not=planted ?loose_end(120)",
    );
}

#[test]
fn several_reports() {
    check(
        "planted 120, 8 died, replaced 6 B",
        "planted @B 120 + dead @B 8 + replaced @B 6",
    );
    check(
        "B: planted 120, dead 8, replaced 6",
        "planted @B 120 + dead @B 8 + replaced @B 6",
    );
    check("8 dead 120 planted B", "dead @B 8 + planted @B 120");
    check("planted 120 8 died B", "planted @B 120 + dead @B 8");
    check("weeded A 8 dead", "weeded @A + dead @A 8");
    check("A weeded B pruned", "weeded @A + pruned @B");
    check("weeded A. pruned B", "weeded @A + pruned @B");
    check("dead 8 A 4 B", "dead @A 8 + dead @B 4");
    check("dead A 8 B 4", "dead @A 8 + dead @B 4");
    check(
        "planted 120 in A and 80 in B",
        "planted @A 120 + planted @B 80",
    );
    check(
        "wind broke 12 in B, 3 dead in A",
        "damage @B 12 cause=wind + dead @A 3",
    );
    check(
        "goats ate 8 B, replaced 8",
        "damage @B 8 cause=animals + replaced @B 8",
    );
}

#[test]
fn doubtful_counts_are_kept_apart() {
    check("dead 8 9 B", "dead @B 8 ?two(8,9)");
    check(
        "planted 120 in A and B",
        "planted @A 120 ?loose(120) + planted @B 120 ?loose(120)",
    );
}

#[test]
fn blocks() {
    check("block F weeded", "weeded @F");
    check("weeded F", "weeded @F");
    check("plot 2 dead 8", "dead @2 8");
    check("dead 8 plot b2", "dead @b2 8");
    check("planted 120 trees B2", "planted @B2 120");
    check("8 dead in a", "dead @A 8");
    check("planted a tree", "planted");
    check("weeded the farm", "weeded");
    check("Weeded plot Hilltop", "weeded @Hilltop");
}
