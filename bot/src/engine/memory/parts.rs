//! Parts of texts that came before the others, put together when all are there.
//!
//! A text is known by its gateway, its sender, whom it is to, the reference of its parts and their
//! number. Networks bring parts in any order, and one of them twice. References come round again,
//! so another part with the same place begins a new text.

use std::collections::{BTreeMap, BTreeSet};

use chrono::{DateTime, TimeDelta, Utc};

use crate::words::{bounded, limits, message::ReceivedPart};

/// What stands where a part did not come.
const GAP: &str = " [...] ";

/// Which text a part belongs to.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Whole {
    gateway: String,
    from: String,
    to: String,
    reference: u16,
    of: u8,
}

impl Whole {
    fn of(part: &ReceivedPart) -> Self {
        Self {
            gateway: part.gateway.clone(),
            from: part.from.clone(),
            to: part.to.clone(),
            reference: part.reference,
            of: part.of,
        }
    }
}

/// Parts that wait.
#[derive(Default)]
pub(crate) struct Parts {
    texts: BTreeMap<Whole, BTreeMap<u8, ReceivedPart>>,
    /// The same by when the first of them came.
    in_order: BTreeSet<(DateTime<Utc>, Whole)>,
    count: usize,
}

impl Parts {
    /// Puts a part with the others; gives all of them, in their order, once it is a whole text or
    /// the place is taken by another part.
    pub(crate) fn put(&mut self, part: ReceivedPart) -> Option<Vec<ReceivedPart>> {
        let whole = Whole::of(&part);
        let is_taken = |parts: &BTreeMap<u8, ReceivedPart>| parts.contains_key(&part.number);
        let before = if self.texts.get(&whole).is_some_and(is_taken) {
            self.take(&whole)
        } else {
            None
        };
        if !self.texts.contains_key(&whole) {
            self.in_order.insert((part.at, whole.clone()));
        }
        let parts = self.texts.entry(whole.clone()).or_default();
        parts.insert(part.number, part);
        self.count += 1;
        let is_whole = parts.len() == usize::from(whole.of);
        before.or_else(|| if is_whole { self.take(&whole) } else { None })
    }

    /// Whether a text has waited too long, or too many wait.
    pub(crate) fn has_late(&self, now: DateTime<Utc>) -> bool {
        let since = now - TimeDelta::minutes(limits::PARTS_MINUTES);
        let first = self.in_order.first();
        let is_late = first.is_some_and(|(at, _)| *at <= since);
        is_late || self.count > limits::PARTS_WAITING
    }

    /// The parts of the text that has waited longest.
    pub(crate) fn take_oldest(&mut self) -> Option<Vec<ReceivedPart>> {
        let (_, whole) = self.in_order.first()?.clone();
        self.take(&whole)
    }

    /// Takes out those of texts from a sender.
    pub(crate) fn take_from(&mut self, is_theirs: impl Fn(&str) -> bool) -> Vec<ReceivedPart> {
        let texts = self.texts.keys().filter(|whole| is_theirs(&whole.from));
        let theirs: Vec<Whole> = texts.cloned().collect();
        theirs
            .iter()
            .filter_map(|whole| self.take(whole))
            .flatten()
            .collect()
    }

    fn take(&mut self, whole: &Whole) -> Option<Vec<ReceivedPart>> {
        let parts: Vec<ReceivedPart> = self.texts.remove(whole)?.into_values().collect();
        self.in_order.retain(|(_, waiting)| waiting != whole);
        self.count = self.count.saturating_sub(parts.len());
        Some(parts)
    }
}

/// What parts say together, with a mark for each gap.
pub(crate) fn joined(parts: &[ReceivedPart]) -> String {
    let mut text = String::new();
    let of = parts.first().map_or(0, |part| part.of);
    let mut next = 1;
    for part in parts {
        if part.number > next {
            text.push_str(GAP);
        }
        text.push_str(&part.text);
        next = part.number.saturating_add(1);
    }
    if next <= of {
        text.push_str(GAP);
    }
    bounded::text(text)
}

#[cfg(test)]
mod tests {
    use budwood_scheduler::MessageId;

    use super::*;

    fn part(number: u8, text: &str, at: i64) -> ReceivedPart {
        ReceivedPart {
            id: MessageId(at.unsigned_abs()),
            at: DateTime::from_timestamp(at, 0).unwrap(),
            gateway: "sim".into(),
            gateway_id: format!("{number}-{text}"),
            from: "+447700900123".into(),
            to: String::new(),
            text: text.into(),
            sent_at: None,
            reference: 7,
            of: 3,
            number,
        }
    }

    #[test]
    fn parts_are_whole_in_any_order() {
        let mut parts = Parts::default();
        assert_eq!(parts.put(part(3, "c", 1)), None);
        assert_eq!(parts.put(part(1, "a", 2)), None);
        let other = ReceivedPart {
            reference: 8,
            ..part(2, "x", 3)
        };
        assert_eq!(parts.put(other), None);
        let whole = parts.put(part(2, "b", 4)).unwrap();
        assert_eq!(joined(&whole), "abc");
        assert_eq!(parts.count, 1);
    }

    #[test]
    fn another_part_in_the_same_place_begins_a_new_text() {
        let mut parts = Parts::default();
        assert_eq!(parts.put(part(1, "a", 1)), None);
        let old = parts.put(part(1, "A", 2)).unwrap();
        assert_eq!(joined(&old), "a [...] ");
        assert_eq!(parts.put(part(2, "B", 3)), None);
        assert_eq!(joined(&parts.put(part(3, "C", 4)).unwrap()), "ABC");
        assert!(parts.take_oldest().is_none() && parts.count == 0);
    }

    #[test]
    fn what_is_missing_for_ten_minutes_is_marked() {
        let mut parts = Parts::default();
        let at = |seconds| DateTime::from_timestamp(seconds, 0).unwrap();
        assert_eq!(parts.put(part(2, "b", 0)), None);
        assert!(!parts.has_late(at(599)) && parts.has_late(at(600)));
        let late = parts.take_oldest().unwrap();
        assert_eq!(joined(&late), " [...] b [...] ");
        assert!(!parts.has_late(at(600)));
    }
}
