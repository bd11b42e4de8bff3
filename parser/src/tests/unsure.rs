//! What is mended beside the other word of a phrase, what is told by nothing that is listed, and
//! small words that turn what is said around, in the languages where they matter.

use super::{FARMER, reader, render};
use crate::Known;

/// Checks what a farmer's text is read as on a phone of one language.
#[track_caller]
fn check_in(language: &str, text: &str, expected: &str) {
    let known = Known {
        languages: &[language],
        blocks: &["A", "B", "C", "đồi"],
        ..FARMER
    };
    let reading = reader().read(text, &known);
    assert_eq!(render::reading(&reading), expected, "for {text:?}");
}

#[test]
fn a_short_slip_is_mended_beside_the_other_word_of_a_phrase() {
    check_in("vi", "lma cỏ lô B", "weeded @B");
    check_in("vi", "lsm co lo B", "weeded @B");
    check_in("vi", "hôm quua làm cỏ lô A", "weeded @A on=1d");
    check_in("vi", "hof qua lam co lo A", "weeded @A on=1d");
    check_in("vi", "da lamco lo A", "weeded @A");
    // Two days are one letter apart, but many write the one so.
    check_in("vi", "hom kua lam co lo A", "weeded @A on=1d");
}

#[test]
fn names_are_known_without_their_accents() {
    check_in("vi", "lam co lo doi", "weeded @đồi");
    check_in("vi", "làm cỏ lô đồi", "weeded @đồi");
}

#[test]
fn a_not_that_looks_ahead_asks_behind_the_work() {
    check_in("vi", "không làm cỏ lô B", "not_done @B not=weeded");
    check_in(
        "vi",
        "làm cỏ lô B không",
        "weeded @B ?strange(không) | ~question",
    );
    check_in("vi", "lam co hong lo B", "weeded @B ?strange(hong)");
    check_in("pt", "n capinei B", "not_done @B not=weeded");
    check_in("pt", "capinei n B", "weeded @B");
}

#[test]
fn a_measure_without_a_value_is_the_work_that_is_spelt_alike() {
    check_in("fr", "taille B", "pruned @B");
    check_in("fr", "pas taille B", "not_done @B not=pruned");
    check_in("fr", "taille 180 cm B", "height @B cm=180");
    check_in("fr", "taille 70 pieds B", "pruned @B 70");
    check_in("fr", "taille 70 B", "height @B cm=70 ?strange(taille)");
}

#[test]
fn years_back_are_no_today() {
    check_in(
        "en",
        "planted 120 B last year",
        "planted @B 120 | %no_such_day",
    );
    check_in(
        "id",
        "tanam 120 B 2 tahun lalu",
        "planted @B 120 | %no_such_day",
    );
    check_in(
        "vi",
        "trồng 120 lô B năm ngoái",
        "planted @B 120 | %no_such_day",
    );
    check_in(
        "fr",
        "planté 120 B il y a 2 ans",
        "planted @B 120 | %no_such_day",
    );
}

#[test]
fn what_no_listed_word_names_is_asked_about() {
    check_in(
        "en",
        "pruned A, zorped 30 B",
        "pruned @A ?like + pruned @B ?like",
    );
    check_in("en", "weeded B and zorped 12 trees", "weeded @B ?like");
    check_in(
        "en",
        "dead 8 A and zorped zarp 5 B",
        "dead @A 8 ?strange(zorped) + dead @B 5 ?strange(zorped)",
    );
    check_in(
        "id",
        "zorbuh 11 pohon rayap A",
        "disease @A 11 ailment=termites",
    );
    check_in("fr", "nettoyé le champ", "weeded ?strange(champ) | ~chat");
    check_in("en", "brushed farm B", "weeded @B");
}

#[test]
fn a_wish_and_a_closing_word_are_no_plan() {
    check_in("ms", "insyaallah dah tanam 50 kat B", "planted @B 50");
    check_in("ms", "insyaallah tanam 50 kat B", "planted @B 50 | ~plan");
    check_in("th-Latn", "tai 8 ton plaeng B ja", "dead @B 8");
}

#[test]
fn trees_that_are_there_and_scores_are_no_report() {
    check_in("id", "ada 33 pohon A", "");
    check_in("en", "lost 3 to 1 in A", "dead @A | ~chat | %loose_end");
    check_in(
        "en",
        "my phone was replaced for 120",
        "replaced 120 | ~saying",
    );
    check_in(
        "en",
        "my brother planted 200 trees",
        "planted 200 | ~hearsay",
    );
    check_in("en", "my brother planted 20 in B", "planted @B 20");
}

#[test]
fn letters_that_are_words_are_blocks_where_they_look_so() {
    check_in("en", "weeded A abeg", "weeded @A");
    check_in("vi", "lam co lo B a", "weeded @B");
    check_in("vi", "rễ trắng 20 A", "disease @A 20 ailment=white_root");
    check_in(
        "vi",
        "18 không phải 14a",
        "!correct field=count from=14 to=18",
    );
    check_in("en", "dead plot c247", "dead @C 247");
}
