//! A provider told by a preset, against Kannel from Debian: an HTTP gateway of another author, with
//! a message centre of yet another behind it.

use std::{fs, path::Path, process::Command};

use budwood::words::{
    message::SendState,
    traffic::{SendOutcome, Whose},
};
use serde_json::json;

use crate::{
    centre::Centre,
    office::{FARMERS, Office, Peer, Said, free_port, phone, until},
    port::{opened, outgoing},
};

/// Its ports.
#[derive(Clone, Copy)]
struct Ports {
    admin: u16,
    boxes: u16,
    send: u16,
}

pub(crate) struct Kannel {
    ports: Ports,
    box_: Option<(Peer, Peer)>,
}

impl Kannel {
    /// Its own configuration, as the preset says that it must be.
    fn configure(folder: &Path, centre: u16, bot: u16) -> Self {
        let ports = Ports {
            admin: free_port(),
            boxes: free_port(),
            send: free_port(),
        };
        let Ports { admin, boxes, send } = ports;
        let text = format!(
            r#"group = core
admin-port = {admin}
admin-interface = 127.0.0.1
admin-password = admin
smsbox-port = {boxes}
smsbox-interface = 127.0.0.1
box-allow-ip = "127.0.0.1"
dlr-storage = internal
sms-combine-concatenated-mo = true

group = smsc
smsc = smpp
smsc-id = centre
host = 127.0.0.1
port = {centre}
transceiver-mode = true
smsc-username = esme
smsc-password = secret
system-type = ""
interface-version = 34
reconnect-delay = 1

group = smsbox
bearerbox-host = 127.0.0.1
sendsms-port = {send}
sendsms-interface = 127.0.0.1
http-request-retry = 1000
http-queue-delay = 1

group = sendsms-user
username = bot
password = secret
concatenation = true
max-messages = 10

group = sms-service
keyword = default
max-messages = 0
catch-all = true
post-url = "http://127.0.0.1:{bot}/sms/in/line?from=%p&to=%P&id=%I&time=%T&charset=%C"
"#
        );
        fs::write(folder.join("kannel.conf"), text).expect("a configuration");
        Self { ports, box_: None }
    }

    pub(crate) async fn start(&mut self, folder: &Path) {
        let run = |name: &str| {
            let mut command = Command::new(name);
            command.arg(folder.join("kannel.conf"));
            Peer::start(&mut command, &folder.join(format!("{name}.log")))
        };
        let bearer = run("bearerbox");
        let listens = async |port| {
            tokio::net::TcpStream::connect(("127.0.0.1", port))
                .await
                .is_ok()
        };
        until("bearerbox", async || listens(self.ports.boxes).await).await;
        let sms = run("smsbox");
        until("smsbox", async || listens(self.ports.send).await).await;
        until("its line", async || self.status().await.contains("online")).await;
        self.box_ = Some((sms, bearer));
    }

    pub(crate) fn kill(&mut self) {
        if let Some((sms, bearer)) = self.box_.take() {
            sms.kill();
            bearer.kill();
        }
    }

    async fn status(&self) -> String {
        let url = format!(
            "http://127.0.0.1:{}/status.txt?password=admin",
            self.ports.admin
        );
        let client = budwood::service::gateway::http::client()
            .build()
            .expect("a client");
        let Ok(answer) = client.get(url).send().await else {
            return String::new();
        };
        let text = answer.text().await.unwrap_or_default();
        let line = text
            .lines()
            .find(|line| line.trim_start().starts_with("centre"));
        line.unwrap_or_default().to_owned()
    }
}

/// The block of the bot's configuration. The box is on this computer, so it is told by where it
/// calls from.
fn block(send: u16) -> String {
    format!(
        "[[gateway]]\nname = \"line\"\nkind = \"template\"\npreset = \"kannel\"\n\
         allow_demo_numbers = true\n\
         [gateway.out]\nurl = \"http://127.0.0.1:{send}/cgi-bin/sendsms\"\nuser = \"bot\"\n\
         sender = \"12345\"\nreceipt_url = \"http://127.0.0.1:PORT/sms/receipts/line\"\n\
         [gateway.in]\nverify = \"networks\"\nnetworks = [\"127.0.0.1\"]\n"
    )
}

pub(crate) struct Scene {
    pub(crate) office: Office,
    pub(crate) centre: Centre,
    pub(crate) kannel: Kannel,
}

pub(crate) async fn scene() -> Scene {
    let send = free_port();
    let office = Office::new(&block(send));
    let centre = Centre::start(office.folder.path()).await;
    let mut kannel = Kannel::configure(office.folder.path(), centre.port, office.port);
    // The port was promised to the bot's configuration already.
    let conf = office.path("kannel.conf");
    let text = fs::read_to_string(&conf).expect("a configuration");
    let drawn = format!("sendsms-port = {}", kannel.ports.send);
    fs::write(
        &conf,
        text.replace(&drawn, &format!("sendsms-port = {send}")),
    )
    .expect("a file");
    kannel.ports.send = send;
    kannel.start(office.folder.path()).await;
    Scene {
        office,
        centre,
        kannel,
    }
}

/// Long texts in every order of parts, letters of every kind.
#[tokio::test]
async fn texts_answers_and_receipts_pass_both_ways() {
    let Scene {
        office,
        centre,
        kannel: _kannel,
    } = scene().await;
    let serving = office.serve().await;
    centre.bring(&phone(1), "dead 8", json!({})).await;
    let long = "the rain came late this year {and} the road is wet, ".repeat(6);
    centre
        .bring(&phone(2), &long, json!({"split": "udh16", "order": "rev"}))
        .await;
    let marked = "đã trồng cây cao su hôm qua 😀 ".repeat(5);
    centre
        .bring(&phone(3), &marked, json!({"enc": "ucs2", "order": "rev"}))
        .await;
    centre
        .bring(&phone(4), "ปลูกแล้ว", json!({"enc": "ucs2"}))
        .await;
    until("an answer", async || {
        let handed = centre.handed().await;
        handed
            .iter()
            .any(|(to, said)| *to == phone(1) && said.contains("192 of 200"))
    })
    .await;
    office.until_settled().await;
    serving.stop().await;
    let brought: Vec<Said> = vec![
        (phone(1), "dead 8".into()),
        (phone(2), long),
        (phone(3), marked),
        (phone(4), "ปลูกแล้ว".into()),
    ];
    let stored = office.stored();
    stored.assert_laws(&brought, &centre.handed().await);
    let states = stored.states();
    assert_eq!(
        states.get("delivered"),
        Some(&stored.outbound.len()),
        "{states:?}"
    );
    assert!(stored.received.iter().all(|one| one.sent_at.is_some()));
}

/// The parts of a text, through the port alone: what we write says more than one SMS only here.
#[tokio::test]
async fn long_texts_and_every_alphabet_arrive_as_they_were_written() {
    let Scene {
        office,
        centre,
        kannel: _kannel,
    } = scene().await;
    let gateway = opened(&office, "secret");
    let texts = [
        "one".to_owned(),
        "prices: [5 €] {~^|\\} ".repeat(20),
        // In one part: the box cuts a longer one between the halves of a surrogate pair.
        "đã trồng cây cao su 🌱".to_owned(),
        "đã trồng cây cao su ".repeat(12),
        "ปลูกแล้ว 120 ต้น ".repeat(8),
        "a=b&c=d+e%20f?\n\"g\"".to_owned(),
    ];
    for (id, text) in (1..).zip(&texts) {
        let outcome = gateway.send(&outgoing(id, phone(1), text)).await;
        assert_eq!(outcome, SendOutcome::Accepted { ids: vec![] });
    }
    until("all of them", async || {
        centre.handed().await.len() == texts.len()
    })
    .await;
    let mut handed: Vec<String> = centre
        .handed()
        .await
        .into_iter()
        .map(|(_, said)| said)
        .collect();
    let mut texts = texts.to_vec();
    handed.sort();
    texts.sort();
    assert_eq!(handed, texts);
    let validity = centre.seen("submit_sm").await;
    assert!(
        validity.iter().all(|one| !one["validity"].is_null()),
        "{validity:?}"
    );
}

#[tokio::test]
async fn what_it_refuses_and_a_wrong_password_are_told_apart() {
    let Scene {
        office, mut kannel, ..
    } = scene().await;
    let text = outgoing(1, phone(1), "one");
    let outcome = opened(&office, "wrong").send(&text).await;
    let SendOutcome::Wait {
        whose: Whose::SetUp,
        why,
        ..
    } = outcome
    else {
        panic!("{outcome:?}")
    };
    assert!(why.contains("403"), "{why}");
    let gateway = opened(&office, "secret");
    let nobody = outgoing(2, String::new(), "one");
    let outcome = gateway.send(&nobody).await;
    assert!(
        matches!(outcome, SendOutcome::Refused { .. }),
        "{outcome:?}"
    );
    kannel.kill();
    // On a connection of its own: one that was open before can be broken at any moment, so what is
    // written to it is unknown.
    let outcome = opened(&office, "secret").send(&text).await;
    assert!(
        matches!(
            outcome,
            SendOutcome::Wait {
                whose: Whose::Gateway,
                ..
            }
        ),
        "{outcome:?}"
    );
}

/// The bot is killed while texts come in, and the box and the centre go away once each.
#[tokio::test]
async fn nothing_is_lost_or_doubled_when_either_side_dies() {
    let Scene {
        office,
        centre,
        mut kannel,
    } = scene().await;
    centre
        .fault(json!({"dup_dlr": true, "dlr_first": true}))
        .await;
    let mut brought: Vec<Said> = Vec::new();
    let mut serving = office.serve().await;
    for farmer in 1..=FARMERS {
        let said = format!("dead {}", farmer % 7 + 1);
        centre.bring(&phone(farmer), &said, json!({})).await;
        brought.push((phone(farmer), said));
        if farmer % 10 == 0 {
            serving.kill();
            serving = office.serve().await;
        }
    }
    office.until_all_came().await;
    kannel.kill();
    kannel.start(office.folder.path()).await;
    let handed = async || centre.handed().await;
    let stored = office.end(serving, &brought, 0, handed).await;
    println!("kannel: {:?}", stored.states());
    // What was on its way in a kill is unknown, and nothing else is.
    let unknown = stored
        .outbound
        .iter()
        .filter(|text| text.state == SendState::Unknown);
    assert!(unknown.count() <= 4 * 4, "{:?}", stored.states());
}
