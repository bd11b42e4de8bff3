//! A gateway that is called over HTTP: its name there, and how whoever calls proves itself.
//!
//! Only the data; `web` looks at requests.

use crate::{service::signature::SignatureKeys, words::secret::Secret};

/// Where a gateway brings texts and receipts.
#[derive(Clone, Debug)]
pub struct Door {
    /// The gateway, which is the last part of the path.
    pub gateway: String,
    /// How it proves that it is ours.
    pub auth: Auth,
}

/// How a gateway proves that it is ours.
#[derive(Clone, Debug)]
pub enum Auth {
    /// A user and a password (RFC 7617).
    Basic {
        /// The user.
        user: String,
        /// The password.
        password: Secret,
    },
    /// A token (RFC 6750).
    Bearer {
        /// The token.
        token: Secret,
    },
    /// A signature over each request (Standard Webhooks).
    Signature {
        /// The keys.
        keys: SignatureKeys,
    },
}
