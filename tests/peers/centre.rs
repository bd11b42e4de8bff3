//! A message centre of another author, on npm smpp: what it is told to do, and what it saw.

use std::{collections::BTreeMap, path::Path, process::Command};

use serde_json::{Value, json};

use crate::{
    office::{Control, Peer, Said, free_port},
    peer::command,
};

/// The centre.
pub(crate) struct Centre {
    pub(crate) port: u16,
    control: Control,
    _peer: Peer,
}

impl Centre {
    pub(crate) async fn start(folder: &Path) -> Self {
        Self::start_at(free_port(), folder, &[]).await
    }

    pub(crate) async fn start_at(port: u16, folder: &Path, more: &[&str]) -> Self {
        let control = free_port();
        let mut node: Command = command("centre.js");
        node.args(["--port", &port.to_string(), "--ctl", &control.to_string()])
            .args(more);
        let peer = Peer::start(&mut node, &folder.join("centre.log"));
        let control = Control(control);
        control.is_there().await;
        Self {
            port,
            control,
            _peer: peer,
        }
    }

    /// A text of a phone, in whatever parts and order `more` says.
    pub(crate) async fn bring(&self, from: &str, text: &str, more: Value) {
        let mut what = json!({"from": from.trim_start_matches('+'), "to": "12345", "text": text});
        if let (Some(what), Value::Object(more)) = (what.as_object_mut(), more) {
            what.extend(more);
        }
        self.control.tell("/mo", what).await;
    }

    pub(crate) async fn fault(&self, what: Value) {
        self.control.tell("/fault", what).await;
    }

    pub(crate) async fn raw(&self, hex: &str) {
        self.control.tell("/raw", json!({"hex": hex})).await;
    }

    /// Everything of one kind that it saw.
    pub(crate) async fn seen(&self, kind: &str) -> Vec<Value> {
        let log = self.control.log().await;
        let all = log.as_array().expect("a list").iter();
        all.filter(|one| one["t"] == kind).cloned().collect()
    }

    /// The texts that it was handed, each put together from its parts; those that it
    /// refused, or of which parts are missing, are left out.
    pub(crate) async fn handed(&self) -> Vec<Said> {
        let mut whole = Vec::new();
        let mut open: BTreeMap<(String, String), BTreeMap<u64, String>> = BTreeMap::new();
        let submitted = self.seen("submit_sm").await.into_iter();
        for one in submitted.filter(|one| one["refused"].is_null()) {
            let to = format!("+{}", one["to"].as_str().expect("a number"));
            let text = one["text"].as_str().unwrap_or_default().to_owned();
            let Some((reference, of, number)) = part(&one) else {
                whole.push((to, text));
                continue;
            };
            let key = (to.clone(), reference);
            let parts = open.entry(key.clone()).or_default();
            parts.insert(number, text);
            if parts.len() as u64 == of {
                let text = parts.values().cloned().collect();
                open.remove(&key);
                whole.push((to, text));
            }
        }
        whole
    }
}

/// Reference, number of parts, and which one, by the header (3GPP TS 23.040, 9.2.3.24.1) or by the
/// optional parameters (SMPP 3.4, 5.3.2.22 to 24).
fn part(submitted: &Value) -> Option<(String, u64, u64)> {
    if let Some([reference, of, number]) = submitted["sar"].as_array().map(Vec::as_slice) {
        return Some((format!("sar {reference}"), of.as_u64()?, number.as_u64()?));
    }
    let header = submitted["udh"].as_array()?.first()?.as_str()?;
    let octets: Vec<u64> = (0..header.len() / 2)
        .filter_map(|at| u64::from_str_radix(header.get(at * 2..at * 2 + 2)?, 16).ok())
        .collect();
    match octets.as_slice() {
        [0x00, 3, reference, of, number] => Some((format!("{reference}"), *of, *number)),
        [0x08, 4, high, low, of, number] => Some((format!("{high}/{low}"), *of, *number)),
        other => panic!("a header that is none of parts: {other:?}"),
    }
}
