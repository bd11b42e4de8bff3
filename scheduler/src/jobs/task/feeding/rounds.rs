//! The rounds of a feeding table on the days of a stand, and which of them were given.
//!
//! A round is a window of the season: it lies in the rains, but not in their last month, when what
//! is spread is not taken up before the soil dries. A round that the table has in the dry is brought
//! forward into the rains before it or waits for the next, whichever is nearer. Each report of
//! feeding counts for one round: a late one for the round that was open, never for the next.

use alloc::vec::Vec;

use chrono::NaiveDate;

use crate::{
    handbook::calendar::{Dose, FeedRound},
    jobs::task::case::Case,
    sums::days,
    words::season::{Rains, Season},
};

/// In the last month of the rains nothing is fed: the last round lies "at least one month before the
/// rains end" in a Vietnamese upkeep procedure (in English, 2018, read in a copy).
const LAST_RAIN_DAYS: u32 = 30;
/// A round is asked for so many days before its last day, so that there is time for it.
const NOTICE_DAYS: u32 = 21;
/// Two rounds on the same trees lie at least so far apart (an assumption; the densest table that
/// was found has six rounds a year).
const APART_DAYS: u32 = 28;
/// A dose that can be given half a year later only is overtaken by those that follow.
const WAIT_DAYS_MAX: i64 = 183;
/// The last round of a table can be made up for so long.
const LAST_FEED_DAYS: u32 = 365;

/// A round of the table and its days.
#[derive(Clone, Copy)]
pub(in crate::jobs::task) struct Placed<'a> {
    /// From 1.
    pub(in crate::jobs::task) number: u32,
    /// The day on which the table has it.
    pub(in crate::jobs::task) asked: NaiveDate,
    /// What each tree gets.
    pub(in crate::jobs::task) doses: &'a [Dose],
    /// The days on which it can be given; none when the rains leave none.
    pub(in crate::jobs::task) days: Option<Window>,
}

/// The days of a round.
#[derive(Clone, Copy)]
pub(in crate::jobs::task) struct Window {
    /// The first.
    pub(in crate::jobs::task) from: NaiveDate,
    /// The last; none where nothing ends it.
    pub(in crate::jobs::task) until: Option<NaiveDate>,
    /// When it was given.
    pub(in crate::jobs::task) fed_on: Option<NaiveDate>,
}

/// The rounds of the table in order, as far as the first one to come. None when nothing is planted.
pub(in crate::jobs::task) fn placed<'a>(case: &Case<'a>) -> Option<Vec<Placed<'a>>> {
    let planted_on = case.state.planted_on()?;
    let mut fed = case.state.fed.clone();
    fed.sort_unstable();
    let mut fed = fed.into_iter().filter(|day| *day >= planted_on).peekable();
    let table = &case.calendar.feeding.rounds;
    let mut placed: Vec<Placed<'a>> = Vec::with_capacity(table.len());
    // The last round as it is in the table, and the day from which the next one keeps its distance.
    let (mut asked_before, mut before) = (planted_on, planted_on);
    for (number, round) in (1..).zip(table) {
        let asked = days::months_after(planted_on, round.month)?;
        let span = half(asked_before, asked);
        let later = table
            .get(usize::try_from(number).ok()?..)
            .unwrap_or_default();
        let days = place(case.season, before, asked, span).map(|(from, last)| {
            let following = following(case.season, planted_on, (asked, from), later);
            let until = match following {
                Some(following) => earlier(last, days::before(following, 1)),
                None => earlier(last, days::after(asked, LAST_FEED_DAYS)),
            };
            // What was given in the first half of the time to the next round is this one, late.
            let counts_until = following.map(|following| {
                let half_way = from + (following - from) / 2;
                until.map_or(following, |until| half_way.max(until))
            });
            // And what was given in the second half of the time before it is this one, early.
            let counts_from = before + (from - before) / 2;
            while fed.next_if(|day| *day < counts_from).is_some() {}
            let fed_on = fed.next_if(|day| counts_until.is_none_or(|until| *day <= until));
            Window {
                from,
                until,
                fed_on,
            }
        });
        if let Some(days) = days {
            before = days.fed_on.unwrap_or(days.from);
        }
        asked_before = asked;
        placed.push(Placed {
            number,
            asked,
            doses: &round.doses,
            days,
        });
        if days.is_some_and(|days| days.from > case.today && days.fed_on.is_none()) {
            break;
        }
    }
    Some(placed)
}

/// The day on which the first of these rounds that finds room is asked for, after one that the table
/// has on the first of these days and that is given on the second.
fn following(
    season: &Season,
    planted_on: NaiveDate,
    (mut asked_before, before): (NaiveDate, NaiveDate),
    later: &[FeedRound],
) -> Option<NaiveDate> {
    later.iter().find_map(|round| {
        let asked = days::months_after(planted_on, round.month)?;
        let found = place(season, before, asked, half(asked_before, asked));
        asked_before = asked;
        found.map(|(from, _)| from)
    })
}

fn earlier(one: Option<NaiveDate>, other: Option<NaiveDate>) -> Option<NaiveDate> {
    one.into_iter().chain(other).min()
}

/// Half of the days between two days.
fn half(from: NaiveDate, to: NaiveDate) -> u32 {
    u32::try_from((to - from).num_days() / 2).unwrap_or(0)
}

/// The day from which a round is asked for and the last on which it can be given. `before` is the
/// day of the round before it, `span` how far it should lie from that.
fn place(
    season: &Season,
    before: NaiveDate,
    asked: NaiveDate,
    span: u32,
) -> Option<(NaiveDate, Option<NaiveDate>)> {
    let spaced = days::after(before, span.max(APART_DAYS))?;
    let Some(near) = Near::of(season, asked) else {
        return Some((asked.max(spaced), None));
    };
    let earliest = days::after(before, APART_DAYS)?;
    // Young trees do not get a dose long before its time.
    let half_way = before + (asked - before).max(chrono::TimeDelta::zero()) / 2;
    let back = || near.before?.fit(asked, earliest.max(half_way), spaced);
    let wait = || {
        let fit = near.after?.fit(asked, earliest, spaced)?;
        ((fit.0 - asked).num_days() <= WAIT_DAYS_MAX).then_some(fit)
    };
    let (from, last) = if near.is_back() {
        back().or_else(wait)
    } else {
        wait().or_else(back)
    }?;
    Some((from, Some(last)))
}

/// Days of the rains on which trees are fed.
#[derive(Clone, Copy)]
struct Room {
    first: NaiveDate,
    last: NaiveDate,
}

impl Room {
    fn of(rains: Rains) -> Option<Self> {
        let last = days::before(rains.end, LAST_RAIN_DAYS)?;
        (rains.start <= last).then_some(Self {
            first: rains.start,
            last,
        })
    }

    /// The first day of a round in here, as near to the day of the table as it can be, and its last.
    fn fit(
        self,
        asked: NaiveDate,
        earliest: NaiveDate,
        spaced: NaiveDate,
    ) -> Option<(NaiveDate, NaiveDate)> {
        let in_time = days::before(self.last, NOTICE_DAYS)?.max(self.first);
        let wished = asked.max(spaced).max(self.first);
        let from = wished.min(in_time).max(earliest);
        (from <= self.last).then_some((from, self.last))
    }
}

/// The rooms about a day: the one that it lies in or that has passed, and the one to come.
struct Near {
    asked: NaiveDate,
    before: Option<Room>,
    after: Option<Room>,
}

impl Near {
    /// None when the rains are not known, or too short to feed in.
    fn of(season: &Season, asked: NaiveDate) -> Option<Self> {
        let mut rains = season.rains(days::before(asked, 500)?)?;
        let mut near = Self {
            asked,
            before: None,
            after: None,
        };
        // Rains come twice a year at most.
        for _ in 0..8 {
            match Room::of(rains) {
                Some(room) if room.first <= asked => near.before = Some(room),
                Some(room) => {
                    near.after = Some(room);
                    break;
                }
                None => {}
            }
            rains = season.next(rains)?;
        }
        (near.before.is_some() || near.after.is_some()).then_some(near)
    }

    /// Whether the room that has passed, or is present, is the nearer one.
    fn is_back(&self) -> bool {
        match (self.before, self.after) {
            (Some(before), Some(after)) => self.asked - before.last <= after.first - self.asked,
            (before, _) => before.is_some(),
        }
    }
}
