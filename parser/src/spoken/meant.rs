//! What a text asks of the bot, or has it do, as far as it was learned of other people's questions.
//!
//! The whole text is looked at, whatever the order of its words: its words and pairs of words, runs of
//! letters, what the lists call them, who texts, and what kinds of names stand in it. Deliberately
//! absent: names, numbers and days of the question (`queries`).

use alloc::vec::Vec;

use crate::{
    glyphs::fold::{Folded, bare_letters},
    kind::Kind,
    learned::clues::{Clue, SEED, clue, code, mix, pair, sense_of},
    lists::piece::{Piece, Sense},
    meaning::Plain,
    pieces::text::break_strength,
    reading::{Act, Query, Reading, Sender, Stance, Topic},
    spoken::{
        askings::Askings,
        queries::{is_command, kind_asked, query, sown},
        replied::{SAID, Said, amends, may_be_said},
        signals::{ByLists, OF_WORK, WORDED, signals},
        unknown::unknown_name,
    },
};

/// What can be asked, each a column of the table behind the one that stands for nothing of it.
pub(crate) const WHATS: [(Topic, Option<Kind>); 49] = [
    (Topic::Status, None),
    (Topic::Late, None),
    (Topic::Quiet, None),
    (Topic::Dead, None),
    (Topic::Gaps, None),
    (Topic::Order, None),
    (Topic::Bags, None),
    (Topic::Last, None),
    (Topic::Girth, None),
    (Topic::Ready, None),
    (Topic::Sick, None),
    (Topic::Root, None),
    (Topic::Visit, None),
    (Topic::Rain, None),
    (Topic::Clone, None),
    (Topic::Wind, None),
    (Topic::Fire, None),
    (Topic::Map, None),
    (Topic::Train, None),
    (Topic::Labour, None),
    (Topic::Week, None),
    (Topic::Waiting, None),
    (Topic::Next, None),
    (Topic::Cost, None),
    (Topic::Best, None),
    (Topic::Job, None),
    (Topic::Count, None),
    (Topic::Open, None),
    (Topic::Member, None),
    (Topic::Who, None),
    (Topic::When, None),
    (Topic::MayI, None),
    (Topic::HowTo, None),
    (Topic::HowMuch, Some(Kind::Planted)),
    (Topic::HowMuch, Some(Kind::Fertilised)),
    (Topic::MyData, None),
    (Topic::Price, None),
    (Topic::Meeting, None),
    (Topic::Advice, None),
    (Topic::Other, None),
    (Topic::Tell, None),
    (Topic::LeaveAlone, None),
    (Topic::GoOn, None),
    (Topic::Fix, None),
    (Topic::Window, None),
    (Topic::Warn, None),
    (Topic::HandOver, None),
    (Topic::Ask, None),
    (Topic::Moved, None),
];
/// All columns: nothing of it, what can be asked, what else can be said.
pub(crate) const COLUMNS: usize = 1 + WHATS.len() + SAID.len();

/// Whether it is among what can be asked.
pub(crate) fn is_known(topic: Topic) -> bool {
    WHATS.iter().any(|(other, _)| *other == topic)
}

/// So likely it must be that something is asked, and that it is this, to be answered: a question of a
/// farmer; one of an adviser, who asks more and tells less; a deed; a question whose words may also be
/// a report or a need; a day to meet, which people ask each other for; a correction; an answer to a
/// question of ours, which may store a fact; one in which nothing of work is named.
const ANSWERED: Least = least(0.65, 0.2);
const ANSWERED_ADVISER: Least = least(0.7, 0.15);
const DONE: Least = least(0.7, 0.4);
const ELSE_NEEDED: Least = least(0.6, 0.4);
const MEETING: Least = least(0.96, 0.2);
const CHANGED: Least = least(0.5, 0.5);
const REPLIED: Least = least(0.8, 0.8);
const FROM_NOTHING: Least = least(0.92, 0.3);
/// So likely it must be that a person is told of it: where it is worded as a question about work;
/// where it is only about work; where it is not.
const HEARD_QUESTION: f64 = 0.1;
const HEARD: f64 = 0.3;
const FROM_NOTHING_HEARD: f64 = 0.5;

/// So likely it must be that a text corrects, where what was told before bears it out.
const CORRECTED_MIN: f64 = 0.2;

/// How likely something must be.
struct Least {
    asked: f64,
    this: f64,
}

const fn least(asked: f64, this: f64) -> Least {
    Least { asked, this }
}

/// What a text asks, most likely.
#[derive(Clone, Copy)]
pub(crate) struct Asked {
    /// Which of [`WHATS`], and behind them of [`SAID`].
    pub(crate) what: usize,
    /// How likely it is that anything is asked.
    pub(crate) asked: f64,
    /// How likely it then is this.
    pub(crate) this: f64,
    /// A word of the trade, land or a name stands in the text.
    of_work: bool,
    /// It is worded as a question.
    worded: bool,
}

impl Asked {
    /// What the clues of a text say.
    pub(crate) fn of(
        pieces: &[Piece<'_>],
        folded: &Folded<'_>,
        (sender, by_rules): (Sender, Option<&Query>),
        lists: ByLists,
        table: &Askings,
    ) -> Self {
        let mut sum = [0; COLUMNS];
        let mut count = 0_u32;
        each_clue(pieces, folded, sender, by_rules, |clue| {
            table.add(&mut sum, clue);
            count += 1;
        });
        let signals = signals(pieces, sender, lists, by_rules);
        let odds = table.odds(&sum, count, signals);
        let [none, whats @ ..] = &odds;
        let any: f64 = whats.iter().sum();
        let (mut what, mut best) = (0, 0.0);
        for (at, odds) in whats.iter().enumerate() {
            if *odds > best {
                (what, best) = (at, *odds);
            }
        }
        Self {
            what,
            asked: any / (any + none),
            this: best / any.max(f64::MIN_POSITIVE),
            of_work: signals & OF_WORK != 0,
            worded: signals & WORDED != 0,
        }
    }

    /// What is asked, unless something else is said.
    pub(crate) fn topic(self) -> Option<(Topic, Option<Kind>)> {
        WHATS.get(self.what).copied()
    }

    /// What else is said.
    fn said(self) -> Option<Said> {
        SAID.get(self.what.checked_sub(WHATS.len())?).copied()
    }

    /// Whether it is sure enough that this is said.
    fn is_said(self, said: Said) -> bool {
        let least = match said {
            Said::Correct | Said::Undo => CHANGED,
            Said::Yes | Said::No | Said::Later | Said::Done => REPLIED,
        };
        self.asked >= least.asked && self.this >= least.this
    }

    /// Whether it is sure enough to be answered; beside words that may tell something it must be surer.
    pub(crate) fn is_sure(self, sender: Sender, may_tell: bool) -> bool {
        let topic = self.topic().map(|(topic, _)| topic);
        let least = if topic == Some(Topic::Meeting) && sender != Sender::Adviser {
            MEETING
        } else if !self.of_work {
            FROM_NOTHING
        } else if may_tell {
            ELSE_NEEDED
        } else if topic.is_some_and(Topic::is_deed) {
            DONE
        } else if sender == Sender::Adviser {
            ANSWERED_ADVISER
        } else {
            ANSWERED
        };
        self.asked >= least.asked && self.this >= least.this
    }

    /// Whether somebody should look at it.
    pub(crate) fn is_heard(self) -> bool {
        let least = match (self.of_work, self.worded) {
            (true, true) => HEARD_QUESTION,
            (true, false) => HEARD,
            (false, _) => FROM_NOTHING_HEARD,
        };
        self.asked >= least
    }
}

/// Puts into the reading what is asked, and of which group: one that we do not know is asked about
/// under its name, and not about all.
pub(crate) fn ask(
    reading: &mut Reading,
    pieces: &[Piece<'_>],
    folded: &Folded<'_>,
    (sender, lists): (Sender, ByLists),
    table: &Askings,
) {
    let is_corrected = learned(reading, pieces, folded, (sender, lists), table);
    if !matches!(reading.acts.first(), Some(Act::Query(_))) {
        reading.amends = amends(pieces, folded, is_corrected);
    }
    let of_all = |query: &Query| query.group.is_none() && query.member.is_none();
    if sender == Sender::Adviser
        && let [Act::Query(query)] = reading.acts.as_mut_slice()
        && of_all(query)
        && is_known(query.topic)
    {
        query.group = unknown_name(pieces, folded);
    }
}

/// What is asked, by what was learned of others: as an act where it is sure, else as something that a
/// person should see. Says whether something may be corrected.
fn learned(
    reading: &mut Reading,
    pieces: &[Piece<'_>],
    folded: &Folded<'_>,
    (sender, lists): (Sender, ByLists),
    table: &Askings,
) -> bool {
    let by_rules = match reading.acts.as_slice() {
        [] if reading.bare.is_none() && pieces.len() > 1 => None,
        // What follows is told to others: it asks nothing.
        [Act::Query(query)] if matches!(query.topic, Topic::Tell | Topic::Promise) => return false,
        [Act::Query(query)] if is_known(query.topic) && !is_command(pieces) => Some(query.clone()),
        _ => return false,
    };
    let told = !reading.reports.is_empty() && reading.stances.is_empty();
    let clear = told
        && reading
            .reports
            .iter()
            .all(|report| report.doubts.is_empty());
    if clear || sender == Sender::Unknown {
        return false;
    }
    let asked = Asked::of(pieces, folded, (sender, by_rules.as_ref()), lists, table);
    if let Some(said) = asked.said() {
        let act = said.act(pieces, folded);
        if let Some(act) = act.filter(|act| asked.is_said(said) && may_be_said(act, reading)) {
            reading.acts = Vec::from([act]);
            reading.reports.clear();
            reading.both = false;
        } else {
            reading.asks = by_rules.is_none() && !told && asked.is_heard();
        }
        return said == Said::Correct && asked.asked >= CORRECTED_MIN;
    }
    let Some((topic, kind)) = asked.topic() else {
        return false;
    };
    let is_other = by_rules.as_ref().is_none_or(|query| query.topic != topic);
    // Who worries may tell something, or be in need.
    let worries = matches!(topic, Topic::Advice | Topic::HowTo | Topic::Other);
    // "Fire in my field" asks nothing: harm that the lists tell of is no question unless worded so.
    let harmed = sender != Sender::Adviser
        && !asked.worded
        && reading.reports.iter().any(|report| report.kind.is_harm());
    let may_be =
        is_other && !harmed && !(worries && (reading.may_need || !reading.reports.is_empty()));
    if asked.is_sure(sender, told || reading.may_need) && may_be {
        let query = of_likely(pieces, (topic, kind));
        reading.acts = if topic.is_deed() {
            Vec::from([Act::Query(query)])
        } else {
            let each = |part: &[Piece<'_>]| Asked::of(part, folded, (sender, None), lists, table);
            several(pieces, query, &each)
        };
        reading.reports.clear();
        reading.both = false;
        // Money is what people ask about.
        reading.alarm = reading.alarm.filter(|alarm| !alarm.is_asked_about());
    } else {
        let in_question = |stance: &Stance| matches!(stance, Stance::Question | Stance::Request);
        let open = reading.reports.is_empty() || reading.stances.iter().any(in_question);
        reading.asks = by_rules.is_none() && !told && open && asked.is_heard();
    }
    false
}

/// Runs of letters that are looked at.
const RUN_MIN: usize = 3;
const RUN_MAX: usize = 5;
/// Longer texts do not differ in their length.
const WORDS_MAX: u32 = 12;

/// Hands out all clues of a text.
pub(crate) fn each_clue(
    pieces: &[Piece<'_>],
    folded: &Folded<'_>,
    sender: Sender,
    by_rules: Option<&Query>,
    mut put: impl FnMut(Clue),
) {
    let mut put = |sort: u32, value: u32| put(clue(sort, value));
    let (mut before, mut before2) = (0, 0);
    let (mut names, mut words) = (0_u32, 0_u32);
    for piece in pieces {
        let text = folded.text.get(piece.start..piece.end).unwrap_or("");
        let is_word = matches!(
            piece.sense,
            Sense::Listed(_) | Sense::Unknown | Sense::TwoKinds(..)
        );
        let word = if is_word {
            bare_letters(text).fold(SEED, |hash, letter| mix(hash, u32::from(letter)))
        } else {
            sense_of(piece)
        };
        put(40, word);
        put(41, pair(before, word));
        put(42, pair(before2, word));
        for meaning in piece.meanings() {
            put(43, code(meaning));
        }
        if is_word {
            letters(text, &mut put);
            words += 1;
        }
        names |= name_bit(piece);
        (before2, before) = (before, word);
    }
    put(41, pair(before, 0));
    let adviser = u32::from(sender == Sender::Adviser);
    put(44, adviser);
    put(45, pair(adviser, names & (GROUP | MEMBER | BLOCK)));
    put(46, pair(adviser, names & (DAY | ASKED)));
    put(47, pair(adviser, words.min(WORDS_MAX)));
    put(49, by_rules.map_or(0, |query| query.topic as u32 + 1));
}

const GROUP: u32 = 1;
const MEMBER: u32 = 1 << 1;
const BLOCK: u32 = 1 << 2;
const DAY: u32 = 1 << 3;
const ASKED: u32 = 1 << 4;

/// What kind of name a piece is.
fn name_bit(piece: &Piece<'_>) -> u32 {
    let bits = [
        (matches!(piece.sense, Sense::Group(_)), GROUP),
        (matches!(piece.sense, Sense::Member(_)), MEMBER),
        (matches!(piece.sense, Sense::Block(_)), BLOCK),
        (matches!(piece.sense, Sense::When(_)), DAY),
        (piece.is_mark('?'), ASKED),
    ];
    bits.iter().map(|(is, bit)| u32::from(*is) * bit).sum()
}

/// Runs of letters, with the borders of the word.
fn letters(word: &str, put: &mut impl FnMut(u32, u32)) {
    // The runs that are still growing, the longest first.
    let mut runs = [(SEED, 0); RUN_MAX];
    let bordered = core::iter::once(' ').chain(bare_letters(word)).chain([' ']);
    for letter in bordered {
        runs.rotate_left(1);
        if let Some(last) = runs.last_mut() {
            *last = (SEED, 0);
        }
        for (hash, len) in &mut runs {
            *hash = mix(*hash, u32::from(letter));
            *len += 1;
        }
        let ready = |(place, (_, len)): &(usize, &(u32, usize))| {
            let whole = RUN_MAX - place;
            *len == whole && whole >= RUN_MIN
        };
        for (_, (hash, _)) in runs.iter().enumerate().filter(ready) {
            put(48, *hash);
        }
    }
}

/// A question about the likeliest topic, and the work that the lists name in it.
pub(crate) fn of_likely(pieces: &[Piece<'_>], (topic, kind): (Topic, Option<Kind>)) -> Query {
    let numbered = pieces.iter().any(|piece| piece.number().is_some());
    // "Who uses the number that ends in 9020?"
    let topic = if topic == Topic::Who && numbered {
        Topic::Whose
    } else {
        topic
    };
    query(pieces, topic, kind.or_else(|| named(pieces, topic)))
}

/// So sure it must be of a part of a text that it asks something else; and more is not answered.
const PART: Least = least(0.8, 0.6);
const PARTS_MAX: usize = 3;

/// What the parts of a text ask, where they surely ask different things; else what the whole does.
fn several(pieces: &[Piece<'_>], whole: Query, each: &dyn Fn(&[Piece<'_>]) -> Asked) -> Vec<Act> {
    let parted = |piece: &Piece<'_>| break_strength(piece) > 0 || piece.is_plain(Plain::And);
    let mut found: Vec<Query> = Vec::new();
    for part in pieces.split(parted).filter(|part| part.len() > 1) {
        let asked = each(part);
        let Some((topic, kind)) = asked.topic() else {
            continue;
        };
        let is_new = found.iter().all(|query| query.topic != topic);
        let is_sure = asked.asked >= PART.asked && asked.this >= PART.this;
        if is_sure && is_new && !topic.is_deed() && found.len() < PARTS_MAX {
            let asked = query(part, topic, kind.or_else(|| named(part, topic)));
            found.push(Query {
                group: asked.group.or_else(|| whole.group.clone()),
                member: asked.member.or_else(|| whole.member.clone()),
                block: asked.block.or_else(|| whole.block.clone()),
                ..asked
            });
        }
    }
    if found.len() < 2 {
        found = Vec::from([whole]);
    }
    found.into_iter().map(Act::Query).collect()
}

/// The work that the lists name, for what is asked about work.
fn named(pieces: &[Piece<'_>], topic: Topic) -> Option<Kind> {
    let kind = || pieces.iter().find_map(|piece| kind_asked(piece));
    let kind = topic.takes_kind().then(kind).flatten();
    kind.map(|kind| sown(pieces, kind))
}
