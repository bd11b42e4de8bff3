//! Any bytes as a request by the templates that ship: texts, receipts or a refusal, within the limits.
#![no_main]

#[path = "../laws.rs"]
mod laws;

use std::{path::Path, sync::OnceLock};

use budwood::service::{call::Call, config::Config, door::Takes, port::Arrival};
use libfuzzer_sys::fuzz_target;

/// A gateway by each template.
const CONFIG: &str = r#"
[store]
folder = "store"
[web]
listen = "127.0.0.1:8470"
[[gateway]]
name = "kannel"
kind = "template"
preset = "kannel"
[gateway.out]
url = "http://127.0.0.1:13013/"
sender = "12345"
user = "budwood"
[gateway.in]
verify = "bearer"
[[gateway]]
name = "oneapi"
kind = "template"
preset = "oneapi"
[gateway.out]
url = "http://127.0.0.1:13013/"
sender = "12345"
user = "budwood"
[gateway.in]
verify = "bearer"
[line]
name = "line"
own_number = "+447700900000"
country = "GB"
fallback_zone = "Europe/London"
"#;

static TEMPLATES: OnceLock<Vec<Takes>> = OnceLock::new();

fuzz_target!(|bytes: &[u8]| {
    let templates = TEMPLATES.get_or_init(|| {
        let config = Config::parse(CONFIG, Path::new("/")).expect("a configuration");
        let gateways = config.gateways.iter();
        let takes: Vec<Takes> = gateways.filter_map(|one| one.plan.takes()).collect();
        assert_eq!(takes.len(), 2);
        takes
    });
    let (_, call) = Call::of_file(bytes);
    for takes in templates {
        let Takes::Template(inward) = takes else {
            panic!("a template");
        };
        match inward.texts(&call, None) {
            Ok(texts) => texts.items.iter().for_each(laws::check_text),
            Err(why) => assert!(!why.is_empty()),
        }
        match inward.receipts(&call) {
            Ok(receipts) => {
                let receipts = receipts.items.into_iter().map(Arrival::Receipt);
                receipts.for_each(|receipt| laws::check(&receipt));
            }
            Err(why) => assert!(!why.is_empty()),
        }
    }
});
