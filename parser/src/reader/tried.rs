//! The readings of a text that are tried, and the surest of them.
//!
//! The best course through the pieces is one reading. Others lack a kind that it tells, or tell one that
//! it lacks, if they are nearly as good. Each is read to its end, and the signs of the whole say which
//! is the surest: what a course cannot see, such as a number that is left over, decides then.
//! Deliberately absent: whether the surest holds (`verdict`).

use smallvec::SmallVec;

use super::Reader;
use crate::{
    glyphs::fold::Folded,
    learned::{
        account::Account,
        clues::{Clues, Hints},
        course::{self, Course, Must},
        sure::{self, Way},
        tellings::{self, Tellings},
        uses,
        verdict::Learned,
        weights::Weights,
    },
    lists::piece::Piece,
    pieces::used::Uses,
    reading::{Doubt, Known, Sender},
    rules::reports::{self, Told},
};

/// A course that is worth so much less is not tried.
const WORSE_MAX: i32 = 100;

/// A text as it is read.
struct Text<'a, 'r> {
    pieces: &'a [Piece<'r>],
    folded: &'r Folded<'r>,
    known: &'a Known<'r>,
    clues: Clues<'a, 'r>,
    rules: &'a sure::Rules<'a>,
}

impl Reader {
    /// What a text tells by what was learned of others; the way there can be looked at.
    pub(super) fn learned<'r>(
        &self,
        pieces: &[Piece<'r>],
        folded: &'r Folded<'r>,
        known: &Known<'r>,
        told: (&sure::Rules<'_>, Hints),
        look: impl FnOnce(&Course, &Uses),
    ) -> Learned {
        let mut surest: Option<(Course, Uses, Learned)> = None;
        let first = self.try_all(pieces, folded, known, told, |course, uses, learned| {
            let sure = surest.as_ref().map_or(i32::MIN, |(_, _, other)| other.sure);
            if learned.sure > sure {
                surest = Some((course, uses, learned));
            }
        });
        let (course, uses, learned) = surest
            .filter(|(_, _, other)| other.sure > first.2.sure)
            .unwrap_or(first);
        look(&course, &uses);
        learned
    }

    /// The reading of the best course; all others that tell something else are handed out.
    pub(super) fn try_all<'r>(
        &self,
        pieces: &[Piece<'r>],
        folded: &'r Folded<'r>,
        known: &Known<'r>,
        (rules, hints): (&sure::Rules<'_>, Hints),
        mut take: impl FnMut(Course, Uses, Learned),
    ) -> (Course, Uses, Learned) {
        let clues = Clues::of(pieces, folded, hints, known.sender == Sender::Adviser);
        let text = Text {
            pieces,
            folded,
            known,
            clues,
            rules,
        };
        let course = course::course(pieces, &text.clues, &self.weights);
        let (uses, first) = self.weighed(&text, &course, Way::default());
        // Where the best course tells nothing, most others are chance.
        let others = if first.told.reports.is_empty() {
            SmallVec::new()
        } else {
            course.others()
        };
        for must in others {
            let other = course.other(pieces, &self.weights, must);
            let worse = course.score - other.score;
            if worse > WORSE_MAX {
                continue;
            }
            let more = matches!(must, Must::Pass(..));
            let (uses, learned) = self.weighed(&text, &other, Way { worse, more });
            let reports = &learned.told.reports;
            if !reports.is_empty() && *reports != first.told.reports {
                take(other, uses, learned);
            }
        }
        (course, uses, first)
    }

    /// What a course tells, and how sure that is.
    fn weighed(&self, text: &Text<'_, '_>, course: &Course, way: Way) -> (Uses, Learned) {
        let Text {
            pieces,
            folded,
            known,
            clues,
            rules,
        } = text;
        let found = tellings::tellings(pieces, course);
        let uses = uses::uses(pieces, course, clues, &self.weights);
        let evidence = sure::evidence(pieces, &uses, known);
        // Rain and what came are told without a block.
        let placeless = found
            .segments
            .iter()
            .any(|segment| segment.kind.is_of_no_block());
        let (told, harm) = if evidence == 0 && !placeless {
            (Told::none(), 0)
        } else {
            told_by(
                pieces,
                (course, &found, &uses),
                (clues, &self.weights),
                folded,
                known,
            )
        };
        let account = Account::of(pieces, &uses, &told.reports);
        let signs = sure::signs(
            &sure::Found {
                pieces,
                course,
                tellings: &found,
                uses: &uses,
                told: &told.reports,
                account,
                harm,
                evidence,
                way,
            },
            rules,
            known,
        );
        let learned = Learned {
            sure: self.weights.sure(&signs),
            agreement: sure::agreement(&told.reports, rules),
            evidence,
            account,
            told,
            #[cfg(test)]
            signs,
        };
        (uses, learned)
    }
}

/// The reports of a course, and by how much what harms in them is likelier than other harm.
fn told_by<'r>(
    pieces: &[Piece<'r>],
    (course, found, uses): (&Course, &Tellings, &Uses),
    learned: (&Clues<'_, '_>, &Weights),
    folded: &'r Folded<'r>,
    known: &Known<'r>,
) -> (Told, i32) {
    let hushed = tellings::hushed(pieces, course, uses, folded, known);
    let mut told = reports::read(&hushed, &found.segments, folded, uses);
    let harm = tellings::name_harm(&mut told.reports, &found.segments, learned, folded, pieces);
    for report in &mut told.reports {
        report
            .doubts
            .retain(|doubt| !matches!(doubt, Doubt::Repaired { .. } | Doubt::TwoLanguages(_)));
    }
    (told, harm)
}
