//! Every kind of gateway: a file, and a row in the table.

mod data_coding;
mod folder;
pub mod http;
mod modem;
mod octets;
pub mod oneapi;
mod smpp;
pub mod template;
mod text_header;

use std::{path::Path, sync::Arc};

use budwood_parser::table::{Table, TableError};

use crate::service::port::{Arrival, Plan};

/// Reads the block of a gateway of one kind.
pub(crate) type Read = fn(block: &Block<'_>) -> Result<Arc<dyn Plan>, TableError>;

/// What a kind reads: its block of the configuration, and where that lies.
pub(crate) struct Block<'a> {
    /// The keys. The common ones are read by the configuration.
    pub(crate) table: &'a Table<'a>,
    /// The gateway's name.
    pub(crate) name: &'a str,
    /// Paths start here.
    pub(crate) folder: &'a Path,
}

/// The kinds by their name in the configuration.
pub(crate) const KINDS: [(&str, Read); 5] = [
    ("oneapi", oneapi::read),
    ("template", template::read),
    ("modem", modem::read),
    ("smpp", smpp::read),
    ("folder", folder::read),
];

/// What a message of a modem becomes, given as its octets. For fuzzing, which has no use for a
/// modem.
#[must_use]
pub fn from_modem(octets: &[u8]) -> Option<Arrival> {
    modem::from_message(&data_encoding::HEXUPPER.encode(octets))
}

/// What the body of a `deliver_sm` becomes, for a centre of each kind. For fuzzing as well.
#[must_use]
pub fn from_centre(body: &[u8]) -> Vec<Arrival> {
    smpp::arrivals(body)
}

/// How a block of this kind is read.
pub(crate) fn kind(name: &str) -> Option<Read> {
    let row = KINDS.iter().find(|(known, _)| *known == name);
    row.map(|(_, read)| *read)
}
