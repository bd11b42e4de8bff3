//! The numbering plans: how each country's numbers look, read from `bot/tables/numbering.txt`.
//!
//! The head of that file says what its lines mean. A pattern is compiled when it is first asked
//! for, since a service meets the numbers of one or two countries.

use std::sync::{LazyLock, OnceLock};

use regex_lite::{Captures, Regex};

use super::Line;

const TABLE: &str = include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/tables/numbering.txt"));

static PLANS: LazyLock<Vec<Plan>> = LazyLock::new(|| read(TABLE));

/// Calling codes have one to three digits (ITU-T E.164).
const CODE_DIGITS_MAX: usize = 3;

/// How the numbers of one country look.
#[derive(Debug, Default)]
pub(super) struct Plan {
    /// Two letters, or "001" where a code belongs to no country.
    region: &'static str,
    /// The calling code.
    pub(super) code: &'static str,
    abroad: Option<Pattern>,
    trunk: Option<Pattern>,
    /// What stands in place of the trunk prefix.
    rule: Option<&'static str>,
    starts: Option<Pattern>,
    all: Shape,
    lines: Vec<(Line, Shape)>,
}

/// How long some numbers are, and a pattern that fits them.
#[derive(Debug, Default)]
struct Shape {
    lengths: Lengths,
    /// Enough to dial it from nearby.
    nearby: Lengths,
    pattern: Option<Pattern>,
}

/// Numbers of digits, a bit for each.
#[derive(Clone, Copy, Debug, Default)]
struct Lengths(u32);

/// Whether a number of digits suits a country.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fit {
    Right,
    Nearby,
    Short,
    Long,
    Between,
}

/// A pattern, anchored at the beginning of some digits, and at their end if it tells of all.
#[derive(Debug)]
struct Pattern {
    text: &'static str,
    whole: bool,
    compiled: OnceLock<Option<Regex>>,
}

/// The plan of a country, by its two letters.
pub(super) fn of_country(region: &str) -> Option<&'static Plan> {
    PLANS
        .iter()
        .find(|plan| plan.region == region && plan.is_country())
}

/// The plan that speaks for a calling code, and the digits after the code.
pub(super) fn of_digits(digits: &str) -> Option<(&'static Plan, &str)> {
    (1..=CODE_DIGITS_MAX).find_map(|length| {
        let (code, rest) = digits.split_at_checked(length)?;
        Some((of_code(code)?, rest))
    })
}

/// The plan that speaks for a calling code.
pub(super) fn of_code(code: &str) -> Option<&'static Plan> {
    sharing(code).next()
}

/// What the digits after a calling code tell of the line.
pub(super) fn line(code: &str, national: &str) -> Line {
    let mut plans = sharing(code).peekable();
    let Some(first) = plans.next() else {
        return Line::Unassigned;
    };
    if plans.peek().is_none() {
        return first.line(national);
    }
    for plan in sharing(code) {
        let line = plan.line(national);
        let own = plan.starts.as_ref().map(|starts| starts.fits(national));
        if own == Some(true) || (own.is_none() && line != Line::Unassigned) {
            return line;
        }
    }
    Line::Unassigned
}

fn sharing(code: &str) -> impl Iterator<Item = &'static Plan> {
    PLANS.iter().filter(move |plan| plan.code == code)
}

impl Plan {
    /// Whether the code belongs to a country, and not to a network of satellites or the like.
    pub(super) fn is_of_country(&self) -> bool {
        self.region != "001"
    }

    fn is_country(&self) -> bool {
        self.region.bytes().all(|byte| byte.is_ascii_uppercase())
    }

    /// Whether a number of so many digits is one of this country.
    pub(super) fn fit(&self, national: &str) -> Fit {
        let (lengths, digits) = (self.all.lengths, national.len());
        if self.all.nearby.holds(digits) {
            Fit::Nearby
        } else if lengths.holds(digits) {
            Fit::Right
        } else if digits < lengths.least() {
            Fit::Short
        } else if digits > lengths.most() {
            Fit::Long
        } else {
            Fit::Between
        }
    }

    /// Whether the digits are a number of this country by the pattern alone.
    pub(super) fn fits(&self, national: &str) -> bool {
        self.all.fits(national)
    }

    /// The digits after what is dialled here to call abroad. What begins with a zero then is no
    /// calling code, so the prefix was none.
    pub(super) fn after_abroad<'d>(&self, digits: &'d str) -> Option<&'d str> {
        let end = self.abroad.as_ref()?.captures(digits)?.get(0)?.end();
        digits.get(end..).filter(|rest| !rest.starts_with('0'))
    }

    /// The digits without the prefix of dialling at home; as they are when there is none, or when
    /// only with it they are a number.
    pub(super) fn without_trunk(&self, digits: &str) -> String {
        let bare = self.bare(digits);
        match bare {
            Some(bare) if self.fits(&bare) || !self.fits(digits) => bare,
            Some(_) | None => digits.to_owned(),
        }
    }

    fn bare(&self, digits: &str) -> Option<String> {
        let found = self.trunk.as_ref()?.captures(digits)?;
        let rest = digits.get(found.get(0)?.end()..)?;
        let mut bare = String::new();
        if let Some(rule) = self.rule
            && found.iter().last().flatten().is_some()
        {
            found.expand(rule, &mut bare);
        }
        Some(bare + rest)
    }

    fn line(&self, national: &str) -> Line {
        if !self.all.holds(national) {
            return Line::Unassigned;
        }
        let mut lines = self.lines.iter();
        let found = lines.find(|(_, shape)| shape.holds(national));
        found.map_or(Line::Unassigned, |(line, _)| *line)
    }
}

impl Shape {
    fn holds(&self, national: &str) -> bool {
        self.lengths.holds(national.len()) && self.fits(national)
    }

    fn fits(&self, national: &str) -> bool {
        self.pattern
            .as_ref()
            .is_some_and(|pattern| pattern.fits(national))
    }
}

impl Lengths {
    const fn holds(self, digits: usize) -> bool {
        digits < u32::BITS as usize && self.0 >> digits & 1 == 1
    }

    const fn least(self) -> usize {
        self.0.trailing_zeros() as usize
    }

    const fn most(self) -> usize {
        (u32::BITS - 1).saturating_sub(self.0.leading_zeros()) as usize
    }
}

impl Pattern {
    const fn start(text: &'static str) -> Self {
        Self {
            text,
            whole: false,
            compiled: OnceLock::new(),
        }
    }

    const fn whole(text: &'static str) -> Self {
        Self {
            text,
            whole: true,
            compiled: OnceLock::new(),
        }
    }

    fn fits(&self, digits: &str) -> bool {
        self.regex().is_some_and(|regex| regex.is_match(digits))
    }

    fn captures<'d>(&self, digits: &'d str) -> Option<Captures<'d>> {
        self.regex()?.captures(digits)
    }

    /// None when the table has an error, which a test excludes.
    fn regex(&self) -> Option<&Regex> {
        let end = if self.whole { "$" } else { "" };
        let compile = || Regex::new(&format!("^(?:{}){end}", self.text)).ok();
        self.compiled.get_or_init(compile).as_ref()
    }
}

/// Reads the table. A line that cannot be read is left out; a test says that there is none.
fn read(table: &'static str) -> Vec<Plan> {
    let mut plans: Vec<Plan> = Vec::new();
    for line in table.lines() {
        let mut words = line.split(' ');
        let (Some(word), Some(first)) = (words.next(), words.next()) else {
            continue;
        };
        let second = words.next();
        if let ("plan", Some(code)) = (word, second) {
            plans.push(Plan {
                region: first,
                code,
                ..Plan::default()
            });
        } else if let Some(plan) = plans.last_mut() {
            plan.take(word, first, second);
        }
    }
    plans
}

impl Plan {
    fn take(&mut self, word: &str, first: &'static str, second: Option<&'static str>) {
        let shape = || Shape::read(first, second);
        match word {
            "abroad" => self.abroad = Some(Pattern::start(first)),
            "starts" => self.starts = Some(Pattern::start(first)),
            "trunk" => {
                self.trunk = Some(Pattern::start(first));
                self.rule = second;
            }
            "all" => self.all = shape(),
            "service" => self.lines.push((Line::Service, shape())),
            "mobile" => self.lines.push((Line::Mobile, shape())),
            "landline" => self.lines.push((Line::Landline, shape())),
            _ => {}
        }
    }
}

impl Shape {
    fn read(lengths: &str, pattern: Option<&'static str>) -> Self {
        let (lengths, nearby) = lengths.split_once('(').unwrap_or((lengths, ""));
        Self {
            lengths: Lengths::read(lengths),
            nearby: Lengths::read(nearby.trim_end_matches(')')),
            pattern: pattern.map(Pattern::whole),
        }
    }
}

impl Lengths {
    fn read(list: &str) -> Self {
        let each = list.split(',').filter_map(|digits| digits.parse().ok());
        Self(each.fold(0, |bits, digits: u32| {
            bits | 1_u32.checked_shl(digits).unwrap_or(0)
        }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // From memory: in Argentina a mobile is dialled with 0, the area, 15, and has a 9 before the
    // area from abroad. The digits here are nobody's.
    #[test]
    fn a_rule_says_what_stands_in_place_of_a_prefix() {
        let argentina = of_country("AR").unwrap();
        assert_eq!(argentina.without_trunk("0111500000000"), "91100000000");
        let fitting = "1100000000";
        assert!(argentina.fits(fitting));
        assert_eq!(argentina.without_trunk(fitting), fitting);
    }

    #[test]
    fn every_line_of_the_table_is_read_and_every_pattern_is_one() {
        let lines = TABLE
            .lines()
            .filter(|line| !line.is_empty() && !line.starts_with('#'));
        let mut found = 0;
        for plan in PLANS.iter() {
            assert!(plan.all.lengths.0 > 0, "{}", plan.region);
            let shapes = plan.lines.iter().map(|(_, shape)| shape);
            let patterns: Vec<_> = shapes
                .chain([&plan.all])
                .filter_map(|shape| shape.pattern.as_ref())
                .chain(&plan.abroad)
                .chain(&plan.trunk)
                .chain(&plan.starts)
                .collect();
            for pattern in &patterns {
                assert!(pattern.regex().is_some(), "{}: {pattern:?}", plan.region);
            }
            // One for the line that names it.
            found += 1 + patterns.len();
        }
        assert_eq!(found, lines.count());
    }
}
