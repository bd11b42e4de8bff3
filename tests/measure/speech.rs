//! How people of one language text, as data: `speech/<code>.toml`.
//!
//! The lists are not the reader's packs: what a farmer writes and a pack does not list must be
//! possible, or the measure would flatter the reader. A list is "one; two; three"; words of work
//! are "exact | colloquial | short".

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::{
    chance::Chance,
    draw::{pick, weighted},
};

/// Alternatives, all alike.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(from = "String")]
pub(crate) struct List(pub(crate) Vec<String>);

impl From<String> for List {
    fn from(text: String) -> Self {
        let words = text
            .split(';')
            .map(str::trim)
            .filter(|word| !word.is_empty());
        Self(words.map(str::to_owned).collect())
    }
}

impl List {
    pub(crate) fn draw<'a>(&'a self, chance: &mut Chance) -> &'a str {
        pick::<String>(chance, &self.0)
    }

    /// Pairs written "from=to".
    pub(crate) fn pairs(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0.iter().filter_map(|pair| pair.split_once('='))
    }
}

/// Words for one thing: as the book has it, as people say it, as people shorten it.
#[derive(Clone, Debug, Deserialize)]
#[serde(from = "String")]
pub(crate) struct Words {
    groups: Vec<List>,
}

impl From<String> for Words {
    fn from(text: String) -> Self {
        let groups = text.split('|').map(|group| List::from(group.to_owned()));
        Self {
            groups: groups.filter(|group| !group.0.is_empty()).collect(),
        }
    }
}

impl Words {
    /// Exact 55 %, colloquial 25 %, short 20 %; a group that is empty leaves its share to exact.
    pub(crate) fn draw<'a>(&'a self, chance: &mut Chance) -> &'a str {
        let group = *weighted(chance, &[(0_usize, 55), (1, 25), (2, 20)]);
        let group = self.groups.get(group).or(self.groups.first());
        group.expect("there are words").draw(chance)
    }

    /// A word as the book has it.
    pub(crate) fn exact<'a>(&'a self, chance: &mut Chance) -> &'a str {
        self.groups.first().expect("there are words").draw(chance)
    }

    /// Every word.
    pub(crate) fn all(&self) -> impl Iterator<Item = &str> {
        self.groups
            .iter()
            .flat_map(|group| &group.0)
            .map(String::as_str)
    }
}

/// Words by the name of what they say.
pub(crate) type Lexicon = BTreeMap<String, Words>;

/// One language.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Speech {
    /// The code that `budwood read` is told.
    pub(crate) code: String,
    /// The mark before decimals.
    pub(crate) decimal: String,
    /// Marks are left out by habit, as in French, Vietnamese and Portuguese.
    #[serde(default)]
    pub(crate) strips_marks: bool,
    /// The unit of land, by its name in records.
    #[serde(default = "hectares")]
    pub(crate) area: String,
    /// Words are written without spaces.
    #[serde(default)]
    pub(crate) joined: bool,
    /// English trade words come in more often (Asian languages).
    #[serde(default)]
    pub(crate) loans: Lexicon,
    /// Blocks that are called by a word.
    pub(crate) names: List,
    pub(crate) block: Words,
    pub(crate) work: Lexicon,
    pub(crate) damage: Lexicon,
    pub(crate) disease: Lexicon,
    pub(crate) cause: Lexicon,
    pub(crate) product: Lexicon,
    pub(crate) unit: Lexicon,
    pub(crate) date: Dates,
    pub(crate) manner: Manner,
    #[serde(default)]
    pub(crate) number: Loose,
    pub(crate) said: BTreeMap<String, List>,
    pub(crate) ask: BTreeMap<String, List>,
    pub(crate) adviser: BTreeMap<String, List>,
    pub(crate) negative: BTreeMap<String, List>,
    /// No text has marks, whatever the level.
    #[serde(skip)]
    pub(crate) bare: bool,
    /// Numbers in words, by number; from `numbers.txt`.
    #[serde(skip)]
    pub(crate) numbers: BTreeMap<u32, String>,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Dates {
    pub(crate) today: Words,
    pub(crate) yesterday: Words,
    /// With `{n}`.
    pub(crate) ago: Words,
    /// Monday first.
    pub(crate) weekdays: List,
    /// With `{d}`.
    pub(crate) on: List,
}

#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Manner {
    pub(crate) greeting: List,
    pub(crate) thanks: List,
    pub(crate) title: List,
    /// What takes a report back when it stands behind it.
    pub(crate) not_yet: String,
    pub(crate) tomorrow: String,
    /// "we", "i have": what opens a report.
    pub(crate) opening: List,
    /// "in" before a block; may be empty.
    #[serde(default)]
    pub(crate) at: List,
    pub(crate) and: Words,
    #[serde(default)]
    pub(crate) shorthand: List,
    /// Words that other keys make of a word of work: "dead=deaf".
    #[serde(default)]
    pub(crate) twins: List,
    /// Words of every day that add nothing.
    pub(crate) strange: List,
}

#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Loose {
    /// "12=a dozen".
    #[serde(default)]
    pub(crate) loose: List,
    /// "one twenty" is 120.
    #[serde(default)]
    pub(crate) loose_hundreds: bool,
}

/// The files, by what the table calls them.
const FILES: &[(&str, &str)] = &[
    ("en", include_str!("speech/en.toml")),
    ("fr", include_str!("speech/fr.toml")),
    ("id", include_str!("speech/id.toml")),
    ("vi", include_str!("speech/vi.toml")),
    (BARE, include_str!("speech/vi.toml")),
    ("th", include_str!("speech/th.toml")),
    ("pt", include_str!("speech/pt.toml")),
    ("ms", include_str!("speech/ms.toml")),
    ("en-WA", include_str!("speech/en-WA.toml")),
    ("th-Latn", include_str!("speech/th-Latn.toml")),
    ("ta", include_str!("speech/ta.toml")),
    ("ta-Latn", include_str!("speech/ta-Latn.toml")),
    ("ml", include_str!("speech/ml.toml")),
    ("ml-Latn", include_str!("speech/ml-Latn.toml")),
    ("si", include_str!("speech/si.toml")),
    ("si-Latn", include_str!("speech/si-Latn.toml")),
];

fn hectares() -> String {
    "ha".to_owned()
}

/// Vietnamese as phones without marks send it.
const BARE: &str = "vi-bare";

const NUMBERS: &str = include_str!("speech/numbers.txt");

impl Speech {
    /// Every language that can be spoken here, with its name in the table.
    pub(crate) fn all() -> Vec<(&'static str, Self)> {
        FILES
            .iter()
            .map(|(name, text)| (*name, Self::parse(name, text)))
            .collect()
    }

    fn parse(name: &str, text: &str) -> Self {
        let mut speech: Self =
            toml::from_str(text).unwrap_or_else(|error| panic!("speech/{name}.toml: {error}"));
        let code = name.split('-').next().unwrap_or(name);
        let lines = NUMBERS
            .lines()
            .filter_map(|line| line.strip_prefix(code)?.strip_prefix(' '));
        speech.bare = name == BARE;
        if name == speech.code || speech.bare || name == "en-WA" {
            speech.numbers = lines
                .filter_map(|line| line.split_once(' '))
                .filter_map(|(number, words)| Some((number.parse().ok()?, words.to_owned())))
                .collect();
        }
        speech
    }

    /// The alternatives of a thing said to the bot.
    pub(crate) fn said(&self, what: &str) -> &List {
        self.said
            .get(what)
            .unwrap_or_else(|| panic!("{}: no words for {what:?}", self.code))
    }
}

/// Every list that the generator may draw from is there, in every language, whether or not its
/// pack is loaded: thousands of texts are made, and hardly any two are alike.
#[test]
fn every_language_can_be_spoken() {
    use crate::{rates::Level, run::messages};

    for (index, (language, speech)) in Speech::all().into_iter().enumerate() {
        for level in Level::ALL {
            let texts: std::collections::BTreeSet<String> =
                messages(index as u64, &speech, level, 500)
                    .into_iter()
                    .map(|message| message.text)
                    .collect();
            assert!(texts.len() > 650, "{language}: only {} texts", texts.len());
        }
    }
}
