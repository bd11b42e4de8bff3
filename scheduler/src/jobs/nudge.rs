//! When to speak of a task: hours, quiet days, tries, and when a person must take over.
//!
//! Times here are local to the farm; the caller knows the zone. Deliberately absent: the words.

#[cfg(test)]
mod tests;
mod year;

use chrono::{Days, NaiveDate, NaiveDateTime, NaiveTime, Weekday};

use crate::{
    jobs::task::Task,
    land::{block::NudgeTrack, directory::Person},
    sums::days,
    words::job::{TaskKind, TextClass},
};

pub use year::TextedWeeks;

/// The rules of courtesy. Evidence for the hours is weak, so courtesy decides; evidence for few,
/// repeated texts is good (trials of reminders by text message to farmers and patients).
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rules {
    /// From this time nothing is sent.
    pub quiet_from: NaiveTime,
    /// From this time texts may be sent again.
    pub quiet_until: NaiveTime,
    /// Routine texts go from this time.
    pub window_from: NaiveTime,
    /// Routine texts go before this time.
    pub window_until: NaiveTime,
    /// Days after the first nudge of a round on which the next ones go. When all are used up, a
    /// person should call.
    pub again_after_days: [u32; 2],
    /// Days between two routine texts to one phone.
    pub rest_days: u32,
    /// Days between two texts of the field round to one person: while a stand of theirs is in its
    /// first year, and later. Common practice: young stands are walked every month.
    pub round_days: [u32; 2],
    /// A round is also for what falls due within so many days after it. An assumption.
    pub round_ahead_days: u32,
    /// Routine texts to one phone in a year at most. Three fifths of them can be used to say things
    /// again, four fifths for the field round, the rest is kept for what nobody was told of.
    pub texts_a_year: u32,
    /// A nudge that could not be sent for so many days is dropped.
    pub expires_after_days: u32,
    /// Days that a text which can wait may wait for the afternoon before market day, when phones
    /// get charged and people read.
    pub market_wait_days: u32,
    /// New phones that are welcomed in one day: each may call the adviser to ask what this is.
    pub welcomes_a_day: u32,
}

impl Rules {
    /// Quiet from 19:00 to 06:00; routine texts from 15:30 to 18:30; day 0, 7 and 21, never a
    /// fourth; one routine text a week to a phone, 40 a year; a field round every month, and every sixth
    /// week from the second year on; dropped after 3 days; 50 welcomes a day.
    #[must_use]
    pub fn standard() -> Self {
        Self {
            quiet_from: at(19, 0),
            quiet_until: at(6, 0),
            window_from: at(15, 30),
            window_until: at(18, 30),
            again_after_days: [7, 21],
            rest_days: 7,
            round_days: [31, 45],
            round_ahead_days: 21,
            texts_a_year: 40,
            expires_after_days: 3,
            market_wait_days: 2,
            welcomes_a_day: 50,
        }
    }
}

fn at(hour: u32, minute: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, minute, 0).unwrap_or_default()
}

/// The earliest local time, not before this one, at which a routine text may go. With a market
/// day it waits for the day before, if that is near; leave the market day out for what is urgent.
#[must_use]
pub fn slot(
    rules: &Rules,
    not_before: NaiveDateTime,
    quiet_days: &[NaiveDate],
    market_day: Option<Weekday>,
) -> NaiveDateTime {
    let first = first_slot(rules, not_before, quiet_days);
    let eve = market_day.and_then(|market| eve_near(rules, first.date(), quiet_days, market));
    match eve {
        Some(eve) if eve > first.date() => eve.and_time(rules.window_from),
        _ => first,
    }
}

fn first_slot(rules: &Rules, not_before: NaiveDateTime, quiet_days: &[NaiveDate]) -> NaiveDateTime {
    let today_is_over = not_before.time() >= rules.window_until;
    let skipped = u64::from(today_is_over);
    // Each quiet day can move the text by one day, so one more day than there are is enough.
    let most = skipped + 1 + u64::try_from(quiet_days.len()).unwrap_or(u64::MAX - 2);
    let free = (skipped..=most)
        .map_while(|days| not_before.date().checked_add_days(Days::new(days)))
        .find(|day| !quiet_days.contains(day));
    match free {
        Some(day) if day == not_before.date() => {
            day.and_time(not_before.time().max(rules.window_from))
        }
        Some(day) => day.and_time(rules.window_from),
        None => not_before,
    }
}

/// The day before market, if it is this day or one of the next that a text may wait for.
fn eve_near(
    rules: &Rules,
    day: NaiveDate,
    quiet_days: &[NaiveDate],
    market: Weekday,
) -> Option<NaiveDate> {
    (0..=rules.market_wait_days)
        .filter_map(|wait| days::after(day, wait))
        .find(|day| chrono::Datelike::weekday(day).succ() == market && !quiet_days.contains(day))
}

/// Whether a routine text may be put out at this local time. The moment for it was a [`slot`], but
/// may have passed while nothing could be put out.
#[must_use]
pub fn is_window(rules: &Rules, local_now: NaiveDateTime, quiet_days: &[NaiveDate]) -> bool {
    let time = local_now.time();
    rules.window_from <= time && time < rules.window_until && may_send(rules, local_now, quiet_days)
}

/// Whether a routine text may go at this local time: asked again at the moment of sending.
#[must_use]
pub fn may_send(rules: &Rules, local_now: NaiveDateTime, quiet_days: &[NaiveDate]) -> bool {
    let time = local_now.time();
    let is_day = rules.quiet_until <= time && time < rules.quiet_from;
    is_day && !quiet_days.contains(&local_now.date())
}

/// The earliest local time, not before this one, that is by day and on no quiet day: for what cannot
/// wait for the hours of routine texts.
#[must_use]
pub fn first_by_day(
    rules: &Rules,
    not_before: NaiveDateTime,
    quiet_days: &[NaiveDate],
) -> NaiveDateTime {
    if may_send(rules, not_before, quiet_days) {
        return not_before;
    }
    let is_before = not_before.time() < rules.quiet_until;
    let skipped = u64::from(!is_before);
    // Each quiet day can move it by one day, so one more day than there are is enough.
    let most = skipped + 1 + u64::try_from(quiet_days.len()).unwrap_or(u64::MAX - 2);
    (skipped..=most)
        .map_while(|days| not_before.date().checked_add_days(Days::new(days)))
        .find(|day| !quiet_days.contains(day))
        .map_or(not_before, |day| day.and_time(rules.quiet_until))
}

/// The first day on which this phone may get a routine text again.
#[must_use]
pub fn rested_on(rules: &Rules, last_text_on: NaiveDate) -> NaiveDate {
    days::after(last_text_on, rules.rest_days).unwrap_or(NaiveDate::MAX)
}

/// The first day on which a person may be texted of a field round again.
#[must_use]
pub fn round_rested_on(rules: &Rules, last_round_on: NaiveDate, is_young: bool) -> NaiveDate {
    let [young, older] = rules.round_days;
    let wait = if is_young { young } else { older };
    days::after(last_round_on, wait).unwrap_or(NaiveDate::MAX)
}

/// Why a nudge may not go now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Withheld {
    /// They did not agree to be texted, or do no more.
    NoConsent,
    /// They are left in peace, until this day or until a person says go.
    Held(Option<NaiveDate>),
    /// The job is done, over or not due: there is nothing to say.
    NotDue,
    /// It is night, or a quiet day.
    Quiet,
}

/// Why a person is to be told nothing on this day: asked when a nudge is planned, when it is put
/// out, and when it is sent.
#[must_use]
pub fn withheld(person: &Person, today: NaiveDate) -> Option<Withheld> {
    if !person.consent.is_given() {
        return Some(Withheld::NoConsent);
    }
    let hold = person.hold.as_ref().filter(|hold| hold.is_on(today));
    hold.map(|hold| Withheld::Held(hold.until))
}

/// Whether this nudge may go now, and if not, why.
///
/// All of it is asked again at the moment of sending: what was so when the nudge was put out may be
/// so no more. `open` are the jobs of the block as they stand, `due` is the day of the round that
/// the nudge is for.
///
/// # Errors
///
/// With the reason that lasts longest.
pub fn may_go(
    rules: &Rules,
    (task, due): (TaskKind, NaiveDate),
    open: &[Task],
    local_now: NaiveDateTime,
    quiet_days: &[NaiveDate],
) -> Result<(), Withheld> {
    let today = local_now.date();
    let is_open = |open: &Task| {
        let same = (open.kind, open.due) == (task, due);
        same && open.due <= today && open.ends.is_none_or(|ends| today <= ends)
    };
    if !open.iter().any(is_open) {
        Err(Withheld::NotDue)
    } else if may_send(rules, local_now, quiet_days) {
        Ok(())
    } else {
        Err(Withheld::Quiet)
    }
}

/// The question of a nudge is open for so many days; after them "done" may mean anything.
const QUESTION_DAYS: u32 = 14;

/// Whether a nudge that went on this day can be answered by a word or a number alone no more.
#[must_use]
pub fn has_lapsed(went_on: NaiveDate, today: NaiveDate) -> bool {
    days::after(went_on, QUESTION_DAYS).is_some_and(|last| today > last)
}

/// What to do about a task that is not done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NextTry {
    /// Nudge on this day.
    On(NaiveDate),
    /// All tries are used up: a person should call or visit.
    AdviserList,
    /// There is no point in it any more.
    Over,
}

/// When to nudge for this task next. Tries are counted for each round, that is for each due day.
#[must_use]
pub fn next_try(
    rules: &Rules,
    task: &Task,
    track: Option<&NudgeTrack>,
    today: NaiveDate,
) -> NextTry {
    let past = |day: NaiveDate| task.ends.is_some_and(|ends| day > ends);
    if past(today) {
        return NextTry::Over;
    }
    let next = match track.filter(|track| track.due == task.due && track.tries > 0) {
        None => Some(task.due),
        // A day that is still to come was written by a clock that was ahead. It counts as long
        // ago, or nobody would be nudged until then.
        Some(track) if track.last_on > today => Some(today),
        Some(track) => rules
            .again_after_days
            .get(usize::from(track.tries) - 1)
            .and_then(|wait| match task.class() {
                // It is said again in the next round.
                TextClass::Round => days::after(track.last_on, rules.round_days[0]),
                TextClass::Urgent | TextClass::Decisive => days::after(track.first_on, *wait),
            })
            // A try that went out late must not be followed by the next at once.
            .map(|day| day.max(rested_on(rules, track.last_on))),
    };
    match next.map(|day| day.max(today)) {
        Some(day) if !past(day) => NextTry::On(day),
        Some(_) | None => NextTry::AdviserList,
    }
}

/// Which of the jobs of a phone a text speaks of: the first of these, since a phone gets one text a
/// week.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Turn {
    /// Planting, what spreads nearby, and what has no more days than a phone rests: nobody was told of it
    /// yet.
    Urgent,
    /// Another job that nobody was told of yet, and planting again.
    First,
    /// The field round.
    Round,
    /// A text has spoken of it.
    Again,
}

impl Turn {
    /// That of a job.
    #[must_use]
    pub fn of(rules: &Rules, task: &Task, is_again: bool) -> Self {
        match task.class() {
            TextClass::Round => Self::Round,
            // What a season closes on is said again as if nobody had been told.
            TextClass::Urgent | TextClass::Decisive if is_again && task.urgency() > 0 => {
                Self::Again
            }
            TextClass::Urgent | TextClass::Decisive if is_again => Self::First,
            TextClass::Urgent | TextClass::Decisive
                if is_short(rules, task) || task.urgency() == 0 =>
            {
                Self::Urgent
            }
            TextClass::Urgent | TextClass::Decisive => Self::First,
        }
    }

    /// Whether a phone that got so many texts in a year may get another one for this.
    #[must_use]
    pub const fn may_be_said(self, rules: &Rules, texts: u32) -> bool {
        let fifths = match self {
            Self::Urgent | Self::First => 5,
            Self::Round => 4,
            Self::Again => 3,
        };
        texts * 5 < rules.texts_a_year * fifths
    }
}

/// Whether a job has no more days than a phone rests: what is not said of it in time is said too late.
#[must_use]
pub fn is_short(rules: &Rules, task: &Task) -> bool {
    task.late_after <= rested_on(rules, task.due)
}

/// Which job to speak of first. Of those that nobody was told of it is the one that is late first, so
/// that as many as can be are told in time; of others the most urgent.
#[must_use]
pub fn rank(rules: &Rules, task: &Task, is_again: bool) -> (Turn, NaiveDate, u8, NaiveDate) {
    let turn = Turn::of(rules, task, is_again);
    let late = match turn {
        Turn::First => task.late_after,
        Turn::Urgent | Turn::Round | Turn::Again => NaiveDate::MIN,
    };
    (turn, late, task.urgency(), task.due)
}

/// Whether the job should have been done by now.
#[must_use]
pub fn is_late(task: &Task, today: NaiveDate) -> bool {
    today > task.late_after
}
