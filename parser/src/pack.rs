//! A language pack: the words of one language, as data.
//!
//! A pack is a TOML file. Each table is one sort of meaning, each key in it one value, each list
//! the words and phrases for it (at most six words each), most usual first. Capitals and
//! apostrophes do not matter; a phrase with accents is also known without them. A phrase may stand
//! in several tables ("plant" is work and a unit of count), but under two kinds it is a fault.
//!
//! | table | keys | for example |
//! | --- | --- | --- |
//! | `kinds` | names of [`Kind`] | `planted = ["planted", "plant"]` |
//! | `land` | square metres, or `varies` | `400 = ["ngan"]` |
//! | `ailments`, `causes`, `materials`, `extents`, `wetness`, `per`, `units` | names of these | `wind = ["storm"]` |
//! | `fertilisers`, `sprays`, `crops`, `covers`, `clones` | the name that is kept; `any` keeps none | `urea = ["uria"]` |
//! | `days_ago` | days | `1 = ["yesterday"]` |
//! | `ago`, `periods` | days for each one counted | `7 = ["weeks ago"]` |
//! | `weekdays`, `months` | names of [`Day`], 1 to 12 | `monday = ["mon"]` |
//! | `stances`, `alarms`, `topics`, `adviser` | names of these | `plan = ["will"]` |
//! | `words` | words without a value | `block = ["plot"]` |
//! | `books` | names of topics: how a text begins that asks or fills the books | `stock = ["stock"]` |
//! | `own` | names of topics, with `_yes` or `_no` for a decision: the whole text | `share_yes = ["share yes"]` |
//! | `numbers` | how number words join, see below | `values.20 = ["twenty"]` |
//! | `twins` | a listed word | `dead = ["deaf"]`: always asked about |
//! | `expands` | listed words | `"satu karung" = ["sekarung"]`: one word for several |
//! | `buddhist_years` (yes or no) | | whether "69" after a month is the year 2569 |
//! | `weak` (a list) | | words that ordinary chat is full of |
//!
//! `numbers` holds `values` (a word that is a number, also "seratus"), `scales` (multiplies what
//! stands before it: 10, 100, 1000), `plus` (adds, as "belas" adds ten), `loose` (a dozen), `one`
//! (the article in "a hundred"), `join` ("and"; with `join_tens` also after tens and before
//! hundreds), `half_scale`, `unit_after` and `teen_after` (the values that a unit, or ten to
//! nineteen, may follow), `short_after` (scales after which a bare unit counts tenths of it, as in
//! Vietnamese "trăm hai" for 120), `loose_after` (scales after which it may) and `loose_hundreds`.
//! A word may be in several of these: the first reading that fits is taken.
//!
//! Deliberately absent: texts that are sent. Those belong to the bot.

mod check;

use alloc::{
    format,
    string::{String, ToString},
    vec::Vec,
};

pub use self::check::PackDoubt;

use crate::{
    details::{Ailment, Cause, Extent, Material, Per, Unit, Wetness},
    glyphs::fold::fold,
    kind::Kind,
    meaning::{Meaning, Numeral, Plain},
    reading::{Alarm, Stance, Topic},
    table::{Table, TableError, read_file},
    when::Day,
};

/// Phrases are looked up by at most so many words.
pub(crate) const PHRASE_WORDS_MAX: usize = 6;
/// More entries than this are a mistake in a file, not a language.
const ENTRIES_MAX: usize = 20_000;
/// The key of words such as "fertiliser" that name a sort of thing and none of its kind.
const NO_NAME: &str = "any";
/// The code of the pack of words that every language shares.
pub(crate) const TRADE_CODE: &str = "trade";

/// What is wrong with a language pack.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum PackFault {
    /// A key is missing, of the wrong type, or not known.
    #[error(transparent)]
    Key(#[from] TableError),
    /// One entry is claimed by two kinds of work.
    #[error("language pack {pack}: \"{phrase}\" is listed both as {first} and as {second}")]
    TwoKinds {
        /// The code of the pack.
        pack: String,
        /// The entry.
        phrase: String,
        /// The name of one kind.
        first: &'static str,
        /// The name of the other.
        second: &'static str,
    },
    /// An entry that no text can match.
    #[error("language pack {pack}: \"{phrase}\" can never be found in a text: {why}")]
    Unreachable {
        /// The code of the pack.
        pack: String,
        /// The entry.
        phrase: String,
        /// What stands against it.
        why: String,
    },
    /// A word of work that is a word of every chat.
    #[error("language pack {pack}: \"{phrase}\" is in nearly every chat: list it under weak too")]
    CommonWord {
        /// The code of the pack.
        pack: String,
        /// The entry.
        phrase: String,
    },
    /// Two packs have one code.
    #[error("language pack {0} is loaded twice")]
    Twice(String),
    /// There are more packs than a reader can tell apart.
    #[error("more than {0} language packs")]
    TooMany(usize),
}

/// The words of one language.
#[derive(Clone, Debug)]
pub struct Pack {
    pub(crate) code: String,
    pub(crate) name: String,
    pub(crate) entries: Vec<Entry>,
    pub(crate) weak: Vec<String>,
    /// A real word and the listed word that it stands for when a phone guessed wrong.
    pub(crate) twins: Vec<(String, String)>,
    /// A word, and the listed words that it stands for ("sekarung": "satu karung").
    pub(crate) expands: Vec<(String, String)>,
    pub(crate) joins: Joins,
    /// What a text begins with that asks the books of a group, or enters something in them.
    pub(crate) books: Vec<(String, Topic)>,
    /// What a text is, word for word, that decides something about the sender alone.
    pub(crate) own: Vec<Own>,
    /// What a text begins with that tells of a printed sheet.
    pub(crate) sheet: Vec<String>,
    /// What stands before the number of a row of it.
    pub(crate) row: Vec<String>,
}

/// Words by which people decide something about themselves, what they decide, and how.
#[derive(Clone, Debug)]
pub(crate) struct Own {
    pub(crate) phrase: String,
    pub(crate) topic: Topic,
    pub(crate) yes: Option<bool>,
}

/// A word or phrase with one meaning.
#[derive(Clone, Debug)]
pub(crate) struct Entry {
    pub(crate) phrase: String,
    pub(crate) meaning: Meaning,
    /// The usual name of a product, crop or clone.
    pub(crate) name: Option<String>,
}

/// How number words of a language follow each other.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Joins {
    /// Values that a unit may follow: twenty, thirty.
    pub(crate) unit_after: Vec<u32>,
    /// Values that ten to nineteen may follow, as in French after sixty.
    pub(crate) teen_after: Vec<u32>,
    /// Whether the joining word may also stand after tens, as in French "vingt et un".
    pub(crate) join_tens: bool,
    /// Scales after which a bare unit counts tenths of the scale: Vietnamese "trăm hai" is 120.
    pub(crate) short_after: Vec<u32>,
    /// Scales after which a bare unit may count tenths, so that it is asked about.
    pub(crate) loose_after: Vec<u32>,
    /// Whether "one twenty" is a loose hundred and twenty.
    pub(crate) loose_hundreds: bool,
}

impl Pack {
    /// Reads a pack.
    ///
    /// # Errors
    ///
    /// When the text is not a pack; the error names the key.
    pub fn parse(toml: &str) -> Result<Self, PackFault> {
        let pack = read_file(toml, read_pack)?;
        check::fault(&pack).map_or(Ok(pack), Err)
    }

    /// The code, such as "en".
    #[must_use]
    pub fn code(&self) -> &str {
        &self.code
    }

    /// The name of the language, in English.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }
    /// What in it should be looked at by the person who writes it. None of it keeps the pack from
    /// being used.
    #[must_use]
    pub fn doubts(&self) -> Vec<PackDoubt> {
        check::doubts(self)
    }
}

fn read_pack(file: &Table<'_>) -> Result<Pack, TableError> {
    let mut entries = Vec::new();
    for (section, meaning) in SECTIONS {
        file.table(section, |table| read_section(table, *meaning, &mut entries))?;
    }
    file.table("land", |table| read_land(table, &mut entries))?;
    let mut joins = Joins::default();
    file.table("numbers", |table| {
        joins = read_numbers(table, &mut entries)?;
        Ok(())
    })?;
    if entries.len() > ENTRIES_MAX {
        return Err(TableError::new(
            "file",
            format!("more than {ENTRIES_MAX} entries"),
        ));
    }
    if file.flag("buddhist_years")?.unwrap_or(false) {
        let months: Vec<Entry> = entries
            .iter()
            .filter(|entry| entry.meaning.month().is_some())
            .map(|month| Entry {
                meaning: Meaning::Plain(Plain::BuddhistMonth),
                ..month.clone()
            })
            .collect();
        entries.extend(months);
    }
    let (sheet, row) = read_paper(file)?;
    Ok(Pack {
        code: file.need_text("code")?.to_string(),
        name: file.need_text("name")?.to_string(),
        weak: file.texts("weak")?.into_iter().map(fold).collect(),
        twins: read_pairs(file, "twins")?,
        expands: read_pairs(file, "expands")?,
        books: read_books(file)?,
        own: read_own(file)?,
        sheet,
        row,
        entries,
        joins,
    })
}

/// Words, each with the words of the key that it stands for.
fn read_pairs(file: &Table<'_>, section: &str) -> Result<Vec<(String, String)>, TableError> {
    let mut pairs = Vec::new();
    file.table(section, |table| {
        for key in table.keys() {
            let whole = fold(key);
            check_words(table, key, &whole)?;
            for word in table.texts(key)? {
                pairs.push((fold(word), whole.clone()));
            }
        }
        Ok(())
    })?;
    Ok(pairs)
}

/// Words for a printed sheet and for its rows. They are no words of the lists either.
fn read_paper(file: &Table<'_>) -> Result<(Vec<String>, Vec<String>), TableError> {
    let words = |table: &Table<'_>, key: &str| {
        let mut words = Vec::new();
        for word in table.texts(key)? {
            let word = fold(word);
            check_words(table, key, &word)?;
            words.push(word);
        }
        Ok(words)
    };
    let paper = file.table("paper", |table| {
        Ok((words(table, "sheet")?, words(table, "row")?))
    })?;
    Ok(paper.unwrap_or_default())
}

/// Words by which the books are asked. They are no words of the lists: they count only at the begin of
/// a text of who keeps books.
fn read_books(file: &Table<'_>) -> Result<Vec<(String, Topic)>, TableError> {
    let mut books = Vec::new();
    file.table("books", |table| {
        for key in table.keys() {
            let topic = Topic::from_name(key);
            let topic = topic.ok_or_else(|| table.error(key, "is not a key that is known here"))?;
            for phrase in table.texts(key)? {
                let phrase = fold(phrase);
                check_words(table, key, &phrase)?;
                books.push((phrase, topic));
            }
        }
        Ok(())
    })?;
    Ok(books)
}

/// Words by which people decide something about themselves, as `share_yes`. They are no words of the
/// lists: they count only as the whole text.
fn read_own(file: &Table<'_>) -> Result<Vec<Own>, TableError> {
    let mut own = Vec::new();
    file.table("own", |table| {
        for key in table.keys() {
            let (name, yes) = match (key.strip_suffix("_yes"), key.strip_suffix("_no")) {
                (Some(name), _) => (name, Some(true)),
                (_, Some(name)) => (name, Some(false)),
                (None, None) => (key, None),
            };
            let topic = Topic::from_name(name);
            let topic = topic.ok_or_else(|| table.error(key, "is not a key that is known here"))?;
            for phrase in table.texts(key)? {
                let phrase = fold(phrase);
                check_words(table, key, &phrase)?;
                own.push(Own { phrase, topic, yes });
            }
        }
        Ok(())
    })?;
    Ok(own)
}

fn check_words(table: &Table<'_>, key: &str, phrase: &str) -> Result<(), TableError> {
    let words = phrase.split_whitespace().count();
    if (1..=PHRASE_WORDS_MAX).contains(&words) {
        return Ok(());
    }
    Err(table.error(
        key,
        format!("\"{phrase}\": expected 1 to {PHRASE_WORDS_MAX} words, found {words}"),
    ))
}

/// From a key of a section to what its words mean.
type ToMeaning = fn(&str) -> Option<Meaning>;

const SECTIONS: &[(&str, ToMeaning)] = &[
    ("kinds", |key| Kind::from_name(key).map(Meaning::Kind)),
    ("ailments", |key| {
        Ailment::from_name(key).map(Meaning::Ailment)
    }),
    ("causes", |key| Cause::from_name(key).map(Meaning::Cause)),
    ("fertilisers", |_| Some(Meaning::Fertiliser)),
    ("sprays", |_| Some(Meaning::Spray)),
    ("crops", |_| Some(Meaning::Crop)),
    ("covers", |_| Some(Meaning::Cover)),
    ("clones", |_| Some(Meaning::Clone)),
    ("materials", |key| {
        Material::from_name(key).map(Meaning::Material)
    }),
    ("units", |key| Unit::from_name(key).map(Meaning::Unit)),
    ("extents", |key| Extent::from_name(key).map(Meaning::Extent)),
    ("wetness", |key| {
        Wetness::from_name(key).map(Meaning::Wetness)
    }),
    ("per", |key| Per::from_name(key).map(Meaning::Per)),
    ("days_ago", |key| key.parse().ok().map(Meaning::DaysAgo)),
    ("weekdays", |key| Day::from_name(key).map(Meaning::Weekday)),
    ("months", |key| {
        let month = key.parse().ok()?;
        (1..=12).contains(&month).then_some(Meaning::Month(month))
    }),
    ("ago", |key| key.parse().ok().map(Meaning::Ago)),
    ("periods", |key| key.parse().ok().map(Meaning::Period)),
    ("stances", |key| Stance::from_name(key).map(Meaning::Stance)),
    ("alarms", |key| Alarm::from_name(key).map(Meaning::Alarm)),
    ("topics", |key| Topic::from_name(key).map(Meaning::Topic)),
    ("adviser", |key| {
        Topic::from_name(key).map(Meaning::AdviserTopic)
    }),
    ("words", |key| Plain::from_name(key).map(Meaning::Plain)),
];

/// Meanings whose key is a name to keep ("urea").
fn keeps_name(meaning: Meaning) -> bool {
    matches!(
        meaning,
        Meaning::Fertiliser | Meaning::Spray | Meaning::Crop | Meaning::Cover | Meaning::Clone
    )
}

fn read_section(
    table: &Table<'_>,
    to_meaning: ToMeaning,
    entries: &mut Vec<Entry>,
) -> Result<(), TableError> {
    for key in table.keys() {
        let meaning =
            to_meaning(key).ok_or_else(|| table.error(key, "is not a key that is known here"))?;
        let name = (keeps_name(meaning) && key != NO_NAME).then(|| key.to_string());
        read_phrases(table, key, meaning, name.as_deref(), entries)?;
    }
    Ok(())
}

/// The key of units of land whose size differs from place to place.
const LAND_VARIES: &str = "varies";
/// Units of land by their size: each is a unit of square metres and says how many.
fn read_land(table: &Table<'_>, entries: &mut Vec<Entry>) -> Result<(), TableError> {
    for key in table.keys() {
        let size = if key == LAND_VARIES {
            None
        } else {
            Some(land_size(key).ok_or_else(|| table.error(key, "expected square metres as key"))?)
        };
        read_phrases(table, key, Meaning::Land(size), None, entries)?;
        if size.is_some() {
            let unit = Meaning::Unit(Unit::SquareMetre);
            read_phrases(table, key, unit, None, entries)?;
        }
    }
    Ok(())
}

/// Square decimetres of a size such as "400" or "40.47", in square metres.
fn land_size(key: &str) -> Option<u32> {
    let (metres, rest) = key.split_once('.').unwrap_or((key, "00"));
    let metres: u32 = metres.parse().ok()?;
    let rest: u32 = (rest.len() == 2).then(|| rest.parse().ok())??;
    metres.checked_mul(100)?.checked_add(rest)
}

fn read_phrases(
    table: &Table<'_>,
    key: &str,
    meaning: Meaning,
    name: Option<&str>,
    entries: &mut Vec<Entry>,
) -> Result<(), TableError> {
    for text in table.texts(key)? {
        let phrase = fold(text);
        check_words(table, key, &phrase)?;
        entries.push(Entry {
            phrase,
            meaning,
            name: name.map(ToString::to_string),
        });
    }
    Ok(())
}

fn read_numbers(table: &Table<'_>, entries: &mut Vec<Entry>) -> Result<Joins, TableError> {
    for (key, make) in [
        ("values", Numeral::Value as fn(u32) -> Numeral),
        ("scales", Numeral::Scale),
        ("plus", Numeral::Plus),
        ("loose", Numeral::Loose),
    ] {
        table.table(key, |inner| {
            for key in inner.keys() {
                let value = key
                    .parse()
                    .map_err(|_| inner.error(key, "expected a number as key"))?;
                read_phrases(inner, key, Meaning::Numeral(make(value)), None, entries)?;
            }
            Ok(())
        })?;
    }
    for (key, numeral) in [
        ("one", Numeral::One),
        ("join", Numeral::Join),
        ("half_scale", Numeral::HalfScale),
    ] {
        read_phrases(table, key, Meaning::Numeral(numeral), None, entries)?;
    }
    Ok(Joins {
        unit_after: whole_numbers(table, "unit_after")?,
        teen_after: whole_numbers(table, "teen_after")?,
        short_after: whole_numbers(table, "short_after")?,
        loose_after: whole_numbers(table, "loose_after")?,
        join_tens: table.flag("join_tens")?.unwrap_or(false),
        loose_hundreds: table.flag("loose_hundreds")?.unwrap_or(false),
    })
}

fn whole_numbers(table: &Table<'_>, key: &str) -> Result<Vec<u32>, TableError> {
    table
        .numbers(key)?
        .into_iter()
        .map(|value| {
            crate::glyphs::figure::whole(value)
                .ok_or_else(|| table.error(key, "expected whole numbers"))
        })
        .collect()
}
