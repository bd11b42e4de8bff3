//! What office lists hold that can be read, and must not be believed: a "no" where consent is told,
//! the first day that a computer knows, spoiled letters.

use chrono::NaiveDate;
use encoding_rs::WINDOWS_1252;

/// Words that say no, or that there is nobody to ask, in the languages of the texts (common
/// practice in lists; from memory).
const NO: &[&str] = &[
    "no",
    "not",
    "never",
    "none",
    "refused",
    "refuse",
    "refuses",
    "declined",
    "decline",
    "denied",
    "withdrawn",
    "stop",
    "deceased",
    "died",
    "dead",
    "non",
    "pas",
    "refus",
    "refusé",
    "décédé",
    "decede",
    "tidak",
    "belum",
    "menolak",
    "tolak",
    "meninggal",
    "almarhum",
    "não",
    "nao",
    "recusou",
    "recusado",
    "recusa",
    "falecido",
    "faleceu",
    "không",
    "khong",
    "chưa",
    "chết",
    "mất",
    "n",
    "ko",
];

/// The same in writing without blanks, wherever it stands.
const NO_WITHIN: &[&str] = &["ไม่", "ปฏิเสธ", "เสียชีวิต", "ตาย", "từ chối"];

/// Day zero of computers and of spreadsheets (POSIX.1; ECMA-376, part 1, 18.17.4; the days before
/// them as time zones make them).
const DAY_ZEROS: &[(i32, u32, u32)] = &[
    (1970, 1, 1),
    (1969, 12, 31),
    (1900, 1, 1),
    (1899, 12, 30),
    (1904, 1, 1),
];

/// Whether the words that tell how consent is known say that there is none.
pub(super) fn says_no(how: &str) -> bool {
    let how = how.to_lowercase();
    how.split(|c: char| !c.is_alphanumeric())
        .any(|word| NO.contains(&word))
        || NO_WITHIN.iter().any(|no| how.contains(no))
}

/// Whether a day is one that no person wrote.
pub(super) fn is_day_zero(day: NaiveDate) -> bool {
    let zeros = DAY_ZEROS.iter();
    zeros
        .filter_map(|(year, month, on)| NaiveDate::from_ymd_opt(*year, *month, *on))
        .any(|zero| zero == day)
}

/// The letters as they were, when a text in UTF-8 was once read as Windows-1252 (WHATWG Encoding
/// Standard).
pub(super) fn unspoiled(text: &str) -> Option<String> {
    if text.is_ascii() {
        return None;
    }
    let (bytes, _, was_lost) = WINDOWS_1252.encode(text);
    let letters = String::from_utf8(bytes.into_owned()).ok()?;
    (!was_lost && letters != text).then_some(letters)
}

/// A clone as trade writes it: letters and number run together in capitals ("PB 260" is "PB260").
/// None when it is not one clone.
pub(super) fn clone_name(text: &str) -> Option<String> {
    const PARTS: [char; 6] = [',', ';', '/', '&', '+', '?'];
    let has_letters = text.chars().any(char::is_alphabetic);
    if !has_letters || text.contains(PARTS) {
        return None;
    }
    if !text.chars().any(|letter| letter.is_ascii_digit()) {
        return Some(text.to_owned());
    }
    let kept = text
        .chars()
        .filter(|letter| !matches!(letter, ' ' | '-' | '.' | '_'));
    Some(kept.flat_map(char::to_uppercase).collect())
}

#[cfg(test)]
mod tests {
    use super::{clone_name, is_day_zero, says_no, unspoiled};

    #[test]
    fn no_is_heard_and_yes_is_not_taken_for_it() {
        for how in [
            "refused",
            "Refused by wife",
            "deceased 2026",
            "no",
            "NO",
            "ไม่ยินยอม",
            "từ chối",
            "não",
            "belum tanya",
            "décédé",
        ] {
            assert!(says_no(how), "{how}");
        }
        for how in [
            "signed sheet",
            "text START",
            "Y",
            "meeting of March",
            "normal form",
            "Norbert's list",
            "ลงชื่อ",
            "lembar tanda tangan",
        ] {
            assert!(!says_no(how), "{how}");
        }
    }

    #[test]
    fn days_of_machines_are_known() {
        let zero = |day: &str| is_day_zero(day.parse().unwrap());
        assert!(zero("1970-01-01") && zero("1900-01-01") && zero("1899-12-30"));
        assert!(!zero("1970-01-02") && !zero("1988-06-01"));
    }

    /// The letters of "Nguyễn" in UTF-8, read byte by byte as Windows-1252.
    #[test]
    fn spoiled_letters_come_back() {
        assert_eq!(unspoiled("Nguyá»…n"), Some("Nguyễn".to_owned()));
        assert_eq!(unspoiled("JosÃ©"), Some("José".to_owned()));
        for name in ["José", "Nguyễn", "Tamo Rill", "สมชาย", "Đỗ"] {
            assert_eq!(unspoiled(name), None, "{name}");
        }
    }

    #[test]
    fn a_clone_has_one_spelling() {
        for written in ["PB260", "PB 260", "pb-260", "Pb.260"] {
            assert_eq!(clone_name(written).as_deref(), Some("PB260"), "{written}");
        }
        assert_eq!(clone_name("RRIM 600").as_deref(), Some("RRIM600"));
        assert_eq!(clone_name("seedling").as_deref(), Some("seedling"));
        for written in ["?", "PB260, GT1", "GT1/PB260", "260", "PB260 + GT1"] {
            assert_eq!(clone_name(written), None, "{written}");
        }
    }
}
