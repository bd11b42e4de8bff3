//! The reader: all packs compiled, and the steps from text to [`Reading`] in order.
//!
//! Fold, cut into pieces, settle block names, join numbers and days, part into segments, fill
//! slots, gate. Deliberately absent: anything that depends on earlier messages.

mod guesses;
mod problems;
pub(crate) mod trace;
mod tried;

use alloc::{
    string::{String, ToString},
    vec::Vec,
};

use crate::{
    glyphs::fold::Folded,
    languages,
    learned::{
        account, clues,
        course::Course,
        sure,
        verdict::{self, Learned},
        weights::Weights,
    },
    lists::{
        lexicon::{Lexicon, Listed, PACKS_MAX},
        piece::{Glance, Piece, Pieces, Sense},
    },
    meaning::Plain,
    pack::{Pack, PackFault},
    pieces::{compose, cutter, known, letters, tongues, used::Uses, words},
    reading::{Doubt, Known, Problem, Reading, Report, Stance, Unnamed},
    rules::{
        gate, plans,
        reports::{self, Told},
        segment::{self, Segment, Segments},
        unsure,
    },
    spoken::{
        acts, alarm,
        askings::Askings,
        books, meant, own,
        said::{Apart, spoken},
        sheet::{self, SheetText},
        signals::ByLists,
    },
};

/// Reads texts in the languages of its packs.
pub struct Reader {
    lexicon: Lexicon,
    weights: Weights,
    askings: Askings,
    /// Words that are in no list.
    apart: Apart,
    /// Words by which rows of a printed sheet are told.
    sheet: sheet::Words,
}

impl Reader {
    /// Compiles the packs.
    ///
    /// # Errors
    ///
    /// When two packs have one code, or there are too many of them; all faults are returned.
    pub fn new(packs: Vec<Pack>) -> Result<Self, Vec<PackFault>> {
        let mut faults = Vec::new();
        if packs.len() > PACKS_MAX {
            faults.push(PackFault::TooMany(PACKS_MAX));
        }
        for (index, pack) in packs.iter().enumerate() {
            let before = packs.iter().take(index);
            if before.into_iter().any(|other| other.code == pack.code) {
                faults.push(PackFault::Twice(pack.code.clone()));
            }
        }
        let trade = Pack::parse(languages::TRADE);
        match trade {
            Ok(trade) if faults.is_empty() => Ok(Self {
                apart: Apart {
                    books: books::words(&packs),
                    own: own::words(&packs),
                },
                sheet: sheet::Words::of(&packs),
                lexicon: Lexicon::new(&packs, &trade),
                weights: Weights::built_in(),
                askings: Askings::built_in(),
            }),
            Ok(_) => Err(faults),
            Err(fault) => Err(Vec::from([fault])),
        }
    }

    /// The codes of the languages that are loaded.
    pub fn languages(&self) -> impl Iterator<Item = &str> {
        self.lexicon.codes().iter().map(String::as_str)
    }

    /// Whether a language is loaded, under the code of a pack or of a form of it ("vi-bare").
    #[must_use]
    pub fn knows(&self, code: &str) -> bool {
        self.lexicon.own(&[code]) != 0
    }

    /// What a text tells of a printed sheet, if it begins with the word for one and its number.
    #[must_use]
    pub fn sheet(&self, text: &str) -> Option<SheetText> {
        sheet::read(text, &self.sheet)
    }

    /// A reader that uses other weights.
    #[cfg(test)]
    pub(crate) fn with_weights(mut self, weights: Weights) -> Self {
        self.weights = weights;
        self
    }

    /// A reader that uses another table of what is asked.
    #[cfg(test)]
    pub(crate) fn with_askings(mut self, askings: Askings) -> Self {
        self.askings = askings;
        self
    }

    /// The table of what is asked.
    #[cfg(test)]
    pub(crate) const fn askings(&self) -> &Askings {
        &self.askings
    }

    /// What the lists make of a text, and what is learned of it.
    #[cfg(test)]
    pub(crate) fn both_of(
        &self,
        text: &str,
        known: &Known<'_>,
    ) -> (Told, Vec<Stance>, verdict::Learned, verdict::Words) {
        self.with_pieces(text, known, |all, folded| {
            let both = self.both(all, folded, known, |_, _| {});
            let words = words_of(plans::before_plan(all), all, folded);
            (both.told, both.stances, both.learned, words)
        })
    }

    /// All that is tried of a text.
    #[cfg(test)]
    pub(crate) fn tried(&self, text: &str, known: &Known<'_>) -> Vec<verdict::Learned> {
        self.with_pieces(text, known, |all, folded| {
            let pieces = plans::before_plan(all);
            let (segments, told, stances) = by_rules(pieces, folded);
            let rules = sure::Rules {
                reports: &told.reports,
                stances: &stances,
            };
            let hints = clues::hints(all.len(), folded, pieces, &segments, &told.reports);
            let mut tried = Vec::new();
            let (_, _, first) = self.try_all(all, folded, known, (&rules, hints), |_, _, other| {
                tried.push(other);
            });
            tried.insert(0, first);
            tried
        })
    }

    /// The pieces of a text, as what is learned sees them.
    pub(crate) fn with_pieces<T>(
        &self,
        text: &str,
        known: &Known<'_>,
        look: impl FnOnce(&[Piece<'_>], &Folded<'_>) -> T,
    ) -> T {
        let folded = Folded::new(text);
        let own = self.lexicon.own(known.languages);
        let mut all = Pieces::new();
        cutter::pieces(&folded, &self.lexicon, own, known, &mut all);
        tongues::settle(&mut all, own);
        letters::settle(&mut all, &folded, known);
        compose::compose(&mut all, &folded, &self.lexicon, own);
        look(&all, &folded)
    }

    /// Reads a text. Never fails, whatever the text.
    #[must_use]
    pub fn read(&self, text: &str, known: &Known<'_>) -> Reading {
        self.with_pieces(text, known, |all, folded| {
            let both = self.both(all, folded, known, |_, _| {});
            self.reading(all, folded, known, both)
        })
    }

    /// What the lists make of the pieces, and what was learned; the way to that can be looked at.
    fn both(
        &self,
        all: &[Piece<'_>],
        folded: &Folded<'_>,
        known: &Known<'_>,
        look: impl FnOnce(&Course, &Uses),
    ) -> Both {
        let pieces = plans::before_plan(all);
        let (segments, told, stances) = by_rules(pieces, folded);
        let rules = sure::Rules {
            reports: &told.reports,
            stances: &stances,
        };
        let hints = clues::hints(all.len(), folded, pieces, &segments, &told.reports);
        let mut loose = None;
        let learned = self.learned(all, folded, known, (&rules, hints), |course, uses| {
            loose = account::loose(pieces, uses, &told.reports);
            look(course, uses);
        });
        Both {
            segments,
            told,
            stances,
            learned,
            loose,
        }
    }

    /// What holds of it, and whatever else the text says.
    fn reading(
        &self,
        all: &[Piece<'_>],
        folded: &Folded<'_>,
        known: &Known<'_>,
        both: Both,
    ) -> Reading {
        let pieces = plans::before_plan(all);
        let own = self.lexicon.own(known.languages);
        let Both {
            segments,
            mut told,
            mut stances,
            learned,
            loose,
        } = both;
        let lists = ByLists::of(!told.reports.is_empty(), &stances);
        let is_clear = told.reports.iter().all(|report| report.doubts.is_empty());
        let loose = loose.filter(|_| is_clear).and_then(|at| pieces.get(at));
        if !told.reports.is_empty()
            && let Some(doubt) = doubt(pieces, &segments, &told, folded)
                .or_else(|| loose.map(|piece| loose_end(piece, folded)))
        {
            told.doubt(&doubt);
        }
        let (glance, calm) = (
            Glance::of(pieces),
            gate::is_well_known(pieces, segments.len()),
        );
        let spoken = spoken(pieces, glance, folded, (known.sender, calm), &self.apart);
        if let Some(word) = gate::oddity(pieces, &stances, &told, folded) {
            stances.clear();
            told.doubt(&Doubt::StrangeWord(word.to_string()));
        }
        let unclear = gate::is_nearly_a_report(pieces, &stances);
        let mut reading = Reading {
            bare: may_fill(&told.reports, &stances)
                .then(|| acts::bare(pieces))
                .flatten(),
            about_work: unclear || gate::is_about_work(pieces, &stances),
            may_need: alarm::may_be_need(pieces, folded, &self.lexicon, own),
            unnamed: unnamed(pieces),
            alarm: spoken.alarm(
                pieces,
                glance,
                calm && is_no_report(&told.reports, &stances),
            ),
            member: pieces.iter().find_map(member),
            reports: told.reports,
            acts: spoken.act.into_iter().collect(),
            stances,
            problems: told.problems,
            words: words::words(all, folded),
            language: self.language(all),
            ..Reading::default()
        };
        if spoken.replaces_reports || unclear {
            reading.reports.clear();
            reading.stances.clear();
        }
        if !spoken.replaces_reports {
            learned.put(&mut reading, words_of(pieces, all, folded));
        }
        meant::ask(
            &mut reading,
            all,
            folded,
            (known.sender, lists),
            &self.askings,
        );
        reading.problems.extend(problems::of(pieces, folded));
        reading.problems.extend(folded.cut.map(Problem::Cut));
        reading
    }

    /// The language that lists most of the words.
    fn language(&self, pieces: &[Piece<'_>]) -> Option<String> {
        let listed = pieces.iter().filter_map(Piece::listed);
        let votes = tongues::votes(listed.map(Listed::langs));
        // The first of equals: packs are given in order of use.
        let mut most = (0, None);
        for (code, count) in self.lexicon.codes().iter().zip(votes) {
            if count > most.0 {
                most = (count, Some(code));
            }
        }
        most.1.cloned()
    }
}

/// What the lists make of a text, and what was learned.
struct Both {
    segments: Segments,
    told: Told,
    stances: Vec<Stance>,
    learned: Learned,
    /// The first piece that reports of the lists do not take up.
    loose: Option<usize>,
}

/// What the lists alone make of a text.
fn by_rules(pieces: &[Piece<'_>], folded: &Folded<'_>) -> (Segments, Told, Vec<Stance>) {
    let segments = segment::segments(pieces);
    let told = reports::read(pieces, &segments, folded, &Uses::new());
    let calm = gate::is_well_known(pieces, segments.len());
    let stances = gate::stances(pieces, &segments, &told, Glance::of(pieces), calm);
    (segments, told, stances)
}

/// What the lists make of each piece.
#[cfg(test)]
pub(crate) fn hints(all: &[Piece<'_>], folded: &Folded<'_>) -> clues::Hints {
    let pieces = plans::before_plan(all);
    let (segments, told, _) = by_rules(pieces, folded);
    clues::hints(all.len(), folded, pieces, &segments, &told.reports)
}

/// The words of a text: those before a plan, and all.
fn words_of(pieces: &[Piece<'_>], all: &[Piece<'_>], folded: &Folded<'_>) -> verdict::Words {
    verdict::Words {
        plain: pieces.iter().all(is_plain),
        strange: gate::strange(all, folded).is_some(),
        count: pieces.len(),
        unknown: pieces
            .iter()
            .filter(|piece| !known::is_known(piece))
            .count(),
    }
}

/// A piece that the lists know well.
fn is_plain(piece: &Piece<'_>) -> bool {
    known::is_known(piece) && !piece.everyday && !piece.torn && piece.repaired.is_none()
}

/// Blocks that are meant without their names.
fn unnamed(pieces: &[Piece<'_>]) -> Option<Unnamed> {
    let says = |plain| pieces.iter().any(|piece| piece.is_plain(plain));
    let is_named = pieces
        .iter()
        .any(|piece| matches!(piece.sense, Sense::Block(_)));
    let both = || says(Plain::BothBlocks).then_some(Unnamed::Both);
    let all = || says(Plain::EveryBlock).then_some(Unnamed::All);
    if is_named { None } else { both().or_else(all) }
}

/// Who or what makes all that is told doubtful.
fn doubt(
    pieces: &[Piece<'_>],
    segments: &[Segment],
    told: &Told,
    folded: &Folded<'_>,
) -> Option<Doubt> {
    let by = gate::stranger(pieces, folded).map(|name| Doubt::SomebodyElse(name.to_string()));
    let of = || {
        gate::strange(pieces, folded)
            .or_else(|| unsure::suspect(pieces, folded))
            .or_else(|| unsure::nameless(pieces, segments, folded))
            .or_else(|| unsure::unsure(pieces, segments, told, folded))
            .map(|word| Doubt::StrangeWord(word.to_string()))
    };
    by.or_else(of)
}

/// What no report takes up.
fn loose_end(piece: &Piece<'_>, folded: &Folded<'_>) -> Doubt {
    if piece.listed().is_some() || matches!(piece.sense, Sense::Block(_)) {
        return Doubt::Likeness;
    }
    Doubt::LooseEnd(folded.written(piece.start, piece.end).to_string())
}

/// Neither a fact nor an advert: then talk of money or a complaint is meant.
fn is_no_report(reports: &[Report], stances: &[Stance]) -> bool {
    (reports.is_empty() || !stances.is_empty()) && !stances.contains(&Stance::Advert)
}

/// Nothing is told, at most greeted: then a lone value may answer a question.
fn may_fill(reports: &[Report], stances: &[Stance]) -> bool {
    reports.is_empty() && stances.iter().all(|stance| *stance == Stance::Courtesy)
}

/// What the lists alone make of a text and of a question in it.
#[cfg(test)]
pub(crate) fn asked_by_rules(
    pieces: &[Piece<'_>],
    folded: &Folded<'_>,
    sender: crate::Sender,
) -> (ByLists, Option<crate::Query>) {
    let pieces = plans::before_plan(pieces);
    let (_, told, stances) = by_rules(pieces, folded);
    let lists = ByLists::of(!told.reports.is_empty(), &stances);
    let calm = gate::is_well_known(pieces, segment::segments(pieces).len());
    let apart = Apart {
        books: Vec::new(),
        own: Vec::new(),
    };
    match spoken(pieces, Glance::of(pieces), folded, (sender, calm), &apart).act {
        Some(crate::Act::Query(query)) => (lists, Some(query)),
        _ => (lists, None),
    }
}

fn member(piece: &Piece<'_>) -> Option<String> {
    if let Sense::Member(name) = piece.sense {
        Some(name.to_string())
    } else {
        None
    }
}
