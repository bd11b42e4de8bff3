//! Slips in numbers, and whether anybody could see them.
//!
//! A slip that stays within what the block allows is a number like any other: the typed value is
//! then what is expected.

use crate::{
    chance::Chance,
    draw::{pick, weighted},
    plan::Fact,
};

/// A number as it was typed.
#[derive(Clone, Debug)]
pub(crate) struct Slip {
    pub(crate) text: String,
    /// What the figures say; the meant number where a letter stands for a digit.
    pub(crate) value: u32,
    /// A letter stands for a digit.
    pub(crate) letter: bool,
}

/// Whether a slip leaves what the block allows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Seen {
    No,
    /// So near the limit that the other facts of the text decide.
    Perhaps,
    Yes,
}

#[derive(Clone, Copy)]
enum Way {
    Lost,
    Added,
    Neighbour,
    Swapped,
    Letter,
    Tenfold,
}

/// The shares of the ways are assumed; the ways are those of Wiseman, Cairns and Cox 2011.
const WAYS: [(Way, u64); 6] = [
    (Way::Lost, 25),
    (Way::Added, 20),
    (Way::Neighbour, 25),
    (Way::Swapped, 12),
    (Way::Letter, 10),
    (Way::Tenfold, 8),
];

/// Types a number wrongly; none where the way does not change it.
pub(crate) fn slip(chance: &mut Chance, number: u32) -> Option<Slip> {
    let mut digits: Vec<char> = number.to_string().chars().collect();
    let place = chance.place(digits.len());
    match *weighted(chance, &WAYS) {
        Way::Lost => {
            if digits.len() < 2 {
                return None;
            }
            digits.remove(place);
        }
        Way::Added => digits.insert(place, *pick(chance, &['0', '1', '2', '3', '5', '8'])),
        Way::Neighbour => {
            let digit = digits.get_mut(place)?;
            *digit = *pick(chance, neighbours(*digit));
        }
        Way::Swapped => {
            let other = (place + 1) % digits.len();
            digits.swap(place, other);
        }
        Way::Letter => return letter(number),
        Way::Tenfold => digits.push('0'),
    }
    let text: String = digits.into_iter().collect();
    let value: u32 = text.parse().ok()?;
    // A zero in front or an empty count is no number that a phone's owner would send.
    (value != number && value > 0 && !text.starts_with('0')).then_some(Slip {
        text,
        value,
        letter: false,
    })
}

fn letter(number: u32) -> Option<Slip> {
    let plain = number.to_string();
    let text = match plain.strip_suffix('0') {
        Some(front) if !front.is_empty() => format!("{front}O"),
        _ => plain
            .strip_prefix('1')
            .filter(|rest| !rest.is_empty())
            .map(|rest| format!("l{rest}"))?,
    };
    Some(Slip {
        text,
        value: number,
        letter: true,
    })
}

/// The keys around a digit on a phone.
const fn neighbours(digit: char) -> &'static [char] {
    match digit {
        '1' => &['2', '4'],
        '2' => &['1', '3', '5'],
        '3' => &['2', '6'],
        '4' => &['1', '5', '7'],
        '5' => &['2', '4', '6', '8'],
        '6' => &['3', '5', '9'],
        '7' => &['4', '8'],
        '8' => &['5', '7', '9', '0'],
        '9' => &['6', '8'],
        _ => &['8'],
    }
}

/// Whether a count of this fact leaves what its block allows, by the limits of the policy.
pub(crate) fn seen(fact: &Fact, value: u32, several: bool) -> Seen {
    let plot = &fact.plot;
    let over = |limit: u32| {
        // In a text with several reports the earlier ones move the limit by a little.
        let margin = if several { limit / 8 + 5 } else { 0 };
        if value > limit + margin {
            Seen::Yes
        } else if value + margin <= limit {
            Seen::No
        } else {
            Seen::Perhaps
        }
    };
    match fact.kind {
        "dead" => over(plot.alive().min((plot.planted / 5).max(5))),
        "planted" => over(plot.holds * 13 / 10),
        "replaced" => over(plot.gaps()),
        "branched" | "not_branched" | "branch_induction" | "tapping_opened" | "disease"
        | "damage" => over(plot.alive()),
        _ => Seen::No,
    }
}

/// Whether a girth stands out of its list: over a third off the middle value.
pub(crate) fn stands_out(tenths: &[u32], value: u32) -> Seen {
    let mut sorted = tenths.to_vec();
    sorted.sort_unstable();
    let median = sorted.get(sorted.len() / 2).copied().unwrap_or(value);
    let off = value.abs_diff(median) * 100;
    match (off > median * 37, off < median * 33) {
        (true, _) => Seen::Yes,
        (_, true) => Seen::No,
        _ => Seen::Perhaps,
    }
}
