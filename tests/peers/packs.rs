//! The reader with every pack that ships, and one plain sentence in each language.

use budwood_parser::{Known, Pack, Reader, Reading, Sender, languages};

/// Our packs by code, what the peers call the language, and its words for "planted", "girth" and "block".
pub(crate) const LANGUAGES: [Language; 10] = [
    Language {
        code: "en",
        theirs: "en",
        planted: "planted",
        girth: "girth",
        block: "block",
    },
    Language {
        code: "fr",
        theirs: "fr",
        planted: "planté",
        girth: "circonférence",
        block: "bloc",
    },
    Language {
        code: "id",
        theirs: "id",
        planted: "tanam",
        girth: "lilit",
        block: "blok",
    },
    Language {
        code: "ms",
        theirs: "ms",
        planted: "tanam",
        girth: "lilitan",
        block: "blok",
    },
    Language {
        code: "vi",
        theirs: "vi",
        planted: "trồng",
        girth: "vanh",
        block: "lô",
    },
    Language {
        code: "th",
        theirs: "th",
        planted: "ปลูก",
        girth: "รอบต้น",
        block: "แปลง",
    },
    Language {
        code: "pt",
        theirs: "pt",
        planted: "plantei",
        girth: "circunferência",
        block: "lote",
    },
    Language {
        code: "ta",
        theirs: "ta",
        planted: "நட்டேன்",
        girth: "சுற்றளவு",
        block: "தோட்டம்",
    },
    Language {
        code: "ml",
        theirs: "ml",
        planted: "നട്ടു",
        girth: "വണ്ണം",
        block: "തോട്ടം",
    },
    Language {
        code: "si",
        theirs: "si",
        planted: "සිටෙව්වා",
        girth: "වට ප්‍රමාණය",
        block: "කොටස",
    },
];

/// A language in our words and theirs.
#[derive(Clone, Copy)]
pub(crate) struct Language {
    pub(crate) code: &'static str,
    pub(crate) theirs: &'static str,
    pub(crate) planted: &'static str,
    pub(crate) girth: &'static str,
    pub(crate) block: &'static str,
}

/// The reader that ships.
pub(crate) fn reader() -> Reader {
    let packs: Result<Vec<Pack>, _> = languages::ALL
        .iter()
        .map(|toml| Pack::parse(toml))
        .collect();
    Reader::new(packs.expect("the packs that ship can be read")).expect("they agree")
}

/// The languages whose pack is loaded.
pub(crate) fn spoken(reader: &Reader) -> Vec<Language> {
    let loaded: Vec<&str> = reader.languages().collect();
    assert!(loaded.contains(&"en"));
    let languages = LANGUAGES.iter().copied();
    languages
        .filter(|language| loaded.contains(&language.code))
        .collect()
}

/// Reads a text of a farmer with blocks A and B who writes this language.
pub(crate) fn read(reader: &Reader, language: Language, text: &str) -> Reading {
    let known = Known {
        languages: &[language.code],
        blocks: &["A", "B"],
        groups: &[],
        members: &[],
        rolls: &[],
        sender: Sender::Farmer,
    };
    reader.read(text, &known)
}
