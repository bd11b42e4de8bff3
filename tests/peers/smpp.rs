//! An account against two centres of other authors: npm smpp, and Perl's Net::SMPP.

use std::{fs, process::Command};

use budwood::{
    service::port::Arrival,
    words::{
        message::SendState,
        traffic::{Link, SendOutcome, Whose},
    },
};
use serde_json::json;
use tokio::io::AsyncReadExt;

use crate::{
    centre::Centre,
    office::{FARMERS, Office, Peer, Said, free_port, phone, until},
    peer::script,
    port::{Line, outgoing},
};

fn block(port: u16, more: &str) -> String {
    format!(
        "[[gateway]]\nname = \"line\"\nkind = \"smpp\"\naddress = \"127.0.0.1:{port}\"\n\
         system_id = \"esme\"\nallow_demo_numbers = true\nenquire_secs = 2\ntimeout_secs = 5\n{more}\
         [gateway.source]\naddress = \"12345\"\nton = 3\n"
    )
}

/// "hello" from +447700900999, with a stray zero and a parameter of some vendor behind it.
const STRAY: &str = "0000003d0000000500000000000000090001013434373730303930303939390000013132333435000000000000\
    000000000568656c6c6f001400000107";

/// Short and long, in every alphabet.
fn texts() -> Vec<String> {
    vec![
        "dead 8".to_owned(),
        "prices: [5 €] {~^|\\} @".to_owned(),
        "the rain came late and the road is wet {€} ".repeat(9),
        "ปลูกแล้ว".to_owned(),
        "đã trồng cây cao su 🌱 ".repeat(9),
    ]
}

/// The centre with an office whose gateway is an account there.
pub(crate) async fn scene(more: &str, options: &[&str]) -> (Office, Centre) {
    let port = free_port();
    let office = Office::new(&block(port, more));
    let centre = Centre::start_at(port, office.folder.path(), options).await;
    (office, centre)
}

#[tokio::test]
async fn long_texts_arrive_in_each_of_the_three_ways_and_in_every_alphabet() {
    for more in [
        "long_texts = \"udh\"\n",
        "long_texts = \"sar\"\n",
        "long_texts = \"payload\"\n",
        "bind = \"transmitter and receiver\"\n",
    ] {
        let (office, centre) = scene(more, &[]).await;
        let line = Line::open(&office).await;
        let texts = texts();
        for (id, text) in (1..).zip(&texts) {
            let ids = line.accepted(outgoing(id, phone(1), text)).await;
            assert!(!ids.is_empty(), "{more}: no id");
        }
        let handed = centre.handed().await;
        let expected: Vec<Said> = texts.iter().map(|text| (phone(1), text.clone())).collect();
        assert_eq!(handed, expected, "{more}");
        let submitted = centre.seen("submit_sm").await;
        let is_good = |one: &serde_json::Value| one["reg"] == 1 && !one["validity"].is_null();
        assert!(submitted.iter().all(is_good), "{more}");
        // Each part has its receipt.
        line.until_receipts(submitted.len()).await;
        line.stop().await;
    }
}

#[tokio::test]
async fn texts_in_come_whole_in_their_order_in_every_form() {
    let (office, centre) = scene("", &[]).await;
    let serving = office.serve().await;
    until("bound", async || !centre.seen("bind").await.is_empty()).await;
    let long = "{€} the rain came late this year and the road is wet, ".repeat(6);
    let wide = "đã trồng cây cao su hôm qua ".repeat(5);
    let brought: Vec<(Said, serde_json::Value)> = vec![
        ((phone(1), "dead 8".into()), json!({})),
        ((phone(1), "thanks".into()), json!({})),
        (
            (phone(2), long.clone()),
            json!({"split": "udh8", "order": "rev"}),
        ),
        (
            (phone(3), long.clone()),
            json!({"split": "udh16", "order": "rev", "dup": true}),
        ),
        (
            (phone(4), wide.clone()),
            json!({"split": "sar", "enc": "ucs2", "order": "rev"}),
        ),
        ((phone(5), wide), json!({"split": "payload", "enc": "ucs2"})),
        ((phone(6), "café 5".into()), json!({"enc": "latin1"})),
    ];
    for ((from, text), how) in &brought {
        centre.bring(from, text, how.clone()).await;
    }
    until("all came in", async || {
        office.has_received(brought.len()).await
    })
    .await;
    office.until_settled().await;
    serving.stop().await;
    let stored = office.stored();
    let brought: Vec<Said> = brought.into_iter().map(|(said, _)| said).collect();
    stored.assert_laws(&brought, &centre.handed().await);
    assert_eq!(
        stored.states().get("delivered"),
        Some(&stored.outbound.len())
    );
}

#[tokio::test]
async fn receipts_meet_their_texts_whatever_digits_and_order_they_have() {
    for (more, options, fault) in [
        (
            "receipt_ids = \"decimal\"\n",
            &["--idfmt", "hex-resp"][..],
            json!({}),
        ),
        ("", &[], json!({"dlr_first": true})),
        ("", &[], json!({"dup_dlr": true, "dlr_stat": "UNDELIV"})),
    ] {
        let (office, centre) = scene(more, options).await;
        centre.fault(fault.clone()).await;
        let serving = office.serve().await;
        until("bound", async || !centre.seen("bind").await.is_empty()).await;
        for farmer in 1..=5 {
            centre.bring(&phone(farmer), "dead 8", json!({})).await;
        }
        until("all came in", async || office.has_received(5).await).await;
        office.until_settled().await;
        serving.stop().await;
        let expected = if fault["dlr_stat"].is_null() {
            SendState::Delivered
        } else {
            SendState::Failed
        };
        let stored = office.stored();
        assert!(stored.outbound.len() >= 5);
        let is_so = |text: &budwood::words::message::Outbound| text.state == expected;
        assert!(
            stored.outbound.iter().all(is_so),
            "{more} {:?}",
            stored.states()
        );
    }
}

/// Throttling, a full queue, swallowed texts, a line that is cut, an unbind, octets that are no
/// message, kills of the program: nothing is lost or doubled, and the order stays.
#[tokio::test]
async fn a_badly_behaved_centre_loses_and_doubles_nothing() {
    let (office, centre) = scene("", &[]).await;
    let mut serving = office.serve().await;
    until("bound", async || !centre.seen("bind").await.is_empty()).await;
    centre
        .fault(json!({"submit_status": [0x58, 0x14, 0, 0, 0x58], "dup_dlr": true}))
        .await;
    let odd = [
        // A command that nobody knows; a text that ends in its address; a stray zero and a vendor's
        // parameter behind a text; an answer to nothing.
        "00000010000001F00000000000000007",
        "0000001c000000050000000000000008000101343437373039303030",
        STRAY,
        "00000010800000040000000000009999",
    ];
    let mut brought: Vec<Said> = Vec::new();
    for farmer in 1..=FARMERS {
        let said = format!("dead {}", farmer % 7 + 1);
        let is_bound = async || {
            let (binds, ends) = (centre.seen("bind").await, centre.seen("close").await);
            binds.len() > ends.len()
        };
        until("bound again", is_bound).await;
        centre.bring(&phone(farmer), &said, json!({})).await;
        brought.push((phone(farmer), said));
        let came = async || office.has_heard(&phone(farmer)).await;
        let ended = async |before: usize| centre.seen("close").await.len() > before;
        let before = centre.seen("close").await.len();
        match farmer % 10 {
            2 => centre.raw(odd[farmer / 10]).await,
            4 => centre.fault(json!({"no_resp": 1})).await,
            6 | 8 => {
                until("it came", came).await;
                let how = if farmer % 10 == 6 { "close" } else { "unbind" };
                centre.fault(json!({how: true})).await;
                until("the end", async || ended(before).await).await;
            }
            0 => {
                until("it came", came).await;
                serving.kill();
                until("the end", async || ended(before).await).await;
                serving = office.serve().await;
            }
            _ => {}
        }
    }
    let handed = async || centre.handed().await;
    let stored = office.end(serving, &brought, 0, handed).await;
    println!("smpp: {:?}", stored.states());
    // All that was to go wrong did: throttled, swallowed, cut off, unbound. What is swallowed may be
    // less: a text that is cut off with its line is not.
    for (kind, least) in [("swallowed", 1), ("unbind_resp", 4), ("close", 4)] {
        assert!(centre.seen(kind).await.len() >= least, "{kind}");
    }
    let submitted = centre.seen("submit_sm").await;
    let refused = submitted.iter().filter(|one| !one["refused"].is_null());
    assert_eq!(refused.count(), 3);
}

/// A pair of lines is one account: texts come by one and leave by the other, each is bound again
/// when it ends, and it is up when both are.
#[tokio::test]
async fn a_pair_of_lines_is_one_account() {
    let (office, centre) = scene("bind = \"transmitter and receiver\"\n", &[]).await;
    let line = Line::open(&office).await;
    let heard = || {
        let text = |arrival| match arrival {
            Arrival::Text(text) => Some(text.text),
            Arrival::Part(_) | Arrival::Receipt(_) | Arrival::MissedCall { .. } => None,
        };
        let all: Vec<String> = line.arrivals().into_iter().filter_map(text).collect();
        all
    };
    let bound = async |kind: &str| {
        let binds = centre.seen("bind").await;
        binds.iter().filter(|bind| bind["kind"] == kind).count()
    };
    for (times, kind) in [(1, "receiver"), (2, "transmitter")] {
        let said = format!("dead {times}");
        centre.bring(&phone(1), &said, json!({})).await;
        until("it came", async || heard().len() == times).await;
        assert_eq!(heard().last(), Some(&said));
        line.accepted(outgoing(times as u64, phone(1), &said)).await;
        let before = bound(kind).await;
        centre.fault(json!({"close": kind})).await;
        until("it is down", async || line.link() != Link::Up).await;
        until("it is up", async || line.link() == Link::Up).await;
        assert_eq!(bound(kind).await, before + 1, "{kind}");
    }
    // What one line had does not end with the other.
    centre.bring(&phone(1), "dead 3", json!({})).await;
    until("it came", async || heard().len() == 3).await;
    line.accepted(outgoing(3, phone(1), "three")).await;
    line.until_receipts(1).await;
    line.stop().await;
    assert_eq!(
        (bound("receiver").await, bound("transmitter").await),
        (2, 2)
    );
}

#[tokio::test]
async fn a_wrong_password_is_told_and_texts_wait() {
    let (office, centre) = scene("", &["--pass", "other"]).await;
    let line = Line::begin(&office, "secret");
    let is_told = async || match line.link() {
        Link::Down { why, .. } => why.contains("the password is wrong"),
        Link::Up => panic!("it is up"),
    };
    until("it is told", is_told).await;
    let outcome = line.send(outgoing(1, phone(1), "one")).await;
    let SendOutcome::Wait { whose, why, .. } = outcome else {
        panic!("{outcome:?}")
    };
    assert_eq!(whose, Whose::Gateway);
    assert!(why.contains("the password is wrong"), "{why}");
    line.stop().await;
    assert_eq!(centre.seen("submit_sm").await.len(), 0);
}

/// What a phone writes is a text, whatever form it has.
#[tokio::test]
async fn nobody_can_write_a_receipt() {
    let (office, centre) = scene("", &[]).await;
    let line = Line::open(&office).await;
    let ids = line.accepted(outgoing(1, phone(1), "one")).await;
    line.until_receipts(1).await;
    let [id] = ids.try_into().expect("one");
    let forged = format!("id:{id} stat:UNDELIV err:001");
    centre.bring(&phone(2), &forged, json!({})).await;
    let is_text = |arrival: &Arrival| matches!(arrival, Arrival::Text(text) if text.text == forged);
    until("a text", async || line.arrivals().iter().any(is_text)).await;
    assert_eq!(line.receipts().len(), 1);
    line.stop().await;
}

/// A centre that takes the connection and never answers the bind keeps nobody from stopping.
#[tokio::test]
async fn a_stop_waits_for_no_bind() {
    let centre = tokio::net::TcpListener::bind("127.0.0.1:0").await;
    let centre = centre.expect("a free port");
    let port = centre.local_addr().expect("an address").port();
    let block = block(port, "").replace("timeout_secs = 5", "timeout_secs = 300");
    let line = Line::begin(&Office::new(&block), "secret");
    let (mut stream, _) = centre.accept().await.expect("it comes");
    // The length of the bind: it has been written.
    stream.read_u32().await.expect("a bind");
    line.stop().await;
}

/// A centre that answers nothing any more is left, and bound again when it does.
#[tokio::test]
async fn a_silent_centre_is_noticed() {
    let (office, centre) = scene("", &[]).await;
    let serving = office.serve().await;
    until("bound", async || !centre.seen("bind").await.is_empty()).await;
    centre.fault(json!({"ignore_enq": true})).await;
    serving.until_logged("the centre does not answer").await;
    centre.fault(json!({"ignore_enq": false})).await;
    until("bound again", async || centre.seen("bind").await.len() >= 2).await;
    centre.bring(&phone(1), "dead 8", json!({})).await;
    until("it came", async || office.has_received(1).await).await;
    serving.stop().await;
}

/// The Perl centre sends receipts as text alone and the second part first.
#[tokio::test]
async fn a_centre_on_another_library_is_understood() {
    let port = free_port();
    let office = Office::new(&block(port, ""));
    let mut perl = Command::new("perl");
    perl.arg(script("centre.pl"))
        .args([&port.to_string(), "esme", "secret"]);
    let log = office.path("centre.log");
    let _peer = Peer::start(&mut perl, &log);
    let serving = office.serve().await;
    until("two texts", async || office.has_received(2).await).await;
    serving.stop().await;
    let stored = office.stored();
    let mut said: Vec<String> = stored.heard().into_iter().map(|(_, said)| said).collect();
    said.sort();
    assert_eq!(said, ["first half, second half", "maize 10"]);
    let line = Line::open(&office).await;
    for (id, text) in (1..).zip(texts()) {
        line.accepted(outgoing(id, phone(1), &text)).await;
    }
    let submitted = || {
        let log = fs::read_to_string(&log).expect("a log");
        log.matches("submit_sm to 4477009001").count()
    };
    line.until_receipts(submitted()).await;
    assert!(submitted() >= texts().len());
    line.stop().await;
}

/// An encrypted line, and only to a centre that is vouched for.
#[tokio::test]
async fn a_line_may_be_encrypted() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut authority = rcgen::CertificateParams::default();
    authority.is_ca = rcgen::IsCa::Ca(rcgen::BasicConstraints::Unconstrained);
    let key = rcgen::KeyPair::generate().expect("a key");
    let authority = rcgen::CertifiedIssuer::self_signed(authority, key).expect("an authority");
    let key = rcgen::KeyPair::generate().expect("a key");
    let certificate = rcgen::CertificateParams::new(vec!["localhost".to_owned()])
        .and_then(|leaf| leaf.signed_by(&key, &authority))
        .expect("a certificate");
    let file = |name: &str, text: String| {
        let path = folder.path().join(name);
        fs::write(&path, text).expect("a file");
        path
    };
    let ca = file("ca.pem", authority.pem());
    let cert = file("cert.pem", certificate.pem());
    let secret = file("key.pem", key.serialize_pem());
    let (port, tls) = (free_port(), free_port());
    let more = format!("tls = true\nauthority = \"{}\"\n", ca.display());
    let office = Office::new(&block(tls, &more).replace("127.0.0.1", "localhost"));
    let options = [
        "--tls-port",
        &tls.to_string(),
        "--tls-key",
        &secret.display().to_string(),
        "--tls-cert",
        &cert.display().to_string(),
    ];
    let centre = Centre::start_at(port, office.folder.path(), &options).await;
    let line = Line::open(&office).await;
    line.accepted(outgoing(1, phone(1), "one")).await;
    line.stop().await;
    assert_eq!(centre.handed().await, [(phone(1), "one".to_owned())]);
    // Without its authority nobody vouches for it.
    let strange = Office::new(&block(tls, "tls = true\n").replace("127.0.0.1", "localhost"));
    let serving = strange.serve().await;
    serving.until_logged("certificate is not accepted").await;
}
