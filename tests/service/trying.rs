//! `budwood gateway try`: what a saved request of a provider becomes.

use std::fs;

use super::{
    office,
    running::{budwood_in, text_of},
};

#[test]
fn a_saved_request_is_shown_as_what_it_becomes_and_nothing_is_stored() {
    let more = "[[gateway]]\nname = \"box\"\nkind = \"template\"\npreset = \"kannel\"\n\
                [gateway.out]\nurl = \"http://127.0.0.1:1/s\"\nuser = \"u\"\nsender = \"1\"\n\
                [gateway.in]\nverify = \"networks\"\nnetworks = [\"127.0.0.1\"]\n";
    let folder = office(None, more);
    let tried = |name: &str, saved: &[u8]| {
        fs::write(folder.path().join("saved"), saved).unwrap();
        let arguments = ["gateway", "try", "budwood.toml", name, "--inbound", "saved"];
        let done = budwood_in(folder.path(), &arguments);
        (done.status.success(), text_of(&done))
    };
    let text =
        b"POST /sms/in/box?from=%2B447700900123&to=12345&id=a-1&time=1700000000&charset=UTF-8 \
                 HTTP/1.1\r\nHost: x\r\n\r\nplanted 120 B";
    let (is_good, said) = tried("box", text);
    assert!(is_good, "{said}");
    assert_eq!(
        said,
        "a text from: +447700900123\nto: 12345\nsays: planted 120 B\nid: a-1\n\
         sent at: 2023-11-14T22:13:20+00:00\n"
    );
    let (is_good, said) = tried("box", b"GET /sms/receipts/box?ref=7&state=2 HTTP/1.1\n\n");
    assert!(is_good, "{said}");
    assert!(
        said.starts_with("a receipt about: our text 7\nsays: it will never"),
        "{said}"
    );
    let oneapi = br#"{"inboundSMSMessageNotification":{"inboundSMSMessage":{"message":"dead 8",
        "senderAddress":"tel:+447700900123"}}}"#;
    let (is_good, said) = tried("line", oneapi);
    assert!(is_good && said.contains("says: dead 8"), "{said}");
    for (name, saved, why) in [
        (
            "box",
            &b"POST /sms/in/box HTTP/1.1\n\nx"[..],
            "there is no from",
        ),
        ("line", b"hello", "no text: "),
        ("other", b"", "there is no gateway \"other\""),
    ] {
        let (is_good, said) = tried(name, saved);
        assert!(!is_good && said.contains(why), "{said}");
    }
}
