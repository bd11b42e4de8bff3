//! Number words of ten languages as the few lines of data that a pack needs for them.
//!
//! Source: the words themselves are those of `num2words2` 1.0.20, which also gives the numbers that
//! they are held against.

/// Code and pack.
pub(super) const ALL: [(&str, &str); 9] = [
    ("fr", FRENCH_NUMBERS),
    ("id", INDONESIAN_NUMBERS),
    ("ms", MALAY_NUMBERS),
    ("vi", VIETNAMESE_NUMBERS),
    ("th", THAI_NUMBERS),
    ("pt", PORTUGUESE_NUMBERS),
    ("ta", TAMIL_NUMBERS),
    ("ml", MALAYALAM_NUMBERS),
    ("si", SINHALA_NUMBERS),
];

const FRENCH_NUMBERS: &str = r#"
code = "fr"
name = "French"
[numbers]
join = ["et"]
join_tens = true
unit_after = [10, 20, 30, 40, 50, 60, 70, 80]
teen_after = [60, 80]
values.0 = ["zéro"]
values.1 = ["un", "une"]
values.2 = ["deux"]
values.3 = ["trois"]
values.4 = ["quatre"]
values.5 = ["cinq"]
values.6 = ["six"]
values.7 = ["sept"]
values.8 = ["huit"]
values.9 = ["neuf"]
values.10 = ["dix"]
values.11 = ["onze"]
values.12 = ["douze"]
values.13 = ["treize"]
values.14 = ["quatorze"]
values.15 = ["quinze"]
values.16 = ["seize"]
values.20 = ["vingt"]
values.30 = ["trente"]
values.40 = ["quarante"]
values.50 = ["cinquante"]
values.60 = ["soixante"]
values.70 = ["septante"]
values.80 = ["quatre vingt", "quatre vingts", "huitante", "octante"]
values.90 = ["nonante"]
values.100 = ["cent"]
values.1000 = ["mille"]
scales.100 = ["cent", "cents"]
scales.1000 = ["mille"]
"#;

const INDONESIAN_NUMBERS: &str = r#"
code = "id"
name = "Indonesian"
[numbers]
unit_after = [20, 30, 40, 50, 60, 70, 80, 90]
values.0 = ["nol"]
values.1 = ["satu"]
values.2 = ["dua"]
values.3 = ["tiga"]
values.4 = ["empat"]
values.5 = ["lima"]
values.6 = ["enam"]
values.7 = ["tujuh"]
values.8 = ["delapan"]
values.9 = ["sembilan"]
values.10 = ["sepuluh"]
values.11 = ["sebelas"]
values.100 = ["seratus"]
values.1000 = ["seribu"]
plus.10 = ["belas"]
scales.10 = ["puluh"]
scales.100 = ["ratus"]
scales.1000 = ["ribu"]
"#;

const VIETNAMESE_NUMBERS: &str = r#"
code = "vi"
name = "Vietnamese"
[numbers]
join = ["lẻ", "linh"]
unit_after = [10, 20, 30, 40, 50, 60, 70, 80, 90]
half_scale = ["rưỡi"]
short_after = [100, 1000]
values.0 = ["không"]
values.1 = ["một", "mốt"]
values.2 = ["hai"]
values.3 = ["ba"]
values.4 = ["bốn", "tư"]
values.5 = ["năm", "lăm", "nhăm"]
values.6 = ["sáu"]
values.7 = ["bảy"]
values.8 = ["tám"]
values.9 = ["chín"]
values.10 = ["mười"]
scales.10 = ["mười", "mươi", "chục"]
scales.100 = ["trăm"]
scales.1000 = ["nghìn", "ngàn"]
"#;

const THAI_NUMBERS: &str = r#"
code = "th"
name = "Thai"
[numbers]
unit_after = [10, 20, 30, 40, 50, 60, 70, 80, 90]
values.0 = ["ศูนย์"]
values.1 = ["หนึ่ง", "เอ็ด"]
values.2 = ["สอง"]
values.3 = ["สาม"]
values.4 = ["สี่"]
values.5 = ["ห้า"]
values.6 = ["หก"]
values.7 = ["เจ็ด"]
values.8 = ["แปด"]
values.9 = ["เก้า"]
values.20 = ["ยี่สิบ"]
values.100 = ["ร้อย"]
values.1000 = ["พัน"]
scales.10 = ["สิบ"]
scales.100 = ["ร้อย"]
scales.1000 = ["พัน"]
"#;

const MALAY_NUMBERS: &str = r#"
code = "ms"
name = "Malay"
[numbers]
unit_after = [20, 30, 40, 50, 60, 70, 80, 90]
values.0 = ["kosong"]
values.1 = ["satu"]
values.2 = ["dua"]
values.3 = ["tiga"]
values.4 = ["empat"]
values.5 = ["lima"]
values.6 = ["enam"]
values.7 = ["tujuh"]
values.8 = ["lapan"]
values.9 = ["sembilan"]
values.10 = ["sepuluh"]
values.11 = ["sebelas"]
values.100 = ["seratus"]
values.1000 = ["seribu"]
plus.10 = ["belas"]
scales.10 = ["puluh"]
scales.100 = ["ratus"]
scales.1000 = ["ribu"]
"#;

const PORTUGUESE_NUMBERS: &str = r#"
code = "pt"
name = "Portuguese"
[numbers]
join = ["e"]
join_tens = true
unit_after = [20, 30, 40, 50, 60, 70, 80, 90]
values.0 = ["zero"]
values.1 = ["um"]
values.2 = ["dois"]
values.3 = ["três"]
values.4 = ["quatro"]
values.5 = ["cinco"]
values.6 = ["seis"]
values.7 = ["sete"]
values.8 = ["oito"]
values.9 = ["nove"]
values.10 = ["dez"]
values.11 = ["onze"]
values.12 = ["doze"]
values.13 = ["treze"]
values.14 = ["catorze"]
values.15 = ["quinze"]
values.16 = ["dezesseis", "dezasseis"]
values.17 = ["dezessete", "dezassete"]
values.18 = ["dezoito"]
values.19 = ["dezenove", "dezanove"]
values.20 = ["vinte"]
values.30 = ["trinta"]
values.40 = ["quarenta"]
values.50 = ["cinquenta"]
values.60 = ["sessenta"]
values.70 = ["setenta"]
values.80 = ["oitenta"]
values.90 = ["noventa"]
values.100 = ["cem", "cento"]
values.200 = ["duzentos"]
values.300 = ["trezentos"]
values.400 = ["quatrocentos"]
values.500 = ["quinhentos"]
values.600 = ["seiscentos"]
values.700 = ["setecentos"]
values.800 = ["oitocentos"]
values.900 = ["novecentos"]
values.1000 = ["mil"]
scales.1000 = ["mil"]
"#;

const TAMIL_NUMBERS: &str = r#"
code = "ta"
name = "Tamil"
[numbers]
unit_after = [20, 30, 40, 50, 60, 70, 80, 90]
values.0 = ["பூஜ்ஜியம்"]
values.1 = ["ஒன்று"]
values.2 = ["இரண்டு"]
values.3 = ["மூன்று"]
values.4 = ["நான்கு"]
values.5 = ["ஐந்து"]
values.6 = ["ஆறு"]
values.7 = ["ஏழு"]
values.8 = ["எட்டு"]
values.9 = ["ஒன்பது"]
values.10 = ["பத்து"]
values.11 = ["பதினொன்று"]
values.12 = ["பன்னிரண்டு"]
values.13 = ["பதின்மூன்று"]
values.14 = ["பதினான்கு"]
values.15 = ["பதினைந்து"]
values.16 = ["பதினாறு"]
values.17 = ["பதினேழு"]
values.18 = ["பதினெட்டு"]
values.19 = ["பத்தொன்பது"]
values.20 = ["இருபது"]
values.30 = ["முப்பது"]
values.40 = ["நாற்பது"]
values.50 = ["ஐம்பது"]
values.60 = ["அறுபது"]
values.70 = ["எழுபது"]
values.80 = ["எண்பது"]
values.90 = ["தொண்ணூறு"]
values.100 = ["நூறு"]
values.200 = ["இருநூறு"]
values.300 = ["முன்னூறு"]
values.400 = ["நானூறு"]
values.500 = ["ஐநூறு"]
values.600 = ["அறுநூறு"]
values.700 = ["எழுநூறு"]
values.800 = ["எண்ணூறு"]
values.900 = ["தொள்ளாயிரம்"]
values.1000 = ["ஆயிரம்"]
scales.1000 = ["ஆயிரம்"]
"#;

const MALAYALAM_NUMBERS: &str = r#"
code = "ml"
name = "Malayalam"
[numbers]
unit_after = [20, 30, 40, 50, 60, 70, 80, 90]
values.0 = ["പൂജ്യം"]
values.1 = ["ഒന്ന്"]
values.2 = ["രണ്ട്"]
values.3 = ["മൂന്ന്"]
values.4 = ["നാല്"]
values.5 = ["അഞ്ച്"]
values.6 = ["ആറ്"]
values.7 = ["ഏഴ്"]
values.8 = ["എട്ട്"]
values.9 = ["ഒൻപത്"]
values.10 = ["പത്ത്"]
values.11 = ["പതിനൊന്ന്"]
values.12 = ["പന്ത്രണ്ട്"]
values.13 = ["പതിമൂന്ന്"]
values.14 = ["പതിനാല്"]
values.15 = ["പതിനഞ്ച്"]
values.16 = ["പതിനാറ്"]
values.17 = ["പതിനേഴ്"]
values.18 = ["പതിനെട്ട്"]
values.19 = ["പത്തൊൻപത്"]
values.20 = ["ഇരുപത്"]
values.30 = ["മുപ്പത്"]
values.40 = ["നാല്പത്"]
values.50 = ["അമ്പത്"]
values.60 = ["അറുപത്"]
values.70 = ["എഴുപത്"]
values.80 = ["എൺപത്"]
values.90 = ["തൊണ്ണൂറ്"]
values.100 = ["നൂറ്റി", "നൂറ്"]
scales.100 = ["നൂറ്"]
scales.1000 = ["ആയിരം"]
"#;

const SINHALA_NUMBERS: &str = r#"
code = "si"
name = "Sinhala"
[numbers]
unit_after = [10, 20, 30, 40, 50, 60, 70, 80, 90]
values.0 = ["බිංදුව"]
values.1 = ["එක"]
values.2 = ["දෙක"]
values.3 = ["තුන"]
values.4 = ["හතර"]
values.5 = ["පහ"]
values.6 = ["හය"]
values.7 = ["හත"]
values.8 = ["අට"]
values.9 = ["නවය"]
values.10 = ["දහය"]
values.20 = ["විස්ස"]
values.30 = ["තිහ"]
values.40 = ["හතළිහ"]
values.50 = ["පනහ"]
values.60 = ["හැට"]
values.70 = ["හැත්තෑව"]
values.80 = ["අසූව"]
values.90 = ["අනූව"]
values.100 = ["සියය"]
values.1000 = ["දහස"]
scales.100 = ["සියය"]
scales.1000 = ["දහස"]
"#;
