//! What the texts of each language must hold: words to reply with, and cautions.
//!
//! All from memory, as the texts are. Deliberately absent: whether the reader knows the words,
//! which `reply` checks.

/// What is checked of one language.
pub(super) struct Speech {
    /// Its code.
    pub(super) code: &'static str,
    /// What people reply, and what advisers ask.
    pub(super) words: &'static [(Reply, &'static str)],
    /// Other words in capitals.
    pub(super) capitals: &'static [&'static str],
    /// What a text that can lead to harm must say.
    pub(super) cautions: &'static [(&'static str, &'static [&'static str])],
}

/// What a reply means, whatever the language.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Reply {
    No,
    Yes,
    Stop,
    Start,
    Help,
    Done,
    Erase,
    CallMe,
    Next,
    Language,
    Pits,
    Planted,
    Dead,
    Filled,
    Weeded,
    Fed,
    Pruned,
    Induced,
    Branched,
    Root,
    Girth,
    Status,
    Late,
    Quiet,
    Gaps,
    Sick,
    Window,
}

/// Texts that ask for a reply, and for which.
pub(super) const ASKING: [(&str, Reply); 35] = [
    ("read-back", Reply::No),
    ("read-back-rain", Reply::No),
    ("changed", Reply::No),
    ("moved", Reply::No),
    ("done", Reply::No),
    ("help", Reply::Stop),
    ("help", Reply::Next),
    ("help", Reply::CallMe),
    ("help", Reply::Language),
    ("help", Reply::No),
    ("help-adviser", Reply::Status),
    ("help-adviser", Reply::Late),
    ("help-adviser", Reply::Quiet),
    ("help-adviser", Reply::Gaps),
    ("help-adviser", Reply::Sick),
    ("help-adviser", Reply::Window),
    ("stopped", Reply::Start),
    ("stopped", Reply::Erase),
    ("started", Reply::Stop),
    ("who", Reply::Stop),
    ("who", Reply::Help),
    ("languages", Reply::Language),
    ("nothing-open", Reply::Next),
    ("erase-ask", Reply::Yes),
    ("nudge-order_plants", Reply::Done),
    ("nudge-dig_pits", Reply::Pits),
    ("nudge-plant", Reply::Planted),
    ("nudge-survival_check", Reply::Dead),
    ("nudge-backfill", Reply::Filled),
    ("nudge-weed", Reply::Weeded),
    ("nudge-feed", Reply::Fed),
    ("nudge-prune", Reply::Pruned),
    ("nudge-induce_branching", Reply::Induced),
    ("nudge-look_at_induced", Reply::Branched),
    ("nudge-root_check", Reply::Root),
];

/// Every language that has texts.
pub(super) const ALL: [&Speech; 1] = [&ENGLISH];

const ENGLISH: Speech = Speech {
    code: "en",
    words: &[
        (Reply::No, "NO"),
        (Reply::Yes, "YES"),
        (Reply::Stop, "STOP"),
        (Reply::Start, "START"),
        (Reply::Help, "HELP"),
        (Reply::Done, "DONE"),
        (Reply::Erase, "ERASE"),
        (Reply::CallMe, "CALL ME"),
        (Reply::Next, "WHAT NOW"),
        (Reply::Language, "LANGUAGE"),
        (Reply::Pits, "PITS"),
        (Reply::Planted, "PLANTED"),
        (Reply::Dead, "DEAD"),
        (Reply::Filled, "FILLED"),
        (Reply::Weeded, "WEEDED"),
        (Reply::Fed, "FED"),
        (Reply::Pruned, "PRUNED"),
        (Reply::Induced, "INDUCED"),
        (Reply::Branched, "BRANCHED"),
        (Reply::Root, "ROOT"),
        (Reply::Girth, "GIRTH"),
        (Reply::Status, "STATUS"),
        (Reply::Late, "LATE"),
        (Reply::Quiet, "QUIET"),
        (Reply::Gaps, "GAPS"),
        (Reply::Sick, "SICK"),
        (Reply::Window, "WINDOW"),
    ],
    capitals: &["PIN"],
    cautions: &[
        ("nudge-weed", &["by hand", "blade away"]),
        ("nudge-prune", &["from the ground", "no climbing"]),
        (
            "nudge-induce_branching",
            &["no climbing", "the way you were shown"],
        ),
        ("nudge-dig_pits", &["mark open pits", "children off"]),
        ("nudge-feed", &["gloves"]),
        ("nudge-root_check", &["do not pull"]),
        ("nudge-open", &["looks before you open"]),
        ("stand-sick", &["do not pull or spray"]),
        ("stand-harm", &["stay clear of hanging branches"]),
        ("stand-label", &["label", "wash hands"]),
        (
            "may-spray",
            &[
                "can not give spray advice",
                "label",
                "local law",
                "trained person",
                "cover up",
            ],
        ),
        ("may-tap-check", &["do not tap yet"]),
        ("call-me", &["danger", "safe place"]),
    ],
};
