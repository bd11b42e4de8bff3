//! Files for partners as others read them: PyPI shapely (areas that lie over each other, shapes),
//! geojson, icalendar, openpyxl, and the checksums by `sha256sum`.

use std::{
    fs,
    path::{Path, PathBuf},
    process::{Command, Output},
};

use budwood::parcel::overlap::shared_pct;
use serde_json::{Value, json};
use tempfile::TempDir;

use crate::peer::ask;

/// Corners of land like a walk gives it, drawn from a number: around a middle, at all sides, so that
/// it never crosses itself.
fn land(seed: u64) -> Vec<(f64, f64)> {
    let mut state = seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1;
    let mut next = || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        (state % 10_000) as f64 / 10_000.0
    };
    let corners = 3 + (next() * 30.0) as usize;
    let (north, east) = (3.1 + next() * 0.003, 101.5 + next() * 0.003);
    (0..corners)
        .map(|corner| {
            let turn = std::f64::consts::TAU * (corner as f64 + next() * 0.8) / corners as f64;
            let far = 0.000_4 + 0.002 * next();
            (north + far * turn.sin(), east + far * turn.cos())
        })
        .collect()
}

#[test]
fn land_over_land_is_as_shapely_has_it() {
    let pairs: Vec<_> = (0..200)
        .map(|pair| (land(2 * pair), land(2 * pair + 1)))
        .collect();
    let questions: Vec<Value> = pairs
        .iter()
        .map(|(one, other)| json!({ "overlap": [one, other] }))
        .collect();
    let answers = ask("parcels.py", &questions);
    let mut shared = 0;
    for ((one, other), answer) in pairs.iter().zip(answers) {
        let theirs = answer["pct"].as_f64().expect("a number");
        let ours = shared_pct(one, other);
        assert!(
            (ours - theirs).abs() < 1e-6,
            "{ours} and {theirs}: {one:?} {other:?}"
        );
        shared += usize::from(theirs > 0.0);
    }
    assert!(shared > 50, "many of them lie over each other");
}

/// The program, with a configuration and a store of its own.
struct Office {
    folder: TempDir,
}

impl Office {
    fn open(list: &str) -> Self {
        let office = Self {
            folder: TempDir::new().expect("a folder"),
        };
        let text = format!(
            "[store]\nfolder = {:?}\nreserve_mb = 16\ncache_mb = 16\n\
             [web]\nlisten = \"127.0.0.1:8080\"\n[[gateway]]\nname = \"line\"\nkind = \"folder\"\n\
             folder = {:?}\n\
             [line]\nname = \"mera\"\nown_number = \"12345\"\ncountry = \"GB\"\n\
             fallback_zone = \"Europe/London\"\n\
             [nudges]\n[languages]\n[calendars]\n[log]\nfilter = \"warn\"\n",
            office.at("store"),
            office.at("line")
        );
        fs::write(office.at("budwood.toml"), text).expect("a configuration");
        fs::write(office.at("list.csv"), list).expect("a list");
        office.done(&["roll", "load", "LIST", "--config", "CONFIG"]);
        office
    }

    fn at(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn run(&self, words: &[&str]) -> Output {
        let words = words.iter().map(|word| match *word {
            "CONFIG" => self.at("budwood.toml"),
            "LIST" => self.at("list.csv"),
            word if word.starts_with('@') => self.at(&word[1..]),
            word => PathBuf::from(word),
        });
        let program = Path::new(env!("CARGO_BIN_EXE_budwood"));
        Command::new(program)
            .args(words)
            .output()
            .expect("the program")
    }

    #[track_caller]
    fn done(&self, words: &[&str]) -> String {
        let output = self.run(words);
        let said = String::from_utf8_lossy(&output.stdout);
        let problem = String::from_utf8_lossy(&output.stderr);
        assert!(output.status.success(), "{words:?}: {said} {problem}");
        String::from_utf8(output.stdout).expect("UTF-8")
    }
}

const LIST: &str = "\
row,group,name,role,phone,language,consent_on,share_on,adviser,zone,calendar,rains_start,rains_end,block,area,unit,latitude,longitude,planted_on,planted
group,KOLO,,,,,,,Mara Tindel,Asia/Jakarta,fao,1 Nov,30 Apr,,,,,,,
person,,Mara Tindel,adviser,+447700900100,en,2026-09-01,,,,,,,,,,,,,
person,KOLO,Tor Pell,farmer,+447700900001,en,2026-09-05,2026-09-05,,,,,,,,,,,,
person,KOLO,Hana Dorn,farmer,+447700900005,en,2026-09-05,,,,,,,,,,,,,
block,KOLO,Tor Pell,,,,,,,,,,,A,1.2,ha,3.123457,101.5123,2024-11,480
block,KOLO,Tor Pell,,,,,,,,,,,B,6,ha,3.133457,101.522346,2024-11,480
block,KOLO,Hana Dorn,,,,,,,,,,,A,1,ha,3.163457,101.552346,2024-11,400
";

/// With the clock, so that the ring must be turned around.
const WALK: &str =
    "3.133457 101.522346\n3.135657 101.522346\n3.135657 101.524646\n3.133457 101.524646\n";

#[test]
fn files_for_partners_are_as_others_read_them() {
    let office = Office::open(LIST);
    fs::write(office.at("walk.txt"), WALK).expect("a walk");
    office.done(&[
        "outline",
        "CONFIG",
        "KOLO",
        "Tor Pell",
        "B",
        "@walk.txt",
        "--how",
        "walked",
        "--on",
        "2026-11-20",
    ]);
    let to = ["--for", "Green Gate factory", "--purpose", "due diligence"];
    for what in ["plots", "programme", "calendar"] {
        let folder = format!("@{what}");
        let words = ["export", "CONFIG", &folder, "--what", what];
        office.done(&[&words[..], &to[..]].concat());
        let sums = Command::new("sha256sum")
            .args(["--check", "--strict", "--quiet", "checksums.txt"])
            .current_dir(office.at(what))
            .status()
            .expect("sha256sum");
        assert!(sums.success(), "{what}");
        let again = office.run(&[&words[..], &to[..]].concat());
        assert!(
            !again.status.success(),
            "a folder that is there is left alone"
        );
    }
    let given = office.done(&["export", "CONFIG", "--given"]);
    assert_eq!(given.lines().count(), 3, "{given}");
    assert!(given.contains("plots to Green Gate factory, for due diligence: 1 people, 2 blocks"));
    let questions = [
        json!({ "places": office.at("plots/plots.geojson") }),
        json!({ "days": office.at("calendar/days.ics") }),
        json!({ "book": office.at("plots/plots.xlsx") }),
        json!({ "book": office.at("programme/facts.xlsx") }),
    ];
    let answers = ask("parcels.py", &questions);
    let [places, days, plots, facts] = answers.as_slice() else {
        panic!("{answers:?}");
    };
    assert_eq!(places["errors"], json!([]));
    assert_eq!(places["decimals"], 6);
    let shapes: Vec<(String, bool)> = places["shapes"]
        .as_array()
        .expect("shapes")
        .iter()
        .map(|one| (one[0].as_str().unwrap_or("").to_owned(), one[1] == true))
        .collect();
    let expected = [("Point".to_owned(), true), ("Polygon".to_owned(), true)];
    assert_eq!(shapes, expected);
    assert_eq!(days["errors"], json!([]));
    let listed = days["days"].as_array().expect("days");
    assert!(!listed.is_empty());
    let name = plots["rows"]
        .as_array()
        .expect("rows")
        .iter()
        .find_map(|row| {
            let cell = row.get(1)?.as_str()?;
            cell.contains("Pell").then(|| cell.to_owned())
        });
    assert_eq!(name.as_deref(), Some("Tor Pell"));
    assert!(facts["rows"].as_array().expect("rows").len() > 3);
    // The same figures in our CSV as in the workbook.
    let csv = fs::read_to_string(office.at("plots/plots.csv")).expect("a table");
    assert!(csv.contains("3.123457"), "{csv}");
}
