//! Every kind of gateway: a file, and a row in the table.

mod data_coding;
mod folder;
pub mod http;
pub(crate) mod modem;
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

#[cfg(test)]
mod tests {
    use super::*;

    /// SMPP 3.4, 5.3.2.22 to 24: part 44 of 2 would wait for others for ever.
    #[test]
    fn a_part_that_is_none_of_the_parts_is_a_text() {
        let body = |number: u8| {
            let mut body = b"\0\x01\x01447700900001\0\x01\x0112345\0\0\0\0\0\0\0\0\0\0\0".to_vec();
            body.extend(b"\x04\x24\0\x05hello\x02\x0c\0\x02\0\x07\x02\x0e\0\x01\x02");
            body.extend([2, 15, 0, 1, number]);
            from_centre(&body)
        };
        let is_part = |arrivals: Vec<Arrival>| {
            assert_eq!(arrivals.len(), 9);
            arrivals.iter().all(|one| matches!(one, Arrival::Part(_)))
        };
        assert!(is_part(body(1)) && is_part(body(2)));
        assert!(!is_part(body(0)) && !is_part(body(3)) && !is_part(body(44)));
    }
}
