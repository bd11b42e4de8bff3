//! Which of two readings holds: that of the lists, or that which was learned of other people's texts.
//!
//! What was learned holds wherever it tells something: as sure as it is, it is stored, asked about or
//! left. Only a text of listed words is what the lists make of it, unless what was learned is surely
//! something else.
//! Deliberately absent: how sure a reading is (`sure`).

use crate::{
    details::Cause,
    kind::Kind,
    learned::account::Account,
    reading::{Alarm, Doubt, Reading, Report, Stance},
    rules::reports::Told,
};

/// What was learned of a text.
pub(crate) struct Learned {
    /// How sure it is, in hundredths of log-odds.
    pub(crate) sure: i32,
    /// How many signs the text has that chat seldom has.
    pub(crate) evidence: usize,
    /// Whether the lists tell the same.
    pub(crate) agreement: i32,
    /// What no report takes up.
    pub(crate) account: Account,
    pub(crate) told: Told,
    #[cfg(test)]
    pub(crate) signs: crate::learned::sure::Signs,
}

/// The words of a text.
#[derive(Clone, Copy)]
pub(crate) struct Words {
    /// All of them are of the lists, as written.
    pub(crate) plain: bool,
    /// One of them is of every day and has nothing to do with trees.
    pub(crate) strange: bool,
    pub(crate) count: usize,
    /// How many are of no list, although slips are mended.
    pub(crate) unknown: usize,
}

/// The lists tell the same, and as facts.
const SAME: i32 = 3;
/// So sure it must be where they do, and know all words but one.
const AGREED_MIN: i32 = 73;
/// The lists tell something else, or nothing.
const OTHER: i32 = 1;
/// So sure a reading must be to be stored without a question.
const STORED_MIN: i32 = 95;
/// So much more where a false fact does harm.
const HEAVY_COST: i32 = 25;
/// So sure of something else it speaks against what the lists tell of a text whose words they know: of
/// a short one, which they are made for, and of a long one.
const OTHER_MIN: i32 = 150;
const OTHER_LONG_MIN: i32 = 0;
/// Shorter texts of listed words are what the lists are made for.
const LONG_MIN: usize = 12;
/// So much in the text must belong to reports and seldom to chat.
const STORED_EVIDENCE: usize = 2;
/// How sure it must be to be asked about, by its evidence: nothing, one, two, three signs that chat
/// seldom has.
const EVIDENCE_STEPS: usize = 4;
const HEARD_MIN: [i32; EVIDENCE_STEPS] = [20, -130, -250, -300];
/// What the lists do not tell is a guess: it must be as likely as not in a text of so few words with an
/// unknown one, which may be anything, and in one of so many, where chance finds something.
const GUESS_MIN: i32 = 25;
const FEW_WORDS: usize = 4;
const MANY_WORDS: usize = 25;
/// So sure it must be where the lists do not tell it and it is nothing but rain: everybody talks of the
/// weather.
const WEATHER_MIN: i32 = 100;
/// So much evidence is worth an example when nothing was understood; so sure, with some.
const ABOUT_WORK_MIN: usize = 2;
const TOLD_MIN: i32 = -100;
/// Less sure than this, even the lists' own example helps nobody.
const ABOUT_MIN: i32 = -150;
/// More words than these are a story.
const STORY_WORDS: usize = 40;
/// So sure it stands beside an alarm; beside a question.
const BESIDE_MIN: i32 = -50;
const BESIDE_QUESTION_MIN: i32 = 100;

impl Learned {
    /// Puts what holds into the reading, which has what the lists make of the text.
    pub(crate) fn put(self, reading: &mut Reading, words: Words) {
        reading.margin = self.sure;
        if self.leaves(reading, words) {
            // An example helps nobody whose text is surely something else.
            let is_sent = reading.reports.is_empty() && reading.about_work;
            reading.about_work &= !is_sent || self.sure >= ABOUT_MIN;
            self.close_account(reading);
            return;
        }
        let is_beside = reading.acts.is_empty() || self.sure >= BESIDE_QUESTION_MIN;
        let is_story = words.count > STORY_WORDS && !self.is_sure(words);
        if self.told.reports.is_empty() || !self.is_heard(words) || !is_beside || is_story {
            self.unheard(reading, words);
            return;
        }
        self.heard(reading, words);
    }

    /// "weeded A, paid 3 boys 5000": numbers that the lists cannot place are no doubt where what was
    /// learned tells the same and surely keeps none of them.
    fn close_account(&self, reading: &mut Reading) {
        if self.agreement == SAME && self.sure >= AGREED_MIN {
            for report in &mut reading.reports {
                report
                    .doubts
                    .retain(|doubt| !matches!(doubt, Doubt::LooseEnd(_)) || self.is_open(doubt));
            }
        }
    }

    /// Whether it leaves a text of listed words as the lists read it: as nothing, too, where it is short
    /// and has no slip.
    fn leaves(&self, reading: &Reading, words: Words) -> bool {
        let listed = reading.stances.is_empty() && !reading.reports.is_empty();
        let clear = listed && reading.reports.iter().all(is_clear);
        let differs = self.agreement <= OTHER && !self.told.reports.is_empty();
        let is_short = words.count < LONG_MIN;
        let is_theirs = (clear && words.unknown == 0) || (words.plain && is_short);
        let other = if is_short { OTHER_MIN } else { OTHER_LONG_MIN };
        is_theirs && !(differs && self.sure >= other)
    }

    /// Whether it may be stored without a question.
    fn is_sure(&self, words: Words) -> bool {
        self.sure >= self.stored_from(words)
            && self.evidence >= STORED_EVIDENCE
            && self.account.is_closed()
            && self.told.reports.iter().all(is_clear)
    }

    /// The lists tell the same of it.
    pub(crate) const fn agrees(&self) -> bool {
        self.agreement > OTHER
    }

    /// How sure it must be for that.
    pub(crate) fn stored_from(&self, words: Words) -> i32 {
        let heavy = self.told.reports.iter().any(is_heavy);
        if self.agreement == SAME && words.unknown <= 1 {
            AGREED_MIN
        } else {
            STORED_MIN + if heavy { HEAVY_COST } else { 0 }
        }
    }

    /// Whether it is worth a question.
    fn is_heard(&self, words: Words) -> bool {
        self.sure >= self.asked_from(words)
    }

    /// How sure it must be for that.
    pub(crate) fn asked_from(&self, words: Words) -> i32 {
        let step = self.evidence.min(EVIDENCE_STEPS - 1);
        let least = HEARD_MIN.get(step).copied().unwrap_or(i32::MAX);
        let is_bare = words.count <= FEW_WORDS && words.unknown > 0;
        let is_lost = words.count > MANY_WORDS;
        let of_rain = |report: &Report| report.kind == Kind::Rain;
        if self.agreement > OTHER {
            least
        } else if self.told.reports.iter().all(of_rain) {
            least.max(WEATHER_MIN)
        } else if is_bare || is_lost {
            least.max(GUESS_MIN)
        } else {
            least
        }
    }

    /// Nothing was learned that is worth a question: what the lists tell is asked about, else an example
    /// is sent where the text is about work.
    fn unheard(&self, reading: &mut Reading, words: Words) {
        let is_asked = reading.stances.is_empty() && !reading.reports.is_empty();
        if is_asked {
            doubt(reading);
            return;
        }
        let is_likely = self.evidence > 0 && self.sure >= TOLD_MIN;
        let is_lost = words.count > MANY_WORDS && self.sure < GUESS_MIN;
        let is_work = (self.evidence >= ABOUT_WORK_MIN || is_likely) && !is_lost;
        let is_told = !self.told.reports.is_empty() && is_work;
        let only_chat = reading.stances.iter().all(|stance| *stance == Stance::Chat);
        if is_told && only_chat && words.count <= STORY_WORDS {
            reading.stances.clear();
            reading.reports.clear();
            reading.about_work = true;
        }
    }

    /// A doubt that likeness to other texts does not settle: of a number, any but of a strange word, and
    /// of one that is surely money, labour or hours.
    fn is_open(&self, doubt: &Doubt) -> bool {
        let is_number = |word: &str| word.bytes().all(|byte| byte.is_ascii_digit());
        match doubt {
            Doubt::StrangeWord(word) => is_number(word),
            Doubt::LooseEnd(word) => !is_number(word) || self.account.riddles > 0,
            Doubt::Likeness => false,
            Doubt::Repaired { .. }
            | Doubt::LetterForDigit(_)
            | Doubt::LooseNumber(_)
            | Doubt::Range(..)
            | Doubt::GuessedUnit(_)
            | Doubt::CommaList
            | Doubt::Whole(_)
            | Doubt::TwoCounts(..)
            | Doubt::SomebodyElse(_)
            | Doubt::TwoLanguages(_) => true,
        }
    }

    /// Takes what was learned: stored where it is sure, else asked about.
    fn heard(self, reading: &mut Reading, words: Words) {
        let is_open = reading
            .reports
            .iter()
            .flat_map(|report| &report.doubts)
            .any(|doubt| self.is_open(doubt));
        let only_chat = reading.stances.iter().all(|stance| *stance == Stance::Chat);
        let is_stored = !is_open && only_chat && !words.strange && self.is_sure(words);
        // A text that surely reports complains of nothing else.
        let is_sure = self.sure >= BESIDE_MIN;
        if is_sure && !matches!(reading.alarm, Some(Alarm::Danger | Alarm::Grief)) {
            reading.alarm = None;
        }
        reading.bare = None;
        reading.both = true;
        reading.stances.clear();
        if self.agreement <= OTHER || reading.reports.is_empty() {
            reading.reports = self.told.reports;
            reading.problems = self.told.problems;
        }
        if is_stored {
            for report in &mut reading.reports {
                report.doubts.clear();
            }
        } else {
            doubt(reading);
        }
    }
}

/// Has every report asked about.
fn doubt(reading: &mut Reading) {
    let clear = reading.reports.iter_mut().filter(|report| is_clear(report));
    for report in clear {
        report.doubts.push(Doubt::Likeness);
    }
}

/// Nothing about it is doubtful.
fn is_clear(report: &Report) -> bool {
    report.doubts.is_empty()
}

/// A false fact of it does harm: trees that are counted, or a fire.
fn is_heavy(report: &Report) -> bool {
    report.kind.counts_stand() || report.details.cause == Some(Cause::Fire)
}
