//! Reads the notifications of the open HTTP interface for text messages: JSON in, plain values out.
//!
//! The shapes are those of the GSMA OneAPI (OMA RESTful Network API for Short Messaging):
//! `inboundSMSMessageNotification` and `deliveryInfoNotification`. Senders differ in small things,
//! so one item may stand where a list is expected, `tel:` may be there or not, numbers may stand
//! without quotation marks, half a letter (a lone surrogate) is taken for one that is not known,
//! unknown fields are passed over. Deliberately absent: whether a number is a number; that is the
//! engine's.

mod items;
mod word;

use budwood_scheduler::MessageId;
use chrono::{DateTime, Utc};
use serde::{Deserialize, de::DeserializeOwned};

use self::{
    items::Items,
    word::{maybe_word, word_or_number},
};
use super::problem::Problem;
use crate::{
    service::{
        call::bare_address,
        gateway::oneapi::wire,
        mended::mended,
        taken::{Taken, good},
    },
    words::{
        bounded, limits,
        traffic::{About, Delivery, Inbound, Receipt},
    },
};

/// The texts of a notification, in order. Those without an id of their own get one from the id of
/// the request, which stays the same when it is sent again.
pub(super) fn texts(
    body: &str,
    gateway: &str,
    request_id: Option<&str>,
) -> Result<Taken<Inbound>, Problem> {
    const SHAPE: &str = "an inboundSMSMessageNotification";
    let found: TextNotification = parse(body, SHAPE)?;
    let found = found.inbound_sms_message_notification.inbound_sms_message;
    // The id of an item is its place in the notification, whatever becomes of those before it.
    let read = found.0.into_iter().enumerate().map(|(index, text)| {
        let fallback_id = request_id.map(|id| format!("{id}/{index}"));
        inbound(text?, gateway, fallback_id)
    });
    good(read).map_err(|why| not_our_shape(SHAPE, why))
}

/// The receipts of a notification, in order.
pub(super) fn receipts(body: &str, gateway: &str) -> Result<Taken<Receipt>, Problem> {
    const SHAPE: &str = "a deliveryInfoNotification";
    let found: ReceiptNotification = parse(body, SHAPE)?;
    let found = found.delivery_info_notification;
    let ours = found
        .callback_data
        .as_deref()
        .and_then(|id| id.parse().ok());
    let links = found.link.0.iter().flatten();
    let theirs = || links.clone().find_map(request_of_link);
    let about = ours
        .map(|id| About::Ours(MessageId(id)))
        .or_else(|| theirs().map(About::Theirs));
    let Some(about) = about else {
        let why = "callbackData is not the one that was sent with the text";
        return Err(not_our_shape(SHAPE, why.into()));
    };
    let read = found.delivery_info.0.into_iter().map(|info| {
        let status = info?.delivery_status;
        Ok(Receipt {
            gateway: gateway.to_owned(),
            about: about.clone(),
            delivery: delivery(&status),
            code: bounded::word(&status, limits::STATUS_BYTES_MAX),
        })
    });
    good(read).map_err(|why| not_our_shape(SHAPE, why))
}

fn inbound(text: Text, gateway: &str, fallback_id: Option<String>) -> Result<Inbound, String> {
    let gateway_id = text.message_id.or(fallback_id);
    if gateway_id
        .as_ref()
        .is_some_and(|id| id.len() > limits::GATEWAY_ID_BYTES_MAX)
    {
        let max = limits::GATEWAY_ID_BYTES_MAX;
        return Err(format!("messageId is longer than {max} bytes"));
    }
    Ok(Inbound {
        gateway: gateway.to_owned(),
        gateway_id,
        from: address(&text.sender_address, "senderAddress")?,
        to: address(
            &text.destination_address.unwrap_or_default(),
            "destinationAddress",
        )?,
        text: bounded::text(text.message),
        sent_at: text.date_time.as_deref().and_then(instant),
    })
}

/// An address without `tel:`.
fn address(found: &str, field: &str) -> Result<String, String> {
    let bare = bare_address(found, field)?;
    if bare.is_empty() && field == "senderAddress" {
        return Err(format!("{field} is empty"));
    }
    Ok(bare.to_owned())
}

/// A time without a zone could be any of 26 hours, so it counts as not told.
fn instant(text: &str) -> Option<DateTime<Utc>> {
    Some(DateTime::parse_from_rfc3339(text).ok()?.to_utc())
}

fn request_of_link(link: &Link) -> Option<String> {
    (link.rel == "OutboundSMSMessageRequest")
        .then(|| wire::last_segment(&link.href))
        .flatten()
}

fn delivery(status: &str) -> Delivery {
    match status {
        "DeliveredToTerminal" => Delivery::Delivered,
        "DeliveryImpossible" => Delivery::Failed,
        "DeliveryUncertain" | "DeliveryNotificationNotSupported" => Delivery::Uncertain,
        // "MessageWaiting" and "DeliveredToNetwork" say that it is under way; so does, for all we
        // can know, a word that the standard does not have.
        _ => Delivery::Waiting,
    }
}

fn parse<T: DeserializeOwned>(body: &str, shape: &'static str) -> Result<T, Problem> {
    serde_json::from_str(&mended(body)).map_err(|error| match error.classify() {
        serde_json::error::Category::Data => not_our_shape(shape, error.to_string()),
        serde_json::error::Category::Io
        | serde_json::error::Category::Syntax
        | serde_json::error::Category::Eof => Problem::NotJson {
            why: error.to_string(),
        },
    })
}

const fn not_our_shape(expected: &'static str, why: String) -> Problem {
    Problem::NotOurShape { expected, why }
}

#[derive(Deserialize)]
struct TextNotification {
    #[serde(rename = "inboundSMSMessageNotification")]
    inbound_sms_message_notification: Texts,
}

#[derive(Deserialize)]
struct Texts {
    #[serde(rename = "inboundSMSMessage")]
    inbound_sms_message: Items<Text>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Text {
    #[serde(default, deserialize_with = "maybe_word")]
    date_time: Option<String>,
    #[serde(default, deserialize_with = "maybe_word")]
    destination_address: Option<String>,
    #[serde(default, deserialize_with = "maybe_word")]
    message_id: Option<String>,
    #[serde(deserialize_with = "word_or_number")]
    message: String,
    #[serde(deserialize_with = "word_or_number")]
    sender_address: String,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct ReceiptNotification {
    delivery_info_notification: Receipts,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Receipts {
    #[serde(default, deserialize_with = "maybe_word")]
    callback_data: Option<String>,
    delivery_info: Items<Info>,
    #[serde(default)]
    link: Items<Link>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Info {
    delivery_status: String,
}

#[derive(Deserialize)]
struct Link {
    rel: String,
    href: String,
}

#[cfg(test)]
mod tests;
