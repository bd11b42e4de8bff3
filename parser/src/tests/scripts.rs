//! Scripts without spaces, marks that are vowels, digits and letters that look like others.

use std::string::ToString;

use super::{FARMER, reader_of, render};
use crate::{Known, Reader, languages};

/// A few words each; the script is what is tested.
const THAI: &str = r#"
code = "th"
name = "Thai"
buddhist_years = true
[kinds]
planted = ["ปลูก"]
dead = ["ตาย"]
weeded = ["ตัดหญ้า"]
fertilised = ["ใส่ปุ๋ย"]
[words]
block = ["แปลง"]
trees = ["ต้น", "ยาง"]
negation = ["ไม่"]
courtesy = ["ครับ"]
filler = ["ผม", "แล้ว"]
[days_ago]
1 = ["เมื่อวาน"]
[ago]
1 = ["วันที่แล้ว", "วันก่อน"]
[months]
3 = ["มีนา", "มีนาคม", "มี.ค."]
[numbers]
unit_after = [10, 20, 30]
values.2 = ["สอง"]
values.8 = ["แปด"]
values.20 = ["ยี่สิบ"]
scales.10 = ["สิบ"]
scales.100 = ["ร้อย"]
"#;

const TAMIL: &str = r#"
code = "ta"
name = "Tamil"
[kinds]
planted = ["நட்டேன்"]
dead = ["செத்துப்போச்சு"]
[words]
block = ["தோட்டம்"]
trees = ["மரம்"]
"#;

const MALAYALAM: &str = r#"
code = "ml"
name = "Malayalam"
[kinds]
planted = ["നട്ടു"]
dead = ["ഉണങ്ങി"]
[ailments]
leaf_fall = ["ഇലകൊഴിച്ചിൽ"]
[words]
block = ["തോട്ടം"]
"#;

const SINHALA: &str = r#"
code = "si"
name = "Sinhala"
[kinds]
planted = ["සිටෙව්වා"]
[ailments]
leaf_spot = ["පත්‍ර පුල්ලි"]
[words]
block = ["කොටස"]
"#;

const INDONESIAN: &str = r#"
code = "id"
name = "Indonesian"
[kinds]
planted = ["tanam", "tnm"]
dead = ["mati"]
fertilised = ["pupuk"]
[units]
bag = ["karung"]
[words]
block = ["blok"]
trees = ["batang", "pohon"]
[days_ago]
1 = ["kemarin", "kmrn"]
[numbers]
values.1 = ["satu"]
[expands]
"satu karung" = ["sekarung"]
"1 pohon" = ["sepohon"]
"#;

fn reader() -> &'static Reader {
    static READER: std::sync::OnceLock<Reader> = std::sync::OnceLock::new();
    READER.get_or_init(|| {
        reader_of(&[
            languages::ENGLISH,
            THAI,
            TAMIL,
            MALAYALAM,
            SINHALA,
            INDONESIAN,
        ])
    })
}

#[track_caller]
fn check(code: &str, text: &str, expected: &str) {
    let known = Known {
        languages: &[code],
        blocks: &["A", "B", "ก"],
        ..FARMER
    };
    let reading = reader().read(text, &known);
    assert_eq!(render::reading(&reading), expected, "for {text:?}");
}

#[test]
fn a_script_without_spaces_is_cut_by_its_words() {
    check("th", "ปลูกยาง120ต้นแปลงB", "planted @B 120");
    check("th", "ปลูก 120 ต้น แปลง B", "planted @B 120");
    check(
        "th",
        "เมื่อวานปลูกร้อยยี่สิบต้นแปลงB",
        "planted @B 120 on=1d ?loose(120)",
    );
    check("th", "ตาย๘ต้นแปลงกครับ", "dead @ก 8");
    check("th", "ตาย8ต้นแปลงก", "dead @ก 8");
    check("th", "ตัดหญ้าแปลงAแล้ว", "weeded @A");
    check("th", "ตัดหญ้าแปลงค", "weeded @ค");
    check("th", "ไม่ตายแปลงA", "dead @A 0");
    check("th", "ตัดหญ้าแปลงA2วันที่แล้ว", "weeded @A on=2d");
}

/// Part of a longer word is not the word: a vowel sign belongs to the letter before it.
#[test]
fn words_of_thai_are_not_found_inside_letters() {
    for text in ["ตายา 8 B", "ปลูกา 8 B", "เปลูก 8 B"] {
        let known = Known {
            languages: &["th"],
            ..FARMER
        };
        let reading = reader().read(text, &known);
        let clear = |report: &crate::Report| report.doubts.is_empty();
        let sure = reading.stances.is_empty() && reading.reports.iter().any(clear);
        assert!(!sure, "{text}: {:?}", reading.reports);
    }
}

#[test]
fn thai_days_have_buddhist_years() {
    check("th", "ตัดหญ้าแปลงA 12 มีนา 69", "weeded @A on=12/3/2026!");
    check("th", "ตัดหญ้าแปลงA 12 มีนาคม 2569", "weeded @A on=12/3/2026!");
    check("th", "ปลูก 12 มีนา 69 ต้น แปลงA", "planted @A 69 on=12/3!");
}

#[test]
fn vowel_signs_are_kept() {
    check("ta", "நட்டேன் 120 மரம் தோட்டம் B", "planted @B 120");
    check("ta", "நட்டேன் ௧௨௦ தோட்டம் B", "planted @B 120");
    check("ml", "നട്ടു ൧൨൦ തോട്ടം B", "planted @B 120");
    check("si", "සිටෙව්වා ෧෨෦ කොටස B", "planted @B 120");
    // Without its vowel signs the word is another one, which may be anything: at most it is asked about.
    let bare = Known {
        languages: &["ta"],
        ..FARMER
    };
    let bare = reader().read("நடடன 120 தோட்டம் B", &bare);
    assert!(bare.reports.iter().all(|report| !report.doubts.is_empty()));
}

/// Joiners may be written or not; letters without a vowel have two spellings.
#[test]
fn joiners_make_no_difference() {
    check(
        "si",
        "පත්\u{200d}ර පුල්ලි 8 කොටස B",
        "disease @B 8 ailment=leaf_spot",
    );
    check("si", "පත්ර පුල්ලි 8 කොටස B", "disease @B 8 ailment=leaf_spot");
    check(
        "ml",
        "ഇലകൊഴിച്ചിൽ 8 തോട്ടം B",
        "disease @B 8 ailment=leaf_fall",
    );
    check(
        "ml",
        "ഇലകൊഴിച്ചില്\u{200d} 8 തോട്ടം B",
        "disease @B 8 ailment=leaf_fall",
    );
}

#[test]
fn latin_words_run_together() {
    check("id", "tnm120blokBkmrn", "planted @B 120 on=1d");
    check("id", "tnm120blokbkmrn", "planted @B 120 on=1d");
    check("id", "TNM120BLOKBKMRN", "planted @B 120 on=1d");
    check("id", "mati8bkemarin", "dead @B 8 on=1d");
    check("en", "dead8byesterday", "dead @B 8 on=1d");
    check(
        "en",
        "planted120treesblockByesterday",
        "planted @B 120 on=1d",
    );
}

#[test]
fn one_word_may_stand_for_several() {
    check("id", "pupuk sekarung blok B", "fertilised @B amount=1bag");
    check("id", "mati sepohon blok B", "dead @B 1");
}

#[test]
fn letters_that_look_alike_are_one() {
    // Cyrillic and full-width letters; marks of direction.
    check("en", "р\u{43b}anted 8 B", "");
    check("en", "dеаd 8 В", "dead @B 8");
    check("en", "ｄｅａｄ ８ Ｂ", "dead @B 8");
    check("en", "\u{202b}dead 8 B\u{202c}", "dead @B 8");
    check("en", "dead ٨ B\u{200f}", "dead @B 8");
    assert_eq!("В".to_string().len(), 2, "the letter above is Cyrillic");
}

#[test]
fn a_dot_may_stand_inside_a_phrase() {
    check("th", "ตัดหญ้าแปลงA 12 มี.ค. 69", "weeded @A on=12/3/2026!");
    check("th", "ตัดหญ้าแปลงA. ตาย 8 ต้น", "weeded @A + dead @A 8");
}

#[test]
fn names_of_any_script_are_found() {
    let known = Known {
        languages: &["th"],
        blocks: &["น้ำ", "สวนบน"],
        ..FARMER
    };
    let reading = reader().read("ตาย 8 ต้น แปลง น้ำ", &known);
    assert_eq!(render::reading(&reading), "dead @น้ำ 8");
}
