//! What is wrong with a request, as problem details (RFC 9457).
//!
//! The reader is the person who sets up a gateway: each text says what was found and what to send
//! instead.

use actix_web::{
    HttpResponse, ResponseError,
    http::{
        StatusCode,
        header::{ALLOW, RETRY_AFTER, WWW_AUTHENTICATE},
    },
};
use problem_details::{JsonProblemDetails, ProblemDetails};

use crate::{service::port::Refused, words::limits};

/// What is wrong with a request.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub(crate) enum Problem {
    #[error("the body is not UTF-8; send JSON in UTF-8 (byte {at} is wrong)")]
    NotUtf8 { at: usize },
    #[error("the body is not JSON: {why}")]
    NotJson { why: String },
    #[error("the body is JSON, but not {expected}: {why}")]
    NotOurShape { expected: &'static str, why: String },
    #[error("the body could not be read to its end; send the request again")]
    Broken,
    #[error("{why}")]
    Unauthorized {
        challenge: &'static str,
        why: &'static str,
    },
    #[error("this gateway may not be called from this address; see `networks` in its block")]
    WrongNetwork,
    #[error("the request is not as the gateway was set up: {0}")]
    NotAsSet(String),
    #[error(
        "nothing is at this path; texts go to POST /sms/in/NAME, receipts to POST \
         /sms/receipts/NAME, with the name of the gateway in the configuration"
    )]
    NotFound,
    #[error("this path takes only {allow}")]
    MethodNotAllowed { allow: &'static str },
    #[error("the body took too long; send it within {} seconds", limits::REQUEST_BODY_TIMEOUT.as_secs())]
    TooSlow,
    #[error(
        "the body is longer than {} bytes; send fewer items at once",
        limits::BODY_BYTES_MAX
    )]
    TooLarge,
    #[error("{why}")]
    WrongType { why: &'static str },
    #[error("{0}, so not all of it was stored; send it again later")]
    Refused(Refused),
}

impl ResponseError for Problem {
    fn status_code(&self) -> StatusCode {
        match self {
            Self::NotUtf8 { .. }
            | Self::NotJson { .. }
            | Self::NotOurShape { .. }
            | Self::NotAsSet(_)
            | Self::Broken => StatusCode::BAD_REQUEST,
            Self::WrongNetwork => StatusCode::FORBIDDEN,
            Self::Unauthorized { .. } => StatusCode::UNAUTHORIZED,
            Self::NotFound => StatusCode::NOT_FOUND,
            Self::MethodNotAllowed { .. } => StatusCode::METHOD_NOT_ALLOWED,
            Self::TooSlow => StatusCode::REQUEST_TIMEOUT,
            Self::TooLarge => StatusCode::PAYLOAD_TOO_LARGE,
            Self::WrongType { .. } => StatusCode::UNSUPPORTED_MEDIA_TYPE,
            Self::Refused(_) => StatusCode::SERVICE_UNAVAILABLE,
        }
    }

    fn error_response(&self) -> HttpResponse {
        let status = self.status_code();
        let mut response = HttpResponse::build(status);
        response.content_type(JsonProblemDetails::<()>::CONTENT_TYPE);
        match self {
            Self::Unauthorized { challenge, .. } => {
                response.insert_header((WWW_AUTHENTICATE, *challenge));
            }
            Self::MethodNotAllowed { allow } => {
                response.insert_header((ALLOW, *allow));
            }
            Self::Refused(refused) => {
                response.insert_header((RETRY_AFTER, retry_after_secs(*refused)));
            }
            Self::NotUtf8 { .. }
            | Self::NotJson { .. }
            | Self::NotOurShape { .. }
            | Self::NotAsSet(_)
            | Self::WrongNetwork
            | Self::Broken
            | Self::NotFound
            | Self::TooSlow
            | Self::TooLarge
            | Self::WrongType { .. } => {}
        }
        response.json(self.details(status))
    }
}

impl Problem {
    fn details(&self, status: StatusCode) -> ProblemDetails {
        // The crate counts in another version of the `http` crate than actix does.
        let details = match status.as_u16().try_into() {
            Ok(status) => ProblemDetails::from_status_code(status),
            Err(_) => ProblemDetails::new(),
        };
        details.with_detail(self.to_string())
    }
}

const fn retry_after_secs(refused: Refused) -> u64 {
    match refused {
        Refused::Busy => limits::BUSY_RETRY_AFTER_SECS,
        Refused::Unhealthy => limits::UNHEALTHY_RETRY_AFTER_SECS,
    }
}
