//! What a modem says of itself and of its SIM: signal, what is left to spend, messages that stay.

use budwood::words::traffic::Link;
use serde_json::json;

use crate::{
    modem::scene,
    office::{phone, until},
    port::{Line, outgoing},
};

/// What a modem says of itself is shown; the network is asked once what is left.
#[tokio::test]
async fn signal_and_balance_are_shown() {
    let (office, modem) = scene("balance = \"*100#\"\n").await;
    let answer = ["1,\"12.50 left. 1: top up\",15"];
    modem
        .fault(json!({"csq": 20, "ussd": {"*100#": answer}}))
        .await;
    let line = Line::open(&office).await;
    until("the balance", async || line.signs().balance.is_some()).await;
    let signs = line.signs();
    assert_eq!(signs.balance.as_deref(), Some("12.50 left. 1: top up"));
    // 3GPP TS 27.007, 8.5: 20 of 31.
    assert_eq!((signs.signal_pct, signs.trouble), (Some(64), None));
    modem.control.tell("/unplug", json!({})).await;
    until("it is gone", async || line.link() != Link::Up).await;
    until("it is back", async || line.link() == Link::Up).await;
    line.accepted(outgoing(1, phone(1), "one")).await;
    let log = modem.control.log().await.to_string();
    assert_eq!(log.matches("AT+CUSD=1,").count(), 1);
    assert_eq!(log.matches("AT+CUSD=2").count(), 1);
    line.stop().await;
}

/// Nothing is taken in twice, and somebody is told before texts stay away.
#[tokio::test]
async fn a_sim_that_stays_full_is_told_and_its_texts_come_in_once() {
    let (office, modem) = scene("").await;
    modem.fault(json!({"capacity": 2, "no_delete": true})).await;
    for farmer in 1..=2 {
        modem.bring(&phone(farmer), "dead 8", json!({})).await;
    }
    let line = Line::open(&office).await;
    let says = |words: &str| line.signs().trouble.is_some_and(|why| why.contains(words));
    until("it is told", async || says("SIM is full: 2 messages")).await;
    // News makes it look again.
    modem.raw("\r\n+CMTI: \"SM\",1\r\n").await;
    modem.fault(json!({"no_delete": false})).await;
    modem.raw("\r\n+CMTI: \"SM\",2\r\n").await;
    until("an empty SIM", async || modem.stored().await == 0).await;
    until("all is well", async || line.signs().trouble.is_none()).await;
    assert_eq!(line.arrivals().len(), 2);
    line.stop().await;
}

/// A message that is listed and not given out is no text, and not deleted.
#[tokio::test]
async fn a_message_without_octets_is_told() {
    let (office, modem) = scene("").await;
    modem.fault(json!({"no_octets": true})).await;
    modem.bring(&phone(1), "dead 8", json!({})).await;
    let line = Line::open(&office).await;
    let is_told = || {
        let why = line.signs().trouble.unwrap_or_default();
        why == "messages in its SIM that it does not give out: 1"
    };
    until("it is told", async || is_told()).await;
    assert!(line.arrivals().is_empty() && modem.stored().await == 1);
    modem.fault(json!({"no_octets": false})).await;
    modem.raw("\r\n+CMTI: \"SM\",1\r\n").await;
    until("an empty SIM", async || modem.stored().await == 0).await;
    assert_eq!(line.arrivals().len(), 1);
    line.stop().await;
}

/// News of a message may be lost; the memory is looked through all the same, and what it had no room
/// for follows.
#[tokio::test]
async fn a_sim_is_emptied_though_nothing_is_said_of_its_texts() {
    let (office, modem) = scene("").await;
    modem.fault(json!({"no_news": true, "capacity": 2})).await;
    let line = Line::open(&office).await;
    for farmer in 1..=5 {
        modem.bring(&phone(farmer), "dead 8", json!({})).await;
    }
    until("an empty SIM", async || modem.stored().await == 0).await;
    assert_eq!(line.arrivals().len(), 5);
    line.stop().await;
}
