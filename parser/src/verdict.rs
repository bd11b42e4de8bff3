//! Which of two readings holds: that of the lists, or that which was learned of other people's texts.
//!
//! What both tell is stored. What only one tells is asked about, unless the lists know every word of
//! a short text. Deliberately absent: how sure a reading is (`sure`).

use crate::{
    account::Account,
    reading::{Alarm, Doubt, Reading, Report, Stance},
    reports::Told,
    sure::tells_less,
};

/// What was learned of a text.
pub(crate) struct Learned {
    /// How sure it is, in hundredths of log-odds.
    pub(crate) sure: i32,
    /// How many signs the text has that chat seldom has.
    pub(crate) evidence: usize,
    /// Whether the lists tell the same.
    pub(crate) agreement: i32,
    /// A listed word names each kind that is told.
    pub(crate) listed: bool,
    /// What no report takes up.
    pub(crate) account: Account,
    pub(crate) told: Told,
    #[cfg(test)]
    pub(crate) signs: crate::sure::Signs,
}

/// The words of a text.
#[derive(Clone, Copy)]
pub(crate) struct Words {
    /// All of them are of the lists, as written.
    pub(crate) plain: bool,
    /// How many are of no list, although slips are mended.
    pub(crate) unknown: usize,
    /// One of them is of every day and has nothing to do with trees.
    pub(crate) strange: bool,
    pub(crate) count: usize,
}

/// The lists tell something else.
const OTHER: i32 = 1;
/// Shorter texts of listed words are what the lists are made for.
const LONG_MIN: usize = 12;
/// How sure a reading must be to be stored without a question, by what the lists tell: nothing,
/// something else, the same but not as fact, the same.
const STORED_MIN: [i32; 4] = [110, 300, 220, 350];
/// So much in the text must belong to reports and seldom to chat.
const STORED_EVIDENCE: usize = 2;
/// How sure it must be to be asked about, by its evidence: nothing, one, two, three signs that chat
/// seldom has.
const EVIDENCE_STEPS: usize = 4;
const HEARD_MIN: [i32; EVIDENCE_STEPS] = [60, -120, -220, -250];
/// So much evidence is worth an example when nothing was understood; so sure, with some.
const ABOUT_WORK_MIN: usize = 2;
const TOLD_MIN: i32 = -100;
/// A word of every day that has nothing to do with trees.
const STRANGE_COST: i32 = 100;
/// More words than these are a story.
const STORY_WORDS: usize = 40;
/// So sure of something else it makes doubtful what the lists tell of a long text, by how many words
/// they do not know: none, one, more. Of short texts without such words nothing makes it so.
const OTHER_MIN: [i32; 3] = [150, 100, -60];
/// Less sure it is a guess.
const GUESS_MIN: i32 = -50;
/// So sure it stands beside a question or an alarm.
const BESIDE_MIN: i32 = -50;

impl Learned {
    /// Puts what holds into the reading, which has what the lists make of the text.
    pub(crate) fn put(self, reading: &mut Reading, words: Words) {
        reading.margin = self.sure;
        let listed = reading.stances.is_empty() && !reading.reports.is_empty();
        let clear = listed && reading.reports.iter().all(is_clear);
        let is_short = words.count < LONG_MIN;
        let stands = (words.plain && is_short) || (clear && self.allows(words, is_short));
        if stands || (clear && tells_less(&self.told.reports, &reading.reports)) {
            return;
        }
        let is_beside = reading.acts.is_empty() || self.sure >= BESIDE_MIN;
        let is_story = words.count > STORY_WORDS && !self.is_sure(words);
        if self.told.reports.is_empty() || !self.is_heard(words) || !is_beside || is_story {
            self.unheard(reading, words);
            return;
        }
        self.heard(reading, words);
    }

    /// Whether it tells something else than the lists.
    fn differs(&self) -> bool {
        self.agreement == OTHER && !self.told.reports.is_empty()
    }

    /// Whether what the lists tell clearly may stand.
    fn allows(&self, words: Words, is_short: bool) -> bool {
        let step = words.unknown.min(OTHER_MIN.len() - 1);
        let least = OTHER_MIN.get(step).copied().unwrap_or(0);
        let is_told = words.unknown == 0 && is_short;
        is_told || !self.differs() || self.sure < least
    }

    /// How sure it is of a text with these words.
    const fn sure_of(&self, words: Words) -> i32 {
        let strange = if words.strange { STRANGE_COST } else { 0 };
        self.sure.saturating_sub(strange)
    }

    /// Whether it may be stored without a question.
    fn is_sure(&self, words: Words) -> bool {
        let agreement = usize::try_from(self.agreement).unwrap_or(0);
        let least = STORED_MIN.get(agreement).copied().unwrap_or(i32::MAX);
        // What the lists do not tell has its words of work in them, and leaves no number over.
        let counted = self.agreement > OTHER || (self.listed && self.account.numbers == 0);
        self.sure_of(words) >= least
            && self.evidence >= STORED_EVIDENCE
            && self.account.is_closed()
            && counted
            && self.told.reports.iter().all(is_clear)
    }

    /// Whether it is worth a question.
    fn is_heard(&self, words: Words) -> bool {
        let step = self.evidence.min(EVIDENCE_STEPS - 1);
        let least = HEARD_MIN.get(step).copied().unwrap_or(i32::MAX);
        self.sure_of(words) >= least
    }

    /// Nothing was learned that is worth a question: what the lists ask about stays, else an example
    /// is sent where the text is about work.
    fn unheard(&self, reading: &mut Reading, words: Words) {
        let is_asked = reading.stances.is_empty() && !reading.reports.is_empty();
        if is_asked {
            return;
        }
        let is_likely = self.evidence > 0 && self.sure >= TOLD_MIN;
        let is_work = self.evidence >= ABOUT_WORK_MIN || is_likely;
        let is_told = !self.told.reports.is_empty() && is_work;
        let only_chat = reading.stances.iter().all(|stance| *stance == Stance::Chat);
        if is_told && only_chat && words.count <= STORY_WORDS {
            reading.stances.clear();
            reading.reports.clear();
            reading.about_work = true;
        }
    }

    /// Takes what was learned: stored where it is sure, else asked about.
    fn heard(mut self, reading: &mut Reading, words: Words) {
        let open = reading
            .reports
            .iter()
            .flat_map(|report| &report.doubts)
            .any(is_open);
        let only_chat = reading.stances.iter().all(|stance| *stance == Stance::Chat);
        let is_stored = !open && only_chat && !words.strange && self.is_sure(words);
        // What the lists ask about is as good a question as a guess, or as one about less.
        let asks = !reading.reports.is_empty() && reading.stances.is_empty();
        let less = self.differs() && tells_less(&self.told.reports, &reading.reports);
        if asks && (less || !self.listed || self.sure < GUESS_MIN) {
            for report in &mut reading.reports {
                if report.doubts.is_empty() {
                    report.doubts.push(Doubt::Likeness);
                }
            }
            return;
        }
        // A text that surely reports complains of nothing else.
        let is_sure = self.sure >= BESIDE_MIN;
        if is_sure && !matches!(reading.alarm, Some(Alarm::Danger | Alarm::Grief)) {
            reading.alarm = None;
        }
        reading.bare = None;
        reading.both = true;
        reading.stances.clear();
        if self.agreement <= OTHER {
            if !is_stored {
                self.told.doubt(&Doubt::Likeness);
            }
            reading.reports = self.told.reports;
            reading.problems = self.told.problems;
            return;
        }
        for report in &mut reading.reports {
            if is_stored {
                report.doubts.clear();
            } else if report.doubts.is_empty() {
                report.doubts.push(Doubt::Likeness);
            }
        }
    }
}

/// A doubt that likeness to other texts does not settle: of a number, any but of a strange word.
fn is_open(doubt: &Doubt) -> bool {
    match doubt {
        Doubt::StrangeWord(word) => word.bytes().all(|byte| byte.is_ascii_digit()),
        Doubt::Likeness => false,
        Doubt::Repaired { .. }
        | Doubt::LetterForDigit(_)
        | Doubt::LooseNumber(_)
        | Doubt::Range(..)
        | Doubt::GuessedUnit(_)
        | Doubt::CommaList
        | Doubt::Whole(_)
        | Doubt::TwoCounts(..)
        | Doubt::LooseEnd(_)
        | Doubt::SomebodyElse(_)
        | Doubt::TwoLanguages(_) => true,
    }
}

/// Nothing about it is doubtful.
fn is_clear(report: &Report) -> bool {
    report.doubts.is_empty()
}
