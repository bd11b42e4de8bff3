//! Which of two readings holds: that of the lists, or that which was learned of other people's texts.
//!
//! What both tell is stored. What only one tells is asked about, unless the lists know every word of
//! a short text. Deliberately absent: how sure a reading is (`sure`).

use crate::{
    reading::{Alarm, Doubt, Reading, Report, Stance},
    reports::Told,
};

/// What was learned of a text.
pub(crate) struct Learned {
    /// How sure it is, in hundredths of log-odds.
    pub(crate) sure: i32,
    /// How many signs the text has that chat seldom has.
    pub(crate) evidence: usize,
    /// Whether the lists tell the same.
    pub(crate) agreement: i32,
    pub(crate) told: Told,
    #[cfg(test)]
    pub(crate) signs: crate::sure::Signs,
}

/// The words of a text.
#[derive(Clone, Copy)]
pub(crate) struct Words {
    /// All of them are of the lists, as written.
    pub(crate) plain: bool,
    /// One of them is of every day and has nothing to do with trees.
    pub(crate) strange: bool,
    pub(crate) count: usize,
}

/// The lists tell something else; the same, but not as fact; the same as fact.
const OTHER: i32 = 1;
/// Shorter texts of listed words are what the lists are made for.
const LONG_MIN: usize = 12;
/// Steps of evidence: nothing, one, two, three signs that chat seldom has.
const EVIDENCE_STEPS: usize = 4;
/// How sure a reading must be, by its evidence: to be stored without a question; to be asked about.
const STORED_MIN: [i32; EVIDENCE_STEPS] = [i32::MAX, 240, 200, 200];
const HEARD_MIN: [i32; EVIDENCE_STEPS] = [60, -120, -220, -250];
/// So much evidence is worth an example when nothing was understood; so sure, with some.
const ABOUT_WORK_MIN: usize = 2;
const TOLD_MIN: i32 = -200;
/// A word of every day that has nothing to do with trees.
const STRANGE_COST: i32 = 100;
/// More words than these are a story.
const STORY_WORDS: usize = 40;
/// So sure of something else it makes what the lists tell doubtful: where they know every word of a
/// long text, and where they do not.
const OTHER_PLAIN_MIN: i32 = 200;
const OTHER_MIN: i32 = 90;
/// So sure it stands beside a question or an alarm.
const BESIDE_MIN: i32 = -50;

impl Learned {
    /// Puts what holds into the reading, which has what the lists make of the text.
    pub(crate) fn put(self, reading: &mut Reading, words: Words) {
        let listed = reading.stances.is_empty() && !reading.reports.is_empty();
        let is_clear = listed && reading.reports.iter().all(is_clear);
        let is_long = words.count >= LONG_MIN;
        let differs = self.agreement == OTHER && !self.told.reports.is_empty();
        let least = match (words.plain, is_long) {
            (true, false) => i32::MAX,
            (true, true) => OTHER_PLAIN_MIN,
            (false, _) => OTHER_MIN,
        };
        let is_doubted = differs && self.sure >= least;
        let denies = is_long && !reading.stances.is_empty() && self.sure >= BESIDE_MIN;
        if (is_clear || words.plain) && !is_doubted && !denies {
            return;
        }
        let is_beside = reading.acts.is_empty() || self.sure >= BESIDE_MIN;
        let is_story = words.count > STORY_WORDS && !self.is(STORED_MIN, words);
        if self.told.reports.is_empty() || !self.is(HEARD_MIN, words) || !is_beside || is_story {
            self.unheard(reading, words);
            return;
        }
        self.heard(reading, words);
    }

    /// Whether it is sure enough for its evidence.
    fn is(&self, least: [i32; EVIDENCE_STEPS], words: Words) -> bool {
        let step = self.evidence.min(EVIDENCE_STEPS - 1);
        let strange = if words.strange { STRANGE_COST } else { 0 };
        let least = least.get(step).copied().unwrap_or(i32::MAX);
        self.sure.saturating_sub(strange) >= least
    }

    /// Nothing was learned that is worth a question: what the lists ask about stays, else an example
    /// is sent where the text is about work.
    fn unheard(&self, reading: &mut Reading, words: Words) {
        let is_asked = reading.stances.is_empty() && !reading.reports.is_empty();
        if is_asked {
            return;
        }
        let is_told = !self.told.reports.is_empty() && self.evidence > 0 && self.sure >= TOLD_MIN;
        let is_work = self.evidence >= ABOUT_WORK_MIN || is_told;
        let only_chat = reading.stances.iter().all(|stance| *stance == Stance::Chat);
        if is_work && only_chat && words.count <= STORY_WORDS {
            reading.stances.clear();
            reading.reports.clear();
            reading.about_work = true;
        }
    }

    /// Takes what was learned: stored where the lists tell the same, else asked about.
    fn heard(mut self, reading: &mut Reading, words: Words) {
        let agree = self.agreement > OTHER;
        let open = reading
            .reports
            .iter()
            .flat_map(|report| &report.doubts)
            .any(is_open);
        let only_chat = reading.stances.iter().all(|stance| *stance == Stance::Chat);
        let is_free = !open && !words.strange && only_chat;
        let is_stored = agree && is_free && self.is(STORED_MIN, words);
        // A text that surely reports complains of nothing else.
        let is_sure = self.sure >= BESIDE_MIN;
        if is_sure && !matches!(reading.alarm, Some(Alarm::Danger | Alarm::Grief)) {
            reading.alarm = None;
        }
        reading.bare = None;
        reading.both = true;
        reading.stances.clear();
        if !agree {
            self.told.doubt(&Doubt::Likeness);
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

/// A doubt that likeness to other texts does not settle.
const fn is_open(doubt: &Doubt) -> bool {
    !matches!(doubt, Doubt::StrangeWord(_) | Doubt::Likeness)
}

/// Nothing about it is doubtful.
fn is_clear(report: &Report) -> bool {
    report.doubts.is_empty()
}
