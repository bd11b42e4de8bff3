//! What each column of an office's list is: by its head in six languages, else by its cells.

use std::collections::BTreeMap;

use super::grid::Grid;
use crate::{
    roll::column::Column,
    words::{phone_number, sms::bare},
};

/// So many rows from the top a line of heads is looked for: titles and notes stand above it.
const TITLE_ROWS_MAX: usize = 20;
/// A line of heads names at least so many columns.
const HEADS_MIN: usize = 2;
/// So large a share of cells that are phone numbers makes a column of phones, in tenths.
const PHONES_TENTHS: usize = 6;

/// Heads by column, as offices write them, without marks (common practice; from memory).
const HEADS: &[(Column, &[&str])] = &[
    (
        Column::Name,
        &[
            "name",
            "farmer",
            "farmer name",
            "full name",
            "farmers name",
            "nom",
            "planteur",
            "nom du planteur",
            "nama",
            "nama petani",
            "petani",
            "nome",
            "produtor",
            "nome do produtor",
            "ชื่อ",
            "ชื่อ-สกุล",
            "ชื่อสกุล",
            "ชื่อเกษตรกร",
            "ho ten",
            "ho va ten",
            "ten",
            "ten ho",
        ],
    ),
    (
        Column::Phone,
        &[
            "phone",
            "phone number",
            "phone no",
            "mobile",
            "tel",
            "telephone",
            "number",
            "cell",
            "contact",
            "no hp",
            "hp",
            "nomor hp",
            "telepon",
            "telefon",
            "telefone",
            "celular",
            "portable",
            "numero",
            "โทร",
            "โทรศัพท์",
            "เบอร์โทร",
            "เบอร์",
            "dien thoai",
            "so dien thoai",
            "sdt",
        ],
    ),
    (
        Column::Group,
        &[
            "group",
            "village",
            "farmer group",
            "groupe",
            "kelompok",
            "desa",
            "grupo",
            "aldeia",
            "กลุ่ม",
            "หมู่บ้าน",
            "nhom",
            "to",
            "ap",
            "thon",
        ],
    ),
    (
        Column::Role,
        &["role", "fonction", "peran", "funcao", "หน้าที่", "vai tro"],
    ),
    (
        Column::Language,
        &[
            "language",
            "lang",
            "langue",
            "bahasa",
            "lingua",
            "idioma",
            "ภาษา",
            "ngon ngu",
        ],
    ),
    (
        Column::ConsentOn,
        &[
            "consent",
            "consent date",
            "agreed",
            "agreed on",
            "consent on",
            "accord",
            "consentement",
            "date accord",
            "persetujuan",
            "setuju",
            "tanggal setuju",
            "consentimento",
            "ยินยอม",
            "วันที่ยินยอม",
            "dong y",
            "ngay dong y",
        ],
    ),
    (
        Column::ConsentHow,
        &[
            "how",
            "consent how",
            "signed",
            "comment",
            "cara",
            "como",
            "วิธี",
            "cach",
        ],
    ),
    (
        Column::Block,
        &[
            "block",
            "plot",
            "field",
            "plot no",
            "parcelle",
            "bloc",
            "blok",
            "kebun",
            "lahan",
            "talhao",
            "lote",
            "แปลง",
            "lo",
            "thua",
        ],
    ),
    (
        Column::Area,
        &[
            "area",
            "size",
            "land",
            "hectares",
            "ha",
            "surface",
            "superficie",
            "luas",
            "luas lahan",
            "area ha",
            "พื้นที่",
            "เนื้อที่",
            "dien tich",
        ],
    ),
    (
        Column::Unit,
        &["unit", "unite", "satuan", "unidade", "หน่วย", "don vi"],
    ),
    (
        Column::CloneName,
        &[
            "clone",
            "variety",
            "klon",
            "varietas",
            "variete",
            "variedade",
            "พันธุ์",
            "พันธุ์ยาง",
            "giong",
        ],
    ),
    (
        Column::Planted,
        &[
            "planted",
            "trees",
            "trees planted",
            "no of trees",
            "number of trees",
            "stand",
            "plants",
            "arbres",
            "nombre d arbres",
            "arbres plantes",
            "pohon",
            "jumlah pohon",
            "arvores",
            "numero de arvores",
            "ต้น",
            "จำนวนต้น",
            "จำนวน",
            "so cay",
            "cay",
        ],
    ),
    (
        Column::PlantedOn,
        &[
            "planting date",
            "planted on",
            "date planted",
            "planting",
            "year planted",
            "date de plantation",
            "annee",
            "plante le",
            "tanggal tanam",
            "tahun tanam",
            "data de plantio",
            "ano",
            "วันปลูก",
            "วันที่ปลูก",
            "ปีปลูก",
            "ngay trong",
            "nam trong",
        ],
    ),
    (
        Column::Alive,
        &[
            "alive",
            "living",
            "live trees",
            "vivants",
            "hidup",
            "vivas",
            "รอด",
            "song",
        ],
    ),
    (
        Column::CountedOn,
        &[
            "counted on",
            "count date",
            "compte le",
            "tanggal hitung",
            "contado em",
            "วันนับ",
            "ngay dem",
        ],
    ),
    (
        Column::SlopePct,
        &[
            "slope",
            "slope pct",
            "pente",
            "lereng",
            "declive",
            "ความชัน",
            "do doc",
        ],
    ),
    (
        Column::Latitude,
        &["latitude", "lat", "lintang", "ละติจูด", "vi do"],
    ),
    (
        Column::Longitude,
        &[
            "longitude",
            "lon",
            "long",
            "lng",
            "bujur",
            "ลองจิจูด",
            "kinh do",
        ],
    ),
];

/// Units that stand in the head of areas.
const UNITS: [(&str, &str); 14] = [
    ("hectares", "ha"),
    ("hectare", "ha"),
    ("hektar", "ha"),
    ("ha", "ha"),
    ("acres", "acre"),
    ("acre", "acre"),
    ("ac", "acre"),
    ("rai", "rai"),
    ("ไร่", "rai"),
    ("m2", "m2"),
    ("sqm", "m2"),
    ("เฮกตาร์", "ha"),
    ("hecta", "ha"),
    ("m²", "m2"),
];

/// What each column is, and where the rows begin.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Mapping {
    /// The line of heads, by its place among the rows.
    pub head_row: usize,
    /// The head of each column as it is written, and what it is.
    pub columns: Vec<(String, Option<Column>)>,
    /// The unit that the head of areas names.
    pub unit: Option<String>,
}

impl Mapping {
    /// What a list's columns probably are. What a person said of a head before stands.
    #[must_use]
    pub fn guessed(grid: &Grid, said: &BTreeMap<String, Option<Column>>) -> Self {
        let rows = grid.rows.iter().take(TITLE_ROWS_MAX).enumerate();
        let known = |cells: &Vec<String>| {
            let cells = cells.iter();
            cells
                .filter(|cell| meant(cell).is_some() || said.contains_key(*cell))
                .count()
        };
        let best = rows
            .map(|(at, (_, cells))| (known(cells), at))
            .max_by_key(|(heads, at)| (*heads, std::cmp::Reverse(*at)));
        let (heads, head_row) = best.unwrap_or((0, 0));
        if heads < HEADS_MIN {
            return Self::default();
        }
        let head = grid.rows.get(head_row).map_or(&[][..], |(_, cells)| cells);
        let mut mapping = Self {
            head_row,
            ..Self::default()
        };
        for (at, cell) in head.iter().enumerate() {
            let told = said.get(cell).copied();
            let guess = || {
                meant(cell)
                    .map(|column| settled(column, grid, head_row, at))
                    .or_else(|| by_cells(grid, head_row, at))
            };
            let column = told.unwrap_or_else(guess);
            let is_taken = |column| mapping.columns.iter().any(|(_, one)| *one == Some(column));
            let column = column.filter(|column| !is_taken(*column));
            if column == Some(Column::Area) {
                mapping.unit = unit_in(cell);
            }
            mapping.columns.push((cell.clone(), column));
        }
        mapping
    }

    /// Where a column is.
    pub(super) fn place(&self, column: Column) -> Option<usize> {
        let mut columns = self.columns.iter();
        columns.position(|(_, one)| *one == Some(column))
    }

    /// Whether the rows say what kind each is, as the plain list has it.
    pub(super) fn is_plain(&self) -> bool {
        self.place(Column::Row).is_some()
    }
}

/// A head in small letters, without marks and signs.
fn plain(head: &str) -> String {
    let letters = bare(&head.to_lowercase()).replace(['\'', '’'], "");
    let words = letters
        .split(|c: char| c.is_whitespace() || (c.is_ascii_punctuation() && c != '-') || c == '_');
    words
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

/// The column that a head names.
fn meant(head: &str) -> Option<Column> {
    if let Some(column) = Column::from_name(&head.trim().to_lowercase()) {
        return Some(column);
    }
    let head = plain(head);
    let named = |text: &str| {
        let mut heads = HEADS.iter();
        heads.find(|(_, names)| names.iter().any(|name| bare(name) == text || *name == text))
    };
    // "Area (rai)", "Luas Ha": the unit is no part of the name.
    let without_unit: Vec<&str> = head
        .split(' ')
        .filter(|word| unit_named(word).is_none())
        .collect();
    named(&head)
        .or_else(|| named(&without_unit.join(" ")))
        .map(|(column, _)| *column)
}

fn unit_named(word: &str) -> Option<&'static str> {
    let mut units = UNITS.iter();
    units.find(|(name, _)| *name == word).map(|(_, unit)| *unit)
}

fn unit_in(head: &str) -> Option<String> {
    let head = plain(head);
    head.split(' ').find_map(unit_named).map(str::to_owned)
}

/// The filled cells of a column below its head.
fn cells(grid: &Grid, head_row: usize, at: usize) -> impl Iterator<Item = &str> {
    let rows = grid.rows.iter().skip(head_row + 1);
    rows.filter_map(move |(_, cells)| cells.get(at))
        .map(String::as_str)
        .filter(|cell| !cell.is_empty())
}

/// "Planted" heads trees in one list and days in another: the cells tell.
fn settled(column: Column, grid: &Grid, head_row: usize, at: usize) -> Column {
    let (mut days, mut all) = (0, 0);
    for cell in cells(grid, head_row, at) {
        all += 1;
        let has_sign = cell.chars().any(|c| matches!(c, '-' | '/' | '.')) || cell.contains(' ');
        let number: Option<u32> = cell.parse().ok();
        let is_year = number.is_some_and(|number| (1950..2650).contains(&number));
        days += usize::from(is_year || (has_sign && cell.chars().any(|c| c.is_ascii_digit())));
    }
    let are_days = days * 2 > all;
    let are_names = || cells(grid, head_row, at).any(|cell| cell.chars().any(char::is_alphabetic));
    if column == Column::Planted && are_days {
        Column::PlantedOn
    } else if column == Column::PlantedOn && all > 0 && !are_days && !are_names() {
        Column::Planted
    } else {
        column
    }
}

/// A column without a known head whose cells are mostly phone numbers.
fn by_cells(grid: &Grid, head_row: usize, at: usize) -> Option<Column> {
    let (mut phones, mut all) = (0, 0);
    for cell in cells(grid, head_row, at) {
        all += 1;
        let digits = cell.chars().filter(char::is_ascii_digit).count();
        phones += usize::from(digits >= 8 && phone_number::parse(cell, "GB").is_ok());
    }
    (all > 0 && phones * 10 >= all * PHONES_TENTHS).then_some(Column::Phone)
}

#[cfg(test)]
mod tests {
    use super::{Column, Mapping, unit_in};
    use crate::roll::take::grid::Grid;

    #[track_caller]
    fn check(csv: &str, expected: &[Option<Column>]) {
        let grid = Grid::read(csv.as_bytes()).unwrap();
        let mapping = Mapping::guessed(&grid, &Default::default());
        let found: Vec<Option<Column>> = mapping.columns.iter().map(|(_, one)| *one).collect();
        assert_eq!(found, expected, "{csv}");
    }

    #[test]
    fn heads_are_known_in_six_languages() {
        use Column::{Area, Block, Group, Name, Phone, Planted, PlantedOn};
        check(
            "List of KOLO\n\nFarmer's name,Tel.,Area (ha),Trees\nx,1,1,1",
            &[Some(Name), Some(Phone), Some(Area), Some(Planted)],
        );
        check(
            "Nom,Téléphone,Superficie,Année\nx,,1,2021",
            &[Some(Name), Some(Phone), Some(Area), Some(PlantedOn)],
        );
        check(
            "Nama,No HP,Luas Ha,Kelompok,Blok\n",
            &[
                Some(Name),
                Some(Phone),
                Some(Area),
                Some(Group),
                Some(Block),
            ],
        );
        check(
            "Nome,Celular,Árvores\nx,1,200",
            &[Some(Name), Some(Phone), Some(Planted)],
        );
        check(
            "ชื่อ-สกุล,เบอร์โทร,เนื้อที่ (ไร่)\n",
            &[Some(Name), Some(Phone), Some(Area)],
        );
        check(
            "Họ tên,Số điện thoại,Diện tích\n",
            &[Some(Name), Some(Phone), Some(Area)],
        );
        check(
            "Name,Planted,Trees\nx,2024-11-20,300",
            &[Some(Name), Some(PlantedOn), Some(Planted)],
        );
        check(
            "Name,Area,?\nx,1,07700 900001\ny,1,07700 900002",
            &[Some(Name), Some(Area), Some(Phone)],
        );
    }

    #[test]
    fn a_head_may_hold_the_unit() {
        assert_eq!(unit_in("Area (rai)").as_deref(), Some("rai"));
        assert_eq!(unit_in("Luas Ha").as_deref(), Some("ha"));
        assert_eq!(unit_in("Area"), None);
    }
}
