//! One change with a record of every kind and every shape that records have.

mod book;
mod load;
mod matter;
mod part;
mod passing;
mod phone;
mod state;
mod texts;

use budwood::{
    store::{Change, Hold},
    words::message::{
        Audience, CodeUse, Deed, Digest, Listed, Machine, Open, OpenNudge, Question, Talk, Told,
    },
};
use budwood_parser::{
    Ailment, Cause, Day, Details, Extent, Kind, Material, Measure, Per, Supply, Unit, Wetness, When,
};
use budwood_scheduler::{
    Block, BlockId, BlockState, Body, Book, Consent, Event, EventId, Group, GroupId, Happened,
    MessageId, Person, PersonId, Purpose, Role, Source, TaskKind,
    decide::{Draft, Missing},
    jobs::nudge::TextedWeeks,
    words::point::Point,
};
use chrono::{DateTime, NaiveDate, Utc, Weekday};

pub(super) fn day(month: u32, day: u32) -> NaiveDate {
    NaiveDate::from_ymd_opt(2027, month, day).expect("a day that exists")
}

pub(super) fn at(month: u32, of_month: u32) -> DateTime<Utc> {
    day(month, of_month)
        .and_hms_opt(8, 30, 15)
        .expect("a time that exists")
        .and_utc()
}

/// A change with everything in it.
pub(crate) fn change() -> Change {
    Change {
        events: events(),
        persons: persons(),
        phones: phone::phones(),
        gone_phones: Vec::new(),
        groups: groups(),
        blocks: blocks(),
        states: vec![
            (BlockId(1), state::state()),
            (BlockId(2), BlockState::default()),
        ],
        talks: talks(),
        received: texts::received(),
        parts: vec![part::part()],
        gone_parts: Vec::new(),
        outbound: texts::outbound(),
        matters: matter::matters(),
        closed: Vec::new(),
        promises: matter::promises(),
        kept: Vec::new(),
        sheets: vec![matter::sheet()],
        loads: vec![load::load()],
        givens: vec![load::given()],
        outlines: vec![load::outline()],
        erasures: vec![matter::erasure()],
        erased: Vec::new(),
        ledgers: matter::ledgers(),
        hold: Some(Hold::Held { since: at(1, 9) }),
    }
}

/// Every slot filled.
pub(super) fn details() -> Details {
    Details {
        count: Some(120),
        of: Some(130),
        weak: Some(4),
        area: Some(Measure {
            value: 0.8,
            unit: Unit::Hectare,
        }),
        clone_name: Some("PB260".to_owned()),
        material: Some(Material::Polybag),
        product: Some("npk".to_owned()),
        formula: Some("15-15-15".to_owned()),
        amount: Some(Measure {
            value: 12.5,
            unit: Unit::Kilogram,
        }),
        per: Some(Per::Total),
        values_cm: vec![41.0, 43.5],
        ailment: Some(Ailment::WhiteRoot),
        cause: Some(Cause::Wind),
        extent: Some(Extent::Half),
        species: Some("rice".to_owned()),
        not_done: Some(Kind::Weeded),
        wetness: Some(Wetness::Soaked),
        mm: Some(12.0),
        supply: Some(Supply::Plants),
    }
}

fn bodies() -> Vec<Body> {
    let block = BlockId(1);
    let task = TaskKind::Weed;
    let person = PersonId(3);
    let full = Body::Reported {
        block,
        kind: Kind::Planted,
        on: Happened {
            from: day(1, 2),
            to: day(1, 8),
        },
        details: details(),
    };
    let bare = Kind::ALL.map(|kind| Body::Reported {
        block,
        kind,
        on: Happened::on(day(1, 9)),
        details: Details::default(),
    });
    [
        full,
        Body::TaskDone {
            block,
            task: TaskKind::OrderPlants,
            on: day(1, 9),
        },
        Body::Postponed {
            block,
            task,
            until: day(1, 23),
        },
        Body::Nudged {
            block,
            task,
            on: day(1, 9),
            due: day(1, 7),
        },
        Body::TakenBack { block },
        Body::Warned {
            block,
            ailment: Ailment::LeafSpot,
            on: day(4, 9),
        },
        Body::WindowOpened {
            group: GroupId(1),
            on: day(1, 9),
        },
        Body::PlantingHeld {
            group: GroupId(1),
            on: day(1, 19),
        },
        Body::ConsentGiven {
            person,
            purpose: Purpose::Reminders,
            how: "text START".to_owned(),
        },
        Body::ConsentWithdrawn {
            person,
            purpose: Purpose::Buyers,
            how: "text SHARE".to_owned(),
        },
        passing::fact(block),
        Body::Erased { person },
    ]
    .into_iter()
    .chain(bare)
    .chain(book::entries().into_iter().map(|entered| Body::Entered {
        group: GroupId(1),
        entered,
    }))
    .collect()
}

fn events() -> Vec<Event> {
    let sources = [
        Source::Bot,
        Source::OwnText,
        Source::Leader,
        Source::Sheet,
        Source::Visit,
    ];
    (1_u64..)
        .zip(bodies())
        .zip(sources.into_iter().cycle())
        .map(|((id, body), source)| Event {
            id: EventId(id),
            at: at(1, 9),
            by: (source != Source::Bot).then_some(PersonId(3)),
            source,
            message: (source == Source::OwnText).then_some(MessageId(7)),
            supersedes: matches!(body, Body::TakenBack { .. }).then_some(EventId(1)),
            body,
        })
        .collect()
}

fn persons() -> Vec<Person> {
    let consents = [
        Consent::Unknown,
        Consent::Given {
            on: day(1, 1),
            how: "signed sheet".to_owned(),
        },
        Consent::Withdrawn {
            on: day(1, 9),
            how: "text STOP".to_owned(),
        },
    ];
    (1_u32..)
        .zip(Role::ALL)
        .zip(consents.into_iter().cycle())
        .map(|((id, role), consent)| Person {
            id: PersonId(id),
            name: format!("Tamo Rill {id}"),
            role,
            language: "en".to_owned(),
            group: (role != Role::Adviser).then_some(GroupId(1)),
            sharing: consent.clone(),
            consent,
            hold: None,
            erased: role == Role::Viewer,
        })
        .collect()
}

fn groups() -> Vec<Group> {
    let full = Group {
        id: GroupId(1),
        name: "KOLO".to_owned(),
        adviser: Some(PersonId(3)),
        zone: "Asia/Jakarta".to_owned(),
        calendar: "fao".to_owned(),
        market_day: Some(Weekday::Sat),
        quiet_days: vec![day(3, 20), day(3, 21)],
        rains_start: Some((11, 1)),
        rains_end: Some((4, 30)),
        second_rains: Some(((6, 1), (8, 31))),
        window_opened: Some(day(1, 9)),
        book: book::book(),
    };
    let bare = Group {
        id: GroupId(2),
        name: "SENA".to_owned(),
        adviser: None,
        market_day: None,
        quiet_days: Vec::new(),
        rains_start: None,
        rains_end: None,
        second_rains: None,
        window_opened: None,
        book: Book::default(),
        ..full.clone()
    };
    vec![full, bare]
}

fn blocks() -> Vec<Block> {
    let full = Block {
        id: BlockId(1),
        owner: PersonId(1),
        name: "Hill".to_owned(),
        area: Some(Measure {
            value: 2.5,
            unit: Unit::Acre,
        }),
        area_source: "tape".to_owned(),
        slope_pct: Some(12.0),
        spacing_m: Some((6.0, 3.0)),
        point: Some(Point {
            latitude: -1.25,
            longitude: 101.5,
        }),
        planned_on: Some(day(1, 10)),
        clone_name: Some("RRIM600".to_owned()),
    };
    let bare = Block {
        id: BlockId(2),
        name: "A".to_owned(),
        area: None,
        area_source: "told".to_owned(),
        slope_pct: None,
        spacing_m: None,
        point: None,
        planned_on: None,
        clone_name: None,
        ..full.clone()
    };
    vec![full, bare]
}

fn whens() -> [Option<When>; 8] {
    let date = |year, named| When::Calendar {
        day: 12,
        month: 5,
        year,
        named,
    };
    [
        None,
        Some(When::DaysAgo(3)),
        Some(When::Weekday(Day::Monday)),
        Some(date(None, false)),
        Some(date(Some(2026), false)),
        Some(date(None, true)),
        Some(When::LastWeek),
        Some(When::LastMonth),
    ]
}

fn drafts() -> Vec<Draft> {
    whens()
        .map(|said| Draft {
            kind: Kind::Dead,
            block: said.is_some().then(|| "B".to_owned()),
            said,
            on: Happened::on(day(1, 8)),
            details: if said.is_some() {
                Details::default()
            } else {
                details()
            },
        })
        .to_vec()
}

fn told(person: u32) -> Told {
    Told {
        person: PersonId(person),
        facts: drafts(),
    }
}

#[expect(clippy::too_many_lines, reason = "a table: a line for each shape")]
fn questions() -> Vec<Question> {
    let code = "4711".to_owned();
    let missing = [
        Missing::Block { unknown: None },
        Missing::Block {
            unknown: Some("C".to_owned()),
        },
        Missing::Count { range: None },
        Missing::Count {
            range: Some((10, 12)),
        },
        Missing::Values,
        Missing::Date,
    ];
    let asked = missing.map(|missing| Question::Ask {
        facts: drafts(),
        missing,
    });
    [
        Question::Confirm(drafts()),
        Question::ConfirmMany(vec![told(2), told(4)]),
        Question::ForWhom {
            people: vec![PersonId(2), PersonId(4)],
            text: "dead 8 \u{1f333} \"B\"".to_owned(),
            sent_at: at(1, 8),
        },
        Question::Code {
            code: code.clone(),
            deed: Deed::OpenWindow {
                group: GroupId(1),
                on: day(1, 9),
            },
        },
        Question::Code {
            code: code.clone(),
            deed: Deed::Warn {
                group: GroupId(1),
                ailment: Ailment::Termites,
            },
        },
        Question::Code {
            code: code.clone(),
            deed: Deed::HoldPlanting {
                group: GroupId(1),
                on: day(1, 19),
            },
        },
        Question::Code {
            code: code.clone(),
            deed: Deed::Visit {
                text: "from Tamo: dead 4 A".to_owned(),
                sent_at: at(1, 8),
            },
        },
        Question::Code {
            code: code.clone(),
            deed: Deed::Announce {
                to: Audience::Person(PersonId(3)),
                words: "Bring the string".to_owned(),
            },
        },
        Question::Code {
            code: code.clone(),
            deed: Deed::AskHarm {
                group: GroupId(1),
                cause: Cause::Wind,
            },
        },
        passing::leaders(&code),
        passing::question(&code),
        Question::Code {
            code,
            deed: Deed::Erase {
                person: PersonId(3),
            },
        },
    ]
    .into_iter()
    .chain(asked)
    .collect()
}

fn talks() -> Vec<(String, Talk)> {
    let full = |question| Talk {
        open: Some(Open {
            rest: Some("Nilo dead 3".to_owned()),
            at: at(1, 9),
            message: MessageId(7),
            person: Some(PersonId(3)),
            question,
        }),
        nudge: Some(OpenNudge {
            at: at(1, 9),
            block: BlockId(1),
            task: TaskKind::Weed,
            due: day(1, 7),
        }),
        last: vec![EventId(1), EventId(2)],
        last_at: Some(at(1, 9)),
        last_text: Some(("dead 8 B".to_owned(), at(1, 9))),
        helped_at: Some(at(1, 5)),
        unclear: 1,
        answered_at: vec![at(1, 8), at(1, 9)],
        last_answer: Some(("Thank you".to_owned(), 2)),
        routine_at: Some(at(1, 2)),
        texted: Some(TextedWeeks {
            newest: day(1, 4),
            weeks: 0b1011,
        }),
        welcomed_at: Some(at(1, 1)),
        heard_at: Some(at(1, 9)),
        heard_by: Some("sim1".to_owned()),
        fails_since: Some(at(1, 8)),
        listed: Some(Listed {
            text: "late KOLO".to_owned(),
            shown: 7,
        }),
        language: Some("fr".to_owned()),
        said: vec![4_000_000_000, 1],
        machine: Some(Machine { text: 7, times: 2 }),
        full_days: 3,
        machine_told_on: Some(day(1, 20)),
        spoken: vec!["fr".to_owned(), "vi-bare".to_owned()],
        answered_on: Some((day(1, 9), 7)),
        held_at: Some(at(1, 9)),
        noticed_at: vec![at(1, 8)],
        digest: Some(Digest {
            message: MessageId(9),
            count: 3,
            people: vec!["Tamo Riff".to_owned()],
        }),
        visit_until: Some(at(1, 10)),
        codes: vec![CodeUse {
            at: at(1, 9),
            deed: "visit".to_owned(),
            was_wrong: true,
        }],
    };
    let number = |index: usize| format!("+447700900{:03}", 100 + index);
    questions()
        .into_iter()
        .map(full)
        .chain([Talk::default()])
        .enumerate()
        .map(|(index, talk)| (number(index), talk))
        .collect()
}
