//! Networks from which a gateway may call: an address, or a block of them as in RFC 4632.

use std::{fmt, net::IpAddr, str::FromStr};

/// A block of addresses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Network {
    start: IpAddr,
    bits: u32,
}

/// What is no network.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoNetwork;

impl fmt::Display for NoNetwork {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(
            "expected an address such as \"192.0.2.7\", or a block such as \"192.0.2.0/24\"",
        )
    }
}

impl FromStr for Network {
    type Err = NoNetwork;

    fn from_str(written: &str) -> Result<Self, NoNetwork> {
        let (start, bits) = match written.split_once('/') {
            Some((start, bits)) => (start, Some(bits)),
            None => (written, None),
        };
        let start: IpAddr = start.parse().map_err(|_| NoNetwork)?;
        let most = if start.is_ipv4() { 32 } else { 128 };
        let bits = bits.map_or(Ok(most), str::parse).map_err(|_| NoNetwork)?;
        if bits > most {
            return Err(NoNetwork);
        }
        Ok(Self { start, bits })
    }
}

impl Network {
    /// Whether an address is in it. One of version 4 in the clothes of version 6 counts as what it
    /// is (RFC 4291, 2.5.5.2).
    #[must_use]
    pub fn has(&self, address: IpAddr) -> bool {
        match (self.start, address.to_canonical()) {
            (IpAddr::V4(start), IpAddr::V4(address)) => {
                let differ = start.to_bits() ^ address.to_bits();
                differ.leading_zeros() >= self.bits
            }
            (IpAddr::V6(start), IpAddr::V6(address)) => {
                let differ = start.to_bits() ^ address.to_bits();
                differ.leading_zeros() >= self.bits
            }
            (IpAddr::V4(_), IpAddr::V6(_)) | (IpAddr::V6(_), IpAddr::V4(_)) => false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    // The addresses of RFC 5737 and RFC 3849, kept for documents.
    #[test]
    fn an_address_is_in_a_block_or_not() {
        for (network, address, expected) in [
            ("192.0.2.0/24", "192.0.2.255", true),
            ("192.0.2.0/24", "192.0.3.0", false),
            ("192.0.2.7", "192.0.2.7", true),
            ("192.0.2.7", "192.0.2.6", false),
            ("192.0.2.7", "::ffff:192.0.2.7", true),
            ("0.0.0.0/0", "198.51.100.1", true),
            ("0.0.0.0/0", "2001:db8::1", false),
            ("2001:db8::/32", "2001:db8:ffff::", true),
            ("2001:db8::/32", "2001:db9::", false),
            ("::1", "::1", true),
        ] {
            let block: Network = network.parse().unwrap();
            assert_eq!(
                block.has(address.parse().unwrap()),
                expected,
                "{network} {address}"
            );
        }
        for wrong in [
            "",
            "192.0.2",
            "192.0.2.0/33",
            "192.0.2.0/x",
            "::/129",
            "localhost",
        ] {
            assert_eq!(wrong.parse::<Network>(), Err(NoNetwork), "{wrong}");
        }
    }
}
