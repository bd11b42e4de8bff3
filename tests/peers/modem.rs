//! A modem over a pseudo-terminal: our peer with its faults, and other host programs against the
//! same peer, which show that it behaves like a modem.

use std::{
    fs,
    path::{Path, PathBuf},
    process::Command,
};

use budwood::{
    service::port::Arrival,
    words::traffic::{Delivery, Link, SendOutcome, Whose},
};
use serde_json::{Value, json};

use crate::{
    office::{Control, FARMERS, Office, Peer, Said, free_port, phone, until},
    peer::command,
    port::{Line, outgoing},
};

pub(crate) struct Modem {
    pub(crate) control: Control,
    link: PathBuf,
    _peer: Peer,
}

impl Modem {
    async fn start(folder: &Path) -> Self {
        let (link, port) = (folder.join("modem0"), free_port());
        let mut python = command("modem.py");
        python
            .arg("--link")
            .arg(&link)
            .args(["--ctl", &port.to_string()]);
        let peer = Peer::start(&mut python, &folder.join("modem.log"));
        let control = Control(port);
        control.is_there().await;
        Self {
            control,
            link,
            _peer: peer,
        }
    }

    pub(crate) async fn bring(&self, from: &str, text: &str, more: Value) {
        let mut what = json!({"from": from, "text": text});
        if let (Some(what), Value::Object(more)) = (what.as_object_mut(), more) {
            what.extend(more);
        }
        self.control.tell("/sms", what).await;
    }

    pub(crate) async fn fault(&self, what: Value) {
        self.control.tell("/fault", what).await;
    }

    pub(crate) async fn raw(&self, text: &str) {
        self.control.tell("/raw", json!({"text": text})).await;
    }

    pub(crate) async fn submitted(&self) -> Vec<Value> {
        let log = self.control.log().await;
        log["sent"].as_array().expect("a list").clone()
    }

    /// It is pulled out, and put in again.
    pub(crate) async fn unplug(&self) {
        self.control.tell("/unplug", json!({})).await;
    }

    /// How many messages lie in the SIM, and before it where it was full.
    pub(crate) async fn stored(&self) -> usize {
        let log = self.control.log().await;
        let kept = log["kept"].as_u64().expect("a number");
        let kept = usize::try_from(kept).expect("few");
        kept + log["store"].as_object().expect("a table").len()
    }

    /// The texts that were sent, put together.
    pub(crate) async fn handed(&self) -> Vec<Said> {
        let mut whole: Vec<Said> = Vec::new();
        for one in self.submitted().await {
            let said = one["text"].as_str().expect("a text").to_owned();
            let to = one["to"].as_str().expect("a number").to_owned();
            let header = one["udh"].as_str().unwrap_or_default();
            // 05 00 03, the reference, how many, which.
            let is_later = !header.is_empty() && !header.ends_with("01");
            match whole.last_mut() {
                Some((_, before)) if is_later => before.push_str(&said),
                Some(_) | None => whole.push((to, said)),
            }
        }
        whole
    }

    /// Every octet that we sent was as it was announced, and nothing was refused as malformed.
    async fn assert_well_formed(&self) {
        let log = self.control.log().await;
        let lines = log["log"].as_array().expect("a list");
        let bad = lines.iter().filter(|line| {
            line["t"]
                .as_str()
                .is_some_and(|kind| kind.starts_with("bad"))
        });
        assert_eq!(bad.count(), 0);
        for one in self.submitted().await {
            assert_eq!(one["octets_ok"], true, "{one}");
            assert_eq!(one["srr"], true, "{one}");
        }
    }
}

fn block(more: &str) -> String {
    format!(
        "[[gateway]]\nname = \"line\"\nkind = \"modem\"\ndevice = \"modem0\"\n\
         allow_demo_numbers = true\nparallel = 1\n{more}"
    )
}

pub(crate) async fn scene(more: &str) -> (Office, Modem) {
    let office = Office::new(&block(more));
    let modem = Modem::start(office.folder.path()).await;
    (office, modem)
}

#[tokio::test]
async fn texts_leave_in_parts_in_every_alphabet_and_their_reports_come() {
    let (office, modem) = scene("").await;
    let line = Line::open(&office).await;
    let texts = [
        "dead 8".to_owned(),
        "prices: [5 €] {~^|\\} @".to_owned(),
        "the rain came late {€} ".repeat(16),
        "ปลูกแล้ว 120 ต้น ".repeat(8),
        "🌱".to_owned(),
    ];
    let mut parts = 0;
    for (id, text) in (1..).zip(&texts) {
        parts += line.accepted(outgoing(id, phone(1), text)).await.len();
    }
    line.until_receipts(parts).await;
    let is_there =
        |receipt: &budwood::words::traffic::Receipt| receipt.delivery == Delivery::Delivered;
    assert!(line.receipts().iter().all(is_there));
    line.stop().await;
    let expected: Vec<Said> = texts.into_iter().map(|text| (phone(1), text)).collect();
    assert_eq!(modem.handed().await, expected);
    modem.assert_well_formed().await;
}

/// From the SIM into the store, and deleted only then; a call that nobody answers.
#[tokio::test]
async fn texts_and_calls_come_in_and_the_sim_is_emptied() {
    let (office, modem) = scene("").await;
    // Some lie there before the program starts.
    modem.bring(&phone(1), "dead 8", json!({})).await;
    let long = "{€} the rain came late this year and the road is wet, ".repeat(6);
    modem
        .bring(&phone(2), &long, json!({"ref16": true, "order": "rev"}))
        .await;
    let serving = office.serve().await;
    until("the first two", async || office.has_received(2).await).await;
    let wide = "đã trồng cây cao su hôm qua ".repeat(5);
    modem
        .bring(
            &phone(3),
            &wide,
            json!({"enc": "ucs2", "order": "rev", "dup": true}),
        )
        .await;
    modem
        .bring("INFO", "top up now", json!({"ton": "alpha"}))
        .await;
    until("the next two", async || office.has_received(4).await).await;
    modem
        .control
        .tell("/call", json!({"from": phone(4), "rings": 3}))
        .await;
    modem
        .control
        .tell("/call", json!({"from": phone(5), "hidden": true}))
        .await;
    until("the call", async || office.has_received(5).await).await;
    until("an empty SIM", async || modem.stored().await == 0).await;
    office.until_settled().await;
    serving.stop().await;
    let stored = office.stored();
    let brought: Vec<Said> = vec![
        (phone(1), "dead 8".into()),
        (phone(2), long),
        (phone(3), wide),
        ("INFO".into(), "top up now".into()),
        (phone(4), "call me".into()),
    ];
    stored.assert_laws(&brought, &modem.handed().await);
    assert!(
        stored.outbound.iter().any(|text| text.to == phone(4)),
        "nobody answers the call"
    );
    modem.assert_well_formed().await;
}

#[tokio::test]
async fn errors_of_the_network_and_of_the_text_are_told_apart() {
    let (office, modem) = scene("").await;
    let line = Line::open(&office).await;
    let send = async |id| line.send(outgoing(id, phone(1), "one")).await;
    modem.fault(json!({"cmgs": [38, 500, 21, 332]})).await;
    let wait = |outcome: &SendOutcome, expected| matches!(outcome, SendOutcome::Wait { whose, .. } if *whose == expected);
    let outcome = send(1).await;
    assert!(wait(&outcome, Whose::Gateway), "{outcome:?}");
    let outcome = send(2).await;
    assert!(wait(&outcome, Whose::Text), "{outcome:?}");
    let outcome = send(3).await;
    assert!(
        matches!(outcome, SendOutcome::Refused { .. }),
        "{outcome:?}"
    );
    let outcome = send(4).await;
    assert!(
        matches!(outcome, SendOutcome::Unknown { .. }),
        "{outcome:?}"
    );
    assert!(modem.submitted().await.is_empty());
    // The second part is tried again, and the text is whole.
    modem.fault(json!({"cmgs": [0, 38, 0]})).await;
    let long = "the rain came late ".repeat(12);
    assert_eq!(line.accepted(outgoing(5, phone(1), &long)).await.len(), 2);
    assert_eq!(modem.handed().await, [(phone(1), long)]);
    // No mark to write the message after: nothing of it left.
    modem.fault(json!({"no_prompt": 1})).await;
    let outcome = send(6).await;
    assert!(wait(&outcome, Whose::Gateway), "{outcome:?}");
    line.accepted(outgoing(7, phone(1), "seven")).await;
    // No network.
    modem.fault(json!({"creg": 2})).await;
    until("no network", async || line.link() != Link::Up).await;
    line.stop().await;
}

/// Garbage, half lines, answers in the middle of others, a full SIM, silence, a modem that is
/// pulled out and put in again, kills of the program.
#[tokio::test]
async fn a_badly_behaved_modem_loses_and_doubles_nothing() {
    let (office, modem) = scene("").await;
    let mut serving = office.serve().await;
    modem
        .fault(json!({"urc_in_reply": true, "capacity": 4, "cmgs": [0, 500, 0, 27]}))
        .await;
    let mut brought: Vec<Said> = Vec::new();
    for farmer in 1..=FARMERS {
        let said = format!("dead {}", farmer % 7 + 1);
        until("room in the SIM", async || modem.stored().await < 4).await;
        modem.bring(&phone(farmer), &said, json!({})).await;
        brought.push((phone(farmer), said));
        match farmer % 10 {
            1 => modem.raw("\u{0}\u{ff}garbage +CMT\r\n+CMTI: \"S").await,
            3 => {
                modem
                    .raw("\r\n+CMTI: \"SM\",99\r\n+CDS: 5\r\nnothing\r\n")
                    .await
            }
            5 => modem.fault(json!({"mute": 1})).await,
            7 => {
                modem.control.tell("/unplug", json!({})).await;
            }
            0 => {
                serving.kill();
                serving = office.serve().await;
            }
            _ => {}
        }
    }
    let handed = async || modem.handed().await;
    // Two were put off, each by an error of the moment.
    let stored = office.end(serving, &brought, 2, handed).await;
    println!("modem: {:?}", stored.states());
}

/// A right one is given whenever it is asked for; three wrong ones lock a SIM, so a wrong one is not
/// given again.
#[tokio::test]
async fn a_pin_is_given_until_it_is_refused() {
    let (office, modem) = scene("").await;
    modem
        .fault(json!({"pin": "SIM PIN", "pin_is": "secret"}))
        .await;
    let given = async || {
        let log = modem.control.log().await.to_string();
        log.matches("AT+CPIN=secret").count()
    };
    let line = Line::open(&office).await;
    line.accepted(outgoing(1, phone(1), "one")).await;
    assert_eq!(given().await, 1);
    modem
        .fault(json!({"pin": "SIM PIN", "pin_is": "other"}))
        .await;
    let is_down = async |words: &str| match line.link() {
        Link::Down { why, .. } => why.contains(words),
        Link::Up => false,
    };
    for words in ["the PIN is wrong", "the one that is was wrong"] {
        modem.control.tell("/unplug", json!({})).await;
        until(words, async || is_down(words).await).await;
    }
    assert_eq!(given().await, 2);
    line.stop().await;
}

/// A text that nobody takes in is tried until it is taken, and no longer than the service runs.
#[tokio::test]
async fn a_stop_waits_for_no_text() {
    let (office, modem) = scene("").await;
    let line = Line::open(&office).await;
    line.refuse();
    // A published message (see the tests of the PDU), handed over at once.
    let octets = "07911326040000F0040B911346610089F60000208062917314480CC8F71D14969741F977FD07";
    modem.raw(&format!("\r\n+CMT: ,30\r\n{octets}\r\n")).await;
    until("it is tried again", async || line.arrivals().len() >= 2).await;
    line.stop().await;
}

/// gammu, an unrelated host program, does with the peer what we do.
#[tokio::test]
async fn another_host_program_takes_the_peer_for_a_modem() {
    let folder = tempfile::tempdir().expect("a folder");
    let modem = Modem::start(folder.path()).await;
    let device = fs::canonicalize(&modem.link).expect("a device");
    let rc = folder.path().join("rc");
    let text = format!(
        "[gammu]\ndevice = {}\nconnection = at115200\ngammucoding = utf8\n",
        device.display()
    );
    fs::write(&rc, text).expect("a file");
    let gammu = |arguments: &[&str]| {
        let mut command = Command::new("gammu");
        command.arg("-c").arg(&rc).args(arguments);
        let output = command.output().expect("gammu runs; tests/all installs it");
        String::from_utf8_lossy(&output.stdout).into_owned()
    };
    let sent = gammu(&["sendsms", "TEXT", &phone(1), "-text", "hello {€}"]);
    assert!(sent.contains("OK, message reference"), "{sent}");
    modem
        .bring(&phone(2), &"ABCDEFG".repeat(30), json!({"ref16": true}))
        .await;
    let all = gammu(&["getallsms"]);
    assert!(
        all.contains("ID (16 bit)") && all.contains("ABCDEFGABCDEFG"),
        "{all}"
    );
    assert_eq!(modem.handed().await, [(phone(1), "hello {€}".to_owned())]);
}

/// A call is told once, however often it rings; the next one is told too.
#[tokio::test]
async fn a_call_counts_once_however_often_it_rings() {
    let (office, modem) = scene("").await;
    // One that rings on, since the network is slow to hear that it was ended.
    modem.fault(json!({"rings_on": true})).await;
    let line = Line::open(&office).await;
    let calls = || {
        let is_call = |arrival: &Arrival| matches!(arrival, Arrival::MissedCall { .. });
        line.arrivals().into_iter().filter(is_call).count()
    };
    let said = async |words: &str| {
        let log = modem.control.log().await;
        let lines = log["log"].as_array().expect("a list").clone();
        let is_said = |line: &&Value| {
            let said = line["d"].as_str().is_some_and(|said| said.contains(words));
            line["t"] == "tx" && said
        };
        lines.iter().filter(is_said).count()
    };
    for number in 1..=2 {
        let call = json!({"from": phone(number), "rings": 3});
        modem.control.tell("/call", call).await;
        until("its end", async || said("NO CARRIER").await == number).await;
        let text = format!("text {number}");
        modem.bring(&phone(9), &text, json!({})).await;
        let is_text =
            |arrival: &Arrival| matches!(arrival, Arrival::Text(found) if found.text == text);
        until("a text after it", async || {
            line.arrivals().iter().any(is_text)
        })
        .await;
        assert_eq!(calls(), number);
    }
    assert_eq!(said("+CLIP").await, 6);
    line.stop().await;
}

/// News comes whenever it comes, between the line of a message and its octets too: taken for the
/// message, it would be deleted with it.
#[tokio::test]
async fn news_in_the_middle_of_a_message_loses_no_text() {
    let (office, modem) = scene("").await;
    modem
        .fault(json!({"news_in_list": "+CMTI: \"SM\",9"}))
        .await;
    for farmer in 1..=3 {
        let said = format!("dead {farmer}");
        modem.bring(&phone(farmer), &said, json!({})).await;
    }
    let line = Line::open(&office).await;
    until("an empty SIM", async || modem.stored().await == 0).await;
    let text = |arrival| match arrival {
        Arrival::Text(text) => Some((text.from, text.text)),
        Arrival::Part(_) | Arrival::Receipt(_) | Arrival::MissedCall { .. } => None,
    };
    let heard: Vec<Said> = line.arrivals().into_iter().filter_map(text).collect();
    let expected = (1..=3).map(|farmer| (phone(farmer), format!("dead {farmer}")));
    assert_eq!(heard, expected.collect::<Vec<Said>>());
    line.stop().await;
}
