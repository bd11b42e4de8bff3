//! Why what a text reports must not be stored as fact.
//!
//! A report comes only from a text that reports: a plan, a question, a request, news of others,
//! chat that happens to hold a word of work are told apart here. Deliberately absent: the answer
//! to such a text.

use alloc::vec::Vec;

use crate::{
    glyphs::fold::Folded,
    kind::Kind,
    lists::piece::{Glance, Piece, Sense},
    meaning::{Meaning, Plain, sort},
    pieces::known::{VALUES_MIN, is_asking_mark, is_bare, is_clear_work, is_known, is_work},
    reading::Stance,
    rules::{
        proof::{is_compact, is_lone_unit, is_proven, names_trees, only_asks},
        reports::Told,
        segment::Segment,
        unsure::asks_behind,
    },
};

/// With fewer words known in a hundred nobody talks to the bot.
const KNOWN_PERCENT_MIN: usize = 75;
/// One strange word of three may hide a report: worth an example.
const NEARLY_KNOWN_PERCENT_MIN: usize = 60;
/// More words than this for each report are a story.
const WORDS_PER_REPORT_MAX: usize = 14;
/// A longer text with a block and a number but no work is about something else.
const PLACE_PIECES_MAX: usize = 4;

/// The stances of a text, each once; `calm` when its words are well known.
pub(crate) fn stances(
    pieces: &[Piece<'_>],
    segments: &[Segment],
    told: &Told,
    glance: Glance,
    calm: bool,
) -> Vec<Stance> {
    let mut stances = Vec::new();
    let mut add = |stance| {
        if !stances.contains(&stance) {
            stances.push(stance);
        }
    };
    let takes = glance.traits.has(sort::STANCE);
    let clear = Clear {
        works: takes && pieces.iter().any(is_clear_work),
        reports: takes && reports_surely(pieces),
    };
    // Most texts only report; they need no closer look.
    let turns = Plain::Next.bit() | Plain::Ahead.bit() | Plain::Relative.bit();
    let may_take = takes || glance.asks || glance.traits.has_plain(turns);
    let looked_at = if may_take { pieces } else { &[] };
    for (at, piece) in looked_at.iter().enumerate() {
        if is_asking_mark(pieces, at) || asks_behind(pieces, at) {
            add(Stance::Question);
        }
        let meanings = piece.is_of(sort::STANCE).then(|| piece.meanings());
        for meaning in meanings.into_iter().flatten() {
            if let Meaning::Stance(stance) = meaning
                && holds(stance, pieces, at, clear)
            {
                add(stance);
            }
        }
        if piece.is_plain(Plain::Next) && is_day_or_period(pieces.get(at + 1)) {
            add(Stance::Plan);
        }
    }
    if told.not_a_fact {
        add(Stance::Plan);
    }
    if glance.traits.has_plain(Plain::Courtesy.bit()) && is_courtesy(pieces) {
        add(Stance::Courtesy);
    }
    let idle_no = || {
        pieces.iter().enumerate().any(|(at, piece)| {
            piece.is_plain(Plain::Negation)
                && !piece.is_plain(Plain::NotYet)
                && !piece.is_plain(Plain::No)
                && !told.denials.contains(&at)
        })
    };
    let unproven = || {
        segments
            .iter()
            .all(|segment| !is_proven(pieces, segment, told))
    };
    // Without a report there is nothing to keep out.
    if !told.reports.is_empty() && (!calm || idle_no() || unproven()) {
        add(Stance::Chat);
    }
    stances
}

/// What is clear of the whole text.
#[derive(Clone, Copy)]
struct Clear {
    /// It names work outright.
    works: bool,
    reports: bool,
}

/// Whether a word of a stance means it here.
fn holds(stance: Stance, pieces: &[Piece<'_>], at: usize, clear: Clear) -> bool {
    if stance == Stance::Saying {
        return !is_twin_report(pieces, at);
    }
    if stance == Stance::Plan {
        return !is_wish_for_what_is_done(pieces, at) && !is_closing_word(pieces, at);
    }
    // "my brother planted 200" is news of his land, "my brother planted 20 in B" helps.
    let is_kin = |piece: &Piece<'_>| piece.is_plain(Plain::Relative);
    if stance == Stance::Hearsay && pieces.get(at).is_some_and(is_kin) {
        // "mon oncle a ouvert": right behind the kin the letter is a verb.
        let mut later = pieces.iter().skip(at + 2);
        return !later.any(|piece| matches!(piece.sense, Sense::Block(_)));
    }
    if stance == Stance::Advert {
        let is_chance = pieces.get(at).is_some_and(is_bare);
        return !(is_chance && clear.reports);
    }
    if stance != Stance::Stock {
        return true;
    }
    if is_harm_done(pieces, at) {
        return false;
    }
    is_stock(pieces, at, clear)
}

/// "have weeded" and "have 8 dead" report; "have 120 trees" and "B 120 trees there are" do not.
fn is_stock(pieces: &[Piece<'_>], at: usize, clear: Clear) -> bool {
    let says = |piece: &&Piece<'_>| {
        let small = piece.is_any(&[Plain::Filler, Plain::Negation, Plain::NotYet]);
        !small && piece.number().is_none() && !matches!(piece.sense, Sense::Mark(_))
    };
    let seen = |piece: &Piece<'_>| {
        let kind = piece.kind();
        kind.is_some_and(|kind| kind != Kind::Planted) || piece.is_of(sort::CAUSE | sort::AILMENT)
    };
    let stands = |piece: &Piece<'_>| piece.is_plain(Plain::Trees) && !pieces.iter().any(seen);
    let mut after = pieces.get(at + 1..).unwrap_or_default().iter();
    if let Some(next) = after.find(says) {
        return stands(next) || (next.kind().is_none() && !clear.works);
    }
    let before = pieces.get(..at).unwrap_or_default().iter().rev();
    before.into_iter().find(says).is_some_and(stands)
}

/// "tai 8 ton ja": a word that plans before the work, and only closes the text behind it.
fn is_closing_word(pieces: &[Piece<'_>], at: usize) -> bool {
    let is_small = pieces
        .get(at)
        .is_some_and(|piece| piece.is_plain(Plain::Filler));
    let is_end = |piece: &Piece<'_>| {
        matches!(piece.sense, Sense::Mark(_)) || piece.is_plain(Plain::Courtesy)
    };
    let rest = pieces.get(at + 1..).unwrap_or_default();
    is_small && at > 0 && rest.iter().all(is_end)
}

/// "insyaallah dah tanam 50", "insyaallah tanam 50 semalam": a pious word that plans, where the work
/// is past.
fn is_wish_for_what_is_done(pieces: &[Piece<'_>], at: usize) -> bool {
    let is_wish = |piece: &Piece<'_>| piece.is_plain(Plain::Courtesy);
    let is_past =
        |piece: &Piece<'_>| piece.is_plain(Plain::Done) || matches!(piece.sense, Sense::When(_));
    pieces.get(at).is_some_and(is_wish) && pieces.iter().any(is_past)
}

/// Whether a text says so much of the trade that hardly anything else can be meant.
pub(crate) fn reports_surely(pieces: &[Piece<'_>]) -> bool {
    evidence(pieces) >= STRANGER_EVIDENCE_MIN
}

/// "wedding A": nothing but the twin of a word of work and a block. It is asked about.
fn is_twin_report(pieces: &[Piece<'_>], at: usize) -> bool {
    let is_twin = pieces
        .get(at)
        .and_then(Piece::listed)
        .is_some_and(|listed| listed.twin_of().is_some());
    is_twin
        && is_compact(pieces)
        && pieces
            .iter()
            .any(|piece| matches!(piece.sense, Sense::Block(_)))
}

/// "goats have eaten 14": what did the harm stands before "have", the harm after it.
fn is_harm_done(pieces: &[Piece<'_>], at: usize) -> bool {
    let harm = |at: Option<usize>| {
        at.and_then(|at| pieces.get(at))
            .is_some_and(|piece| piece.part(Meaning::cause).is_some())
    };
    harm(at.checked_sub(1)) && harm(Some(at + 1))
}

fn is_day_or_period(piece: Option<&Piece<'_>>) -> bool {
    piece.is_some_and(|piece| {
        matches!(piece.sense, Sense::When(_))
            || piece.means(|meaning| matches!(meaning, Meaning::Period(_) | Meaning::Weekday(_)))
    })
}

/// "Kofi planted 200": a name that we do not know, right before the work, as the first word.
pub(crate) fn stranger<'t>(pieces: &[Piece<'_>], folded: &Folded<'t>) -> Option<&'t str> {
    let mut words = pieces
        .iter()
        .filter(|piece| !piece.is_plain(Plain::Courtesy) && !matches!(piece.sense, Sense::Mark(_)));
    let first = words
        .next()
        .filter(|piece| matches!(piece.sense, Sense::Unknown) && !piece.everyday)?;
    let work = words.find(|piece| !piece.is_plain(Plain::Filler) || piece.kind().is_some())?;
    let name = folded.written(first.start, first.end);
    let mut letters = name.chars();
    let capital = letters.next().is_some_and(char::is_uppercase);
    let is_name = capital && letters.next().is_some_and(char::is_lowercase);
    (is_name && is_work(work)).then_some(name)
}

/// "sprayed kitchen 2 B": a word of every day that is none of ours, in a text that names neither
/// trees nor, by its word, a block. A word of no list at all may be a slip or a dialect.
pub(crate) fn strange<'t>(pieces: &[Piece<'_>], folded: &Folded<'t>) -> Option<&'t str> {
    let names_place = pieces.iter().any(|piece| piece.is_plain(Plain::Block))
        || pieces.windows(2).any(|pair| {
            matches!(pair, [land, place] if land.is_plain(Plain::Land) && matches!(place.sense, Sense::Block(_)))
        });
    if names_trees(pieces) || names_place {
        return None;
    }
    let strange = |at: &usize| {
        let of_the_day = |piece: &Piece<'_>| piece.everyday || only_asks(piece);
        pieces.get(*at).is_some_and(of_the_day) || is_lone_unit(pieces, *at)
    };
    let word = pieces.get((0..pieces.len()).find(strange)?)?;
    Some(folded.written(word.start, word.end))
}

/// Nothing but greetings and thanks.
pub(crate) fn is_courtesy(pieces: &[Piece<'_>]) -> bool {
    let mut words = pieces
        .iter()
        .filter(|piece| !matches!(piece.sense, Sense::Mark(_)))
        .peekable();
    words.peek().is_some()
        && words.all(|piece| piece.is_any(&[Plain::Courtesy, Plain::Filler]))
        && pieces.iter().any(|piece| piece.is_plain(Plain::Courtesy))
}

/// Enough words are known, in a text of no more words than its reports need.
pub(crate) fn is_well_known(pieces: &[Piece<'_>], reports: usize) -> bool {
    is_known_by(pieces, reports, KNOWN_PERCENT_MIN)
}

fn is_known_by(pieces: &[Piece<'_>], reports: usize, percent: usize) -> bool {
    let (mut count, mut strangers, mut figures) = (0, 0, 0);
    for piece in pieces {
        count += usize::from(!matches!(piece.sense, Sense::Mark(_)));
        strangers += usize::from(!is_known(piece));
        // A census is a long list of girths, and still one report.
        figures += usize::from(matches!(piece.sense, Sense::Number(_) | Sense::List { .. }));
    }
    let known = count - strangers;
    let short = count - figures <= WORDS_PER_REPORT_MAX * reports.max(1);
    let forgiven = || match strangers {
        1 => is_clear_report(pieces) || evidence(pieces) >= STRANGER_EVIDENCE_MIN,
        2 => evidence(pieces) >= STRANGER_EVIDENCE_MIN,
        3 => evidence(pieces) >= STRANGERS_EVIDENCE_MIN,
        _ => false,
    };
    short && (known * 100 >= count * percent || forgiven())
}

/// With so much said of the trade, one or two words of no list do no harm; with more, three.
const STRANGER_EVIDENCE_MIN: usize = 5;
const STRANGERS_EVIDENCE_MIN: usize = 7;

/// How much in a text belongs to reports and hardly to chat; nothing where it does not name the
/// block by its word or count trees.
fn evidence(pieces: &[Piece<'_>]) -> usize {
    let any = |wanted: fn(&Piece<'_>) -> bool| pieces.iter().any(wanted);
    let counts = |(at, piece): (usize, &Piece<'_>)| {
        let unit = pieces
            .get(at + 1)
            .is_some_and(|next| next.is_plain(Plain::Trees) || next.is_of(sort::UNIT));
        piece.number().is_some() && unit
    };
    let counted = pieces.iter().enumerate().any(counts);
    let figures = pieces
        .iter()
        .filter(|piece| matches!(piece.sense, Sense::Number(_)))
        .count();
    let measured =
        figures >= VALUES_MIN && any(|piece| piece.kind().is_some_and(Kind::needs_values));
    let slang = pieces
        .iter()
        .all(|piece| !piece.everyday && !matches!(piece.sense, Sense::NoNumber));
    let placed = any(|piece| matches!(piece.sense, Sense::Block(_)));
    let said = placed && any(|piece| piece.is_plain(Plain::Block));
    if !slang || !(said || counted || measured) {
        return 0;
    }
    let works = pieces.iter().filter(|piece| is_work(piece)).count();
    let clear = any(is_clear_work);
    let points = [
        (clear, 2),
        (!clear && works > 0, 1),
        (works > 1, 1),
        (placed, 2),
        (said, 1),
        (figures > 0, 1),
        (counted, 1),
        (measured, 3),
        (any(|piece| matches!(piece.sense, Sense::When(_))), 1),
        (any(|piece| piece.is_of(sort::FERTILISER)), 1),
    ];
    let points = points.into_iter().filter(|(holds, _)| *holds);
    points.map(|(_, worth)| worth).sum()
}

/// "hill weeded abeg": work that chat seldom speaks of and a block; a word of no list beside them
/// hides nothing, unless it looks like a name or is a word of every day.
fn is_clear_report(pieces: &[Piece<'_>]) -> bool {
    let slang = pieces
        .iter()
        .all(|piece| !piece.everyday && !matches!(piece.sense, Sense::NoNumber));
    let counted = |kind: Kind| {
        !(kind.needs_count() || kind.needs_values())
            || pieces
                .iter()
                .any(|piece| matches!(piece.sense, Sense::Number(_) | Sense::List { .. }))
    };
    let told = pieces
        .iter()
        .any(|piece| is_clear_work(piece) && piece.kind().is_some_and(counted))
        || pieces.iter().filter(|piece| is_work(piece)).count() > 1;
    let placed = |piece: &Piece<'_>| matches!(piece.sense, Sense::Block(_));
    slang && told && pieces.iter().any(placed)
}

/// Whether the text is about work, so that an example helps when nothing was understood: a clear
/// word of work; or a word that may be one, or a block, with a number.
pub(crate) fn is_about_work(pieces: &[Piece<'_>], stances: &[Stance]) -> bool {
    let elsewhere = stances
        .iter()
        .any(|stance| matches!(stance, Stance::Saying | Stance::Advert | Stance::Courtesy));
    if elsewhere {
        return false;
    }
    let clear = pieces.iter().any(is_clear_work);
    // A block and a number without work only in the shortest text: "plabtud 120 B".
    let is_short = pieces.len() <= PLACE_PIECES_MAX;
    let maybe = pieces
        .iter()
        .any(|piece| is_work(piece) || (is_short && matches!(piece.sense, Sense::Block(_))));
    let number = pieces.iter().any(|piece| piece.number().is_some());
    (clear || (maybe && number && !tells_stock(pieces)))
        && is_known_by(pieces, 1, NEARLY_KNOWN_PERCENT_MIN)
}

/// "ada 33 pohon A", "são 229 árvores B": there are so many trees, and nothing is said of work.
fn tells_stock(pieces: &[Piece<'_>]) -> bool {
    let counts_trees = pieces.windows(3).any(|three| {
        matches!(three, [small, number, trees]
            if small.is_plain(Plain::Filler) && number.number().is_some() && trees.is_plain(Plain::Trees))
    });
    counts_trees && !pieces.iter().any(is_work) && pieces.iter().all(is_known)
}

/// What of a text keeps it from being a report, if that is only odd words: work is there, and a
/// block or a number. It is asked about.
pub(crate) fn oddity<'t>(
    pieces: &[Piece<'_>],
    stances: &[Stance],
    told: &Told,
    folded: &Folded<'t>,
) -> Option<&'t str> {
    if stances != [Stance::Chat] {
        return None;
    }
    let denies = pieces
        .iter()
        .any(|piece| piece.is_plain(Plain::Negation) && !piece.is_plain(Plain::Ahead));
    let clear = pieces.iter().any(is_clear_work);
    let about_a_thing = pieces.iter().any(|piece| piece.everyday) && !names_trees(pieces);
    let worth = told.reports.iter().any(|report| {
        let (placed, counted) = (report.block.is_some(), report.details.count.is_some());
        if clear {
            // "my phone was replaced for 120": what is counted is a thing of every day.
            (placed || (counted && !about_a_thing)) && !denies
        } else {
            placed && counted && report.kind.needs_count()
        }
    });
    if !worth || !is_known_by(pieces, 1, NEARLY_KNOWN_PERCENT_MIN) {
        return None;
    }
    let odd = pieces.iter().find(|piece| !is_known(piece));
    let word = odd.or(pieces.first())?;
    Some(folded.written(word.start, word.end))
}

/// Whether a text that only its odd words keep from being a report is worth an example: work, a
/// number and a block are there.
pub(crate) fn is_nearly_a_report(pieces: &[Piece<'_>], stances: &[Stance]) -> bool {
    stances == [Stance::Chat]
        && pieces.iter().any(is_work)
        && pieces.iter().any(is_place)
        && pieces.iter().any(|piece| piece.number().is_some())
        && is_known_by(pieces, 1, NEARLY_KNOWN_PERCENT_MIN)
}

fn is_place(piece: &Piece<'_>) -> bool {
    piece.is_plain(Plain::Block) || matches!(piece.sense, Sense::Block(_))
}
