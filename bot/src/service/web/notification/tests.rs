//! What gateways send, and what is only like it.

use proptest::prelude::*;

use super::*;

// The shape as printed in the manuals of the GSMA OneAPI, with a number kept for fiction.
const ONE: &str = r#"{"inboundSMSMessageNotification":{"inboundSMSMessage":{
    "dateTime":"2026-03-18T09:30:00+03:00","destinationAddress":"12345","messageId":"m-1",
    "message":"planted 120 block B","senderAddress":"tel:+447700900123"}}}"#;

#[test]
fn one_text_is_read() {
    assert_eq!(
        texts(ONE, "line", None).unwrap().items,
        [Inbound {
            gateway: "line".into(),
            gateway_id: Some("m-1".into()),
            from: "+447700900123".into(),
            to: "12345".into(),
            text: "planted 120 block B".into(),
            sent_at: Some("2026-03-18T06:30:00Z".parse().unwrap()),
        }]
    );
}

#[test]
fn a_list_keeps_its_order_and_small_differences_do_not_matter() {
    let body = r#"{"inboundSMSMessageNotification":{"extra":[1],"inboundSMSMessage":[
        {"message":"a","senderAddress":"+447700900001"},
        {"message":"b","senderAddress":"TEL: +447700900002","dateTime":null,"colour":"red"},
        {"message":"","senderAddress":"BANK","dateTime":"2026-03-18T09:30:00","messageId":"x"}]}}"#;
    let found = texts(body, "line", Some("req-9")).unwrap().items;
    let brief: Vec<_> = found
        .iter()
        .map(|text| {
            (
                text.from.as_str(),
                text.text.as_str(),
                text.gateway_id.as_deref(),
            )
        })
        .collect();
    assert_eq!(
        brief,
        [
            ("+447700900001", "a", Some("req-9/0")),
            ("+447700900002", "b", Some("req-9/1")),
            ("BANK", "", Some("x")),
        ]
    );
    assert!(found.iter().all(|text| text.sent_at.is_none()));
}

#[test]
fn numbers_without_quotation_marks_and_half_letters_are_taken() {
    let body = r#"{"inboundSMSMessageNotification":{"inboundSMSMessage":[
        {"message":4,"senderAddress":447700900123,"messageId":71,"destinationAddress":12345},
        {"message":"weeded A \ud83c","senderAddress":"+447700900123"}]}}"#;
    let found = texts(body, "line", Some("req-9")).unwrap();
    assert_eq!(found.left_out, 0);
    let [number, half] = found.items.as_slice() else {
        panic!("{:?}", found.items.len());
    };
    assert_eq!(number.gateway_id.as_deref(), Some("71"));
    assert_eq!(
        (
            number.from.as_str(),
            number.to.as_str(),
            number.text.as_str()
        ),
        ("447700900123", "12345", "4")
    );
    assert_eq!(half.text, "weeded A \u{fffd}");
    let receipt = r#"{"deliveryInfoNotification":{"callbackData":42,"deliveryInfo":[
        {"deliveryStatus":"DeliveredToTerminal"},{"status":1}]}}"#;
    let found = receipts(receipt, "line").unwrap();
    assert_eq!((found.items.len(), found.left_out), (1, 1));
    assert_eq!(found.items[0].about, About::Ours(MessageId(42)));
}

#[test]
fn one_bad_item_does_not_lose_the_others() {
    let body = r#"{"inboundSMSMessageNotification":{"inboundSMSMessage":[
        {"message":"a","senderAddress":"+447700900001"},
        {"message":"b"}, "c", {"message":["d"],"senderAddress":"+447700900004"},
        {"message":"e","senderAddress":"tel:"},
        {"message":"f","senderAddress":"+447700900006"}]}}"#;
    let found = texts(body, "line", Some("req-9")).unwrap();
    assert_eq!(found.left_out, 4);
    let ids: Vec<_> = found
        .items
        .iter()
        .map(|text| (text.text.as_str(), text.gateway_id.as_deref()))
        .collect();
    assert_eq!(ids, [("a", Some("req-9/0")), ("f", Some("req-9/5"))]);
}

#[test]
fn errors_say_what_is_wrong() {
    let bodies = [
        "",
        "planted 120",
        r#"{"from":"+447700900123","text":"hi"}"#,
        r#"{"inboundSMSMessageNotification":{"inboundSMSMessage":"hi"}}"#,
        r#"{"inboundSMSMessageNotification":{"inboundSMSMessage":{"message":"hi"}}}"#,
        r#"{"inboundSMSMessageNotification":{"inboundSMSMessage":
            {"message":"hi","senderAddress":"tel:"}}}"#,
    ];
    let problems = bodies.map(|body| texts(body, "line", None).unwrap_err().to_string());
    insta::assert_snapshot!(problems.join("\n"), @r#"
    the body is not JSON: EOF while parsing a value at line 1 column 0
    the body is not JSON: expected value at line 1 column 1
    the body is JSON, but not an inboundSMSMessageNotification: missing field `inboundSMSMessageNotification` at line 1 column 36
    the body is JSON, but not an inboundSMSMessageNotification: invalid type: string "hi", expected an object or a list of objects at line 1 column 58
    the body is JSON, but not an inboundSMSMessageNotification: missing field `senderAddress` at line 1 column 70
    the body is JSON, but not an inboundSMSMessageNotification: senderAddress is empty
    "#);
    let foreign = r#"{"deliveryInfoNotification":{"callbackData":"theirs","deliveryInfo":
            {"deliveryStatus":"DeliveredToTerminal"}}}"#;
    insta::assert_snapshot!(receipts(foreign, "line").unwrap_err().to_string(), @"the body is JSON, but not a deliveryInfoNotification: callbackData is not the one that was sent with the text");
}

#[test]
fn what_is_too_long_is_cut_or_refused() {
    let message = |text: &str, from: &str, id: &str| {
        serde_json::json!({"inboundSMSMessageNotification": {"inboundSMSMessage":
            {"message": text, "senderAddress": from, "messageId": id}}})
        .to_string()
    };
    let long = "ก".repeat(limits::TEXT_CHARS_MAX + 1);
    let found = texts(&message(&long, "12345", "m"), "line", None)
        .unwrap()
        .items;
    assert_eq!(found[0].text.chars().count(), limits::TEXT_CHARS_MAX);
    let number = "1".repeat(limits::ADDRESS_CHARS_MAX + 1);
    assert!(texts(&message("a", &number, "m"), "line", None).is_err());
    let id = "m".repeat(limits::GATEWAY_ID_BYTES_MAX + 1);
    assert!(texts(&message("a", "12345", &id), "line", None).is_err());
}

#[test]
fn a_list_has_an_end() {
    let item = r#"{"message":"a","senderAddress":"12345"}"#;
    let body = |count| {
        let list = vec![item; count].join(",");
        format!(r#"{{"inboundSMSMessageNotification":{{"inboundSMSMessage":[{list}]}}}}"#)
    };
    let max = limits::NOTIFICATION_ITEMS_MAX;
    assert_eq!(texts(&body(max), "line", None).unwrap().items.len(), max);
    assert!(texts(&body(max + 1), "line", None).is_err());
}

// The delivery states of the GSMA OneAPI; the last is not one of them.
#[test]
fn receipts_say_how_far_a_text_has_come() {
    for (status, delivery) in [
        ("DeliveredToTerminal", Delivery::Delivered),
        ("DeliveryImpossible", Delivery::Failed),
        ("DeliveryUncertain", Delivery::Uncertain),
        ("DeliveryNotificationNotSupported", Delivery::Uncertain),
        ("MessageWaiting", Delivery::Waiting),
        ("DeliveredToNetwork", Delivery::Waiting),
        ("OnItsWay", Delivery::Waiting),
    ] {
        let body = format!(
            r#"{{"deliveryInfoNotification":{{"callbackData":"42","deliveryInfo":
            {{"address":"tel:+447700900123","deliveryStatus":"{status}"}}}}}}"#
        );
        let expected = Receipt {
            gateway: "line".into(),
            about: About::Ours(MessageId(42)),
            delivery,
            code: Some(status.into()),
        };
        assert_eq!(
            receipts(&body, "line").unwrap().items,
            [expected],
            "{status}"
        );
    }
}

#[test]
fn a_receipt_may_name_the_text_by_a_link() {
    let body = r#"{"deliveryInfoNotification":{"deliveryInfo":[{"deliveryStatus":"MessageWaiting"}],
        "link":[{"rel":"Other","href":"/x"},{"rel":"OutboundSMSMessageRequest",
        "href":"https://sms.example/outbound/tel%3A12345/requests/abc"}]}}"#;
    let expected = Receipt {
        gateway: "line".into(),
        about: About::Theirs("abc".into()),
        delivery: Delivery::Waiting,
        code: Some("MessageWaiting".into()),
    };
    assert_eq!(receipts(body, "line").unwrap().items, [expected]);
}

proptest! {
    #[test]
    fn no_body_panics(body in any::<String>(), cut in 0..ONE.len()) {
        let _ = texts(&body, "line", None);
        let _ = receipts(&body, "line");
        prop_assert!(texts(&ONE[..cut], "line", None).is_err());
    }
}
