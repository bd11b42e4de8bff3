//! Takes the body of a request in, bounded in size and time, and proves who sent it.
//!
//! What is not read of a refused body must end the connection. The server reads a body without end
//! once nobody holds it any more, so the answer holds it ([`Incoming::answered`]).

use std::{
    future::poll_fn,
    pin::Pin,
    task::{Context, Poll},
};

use actix_web::{
    HttpRequest, HttpResponse,
    body::{BodySize, BodyStream, BoxBody, MessageBody},
    http::header::{CONTENT_ENCODING, CONTENT_LENGTH, CONTENT_TYPE},
    web::{Bytes, BytesMut, Payload},
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
    incoming: &mut Incoming,
    door: &Door,
    clock: &Clock,
) -> Result<String, Problem> {
    auth::check_head(door, request)?;
    check_type(request)?;
    let bytes = proved(request, incoming, door, clock).await?;
    String::from_utf8(bytes.into()).map_err(|error| Problem::NotUtf8 {
        at: error.utf8_error().valid_up_to(),
    })
}

/// The whole request, once it is proved who sent it. Of what type its body is, is for the gateway.
pub(super) async fn call(
    request: &HttpRequest,
    incoming: &mut Incoming,
    door: &Door,
    clock: &Clock,
) -> Result<Call, Problem> {
    auth::check_head(door, request)?;
    check_coding(request)?;
    let body = proved(request, incoming, door, clock).await?;
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
    incoming: &mut Incoming,
    door: &Door,
    clock: &Clock,
) -> Result<Bytes, Problem> {
    let bytes = read_bytes(request, incoming).await?;
    door.auth
        .check_body(request.headers(), &bytes, clock.now())?;
    Ok(bytes)
}

async fn read_bytes(request: &HttpRequest, incoming: &mut Incoming) -> Result<Bytes, Problem> {
    // A length that is told spares reading what would be refused anyway.
    if let Some(length) = header(request, CONTENT_LENGTH)
        && length
            .parse::<usize>()
            .is_ok_and(|length| length > limits::BODY_BYTES_MAX)
    {
        return Err(Problem::TooLarge);
    }
    match timeout(limits::REQUEST_BODY_TIMEOUT, incoming.whole()).await {
        Ok(read) => read,
        Err(_) => Err(Problem::TooSlow),
    }
}

/// A body on its way.
pub(super) struct Incoming(Pin<Box<BodyStream<Payload>>>);

impl Incoming {
    pub(super) fn new(payload: Payload) -> Self {
        Self(Box::pin(BodyStream::new(payload)))
    }

    async fn whole(&mut self) -> Result<Bytes, Problem> {
        let mut bytes = BytesMut::new();
        while let Some(part) = poll_fn(|context| self.0.as_mut().poll_next(context)).await {
            let part = part.map_err(|_| Problem::Broken)?;
            if bytes.len() + part.len() > limits::BODY_BYTES_MAX {
                return Err(Problem::TooLarge);
            }
            bytes.extend_from_slice(&part);
        }
        Ok(bytes.freeze())
    }

    /// An answer to it. Where some of it was not read, the connection ends behind the answer.
    pub(super) fn answered(self, response: HttpResponse) -> HttpResponse {
        let holding = |answer| Holding {
            answer,
            _unread: self,
        };
        response.map_body(|_, answer| holding(answer).boxed())
    }
}

/// The body of an answer, with what it answers.
struct Holding {
    answer: BoxBody,
    _unread: Incoming,
}

impl MessageBody for Holding {
    type Error = Box<dyn std::error::Error>;

    fn size(&self) -> BodySize {
        self.answer.size()
    }

    fn poll_next(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
    ) -> Poll<Option<Result<Bytes, Self::Error>>> {
        Pin::new(&mut self.answer).poll_next(context)
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
