//! Messages of a modem as libGammu writes and reads them, which shares no code with us.

use budwood::{
    service::{gateway::from_modem, port::Arrival},
    words::traffic::Inbound,
};
use data_encoding::HEXLOWER;
use serde_json::{Value, json};

use crate::{
    modem::scene,
    office::phone,
    peer::ask,
    port::{Line, outgoing},
};

/// 3GPP TS 23.038, 6.2.1 and 6.2.1.1, without the ends of lines.
const ALPHABET: [&str; 2] = [
    "@£$¥èéùìòÇØøÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§",
    "¿abcdefghijklmnopqrstuvwxyzäöñüà^{}\\[~]|€",
];

/// What a text out of these messages is: who sent it, and its words in the order of its parts.
fn text_of(messages: &Value) -> (String, String) {
    let mut parts: Vec<(u8, Inbound)> = Vec::new();
    for message in messages.as_array().expect("a list") {
        let hex = message.as_str().expect("digits").as_bytes();
        let octets = HEXLOWER.decode(hex).expect("digits");
        match from_modem(&octets).expect("a text") {
            Arrival::Text(text) => parts.push((1, text)),
            Arrival::Part(part) => {
                assert_eq!(
                    usize::from(part.of),
                    messages.as_array().expect("a list").len()
                );
                parts.push((part.number, part.text));
            }
            other @ (Arrival::MissedCall { .. } | Arrival::Receipt(_)) => panic!("{other:?}"),
        }
    }
    parts.sort_by_key(|(number, _)| *number);
    for (_, part) in &parts {
        let at = part.sent_at.expect("a time");
        assert_eq!(at.to_rfc3339(), "2026-11-30T20:00:05+00:00");
    }
    let from = parts[0].1.from.clone();
    let words = parts.into_iter().map(|(_, part)| part.text).collect();
    (from, words)
}

#[test]
fn messages_of_another_codec_are_read() {
    let long = "{€} the rain came late this year and the road is wet, ".repeat(9);
    let wide = "đã trồng cây cao su hôm qua 🌱 ".repeat(9);
    let mut cases: Vec<(&str, &str, bool, &str)> = Vec::new();
    for letters in ALPHABET {
        cases.push((letters, "Text", false, "+447700900123"));
    }
    for text in ["a", "dead 8", "1234567", "12345678", "123456789"] {
        cases.push((text, "Text", false, "07700900123"));
        cases.push((text, "Text", true, "+447700900123"));
    }
    for name in ["INFO", "A", "Bank 24"] {
        cases.push(("ปลูกแล้ว 120 🌱", "Text", true, name));
    }
    for id in ["ConcatenatedTextLong", "ConcatenatedTextLong16bit"] {
        cases.push((&long, id, false, "+447700900123"));
        cases.push((&wide, id, true, "+447700900123"));
    }
    let questions: Vec<Value> = cases
        .iter()
        .map(|(text, id, wide, from)| json!({"text": text, "id": id, "wide": wide, "from": from}))
        .collect();
    let answers = ask("pdu.py", &questions);
    assert_eq!(answers.len(), cases.len());
    for ((text, id, _, from), answer) in cases.iter().zip(&answers) {
        let found = text_of(&answer["messages"]);
        assert_eq!(found, ((*from).to_owned(), (*text).to_owned()), "{id}");
    }
}

/// libGammu reads what we submit as it was meant.
#[tokio::test]
async fn what_leaves_is_read_by_another_codec() {
    let (office, modem) = scene("").await;
    let line = Line::open(&office).await;
    let texts = [
        "dead 8".to_owned(),
        "@£$¥èéùìòÇ\nØøÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ ¤¡ÄÖÑÜ§¿äöñüà".to_owned(),
        "^{}\\[~]|€".to_owned(),
        "the rain came late {€} ".repeat(16),
        "ปลูกแล้ว 120 ต้น ".repeat(8),
        "🌱".to_owned(),
    ];
    for (id, text) in (1..).zip(&texts) {
        line.accepted(outgoing(id, phone(1), text)).await;
    }
    line.stop().await;
    let submitted = modem.submitted().await;
    let questions: Vec<Value> = (submitted.iter())
        .map(|one| json!({"message": one["raw"]}))
        .collect();
    let mut read: Vec<String> = Vec::new();
    for answer in ask("pdu.py", &questions) {
        assert_eq!(
            (&answer["to"], &answer["kind"]),
            (&phone(1).into(), &"Submit".into())
        );
        let said = answer["text"].as_str().expect("a text");
        let number = answer["number"].as_i64().expect("a number");
        match read.last_mut() {
            Some(before) if number > 1 => before.push_str(said),
            Some(_) | None => read.push(said.to_owned()),
        }
    }
    assert_eq!(read, texts);
}
