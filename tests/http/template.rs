//! A provider told by the configuration: what is sent, what answers mean, and what is taken in.

mod refused;

use std::{net::TcpListener, path::Path, sync::Arc};

use budwood::{
    service::{
        clock::{Clock, FixedClock},
        config::Config,
        port::Opened,
        web::{self, WebSettings},
    },
    words::traffic::{About, Delivery, Outgoing, Receipt, SendOutcome, Whose},
};
use budwood_scheduler::MessageId;
use chrono::TimeDelta;

use super::{Taker, at, client, sending::Provider};

const NOW: i64 = 1_700_000_000;

/// The block of a gateway, opened with one secret for everything.
fn opened(block: &str) -> Opened {
    let config = config(block).unwrap();
    let environment = |_: &str| Some("s3cret".to_owned());
    let clock = Clock::Fixed(FixedClock::at(at(NOW)));
    let opened = config.open_gateways(&environment, &clock).unwrap();
    opened.into_iter().next().unwrap()
}

fn config(block: &str) -> Result<Config, String> {
    let text = format!(
        "[store]\nfolder = \"s\"\n[web]\nlisten = \"127.0.0.1:8470\"\n\
         [line]\nname = \"l\"\nown_number = \"12345\"\ncountry = \"GB\"\nfallback_zone = \"UTC\"\n\
         [[gateway]]\nname = \"box\"\nkind = \"template\"\n{block}"
    );
    Config::parse(&text, Path::new("")).map_err(|error| error.to_string())
}

fn outgoing(text: &str) -> Outgoing {
    Outgoing {
        id: MessageId(7),
        to: "+447700900123".into(),
        text: text.into(),
        expires_at: at(NOW) + TimeDelta::minutes(90),
    }
}

#[tokio::test]
async fn a_form_and_a_query_hold_what_they_were_told() {
    let provider = Provider::start();
    let block = format!(
        "[gateway.out]\nurl = \"http://{}/send/{{id}}\"\nauth = \"header:X-Key\"\nsender = \"12345\"\n\
         form = {{ to = \"{{to_digits}}\", msg = \"{{text}}\", from = \"{{from}}\", \
         left = \"{{minutes}}\", cb = \"{{receipt_url}}\" }}\n\
         query = {{ kind = \"{{coding}}\", of = \"{{parts}}\" }}\nheaders = {{ X-Ref = \"ref-{{id}}\" }}\n",
        provider.address
    );
    let gateway = opened(&block).gateway;
    let outcome = gateway.send(&outgoing("a&b=c é+d")).await;
    assert_eq!(outcome, SendOutcome::Accepted { ids: vec![] });
    let [seen] = provider.seen().try_into().unwrap();
    assert_eq!(seen.method, "POST");
    assert_eq!(seen.path, "/send/7");
    assert_eq!(seen.query, "kind=gsm7&of=1");
    assert_eq!(seen.content_type, "application/x-www-form-urlencoded");
    assert_eq!(seen.header("x-key"), "s3cret");
    assert_eq!(seen.header("x-ref"), "ref-7");
    // No receipts are asked for, so the place for their address is left out.
    assert_eq!(
        seen.raw,
        "from=12345&left=90&msg=a%26b%3Dc+%C3%A9%2Bd&to=447700900123"
    );
}

/// Whatever a text holds, it stays in its place.
#[tokio::test]
async fn no_text_breaks_out_of_json() {
    let provider = Provider::start();
    let block = format!(
        "[gateway.out]\nurl = \"http://{}/send\"\nauth = \"bearer\"\n\
         json = '{{\"a\":[{{\"to\":\"{{to}}\",\"b\":{{\"t\":\"<{{text}}>\",\"n\":1}}}}]}}'\n\
         id = \"json:/messages/0/id\"\n",
        provider.address
    );
    let gateway = opened(&block).gateway;
    provider.answers((200, vec![], r#"{"messages":[{"id":"m-9"}]}"#));
    let outcome = gateway.send(&outgoing("\"},{\\ {to}\n")).await;
    assert_eq!(
        outcome,
        SendOutcome::Accepted {
            ids: vec!["m-9".into()]
        }
    );
    let [seen] = provider.seen().try_into().unwrap();
    assert_eq!(seen.authorization, "Bearer s3cret");
    let expected = serde_json::json!({"a": [{"to": "+447700900123",
        "b": {"t": "<\"},{\\ {to}\n>", "n": 1}}]});
    assert_eq!(seen.body, expected);
}

/// The preset of the open interface says the same as the kind of its own.
#[tokio::test]
async fn the_oneapi_preset_sends_what_the_kind_sends() {
    let provider = Provider::start();
    let keys = "auth = \"basic\"\nuser = \"bot\"\nsender = \"12345\"\n";
    let address = provider.address;
    let template = opened(&format!(
        "preset = \"oneapi\"\n[gateway.out]\nurl = \"http://{address}/outbound/tel%3A12345/requests\"\n\
         receipt_url = \"http://127.0.0.1/r\"\n{keys}[gateway.in]\nverify = \"bearer\"\n"
    ));
    let kind = format!(
        "[gateway.out]\nbase_url = \"http://{address}\"\nnotify_url = \"http://127.0.0.1/r\"\n{keys}"
    );
    let text = format!(
        "[store]\nfolder = \"s\"\n[web]\nlisten = \"127.0.0.1:8470\"\n\
         [line]\nname = \"l\"\nown_number = \"12345\"\ncountry = \"GB\"\nfallback_zone = \"UTC\"\n\
         [[gateway]]\nname = \"box\"\nkind = \"oneapi\"\n{kind}"
    );
    let config = Config::parse(&text, Path::new("")).unwrap();
    let environment = |_: &str| Some("s3cret".to_owned());
    let clock = Clock::Fixed(FixedClock::at(at(NOW)));
    let native = config.open_gateways(&environment, &clock).unwrap();
    for gateway in [&template.gateway, &native[0].gateway] {
        let location = (
            "Location",
            "http://127.0.0.1/outbound/tel%3A12345/requests/r-1",
        );
        provider.answers((201, vec![location], ""));
        let outcome = gateway.send(&outgoing("weed B")).await;
        assert_eq!(
            outcome,
            SendOutcome::Accepted {
                ids: vec!["r-1".into()]
            }
        );
        provider.answers((
            400,
            vec![],
            r#"{"requestError":{"serviceException":{"messageId":"SVC0004"}}}"#,
        ));
        let outcome = gateway.send(&outgoing("weed B")).await;
        let SendOutcome::Refused { code, .. } = outcome else {
            panic!("{outcome:?}")
        };
        assert_eq!(code.as_deref(), Some("SVC0004"));
    }
    let mut seen = provider.seen();
    for one in &mut seen {
        // The kind of its own adds a mark of what is sent to whom.
        let correlator = &mut one.body["outboundSMSMessageRequest"]["clientCorrelator"];
        let bare = correlator
            .as_str()
            .unwrap()
            .split('-')
            .next()
            .unwrap()
            .to_owned();
        *correlator = bare.into();
    }
    assert_eq!(seen[0].body, seen[2].body);
    assert_eq!(
        (&seen[0].path, &seen[0].authorization),
        (&seen[2].path, &seen[2].authorization)
    );
}

#[tokio::test]
async fn answers_mean_what_was_set_and_else_what_is_usual() {
    let provider = Provider::start();
    let block = format!(
        "[gateway.out]\nurl = \"http://{}/send\"\nauth = \"none\"\nquery = {{ t = \"{{text}}\", n = \"{{to}}\" }}\n\
         accepted = {{ status = [200], body = \"^OK\" }}\nwait = {{ body = \"later\" }}\n\
         refused = {{ status = [200], body = \"barred\" }}\n",
        provider.address
    );
    let gateway = opened(&block).gateway;
    let is_wait = |outcome: &SendOutcome| {
        matches!(
            outcome,
            SendOutcome::Wait {
                whose: Whose::Gateway | Whose::SetUp,
                ..
            }
        )
    };
    for (status, body, fits) in [
        (
            200,
            "OK",
            (|o: &SendOutcome| matches!(o, SendOutcome::Accepted { .. })) as fn(&_) -> bool,
        ),
        (200, "barred", |o| matches!(o, SendOutcome::Refused { .. })),
        (400, "what", |o| matches!(o, SendOutcome::Refused { .. })),
        (200, "hm", |o| matches!(o, SendOutcome::Unknown { .. })),
        (500, "", |o| matches!(o, SendOutcome::Unknown { .. })),
    ] {
        provider.answers((status, vec![], body));
        let outcome = gateway.send(&outgoing("x")).await;
        assert!(fits(&outcome), "{status} {body}: {outcome:?}");
    }
    for (status, body) in [(200, "later"), (429, ""), (401, ""), (302, "")] {
        provider.answers((status, vec![], body));
        let outcome = gateway.send(&outgoing("x")).await;
        assert!(is_wait(&outcome), "{status} {body}: {outcome:?}");
    }
}

/// The real server with one gateway, and what it took.
struct Service {
    url: String,
    taker: Arc<Taker>,
    _stop: tokio::sync::oneshot::Sender<()>,
}

fn serve(block: &str) -> Service {
    let door = opened(block).door.unwrap();
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let url = format!("http://{}", listener.local_addr().unwrap());
    let settings = WebSettings {
        doors: vec![door],
        workers: 1,
        clock: Clock::Fixed(FixedClock::at(at(NOW))),
    };
    let (stop, stopped) = tokio::sync::oneshot::channel::<()>();
    let taker = Taker::new(0);
    let shutdown = async {
        let _ = stopped.await;
    };
    tokio::spawn(web::serve(listener, taker.clone(), settings, shutdown));
    Service {
        url,
        taker,
        _stop: stop,
    }
}

#[tokio::test]
async fn a_form_is_taken_and_its_code_is_looked_at() {
    let service = serve(
        "[gateway.in]\nverify = \"hmac\"\nfrom = \"phone\"\ntext = \"words\"\nid = \"mark\"\n\
         time = \"at\"\n[gateway.in.hmac]\nheader = \"X-Code\"\nprefix = \"sha256=\"\n\
         [gateway.receipts]\nid = \"id\"\nstate = \"status\"\n\
         states = { delivered = [\"ok\"], failed = [\"bad\"] }\n",
    );
    let post = async |path: &str, body: &'static str, key: &str| {
        let code: String = hmac(key, body);
        let url = format!("{}{path}", service.url);
        let request = client()
            .post(url)
            .header("X-Code", format!("sha256={code}"));
        let request = request.header("content-type", "application/x-www-form-urlencoded");
        request.body(body).send().await.unwrap().status().as_u16()
    };
    let text = "phone=%2B447700900123&words=dead+8+caf%C3%A9&mark=m-1&at=1699999990";
    assert_eq!(post("/sms/in/box", text, "other").await, 401);
    assert_eq!(post("/sms/in/box", text, "s3cret").await, 204);
    assert_eq!(post("/sms/in/box", "words=x", "s3cret").await, 400);
    assert_eq!(
        post("/sms/receipts/box", "id=m-2&status=OK", "s3cret").await,
        204
    );
    assert_eq!(
        post("/sms/receipts/box", "id=m-3&status=new+word", "s3cret").await,
        204
    );
    let [text] = service.taker.texts().try_into().unwrap();
    assert_eq!(
        (text.from.as_str(), text.text.as_str()),
        ("+447700900123", "dead 8 café")
    );
    assert_eq!(text.gateway_id.as_deref(), Some("m-1"));
    assert_eq!(text.sent_at, Some(at(1_699_999_990)));
    let receipt = |id: &str, delivery, code: Option<&str>| Receipt {
        gateway: "box".into(),
        about: About::Theirs(id.into()),
        delivery,
        code: code.map(str::to_owned),
    };
    assert_eq!(
        service.taker.receipts(),
        [
            receipt("m-2", Delivery::Delivered, Some("OK")),
            receipt("m-3", Delivery::Waiting, None)
        ]
    );
}

fn hmac(key: &str, body: &str) -> String {
    let mac = hmac_sha256::HMAC::mac(body.as_bytes(), key.as_bytes());
    mac.iter().map(|byte| format!("{byte:02x}")).collect()
}

#[tokio::test]
async fn json_lists_and_the_query_of_a_get_are_taken() {
    let service = serve(
        "[gateway.in]\nverify = \"query:key\"\nbody = \"json\"\nitems = \"/results\"\n\
         from = \"/sender/number\"\ntext = \"text\"\nto = \"json:/to\"\n\
         [gateway.receipts]\nbody = \"query\"\nours = \"ref\"\nstate = \"s\"\n\
         states = { delivered = [\"1\"] }\n",
    );
    let body = r#"{"to":12345,"results":[{"sender":{"number":"447700900123"},"text":"one"},
                   {"sender":{"number":447700900124},"text":""}]}"#;
    let post = async |query: &str| {
        let url = format!("{}/sms/in/box{query}", service.url);
        client()
            .post(url)
            .body(body)
            .send()
            .await
            .unwrap()
            .status()
            .as_u16()
    };
    assert_eq!(post("").await, 401);
    assert_eq!(post("?key=wrong").await, 401);
    assert_eq!(post("?key=s3cret").await, 204);
    let texts = service.taker.texts();
    let said: Vec<_> = texts
        .iter()
        .map(|one| (one.from.as_str(), one.to.as_str(), one.text.as_str()))
        .collect();
    assert_eq!(
        said,
        [
            ("447700900123", "12345", "one"),
            ("447700900124", "12345", "")
        ]
    );
    let get = async |path: &str| {
        let url = format!("{}{path}", service.url);
        client().get(url).send().await.unwrap().status().as_u16()
    };
    assert_eq!(get("/sms/receipts/box?key=s3cret&ref=7&s=1").await, 204);
    assert_eq!(get("/sms/receipts/box?key=s3cret&ref=seven&s=1").await, 400);
    assert_eq!(get("/sms/receipts/other?key=s3cret&ref=7&s=1").await, 405);
    let [receipt] = service.taker.receipts().try_into().unwrap();
    assert_eq!(
        (receipt.about, receipt.delivery),
        (About::Ours(MessageId(7)), Delivery::Delivered)
    );
}

/// Refused, a notification comes again for ever, and what is good in it never comes in.
#[tokio::test]
async fn one_bad_item_does_not_keep_the_others_out() {
    let service = serve(
        "[gateway.in]\nverify = \"bearer\"\nbody = \"json\"\nitems = \"/list\"\n\
         from = \"from\"\ntext = \"text\"\n\
         [gateway.receipts]\nbody = \"json\"\nitems = \"/list\"\nours = \"ref\"\nstate = \"s\"\n\
         states = { delivered = [\"1\"] }\n",
    );
    let post = async |path: &str, body: &'static str| {
        let request = client().post(format!("{}{path}", service.url));
        let request = request.bearer_auth("s3cret").body(body);
        request.send().await.unwrap().status().as_u16()
    };
    let texts = r#"{"list":[{"text":"nobody"},{"from":"+447700900123","text":"half \ud83d"},
        {"from":"+447700900124","text":{"a":1}},{"from":"+447700900125","text":"last"}]}"#;
    assert_eq!(post("/sms/in/box", texts).await, 204);
    let said: Vec<String> = (service.taker.texts().into_iter())
        .map(|one| one.text)
        .collect();
    assert_eq!(said, ["half \u{fffd}", "last"]);
    let receipts = r#"{"list":[{"ref":"seven","s":"1"},{"ref":7,"s":"1"}]}"#;
    assert_eq!(post("/sms/receipts/box", receipts).await, 204);
    assert_eq!(service.taker.receipts().len(), 1);
    // Where nothing is good, the sender is told what is wrong.
    let none = r#"{"list":[{"text":"nobody"}]}"#;
    assert_eq!(post("/sms/in/box", none).await, 400);
    assert_eq!(service.taker.texts().len(), 2);
}

#[tokio::test]
async fn only_from_the_networks_that_were_set() {
    let block = |network: &str| {
        format!(
            "[gateway.in]\nverify = \"networks\"\nnetworks = [\"{network}\"]\nbody = \"text\"\n\
         from = \"query:from\"\ntext = \"body\"\n"
        )
    };
    for (network, status) in [("127.0.0.0/8", 204), ("192.0.2.0/24", 403)] {
        let service = serve(&block(network));
        let url = format!("{}/sms/in/box?from=%2B447700900123", service.url);
        let request = client()
            .post(url)
            .header("content-type", "text/plain; charset=utf-16be");
        let answer = request
            .body(vec![0x00, 0x61, 0x0e, 0x2d])
            .send()
            .await
            .unwrap();
        assert_eq!(answer.status(), status);
        let texts = service.taker.texts();
        assert_eq!(
            texts
                .iter()
                .map(|one| one.text.as_str())
                .collect::<Vec<_>>(),
            if status == 204 { vec!["aอ"] } else { vec![] }
        );
    }
}
