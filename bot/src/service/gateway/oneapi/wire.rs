//! What is written to the provider and read back: addresses and JSON shapes.

use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, percent_decode_str, utf8_percent_encode};
use serde::{Deserialize, Serialize};
use url::Url;

use super::OneApiSettings;
use crate::words::{bounded, limits, traffic::Outgoing};

/// The address that texts are posted to, if the base can have anything after it.
pub(super) fn requests_url(settings: &OneApiSettings) -> Option<Url> {
    if settings.base_url.cannot_be_a_base() {
        return None;
    }
    let base = settings.base_url.as_str().trim_end_matches('/');
    let sender = with_scheme(&settings.sender);
    let sender = utf8_percent_encode(&sender, ALL_BUT_UNRESERVED);
    Url::parse(&format!("{base}/outbound/{sender}/requests")).ok()
}

/// The body of the request for a text.
pub(super) fn body_of<'a>(text: &'a Outgoing, settings: &'a OneApiSettings) -> Envelope<'a> {
    Envelope {
        request: SendRequest {
            address: [with_scheme(&text.to)],
            sender_address: with_scheme(&settings.sender),
            message: TextMessage {
                message: &text.text,
            },
            client_correlator: correlator(text),
            receipt_request: settings.notify_url.as_ref().map(|url| ReceiptRequest {
                notify_url: url.as_str(),
                callback_data: text.id.to_string(),
            }),
        },
    }
}

/// The address of the new resource, from the body of an answer.
pub(super) fn resource_url(body: &[u8]) -> Option<String> {
    let created: Created = serde_json::from_slice(body).ok()?;
    Some(created.resource_reference.resource_url)
}

/// The code of a refusal, such as `SVC0004` (no valid address). The rest of the body may quote the
/// number or the text, so it is left where it is.
pub(super) fn refusal_code(body: &[u8]) -> Option<String> {
    let refusal: Refusal = serde_json::from_slice(body).ok()?;
    let error = refusal.request_error;
    let code = error
        .service_exception
        .or(error.policy_exception)?
        .message_id;
    bounded::word(&code, limits::REFUSAL_CODE_BYTES_MAX)
}

/// The last part of a resource's address, decoded: the provider's id of a text.
pub(crate) fn last_segment(address: &str) -> Option<String> {
    let path = address.split(['?', '#']).next()?;
    let segment = path.trim_end_matches('/').rsplit('/').next()?;
    let id = percent_decode_str(segment).decode_utf8().ok()?;
    (!id.is_empty() && id.len() <= limits::GATEWAY_ID_BYTES_MAX).then(|| id.into_owned())
}

/// Our id, and a mark of what is sent to whom. A store that was restored from an old copy may give
/// an id to another text, which must not pass for the first one.
fn correlator(text: &Outgoing) -> String {
    let mut hash = hmac_sha256::Hash::new();
    hash.update(text.to.as_bytes());
    hash.update([0]);
    hash.update(text.text.as_bytes());
    let [a, b, c, d, ..] = hash.finalize();
    format!("{}-{:08x}", text.id, u32::from_be_bytes([a, b, c, d]))
}

/// RFC 3966: a number is written as `tel:+…`. An address that has a scheme keeps it.
fn with_scheme(address: &str) -> String {
    if address.contains(':') {
        address.to_owned()
    } else {
        format!("tel:{address}")
    }
}

/// RFC 3986, 2.3: everything but the unreserved characters is encoded in a path segment.
const ALL_BUT_UNRESERVED: &AsciiSet = &NON_ALPHANUMERIC
    .remove(b'-')
    .remove(b'.')
    .remove(b'_')
    .remove(b'~');

#[derive(Serialize)]
pub(super) struct Envelope<'a> {
    #[serde(rename = "outboundSMSMessageRequest")]
    request: SendRequest<'a>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct SendRequest<'a> {
    address: [String; 1],
    sender_address: String,
    #[serde(rename = "outboundSMSTextMessage")]
    message: TextMessage<'a>,
    client_correlator: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    receipt_request: Option<ReceiptRequest<'a>>,
}

#[derive(Serialize)]
struct TextMessage<'a> {
    message: &'a str,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct ReceiptRequest<'a> {
    #[serde(rename = "notifyURL")]
    notify_url: &'a str,
    callback_data: String,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Created {
    resource_reference: ResourceReference,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Refusal {
    request_error: RequestError,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct RequestError {
    service_exception: Option<Exception>,
    policy_exception: Option<Exception>,
}

#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Exception {
    message_id: String,
}

#[derive(Deserialize)]
struct ResourceReference {
    #[serde(rename = "resourceURL")]
    resource_url: String,
}

#[cfg(test)]
mod tests {
    use budwood_scheduler::MessageId;

    use super::*;

    #[test]
    fn the_correlator_is_the_same_for_the_same_text_only() {
        let text = |id, to: &str, text: &str| Outgoing {
            id: MessageId(id),
            to: to.into(),
            text: text.into(),
            expires_at: chrono::DateTime::UNIX_EPOCH,
        };
        let first = correlator(&text(7, "+447700900123", "Weed B"));
        assert!(first.starts_with("7-"), "{first}");
        assert_eq!(first, correlator(&text(7, "+447700900123", "Weed B")));
        for other in [
            text(8, "+447700900123", "Weed B"),
            text(7, "+447700900124", "Weed B"),
            text(7, "+447700900123", "Weed A"),
        ] {
            assert_ne!(first, correlator(&other));
        }
    }

    // The codes are those of the OMA RESTful common definitions (from memory).
    #[test]
    fn a_refusal_gives_its_code_and_no_more() {
        for (body, code) in [
            (
                r#"{"requestError":{"serviceException":{"messageId":"SVC0004",
                "text":"No valid addresses: %1","variables":["+447700900123"]}}}"#,
                Some("SVC0004"),
            ),
            (
                r#"{"requestError":{"policyException":{"messageId":"POL0001"}}}"#,
                Some("POL0001"),
            ),
            (
                r#"{"requestError":{"serviceException":{"messageId":"+447700900123"}}}"#,
                None,
            ),
            (r#"{"requestError":{}}"#, None),
            ("<html>", None),
        ] {
            assert_eq!(refusal_code(body.as_bytes()).as_deref(), code, "{body}");
        }
    }

    #[test]
    fn the_id_is_the_end_of_the_address() {
        for (address, id) in [
            (
                "https://sms.example/v1/outbound/tel%3A12345/requests/abc123",
                Some("abc123"),
            ),
            ("/v1/outbound/tel%3A12345/requests/abc%2F1/", Some("abc/1")),
            ("https://sms.example/requests/abc?x=1", Some("abc")),
            ("", None),
            ("///", None),
            ("/requests/%ff", None),
        ] {
            assert_eq!(last_segment(address).as_deref(), id, "{address}");
        }
        assert_eq!(
            last_segment(&"x".repeat(limits::GATEWAY_ID_BYTES_MAX + 1)),
            None
        );
    }
}
