//! Takes the body of a request in, bounded in size and time, and proves who sent it.

use actix_web::{
    HttpRequest,
    http::header::{CONTENT_ENCODING, CONTENT_LENGTH, CONTENT_TYPE},
    web::{Bytes, Payload},
};
use tokio::time::timeout;

use super::{auth, problem::Problem};
use crate::{
    service::{
        call::{Call, pairs},
        clock::Clock,
        door::Door,
    },
    words::limits,
};

/// The body as text in JSON, once it is proved who sent it.
pub(super) async fn read(
    request: &HttpRequest,
    payload: Payload,
    door: &Door,
    clock: &Clock,
) -> Result<String, Problem> {
    auth::check_head(door, request)?;
    check_type(request)?;
    let bytes = proved(request, payload, door, clock).await?;
    String::from_utf8(bytes.into()).map_err(|error| Problem::NotUtf8 {
        at: error.utf8_error().valid_up_to(),
    })
}

/// The whole request, once it is proved who sent it. Of what type its body is, is for the gateway.
pub(super) async fn call(
    request: &HttpRequest,
    payload: Payload,
    door: &Door,
    clock: &Clock,
) -> Result<Call, Problem> {
    auth::check_head(door, request)?;
    check_coding(request)?;
    let body = proved(request, payload, door, clock).await?;
    let headers = request.headers().iter();
    let headers = headers.filter_map(|(name, value)| {
        Some((name.as_str().to_owned(), value.to_str().ok()?.to_owned()))
    });
    Ok(Call {
        query: pairs(request.query_string().as_bytes()),
        headers: headers.collect(),
        body: body.into(),
    })
}

async fn proved(
    request: &HttpRequest,
    payload: Payload,
    door: &Door,
    clock: &Clock,
) -> Result<Bytes, Problem> {
    let bytes = read_bytes(request, payload).await?;
    door.auth
        .check_body(request.headers(), &bytes, clock.now())?;
    Ok(bytes)
}

async fn read_bytes(request: &HttpRequest, payload: Payload) -> Result<Bytes, Problem> {
    // A length that is told spares reading what would be refused anyway.
    if let Some(length) = header(request, CONTENT_LENGTH)
        && length
            .parse::<usize>()
            .is_ok_and(|length| length > limits::BODY_BYTES_MAX)
    {
        return Err(Problem::TooLarge);
    }
    let reading = payload.to_bytes_limited(limits::BODY_BYTES_MAX);
    match timeout(limits::REQUEST_BODY_TIMEOUT, reading).await {
        Ok(Ok(Ok(bytes))) => Ok(bytes),
        Ok(Ok(Err(_))) => Err(Problem::Broken),
        Ok(Err(_)) => Err(Problem::TooLarge),
        Err(_) => Err(Problem::TooSlow),
    }
}

fn check_type(request: &HttpRequest) -> Result<(), Problem> {
    let media = header(request, CONTENT_TYPE).unwrap_or_default();
    let (essence, parameters) = media.split_once(';').unwrap_or((media, ""));
    if !essence.trim().eq_ignore_ascii_case("application/json") {
        return Err(Problem::WrongType {
            why: "send JSON, with the header Content-Type: application/json",
        });
    }
    if parameters.to_ascii_lowercase().contains("charset=") && !says_utf8(parameters) {
        return Err(Problem::WrongType {
            why: "send JSON in UTF-8; other character sets are not read",
        });
    }
    check_coding(request)
}

fn check_coding(request: &HttpRequest) -> Result<(), Problem> {
    match header(request, CONTENT_ENCODING) {
        None => Ok(()),
        Some(coding) if coding.eq_ignore_ascii_case("identity") => Ok(()),
        Some(_) => Err(Problem::WrongType {
            why: "send the body as it is, without Content-Encoding",
        }),
    }
}

fn says_utf8(parameters: &str) -> bool {
    let parameters = parameters.to_ascii_lowercase().replace('"', "");
    parameters.contains("charset=utf-8") || parameters.contains("charset=utf8")
}

fn header(request: &HttpRequest, name: actix_web::http::header::HeaderName) -> Option<&str> {
    request.headers().get(name)?.to_str().ok()
}
