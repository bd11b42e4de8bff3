//! The program as it is installed: the real binary, a real store, HTTP on this computer.
//!
//! These few tests are slow, because each starts processes and opens stores; what can be said
//! without a process is said elsewhere. The provider is a stand-in that keeps what it is sent, in
//! the shapes of the GSMA OneAPI (OMA RESTful Network API for Short Messaging). Waiting is asking
//! again until a deadline; nothing depends on how long something takes.

mod lines;
mod office;
mod provider;
mod reload;
mod running;
mod supervisor;
mod tls;
mod trying;

use std::{collections::BTreeMap, fs, path::Path};

use budwood::{
    play::virtual_clock::Rig,
    service::clock::Clock,
    store::{SledStore, Store},
    words::message::SendState,
};
use rustix::fs::{CWD, Mode, mkfifoat};

use self::{
    provider::Provider,
    running::{Running, budwood, budwood_in, command, text_of, write_config},
    tls::Front,
};
use crate::fixture::{self, LastingStore};

/// Nobody agreed to nudges, so the clock of the day does not matter.
const ROLL: &str = "\
row,group,name,role,phone,adviser,zone,calendar,block,area,unit,planted_on,planted
group,KOLO,,,,Mara Tindel,Asia/Jakarta,fao,,,,,
person,,Mara Tindel,adviser,+447700900100,,,,,,,,
person,KOLO,Keti Olm,farmer,+447700900005,,,,,,,,
person,KOLO,Tamo Rill,farmer,+447700900001,,,,,,,,
block,KOLO,Keti Olm,,,,,,A,1.1,ha,2024-12-12,520
block,KOLO,Tamo Rill,,,,,,A,1.2,ha,,
block,KOLO,Tamo Rill,,,,,,B,0.8,ha,,
";

/// What is texted in the conversation, in order.
const TEXTS: [(&str, &str); 9] = [
    ("+447700900005", "dead 8"),
    ("+447700900001", "planted 300"),
    ("+447700900001", "B"),
    ("+447700900005", "no"),
    ("+447700900005", "12"),
    ("+447700900001", "white root 3 trees B"),
    ("+447700900001", "thanks"),
    ("+447700900100", "gaps KOLO"),
    ("+447700900100", "Keti"),
];

/// A folder with a configuration and the list loaded.
fn office(provider: Option<&Provider>, more: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("roll.csv"), ROLL).expect("a list");
    write_config(folder.path(), provider, more);
    let loaded = budwood_in(
        folder.path(),
        &["roll", "load", "roll.csv", "--config", "budwood.toml"],
    );
    assert!(loaded.status.success(), "{}", text_of(&loaded));
    folder
}

fn store_in(folder: &Path) -> SledStore {
    SledStore::open(&folder.join("store"), 16 * 1024 * 1024).expect("the store is free again")
}

/// Answers by phone, in order.
type Answers = BTreeMap<String, Vec<String>>;

fn over_the_handset() -> Answers {
    let now = Clock::System.now();
    let store = Box::new(LastingStore::default());
    let mut rig = Rig::open(fixture::setup(), store, now).expect("an empty store");
    rig.load_roll(ROLL.as_bytes())
        .expect("a list without faults");
    let mut answers = Answers::new();
    for (from, text) in TEXTS {
        for answer in rig.text(from, text).expect("memory does not fail") {
            answers
                .entry(answer.text.to)
                .or_default()
                .push(answer.text.text);
        }
    }
    answers
}

#[tokio::test]
async fn the_same_conversation_over_http_and_over_the_handset() {
    let provider = Provider::start().await;
    let folder = office(Some(&provider), "");
    let service = Running::start(folder.path()).await;
    for (index, (from, text)) in TEXTS.iter().enumerate() {
        let status = service.bring(&format!("t-{index}"), from, text).await;
        assert!(status.is_some_and(|status| (200..300).contains(&status)));
    }
    let expected = over_the_handset();
    let number = expected.values().map(Vec::len).sum();
    let sent = provider.wait_for(number).await;
    let logged = service.stop().await;
    let mut answers = Answers::new();
    for (to, text) in sent {
        answers.entry(to).or_default().push(text);
    }
    assert_eq!(answers, expected);
    assert_discreet(&logged);
    let store = store_in(folder.path());
    let outbound = store.load(1_000).unwrap().outbound;
    assert_eq!(outbound.len(), number);
    assert!(outbound.iter().all(|text| text.state == SendState::Sent));
}

/// Nobody knows whether it was taken, and only one who looks at the correlator takes it once.
#[tokio::test]
async fn a_text_without_a_clear_answer_is_tried_again_only_where_that_is_harmless() {
    for (idempotent, state) in [(false, SendState::Unknown), (true, SendState::Ready)] {
        let provider = Provider::forgetful().await;
        let folder = office(Some(&provider), "");
        let config = folder.path().join("budwood.toml");
        let said = format!("kind = \"oneapi\"\nidempotent = {idempotent}\n");
        let text = fs::read_to_string(&config).unwrap();
        fs::write(&config, text.replace("kind = \"oneapi\"\n", &said)).unwrap();
        let service = Running::start(folder.path()).await;
        service.bring("t-1", "+447700900005", "dead 8").await;
        service.wait_for_log("a text was not taken").await;
        service.stop().await;
        assert_eq!(provider.sent().len(), 1);
        let outbound = store_in(folder.path()).load(1_000).unwrap().outbound;
        let states: Vec<SendState> = outbound.iter().map(|text| text.state).collect();
        assert_eq!(states, [state], "idempotent = {idempotent}");
    }
}

/// A provider and a folder, and each answer goes back the way its text came.
#[tokio::test]
async fn two_gateways_carry_texts_at_once() {
    let provider = Provider::start().await;
    let folder = office(
        Some(&provider),
        "[[gateway]]\nname = \"rehearsal\"\nkind = \"folder\"\nfolder = \"rehearsal\"\n",
    );
    let (inside, outside) = (
        folder.path().join("rehearsal/in"),
        folder.path().join("rehearsal/out"),
    );
    fs::create_dir_all(&inside).unwrap();
    fs::create_dir_all(&outside).unwrap();
    fs::write(inside.join("1.txt"), "+447700900001 who are you").unwrap();
    let service = Running::start(folder.path()).await;
    service.bring("t-1", "+447700900005", "dead 8").await;
    let [(to, _)] = provider.wait_for(1).await.try_into().unwrap();
    assert_eq!(to, "+447700900005");
    let files = || fs::read_dir(&outside).unwrap().flatten();
    let file = |name: &std::ffi::OsStr| name.to_string_lossy().ends_with(".txt");
    service
        .until("an answer in the folder", async || {
            files().any(|entry| file(&entry.file_name()))
        })
        .await;
    let logged = service.stop().await;
    assert_discreet(&logged);
    assert_eq!(provider.sent().len(), 1);
    let written: Vec<_> = files().map(|entry| entry.path()).collect();
    assert_eq!(written.len(), 1);
    let answer = fs::read_to_string(&written[0]).unwrap();
    assert!(answer.starts_with("+447700900001 "), "{answer}");
    assert!(fs::read_dir(inside).unwrap().next().is_none());
    let outbound = store_in(folder.path()).load(1_000).unwrap().outbound;
    let by: BTreeMap<&str, &str> = outbound
        .iter()
        .filter_map(|text| Some((text.to.as_str(), text.gateway.as_deref()?)))
        .collect();
    assert_eq!(by["+447700900005"], "line");
    assert_eq!(by["+447700900001"], "rehearsal");
}

/// Only `serve` needs them: whoever takes a backup need not know them.
#[tokio::test]
async fn maintenance_needs_no_secrets_and_serving_names_the_one_that_is_missing() {
    let folder = office(None, "");
    for arguments in [
        &["check", "budwood.toml"][..],
        &["backup", "budwood.toml", "backup"],
        &["log", "export", "budwood.toml", "log.jsonl"],
        &["due", "budwood.toml"],
        &["release", "budwood.toml"],
    ] {
        let done = budwood_in(folder.path(), arguments);
        assert!(done.status.success(), "{arguments:?}: {}", text_of(&done));
    }
    let served = budwood_in(folder.path(), &["serve", "budwood.toml"]);
    assert_eq!(served.status.code(), Some(1));
    let said = text_of(&served);
    assert!(said.contains("BUDWOOD_SECRET_LINE_IN is missing"), "{said}");
}

/// From "info" up no number, name or text is logged.
#[track_caller]
fn assert_discreet(logged: &str) {
    assert!(logged.contains("serving"), "nothing was logged: {logged}");
    for secret in [
        "7700900",
        "Keti",
        "Olm",
        "Tamo",
        "Rill",
        "Mara",
        "Tindel",
        "dead",
        "white root",
        "planted",
        "Wrong?",
        "s3cret",
    ] {
        assert!(
            !logged.contains(secret),
            "{secret} is in the log:\n{logged}"
        );
    }
}

// RFC 9325, 3.1: TLS 1.2 or 1.3. The other end here is of the same library; by hand it was tried
// against another.
#[tokio::test]
async fn texts_leave_encrypted_and_only_for_a_provider_that_is_vouched_for() {
    let provider = Provider::start().await;
    let folder = office(Some(&provider), "");
    let front = Front::before(provider.port).await;
    let stranger = Front::before(provider.port).await;
    let config = folder.path().join("budwood.toml");
    let plain = fs::read_to_string(&config).unwrap();
    let address = format!("http://127.0.0.1:{}", provider.port);
    let encrypted = |port| plain.replace(&address, &format!("https://localhost:{port}"));

    fs::write(&config, encrypted(stranger.port)).unwrap();
    let service = Running::start_trusting(folder.path(), &front.authority).await;
    service.bring("t-1", "+447700900005", "dead 8").await;
    service.wait_for_log("no connection to the provider").await;
    service.stop().await;
    assert_eq!(provider.sent(), []);

    fs::write(&config, encrypted(front.port)).unwrap();
    let service = Running::start_trusting(folder.path(), &front.authority).await;
    service.bring("t-2", "+447700900001", "planted 300 B").await;
    let sent = provider.wait_for(1).await;
    assert_eq!(sent[0].0, "+447700900001");
    service.stop().await;
}

#[tokio::test]
async fn asked_to_stop_under_load_it_keeps_all_that_it_acknowledged() {
    let folder = office(None, "");
    let service = Running::start(folder.path()).await;
    let mut acknowledged = Vec::new();
    let mut refused = 0;
    let texts = 60_u32;
    let mut waiting = tokio::task::JoinSet::new();
    for index in 0..texts {
        let bring = service.bring_later(
            format!("t-{index}"),
            "+447700900005".to_owned(),
            format!("dead {}", index % 3),
        );
        waiting.spawn(async move { (index, bring.await) });
    }
    // Some are answered before it is asked to stop, some are on their way then.
    while let Some(done) = waiting.join_next().await {
        match done.expect("a task") {
            (index, Some(status)) if (200..300).contains(&status) => acknowledged.push(index),
            _ => refused += 1,
        }
        if acknowledged.len() == 10 {
            service.ask_to_stop();
        }
    }
    let logged = service.exit().await;
    assert!(
        acknowledged.len() >= 10,
        "{} came through",
        acknowledged.len()
    );
    assert_eq!(acknowledged.len() + refused, texts as usize);
    assert!(logged.contains("everything taken in is stored"), "{logged}");
    let store = store_in(folder.path());
    let mut kept: Vec<String> = fixture::received(&store)
        .into_iter()
        .filter_map(|text| text.gateway_id)
        .collect();
    kept.sort();
    kept.dedup();
    for index in acknowledged {
        let id = format!("t-{index}");
        assert!(kept.contains(&id), "{id} was acknowledged and is lost");
    }
}

#[tokio::test]
async fn a_second_process_on_the_same_store_is_told_why_not() {
    let folder = office(None, "");
    let service = Running::start(folder.path()).await;
    write_config(folder.path(), None, "");
    let second = command(folder.path(), &["serve", "budwood.toml"])
        .env("BUDWOOD_SECRET_LINE_IN", "s")
        .output()
        .expect("it runs");
    assert_eq!(second.status.code(), Some(1), "{}", text_of(&second));
    let said = text_of(&second);
    assert!(said.contains("in use by another process"), "{said}");
    service.stop().await;
}

/// The service takes its port, then reads the file that says that the store was made: here a pipe,
/// so that it waits there until it was asked to stop.
#[tokio::test]
async fn asked_to_stop_while_the_store_is_opened_it_stops_in_order() {
    let folder = office(None, "");
    let made = folder.path().join("store/budwood");
    let version = fs::read(&made).unwrap();
    fs::remove_file(&made).unwrap();
    mkfifoat(CWD, &made, Mode::RUSR | Mode::WUSR).unwrap();
    let service = Running::start_up(folder.path());
    service.until_port_is_taken().await;
    service.ask_to_stop();
    // Not waited for: nobody reads what a service that was killed should have read.
    std::thread::spawn(move || fs::write(made, version));
    let logged = service.exit().await;
    assert!(logged.contains("everything taken in is stored"), "{logged}");
}

#[tokio::test]
async fn a_list_is_checked_and_loaded_while_the_service_runs() {
    let folder = office(None, "");
    let service = Running::start(folder.path()).await;
    let bring = |command: &str, csv: &str| {
        fs::write(folder.path().join("more.csv"), csv).unwrap();
        let arguments = ["roll", command, "more.csv", "--config", "budwood.toml"];
        let done = budwood_in(folder.path(), &arguments);
        (done.status.code(), text_of(&done))
    };
    let more = format!(
        "{ROLL}person,KOLO,Sela Dorn,farmer,+447700900002,,,,,,,,\n\
         block,KOLO,Sela Dorn,,,,,,A,0.6,ha,2024-12-12,200\n"
    );
    let (code, said) = bring("check", &more);
    assert!(
        code == Some(0) && said.contains("1 new, 0 changed, 3 as known"),
        "{said}"
    );
    let (code, said) = bring("load", &more.replace("900002", "90000Z"));
    assert!(
        code == Some(1) && said.contains("line 9: refused"),
        "{said}"
    );
    // Neither of the two stored anything, so all of it is still new.
    let (code, said) = bring("load", &more);
    assert!(code == Some(0) && said.ends_with("stored\n"), "{said}");
    assert!(said.contains("1 new, 0 changed, 3 as known"), "{said}");
    let (code, said) = bring("load", &more);
    assert!(
        code == Some(0) && said.ends_with("all of it is known.\n"),
        "{said}"
    );
    let status = service.bring("t-1", "+447700900002", "dead 8").await;
    assert_eq!(status, Some(204));
    assert_discreet(&service.stop().await);
    let answers = store_in(folder.path()).load(10).unwrap().outbound;
    let answer = answers.first().map(|answer| answer.text.as_str());
    assert!(answer.unwrap().contains("192 of 200 alive"), "{answer:?}");
}

#[tokio::test]
async fn demo_numbers_reach_no_provider_unless_it_is_allowed() {
    let provider = Provider::start().await;
    let folder = office(Some(&provider), "");
    let config = folder.path().join("budwood.toml");
    let text = fs::read_to_string(&config).unwrap();
    fs::write(&config, text.replace("allow_demo_numbers = true\n", "")).unwrap();
    let service = Running::start(folder.path()).await;
    service.bring("t-1", "+447700900005", "dead 8").await;
    service.wait_for_log("a text was not taken").await;
    let logged = service.stop().await;
    assert!(logged.contains("kept for fiction"), "{logged}");
    assert_eq!(provider.sent(), []);
    let outbound = store_in(folder.path()).load(1_000).unwrap().outbound;
    let states: Vec<SendState> = outbound.iter().map(|text| text.state).collect();
    assert_eq!(states, [SendState::Failed]);
}

/// ITU-T E.164: +881 is for mobiles by satellite.
#[tokio::test]
async fn a_number_by_satellite_gets_no_text_and_is_counted() {
    let provider = Provider::start().await;
    let folder = office(Some(&provider), "");
    let phone = concat!("+", "881612345678");
    let more = format!("{ROLL}person,KOLO,Sela Dorn,farmer,{phone},,,,,,,,\n");
    fs::write(folder.path().join("more.csv"), more).unwrap();
    let arguments = ["roll", "load", "more.csv", "--config", "budwood.toml"];
    let said = text_of(&budwood_in(folder.path(), &arguments));
    assert!(
        said.contains("a service, a satellite or a ship; it gets no texts"),
        "{said}"
    );
    let service = Running::start(folder.path()).await;
    service.bring("t-1", phone, "help").await;
    service.wait_for_log("a text was not taken").await;
    let counted = async || {
        service
            .page("/metrics")
            .await
            .contains("what=\"costly\"} 1")
    };
    service.until("it is counted", counted).await;
    service.stop().await;
    assert_eq!(provider.sent(), []);
}

#[test]
fn a_list_is_checked_without_storing_and_loaded_once() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("roll.csv"), ROLL).unwrap();
    write_config(folder.path(), None, "");
    let with_config = |command: &str| {
        budwood_in(
            folder.path(),
            &["roll", command, "roll.csv", "--config", "budwood.toml"],
        )
    };
    let checked = budwood_in(folder.path(), &["roll", "check", "roll.csv"]);
    assert!(checked.status.success(), "{}", text_of(&checked));
    assert!(
        !folder.path().join("store").exists(),
        "a check stored something"
    );
    assert!(text_of(&with_config("load")).contains("stored"));
    let people = |store: SledStore| store.load(10).unwrap().persons.len();
    assert_eq!(people(store_in(folder.path())), 3);
    let facts = fixture::events(&store_in(folder.path())).len();
    let again = with_config("load");
    assert!(again.status.success(), "{}", text_of(&again));
    assert_eq!(people(store_in(folder.path())), 3);
    assert_eq!(fixture::events(&store_in(folder.path())).len(), facts);
    let broken = ROLL.replace("900005", "90000O");
    fs::write(folder.path().join("roll.csv"), broken).unwrap();
    for refused in [with_config("check"), with_config("load")] {
        assert_eq!(refused.status.code(), Some(1));
        let said = text_of(&refused);
        assert!(said.contains("line 4"), "{said}");
    }
    assert_eq!(people(store_in(folder.path())), 3);
}

#[test]
fn a_configuration_is_checked_and_a_wrong_one_named() {
    let folder = tempfile::tempdir().expect("a folder");
    write_config(folder.path(), None, "");
    let good = budwood_in(folder.path(), &["check", "budwood.toml"]);
    assert!(good.status.success(), "{}", text_of(&good));
    assert!(text_of(&good).contains("configuration: good"));
    // Two files that are not there are both named.
    let more = "[languages]\nfiles = [\"xx.toml\"]\n[calendars]\nfiles = [\"yy.toml\"]\n";
    write_config(folder.path(), None, more);
    let bad = budwood_in(folder.path(), &["check", "budwood.toml"]);
    let said = text_of(&bad);
    assert_eq!(bad.status.code(), Some(1));
    assert!(
        said.contains("xx.toml") && said.contains("yy.toml"),
        "{said}"
    );
    write_config(folder.path(), None, "[nudges]\nquiet_form = \"19:00\"\n");
    for command in ["check", "serve"] {
        let bad = budwood_in(folder.path(), &[command, "budwood.toml"]);
        assert_eq!(bad.status.code(), Some(1));
        let said = text_of(&bad);
        assert!(said.contains("quiet_form"), "{said}");
    }
    let none = budwood(&["serve", "no-such-file.toml"]);
    assert_eq!(none.status.code(), Some(1));
    assert!(text_of(&none).contains("no-such-file.toml"));
}
