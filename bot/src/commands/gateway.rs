//! `budwood gateway`: what an operator tries before a gateway is trusted.

use std::{fmt::Write as _, fs::File, io::Read, path::Path};

use anyhow::{Context, bail};

use crate::{
    service::{call::Call, door::Takes, setup::config, web},
    words::{
        limits,
        traffic::{About, Delivery, Inbound, Receipt},
    },
};

/// What a saved request of a gateway becomes. Nothing is stored, and who sent it is not looked at.
///
/// # Errors
///
/// When there is no such gateway, it is not called over HTTP, or the request cannot be read.
pub(super) fn try_inbound(path: &Path, name: &str, file: &Path) -> anyhow::Result<String> {
    let config = config(path)?;
    let Some(gateway) = config.gateways.iter().find(|one| one.name == name) else {
        bail!("there is no gateway {name:?} in {}", path.display());
    };
    let Some(takes) = gateway.plan.takes() else {
        bail!("gateway {name} is not called over HTTP, so there is no request to read");
    };
    let mut bytes = Vec::new();
    File::open(file)
        .and_then(|file| file.take(limits::FILE_BYTES_MAX).read_to_end(&mut bytes))
        .with_context(|| format!("cannot read {}", file.display()))?;
    page(&takes, &bytes)
}

fn page(takes: &Takes, saved: &[u8]) -> anyhow::Result<String> {
    let (path, call) = Call::of_file(saved);
    let (texts, receipts) = match takes {
        Takes::OneApi => web::items_in(&String::from_utf8_lossy(&call.body)),
        Takes::Template(inward) => (inward.texts(&call, None), inward.receipts(&call)),
    };
    // The path says what it is; without one it is whatever can be read.
    let texts = texts.map(|texts| text_lines(&texts.items) + &left_out(texts.left_out));
    let receipts =
        receipts.map(|receipts| receipt_lines(&receipts.items) + &left_out(receipts.left_out));
    let page = if path.starts_with("/sms/receipts/") {
        receipts
    } else if path.starts_with("/sms/in/") {
        texts
    } else {
        texts.or_else(|no_text| {
            let both = |no_receipt| format!("no text: {no_text}; no receipt: {no_receipt}");
            receipts.map_err(both)
        })
    };
    page.map_err(anyhow::Error::msg)
}

fn left_out(number: usize) -> String {
    match number {
        0 => String::new(),
        number => format!("left out, since they cannot be read: {number}\n"),
    }
}

fn text_lines(texts: &[Inbound]) -> String {
    let mut page = String::new();
    for text in texts {
        let id = text.gateway_id.as_deref();
        let sent_at = text.sent_at.map(|at| at.to_rfc3339());
        let lines = [
            ("a text from", text.from.as_str()),
            ("to", text.to.as_str()),
            ("says", text.text.as_str()),
            (
                "id",
                id.unwrap_or("none: the same request again is known by its words only"),
            ),
            ("sent at", sent_at.as_deref().unwrap_or("not told")),
        ];
        for (name, value) in lines {
            let _ = writeln!(page, "{name}: {value}");
        }
    }
    page
}

fn receipt_lines(receipts: &[Receipt]) -> String {
    let mut page = String::new();
    for receipt in receipts {
        let about = match &receipt.about {
            About::Ours(id) => format!("our text {id}"),
            About::Theirs(id) => format!("the text with the gateway's id {id}"),
        };
        let delivery = match receipt.delivery {
            Delivery::Delivered => "it is on the phone",
            Delivery::Failed => "it will never be on the phone",
            Delivery::Uncertain => "the network cannot say",
            Delivery::Waiting => "the network goes on trying",
        };
        let code = receipt.code.as_deref().unwrap_or("none");
        let _ = writeln!(
            page,
            "a receipt about: {about}\nsays: {delivery}\nits word: {code}"
        );
    }
    page
}
