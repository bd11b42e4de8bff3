//! A gateway that is called over HTTP: its name there, and how whoever calls proves itself.
//!
//! Only the data; `web` looks at requests.

use std::sync::Arc;

use crate::{
    service::{
        body_mac::BodyMac, gateway::template::inward::Inward, network::Network,
        signature::SignatureKeys,
    },
    words::secret::Secret,
};

/// Where a gateway brings texts and receipts.
#[derive(Clone, Debug)]
pub struct Door {
    /// The gateway, which is the last part of the path.
    pub gateway: String,
    /// How it proves that it is ours.
    pub auth: Auth,
    /// From where it may call; from anywhere if there is none.
    pub networks: Vec<Network>,
    /// How what it brings is read.
    pub takes: Takes,
}

/// How what a gateway brings is read.
#[derive(Clone, Debug)]
pub enum Takes {
    /// As the open interface has it.
    OneApi,
    /// As the configuration says.
    Template(Arc<Inward>),
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
    /// A secret in a header.
    Header {
        /// Its name, in small letters.
        name: String,
        /// What stands there.
        secret: Secret,
    },
    /// A secret in the query, for providers that can be told an address and nothing else.
    Query {
        /// The name of the value.
        name: String,
        /// What stands there.
        secret: Secret,
    },
    /// A code over the body.
    Hmac {
        /// How it is made.
        mac: BodyMac,
        /// With what key.
        key: Secret,
    },
    /// Nothing but the network that it calls from.
    Network,
    /// A signature over each request (Standard Webhooks).
    Signature {
        /// The keys.
        keys: SignatureKeys,
    },
}
