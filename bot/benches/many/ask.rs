//! What one text of an adviser costs, by the size of the group: every question, and texts that ask
//! nothing. A farmer's text in the same group stands beside them.
//!
//! Processor time of the engine's thread. The last column is the cost of a member in the largest group over that in the smallest: about
//! 1 or less where a question grows in a straight line, more where it grows faster.

use std::{fs, time::Duration};

use budwood::{
    engine::{
        Engine, Input,
        looks::{Look, Viewer},
    },
    store::{Change, SledStore, Store},
    words::traffic::Inbound,
};
use budwood_scheduler::{Consent, GroupId, Person, PersonId, PersonLink, Phone, Role};
use chrono::{DateTime, TimeDelta, Utc};
use tempfile::TempDir;

use super::{
    people::{day, noon, number, setup, valley},
    tick::folder,
};

/// Members of the group.
const SIZES: [u32; 4] = [100, 1_000, 1_500, 10_000];
/// The middle one of so many counts.
const TIMES: usize = 9;
/// Texts that share a commit while the valley is filled.
const TOGETHER: usize = 256;

const QUESTIONS: [&str; 33] = [
    "thanks",
    "status KOLO",
    "late KOLO",
    "quiet",
    "dead KOLO",
    "dead cause KOLO",
    "gaps KOLO",
    "order KOLO",
    "bags KOLO",
    "sick KOLO",
    "root KOLO",
    "visit",
    "rain",
    "wind KOLO",
    "fire KOLO",
    "map KOLO",
    "clone KOLO",
    "best",
    "week",
    "cost",
    "waiting",
    "girth KOLO",
    "girth Pirasela",
    "ready KOLO",
    "last Pirasela",
    "Pirasela",
    "Nobody",
    "help",
    "from Pirasela: dead 4 A",
    "please tell me when the buyers come to the market on the other side of the river",
    "weed KOLO",
    "prune KOLO",
    "window KOLO",
];
/// What a farmer says, whose group is looked through for it.
const REPORTS: [&str; 3] = ["weeded A", "A 3 trees white root", "soaked"];

/// The pages of the office that look at everybody.
fn pages() -> Vec<(&'static str, Input)> {
    let page = |look: Look| Input::Look {
        viewer: Viewer {
            person: PersonId(ADVISER),
            number: adviser(),
        },
        look,
    };
    vec![
        ("page: today", page(Look::Today)),
        ("page: groups", page(Look::Groups)),
        ("page: KOLO", page(Look::Group("KOLO".to_owned()))),
        ("page: a farmer", page(Look::Person(PersonId(7)))),
        ("page: sick", page(Look::Sick)),
        ("page: season", page(Look::Season)),
        ("page: stock", page(Look::Stock)),
        ("page: line", page(Look::Line)),
        ("page: queue", page(Look::Queue(None))),
    ]
}

pub(crate) fn run() {
    let mut rows: Vec<(&str, Vec<Duration>)> = Vec::new();
    for members in SIZES {
        let mut village = Village::of(members);
        let asked = QUESTIONS.iter().map(|said| (*said, adviser()));
        let told = REPORTS.iter().map(|said| (*said, number(7)));
        let texts = asked
            .chain(told)
            .map(|(said, from)| (said, text(from, said)));
        let texts: Vec<(&str, Input)> = texts.collect();
        for (index, (said, input)) in texts.into_iter().chain(pages()).enumerate() {
            let time = village.cost_of(&input);
            match rows.get_mut(index) {
                Some((_, times)) => times.push(time),
                None => rows.push((said, vec![time])),
            }
        }
    }
    print!("{:<26}", "ms, of members:");
    for members in SIZES {
        print!(" {members:>9}");
    }
    println!(" {:>9}", "straight");
    for (said, times) in rows {
        print!("{:<26}", said.chars().take(25).collect::<String>());
        for time in &times {
            print!(" {:>9.3}", time.as_secs_f64() * 1e3);
        }
        let each = |(time, members): (&Duration, u32)| time.as_secs_f64() / f64::from(members);
        let first = each((times.first().unwrap(), SIZES[0]));
        let last = each((times.last().unwrap(), *SIZES.last().unwrap()));
        println!(" {:>9.2}", last / first);
    }
}

struct Village {
    engine: Engine,
    now: DateTime<Utc>,
    _folder: TempDir,
}

impl Village {
    /// Stands of five years: half of them measured, one in seven sick, one in three with dead trees.
    fn of(members: u32) -> Self {
        let folder = folder();
        let store = SledStore::open(folder.path(), 64 * 1024 * 1024).unwrap();
        for part in parts(members) {
            store.commit(&part).unwrap();
        }
        let planted = noon() - TimeDelta::days(5 * 365);
        let engine = Engine::open(setup(), Box::new(store), planted).unwrap();
        let mut village = Self {
            engine,
            now: planted,
            _folder: folder,
        };
        village.all_say(members, |farmer| {
            Some(format!("planted {} A", 300 + farmer % 200))
        });
        village.now = noon() - TimeDelta::days(40);
        village.all_say(members, |farmer| {
            farmer
                .is_multiple_of(3)
                .then(|| format!("dead {} A", 5 + farmer % 30))
        });
        village.all_say(members, |farmer| {
            let cm = 30 + farmer % 20;
            let next = cm + 2;
            farmer
                .is_multiple_of(2)
                .then(|| format!("girth A {cm} {next} {cm} {next} {cm} {next} {cm} {next}"))
        });
        village.now = noon() - TimeDelta::days(9);
        village.all_say(members, |farmer| {
            farmer
                .is_multiple_of(7)
                .then(|| "white root 2 trees A".to_owned())
        });
        village.now = noon();
        village
    }

    fn all_say(&mut self, members: u32, said: impl Fn(u32) -> Option<String>) {
        let texts: Vec<Input> = (0..members)
            .filter_map(|farmer| Some(text(number(farmer), &said(farmer)?)))
            .collect();
        for some in texts.chunks(TOGETHER) {
            self.engine.handle(some.to_vec(), self.now).unwrap();
        }
    }

    /// The engine's part of it: what follows on the disk is the same for every text.
    fn cost_of(&mut self, input: &Input) -> Duration {
        let mut times: Vec<Duration> = Vec::new();
        for _ in 0..TIMES {
            self.now += TimeDelta::hours(25);
            let inputs = vec![input.clone()];
            let begin = on_processor();
            let stepped = self.engine.step(inputs, self.now).unwrap();
            times.push(on_processor() - begin);
            self.engine.shared_store().commit(&stepped.change).unwrap();
        }
        times.sort_unstable();
        times.swap_remove(TIMES / 2)
    }
}

/// Time that this thread has had of a processor: what others do on the machine is not in it.
fn on_processor() -> Duration {
    let told = fs::read_to_string("/proc/thread-self/schedstat").unwrap();
    let nanoseconds = told.split(' ').next().unwrap();
    Duration::from_nanos(nanoseconds.parse().unwrap())
}

fn text(from: String, said: &str) -> Input {
    Input::Text(Inbound {
        gateway: "provider".to_owned(),
        gateway_id: None,
        from,
        to: "+44 7700 900999".to_owned(),
        text: said.to_owned(),
        sent_at: None,
    })
}

fn adviser() -> String {
    number(ADVISER)
}

const ADVISER: u32 = 900_000;
/// Commits of more at once make the store wait.
const PART: usize = 256;

/// Everyone in one group with one adviser, in parts that may be committed.
fn parts(members: u32) -> Vec<Change> {
    let mut whole = valley(members, 0);
    let mut group = whole.groups.swap_remove(0);
    group.name = "KOLO".to_owned();
    group.adviser = Some(PersonId(ADVISER));
    for (index, person) in (0..).zip(&mut whole.persons) {
        person.name = name(index);
        person.group = Some(GroupId(0));
    }
    for block in &mut whole.blocks {
        block.planned_on = None;
    }
    whole.persons.push(Person {
        id: PersonId(ADVISER),
        name: "Mara Lind".to_owned(),
        role: Role::Adviser,
        language: "en".to_owned(),
        group: None,
        consent: Consent::Given {
            on: day(2021, 1, 1),
            how: "signed sheet".to_owned(),
        },
        sharing: Consent::Unknown,
        erased: false,
        hold: None,
    });
    whole.phones.push(Phone {
        number: adviser(),
        links: vec![PersonLink {
            person: PersonId(ADVISER),
            since: day(2021, 1, 1),
            until: None,
            helper: None,
        }],
        lost_on: None,
    });
    let groups = Change {
        groups: vec![group],
        ..Change::default()
    };
    let persons = whole.persons.chunks(PART).map(|persons| Change {
        persons: persons.to_vec(),
        ..Change::default()
    });
    let phones = whole.phones.chunks(PART).map(|phones| Change {
        phones: phones.to_vec(),
        ..Change::default()
    });
    let blocks = whole.blocks.chunks(PART).map(|blocks| Change {
        blocks: blocks.to_vec(),
        ..Change::default()
    });
    [groups]
        .into_iter()
        .chain(persons)
        .chain(phones)
        .chain(blocks)
        .collect()
}

/// Invented names: 400 first names, so that in a large group several share one.
fn name(farmer: u32) -> String {
    const BEGIN: [&str; 20] = [
        "Pira", "Tamo", "Keti", "Nilo", "Sela", "Bako", "Ruma", "Jaro", "Osa", "Lumo", "Wira",
        "Deni", "Hana", "Yano", "Tor", "Mela", "Kiru", "Fano", "Gesa", "Ubo",
    ];
    const END: [&str; 20] = [
        "sela", "no", "ri", "ban", "tu", "mi", "ko", "la", "der", "vas", "pin", "go", "he", "jul",
        "xo", "ny", "fi", "cal", "zu", "rem",
    ];
    let begin = BEGIN.iter().cycle().nth(farmer as usize % 20).unwrap();
    let end = END.iter().cycle().nth(farmer as usize / 20 % 20).unwrap();
    format!("{begin}{end} Olm{farmer}")
}
