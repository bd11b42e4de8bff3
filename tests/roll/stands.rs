//! What a list tells of stands that are there already.

use budwood::roll::Finding;
use budwood_parser::Kind;
use budwood_scheduler::Body;

use super::{Office, block_list};

/// What is said about a list, a line for each finding.
fn said(csv: &str) -> String {
    let plan = Office::default().plan(csv.as_bytes());
    let lines: Vec<String> = plan.findings.iter().map(Finding::to_string).collect();
    lines.join("\n")
}

/// What an office knows of a stand of two years when it comes on the list becomes facts.
#[test]
fn what_is_known_of_a_stand_becomes_facts() {
    let columns = "area,unit,planted_on,planted,alive,counted_on,girths,measured_on,opened,opened_on,weeded_on";
    let csv = block_list(
        columns,
        "1,ha,2024-11,480,457,2026-03-15,41; 43.5;39,2026-03-16,12,2026-04-01,2026-08-20",
    );
    let plan = Office::default().plan(csv.as_bytes());
    assert!(plan.may_be_stored(), "{plan}");
    let told: Vec<(Kind, Option<u32>, usize)> = plan
        .facts
        .iter()
        .filter_map(|fact| {
            let Body::Reported { kind, details, .. } = fact else {
                return None;
            };
            Some((*kind, details.count, details.values_cm.len()))
        })
        .collect();
    assert_eq!(
        told,
        [
            (Kind::Planted, Some(480), 0),
            (Kind::Dead, Some(23), 0),
            (Kind::Weeded, None, 0),
            (Kind::Girth, None, 3),
            (Kind::TappingOpened, Some(12), 0),
        ]
    );
}

#[test]
fn what_cannot_be_so_of_a_stand_is_refused() {
    for (columns, cells, why) in [
        ("alive", "457", "planted"),
        (
            "planted_on,planted,alive",
            "2024-11,480,481",
            "more than the 480 planted",
        ),
        (
            "planted_on,planted,counted_on",
            "2024-11,480,2026-03-15",
            "alive",
        ),
        (
            "planted_on,planted,girths",
            "2024-11,480,41; 43",
            "measured_on",
        ),
        (
            "planted_on,planted,girths,measured_on",
            "2024-11,480,41; 430,2026-03-15",
            "centimetres",
        ),
        ("planted_on,planted,opened", "2024-11,480,12", "opened_on"),
        (
            "planted_on,planted,weeded_on",
            "2024-11,480,2024-10-31",
            "before planting",
        ),
    ] {
        let said = said(&block_list(
            &format!("area,unit,{columns}"),
            &format!("1,ha,{cells}"),
        ));
        assert!(
            said.contains("refused") && said.contains(why),
            "{columns}: {said}"
        );
    }
}
