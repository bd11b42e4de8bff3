//! The table of numbering plans is what the pinned reference library holds.
//!
//! `BUDWOOD_UPDATE=1` writes it anew, after the version in `tests/all` was raised; read the
//! difference before it is kept.

use std::{env, fs, path::Path};

use serde_json::{Value, json};

use crate::peer::ask;

#[test]
fn the_table_of_numbers_is_that_of_the_reference_library() {
    let answers = ask("numbering.py", &[json!({})]);
    let table = answers.first().and_then(|answer| answer.get("table"));
    let table = table.and_then(Value::as_str).expect("a table");
    let plans = table.lines().filter(|line| line.starts_with("plan "));
    assert!(plans.count() > 240, "countries are missing");
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tables/numbering.txt");
    if env::var_os("BUDWOOD_UPDATE").is_some() {
        fs::write(&path, table).expect("the table can be written");
    }
    let kept = fs::read_to_string(&path).expect("the table is there");
    let differs = kept
        .lines()
        .zip(table.lines())
        .find(|(ours, theirs)| ours != theirs);
    assert_eq!(differs, None, "run with BUDWOOD_UPDATE=1");
    assert_eq!(kept.len(), table.len(), "run with BUDWOOD_UPDATE=1");
}
