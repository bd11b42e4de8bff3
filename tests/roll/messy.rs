//! The list of `demo-data/messy`, in five formats: each odd cell becomes what its ledger says.
//!
//! The faults are those that lists of offices were seen to have; `tests/messy/make.py` writes the
//! list and the ledger, so that neither is made by what is tested here.

use std::collections::{BTreeMap, BTreeSet};

use budwood::roll::{
    Severity,
    take::{Answers, Grid, Mapping, Taken, Yes, take},
};
use budwood_scheduler::{Consent, Person};

use super::Office;

const FILES: [(&str, &[u8]); 5] = [
    ("list.csv", include_bytes!("../../demo-data/messy/list.csv")),
    (
        "list-wide.txt",
        include_bytes!("../../demo-data/messy/list-wide.txt"),
    ),
    (
        "list.xlsx",
        include_bytes!("../../demo-data/messy/list.xlsx"),
    ),
    ("list.xls", include_bytes!("../../demo-data/messy/list.xls")),
    ("list.ods", include_bytes!("../../demo-data/messy/list.ods")),
];

const LEDGER: &[u8] = include_bytes!("../../demo-data/messy/ledger.csv");

fn answers() -> Answers {
    Answers {
        country: "GB".to_owned(),
        zone: Some("Asia/Jakarta".to_owned()),
        calendar: Some("fao".to_owned()),
        ..Answers::default()
    }
}

fn taken(file: &[u8], yes: &Yes) -> Taken {
    let grid = Grid::read(file).expect("a table");
    let mapping = Mapping::guessed(&grid, &BTreeMap::new());
    take(&grid, &mapping, &answers(), yes)
}

/// The same, without the rows that the plain list's own check refuses.
fn checked(file: &[u8], yes: &Yes) -> (Taken, Office) {
    let mut taken = taken(file, yes);
    for _ in 0..8 {
        let plan = Office::default().plan(&taken.csv);
        let refused: BTreeMap<usize, String> = plan
            .findings
            .iter()
            .filter(|finding| finding.severity() == Severity::Refused)
            .map(|finding| (taken.lines[finding.line - 1], finding.fault.to_string()))
            .collect();
        if refused.is_empty() {
            break;
        }
        taken.refuse(&refused);
    }
    let mut office = Office::default();
    office.load(&taken.csv);
    (taken, office)
}

struct Case {
    line: usize,
    who: String,
    column: String,
    found: String,
    outcome: String,
    value: String,
}

fn ledger() -> Vec<Case> {
    let mut reader = csv::Reader::from_reader(LEDGER);
    let cases = reader.records().map(|row| {
        let row = row.expect("a row of cells");
        let cell = |at: usize| row[at].to_owned();
        Case {
            line: row[0].parse().expect("a line"),
            who: cell(1),
            column: cell(2),
            found: cell(3),
            outcome: cell(4),
            value: cell(5),
        }
    });
    cases.collect()
}

/// What is stored of a person and the first block, as the ledger writes it.
fn stored(office: &Office, person: &Person, column: &str) -> String {
    let directory = &office.directory;
    let block = directory.blocks_of(person.id).next();
    let state = block.and_then(|block| office.states.get(&block.id));
    let text = match column {
        "name" => Some(person.name.clone()),
        "phone" => directory.numbers_of(person.id).next().map(str::to_owned),
        "group" => person
            .group
            .and_then(|group| directory.group(group))
            .map(|group| group.name.clone()),
        "consent_on" => match &person.consent {
            Consent::Given { on, .. } => Some(on.to_string()),
            Consent::Unknown | Consent::Withdrawn { .. } => None,
        },
        "language" => Some(person.language.clone()),
        "area" => block
            .and_then(|block| block.area)
            .map(|area| format!("{} {}", area.value, area.unit.name())),
        "clone" => {
            let blocks = directory.blocks_of(person.id);
            blocks.last().and_then(|block| block.clone_name.clone())
        }
        "planted" => state.map(|state| state.planted().to_string()),
        "planted_on" => state
            .and_then(|state| state.planted_on())
            .map(|on| on.to_string()),
        other => panic!("{other} is in no case"),
    };
    text.unwrap_or_default()
}

#[test]
fn every_odd_cell_is_put_right_asked_or_refused() {
    let cases = ledger();
    assert!(cases.len() > 50, "{}", cases.len());
    for (name, file) in FILES {
        let (taken, office) = checked(file, &Yes::new());
        assert!(taken.questions.is_empty(), "{name}: {:?}", taken.questions);
        for case in &cases {
            let Case {
                line,
                who,
                column,
                found,
                outcome,
                value,
            } = case;
            let at = format!("{name}: line {line}, {column} {found:?}");
            let doubts = taken.doubts.iter().filter(|doubt| doubt.line == *line);
            let doubts: Vec<_> = doubts.collect();
            match outcome.as_str() {
                "right" => {
                    assert!(doubts.is_empty(), "{at}: {doubts:?}");
                    assert_eq!(&stored(&office, &office.person(who), column), value, "{at}");
                }
                "ask" => {
                    let [doubt] = doubts.as_slice() else {
                        panic!("{at}: {doubts:?}");
                    };
                    assert_eq!(doubt.proposal.as_ref(), Some(value), "{at}: {doubt:?}");
                    assert!(taken.held.contains(line), "{at}");
                }
                "refuse" => {
                    assert!(!doubts.is_empty(), "{at}");
                    assert!(doubts.iter().all(|doubt| doubt.proposal.is_none()), "{at}");
                    assert!(taken.held.contains(line), "{at}");
                }
                other => panic!("{other}"),
            }
        }
    }
}

/// Nothing is silently wrong: whoever said no has no consent, whatever day stands beside it.
#[test]
fn nobody_agrees_by_saying_no() {
    let no: BTreeSet<String> = ledger()
        .into_iter()
        .filter(|case| case.column == "consent_how" || case.found == "no")
        .map(|case| case.who)
        .collect();
    assert_eq!(no.len(), 3);
    for (name, file) in FILES {
        let yes = agreed(&taken(file, &Yes::new()));
        let (_, office) = checked(file, &yes);
        for who in &no {
            let person = office.person(who);
            assert_eq!(person.consent, Consent::Unknown, "{name}: {who}");
        }
    }
}

/// A person says yes to every proposal.
fn agreed(taken: &Taken) -> Yes {
    let proposals = taken.doubts.iter().filter_map(|doubt| {
        let key = (doubt.line, doubt.column.clone(), doubt.found.clone());
        Some((key, doubt.proposal.clone()?))
    });
    proposals.collect()
}

#[test]
fn what_is_agreed_to_is_taken() {
    for (name, file) in FILES {
        let before = taken(file, &Yes::new());
        let yes = agreed(&before);
        assert!(yes.len() > 15, "{name}: {}", yes.len());
        let (after, office) = checked(file, &yes);
        for case in ledger().iter().filter(|case| case.outcome == "ask") {
            assert!(!after.held.contains(&case.line), "{name}: {}", case.line);
        }
        // 12 rai are 1.92 hectares (a rai is 1,600 square metres).
        let in_rai = ledger().into_iter().find(|case| case.column == "unit");
        let person = office.person(&in_rai.expect("a case in rai").who);
        let block = office.directory.blocks_of(person.id).next().unwrap();
        assert_eq!(
            block.hectares().map(|land| (land * 100.0).round()),
            Some(192.0)
        );
    }
}

/// Two rows of one farmer are two blocks, and a line of sums is nobody.
#[test]
fn rows_of_one_farmer_are_blocks_and_sums_are_nobody() {
    let (_, office) = checked(FILES[0].1, &Yes::new());
    let first = office.person(&ledger()[0].who);
    let blocks = office.directory.blocks_of(first.id);
    let names: Vec<&str> = blocks.map(|block| block.name.as_str()).collect();
    assert_eq!(names, ["A", "B"]);
    assert!(
        office
            .directory
            .persons()
            .all(|person| person.name != "Total")
    );
}

#[test]
fn what_cannot_be_known_is_asked_of_the_whole_list() {
    use budwood::roll::take::Question::{DayOrder, Group, Unit};
    let list = "Name,Tel,Area,Trees,Planted on\nArlo Abrand,07700900101,1.2,520,5/6/2024\n";
    let grid = Grid::read(list.as_bytes()).unwrap();
    let mapping = Mapping::guessed(&grid, &BTreeMap::new());
    let taken = take(&grid, &mapping, &Answers::default(), &Yes::new());
    let asked: Vec<_> = taken.questions.iter().copied().collect();
    assert!(
        asked.contains(&Unit) && asked.contains(&DayOrder),
        "{asked:?}"
    );
    assert_eq!(taken.held, BTreeSet::from([2]));
    let answers = Answers {
        unit: Some("ha".to_owned()),
        day_order: Some(budwood::roll::take::DayOrder::DayFirst),
        country: "GB".to_owned(),
        ..Answers::default()
    };
    let taken = take(&grid, &mapping, &answers, &Yes::new());
    assert_eq!(taken.questions, BTreeSet::from([Group]));
}
