//! The office's pages in a browser (Debian's Chromium), looked at by axe-core for WCAG 2.2 AA.
//!
//! Each page in each language has no violation, fetches nothing from elsewhere, and its tables say, cell
//! by cell, what the engine says. With `BUDWOOD_PICTURES` a picture of each page lands in that folder.

use std::{env, net::TcpListener, path::PathBuf};

use budwood::{
    engine::{
        Engine, Input, Knock,
        looks::{Look, Part, Viewer},
    },
    play::virtual_clock::{DEMO_ROLL, entries, plan_roll},
    service::{
        clock::{Clock, FixedClock},
        config::StoreConfig,
        gateway::http::client,
        server::{self, Handle, Room},
        setup,
        web::office::{self, OfficeSettings},
    },
    store::MemoryStore,
    wording::{Texts, Tongue},
    words::{traffic::Inbound, ways::HANDSET},
};
use chrono::{DateTime, TimeDelta, Utc};
use serde_json::{Value, json};
use tokio::sync::oneshot;

use crate::peer::ask;

const LANGUAGES: [&str; 6] = ["en", "fr", "id", "pt", "th", "vi"];

const NAME: &str = "Mara Tindel";

/// What the demo's people text before the pages are looked at, an hour apart.
const TEXTS: [(&str, &str); 12] = [
    ("+447700900005", "dead 20"),
    ("+447700900005", "weeded"),
    ("+447700900005", "white root 3 trees"),
    ("+447700900013", "dead 12"),
    ("+447700900013", "girth 31 33 29 35 30 28 34 32 31 30"),
    ("+447700900013", "leaf spot 8 trees"),
    ("+447700900001", "rain yes"),
    ("+447700900001", "why did 9 trees die"),
    ("+447700900014", "call me"),
    ("+447700900003", "ordered"),
    ("+447700900004", "my goats ate it all, what now friend"),
    ("+447700900006", "1"),
];

/// An engine in which the adviser reads this language and some things were told.
fn engine(language: &str, clock: &FixedClock) -> Engine {
    let mut setup = setup::built_in(0).expect("what ships is sound");
    setup.rules.welcomes_a_day = 0;
    let store = Box::new(MemoryStore::new());
    let mut engine = Engine::open(setup.into(), store, clock.now()).expect("an empty store");
    let roll = String::from_utf8(DEMO_ROLL.to_vec()).expect("text");
    let roll = roll.replace(
        "adviser,+447700900100,en",
        &format!("adviser,+447700900100,{language}"),
    );
    let plan = plan_roll(&engine, roll.as_bytes(), clock.now());
    take(&mut engine, Input::Roll(Box::new(entries(&plan))), clock);
    for (from, text) in TEXTS {
        clock.advance(TimeDelta::hours(1));
        let inbound = Inbound {
            gateway: HANDSET.to_owned(),
            gateway_id: None,
            from: from.to_owned(),
            to: "12345".to_owned(),
            text: text.to_owned(),
            sent_at: None,
        };
        take(&mut engine, Input::Text(inbound), clock);
    }
    engine
}

fn take(engine: &mut Engine, input: Input, clock: &FixedClock) {
    engine
        .handle(vec![input], clock.now())
        .expect("memory does not fail");
}

/// The pages, served.
struct Served {
    handle: Handle,
    url: String,
    viewer: Viewer,
    cookie: (String, String),
    pages: Vec<(String, Option<Look>)>,
    _stop: oneshot::Sender<()>,
}

async fn served(language: &str) -> Served {
    let start: DateTime<Utc> = "2026-11-20T03:00:00Z".parse().expect("a moment");
    let clock = FixedClock::at(start);
    let engine = engine(language, &clock);
    let pages = pages(&engine);
    let store = StoreConfig {
        folder: PathBuf::from("."),
        cache_mb: 16,
        reserve_mb: 0,
    };
    let time = Clock::Fixed(clock);
    let running = server::start(engine, time.clone(), Room::new(&store)).expect("threads");
    let listener = TcpListener::bind("127.0.0.1:0").expect("a port");
    let url = format!("http://{}", listener.local_addr().expect("bound"));
    let settings = OfficeSettings {
        address: None,
        certificate: None,
        clock: time,
    };
    let (stop, stopped) = oneshot::channel::<()>();
    let stopped = async {
        let _ = stopped.await;
    };
    let handle = running.handle.clone();
    tokio::spawn(office::serve(listener, handle.clone(), settings, stopped));
    let code = || async {
        let knock = Input::Door(Knock::Within(NAME.to_owned()));
        handle
            .submit(knock)
            .await
            .expect("taken")
            .code
            .expect("a code")
    };
    let form = format!("name=Mara%20Tindel&code={}", code().await);
    let client = client().redirect(reqwest::redirect::Policy::none());
    let answer = client
        .build()
        .expect("a client")
        .post(format!("{url}/log-in/code"))
        .header("origin", &url)
        .header("content-type", "application/x-www-form-urlencoded")
        .body(form)
        .send()
        .await
        .expect("an answer");
    let set = answer.headers()["set-cookie"]
        .to_str()
        .expect("text")
        .to_owned();
    let cookie = set.split(';').next().and_then(|pair| pair.split_once('='));
    let (name, value) = cookie.expect("a cookie");
    let knock = Knock::Code {
        name: NAME.to_owned(),
        code: code().await,
    };
    let told = handle.submit(Input::Door(knock)).await.expect("taken");
    Served {
        url,
        viewer: told.entered.expect("she is in"),
        cookie: (name.to_owned(), value.to_owned()),
        pages,
        handle,
        _stop: stop,
    }
}

/// Every page of the adviser, and the door.
fn pages(engine: &Engine) -> Vec<(String, Option<Look>)> {
    let mut people = engine.directory().persons();
    let pira = people.find(|one| one.name == "Pira Oss").expect("Pira");
    let block = engine
        .directory()
        .blocks_of(pira.id)
        .next()
        .expect("a block");
    let facts = &engine.state(block.id).expect("a state").facts;
    let fact = *facts.last().expect("a fact");
    vec![
        ("/".to_owned(), Some(Look::Today)),
        ("/queue".to_owned(), Some(Look::Queue(None))),
        ("/groups".to_owned(), Some(Look::Groups)),
        (
            "/groups/KOLO".to_owned(),
            Some(Look::Group("KOLO".to_owned())),
        ),
        (
            format!("/people/{}", pira.id.0),
            Some(Look::Person(pira.id)),
        ),
        (format!("/facts/{}", fact.0), Some(Look::Fact(fact))),
        ("/sick".to_owned(), Some(Look::Sick)),
        ("/season".to_owned(), Some(Look::Season)),
        ("/stock".to_owned(), Some(Look::Stock)),
        ("/line".to_owned(), Some(Look::Line)),
        ("/log-in".to_owned(), None),
    ]
}

/// The cells of the tables that the engine tells, in a language, without their marks.
async fn told(served: &Served, look: &Look, tongue: Tongue<'_>) -> Vec<Vec<Vec<String>>> {
    let input = Input::Look {
        viewer: served.viewer.clone(),
        look: look.clone(),
    };
    let seen = served.handle.submit(input).await.expect("taken").seen;
    let seen = seen.expect("an answer").expect("a page");
    let tables = seen.parts.iter().filter_map(|part| {
        if let Part::Table(grid) = part {
            let rows = grid.rows.iter().map(|row| {
                let cells = row.iter().map(|cell| {
                    let mut text = tongue.whole(&cell.value);
                    if let Some(mark) = cell.mark {
                        text = format!("{text} {}", tongue.say(mark, Vec::new()));
                    }
                    text.trim().to_owned()
                });
                cells.collect()
            });
            let head = grid.head.iter().map(|head| tongue.whole(head)).collect();
            Some(std::iter::once(head).chain(rows).collect())
        } else {
            None
        }
    });
    tables.collect()
}

fn picture(language: &str, path: &str) -> Value {
    let name = path.replace('/', "-");
    match env::var("BUDWOOD_PICTURES") {
        Ok(folder) => json!(format!("{folder}/{language}{name}.png")),
        Err(_) => Value::Null,
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn every_page_is_accessible_and_says_what_the_engine_says() {
    let texts = Texts::built_in().expect("what ships is sound");
    for language in LANGUAGES {
        let served = served(language).await;
        let (name, value) = &served.cookie;
        let asked = served.pages.iter().map(|(path, look)| {
            let cookie = json!({"name": name, "value": value});
            json!({
                "url": format!("{}{path}", served.url),
                "cookie": if look.is_some() { cookie } else { Value::Null },
                "picture": picture(language, path),
            })
        });
        let asked: Vec<Value> = asked.collect();
        let answers = tokio::task::spawn_blocking(move || ask("pages.js", &asked));
        let answers = answers.await.expect("the browser answers");
        for ((path, look), answer) in served.pages.iter().zip(answers) {
            assert_eq!(answer["status"], 200, "{language} {path}");
            assert_eq!(answer["violations"], json!([]), "{language} {path}");
            assert_eq!(answer["elsewhere"], json!([]), "{language} {path}");
            assert_eq!(answer["refused"], json!([]), "{language} {path}");
            assert!(answer["passes"].as_u64() > Some(5), "{language} {path}");
            let Some(look) = look else {
                continue;
            };
            let shown: Vec<Vec<Vec<String>>> =
                serde_json::from_value(answer["cells"].clone()).expect("cells");
            let tongue = texts.tongue(&[language]);
            for table in told(&served, look, tongue).await {
                let flat = |text: &String| text.split_whitespace().collect::<Vec<_>>().join(" ");
                let flat = |table: &Vec<Vec<String>>| {
                    let rows = table.iter().map(|row| row.iter().map(flat).collect());
                    rows.collect::<Vec<Vec<String>>>()
                };
                let is_there = shown.iter().any(|one| flat(one) == flat(&table));
                assert!(is_there, "{language} {path}: {table:#?}\n{shown:#?}");
            }
        }
    }
}
