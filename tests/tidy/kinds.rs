//! What is so of a kind of fact or job is a column of its row, not a list of kinds elsewhere.
//!
//! A list in the code says "no" to every kind that comes later, and nobody is told. So the code
//! asks for kinds by name only where it means these and no others. How often it does is counted
//! for each file, with the reason. Arms of a `match` do not count: the compiler names a kind that
//! is missing there.

use std::collections::BTreeMap;

use super::{Source, expect_none, sources};

/// Files that ask for kinds by name: how often, and why it is no column.
const BY_NAME: [(&str, usize, &str); 44] = [
    (
        "parser/src/learned/account.rs",
        2,
        "gaps and food crops are planted too",
    ),
    (
        "parser/src/learned/verdict.rs",
        1,
        "everybody talks of the weather",
    ),
    (
        "parser/src/learned/tellings.rs",
        3,
        "a sickness, a harm and rain are named where no listed word does",
    ),
    (
        "parser/src/spoken/meant.rs",
        2,
        "plants and fertiliser are asked for in numbers",
    ),
    (
        "scheduler/src/jobs/task/land.rs",
        1,
        "land is clear when it is cleared, pegged or dug",
    ),
    (
        "parser/src/spoken/topic.rs",
        7,
        "questions have words of their own for some kinds",
    ),
    (
        "parser/src/pieces/used.rs",
        4,
        "what a number beside rain can be",
    ),
    (
        "bot/src/engine/deeds/facts.rs",
        2,
        "what rain and sickness bring about",
    ),
    (
        "bot/src/engine/questions/sheets/census.rs",
        1,
        "the sheet of this job",
    ),
    (
        "bot/src/engine/questions/read_back.rs",
        2,
        "what a census and induction bring about",
    ),
    (
        "bot/src/engine/questions/farmer.rs",
        11,
        "each question has an answer of its own",
    ),
    (
        "bot/src/engine/questions/adviser_notices.rs",
        2,
        "a census has news of its own",
    ),
    (
        "bot/src/engine/questions/scene.rs",
        2,
        "what is looked for nearby is sickness, at the roots the white root",
    ),
    (
        "bot/src/engine/questions/block_facts.rs",
        1,
        "sickness gathers, nothing else does",
    ),
    (
        "bot/src/engine/deeds/reply.rs",
        1,
        "what \"done\" says of rain",
    ),
    (
        "bot/src/engine/questions/work.rs",
        3,
        "feeding and girths are asked about",
    ),
    (
        "bot/src/commands/planning/costs.rs",
        1,
        "the year of planting is told",
    ),
    (
        "bot/src/commands/read/output.rs",
        2,
        "one slot has three names in records",
    ),
    (
        "bot/src/commands/rehearse/play.rs",
        2,
        "girths grow, and opening ends the play",
    ),
    ("bot/src/wording/ask.rs", 1, "girth or height"),
    (
        "bot/src/wording/facts.rs",
        4,
        "rain, deaths, the crop that was sown, plants that came",
    ),
    (
        "bot/src/wording/job.rs",
        1,
        "opening is no rule without a source",
    ),
    (
        "parser/src/rules/anchors.rs",
        6,
        "filling gaps, rain as weather, spray that was fed",
    ),
    (
        "parser/src/pieces/compose.rs",
        1,
        "a grade stands beside feeding",
    ),
    (
        "parser/src/rules/gate.rs",
        1,
        "\"have 120 trees\" is no planting",
    ),
    ("parser/src/rules/lengths.rs", 1, "girth or height"),
    (
        "parser/src/rules/proof.rs",
        2,
        "what came, and what was put, is named",
    ),
    (
        "parser/src/spoken/asked.rs",
        1,
        "how much, of fertiliser, is asked in bags",
    ),
    (
        "parser/src/spoken/queries.rs",
        3,
        "what comes in for work is pay; another crop than rubber is sown",
    ),
    (
        "parser/src/rules/reports.rs",
        4,
        "\"no\" beside rain, food crops, branches",
    ),
    (
        "parser/src/rules/roles.rs",
        4,
        "millimetres of rain, the weak beside the dead",
    ),
    ("parser/src/rules/slots.rs", 2, "what came are plants"),
    (
        "parser/src/rules/things.rs",
        2,
        "sickness that killed, fertiliser that came",
    ),
    (
        "parser/src/rules/unsure.rs",
        2,
        "what came is named before, weeds or land",
    ),
    ("scheduler/src/decide/complete.rs", 1, "girths have a limit"),
    (
        "scheduler/src/decide/draft.rs",
        2,
        "rain falls on every block",
    ),
    (
        "scheduler/src/figures.rs",
        4,
        "which facts lie under which figure",
    ),
    (
        "scheduler/src/figures/losses.rs",
        1,
        "which facts tell what trees died of",
    ),
    (
        "scheduler/src/figures/needs.rs",
        1,
        "which job needs fertiliser",
    ),
    (
        "scheduler/src/figures/news.rs",
        2,
        "which look finds a sickness gone",
    ),
    (
        "scheduler/src/figures/stand.rs",
        1,
        "whom the word to plant reaches",
    ),
    (
        "scheduler/src/land/block.rs",
        1,
        "what proves a round of feeding",
    ),
    (
        "scheduler/src/handbook/lesson.rs",
        1,
        "gaps are filled as trees are planted",
    ),
    ("scheduler/src/words/job.rs", 17, "the table of the jobs"),
];

#[test]
fn what_is_so_of_a_kind_is_in_its_row() {
    let allowed: BTreeMap<&str, usize> = BY_NAME
        .iter()
        .map(|(path, times, _)| (*path, *times))
        .collect();
    let mut breaches = Vec::new();
    let sources = sources();
    for source in sources.iter().filter(|source| is_of_the_product(source)) {
        let code = code(source);
        let found = names_asked_for(&code);
        let known = allowed.get(source.path.as_str()).copied().unwrap_or(0);
        if found.len() != known {
            let path = &source.path;
            breaches.push(format!(
                "{path}: {} instead of {known}: {found:?}",
                found.len()
            ));
        }
    }
    for (path, _) in allowed {
        if !sources.iter().any(|source| source.path == path) {
            breaches.push(format!("{path}: no such file"));
        }
    }
    expect_none(
        &breaches,
        "if it is so of some kinds, make it a column in parser/src/kind.rs or \
         scheduler/src/words/job.rs; if it is about this one kind, count it here with its reason",
    );
}

#[test]
fn the_ways_to_ask_for_a_kind_are_seen() {
    let asks = [
        "if kind == Kind::Rain {",
        "if *kind != budwood_parser::Kind::Rain {",
        "piece.kind() == Some(Kind::Rain)",
        "matches!(fact.kind, Kind::Rain)",
        "matches!(kind(at), TaskKind::Weed) && is_late(Kind::Rain)",
        "(Some(Kind::Rain), _) => true,",
        "[Kind::Rain].contains(&kind)",
        "if let (Some(ailment), Kind::Dead) = (ailment, kind) {",
    ];
    for line in asks {
        assert_eq!(names_asked_for(line).len(), 1, "{line}");
    }
    assert_eq!(
        names_asked_for("matches!(kind, Kind::Dead | Kind::Rain)").len(),
        2
    );
    assert_eq!(
        names_asked_for("if let Kind::Dead | Kind::Rain = kind {").len(),
        2
    );
    let others = [
        "Kind::Rain => self.rain(),",
        "Kind::Rain | Kind::Dead => self.rain(),",
        "Kind::Rain | Kind::Dead if wet => self.rain(),",
        "case.last_done(TaskKind::Weed)",
        "kind == Kind::ALL && SenderKind::Name == kind",
    ];
    for line in others {
        assert_eq!(names_asked_for(line), Vec::<&str>::new(), "{line}");
    }
}

fn is_of_the_product(source: &Source) -> bool {
    let folders = ["parser/src", "scheduler/src", "bot/src"];
    source.is_rust()
        && folders.iter().any(|folder| source.is_under(folder))
        && !source.path.contains("/tests/")
        && !source.path.ends_with("tests.rs")
}

/// The code without its tests, in one line.
fn code(source: &Source) -> String {
    let lines: Vec<&str> = source.code().map(|(_, line)| line.trim()).collect();
    let code = lines.join(" ");
    let product = code.split("#[cfg(test)] mod tests {").next();
    product.unwrap_or_default().to_owned()
}

/// Kinds of fact and of job that the code asks for by name, as it names them.
fn names_asked_for(code: &str) -> Vec<&str> {
    let mut asked = Vec::new();
    for (at, _) in code.match_indices("Kind::") {
        let start = if code[..at].ends_with("Task") {
            at - 4
        } else {
            at
        };
        let is_longer = code[..start].ends_with(|c: char| c.is_ascii_alphanumeric());
        let name = &code[at + "Kind::".len()..];
        let letters = name.bytes().take_while(u8::is_ascii_alphanumeric).count();
        let is_variant = name.as_bytes().get(1).is_some_and(u8::is_ascii_lowercase);
        let end = at + "Kind::".len() + letters;
        if !is_longer && is_variant && is_asked(&code[..start], &code[end..]) {
            asked.push(&code[start..end]);
        }
    }
    asked
}

/// Whether a name between these is compared with, or is part of a pattern that is no arm alone.
fn is_asked(before: &str, after: &str) -> bool {
    let before = before.strip_suffix("budwood_parser::").unwrap_or(before);
    let before = before.strip_suffix("budwood_scheduler::").unwrap_or(before);
    let value = before.trim_end_matches(['&', '*', '(']);
    value.ends_with("== ")
        || value.ends_with("!= ")
        || before.ends_with("Some(")
        || before.ends_with('[')
        || after.starts_with(") =")
        || is_in_matches(before)
        || (before.ends_with(" | ") || after.starts_with(" | ")) && !is_arm(after)
}

/// Whether the last `matches!(` before a name is still open there.
fn is_in_matches(before: &str) -> bool {
    let Some((_, inside)) = before.rsplit_once("matches!(") else {
        return false;
    };
    let mut depth = 1_i32;
    inside.chars().all(|c| {
        match c {
            '(' => depth += 1,
            ')' => depth -= 1,
            _ => {}
        }
        depth > 0
    })
}

/// Whether a chain of names ends as an arm does.
fn is_arm(after: &str) -> bool {
    let is_name = |c: char| c.is_ascii_alphanumeric() || matches!(c, ':' | ' ' | '|');
    let rest = after.trim_start_matches(is_name);
    let chain = &after[..after.len() - rest.len()];
    rest.starts_with("=>") || chain.contains(" if ")
}
