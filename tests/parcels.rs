//! What partners get: who did not agree is in no file with names, and files without names have none.
//!
//! The rules of plots are those of Regulation (EU) 2023/1115, article 2(28): a point up to four
//! hectares, an outline above, six decimals.

use budwood::{
    engine::{Giving, Input, OutlineOrder, Parcel},
    parcel::places::Shape,
    sheet::Sheet,
    words::{given::ParcelKind, outline::HowTaken},
};

use crate::fixture::desk::Desk;

/// Farmers of an invented valley; only the first four agreed that buyers are told.
const LIST: &[u8] = b"\
row,group,name,role,phone,language,consent_on,share_on,adviser,zone,calendar,rains_start,rains_end,block,area,unit,latitude,longitude,planted_on,planted
group,KOLO,,,,,,,Mara Tindel,Asia/Jakarta,fao,1 Nov,30 Apr,,,,,,,
person,,Mara Tindel,adviser,+447700900100,en,2026-09-01,,,,,,,,,,,,,
person,KOLO,Tor Pell,farmer,+447700900001,en,2026-09-05,2026-09-05,,,,,,,,,,,,
person,KOLO,Bako Mirk,farmer,+447700900002,en,2026-09-05,2026-09-06,,,,,,,,,,,,
person,KOLO,Osa Kand,farmer,+447700900003,en,2026-09-05,2026-09-07,,,,,,,,,,,,
person,KOLO,Keti Rill,farmer,+447700900004,en,2026-09-05,2026-09-07,,,,,,,,,,,,
person,KOLO,Hana Dorn,farmer,+447700900005,en,2026-09-05,,,,,,,,,,,,,
block,KOLO,Tor Pell,,,,,,,,,,,A,1.2,ha,3.123457,101.512346,2024-11,480
block,KOLO,Tor Pell,,,,,,,,,,,B,6,ha,3.133457,101.522346,,
block,KOLO,Bako Mirk,,,,,,,,,,,A,5,ha,3.143457,101.532346,2024-11,2000
block,KOLO,Osa Kand,,,,,,,,,,,A,0.5,ha,3.123477,101.512346,2024-11,200
block,KOLO,Osa Kand,,,,,,,,,,,C,0.5,ha,3.1,101.5,2024-11,200
block,KOLO,Keti Rill,,,,,,,,,,,A,1,ha,13.123457,101.512346,2024-11,400
block,KOLO,Keti Rill,,,,,,,,,,,B,1,ha,,,2024-11,400
block,KOLO,Keti Rill,,,,,,,,,,,D,0.7,ha,3.153457,101.542346,2024-11,280
block,KOLO,Hana Dorn,,,,,,,,,,,A,1,ha,3.163457,101.552346,2024-11,400
";

fn desk() -> Desk {
    Desk::open_list("2026-12-14T03:00:00Z", LIST, |setup| {
        setup.country = "ID".to_owned();
    })
}

fn parcel(desk: &Desk, kind: ParcelKind) -> Parcel {
    desk.engine.parcel(kind, desk.now).expect("a store")
}

/// A walk around some 250 by 240 metres, from this corner.
fn walk(desk: &mut Desk, farmer: &str, block: &str, (latitude, longitude): (f64, f64)) -> String {
    let corners = [
        (0.0, 0.0),
        (0.0, 0.002_3),
        (0.002_2, 0.002_3),
        (0.002_2, 0.0),
    ];
    let lines =
        corners.map(|(north, east)| format!("{:.6} {:.6}\n", latitude + north, longitude + east));
    let order = OutlineOrder {
        group: "KOLO".to_owned(),
        farmer: farmer.to_owned(),
        block: block.to_owned(),
        text: lines.concat(),
        how: HowTaken::Walked,
        on: desk.now.date_naive(),
    };
    let told = desk.input(Input::Outline(order)).page;
    told.expect("an answer").expect("an outline")
}

fn csv(sheet: &Sheet) -> String {
    String::from_utf8(sheet.csv(false)).expect("UTF-8")
}

fn of<'p>(parcel: &'p Parcel, key: &str) -> &'p Sheet {
    let mut sheets = parcel.sheets.iter();
    sheets.find(|sheet| sheet.key == key).expect("a table")
}

#[test]
fn plots_are_of_those_who_agreed_and_sound() {
    let mut desk = desk();
    walk(&mut desk, "Tor Pell", "B", (3.133_457, 101.522_346));
    let parcel = parcel(&desk, ParcelKind::Plots);
    for sheet in &parcel.sheets {
        assert!(!csv(sheet).contains("Hana"), "{}", csv(sheet));
    }
    let missing = csv(of(&parcel, "missing"));
    insta::assert_snapshot!(missing.replace('\r', ""), @r"
    block_id,producer,group,block,what
    1,Tor Pell,KOLO,A,less than 10 m from the point of block 4
    3,Bako Mirk,KOLO,A,above 4 ha and without an outline
    4,Osa Kand,KOLO,A,less than 10 m from the point of block 1
    5,Osa Kand,KOLO,C,its degrees have four decimals or fewer: six are asked for
    6,Keti Rill,KOLO,A,1110 km from the middle of its group
    7,Keti Rill,KOLO,B,nobody took its place
    ");
    // Left are Tor's large block, with its outline, and one of Keti's.
    let places = parcel.places.as_ref().expect("places");
    let shapes: Vec<&Shape> = places.iter().map(|place| &place.shape).collect();
    assert!(
        matches!(shapes.as_slice(), [Shape::Polygon(corners), Shape::Point(_)] if corners.len() == 4),
        "{shapes:?}"
    );
    assert_eq!(places[0].properties["ProducerName"], "Tor Pell");
    assert_eq!(places[0].properties["ProducerCountry"], "ID");
    assert_eq!((parcel.people, parcel.blocks), (2, 2));
    let consent = csv(of(&parcel, "consent"));
    assert!(consent.contains("Tor Pell,2026-09-05,"), "{consent}");
    assert!(!consent.contains("Bako"), "nothing of his is given");
}

/// Two walks that share a third of the land: both are listed, and neither is given.
#[test]
fn outlines_over_each_other_are_listed() {
    let mut desk = desk();
    walk(&mut desk, "Tor Pell", "B", (3.133_457, 101.522_346));
    walk(&mut desk, "Bako Mirk", "A", (3.133_457, 101.523_846));
    let parcel = parcel(&desk, ParcelKind::Plots);
    let missing = csv(of(&parcel, "missing"));
    // 0.8 of 2.3 thousandths of a degree: 35 per cent.
    assert_eq!(
        missing
            .matches("35 % of the smaller lie over block")
            .count(),
        2,
        "{missing}"
    );
    assert_eq!(parcel.blocks, 1);
}

#[test]
fn what_goes_to_a_programme_names_nobody() {
    let mut desk = desk();
    desk.text("+447700900001", "dead 8 A");
    desk.text(
        "+447700900002",
        "tell Tor Pell to call +44 7700 900002 about block A",
    );
    desk.send_all();
    let parcel = parcel(&desk, ParcelKind::Programme);
    let all: String = parcel.sheets.iter().map(csv).collect();
    for hidden in [
        "Tor", "Pell", "Bako", "Hana", "7700900", "7700 900", "101.5", "3.12",
    ] {
        assert!(!all.contains(hidden), "{hidden} is in it");
    }
    let facts = csv(of(&parcel, "facts"));
    assert!(facts.contains("own text,1,dead,"), "{facts}");
    let blocks = csv(of(&parcel, "blocks"));
    // The first block: 480 planted, 8 told dead.
    assert!(
        blocks.contains("1,2,KOLO,1.2000,list,,2024-11-15,480,472,0,8"),
        "{blocks}"
    );
    // One of five did not agree that others are told: no row is theirs, and the figures of all are.
    assert_eq!(of(&parcel, "blocks").rows.len(), 8);
    assert_eq!(of(&parcel, "people").rows.len(), 4);
    let indicators = csv(of(&parcel, "indicators"));
    assert!(
        indicators.contains("KOLO,5,5,9,16.9000,4360,4352,"),
        "{indicators}"
    );
}

/// What is given is on record before it leaves, and nothing is given for nothing.
#[test]
fn who_got_what_is_written_down() {
    let mut desk = desk();
    let giving = |purpose: &str| Giving {
        kind: ParcelKind::Plots,
        to: "Green Gate factory".to_owned(),
        purpose: purpose.to_owned(),
        people: 2,
        blocks: 2,
        sha256: "00".repeat(32),
    };
    let refused = desk.input(Input::Give(giving(" "))).page;
    assert!(refused.expect("an answer").is_err());
    assert_eq!(desk.engine.givens().count(), 0);
    let told = desk.input(Input::Give(giving("due diligence"))).page;
    assert_eq!(told, Some(Ok("1".to_owned())));
    assert_eq!(desk.stored("given").len(), 1);
    let given = desk.engine.givens().next().expect("one");
    assert_eq!((given.number, given.to.as_str()), (1, "Green Gate factory"));
}

#[test]
fn a_calendar_keeps_its_ids_and_names_nobody() {
    let mut desk = desk();
    let days = |desk: &Desk| parcel(desk, ParcelKind::Calendar).days.expect("days");
    let before = days(&desk);
    assert!(!before.is_empty());
    for day in &before {
        assert!(day.on >= desk.now.date_naive(), "{day:?}");
        assert!(!day.title.contains("Pell"), "{day:?}");
    }
    desk.now += chrono::TimeDelta::days(3);
    let after = days(&desk);
    let ids = |days: &[budwood::parcel::days::Day]| -> Vec<String> {
        days.iter().map(|day| day.uid.clone()).collect()
    };
    let kept = ids(&before)
        .into_iter()
        .filter(|uid| ids(&after).contains(uid));
    assert!(kept.count() * 2 > before.len(), "most ids stay");
}
